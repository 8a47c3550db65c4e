"""A half placket from the neck down the centre front (transformations 7).

A window as wide as the placket is cut from the front and filled by two bands, the right
one over the left. A band is cut double, its outer edge on a fold.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, Vector, mirror_in
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.necks.neck_shapes import V_FRONT
from clothwright.features.necks.over_head import SLIT_NECK
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.band_pieces import beside, cut_back, doubled, met
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    Mark,
    MarkKind,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "transformations 7"

BAND = "NP"
"""Code of the band."""

_BUTTON = 1.1
"""Diameter of its buttons, cm (common practice, no source)."""

_CLEAR = 0.8
"""The first button lies half its diameter and this below the neck, cm (7)."""

_APART = 6.0
"""Its buttons stand about so far apart, cm (7: press studs 5 to 7, shirts 7 to 9)."""

_ABOVE = 3.0
"""The last lies this far above the foot, cm (common practice, no source)."""

_SLIT = 0.02
"""What must stay between the allowances on both sides of the window, cm (our own)."""

_WIDE = "the neck placket is wider than the neck: make the placket (np) narrower"


class NeckPlacket(Feature):
    """Half placket at the centre front."""

    kind: Literal["neck placket"] = "neck placket"
    title: ClassVar[str] = "Neck placket"
    sentence: ClassVar[str] = (
        "A [half placket] {width} wide and {length} long opens the neck in front."
    )
    shows: ClassVar[Shown] = {
        "np": ("NP.foot",),
        "np long": ("FC.placket", "F.placket"),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            BAND,
            Place.PLACKET,
            ("facing",),
            others=Role.BAND,
            cloths=("shell", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S76": "side of a neck placket",
        "S77": "foot of a neck placket",
        "S78": "upper end of a neck placket's band",
    }
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"neck placket"})
    needs: ClassVar[dict[str, str]] = {
        "neckline": "a neck placket begins at a neckline; add one",
        "inside finish": 'beside it the neck is faced; add a "neck facing" or a '
        '"facing"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "wrap": "fronts that cross have no centre to slash; leave the placket off",
        "cowl": "a cowl falls over the centre front; leave the placket off",
        "front opening": "a front that buttons all the way needs no half placket; "
        "leave one of the two off",
        "winding neck": "a half placket is for a plain neck; take another neck, or "
        "leave it off",
        V_FRONT: "a half placket is for a plain neck; a pointed one has no edge for "
        "its bands",
        "lining": "a top with a half placket is faced and not lined yet; leave the "
        "lining off",
        "front yoke": "a half placket is not yet led over a front yoke; leave one of "
        "the two off",
        "empire seam": "a half placket is not yet led towards an empire seam; leave "
        "one of the two off",
    }

    width: Annotated[
        Length | None,
        Number(
            "np_w",
            "np",
            "width of the neck placket",
            _SRC,
            3.0,
            1.25,
            1.5,
            6.0,
            (2.5, 3.5),
        ),
    ] = None
    length: Annotated[
        Length | None,
        Number(
            "np_long",
            "np long",
            "length of the neck placket",
            _SRC,
            15.0,
            6.0,
            8.0,
            30.0,
            (12.0, 20.0),
        ),
    ] = None

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield Given(
            "np_turned",
            "np turned",
            "allowance on either side of the window of a neck placket",
            Kind.LENGTH,
            Role.EDGE.width(unit),
            Hand.DEFAULT,
            "first garment 18",
        )

    def tables(self) -> tuple[RuleTable, ...]:
        return (SLIT_NECK,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.STAND, "the neck placket", _draw),)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            "Of the two bands of the neck placket the right one laps over: work the "
            "buttonholes in it, sew the buttons to the crosses of the left one."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.FLAT_BUTTON,
            _buttons(sheet) + 1,
            "for the neck placket",
            size=_BUTTON,
            spare=1,
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield Operation(
            Work.ON_EDGE,
            "Sew the bands of the neck placket into the front",
            (
                "Cut down the centre front and slantwise into the corners of the "
                "window, to a thread.",
                "Sew a band to each side, from the neck to the corner; fold it, bag "
                "its upper end out, fell its inner edge to the seam.",
                "Lap the right band over the left and sew both ends to the foot of the "
                "window with the little triangle.",
            ),
            seams=tuple(s.code for s in sheet.seams if s.code in _CODES),
            edges=(Run(BAND, "inside"), Run(BAND, "foot inside")),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="into the band",
            task=Task.PLACKETS,
            hazards=(Hazard.BLADE, Hazard.IRON),
        )
        yield Operation(
            Work.LINED,
            "Fell the facing's ends to the bands of the neck placket",
            edges=(Run("FF", "end"),),
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )
        count = _buttons(sheet)
        yield Operation(
            Work.FASTEN,
            f"Work {count} buttonholes in the right band",
            (f"Each {fmt(_BUTTON + 0.3)} long, along the centre line.",),
            stitch=Stitch.ZIGZAG,
            length=2 * count * (_BUTTON + 0.3),
            task=Task.BUTTONHOLE,
            count=float(count),
            hazards=(Hazard.BLADE,),
        )
        yield Operation(
            Work.FASTEN,
            f"Sew {count} buttons to the left band",
            ("Under the buttonholes, when the bands are lapped.",),
            stitch=Stitch.HAND,
            task=Task.BUTTON,
            count=float(count),
            hazards=(Hazard.SMALL_PART,),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return placket_seams(t, n)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.np_w < 2 * n.np_turned + _SLIT:
            yield Finding(
                "NP2",
                Severity.REFUSE,
                f"The window of the neck placket is {n.np_w:.1f} cm wide; the "
                f"allowances on both sides of it take {2 * n.np_turned:.1f} cm.",
                "np",
                f"Make it (np) wider than {2 * n.np_turned:.1f} cm.",
                {"width": n.np_w},
            )
        foot = sheet.points["C"].y + n.np_long
        if foot > n.yW - 6.0:
            yield Finding(
                "NP1",
                Severity.REFUSE,
                f"The neck placket ends {n.yW - foot:.1f} cm above the waist; 6 cm is "
                "the least.",
                "np long",
                "Make it (np long) shorter, or take a button stand.",
                {"foot": foot},
            )


_CODES = ("S76", "S77", "S78")


def placket_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Front to band, down the side and across the foot; the band's upper end."""
    code = "FC" if "FC" in t.sheet.pieces else "F"
    side = t.chain((code, "placket", False)), t.chain((BAND, "side", True))
    foot = t.chain((code, "placket foot", False)), t.chain((BAND, "foot", True))
    top = t.chain((BAND, "top", False)), t.chain((BAND, "top inside", True))
    lapped = Ease.about(n.np_w / 2, 0.1)  # a half of the window, a whole band
    plain = Ease.about(0.0, 0.1)
    return [
        Seam("S76", "neck placket", *side, "neck", "foot", plain),
        Seam(
            "S77",
            "foot of the neck placket",
            *foot,
            "side",
            "centre front",
            lapped,
            kind=SeamKind.LAPPED,
        ),
        Seam("S78", "upper end of the band", *top, "side", "fold", plain),
    ]


