"""A value of an immutable thing, worked out when first asked for and then held."""

from collections.abc import Callable
from typing import Generic, TypeVar, overload

T = TypeVar("T")
R = TypeVar("R")


class held(Generic[T, R]):  # noqa: N801 - stands where a decorator does
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
        object.__setattr__(thing, self.name, value)
        return value
