"""The curved segment, a cubic Bézier, beside the straight one.

Both answer the same questions, so a path need not know which it holds. Lengths are
true arc lengths (kurbo's Gauss-Legendre quadrature), not sums of chords. cm.
"""

import math
from dataclasses import dataclass, field
from functools import cache
from typing import Final

import kurbopy

from clothwright.curves.held import held
from clothwright.curves.line import NO_NUMBER, Box, Line
from clothwright.curves.motion import Motion
from clothwright.curves.near import nearest
from clothwright.curves.point import (
    Pair,
    Point,
    Vector,
    cross,
    dot,
    pair,
)
from clothwright.curves.tolerances import ARC, CLOSE, FIT

_BESIDE_END = 1e-4
"""Parameter beside an end where its bend is read: a handle may lie on the end."""

Station = tuple[Pair, Pair, float]
"""A place on a curve, the unit direction there, and the bend, 1/cm."""


@cache
def _shares(n: int) -> tuple[float, ...]:
    """Where a curve is divided into n equal steps of its parameter."""
    return tuple(i / n for i in range(1, n))


def _first_way(*legs: Pair) -> Vector:
    """Unit direction of the first of some legs that has a length."""
    for x, y in legs:
        n = math.hypot(x, y)
        if n > CLOSE:
            return pair(Vector, (x / n, y / n))
    raise ValueError("a curve of no length has no direction")


