"""Pieces of a collar, and how they are drawn (transformations 5).

A half collar runs from the centre back to the centre front. Where the garment opens at
the centre back it is in two halves; else it lies on the fold there.
"""

from dataclasses import replace
from enum import Enum

from clothwright.blocks.collar import (
    Ends,
    beside,
    out_of,
    rounded_end,
    smaller,
)
from clothwright.curves import Path, Vector, inset
from clothwright.features.grain import longest_line
from clothwright.paper import (
    ON_STAND,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    straight,
)

COLLAR, UNDER, STAND = "CO", "CN", "CS"
"""Codes of the pieces."""

_BIAS = Vector(0.5**0.5, -(0.5**0.5))

_ROLL = 0.3
"""A collar that stands by less lies flat, and has no roll line, cm."""


class CollarEnd(Enum):
    """How a collar ends at the front."""

    ROUND = "round"
    SQUARE = "square"


def grained(piece: Piece) -> Piece:
    """A collar with its grain along the fold, or plumb as it was drafted."""
    fold = piece.fold
    up = fold.path.start_direction if fold else Vector(0.0, -1.0)
    return replace(piece, grain=longest_line(piece, up))


def flat_edges(
    neck: Path, width: float, end: CollarEnd, *, behind: bool
) -> tuple[Edge, ...]:
    """Edges of a collar of one width, clockwise from its neck edge."""
    outer = beside(neck, width, to_centre=not behind)
    if end is CollarEnd.SQUARE:
        front = (straight("end", neck.end, outer.start),)
        return (Edge("neck", neck), *front, *closing(neck, outer, behind=behind))
    outer = rounded_end(neck.end, out_of(neck), outer, width)
    if behind:
        way = out_of(neck.reversed()) * -1.0
        outer = rounded_end(neck.start, way, outer.reversed(), width).reversed()
        return (Edge("neck", neck), Edge("outer", outer))
    return (Edge("neck", neck), *closing(neck, outer, behind=False))


def one_layer(neck: Path, width: float, name: str, *, behind: bool) -> Piece:
    """A collar of one layer, hemmed all round, on the fold where the garment is
    closed: behind, or in front."""
    outer = beside(neck, width, to_centre=not behind)
    done, fold = EdgeKind.FINISHED, EdgeKind.FOLD
    cf = ("cf", fold) if behind else ("end", done)
    cb = ("end back", done) if behind else ("cb", fold)
    edges = (
        Edge("neck", neck),
        straight(cf[0], neck.end, outer.start, cf[1]),
        Edge("hem", outer, done),
        straight(cb[0], outer.end, neck.start, cb[1]),
    )
    return grained(Piece(COLLAR, name, edges))


def closing(neck: Path, outer: Path, *, behind: bool) -> tuple[Edge, ...]:
    """The outer edge, and what leads from it to the neck at the centre back."""
    back = ("end back", EdgeKind.SEAM) if behind else ("cb", EdgeKind.FOLD)
    return (
        Edge("outer", outer),
        straight(back[0], outer.end, neck.start, back[1]),
    )


_SEWN = ("neck", "foot")
"""The edge that is sewn to the neck, or to a stand."""


def outside(piece: Piece) -> tuple[list[Edge], Ends]:
    """The outer edges of a collar, clockwise, and whether they begin and end at the
    edge that is sewn on, or at a fold or a seam of the centre back."""
    first, *rest = piece.rolled_to(next(n for n in _SEWN if piece.has(n)))
    rest = [e for e in rest if not e.name.endswith(ON_STAND)]
    names = [e.name for e in rest]
    at_neck = names[0] != "cb", names[-1] != "cb"
    return [e for e in rest if e.name != "cb"], at_neck


def undercollar(upper: Piece, turn: float) -> Piece:
    """The undercollar of a collar: the same where it is sewn on, smaller outside, on
    the bias; on the collar's fold it has a seam."""
    edges, at_neck = outside(upper)
    sewn = upper.edge(next(n for n in _SEWN if upper.has(n)))
    small = smaller([e.path for e in edges], turn, at_neck)
    loop = [e.along(path) for e, path in zip(edges, small, strict=True)]
    if not at_neck[0]:
        loop.insert(0, straight("cb", sewn.path.end, small[0].start))
    if not at_neck[1]:
        loop.append(straight("cb", small[-1].end, sewn.path.start))
    on = [e for e in upper.edges if e.name.endswith(ON_STAND)]  # it ends at the neck
    piece = Piece(UNDER, "Undercollar", (sewn, *loop, *on), lines=upper.lines)
    return replace(piece, grain=longest_line(piece, _BIAS))


def roll_line(neck: Path, stand: float) -> tuple[InnerLine, ...]:
    """Where the collar rolls over: its stand at the centre back, nothing at the front;
    none where it lies flat."""
    if stand < _ROLL:
        return ()
    return (InnerLine("roll line", inset(neck, stand, 0.0)),)
