"""Lengths, areas and directions against scipy's quadrature and svgpathtools."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from svgpathtools import CubicBezier

from clothwright.curves import (
    CLOSE,
    Cubic,
    Line,
    Path,
    Place,
    Point,
    Segment,
    degrees_between,
    distance,
    polyline,
)
from shapes import MM, cubics, gentle, paths, points, segments, shares


def _quad(c: Cubic) -> float:
    return float(
        quad(lambda t: math.hypot(*c.slope(t)), 0, 1, epsabs=1e-11, limit=200)[0]
    )


@settings(max_examples=40)
@given(cubics)
def test_arc_length_as_scipy_integrates_it(c: Cubic) -> None:
    assert c.length == pytest.approx(_quad(c), abs=1e-6)


@settings(max_examples=15)
@given(cubics)
def test_arc_length_as_svgpathtools_has_it(c: Cubic) -> None:
    other = CubicBezier(*(complex(*p) for p in c.points))
    assert c.length == pytest.approx(other.length(error=1e-9), abs=1e-5)


@given(cubics)
def test_area_as_scipy_integrates_it(c: Cubic) -> None:
    def term(t: float) -> float:
        (x, y), (dx, dy) = c.at(t), c.slope(t)
        return (x * dy - y * dx) / 2

    assert c.area_term() == pytest.approx(quad(term, 0, 1)[0], abs=1e-6)


def test_a_quarter_circle() -> None:
    """Radius 10: 15.708 long, area 78.54; the cubic is within 0.03 % of the circle."""
    k = 10 * 0.5522847498
    c = Cubic(Point(10, 0), Point(10, k), Point(k, 10), Point(0, 10))
    assert c.length == pytest.approx(5 * math.pi, abs=0.005)
    sector = Path((Line(Point(0, 0), Point(10, 0)), c, Line(Point(0, 10), Point(0, 0))))
    assert sector.area == pytest.approx(25 * math.pi, abs=0.03)
    assert c.curvature(0.5) == pytest.approx(0.1, abs=0.001)
    assert c.turning()[0] == pytest.approx(90, abs=1e-6)


@given(segments, shares)
def test_the_place_at_a_length(s: Segment, share: float) -> None:
    t = s.parameter_at_length(s.length * share)
    assert s.part(0, t).length == pytest.approx(s.length * share, abs=1e-6)


@given(paths(), shares)
def test_places_and_lengths_are_inverse(path: Path, share: float) -> None:
    s = path.length * share
    place = path.place_at_length(s)
    assert path.length_to(place) == pytest.approx(s, abs=1e-6)
    assert distance(path.at(place), path.at_length(s)) < 1e-9
    assert path.at_length(-1) == path.start
    assert distance(path.at_length(path.length + 1), path.end) < 1e-9
    assert path.length_to(Place(0, 0)) == 0
    last = len(path.segments) - 1
    assert path.length_to(Place(last, 1.0)) == pytest.approx(path.length)


@given(paths(), shares)
def test_directions_are_of_unit_length_and_along_the_path(
    path: Path, share: float
) -> None:
    s = path.length * share
    place = path.place_at_length(s)
    u = path.direction_at_length(s)
    assert math.hypot(*u) == pytest.approx(1)
    if 0.01 < place.t < 0.99:
        step = path.at_length(s + 1e-4) - path.at_length(s - 1e-4)
        assert degrees_between(u, step) < 0.1


@given(segments, points)
def test_the_nearest_place_is_nearest(s: Segment, p: Point) -> None:
    """No sampled place is nearer by more than a hundredth of a millimetre."""
    t, d = s.nearest(p)
    assert distance(s.at(t), p) == pytest.approx(d, abs=1e-6)
    assert d <= min(distance(s.at(i / 200), p) for i in range(201)) + 0.01 * MM


@given(gentle())
def test_walking_back_is_as_long(c: Cubic) -> None:
    assert c.reversed().length == pytest.approx(c.length, abs=CLOSE)
    assert c.reversed().area_term() == pytest.approx(-c.area_term())
    assert c.reversed().reversed() == c
    plus, minus = c.turning()
    assert c.reversed().turning() == pytest.approx((minus, plus))


@pytest.mark.parametrize("bad", [math.nan, math.inf])
def test_points_that_are_no_numbers(bad: float) -> None:
    with pytest.raises(ValueError, match="not a number"):
        Line(Point(0, 0), Point(bad, 0))
    with pytest.raises(ValueError, match="not a number"):
        Path.cubic(Point(0, 0), Point(1, bad), Point(2, 0), Point(3, 0))


def test_parts_that_do_not_join() -> None:
    a, b = Line(Point(0, 0), Point(1, 0)), Line(Point(1, 1), Point(2, 2))
    with pytest.raises(ValueError, match="do not join"):
        Path((a, b))
    with pytest.raises(ValueError, match="at least one"):
        Path(())


@given(st.lists(points, min_size=2, max_size=6, unique=True))
def test_straight_lines_through_points(pts: list[Point]) -> None:
    path = polyline(pts)
    whole = sum(distance(a, b) for a, b in zip(pts, pts[1:], strict=False))
    assert path.length == pytest.approx(whole)
