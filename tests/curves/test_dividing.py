"""Dividing, reversing, moving and pinning paths: lengths add up, shapes stay."""

import copy
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clothwright.curves import (
    IDENTITY,
    Cubic,
    Line,
    Motion,
    Path,
    Place,
    Point,
    Segment,
    cross,
    degrees_between,
    distance,
    from_pair,
    mirror_in,
    shift,
    turn,
)
from shapes import MM, cubics, motions, paths, points, segments, shares, worst_gap


def _points(path: Path, n: int = 9) -> list[Point]:
    return [path.at_length(path.length * i / n) for i in range(n + 1)]


@given(segments, shares, shares)
def test_parts_add_up(s: Segment, a: float, b: float) -> None:
    t0, t1 = sorted((a, b))
    parts = [s.part(0, t0), s.part(t0, t1), s.part(t1, 1)]
    assert sum(p.length for p in parts) == pytest.approx(s.length, abs=1e-6)
    for part, lo, hi in zip(parts, (0, t0, t1), (t0, t1, 1), strict=True):
        mid = part.at(0.5)
        assert distance(mid, s.at((lo + hi) / 2)) < 1e-9


@given(paths(), shares)
def test_a_divided_path_adds_up(path: Path, share: float) -> None:
    s = path.length * share
    a, b = path.split_at_length(s)
    assert a.length == pytest.approx(s, abs=1e-6)
    assert a.length + b.length == pytest.approx(path.length, abs=1e-6)
    assert distance(a.end, b.start) < 1e-9
    assert distance(a.end, path.at_length(s)) < 1e-9
    joined = a + b
    assert joined.area == pytest.approx(path.area, abs=1e-6)
    assert worst_gap(_points(joined), _points(path)) < 1e-5


@given(paths(), shares, shares)
def test_the_part_between_two_lengths(path: Path, a: float, b: float) -> None:
    s0, s1 = sorted((a * path.length, b * path.length))
    if s1 - s0 < 0.01:
        return
    part = path.between(s0, s1)
    assert part.length == pytest.approx(s1 - s0, abs=1e-5)
    assert distance(part.start, path.at_length(s0)) < 1e-6
    assert path.between(0, path.length).segments == path.segments


def test_a_path_is_not_divided_at_its_ends() -> None:
    path = Path.line(Point(0, 0), Point(9, 0))
    for place in (Place(0, 0.0), Place(0, 1.0)):
        with pytest.raises(ValueError, match="cannot be divided"):
            path.split(place)


def test_a_path_is_divided_where_its_parts_join() -> None:
    path = Path.of(Line(Point(0, 0), Point(9, 0)), Line(Point(9, 0), Point(9, 4)))
    for place in (Place(0, 1.0), Place(1, 0.0)):
        a, b = path.split(place)
        assert (a.length, b.length) == (9, 4)


@given(paths())
def test_walking_back(path: Path) -> None:
    back = path.reversed()
    assert back.length == pytest.approx(path.length)
    assert worst_gap(_points(back), _points(path)[::-1]) < 1e-5
    assert back.reversed() == path


@given(paths(), motions)
def test_a_motion_changes_no_length_and_no_area(path: Path, m: Motion) -> None:
    moved = path.moved(m)
    assert moved.length == pytest.approx(path.length, abs=1e-6)
    area = -path.area if m.flips else path.area
    assert moved.area == pytest.approx(area, abs=1e-6)
    assert worst_gap(_points(moved), [m(p) for p in _points(path)]) < 1e-5


@given(motions, points, points)
def test_motions_keep_distances_and_have_an_inverse(
    m: Motion, p: Point, q: Point
) -> None:
    assert distance(m(p), m(q)) == pytest.approx(distance(p, q), abs=1e-9)
    assert distance(m.inverse()(m(p)), p) < 1e-9
    assert distance((m @ m.inverse())(p), p) < 1e-9
    assert IDENTITY(p) == p


@given(motions, motions, points)
def test_motions_compose(m: Motion, n: Motion, p: Point) -> None:
    assert distance((m @ n)(p), m(n(p))) < 1e-9
    assert (m @ n).flips == (m.flips != n.flips)


@given(points, st.floats(-720, 720), points)
def test_a_turn_is_clockwise_as_seen(c: Point, degrees: float, p: Point) -> None:
    m = turn(c, degrees)
    assert distance(m(c), c) < 1e-9
    assert distance(turn(c, -degrees)(m(p)), p) < 1e-9
    quarter = turn(c, 90)
    if distance(p, c) > 0.1:
        assert cross(p - c, quarter(p) - c) > 0
        assert degrees_between(p - c, quarter(p) - c) == pytest.approx(90)


@given(points, points.filter(lambda p: p != Point(0, 0)), points)
def test_mirroring_twice_is_nothing(a: Point, way: Point, p: Point) -> None:
    if distance(a, a + way) < 0.01:
        return
    m = mirror_in(a, a + way)
    assert m.flips
    assert distance(m(m(p)), p) < 1e-9
    assert distance(m(a), a) < 1e-9


@given(points, points, points, points)
def test_laying_one_line_on_another(a: Point, b: Point, c: Point, d: Point) -> None:
    if distance(a, b) < 0.1 or distance(c, d) < 0.1:
        return
    m = from_pair(a, b, c, d)
    assert not m.flips
    assert distance(m(a), c) < 1e-9
    assert degrees_between(m(b) - c, d - c) < 1e-4
    assert distance(shift(b - a)(a), b) < 1e-12 * (1 + distance(a, b)) + 1e-12


@given(paths(), points, points)
def test_pinned_ends_move_by_what_is_asked(path: Path, p: Point, q: Point) -> None:
    start, end = path.start + p * 1e-4, path.end + q * 1e-4
    pinned = path.pinned(start, end)
    assert (pinned.start, pinned.end) == (start, end)
    assert worst_gap(_points(pinned), _points(path)) < 1 * MM


@given(cubics)
def test_curves_are_values(c: Cubic) -> None:
    assert pickle.loads(pickle.dumps(c)) == c
    assert copy.deepcopy(c) == c
    assert hash(copy.copy(c)) == hash(c)
    assert c.points == (c.start, c.handle1, c.handle2, c.end)


def test_a_part_that_begins_a_hair_from_the_start() -> None:
    """Found by a survey: a part from 2e-6 cm on was to be cut off at the start."""
    path = Path.line(Point(0, 0), Point(10, 0))
    assert path.between(2e-6, 10 - 2e-6).length == pytest.approx(10, abs=1e-5)
    assert path.between(5e-6, 5).length == pytest.approx(5, abs=1e-5)
