"""Work done once for pieces of paper.

Pieces are immutable, so what follows from them alone may be kept. A piece is told by
identity: comparing two outlines costs more than the work.
"""

import weakref
from collections.abc import Callable
from functools import lru_cache, wraps
from operator import is_
from typing import Generic, TypeVar, TypeVarTuple

from clothwright.paper.piece import Piece

R = TypeVar("R")
Pieces = TypeVarTuple("Pieces")


def once(work: Callable[[Piece], R]) -> Callable[[Piece], R]:
    """Keep a pure function's result for each piece it was given, as long as the piece
    lives; the result must not hold the piece itself."""
    kept: dict[int, tuple[weakref.ref[Piece], R]] = {}

    @wraps(work)
    def asked(piece: Piece) -> R:
        key = id(piece)
        known = kept.get(key)
        if known is not None and known[0]() is piece:
            return known[1]
        result = work(piece)
        kept[key] = (weakref.ref(piece, lambda _: kept.pop(key, None)), result)
        return result

    return asked


class _Same(Generic[*Pieces]):
    """Pieces that are equal to none but themselves."""

    def __init__(self, pieces: tuple[*Pieces]) -> None:
        self.pieces = pieces

    def __hash__(self) -> int:
        return hash(tuple(map(id, self.pieces)))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and all(map(is_, self.pieces, other.pieces))


def lately(work: Callable[[*Pieces], R]) -> Callable[[*Pieces], R]:
    """Keep a pure function's result for the last few pieces it was given, which are
    held so long."""

    @lru_cache(maxsize=16)
    def kept(same: _Same[*Pieces]) -> R:
        return work(*same.pieces)

    @wraps(work)
    def asked(*pieces: *Pieces) -> R:
        return kept(_Same(pieces))

    return asked
