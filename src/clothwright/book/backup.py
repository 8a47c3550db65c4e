"""Backup to one file and back, row by row, so that a server's book fits in a file too.

A backup is a book in a file of its own and can be opened as one. It is written beside
its target under a passing name and then renamed, so that a half-written one never
stands there. Restoring replaces all in one transaction.
"""

import shutil
import tempfile
from pathlib import Path

from sqlalchemy import Connection, LargeBinary, func, select, text, update

from clothwright.book.errors import BookError
from clothwright.book.opening import open_store
from clothwright.book.private import private_file
from clothwright.book.store import Store
from clothwright.book.tables import ABOUT, CLIENTS, META, SHELF, SLIPS

_COUNTED = (CLIENTS, SLIPS, SHELF)
"""Tables with revisions."""


def backup(store: Store, target: Path) -> None:
    """Write the whole book, as it is now, to one file. Raises BookError."""
    if _same(store, target):
        raise BookError(f"{target.name} is the book itself; name another file.")
    with private_file(target) as passing:
        copy = open_store(passing, log=False)
        try:
            with store.reading() as source, copy.writing() as into:
                _replace_rows(source, into)
        finally:
            copy.engine.dispose()


def restore(store: Store, source: Path) -> None:
    """Replace all that is in the book by a backup; older backups will do.

    Windows that show the book as it was are refused when they save. Raises BookError.
    """
    if not source.is_file() or not source.stat().st_size:
        raise BookError(f"{source} is no backup; name a backup's file.")
    if _same(store, source):
        raise BookError(f"{source.name} is the book itself; name a backup's file.")
    log = source.with_name(source.name + "-wal")
    if log.exists() and log.stat().st_size:
        raise BookError(f"{source.name} is a book in use; make a backup of it first.")
    beside = None if store.on_server else Path(store.engine.url.database or "").parent
    with tempfile.TemporaryDirectory(prefix=".", dir=beside) as folder:
        copied = Path(folder) / "backup.db"  # the backup itself stays as it is
        try:
            shutil.copyfile(source, copied)
        except OSError as e:
            raise BookError(f"{source.name} cannot be read ({e.strerror}).") from None
        copy = open_store(copied, log=False)
        try:
            with copy.reading() as rows, store.writing() as into:
                _restore_rows(rows, into)
        finally:
            copy.engine.dispose()


def _same(store: Store, path: Path) -> bool:
    own = Path(store.engine.url.database or "")
    return not store.on_server and path.exists() and path.samefile(own)


def _restore_rows(source: Connection, into: Connection) -> None:
    """Replace the rows; no revision and no number that was ever given comes again."""
    about = into.execute(select(ABOUT.c.last_number, ABOUT.c.untidy)).one()
    last, untidy = about
    above = {t: into.scalar(select(func.max(t.c.revision))) or 0 for t in _COUNTED}
    _replace_rows(source, into)
    for table, revision in above.items():
        into.execute(update(table).values(revision=table.c.revision + revision))
    given = into.scalar(select(ABOUT.c.last_number)) or 0
    into.execute(update(ABOUT).values(last_number=max(last, given), untidy=untidy))
    if into.dialect.name == "postgresql":
        _count_on(into)


def _replace_rows(source: Connection, into: Connection) -> None:
    for table in reversed(META.sorted_tables):
        into.execute(table.delete())
    for table in META.sorted_tables:
        large = any(isinstance(c.type, LargeBinary) for c in table.columns)
        rows = source.execution_options(yield_per=1 if large else 500).execute(
            select(table)
        )
        for part in rows.mappings().partitions():
            into.execute(table.insert(), [dict(row) for row in part])


def _count_on(connection: Connection) -> None:
    """Have the server's counters of ids go on above all ids that were ever given."""
    for table in META.sorted_tables:
        if table.dialect_options["sqlite"]["autoincrement"]:
            counter = f"pg_get_serial_sequence('{table.name}', 'id')"
            highest = f"(SELECT coalesce(max(id), 1) FROM {table.name})"
            connection.execute(
                text(
                    f"SELECT setval({counter}, greatest({highest}, nextval({counter})))"
                )
            )
