"""Exact mathematics and lines of collars (transformations 5, G19 of our notes).

A half collar runs from the centre back at the left to the centre front at the right;
its neck edge lies below. Lengths are cm, angles degrees.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from clothwright.blocks.circle import arc
from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Cubic,
    Motion,
    Path,
    Point,
    Vector,
    cross,
    degrees_between,
    distance,
    dot,
    inset,
    left_normal,
    mix,
    turn,
    turned,
    wedge_angle,
)

_QUARTER = 4 / 3 * (math.sqrt(2) - 1)
"""Handles of a quarter circle, of its radius."""

_STRAIGHT = 0.02
"""An edge that rises by less than this is ruled, cm."""

_LEAST_BLEND, _FULL_BLEND, _BLEND = 0.4, 30.0, (0.7, 0.6)
"""A corner is blended over these shares of both necks: over 0.4 of that, and 1/30 more
for every degree of it (our own)."""

_LEFT = 0.1
"""A blend takes at least so much of the first neck, share of its length (our own)."""

_ONE_SIDED = 3.0
"""A blend whose directions meet so many times nearer to one end is drawn plainly."""

_SHORT, _HANDLES = 0.2, (0.5, 0.85)
"""The blend is so much shorter than what it takes the place of, since it is stretched
on, cm, where handles between these shares allow it (our own)."""

TAPER = 3.0
"""An undercollar becomes smaller over so much of its edge from the neck, cm (common
practice, no source)."""


def bow_radius(length: float, rise: float) -> float:
    """Of the arc so long that ends `rise` above the level it leaves on: the ρ of
    rise = ρ(1 − cos(length/ρ)), about length²/(2·rise) (G19). Raises ValueError when
    the rise is not above zero, or more than the arc of a quarter circle gives."""
    if not 0 < rise < 2 * length / math.pi:
        raise ValueError("an edge so long does not rise so much")
    low, high = 2 * length / math.pi, length * length / rise
    for _ in range(80):
        middle = (low + high) / 2
        if middle * (1 - math.cos(length / middle)) > rise:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def bowed(start: Point, length: float, rise: float) -> Path:
    """An edge that leaves level to the right and ends `rise` higher, or lower where
    that is below zero: an arc of a circle."""
    if abs(rise) < _STRAIGHT:
        return Path.line(start, start + Vector(length, 0.0))
    radius = bow_radius(length, abs(rise))
    angle = math.degrees(length / radius)
    if rise > 0:
        out = arc(Point(start.x, start.y - radius), radius, 90.0, 90.0 - angle)
    else:
        out = arc(Point(start.x, start.y + radius), radius, -90.0, -90.0 + angle)
    return out.pinned(start, out.end)


def overlap_angle(overlap: float, shoulder: float) -> float:
    """What the shoulders turn over each other to overlap by so much at their tips:
    2·asin(overlap/(2·shoulder))."""
    return wedge_angle(overlap, shoulder)


@dataclass(frozen=True)
class ClosedNeck:
    """Both necks laid together at the shoulder: the back's where it was drafted, the
    front's laid on there. Walked from the centre back, the garment lies to the right.
    """

    back: Path
    """From the centre back to the shoulder."""

    front: Path
    """From the shoulder to the centre front."""

    tip: Point
    """Tip of the front shoulder as it is laid."""

    turned: Motion
    """What lays the front's own paper there."""

    up: Vector
    """Along the centre back, out of the garment."""

    @property
    def length(self) -> float:
        """The half neck, nb + nf."""
        return self.back.length + self.front.length

    @property
    def shoulder(self) -> Point:
        """Where both meet."""
        return self.back.end

    def overlapped(self, degrees: float) -> "ClosedNeck":
        """With the front turned about the neck end of the shoulder, so that its paper
        lies over the back's at the tip."""
        m = turn(self.shoulder, degrees)
        front = self.front.moved(m).pinned(self.shoulder, m(self.front.end))
        return ClosedNeck(self.back, front, m(self.tip), m @ self.turned, self.up)

    def edge(self, raised: float, away: float) -> Path:
        """The neck edge of a flat collar: raised above the centre back, blended over
        the shoulder, ending short of the centre front."""
        top = self.back.start + self.up * raised
        back = self.back.pinned(top, self.back.end)
        whole = blended(back, self.front)
        return whole.between(0.0, whole.length - away) if away > 0 else whole


def blended(first: Path, second: Path) -> Path:
    """Two necks that meet in a hollow corner, run into each other: the sharper the
    corner, the further from it the blend begins, and as far as it takes to bend one
    way only. Where the second runs on straighter than the first arrives, no such blend
    is there: it begins where the first points to the blend's end, as a ruler lies."""
    kink = degrees_between(first.end_direction, second.start_direction)
    if kink < 1.0:
        return first + second
    share = min(1.0, _LEAST_BLEND + kink / _FULL_BLEND)
    most_b = min(second.length * _BLEND[1], second.segments[0].length * 0.95)
    while True:
        head = first.between(0.0, first.length * (1 - _BLEND[0] * share))
        tail = second.between(most_b * share, second.length)
        u, v = head.end_direction, tail.start_direction
        chord = tail.start - head.end
        if share >= 1.0 or (cross(u, chord) < 0 and cross(chord, v) < 0):
            break
        share = min(1.0, share + 0.1)
    if cross(u, chord) < 0 < cross(chord, v):
        head = _pointing(first, head.length, tail.start)
        u = head.end_direction
    gone = first.length + second.length - head.length - tail.length
    bridge = _bridge(head.end, u, tail.start, v, gone - _SHORT)
    return Path((*head.segments, bridge, *tail.segments))


