"""The waist of a skirt or of trousers: a line from the centre to the side, square to
both, with darts in it, and trued over the darts folded shut (truing 3.6, 4).

Lengths in cm; the half may lie either way round on the page.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from clothwright.curves import (
    SOLVE,
    Cubic,
    Path,
    Point,
    Vector,
    direction,
    distance,
    dot,
    midpoint,
    turned,
)


@dataclass(frozen=True)
class Meets:
    """Where a seam, a fold or a dart's leg meets the waist, and its unit direction
    down from there."""

    at: Point
    down: Vector


@dataclass(frozen=True)
class Dart:
    """A dart of the waist: its ends, towards the centre and towards the side."""

    centre: Point
    point: Point
    side: Point

    def moved(self, m: Callable[[Point], Point]) -> "Dart":
        """The dart after a motion."""
        return Dart(m(self.centre), m(self.point), m(self.side))


@dataclass(frozen=True)
class Waist:
    """A half's waist in stretches from the centre to the side, and the darts between
    them."""

    edges: tuple[Path, ...]
    darts: tuple[Dart, ...]

    @property
    def net(self) -> float:
        """Length with the darts closed, cm."""
        return math.fsum(e.length for e in self.edges)


def waist_curve(a: Meets, b: Meets, share: float = 1 / 3) -> Path:
    """From `a` to `b`, square to what it meets at both; its handles are a share of the
    straight way."""
    way, reach = b.at - a.at, distance(a.at, b.at) * share
    u, v = (
        next(n for n in (turned(m.down, 90), turned(m.down, -90)) if dot(n, way) > 0)
        for m in (a, b)
    )
    return Path((Cubic(a.at, a.at + u * reach, b.at - v * reach, b.at),))


def dart_on(line: Path, at: float, width: float, length: float) -> Dart:
    """A dart whose middle stands `at` along a waist that runs from the centre to the
    side, its centre line square to it, so that both legs are equal."""
    a, b = line.at_length(at - width / 2), line.at_length(at + width / 2)
    square = turned(direction(a, b), 90)
    down = square if square.y > 0 else square * -1.0
    return Dart(a, midpoint(a, b) + down * length, b)


def plumb_dart(line: Path, at: float, width: float, length: float) -> Dart:
    """The same with its centre line plumb, down the straight grain, its ends level."""
    middle = line.at_length(at)
    half = Vector(width / 2 if line.start.x > line.end.x else -width / 2, 0.0)
    return Dart(middle + half, middle + Vector(0.0, length), middle - half)


def run_on(dart: Dart) -> Dart:
    """The dart with its legs run on beyond the waist by 0.5·t·sin of half its angle,
    t = 5 cm or 0.4 of the leg (truing 4, first garment 12.2)."""
    leg = distance(dart.centre, dart.point)
    sine = distance(dart.centre, dart.side) / 2 / leg
    more = 0.5 * min(5.0, 0.4 * leg) * sine
    return Dart(
        dart.centre + direction(dart.point, dart.centre) * more,
        dart.point,
        dart.side + direction(dart.point, dart.side) * more,
    )


def trued(centre: Meets, darts: Sequence[Dart], side: Meets) -> Waist:
    """The waist as it is redrawn with the darts folded: each leg run on a little, and
    the stretches joined by curves square to legs, centre and side."""
    darts = tuple(run_on(d) for d in darts)
    ends = [centre]
    for d in darts:
        ends += [
            Meets(d.centre, direction(d.centre, d.point)),
            Meets(d.side, direction(d.side, d.point)),
        ]
    ends.append(side)
    pairs = list(pairwise(ends))[::2]
    return Waist(tuple(waist_curve(a, b) for a, b in pairs), darts)


def as_trued(total: float, aim: float, net: Callable[[float], float]) -> float:
    """Darts, `total` together, changed until the trued waist is as long as it should
    be; none when there are none."""
    if total <= 0:
        return 0.0
    for _ in range(8):
        more = net(total) - aim
        total += more
        if abs(more) < SOLVE:
            break
    return total
