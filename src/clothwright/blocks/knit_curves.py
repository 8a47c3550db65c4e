"""Lines of the knit bodice (blocks F), as the back has them: x from the centre, y down
from the nape. The front's are their mirror images."""

import math

from clothwright.blocks.bodice_curves import (
    front_neck_curve,
    inward_back,
    outwards_back,
    pitch_under,
    side_square_back,
    tip_to_pitch,
)
from clothwright.blocks.bodice_rules import clip
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    direction,
    distance,
    mirror_in,
    shift,
    unit,
)

RISE = 2.0
"""Both neck points of the block stand so far above the nape, cm (F2)."""

NONE = 0.05
"""A top that goes on by less below the waist ends there, cm."""

_DOWN = Vector(0.0, 1.0)
OVER = 0.3, 3.0
"""The tip hangs so far over the line across, cm (A2.7, corrections C18)."""

HOLLOW = 2.0
"""The underarm lies at least so far outside the line across, cm (our own trial): a
cloth cut very close would leave the armhole no hollow."""


def neck_point(bw: float, sigma: float, out: float) -> Point:
    """A point of the shoulder line, `out` from the neck point of the block."""
    return Point(bw, -RISE) + outwards_back(sigma) * out


def back_neck(at: Point, depth: float) -> Path:
    """Back neck from the centre, `depth` below the nape, to its end on the shoulder
    (A2.2)."""
    rise = depth - at.y
    return Path.cubic(
        Point(0.0, depth),
        Point(0.62 * at.x, depth),
        Point(at.x - 0.20 * rise, depth - 0.42 * rise),
        at,
    )


def front_neck(at: Point, sigma: float, depth: float) -> Path:
    """Front neck from its end on the shoulder to the centre, which lies `depth` below
    the neck point of the block (A3.3); on the back's side of the centre line."""
    curve = front_neck_curve(-at.x, at.y, at.x, depth - RISE - at.y, sigma)
    return Path((curve,)).moved(mirror_in(Point(0.0, 0.0), Point(0.0, 1.0)))


def neck(
    bw: float, sigma: float, out: float, back_depth: float, front_depth: float
) -> float:
    """Length of back and front neck of one half, cm."""
    at = neck_point(bw, sigma, out)
    front = front_neck(at, sigma, front_depth)
    return back_neck(at, back_depth).length + front.length


def armhole(
    tip: Point,
    sigma: float,
    across: float,
    q: float,
    q_waist: float,
    yB: float,
    yW: float,
) -> Path:
    """Armhole from the tip over the pitch to the underarm (F4): as the fitted back's,
    its pitch lower and its lower handles longer."""
    inward, under = inward_back(sigma), Point(q, yB)
    pitch = pitch_of(tip, sigma, across, yB)
    square = side_square_back(under, Point(q_waist, yW))
    return Path(
        (
            tip_to_pitch(tip, inward, pitch),
            Cubic(
                pitch,
                pitch + _DOWN * (0.60 * (yB - pitch.y)),
                under + square * (_beside(q - pitch.x) * (q - pitch.x)),
                under,
            ),
        )
    )


def _beside(reach: float) -> float:
    """Handle of the armhole at the underarm, share of its reach from the pitch: 0.55
    (F4). Where it reaches less than 3.3 cm that would hollow it to less than 2 cm: it
    gets longer (our own trial)."""
    return min(0.95, 0.55 + 0.35 * max(0.0, 3.3 - reach))


def pitch_of(tip: Point, sigma: float, across: float, yB: float) -> Point:
    """The pitch on the line across, moved as A2.7 guards it."""
    over = clip(tip.x - across, *OVER)
    drop = 0.55 * (yB - tip.y)
    return pitch_under(tip, inward_back(sigma), Vector(-1.0, 0.0), drop, over, OVER[0])


# -- side ------------------------------------------------------------------------------
def lean_at_waist(
    q: float, q_waist: float, q_hip: float, above: float, below: float
) -> float:
    """How far the side leans outwards at the waist for each cm down: upright where the
    waist is the narrowest or the widest place, else between what it does above and
    below."""
    first, then = (q_waist - q) / above, (q_hip - q_waist) / below
    return 0.0 if first * then <= 0 else 2 * first * then / (first + then)


def to_waist(q: float, q_waist: float, yB: float, yW: float, lean: float) -> Path:
    """Side from the underarm, which it leaves straight towards the waist."""
    under, waist = Point(q, yB), Point(q_waist, yW)
    reach = 0.35 * distance(under, waist)
    way = unit(Vector(lean, 1.0))
    return Path.cubic(
        under,
        under + direction(under, waist) * reach,
        waist - way * reach,
        waist,
    )


def side(
    q: float,
    quarters: tuple[float, float, float],
    yB: float,
    waists: tuple[float, float],
    hip: float,
    below: float,
    out: float,
) -> Path:
    """Side from the underarm to the hem, `below` the waist. `quarters` are the back's
    at bust, waist and hip, by which both halves lean alike at the waist; `waists` the
    back's level of the waist and this half's own."""
    level, own = waists
    if below < NONE:
        return to_waist(q, quarters[1], yB, own, 0.0)
    lean = lean_at_waist(*quarters, level - yB, hip)
    lower = below_waist(quarters[1], quarters[2], hip, below, out, lean)
    upper = to_waist(q, quarters[1], yB, own, lean)
    return upper + lower.moved(shift(Vector(0.0, own)))


def below_waist(
    q_waist: float, q_hip: float, hip: float, below: float, out: float, lean: float
) -> Path:
    """Side from the waist, at (q_waist, 0), down `below` to the hem: upright at the
    hip, `hip` below, and from there let `out` at the hem.

    A hem above the hip is as wide as the curve to the hip is there, and upright."""
    waist = Point(q_waist, 0.0)
    way = unit(Vector(lean, 1.0))
    if below <= hip:
        t = below / hip
        wide = q_waist + (q_hip - q_waist) * t * t * (3 - 2 * t)
        return _run(waist, way, Point(wide, below), _DOWN)
    at = Point(q_hip, hip)
    straight = below - hip
    flare = unit(Vector(out, straight))
    length = math.hypot(out, straight)
    foot = at + flare * straight
    curve = _run(waist, way, at, flare)
    return curve if length < 1e-6 else curve + Path.line(at, foot)


def _run(a: Point, a_way: Vector, b: Point, b_way: Vector) -> Path:
    reach = 0.38 * distance(a, b)
    return Path.cubic(a, a + a_way * reach, b - b_way * reach, b)


def hem_line(centre: Point, side: Point, way: Vector) -> Path:
    """Hem from the centre, level, to the side, square to it (`way` runs down it)."""
    if abs(way.x) < 1e-9:
        return Path.line(centre, side)
    reach = 0.36 * abs(side.x - centre.x)
    square = Vector(way.y, -way.x)
    if square.x * (side.x - centre.x) < 0:
        square = square * -1.0
    level = Vector(math.copysign(1.0, side.x - centre.x), 0.0)
    return Path.cubic(centre, centre + level * reach, side - square * reach, side)
