"""Wrap skirt: two fronts of a straight skirt that cross, on a band that ties or buttons
(common practice, no source; the crossing after transformations 2)."""

from collections.abc import Callable, Collection, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import FRONT
from clothwright.features.about import About, Place
from clothwright.features.base import (
    Cuts,
    Feature,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    useless,
)
from clothwright.features.chains import Chains
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role, skirt_hem
from clothwright.features.skirts.about import YOKES
from clothwright.features.skirts.skirt_sewing import ties_made
from clothwright.features.skirts.waistband import BAND, Waistband, onto_band
from clothwright.features.skirts.wrap_skirt_drawing import (
    EDGE,
    FACING,
    HOLDS,
    TIE_OVER,
    TIE_UNDER,
    cross,
    lay_buttoned,
    lay_tied,
    wrapped,
)
from clothwright.features.skirts.wrap_skirt_rules import (
    BEFORE_POCKET,
    BOW,
    FACED,
    SRC,
    WRAP_SKIRT,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, EdgeKind, Piece, Seam, Sheet
from clothwright.rules import Numbers, Rule, RuleTable
from clothwright.units.fields import Length

_B = Waistband.numbers()


class Edging(Enum):
    """How the front edges are finished."""

    HEMMED = "hemmed"
    """Turned twice, narrow."""

    FACED = "faced"
    """With a facing of their own."""


class Closing(Enum):
    """What holds the band."""

    TIES = "ties"
    """One goes out through a slit at the right side and round the back to the other."""

    BUTTONS = "buttons"
    """One outside for the end that lies over, one inside for the other."""


def _front_edge(piece: Piece, edge: Edge) -> Role:
    return Role.EDGE if edge.kind is EdgeKind.SEAM else Role.OPEN


class WrapSkirt(Feature):
    """Straight skirt whose two fronts cross."""

    kind: Literal["wrap skirt"] = "wrap skirt"
    title: ClassVar[str] = "Wrap skirt"
    sentence: ClassVar[str] = (
        "The two fronts [wrap], each {crossing} beyond the centre, their edges "
        "{edges}; a band {height} high closes with {closes}."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("crossing", (FRONT,), (EDGE, "hem"), (1.0, 0.0)),
    )
    shows: ClassVar[Shown] = {
        "wx S": (f"{FRONT}.{EDGE}",),
        "wf S": (f"{FACING}.free",),
        "tie w": (f"{TIE_OVER}.long edge",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        *(About(code, edges={EDGE: _front_edge}) for code in (FRONT, YOKES[FRONT])),
        About(BAND, Place.BAND, ("waistband",), others=Role.WAIST),
        About(
            FACING,
            Place.WAIST_FACING,
            ("facing",),
            {EDGE: Role.EDGE, "hem": skirt_hem},
            cloths=("shell", "interlining"),
        ),
        *(
            About(code, Place.CONTOUR, ("waistband",), others=Role.BAND)
            for code in (TIE_OVER, TIE_UNDER)
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        **Waistband.seams,
        "S123": "front edge of a wrap skirt, faced",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"skirt opening", "waist finish", "wrap skirt", "band"}
    )
    needs: ClassVar[dict[str, str]] = {
        "fitted skirt": "a wrap is cut of the fronts of a skirt; take a "
        '"straight skirt"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "skirt opening": "a wrap skirt opens in front; leave the zip off",
        "waist finish": "a wrap skirt has a band of its own, as long as its fronts "
        "cross; leave the other finish of the waist off",
        "pleats": "a pleat at the centre lies where the fronts cross; close the skirt "
        'with a "skirt zip" in place of the wrap, or leave the pleat off',
        "hem finish": "no flounce and no godets are led round fronts that cross; close "
        'the skirt with a "skirt zip" in place of the wrap, or leave them off',
    }

    crossing: Annotated[
        Length | None,
        Number(
            "wx_S",
            "wx S",
            "crossing of the centre front by each front of a wrap skirt",
            f"transformations 2, {SRC}",
            low=5.0,
            high=30.0,
            usual=(10.0, 20.0),
        ),
    ] = None
    edges: Edging = Edging.HEMMED
    facing: Annotated[
        Length | None,
        Number(
            "wf_S",
            "wf S",
            "facing beside the front edge of a wrap skirt",
            "transformations 6",
            low=2.5,
            high=12.0,
        ),
    ] = None
    height: Annotated[Length | None, _B["height"]] = None
    eased_on: Annotated[Length | None, _B["eased_on"]] = None
    closes: Closing = Closing.TIES
    tie: Annotated[
        Length | None,
        Number("tie_w", "tie w", "width of the ties, finished", SRC, low=1.0, high=6.0),
    ] = None
    bow: Annotated[Length | None, BOW] = None
    button: Annotated[
        Length | None,
        Number(
            "d_wrap",
            "d wrap",
            "diameter of the buttons of the band",
            "transformations 7",
            2.0,
            0.75,
            1.0,
            4.0,
            (1.5, 2.8),
        ),
    ] = None

    def forbids(self) -> Mapping[str, str]:
        if self.faced:
            return self.clashes
        return {
            **self.clashes,
            "skirt lining": "a lining would be seen where hemmed fronts part; leave it "
            'off, or face the edges (edges = "faced")',
        }

    @property
    def faced(self) -> bool:
        """True when its edges have a facing."""
        return self.edges is Edging.FACED

    @property
    def tied(self) -> bool:
        """True for a band with ties."""
        return self.closes is Closing.TIES

    def tables(self) -> tuple[RuleTable, ...]:
        return (WRAP_SKIRT, FACED) if self.faced else (WRAP_SKIRT,)

    def rewritten(
        self, rules: Mapping[str, Rule], given: Collection[str]
    ) -> Mapping[str, Rule]:
        """Before slanting pockets the fronts end so that both can be reached."""
        slanting = "pk_top" in rules or ("pk_top" in given and "pk_end" in rules)
        if "wx_S" in given or not slanting:
            return {}
        return BEFORE_POCKET.rules

    def stages(self) -> tuple[Stage, ...]:
        band = lay_tied if self.tied else lay_buttoned
        return (
            Stage(Rank.CROSSED, "the fronts that cross", self._cross),
            Stage(Rank.FACING, "the band of the wrap", band),
        )

    def _cross(self, d: Drafting) -> None:
        cross(d, faced=self.faced)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*onto_band(t, n), *wrapped(t))

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        both = ("shell", "interlining")
        found = {BAND: Cuts("1, right side up", 1, both)}
        found |= {c: Cuts("1", 1) for c in (TIE_OVER, TIE_UNDER) if c in sheet.pieces}
        if FACING in sheet.pieces:
            found[FACING] = Cuts("2 (1 pair)", 2, both)
        return found

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "Right over left. The front is no half: cut it twice, mirrored; each "
            f"reaches {fmt(n.wx_S)} beyond the centre front line."
        )
        if self.tied:
            yield (
                "The long tie is sewn into the band's end on the left front and goes "
                "out through the slit at the right side; the short one into its end on "
                "the right front."
            )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        if not self.tied:
            where = "for the band, one of them inside"
            yield Notion(Article.FLAT_BUTTON, 2, where, size=n.d_wrap)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield self._edges(sheet)
        yield Operation(
            Work.READY,
            "Lay the fronts over each other",
            (
                "The right over the left, centre on centre; each ends "
                f"{fmt(n.wx_S)} beyond it. Try it on: the edges hang plumb. The fronts "
                "are set into the band apart, not on each other.",
            ),
            length=0.0,
        )
        if self.tied:
            yield ties_made(sheet, (TIE_OVER, TIE_UNDER))
            yield Operation(
                Work.BAND,
                "Work the slit of the band",
                (
                    "As a buttonhole through the outer half and one through the inner, "
                    "before the band is closed; the long tie goes through both.",
                ),
                stitch=Stitch.ZIGZAG,
                length=4 * (n.tie_w + 0.3),
                task=Task.BUTTONHOLE,
                count=2.0,
            )
        caught = "the ties caught in them, " if self.tied else ""
        yield Operation(
            Work.BAND,
            "Close the waistband",
            (
                f"Fold it right sides together, stitch both ends, {caught}trim, turn; "
                "fell the inner edge to the waist seam.",
            ),
            edges=(
                *finished_edges(sheet, (BAND,)),
                *finished_edges(sheet, (FACING,), "waist over"),
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
        )
        if not self.tied:
            yield Operation(
                Work.FASTEN,
                "Work the buttonholes of the band and sew its buttons on",
                (
                    "The end that lies over buttons outside, the other inside, on the "
                    "crosses.",
                ),
                stitch=Stitch.HAND,
                task=Task.BUTTONHOLE,
                count=2.0,
                hazards=(Hazard.SMALL_PART,),
            )

    def _edges(self, sheet: Sheet) -> Operation:
        if not self.faced:
            return Operation(
                Work.SKIRT,
                "Hem the front edges",
                ("Turned twice, narrow, from the waist to the hem.",),
                edges=finished_edges(sheet, (FRONT, YOKES[FRONT]), EDGE),
                stitch=Stitch.LOCK,
                seam_type=SeamType.HEM_TWICE,
                task=Task.NARROW_HEM,
            )
        return Operation(
            Work.EDGE,
            "Face the front edges",
            (
                "Right sides together from the waist to the hem; trim, turn, and baste "
                "the facing's upper end to the waist.",
            ),
            seams=("S123",),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="towards the facing, then rolled to the inside",
            task=Task.FACE,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.wx_S < HOLDS:
            yield Finding(
                "WX1",
                Severity.WARN,
                f"The fronts cross by {n.wx_S:.1f} cm beyond the centre: under "
                f"{HOLDS:g} cm they part at a step.",
                "wx S",
                "Let them cross further (wx S).",
                {"wx": n.wx_S},
            )
        if self.tied and n.tie_w > n.h_band - 0.5:
            yield Finding(
                "WX2",
                Severity.REFUSE,
                f"A tie of {n.tie_w:.1f} cm does not go through a slit in a band of "
                f"{n.h_band:.1f} cm.",
                "tie w",
                "Make the ties (tie w) narrower, or the band (hb) higher.",
                {"tie": n.tie_w, "band": n.h_band},
            )
        fields = ["button"] if self.tied else ["tie", "bow"]
        fields += [] if self.faced else ["facing"]
        so = (
            f"A wrap skirt with {self.edges.value} edges that closes with "
            f"{self.closes.value}"
        )
        yield from useless(self, fields, so, "Leave it out.")
