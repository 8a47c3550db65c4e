"""A line set inside an outline by a width that runs from one size to another.

Facings roll a seam to the inside: their edges lie a little inside the shell's, full
at one end and perhaps nothing at the other.
"""

import math
from collections.abc import Callable

from clothwright.curves.cubic import Cubic, Line
from clothwright.curves.path import Path
from clothwright.curves.point import Point, Vector, dot
from clothwright.curves.tolerances import CLOSE

_SPANS, _TIGHT_SPANS = 4, 12
"""Cubics drawn for each curve, and for one that bends to a radius under 3 cm; the inset
then strays under 0.01 mm on armholes."""


def _right(u: Vector) -> Vector:
    return Vector(-u[1], u[0])


def _joint(p: Point, u: Vector, v: Vector, width: float) -> Point:
    """Where two insets of one width meet at a joint from direction u to v."""
    a, b = _right(u), _right(v)
    k = width / (1 + dot(a, b))
    return Point(p[0] + (a[0] + b[0]) * k, p[1] + (a[1] + b[1]) * k)


def inset(path: Path, start: float, end: float) -> Path:
    """The path set off to its right (inside a clockwise outline), from `start` cm at
    its start to `end` cm at its end, linearly in its length. Corners are mitred.
    """
    total = path.length

    def width(s: float) -> float:
        return start + (end - start) * s / total

    grow = (end - start) / total
    segs = path.segments
    out: list[Line | Cubic] = []
    at = 0.0
    first = segs[0].start + _right(segs[0].start_direction) * start
    for i, seg in enumerate(segs):
        after = segs[i + 1] if i + 1 < len(segs) else None
        s_end = at + seg.length
        if after is None:
            last = seg.end + _right(seg.end_direction) * end
        else:
            last = _joint(
                seg.end, seg.end_direction, after.start_direction, width(s_end)
            )
        if isinstance(seg, Line):
            out.append(Line(first, last))
        else:
            out += _curve(seg, at, width, grow, first, last)
        first, at = last, s_end
    return Path(tuple(s for s in out if s.length > CLOSE))


def _curve(
    seg: Cubic,
    at: float,
    width: Callable[[float], float],
    grow: float,
    first: Point,
    last: Point,
) -> list[Line | Cubic]:
    points: list[tuple[Point, Vector]] = []
    tight = any(abs(seg.curvature(i / 8)) > 1 / 3 for i in range(1, 8))
    spans = _TIGHT_SPANS if tight else _SPANS
    step = seg.length / spans
    for k in range(spans + 1):
        t = seg.parameter_at_length(k * step)
        p = seg.at(t)
        if k == 0:
            u, bend = seg.start_direction, seg.curvature(1e-4)
        elif k == spans:
            u, bend = seg.end_direction, seg.curvature(1 - 1e-4)
        else:
            v = seg.slope(t)
            n = math.hypot(*v)
            u, bend = Vector(v[0] / n, v[1] / n), seg.curvature(t)
        w = width(at + k * step)
        r = _right(u)
        speed = 1 - w * bend
        d = Vector(u[0] * speed + r[0] * grow, u[1] * speed + r[1] * grow)
        points.append((p + r * w, d))
    points[0] = (first, points[0][1])
    points[-1] = (last, points[-1][1])
    return [
        Cubic(p, p + d * (step / 3), q - e * (step / 3), q)
        for (p, d), (q, e) in zip(points, points[1:], strict=False)
    ]
