"""The cut line: every edge set off by its allowance, corners by how they are sewn.

Corner treatments (truing 8): *extended*, both cut lines run on until they meet;
*mirrored at a seam pressed open*, the allowance of the seam sewn first ends on the
mirror image of the other cut line, so that it lies exactly under it when pressed open;
*square*, the allowance ends at 90° to the seam sewn first. A fold has no allowance.
"""

import math
from dataclasses import dataclass

from clothwright.curves import (
    CLOSE,
    Cubic,
    Line,
    Path,
    Point,
    Segment,
    Vector,
    cross,
    crossings,
    distance,
    dot,
    meet_lines,
    mirror_in,
)
from clothwright.finishing.allowances import Allowances, Role, role_of
from clothwright.paper import Piece

REACH = 2.5
"""A corner may run out to this many allowances; beyond, it is cut blunt (truing 8)."""


@dataclass(frozen=True)
class CutLine:
    """The cut outline of a piece, clockwise, and each edge's own allowance."""

    outline: Path
    widths: dict[str, float]
    too_tight: tuple[str, ...] = ()
    """Edges whose hollow is tighter than their allowance; they get none."""


def cut_line(piece: Piece, allowances: Allowances) -> CutLine:
    """Set every edge of a piece off and join the corners."""
    widths = {e.name: allowances.of(piece, e.name) for e in piece.edges}
    lines: list[list[Segment]] = []
    too_tight: list[str] = []
    for e in piece.edges:
        try:
            lines.append(_set_off(e.path, widths[e.name]))
        except ValueError:
            too_tight.append(e.name)
            widths[e.name] = 0.0
            lines.append(list(e.path.segments))
    n = len(lines)
    corners: list[list[Segment]] = []
    for i in range(n):
        j = (i + 1) % n
        a, b = piece.edges[i], piece.edges[j]
        ra, rb = role_of(piece, a.name), role_of(piece, b.name)
        corners.append(
            _corner(
                lines[i],
                lines[j],
                a.path,
                b.path,
                widths[a.name],
                widths[b.name],
                ra,
                rb,
            )
        )
    parts: list[Segment] = []
    for i in range(n):
        parts += lines[i] + corners[i]
    return CutLine(_joined(parts), widths, tuple(too_tight))


def _joined(parts: list[Segment]) -> Path:
    """Segments made to touch, hair gaps bridged, the last laid on the first."""
    out: list[Segment] = []
    for s in parts:
        if s.length < 1e-4:
            continue
        if out and distance(out[-1].end, s.start) > CLOSE:
            gap = Line(out[-1].end, s.start)
            if gap.length > 1e-3:
                out.append(gap)
            else:
                s = Path((s,)).pinned(out[-1].end, s.end).segments[0]
        out.append(s)
    if distance(out[-1].end, out[0].start) > 1e-3:
        out.append(Line(out[-1].end, out[0].start))
    last = Path((out[-1],)).pinned(out[-1].start, out[0].start).segments[0]
    return Path((*out[:-1], last))


def _set_off(path: Path, width: float) -> list[Segment]:
    """The parallel of an edge, corners inside the edge joined."""
    if width == 0:
        return list(path.segments)
    out: list[Segment] = []
    before: Segment | None = None
    for seg in path.segments:
        new = _parallel(seg, width)
        if before is not None:
            out, new = _join_inside(out, new, before, seg, width)
        out += new
        before = seg
    return out


def _parallel(seg: Segment, width: float) -> list[Segment]:
    """The parallel of one segment; where its hollow is tighter than the allowance, the
    cut lines of both ends run on until they cross, as scissors would."""
    try:
        return list(seg.parallel(width))
    except ValueError:
        if not isinstance(seg, Cubic):
            raise
    n = 64
    tight = [i / n for i in range(n + 1) if 1 + seg.curvature(i / n) * width <= 0.1]
    low, high = tight[0] - 1 / n, tight[-1] + 1 / n
    if low <= 0 and high >= 1:
        raise ValueError(
            f"an allowance of {width:g} cm is wider than the curve's hollow"
        )
    if high >= 1:  # tight at its very end: the corner there is joined later
        return list(seg.part(0.0, low).parallel(width))
    if low <= 0:
        return list(seg.part(high, 1.0).parallel(width))
    a = list(seg.part(0.0, low).parallel(width))
    b = list(seg.part(high, 1.0).parallel(width))
    crossed = _trim(a, b)
    if crossed is None:
        return [*a, Line(a[-1].end, b[0].start), *b]
    return [*crossed[0], *crossed[1]]


