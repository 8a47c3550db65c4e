"""Who will wear the garment, and as what: what the cautions depend on."""

from enum import Enum
from typing import Any, TypeVar

_Choice = TypeVar("_Choice", bound=Enum)


class Wearer(Enum):
    """Whom it is for."""

    ADULT = "adult"
    CHILD = "child"
    UNDER_THREE = "child under three"

    @property
    def child(self) -> bool:
        """True for a child of any age."""
        return self is not Wearer.ADULT


class Use(Enum):
    """What it is worn as."""

    DAY = "day"
    NIGHTWEAR = "nightwear"


def read_wearer(
    table: dict[str, Any], place: str
) -> tuple[Wearer, Use, tuple[str, ...]]:
    """Wearer and use of an order, and sentences for words that are not known."""
    faults: list[str] = []
    wearer = _word(table, "wearer", Wearer.ADULT, place, faults)
    use = _word(table, "use", Use.DAY, place, faults)
    return wearer, use, tuple(faults)


def _word(
    table: dict[str, Any], key: str, usual: _Choice, place: str, faults: list[str]
) -> _Choice:
    if key not in table:
        return usual
    words = {e.value: e for e in type(usual)}
    got = table[key]
    if isinstance(got, str) and got in words:
        return words[got]
    known = [f'"{w}"' for w in words]
    write = ", ".join(known[:-1]) + f" or {known[-1]}"
    faults.append(f"{place}: {key} = {got!r} is not known; write {write}")
    return usual
