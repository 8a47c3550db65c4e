"""Measures over time: recorded, asked about, never overwritten.

A figure that was wrong is followed by the right one of the same day; both stay.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta

from sqlalchemy import Connection, select

from clothwright.body import Body, BodyError, MeasureValue, body_from_tables, measures
from clothwright.body.measures import by_name
from clothwright.book import texts
from clothwright.book.clients import client_by_id
from clothwright.book.errors import BookError
from clothwright.book.odd import question
from clothwright.book.store import Store
from clothwright.book.tables import MEASURES
from clothwright.book.values import Client, Recorded, Side, TakenMeasure
from clothwright.units import LengthError, Unit, parse_length

Typed = str | int | float
"""A figure as it is written: "36 1/2", 92.5, "92 cm", "drop 1 7/8 on 5"."""


class Measures:
    """The measures of a book's clients. Every method raises BookError."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def record(
        self,
        client: Client,
        typed: Mapping[str, Typed | Mapping[str, Typed]],
        *,
        unit: Unit,
        taken: date,
        how: str = "",
        by: str = "",
        note: str = "",
        keep: Collection[str] = (),
    ) -> Recorded:
        """Record figures by code or name; "left" and "right" may hold tables of theirs.

        When one is odd against the client's past and its finding's `place` ("W",
        "SS.left") is not in `keep`, nothing is saved and the questions come back.
        """
        today = self._store.now().astimezone().date()
        if taken > today + timedelta(days=1):  # she may be a day ahead of the server
            raise BookError(
                f"{taken:%-d %B %Y} is still to come; check when this was taken."
            )
        how = texts.remark(how, "How it was taken")
        by, note = texts.remark(by, "Who took it"), texts.remark(note, "The note")
        read = read_figures(client.name, typed, unit)
        with self._store.writing() as c:
            client_by_id(c, client.id)
            past = as_of(all_taken(c, client.id), taken)
            questions = tuple(
                asked
                for (code, side), v in read.items()
                if (before := past.get((code, side)) or past.get((code, Side.BOTH)))
                and (asked := question(code, side, v.value, unit, taken, before))
                and asked.place not in keep
            )
            if questions:
                return Recorded(questions=questions)
            new = MEASURES.insert().values(
                client_id=client.id,
                unit=unit.value,
                taken=taken,
                how=how,
                by=by,
                note=note,
                recorded=self._store.now(),
            )
            ids = {
                c.scalar(
                    new.values(
                        code=code, side=side.value, typed=v.typed, value=v.value
                    ).returning(MEASURES.c.id)
                )
                for (code, side), v in read.items()
            }
            saved = (m for m in all_taken(c, client.id) if m.id in ids)
            return Recorded(tuple(sorted(saved, key=lambda m: m.id)))

    def history(self, client: Client) -> tuple[TakenMeasure, ...]:
        """Every figure ever taken, oldest first."""
        with self._store.reading() as c:
            client_by_id(c, client.id)
            return all_taken(c, client.id)

    def last_unit(self) -> Unit | None:
        """The unit of the figure that was written last, of any client."""
        with self._store.reading() as c:
            last = c.scalar(select(MEASURES.c.unit).order_by(MEASURES.c.id.desc()))
        return None if last is None else Unit(last)

    def get(self, figure_id: int) -> TakenMeasure:
        """A figure by id."""
        with self._store.reading() as c:
            owner = select(MEASURES.c.client_id).where(MEASURES.c.id == figure_id)
            taken = all_taken(c, c.scalar(owner) or 0)
        found = next((m for m in taken if m.id == figure_id), None)
        if found is None:
            raise BookError("This figure is no longer in the book.")
        return found

    def body(
        self, client: Client, on: date | None = None, unit: Unit | None = None
    ) -> Body:
        """The client's body by the last figures taken up to a day (that day included).

        Without a day, by the newest of all; without a unit, in that of the last figure.
        """
        name, rows = self._as_of(client, on)
        body = body_from_tables(measures_table(name, rows.values(), unit), name)
        return replace(
            body,
            values=_dated(body.values, Side.BOTH, rows),
            left=_dated(body.left, Side.LEFT, rows),
            right=_dated(body.right, Side.RIGHT, rows),
        )

    def table(
        self, client: Client, on: date | None = None, unit: Unit | None = None
    ) -> dict[str, object]:
        """The same figures as a measures file has them: `client`, `unit`, `taken`, `by`
        and `measures`, to be laid into an order's own table or written to a file."""
        name, rows = self._as_of(client, on)
        return measures_table(name, rows.values(), unit)

    def _as_of(
        self, client: Client, on: date | None
    ) -> tuple[str, dict[tuple[str, Side], TakenMeasure]]:
        with self._store.reading() as c:
            name = client_by_id(c, client.id).name
            rows = as_of(all_taken(c, client.id), on)
        if not rows:
            day = f" up to {on:%-d %B %Y}" if on else ""
            raise BookError(f"{name} has no measures{day}; take them first.")
        return name, rows


