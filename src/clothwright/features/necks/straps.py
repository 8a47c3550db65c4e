"""Shoulder straps on a top edge: narrow (spaghetti) or broad (truing 5).

Each is a folded strip, sewn and turned, its ends caught in the top edge in front and
behind. Its length is the block's own, from edge to edge over the shoulder; it is cut a
little longer and set at the fitting.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import outwards_back, outwards_front
from clothwright.curves import Path, Point, distance
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import BACK_LINE, FRONT_LINE, STRAP, TOP, Chains
from clothwright.features.linings.sewn_halves import SewnHalf, sewn_back, sewn_front
from clothwright.features.necks.strap_seams import strap_seams
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
    InnerLine,
    Mark,
    PaperError,
    Piece,
    Seam,
    Sheet,
    Taped,
    Verb,
    meetings,
    straight,
)
from clothwright.rules import Given, Kind, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_PRACTICE = "common practice, no source"

_SLIPS = 0.36
"""Straps that start behind further from the centre than this share of XB slip off the
shoulders (common practice, no source)."""

_LEAST = 12.0
"""A strap shorter than this does not reach over a shoulder, cm (our own choice)."""

STRAPS = RuleTable("shoulder straps")


@STRAPS.rule(
    "sb",
    "strap from the centre back",
    key="sb",
    source=_PRACTICE,
    formula="XB/4: half way to the armhole",
    low=2.0,
    high=16.0,
)
def _behind(XB: float) -> float:
    return XB / 4


class StrapKind(Enum):
    """How wide a strap is."""

    NARROW = "narrow"
    """Spaghetti, 0.6 to 1 cm."""

    BROAD = "broad"
    """From 1.2 cm (truing 5)."""


_WIDTHS = {
    StrapKind.NARROW: (0.8, 0.3125, 0.6, 1.0),
    StrapKind.BROAD: (3.0, 1.25, 1.2, 9.0),
}
"""Usual width in cm and inches, and the bounds in cm (truing 5)."""


class Straps(Feature):
    """A strap over each shoulder."""

    kind: Literal["straps"] = "straps"
    title: ClassVar[str] = "Shoulder straps"
    sentence: ClassVar[str] = (
        "It hangs on {shape} [straps], {width} wide, {inner} to the centre from the "
        "top over the bust and {behind} from the centre back."
    )
    shows: ClassVar[Shown] = {
        "strap w": (f"{STRAP}.front end",),
        "sf": ("FC.top edge", "F.top edge"),
        "sb": ("BC.top edge", "B.top edge"),
        "sl+": (f"{STRAP}.back end",),
        "s share": (f"{STRAP}.strap over",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        About(STRAP, Place.STRAP, ("strap",), others=Role.EDGE),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S112": "shoulder strap in the top edge, in front",
        "S113": "shoulder strap in the top edge, behind",
        "S114": "long edges of a shoulder strap",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"straps"})
    needs: ClassVar[dict[str, str]] = {
        "strapless": "straps are caught in the top edge of a strapless bodice; add "
        'kind = "strapless"'
    }
    clashes: ClassVar[dict[str, str]] = {"straps": "an order has one pair of straps"}

    shape: StrapKind = StrapKind.NARROW
    width: Annotated[
        Length | None,
        Number(
            "strap_w",
            "strap w",
            "width of a strap, finished",
            "truing 5",
            low=0.6,
            high=9.0,
        ),
    ] = None
    inner: Annotated[
        Length | None,
        Number(
            "sf",
            "sf",
            "strap in front, from the top over the bust towards the centre",
            _PRACTICE,
            0.5,
            0.1875,
            -3.0,
            9.0,
        ),
    ] = None
    behind: Annotated[
        Length | None,
        Number("sb", "sb", "strap from the centre back", _PRACTICE, low=2.0, high=16.0),
    ] = None
    over: Annotated[
        Ratio | None,
        Number(
            "s_share",
            "s share",
            "where a strap crosses the shoulder, a share from the neck",
            _PRACTICE,
            0.5,
            low=0.2,
            high=0.7,
            kind=Kind.RATIO,
        ),
    ] = None
    spare: Annotated[
        Length | None,
        Number(
            "s_more",
            "sl+",
            "strap cut longer, to be set at the fitting",
            _PRACTICE,
            2.5,
            1.0,
            0.0,
            8.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (STRAPS,)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        if self.width is None:
            cm, inch, *_ = _WIDTHS[self.shape]
            wide = inch * 2.54 if unit is Unit.IN else cm
            yield self.numbers()["width"].by_default(wide)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, "the straps", _draw),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return strap_seams(t, n)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        cord = (Hazard.CORD,) if self.shape is StrapKind.NARROW else ()
        long = sheet.length(STRAP, "strap over")
        yield Operation(
            Work.BAG,
            "Make the straps",
            (
                "Fold each lengthwise, right side in; sew the long edges, trim, turn "
                "over a cord or a loop turner, the seam along one edge.",
            ),
            seams=("S114",),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="flat, not stretched",
            task=Task.BAG,
            count=2.0,
            hazards=cord,
        )
        yield Operation(
            Work.ON_EDGE,
            "Baste the straps to the top edge",
            (
                "The middle of each at the marks, in front and behind, right side to "
                "the shell; they are caught in when the edge is faced.",
                f"From edge to edge a strap is {fmt(long - n.s_more)} long; behind, "
                f"{fmt(n.s_more)} are left to set it at the fitting.",
            ),
            seams=("S112", "S113"),
            stitch=Stitch.LOCK,
            seam_type=SeamType.LAPPED,
            length=8 * n.strap_w,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        _, _, low, high = _WIDTHS[self.shape]
        if not low - 1e-6 <= n.strap_w <= high + 1e-6:
            yield Finding(
                "SR1",
                Severity.WARN,
                f"A {self.shape.value} strap is {low:g} to {high:g} cm wide; this one "
                f"is {n.strap_w:.1f} cm.",
                "strap w",
                "Make it another width, or call it "
                f"{'broad' if self.shape is StrapKind.NARROW else 'narrow'}.",
                {"strap w": n.strap_w},
            )
        if n.sb > _SLIPS * n.XB:
            yield Finding(
                "SR2",
                Severity.WARN,
                f"Behind, the straps start {n.sb:.1f} cm from the centre: they will "
                "slip off the shoulders.",
                "sb",
                f"Set them within {_SLIPS * n.XB:.1f} cm of the centre back.",
                {"sb": n.sb},
            )
        top = sheet.points["Ks"]
        if sheet.length(STRAP, "strap over") - n.s_more < _LEAST:
            yield Finding(
                "SR3",
                Severity.WARN,
                "The straps come out too short to reach over a shoulder.",
                "ht",
                "Look at NBP and AS again, or lower the top edge.",
                {"y": top.y},
            )


def _draw(d: Drafting) -> None:
    """Mark both ends on the top edge; the strap is as long as from edge to edge over
    the shoulder of the block."""
    n = d.n
    d.part = "front"
    line = d.sheet.lines[FRONT_LINE]
    s = line.length_to_point(d["Kt"]) + n.sf
    if not n.strap_w < s < line.length - n.strap_w / 2:
        raise PaperError(
            "the strap in front lies off the top edge: set it (sf) nearer to the bust"
        )
    ks = d.found(
        "Ks",
        line.at_length(s),
        "middle of the strap on the top edge, front",
        amounts=(("along the top edge from Kt, towards the centre", "sf"),),
    )
    d.part = "back"
    line = d.sheet.lines[BACK_LINE]
    hits = meetings(
        line,
        Path.line(Point(n.sb, -30.0), Point(n.sb, 90.0)),
        "the strap behind lies off the top edge: set it (sb) nearer to the centre",
    )
    kb = d.found(
        "Ksb",
        line.at_length(hits[0][0]),
        "middle of the strap on the top edge, back",
        amounts=(("from the centre back", "sb"),),
    )
    sheet = _marked(d.sheet, sewn_front(d.sheet), ks)
    sheet = _marked(sheet, sewn_back(d.sheet), kb)
    half = n.SH * n.s_share
    over_f = Point(n.x_hf, n.y_hf) + outwards_front(n.sigma_f) * half
    over_b = Point(n.bw, -n.nr) + outwards_back(n.sigma_b) * half
    long = distance(ks, over_f) + distance(over_b, kb)
    w, end = 2 * n.strap_w, long + n.s_more
    a, b, c, e = Point(0.0, 0.0), Point(w, 0.0), Point(w, end), Point(0.0, end)
    strap = Piece(
        STRAP,
        "Strap",
        (
            straight("front end", a, b),
            straight("strap over", b, c),
            straight("back end", c, e),
            straight("strap under", e, a),
        ),
        lines=(
            InnerLine("fold", Path.line(Point(w / 2, 0.0), Point(w / 2, end))),
            InnerLine("back edge", Path.line(Point(0.0, long), Point(w, long))),
        ),
        grain=(Point(w / 4, end / 2 + 8.0), Point(w / 4, end / 2 - 8.0)),
    )
    d.part = "strap"
    d.lay(
        Verb.OUTLINE,
        sheet.put(strap),
        STRAP,
        "strap, double, from the top edge in front to that behind",
        amounts=(
            ("long, over the shoulder of the block", Taped("sl", long)),
            ("longer, to be set at the fitting", "s_more"),
            ("wide on either side of its fold", "strap_w"),
        ),
        frm=("Ks", "Ksb"),
    )


def _marked(sheet: Sheet, half: SewnHalf, at: Point) -> Sheet:
    """The piece of a half on whose top edge a place lies, marked there."""
    if half.flank is None or half.centre.edge(TOP).path.nearest(at)[1] < 0.02:
        return sheet.put(sheet.piece(half.centre.code).with_marks(Mark("strap", at)))
    there = half.motion.inverse()(at)
    return sheet.put(sheet.piece(half.flank.code).with_marks(Mark("strap", there)))
