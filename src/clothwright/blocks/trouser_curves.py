"""Lines of the trouser block: a front and a back, each on its own crease line x = 0,
its side at the left and its fork at the right; cm, y down from the crotch line (blocks
E of our notes, with their corrections C1 and C4).

The back is turned over onto the page.
"""

from dataclasses import dataclass

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.waist_line import (
    Dart,
    Meets,
    Waist,
    dart_on,
    plumb_dart,
    trued,
    waist_curve,
)
from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    direction,
    turned,
    unit,
)

LEANS = 0.3
"""The side leans into the waist by so much over its handle there, cm (E6)."""

STRAIGHT_HEM = 0.026
"""A hem is ruled straight while the seams beside it lean by no more than this (1.5°);
beyond, it is curved square to both."""


@dataclass(frozen=True)
class Leg:
    """Inseam, side and hem of one half."""

    fork: Point
    first: Vector
    """Handle with which the inseam leaves the fork."""

    hip: Point
    """Side at the hip."""

    knee: float
    hem: float
    """Levels below the crotch line, cm."""

    knee_half: float
    hem_half: float
    """Widths to each side of the crease, cm."""

    @property
    def lean(self) -> float:
        """What the lower leg gains in half its width for each cm downwards."""
        return (self.hem_half - self.knee_half) / (self.hem - self.knee)

    def inseam(self) -> Path:
        """From the fork to the hem, entering the straight lower leg without a bend
        (E6)."""
        knee, rise = Point(self.knee_half, self.knee), 0.33 * self.knee
        return Path(
            (
                Cubic(
                    self.fork,
                    self.fork + self.first,
                    knee - Vector(self.lean, 1.0) * rise,
                    knee,
                ),
                Line(knee, Point(self.hem_half, self.hem)),
            )
        )

    def side(self, waist: Point) -> Path:
        """From the hem to the waist, upright at the hip (E6)."""
        hip, rise = self.hip, waist.y - self.hip.y
        return self.side_to_hip() + Path(
            (
                Cubic(
                    hip,
                    hip + Vector(0.0, 0.35 * rise),
                    waist - Vector(self._leaning(waist), 0.33 * rise),
                    waist,
                ),
            )
        )

    def side_to_hip(self) -> Path:
        """The side from the hem to the hip."""
        hem, knee = (
            Point(-self.hem_half, self.hem),
            Point(-self.knee_half, self.knee),
        )
        up = self.knee - self.hip.y
        return Path(
            (
                Line(hem, knee),
                Cubic(
                    knee,
                    knee - Vector(-self.lean, 1.0) * (0.4 * up),
                    self.hip + Vector(0.0, 0.35 * up),
                    self.hip,
                ),
            )
        )

    def side_down(self, waist: Point) -> Vector:
        """Unit direction of the side, down from the waist."""
        down = Vector(-self._leaning(waist), 0.33 * (self.hip.y - waist.y))
        return unit(down)

    def _leaning(self, waist: Point) -> float:
        """The side leans by so much over its handle at the waist (E6), and by no more
        than it is taken in from the hip: a side that hangs plumb is straight."""
        return clip(waist.x - self.hip.x, 0.0, LEANS)

    def hem_line(self) -> Path:
        """From the inseam to the side: level, or square to both where they lean."""
        a, b = Point(self.hem_half, self.hem), Point(-self.hem_half, self.hem)
        if abs(self.lean) <= STRAIGHT_HEM:
            return Path.line(a, b)
        third = 2 * self.hem_half / 3
        u = turned(unit(Vector(self.lean, 1.0)), 90)
        v = turned(unit(Vector(-self.lean, 1.0)), 90)
        return Path((Cubic(a, a + u * third, b - v * third, b),))

    def width_at_crotch(self) -> float:
        """From the drawn side to the fork point, level with the crotch line
        (corrections C2), cm."""
        level = Path.line(Point(-90.0, 0.0), Point(90.0, 0.0))
        return self.fork.x - level.at_length(self.side_to_hip().meets(level)[0][1]).x


