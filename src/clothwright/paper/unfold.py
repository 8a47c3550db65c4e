"""Unfold: mirror about the fold edge."""

from dataclasses import replace

from clothwright.curves import mirror_in
from clothwright.paper.piece import MIRRORED, PaperError, Piece


def unfold(piece: Piece) -> Piece:
    """The whole piece of a half cut on the fold. Its mirrored edges have the name of
    their twin with " mirrored" behind it; an edge that meets the fold stays two edges.

    Raises PaperError for a piece without a fold.
    """
    fold = piece.fold
    if fold is None:
        raise PaperError(f"{piece.code} has no fold to open")
    m = mirror_in(fold.path.start, fold.path.end)
    half = piece.rolled_to(fold.name)[1:]
    twin = tuple(replace(e.moved(m), name=e.name + MIRRORED) for e in reversed(half))
    return replace(
        piece,
        edges=half + twin,
        marks=piece.marks
        + tuple(replace(k, name=k.name + MIRRORED, at=m(k.at)) for k in piece.marks),
        lines=piece.lines
        + tuple(
            replace(k, name=k.name + MIRRORED, path=k.path.moved(m))
            for k in piece.lines
        ),
    )
