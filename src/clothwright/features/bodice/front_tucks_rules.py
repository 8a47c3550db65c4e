"""Where the first tuck of a front lies (transformations 10)."""

from clothwright.features.base import Number
from clothwright.rules import RuleTable

SRC = "transformations 10"

FIRST = Number(
    "first_usual",
    "first t",
    "usual distance of the first tuck from the edge or the fold",
    SRC,
    1.5,
    0.625,
)

TUCKS = RuleTable("tucks of the front")


@TUCKS.rule(
    "cf off",
    "edges of the front set back from the centre",
    source=SRC,
    key="cf_off",
    formula="none",
)
def _none() -> float:
    return 0.0


@TUCKS.rule(
    "beside t",
    "first tuck of the front from the centre",
    source=SRC,
    key="tuck_first",
    formula="first t, from an edge that is set back for a lacing",
    low=0.3,
    high=12.0,
)
def _first(first_usual: float, cf_off: float) -> float:
    return first_usual + cf_off
