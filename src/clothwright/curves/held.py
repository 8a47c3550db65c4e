"""What follows from immutable things, worked out when first asked for and then held."""

from collections.abc import Callable
from functools import wraps
from typing import Generic, TypeVar, TypeVarTuple, overload

T = TypeVar("T")
R = TypeVar("R")
Things = TypeVarTuple("Things")


class held(Generic[T, R]):
    """As `functools.cached_property`, without the lock that Python 3.11 takes for it:
    a draft asks for a thousand such values, and two threads would hold the same."""

    def __init__(self, work: Callable[[T], R]) -> None:
        self.work = work
        self.name = work.__name__
        self.__doc__ = work.__doc__

    @overload
    def __get__(self, thing: None, kind: type[T]) -> "held[T, R]": ...

    @overload
    def __get__(self, thing: T, kind: type[T]) -> R: ...

    def __get__(self, thing: T | None, kind: type[T]) -> "held[T, R] | R":
        if thing is None:
            return self
        value = self.work(thing)
        # not through __dict__: a thing whose dict is asked for is slower ever after
        setattr(thing, self.name, value)
        return value


_FEW = 32
"""So many results are kept."""


def lately(work: Callable[[*Things], R]) -> Callable[[*Things], R]:
    """Keep a pure function's results for the last few things that it was given, which
    live so long. They are told by identity: to compare two outlines costs more than
    most work. Two rooms of the app may ask at once."""
    kept: dict[tuple[int, ...], tuple[tuple[*Things], R]] = {}

    @wraps(work)
    def asked(*things: *Things) -> R:
        key = tuple(map(id, things))
        known = kept.get(key)
        if known is not None:
            return known[1]
        result = work(*things)
        if len(kept) >= _FEW:
            # a list is made in one go, while no other thread adds to them
            kept.pop(list(kept)[0], None)
        kept[key] = (things, result)
        return result

    return asked
