"""What a room wants of the place where its states are kept, and how it refuses."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Protocol

from clothwright.app.fitting import Keeper as FittingKeeper
from clothwright.units import Unit


class Keeper(FittingKeeper, Protocol):
    """Where the states of one slip are kept; every call is durable when it returns."""

    def text(self) -> str:
        """The stitched order."""
        ...

    def basted(self) -> str | None:
        """The basted order, when something is tried."""
        ...

    def stitch(self, text: str, said: str) -> None:
        """Keep a new state; what was basted is gone."""
        ...

    def baste(self, text: str | None, said: str) -> None:
        """Keep what is tried apart, or nothing."""
        ...

    def undo(self) -> bool:
        """Take the last stitch back; False when there is none."""
        ...

    def redo(self) -> bool:
        """Make it again; False when there is none."""
        ...

    def can(self) -> tuple[bool, bool]:
        """Whether there is something to take back, and to make again."""
        ...

    def house(self) -> str:
        """The house rules that stand on the shelf."""
        ...

    def keep_style(self, name: str, steps: list[Any], unit: Unit) -> str:
        """Put steps under a name into the house rules; gives these back."""
        ...

    def leaf(self, name: str) -> str:
        """A text that lies with the slip; blank when there is none."""
        ...

    def put_leaf(self, name: str, text: str, *, of_state: bool = False) -> None:
        """Lay a text with the slip, or with its state on the table."""
        ...

    def rates(self) -> str:
        """The house's rates that stand on the shelf."""
        ...

    def card(self, unit: Unit) -> Mapping[str, str]:
        """The newest measures on the client's card, as written, by code."""
        ...

    def measure(self, code: str, typed: str, unit: Unit, keep: bool) -> str:
        """Write a measure on the card. An odd one is asked about, with a sentence,
        unless she says to `keep` it; empty when it is written."""
        ...


@dataclass(frozen=True)
class Refusal:
    """A change that was not made: why, and what to do instead."""

    of: str
    sentence: str
    nearest: Mapping[str, Any] | None = None
    """A change that can be made, with what to say for it."""

    def plain(self) -> dict[str, Any]:
        """As sent to the page."""
        return {"of": self.of, "say": self.sentence, "nearest": self.nearest}
