"""The undo line of a slip: states are stitched on, never taken out.

Undo and redo move along the branch in use; a new state after undo begins a branch, and
the old one stays, to be gone to by its number or its hour. Every move is kept with its
time, so that "as it was at two" means what lay on the table at two.
"""

from datetime import datetime

from sqlalchemy import Connection, func, select, update

from clothwright.book import texts
from clothwright.book.errors import BookError
from clothwright.book.slips import claim_slip, slip_by_id
from clothwright.book.store import Store
from clothwright.book.tables import MOVES, SLIPS, STATES
from clothwright.book.values import Slip, Stale, Stitch


class Line:
    """States of slips. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def save(self, slip: Slip, text: str, said: str) -> Slip | Stale:
        """Stitch a new state after the one on the table.

        `text`: the whole order; `said`: what changed, in one sentence.
        """
        text, said = texts.order_text(text), texts.line(said, "The sentence")
        with self._store.writing() as c:
            return claim_slip(c, self._store, slip) or stitch_on(c, slip, text, said)

    def undo(self, slip: Slip) -> Slip | Stale:
        """The state before lies on the table again."""
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            there = slip_by_id(c, slip.id)
            if there.parent is None:
                raise BookError("This is the first state; there is nothing to unpick.")
            return _move(c, there, there.parent, there.tip)

    def redo(self, slip: Slip) -> Slip | Stale:
        """The next state on the branch in use lies on the table."""
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            there = slip_by_id(c, slip.id)
            if not there.can_redo:
                raise BookError("This is the last state; nothing was unpicked.")
            path = path_back(parents_of(c, there.id), there.tip)
            return _move(c, there, path[path.index(there.state) - 1], there.tip)

    def go_to(self, slip: Slip, number: int) -> Slip | Stale:
        """Any state, of any branch, lies on the table; its branch is then in use."""
        with self._store.writing() as c:
            if refusal := claim_slip(c, self._store, slip):
                return refusal
            there, parents = slip_by_id(c, slip.id), parents_of(c, slip.id)
            if number not in parents:
                raise BookError(f"Slip {there.number} has no state {number}.")
            tip = there.tip
            if number not in path_back(parents, tip):
                tip = _newest_after(parents, number)
            return _move(c, there, number, tip)

    def stitches(self, slip: Slip) -> tuple[Stitch, ...]:
        """Every state of every branch, in the order of stitching, without texts."""
        with self._store.reading() as c:
            slip_by_id(c, slip.id)
            rows = c.execute(
                select(STATES.c.number, STATES.c.parent, STATES.c.at, STATES.c.said)
                .where(STATES.c.slip_id == slip.id)
                .order_by(STATES.c.number)
            )
            return tuple(Stitch(*row) for row in rows)

    def text(self, slip: Slip, number: int | None = None) -> str:
        """The order's text as it lies on the table now, or of any state."""
        with self._store.reading() as c:
            there = slip_by_id(c, slip.id)
            number = there.state if number is None else number
            found = c.scalar(
                select(STATES.c.text).where(
                    STATES.c.slip_id == slip.id, STATES.c.number == number
                )
            )
        if found is None:
            raise BookError(f"Slip {there.number} has no state {number}.")
        return found

    def at(self, slip: Slip, when: datetime) -> int:
        """Number of the state that lay on the table at a moment.

        `when` has a zone, or is in the workroom's.
        """
        with self._store.reading() as c:
            there = slip_by_id(c, slip.id)
            found = c.scalar(
                select(MOVES.c.state)
                .where(MOVES.c.slip_id == slip.id, MOVES.c.at <= when)
                .order_by(MOVES.c.revision.desc())
                .limit(1)
            )
        if found is None:
            raise BookError(f"Slip {there.number} was not yet written down then.")
        return found


def stitch_on(connection: Connection, slip: Slip, text: str, said: str) -> Slip:
    """Put a new state after the one on the table of a slip that is claimed."""
    there = slip_by_id(connection, slip.id)
    highest = select(func.max(STATES.c.number)).where(STATES.c.slip_id == slip.id)
    number = (connection.scalar(highest) or 0) + 1
    connection.execute(
        STATES.insert().values(
            slip_id=slip.id,
            number=number,
            parent=there.state,
            at=there.changed,
            said=said,
            text=text,
        )
    )
    return _move(connection, there, number, number)


def _move(connection: Connection, slip: Slip, number: int, tip: int) -> Slip:
    """Put a state on the table of a slip as it stands since it was claimed."""
    connection.execute(
        update(SLIPS).where(SLIPS.c.id == slip.id).values(state=number, tip=tip)
    )
    connection.execute(
        MOVES.insert().values(
            slip_id=slip.id, revision=slip.revision, state=number, at=slip.changed
        )
    )
    return slip_by_id(connection, slip.id)


def parents_of(connection: Connection, slip_id: int) -> dict[int, int | None]:
    """Every state's number with that of the state before it."""
    rows = connection.execute(
        select(STATES.c.number, STATES.c.parent).where(STATES.c.slip_id == slip_id)
    )
    return dict(iter(rows))


def path_back(parents: dict[int, int | None], tip: int) -> list[int]:
    """From a state back to the first."""
    path, at = [tip], parents[tip]
    while at is not None:
        path.append(at)
        at = parents[at]
    return path


def _newest_after(parents: dict[int, int | None], number: int) -> int:
    """The newest state that follows from a state; it is the end of its branch."""
    following = {number}
    for n in sorted(parents):  # a state's number is above that of the state before it
        if parents[n] in following:
            following.add(n)
    return max(following)
