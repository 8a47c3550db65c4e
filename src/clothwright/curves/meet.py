"""Where lines and curves meet.

A line meets a curve where the curve's distance from it is nothing: Newton's rule finds
that where it changes its sign once, kurbo where it may do so more often. kurbo's own
curve-curve search answers wrongly on curves (it was tried: four points for one
crossing, none of them on it), so chords of one curve, met with the other by kurbo's
exact line meeting, seed a Newton step on both.

Plain floats all through: in points and vectors it took three times as long, and 5 % of
a redraw.
"""

import math
from collections.abc import Iterable

import kurbopy

from clothwright.curves.cubic import Cubic, Segment
from clothwright.curves.line import Box, Line
from clothwright.curves.near import within
from clothwright.curves.point import Point, cross, distance

_CHORDS = 32


def meet_lines(a: Point, u: Point, b: Point, v: Point) -> Point:
    """Where the line through `a` along `u` meets the line through `b` along `v`.

    Raises ValueError when they are parallel.
    """
    den = cross(u, v)
    if abs(den) < 1e-12:
        raise ValueError("two lines that should meet run side by side")
    return a + u * (cross(b - a, v) / den)


_SEED_DIGITS = 7
"""Decimals of the points that seed the search. kurbo's solver loses a crossing when a
coefficient is almost, but not quite, nothing; Newton's step takes the true points."""

_NEAR = 1e-7
"""Two segments this near (cm) meet."""

_PAST = 1e-9
"""A meeting this share of a segment past its end is at its end."""

_HAIR = 1e-9
"""A curve that reaches no further beyond a line, cm, does not cross it."""

_KNOWN = 9e-7
"""An end this near (cm) to a meeting is that meeting."""

_FLAT = 0.2
"""Curves whose ends are this near (cm) may cross there at so flat an angle that no
chord shows it: the search starts from the ends as well."""


Hit = tuple[float, float]
"""Parameters of a meeting, on the one segment and on the other."""


def _apart(a: Box, b: Box) -> bool:
    return (
        a[0] > b[2] + _NEAR
        or b[0] > a[2] + _NEAR
        or a[1] > b[3] + _NEAR
        or b[1] > a[3] + _NEAR
    )


def crossings(a: Segment, b: Segment) -> list[Hit]:
    """Parameters (t on `a`, s on `b`) where two segments meet, ends included.

    Within 1e-7 cm. Touching ends are found; overlapping curves and curves that
    graze each other without crossing may be missed.
    """
    if _apart(a.box, b.box):
        return []
    if isinstance(a, Line):
        if isinstance(b, Line):
            hits = _lines(a, b)
            if hits:  # two lines meet once
                return hits
        else:
            if _beside(b, a):
                return []
            hits = [(t, s) for s, t in _curve_and_line(b, a)]
    elif isinstance(b, Line):
        if _beside(a, b):
            return []
        hits = _curve_and_line(a, b)
    else:
        hits = _checked(a, b, _curves(a, b))
    hits += _ends_on(a, b, hits)
    return sorted(hits) if len(hits) > 1 else hits


def _checked(a: Segment, b: Segment, found: Iterable[Hit]) -> list[Hit]:
    """What of places found are meetings, each once."""
    hits: list[Hit] = []
    for t, s in found:
        new = all(abs(t - x) > 1e-6 or abs(s - y) > 1e-6 for x, y in hits)
        inside = -_PAST <= t <= 1 + _PAST and -_PAST <= s <= 1 + _PAST
        if new and inside and distance(a.at(t), b.at(s)) < _NEAR:
            hits.append((within(t), within(s)))
    return hits


