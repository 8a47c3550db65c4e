"""Opening a book: where it lies, whether it is one, and which version.

A new file is private to its user from its first byte. A file that is something else is
refused before anything in it is touched. An older book is brought up to date in one
transaction; what fails leaves it as it was.
"""

import os
import stat
from contextlib import suppress
from pathlib import Path

from sqlalchemy import Column, Connection, Engine, MetaData, Table, Text, inspect, text
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError

from clothwright.book.errors import BookError, told
from clothwright.book.store import Clock, Store, connect, sqlite_url, utc_now
from clothwright.book.tables import VERSION_TABLE, VERSIONS

WAIT = 5.0
"""Seconds until a book in use by another program is given up."""

_VERSION = Table(VERSION_TABLE, MetaData(), Column("version_num", Text))
_LOCK = 0x636C6F7468  # a number of our own for the server's advisory lock


def default_place() -> Path:
    """The book's file under the user's data folder."""
    from platformdirs import user_data_path

    return user_data_path("clothwright", appauthor=False) / "book.db"


def open_store(
    place: Path | str | None,
    *,
    wait: float = WAIT,
    clock: Clock = utc_now,
    log: bool = True,
) -> Store:
    """A store on the book at a path or an address, made new where there is none.

    Without a `log` of its own a file is all in one, for a backup. Raises BookError.
    """
    url = address(place)
    if url.get_backend_name() == "sqlite":
        _prepare_file(Path(url.database or ""), place is None)
    with told():
        try:
            engine = connect(url, wait)
        except ModuleNotFoundError:
            raise BookError(
                "A book on a server needs one more library; install "
                "clothwright[postgresql]."
            ) from None
        try:
            _bring_up_to_date(engine, log)
        except BaseException:
            engine.dispose()
            raise
    if url.get_backend_name() == "sqlite":
        _make_private(Path(url.database or ""))
    return Store(engine, clock)


def address(place: Path | str | None) -> URL:
    """A path or an address as the database library takes it. Raises BookError."""
    if place is None:
        return sqlite_url(str(default_place()))
    if isinstance(place, Path) or "://" not in place:
        path = Path(place)
        with suppress(RuntimeError):  # ~name of a user who is not there
            path = path.expanduser()
        return sqlite_url(str(path))
    try:
        url = make_url(place)
    except (ArgumentError, ValueError):
        raise BookError(
            "This address of a book cannot be read; write a file's name or "
            "postgresql://name@server/book."
        ) from None
    if url.drivername in ("postgresql", "postgres"):
        return url.set(drivername="postgresql+psycopg")
    if url.drivername == "sqlite" and url.database:
        return sqlite_url(url.database)
    raise BookError(
        f"A book cannot lie at an address with {url.drivername}; write a file's name "
        "or postgresql://name@server/book."
    )


def _prepare_file(path: Path, default: bool) -> None:
    """A file that may be opened, made private if it is new."""
    try:
        if default:
            path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        if path.is_dir():
            raise BookError(f"{path} is a folder; name a file for the book.")
        handle = os.open(path, os.O_CREAT | os.O_RDWR, 0o600)
        try:
            if not stat.S_ISREG(os.fstat(handle).st_mode):
                raise BookError(f"{path} is no file; name a file for the book.")
        finally:
            os.close(handle)
    except FileNotFoundError:
        raise BookError(
            f"{path.parent}: there is no such folder; make it first, or name another."
        ) from None
    except PermissionError:
        raise BookError(
            f"{path} may not be opened; change its permissions, or name another file."
        ) from None
    except OSError as e:
        raise BookError(
            f"{path} cannot be opened ({e.strerror}); name another file."
        ) from None
    except ValueError as e:  # a character that no file's name may hold
        if isinstance(e, BookError):
            raise
        raise BookError(f"{str(path)!r} is no name of a file.") from None


def _make_private(path: Path) -> None:
    """Take a book's file from other users' eyes, where it is ours."""
    found = path.stat()
    if os.name == "posix" and found.st_mode & 0o077 and found.st_uid == os.getuid():
        with suppress(PermissionError):  # a disk that knows no modes
            path.chmod(0o600)


def _bring_up_to_date(engine: Engine, log: bool) -> None:
    with engine.execution_options(reading=True).connect() as connection:
        version = _version(connection)
    on_server = engine.dialect.name == "postgresql"
    if log and not on_server:
        raw = engine.raw_connection()
        try:
            raw.cursor().execute("PRAGMA journal_mode = WAL")
        finally:
            raw.close()
    if version == VERSIONS[-1]:
        return
    with engine.begin() as connection:
        if on_server:  # two programs may open a new book at once
            connection.execute(text(f"SELECT pg_advisory_xact_lock({_LOCK})"))
        if _version(connection) != VERSIONS[-1]:
            _upgrade(connection)


def _version(connection: Connection) -> str | None:
    """The version of a book; None for a new one. Raises BookError for what is none."""
    names = inspect(connection).get_table_names()
    if not names:
        return None
    found = (
        connection.scalar(_VERSION.select()) if VERSION_TABLE in names else "nothing"
    )
    if found in VERSIONS:
        return str(found)
    if str(found).isdigit() and str(found) > VERSIONS[-1]:
        raise BookError(
            "This book was written by a newer Clothwright; install that one to open it."
        )
    raise BookError("This is no book, it holds something else; name another place.")


def _upgrade(connection: Connection, version: str = "head") -> None:
    from alembic import command  # heavy, and wanted for new and old books only
    from alembic.config import Config

    config = Config()
    steps = Path(__file__).parent / "migrations"
    config.set_main_option("script_location", str(steps).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, version)
