"""Insets: the width kept, and a rounding too small for it left out."""

import pytest

from clothwright.curves import Cubic, Line, Path, Point
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
