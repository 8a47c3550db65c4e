"""Blending: exact helpers for corners and curves that cross a seam. cm and degrees.

Sources: our trade notes, truing 4 (corner correction), first garment 0 (arc-like
curve) and 5.3 (fillet of a princess line over the bust); all exact but the 0.36 of
the arc-like curve, which is a measured approximation of a circular arc.
"""

import math
from dataclasses import dataclass

from clothwright.curves import (
    Path,
    Point,
    Vector,
    ahead,
    direction,
    distance,
    dot,
    unit,
)

ARC_HANDLE = 0.36
"""Handle of an arc-like curve as a share of its chord: within 1 mm of a circular arc
for turns below 70 degrees."""


def corner_shift(sum_degrees: float, blend: float) -> float:
    """The most that a joint moves along its bisector when the angles on both sides
    add up to `sum_degrees` and the line is blended over `blend` cm on each side.

    Above 0 the paper is extended (the joint dips into the piece, sum over 180), below
    0 it is trimmed. A smooth curve needs about half of it.
    """
    half = math.radians(sum_degrees - 180.0) / 2
    return blend * math.sin(half)


@dataclass(frozen=True)
class Fillet:
    """An arc that rounds a corner where a line turns by `kappa` degrees. cm."""

    kappa: float
    radius: float
    tangent: float
    """From the corner to where the rounding begins, along either line."""

    shaved: float
    """Paper taken off at the corner, along its bisector."""

    loss: float
    """What the rounded line is shorter than the two straight ones."""

    @classmethod
    def of(
        cls, kappa_degrees: float, max_radius: float = 8.0, max_shaved: float = 0.3
    ) -> "Fillet":
        """The roundest fillet that shaves off at most `max_shaved`.

        Raises ValueError unless 0 ≤ kappa < 180 and both limits are above zero.
        """
        if not 0.0 <= kappa_degrees < 180.0:
            raise ValueError(
                f"a corner that turns by {kappa_degrees:g} degrees cannot be rounded; "
                "it must turn by 0 to 180"
            )
        if not (max_radius > 0 and max_shaved > 0):
            raise ValueError("a rounding's radius and depth must be above zero")
        half = math.radians(kappa_degrees) / 2
        depth = 1 / math.cos(half) - 1  # shaved paper per cm of radius
        radius = min(max_radius, max_shaved / depth) if depth > 0 else max_radius
        return cls(
            kappa_degrees,
            radius,
            radius * math.tan(half),
            radius * depth,
            radius * 2 * (math.tan(half) - half),
        )

    @property
    def handle(self) -> float:
        """Handle of the one cubic that draws the arc, cm."""
        return 4 / 3 * math.tan(math.radians(self.kappa) / 4) * self.radius

    def at(self, corner: Point, arrive: Vector, leave: Vector) -> Path:
        """The rounding of a corner that a line reaches along `arrive` and leaves
        along `leave`."""
        u, v = unit(arrive), unit(leave)
        return self.between(corner - u * self.tangent, u, corner + v * self.tangent, v)

    def between(
        self, start: Point, arrive: Vector, end: Point, leave: Vector, gap: float = 0.0
    ) -> Path:
        """The rounding from one tangent point to the other; `gap` is an opening (cm)
        that it spans, which lengthens its handles by a third of it each."""
        u, v = unit(arrive), unit(leave)
        h = self.handle + gap / 3
        return Path.cubic(start, ahead(start, u, h), ahead(end, v, -h), end)


def arc_like(q: Point, p: Point, arrive: Vector, leave: Vector | None = None) -> Path:
    """A curve like a circular arc from `q` to `p`, which it reaches along `arrive`.

    It leaves `q` along the mirror of `arrive` in the chord, so it has no inflection;
    or along `leave`, where something else decides that. Raises ValueError when the two
    points are one.
    """
    e, chord = unit(arrive), direction(q, p)
    start = unit(leave) if leave else chord * (2 * dot(e, chord)) - e
    h = ARC_HANDLE * distance(q, p)
    return Path.cubic(q, ahead(q, start, h), ahead(p, e, -h), p)
