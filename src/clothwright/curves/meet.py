"""Where lines and curves meet.

kurbo's own curve-curve search answers wrongly on curves (it was tried: four points
for one crossing, none of them on it), so chords of one curve, met with the other by
kurbo's exact line meeting, seed a Newton step on both.
"""

import kurbopy

from clothwright.curves.cubic import Cubic, Line, Segment
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


def _kurbo(seg: Segment) -> kurbopy.PathSeg:
    def p(q: Point) -> kurbopy.Point:
        return kurbopy.Point(round(q[0], _SEED_DIGITS), round(q[1], _SEED_DIGITS))

    path = kurbopy.BezPath()
    path.move_to(p(seg.start))
    if isinstance(seg, Line):
        path.line_to(p(seg.end))
    else:
        path.curve_to(p(seg.handle1), p(seg.handle2), p(seg.end))
    out = path.get_seg(1)
    assert out is not None
    return out


def _boxes_apart(a: Segment, b: Segment) -> bool:
    for i in (0, 1):
        if min(p[i] for p in a.points) > max(p[i] for p in b.points) + 1e-9:
            return True
        if min(p[i] for p in b.points) > max(p[i] for p in a.points) + 1e-9:
            return True
    return False


def crossings(a: Segment, b: Segment) -> list[tuple[float, float]]:
    """Parameters (t on `a`, s on `b`) where two segments meet, ends included.

    Within 1e-7 cm. Touching ends are found; overlapping curves and curves that
    graze each other without crossing may be missed.
    """
    if _boxes_apart(a, b):
        return []
    hits: list[tuple[float, float]] = []
    seg_a = _kurbo(a)
    n = 1 if isinstance(b, Line) else _CHORDS
    for i in range(n):
        p, q = b.at(i / n), b.at((i + 1) / n)
        chord = kurbopy.Line(kurbopy.Point(*p), kurbopy.Point(*q))
        for h in seg_a.intersect_line(chord):
            t, s = h.segment_t, (i + h.line_t) / n
            for _ in range(6 if isinstance(a, Cubic) or n > 1 else 0):
                gap = a.at(t) - b.at(s)
                d, e = a.slope(t), b.slope(s)
                det = cross(d, e)
                if abs(det) < 1e-12:
                    break
                t, s = t - cross(gap, e) / det, s - cross(gap, d) / det
            new = all(abs(t - x) > 1e-6 or abs(s - y) > 1e-6 for x, y in hits)
            inside = -1e-9 <= t <= 1 + 1e-9 and -1e-9 <= s <= 1 + 1e-9
            if new and inside and distance(a.at(t), b.at(s)) < 1e-7:
                hits.append((min(1.0, max(0.0, t)), min(1.0, max(0.0, s))))
    for t, s in _ends_on(a, b):
        if all(distance(a.at(t), a.at(x)) > 1e-6 for x, _ in hits):
            hits.append((t, s))
    return sorted(hits)


def _ends_on(a: Segment, b: Segment) -> list[tuple[float, float]]:
    """Where an end of one segment lies on the other; rounding can hide it from the
    search along chords."""
    out: list[tuple[float, float]] = []
    for t, p in ((0.0, a.start), (1.0, a.end)):
        s, d = b.nearest(p)
        if d < 1e-7:
            out.append((t, s))
    for s, p in ((0.0, b.start), (1.0, b.end)):
        t, d = a.nearest(p)
        if d < 1e-7:
            out.append((t, s))
    return out
