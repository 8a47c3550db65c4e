"""Insets: the width kept, and a rounding too small for it left out."""

import math

import pytest

from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    bearing,
    cross,
    distance,
    mirror_in,
)
from clothwright.curves.inset import inset


def _rounded(radius: float) -> Path:
    """10 cm right, a square corner rounded, 10 cm down: clockwise, inset right."""
    k = radius * 0.44772
    p, q = Point(10 - radius, 0), Point(10, radius)
    round_ = Cubic(p, Point(10 - k, 0), Point(10, k), q)
    return Path((Line(Point(0, 0), p), round_, Line(q, Point(10, 10))))


@pytest.mark.parametrize("radius", [0.05, 0.1, 0.2])
def test_a_small_rounding_gives_way_to_a_corner(radius: float) -> None:
    """Exact: both sides 0.2 cm in meet at (9.8, 0.2)."""
    first, second = inset(_rounded(radius), 0.2, 0.2).segments
    assert first.end == pytest.approx((9.8, 0.2), abs=1e-9)
    assert second.start == first.end
    assert second.end == pytest.approx((9.8, 10), abs=1e-9)


def test_a_larger_rounding_keeps_its_curve() -> None:
    """Exact: an arc of 1 cm set in by 0.2 is an arc of 0.8."""
    got = inset(_rounded(1.0), 0.2, 0.2)
    for s in range(1, 100):
        x, y = got.at_length(got.length * s / 100)
        if x > 9 and y < 1:
            assert ((x - 9) ** 2 + (y - 1) ** 2) ** 0.5 == pytest.approx(0.8, abs=0.01)


def test_a_line_that_turns_back_is_refused() -> None:
    out = Line(Point(0, 0), Point(5, 0))
    back = Line(Point(5, 0), Point(0, 0.001))
    with pytest.raises(ValueError, match="turns back"):
        inset(Path((out, back)), 0.2, 0.2)


def test_a_curve_that_bends_suddenly_is_kept_at_its_width() -> None:
    """Exact: every place of the inset is as far from the curve as it is wide. The back
    neck of a boat turns to its shoulder within a few mm."""
    neck = Path.cubic(
        Point(0, 2.41), Point(8.56, 2.41), Point(13.39, 1.56), Point(13.8, 0.41)
    )
    wide = inset(neck, 4.5, 4.5)
    for k in range(1, 100):
        at = wide.at_length(wide.length * k / 100)
        assert neck.nearest(at)[1] == pytest.approx(4.5, abs=0.01)


@pytest.mark.parametrize("turned", [False, True])
def test_a_bend_tighter_than_the_width_ends_the_inset_where_it_comes(
    turned: bool,
) -> None:
    """Exact: a line that ends in 30 degrees of a circle of radius 0.4 cm, set in by 0.7
    there: the inset of the line itself comes to the line square to its end, and ends
    there, short of the bend's own inset, which runs back."""
    a = math.radians(30)
    foot = Point(9.5 + 0.4 * math.sin(a), 0.4 - 0.4 * math.cos(a))
    square = Vector(-math.sin(a), math.cos(a))
    reach = 0.4 * 4 / 3 * math.tan(a / 4)
    bend = Cubic(Point(9.5, 0), Point(9.5 + reach, 0), foot - bearing(30) * reach, foot)
    line = Path((Line(Point(0, 0), Point(9.5, 0)), bend))
    if turned:  # the same seen in a mirror, begun at the bend
        line = Path(tuple(s.reversed() for s in line.segments[::-1]))
        line = line.moved(mirror_in(Point(0, 0), Point(0, 1)))
        foot, square = Point(-foot.x, foot.y), Vector(-square.x, square.y)
    got = inset(line, *((0.7, 0.0) if turned else (0.0, 0.7)))
    end = got.start if turned else got.end
    assert abs(cross(square, end - foot)) < 1e-3
    assert 0.65 < distance(end, foot) < 0.75
    assert max(abs(got.at_length(s / 10).x) for s in range(96)) <= abs(end.x) + 1e-3


def test_a_bend_outwards_at_the_end_is_kept_at_its_width() -> None:
    """Exact: a flat neck that turns up within 2 mm of its end, set in on the other
    side: every place of the inset is as far from it as it is wide."""
    neck = Path.cubic(
        *(Point(40.424, -3.298), Point(40.796, -3.083)),
        *(Point(43.967, -2.939), Point(48.35, -2.939)),
    )
    got = inset(neck, 0.4, 0.4)
    for k in range(1, 100):
        at = got.at_length(got.length * k / 100)
        assert neck.nearest(at)[1] == pytest.approx(0.4, abs=0.01)
