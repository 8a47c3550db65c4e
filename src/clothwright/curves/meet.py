"""Where lines and curves meet.

kurbo's own curve-curve search answers wrongly on curves (it was tried: four points
for one crossing, none of them on it), so chords of one curve, met with the other by
kurbo's exact line meeting, seed a Newton step on both.
"""

import kurbopy

from clothwright.curves.cubic import Cubic, Segment
from clothwright.curves.line import Box, Line
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

_FLAT = 0.2
"""Curves whose ends are this near (cm) may cross there at so flat an angle that no
chord shows it: the search starts from the ends as well."""


def _apart(a: Box, b: Box) -> bool:
    return (
        a[0] > b[2] + _NEAR
        or b[0] > a[2] + _NEAR
        or a[1] > b[3] + _NEAR
        or b[1] > a[3] + _NEAR
    )


def crossings(a: Segment, b: Segment) -> list[tuple[float, float]]:
    """Parameters (t on `a`, s on `b`) where two segments meet, ends included.

    Within 1e-7 cm. Touching ends are found; overlapping curves and curves that
    graze each other without crossing may be missed.
    """
    if _apart(a.box, b.box):
        return []
    if isinstance(a, Line):
        if isinstance(b, Line):
            found = _lines(a, b)
        else:
            found = [(t, s) for s, t in _curve_and(b, a)]
    else:
        found = _curve_and(a, b)
    hits: list[tuple[float, float]] = []
    for t, s in found:
        new = all(abs(t - x) > 1e-6 or abs(s - y) > 1e-6 for x, y in hits)
        inside = -1e-9 <= t <= 1 + 1e-9 and -1e-9 <= s <= 1 + 1e-9
        if new and inside and distance(a.at(t), b.at(s)) < _NEAR:
            hits.append((min(1.0, max(0.0, t)), min(1.0, max(0.0, s))))
    for t, s in _ends_on(a, b):
        if all(distance(a.at(t), a.at(x)) > 1e-6 for x, _ in hits):
            hits.append((t, s))
    return sorted(hits)


def _lines(a: Line, b: Line) -> list[tuple[float, float]]:
    u, v = a.end - a.start, b.end - b.start
    den = cross(u, v)
    if abs(den) < 1e-12:
        return []
    gap = b.start - a.start
    return [(cross(gap, v) / den, cross(gap, u) / den)]


def _curve_and(a: Cubic, b: Segment) -> list[tuple[float, float]]:
    """Where a curve meets a segment, as Newton leaves it."""
    seed, (left, top, right, bottom) = _seed(a), a.box
    left, top, right, bottom = left - _NEAR, top - _NEAR, right + _NEAR, bottom + _NEAR
    points = [b.end] if isinstance(b, Line) else b.evenly(_CHORDS)
    n = len(points)
    out: list[tuple[float, float]] = []
    x0, y0 = b.start
    for i, (x, y) in enumerate(points):
        if not (
            (x0 < left and x < left)
            or (x0 > right and x > right)
            or (y0 < top and y < top)
            or (y0 > bottom and y > bottom)
        ):
            chord = kurbopy.Line(_plain(x0, y0), _plain(x, y))
            for h in seed.intersect_line(chord):
                out.append(_newton(a, b, h.segment_t, (i + h.line_t) / n))
        x0, y0 = x, y
    if n > 1:
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


def _newton(a: Cubic, b: Segment, t: float, s: float) -> tuple[float, float]:
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


def _ends_on(a: Segment, b: Segment) -> list[tuple[float, float]]:
    """Where an end of one segment lies on the other; rounding can hide it from the
    search along chords."""
    out: list[tuple[float, float]] = []
    for t, p in ((0.0, a.start), (1.0, a.end)):
        if _reaches(b, p):
            s, d = b.nearest(p)
            if d < _NEAR:
                out.append((t, s))
    for s, p in ((0.0, b.start), (1.0, b.end)):
        if _reaches(a, p):
            t, d = a.nearest(p)
            if d < _NEAR:
                out.append((t, s))
    return out


def _reaches(a: Segment, p: Point) -> bool:
    """False where a point lies off the box of a segment, or off the strip along its
    chord that holds its four points: then it is not on it."""
    x, y = p
    left, top, right, bottom = a.box
    if x < left - _NEAR or x > right + _NEAR or y < top - _NEAR or y > bottom + _NEAR:
        return False
    if isinstance(a, Line):
        return True
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = a.points
    ux, uy = x3 - x0, y3 - y0
    off1, off2 = ux * (y1 - y0) - uy * (x1 - x0), ux * (y2 - y0) - uy * (x2 - x0)
    off, near = ux * (y - y0) - uy * (x - x0), 2 * _NEAR * (abs(ux) + abs(uy))
    return min(0.0, off1, off2) - near <= off <= max(0.0, off1, off2) + near