def _buttons(sheet: Sheet) -> int:
    return sum(m.kind is MarkKind.BUTTON for m in sheet.piece(BAND).marks)


def _draw(d: Drafting) -> None:
    """Cut the window from the front and the facing; draw the band."""
    n = d.n
    d.part = "front"
    code = "FC" if "FC" in d.sheet.pieces else "F"
    piece = d.sheet.piece(code)
    neck, cf = piece.edge("neck").path, piece.edge("cf").path
    left = beside(cf, n.np_w / 2)
    s = met(neck, left, _WIDE)
    kept, lost = neck.split_at_length(s)
    foot = cf.at_length(n.np_long)
    corner = Point(kept.end.x, foot.y)
    new = (
        Edge("neck", kept),
        straight("placket", kept.end, corner),
        straight("placket foot", corner, foot),
        straight("cf", foot, cf.end, EdgeKind.FOLD),
    )
    sheet = redraw(d.sheet, code, ["neck", "cf"], new)
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{code}.placket",
        "window of the neck placket",
        amounts=(("half as wide as {}", "np_w"), ("down the centre front", "np_long")),
        lines=(new[1].path, new[2].path),
    )
    d.part = "facing"
    d.lay(
        Verb.REDRAW,
        d.sheet.put(cut_back(d.sheet.piece("FF"), left, _WIDE)),
        "FF",
        "facing cut back to the window",
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(_band(lost, corner.y)),
        BAND,
        "band of the neck placket, a pair",
        amounts=(("wide on either side of its fold", "np_w"),),
        detail="its upper end as the neck there, turned over at the fold",
    )


def _band(neck: Path, foot: float) -> Piece:
    """The band: its outer half lies over the window from side to side, its inner half
    is that turned over at the fold. `neck` is the neck from the window's side to the
    centre front."""
    down = Vector(0.0, 1.0)
    other = neck.moved(mirror_in(neck.end, neck.end + down)).reversed()
    top = Edge("top", neck + other.pinned(neck.end, other.end))
    piece = doubled(BAND, "Band of the neck placket", (top,), foot)
    marks, holes = [], []
    first = neck.end.y + _BUTTON / 2 + _CLEAR
    count = max(1, round((foot - _ABOVE - first) / _APART)) + 1
    half = (_BUTTON + 0.3) / 2
    for i in range(count):
        y = first + i * (foot - _ABOVE - first) / (count - 1)
        at = Point(neck.end.x, y)
        marks.append(Mark(f"button {i + 1}", at, MarkKind.BUTTON))
        hole = Path.line(at - down * half, at + down * half)
        holes.append(InnerLine(f"buttonhole {i + 1}", hole))
    return piece.with_marks(*marks).with_lines(*holes)
