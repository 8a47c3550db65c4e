"""Slips: orders in the book, numbered by themselves and sorted by what is due."""

from datetime import date

from sqlalchemy import ColumnElement, Connection, and_, select, update

from clothwright.book import texts
from clothwright.book.clients import client_by_id
from clothwright.book.errors import BookError
from clothwright.book.store import Store, claim, stale
from clothwright.book.tables import ABOUT, BASTED, CLIENTS, MOVES, SLIPS, STATES
from clothwright.book.values import Client, Slip, Stale

HIGHEST_NUMBER = 999_999_999
"""What fits on a slip's head, and in every database."""


class Slips:
    """The pile of slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def add(
        self,
        client: Client,
        title: str,
        text: str,
        *,
        wanted: date | None = None,
        number: int | None = None,
        said: str = "Written down.",
    ) -> Slip:
        """A new slip with its first state. `text` is the order (TOML).

        It gets the number after the last one given; a number of her own must be free.
        """
        title, said = texts.line(title, "The title"), texts.line(said, "The sentence")
        text, now = texts.order_text(text), self._store.now()
        with self._store.writing() as c:
            client_by_id(c, client.id)
            new = SLIPS.insert().values(
                number=next_number(c, number),
                client_id=client.id,
                title=title,
                wanted=wanted,
                made=now,
                changed=now,
                revision=1,
                state=1,
                tip=1,
            )
            slip_id = c.scalar(new.returning(SLIPS.c.id)) or 0
            c.execute(
                STATES.insert().values(
                    slip_id=slip_id, number=1, at=now, said=said, text=text
                )
            )
            c.execute(
                MOVES.insert().values(slip_id=slip_id, revision=1, state=1, at=now)
            )
            return slip_by_id(c, slip_id)

    def get(self, slip_id: int) -> Slip:
        """A slip by id."""
        with self._store.reading() as c:
            return slip_by_id(c, slip_id)

    def numbered(self, number: int) -> Slip:
        """A slip by the number on its head."""
        with self._store.reading() as c:
            found = _slips(c, SLIPS.c.number == number)
        if not found:
            raise BookError(f"There is no slip {number} in the book.")
        return found[0]

    def due(self) -> tuple[Slip, ...]:
        """What is not handed over, the soonest wanted first, then without a day."""
        with self._store.reading() as c:
            return _slips(c, SLIPS.c.handed_over.is_(None))

    def all(self) -> tuple[Slip, ...]:
        """Every slip in the same order, with what was handed over."""
        with self._store.reading() as c:
            return _slips(c)

    def of(self, client: Client) -> tuple[Slip, ...]:
        """Every slip of a client."""
        with self._store.reading() as c:
            client_by_id(c, client.id)
            return slips_of(c, client)

    def change(self, slip: Slip) -> Slip | Stale:
        """Keep another title or day: `change(replace(slip, wanted=…))`.

        `title`, `wanted` and `handed_over` are kept; what was stitched stays.
        """
        title = texts.line(slip.title, "The title")
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            c.execute(
                update(SLIPS)
                .where(SLIPS.c.id == slip.id)
                .values(title=title, wanted=slip.wanted, handed_over=slip.handed_over)
            )
            return slip_by_id(c, slip.id)


def claim_slip(connection: Connection, store: Store, slip: Slip) -> Stale | None:
    """Make a slip ours until the transaction ends; a refusal when it was changed."""
    if claim(connection, SLIPS, {"id": slip.id}, slip.revision):
        connection.execute(
            update(SLIPS).where(SLIPS.c.id == slip.id).values(changed=store.now())
        )
        return None
    there = slip_by_id(connection, slip.id)
    return stale(f"Slip {there.number}", there.revision, there.changed)


def slip_by_id(connection: Connection, slip_id: int) -> Slip:
    """A slip inside a transaction. Raises BookError when there is none."""
    found = _slips(connection, SLIPS.c.id == slip_id)
    if not found:
        raise BookError("This slip is no longer in the book.")
    return found[0]


def slips_of(connection: Connection, client: Client) -> tuple[Slip, ...]:
    """A client's slips inside a transaction, the soonest wanted first."""
    return _slips(connection, SLIPS.c.client_id == client.id)


def next_number(connection: Connection, wish: int | None) -> int:
    """A number for a slip: the wish if it is free, else the one after the last.

    Raises BookError for a wish that is taken.
    """
    # first, so that two programs never get the same number
    connection.execute(update(ABOUT).values(last_number=ABOUT.c.last_number))
    last = connection.scalar(select(ABOUT.c.last_number)) or 0
    number = last + 1 if wish is None else wish
    if not 1 <= number <= HIGHEST_NUMBER:
        raise BookError(f"{number} is no number for a slip; write another, or none.")
    taken = select(SLIPS.c.id).where(SLIPS.c.number == number)
    if connection.scalar(taken) is not None:
        raise BookError(f"There is a slip {number} already; leave the number off.")
    connection.execute(update(ABOUT).values(last_number=max(last, number)))
    return number


def _slips(
    connection: Connection, where: ColumnElement[bool] | None = None
) -> tuple[Slip, ...]:
    statement = _SLIPS if where is None else _SLIPS.where(where)
    return tuple(Slip(**row) for row in connection.execute(statement).mappings())


_SLIPS = (
    select(
        SLIPS.c.id,
        SLIPS.c.number,
        SLIPS.c.client_id,
        CLIENTS.c.name.label("client"),
        SLIPS.c.title,
        SLIPS.c.wanted,
        SLIPS.c.handed_over,
        SLIPS.c.made,
        SLIPS.c.changed,
        SLIPS.c.revision,
        SLIPS.c.state,
        SLIPS.c.tip,
        STATES.c.parent,
        BASTED.c.slip_id.is_not(None).label("basted"),
    )
    .join(CLIENTS, CLIENTS.c.id == SLIPS.c.client_id)
    .join(
        STATES, and_(STATES.c.slip_id == SLIPS.c.id, STATES.c.number == SLIPS.c.state)
    )
    .outerjoin(BASTED, BASTED.c.slip_id == SLIPS.c.id)
    .order_by(SLIPS.c.wanted.is_(None), SLIPS.c.wanted, SLIPS.c.number)
)
