"""The cut line: every edge set off by its allowance, corners by how they are sewn.

Each edge is set off by itself, the corners are joined (see `corners`), and where the
line then runs over itself in a hollow of the piece, the loop is cut out (truing 8:
"arcs clean, loops removed").
"""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import pairwise

from clothwright.curves import (
    Line,
    Pair,
    Path,
    Point,
    Segment,
    cross,
    crossings,
    distance,
    dot,
    left_normal,
    meet_lines,
    without_loops,
)
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.corners import REACH, Side, join
from clothwright.paper import Piece
from clothwright.truing.outline import crosses_itself, holds, tightest

_EVEN = 0.5
"""A line that turns by less than this many degrees inside an edge has no corner."""

_HAIR = 1e-4
"""Parts of the cut line shorter than this, cm, are left out."""

_CRUMB = 0.01
"""Parallels of an edge whose ends lie nearer than this, cm, are joined at one point."""

_BACK = 0.02
"""So are those whose second begins no further back than this, cm: the line back between
them would be a loop too small to cut out."""

_FINE = 0.001
"""Chords with which the finished line is asked whether it crosses itself, cm."""

_STEPS = 64
"""Places of a curve that are asked for a hollow too tight."""

_LEAST = 0.05
"""Where less than this share of its length would be left, a curve is too tight."""

_BEYOND = 0.01
"""A cut line that runs over the fold by no more, cm, is left."""

_FAR = 300.0
"""The line of a fold is run on so far both ways, cm."""

WITHIN = 0.03
"""An allowance is as wide as it says within this, cm (truing 8)."""

BRIDGED = 0.1
"""An edge between others' allowances has its own while it is off by no more, cm. One
that is shorter than its allowance, as the cap of a narrow dart, is a jog between them:
it may have more by its own length."""


@dataclass(frozen=True)
class CutLine:
    """The cut outline of a piece, clockwise, and each edge's own allowance."""

    outline: Path
    widths: dict[str, float]
    narrow: tuple[str, ...] = ()
    """Edges that lie so deep in a hollow that the cut line does not leave them their
    allowance."""

    wide: tuple[str, ...] = ()
    """Edges hollowed tighter than their allowance: it is wider in the hollow."""

    crossing: Pair | None = None
    """A place where the cut line crosses itself all the same."""

    tapered: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    """What an edge's allowance begins and ends with, where it changes along it."""


def cut_line(piece: Piece, allowances: Allowances) -> CutLine:
    """Set every edge of a piece off, join the corners, cut the loops out."""
    edges = piece.edges
    widths = {e.name: allowances.of(piece, e.name) for e in edges}
    ends = [allowances.ends(piece, e.name) for e in edges]
    lines = [_set_off(e.path, *w) for e, w in zip(edges, ends, strict=True)]
    between: list[list[Segment]] = []
    for i, a in enumerate(edges):
        j = (i + 1) % len(edges)
        b = edges[j]
        before = Side(
            tuple(lines[i]),
            a.path.end_direction,
            ends[i][1],
            allowances.role(piece, a.name),
        )
        after = Side(
            _turned_round(lines[j]),
            b.path.start_direction * -1.0,
            ends[j][0],
            allowances.role(piece, b.name),
        )
        paper = piece.interior_angle(a.name)
        before, joint, after = join(before, after, a.path.end, paper)
        between.append(joint)
        lines[i], lines[j] = before.line, _turned_round(after.line)
    ring: list[Segment] = []
    owners: list[str] = []
    for e, line, joint in zip(edges, lines, between, strict=True):
        for owner, way in ((e.name, line), ("", joint)):
            parts = [s for s in way if s.length > _HAIR]
            ring += parts
            owners += [owner] * len(parts)
    whole = _touching(ring)
    outline = Path(tuple(whole))
    doubtful = {e.name for e in edges if _tight(e.path, 2 * widths[e.name])}
    has = {e.name for e in edges}
    inwards = any(piece.interior_angle(e.name) > 180.0 for e in edges)
    crossing = crosses_itself(outline, _FINE)
    if doubtful or inwards or crossing is not None:
        left = without_loops(whole)
        outline = Path(tuple(_touching([s for _, s in left])))
        kept = {n for n, s in left if s is whole[n]}
        doubtful |= {name for n, name in enumerate(owners) if n not in kept}
        has = {owners[n] for n, _ in left}
        crossing = crosses_itself(outline, _FINE)
    points = outline.chords(_FINE)
    narrow, wide = [], []
    reach = REACH * max(widths.values())
    for e, (first, last) in zip(edges, ends, strict=True):
        if e.name not in doubtful or widths[e.name] == 0:
            continue
        everywhere = _more(e.path, outline, first, last)
        more = [m for m, corner in everywhere if corner >= reach]
        inside = all(holds(points, p) for p in _every(e.path, 0.5))
        off, most = [m for m, _ in everywhere], BRIDGED
        if e.length < min(first, last):  # a jog: square to a side of it lies no seam
            off = [outline.nearest(p)[1] - first for p in _every(e.path, e.length / 4)]
            most = max(BRIDGED, e.length)
        bridged = e.name not in has and (min(off) < -BRIDGED or max(off) > most)
        if bridged or not inside or any(m < -WITHIN for m in more):
            narrow.append(e.name)
        elif any(m > WITHIN for m in more):
            wide.append(e.name)
    tapered = {e.name: w for e, w in zip(edges, ends, strict=True) if w[0] != w[1]}
    outline = _up_to_fold(piece, outline)
    return CutLine(outline, widths, tuple(narrow), tuple(wide), crossing, tapered)


