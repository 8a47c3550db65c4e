"""How the allowances of two edges meet at a corner of a piece (truing 8).

Terminology
    extended   both cut lines run on until they meet; beyond 2.5 allowances the corner
               is cut blunt, square to its middle, one allowance from the net corner.
    mirrored   the allowance that is pressed back first ends on the mirror image, in
               its own stitch line, of the other cut line: pressed back, it lies
               exactly under it. A seam is pressed open before another crosses it; a
               hem is turned up on the seams beside it.
    square     the allowance that is pressed first ends at 90° to its stitch line.
    at a fold  the allowance ends on the fold's own line, produced.
"""

from dataclasses import dataclass, replace

from clothwright.curves import (
    CLOSE,
    Line,
    Point,
    Segment,
    Vector,
    cross,
    crossings,
    direction,
    distance,
    dot,
    meet_lines,
    mirror_in,
)
from clothwright.features.roles import Role

REACH = 2.5
"""A corner may run out to this many allowances; beyond, it is cut blunt (truing 8)."""

MIRRORED = (60.0, 120.0)
"""Corners of more or less paper than this, degrees, end square (first garment 18)."""

_NEAR = 1e-3
"""Two ends this near, cm, have met."""


@dataclass(frozen=True)
class Side:
    """One edge as it comes to a corner."""

    line: tuple[Segment, ...]
    """Its cut line, running towards the corner."""

    out: Vector
    """Unit direction in which its stitch line leaves the piece at the corner."""

    width: float
    role: Role

    @property
    def end(self) -> Point:
        """Where its cut line ends."""
        return self.line[-1].end

    @property
    def way(self) -> Vector:
        """Unit direction in which its cut line ends; what a ray has cut off to next to
        nothing has none of its own."""
        long = (s for s in reversed(self.line) if distance(s.start, s.end) > CLOSE)
        last = next(long, None)
        return self.out if last is None else last.end_direction

    def run_on(self, reach: float) -> Line:
        """Its cut line run on straight by `reach` cm."""
        return Line(self.end, self.end + self.way * reach)

    def towards(self, ray: Line) -> "tuple[Side, Point] | None":
        """The side with its cut line cut back, or run on straight, to a ray, whichever
        is less, and where they meet; None when they do not."""
        found: list[tuple[float, Side, Point]] = []
        lost = 0.0
        for i in range(len(self.line) - 1, -1, -1):
            seg = self.line[i]
            hits = [(t, s) for t, s in crossings(seg, ray) if t > 1e-9]
            if hits:
                t, s = hits[-1]
                lost += seg.part(t, 1.0).length if t < 1 else 0.0
                line = (*self.line[:i], seg.part(0.0, t))
                found.append((lost, replace(self, line=line), ray.at(s)))
                break
            lost += seg.length
        on = self.run_on(ray.length + distance(ray.start, self.end))
        for t, s in crossings(on, ray):
            line = (*self.line, on.part(0.0, t)) if t > 1e-9 else self.line
            found.append((on.length * t, replace(self, line=line), ray.at(s)))
        if not found:
            return None
        _, side, p = min(found, key=lambda f: f[0])
        return side, p


Met = tuple[Side, list[Segment], Side]
"""Two sides as they end at a corner, and what joins the first to the second."""


def join(a: Side, b: Side, net: Point, paper: float) -> Met:
    """Join two sides at the corner `net` of `paper` degrees, a before b clockwise."""
    if a.role is Role.FOLD:
        return _turned_round(_at_fold(b, a, net, paper))
    if b.role is Role.FOLD:
        return _at_fold(a, b, net, paper)
    if paper > 180.0:
        return _hollow(a, b)
    if a.role.turn != b.role.turn and min(a.width, b.width) > 0:
        low, high = MIRRORED
        pressed = _square if not low <= paper <= high else _mirrored
        first = a.role.turn < b.role.turn
        made = pressed(a, b, net) if first else pressed(b, a, net)
        if made is not None:
            return made if first else _turned_round(made)
    return _extended(a, b, net)


def _turned_round(met: Met) -> Met:
    b, between, a = met
    return a, [s.reversed() for s in reversed(between)], b


def _line(p: Point, q: Point) -> list[Segment]:
    return [Line(p, q)] if distance(p, q) > _NEAR else []


