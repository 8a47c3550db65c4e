"""A path run on straight at both ends (exact arithmetic)."""

import pytest

from clothwright.curves import Path, Point, degrees_between, distance

MM = 0.1


def test_it_goes_on_in_its_own_directions() -> None:
    path = Path.cubic(Point(0, 0), Point(3, 4), Point(8, 4), Point(9, 0))
    long = path.run_on(2.5)
    assert long.length == pytest.approx(path.length + 5.0, abs=1e-9)
    assert distance(long.at_length(2.5), path.start) < 0.001 * MM
    assert long.start == pytest.approx((-1.5, -2.0))  # 2.5 against (3, 4)
    assert degrees_between(long.end_direction, path.end_direction) < 1e-6
