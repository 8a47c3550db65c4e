"""Exact mathematics of skirts cut from circles, and of godets and flounces (blocks G1
to G3, G8, G11 to G13 of our notes).

w is a finished waist, f the share of a full circle, L a length, all cm; angles in
radians unless the name says degrees.
"""

import math
from dataclasses import dataclass

from clothwright.curves import Cubic, Path, Point, ahead, bearing, turned
from clothwright.paper import Edge, EdgeKind, straight

NamedKind = tuple[str, EdgeKind]
"""Name and kind of an edge."""


def radius(w: float, f: float) -> float:
    """Of the waist arc: w/(2πf) (G1)."""
    return w / (2 * math.pi * f)


def hem(w: float, f: float, length: float) -> float:
    """Hem girth: w + 2πf·L (G2)."""
    return w + 2 * math.pi * f * length


def share_for_hem(w: float, wanted: float, length: float) -> float:
    """The share of a circle that gives a wanted hem girth: (M − w)/(2πL) (G3)."""
    return (wanted - w) / (2 * math.pi * length)


def reach(hem_radius: float, shift: float, degrees: float) -> float:
    """From the waist's centre to a hem circle that is shifted, `degrees` from its long
    side: e·cos φ + √(R² − e²·sin² φ) (G8)."""
    phi = math.radians(degrees)
    return shift * math.cos(phi) + math.sqrt(
        hem_radius**2 - (shift * math.sin(phi)) ** 2
    )


def godet_hem(depth: float, degrees: float) -> float:
    """What a godet adds to the hem: β·d (G12)."""
    return math.radians(degrees) * depth


def arc(centre: Point, radius: float, start: float, end: float) -> Path:
    """A circular arc between two bearings (degrees clockwise from +x), in cubics of at
    most 22.5°, each within 1e-7 of its radius."""
    n = max(1, math.ceil(abs(end - start) / 22.5))
    step = (end - start) / n
    h = 4 / 3 * math.tan(math.radians(step) / 4) * radius
    parts: list[Cubic] = []
    a = bearing(start)
    p = ahead(centre, a, radius)
    for i in range(1, n + 1):
        b = bearing(start + i * step)
        q = ahead(centre, b, radius)
        on, back = ahead(p, turned(a, 90), h), ahead(q, turned(b, 90), -h)
        parts.append(Cubic(p, on, back, q))
        a, p = b, q
    return Path(tuple(parts))


@dataclass(frozen=True)
class Sector:
    """A ring's part: its arcs' radii in cm, its bearings in degrees clockwise from +x,
    the left one greater; its straight edges run to the centre at the origin."""

    inner: float
    outer: float
    left: float
    right: float

    @classmethod
    def half(
        cls, inner: float, outer: float, degrees: float, *, at_right: bool
    ) -> "Sector":
        """With its right edge plumb, or its left one."""
        if at_right:
            return cls(inner, outer, 90.0 + degrees, 90.0)
        return cls(inner, outer, 90.0, 90.0 - degrees)

    @classmethod
    def whole(cls, inner: float, outer: float, degrees: float) -> "Sector":
        """Its middle plumb."""
        return cls(inner, outer, 90.0 + degrees / 2, 90.0 - degrees / 2)

    def edges(
        self, top: NamedKind, right: NamedKind, hem: NamedKind, left: NamedKind
    ) -> tuple[Edge, ...]:
        """Its edges clockwise, each with the name and kind given; without an inner arc
        the straight edges meet at the centre."""
        o = Point(0.0, 0.0)
        low = arc(o, self.outer, self.right, self.left)
        start = end = o
        first: tuple[Edge, ...] = ()
        if self.inner > 0:
            high = arc(o, self.inner, self.left, self.right)
            start, end = high.start, high.end
            first = (Edge(top[0], high, top[1]),)
        return (
            *first,
            straight(right[0], end, low.start, right[1]),
            Edge(hem[0], low, hem[1]),
            straight(left[0], low.end, start, left[1]),
        )
