"""What all panel lines share: a corner rounded over the point (first garment 5.3)."""

from clothwright.curves import Path, Vector, degrees_between, dot
from clothwright.truing import Fillet


def reflect(e: Vector, c: Vector) -> Vector:
    """2(e·c)c − e for unit vectors: `e` mirrored in the direction `c`."""
    k = 2 * dot(e, c)
    return Vector(k * c[0] - e[0], k * c[1] - e[1])


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
    arc = fillet.between(a.end, a.end_direction, b.start, b.start_direction, gap)
    return a + arc + b


def corner(upper: Path, lower: Path) -> float:
    """Degrees by which the way turns from the end of one line into the next."""
    return degrees_between(upper.end_direction, lower.start_direction)
