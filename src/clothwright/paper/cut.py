"""Cut: divide a piece along a line; both new edges become a seam."""

from dataclasses import dataclass

from clothwright.curves import CLOSE, Path, Point, distance, midpoint
from clothwright.paper.piece import Edge, PaperError, Piece
from clothwright.paper.seam import Ease, Run, Seam
from clothwright.paper.sheet import Sheet


@dataclass(frozen=True)
class On:
    """A place on an edge, a length from where the edge begins in the loop."""

    edge: str
    length: float


@dataclass(frozen=True)
class CornerAfter:
    """The corner where an edge ends in the loop."""

    edge: str


Spot = On | CornerAfter


def spot_on(piece: Piece, edge: str, p: Point) -> Spot:
    """The place on an edge nearest to `p`; a corner when `p` lies on one.

    Raises PaperError when `p` lies more than 0.1 mm off the edge.
    """
    path = piece.edge(edge).path
    place, gap = path.nearest(p)
    if gap > 0.01:
        raise PaperError(
            f"{piece.code}: a line should end on {edge} but is {gap:.2f} cm off it"
        )
    if distance(p, path.end) < 10 * CLOSE:
        return CornerAfter(edge)
    if distance(p, path.start) < 10 * CLOSE:
        return CornerAfter(piece.before(edge).name)
    return On(edge, path.length_to(place))


def _with_vertex(edges: list[Edge], spot: Spot) -> tuple[list[Edge], int, int | None]:
    """Edges with a corner at the spot; the index of the edge that begins there; and
    the index of the edge that was divided for it."""
    # the last of that name: an edge divided for the line's start ends there
    for i, e in reversed(list(enumerate(edges))):
        if e.name != spot.edge:
            continue
        if isinstance(spot, CornerAfter) or spot.length > e.length - CLOSE:
            return edges, (i + 1) % len(edges), None
        if spot.length < CLOSE:
            return edges, i, None
        a, b = e.path.split_at_length(spot.length)
        parts = [e.along(a), e.along(b)]
        return edges[:i] + parts + edges[i + 1 :], i + 1, i
    raise PaperError(f"there is no edge {spot.edge} to cut to")


def cut(
    sheet: Sheet,
    piece: str,
    along: Path,
    start: Spot,
    end: Spot,
    *,
    edge: str,
    seam: str,
    seam_name: str,
    into: tuple[tuple[str, str], tuple[str, str]],
) -> Sheet:
    """Divide `piece` along a line from `start` to `end` on its outline.

    `into` gives (code, name) of the two new pieces: first the one whose loop runs
    from the start of the line clockwise to its end, then the other. The new edge has
    the name `edge` on both; they are sewn as seam `seam`, walked from the line's
    start. Edges keep their length; a divided edge keeps its name on both pieces, and
    a seam that it stands in now walks over both parts.

    Raises PaperError when the line's ends do not lie on the outline.
    """
    old = sheet.piece(piece)
    edges = list(old.edges)
    if isinstance(start, On) and isinstance(end, On) and start.edge == end.edge:
        raise PaperError(f"{piece}: a cut must lead from one edge to another")
    edges, i, _ = _with_vertex(edges, start)
    edges, j, divided = _with_vertex(edges, end)
    if divided is not None and divided < i:
        i += 1
    if i == j:
        raise PaperError(f"{piece}: a cut must lead from one place to another")
    for p, q in ((along.start, edges[i]), (along.end, edges[j])):
        if distance(p, q.path.start) > 0.01:
            raise PaperError(f"{piece}: the cut does not begin and end on the outline")
    along = along.pinned(edges[i].path.start, edges[j].path.start)
    n = len(edges)
    loop = [edges[(i + k) % n] for k in range(n)]
    m = (j - i) % n
    (code_a, name_a), (code_b, name_b) = into
    new_a = Piece(code_a, name_a, (*loop[:m], Edge(edge, along.reversed())))
    new_b = Piece(code_b, name_b, (*loop[m:], Edge(edge, along)))
    new_a, new_b = _share(old, new_a, along), _share(old, new_b, along)

    def where(run: Run) -> tuple[Run, ...]:
        name = run.edge
        at = [p for p in (new_a, new_b) if p.has(name)] if name != edge else []
        if len(at) == 2:
            whole = old.edge(name).path
            at.sort(
                key=lambda p: whole.length_to_point(p.edge(name).path.at_length(0.01))
            )
        runs = [Run(p.code, name, run.backward) for p in at]
        return tuple(reversed(runs) if run.backward else runs)

    out = sheet.in_place_of(piece, put=(new_a, new_b)).with_runs(where, piece)
    new_seam = Seam(
        seam,
        seam_name,
        (Run(code_b, edge),),
        (Run(code_a, edge, backward=True),),
        ease=Ease.about(0.0, 0.1),
    )
    return out.sew(new_seam)


def _lies_on(old: Piece, new: Piece, p: Point) -> bool:
    """True for a mark on the new piece, its edges too."""
    on_edge = old.outline.nearest(p)[1] < CLOSE
    return new.outline.nearest(p)[1] < CLOSE if on_edge else new.contains(p)


def _share(old: Piece, new: Piece, along: Path) -> Piece:
    """Marks, lines and grain of the old piece that lie on the new one."""
    grain = old.grain
    if grain is not None and not new.contains(midpoint(*grain)):
        grain = None
    lines = []
    for line in old.lines:
        hits = [s for s, _ in line.path.meets(along)]
        stops = [0.0, *hits, line.path.length]
        for a, b in zip(stops, stops[1:], strict=False):
            if b - a > CLOSE and new.contains(line.path.at_length((a + b) / 2)):
                lines.append(line.along(line.path.between(a, b)))
    marks = [m for m in old.marks if _lies_on(old, new, m.at)]
    return new.holding(tuple(marks), tuple(lines), grain)
