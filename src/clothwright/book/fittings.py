"""What was seen and decided at fittings, kept with the slip that was fitted."""

import math
from dataclasses import replace

from sqlalchemy import ColumnElement, Connection, select

from clothwright.book import texts
from clothwright.book.clients import client_by_id
from clothwright.book.errors import BookError
from clothwright.book.slips import slip_by_id
from clothwright.book.store import Store
from clothwright.book.tables import FITTINGS, SLIPS
from clothwright.book.values import Client, Decided, Slip
from clothwright.features.fittings.seen import of_body


class Fittings:
    """Fittings of slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def add(
        self,
        slip: Slip,
        seen: str,
        *,
        said: str = "",
        kind: str = "",
        what: str = "",
        amount: float = 0.0,
    ) -> Decided:
        """Keep what was seen on a slip's client, and what was decided."""
        row = checked_fitting("The fitting", seen, said, kind, what, amount)
        with self._store.writing() as c:
            slip_id = slip_by_id(c, slip.id).id
            new = FITTINGS.insert().values(**row, slip_id=slip_id, at=self._store.now())
            new_id = c.scalar(new.returning(FITTINGS.c.id))
            return _fittings(c, FITTINGS.c.id == new_id)[0]

    def of(self, on: Client | Slip) -> tuple[Decided, ...]:
        """What was seen on a slip, or on all slips of a client, oldest first."""
        with self._store.reading() as c:
            if isinstance(on, Slip):
                return fittings_of(c, slip_by_id(c, on.id))
            client = client_by_id(c, on.id)
            return _fittings(c, SLIPS.c.client_id == client.id)

    def get(self, fitting_id: int) -> Decided:
        """One by its id."""
        with self._store.reading() as c:
            found = _fittings(c, FITTINGS.c.id == fitting_id)
        if not found:
            raise BookError("This fitting is no longer in the book.")
        return found[0]


def last_fitting(
    decided: tuple[Decided, ...], but: Slip | None = None
) -> tuple[Decided, ...]:
    """What was altered at a client's last fitting, of another slip than one, in all of
    each thing; what that slip has had decided is left out."""
    others = [d for d in decided if but is None or d.slip != but.number]
    altered = [d for d in others if d.kind and of_body(d.kind, d.what)]
    if not altered:
        return ()
    last = max(altered, key=lambda d: (d.at, d.id)).slip
    had = {(d.kind, d.what) for d in decided if but and d.slip == but.number}
    out: dict[tuple[str, str], Decided] = {}
    for d in altered:
        key = d.kind, d.what
        if d.slip == last and key not in had:
            before = out[key].amount if key in out else 0.0
            out[key] = replace(d, amount=before + d.amount)
    return tuple(d for d in out.values() if d.amount)


def checked_fitting(
    place: str, seen: str, said: str, kind: str, what: str, amount: float
) -> dict[str, object]:
    """The columns of a fitting, looked at. Raises BookError."""
    if not math.isfinite(amount):
        raise BookError(f"{place}: the amount is no number.")
    return {
        "seen": texts.line(seen, f"{place}: what was seen"),
        "said": texts.remark(said, f"{place}: what was decided"),
        "kind": texts.remark(kind, f"{place}: what was altered"),
        "what": texts.remark(what, f"{place}: what was altered"),
        "amount": amount,
    }


def fittings_of(connection: Connection, slip: Slip) -> tuple[Decided, ...]:
    """Fittings of a slip inside a transaction, oldest first."""
    return _fittings(connection, FITTINGS.c.slip_id == slip.id)


def _fittings(
    connection: Connection, where: ColumnElement[bool]
) -> tuple[Decided, ...]:
    f = FITTINGS.c
    found = (
        select(f.id, SLIPS.c.number, f.at, f.seen, f.said, f.kind, f.what, f.amount)
        .join(SLIPS, SLIPS.c.id == f.slip_id)
        .where(where)
        .order_by(f.id)
    )
    return tuple(Decided(*row) for row in connection.execute(found))
