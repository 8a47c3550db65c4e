"""Stand collar, a band round the neck (transformations 5)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.collars.collar import Collar
from clothwright.features.collars.collar_inside import GIVEN, NOT_BESIDE, WANTED, Inside
from clothwright.features.collars.collar_sewing import collar_operations
from clothwright.features.collars.collar_stand import (
    CORNER,
    HEIGHT,
    RISE,
    draft_stand,
    stand_findings,
)
from clothwright.features.linings.facing_seams import facing_seams
from clothwright.features.operations import Operation, Task
from clothwright.findings import Finding
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length


class StandCollar(Collar):
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

    inside: Inside = Inside.FACED

    def provides(self) -> frozenset[str]:
        return self.gives | GIVEN[self.inside]

    def wants(self) -> Mapping[str, str]:
        return {**self.needs, **WANTED[self.inside]}

    def forbids(self) -> Mapping[str, str]:
        return {**self.clashes, **NOT_BESIDE[self.inside]}

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        faced = facing_seams(t, n) if self.inside is Inside.IN_STAND else ()
        return (*faced, *super().sewn(t, n))

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
