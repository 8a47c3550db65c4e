"""Transactions on the book: reading sees one moment, writing is all or nothing.

An SQLite book keeps a write-ahead log and pushes each commit to the disk, so that what
was acknowledged survives a kill (`journal_mode=WAL`, `synchronous=FULL`). Deleted bytes
are overwritten (`secure_delete`), and nothing passes through a file of the system's.
"""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

from sqlalchemy import (
    Connection,
    Engine,
    PoolProxiedConnection,
    Table,
    create_engine,
    event,
    update,
)
from sqlalchemy.engine import URL

from clothwright.book.errors import told
from clothwright.book.values import Stale

Clock = Callable[[], datetime]


def utc_now() -> datetime:
    """This moment, UTC."""
    return datetime.now(UTC)


class Store:
    """A database and a clock."""

    def __init__(self, engine: Engine, clock: Clock = utc_now) -> None:
        self.engine = engine
        self.now = clock
        self.on_server = engine.dialect.name == "postgresql"
        self._reading = engine.execution_options(
            **(
                {"isolation_level": "REPEATABLE READ", "postgresql_readonly": True}
                if self.on_server
                else {"reading": True}
            )
        )

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """Everything read inside is of one moment. Raises BookError."""
        with told(), self._reading.begin() as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """What is written inside is kept whole when it ends, or not at all.

        Raises BookError.
        """
        with told(), self.engine.begin() as connection:
            yield connection

    @contextmanager
    def raw(self) -> Iterator[PoolProxiedConnection]:
        """The driver's own connection, outside any transaction. Raises BookError."""
        with told():
            connection = self.engine.raw_connection()
            try:
                yield connection
            finally:
                connection.close()


def sqlite_url(path: str) -> URL:
    """The address of an SQLite file; any character may be in its name."""
    return URL.create("sqlite", database=path)


def connect(url: URL, wait: float) -> Engine:
    """An engine for an SQLite file or a server.

    `wait`: seconds until a book in use by another program is given up.
    """
    if url.get_backend_name() == "postgresql":
        own = url.query.get("options", "")
        options = f"{own} -c lock_timeout={round(wait * 1000)}"
        return create_engine(url, connect_args={"options": options}, pool_pre_ping=True)
    engine = create_engine(url)

    @event.listens_for(engine, "connect")
    def _prepare(driver: sqlite3.Connection, _record: object) -> None:
        driver.isolation_level = None  # BEGIN is said below
        for pragma in (
            f"busy_timeout = {round(wait * 1000)}",
            "foreign_keys = ON",
            "synchronous = FULL",
            "secure_delete = ON",
            "temp_store = MEMORY",
        ):
            driver.execute(f"PRAGMA {pragma}").close()

    @event.listens_for(engine, "begin")
    def _begin(connection: Connection) -> None:
        # a writer takes the lock at once: no lost updates, and DDL can be rolled back
        reading = connection.get_execution_options().get("reading", False)
        connection.exec_driver_sql("BEGIN" if reading else "BEGIN IMMEDIATE")

    return engine


def claim(
    connection: Connection, table: Table, key: dict[str, object], revision: int
) -> bool:
    """Raise a row's revision by one, if it is still `revision`.

    The row is then ours until the transaction ends. False when another window was first
    or the row is gone.
    """
    statement = update(table).where(table.c.revision == revision)
    for name, value in key.items():
        statement = statement.where(table.c[name] == value)
    done = connection.execute(statement.values(revision=revision + 1))
    return done.rowcount == 1


def stale(what: str, revision: int, changed: datetime) -> Stale:
    """The refusal of a change through an old value."""
    then = changed.astimezone()
    return Stale(
        f"{what} was changed on {then:%-d %B} at {then:%H:%M} in another window; "
        "nothing was overwritten.",
        revision,
        changed,
    )
