"""A book, or one client, as plain files; `plain` has their layout."""

from pathlib import Path

import tomli_w
from sqlalchemy import Connection, select

from clothwright.book import plain
from clothwright.book.basting import basting_of
from clothwright.book.clients import client_by_id, every_client
from clothwright.book.fittings import fittings_of
from clothwright.book.folders import Sink, sink
from clothwright.book.leaves import leaves_of
from clothwright.book.notes import notes_of, photo_data, photos_of
from clothwright.book.shelf import shelf_items
from clothwright.book.slips import slips_of
from clothwright.book.store import Store
from clothwright.book.tables import ABOUT, MOVES, STATES
from clothwright.book.taken import all_taken, as_of, measures_table
from clothwright.book.values import Client, Slip


def export(store: Store, target: Path, client: Client | None = None) -> None:
    """Write the whole book, or one client's card and slips, as it is now.

    `target`: a new folder, or a name that ends in .zip. Raises BookError.
    """
    with sink(target) as out, store.reading() as c:
        if client is None:
            last = c.scalar(select(ABOUT.c.last_number)) or 0
            _shelf(c, out)
            clients = list(every_client(c))
        else:
            last, clients = 0, [client_by_id(c, client.id)]
        page = plain.BookPage(format=plain.FORMAT, last_number=last)
        out.put(plain.BOOK, plain.to_toml(page))
        width = max(3, len(str(len(clients))))  # so that names sort as they count
        for i, k in enumerate(clients, 1):
            _client(c, out, k, f"clients/{i:0{width}}-{plain.slug(k.name)}")


def _shelf(connection: Connection, out: Sink) -> None:
    rows = []
    for i, item in enumerate(shelf_items(connection), 1):
        file = f"shelf/{i:03}-{plain.slug(item.name)}.toml"
        assert item.changed is not None
        rows.append(plain.ShelfRow(name=item.name, changed=item.changed, file=file))
        out.put(file, item.text.encode())
    out.put(plain.SHELF, plain.to_toml(plain.ShelfPage(item=tuple(rows))))


def _client(connection: Connection, out: Sink, client: Client, folder: str) -> None:
    history = all_taken(connection, client.id)
    page = plain.ClientPage(
        name=client.name,
        made=client.made,
        changed=client.changed,
        measure=tuple(
            plain.MeasureRow(
                code=m.code,
                side=m.side,
                typed=m.typed,
                unit=m.unit,
                taken=m.taken,
                how=m.how,
                by=m.by,
                note=m.note,
                recorded=m.recorded,
            )
            for m in sorted(history, key=lambda m: m.id)
        ),
        note=_notes(connection, client),
        photo=_photos(connection, out, client, folder),
    )
    out.put(f"{folder}/{plain.CLIENT}", plain.to_toml(page))
    if newest := as_of(history, None):
        table = measures_table(client.name, newest.values())
        out.put(f"{folder}/{plain.MEASURES}", tomli_w.dumps(table).encode())
    for slip in sorted(slips_of(connection, client), key=lambda s: s.number):
        _slip(connection, out, slip, f"{folder}/slips/{slip.number:04}")


def _slip(connection: Connection, out: Sink, slip: Slip, folder: str) -> None:
    states = []
    rows = connection.execute(
        select(
            STATES.c.number, STATES.c.parent, STATES.c.at, STATES.c.said, STATES.c.text
        )
        .where(STATES.c.slip_id == slip.id)
        .order_by(STATES.c.number)
    )
    for row in rows:
        number, parent, at, said, text = row
        states.append(plain.StateRow(number=number, parent=parent, at=at, said=said))
        out.put(f"{folder}/{state_file(number)}", text.encode())
        if number == slip.state:
            out.put(f"{folder}/{plain.ORDER}", text.encode())
    moves = connection.execute(
        select(MOVES.c.state, MOVES.c.at)
        .where(MOVES.c.slip_id == slip.id)
        .order_by(MOVES.c.revision)
    )
    basted = None
    if basting := basting_of(connection, slip.id):
        out.put(f"{folder}/{plain.BASTED}", basting.text.encode())
        basted = plain.BastedRow(
            on_state=basting.on_state, at=basting.at, said=basting.said
        )
    page = plain.SlipPage(
        number=slip.number,
        title=slip.title,
        wanted=slip.wanted,
        handed_over=slip.handed_over,
        made=slip.made,
        changed=slip.changed,
        state=slip.state,
        tip=slip.tip,
        states=tuple(states),
        moves=tuple(plain.MoveRow(state=n, at=at) for n, at in (m for m in moves)),
        basted=basted,
        fitting=tuple(
            plain.FittingRow(
                at=f.at,
                seen=f.seen,
                said=f.said,
                kind=f.kind,
                what=f.what,
                amount=f.amount,
            )
            for f in fittings_of(connection, slip)
        ),
        leaf=_leaves(connection, out, slip, folder),
        note=_notes(connection, slip),
        photo=_photos(connection, out, slip, folder),
    )
    out.put(f"{folder}/{plain.SLIP}", plain.to_toml(page))


def _leaves(
    connection: Connection, out: Sink, slip: Slip, folder: str
) -> tuple[plain.LeafRow, ...]:
    rows = []
    for i, leaf in enumerate(leaves_of(connection, slip.id), 1):
        file = f"leaves/{i:03}-{plain.slug(leaf.name)}.toml"
        out.put(f"{folder}/{file}", leaf.text.encode())
        rows.append(
            plain.LeafRow(name=leaf.name, state=leaf.state, at=leaf.at, file=file)
        )
    return tuple(rows)


def state_file(number: int) -> str:
    """Where the text of a state stands, beside its slip's page."""
    return f"states/{number:04}.toml"


def _notes(connection: Connection, on: Client | Slip) -> tuple[plain.NoteRow, ...]:
    return tuple(
        plain.NoteRow(at=note.at, text=note.text) for note in notes_of(connection, on)
    )


def _photos(
    connection: Connection, out: Sink, on: Client | Slip, folder: str
) -> tuple[plain.PhotoRow, ...]:
    rows = []
    for i, photo in enumerate(photos_of(connection, on), 1):
        file = f"photos/{i:03}.{plain.ENDINGS[photo.kind]}"
        out.put(f"{folder}/{file}", photo_data(connection, photo))
        rows.append(plain.PhotoRow(at=photo.at, caption=photo.caption, file=file))
    return tuple(rows)
