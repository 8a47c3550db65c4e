"""Found by trial, against scipy's brentq."""

import math
from collections.abc import Callable

import pytest
from scipy.optimize import brentq

from clothwright.blocks.trial import by_trial

CASES: list[tuple[Callable[[float], float], float, float]] = [
    (lambda x: x**3 - 2, 0.0, 5.0),
    (lambda x: math.cos(x) - x, 0.0, 2.0),
    (lambda x: 4 - math.sqrt(x), 0.0, 100.0),
    (lambda x: math.atan(x - 3) * 10, -50.0, 60.0),
]


@pytest.mark.parametrize("case", range(len(CASES)))
def test_the_place_is_found(case: int) -> None:
    off, low, high = CASES[case]
    assert by_trial(off, low, high) == pytest.approx(brentq(off, low, high), abs=1e-5)


def test_none_where_there_is_none() -> None:
    assert by_trial(lambda x: x + 10, 0.0, 5.0) is None
    assert by_trial(lambda x: x - 10, 0.0, 5.0) is None
