"""No-fit polygons against what they mean: overlap, by an independent library call."""

import random

import pytest
from shapely import Point, Polygon
from shapely.affinity import translate

from clothwright.lay.nofit import NoFits, convex_parts, no_fit
from clothwright.lay.outward import outward
from clothwright.lay.pieces import turned
from laid import blob, half


@pytest.mark.parametrize("seed", range(12))
def test_inside_they_overlap_and_outside_they_do_not(seed: int) -> None:
    rng = random.Random(seed)
    a, b = blob(rng, 10.0), half(rng, 6.0)
    cover = no_fit(a, b)
    for _ in range(200):
        x, y = rng.uniform(-20, 20), rng.uniform(-20, 20)
        shared = Polygon(a).intersection(translate(Polygon(b), x, y)).area
        apart = cover.distance(Point(x, y))
        inside = cover.contains(Point(x, y))
        assert inside == (shared > 1e-9) or cover.boundary.distance(Point(x, y)) < 1e-3
        assert inside or apart >= 0.0


@pytest.mark.parametrize("seed", range(12))
def test_convex_parts_are_the_whole(seed: int) -> None:
    outline = blob(random.Random(seed), 10.0)
    parts = [Polygon(p) for p in convex_parts(outline)]
    assert sum(p.area for p in parts) == pytest.approx(Polygon(outline).area, abs=1e-9)
    for p in parts:
        assert p.convex_hull.area == pytest.approx(p.area, abs=1e-6)


def test_mirrored_and_turned_pieces_share_theirs() -> None:
    rng = random.Random(5)
    a, b = blob(rng, 10.0), blob(rng, 7.0)
    known = NoFits()
    for m in (False, True):
        for n in (False, True):
            for t in (0.0, 180.0):
                for u in (0.0, 180.0):
                    for one, other in (((a, m, t), (b, n, u)), ((b, n, u), (a, m, t))):
                        p, q = turned(*one), turned(*other)
                        got = known.between(
                            known.outline(p, one[1], one[2]),
                            known.outline(q, other[1], other[2]),
                        )
                        exact = no_fit(p, q)
                        assert got.symmetric_difference(exact).area < 1e-6


@pytest.mark.parametrize("seed", range(20))
def test_fewer_corners_cover_the_true_outline(seed: int) -> None:
    rng = random.Random(seed)
    true = (
        Polygon(half(rng, 12.0))
        .buffer(1.0)
        .intersection(Polygon([(-99, 0), (99, 0), (99, 99), (-99, 99)]))
    )
    assert isinstance(true, Polygon)
    ring = tuple((float(x), float(y)) for x, y in true.exterior.coords[:-1])
    plain = Polygon(outward(ring, 0.1, on_fold=True))
    assert len(plain.exterior.coords) < len(true.exterior.coords)
    assert true.difference(plain).area < 1e-9
    assert plain.bounds[1] == pytest.approx(0.0, abs=1e-9)
    assert plain.area - true.area < 0.2 * true.length
