"""What went wrong with the book, in plain sentences."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, SQLAlchemyError


class BookError(ValueError):
    """The book could not do it: one plain sentence says why and what to do."""


_FULL = "The disk is full, and nothing was written; free some space and do it again."
_IN_USE = (
    "Another program is writing in the book; wait a moment and do it again. "
    "Nothing was changed."
)
_NO_ANSWER = (
    "The server with the book does not answer or refuses; check its address, the name "
    "and the password."
)
_BROKEN = (
    "The book's file is damaged; restore the last backup with "
    "`clothwright book restore`."
)
_NO_BOOK = "This file is not a book; name another file."

_TOO_LARGE = "This number is too large for the book."

_SQLITE = {
    "SQLITE_FULL": _FULL,
    "SQLITE_BUSY": _IN_USE,
    "SQLITE_LOCKED": _IN_USE,
    "SQLITE_READONLY": "The book may only be read here; change its permissions.",
    "SQLITE_PERM": "The book may not be opened; change its permissions.",
    "SQLITE_AUTH": "The book may not be opened; change its permissions.",
    "SQLITE_CANTOPEN": "The book cannot be opened; check its folder and permissions.",
    "SQLITE_CORRUPT": _BROKEN,
    "SQLITE_NOTADB": _NO_BOOK,
    "SQLITE_IOERR": "The disk did not answer, and nothing was written; look at it.",
    "SQLITE_TOOBIG": "This is too large for the book.",
}
"""By SQLite's primary result codes; an extended code begins with its primary one."""

_SERVER = {
    "22003": _TOO_LARGE,
    "53100": _FULL,
    "55P03": _IN_USE,
    "40001": _IN_USE,
    "40P01": _IN_USE,
    "57": _NO_ANSWER,
    "08": _NO_ANSWER,
    "28": _NO_ANSWER,
    "3D000": "The server has no database of this name; make it first.",
    "42501": "The server does not let this name write here; ask who looks after it.",
    "25006": "The book may only be read on this server.",
}
"""By SQLSTATE codes, or their class (two characters), of the SQL standard and its
server."""


@contextmanager
def told() -> Iterator[None]:
    """Database faults inside become BookError."""
    try:
        yield
    except DBAPIError as e:
        raise BookError(sentence(e.orig)) from e
    except sqlite3.Error as e:
        raise BookError(sentence(e)) from e
    except OverflowError:
        raise BookError(_TOO_LARGE) from None
    except SQLAlchemyError as e:
        raise BookError(f"The book could not do this ({_first(e)}).") from e


def sentence(fault: BaseException | None) -> str:
    """A driver's fault as a plain sentence."""
    name = getattr(fault, "sqlite_errorname", None)
    if isinstance(name, str):
        for code, said in _SQLITE.items():
            if name == code or name.startswith(f"{code}_"):
                return said
    if not isinstance(fault, sqlite3.Error):
        state = getattr(fault, "sqlstate", None)
        if state is None:  # the driver never reached the server
            return _NO_ANSWER
        for key in (str(state), str(state)[:2]):
            if key in _SERVER:
                return _SERVER[key]
    return f"The book could not do this ({_first(fault)})."


def _first(fault: object) -> str:
    """The first line of a fault, which has no values of ours in it."""
    return (str(fault).splitlines() or ["no reason given"])[0].rstrip(".")
