"""Outlines with fewer corners that cover the true ones, for laying.

A hollow corner is left out (its chord lies outside), or a short edge between two
jutting corners (its neighbours are led on until they meet). Straight edges stay where
they are, and nothing is ever cut off.
"""

import math
from collections.abc import Sequence

P = tuple[float, float]

LEVEL = 1e-9
"""Corners on a fold within this of y = 0 stay."""


def outward(outline: Sequence[P], by: float, *, on_fold: bool = False) -> tuple[P, ...]:
    """The outline with as few corners as `by` cm of growth at each allow.

    `on_fold` keeps the edge on y = 0 and all else above it.
    """
    ring = list(outline)
    flip = _area(ring) < 0
    if flip:
        ring.reverse()
    while len(ring) > 4:
        best: tuple[float, int, P | None] | None = None
        for i in range(len(ring)):
            for found in _ways(ring, i, on_fold):
                if found[0] < by and (best is None or found[0] < best[0]):
                    best = found
        if best is None:
            break
        _, i, apex = best
        if apex is None:
            del ring[i]
        else:
            ring[i] = apex
            del ring[(i + 1) % len(ring)]
    if flip:
        ring.reverse()
    return tuple(ring)


def _ways(
    ring: Sequence[P], i: int, on_fold: bool
) -> list[tuple[float, int, P | None]]:
    """What may be left out at a corner, and by how much the outline grows there."""
    n = len(ring)
    a, b, c, d = (ring[(i + k) % n] for k in (-1, 0, 1, 2))
    first, second = _turn(a, b, c), _turn(b, c, d)
    if first <= 1e-9:  # hollow, or straight on
        if on_fold and abs(b[1]) < LEVEL and first < -LEVEL:
            return []
        return [(_off(b, a, c), i, None)]
    if second <= 1e-9 or (on_fold and abs(b[1]) < LEVEL and abs(c[1]) < LEVEL):
        return []
    apex = _meeting(a, b, c, d)
    if apex is None or (on_fold and apex[1] < -LEVEL):
        return []
    return [(_off(apex, b, c), i, apex)]


def _area(ring: Sequence[P]) -> float:
    return sum(
        a[0] * b[1] - a[1] * b[0]
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
    )


def _turn(a: P, b: P, c: P) -> float:
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])


def _off(p: P, a: P, b: P) -> float:
    """Distance of a point from the line through two others."""
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    if length == 0.0:
        return math.hypot(p[0] - a[0], p[1] - a[1])
    return abs(_turn(a, b, p)) / length


def _meeting(a: P, b: P, c: P, d: P) -> P | None:
    """Where a-b led on beyond b meets d-c led on beyond c."""
    ux, uy, vx, vy = b[0] - a[0], b[1] - a[1], c[0] - d[0], c[1] - d[1]
    det = ux * vy - uy * vx
    if abs(det) < 1e-12:
        return None
    wx, wy = c[0] - b[0], c[1] - b[1]
    s, t = (wx * vy - wy * vx) / det, (wx * uy - wy * ux) / det
    if s < 0 or t < 0:
        return None
    return b[0] + s * ux, b[1] + s * uy
