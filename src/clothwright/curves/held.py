"""What follows from immutable things, worked out when first asked for and then held."""

from collections.abc import Callable
from functools import lru_cache, wraps
from operator import is_
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


class _Same(Generic[*Things]):
    """Things that are equal to none but themselves."""

    def __init__(self, things: tuple[*Things]) -> None:
        self.things = things

    def __hash__(self) -> int:
        return hash(tuple(map(id, self.things)))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and all(map(is_, self.things, other.things))


def lately(work: Callable[[*Things], R]) -> Callable[[*Things], R]:
    """Keep a pure function's results for the last few things that it was given, which
    live so long. They are told by identity: to compare two outlines costs more than
    most work."""

    @lru_cache(maxsize=32)
    def kept(same: _Same[*Things]) -> R:
        return work(*same.things)

    @wraps(work)
    def asked(*things: *Things) -> R:
        return kept(_Same(things))

    return asked
