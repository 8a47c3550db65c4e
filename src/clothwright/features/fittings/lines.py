"""Lines of the block carried to marks that an alteration has moved."""

import math

from clothwright.curves import Cubic, Path, Point, Vector, distance


def armhole_to(path: Path, by: Vector) -> Path:
    """An armhole of two curves whose pitch, where they meet, is moved."""
    return _curves(path, Vector(0.0, 0.0), by, Vector(0.0, 0.0))


def carried(path: Path, tip: Point, to: Point, down: float) -> Path:
    """An armhole whose tip is moved to another place and whose underarm by `down`; the
    pitch goes half of both ways."""
    at_tip, under = to - tip, Vector(0.0, down)
    from_tip = distance(path.start, tip) < distance(path.end, tip)
    a, b = (at_tip, under) if from_tip else (under, at_tip)
    return _curves(path, a, Vector(0.0, (at_tip.y + down) / 2), b)


def _curves(path: Path, start: Vector, middle: Vector, end: Vector) -> Path:
    """Two curves, their ends and what hangs on these moved. (What an overlap at the
    pitch has left between them is drawn over.)"""
    first, second = path.segments[0], path.segments[-1]
    a, b, c, at = first.points
    _, e, f, g = second.points
    return Path(
        (
            Cubic(a + start, b + start, c + middle, at + middle),
            Cubic(at + middle, e + middle, f + end, g + end),
        )
    )


def slope_of(neck: Point, tip: Point) -> float:
    """Slope of a shoulder, degrees below the level."""
    return math.degrees(math.atan2(tip.y - neck.y, abs(tip.x - neck.x)))