@dataclass(init=False, unsafe_hash=True)
class Cubic:
    """A cubic Bézier: start, two handles, end."""

    start: Final[Point]
    handle1: Final[Point]
    handle2: Final[Point]
    end: Final[Point]
    xy: tuple[float, ...] = field(init=False, compare=False, repr=False)
    """Their eight numbers, taken apart in a fifth of the time that four points take."""

    _back: "Cubic | None" = field(default=None, init=False, compare=False, repr=False)
    """The curve that this one is, walked the other way: half of all lengths asked for
    are known from there."""

    def __init__(
        self,
        start: Point,
        handle1: Point,
        handle2: Point,
        end: Point,
        xy: tuple[float, ...] | None = None,
    ) -> None:
        """`xy` are their eight numbers, where those are at hand."""
        if xy is None:
            (x0, y0), (x1, y1), (x2, y2), (x3, y3) = start, handle1, handle2, end
            if not math.isfinite(x0 + y0 + x1 + y1 + x2 + y2 + x3 + y3):
                raise ValueError(NO_NUMBER)
            xy = (x0, y0, x1, y1, x2, y2, x3, y3)
        self.xy = xy
        self.start, self.handle1 = start, handle1
        self.handle2, self.end = handle2, end

    @held
    def _k(self) -> kurbopy.CubicBez:
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        a, b = kurbopy.Point(x0, y0), kurbopy.Point(x1, y1)
        c, d = kurbopy.Point(x2, y2), kurbopy.Point(x3, y3)
        return kurbopy.CubicBez(a, b, c, d)

    def __reduce__(self) -> tuple[type["Cubic"], tuple[Point, ...]]:
        return Cubic, self.points

    @property
    def points(self) -> tuple[Point, Point, Point, Point]:
        """The four control points."""
        return (self.start, self.handle1, self.handle2, self.end)

    @held
    def box(self) -> Box:
        """Left, top, right and bottom of what the four points hold, cm: the curve lies
        within."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        left, _, _, right = sorted((x0, x1, x2, x3))
        top, _, _, bottom = sorted((y0, y1, y2, y3))
        return left, top, right, bottom

    @held
    def strip(self) -> tuple[float, float]:
        """How far its points lie off the chord on either side, times the length of
        that: the curve lies between."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        ux, uy = x3 - x0, y3 - y0
        off1, off2 = ux * (y1 - y0) - uy * (x1 - x0), ux * (y2 - y0) - uy * (x2 - x0)
        if off1 > off2:
            off1, off2 = off2, off1
        return off1 if off1 < 0.0 else 0.0, off2 if off2 > 0.0 else 0.0

    @held
    def bend(self) -> float:
        """A bound of |B''|, cm; |B''|/(8 n²) bounds what n chords stray."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        a = math.hypot(x2 - 2 * x1 + x0, y2 - 2 * y1 + y0)
        b = math.hypot(x3 - 2 * x2 + x1, y3 - 2 * y2 + y1)
        return 6 * (a if a > b else b)

    @held
    def fine(self) -> list[Pair]:
        """Points from the start to the end whose chords stray at most 0.1 mm."""
        x, y = self.start
        return [(x, y), *self.evenly(self.steps(0.01))]

    def steps(self, tolerance: float) -> int:
        """Equal steps of the parameter whose chords stray at most so far, cm."""
        return math.ceil(math.sqrt(self.bend / (8 * tolerance))) or 1

    @held
    def length(self) -> float:
        """True arc length in cm, within 1e-6."""
        return self._back.length if self._back else float(self._k.arclen(ARC))

    @property
    def start_direction(self) -> Vector:
        """Unit direction at the start; a handle on the end is skipped."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        x, y = x1 - x0, y1 - y0
        n = math.hypot(x, y)
        if n <= CLOSE:
            return _first_way((x2 - x0, y2 - y0), (x3 - x0, y3 - y0))
        return pair(Vector, (x / n, y / n))

    @property
    def end_direction(self) -> Vector:
        """Unit direction at the end."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        x, y = x3 - x2, y3 - y2
        n = math.hypot(x, y)
        if n <= CLOSE:
            return _first_way((x3 - x1, y3 - y1), (x3 - x0, y3 - y0))
        return pair(Vector, (x / n, y / n))

    def leaving(self) -> Pair:
        """The direction at the start, of any length: for angles alone."""
        x0, y0, x1, y1, _, _, _, _ = self.xy
        x, y = x1 - x0, y1 - y0
        return (x, y) if x * x + y * y > CLOSE * CLOSE else self.start_direction

    def arriving(self) -> Pair:
        """The direction at the end, of any length."""
        _, _, _, _, x2, y2, x3, y3 = self.xy
        x, y = x3 - x2, y3 - y2
        return (x, y) if x * x + y * y > CLOSE * CLOSE else self.end_direction

    def at(self, t: float) -> Point:
        """The point at parameter `t`, 0 to 1."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        s = 1 - t
        a, b, c, d = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
        return pair(
            Point,
            (a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3),
        )

    def evenly(self, n: int) -> list[Pair]:
        """The points after the start at n equal steps of the parameter."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        if n == 1:
            return [(x3, y3)]
        # B(t) = (x0, y0) + b·t + c·t² + d·t³
        bx, by = 3 * (x1 - x0), 3 * (y1 - y0)
        cx, cy = 3 * (x2 - x1) - bx, 3 * (y2 - y1) - by
        dx, dy = x3 - x0 - bx - cx, y3 - y0 - by - cy
        out: list[Pair] = []
        for t in _shares(n):  # in a comprehension all eight would be cells
            x = x0 + t * (bx + t * (cx + t * dx))
            out.append((x, y0 + t * (by + t * (cy + t * dy))))
        out.append((x3, y3))
        return out

    def slope(self, t: float) -> Vector:
        """Derivative with respect to `t`."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        s = 1 - t
        a, b, c = 3 * s * s, 6 * s * t, 3 * t * t
        return pair(
            Vector,
            (
                a * (x1 - x0) + b * (x2 - x1) + c * (x3 - x2),
                a * (y1 - y0) + b * (y2 - y1) + c * (y3 - y2),
            ),
        )

    def curvature(self, t: float) -> float:
        """1/radius in 1/cm; positive where the curve turns clockwise as seen."""
        k = -float(self._k.curvature(t))  # kurbo counts the other turn
        return k if math.isfinite(k) else 0.0  # a handle on its end has no bend there

    def parameter_at_length(self, s: float) -> float:
        """Parameter where the length from the start is `s`; clamped to 0..1."""
        if s <= 0:
            return 0.0
        if s >= self.length:
            return 1.0
        return float(self._k.inv_arclen(s, 1e-9))

    def length_to(self, t: float) -> float:
        """Length from the start to parameter `t`, 0 to 1."""
        if t >= 1:
            return self.length
        return float(self._k.subsegment((0.0, t)).arclen(ARC)) if t > 0 else 0.0

    def stations(self, n: int) -> list[Station]:
        """Where n parts of one length begin and end."""
        step = self.length / n
        bend = self.curvature(_BESIDE_END)
        out: list[Station] = [(self.start, self.start_direction, bend)]
        for k in range(1, n):
            t = self.parameter_at_length(k * step)
            u, v = self.slope(t)
            speed = math.hypot(u, v)
            out.append((self.at(t), (u / speed, v / speed), self.curvature(t)))
        out.append((self.end, self.end_direction, self.curvature(1 - _BESIDE_END)))
        return out

    @held
    def quarters(self) -> list[Station]:
        """The stations of its four quarters: lines beside it of more than one width
        are drawn from them."""
        return self.stations(4)

    def nearest(self, p: Point) -> tuple[float, float]:
        """(t, distance) of the place nearest to `p`."""
        if p == self.start or p == self.end:  # as a third of those asked are
            return float(p != self.start), 0.0
        return nearest(p, self.xy, self._speed, self.least_radius, self._k)

    @held
    def _speed(self) -> float:
        """A bound of |B'|, cm: the legs of the handles hold it."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        a, b = math.hypot(x1 - x0, y1 - y0), math.hypot(x2 - x1, y2 - y1)
        c = math.hypot(x3 - x2, y3 - y2)
        a = a if a > b else b
        return 3 * (a if a > c else c)

    @held
    def least_radius(self) -> float:
        """A bound: the curve bends to no radius under it, cm. It is slow²/bend, where
        `slow` is the least speed along the chord; 0 where that is no bound."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        ux, uy = x3 - x0, y3 - y0
        first = (x1 - x0) * ux + (y1 - y0) * uy  # the legs along the chord
        middle = (x2 - x1) * ux + (y2 - y1) * uy
        last = (x3 - x2) * ux + (y3 - y2) * uy
        if first <= 0.0 or middle <= 0.0 or last <= 0.0:
            return 0.0
        least = 3 * min(first, middle, last)  # by the chord's length
        bend = self.bend * (ux * ux + uy * uy)
        return least * least / bend if bend else math.inf

    @held
    def tight(self) -> bool:
        """True where the curve bends to a radius under 3 cm, at one of eight steps."""
        if self.least_radius >= 3.0:
            return False
        return any(abs(self.curvature(i / 8)) > 1 / 3 for i in range(1, 8))

    def part(self, t0: float, t1: float) -> "Cubic":
        """The part between two parameters, t0 < t1."""
        head = self.before(t1) if t1 < 1 else self
        return head.after(t0 / t1) if t0 > 0 else head

    def before(self, t: float) -> "Cubic":
        """The part before a parameter."""
        xy = self.xy[:2] + self._division(t)[:6]
        _, _, x1, y1, x2, y2, x3, y3 = xy
        p, q = pair(Point, (x1, y1)), pair(Point, (x2, y2))
        return Cubic(self.start, p, q, pair(Point, (x3, y3)), xy)

    def after(self, t: float) -> "Cubic":
        """The part after a parameter."""
        xy = self._division(t)[4:] + self.xy[6:]
        x0, y0, x1, y1, x2, y2, _, _ = xy
        p, q = pair(Point, (x1, y1)), pair(Point, (x2, y2))
        return Cubic(pair(Point, (x0, y0)), p, q, self.end, xy)

    def _division(self, t: float) -> tuple[float, ...]:
        """Handles of the part before, the place of a parameter, handles of the part
        after (de Casteljau)."""
        ax, ay, bx, by, cx, cy, dx, dy = self.xy
        ex, ey = ax + (bx - ax) * t, ay + (by - ay) * t
        fx, fy = bx + (cx - bx) * t, by + (cy - by) * t
        gx, gy = cx + (dx - cx) * t, cy + (dy - cy) * t
        hx, hy = ex + (fx - ex) * t, ey + (fy - ey) * t
        ix, iy = fx + (gx - fx) * t, fy + (gy - fy) * t
        x, y = hx + (ix - hx) * t, hy + (iy - hy) * t
        return ex, ey, hx, hy, x, y, ix, iy, gx, gy

    def reversed(self) -> "Cubic":
        """The same curve walked the other way."""
        if self._back is not None:
            return self._back
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        xy = (x3, y3, x2, y2, x1, y1, x0, y0)
        out = Cubic(self.end, self.handle2, self.handle1, self.start, xy)
        out._back = self
        return out

    def moved(self, m: Motion) -> "Cubic":
        """The curve after a motion."""
        x0, y0, x1, y1, x2, y2, x3, y3 = self.xy
        a, b, c, d, e, f = m.a, m.b, m.c, m.d, m.e, m.f
        x0, y0 = a * x0 + c * y0 + e, b * x0 + d * y0 + f
        x1, y1 = a * x1 + c * y1 + e, b * x1 + d * y1 + f
        x2, y2 = a * x2 + c * y2 + e, b * x2 + d * y2 + f
        x3, y3 = a * x3 + c * y3 + e, b * x3 + d * y3 + f
        if not math.isfinite(x0 + y0 + x1 + y1 + x2 + y2 + x3 + y3):
            raise ValueError(NO_NUMBER)
        p, q = pair(Point, (x0, y0)), pair(Point, (x1, y1))
        r, s = pair(Point, (x2, y2)), pair(Point, (x3, y3))
        return Cubic(p, q, r, s, (x0, y0, x1, y1, x2, y2, x3, y3))

    def area_term(self) -> float:
        """This segment's share of the enclosed area (Green's theorem)."""
        return float(self._k.signed_area())

    def turning(self, samples: int = 24) -> tuple[float, float]:
        """(clockwise, anticlockwise) turning in degrees, both ≥ 0, by sampling."""
        dirs = [self.start_direction]
        dirs += [self.slope(i / samples) for i in range(1, samples)]
        dirs.append(self.end_direction)
        plus = minus = 0.0
        for a, b in zip(dirs, dirs[1:], strict=False):
            d = math.degrees(math.atan2(cross(a, b), dot(a, b)))
            if d > 0:
                plus += d
            else:
                minus -= d
        return plus, minus

    def parallel(self, d: float, tol: float = FIT) -> tuple["Segment", ...]:
        """The curve set off by `d` to its left as seen, within `tol`.

        Raises ValueError where the curve's hollow is tighter than `d`, so that the
        parallel would fold over itself.
        """
        if d == 0:
            return (self,)
        for i in range(33):
            # to the left is outside of a clockwise outline: only a hollow
            # (anticlockwise turning) can be too tight for it
            if 1 + self.curvature(i / 32) * d <= 0.02:
                raise ValueError(
                    f"an allowance of {abs(d):g} cm is wider than the curve's hollow"
                )
        out: list[Segment] = []
        for s in kurbopy.offset_cubic(self._k, -d, tol / 2).segments():
            assert isinstance(s, kurbopy.CubicBez), "kurbo offsets with cubics"
            q = (Point(p.x, p.y) for p in (s.p0, s.p1, s.p2, s.p3))
            out.append(Cubic(*q))
        return tuple(out)


Segment = Line | Cubic
