"""A seam that is plumb at the hip and turns into a flare or a taper below (blocks C5,
G9); cm, y down, the seam on the right of its piece."""

import math

from clothwright.curves import Cubic, Line, Path, Point, Vector, distance, turned

LEAST_BEND, BEND_RADIUS, MOST_BEND = 12.0, 25.0, 0.75
"""It turns over at least 12 cm, its radius about 25 cm (at least 15, G9), and within
three quarters of what is below."""


def down(lean: float) -> Vector:
    """Direction of a seam that leans out by `lean` radians."""
    return Vector(math.sin(lean), math.cos(lean))


def flared(start: Point, below: float, lean: float) -> Path:
    """From a place where the seam is plumb, `below` cm long, leaning out by `lean`
    radians at the end; in by a negative lean."""
    if lean == 0.0:
        return Path.line(start, start + Vector(0.0, below))
    bend = min(max(LEAST_BEND, BEND_RADIUS * abs(lean)), MOST_BEND * below)
    reach = bend / 3
    end = start + down(lean / 2) * bend
    turn = Cubic(start, start + Vector(0.0, reach), end - down(lean) * reach, end)
    return Path((turn, Line(end, end + down(lean) * (below - turn.length))))


LEAST_SQUARE = 2.5
"""A hem runs square from a side for about so far before it levels, cm."""


def square_hem(seam: Path, level: float) -> Path:
    """From the foot of a seam to the centre at a level, square to both. The seam is as
    long as the centre, so its foot lies little above the level: the hem levels soon,
    and does not dip below it."""
    end, centre = seam.end, Point(0.0, level)
    way = seam.end_direction
    if abs(way.x) < 1e-9:
        return Path.line(end, centre)
    long = distance(end, centre)
    falls = max(0.0, level - end.y) / abs(way.x) if way.x > 0 else 0.0
    reach = min(max(falls, LEAST_SQUARE), long / 3)
    return Path.cubic(
        end,
        end + turned(way, 90) * reach,
        centre + Vector((long - reach) / 2, 0.0),
        centre,
    )


def hem_arc(a: Path, b: Path, degrees: float, radius: float) -> Path:
    """From the end of one part of a hem to the start of the next, over a slash that
    opens by `degrees`: an arc about its point, square to the slash on both sides."""
    reach = 4 / 3 * math.tan(math.radians(degrees) / 4) * radius
    p, q = a.end, b.start
    first, last = p + a.end_direction * reach, q - b.start_direction * reach
    return Path((Cubic(p, first, last, q),))