def _up_to_fold(piece: Piece, outline: Path) -> Path:
    """The outline without what would lie beyond the fold, as inside a slit on it:
    there the cloth itself is folded. Of its runs on this side the longest is kept; a
    bit of another, where a slit is wider than its allowances, goes with the slit."""
    if piece.fold is None:
        return outline
    at, way = piece.fold.path.start, piece.fold.path.start_direction

    def inside(p: Point) -> float:
        return cross(way, p - at)

    if min(inside(p) for p in outline.flatten(_FINE)) > -_BEYOND:
        return outline
    fold = Line(at - way * _FAR, at + way * _FAR)
    runs: list[list[Segment]] = [[]]
    for seg in outline.segments:
        stops = sorted({0.0, *(t for t, _ in crossings(seg, fold)), 1.0})
        for a, b in pairwise(stops):
            part = seg.part(a, b)
            if max(inside(part.at(t)) for t in (0.25, 0.5, 0.75)) > _HAIR:
                runs[-1].append(part)
            elif runs[-1]:
                runs.append([])
    if len(runs) > 1:  # the outline's own start divides no run
        runs[0] = runs.pop() + runs[0]
    kept = max(runs, key=lambda run: sum(s.length for s in run))
    return Path(tuple(_touching([*kept, *_line(kept[-1].end, kept[0].start)])))


def _every(path: Path, step: float) -> Iterator[Point]:
    """Points inside a path, at most `step` cm apart."""
    n = math.ceil(path.length / step) + 1
    return (path.at_length(path.length * k / n) for k in range(1, n))


def _more(
    path: Path, outline: Path, first: float, last: float
) -> list[tuple[float, float]]:
    """What the cut line leaves square to an edge more than its allowance, which goes
    from `first` to `last`, each half centimetre (truing 8) and in each curve, however
    short, and how far along the nearest corner is; infinite where it leaves twice the
    allowance and more."""
    corners, at = [0.0, path.length], 0.0
    for a, b in pairwise(path.segments):
        at += a.length
        if abs(_bend(a, b)) > _EVEN:
            corners.append(at)
    out = []
    steps = 2 * math.ceil(path.length)
    asked = [path.length * k / steps for k in range(1, steps)]
    for s in (*asked, *_in_curves(path)):
        width = first + (last - first) * s / path.length
        p, u = path.at_length(s), path.direction_at_length(s)
        ray = Line(p, p + left_normal(u) * (2 * width))
        hits = [t for seg in outline.segments for t, _ in crossings(ray, seg)]
        more = (min(hits, default=math.inf) * 2 - 1) * width
        out.append((more, min(abs(s - c) for c in corners)))
    return out


