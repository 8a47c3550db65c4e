"""How far a sleeve reaches: its length from the top of the cap, and what that leaves
under the arm (first garment 17.3, blocks B9)."""

import math
from collections.abc import Collection, Mapping
from dataclasses import replace
from enum import Enum

from clothwright.rules import Rule, RuleError, RuleTable

_SRC = "first garment 17"

LENGTH = RuleTable("length of the sleeve")
_rule = LENGTH.rule

LEAST_SEAM = 2.5
"""Least length of the seam under the arm, cm (17.3); less is a cap sleeve."""

GOOD_SEAM = 3.5
"""What the usual sleeve leaves under the arm, cm: the turned hem then ends below the
allowance of the cap (our ruling)."""


class Reach(Enum):
    """How far a sleeve reaches, where no length is given."""

    SHORT = "short"
    """Half way down the upper arm."""

    ELBOW = "to the elbow"
    """Just above the elbow."""

    THREE_QUARTER = "three-quarter"
    """Half way between elbow and wrist."""

    WRIST = "to the wrist"
    """To the wrist bone."""


REACH: dict[Reach, RuleTable] = {
    r: RuleTable(f"length of a sleeve {r.value}") for r in Reach
}
"""The rule of the length for each reach."""


@REACH[Reach.SHORT].rule(
    "lh",
    "length of the sleeve from T",
    source=f"{_SRC}.3",
    formula="lh usual, or h and 3.5 cm where that is longer",
    low=12.0,
    high=30.0,
)
def lh(lh_usual: float, h_cap: float) -> float:
    return max(lh_usual, h_cap + GOOD_SEAM)


@REACH[Reach.ELBOW].rule(
    "lh",
    "length of the sleeve from T",
    source="common practice, no source",
    key="lh",
    formula="SE − 2 cm, or h and 3.5 cm where that is longer",
    low=12.0,
    high=80.0,
)
def _to_elbow(SE: float, h_cap: float) -> float:
    return max(SE - 2.0, h_cap + GOOD_SEAM)


@REACH[Reach.THREE_QUARTER].rule(
    "lh",
    "length of the sleeve from T",
    source="common practice, no source",
    key="lh",
    formula="half way from SE to AL, less what is sewn to its end",
    low=12.0,
    high=80.0,
)
def _three_quarter(
    SE: float, AL: float, end_depth: float, sleeve_blouse: float
) -> float:
    return (SE + AL) / 2 + sleeve_blouse - end_depth


@REACH[Reach.WRIST].rule(
    "lh",
    "length of the sleeve from T",
    source="blocks B9, transformations 4",
    key="lh",
    formula="AL, less the width of a cuff, and what blouses over it",
    low=12.0,
    high=80.0,
)
def _to_wrist(AL: float, end_depth: float, sleeve_blouse: float) -> float:
    return AL + sleeve_blouse - end_depth


LEFT_OUT = RuleTable("length of a sleeve left out")


@LEFT_OUT.rule(
    "lh",
    "length of the sleeve from T",
    source=f"{_SRC}.3",
    key="lh",
    formula="lh usual, or h and 3.5 cm where that is longer",
    low=12.0,
    high=30.0,
)
def _left_out(lh_usual: float, h_cap: float) -> float:
    """A short sleeve's, where the order says neither reach nor length."""
    return lh(lh_usual, h_cap)


def long_where_left_out(
    rules: Mapping[str, Rule], given: Collection[str]
) -> Mapping[str, Rule]:
    """The rule of a sleeve to the wrist, for what is worn there alone, in place of the
    usual one where the order says neither reach nor length; as `Feature.rewritten`. A
    shoulder that runs on over the arm keeps it as lh0."""
    wrist = REACH[Reach.WRIST].rules["lh"]
    return {
        key: replace(wrist, key=key, symbol=rules[key].symbol, name=rules[key].name)
        for key in ("lh", "lh_0")
        if key not in given and key in rules and rules[key].compute is _left_out
    }


@_rule(
    "lh − h",
    "depth of the seam under the arm",
    source=f"{_SRC}.3",
    key="under_arm",
    formula="lh − h",
)
def _under_arm(lh: float, h_cap: float) -> float:
    if lh - h_cap < LEAST_SEAM - 1e-6:
        least = math.ceil(10 * (h_cap + LEAST_SEAM) + 1) / 10  # right in inches too
        raise RuleError(
            f"the cap is {h_cap:.1f} cm high, so a sleeve of {lh:.1f} cm leaves less "
            f"than 2.5 cm under the arm; set length to {least:.1f} cm or more"
        )
    return lh - h_cap
