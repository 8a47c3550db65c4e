"""A buttoned cuff at the end of the sleeve, and the slit above it (transformations 4
and 7)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, turned
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Hazard,
    Operation,
    Stitch,
    Task,
    Work,
)
from clothwright.features.roles import Role
from clothwright.features.sleeves.sleeve_ends import (
    BELOW,
    band_findings,
    both_sides,
    gather_hem,
    hem_is_sewn,
    hem_length,
)
from clothwright.features.sleeves.sleeve_lengths import long_where_left_out
from clothwright.features.sleeves.sleeve_placket import (
    PIECE,
    SleevePlacket,
    draw_tailored,
    placket_notions,
    placket_operations,
)
from clothwright.features.sleeves.sleeve_seams import cuff_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, Rule, RuleTable
from clothwright.units.fields import Length

_SRC, _SRC_7 = "transformations 4", "transformations 7"

CUFF = RuleTable("cuff")
_rule = CUFF.rule

SLIT_AT = 0.25
"""The slit stands at this share of the hem from the back seam, in its back third."""

_BUTTON = 1.2
"""Diameter of a cuff's button, cm (common practice, no source)."""

_ROOM = 6.0
"""A cuff of this width or more has two buttons, cm (common practice, no source)."""


@_rule(
    "cuff",
    "cuff, closed",
    source=_SRC,
    key="band_net",
    formula="WR + 3 cm",
    low=14.0,
    high=40.0,
)
def _net(WR: float) -> float:
    return WR + 3.0


@_rule(
    "end",
    "width of what is sewn to the end of the sleeve",
    source=_SRC,
    key="end_depth",
    formula="width of the cuff",
)
def _end(cuff_w: float) -> float:
    return cuff_w


@_rule(
    "cuff whole",
    "cuff with its underlap",
    source=_SRC,
    key="cuff_whole",
    formula="cuff + underlap",
)
def _whole(band_net: float, cuff_lap: float) -> float:
    return band_net + cuff_lap


