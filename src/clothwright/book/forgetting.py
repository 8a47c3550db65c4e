"""Deleting a client for good: rows, photos, states, and their bytes in the file.

A deleted row's bytes are overwritten, the file is rebuilt, and its log is emptied. A
mark in the book says that this is still to be done, so that a kill in between leaves no
traces behind either: the next opening does it. What lies in backups and exports, and in
a server's own logs and copies, is out of the book's reach.
"""

from sqlalchemy import delete, func, or_, select, text, update

from clothwright.book.clients import client_by_id
from clothwright.book.errors import BookError
from clothwright.book.store import Store
from clothwright.book.tables import ABOUT, CLIENTS, META, PHOTOS, SLIPS
from clothwright.book.values import Client, Forgotten


def forget(store: Store, client: Client) -> Forgotten:
    """Delete a client with all that is hers. Raises BookError."""
    hers = select(SLIPS.c.id).where(SLIPS.c.client_id == client.id)
    with store.writing() as c:
        name = client_by_id(c, client.id).name
        slips = len(c.execute(hers).all())
        photos = c.scalar(
            select(func.count(PHOTOS.c.id)).where(
                or_(PHOTOS.c.client_id == client.id, PHOTOS.c.slip_id.in_(hers))
            )
        )
        c.execute(update(ABOUT).values(untidy=True))
        c.execute(delete(CLIENTS).where(CLIENTS.c.id == client.id))
    return Forgotten(name, slips, photos or 0, traces=not tidy(store))


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