def measures_table(
    name: str, rows: Collection[TakenMeasure], unit: Unit | None = None
) -> dict[str, object]:
    """Figures, one for each measure and side, as the table of a measures file."""
    last = max(rows, key=lambda m: (m.taken, m.id))
    unit = unit or last.unit
    sides: dict[Side, dict[str, str]] = {side: {} for side in Side}
    order = list(measures())
    for m in sorted(rows, key=lambda m: order.index(m.code)):
        sides[m.side][m.code] = _in_unit(m, unit)
    table: dict[str, object] = {**sides[Side.BOTH]}
    table |= {side.value: sides[side] for side in Side if side and sides[side]}
    return {
        "client": name,
        "unit": unit.value,
        "taken": last.taken,
        "by": last.by,
        "measures": table,
    }


def all_taken(connection: Connection, client_id: int) -> tuple[TakenMeasure, ...]:
    """Every figure of a client, inside a transaction, oldest first."""
    rows = connection.execute(
        select(
            MEASURES.c.id,
            MEASURES.c.client_id,
            MEASURES.c.code,
            MEASURES.c.side,
            MEASURES.c.typed,
            MEASURES.c.unit,
            MEASURES.c.value,
            MEASURES.c.taken,
            MEASURES.c.how,
            MEASURES.c.by,
            MEASURES.c.note,
            MEASURES.c.recorded,
        )
        .where(MEASURES.c.client_id == client_id)
        .order_by(MEASURES.c.taken, MEASURES.c.id)
    )
    return tuple(
        TakenMeasure(**{**m, "side": Side(m["side"]), "unit": Unit(m["unit"])})
        for m in rows.mappings()
    )


def as_of(
    history: Sequence[TakenMeasure], on: date | None
) -> dict[tuple[str, Side], TakenMeasure]:
    """The last figure of each measure and side up to a day.

    A figure for both sides does away with older ones of one side.
    """
    found: dict[tuple[str, Side], TakenMeasure] = {}
    for m in history:
        if on is not None and m.taken > on:
            break
        if m.side is Side.BOTH:
            for side in (Side.LEFT, Side.RIGHT):
                found.pop((m.code, side), None)
        found[m.code, m.side] = m
    return found


def read_figures(
    name: str, typed: Mapping[str, Typed | Mapping[str, Typed]], unit: Unit
) -> dict[tuple[str, Side], MeasureValue]:
    """Figures as written, by code and side. Raises BookError with all faults."""
    try:
        body = body_from_tables({"unit": unit.value, "measures": typed}, name)
    except BodyError as e:
        raise BookError(str(e)) from None
    codes = {by_name().get(n.strip().lower()) for n in typed}
    both = {k: v for k, v in body.values.items() if k in codes}  # no means of sides
    parts = ((Side.BOTH, both), (Side.LEFT, body.left), (Side.RIGHT, body.right))
    return {(code, side): v for side, part in parts for code, v in part.items()}


def _in_unit(m: TakenMeasure, unit: Unit) -> str:
    """A figure as typed, with its unit where the file's is another."""
    if measures()[m.code].kind == "angle" or m.unit is unit:
        return m.typed
    try:
        parse_length(m.typed)
    except LengthError:
        return f"{m.typed} {m.unit.value}"
    return m.typed


def _dated(
    values: Mapping[str, MeasureValue],
    side: Side,
    rows: Mapping[tuple[str, Side], TakenMeasure],
) -> dict[str, MeasureValue]:
    """Each figure with the day and the hand that took it."""
    made = {}
    for code, v in values.items():
        keys = ((code, s) for s in (side, *Side))
        m = next(rows[k] for k in keys if k in rows)
        made[code] = replace(v, taken=m.taken, by=m.by)
    return made
