"""Outlines: quick questions to one piece's own line. Pure geometry, cm and degrees.

Own code where a polygon library would answer too, because every change of an order
asks these of every piece: the test suite proves them against shapely.
"""

import math
from collections.abc import Mapping, Sequence
from functools import cache
from itertools import pairwise

from clothwright.curves import (
    Cubic,
    Line,
    Pair,
    Path,
    Point,
    Segment,
    Vector,
)

CHORD = 0.02
"""Chords stray at most this far from the outline: a fifth of the finest mark that a
cutter draws."""


def chords(path: Path) -> list[Pair]:
    """The outline as points, first and last the same place."""
    pts = path.chords(CHORD)
    if len(pts) > 1 and math.dist(pts[0], pts[-1]) < 1e-5:
        pts[-1] = pts[0]
    return pts


def crosses_itself(outline: Path, stray: float = CHORD) -> Pair | None:
    """A place where a closed outline crosses or touches itself, else None. Curves are
    looked at as chords that stray at most so far from them, cm.

    Many outlines go round their middle once, and do not. Of the others most neighbours
    turn away from each other at their joint. Of those that are none, sorted along the
    longer side of the outline, the boxes of few overlap, and most of these lie on two
    sides of a line: the chords of what is left are compared.
    """
    if _goes_round(outline):
        return None
    segments = outline.segments
    n = len(segments)
    doubtful: list[tuple[int, int]] = []
    for i, s in enumerate(segments):
        if n > 1 and not _turn_away(segments[i - 1], s):
            doubtful.append((i - 1, i))
        if isinstance(s, Cubic) and s.least_radius <= 0.0:  # else it runs on
            place = _meets_itself(s, stray, closed=n == 1)
            if place is not None:
                return place
    left, top, right, bottom = outline.box
    wide = right - left >= bottom - top
    spans: list[tuple[float, float, int, float, float]] = []
    for i, s in enumerate(segments):
        left, top, right, bottom = s.box
        spans.append(
            (left, right, i, top, bottom) if wide else (top, bottom, i, left, right)
        )
    spans.sort()
    beside = (1, -1, n - 1, 1 - n)
    for k in range(n):
        _, end, i, low, high = spans[k]
        for m in range(k + 1, n):
            start, _, j, c, d = spans[m]
            if start > end:
                break
            if c > high or d < low or j - i in beside:
                continue
            one, other = segments[i], segments[j]
            if not (_beside(one, other) or _beside(other, one)):
                doubtful.append((min(i, j), max(i, j)))
    drawn: dict[int, list[Pair]] = {}
    for i, j in doubtful:
        for k in (i, j):
            if k not in drawn:
                drawn[k] = _ends(segments[k], stray)
        place = _meet(segments, i, j, drawn)
        if place is not None:
            return place
    return None


def _goes_round(outline: Path) -> bool:
    """True when an outline goes round the middle of its box clockwise once and never
    turns back: seen from there it lies at one place in each direction, and so do its
    chords. The points that hold a curve go round so as well, within half a turn."""
    left, top, right, bottom = outline.box
    x, y = (left + right) / 2, (top + bottom) / 2
    rounds = 0
    for s in outline.segments:
        if isinstance(s, Cubic):
            ax, ay, bx, by, cx, cy, dx, dy = s.xy
            ax, ay, bx, by = ax - x, ay - y, bx - x, by - y
            cx, cy, dx, dy = cx - x, cy - y, dx - x, dy - y
            if not (
                ax * by > ay * bx
                and bx * cy > by * cx
                and cx * dy > cy * dx
                and ax * cy > ay * cx
            ):
                return False
        else:
            (ax, ay), (dx, dy) = s.start, s.end
            ax, ay, dx, dy = ax - x, ay - y, dx - x, dy - y
        if not ax * dy > ay * dx:
            return False
        rounds += ay < 0.0 <= dy  # past the direction to the right
    return rounds == 1


def _meets_itself(curve: Cubic, stray: float, *, closed: bool) -> Pair | None:
    """Where chords of a curve touch that are not neighbours, the first and the last
    where it is closed."""
    chords = list(pairwise(_ends(curve, stray)))
    last = len(chords) - 1
    for i, (a, b) in enumerate(chords):
        for c, d in chords[i + 2 : last if closed and i == 0 else None]:
            if _touch(a, b, c, d):
                return c
    return None


def _meet(
    segments: Sequence[Segment], i: int, j: int, drawn: Mapping[int, Sequence[Pair]]
) -> Pair | None:
    """Where chords of two segments touch, of which the ends are given; of neighbours,
    not those beside the joint."""
    one, other = segments[i], segments[j]
    follows, leads = j - i == 1, (j + 1 - i) % len(segments) == 0
    theirs = _chords(drawn[j], one.box)
    for a, b in _chords(drawn[i], other.box):
        for c, d in theirs:
            at_joint = (follows and b == one.end and c == other.start) or (
                leads and a == one.start and d == other.end
            )
            if not at_joint and _touch(a, b, c, d):
                return c
    return None


