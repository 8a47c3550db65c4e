"""Basting: a change that is tried, kept apart from what is stitched.

A slip has one basting at most, with the whole text as it would be. It outlives the
program's end, and is stitched only onto the state that it was tried on.
"""

from sqlalchemy import Connection, delete, select

from clothwright.book import texts
from clothwright.book.errors import BookError
from clothwright.book.line import stitch_on
from clothwright.book.slips import claim_slip, slip_by_id
from clothwright.book.store import Store
from clothwright.book.tables import BASTED
from clothwright.book.values import Basting, Slip, Stale


class Bastings:
    """What is basted on slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def baste(self, slip: Slip, text: str, said: str) -> Slip | Stale:
        """Try a change; one that was basted before makes way."""
        text, said = texts.order_text(text), texts.line(said, "The sentence")
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            _drop(c, slip)
            there = slip_by_id(c, slip.id)
            c.execute(
                BASTED.insert().values(
                    slip_id=slip.id,
                    on_state=there.state,
                    at=there.changed,
                    said=said,
                    text=text,
                )
            )
            return slip_by_id(c, slip.id)

    def get(self, slip: Slip) -> Basting | None:
        """What is basted on a slip, if anything."""
        with self._store.reading() as c:
            slip_by_id(c, slip.id)
            return basting_of(c, slip.id)

    def stitch(self, slip: Slip) -> Slip | Stale:
        """Keep what is basted as the slip's next state."""
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            there, basted = slip_by_id(c, slip.id), basting_of(c, slip.id)
            if basted is None:
                raise BookError(f"Nothing is basted on slip {there.number}.")
            if basted.on_state != there.state:
                raise BookError(
                    f"This was basted on another state of slip {there.number}; go back "
                    "to that state, or baste it again."
                )
            _drop(c, slip)
            return stitch_on(c, slip, basted.text, basted.said)

    def unpick(self, slip: Slip) -> Slip | Stale:
        """Take the basting out."""
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            _drop(c, slip)
            return slip_by_id(c, slip.id)


def basting_of(connection: Connection, slip_id: int) -> Basting | None:
    """What is basted on a slip, inside a transaction."""
    row = connection.execute(
        select(BASTED.c.on_state, BASTED.c.at, BASTED.c.said, BASTED.c.text).where(
            BASTED.c.slip_id == slip_id
        )
    ).one_or_none()
    return None if row is None else Basting(*row)


def _drop(connection: Connection, slip: Slip) -> None:
    connection.execute(delete(BASTED).where(BASTED.c.slip_id == slip.id))
