from collections.abc import Callable
from typing import ParamSpec, TypeVar

_P = ParamSpec("_P")
_R = TypeVar("_R")

def njit(
    *, cache: bool = ..., fastmath: bool = ..., nogil: bool = ...
) -> Callable[[Callable[_P, _R]], Callable[_P, _R]]: ...
