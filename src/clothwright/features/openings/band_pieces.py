"""Bands cut double, and what is cut back to where they are sewn on (transformations
7)."""

from collections.abc import Sequence

from clothwright.curves import Path, Point, Vector, mirror_in
from clothwright.paper import (
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    straight,
)

INSIDE = " inside"
"""Ends the name of an edge of a band's inner half."""

_REACH = 60.0
"""Lines that are met run so far, cm."""


def beside(cf: Path, by: float) -> Path:
    """A line beside the centre front, through the whole of the front."""
    x = cf.start.x - by
    return Path.line(Point(x, cf.start.y - _REACH), Point(x, cf.end.y + _REACH))


def met(path: Path, line: Path, fault: str) -> float:
    """The last length at which a path meets a line. Raises PaperError with the fault
    when it does not."""
    hits = sorted(s for s, _ in path.meets(line))
    if not hits:
        raise PaperError(fault)
    return hits[-1]


def cut_back(facing: Piece, line: Path, fault: str, centre: str = "cf") -> Piece:
    """A front facing without what lies before a line, towards its centre edge; its end
    is finished there."""
    neck, free = facing.edge("neck").path, facing.edge("free").path
    neck = neck.between(0.0, met(neck, line, fault))
    free = free.between(min(s for s, _ in free.meets(line)), free.length)
    loop: list[Edge] = []
    for e in facing.edges:
        if e.name == "neck":
            loop.append(e.along(neck))
        elif e.name == centre:
            loop.append(straight("end", neck.end, free.start, EdgeKind.FINISHED))
        else:
            loop.append(e.along(free) if e.name == "free" else e)
    return facing.with_edges(loop)


def doubled(
    code: str,
    name: str,
    top: Sequence[Edge],
    foot: float,
    ends: EdgeKind = EdgeKind.FINISHED,
) -> Piece:
    """A band cut double, from its upper end down to the level `foot`: its outer half
    below `top`, which runs from the side to the fold, its inner half that turned over
    at the fold. `ends` is what becomes of the inner half's foot."""
    fold, down = top[-1].path.end, Vector(0.0, 1.0)
    over = mirror_in(fold, fold + down)
    inner = [
        Edge(e.name + INSIDE, e.path.moved(over).reversed(), e.kind)
        for e in reversed(top)
    ]
    inner[0] = inner[0].along(inner[0].path.pinned(fold, inner[0].path.end))
    far, side = inner[-1].path.end, top[0].path.start
    a, b, c = (Point(p.x, foot) for p in (far, fold, side))
    return Piece(
        code,
        name,
        (
            *top,
            *inner,
            straight("inside", far, a, EdgeKind.FINISHED),
            straight("foot inside", a, b, ends),
            straight("foot", b, c),
            straight("side", c, side),
        ),
        lines=(InnerLine("fold", Path.line(fold, b)),),
    )
