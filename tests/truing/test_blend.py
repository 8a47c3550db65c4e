"""Exact helpers. Values: check value G18, first garment 5.3 (exact maths); the
arc-like curve is set against the true circular arc."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    bearing,
    cross,
    degrees_between,
    direction,
    distance,
    rotate,
)
from clothwright.truing import Fillet, arc_like, corner_shift
from clothwright.truing.outline import wrong_way

MM = 0.1


def _wobble(path: Path) -> float:
    return sum(wrong_way(c) for c in path.segments if isinstance(c, Cubic))


def test_corner_shift() -> None:
    assert corner_shift(190, 5) == pytest.approx(0.436, abs=0.0005)  # G18
    assert corner_shift(170, 5) == pytest.approx(-0.436, abs=0.0005)
    assert corner_shift(180, 5) == 0


class TestFillet:
    @pytest.mark.parametrize(
        ("kappa", "radius", "tangent", "shaved", "loss"),
        [(27.2, 8.0, 1.94, 0.23, 0.073), (26.79, 8.0, 1.91, 0.22, 0.07)],
    )
    def test_over_the_bust(
        self, kappa: float, radius: float, tangent: float, shaved: float, loss: float
    ) -> None:
        f = Fillet.of(kappa)
        assert f.radius == radius
        assert f.tangent == pytest.approx(tangent, abs=0.006)
        assert f.shaved == pytest.approx(shaved, abs=0.006)
        assert f.loss == pytest.approx(loss, abs=0.004)

    def test_a_sharp_corner_is_limited_by_what_it_shaves(self) -> None:
        """kappa 38.5: a radius of 10 would shave 0.59 (first garment 5.3)."""
        assert Fillet.of(38.5, 10, 9).shaved == pytest.approx(0.59, abs=0.006)
        f = Fillet.of(38.5)
        assert f.shaved == pytest.approx(0.3)
        assert f.radius < 8

    def test_no_corner_needs_no_fillet(self) -> None:
        f = Fillet.of(0.0)
        assert (f.tangent, f.shaved, f.loss, f.handle) == (0, 0, 0, 0)

    @pytest.mark.parametrize("kappa", [-1.0, 180.0, math.nan])
    def test_corners_that_cannot_be_rounded(self, kappa: float) -> None:
        with pytest.raises(ValueError, match="cannot be rounded"):
            Fillet.of(kappa)
        with pytest.raises(ValueError, match="above zero"):
            Fillet.of(20.0, 0.0)

    @given(st.floats(1, 60), st.floats(0, 360), st.sampled_from([1, -1]))
    def test_the_curve_is_the_arc(self, kappa: float, way: float, side: int) -> None:
        """Length radius · kappa, shaved as said, tangent at both ends."""
        f = Fillet.of(kappa)
        u, v = bearing(way), bearing(way + side * kappa)
        corner = Point(3, -2)
        path = f.at(corner, u, v)
        assert path.length == pytest.approx(f.radius * math.radians(kappa), abs=0.002)
        assert distance(path.start, corner) == pytest.approx(f.tangent)
        assert degrees_between(path.start_direction, u) < 1e-4
        assert degrees_between(path.end_direction, v) < 1e-4
        assert path.nearest(corner)[1] == pytest.approx(f.shaved, abs=0.002)
        assert 2 * f.tangent - path.length == pytest.approx(f.loss, abs=0.002)

    def test_spanning_a_gap(self) -> None:
        f = Fillet.of(28.0)
        u, v = bearing(90), bearing(90 - 28)
        a = Point(0, 0) - u * f.tangent
        b = Point(0, 0.4) + v * f.tangent
        path = f.between(a, u, b, v, gap=0.4)
        assert (path.start, path.end) == (a, b)
        assert _wobble(path) == 0


class TestArcLike:
    @given(st.floats(2, 35), st.floats(5, 40), st.floats(0, 360))
    def test_like_a_circular_arc(self, half: float, chord: float, way: float) -> None:
        """Within 1 mm of the arc for turns below 70 degrees, on chords to 25 cm (by our
        own trial 1.061 mm at most, where it turns by 36 degrees)."""
        q = Point(1, 2)
        p = q + bearing(way) * chord
        path = arc_like(q, p, bearing(way + half))
        radius = chord / 2 / math.sin(math.radians(half))
        centre = rotate(q + bearing(way - half) * radius, q, 90)
        worst = max(
            abs(distance(path.at_length(path.length * i / 20), centre) - radius)
            for i in range(21)
        )
        assert worst < 1.07 * MM * max(1.0, chord / 25)
        assert _wobble(path) < 1e-6

    def test_the_start_mirrors_the_arrival(self) -> None:
        q, p, e = Point(0, 0), Point(10, 14), bearing(88)
        path = arc_like(q, p, e)
        u = direction(q, p)
        assert path.start == q
        assert path.end == p
        assert degrees_between(path.start_direction, u) == pytest.approx(
            degrees_between(e, u)
        )
        assert cross(path.start_direction, u) * cross(u, e) > 0
        assert degrees_between(path.end_direction, e) == pytest.approx(0, abs=1e-5)
        assert distance(q, path.segments[0].points[1]) == pytest.approx(
            0.36 * distance(q, p)
        )

    def test_two_places_are_needed(self) -> None:
        with pytest.raises(ValueError, match="same place"):
            arc_like(Point(1, 1), Point(1, 1), bearing(0))
