"""Trace: copy a region to a new piece."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from clothwright.curves import IDENTITY, Motion
from clothwright.paper.piece import Edge, Piece
from clothwright.paper.seam import Run
from clothwright.paper.sheet import Sheet


def traced(
    sheet: Sheet, runs: Sequence[Run], name: str, motion: Motion = IDENTITY
) -> Edge:
    """A copy of a chain of touching edges as one edge, laid by `motion`.

    The copy equals the edges; it runs clockwise like the first of them. Raises
    ValueError when the edges do not touch end to end.
    """
    path = sheet.run_path(runs[0])
    for r in runs[1:]:
        path = path + sheet.run_path(r)
    return Edge(name, path, sheet.edge(runs[0].piece, runs[0].edge).kind).moved(motion)


def trace(sheet: Sheet, source: str, code: str, name: str) -> Sheet:
    """A copy of a whole piece under a new code: a lining, a facing to be cut down."""
    return sheet.put(replace(sheet.piece(source), code=code, name=name))


def outline(sheet: Sheet, code: str, name: str, edges: Iterable[Edge]) -> Sheet:
    """A new piece from traced and drawn edges, clockwise."""
    return sheet.put(Piece(code, name, tuple(edges)))