def _lines(a: Line, b: Line) -> list[Hit]:
    (ax, ay), (ex, ey) = a.start, a.end
    (bx, by), (fx, fy) = b.start, b.end
    ux, uy, vx, vy = ex - ax, ey - ay, fx - bx, fy - by
    den = ux * vy - uy * vx
    if -1e-12 < den < 1e-12:
        return []
    gx, gy = bx - ax, by - ay
    t, s = (gx * vy - gy * vx) / den, (gx * uy - gy * ux) / den
    if not (-_PAST <= t <= 1 + _PAST and -_PAST <= s <= 1 + _PAST):
        return []
    off = math.hypot(ax + ux * t - bx - vx * s, ay + uy * t - by - vy * s)
    return [(within(t), within(s))] if off < _NEAR else []


def _beside(a: Cubic, b: Line) -> bool:
    """True when all points of a curve lie on one side of the line that a straight
    segment is part of, off it by more than a hair's breadth."""
    (x0, y0), (x1, y1) = b.start, b.end
    ux, uy = x1 - x0, y1 - y0
    ax, ay, bx, by, cx, cy, dx, dy = a.xy
    level, near = ux * y0 - uy * x0, 2 * _NEAR * (abs(ux) + abs(uy))
    p, q = ux * ay - uy * ax - level, ux * by - uy * bx - level
    r, s = ux * cy - uy * cx - level, ux * dy - uy * dx - level
    return (p > near and q > near and r > near and s > near) or (
        p < -near and q < -near and r < -near and s < -near
    )


def _curve_and_line(a: Cubic, b: Line) -> list[Hit]:
    """Where a curve crosses a line; not where only an end of it touches that."""
    (x0, y0), (x1, y1) = b.start, b.end
    ux, uy = x1 - x0, y1 - y0
    # how far the four points lie off the line, times its length
    off = d0, d1, d2, d3 = [ux * (y - y0) - uy * (x - x0) for x, y in a.points]
    hair = _HAIR * (abs(ux) + abs(uy))
    if min(off) >= -hair or max(off) <= hair:
        return []
    changes = (d0 < 0) != (d1 < 0), (d1 < 0) != (d2 < 0), (d2 < 0) != (d3 < 0)
    if sum(changes) != 1 or abs(d0) <= hair or abs(d3) <= hair:
        chord = kurbopy.Line(_plain(x0, y0), _plain(x1, y1))
        hits = [(h.segment_t, h.line_t) for h in _seed(a).intersect_line(chord)]
        return _checked(a, b, [_newton(a, b, t, s) for t, s in hits])
    t = _only_root(d0, d1, d2, d3)
    x, y = a.at(t)
    s = ((x - x0) * ux + (y - y0) * uy) / (ux * ux + uy * uy)
    return [(t, within(s))] if -_PAST <= s <= 1 + _PAST else []


def _only_root(d0: float, d1: float, d2: float, d3: float) -> float:
    """Where the Bernstein polynomial of these four is 0, from 0 to 1; they change their
    sign once, so that it is so at one place alone (Descartes)."""
    b, c, d = 3 * (d1 - d0), 3 * (d2 - 2 * d1 + d0), d3 - 3 * d2 + 3 * d1 - d0
    low, high, t = 0.0, 1.0, d0 / (d0 - d3)
    for _ in range(60):
        value = d0 + t * (b + t * (c + t * d))
        if (value < 0) == (d0 < 0):
            low = t
        else:
            high = t
        slope = b + t * (2 * c + t * 3 * d)
        step = value / slope if slope else math.inf
        if not low <= t - step <= high:  # Newton's rule leads off: halve
            t = (low + high) / 2
            continue
        t -= step
        if -1e-8 < step < 1e-8:  # the next step would be its square
            break
    return t


