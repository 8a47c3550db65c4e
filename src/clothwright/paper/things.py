"""Things by name that nobody can change, and such as note what is looked at."""

from collections.abc import Collection, Iterator, Mapping
from types import MappingProxyType
from typing import TypeVar

T = TypeVar("T")


class Watched(Mapping[str, T]):
    """Things by name. `looked_at` gathers the names of those that were there from the
    first and are looked at; `laid` are those laid since, and `gone` the names of those
    taken off. That a name is there, or where it stands among the others, is no look."""

    def __init__(
        self,
        things: dict[str, T],
        looked_at: set[str],
        laid: dict[str, T],
        gone: frozenset[str] = frozenset(),
    ) -> None:
        self.things = things
        self.looked_at = looked_at
        self.laid = laid
        self.gone = gone

    def __getitem__(self, name: str) -> T:
        if name not in self.laid:
            self.looked_at.add(name)
        return self.things[name]

    def __contains__(self, name: object) -> bool:
        return name in self.things

    def __iter__(self) -> Iterator[str]:
        return iter(self.things)

    def __len__(self) -> int:
        return len(self.things)


LASTING = (MappingProxyType, Watched)
"""Mappings that nobody can change."""


def watched(things: Mapping[str, T], looked_at: set[str]) -> Watched[T]:
    """The things, which note from now on what of them is looked at."""
    return Watched(_copied(things), looked_at, {})


def bare(things: Mapping[str, T]) -> Mapping[str, T]:
    """The things without the watch on them."""
    return MappingProxyType(things.things) if isinstance(things, Watched) else things


def lasting(things: Mapping[str, T]) -> Mapping[str, T]:
    """The same things, out of reach of whoever holds the mapping."""
    return things if type(things) in LASTING else MappingProxyType(dict(things))


def more(things: Mapping[str, T], new: Mapping[str, T]) -> Mapping[str, T]:
    """The things with new ones, each in place of one of the same name, else last."""
    if type(things) is Watched:
        held, laid = {**things.things, **new}, {**things.laid, **new}
        return Watched(held, things.looked_at, laid, things.gone)
    return MappingProxyType(_copied(things) | _copied(new))


def less(things: Mapping[str, T], names: Collection[str]) -> Mapping[str, T]:
    """The things without those of these names."""
    if type(things) is Watched:
        held, laid = _without(things.things, names), _without(things.laid, names)
        return Watched(held, things.looked_at, laid, things.gone.union(names))
    return MappingProxyType(_without(things, names))


def _without(things: Mapping[str, T], names: Collection[str]) -> dict[str, T]:
    kept = _copied(things)
    for name in names:
        kept.pop(name, None)
    return kept


def _copied(things: Mapping[str, T]) -> dict[str, T]:
    # a proxy copies what it holds in a tenth of the time that dict() takes to read it
    return things.copy() if isinstance(things, MappingProxyType) else dict(things)
