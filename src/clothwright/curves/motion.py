"""Rigid motions: what a hand can do to a piece of paper without stretching it."""

import math
from dataclasses import dataclass
from typing import Final

from clothwright.curves.point import Point, Vector, direction, pair


@dataclass(slots=True, unsafe_hash=True)
class Motion:
    """x' = a·x + c·y + e, y' = b·x + d·y + f, with (a b; c d) orthonormal.

    Calling a motion moves a point; `@` composes: `(m @ n)(p) == m(n(p))`.
    """

    a: Final[float] = 1.0
    b: Final[float] = 0.0
    c: Final[float] = 0.0
    d: Final[float] = 1.0
    e: Final[float] = 0.0
    f: Final[float] = 0.0

    def __call__(self, p: tuple[float, float]) -> Point:
        x, y = p
        return pair(
            Point, (self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f)
        )

    def direction(self, v: tuple[float, float]) -> Vector:
        """A direction moved: turned, never shifted."""
        x, y = v
        return Vector(self.a * x + self.c * y, self.b * x + self.d * y)

    def __matmul__(self, n: "Motion") -> "Motion":
        a, b = self.direction((n.a, n.b))
        c, d = self.direction((n.c, n.d))
        e, f = self((n.e, n.f))
        return Motion(a, b, c, d, e, f)

    @property
    def flips(self) -> bool:
        """True when the paper is turned over (mirrored)."""
        return self.a * self.d - self.b * self.c < 0

    def inverse(self) -> "Motion":
        """The motion that puts the paper back."""
        det = self.a * self.d - self.b * self.c
        a, b, c, d = self.d / det, -self.b / det, -self.c / det, self.a / det
        e = -(a * self.e + c * self.f)
        f = -(b * self.e + d * self.f)
        return Motion(a, b, c, d, e, f)


IDENTITY = Motion()


def shift(v: tuple[float, float]) -> Motion:
    """Slide by `v`."""
    return Motion(e=v[0], f=v[1])


def turn(centre: Point, degrees: float) -> Motion:
    """Pivot about `centre`, clockwise as seen for positive degrees."""
    r = math.radians(degrees)
    c, s = math.cos(r), math.sin(r)
    x, y = centre
    return Motion(c, s, -s, c, x - c * x + s * y, y - s * x - c * y)


def mirror_in(a: Point, b: Point) -> Motion:
    """Turn the paper over along the line through `a` and `b`."""
    ux, uy = direction(a, b)
    m, n = ux * ux - uy * uy, 2 * ux * uy
    return Motion(m, n, n, -m, a[0] - m * a[0] - n * a[1], a[1] - n * a[0] + m * a[1])


def from_pair(a: Point, b: Point, to_a: Point, to_b: Point) -> Motion:
    """The turn and shift that lays `a` on `to_a`, with `b` towards `to_b`."""
    u, v = direction(a, b), direction(to_a, to_b)
    c, s = u[0] * v[0] + u[1] * v[1], u[0] * v[1] - u[1] * v[0]
    m = Motion(c, s, -s, c)
    return shift(to_a - m(a)) @ m
