"""Where on the side a side dart opens (transformations 1.1)."""

from enum import Enum

from clothwright.rules import RuleTable


class SideLevel(Enum):
    """Where on the side the dart opens."""

    LEVEL = "about level with the bust point"
    HIGH = "high under the arm"
    FRENCH = "low, slanting up from near the waist"


_HIGH, _FRENCH = 2.6, 5.0
"""A high dart lies so far below the underarm, a low slanting one so far above the
waist, cm (transformations 1.1: 3 to 8)."""

AT_LEVEL = {level: RuleTable(f"side dart {level.value}") for level in SideLevel}


@AT_LEVEL[SideLevel.HIGH].rule(
    "yd",
    "level of the side dart",
    key="yd",
    source="transformations 1.1",
    formula=f"yB + {_HIGH:g} cm",
)
def _high(yB: float) -> float:
    return yB + _HIGH


@AT_LEVEL[SideLevel.FRENCH].rule(
    "yd",
    "level of the side dart",
    key="yd",
    source="transformations 1.1",
    formula=f"yW − {_FRENCH:g} cm",
)
def _french(yW: float) -> float:
    return yW - _FRENCH
