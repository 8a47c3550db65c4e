"""The length of a torso where the order leaves it out (blocks D)."""

from clothwright.rules import Given, Hand, Kind, RuleTable
from clothwright.units import Unit

_SRC = "blocks D"

_DRESS = 60.0, 24.0
"""Length from the waist, cm and inches (D)."""

LENGTH = RuleTable("length of a torso")


@LENGTH.rule(
    "L",
    "length of the torso from the waist",
    source=_SRC,
    formula="L usual",
    key="L",
    low=18.0,
    high=125.0,
)
def _length(L_usual: float) -> float:
    return L_usual


def usual_length(unit: Unit, usual: tuple[float, float] = _DRESS) -> Given:
    """The length that an order leaves out; `usual` in cm and in inches. What makes a
    top of the torso says another, on a later page."""
    cm, inch = usual
    return Given(
        "L_usual",
        "L usual",
        "usual length of the torso from the waist",
        Kind.LENGTH,
        inch * 2.54 if unit is Unit.IN else cm,
        Hand.DEFAULT,
        _SRC,
    )