def _ends(s: Segment, stray: float) -> list[Pair]:
    """The ends of chords that stray at most so far from a segment, cm."""
    return [s.start, *(s.evenly(s.steps(stray)) if isinstance(s, Cubic) else [s.end])]


def _chords(
    ends: Sequence[Pair], near: tuple[float, float, float, float]
) -> list[tuple[Pair, Pair]]:
    """The chords between these ends that reach into a box."""
    left, top, right, bottom = near
    return [
        (p, q)
        for p, q in pairwise(ends)
        if (p[0] >= left or q[0] >= left)
        and (p[0] <= right or q[0] <= right)
        and (p[1] >= top or q[1] >= top)
        and (p[1] <= bottom or q[1] <= bottom)
    ]


def _turn_away(a: Segment, b: Segment) -> bool:
    """True when nothing of the first segment reaches ahead, nor of the second back,
    over a line through the joint at which this follows that: so they meet nowhere
    else. Two lines do not: one that turns straight back is another check's."""
    if isinstance(a, Cubic):
        ax, ay, px, py, qx, qy, x, y = a.xy
    else:
        if isinstance(b, Line):
            return True
        (ax, ay), (x, y) = a.start, a.end
        px, py, qx, qy = ax, ay, ax, ay
    if isinstance(b, Cubic):
        _, _, rx, ry, sx, sy, bx, by = b.xy
    else:
        bx, by = b.end
        rx, ry, sx, sy = bx, by, bx, by
    ux, uy = bx - ax, by - ay
    for again in (False, True):
        if again:
            ux, uy = _halving(ax - x, ay - y, bx - x, by - y)
        level = ux * x + uy * y
        if (
            ux * ax + uy * ay < level < ux * bx + uy * by
            and ux * px + uy * py <= level
            and ux * qx + uy * qy <= level
            and ux * rx + uy * ry >= level
            and ux * sx + uy * sy >= level
        ):
            return True
    return False


def _halving(ax: float, ay: float, bx: float, by: float) -> Pair:
    """The way from a first direction to a second, both from one place: square to what
    halves their angle. No way where one of them has no length."""
    a, b = math.hypot(ax, ay), math.hypot(bx, by)
    return (bx / b - ax / a, by / b - ay / a) if a > 0 and b > 0 else (0.0, 0.0)


def _beside(a: Segment, b: Segment) -> bool:
    """True when all of the second segment lies on one side of the strip along the
    first one's chord that holds that."""
    (x, y), (ex, ey) = a.start, a.end
    ux, uy = ex - x, ey - y
    least, most = a.strip if isinstance(a, Cubic) else (0.0, 0.0)
    off = [ux * (py - y) - uy * (px - x) for px, py in b.points]
    return min(off) > most or max(off) < least


def _side(a: Pair, b: Pair, p: Pair) -> float:
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


