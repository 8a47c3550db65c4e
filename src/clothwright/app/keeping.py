"""Where a room keeps its states: a slip in the book."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from clothwright.app.fitting import Decision, Offer
from clothwright.book import (
    HOUSE_RULES,
    RATES,
    Book,
    BookError,
    ShelfItem,
    Slip,
    Stale,
)
from clothwright.book.fittings import last_fitting
from clothwright.order import OrderError
from clothwright.order.styles import house_with_style
from clothwright.units import Unit


@dataclass
class InBook:
    """One slip of the book; what was kept elsewhere meanwhile is never overwritten."""

    book: Book
    slip: Slip

    def text(self) -> str:
        """The stitched order."""
        return self.book.line.text(self.slip)

    def basted(self) -> str | None:
        """The basted order, when something is tried."""
        basting = self.book.bastings.get(self.slip)
        return basting.text if basting else None

    def stitch(self, text: str, said: str) -> None:
        """Keep a new state; what was basted is gone."""
        if self.slip.basted:
            self._take(lambda s: self.book.bastings.unpick(s))
        self._take(lambda s: self.book.line.save(s, text, said))

    def baste(self, text: str | None, said: str) -> None:
        """Keep what is tried apart, or nothing."""
        if text is None:
            self._take(lambda s: self.book.bastings.unpick(s))
        else:
            self._take(lambda s: self.book.bastings.baste(s, text, said))

    def undo(self) -> bool:
        """Take the last stitch back; False when there is none."""
        if not self.slip.can_undo:
            return False
        self._take(self.book.line.undo)
        return True

    def redo(self) -> bool:
        """Make it again; False when there is none."""
        if not self.slip.can_redo:
            return False
        self._take(self.book.line.redo)
        return True

    def go_to(self, number: int) -> None:
        """Take up any earlier state."""
        self._take(lambda s: self.book.line.go_to(s, number))

    def can(self) -> tuple[bool, bool]:
        """Whether there is something to take back, and to make again."""
        return self.slip.can_undo, self.slip.can_redo

    def house(self) -> str:
        """The house rules that stand on the shelf."""
        item = self.book.shelf.get(HOUSE_RULES)
        return item.text if item and item.text.strip() else ""

    def keep_style(self, name: str, steps: list[Any], unit: Unit) -> str:
        """Put steps under a name into the house rules; gives these back."""
        item = self.book.shelf.get(HOUSE_RULES) or ShelfItem(HOUSE_RULES, "")
        text = house_with_style(item.text, name, steps, unit)
        kept = self.book.shelf.put(replace(item, text=text))
        if isinstance(kept, Stale):
            raise OrderError(kept.sentence)
        return kept.text

    def leaf(self, name: str) -> str:
        """A text that lies with the slip; blank when there is none."""
        found = self.book.leaves.get(self.slip, name)
        return found.text if found else ""

    def put_leaf(self, name: str, text: str, *, of_state: bool = False) -> None:
        """Lay a text with the slip, or with its state on the table."""
        self._take(lambda s: self.book.leaves.put(s, name, text, of_state=of_state))

    def rates(self) -> str:
        """The house's rates that stand on the shelf."""
        item = self.book.shelf.get(RATES)
        return item.text if item and item.text.strip() else ""

    def card(self, unit: Unit) -> Mapping[str, str]:
        """The newest measures on the client's card, as written, by code."""
        client = self.book.clients.get(self.slip.client_id)
        if not self.book.measures.history(client):
            return {}
        return {
            m.code: m.typed
            for m in self.book.measures.body(client, unit=unit).values.values()
        }

    def offers(self) -> tuple[Offer, ...]:
        """What was decided at the client's last fitting, of another slip."""
        client = self.book.clients.get(self.slip.client_id)
        last = last_fitting(self.book.fittings.of(client), self.slip)
        return tuple(Offer(d.slip, d.seen, d.kind, d.what, d.amount) for d in last)

    def decide(self, decision: Decision) -> None:
        """Keep what was seen and decided at a fitting."""
        try:
            self.book.fittings.add(
                self.slip,
                decision.seen,
                said=decision.said,
                kind=decision.kind,
                what=decision.what,
                amount=decision.amount,
            )
        except BookError as e:
            raise OrderError(str(e)) from e

    def measure(self, code: str, typed: str, unit: Unit, keep: bool) -> str:
        """Write a measure on the card. An odd one is asked about, with a sentence,
        unless she says to `keep` it; empty when it is written."""
        client = self.book.clients.get(self.slip.client_id)
        try:
            done = self.book.measures.record(
                client,
                {code: typed},
                unit=unit,
                taken=date.today(),
                keep=(code,) if keep else (),
            )
        except BookError as e:
            raise OrderError(str(e)) from e
        return " ".join(str(q) for q in done.questions)

    def fresh(self) -> bool:
        """Read the slip's head again; True when it was changed elsewhere."""
        there = self.book.slips.get(self.slip.id)
        other = there.revision != self.slip.revision
        self.slip = there
        return other

    def _take(self, change: Callable[[Slip], Slip | Stale]) -> None:
        try:
            kept = change(self.slip)
        except BookError as e:
            raise OrderError(str(e)) from e
        if isinstance(kept, Stale):
            raise OrderError(kept.sentence)
        self.slip = kept
