"""Points and directions: what the words promise, by plane geometry."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from clothwright.curves import (
    Point,
    bearing,
    cross,
    degrees_between,
    direction,
    distance,
    dot,
    heading,
    left_normal,
    midpoint,
    mix,
    rotate,
    turned,
    unit,
    wedge_angle,
)
from shapes import points

ways = st.floats(-179.9, 179.9)


@given(ways)
def test_bearing_and_heading_are_inverse(way: float) -> None:
    assert heading(bearing(way)) == pytest.approx(way, abs=1e-9)
    assert math.hypot(*bearing(way)) == pytest.approx(1)


def test_clockwise_as_seen_with_y_down() -> None:
    right, down = Point(1, 0), Point(0, 1)
    assert cross(right, down) > 0
    assert turned(right, 90) == pytest.approx(down)
    assert bearing(90) == pytest.approx(down)
    assert left_normal(right) == pytest.approx(Point(0, -1))
    assert rotate(Point(2, 1), Point(1, 1), 90) == pytest.approx(Point(1, 2))


@given(ways, st.floats(-170, 170))
def test_angles_between(way: float, by: float) -> None:
    u = bearing(way)
    assert degrees_between(u, turned(u, by)) == pytest.approx(abs(by), abs=1e-6)


@given(points, points, st.floats(0, 1))
def test_between_two_points(a: Point, b: Point, t: float) -> None:
    m = mix(a, b, t)
    assert distance(a, m) == pytest.approx(t * distance(a, b), abs=1e-9)
    assert distance(a, midpoint(a, b)) == pytest.approx(distance(b, midpoint(a, b)))
    assume(distance(a, b) > 0.01)
    u = direction(a, b)
    assert math.hypot(*u) == pytest.approx(1)
    assert dot(u, left_normal(u)) == pytest.approx(0, abs=1e-12)
    assert distance(a + u * distance(a, b), b) < 1e-9


def test_no_direction_without_length() -> None:
    with pytest.raises(ValueError, match="same place"):
        unit((0.0, 0.0))
    with pytest.raises(ValueError, match="same place"):
        direction(Point(1, 1), Point(1, 1))


@given(st.floats(0.1, 90.0), st.floats(0.0, 1.0))
def test_a_wedge_is_as_wide_as_its_chord(reach: float, share: float) -> None:
    """Opened by its angle about its point, an end of its reach moves by its width."""
    width = 2 * reach * share
    end = Point(reach, 0.0)
    opened = rotate(end, Point(0.0, 0.0), wedge_angle(width, reach))
    assert distance(end, opened) == pytest.approx(width, abs=1e-6)


def test_no_wedge_is_wider_than_twice_its_reach() -> None:
    assert wedge_angle(10.0, 10.0) == pytest.approx(60.0)  # an equal-sided triangle
    with pytest.raises(ValueError, match="math domain"):
        wedge_angle(20.1, 10.0)