def _join_inside(
    out: list[Segment], new: list[Segment], a: Segment, b: Segment, width: float
) -> tuple[list[Segment], list[Segment]]:
    u, v = a.end_direction, b.start_direction
    turn = math.degrees(math.atan2(cross(u, v), dot(u, v)))
    if abs(turn) < 0.5 or distance(out[-1].end, new[0].start) < 1e-3:
        p = new[0].start
        out[-1] = Path((out[-1],)).pinned(out[-1].start, p).segments[0]
        return out, new
    if turn > 0:  # the paper turns a convex corner: mitre
        p = meet_lines(out[-1].end, u, new[0].start, v)
        if distance(p, a.end) > REACH * width:
            return [*out, Line(out[-1].end, new[0].start)], new
        return [*out, Line(out[-1].end, p), Line(p, new[0].start)], new
    trimmed = _trim(out, new)
    return trimmed or ([*out, Line(out[-1].end, new[0].start)], new)


def _trim(
    a: list[Segment], b: list[Segment]
) -> tuple[list[Segment], list[Segment]] | None:
    """Two lines cut back to where they cross, nearest to the corner; None if never."""
    for i in range(len(a) - 1, max(-1, len(a) - 4), -1):
        for j in range(min(3, len(b))):
            hits = crossings(a[i], b[j])
            if hits:
                t, s = hits[-1]
                head = [*a[:i], *([a[i].part(0.0, t)] if t > 1e-9 else [])]
                tail = [*([b[j].part(s, 1.0)] if s < 1 - 1e-9 else []), *b[j + 1 :]]
                if head and tail:
                    return head, tail
    return None


def _corner(
    a: list[Segment],
    b: list[Segment],
    net_a: Path,
    net_b: Path,
    wa: float,
    wb: float,
    ra: Role,
    rb: Role,
) -> list[Segment]:
    """Join the cut lines of two edges; changes both lists in place, returns what lies
    between them."""
    u, v = net_a.end_direction, net_b.start_direction
    turn = math.degrees(math.atan2(cross(u, v), dot(u, v)))
    interior = 180.0 - turn
    if Role.FOLD in (ra, rb):
        ended = _at_fold(a, b, u, v, net_a.end, max(wa, wb), rb is Role.FOLD)
        if ended is not None:
            return ended
    if Role.FOLD in (ra, rb) or ra.turn == rb.turn or min(wa, wb) < 1e-9:
        return _extended(a, b, u, v, net_a.end, max(wa, wb))
    # the seam sewn first is S, the one that crosses it X
    first_is_a = ra.turn < rb.turn
    square = not 60.0 <= interior <= 120.0
    made = _crossed(a, b, net_a, net_b, wa, wb, first_is_a, square)
    if made is not None:
        return made
    return _extended(a, b, u, v, net_a.end, max(wa, wb))


def _at_fold(
    a: list[Segment],
    b: list[Segment],
    u: Vector,
    v: Vector,
    net: Point,
    width: float,
    fold_after: bool,
) -> list[Segment] | None:
    """End the allowance beside a fold on the fold's own line, produced: nothing may
    cross a fold. None when the two do not meet there."""
    out = v * -1.0 if fold_after else u
    ray = Line(net, net + out * (REACH * width + 1.0))
    towards = a if fold_after else [_back(s) for s in reversed(b)]
    met = _meet_end(towards, ray)
    if met is None:
        return None
    line, m = met
    if fold_after:
        a[:] = line
        return [Line(m, net)]
    b[:] = [_back(s) for s in reversed(line)]
    return [Line(net, m)]


def _extended(
    a: list[Segment], b: list[Segment], u: Vector, v: Vector, net: Point, width: float
) -> list[Segment]:
    trimmed = _trim(a, b)
    if trimmed is not None:
        a[:], b[:] = trimmed
        return []
    ea, eb = a[-1].end, b[0].start
    if distance(ea, eb) < 1e-3:
        return []
    if abs(cross(u, v)) > 1e-6:
        p = meet_lines(ea, u, eb, v)
        forward = dot(p - ea, u) >= -1e-6 and dot(eb - p, v) >= -1e-6
        if forward and distance(p, net) <= REACH * max(width, 0.5):
            return [Line(ea, p), Line(p, eb)]
        if forward:  # too sharp: cut blunt, square to the corner's middle
            out = REACH * max(width, 0.5)
            axis = p - net
            k = out / math.hypot(*axis)
            mid = net + axis * k
            across = Vector(-axis[1], axis[0])
            c, d = meet_lines(ea, u, mid, across), meet_lines(eb, v, mid, across)
            return [Line(ea, c), Line(c, d), Line(d, eb)]
    return [Line(ea, eb)]


