"""Sailor collar on a pointed neck: a square panel behind, led to a point in front
(transformations 5)."""

import math
from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, Vector, direction, distance, mix, turned
from clothwright.features.base import Number, Rank, Stage
from clothwright.features.collars.collar import SRC, TURN, Collar
from clothwright.features.collars.collar_neck import closed_neck, opens_behind
from clothwright.features.collars.collar_pieces import COLLAR
from clothwright.features.collars.collar_sewing import collar_operations
from clothwright.features.collars.flat_collar import (
    AWAY,
    FLAT,
    OVERLAP,
    RAISED,
    lay_collar,
    neck_of_collar,
    overlap_findings,
)
from clothwright.features.necks.neck_shapes import V_FRONT
from clothwright.features.operations import Operation, Task
from clothwright.findings import Finding
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_INSIDE_TIP = 0.3
"""The panel ends so far inside the tip of the shoulder, cm (common practice)."""

_BESIDE_NECK = 0.1
"""It begins at least so far from the neck, share of the shoulder (our own)."""

_BOW = 8.0
"""Its edge leaves the point of the neck so far outside of the straight line to the
shoulder, degrees (our own: the point stays broad enough to turn)."""

SAILOR = RuleTable("sailor collar")


@SAILOR.rule(
    "collar across",
    "half width of the panel behind",
    source=SRC,
    key="c_across",
    formula="up to the armhole: XB/2 − 2 cm, or 0.5 cm inside the tip of a shoulder "
    "that ends before",
    low=8.0,
    high=25.0,
)
def _across(XB: float, bw: float, S: float, sigma_b_new: float) -> float:
    tip = bw + S * math.cos(math.radians(sigma_b_new))
    return min(XB / 2 - 2.0, tip - 0.5)


class SailorCollar(Collar):
    """Sailor collar."""

    kind: Literal["sailor collar"] = "sailor collar"
    title: ClassVar[str] = "Sailor collar"
    sentence: ClassVar[str] = (
        "A sailor [collar] hangs {deep} down the back, {across} to either side, and "
        "runs to the point of the neck; its shoulders overlap by {overlap}."
    )
    needs: ClassVar[dict[str, str]] = {
        **Collar.needs,
        V_FRONT: 'a sailor collar runs to the point of a neck; make its shape "V"',
    }

    deep: Annotated[
        Length | None,
        Number(
            "c_deep",
            "collar depth",
            "panel of the collar down the centre back",
            SRC,
            17.0,
            6.5,
            8.0,
            30.0,
            (15.0, 20.0),
        ),
    ] = None
    across: Annotated[
        Length | None,
        Number(
            "c_across",
            "collar across",
            "half width of the panel behind",
            SRC,
            low=8.0,
            high=25.0,
        ),
    ] = None
    overlap: Annotated[
        Length | None, replace(OVERLAP, cm=2.0, inch=0.75, usual=(1.3, 2.5))
    ] = None
    raised: Annotated[Length | None, RAISED] = None
    away: Annotated[Length | None, AWAY] = None
    turn: Annotated[Length | None, TURN] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FLAT, SAILOR)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the sailor collar", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return collar_operations(sheet, Task.FLAT_COLLAR)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return overlap_findings(n, sheet)


def _draft(d: Drafting) -> None:
    """From the neck of the collar: down the centre back, square across, up beside it
    to the shoulder, and in a curve to the point of the neck."""
    n = d.n
    neck = neck_of_collar(d)
    laid = closed_neck(d.sheet, n.Lr)
    cb = Point(neck.start.x, neck.start.y + n.c_deep)
    corner = Point(cb.x + n.c_across, cb.y)
    at_neck, tip = laid.shoulder, laid.tip
    share = (corner.x - at_neck.x) / (tip.x - at_neck.x)
    least = at_neck.x + _BESIDE_NECK * (tip.x - at_neck.x) - cb.x
    most = tip.x - _INSIDE_TIP - cb.x
    if n.c_across > most or share < _BESIDE_NECK:
        raise PaperError(
            f"the panel of the sailor collar is {n.c_across:.1f} cm to either side, "
            f"and must end on the shoulder: make it (collar across) {least:.1f} cm to "
            f"{most:.1f} cm"
        )
    shoulder = mix(at_neck, tip, share)
    d.found(
        "Xc",
        corner,
        "corner of the panel",
        frm=("Xb",),
        amounts=(("down the centre back by {}", "c_deep"), ("across by", "c_across")),
    )
    d.found(
        "Xo",
        shoulder,
        "shoulder of the collar's outer edge",
        frm=("Xc",),
        detail="plumb above it on the back shoulder",
    )
    reach = distance(neck.end, shoulder)
    plumb = Vector(0.0, -1.0)
    side = Path.cubic(
        neck.end,
        neck.end + turned(direction(neck.end, shoulder), -_BOW) * (0.4 * reach),
        shoulder + plumb * (0.35 * reach),
        shoulder,
    ) + Path.line(shoulder, corner)
    behind = opens_behind(d.sheet)
    back = ("end back", EdgeKind.SEAM) if behind else ("cb", EdgeKind.FOLD)
    edges = (
        Edge("neck", neck),
        Edge("outer", side),
        straight("lower", corner, cb),
        straight(back[0], cb, neck.start, back[1]),
    )
    lay_collar(d, Piece(COLLAR, "Collar", edges), "sailor collar", "c_across")
