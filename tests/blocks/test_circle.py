"""Exact mathematics of circles, tiers, godets and flounces (check values §3: G3 to G13,
G29; blocks G)."""

import math

import pytest

from clothwright.blocks import circle
from clothwright.blocks.gore import Gore
from clothwright.curves import Point, degrees_between, distance, dot
from clothwright.features.skirts.gathered_skirt import depths, tier_length


@pytest.mark.parametrize(
    ("waist", "share", "radius"),
    [
        (72, 1.0, 11.459),  # G3
        (72, 0.75, 15.279),  # G4
        (72, 0.5, 22.918),
        (72, 0.25, 45.837),
        (72, 2.0, 5.730),
        (62, 1.0, 9.868),  # G5
        (98, 1.0, 15.597),
    ],
)
def test_radius(waist: float, share: float, radius: float) -> None:
    assert circle.radius(waist, share) == pytest.approx(radius, abs=0.001)


def test_hem() -> None:
    assert circle.hem(72, 1.0, 60) == pytest.approx(448.99, abs=0.01)  # G6
    assert circle.hem(75, 0.5, 18) == pytest.approx(131.55, abs=0.01)  # G8
    assert circle.radius(72, 1.0) + 60 == pytest.approx(71.46, abs=0.01)  # G9


def test_a_wanted_hem() -> None:
    """G7: waist 72, L 60, hem 180: 1.8 rad, r = 40. G11: the straight-sided gore of
    waist 74, hem 180, L 60 has r = 41.887."""
    share = circle.share_for_hem(72, 180, 60)
    assert 2 * math.pi * share == pytest.approx(1.8, abs=0.001)
    assert circle.radius(72, share) == pytest.approx(40.0, abs=0.001)
    share = circle.share_for_hem(74, 180, 60)
    assert circle.radius(74, share) == pytest.approx(41.887, abs=0.001)


def test_tiers() -> None:
    """G10 with a plain first tier; depths 1 : 1.25 : 1.6 make up the length (G11)."""
    found = [tier_length(74, 1.0, 1.5, k) for k in range(1, 5)]
    assert found == pytest.approx([74, 111, 166.5, 249.75], abs=0.001)
    deep = depths(77.0, 3)
    assert sum(deep) == pytest.approx(77.0)
    assert [d / deep[0] for d in deep] == pytest.approx([1.0, 1.25, 1.6], abs=0.04)


def test_godet() -> None:
    assert circle.godet_hem(25, 60) == pytest.approx(26.180, abs=0.001)  # G12


def test_a_shifted_hem() -> None:
    """G29: R 70, shift 10."""
    found = [circle.reach(70, 10, a) for a in (0, 90, 180)]
    assert found == pytest.approx([80, 69.282, 60], abs=0.001)


def test_an_arc_is_a_circle() -> None:
    path = circle.arc(Point(3.0, 4.0), 20.0, 10.0, 190.0)
    assert path.length == pytest.approx(20 * math.pi, abs=1e-5)
    assert all(
        distance(p, Point(3.0, 4.0)) == pytest.approx(20.0, abs=1e-5)
        for p in (path.at_length(s) for s in range(62))
    )


GORES = [(6, 180.0, 0.0), (4, 140.0, 0.0), (12, 400.0, 0.0), (8, 260.0, 45.0)]


@pytest.mark.parametrize(("count", "hem", "flare_from"), GORES)
def test_a_gore(count: int, hem: float, flare_from: float) -> None:
    """Waist, hip and hem of all gores are those wanted; the seam is as long as the
    centre, plumb at the hip, square to waist and hem, and bends to no radius under 15
    (G9)."""
    g = Gore(68 / count, 97 / count, hem / count, 21.5, 65.0, flare_from or 21.5)
    waist, foot, seam = g.half_waist(), g.half_hem(), g.seam()
    assert 2 * count * waist.length == pytest.approx(68.0, abs=0.001)
    assert 2 * count * foot.length == pytest.approx(hem, abs=0.001)
    assert count * g.width_at(21.5) == pytest.approx(97.0, abs=0.01)
    assert seam.length == pytest.approx(65.0, abs=0.01)
    at_hip = seam.direction_at_length(21.5)
    assert abs(at_hip.x) == pytest.approx(0.0, abs=1e-6)
    for path, way in ((waist, seam.start_direction), (foot, seam.end_direction)):
        end = path.end_direction if path is waist else path.start_direction
        assert dot(end, way) == pytest.approx(0.0, abs=1e-6)
    assert max(p.y for p in foot.flatten(0.001)) <= 65.0 + 0.05
    bends = [
        degrees_between(seam.direction_at_length(s), seam.direction_at_length(s + 0.5))
        for s in (k / 4 for k in range(86, 258))
    ]
    assert 0.5 / math.radians(max(bends)) >= 15.0
