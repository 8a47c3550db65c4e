"""What all panel lines share: the curve to the point, the fillet, the ease over it.

Formulas of first garment 0 and 5.3, exact where marked so there.
"""

import math
from dataclasses import dataclass

from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    degrees_between,
    distance,
    dot,
    heading,
    unit,
)


def reflect(e: Vector, c: Vector) -> Vector:
    """2(e·c)c − e for unit vectors: `e` mirrored in the direction `c`."""
    k = 2 * dot(e, c)
    return Vector(k * c[0] - e[0], k * c[1] - e[1])


def arc_like(q: Point, p: Point, arrive: Vector, start: Vector | None = None) -> Path:
    """A curve from q to p that arrives along the unit vector `arrive`.

    Its start is the mirror of its arrival, so that it is within 0.1 of a circular arc
    for turns below 70° and has no inflection; another `start` may be given.
    """
    reach = distance(q, p)
    begin = start or reflect(arrive, unit(p - q))
    return Path((Cubic(q, q + begin * (0.36 * reach), p - arrive * (0.36 * reach), p),))


def start_below_horizontal(q: Point, p: Point, arrive: Vector) -> float:
    """Degrees below the horizontal at which `arc_like` starts."""
    a = abs(heading(reflect(arrive, unit(p - q))))
    return min(a, 180 - a) if a <= 180 else a


@dataclass(frozen=True)
class Fillet:
    """A corner of `kappa` degrees rounded: radius, tangent length, paper shaved at
    the corner and length of seam lost, cm (exact)."""

    kappa: float
    radius: float
    tangent: float
    shaved: float
    loss: float

    @classmethod
    def of(cls, kappa: float, radius: float = 8.0, shaved: float = 0.3) -> "Fillet":
        """The fillet that shaves at most `shaved` cm off the corner."""
        k = math.radians(kappa)
        sec = 1 / math.cos(k / 2) - 1
        r = min(radius, shaved / sec) if sec > 1e-12 else radius
        return cls(
            kappa, r, r * math.tan(k / 2), r * sec, r * (2 * math.tan(k / 2) - k)
        )


def rounded(upper: Path, lower: Path, fillet: Fillet, gap: float = 0.0) -> Path:
    """Two lines joined over their corner by a fillet of one cubic.

    `upper` ends where `lower` begins, or a `gap` above it; the handles grow by a third
    of the gap.
    """
    t = min(fillet.tangent, 0.4 * upper.length, 0.4 * lower.length)
    if t < 0.05 and gap < 1e-6:  # too small to draw, or no corner at all
        return upper + lower
    a, _ = upper.split_at_length(upper.length - t)
    _, b = lower.split_at_length(t)
    h = 4 / 3 * math.tan(math.radians(fillet.kappa) / 4) * fillet.radius + gap / 3
    u, v = a.end_direction, b.start_direction
    return Path(
        (
            *a.segments,
            Cubic(a.end, a.end + u * h, b.start - v * h, b.start),
            *b.segments,
        )
    )


def corner(upper: Path, lower: Path) -> float:
    """Degrees by which the way turns from the end of one line into the next."""
    return degrees_between(upper.end_direction, lower.start_direction)


def line_path(*points: Point) -> Path:
    """Straight lines through points."""
    return Path(tuple(Line(a, b) for a, b in zip(points, points[1:], strict=False)))
