"""Stand collar, a band round the neck (transformations 5)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Rank, Shown, Stage
from clothwright.features.collars.collar_on_stand import CollarOnStand
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
from clothwright.rules import Numbers
from clothwright.units.fields import Length


class StandCollar(CollarOnStand):
    """Stand collar, cut twice."""

    kind: Literal["stand collar"] = "stand collar"
    title: ClassVar[str] = "Stand collar"
    sentence: ClassVar[str] = (
        "A stand [collar] is {height} high and rises by {rise} to the front, its "
        "corners rounded by {corner}; the seam of the neck lies {inside}."
    )
    shows: ClassVar[Shown] = {"collar rise": ("CS.upper",)}

    height: Annotated[Length | None, HEIGHT] = None
    rise: Annotated[Length | None, RISE] = None
    corner: Annotated[Length | None, CORNER] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the stand collar", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return collar_operations(sheet, Task.STAND_COLLAR, self.inside)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return stand_findings(n, sheet)


def _draft(d: Drafting) -> None:
    draft_stand(d, d.n.c_high)
