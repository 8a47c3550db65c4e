"""Leaves: texts that lie with a slip and are no part of its order.

The lay of a cloth, what is ticked off while it is made, what it took. A leaf lies with
one state of the slip, and is found from every state that came of it; or with the slip
as a whole, whatever its state.
"""

from sqlalchemy import Connection, delete, select

from clothwright.book import texts
from clothwright.book.line import parents_of, path_back
from clothwright.book.slips import claim_slip, slip_by_id
from clothwright.book.store import Store
from clothwright.book.tables import LEAVES
from clothwright.book.values import Leaf, Slip, Stale

WHOLE = 0
"""In place of a state: the leaf lies with the slip as a whole."""


class Leaves:
    """Leaves of slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def put(
        self, slip: Slip, name: str, text: str, *, of_state: bool = False
    ) -> Slip | Stale:
        """Lay a leaf with a slip, or with the state on the table; an older one of the
        same name and place makes way. A blank text takes it away."""
        name, text = texts.line(name, "The leaf's name"), texts.body(text, "The leaf")
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            there = slip_by_id(c, slip.id)
            state = there.state if of_state else WHOLE
            c.execute(
                delete(LEAVES).where(
                    LEAVES.c.slip_id == slip.id,
                    LEAVES.c.name == name,
                    LEAVES.c.state == state,
                )
            )
            if text.strip():
                c.execute(
                    LEAVES.insert().values(
                        slip_id=slip.id,
                        name=name,
                        state=state,
                        at=there.changed,
                        text=text,
                    )
                )
            return there

    def get(self, slip: Slip, name: str) -> Leaf | None:
        """The leaf of this name that lies nearest to the state on the table."""
        with self._store.reading() as c:
            there = slip_by_id(c, slip.id)
            found = {x.state: x for x in leaves_of(c, slip.id) if x.name == name}
            back = path_back(parents_of(c, slip.id), there.state) if found else []
        return next((found[n] for n in (*back, WHOLE) if n in found), None)


def leaves_of(connection: Connection, slip_id: int) -> list[Leaf]:
    """Every leaf of a slip, inside a transaction."""
    rows = connection.execute(
        select(LEAVES.c.name, LEAVES.c.state, LEAVES.c.at, LEAVES.c.text)
        .where(LEAVES.c.slip_id == slip_id)
        .order_by(LEAVES.c.name, LEAVES.c.state)
    )
    return [Leaf(*row) for row in rows]
