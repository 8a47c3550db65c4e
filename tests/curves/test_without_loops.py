"""Loops of an outline are cut out where it crosses itself; shapely judges the rest."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from clothwright.curves import Path, Point, polyline, without_loops
from shapes import MM


def _ring(*points: tuple[float, float]) -> Path:
    return polyline(Point(*p) for p in (*points, points[0]))


def _without(path: Path) -> Polygon:
    parts = [s for _, s in without_loops(path.segments)]
    return Polygon(Path(tuple(parts)).flatten(0.001))


def test_an_outline_without_loops_stays_as_it_is() -> None:
    square = _ring((0, 0), (10, 0), (10, 10), (0, 10))
    assert without_loops(square.segments) == list(enumerate(square.segments))


@given(st.floats(0.1, 4), st.floats(0.1, 4))
def test_a_loop_at_a_corner_is_cut_off(over: float, up: float) -> None:
    """Exact: two sides run past their crossing at (10, 0) by `over` and `up`."""
    ring = _ring((0, 0), (10 + over, 0), (10, -up), (10, 10), (0, 10))
    assert _without(ring).area == pytest.approx(100, abs=1e-5)


def test_a_loop_over_the_start_is_cut_off() -> None:
    """The shorter way round may hold the outline's own start."""
    ring = _ring((0, -2), (0, 10), (10, 10), (10, 0), (-2, 0))
    assert _without(ring).area == pytest.approx(100, abs=1e-5)


def test_curves_that_cross_at_a_flat_angle_near_their_ends() -> None:
    """Two arcs that overlap by a third of a millimetre at 1.3° (found in the survey of
    cut lines: chords of the one had passed the other by)."""
    a = Path.cubic(
        Point(-18.315108, 5.674347),
        Point(-20.159014, 2.527238),
        Point(-22.141859, -0.724520),
        Point(-21.521441, -4.860265),
    )
    b = Path.cubic(
        Point(-21.526075, -4.826815),
        Point(-21.014122, -8.855796),
        Point(-18.594684, -11.718754),
        Point(-16.494478, -14.646971),
    )
    rest = (Path.line(a.end, b.start), b, Path.line(b.end, a.start))
    whole = Path.of(a, *rest)
    assert not Polygon(whole.flatten(0.001)).is_valid
    parts = without_loops(whole.segments)
    assert [n for n, _ in parts] == [0, 2, 3]
    assert Polygon(Path(tuple(s for _, s in parts)).flatten(0.001)).is_valid
    assert parts[0][1].length == pytest.approx(a.length, abs=0.2 * MM)
