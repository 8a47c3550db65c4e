"""The lines of a sleeve cut in one with the body: over the arm, the hem, and under the
arm into the side (transformations 4). One half; `side` is −1 for a front, whose arm
lies to the left, and 1 for a back."""

import math
from dataclasses import dataclass

from clothwright.blocks.circle import arc
from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Path,
    Point,
    Vector,
    bearing,
    degrees_between,
    direction,
    distance,
    dot,
    heading,
    turned,
    unit,
)
from clothwright.features.sleeves.raglan_lines import curve
from clothwright.paper import PaperError

BENDS = 7.0
"""The overarm line has rounded the tip of the shoulder so far below it, cm (common
practice, no source)."""

TOO_SHORT = (
    "so short a sleeve ends where the seam under the arm turns into the side: make the "
    "sleeve (lk) longer"
)

STRAIGHT = 1.5
"""The seam under the arm is straight for so long at the hem at least, cm."""

CORNER = 0.6
"""The slash for a gusset is so far open to both sides at its mouth, cm: the allowances
lie there (common practice, no source)."""


@dataclass(frozen=True)
class Arm:
    """What half a sleeve is drawn by, cm and degrees."""

    side: int
    neck: Point
    shoulder: Vector
    """Unit direction of the shoulder, from the neck."""

    tip: Point
    """End of the shoulder, raised for the arm."""

    corner: Point
    """Where the straight under the arm would meet the side."""

    down: Vector
    """Unit direction of the side from there."""

    angle: float
    """Of the overarm line below the level."""

    length: float
    """From the tip to the hem."""

    hem: float
    """Half of the width at the hem."""

    @property
    def along(self) -> Vector:
        """Unit direction down the arm."""
        if self.side > 0:
            return bearing(self.angle)
        return turned(Vector(-1.0, 0.0), -self.angle)

    @property
    def across(self) -> Vector:
        """Unit direction from the overarm line to the seam under the arm."""
        return turned(self.along, 90.0 * self.side)

    @property
    def wide(self) -> float:
        """Width of the half from its overarm line to the corner, cm."""
        return dot(self.corner - self.tip, self.across)

    @property
    def straight(self) -> float:
        """What the arm has from the corner to the hem, cm; below nought it has none."""
        square = self.overarm.end + self.across * self.hem
        return dot(square - self.corner, self.along)

    def under(self, more: float) -> tuple[Point, float]:
        """The lower end of the hem, `more` beyond the square one, and how far from it
        the corner is."""
        square = self.overarm.end + self.across * self.hem
        foot = square + direction(self.corner, square) * more
        return foot, distance(foot, self.corner)

    @property
    def overarm(self) -> Path:
        """From the neck over the tip to the hem."""
        way = self.along
        at_tip = unit(direction(self.neck, self.tip) + way)
        low = self.tip + way * min(BENDS, 0.6 * self.length)
        last = curve(self.tip, at_tip, low, way)
        return (
            curve(self.neck, self.shoulder, self.tip, at_tip)
            + last
            + Path.line(low, low + way * (self.length - last.length))
        )

    def hem_to(self, foot: Point) -> Path:
        """The hem, square to the overarm line and to the seam under the arm."""
        square = turned(direction(foot, self.corner), 90)
        arrive = square if dot(square, self.across) > 0 else square * -1.0
        return curve(self.overarm.end, self.across, foot, arrive)


def apart(front: Vector, back: Vector) -> float:
    """How much less steep than told the front's arm is, and steeper the back's, so that
    both stand alike to their sides, which run down along `front` and `back`, in
    degrees."""
    lean_f = math.atan2(-front.x, front.y)
    lean_b = math.atan2(back.x, back.y)
    return math.degrees(lean_f - lean_b) / 2


@dataclass(frozen=True)
class Round:
    """The round from the seam under the arm into the side."""

    reach: float
    """From the corner to where it begins and ends, cm."""

    wedge: float
    """Between arm and side, radians."""

    radius: float

    @classmethod
    def of(cls, arm: Arm, foot: Point, radius: float) -> "Round":
        """Of the sleeve whose seam under the arm begins at `foot`."""
        to = direction(arm.corner, foot)
        wedge = math.radians(degrees_between(to, arm.down))
        return cls(radius / math.tan(wedge / 2), wedge, radius)

    @property
    def saves(self) -> float:
        """What it is shorter than the way over the corner, cm."""
        return 2 * self.reach - self.radius * (math.pi - self.wedge)


MOST_SLANT = 5.0
"""The hem is at most so much longer behind under the arm, and shorter in front, cm."""


_UP_TO = 0.9
"""And by no more than this share of the seam under the arm."""


def evened(arms: tuple[Arm, ...], radius: float | None) -> float | None:
    """How much longer under the arm the back is drawn, and the front shorter, so that
    both are of one length down to the waist, cm; with a round of this radius, or none
    for a gusset. None when there is no such length."""

    def whole(arm: Arm, more: float) -> float:
        foot, reach = arm.under(more)
        return reach if radius is None else reach - Round.of(arm, foot, radius).saves

    def over(longer: float) -> float:
        return whole(arms[0], -longer) - whole(arms[1], longer)

    most = min(MOST_SLANT, *(_UP_TO * arm.under(0.0)[1] for arm in arms))
    return by_trial(over, -most, most)


def rounded(arm: Arm, foot: Point, radius: float) -> Path:
    """The seam under the arm from the hem, rounded into the side.

    Raises PaperError when the sleeve is too short for the round.
    """
    bend = Round.of(arm, foot, radius)
    to, reach = direction(arm.corner, foot), bend.reach
    if reach > distance(arm.corner, foot) - STRAIGHT:
        raise PaperError(TOO_SHORT)
    touch, low = arm.corner + to * reach, arm.corner + arm.down * reach
    middle = unit(to + arm.down) * (radius / math.sin(bend.wedge / 2))
    centre = arm.corner + middle
    a, b = heading(touch - centre), heading(low - centre)
    b = a - (a - b) % 360 if arm.side > 0 else a + (b - a) % 360
    return Path.line(foot, touch) + arc(centre, radius, a, b)


@dataclass(frozen=True)
class Slash:
    """The slash for a gusset: from the seam under the arm to its point, and to the
    side."""

    on_under: Point
    point: Point
    on_side: Point


def slashed(arm: Arm, foot: Point, leg: float) -> Slash:
    """A slash from the corner under the arm up into the half, midway between the seam
    and the side, with legs of one length."""
    to = direction(arm.corner, foot)
    into = unit(to + arm.down) * -1.0
    half = math.radians(degrees_between(to, arm.down) / 2)
    lean = CORNER * math.cos(half)
    deep = math.sqrt(leg**2 - CORNER**2 + lean**2) - lean
    return Slash(
        arm.corner + to * CORNER,
        arm.corner + into * deep,
        arm.corner + arm.down * CORNER,
    )