@dataclass(frozen=True)
class Front:
    """What the front is drawn from, cm."""

    rise: float
    """Waist above the crotch line."""

    hip: float
    fork: float
    cf_in: float
    cf_down: float
    knee: float
    knee_girth: float
    hem: float
    hem_girth: float
    pleat: float = 0.0
    """Fullness set out at the side for pleats, from the waist to above the knee."""

    dart: float = 9.5
    """Length of its dart (E3)."""

    off: float = 0.0
    """The crease lies so far nearer to the side than half way between it and the fork,
    cm; a fitting that moves the fork alone leaves the crease where it was."""

    @property
    def hip_level(self) -> float:
        """Level of the hip line (E1)."""
        return -self.rise / 3

    @property
    def cf(self) -> float:
        """The centre front upright, across from the crease (E2)."""
        return (self.hip - self.fork) / 2 + self.off

    @property
    def cf_waist(self) -> Point:
        """Centre front at the waist (E3)."""
        return Point(self.cf - self.cf_in, -self.rise + self.cf_down)

    @property
    def cf_hip(self) -> Point:
        """Centre front at the hip."""
        return Point(self.cf, self.hip_level)

    @property
    def leg(self) -> Leg:
        """Its leg (E2, E5, E6)."""
        half = (self.hip + self.fork) / 2
        return Leg(
            Point(half + self.off, 0.0),
            Vector(-1.3, 0.33 * self.knee),
            Point(-half + self.off - self.pleat, self.hip_level),
            self.knee,
            self.hem,
            (self.knee_girth / 2 - 1) / 2,
            (self.hem_girth / 2 - 1) / 2,
        )

    def crotch(self) -> Path:
        """From the waist to the fork, which it reaches square to the inseam (E4,
        corrections C1). The curve leaves the centre front line along it, as E8 has it
        at the back: plumb, as in E4, it would begin with a corner."""
        hip, fork = self.cf_hip, self.leg.fork
        end = unit(Vector(0.33 * self.knee, 1.3)) * (0.62 * self.fork)
        down = direction(self.cf_waist, hip) * (-0.62 * hip.y)
        return Path(
            (Line(self.cf_waist, hip), Cubic(hip, hip + down, fork - end, fork))
        )

    def meets_cf(self) -> Meets:
        """The centre front where it meets the waist."""
        return Meets(self.cf_waist, direction(self.cf_waist, self.cf_hip))

    def meets_side(self, x: float) -> Meets:
        """The side where it meets the waist level."""
        at = Point(x, -self.rise)
        return Meets(at, self.leg.side_down(at))

    def line(self, x: float) -> Path:
        """The waist before darts, from the centre to a side at `x`."""
        return waist_curve(self.meets_cf(), self.meets_side(x))

    def darts(self, x: float, widths: tuple[float, ...]) -> tuple[Dart, ...]:
        """Its darts or pleats: the first on the crease, a second half way to the side,
        1.5 cm shorter; both on the straight grain (E3)."""
        line = self.line(x)
        places = (0.0, x / 2)
        lengths = (self.dart, self.dart - 1.5)
        return tuple(
            plumb_dart(line, _along(line, at), width, length)
            for at, width, length in zip(places, widths, lengths, strict=False)
        )

    def waist(self, x: float, widths: tuple[float, ...]) -> Waist:
        """Its trued waist."""
        return trued(self.meets_cf(), self.darts(x, widths), self.meets_side(x))


@dataclass(frozen=True)
class Back:
    """What the back is drawn from besides its front, cm."""

    front: Front
    hip: float
    fork: float
    tilt: float
    """The waist point lies so far behind the base of the seat line."""

    rise: float
    """The waist point lies so far above the waist level."""

    drop: float
    """The fork lies so far below the crotch line."""

    dart: float = 13.0
    """Length of a back dart (E9)."""

    @property
    def base(self) -> Point:
        """Base of the seat line on the crotch line (E7)."""
        return Point(self.front.cf - 1.0, 0.0)

    @property
    def cb_waist(self) -> Point:
        """Centre back at the waist (E7)."""
        return Point(self.base.x - self.tilt, -self.front.rise - self.rise)

    @property
    def cb_hip(self) -> Point:
        """The seat line at the hip level (corrections A14)."""
        q, k, y = self.cb_waist, self.base, self.front.hip_level
        return Point(q.x + (k.x - q.x) * (y - q.y) / (k.y - q.y), y)

    @property
    def leg(self) -> Leg:
        """Its leg (E5 to E8)."""
        f = self.front
        return Leg(
            Point(self.base.x + self.fork, self.drop),
            Vector(-2.6, 0.30 * f.knee),
            Point(self.cb_hip.x - self.hip, f.hip_level),
            f.knee,
            f.hem,
            (f.knee_girth / 2 + 1) / 2,
            (f.hem_girth / 2 + 1) / 2,
        )

    def crotch(self) -> Path:
        """From the waist to the fork, which it reaches square to the inseam (E8,
        corrections C1)."""
        q, hip, fork = self.cb_waist, self.cb_hip, self.leg.fork
        end = unit(Vector(0.30 * self.front.knee, 2.6)) * (0.62 * self.fork)
        down = direction(q, self.base) * (-0.85 * hip.y)
        return Path((Line(q, hip), Cubic(hip, hip + down, fork - end, fork)))

    def meets_cb(self) -> Meets:
        """The seat line where it meets the waist."""
        return Meets(self.cb_waist, direction(self.cb_waist, self.base))

    def meets_side(self, at: Point) -> Meets:
        """The side where it meets the waist."""
        return Meets(at, self.leg.side_down(at))

    def line(self, side: Point) -> Path:
        """The waist before darts, from the centre to the side."""
        return waist_curve(self.meets_cb(), self.meets_side(side))

    def darts(self, side: Point, widths: tuple[float, ...]) -> tuple[Dart, ...]:
        """Its darts, square to the waist: one in the middle, two at thirds, the outer
        11 cm long at most (E9)."""
        line = self.line(side)
        net = line.length - sum(widths)
        shares = (0.5,) if len(widths) == 1 else (1 / 3, 2 / 3)
        lengths = (self.dart, min(self.dart, OUTER_DART))
        out, taken = [], 0.0
        for share, width, length in zip(shares, widths, lengths, strict=False):
            at = share * net + taken + width / 2
            out.append(dart_on(line, at, width, length))
            taken += width
        return tuple(out)

    def waist(self, side: Point, widths: tuple[float, ...]) -> Waist:
        """Its trued waist."""
        return trued(self.meets_cb(), self.darts(side, widths), self.meets_side(side))


OUTER_DART = 11.0
"""The outer of two back darts is no longer, cm (E9)."""


def _along(line: Path, x: float) -> float:
    """How far along a waist it stands over `x`."""
    upright = Path.line(Point(x, -90.0), Point(x, 10.0))
    return line.meets(upright)[0][0]
