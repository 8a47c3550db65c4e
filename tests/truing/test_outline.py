"""Quick questions to an outline, each proven against another way of asking: shapely
for crossings and containment, dense sampling for turning and curvature."""

import math
import time

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from shapely import Point as ShapelyPoint
from shapely.geometry import LineString, Polygon

from clothwright.curves import Cubic, Path, Point, Vector, bearing, polyline
from clothwright.truing.outline import (
    box,
    chords,
    crosses_itself,
    holds,
    stretch,
    tightest,
    wrong_way,
)

coordinate = st.floats(-30, 30, allow_nan=False, width=32)
points = st.builds(Point, coordinate, coordinate)
loops = st.lists(points, min_size=3, max_size=12, unique=True)
curves = st.builds(Cubic, points, points, points, points)


def closed(pts: list[Point]) -> list[Point]:
    return [*pts, pts[0]]


@given(loops)
@example([Point(0, 0), Point(4, 4), Point(4, 0), Point(0, 4)])  # a bow tie
@example([Point(0, 0), Point(6, 0), Point(3, 0), Point(3, 3)])  # folds back on itself
def test_crossings_as_shapely_finds_them(pts: list[Point]) -> None:
    polygon = Polygon(pts)
    # an outline that turns straight back is a corner of no paper, another check's
    assume(all(_bent(pts, i) for i in range(len(pts))))
    assert (crosses_itself(polyline(closed(pts))) is None) == polygon.is_valid


def _bent(pts: list[Point], i: int) -> bool:
    a, b, c = pts[i - 1], pts[i], pts[(i + 1) % len(pts)]
    u, v = b - a, c - b
    return abs(u[0] * v[1] - u[1] * v[0]) > 1e-9 * (1 + abs(u[0] * v[0] + u[1] * v[1]))


@given(st.lists(st.tuples(points, points, points), min_size=1, max_size=6))
def test_crossings_of_curves_as_shapely_finds_them(
    ends: list[tuple[Point, Point, Point]],
) -> None:
    path = Path(
        tuple(Cubic(ends[i - 1][2], h, k, end) for i, (h, k, end) in enumerate(ends))
    )
    pts = [Point(*p) for p in chords(path)][:-1]
    assume(len(pts) > 2)
    assume(all(_bent(pts, i) for i in range(len(pts))))
    assert (crosses_itself(path) is None) == Polygon(pts).is_valid


def test_a_star_that_goes_round_its_middle_twice_crosses_itself() -> None:
    """Every step of a pentagram turns clockwise about its middle, as one round does."""
    tips = [bearing(72.0 * i) * 10.0 for i in range(5)]
    assert crosses_itself(polyline(closed(tips))) is None
    assert crosses_itself(polyline(closed(tips[::2] + tips[1::2]))) is not None


def test_touching_counts() -> None:
    pts = [Point(0, 0), Point(9, 0), Point(9, 9), Point(4, 0), Point(0, 9)]
    assert crosses_itself(polyline(closed(pts))) is not None


@given(st.lists(st.floats(2, 20), min_size=5, max_size=40), points)
def test_inside_as_shapely_finds_it(radii: list[float], p: Point) -> None:
    n = len(radii)
    pts = [
        Point(r * math.cos(i * math.tau / n), r * math.sin(i * math.tau / n))
        for i, r in enumerate(radii)
    ]
    polygon = Polygon(pts)
    assume(polygon.exterior.distance(ShapelyPoint(p)) > 1e-6)
    assert holds(closed(pts), p) == polygon.contains(ShapelyPoint(p))
    assert crosses_itself(polyline(closed(pts))) is None


@given(curves)
@example(Cubic(Point(0, 0), Point(10, 0), Point(0, 5), Point(10, 5)))  # an S
@example(Cubic(Point(0, 0), Point(0, 0), Point(5, 5), Point(9, 0)))  # handle on its end
@example(Cubic(Point(0, 0), Point(3, 0), Point(6, 0), Point(9, 0)))  # straight
def test_wrong_way_turning_as_sampled(curve: Cubic) -> None:
    assume(min(math.hypot(*curve.slope(i / 400)) for i in range(401)) > 2.0)
    plus, minus = curve.turning(4000)
    assert wrong_way(curve) == pytest.approx(min(plus, minus), abs=0.2)


@given(curves)
def test_the_least_radius_as_sampled(curve: Cubic) -> None:
    ts = [(i + 0.5) / 64 for i in range(64)]
    assume(min(math.hypot(*curve.slope(t)) for t in ts) > 1e-3)
    bends = [curve.curvature(t) for t in ts]
    outward, hollow = tightest(Path((curve,)), 64)
    most, least = max(*bends, 0.0), min(*bends, 0.0)
    assert 1 / outward == pytest.approx(most, rel=1e-6, abs=1e-9)
    assert 1 / hollow == pytest.approx(-least, rel=1e-6, abs=1e-9)


def test_a_straight_outline_has_no_radius() -> None:
    path = polyline([Point(0, 0), Point(5, 0), Point(5, 5)])
    assert tightest(path) == (math.inf, math.inf)
    assert box(chords(path)) == (5, 5)


def test_a_piece_is_asked_in_well_under_a_millisecond() -> None:
    """120 chords, as many as a bodice piece has; 1 ms is the limit we set."""
    pts = [
        Point((20 + i % 2) * math.cos(a), (20 + i % 2) * math.sin(a))
        for i, a in ((i, i * math.tau / 120) for i in range(120))
    ]
    best = math.inf
    for _ in range(7):
        t = time.perf_counter()
        assert crosses_itself(polyline(closed(pts))) is None
        best = min(best, time.perf_counter() - t)
    assert best < 1e-3


@given(st.lists(st.floats(2, 20), min_size=5, max_size=40), points, st.floats(0, 7))
def test_a_stretch_is_what_of_a_line_lies_inside(
    radii: list[float], p: Point, way: float
) -> None:
    """Against shapely: that part of a line through a point which holds the point."""
    n = len(radii)
    pts = [
        Point(r * math.cos(i * math.tau / n), r * math.sin(i * math.tau / n))
        for i, r in enumerate(radii)
    ]
    along = Vector(math.cos(way), math.sin(way))
    polygon, spot = Polygon(pts), ShapelyPoint(p)
    assume(polygon.exterior.distance(spot) > 1e-3)
    parts = polygon.intersection(LineString([p - along * 200, p + along * 200]))
    here = [
        part.length
        for part in getattr(parts, "geoms", [parts])
        if part.distance(spot) < 1e-6
    ]
    expected = here[0] if here else 0.0
    assert stretch(closed(pts), p, along) == pytest.approx(expected, abs=1e-6)
