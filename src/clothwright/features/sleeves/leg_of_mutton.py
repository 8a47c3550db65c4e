"""The leg-of-mutton sleeve: close below the elbow, very full at the top
(transformations 4)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.operations import Operation
from clothwright.features.sleeves.puffed_cap import (
    PuffedCap,
    head_findings,
    head_operations,
)
from clothwright.features.sleeves.sleeve_fullness import open_head
from clothwright.findings import Finding
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations 4"


class LegOfMutton(Feature):
    """Shaped sleeve, opened widely from the elbow up and gathered into the armhole."""

    kind: Literal["leg of mutton"] = "leg of mutton"
    title: ClassVar[str] = "Leg of mutton"
    sentence: ClassVar[str] = (
        "The sleeve is a [leg of mutton]: opened by {opened} from the elbow up and "
        "raised by {raised}."
    )
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = PuffedCap.gives
    needs: ClassVar[dict[str, str]] = {
        "bent sleeve": "it is close below the elbow; shape the set-in sleeve there by "
        "a dart or ease"
    }
    clashes: ClassVar[dict[str, str]] = PuffedCap.clashes

    opened: Annotated[
        Length | None,
        Number(
            "puff",
            "puff",
            "opening of the cap for gathers",
            _SRC,
            12.0,
            5.0,
            5.0,
            30.0,
            (10.0, 20.0),
        ),
    ] = None
    raised: Annotated[
        Length | None,
        Number(
            "rise",
            "rise",
            "top of the cap raised for gathers",
            _SRC,
            4.0,
            1.5,
            0.0,
            12.0,
            (4.0, 8.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_HEAD, "the cap of the sleeve", open_head),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return head_operations(sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        # its opening and its rise both go into gathers
        return head_findings(sheet, 0.8 * n.puff, n.puff + 2.5 * n.rise + n.E_cap)