def _curves(a: Cubic, b: Cubic) -> list[Hit]:
    """Where two curves meet, as Newton leaves it."""
    seed, (left, top, right, bottom) = _seed(a), a.box
    left, top, right, bottom = left - _NEAR, top - _NEAR, right + _NEAR, bottom + _NEAR
    least, most = _strip(a)
    (ax, ay), (ex, ey) = a.start, a.end
    ux, uy = ex - ax, ey - ay
    out: list[Hit] = []
    x0, y0 = b.start
    off0 = ux * (y0 - ay) - uy * (x0 - ax)
    for i, (x, y) in enumerate(b.evenly(_CHORDS)):
        off = ux * (y - ay) - uy * (x - ax)
        if not (
            (off0 < least and off < least)
            or (off0 > most and off > most)
            or (x0 < left and x < left)
            or (x0 > right and x > right)
            or (y0 < top and y < top)
            or (y0 > bottom and y > bottom)
        ):
            chord = kurbopy.Line(_plain(x0, y0), _plain(x, y))
            for h in seed.intersect_line(chord):
                out.append(_newton(a, b, h.segment_t, (i + h.line_t) / _CHORDS))
        x0, y0, off0 = x, y, off
    for t, p in ((0.0, a.start), (1.0, a.end)):
        for s, q in ((0.0, b.start), (1.0, b.end)):
            if distance(p, q) < _FLAT:
                out.append(_newton(a, b, t, s))
    return out


def _plain(x: float, y: float) -> kurbopy.Point:
    """A chord's end; kurbo misses what a coordinate of almost nothing crosses."""
    return kurbopy.Point(x if abs(x) > 1e-12 else 0.0, y if abs(y) > 1e-12 else 0.0)


def _seed(curve: Cubic) -> kurbopy.PathSeg:
    def p(q: Point) -> kurbopy.Point:
        return kurbopy.Point(round(q[0], _SEED_DIGITS), round(q[1], _SEED_DIGITS))

    path = kurbopy.BezPath()
    path.move_to(p(curve.start))
    path.curve_to(p(curve.handle1), p(curve.handle2), p(curve.end))
    out = path.get_seg(1)
    assert out is not None
    return out


def _newton(a: Cubic, b: Segment, t: float, s: float) -> Hit:
    for _ in range(6):
        (ax, ay), (bx, by) = a.at(t), b.at(s)
        (dx, dy), (ex, ey) = a.slope(t), b.slope(s)
        det = dx * ey - dy * ex
        if abs(det) < 1e-12:
            break
        gx, gy = ax - bx, ay - by
        dt, ds = (gx * ey - gy * ex) / det, (gx * dy - gy * dx) / det
        t, s = t - dt, s - ds
        if abs(dt) < 1e-8 and abs(ds) < 1e-8:  # the next step would be its square
            break
    return t, s


def _ends_on(a: Segment, b: Segment, hits: list[Hit]) -> list[Hit]:
    """Where an end of one segment lies on the other, beside the hits found; rounding
    can hide it from the search."""
    known: list[Point] | None = None
    out: list[Hit] = []
    for one, other in ((a, b), (b, a)):
        left, top, right, bottom = other.box
        left, top, right, bottom = (
            left - _NEAR,
            top - _NEAR,
            right + _NEAR,
            bottom + _NEAR,
        )
        for t, p in ((0.0, one.start), (1.0, one.end)):
            x, y = p
            if x < left or x > right or y < top or y > bottom:
                continue
            if known is None:
                known = [a.at(t) for t, _ in hits]
            if any(distance(p, k) < _KNOWN for k in known):
                continue
            s, d = other.nearest(p) if _in_strip(other, x, y) else (0.0, math.inf)
            if d < _NEAR:
                out.append((t, s) if one is a else (s, t))
                known.append(p)
    return out


def _in_strip(a: Segment, x: float, y: float) -> bool:
    """False where a place lies off the strip along a segment's chord that holds its
    points: then it is not on it."""
    (x0, y0), (x1, y1) = a.start, a.end
    least, most = _strip(a)
    return least <= (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) <= most


def _strip(a: Segment) -> Hit:
    """How far a segment, with a hair's breadth round it, lies off its chord on either
    side, times the chord's length."""
    (x0, y0), (x1, y1) = a.start, a.end
    near = 2 * _NEAR * (abs(x1 - x0) + abs(y1 - y0))
    least, most = (0.0, 0.0) if isinstance(a, Line) else a.strip
    return least - near, most + near
