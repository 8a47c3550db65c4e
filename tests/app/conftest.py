"""A book with the made-up client on a slip, and the app on it."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from clothwright.app.keeping import InBook
from clothwright.app.room import Room
from clothwright.app.server import create_app
from clothwright.app.workshop import made_up
from clothwright.book import Book, open_book

HOME = "http://127.0.0.1"


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    with open_book(tmp_path / "book.db") as opened:
        yield opened


@pytest.fixture
def room(book: Book) -> Room:
    return Room(InBook(book, made_up(book, "peplum-top")))


@pytest.fixture
def page(book: Book) -> Iterator[TestClient]:
    """A browser without scripts at the app."""
    app = create_app(book)
    with TestClient(app, HOME, headers={"origin": HOME}) as client:
        yield client
