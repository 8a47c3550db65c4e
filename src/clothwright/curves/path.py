"""Paths: segments joined end to end."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from clothwright.curves.cubic import Cubic, Segment
from clothwright.curves.held import held, lately
from clothwright.curves.line import Box, Line
from clothwright.curves.meet import crossings
from clothwright.curves.motion import Motion
from clothwright.curves.pens import Pen
from clothwright.curves.point import Pair, Point, Vector, distance, pair
from clothwright.curves.tolerances import CLOSE

_CRUMB = 5e-6
"""A part shorter than this (cm) is not cut off: the division is laid on the joint."""


class Place(NamedTuple):
    """A place on a path: which segment, and where on it (t from 0 to 1)."""

    segment: int
    t: float


@dataclass(init=False, unsafe_hash=True)
class Path:
    """One or more segments, each starting where the former ends (within 1e-6 cm)."""

    segments: Final[tuple[Segment, ...]]
    start: Point = field(init=False, compare=False, repr=False)
    """First point."""

    end: Point = field(init=False, compare=False, repr=False)
    """Last point."""

    def __init__(self, segments: tuple[Segment, ...]) -> None:
        if not segments:
            raise ValueError("a path needs at least one segment")
        before = segments[0]
        for after in segments[1:]:
            a, b = before.end, after.start
            if a is not b and distance(a, b) > CLOSE:
                raise ValueError("the parts of this path do not join")
            before = after
        self.segments = segments
        self.start, self.end = segments[0].start, before.end

    # -- making -----------------------------------------------------------------
    @classmethod
    def of(cls, *parts: "Segment | Path") -> "Path":
        """A path of segments and paths in walking order."""
        out: list[Segment] = []
        for p in parts:
            out.extend(p.segments if isinstance(p, Path) else (p,))
        return cls(tuple(s for s in out if s.length > CLOSE) or tuple(out[:1]))

    @classmethod
    def line(cls, a: Point, b: Point) -> "Path":
        """A straight path."""
        return cls((Line(a, b),))

    @classmethod
    def cubic(cls, a: Point, b: Point, c: Point, d: Point) -> "Path":
        """A path of one curve."""
        return cls((Cubic(a, b, c, d),))

    # -- asking -----------------------------------------------------------------
    @property
    def start_direction(self) -> Vector:
        """Unit direction on leaving."""
        return self.segments[0].start_direction

    @property
    def end_direction(self) -> Vector:
        """Unit direction on arriving."""
        return self.segments[-1].end_direction

    @held
    def length(self) -> float:
        """True length in cm."""
        segments = self.segments
        if len(segments) == 1:
            return segments[0].length
        return math.fsum([s.length for s in segments])

    @property
    def straight(self) -> bool:
        """True for a path of one straight line."""
        return len(self.segments) == 1 and isinstance(self.segments[0], Line)

    @property
    def closed(self) -> bool:
        """True when the path ends where it began."""
        return distance(self.start, self.end) <= CLOSE

    def at(self, place: Place) -> Point:
        """The point at a place."""
        return self.segments[place.segment].at(place.t)

    def place_at_length(self, s: float) -> Place:
        """The place a length `s` along; clamped to the ends."""
        i, rest = self._along(s)
        return pair(Place, (i, self.segments[i].parameter_at_length(rest)))

    def at_length(self, s: float) -> Point:
        """The point a length `s` from the start; clamped to the ends."""
        if len(self.segments) == 1:
            seg = self.segments[0]
        else:
            i, s = self._along(s)
            seg = self.segments[i]
        return seg.at(seg.parameter_at_length(s))

    def _along(self, s: float) -> tuple[int, float]:
        """Which segment a length `s` leads to, and what of it is left for that."""
        last = len(self.segments) - 1
        for i in range(last):
            length = self.segments[i].length
            if s <= length:
                return i, s
            s -= length
        return last, s

    def direction_at_length(self, s: float) -> Vector:
        """Unit direction of walking at a length `s` from the start."""
        return self.direction_at(self.place_at_length(s))

    def direction_at(self, place: Place) -> Vector:
        """Unit direction of walking at a place."""
        i, t = place
        seg = self.segments[i]
        if t <= 0:
            return seg.start_direction
        if t >= 1:
            return seg.end_direction
        v = seg.slope(t)
        n = math.hypot(*v)
        return Vector(v[0] / n, v[1] / n) if n > CLOSE else seg.start_direction

    def length_to(self, place: Place) -> float:
        """Length from the start to a place."""
        i, t = place
        along = self.segments[i].length_to(t)
        if i == 0:
            return along
        return math.fsum([s.length for s in self.segments[:i]]) + along

    def nearest(self, p: Point) -> tuple[Place, float]:
        """(place, distance) of the place nearest to `p`."""
        segments = self.segments
        if len(segments) == 1:
            t, least = segments[0].nearest(p)
            return pair(Place, (0, t)), least
        # those whose boxes lie nearest first: the others are seldom asked
        x, y = p
        order: list[tuple[float, int]] = []
        for i, s in enumerate(segments):
            left, top, right, bottom = s.box
            across = left - x if x < left else x - right if x > right else 0.0
            down = top - y if y < top else y - bottom if y > bottom else 0.0
            order.append((across * across + down * down, i))
        order.sort()
        first, at, least = 0, 0.0, math.inf
        for bound, i in order:
            if bound > (least + 1e-9) ** 2:
                break
            t, d = segments[i].nearest(p)
            # of two as near, the first: they share a joint
            if d < least - 1e-12 or (d < least + 1e-12 and i < first):
                first, at, least = i, t, d
        return pair(Place, (first, at)), least

    def keeps_off(self, other: "Path", by: float, places: Iterable[float]) -> bool:
        """True when it comes no nearer than `by`, cm, to any of these places of another
        path: lengths along that, in order. From one to the next the distance changes by
        no more than the way between them, so few of them are asked."""
        left, top, right, bottom = self.box
        clear = -math.inf
        for s in places:
            if s > clear:
                x, y = p = other.at_length(s)
                gap = max(left - x, x - right, top - y, y - bottom)  # off the box
                if gap < by:
                    gap = self.nearest(p)[1]
                if gap < by:
                    return False
                clear = s + gap - by - CLOSE
        return True

    def length_to_point(self, p: Point) -> float:
        """Length from the start to the place nearest to `p`."""
        return self.length_to(self.nearest(p)[0])

    def meets(self, other: "Path") -> list[tuple[float, float]]:
        """(length along self, length along other) of each meeting, in order."""
        return list(_meetings(self, other))

    @held
    def area(self) -> float:
        """Enclosed area, cm²; positive when the loop runs clockwise as seen."""
        terms = [s.area_term() for s in self.segments]
        if self.start != self.end:
            terms.append(Line(self.end, self.start).area_term())
        return math.fsum(terms)

    def turning(self) -> tuple[float, float]:
        """(clockwise, anticlockwise) turning within segments, degrees."""
        both = [s.turning() for s in self.segments]
        return math.fsum(a for a, _ in both), math.fsum(b for _, b in both)

    def bounds(self) -> tuple[float, float, float, float]:
        """(left, top, right, bottom) of the path itself."""
        return self._bounds

    @held
    def box(self) -> Box:
        """Left, top, right and bottom of the boxes of its segments, cm: the path lies
        within."""
        if len(self.segments) == 1:
            return self.segments[0].box
        lefts, tops, rights, bottoms = zip(*[s.box for s in self.segments], strict=True)
        return min(lefts), min(tops), max(rights), max(bottoms)

    def clear_of(self, other: "Path", by: float) -> bool:
        """True when the boxes of the two lie further apart than `by`, cm: then so do
        they. False says nothing."""
        (l0, t0, r0, b0), (l1, t1, r1, b1) = self.box, other.box
        return max(l1 - r0, l0 - r1, t1 - b0, t0 - b1) > by

    @held
    def _bounds(self) -> tuple[float, float, float, float]:
        pts = self.chords(0.005)
        xs, ys = [p[0] for p in pts], [p[1] for p in pts]
        return min(xs), min(ys), max(xs), max(ys)

    # -- changing: always a new path ---------------------------------------------
    def split(self, place: Place) -> tuple["Path", "Path"]:
        """Divide at an inner place. Raises ValueError at the very ends."""
        return self.before(place), self.after(place)

    def before(self, place: Place) -> "Path":
        """The part before an inner place. Raises ValueError at the very ends."""
        i, t = self._cut_at(place)
        head, seg = self.segments[:i], self.segments[i]
        return Path((*head, seg if t >= 1.0 else seg.before(t)))

    def after(self, place: Place) -> "Path":
        """The part after an inner place. Raises ValueError at the very ends."""
        i, t = self._cut_at(place)
        tail = self.segments[i + 1 :]
        return Path(tail if t >= 1.0 else (self.segments[i].after(t), *tail))

    def _cut_at(self, place: Place) -> tuple[int, float]:
        """Where to divide for a place: on a joint (t is 1) that is a crumb away."""
        i, t = place
        length = self.segments[i].length
        if t * length <= _CRUMB:
            i, t = (i - 1, 1.0) if i > 0 else (i, 0.0)
        elif (1 - t) * length <= _CRUMB:
            t = 1.0
        if t >= 1 - 1e-9:
            if i + 1 == len(self.segments):
                raise ValueError("a path cannot be divided at its end")
            return i, 1.0
        if t <= 1e-9:
            raise ValueError("a path cannot be divided at its start")
        return i, t

    def split_at_length(self, s: float) -> tuple["Path", "Path"]:
        """Divide a length `s` from the start."""
        return self.split(self.place_at_length(s))

    def between(self, s0: float, s1: float) -> "Path":
        """The part from length `s0` to length `s1`, 0 ≤ s0 < s1 ≤ length."""
        out = self
        if s1 < self.length - 2 * _CRUMB:
            out = out.before(out.place_at_length(s1))
        if s0 > 2 * _CRUMB:
            out = out.after(out.place_at_length(s0))
        return out

    def without_crumbs(self, least: float) -> "Path":
        """The path without segments shorter than `least`, their neighbours laid on."""
        kept = [s for s in self.segments if s.length >= least]
        if not kept or len(kept) == len(self.segments):
            return self
        out = Path((kept[0],)).pinned(self.start, kept[0].end)
        for s in kept[1:]:
            out += Path((s,)).pinned(out.end, s.end)
        return out.pinned(self.start, self.end)

    def run_on(self, by: float) -> "Path":
        """The path run on straight at both ends, cm."""
        before = Line(self.start - self.start_direction * by, self.start)
        after = Line(self.end, self.end + self.end_direction * by)
        return Path((before, *self.segments, after))

    def reversed(self) -> "Path":
        """The same path walked the other way."""
        return Path(tuple([s.reversed() for s in reversed(self.segments)]))

    def moved(self, m: Motion) -> "Path":
        """The path after a motion; the walking order is kept, even when mirrored."""
        return Path(tuple([s.moved(m) for s in self.segments]))

    def pinned(self, start: Point, end: Point) -> "Path":
        """The path with its ends laid exactly on two points that it nearly meets."""
        if start == self.start and end == self.end:
            return self
        segments = list(self.segments)
        first = segments[0]
        if isinstance(first, Cubic):
            h = first.handle1 + (start - first.start)
            segments[0] = Cubic(start, h, first.handle2, first.end)
        else:
            segments[0] = Line(start, first.end)
        last = segments[-1]
        if isinstance(last, Cubic):
            h = last.handle2 + (end - last.end)
            segments[-1] = Cubic(last.start, last.handle1, h, end)
        else:
            segments[-1] = Line(last.start, end)
        return Path(tuple(segments))

    def __add__(self, other: "Path") -> "Path":
        return Path(self.segments + other.segments)

    # -- narrating ----------------------------------------------------------------
    def draw(self, pen: Pen) -> None:
        """Narrate to a pen, closing the path when it is a loop."""
        pen.moveTo(self.start)
        for s in self.segments:
            if isinstance(s, Cubic):
                pen.curveTo(*s.points[1:])
            else:
                pen.lineTo(s.end)
        if self.closed:
            pen.closePath()
        else:
            pen.endPath()

    def flatten(self, tolerance: float) -> list[Point]:
        """Points along the path whose chords stray at most `tolerance` cm from it.

        Start and end are both given, also for a loop. Raises ValueError unless the
        tolerance is above zero.
        """
        return [pair(Point, p) for p in self.chords(tolerance)]

    def chords(self, tolerance: float) -> list[Pair]:
        """As `flatten`, of bare numbers."""
        if not tolerance > 0:
            raise ValueError("a flattening tolerance must be above zero")
        x, y = self.start
        pts: list[Pair] = [(x, y)]
        for s in self.segments:
            if isinstance(s, Cubic):
                pts += s.evenly(s.steps(tolerance))
            else:
                x, y = s.end
                pts.append((x, y))
        return pts


@lately
def _meetings(path: Path, other: Path) -> tuple[tuple[float, float], ...]:
    """As `Path.meets`."""
    found: list[tuple[float, float]] = []
    for i, a in enumerate(path.segments):
        left, top, right, bottom = a.box
        left, top, right, bottom = (
            left - CLOSE,
            top - CLOSE,
            right + CLOSE,
            bottom + CLOSE,
        )
        for j, b in enumerate(other.segments):
            x0, y0, x1, y1 = b.box
            if x0 > right or x1 < left or y0 > bottom or y1 < top:
                continue
            for t, s in crossings(a, b):
                here = path.length_to(pair(Place, (i, t)))
                if found and min([abs(here - f[0]) for f in found]) <= CLOSE * 10:
                    continue
                found.append((here, other.length_to(pair(Place, (j, s)))))
    found.sort()
    return tuple(found)


def polyline(points: Iterable[Point]) -> Path:
    """Straight lines through points."""
    pts = list(points)
    return Path(tuple(Line(a, b) for a, b in zip(pts, pts[1:], strict=False)))
