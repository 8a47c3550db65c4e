"""A book for each test, in a file and, where a server's address is given, on it."""

import os
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from sqlalchemy import create_engine, make_url, text

from books import Clock, filled
from clothwright.book import Book, open_book

SERVER = "CLOTHWRIGHT_TEST_POSTGRESQL"


@pytest.fixture(params=["file", "server"])
def place(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """Where a new book may be made: a path, and a schema of its own on a server."""
    if request.param == "file":
        yield str(tmp_path / "book.db")
        return
    address = os.environ.get(SERVER)
    if not address:
        pytest.skip(f"no server: {SERVER} has no address")
    name = f"book_{uuid4().hex}"
    url = make_url(address)
    engine = create_engine(url.set(drivername="postgresql+psycopg"))
    with engine.begin() as c:
        c.execute(text(f"CREATE SCHEMA {name}"))
    own = url.update_query_dict({"options": f"-c search_path={name}"})
    yield own.render_as_string(hide_password=False)
    with engine.begin() as c:
        c.execute(text(f"DROP SCHEMA {name} CASCADE"))
    engine.dispose()


@pytest.fixture
def book(place: str) -> Iterator[Book]:
    """An open book with a clock of its own."""
    with open_book(place, wait=0.5, clock=Clock()) as made:
        yield made


@pytest.fixture
def file_book(tmp_path: Path) -> Iterator[Book]:
    """An open book in a file, where the kind of database is of no matter."""
    with open_book(tmp_path / "book.db", wait=0.5, clock=Clock()) as made:
        yield made


@pytest.fixture
def exported(tmp_path: Path) -> Path:
    """The export of a filled book, as a zip."""
    (tmp_path / "export.zip").write_bytes(filled()[1])
    return tmp_path / "export.zip"
