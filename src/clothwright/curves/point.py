"""Points and directions: plain pairs of floats, y down, angles clockwise as seen.

A positive angle turns from +x towards +y, which on a page with y down is clockwise
to the eye. Angles are radians inside and degrees where a name says `degrees`.
"""

import math
from typing import NamedTuple


class Point(NamedTuple):
    """A place on the page: x to the right, y down, in cm.

    A tuple, for speed; `+` and `*` are a vector's in place of a tuple's joining and
    repeating, which is what the two exemptions from the type rules say.
    """

    x: float
    y: float

    def __add__(self, other: tuple[float, float]) -> "Point":  # type: ignore[override]
        return pair(Point, (self[0] + other[0], self[1] + other[1]))

    def __sub__(self, other: tuple[float, float]) -> "Point":
        return pair(Point, (self[0] - other[0], self[1] - other[1]))

    def __mul__(self, k: float) -> "Point":  # type: ignore[override]
        return pair(Point, (self[0] * k, self[1] * k))


pair = tuple.__new__
"""`pair(Point, (x, y))` is `Point(x, y)` in half the time, for the innermost lines."""

Vector = Point
"""A displacement or a direction; the same pair, read as an arrow."""


Pair = tuple[float, float]
"""Two numbers of a place, without what a point can do: made in a sixth of its time,
where thousands are made only to be looked at."""


def distance(a: Pair, b: Pair) -> float:
    """Straight distance in cm."""
    return math.hypot(b[0] - a[0], b[1] - a[1])


def unit(v: tuple[float, float]) -> Vector:
    """`v` at length 1. Raises ValueError for a vector of no length."""
    n = math.hypot(v[0], v[1])
    if not n > 0:
        raise ValueError("two points that should differ lie in the same place")
    return pair(Vector, (v[0] / n, v[1] / n))


def direction(a: Pair, b: Pair) -> Vector:
    """Unit vector from `a` to `b`. Raises ValueError when they are one place."""
    x, y = b[0] - a[0], b[1] - a[1]
    n = math.hypot(x, y)
    return pair(Vector, (x / n, y / n)) if n > 0 else unit((x, y))


def bearing(degrees: float) -> Vector:
    """Unit vector at `degrees` clockwise from +x: 0 right, 90 down."""
    a = math.radians(degrees)
    return Vector(math.cos(a), math.sin(a))


def heading(v: tuple[float, float]) -> float:
    """Degrees clockwise from +x of a vector: the inverse of `bearing`."""
    return math.degrees(math.atan2(v[1], v[0]))


def dot(a: tuple[float, float], b: tuple[float, float]) -> float:
    """Scalar product."""
    return a[0] * b[0] + a[1] * b[1]


def cross(a: tuple[float, float], b: tuple[float, float]) -> float:
    """Positive when `b` lies clockwise of `a` as seen (y down)."""
    return a[0] * b[1] - a[1] * b[0]


def turned(v: tuple[float, float], degrees: float) -> Vector:
    """`v` turned clockwise as seen."""
    a = math.radians(degrees)
    c, s = math.cos(a), math.sin(a)
    return pair(Vector, (v[0] * c - v[1] * s, v[0] * s + v[1] * c))


def rotate(p: Point, centre: Point, degrees: float) -> Point:
    """R(p; c, φ): `p` turned about `centre`, clockwise as seen."""
    return centre + turned(p - centre, degrees)


def ahead(p: Pair, way: Pair, by: float) -> Point:
    """The place so far from `p` along a direction, cm."""
    return pair(Point, (p[0] + way[0] * by, p[1] + way[1] * by))


def left_normal(v: tuple[float, float]) -> Vector:
    """Unit vector square to `v`, on its left as seen when walking along `v`."""
    u = unit(v)
    return Vector(u[1], -u[0])


def degrees_between(a: tuple[float, float], b: tuple[float, float]) -> float:
    """Unsigned angle between two directions, 0 to 180 degrees."""
    return math.degrees(math.atan2(abs(cross(a, b)), dot(a, b)))


def wedge_angle(width: float, reach: float) -> float:
    """Angle of a wedge that is so wide so far from its point, degrees: the dart's,
    2·asin(width/(2·reach)). Raises ValueError when it is wider than twice its reach."""
    return math.degrees(2 * math.asin(width / (2 * reach)))


def midpoint(a: Point, b: Point) -> Point:
    """Half way."""
    return mix(a, b, 0.5)


def mix(a: Point, b: Point, t: float) -> Point:
    """The point a share `t` of the way from `a` to `b`."""
    return pair(Point, (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t))