def _in_curves(path: Path) -> Iterator[float]:
    """Lengths along a path at which its curves are asked, each at its quarters: the arc
    of a rounded corner may lie between two places half a centimetre apart."""
    at = 0.0
    for seg in path.segments:
        if not isinstance(seg, Line):
            yield from (at + seg.length * k / 4 for k in (1, 2, 3))
        at += seg.length


def _bend(a: Segment, b: Segment) -> float:
    """Degrees by which the way turns from one segment into the next, clockwise."""
    u, v = a.end_direction, b.start_direction
    return math.degrees(math.atan2(cross(u, v), dot(u, v)))


def _touching(parts: list[Segment]) -> list[Segment]:
    """A closed ring of segments that nearly touch, each begun where the last ends."""
    return [
        s if s.start == before.end else Path((s,)).pinned(before.end, s.end).segments[0]
        for before, s in zip([parts[-1], *parts], parts, strict=False)
    ]


def _turned_round(line: Iterable[Segment]) -> tuple[Segment, ...]:
    return tuple(s.reversed() for s in reversed(tuple(line)))


def _set_off(path: Path, width: float, last: float) -> tuple[Segment, ...]:
    """The parallel of an edge, its own corners joined; of a straight edge whose
    allowance grows or shrinks to `last`, the line between both ends."""
    if last != width:
        square = left_normal(path.start_direction)
        return (Line(path.start + square * width, path.end + square * last),)
    if width == 0:
        return path.segments
    out: list[Segment] = []
    before: Segment | None = None
    for seg in path.segments:
        new = _parallel(seg, width)
        if not new:  # a crumb of a hollow that comes to nothing
            continue
        if before is not None:
            out += _joint(before, seg, out[-1].end, new[0].start, width)
        out += new
        before = seg
    return tuple(out) or path.segments


def _tight(path: Path, width: float) -> bool:
    """True when an edge has a hollow, in a curve or a corner, tighter than `width`."""
    cornered = any(_bend(a, b) < -_EVEN for a, b in pairwise(path.segments))
    return cornered or tightest(path)[1] < width


def _parallel(seg: Segment, width: float) -> list[Segment]:
    """The parallel of one segment. Where its hollow is tighter than the width, its two
    ends are bridged; they cross each other, and what lies beyond is a loop."""
    start = seg.start + left_normal(seg.start_direction) * width
    end = seg.end + left_normal(seg.end_direction) * width
    if isinstance(seg, Line):
        return [Line(start, end)]
    try:
        return list(seg.parallel(width))
    except ValueError:
        ts = [i / _STEPS for i in range(_STEPS + 1)]
        tight = [t for t in ts if 1 + seg.curvature(t) * width <= _LEAST]
    low, high = tight[0] - 1 / _STEPS, tight[-1] + 1 / _STEPS
    head = list(seg.part(0.0, low).parallel(width)) if low > 0 else []
    tail = list(seg.part(high, 1.0).parallel(width)) if high < 1 else []
    if head and tail:
        return [*head, *_line(head[-1].end, tail[0].start), *tail]
    return head or tail or _line(start, end)


def _line(p: Point, q: Point) -> list[Segment]:
    return [Line(p, q)] if distance(p, q) > _HAIR else []


def _joint(a: Segment, b: Segment, p: Point, q: Point, width: float) -> list[Segment]:
    """What joins two parallels, from p to q, at a corner inside an edge; nothing where
    they lie so near that the second may begin where the first ends."""
    if distance(p, q) < (_BACK if dot(q - p, a.end_direction) < 0 else _CRUMB):
        return []
    # the paper turns a convex corner: mitre, but for an edge that doubles back
    if _EVEN < _bend(a, b) < 180 - _EVEN:
        m = meet_lines(p, a.end_direction, q, b.start_direction)
        if distance(m, a.end) <= REACH * width:
            return [*_line(p, m), *_line(m, q)]
    return _line(p, q)
