"""Convertible collar, in one piece with its stand (transformations 5)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Point
from clothwright.features.base import Number, Rank, Stage
from clothwright.features.collars.collar import SRC, TURN, Collar
from clothwright.features.collars.collar_fall import LEAN, POINT, draft_fall
from clothwright.features.collars.collar_neck import closed_neck
from clothwright.features.collars.collar_sewing import collar_operations
from clothwright.features.operations import Operation, Task
from clothwright.paper import Drafting, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Angle, Length

CONVERTIBLE = RuleTable("convertible collar")


@CONVERTIBLE.rule(
    "collar stand",
    "stand of the collar behind, where it rolls over",
    source="common practice",
    key="c_roll",
    formula="0.4 of its width",
)
def _roll(c_wide: float) -> float:
    return 0.4 * c_wide


class ConvertibleCollar(Collar):
    """Convertible collar."""

    kind: Literal["convertible collar"] = "convertible collar"
    title: ClassVar[str] = "Convertible collar"
    sentence: ClassVar[str] = (
        "A convertible [collar] in one piece is {width} wide behind, with points "
        "{point} long."
    )

    width: Annotated[
        Length | None,
        Number(
            "c_wide",
            "collar width",
            "width of the collar",
            SRC,
            8,
            3.125,
            5,
            14,
            (7, 9),
        ),
    ] = None
    rise: Annotated[
        Length | None,
        Number(
            "c_rise",
            "collar rise",
            "rise of the collar's neck edge to the front",
            SRC,
            0.75,
            0.25,
            0.0,
            4.0,
            (0.5, 1.0),
        ),
    ] = None
    point: Annotated[Length | None, POINT] = None
    lean: Annotated[Angle | None, LEAN] = None
    turn: Annotated[Length | None, TURN] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (CONVERTIBLE,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the convertible collar", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return collar_operations(sheet, Task.SHIRT_COLLAR)


def _draft(d: Drafting) -> None:
    """As long as the trued half neck, to the centre front."""
    d.part = "collar"
    neck = closed_neck(d.sheet, d.n.Lr)
    start = d.start("Xb", Point(0.0, 0.0), "centre back of the collar, at the neck")
    sewn = draft_fall(d, start, neck.length, d.n.c_rise, "c_wide", "neck")
    d.found(
        "Xs",
        sewn.at_length(neck.back.length),
        "shoulder on the collar",
        frm=("Xb",),
        amounts=(("along by the back neck, {}", neck.back.length),),
    )
