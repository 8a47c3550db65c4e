"""Lines of the straight skirt block: one half, its centre at x = 0, its side at the
right; cm, y down from the waist level (blocks C4 to C8 of our notes).

The front is drafted as the back is and turned over onto the page.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from clothwright.blocks import waist_line
from clothwright.blocks.flare import flared, square_hem
from clothwright.blocks.trial import by_trial
from clothwright.blocks.waist_line import Meets, Waist, dart_on
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    turned,
    unit,
)


@dataclass(frozen=True)
class Half:
    """What one half of the skirt is drawn from, cm."""

    width: float
    """From the centre to the side at the hip."""

    intake: float
    """Taken in at the side of the waist; below nought the side runs outwards."""

    rise: float
    """Of the side waist above the waist level."""

    drop: float
    """Of the centre waist below it."""

    hip: float
    """Level of the hip."""

    out: float = 0.0
    """Of the side beyond the hip, at the hem; below nought it is tapered."""

    length: float = 0.0
    """Level of the hem at the centre."""

    @property
    def waist_at_side(self) -> Point:
        return Point(self.width - self.intake, -self.rise)

    @property
    def hip_at_side(self) -> Point:
        return Point(self.width, self.hip)

    @property
    def hem_at_side(self) -> Point:
        """As far below the hip, along the side, as the centre's hem is."""
        return self._below.end

    @cached_property
    def _below(self) -> Path:
        """The side from the hip to the hem: plumb at the hip, out by what was asked at
        the hem."""
        return run_out(self.hip_at_side, self.length - self.hip, self.out)

    def side(self) -> Path:
        """From the waist over the hip to the hem (C5)."""
        ws, hs = self.waist_at_side, self.hip_at_side
        curve = Cubic(
            ws,
            ws + Vector(0.40 * self.intake, 0.33 * self.hip),
            hs - Vector(0.0, 0.42 * self.hip),
            hs,
        )
        return Path((curve,)) + self._below

    def waist(self) -> Path:
        """From the centre to the side, square to both (C6)."""
        ws = self.waist_at_side
        inward = turned(unit(Vector(0.40 * self.intake, 0.33 * self.hip)), 90)
        centre = Point(0.0, self.drop)
        return Path(
            (
                Cubic(
                    centre,
                    centre + Vector(0.45 * self.width, 0.0),
                    ws + inward * (0.35 * self.width),
                    ws,
                ),
            )
        )

    def hem(self) -> Path:
        """From the side to the centre, square to both (K6)."""
        return square_hem(self._below, self.length)


def run_out(start: Point, long: float, out: float) -> Path:
    """A side from the hip down, `long` cm: plumb where it starts, `out` to the right at
    the hem. Raises ValueError where it would lean too far."""
    if out == 0.0:
        return flared(start, long, 0.0)

    def off(lean: float) -> float:
        return flared(start, long, lean).end.x - start.x - out

    lean = by_trial(off, -1.2, 1.2)
    if lean is None:
        raise ValueError("the side of a skirt leans too far out")
    return flared(start, long, lean)


@dataclass(frozen=True)
class Plan:
    """The darts of a half from the centre: shares of the net waist at which they
    stand, their widths along the waist, their lengths."""

    places: tuple[float, ...]
    widths: tuple[float, ...]
    lengths: tuple[float, ...]


def drafted(half: Half, plan: Plan) -> Waist:
    """The waist curve with its darts marked on it, each with its centre line square to
    the curve and its point on that line, so that its legs are equal (C8)."""
    curve = half.waist()
    net = curve.length - sum(plan.widths)
    stops, darts, taken = [0.0], [], 0.0
    for place, width, length in zip(
        plan.places, plan.widths, plan.lengths, strict=True
    ):
        s = place * net + taken
        darts.append(dart_on(curve, s + width / 2, width, length))
        stops += [s, s + width]
        taken += width
    stops.append(curve.length)
    pairs = zip(stops[::2], stops[1::2], strict=True)
    return Waist(tuple(curve.between(a, b) for a, b in pairs), tuple(darts))


def trued(half: Half, plan: Plan) -> Waist:
    """The same as it is redrawn with the darts folded."""
    down = unit(Vector(0.40 * half.intake, 0.33 * half.hip))
    centre = Meets(Point(0.0, half.drop), Vector(0.0, 1.0))
    side = Meets(half.waist_at_side, down)
    return waist_line.trued(centre, drafted(half, plan).darts, side)


def plan(
    total: float,
    count: int,
    places: Sequence[Sequence[float]],
    lengths: Sequence[float],
    widest: float,
) -> Plan:
    """The darts of a half: one takes all, of two the inner takes 0.55 as long as that
    leaves it not wider than `widest` (C8). `places` are those of one dart, and of
    two."""
    if count == 0:
        return Plan((), (), ())
    if count == 1:
        return Plan(tuple(places[0]), (total,), (lengths[0],))
    inner = max(min(0.55 * total, widest), total / 2)
    return Plan(tuple(places[1]), (inner, total - inner), (lengths[0], lengths[1]))
