"""Bertha: a deep flat collar of one layer that falls over the shoulders
(transformations 5)."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Number, Rank, Shown, Stage
from clothwright.features.collars.collar import SRC, Collar
from clothwright.features.collars.collar_neck import opens_behind
from clothwright.features.collars.collar_pieces import COLLAR, one_layer
from clothwright.features.collars.collar_sewing import single_operations
from clothwright.features.collars.flat_collar import (
    OVERLAP,
    RAISED,
    neck_of_collar,
    overlap_findings,
)
from clothwright.features.necks.neck_shapes import V_FRONT
from clothwright.features.operations import Operation
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Sheet, Verb
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

BERTHA = RuleTable("bertha")


@BERTHA.rule(
    "collar away",
    "collar short of the centre front",
    source=SRC,
    key="c_away",
    formula="none: it runs on over the centre",
)
def _away() -> float:
    return 0.0


_HOLLOW = 10.0
"""An edge that bends inwards by more is no line that a cutter would draw (our own)."""


class Bertha(Collar):
    """Bertha, or a capelet when it is deep."""

    kind: Literal["bertha"] = "bertha"
    title: ClassVar[str] = "Bertha"
    sentence: ClassVar[str] = (
        "A [bertha] falls {width} from the neck over the shoulders, which overlap by "
        "{overlap}."
    )
    shows: ClassVar[Shown] = {"collar width": ("CO.hem",)}
    clashes: ClassVar[dict[str, str]] = {
        **Collar.clashes,
        V_FRONT: "a bertha lies on a neck that is square to the centre; take a round "
        "one",
    }

    width: Annotated[
        Length | None,
        Number(
            "c_wide",
            "collar width",
            "depth of the bertha from the neck",
            SRC,
            18.0,
            7.0,
            8.0,
            40.0,
            (12.0, 30.0),
        ),
    ] = None
    overlap: Annotated[
        Length | None, replace(OVERLAP, cm=1.0, inch=0.375, usual=(0.0, 2.5))
    ] = None
    raised: Annotated[Length | None, RAISED] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (BERTHA,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the bertha", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return single_operations(sheet)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        over = n.c_wide - n.Lr
        if over < 0:
            yield Finding(
                "KB1",
                Severity.NOTE,
                f"The bertha ends {-over:.1f} cm inside the tip of the shoulder.",
                "collar width",
                'Make it deeper, or take a "flat collar".',
                {"over": over},
            )
        yield from overlap_findings(n, sheet)
        hollow = min(sheet.edge(COLLAR, "hem").path.turning())
        if hollow > _HOLLOW:
            yield Finding(
                "KB2",
                Severity.REFUSE,
                f"The edge of the bertha bends inwards by {hollow:.0f}° over the "
                "shoulder.",
                "collar width",
                "Make it less deep (collar width), its overlap (collar overlap) less, "
                "or the back neck (Db) less deep.",
                {"hollow": hollow},
            )


def _draft(d: Drafting) -> None:
    """Equally deep all round the neck; on the fold where the garment is closed."""
    neck = neck_of_collar(d)
    piece = one_layer(neck, d.n.c_wide, "Bertha", behind=opens_behind(d.sheet))
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        COLLAR,
        "bertha, of one layer",
        amounts=(("deep all round", "c_wide"),),
        frm=("Xb", "Xf"),
    )
