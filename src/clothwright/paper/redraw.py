"""Redraw: give a run of edges new lines; its ends slide along the neighbours."""

from collections.abc import Sequence

from clothwright.curves import CLOSE, Line, Path, Point, ahead, distance, dot
from clothwright.paper.piece import Edge, PaperError
from clothwright.paper.seam import Run
from clothwright.paper.sheet import Sheet

OFF_LINE = 0.01
"""A new end may lie this far off its neighbour's old line, cm (it is then laid on)."""


def redraw(sheet: Sheet, piece: str, old: Sequence[str], new: Sequence[Edge]) -> Sheet:
    """Put new edges in place of a run of neighbouring edges.

    `old` names the run clockwise; `new` are its new edges clockwise. The first start
    and the last end must lie on the neighbours' lines (produced straight when they
    reach beyond): the neighbours are cut back or produced, never bent. A seam that
    walked over an edge walks over the new edge of the same name; where one edge takes
    the place of several, over that one.

    Raises PaperError when `old` is no run, or an end leaves its neighbour's line.
    """
    p = sheet.piece(piece)
    edges, n = p.rolled_to(old[0]), len(old)
    run = [e.name for e in edges[:n]]
    if run != list(old):
        raise PaperError(f"{piece}: {', '.join(old)} do not follow each other")
    loop = list(edges[n:])
    before, after = loop[-1], loop[0]
    if len(loop) > 1:
        before = before.along(_end_at(before.path, new[0].path.start, p.code))
        after = after.along(_start_at(after.path, new[-1].path.end, p.code))
    else:  # one neighbour holds both ends
        path = _end_at(before.path, new[0].path.start, p.code)
        before = before.along(_start_at(path, new[-1].path.end, p.code))
        after = before
    loop[0], loop[-1] = (before, before) if len(loop) == 1 else (after, before)
    drawn = list(new)
    first = drawn[0].path
    drawn[0] = drawn[0].along(first.pinned(before.path.end, first.end))
    last = drawn[-1].path
    drawn[-1] = drawn[-1].along(last.pinned(last.start, after.path.start))
    names = [e.name for e in new]

    def where(r: Run) -> tuple[Run, ...]:
        if r.edge not in run or r.edge in names:
            return (r,)
        if len(names) == 1:
            return (Run(piece, names[0], r.backward),)
        raise PaperError(f"{piece}: the seam along {r.edge} loses its edge")

    out = sheet.put(p.with_edges((*drawn, *loop)))
    if set(run) <= set(names):  # every seam keeps its edges
        return out
    lost = [
        s.code
        for s in sheet.seams
        if len(names) != 1
        and any(
            r.piece == piece and r.edge in run and r.edge not in names for r in s.runs()
        )
    ]
    return out.unsew(*lost).with_runs(where, piece)


def _end_at(path: Path, p: Point, code: str) -> Path:
    """`path` cut back or produced so that it ends at `p`."""
    if distance(path.end, p) < CLOSE:
        return path
    return _start_at(path.reversed(), p, code).reversed()


def _start_at(path: Path, p: Point, code: str) -> Path:
    """`path` cut back or produced so that it starts at `p`."""
    if distance(path.start, p) < CLOSE:
        return path
    place, gap = path.nearest(p)
    along = path.length_to(place)
    if gap <= OFF_LINE and along > 10 * CLOSE:
        if along > path.length - CLOSE:
            raise PaperError(f"{code}: the new line takes the whole of its neighbour")
        return path.after(place).pinned(p, path.end)
    u = path.start_direction
    x, y = path.start
    reach = dot((p[0] - x, p[1] - y), u)
    foot = ahead(path.start, u, reach)
    if reach < 0 and distance(foot, p) <= OFF_LINE:
        first = path.segments[0]
        if isinstance(first, Line):
            return Path((Line(p, first.end), *path.segments[1:]))
        return Path((Line(p, path.start), *path.segments))
    if gap <= OFF_LINE:  # beside the very corner
        return path.pinned(p, path.end)
    off = min(gap, distance(foot, p))
    raise PaperError(
        f"{code}: a new line should end on its neighbour's line but is {off:.2f} cm off"
    )
