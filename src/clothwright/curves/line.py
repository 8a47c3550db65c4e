"""The straight segment, and the box round a segment. cm."""

import math
from dataclasses import dataclass, field
from typing import Final

from clothwright.curves.held import held
from clothwright.curves.motion import Motion
from clothwright.curves.near import within
from clothwright.curves.point import Pair, Point, Vector, cross, direction, mix

Box = tuple[float, float, float, float]
"""Left, top, right, bottom, cm."""


NO_NUMBER = "a point of this curve is not a number"


@dataclass(init=False, unsafe_hash=True)
class Line:
    """Straight from `start` to `end`.

    Like all that a draft makes by the thousand, it is kept from change by the type
    checker (`Final`): a frozen class takes twice the time to make and to read.
    """

    start: Final[Point]
    end: Final[Point]
    length: float = field(init=False, compare=False, repr=False)
    """Length in cm."""

    def __init__(self, start: Point, end: Point) -> None:
        length = math.hypot(end[0] - start[0], end[1] - start[1])
        if not math.isfinite(length):
            raise ValueError(NO_NUMBER)
        self.start, self.end, self.length = start, end, length

    @property
    def points(self) -> tuple[Point, ...]:
        """Start and end."""
        return (self.start, self.end)

    @held
    def box(self) -> Box:
        """Left, top, right and bottom of the line, cm."""
        (x0, y0), (x1, y1) = self.start, self.end
        left, right = (x0, x1) if x0 < x1 else (x1, x0)
        return (left, y0, right, y1) if y0 < y1 else (left, y1, right, y0)

    @held
    def start_direction(self) -> Vector:
        """Unit direction at the start."""
        return direction(self.start, self.end)

    @property
    def end_direction(self) -> Vector:
        """Unit direction at the end."""
        return self.start_direction

    def leaving(self) -> Pair:
        """The direction at the start, of any length: for angles alone."""
        (x0, y0), (x1, y1) = self.start, self.end
        return (x1 - x0, y1 - y0) if self.length > 0 else self.start_direction

    arriving = leaving

    def at(self, t: float) -> Point:
        """The point at parameter `t`, 0 to 1."""
        return mix(self.start, self.end, t)

    def slope(self, t: float) -> Vector:
        """Derivative at `t`."""
        return self.end - self.start

    def parameter_at_length(self, s: float) -> float:
        """Parameter where the length from the start is `s`; clamped to 0..1."""
        return within(s / self.length) if self.length else 0.0

    def length_to(self, t: float) -> float:
        """Length from the start to parameter `t`, 0 to 1."""
        return self.length * within(t)

    def nearest(self, p: Point) -> tuple[float, float]:
        """(t, distance) of the place nearest to `p`."""
        (x0, y0), (x1, y1), (x, y) = self.start, self.end, p
        vx, vy = x1 - x0, y1 - y0
        n = vx * vx + vy * vy
        t = ((x - x0) * vx + (y - y0) * vy) / n if n else 0.0
        t = 0.0 if t <= 0.0 else 1.0 if t > 1.0 else t
        return t, math.hypot(x0 + vx * t - x, y0 + vy * t - y)

    def part(self, t0: float, t1: float) -> "Line":
        """The part between two parameters."""
        return Line(self.at(t0), self.at(t1))

    def before(self, t: float) -> "Line":
        """The part before a parameter."""
        return Line(self.start, self.at(t))

    def after(self, t: float) -> "Line":
        """The part after a parameter."""
        return Line(self.at(t), self.end)

    def reversed(self) -> "Line":
        """The same line walked the other way."""
        return Line(self.end, self.start)

    def moved(self, m: Motion) -> "Line":
        """The line after a motion."""
        return Line(m(self.start), m(self.end))

    def area_term(self) -> float:
        """This segment's share of the enclosed area (Green's theorem)."""
        return 0.5 * cross(self.start, self.end)

    def turning(self) -> tuple[float, float]:
        """(clockwise, anticlockwise) turning in degrees, both ≥ 0."""
        return 0.0, 0.0

    def parallel(self, d: float) -> tuple["Line", ...]:
        """The line set off by `d` to its left as seen (outside of an outline)."""
        u = self.start_direction
        v = Vector(u[1] * d, -u[0] * d)
        return (Line(self.start + v, self.end + v),)
