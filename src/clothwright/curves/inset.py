"""A line set inside an outline by a width that runs from one size to another.

Facings roll a seam to the inside: their edges lie a little inside the shell's, full
at one end and perhaps nothing at the other.
"""

from collections.abc import Callable
from itertools import accumulate

from clothwright.curves.cubic import Cubic
from clothwright.curves.line import Line
from clothwright.curves.meet import meet_lines
from clothwright.curves.path import Path
from clothwright.curves.point import Pair, Point, Vector, ahead, distance, dot, pair
from clothwright.curves.tolerances import CLOSE

_SPANS, _TIGHT_SPANS = 4, 12
"""Cubics drawn for each curve, and for one that bends to a radius under 3 cm; the inset
then strays under 0.01 mm on armholes."""

_SUDDEN = 0.5
"""A part of a bent curve whose bend changes by so much from end to end, for each cm of
it, is drawn in parts of its own: a neck may turn to its shoulder within a few mm."""

_AT_ONCE = 3.0
"""The same of a curve that is plain but at its end."""

_LEAST_SPAN, _CRUMB = 0.05, 0.02
"""No curve of an inset is drawn in cubics shorter than the first, cm: a small rounding
takes few; what is left of one is left out when it is shorter than the second."""

_TURNS_BACK = 0.01
"""Least 1 + cosine of a joint's turn: 172°, sharper than any corner of a piece."""

_ROOM = 0.95
"""Most share of a rounding's radius that an inset may take before the rounding goes."""


def _right(u: Vector) -> Vector:
    return pair(Vector, (-u[1], u[0]))


def _joint(p: Point, u: Vector, q: Point, v: Vector, width: float) -> Point:
    """Where the inset that arrives at p along u meets the one that leaves q along v.

    p and q are one point at a joint, two where a small rounding between them is left
    out. Raises ValueError when the two turn back on each other.
    """
    a, b = _right(u), _right(v)
    if p != q:
        p, q = p + a * width, q + b * width
        return meet_lines(p, u, q, v)
    bend = 1 + dot(a, b)
    if bend < _TURNS_BACK:
        raise ValueError("a line cannot be set in where its outline turns back")
    return ahead(p, a + b, width / bend)


def _too_tight(seg: Line | Cubic, width: float) -> bool:
    """True for a rounding towards the inset of no more radius than the width: it
    would turn inside out, so its neighbours meet in a corner instead."""
    return isinstance(seg, Cubic) and width * seg.curvature(0.5) > _ROOM


def inset(path: Path, start: float, end: float, *, level: float = 0.0) -> Path:
    """The path set off to its right (inside a clockwise outline), from `start` cm at
    its start to `end` cm at its end, linearly in its length. Corners are mitred.

    The first `level` cm of the path, up to a joint of it, keep the width `start`. Where
    the path begins or ends in a bend tighter than the width, the inset would run past
    the line square to it there and come back: it is cut off at that line.
    """
    slope = (end - start) / (path.length - level)

    def width(s: float) -> float:
        return start + slope * (s - level) if s > level else start

    starts = accumulate([s.length for s in path.segments], initial=0.0)
    parts = list(zip(path.segments, starts, strict=False))
    inner = [p for p in parts[1:-1] if not _too_tight(p[0], width(p[1]))]
    parts = [parts[0], *inner, *parts[1:][-1:]]
    out: list[Line | Cubic] = []
    seg, at = parts[0]
    first = ahead(seg.start, _right(seg.start_direction), start)
    for i, (seg, at) in enumerate(parts):
        s_end = at + seg.length
        if i + 1 == len(parts):
            last = ahead(seg.end, _right(seg.end_direction), end)
        else:
            after, _ = parts[i + 1]
            last = _joint(
                seg.end,
                seg.end_direction,
                after.start,
                after.start_direction,
                width(s_end),
            )
        if isinstance(seg, Line):
            out.append(Line(first, last))
        else:
            grow = slope if at > level - CLOSE else 0.0
            out += _curve(seg, at, width, grow, first, last)
        first = last
    long = [s for s in out if distance(s.start, s.end) > CLOSE or s.length > CLOSE]
    whole = Path(tuple(long)).without_crumbs(_CRUMB)
    return _between_squares(whole, path, start, end)


def _between_squares(inner: Path, path: Path, start: float, end: float) -> Path:
    """An inset from where it last meets the line square to the start of its path, to
    where it first meets the one square to the end: each where the path bends there more
    tightly than the width."""
    first, last = path.segments[0], path.segments[-1]
    low, high = 0.0, inner.length
    if isinstance(first, Cubic) and start * first.curvature(0.0) > 1.0:
        met = _meeting_square(inner, path.start, first.start_direction, start)
        low = max((s for s in met if s < high / 2), default=low)
    if isinstance(last, Cubic) and end * last.curvature(1.0) > 1.0:
        met = _meeting_square(inner, path.end, last.end_direction, end)
        high = min((s for s in met if s > high / 2), default=high)
    return inner.between(low, high)


def _meeting_square(inner: Path, p: Point, way: Vector, width: float) -> list[float]:
    """Lengths along an inset at which it meets the line square to a way at p."""
    square = Path((Line(p, ahead(p, _right(way), 2 * width)),))
    return [s for s, _ in inner.meets(square)]


def _curve(
    seg: Cubic,
    at: float,
    width: Callable[[float], float],
    grow: float,
    first: Point,
    last: Point,
) -> list[Line | Cubic]:
    tight = seg.tight
    room = max(1, int(distance(first, last) / _LEAST_SPAN))
    spans = min(room, _TIGHT_SPANS if tight else _SPANS)
    step = seg.length / spans
    third = step / 3
    points: list[Point] = []
    handles: list[Pair] = []
    stations = seg.quarters if spans == _SPANS else seg.stations(spans)
    for k, ((x, y), (u, v), bend) in enumerate(stations):
        w = width(at + k * step)
        speed = 1 - w * bend
        points.append(pair(Point, (x - v * w, y + u * w)))
        handles.append(((u * speed - v * grow) * third, (v * speed + u * grow) * third))
    points[0], points[-1] = first, last
    out: list[Line | Cubic] = []
    for i in range(spans):
        change = abs(stations[i][2] - stations[i + 1][2]) * step
        if change > (_SUDDEN if tight else _AT_ONCE):
            part = seg.part(*(seg.parameter_at_length(s * step) for s in (i, i + 1)))
            if distance(points[i], points[i + 1]) > 10 * _LEAST_SPAN:
                s = at + i * step
                out += _curve(part, s, width, grow, points[i], points[i + 1])
                continue
        (px, py), (qx, qy) = points[i], points[i + 1]
        (dx, dy), (ex, ey) = handles[i], handles[i + 1]
        x1, y1, x2, y2 = px + dx, py + dy, qx - ex, qy - ey
        a, b = pair(Point, (x1, y1)), pair(Point, (x2, y2))
        xy = px, py, x1, y1, x2, y2, qx, qy
        out.append(Cubic(points[i], a, b, points[i + 1], xy))
    return out
