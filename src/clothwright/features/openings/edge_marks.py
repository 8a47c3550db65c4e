"""Loops or eyelets marked along an edge that opens, on cloth and facing alike
(transformations §7, first garment 10)."""

import math
from typing import NamedTuple

from clothwright.curves import Point
from clothwright.features.openings.stand_pieces import BACK, STAND, Centre
from clothwright.paper import Mark, MarkKind, PaperError, Piece, Sheet

END = 1.0
"""The first and the last lie so far from the ends of the edge, cm (first garment
10.2)."""

LOOP = "loop"
"""Begins the name of a mark; its number follows."""


class Spaced(NamedTuple):
    """So many, evenly, cm apart."""

    many: int
    apart: float


def spaced(edge: float, wanted: float, end: float = END) -> Spaced:
    """What lies along an edge of so many cm (10.3). Raises PaperError for an edge too
    short for two."""
    u = edge - 2 * end
    count = 1 + math.floor(u / wanted + 0.5 + 1e-9) if u > 0 else 0
    if count < 2:
        raise PaperError(
            f"the edge of {edge:.1f} cm holds fewer than two loops: set them closer "
            "together, or make the garment longer"
        )
    return Spaced(count, u / (count - 1))


def places(
    piece: Piece, centre: Centre, wanted: float, end: float = END
) -> list[Point]:
    """Where they lie on the edge of a piece, from its upper end down."""
    path = piece.edge(STAND).path
    if centre is BACK:  # whose loop runs up
        path = path.reversed()
    row = spaced(path.length, wanted, end)
    return [path.at_length(end + i * row.apart) for i in range(row.many)]


def marked(
    piece: Piece,
    centre: Centre,
    wanted: float,
    first: int = 1,
    end: float = END,
) -> Piece:
    """The piece with its row marked, the first of this number."""
    at = places(piece, centre, wanted, end)
    marks = (Mark(f"{LOOP} {i}", p, MarkKind.LOOP) for i, p in enumerate(at, first))
    return piece.with_marks(*marks)


def nearest_to_yoke(sheet: Sheet, centre: Centre) -> float:
    """How near a loop of the shell lies to the seam of a yoke, cm; without one, very
    far."""
    halves = (sheet.pieces[c] for c in centre.upper if c in sheet.pieces)
    return min(
        (
            p.edge("yoke").path.nearest(k.at)[1]
            for p in halves
            if p.has("yoke")
            for k in p.marks
            if k.kind is MarkKind.LOOP
        ),
        default=math.inf,
    )


def loops_on(sheet: Sheet, centre: Centre) -> int:
    """Loops of one edge of the shell."""
    codes = (*centre.upper, *centre.lower)
    return sum(
        k.kind is MarkKind.LOOP
        for c in codes
        if c in sheet.pieces
        for k in sheet.piece(c).marks
    )
