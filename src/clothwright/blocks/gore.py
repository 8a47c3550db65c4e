"""One of n equal gores of a flared skirt (blocks G9 of our notes); cm, its centre at
x = 0, y down from the waist level.

The seam runs in over the hip as the side of a straight skirt does, is plumb at the hip,
and turns from there, or from lower down, into the flare. Waist and hem are square to
it, and it is as long as the centre.
"""

import math
from dataclasses import dataclass
from functools import cached_property

from clothwright.blocks.flare import flared, square_hem
from clothwright.blocks.trial import by_trial
from clothwright.curves import Cubic, Path, Point, Vector, distance, turned


@dataclass(frozen=True)
class Gore:
    """Widths of one gore and their levels, cm. Raises ValueError where no seam can be
    drawn between them."""

    waist: float
    hip: float
    hem: float
    hip_level: float
    length: float
    flare_from: float
    """Level at which the flare begins, at the hip or below it."""

    @property
    def hip_point(self) -> Point:
        """Where the seam crosses the hip, plumb."""
        return Point(self.hip / 2, self.hip_level)

    @cached_property
    def lean(self) -> float:
        """Of the seam off the plumb at the hem, radians, so that the hem is as long as
        it should be."""
        if self.hem - self.hip < 1e-6:
            return 0.0

        def over(t: float) -> float:
            return 2 * square_hem(self._lower(t), self.length).length - self.hem

        found = by_trial(over, 0.0, math.radians(75.0))
        if found is None:
            raise ValueError("no flare of a gore gives this hem")
        return found

    def _lower(self, t: float) -> Path:
        """The seam from the hip to the hem, that leans by `t` at the hem."""
        q, start = self.hip_point, Point(self.hip / 2, self.flare_from)
        below = flared(start, self.length - self.flare_from, t)
        return Path.line(q, start) + below if distance(q, start) > 0.01 else below

    def half_hem(self) -> Path:
        """From the seam to the centre."""
        return square_hem(self._lower(self.lean), self.length)

    def _upper(self, intake: float, rise: float) -> Cubic:
        """The seam from the waist to the hip (C5)."""
        q, wh = self.hip_point, self.hip_level
        p = Point(q.x - intake, -rise)
        return Cubic(
            p, p + Vector(0.40 * intake, 0.33 * wh), q - Vector(0.0, 0.42 * wh), q
        )

    def _half_waist(self, intake: float, rise: float) -> Path:
        seam = self._upper(intake, rise)
        centre = Point(0.0, 0.0)
        third = distance(centre, seam.start) / 3
        inward = turned(seam.start_direction, 90)
        return Path.cubic(
            centre,
            centre + Vector(third, 0.0),
            seam.start + inward * third,
            seam.start,
        )

    def _rise(self, intake: float) -> float:
        """Of the seam's end, so that the seam is as long as the centre."""

        def over(rise: float) -> float:
            return self._upper(intake, rise).length - self.hip_level

        found = by_trial(over, -0.3 * self.hip_level, 0.3 * self.hip_level)
        if found is None:
            raise ValueError("the waist of a gore is too far from its hip")
        return found

    @cached_property
    def _shape(self) -> tuple[float, float]:
        """Intake of each seam and rise of its end that make the waist as long as it
        should be."""

        def over(intake: float) -> float:
            return 2 * self._half_waist(intake, self._rise(intake)).length - self.waist

        about = (self.hip - self.waist) / 2
        found = by_trial(over, about - 1.5, about + 1.5)
        if found is None:
            raise ValueError("no seam takes a gore in at the waist")
        return found, self._rise(found)

    def half_waist(self) -> Path:
        """From the centre to the seam."""
        return self._half_waist(*self._shape)

    def seam(self) -> Path:
        """From the waist to the hem."""
        return Path((self._upper(*self._shape),)) + self._lower(self.lean)

    def width_at(self, y: float) -> float:
        """Width of the whole gore straight across at a level, cm."""
        level = Path.line(Point(-100.0, y), Point(200.0, y))
        seam = self.seam()
        return 2 * seam.at_length(seam.meets(level)[0][0]).x
