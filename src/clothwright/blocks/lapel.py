"""Lines of a collar cut on to the front, with a lapel (transformations 5).

Terminology
    break point   where the front edge begins to turn over.
    roll line     the fold of the lapel, from there past the neck end of the shoulder.
    gorge         the seam of collar and lapel: the front neck, run on.

The front lies as it is worn, its centre to the right. Lengths are cm.
"""

import math
from dataclasses import dataclass

from clothwright.blocks.circle import arc
from clothwright.curves import (
    Path,
    Point,
    Vector,
    direction,
    distance,
    dot,
    heading,
    left_normal,
    mix,
    turned,
)

AT_NECK = 0.75
"""The roll line passes the neck end of the shoulder by this share of the stand (5: 0.7
to 0.8)."""

_BOW = 0.06
"""The edge of a lapel is bowed outwards by about this share of it (common practice)."""

_OWN, _ROUND = 0.5, 0.42
"""So much of the arc of the outer edge stays as it is; handles of the edge of a shawl,
of the distance they span (our own)."""

_FULL = 0.65
"""How far down the fullness of a shawl is drawn towards the break point, of the roll
line (our own)."""

_BLEND = 3.0
"""The neck edge is blended over so much to both sides of the shoulder, cm (our own)."""


@dataclass(frozen=True)
class Roll:
    """The roll line, from the break point up."""

    foot: Point
    top: Point

    @property
    def up(self) -> Vector:
        """Along it, away from the break point."""
        return direction(self.foot, self.top)

    @property
    def out(self) -> Vector:
        """Square to it, towards the edge of the lapel."""
        return left_normal(self.up * -1.0)

    def off(self, p: Point) -> float:
        """How far a point lies outside of it, cm."""
        return dot(p - self.foot, self.out)

    def beside(self, p: Point, off: float) -> Point:
        """The point so far outside, square across from `p`."""
        return p + self.out * (off - self.off(p))


@dataclass(frozen=True)
class BackCollar:
    """The collar behind: a sector of a ring, laid off from the shoulder."""

    neck: Path
    """From the shoulder to the centre back."""

    outer: Path
    """From the centre back to over the shoulder."""

    degrees: float
    """Between its two ends."""


def back_collar(
    start: Point, up: Vector, neck: float, outer: float, wide: float
) -> BackCollar:
    """The sector whose inner edge is as long as the back neck and whose outer edge is
    as long as the line where it lies: δ = (outer − neck)/wide radians. It leaves along
    `up`, and bends away from the front. Raises ValueError when the outer edge is not
    the longer."""
    spread = (outer - neck) / wide
    if spread <= 0:
        raise ValueError("the outer edge of a collar is longer than its neck edge")
    radius = neck / spread
    centre = start + left_normal(up) * radius
    a = heading(start - centre)
    b = a - math.degrees(spread)
    inner = arc(centre, radius, a, b)
    inner = inner.pinned(start, inner.end)
    return BackCollar(inner, arc(centre, radius + wide, b, a), math.degrees(spread))


def neck_of_collar(back: Path, front: Path) -> Path:
    """Both neck edges of the collar, from the centre back, blended at the shoulder,
    where `front` begins."""
    head = back.between(0.0, back.length - min(_BLEND, back.length / 3))
    tail = front.between(min(_BLEND, front.length / 3), front.length)
    third = distance(head.end, tail.start) / 3
    bridge = Path.cubic(
        head.end,
        head.end + head.end_direction * third,
        tail.start - tail.start_direction * third,
        tail.start,
    )
    return head + bridge + tail


def outer_to(back: BackCollar, end: Point) -> Path:
    """The outer edge from the centre back to the point of a notched collar."""
    own = back.outer.between(0.0, back.outer.length * _OWN)
    a, u = own.end, own.end_direction
    reach = distance(a, end)
    corner = a + u * (reach * 0.5)
    return own + Path.cubic(a, a + u * (reach / 3), mix(end, corner, 0.5), end)


def shawl_edge(back: BackCollar, roll: Roll, widest: Point) -> Path:
    """The outer edge of a shawl, in one from the centre back over its widest point to
    the break point."""
    own = back.outer.between(0.0, back.outer.length * _OWN)
    a, down = own.end, roll.up * -1.0
    long = distance(a, widest)
    upper = Path.cubic(
        a,
        a + own.end_direction * (_ROUND * long),
        widest - down * (_ROUND * long),
        widest,
    )
    rest = distance(widest, roll.foot)
    corner = widest + down * (_FULL * dot(roll.foot - widest, down))
    lower = Path.cubic(
        widest, widest + down * (_ROUND * rest), mix(roll.foot, corner, 0.5), roll.foot
    )
    return own + upper + lower


def lapel_edge(point: Point, roll: Roll) -> Path:
    """The edge of a notched lapel from its point down to the break point, bowed out a
    little."""
    k = roll.foot
    bow = left_normal(direction(point, k)) * (distance(point, k) * _BOW)
    return Path.cubic(point, mix(point, k, 1 / 3) + bow, mix(point, k, 2 / 3) + bow, k)


def notch_end(at: Point, along: Vector, degrees: float, long: float) -> Point:
    """The point of the collar: its end leaves the gorge by so many degrees."""
    return at + turned(along, -degrees) * long
