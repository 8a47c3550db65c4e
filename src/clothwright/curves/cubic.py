"""The two segments: a straight line and a cubic Bézier.

Both answer the same questions, so a path need not know which it holds. Lengths are
true arc lengths (kurbo's Gauss-Legendre quadrature), not sums of chords.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

import kurbopy

from clothwright.curves.held import held
from clothwright.curves.motion import Motion
from clothwright.curves.point import (
    Point,
    Vector,
    cross,
    distance,
    dot,
    mix,
    pair,
    unit,
)
from clothwright.curves.tolerances import ARC, CLOSE, FIT

Box = tuple[float, float, float, float]
"""Left, top, right, bottom, cm."""


def box(points: Sequence[Point]) -> Box:
    """The least box round some points."""
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs), min(ys), max(xs), max(ys)


_TRIALS = tuple(i / 10 for i in range(11))
"""Where on a curve the nearest place is sought."""

_ROUGH = 1e-3
"""How near kurbo's answer need be, cm: Newton's rule finishes it."""

_ON = 1e-9
"""A point this near (cm) lies on a curve."""

_NO_NUMBER = "a point of this curve is not a number"


@dataclass(frozen=True, init=False)
class Line:
    """Straight from `start` to `end`."""

    start: Point
    end: Point
    length: float = field(init=False, compare=False, repr=False)
    """Length in cm."""

    def __init__(self, start: Point, end: Point) -> None:
        # a draft makes a thousand segments: one question of all their numbers, and
        # past the frozen class's own way of setting each
        length = math.hypot(end[0] - start[0], end[1] - start[1])
        if not math.isfinite(length):
            raise ValueError(_NO_NUMBER)
        here = self.__dict__
        here["start"], here["end"], here["length"] = start, end, length

    @property
    def points(self) -> tuple[Point, ...]:
        """Start and end."""
        return (self.start, self.end)

    @held
    def box(self) -> Box:
        """Left, top, right and bottom of the line, cm."""
        return box(self.points)

    @property
    def start_direction(self) -> Vector:
        """Unit direction at the start."""
        return unit(self.end - self.start)

    @property
    def end_direction(self) -> Vector:
        """Unit direction at the end."""
        return unit(self.end - self.start)

    def at(self, t: float) -> Point:
        """The point at parameter `t`, 0 to 1."""
        return mix(self.start, self.end, t)

    def slope(self, t: float) -> Vector:  # noqa: ARG002
        """Derivative at `t`."""
        return self.end - self.start

    def parameter_at_length(self, s: float) -> float:
        """Parameter where the length from the start is `s`; clamped to 0..1."""
        return min(1.0, max(0.0, s / self.length)) if self.length else 0.0

    def length_to(self, t: float) -> float:
        """Length from the start to parameter `t`, 0 to 1."""
        return self.length * min(1.0, max(0.0, t))

    def nearest(self, p: Point) -> tuple[float, float]:
        """(t, distance) of the place nearest to `p`."""
        v = self.end - self.start
        n = dot(v, v)
        t = min(1.0, max(0.0, dot(p - self.start, v) / n)) if n else 0.0
        return t, distance(p, self.at(t))

    def part(self, t0: float, t1: float) -> "Line":
        """The part between two parameters."""
        return Line(self.at(t0), self.at(t1))

    def divided(self, t: float) -> tuple["Line", "Line"]:
        """The parts before and after a parameter."""
        at = self.at(t)
        return Line(self.start, at), Line(at, self.end)

    def reversed(self) -> "Line":
        """The same line walked the other way."""
        return Line(self.end, self.start)

    def moved(self, m: Motion) -> "Line":
        """The line after a motion."""
        return Line(m(self.start), m(self.end))

    def area_term(self) -> float:
        """This segment's share of the enclosed area (Green's theorem)."""
        return 0.5 * cross(self.start, self.end)

    def turning(self) -> tuple[float, float]:
        """(clockwise, anticlockwise) turning in degrees, both ≥ 0."""
        return 0.0, 0.0

    def parallel(self, d: float) -> tuple["Line", ...]:
        """The line set off by `d` to its left as seen (outside of an outline)."""
        u = self.start_direction
        v = Vector(u[1] * d, -u[0] * d)
        return (Line(self.start + v, self.end + v),)


@dataclass(frozen=True, init=False)
class Cubic:
    """A cubic Bézier: start, two handles, end."""

    start: Point
    handle1: Point
    handle2: Point
    end: Point

    def __init__(
        self, start: Point, handle1: Point, handle2: Point, end: Point
    ) -> None:
        total = start[0] + start[1] + handle1[0] + handle1[1]
        total += handle2[0] + handle2[1] + end[0] + end[1]
        if not math.isfinite(total):
            raise ValueError(_NO_NUMBER)
        here = self.__dict__
        here["start"], here["handle1"] = start, handle1
        here["handle2"], here["end"] = handle2, end

    @held
    def _k(self) -> kurbopy.CubicBez:
        a, b, c, d = self.start, self.handle1, self.handle2, self.end
        return kurbopy.CubicBez(
            kurbopy.Point(a[0], a[1]),
            kurbopy.Point(b[0], b[1]),
            kurbopy.Point(c[0], c[1]),
            kurbopy.Point(d[0], d[1]),
        )

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
        return box(self.points)

    @held
    def bend(self) -> float:
        """A bound of |B''|, cm."""
        (x0, y0), (x1, y1), (x2, y2), (x3, y3) = self.points
        a = math.hypot(x2 - 2 * x1 + x0, y2 - 2 * y1 + y0)
        b = math.hypot(x3 - 2 * x2 + x1, y3 - 2 * y2 + y1)
        return 6 * (a if a > b else b)

    @held
    def length(self) -> float:
        """True arc length in cm, within 1e-6."""
        return float(self._k.arclen(ARC))

    @property
    def start_direction(self) -> Vector:
        """Unit direction at the start; a handle on the end is skipped."""
        x, y = self.start
        for px, py in (self.handle1, self.handle2, self.end):
            n = math.hypot(px - x, py - y)
            if n > CLOSE:
                return pair(Vector, ((px - x) / n, (py - y) / n))
        raise ValueError("a curve of no length has no direction")

    @property
    def end_direction(self) -> Vector:
        """Unit direction at the end."""
        x, y = self.end
        for px, py in (self.handle2, self.handle1, self.start):
            n = math.hypot(x - px, y - py)
            if n > CLOSE:
                return pair(Vector, ((x - px) / n, (y - py) / n))
        raise ValueError("a curve of no length has no direction")

    def at(self, t: float) -> Point:
        """The point at parameter `t`, 0 to 1."""
        x0, y0 = self.start
        x1, y1 = self.handle1
        x2, y2 = self.handle2
        x3, y3 = self.end
        s = 1 - t
        a, b, c, d = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
        return pair(
            Point,
            (a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3),
        )

    def evenly(self, n: int) -> list[Point]:
        """The points after the start at n equal steps of the parameter."""
        if n == 1:
            return [self.end]
        (x0, y0), (x1, y1), (x2, y2), (x3, y3) = self.points
        # B(t) = (x0, y0) + b·t + c·t² + d·t³
        bx, by = 3 * (x1 - x0), 3 * (y1 - y0)
        cx, cy = 3 * (x2 - x1) - bx, 3 * (y2 - y1) - by
        dx, dy = x3 - x0 - bx - cx, y3 - y0 - by - cy
        out: list[Point] = []
        for i in range(1, n):
            t = i / n
            x, y = x0 + t * (bx + t * (cx + t * dx)), y0 + t * (by + t * (cy + t * dy))
            out.append(pair(Point, (x, y)))
        out.append(self.end)
        return out

    def slope(self, t: float) -> Vector:
        """Derivative with respect to `t`."""
        x0, y0 = self.start
        x1, y1 = self.handle1
        x2, y2 = self.handle2
        x3, y3 = self.end
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

    def nearest(self, p: Point) -> tuple[float, float]:
        """(t, distance) of the place nearest to `p`.

        For a point on the curve, kurbo's rough answer bettered by Newton's rule. Else
        kurbo's fine answer, or better ones from even trials. kurbo alone is wrong by up
        to 8 mm on curves that are nearly straight or nearly parabolas (it was tried,
        100,000 of them); the better of the two was never off by 0.0001 mm.
        """
        (x0, y0), (x1, y1), (x2, y2), (x3, y3) = self.points
        # B(t) − p = a + b·t + c·t² + d·t³, for x and for y
        ax, bx, cx = x0 - p[0], 3 * (x1 - x0), 3 * (x2 - 2 * x1 + x0)
        ay, by, cy = y0 - p[1], 3 * (y1 - y0), 3 * (y2 - 2 * y1 + y0)
        dx, dy = x3 - x0 - bx - cx, y3 - y0 - by - cy

        def bettered(t: float) -> tuple[float, float]:
            """(distance, t) of the place that Newton's rule leads to."""
            for _ in range(12):
                gx = ax + t * (bx + t * (cx + t * dx))
                gy = ay + t * (by + t * (cy + t * dy))
                vx, vy = bx + t * (2 * cx + 3 * t * dx), by + t * (2 * cy + 3 * t * dy)
                wx, wy = 2 * cx + 6 * t * dx, 2 * cy + 6 * t * dy
                rise = vx * vx + vy * vy
                bent = rise + wx * gx + wy * gy
                rise = bent if bent > 0 else rise  # never step uphill
                if rise <= 0:
                    break
                before, t = t, min(1.0, max(0.0, t - (vx * gx + vy * gy) / rise))
                if abs(t - before) < 1e-9:
                    break
            gx = ax + t * (bx + t * (cx + t * dx))
            return math.hypot(gx, ay + t * (by + t * (cy + t * dy))), t

        asked = kurbopy.Point(p[0], p[1])
        best = bettered(self._k.nearest(asked, _ROUGH).get_t())
        if best[0] < _ON:
            return best[1], best[0]
        t = self._k.nearest(asked, ARC).get_t()
        best = min(best, (distance(self.at(t), p), t))
        far: list[float] = []
        for t in _TRIALS:
            gx = ax + t * (bx + t * (cx + t * dx))
            gy = ay + t * (by + t * (cy + t * dy))
            far.append(gx * gx + gy * gy)
        # no place is nearer than its trial by more than half a step at full speed
        speed = max(math.hypot(bx, by), 3 * math.hypot(x2 - x1, y2 - y1))
        speed = max(speed, 3 * math.hypot(x3 - x2, y3 - y2))
        reach = speed / (2 * len(_TRIALS) - 2)
        fence = [math.inf, *far, math.inf]
        for i, t in enumerate(_TRIALS):
            low = far[i] <= fence[i] and far[i] <= fence[i + 2]
            if low and far[i] < (best[0] + reach) ** 2:
                best = min(best, bettered(t))
        return best[1], best[0]

    def part(self, t0: float, t1: float) -> "Cubic":
        """The part between two parameters, t0 < t1."""
        head = self.divided(t1)[0] if t1 < 1 else self
        return head.divided(t0 / t1)[1] if t0 > 0 else head

    def divided(self, t: float) -> tuple["Cubic", "Cubic"]:
        """The parts before and after a parameter (de Casteljau)."""
        a, b, c, d = self.start, self.handle1, self.handle2, self.end
        ab, bc, cd = mix(a, b, t), mix(b, c, t), mix(c, d, t)
        abc, bcd = mix(ab, bc, t), mix(bc, cd, t)
        at = mix(abc, bcd, t)
        return Cubic(a, ab, abc, at), Cubic(at, bcd, cd, d)

    def reversed(self) -> "Cubic":
        """The same curve walked the other way."""
        return Cubic(self.end, self.handle2, self.handle1, self.start)

    def moved(self, m: Motion) -> "Cubic":
        """The curve after a motion."""
        return Cubic(m(self.start), m(self.handle1), m(self.handle2), m(self.end))

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