def _hollow(a: Side, b: Side) -> Met:
    """At a corner that points inwards the lines cross, and what lies beyond is cut out
    with all loops; where they cross only near their ends, both are run on."""
    if abs(cross(a.way, b.way)) > 1e-3:
        p = meet_lines(a.end, a.way, b.end, b.way)
        ahead = max(dot(p - a.end, a.way), dot(p - b.end, b.way))
        width = max(a.width, b.width)
        if abs(ahead) < width:
            on = max(ahead, 0.0) + width / 2
            a = replace(a, line=(*a.line, a.run_on(on)))
            b = replace(b, line=(*b.line, b.run_on(on)))
    return a, _line(a.end, b.end), b


def _at_fold(side: Side, fold: Side, net: Point, paper: float) -> Met:
    """Nothing may cross a fold. Where the corner is so sharp that the allowance runs
    out too far, it is cut off square to the fold, one allowance from the corner."""
    out = fold.out
    reach = REACH if paper < 90.0 else 8 * REACH
    ray = Line(net, net + out * (reach * side.width))
    met = side.towards(ray) if side.width else None
    if met is None:
        m = net + out * side.width
        across = _square_to(out, side, net)
        met = side.towards(Line(m, m + across * (1.5 * side.width)))
        if met is None:
            return side, _line(side.end, net), fold
        side, p = met
        return side, [*_line(p, m), *_line(m, net)], fold
    side, m = met
    return side, _line(m, net), fold


def _extended(a: Side, b: Side, net: Point) -> Met:
    ea, eb = a.end, b.end
    if distance(ea, eb) < _NEAR:
        return a, [], b
    if abs(cross(a.out, b.out)) < 1e-6:
        return a, _line(ea, eb), b
    width = max(a.width, b.width)
    p = meet_lines(ea, a.out, eb, b.out)
    if dot(p - ea, a.out) < -1e-6 or dot(p - eb, b.out) < -1e-6:
        return a, _line(ea, eb), b
    if distance(p, net) <= REACH * width:
        return a, [*_line(ea, p), *_line(p, eb)], b
    axis = direction(net, p)
    mid, across = net + axis * width, Vector(-axis[1], axis[0])
    c, d = meet_lines(ea, a.out, mid, across), meet_lines(eb, b.out, mid, across)
    return a, [*_line(ea, c), *_line(c, d), *_line(d, eb)], b


def _pressed_to(s: Side, x: Side, net: Point) -> tuple[Side, Point] | None:
    """X's cut line as far as S's stitch line, produced, and where they meet."""
    reach = REACH * max(s.width, x.width)
    return x.towards(Line(net, net + s.out * reach))


def _mirrored(s: Side, x: Side, net: Point) -> Met | None:
    """The allowance of S ends on the mirror image of X's cut line."""
    met = _pressed_to(s, x, net)
    if met is None:
        return None
    x, _ = met
    over = mirror_in(net, net + s.out)
    image: list[Segment] = []
    left = 2 * REACH * max(s.width, x.width)
    for k in reversed(x.line):
        if left > 0:
            part = k.part(k.parameter_at_length(k.length - left), 1.0)
            image.append(part.reversed().moved(over))
            left -= k.length
    return _ended(s, x, image, net)


def _square(s: Side, x: Side, net: Point) -> Met | None:
    """The allowance of S ends square to its stitch line."""
    met = _pressed_to(s, x, net)
    if met is None:
        return None
    x, m = met
    n = _square_to(s.out, s, net)
    return _ended(s, x, [Line(m, m + n * s.width)], net)


def _square_to(out: Vector, side: Side, net: Point) -> Vector:
    """Unit direction square to `out`, towards the end of a side's cut line."""
    n = Vector(-out[1], out[0])
    return n if dot(n, side.end - net) > 0 else n * -1.0


def _ended(s: Side, x: Side, wall: list[Segment], net: Point) -> Met | None:
    """S's cut line, cut back or run on to a line that leaves X's cut line on S's
    stitch line; that line, the wall, is followed to where they meet."""
    reach = 2 * REACH * max(s.width, x.width)
    last = wall[-1]
    wall = [*wall, Line(last.end, last.end + last.end_direction * reach)]
    line = [*s.line, s.run_on(reach)]
    for j, w in enumerate(wall):
        hits = [(u, i, t) for i, k in enumerate(line) for t, u in crossings(k, w)]
        if not hits:
            continue
        u, i, t = min(hits)
        q = w.at(u)
        kept = [*line[:i], *([line[i].part(0.0, t)] if t > 1e-9 else [])]
        way = [*wall[:j], *([w.part(0.0, u)] if u > 1e-9 else [])]
        if not kept or distance(q, net) > reach:
            return None
        back = [k.reversed() for k in reversed(way)]
        return replace(s, line=tuple(kept)), back, x
    return None
