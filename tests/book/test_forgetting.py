"""Deleting a client for good: not one byte of hers is left in the book's files."""

import sqlite3
from pathlib import Path

import pytest

from books import Clock, fill, long_order, order, picture, slip
from clothwright.book import Book, BookError, open_book
from clothwright.book.opening import open_store
from clothwright.book.tables import META

MARKS = (
    "Wenna",
    "over a slip, tape easy",
    "The peplum is",
    "Likes her collars",
    "at the",
)
"""Words that only the forgotten client's card and slips have."""


def _traces(path: Path, *more: bytes) -> set[str]:
    """What of the forgotten client is in the book's files, log and index included."""
    found = set()
    for file in path.parent.glob(f"{path.name}*"):
        data = file.read_bytes()
        for mark in (*(m.encode() for m in MARKS), *more):
            if mark in data:
                found.add(f"{mark[:20]!r} in {file.name}")
    return found


def test_no_byte_of_hers_is_left(tmp_path: Path) -> None:
    path = tmp_path / "book.db"
    with open_book(path, clock=Clock()) as book:
        wenna, top = fill(book)
        photo = book.photos.data(book.photos.of(wenna)[0])
        for n in range(60):  # long texts and old pages, in file and log
            top = slip(
                book.line.save(top, long_order(n, 9), f"The peplum is {n} longer.")
            )
        middle = photo[20:60]
        assert len(_traces(path, middle)) >= len(MARKS) + 1, "the search finds bytes"
        gone = book.forget(wenna)
        assert (gone.client, gone.slips, gone.photos) == ("Wenna Årsdotter-Qvist", 1, 3)
        assert not gone.traces
        assert not _traces(path, middle), "while the book is open"
        assert [k.name for k in book.clients.all()] == ["Odile Marchbank"]
        assert [s.title for s in book.slips.all()] == ["Zip top, brown"]
        assert len(book.shelf.all()) == 2
    assert not _traces(path, middle), "when it is closed"
    with open_book(path) as book:
        assert book.line.text(book.slips.numbered(2)) == order(0)


def test_every_table_is_emptied_of_her(place: str) -> None:
    store = open_store(place, clock=Clock())
    book = Book(store)
    wenna, _ = fill(book)
    (other,) = (k for k in book.clients.all() if k.id != wenna.id)
    assert not book.forget(wenna).traces
    book.shelf.remove(book.shelf.all()[0])
    book.shelf.remove(book.shelf.all()[0])
    assert not book.forget(other).traces
    with store.reading() as c:
        left = {t.name for t in META.sorted_tables if c.execute(t.select()).first()}
    assert left == {"about"}
    with pytest.raises(BookError, match="This client is no longer in the book"):
        book.forget(wenna)
    book.close()


def test_with_the_book_open_elsewhere_the_last_bytes_go_later(tmp_path: Path) -> None:
    path = tmp_path / "book.db"
    with open_book(path, wait=0.05, clock=Clock()) as book:
        wenna, _ = fill(book)
        reader = sqlite3.connect(path, isolation_level=None)
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM clients").fetchall()
        assert book.forget(wenna).traces
        assert wenna.name not in [k.name for k in book.clients.all()]
        assert not book.tidy(), "it is open there still"
        assert _traces(path)
        reader.execute("ROLLBACK")
        assert book.tidy()
        assert not _traces(path)
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM clients").fetchall()
        assert book.forget(book.clients.add("Wenna Again")).traces
        reader.execute("ROLLBACK")
        reader.close()
    open_book(path).close()
    assert not _traces(path)


def test_a_kill_before_the_file_is_rebuilt_leaves_no_traces(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "book.db"
    book = open_book(path, clock=Clock())
    wenna, _ = fill(book)

    def killed(_store: object) -> bool:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr("clothwright.book.forgetting.tidy", killed)
        with pytest.raises(KeyboardInterrupt):
            book.forget(wenna)
    assert _traces(path), "the log still has her"
    with open_book(path) as again:
        assert wenna.name not in [k.name for k in again.clients.all()]
        assert not _traces(path)
    book.close()


def test_a_photo_s_bytes_are_overwritten(tmp_path: Path) -> None:
    path = tmp_path / "book.db"
    data = picture("PNG", "#123456")
    with open_book(path) as book:
        thea = book.clients.add("Thea Vane")
        photo = book.photos.add(thea, data)
        note = book.notes.add(thea, "Not for others' eyes.")
        assert _traces(path, data[30:60], b"for others")
        book.photos.remove(photo)
        book.notes.remove(note)
    assert not _traces(path, data[30:60], b"for others")
