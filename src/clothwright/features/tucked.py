"""A plumb tuck in a piece of paper: slashed, opened, cut as the folded paper shows
(transformations 10: each takes twice its depth).

What lies to the left of it is moved out; folded, its edges lie on those beside it to
that side.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace

from clothwright.curves import Cubic, Path, Point, Vector, distance, mirror_in, shift
from clothwright.features.hand.hand_places import NEAR
from clothwright.paper import Edge, InnerLine, LineKind, PaperError, Piece

FOLD = "fold of a tuck"
"""Name of a tuck's fold line, but for its number."""

STITCH = "stitch line of a tuck"
"""Name of both its stitch lines, numbered on: 1 and 2 are those of the first."""

_ROUND = 1.0
"""Where a tuck is let go the edge is drawn anew so far beyond it, cm (our own)."""


class OverEnd(PaperError):
    """A tuck lies over the end of an edge."""


@dataclass(frozen=True)
class Cut:
    """An edge where a slash crosses it, and how far along it, cm."""

    edge: Edge
    at: float


def plumb_at(x: float) -> Path:
    """A plumb line across all paper, from above down."""
    return Path.line(Point(x, -1000.0), Point(x, 1000.0))


def crossed(piece: Piece, x: float) -> list[Cut]:
    """The edges that a plumb slash crosses, from above down."""
    plumb = plumb_at(x)
    found = [
        (t, Cut(e, s))
        for e in piece.edges
        for s, t in e.path.meets(plumb)
        if NEAR < s < e.length - NEAR
    ]
    return [c for _, c in sorted(found, key=lambda k: k[0])]


def opened(
    piece: Piece, x: float, deep: float, ends: Collection[Cut], *, let_go: bool = False
) -> Piece:
    """The piece with a tuck at `x` between two edges: what lies left of it moved out by
    twice its depth. Of one that is `let_go` the last end is not folded. Raises
    PaperError where it lies over the end of an edge."""
    cuts = {c.edge.name: c for c in ends}
    last = list(cuts)[-1]
    out = shift(Vector(-2 * deep, 0.0))
    fold = mirror_in(Point(x - deep, 0.0), Point(x - deep, 1.0))
    edges = []
    for e in piece.edges:
        if e.name not in cuts:
            middle = e.path.at_length(e.path.length / 2)
            edges.append(e.moved(out) if middle.x < x else e)
            continue
        path, at = e.path, cuts[e.name].at
        outer = path.start.x < x  # it runs from the side to the centre
        way = path if outer else path.reversed()
        at = at if outer else path.length - at
        a, b = way.split_at_length(at)
        if let_go and e.name == last:
            whole = a.moved(out) + Path.line(out(a.end), b.start) + b
        else:
            hits = a.meets(plumb_at(x - deep))
            if not hits:
                raise OverEnd
            lies_on = a.between(hits[-1][0], a.length)
            under = lies_on.moved(fold).reversed()
            whole = a.moved(out) + under.pinned(out(a.end), lies_on.start) + lies_on + b
        edges.append(e.along(whole if outer else whole.reversed()))
    lines = tuple(_with_half(k, x, deep) for k in piece.lines)
    marks = tuple(k.moved(out) if k.at.x < x else k for k in piece.marks)
    return piece.with_edges(edges).holding(marks, lines, piece.grain)


def rounded_foot(piece: Piece, edge: str, left: float, right: float) -> Piece:
    """The piece with an edge drawn in one smooth line where tucks are let go between
    `left` and `right`."""
    path = piece.edge(edge).path
    runs_left = path.start.x > path.end.x
    xs = (left - _ROUND, right + _ROUND)
    first, last = reversed(xs) if runs_left else xs
    head, tail = _before(path, first), _before(path.reversed(), last)
    p, u = (
        (head.end, head.end_direction) if head else (path.start, path.start_direction)
    )
    q, v = (
        (tail.end, tail.end_direction * -1.0)
        if tail
        else (path.end, path.end_direction)
    )
    third = distance(p, q) / 3
    over = Path((Cubic(p, p + u * third, q - v * third, q),))
    parts = (head, over, tail.reversed() if tail else None)
    whole = Path.of(*(k for k in parts if k is not None))
    return piece.with_edge(piece.edge(edge).along(whole))


def _before(path: Path, x: float) -> Path | None:
    """A path as far as it crosses a plumb line; None where its start is beyond it."""
    found = path.meets(plumb_at(x))
    if not found or not NEAR < found[0][0] < path.length - NEAR:
        return None
    return path.split_at_length(found[0][0])[0]


def _with_half(line: InnerLine, x: float, deep: float) -> InnerLine:
    """An inner line that lies outside moved out; one across ruled over the tuck."""
    out = shift(Vector(-2 * deep, 0.0))
    a, b = line.path.start, line.path.end
    if a.x >= x and b.x >= x:
        return line
    if a.x < x and b.x < x:
        return replace(line, path=line.path.moved(out))
    return replace(
        line, path=Path.line(out(a) if a.x < x else a, out(b) if b.x < x else b)
    )


def tuck_lines(
    piece: Piece, k: int, x: float, deep: float, down_to: float | None = None
) -> Iterable[InnerLine]:
    """Fold and stitch lines of tuck `k`, the inner at `x`; as far as a level, of one
    that is let go there."""
    for says, at, kind in (
        (f"{FOLD} {k}", x - deep, LineKind.EYE),
        (f"{STITCH} {2 * k - 1}", x, LineKind.PLACEMENT),
        (f"{STITCH} {2 * k}", x - 2 * deep, LineKind.PLACEMENT),
    ):
        plumb = plumb_at(at)
        ys = [plumb.at_length(s).y for s, _ in plumb.meets(piece.outline)]
        foot = max(ys) if down_to is None else down_to
        yield InnerLine(says, Path.line(Point(at, foot), Point(at, min(ys))), kind)
