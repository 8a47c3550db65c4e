"""Where curves meet, against shapely on fine chords, and by what meeting means."""

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from shapely import LineString, MultiPoint
from shapely import Point as ShapelyPoint

from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Segment,
    bearing,
    crossings,
    degrees_between,
    distance,
    meet_lines,
)
from shapes import MM, cubics, gentle, lines, paths, points, segments

FINE = 1e-4


def _shapely(a: Path, b: Path) -> list[Point]:
    met = LineString(a.flatten(FINE)).intersection(LineString(b.flatten(FINE)))
    if isinstance(met, ShapelyPoint):
        return [Point(met.x, met.y)] if not met.is_empty else []
    if isinstance(met, MultiPoint):
        return [Point(p.x, p.y) for p in met.geoms]
    assume(met.is_empty)  # they lie on each other for a stretch: stated as a limit
    return []


@given(segments, segments)
def test_what_is_found_is_on_both(a: Segment, b: Segment) -> None:
    for t, s in crossings(a, b):
        assert distance(a.at(t), b.at(s)) < 1e-6


@given(st.one_of(gentle(), lines), st.one_of(gentle(), cubics))
@example(
    Line(Point(0, 0), Point(10, 0)),
    Cubic(Point(0, 5), Point(3, -15), Point(7, 15), Point(10, -5)),
)
def test_crossings_as_shapely_finds_them(a: Segment, b: Segment) -> None:
    """The same number in the same places, where they cross at more than 3 degrees and
    clear of their ends."""
    assume(min(b.nearest(p)[1] for p in (a.start, a.end)) > 0.01)
    assume(min(a.nearest(p)[1] for p in (b.start, b.end)) > 0.01)
    expected = _shapely(Path((a,)), Path((b,)))
    found = crossings(a, b)
    for p in expected:
        t, s = a.nearest(p)[0], b.nearest(p)[0]
        crossing = degrees_between(a.slope(t), b.slope(s))
        assume(min(crossing, 180 - crossing) > 3)
    for t, s in found:
        crossing = degrees_between(a.slope(t), b.slope(s))
        assume(min(crossing, 180 - crossing) > 3)
    assert len(found) == len(expected)
    for t, _ in found:
        assert min(distance(a.at(t), p) for p in expected) < 0.1 * MM


@given(paths(), paths())
def test_meetings_of_paths_are_on_both_in_order(a: Path, b: Path) -> None:
    found = a.meets(b)
    assert found == sorted(found)
    for s, t in found:
        assert distance(a.at_length(s), b.at_length(t)) < 1e-5


@given(gentle(), st.floats(0.1, 0.9), st.floats(20, 160))
def test_a_line_laid_across_a_curve_is_found(
    c: Cubic, t: float, degrees: float
) -> None:
    """The found answer satisfies the definition: we know one crossing beforehand."""
    p, u = c.at(t), c.slope(t)
    v = _turned(u, degrees)
    across = Line(p + v * -4, p + v * 4)
    assert any(distance(c.at(h), p) < 1e-6 for h, _ in crossings(c, across))
    assert any(distance(c.at(h), p) < 1e-6 for _, h in crossings(across, c))


def _turned(u: Point, degrees: float) -> Point:
    way = bearing(degrees)
    n = distance(Point(0, 0), u)
    return Point(
        (u[0] * way[0] - u[1] * way[1]) / n, (u[0] * way[1] + u[1] * way[0]) / n
    )


@given(gentle(), gentle())
def test_shared_ends_are_found(a: Cubic, b: Cubic) -> None:
    m = b.start - a.end
    joined = Cubic(*(p - m for p in b.points))
    angle = degrees_between(a.end_direction, joined.start_direction)
    assume(3 < angle < 177)
    hits = crossings(a, joined)
    assert any(t > 1 - 1e-6 and s < 1e-6 for t, s in hits)


def test_boxes_apart() -> None:
    a = Line(Point(0, 0), Point(1, 1))
    assert crossings(a, Line(Point(5, 0), Point(6, 1))) == []
    assert crossings(a, Line(Point(0, 5), Point(1, 6))) == []
    assert crossings(Line(Point(5, 0), Point(6, 1)), a) == []


@given(points, st.floats(0, 360), points, st.floats(5, 175))
def test_two_straight_lines(a: Point, way: float, b: Point, between: float) -> None:
    u, v = bearing(way), bearing(way + between)
    p = meet_lines(a, u, b, v)
    for q, w in ((a, u), (b, v)):
        if distance(p, q) > 1e-6:
            off = degrees_between(p - q, w)
            assert min(off, 180 - off) < 1e-4


def test_lines_side_by_side() -> None:
    u = bearing(30)
    with pytest.raises(ValueError, match="side by side"):
        meet_lines(Point(0, 0), u, Point(0, 1), u)


def test_a_crossing_at_a_coordinate_of_almost_nothing() -> None:
    """Found by the property test: kurbo gives none where x is 1e-45."""
    a = Cubic(Point(-9, 1), Point(-5.75, 2 / 3), Point(-2.5, 1 / 3), Point(0.75, 0))
    b = Cubic(Point(1e-45, 4), Point(9e-46, 8 / 3), Point(5e-46, 4 / 3), Point(0, 0))
    ((t, _),) = crossings(a, b)
    assert a.at(t) == pytest.approx((0.0, 1 / 13), abs=1e-6)


def test_a_curve_that_ends_along_a_line_meets_it_at_its_very_end() -> None:
    """Such a meeting is a double one, which a search finds to half the digits."""
    end = Point(15.668741291498463, 0.0)
    c = Cubic(Point(9.8, -3.0), Point(11.3, -1.3), Point(13.1, 0.0), end)
    level = Line(Point(-60, 0), Point(60, 0))
    [(t, s)] = crossings(c, level)
    assert t == 1.0
    assert distance(level.at(s), end) < 1e-12


@given(gentle(), st.floats(0.05, 0.95), st.floats(20, 160))
def test_what_a_line_crosses_is_on_both_to_a_millionth_of_a_hair(
    c: Cubic, t: float, degrees: float
) -> None:
    """To 1e-9 cm: arithmetic of doubles, not the search's tolerance."""
    p, u = c.at(t), c.slope(t)
    v = _turned(u, degrees)
    level = Line(p - v * (100 / distance(Point(0, 0), v)), p + v)
    for found, s in crossings(c, level):
        assert distance(c.at(found), level.at(s)) < 1e-9
