"""No-fit polygons: where one piece must not stand because of another.

The no-fit polygon of a standing outline A and a moving outline B is the set of shifts
of B at which their insides overlap: A ⊕ (−B), united from convex parts. On its edge the
two touch. Exact but for rounding in the last digits.
"""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

Points = tuple[tuple[float, float], ...]
Array = NDArray[np.float64]

CONVEX = 1e-9
"""A corner turns in when it does so by more than this, cm²."""


@lru_cache(maxsize=1024)
def convex_parts(outline: Points) -> tuple[Array, ...]:
    """An outline in convex parts: triangles, joined while they stay convex."""
    ring = Polygon(outline)
    if not ring.is_valid:
        ring = max(_polygons(ring.buffer(0.0)), key=lambda g: g.area)
    triangles = shapely.constrained_delaunay_triangles(ring)
    parts = [
        [(float(x), float(y)) for x, y in t.exterior.coords[:-1]]
        for t in _polygons(triangles)
    ]
    parts = [p if _area(p) > 0 else p[::-1] for p in parts]
    return tuple(np.array(p) for p in _joined(parts))


def _polygons(g: BaseGeometry) -> list[Polygon]:
    """The polygons that a geometry consists of."""
    return [p for p in shapely.get_parts(g) if isinstance(p, Polygon)]


def _area(p: Sequence[tuple[float, float]]) -> float:
    return sum(
        a[0] * b[1] - a[1] * b[0] for a, b in zip(p, (*p[1:], p[0]), strict=True)
    )


def _joined(
    parts: list[list[tuple[float, float]]],
) -> list[list[tuple[float, float]]]:
    """Neighbours made one across a common edge, as long as the result is convex."""
    edges: dict[tuple[tuple[float, float], tuple[float, float]], int] = {}
    for i, p in enumerate(parts):
        for a, b in zip(p, (*p[1:], p[0]), strict=True):
            edges[a, b] = i
    alive: dict[int, list[tuple[float, float]]] = dict(enumerate(parts))
    for (a, b), _ in sorted(edges.items(), key=lambda e: -_length(*e[0])):
        i, j = edges[a, b], edges.get((b, a))
        if j is None or i == j or i not in alive or j not in alive:
            continue
        p, q = alive[i], alive[j]
        k = p.index(a)
        m = q.index(b)
        # p without the edge a-b, then q from b's neighbour round to a
        ring = p[k + 1 :] + p[: k + 1] + (q[m + 1 :] + q[:m])[1:]
        if len(set(ring)) < len(ring) or not _convex(ring):
            continue
        alive[i] = ring
        del alive[j]
        for e, f in zip(ring, (*ring[1:], ring[0]), strict=True):
            edges[e, f] = i
    return list(alive.values())


def _length(a: tuple[float, float], b: tuple[float, float]) -> float:
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def _convex(ring: list[tuple[float, float]]) -> bool:
    for a, b, c in zip(ring, (*ring[1:], ring[0]), (*ring[2:], *ring[:2]), strict=True):
        if (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < -CONVEX:
            return False
    return True


def no_fit(standing: Points, moving: Points) -> BaseGeometry:
    """Shifts of `moving` at which it overlaps `standing`."""
    a, b = convex_parts(standing), convex_parts(moving)
    sums = [(p[:, None, :] - q[None, :, :]).reshape(-1, 2) for p in a for q in b]
    coords = np.concatenate(sums)
    which = np.repeat(np.arange(len(sums)), [len(s) for s in sums])
    points = np.asarray(shapely.points(coords), dtype=object)
    clouds = shapely.multipoints(points, indices=which)
    return shapely.union_all(shapely.convex_hull(clouds))


Outline = tuple[int, tuple[int, int]]
"""A known outline: number of its base, and the signs that x and y are given."""


class NoFits:
    """No-fit polygons that are made once.

    A piece that is mirrored or turned end for end is its base with other signs of x and
    y; so two pieces in their sixteen ways need four no-fit polygons:
    g·A against h·B is g·(A against g·h·B), and B against A is A against B, negated.
    """

    def __init__(self) -> None:
        self._bases: list[Points] = []
        self._number: dict[Points, int] = {}
        self._known: dict[tuple[int, int, tuple[int, int]], BaseGeometry] = {}
        self._told: dict[tuple[Outline, Outline], BaseGeometry] = {}

    def outline(
        self, points: Points, mirrored: bool = False, turn: float = 0.0
    ) -> Outline:
        """Make an outline known, with how it was mirrored and turned."""
        sign = (1, 1)
        if turn in (0.0, 180.0):
            k = -1 if turn else 1
            sign = (k, -k if mirrored else k)
            points = tuple((x * sign[0], y * sign[1]) for x, y in points)
        number = self._number.setdefault(points, len(self._bases))
        if number == len(self._bases):
            self._bases.append(points)
        return number, sign

    def between(self, standing: Outline, moving: Outline) -> BaseGeometry:
        """Shifts of `moving` at which it overlaps `standing`."""
        told = self._told.get((standing, moving))
        if told is None:
            told = self._told[standing, moving] = self._signed(standing, moving)
        return told

    def _signed(self, standing: Outline, moving: Outline) -> BaseGeometry:
        (a, g), (b, h) = standing, moving
        k = (g[0] * h[0], g[1] * h[1])
        if a <= b:
            return _scaled(self._base(a, b, k), g)
        return _scaled(self._base(b, a, k), (-h[0], -h[1]))

    def _base(self, a: int, b: int, k: tuple[int, int]) -> BaseGeometry:
        known = self._known.get((a, b, k))
        if known is None:
            other = tuple((x * k[0], y * k[1]) for x, y in self._bases[b])
            known = self._known[a, b, k] = no_fit(self._bases[a], other)
        return known


def _scaled(g: BaseGeometry, sign: tuple[int, int]) -> BaseGeometry:
    """A geometry with other signs of x and y."""
    if sign == (1, 1):
        return g
    return shapely.transform(g, lambda coords: coords * sign)
