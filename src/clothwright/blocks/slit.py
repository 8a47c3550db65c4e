"""Where the facing of a slit, cut in one with a piece, folds in."""

from clothwright.curves import Path
from clothwright.paper import Piece

SLIT_FOLD = "slit fold, side"
"""Where the facing of a slit in the side folds in, from the hem up."""


def within_slit(piece: Piece, line: Path) -> list[float]:
    """Where a level line meets a piece, the facing of a slit in its side folded in."""
    hits = [s for s, _ in line.meets(piece.outline)]
    folds = (k.path for k in piece.lines if k.name == SLIT_FOLD)
    at = [s for fold in folds for s, _ in line.meets(fold)]
    if not at:
        return hits
    left = abs(min(hits) - at[0]) < abs(max(hits) - at[0])
    return [max(s, at[0]) if left else min(s, at[0]) for s in hits]