def _crossed(
    a: list[Segment],
    b: list[Segment],
    net_a: Path,
    net_b: Path,
    wa: float,
    wb: float,
    first_is_a: bool,
    square: bool,
) -> list[Segment] | None:
    """The corner of a seam sewn first (S) and one that crosses it (X).

    M is where X's cut line meets S's stitch line produced; from M the allowance of S
    ends on the mirror image of X's cut line, or square to S.
    """
    corner = net_a.end
    if first_is_a:
        along = net_a.end_direction  # S runs out of the piece this way
        x_line, s_line = [_back(s) for s in reversed(b)], a
        ws, wx = wa, wb
    else:
        along = net_b.start_direction * -1.0
        x_line, s_line = a, [_back(s) for s in reversed(b)]
        ws, wx = wb, wa
    # x_line now runs towards the corner, s_line too
    out = Line(corner - along * 0.5, corner + along * (REACH * max(ws, wx) + 1.0))
    met = _meet_end(x_line, out)
    if met is None:
        return None
    x_new, m = met
    if dot(m - corner, along) < -0.3 or distance(m, corner) > REACH * max(ws, wx):
        return None
    ended = None if square else _on_image(s_line, x_new, corner, along)
    if ended is None:
        normal = _outside(s_line, corner, along)
        found = _meet_end(s_line, Line(m, m + normal * (3 * ws + 1.0)))
        if found is None:
            return None
        ended = found[0], [Line(m, found[1])]
    s_new, wall = ended
    if distance(wall[-1].end, corner) > 2 * REACH * max(ws, wx):
        return None
    if first_is_a:
        a[:] = s_new
        b[:] = [_back(s) for s in reversed(x_new)]
        return [_back(s) for s in reversed(wall)]
    a[:] = x_new
    b[:] = [_back(s) for s in reversed(s_new)]
    return wall


def _on_image(
    s_line: list[Segment], x_line: list[Segment], corner: Point, along: Vector
) -> tuple[list[Segment], list[Segment]] | None:
    """S's cut line, cut back or run on to the mirror image of X's in the stitch line of
    S, and the image from that line to where they meet."""
    over = mirror_in(corner, corner + along)
    image = [_back(s).moved(over) for s in reversed(x_line) if s.length > 1e-6]
    if not image:
        return None
    line = [*s_line, _run_on(s_line[-1])]
    for j, w in enumerate([*image, _run_on(image[-1])]):
        for i in range(len(line) - 1, -1, -1):
            hits = crossings(line[i], w)
            if hits:
                t, s = hits[-1]
                kept = [*line[:i], *([line[i].part(0.0, t)] if t > 1e-9 else [])]
                wall = [*image[:j], *([w.part(0.0, s)] if s > 1e-9 else [])]
                return (kept, wall) if kept and wall else None
    return None


def _run_on(s: Segment) -> Line:
    return Line(s.end, s.end + s.end_direction * 12.0)


def _back(s: Segment) -> Segment:
    return s.reversed()


def _outside(s_line: list[Segment], corner: Point, along: Vector) -> Vector:
    """Unit normal of the seam towards its allowance."""
    n = Vector(-along[1], along[0])
    return n if dot(s_line[-1].end - corner, n) > 0 else n * -1.0


def _meet_end(line: list[Segment], ray: Line) -> tuple[list[Segment], Point] | None:
    """A line that runs towards a corner, cut back or produced to meet a ray."""
    for i in range(len(line) - 1, max(-1, len(line) - 4), -1):
        hits = crossings(line[i], ray)
        if hits:
            t, s = hits[-1]
            if t < 1e-9:
                continue
            return [*line[:i], line[i].part(0.0, t)], ray.at(s)
    end, u = line[-1].end, line[-1].end_direction
    w = ray.end - ray.start
    if abs(cross(u, w)) < 1e-9:
        return None
    p = meet_lines(end, u, ray.start, w)
    along = dot(p - ray.start, w) / dot(w, w)
    if dot(p - end, u) < -1e-6 or not -1e-6 <= along <= 1 + 1e-6:
        return None
    return [*line, Line(end, p)], p
