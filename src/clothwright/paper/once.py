"""Work done once for a piece of paper.

Pieces are immutable, so what follows from one alone may be kept as long as the piece
lives. The piece is told by identity: comparing two outlines costs more than the work.
"""

import weakref
from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from clothwright.paper.piece import Piece

R = TypeVar("R")


def once(work: Callable[[Piece], R]) -> Callable[[Piece], R]:
    """Keep a pure function's result for each piece it was given. The result must not
    hold the piece, nor one with its loop, or it would live for ever."""
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
