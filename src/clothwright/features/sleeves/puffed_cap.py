"""A cap opened and gathered: the puffed sleeve (transformations 4)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.operations import Operation, Stitch, Task, Work
from clothwright.features.sleeves.sleeve_fullness import open_head
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "transformations 4"

GATHERS = 5.0, 12.0
"""What a puffed cap is longer than its armhole, cm, for soft to rich gathers."""


class PuffedCap(Feature):
    """Cap of the sleeve opened, raised and gathered into the armhole."""

    kind: Literal["puffed cap"] = "puffed cap"
    title: ClassVar[str] = "Puffed cap"
    sentence: ClassVar[str] = (
        "The sleeve is [puffed at the top]: opened by {opened}, raised by {raised} and "
        "gathered between the notches."
    )
    page: ClassVar[int] = 2
    gives: ClassVar[frozenset[str]] = frozenset({"full cap", "sleeve cap"})
    needs: ClassVar[dict[str, str]] = {
        "set-in sleeve": 'it is made of a plain sleeve; add a "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {"sleeve cap": "a sleeve has one kind of cap"}

    opened: Annotated[
        Length | None,
        Number(
            "puff",
            "puff",
            "opening of the cap for gathers",
            _SRC,
            6.0,
            2.5,
            2.0,
            20.0,
            (5.0, 10.0),
        ),
    ] = None
    raised: Annotated[
        Length | None,
        Number(
            "rise",
            "rise",
            "top of the cap raised for gathers",
            _SRC,
            2.0,
            0.75,
            0.0,
            9.0,
            (1.5, 4.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_HEAD, "the cap of the sleeve", open_head),)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return head_operations(sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return head_findings(sheet, *GATHERS)


def gathered_in(sheet: Sheet) -> float:
    """What the cap is longer than its armhole, cm."""
    return sum(
        sheet.chain_length(s.right) - sheet.chain_length(s.left)
        for s in sheet.seams
        if s.code in ("S23", "S24")
    )


def head_findings(sheet: Sheet, low: float, high: float) -> Iterable[Finding]:
    """How much is gathered."""
    took = gathered_in(sheet)
    if not low <= took <= high:
        yield Finding(
            "SL10",
            Severity.WARN,
            f"The cap is {took:.1f} cm longer than its armhole; {low:.1f} cm to "
            f"{high:.1f} cm gathers well.",
            "puff",
            "Open it more." if took < low else "Open it less, or raise it less.",
            {"gathers": took},
        )


def head_operations(sheet: Sheet, fmt: Callable[[float], str]) -> Iterable[Operation]:
    """Draw the cap up before it is set."""
    took = gathered_in(sheet)
    cap = sheet.length("SL", "cap back") + sheet.length("SL", "cap front")
    yield Operation(
        Work.SLEEVE_HEAD,
        "Gather the caps of the sleeves",
        (
            f"Each takes in {fmt(took)}: two rows of long stitches from notch to "
            "notch, drawn up most at the top.",
        ),
        stitch=Stitch.LOCK,
        length=4 * cap,
        task=Task.GATHER,
    )
