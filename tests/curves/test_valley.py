"""The nearest place on a curve: one valley of the distance, by sampling."""

import math
import random

from clothwright.curves import Cubic, Point, mix
from clothwright.curves.near import one_valley, seen_from


def _curves(count: int) -> list[tuple[Cubic, Point]]:
    rng = random.Random(4)

    def about(p: Point, spread: float) -> Point:
        return Point(rng.gauss(p.x, spread), rng.gauss(p.y, spread))

    out = []
    for _ in range(count):
        a = Point(0.0, 0.0)
        d = about(a, 12.0)
        b, c = about(mix(a, d, 1 / 3), 3.0), about(mix(a, d, 2 / 3), 3.0)
        out.append((Cubic(a, b, c, d), about(a, 12.0)))
    return out


def test_one_valley_is_what_sampling_finds() -> None:
    """Where the six signs tell of one valley, the distance falls and then rises."""
    known = 0
    for curve, p in _curves(400):
        if not one_valley(seen_from(p, curve.xy)):
            continue
        known += 1
        far = [math.dist(curve.at(i / 200), p) for i in range(201)]
        least = far.index(min(far))
        assert far[: least + 1] == sorted(far[: least + 1], reverse=True)
        assert far[least:] == sorted(far[least:])
    assert known > 200


def test_the_nearest_place_is_the_nearest_of_all() -> None:
    """No place of two hundred is nearer, and the place found is so far away."""
    for curve, p in _curves(400):
        t, gap = curve.nearest(p)
        least = min(math.dist(curve.at(i / 200), p) for i in range(201))
        assert gap <= least + 1e-9
        assert math.isclose(math.dist(curve.at(t), p), gap, abs_tol=1e-9)
