"""Low open back with slanted edges (first garment 9).

The set-ins are measured from the block's own centre back line, never from a
tightened one, and are measured again after the corner is rounded.
"""

import math
from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_curves import inward_back
from clothwright.curves import Path, Point, from_pair
from clothwright.features.base import Feature, Number, Pin, Rank, Shown, Stage
from clothwright.features.bodice.panel_lines import corner, rounded
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.open_back_findings import findings
from clothwright.features.openings.open_back_rules import (
    FROM_NAPE,
    FROM_NECK_POINT,
    OPEN_BACK,
)
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    On,
    PaperError,
    Run,
    Sheet,
    Verb,
    redraw,
    spread,
    straight,
)
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.truing import Fillet, arc_like
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "first garment 9"


class DepthFrom(Enum):
    """From where the depth of an open back is measured (first garment 9.1)."""

    NECK_POINT = "below the shoulder neck point"
    """The level of hb, from which the depths of necks count."""

    NAPE = "below the nape"
    """As it is measured on the body."""


class LowOpenBack(Feature):
    """Low back whose slanted edges stand apart down to the waist."""

    kind: Literal["low open back"] = "low open back"
    title: ClassVar[str] = "Low open back"
    sentence: ClassVar[str] = (
        "The back is [open], {depth} {depth_from}, its edges {top} from the centre at "
        "the top and {waist} at the waist."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("depth", ("BC",), ("neck", "slant"), (0.0, 1.0)),
        Pin("waist", ("BC",), ("slant", "waist"), (1.0, 0.0)),
    )
    shows: ClassVar[Shown] = {
        "te": ("BC.armhole",),
        "E1": ("BC.slant",),
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"back neck", "open back", "opening", "finished back edge"}
    )
    needs: ClassVar[dict[str, str]] = {
        "waist seam": "a low open back ends in a waist seam; add one",
        "closure": "its edges need loops, or another way to close",
        "back panel seam": "add a back princess line",
    }
    clashes: ClassVar[dict[str, str]] = {
        "back neck": "a back has one neckline; leave the other off",
        "centre back zip": "there is no centre back to put a zip in",
    }

    depth: Annotated[
        Length | None,
        Number(
            "Do",
            "Do",
            "depth of the open back",
            f"{_SRC}.1",
            15.0,
            6.0,
            8.0,
            24.0,
        ),
    ] = None
    top: Annotated[
        Length | None,
        Number(
            "e1", "e1", "set-in at the top", f"{_SRC}.2", 5.0, 2.0, 0.0, 9.0, (1.2, 9.0)
        ),
    ] = None
    waist: Annotated[
        Length | None,
        Number("e2", "e2", "set-in at the waist", f"{_SRC}.2", 2.5, 1.0, 0.0, 6.0),
    ] = None
    corner_radius: Annotated[
        Length | None,
        Number("rc", "rc", "radius of the corner", f"{_SRC}.4", 1.5, 0.625, 0.0, 4.0),
    ] = None
    tightened: Annotated[
        Length | None,
        Number(
            "te",
            "te",
            "tightening of the slanted edge",
            f"{_SRC}.5",
            0.0,
            0.0,
            0.0,
            1.2,
        ),
    ] = None

    depth_from: DepthFrom = DepthFrom.NECK_POINT

    def tables(self) -> tuple[RuleTable, ...]:
        nape = self.depth_from is DepthFrom.NAPE
        return (OPEN_BACK, FROM_NAPE if nape else FROM_NECK_POINT)

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its own numbers; and the blade is cut away, so the shoulder has no dart."""
        yield from super().given(unit)
        yield Given(
            "sd",
            "sd",
            "back shoulder dart",
            Kind.LENGTH,
            0.0,
            Hand.DEFAULT,
            "first garment 2.3",
        )

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.NECK, "the open back", self._draw),
            Stage(Rank.BLEND, "the slanted edge", self._tighten),
        )

    def _draw(self, d: Drafting) -> None:
        n = d.n
        d.part = "back"
        e1 = d.point("E1", "O", "upper end of the slanted edge", right="e1", down="y1")
        e2 = d.point("E2", "O", "waist end of the slanted edge", right="e2", down="yW")
        p = d["Nb′"]
        if e1.x > p.x - 2.0:
            raise PaperError(
                "the top of the slanted edge lies too near the shoulder end of the "
                "neck: make the set-in at the top smaller, or the neck wider"
            )
        start = inward_back(n.sigma_b_new + n.tau)
        neck = arc_like(e1, p, start * -1.0).reversed()
        slant = Path.line(e1, e2)
        if n.rc > 0:
            neck, slant = _round_corner(neck, slant, n.rc)
        d.draw(
            "neck back",
            neck.reversed(),
            "neck of the open back",
            frm=("Nb′", "E1"),
            detail="square to the shoulder, in a slight U to the slanted edge",
        )
        d.draw("slant", slant, "slanted edge", frm=("E1", "E2"), detail="straight")

    def _tighten(self, d: Drafting) -> None:
        """Close a wedge at the middle of the slant, hinged on the panel (9.5)."""
        n = d.n
        if n.te == 0:
            return
        bc = d.sheet.piece("BC")
        edge = bc.edge("slant").path  # E2 up to E1
        mid = d.found(
            "M", edge.at_length(edge.length / 2), "middle of the slanted edge"
        )
        s = _length_at_level(bc.edge("panel").path, mid.y)  # Qb down to the waist
        d.found(
            "Jt",
            bc.edge("panel").path.at_length(s),
            "hinge of the tightening on the panel seam, level with M",
        )
        wanted, opening = edge.length - n.te, n.te
        for _ in range(3):  # drawn straight again, the edge loses more
            sheet = spread(
                d.sheet,
                "BC",
                On("panel", s),
                On("slant", edge.length / 2),
                at_start=0.0,
                at_end=-opening,
                moving="shoulder",
            )
            bent = sheet.edge("BC", "slant").path
            slant = straight("slant", bent.start, bent.end, EdgeKind.SEAM)
            opening += slant.path.length - wanted
        still, moved = (b.edge("shoulder").path for b in (bc, sheet.piece("BC")))
        m = from_pair(still.start, still.end, moved.start, moved.end)
        sheet = redraw(sheet, "BC", ["slant"], [slant]).named(**{"M′": m(mid)})
        upper, lower = sheet.edge("BC", "panel").path.split_at_length(s)
        panel = rounded(upper, lower, Fillet.of(corner(upper, lower)))
        sheet = redraw(sheet, "BC", ["panel"], [Edge("panel", panel)])
        d.lay(
            Verb.SPREAD,
            sheet,
            "BC.slant",
            "slanted edge tightened",
            amounts=(("by {}", "te"), ("a wedge of {} at M", opening)),
            frm=("M", "Jt"),
            detail="closed to nothing at Jt; the edge is ruled straight again, the "
            "panel seam rounded over Jt",
            lines=(slant.path, panel),
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.TAPE,
            2,
            "for the slanted edges, a hundredth shorter than the edge",
            length=n.tape,
        )

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        slants = "BC" in sheet.pieces and sheet.piece("BC").has("slant")
        return (Run("BC", "slant"),) if slants else ()

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.STAY,
            "Tape the slanted edges",
            (
                f"Tape of {fmt(n.tape)} on each net line; the edge is eased to it, so "
                "that it does not stretch.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=2 * n.tape,
            task=Task.STAY,
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from findings(n, sheet)


def _length_at_level(path: Path, y: float) -> float:
    """Length along a path that runs down, to where it crosses a level."""
    hits = path.meets(Path.line(Point(-200.0, y), Point(400.0, y)))
    if hits:
        return hits[0][0]
    return 0.0 if y < path.start.y else path.length


def _round_corner(neck: Path, slant: Path, radius: float) -> tuple[Path, Path]:
    """Neck and slant with the corner between them rounded; the arc is the neck's."""
    f = Fillet.of(corner(neck, slant), radius, math.inf)
    a = neck.before(neck.place_at_length(neck.length - f.tangent))
    b = slant.after(slant.place_at_length(f.tangent))
    return a + f.between(a.end, a.end_direction, b.start, b.start_direction), b
