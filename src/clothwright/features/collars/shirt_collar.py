"""Shirt collar in two pieces, stand and fall (transformations 5)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Point
from clothwright.features.base import Number, Rank, Shown, Stage
from clothwright.features.collars.collar import SRC, TURN
from clothwright.features.collars.collar_fall import (
    LEAN,
    POINT,
    draft_fall,
    fall_findings,
)
from clothwright.features.collars.collar_on_stand import CollarOnStand
from clothwright.features.collars.collar_pieces import STAND
from clothwright.features.collars.collar_sewing import collar_operations
from clothwright.features.collars.collar_stand import (
    CORNER,
    HEIGHT,
    RISE,
    draft_stand,
    stand_findings,
)
from clothwright.features.operations import Operation, Task
from clothwright.findings import Finding
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Angle, Length

LONGER = 0.1
"""A fall is so much longer than the edge of the stand it is sewn to, cm (0 to 0.2)."""

SHIRT = RuleTable("shirt collar")


@SHIRT.rule(
    "collar fall",
    "width of the fall behind",
    source=SRC,
    key="c_fall",
    formula="stand + 1.25 cm: the seam of the neck is hidden",
    low=2.0,
    high=12.0,
)
def _fall(c_high: float) -> float:
    return c_high + 1.25


class ShirtCollar(CollarOnStand):
    """Shirt collar."""

    kind: Literal["shirt collar"] = "shirt collar"
    title: ClassVar[str] = "Shirt collar"
    sentence: ClassVar[str] = (
        "A shirt [collar] with points {point} long falls {fall} over a stand {height} "
        "high; the seam of the neck lies {inside}."
    )
    shows: ClassVar[Shown] = {
        "collar rise": ("CS.upper",),
        "collar fall": ("CO.outer",),
    }

    height: Annotated[Length | None, HEIGHT] = None
    front: Annotated[
        Length | None,
        Number(
            "c_front",
            "collar height in front",
            "height of the stand at the centre front",
            SRC,
            2.3,
            0.875,
            1.2,
            6.0,
            (2.0, 2.6),
        ),
    ] = None
    rise: Annotated[Length | None, RISE] = None
    corner: Annotated[Length | None, CORNER] = None
    fall: Annotated[
        Length | None,
        Number(
            "c_fall", "collar fall", "width of the fall behind", SRC, low=2.0, high=12.0
        ),
    ] = None
    dip: Annotated[
        Length | None,
        Number(
            "c_dip",
            "collar dip",
            "front end of the fall's foot below its middle",
            SRC,
            2.0,
            0.75,
            0.0,
            6.0,
            (1.5, 3.0),
        ),
    ] = None
    point: Annotated[Length | None, POINT] = None
    lean: Annotated[Angle | None, LEAN] = None
    turn: Annotated[Length | None, TURN] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHIRT,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the shirt collar", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return collar_operations(sheet, Task.SHIRT_COLLAR, self.inside)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from stand_findings(n, sheet)
        yield from fall_findings(n, "c_fall", "c_high")


def _draft(d: Drafting) -> None:
    """The stand, then the fall to the stand's upper edge up to the centre front."""
    draft_stand(d, d.n.c_front, fall=True)
    foot = d.sheet.length(STAND, "upper") + LONGER
    above = Point(0.0, -2 * d.n.c_fall - d.n.c_high)
    draft_fall(d, above, foot, -d.n.c_dip, "c_fall", "foot")
