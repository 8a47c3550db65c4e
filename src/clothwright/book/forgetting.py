"""Deleting for good: a client, a slip, a figure, a fitting, a note, a photo, and
their bytes.

A deleted row's bytes are overwritten, the file is rebuilt, and its log is emptied. A
mark in the book says that this is still to be done, so that a kill in between leaves no
traces behind either: the next opening does it. What lies in backups and exports, and in
a server's own logs and copies, is out of the book's reach.
"""

from collections.abc import Mapping

from sqlalchemy import (
    ColumnElement,
    Connection,
    Select,
    Table,
    delete,
    false,
    func,
    or_,
    select,
    text,
    update,
)

from clothwright.body import measures
from clothwright.book.clients import client_by_id
from clothwright.book.errors import BookError
from clothwright.book.slips import slip_by_id
from clothwright.book.store import Store
from clothwright.book.tables import (
    ABOUT,
    CLIENTS,
    FITTINGS,
    MEASURES,
    META,
    NOTES,
    PHOTOS,
    SLIPS,
)
from clothwright.book.values import (
    Client,
    Decided,
    Forgotten,
    Note,
    Photo,
    Slip,
    TakenMeasure,
)

Forgettable = Client | Slip | TakenMeasure | Decided | Note | Photo

_TABLES: Mapping[type[Forgettable], tuple[Table, str]] = {
    Client: (CLIENTS, "client"),
    Slip: (SLIPS, "slip"),
    TakenMeasure: (MEASURES, "figure"),
    Decided: (FITTINGS, "fitting"),
    Note: (NOTES, "note"),
    Photo: (PHOTOS, "photo"),
}


def forget(store: Store, *things: Forgettable) -> Forgotten:
    """Delete things with all that belongs to them, all or none. Raises BookError."""
    slips = photos = 0
    with store.writing() as c:
        said = [_called(c, thing) for thing in things]
        for thing in things:
            hers = _slips_of(thing)
            slips += len(c.execute(hers).all())
            lie_on = or_(PHOTOS.c.slip_id.in_(hers), _photos_of(thing))
            photos += c.scalar(select(func.count(PHOTOS.c.id)).where(lie_on)) or 0
            table, name = _TABLES[type(thing)]
            if c.execute(delete(table).where(table.c.id == thing.id)).rowcount != 1:
                raise BookError(f"This {name} is no longer in the book.")
        c.execute(update(ABOUT).values(untidy=True))
    return Forgotten(" and ".join(said), slips, photos, traces=not tidy(store))


def _slips_of(thing: Forgettable) -> Select[int]:
    """The ids of the slips that go with it."""
    if isinstance(thing, Client):
        return select(SLIPS.c.id).where(SLIPS.c.client_id == thing.id)
    gone = isinstance(thing, Slip)
    return select(SLIPS.c.id).where(SLIPS.c.id == thing.id if gone else false())


def _photos_of(thing: Forgettable) -> ColumnElement[bool]:
    """The photos that go with it, beside those on its slips."""
    if isinstance(thing, Client):
        return PHOTOS.c.client_id == thing.id
    return PHOTOS.c.id == thing.id if isinstance(thing, Photo) else false()


def _called(connection: Connection, thing: Forgettable) -> str:
    """What it is called; clients and slips by what they are called now."""
    if isinstance(thing, Client):
        return client_by_id(connection, thing.id).name
    if isinstance(thing, Slip):
        return f"Slip {slip_by_id(connection, thing.id).number}"
    if isinstance(thing, TakenMeasure):
        said = measures()[thing.code].said
        return f"The {said} of {thing.taken:%-d %B %Y} ({thing.typed})"
    if isinstance(thing, Decided):
        return f"The fitting ({thing.seen})"
    return "The photo" if isinstance(thing, Photo) else "The note"


def tidy(store: Store) -> bool:
    """Rebuild the file without what was deleted; False when it must wait."""
    try:
        if store.on_server:
            _tidy_server(store)
        elif not _tidy_file(store):
            return False
        with store.writing() as c:
            c.execute(update(ABOUT).values(untidy=False))
        return store.on_server or _empty_log(store)
    except BookError:  # in use, or the disk is full: the mark stays
        return False


def tidy_if_marked(store: Store) -> bool:
    """Do what an earlier deletion had to leave; False when it must wait still.

    Raises BookError when the book cannot be read.
    """
    with store.reading() as c:
        marked = c.scalar(select(ABOUT.c.untidy))
    return tidy(store) if marked else True


def _tidy_file(store: Store) -> bool:
    with store.raw() as connection:
        connection.cursor().execute("VACUUM")
    return _empty_log(store)


def _empty_log(store: Store) -> bool:
    """Bring the write-ahead log into the file and cut it to nothing."""
    with store.raw() as connection:
        cursor = connection.cursor()
        cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        (busy, _log, _done) = cursor.fetchone() or (1, 0, 0)
        return not busy


def _tidy_server(store: Store) -> None:
    with store.engine.connect() as connection:
        free = connection.execution_options(isolation_level="AUTOCOMMIT")
        for table in META.sorted_tables:
            free.execute(text(f"VACUUM FULL {table.name}"))