def _touch(a: Pair, b: Pair, c: Pair, d: Pair) -> bool:
    """True when two chords have a point in common."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = a, b, c, d
    if (
        (ax < cx and ax < dx and bx < cx and bx < dx)
        or (ax > cx and ax > dx and bx > cx and bx > dx)
        or (ay < cy and ay < dy and by < cy and by < dy)
        or (ay > cy and ay > dy and by > cy and by > dy)
    ):
        return False
    return (
        _side(a, b, c) * _side(a, b, d) <= 0.0 and _side(c, d, a) * _side(c, d, b) <= 0
    )


def holds(points: Sequence[Pair], p: Point) -> bool:
    """True when `p` lies inside a closed outline of points (even-odd rule)."""
    inside = False
    x, y = p
    x0, y0 = points[-1]
    for x1, y1 in points:
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
        x0, y0 = x1, y1
    return inside


def stretch(points: Sequence[Pair], p: Point, along: Vector) -> float:
    """Length of the line through `p` along a unit direction, as far as it lies inside a
    closed outline of points on both sides of `p`, cm; 0 when `p` lies outside."""
    ahead = behind = math.inf
    crossed = 0
    ux, uy = along
    px, py = p
    side = [ux * (y - py) - uy * (x - px) for x, y in points]
    a, (x0, y0) = side[0], points[0]
    for b, q in zip(side, points, strict=True):
        if (a > 0) != (b > 0):
            t, (x1, y1) = a / (a - b), q
            s = ux * (x0 + t * (x1 - x0) - px) + uy * (y0 + t * (y1 - y0) - py)
            crossed += s > 0
            if s > 0:
                ahead = min(ahead, s)
            else:
                behind = min(behind, -s)
        a, (x0, y0) = b, q
    return ahead + behind if crossed % 2 else 0.0


def box(points: Sequence[Pair]) -> tuple[float, float]:
    """Width and height of an outline of points, cm."""
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return max(xs) - min(xs), max(ys) - min(ys)


def _bend_terms(curve: Cubic) -> tuple[float, ...]:
    """The three legs of the control polygon, and their cross products c01, c02, c12:
    cross(B', B'') / 18 = c01·(1−t)² + c02·t(1−t) + c12·t²."""
    x0, y0, x1, y1, x2, y2, x3, y3 = curve.xy
    ax, ay, bx, by, cx, cy = x1 - x0, y1 - y0, x2 - x1, y2 - y1, x3 - x2, y3 - y2
    c01, c02, c12 = ax * by - ay * bx, ax * cy - ay * cx, bx * cy - by * cx
    return ax, ay, bx, by, cx, cy, c01, c02, c12


def wrong_way(curve: Cubic) -> float:
    """Degrees that a curve turns against its own bend: 0 for a plain curve.

    A cubic changes its bend where the cross product of its first and second
    derivatives is 0, a quadratic in t; between two such places it turns one way.
    """
    d0x, d0y, d1x, d1y, d2x, d2y, c01, c02, c12 = _bend_terms(curve)
    if (c01 > 0 and c02 > 0 and c12 > 0) or (c01 < 0 and c02 < 0 and c12 < 0):
        return 0.0  # the sum of three terms of one sign
    stops = _roots(c01 - c02 + c12, c02 - 2 * c01, c01)
    if not stops:
        return 0.0

    def way(t: float) -> tuple[float, float]:
        s = 1 - t
        a, b, c = s * s, 2 * s * t, t * t
        return a * d0x + b * d1x + c * d2x, a * d0y + b * d1y + c * d2y

    first, last = curve.start_direction, curve.end_direction
    marks = [0.0, *stops, 1.0]
    plus = minus = 0.0
    before: tuple[float, float] = first
    for t0, t1 in zip(marks, marks[1:], strict=False):
        # half way as well, so that no step turns by 180 degrees or more
        for t in ((t0 + t1) / 2, t1):
            now = last if t >= 1.0 else way(t)
            turn = math.atan2(
                before[0] * now[1] - before[1] * now[0],
                before[0] * now[0] + before[1] * now[1],
            )
            plus, minus = plus + max(turn, 0.0), minus + max(-turn, 0.0)
            before = now
    return math.degrees(min(plus, minus))


def _roots(a: float, b: float, c: float) -> list[float]:
    """Real roots of a·t² + b·t + c strictly between 0 and 1, in order."""
    if abs(a) < 1e-12 * (abs(b) + abs(c) + 1e-300):
        found = [-c / b] if b else []
    else:
        disc = b * b - 4 * a * c
        if disc <= 0:
            return []
        q = -(b + math.copysign(math.sqrt(disc), b)) / 2
        found = [q / a, c / q if q else 0.0]
    return sorted(t for t in found if 1e-9 < t < 1 - 1e-9)


@cache
def _middles(steps: int) -> tuple[tuple[float, float, float], ...]:
    """The weights of a quadratic at the middle of each of so many equal steps."""
    ts = [(i + 0.5) / steps for i in range(steps)]
    return tuple(((1 - t) ** 2, 2 * t * (1 - t), t * t) for t in ts)


def tightest(
    path: Path, samples: int = 8, *, within: float = math.inf
) -> tuple[float, float]:
    """Least radii (outward, hollow) of a clockwise outline's curves, cm; infinite
    where it is straight, and perhaps where all radii are over `within`. Read at the
    middle of `samples` equal steps of each curve, since a handle laid on its end leaves
    the bend there without a value.
    """
    most = least = 0.0
    for curve in path.segments:
        if isinstance(curve, Line) or curve.least_radius > within:
            continue
        d0x, d0y, d1x, d1y, d2x, d2y, c01, c02, c12 = _bend_terms(curve)
        for a, b, c in _middles(samples):
            v = math.hypot(a * d0x + b * d1x + c * d2x, a * d0y + b * d1y + c * d2y)
            if v > 1e-9:  # curvature: (18/27) of these over |B'/3|³
                bend = (a * c01 + b / 2 * c02 + c * c12) / (v * v * v)
                if bend > most:
                    most = bend
                elif bend < least:
                    least = bend
    return _radius(2 / 3 * most), _radius(-2 / 3 * least)


def _radius(bend: float) -> float:
    return 1 / bend if bend > 0 else math.inf