def _pointing(path: Path, least: float, to: Point) -> Path:
    """The path from its start to where it points to a place, beyond a length."""

    def off(s: float) -> float:
        return cross(path.direction_at_length(s), to - path.at_length(s))

    at = by_trial(off, least, path.length * (1 - _LEFT))
    return path.between(0.0, least if at is None else at)


def _bridge(a: Point, u: Vector, b: Point, v: Vector, length: float) -> Cubic:
    """A curve from a to b that bends one way, as long as wanted where its handles, both
    the same share of the way to where the two directions meet, can make it so."""
    bend = cross(u, v)
    along, back = cross(b - a, v) / bend, cross(u, b - a) / bend

    def curve(share: float) -> Cubic:
        return Cubic(a, a + u * (along * share), b - v * (back * share), b)

    one_sided = min(along, back) < max(along, back) / _ONE_SIDED
    if bend > -0.02 or one_sided:
        third = distance(a, b) / 3
        return Cubic(a, a + u * third, b - v * third, b)
    low, high = _HANDLES
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if curve(middle).length < length else (low, middle)
    return curve(low)


def beside(neck: Path, width: float, *, to_centre: bool) -> Path:
    """The line so far outside of a flat collar's neck edge, walked back from the front
    to the centre back; plumb below the neck there when it lies on the fold."""
    out = inset(neck, width, width).reversed()
    if to_centre:
        out = out.pinned(out.start, Point(neck.start.x, out.end.y))
    return out


def rounded_end(neck_end: Point, way: Vector, outer: Path, radius: float) -> Path:
    """A quarter round from the neck's end, leaving along `way`, into an outer edge
    that is walked on from there; it takes `radius` of that edge."""
    rest = outer.between(radius, outer.length)
    k = radius * _QUARTER
    h1, h2 = neck_end + way * k, rest.start - rest.start_direction * k
    return Path((Cubic(neck_end, h1, h2, rest.start),)) + rest


def rounded_corner(first: Path, second: Path, radius: float) -> tuple[Path, Path]:
    """Two edges that meet in a corner, the corner rounded: the round goes with the
    second."""
    if radius < _STRAIGHT:
        return first, second
    a = first.between(0.0, first.length - radius)
    b = second.between(radius, second.length)
    k = radius * _QUARTER
    h1, h2 = a.end + a.end_direction * k, b.start - b.start_direction * k
    return a, Path((Cubic(a.end, h1, h2, b.start),)) + b


Ends = tuple[bool, bool]
"""Whether an outer edge begins, and whether it ends, at the neck edge."""


def smaller(edges: Sequence[Path], t: float, at_neck: Ends) -> list[Path]:
    """The outer edges of an undercollar, that meet in corners: inside the upper's by a
    turn of cloth `t`, which begins at nothing at the neck."""
    last = len(edges) - 1
    out = [
        _set_in(p, t, (at_neck[0] and i == 0, at_neck[1] and i == last))
        for i, p in enumerate(edges)
    ]
    for i in range(last):
        s, u = out[i].meets(out[i + 1])[0]
        out[i] = out[i].between(0.0, s)
        rest = out[i + 1].between(u, out[i + 1].length)
        out[i + 1] = rest.pinned(out[i].end, rest.end)
    return out


def _set_in(outer: Path, t: float, at_neck: Ends) -> Path:
    a, z = _tapers(outer, at_neck)
    out = inset(outer.between(a, z), t, t)
    if at_neck[0]:
        head = inset(outer.between(0.0, a), 0.0, t)
        out = head + out.pinned(head.end, out.end)
    if at_neck[1]:
        tail = inset(outer.between(z, outer.length), t, 0.0)
        out = out.pinned(out.start, tail.start) + tail
    return out


def shorter_by(edges: Sequence[Path], t: float, at_neck: Ends) -> float:
    """What that makes the edges shorter: t·θ along their bends, half of that where it
    begins at nothing, 2t·tan(α/2) at a corner."""
    out, last = 0.0, len(edges) - 1
    for i, p in enumerate(edges):
        first_end = at_neck[0] and i == 0
        a, z = _tapers(p, (first_end, at_neck[1] and i == last))
        out += _loss(p.between(a, z))
        if a > 0:
            out += _loss(p.between(0.0, a)) / 2
        if z < p.length:
            out += _loss(p.between(z, p.length)) / 2
    for p, q in pairwise(edges):
        out += _mitre(p.end_direction, q.start_direction)
    return t * out


def _tapers(outer: Path, at_neck: Ends) -> tuple[float, float]:
    a = min(TAPER, outer.length / 3)
    return a if at_neck[0] else 0.0, outer.length - (a if at_neck[1] else 0.0)


def _loss(path: Path) -> float:
    right, left = path.turning()
    joints = pairwise(path.segments)
    corners = sum(_mitre(a.end_direction, b.start_direction) for a, b in joints)
    return math.radians(right - left) + corners


def _mitre(u: Vector, v: Vector) -> float:
    return 2 * math.tan(math.atan2(cross(u, v), dot(u, v)) / 2)


def out_of(path: Path) -> Vector:
    """Square to the right at the end of a path."""
    return left_normal(path.end_direction) * -1.0


def fall(
    start: Point, length: float, rise: float, depth: float, point: float, lean: float
) -> tuple[Path, Path]:
    """Foot and outer edge of a collar that turns over, both from the centre back: its
    foot bowed so that the end lies `rise` higher (lower below zero), `depth` wide
    behind, its end `point` long and leaning forward by so many degrees."""
    foot = bowed(start, length, rise)
    tip = foot.end + turned(left_normal(foot.end_direction), lean) * point
    top = start + Vector(0.0, -depth)
    level = top + Vector(0.45 * (tip.x - top.x), 0.0)
    return foot, Path.cubic(top, level, mix(level, tip, 0.5), tip)