class Cuff(Feature):
    """Buttoned cuff, cut double, with a bound slit in the sleeve above it."""

    kind: Literal["cuff"] = "cuff"
    title: ClassVar[str] = "Cuff"
    sentence: ClassVar[str] = (
        "It ends in a buttoned [cuff] {width} wide and {girth} round, over a slit of "
        "{slit} with {placket}."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            "CU",
            Place.CUFF,
            ("band",),
            others=Role.BAND,
            cloths=("shell", "interlining"),
        ),
        About(
            PIECE,
            Place.CUFF,
            ("band",),
            others=Role.BAND,
            cloths=("shell", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S26": "hem of a sleeve in a band or cuff",
        "S28": "end of a cuff",
        "S29": "underlap of a cuff",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve end"})
    needs: ClassVar[dict[str, str]] = {
        "set-in sleeve": 'it ends a sleeve; add a "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {"sleeve end": "a sleeve ends in one thing"}

    width: Annotated[
        Length | None,
        Number("cuff_w", "cuff width", "width of the cuff", _SRC, 5, 2, 2, 15, (2, 8)),
    ] = None
    girth: Annotated[
        Length | None,
        Number("band_net", "cuff", "cuff, closed", _SRC, low=14.0, high=40.0),
    ] = None
    slit: Annotated[
        Length | None,
        Number("slit", "slit", "slit above the cuff", _SRC, 8, 3, 4, 15, (6, 10)),
    ] = None
    underlap: Annotated[
        Length | None,
        Number(
            "cuff_lap",
            "underlap",
            "underlap of the cuff",
            _SRC,
            2.5,
            1,
            1.5,
            5,
            (2, 2.5),
        ),
    ] = None

    placket: SleevePlacket = SleevePlacket.STRIP
    placket_width: Annotated[
        Length | None,
        Number(
            "placket_w",
            "placket width",
            "width of a tailored placket",
            _SRC_7,
            2.25,
            0.875,
            1.5,
            4.0,
            (2, 2.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (CUFF,)

    def rewritten(
        self,
        rules: Mapping[str, Rule],
        given: Collection[str],
    ) -> Mapping[str, Rule]:
        """A sleeve whose length is left out goes to the wrist."""
        return long_where_left_out(rules, given)

    def stages(self) -> tuple[Stage, ...]:
        cuff = Stage(Rank.SLEEVE_END, "the cuff", _draft)
        if self.placket is SleevePlacket.STRIP:
            return (cuff,)
        return (cuff, Stage(Rank.SLEEVE_END, "the sleeve placket", _placket))

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return cuff_seams(t)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        more = "s" if _buttons(n) > 1 else ""
        yield (
            f"On the cuff the short line{more} at its front end "
            f"{'are its buttonholes' if more else 'is its buttonhole'}, the "
            f"cross{'es' if more else ''} on the underlap its button{more}."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.FLAT_BUTTON,
            2 * _buttons(n) + 1,
            "for the cuffs",
            size=_BUTTON,
            spare=1,
        )
        yield from placket_notions(self.placket, n)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield from placket_operations(self.placket, n, fmt)
        yield from gather_hem(sheet, fmt)
        holes = 2 * _buttons(n)
        yield Operation(
            Work.CUFF,
            "Set the cuffs on the sleeves",
            (
                "Fold each in half, right side in, and sew its ends; turn.",
                "Sew its upper edge to the sleeve from one side of the slit to the "
                f"other; {fmt(n.cuff_lap)} of underlap stands out on the back side. "
                "Turn the inner edge in and fell it over the seam.",
            ),
            seams=both_sides(sheet, "S26", "S28", "S29"),
            edges=(Run("CU", "inside"),),
            stitch=Stitch.LOCK,
            press="into the cuff",
            task=Task.CUFFS,
            hazards=(Hazard.IRON,),
        )
        yield Operation(
            Work.FASTEN,
            f"Work {holes} buttonholes in the cuffs",
            (
                f"Each {fmt(_BUTTON + 0.3)} long, on the front end of the cuff; try "
                "one on a scrap.",
            ),
            stitch=Stitch.ZIGZAG,
            length=2 * holes * (_BUTTON + 0.3),
            task=Task.BUTTONHOLE,
            count=float(holes),
            hazards=(Hazard.BLADE,),
        )
        yield Operation(
            Work.FASTEN,
            f"Sew {holes} buttons to the cuffs",
            ("On the crosses of the underlaps.",),
            stitch=Stitch.HAND,
            task=Task.BUTTON,
            count=float(holes),
            hazards=(Hazard.SMALL_PART,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from band_findings(n, sheet, "cuff")
        if n.under_arm < n.y_E + 2.0:
            yield Finding(
                "CU1",
                Severity.REFUSE,
                f"A cuff is worn at the wrist; this sleeve ends {n.lh:.1f} cm from the "
                "shoulder, at the elbow or above it.",
                "lh",
                'Make the sleeve longer, or take a "sleeve band".',
                {"lh": n.lh},
            )
        if n.band_net < n.WR + 1.5:
            yield Finding(
                "CU2",
                Severity.WARN,
                f"The cuff is {n.band_net:.1f} cm round, the wrist {n.WR:.1f} cm: less "
                "than 1.5 cm of room.",
                "cuff",
                "Make it longer.",
                {"cuff": n.band_net, "WR": n.WR},
            )
        opening = n.band_net + 2 * n.slit
        if opening < n.HD:
            yield Finding(
                "CU3",
                Severity.REFUSE,
                f"Cuff and slit open to {opening:.1f} cm; the hand is {n.HD:.1f} cm "
                "round.",
                "slit",
                "Make the slit longer (slit).",
                {"opening": opening, "HD": n.HD},
            )


def _buttons(n: Numbers) -> int:
    """Buttons of one cuff."""
    return 2 if n.cuff_w >= _ROOM else 1


def _draft(d: Drafting) -> None:
    """Divide the hem at the slit; draw the cuff CU."""
    n = d.n
    d.part = "sleeve"
    back = SLIT_AT * hem_length(d.sheet)
    hem = d.sheet.edge("SL", "hem").path
    s = hem.length - back
    foot = hem.at_length(s)
    up = turned(hem.direction_at_length(s), 90)
    sheet = hem_is_sewn(d.sheet, back)
    slit = InnerLine("slit", Path.line(foot, foot + up * n.slit))
    sheet = sheet.put(sheet.piece("SL").with_lines(slit))
    d.lay(
        Verb.REDRAW,
        sheet,
        "SL",
        "the slit, square to the hem",
        amounts=(("from the back seam", back), ("long", "slit")),
        lines=(slit.path,),
    )
    d.part = "band"
    w = n.cuff_w
    y = n.lh - n.h_cap + BELOW
    a = d.start("Ka", Point(-n.band_net / 2, y), "front end of the cuff, upper edge")
    b = d.point("Kb", "Ka", "where the underlap begins", right="band_net")
    c = d.point("Kc", "Ka", "end of the underlap", right="cuff_whole")
    down, fold = Point(0.0, 2 * w), Point(0.0, w)
    loop = (
        straight("upper", a, b),
        straight("lap", b, c),
        straight("lap end", c, c + fold),
        straight("lap end low", c + fold, c + down),
        straight("lap low", c + down, b + down),
        straight("inside", b + down, a + down, EdgeKind.FINISHED),
        straight("end low", a + down, a + fold),
        straight("end high", a + fold, a),
    )
    heights = [w / 2] if _buttons(n) == 1 else [w / 4 + 0.3, 3 * w / 4 - 0.3]
    holes = tuple(
        InnerLine(
            "buttonhole" if i == 0 else "second buttonhole",
            Path.line(a + Point(0.9, h), a + Point(0.9 + _BUTTON + 0.3, h)),
        )
        for i, h in enumerate(heights)
    )
    buttons = tuple(
        Mark(f"button {i + 1}", b + Point(1.2, h), MarkKind.BUTTON)
        for i, h in enumerate(heights)
    )
    piece = Piece(
        "CU",
        "Cuff",
        loop,
        marks=buttons,
        grain=(a + Point(2.0, 1.5 * w), b + Point(-2.0, 1.5 * w)),
        lines=(InnerLine("fold", Path.line(a + fold, c + fold)), *holes),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        "CU",
        "cuff, double",
        amounts=(("wide on either side of its fold", "cuff_w"),),
        frm=("Ka", "Kb", "Kc"),
    )


def _placket(d: Drafting) -> None:
    """The tailored placket beside the cuff."""
    d.part = "band"
    draw_tailored(d, d["Kc"] + Point(3.0, d.n.slit))
