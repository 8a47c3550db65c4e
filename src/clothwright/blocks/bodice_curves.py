"""Necks and armholes of the bodice block, and the directions that they keep to.

Paragraphs of blocks A2 and A3 of our notes, with their corrections; cm, y down. The
rules measure the same curves that the draft draws.
"""

import math

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    ahead,
    bearing,
    direction,
    distance,
    left_normal,
    turned,
)
from clothwright.truing.outline import wrong_way
from clothwright.truing.tolerances import WRONG_WAY

_DOWN = Vector(0.0, 1.0)


def back_neck_curve(bw: float, nr: float) -> Cubic:
    """Block neck of the back, nape to shoulder (A2.2)."""
    return Cubic(
        Point(0, 0),
        Point(0.62 * bw, 0),
        Point(bw - 0.20 * nr, -0.42 * nr),
        Point(bw, -nr),
    )


def front_neck_curve(
    x: float, y: float, fw: float, dep: float, sigma_f: float
) -> Cubic:
    """Block neck of the front, shoulder (x, y) to centre front (A3.3)."""
    g = math.radians(sigma_f)
    return Cubic(
        Point(x, y),
        Point(x + 0.48 * dep * math.sin(g), y + 0.48 * dep * math.cos(g)),
        Point(x + 0.50 * fw, y + dep),
        Point(x + fw, y + dep),
    )


def outwards_front(sigma: float) -> Vector:
    """Unit vector along the front shoulder, neck to tip, for a slope in degrees."""
    return turned(Vector(-1.0, 0.0), -sigma)


def outwards_back(sigma: float) -> Vector:
    """Unit vector along the back shoulder, neck to tip, for a slope in degrees."""
    return bearing(sigma)


def inward_front(sigma: float) -> Vector:
    """Unit vector square to the front shoulder, into the piece."""
    g = math.radians(sigma)
    return Vector(math.sin(g), math.cos(g))


def inward_back(sigma: float) -> Vector:
    """Unit vector square to the back shoulder, into the piece."""
    g = math.radians(sigma)
    return Vector(-math.sin(g), math.cos(g))


def tip_to_pitch(tip: Point, inward: Vector, pitch: Point) -> Cubic:
    """Upper curve of both armholes: square to the shoulder, upright at the pitch.

    Handles of 0.30 and 0.38 of the chord (A2.7, A3.10). Where the tip hangs so little
    over the pitch that these would swing 2 to 4 mm past the plumb line through the
    pitch and back (3° and more the wrong way, B18), the curve turns nearer to the tip
    and runs down that line: its first handle reaches at most 1.5 times as far as the
    line. Our own trial: at most 0.3 mm past it, radius seldom under 3 cm.
    """
    chord = distance(pitch, tip)
    first, second = 0.30 * chord, 0.38 * chord
    across = pitch.x - tip.x
    if across * inward.x > 0:
        reach = across / inward.x
        if 1.5 * reach < first:
            down = pitch.y - (tip.y + reach * inward.y)
            first, second = 1.5 * reach, max(second, down - 2.1 * reach)
    return Cubic(tip, ahead(tip, inward, first), ahead(pitch, _DOWN, -second), pitch)


def back_armhole(
    tip: Point, inward: Vector, pitch: Point, underarm: Point, q: Vector, drop: float
) -> Path:
    """Back armhole, tip to underarm, in two curves (A2.7).

    `q` is the unit perpendicular to the side seam, into the piece; `drop` the depth
    from pitch to bust line.
    """
    return Path(
        (
            tip_to_pitch(tip, inward, pitch),
            Cubic(
                pitch,
                ahead(pitch, _DOWN, 0.58 * drop),
                ahead(underarm, q, 0.52 * (underarm.x - pitch.x)),
                underarm,
            ),
        )
    )


def front_armhole(
    tip: Point, inward: Vector, pitch: Point, underarm: Point, q: Vector
) -> Path:
    """Front armhole, tip to underarm with the side dart open, in two curves (A3.10).

    `q` is the perpendicular of the closed side seam, into the piece, turned with the
    dart.
    """
    return Path(
        (
            tip_to_pitch(tip, inward, pitch),
            Cubic(
                pitch,
                ahead(pitch, _DOWN, 0.66 * (underarm.y - pitch.y)),
                ahead(underarm, q, 0.58 * (pitch.x - underarm.x)),
                underarm,
            ),
        )
    )


MOST_OVERHANG = 3.0
"""The back tip hangs at most this far over the pitch, cm (A2.7, corrections C18)."""

WOBBLE = WRONG_WAY.reject - 0.05
"""An armhole may turn against its own bend by this many degrees (C16)."""


def back_pitch(tip: Point, inward: Vector, xb: float, yB: float) -> Point:
    """Back pitch point, with the guard that the tip hangs 0.3 to 3.0 cm over it
    (A2.6, A2.7, corrections C18), and no further than its curve takes."""
    most = min(MOST_OVERHANG, max(0.3, tip.x - xb))
    return pitch_under(tip, inward, Vector(-1.0, 0.0), 0.50 * (yB - tip.y), most, 0.3)


def front_pitch(tip: Point, inward: Vector, X: float, xfw: float, y_G: float) -> Point:
    """Front pitch point, with the guard that the tip hangs at least 0.8 cm over it
    (A3.9), and no further than its curve takes."""
    most = max(0.8, X - xfw - tip.x)
    return pitch_under(tip, inward, Vector(1.0, 0.0), 0.56 * (y_G - tip.y), most, 0.8)


def pitch_under(
    tip: Point, inward: Vector, centre: Vector, drop: float, most: float, least: float
) -> Point:
    """The pitch `drop` below the tip and `most` towards the centre; nearer, but by no
    less than `least`, where the shoulder is so long or so flat that the upper curve
    would turn the wrong way by more than is sewn (C16; C18 moves the pitch so)."""

    def at(over: float) -> Point:
        return ahead(ahead(tip, centre, over), _DOWN, drop)

    def wobbles(over: float) -> bool:
        return wrong_way(tip_to_pitch(tip, inward, at(over))) > WOBBLE

    if not wobbles(most):
        return at(most)
    low, high = least, most
    for _ in range(24):
        middle = (low + high) / 2
        low, high = (low, middle) if wobbles(middle) else (middle, high)
    return at(low)


def side_square_back(underarm: Point, waist: Point) -> Vector:
    """Unit perpendicular to the back side seam, towards the centre back."""
    return left_normal(direction(underarm, waist)) * -1.0


def side_square_front(underarm: Point, waist: Point) -> Vector:
    """Unit perpendicular to the closed front side seam, towards the centre front."""
    return left_normal(direction(underarm, waist))
