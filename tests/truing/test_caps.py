"""Dart caps. Values: check value G17 and truing 3.3 (exact maths); curved seams are
tried by folding the paper."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clothwright.curves import (
    Path,
    Point,
    bearing,
    direction,
    distance,
    mirror_in,
    rotate,
    turn,
)
from clothwright.paper import Edge, PaperError, Piece, straight
from clothwright.truing import (
    Towards,
    cap_reach,
    chord_reach,
    dart_angle,
    dart_cap,
    square_cap,
    straight_cap,
)

MM = 0.1
LEG, INTAKE = 15.0, 3.0


def test_check_value_g17() -> None:
    theta = dart_angle(LEG, INTAKE)
    assert theta == pytest.approx(11.48, abs=0.005)
    assert chord_reach(LEG, theta) == pytest.approx(14.925, abs=0.0005)
    assert square_cap(LEG, theta) == pytest.approx(15.076, abs=0.0005)
    assert straight_cap(LEG, theta) == pytest.approx(15.229, abs=0.0005)


@given(st.floats(5, 25), st.floats(1, 40))
def test_the_two_usual_cases_follow_from_the_rule(leg: float, theta: float) -> None:
    assert cap_reach(leg, theta, 90) == pytest.approx(square_cap(leg, theta))
    chord = cap_reach(leg, theta, 90 + theta / 2)
    assert chord == pytest.approx(straight_cap(leg, theta))


def test_darts_that_cannot_be() -> None:
    with pytest.raises(ValueError, match="less than twice its leg"):
        dart_angle(5, 10)
    with pytest.raises(ValueError, match="runs away"):
        cap_reach(15, 20, 175)


def front(theta: float, gamma: float, bow: float = 0.0, reach: float = 12.0) -> Piece:
    """A piece with a dart of 15 cm legs in its right side; point at the origin.

    Both seams meet their leg at `gamma` and are bowed by `bow` cm over `reach`.
    """
    point = Point(0, 0)
    d1, d2 = bearing(-theta / 2) * LEG, bearing(theta / 2) * LEG
    up = rotate(point, d1, gamma)
    top = d1 + direction(d1, up) * reach
    low = mirror_in(point, Point(1, 0))(top)
    mid = Point((top[0] + d1[0]) / 2, (top[1] + d1[1]) / 2)
    out = direction(top, d1)
    h = mid + Point(-out[1], out[0]) * (-bow * 4 / 3)
    a = h + out * (-reach / 5)
    b = h + out * (reach / 5)
    upper = Path.cubic(top, a, b, d1)
    lower = upper.moved(mirror_in(point, Point(1, 0))).reversed()
    far = Point(-20, low[1]), Point(-20, top[1])
    return Piece(
        "F",
        "Front",
        (
            Edge("side a", upper),
            straight("leg 1", d1, point),
            straight("leg 2", point, d2),
            Edge("side b", lower),
            straight("hem", low, far[0]),
            straight("cf", *far),
            straight("top", far[1], top),
        ),
    )


@pytest.mark.parametrize("towards", list(Towards))
@pytest.mark.parametrize("theta", [6.0, 11.48, 25.0])
@pytest.mark.parametrize("gamma", [80.0, 90.0, 97.0])
def test_a_straight_seam_gives_the_exact_peak(
    towards: Towards, theta: float, gamma: float
) -> None:
    cap = dart_cap(front(theta, gamma), "leg 1", "leg 2", towards)
    assert cap.peak[1] == pytest.approx(0, abs=1e-6)
    reach = cap_reach(LEG, theta, gamma)
    assert distance(Point(0, 0), cap.peak) == pytest.approx(reach, abs=1e-6)
    assert len(cap.path.segments) == 2


@pytest.mark.parametrize("towards", list(Towards))
@given(st.floats(4, 30), st.floats(78, 98), st.floats(-0.8, 0.8), st.floats(0, 360))
def test_folding_the_dart_lays_the_cap_on_the_seam(
    towards: Towards, theta: float, gamma: float, bow: float, way: float
) -> None:
    """Fold along the leg, then back along the centre: both layers end on the seam of
    the side that the dart is folded towards; 1 mm is allowed, 0.01 mm is reached."""
    piece = front(theta, gamma, bow).moved(turn(Point(4, 4), way))
    cap = dart_cap(piece, "leg 1", "leg 2", towards)
    point = piece.edge("leg 1").path.end
    d1, d2 = piece.edge("leg 1").path.start, piece.edge("leg 2").path.end
    assert distance(cap.path.start, d1) < 1e-6
    assert distance(cap.path.end, d2) < 1e-6
    seam = piece.edge("side a" if towards is Towards.FIRST else "side b").path
    leg_end = d1 if towards is Towards.FIRST else d2
    fold = mirror_in(point, leg_end)
    centre = mirror_in(point, cap.peak)
    near, far = cap.path.split_at_length(cap.path.length / 2)
    if towards is Towards.SECOND:
        near, far = far, near
    for layer in (near.moved(fold), far.moved(centre).moved(fold)):
        for i in range(11):
            p = layer.at_length(layer.length * i / 10)
            assert seam.nearest(p)[1] < 0.01 * MM


def test_a_seam_too_short_to_fold_on_is_produced_straight() -> None:
    """At theta 25 the dart covers 3.3 cm of the seam; here are 2."""
    short, long = front(25, 90, reach=2.0), front(25, 90)
    a = dart_cap(short, "leg 1", "leg 2", Towards.FIRST)
    b = dart_cap(long, "leg 1", "leg 2", Towards.FIRST)
    assert distance(a.peak, b.peak) < 1e-6


def test_legs_must_follow_each_other() -> None:
    with pytest.raises(PaperError, match="not a dart's legs"):
        dart_cap(front(10, 90), "leg 2", "leg 1", Towards.FIRST)


def test_a_dart_too_wide_to_fold() -> None:
    with pytest.raises(PaperError, match="too wide to fold"):
        dart_cap(front(60, 160), "leg 1", "leg 2", Towards.FIRST)


def test_the_cap_lengthens_the_edge_only_a_little() -> None:
    """The cap is at least the chord and, for usual darts, within 2 mm of the intake."""
    cap = dart_cap(front(11.48, 90), "leg 1", "leg 2", Towards.FIRST)
    chord = 2 * LEG * math.sin(math.radians(11.48 / 2))
    assert chord < cap.path.length < chord + 0.2
