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
        assert (gone.what, gone.slips, gone.photos) == ("Wenna Årsdotter-Qvist", 1, 3)
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
        book.forget(photo)
        book.forget(note)
    assert not _traces(path, data[30:60], b"for others")


def test_one_slip_goes_and_all_else_stays(tmp_path: Path) -> None:
    path = tmp_path / "book.db"
    with open_book(path, clock=Clock()) as book:
        wenna, top = fill(book)
        kept = book.slips.add(wenna, "Zip top, blue", order(77))
        photo = book.photos.data(book.photos.of(top)[0])[30:60]
        gone = book.forget(top)
        assert (gone.what, gone.slips, gone.photos) == ("Slip 1", 1, 2)
        assert not gone.traces
        words = {b"The peplum is", b"Hem by hand", b"# state 1\n", photo}
        for file in path.parent.glob("book.db*"):
            assert not [w for w in words if w in file.read_bytes()]
        assert book.slips.of(wenna) == (kept,)
        assert book.measures.history(wenna) and book.notes.of(wenna)
        assert book.slips.add(wenna, "Another", order(3)).number == 4, "never again"
        with pytest.raises(BookError, match="no longer in the book"):
            book.forget(top)


def test_one_figure_goes_and_the_one_before_it_counts_again(tmp_path: Path) -> None:
    path = tmp_path / "book.db"
    with open_book(path, clock=Clock()) as book:
        wenna, _ = fill(book)
        last = book.measures.history(wenna)[-1]
        same = [m for m in book.measures.history(wenna) if m.code == "W"]
        assert [m.typed for m in same] == ["28 1/4", "28 3/4"]
        gone = book.forget(same[1])
        assert gone.what == "The waist of 30 April 2027 (28 3/4)" and not gone.traces
        assert book.measures.body(wenna).values["W"].typed == "28 1/4"
        assert last in book.measures.history(wenna)
        with pytest.raises(BookError, match="This figure is no longer in the book"):
            book.measures.get(same[1].id)
        for file in path.parent.glob("book.db*"):
            assert b"28 3/4" not in file.read_bytes()


def test_a_measuring_goes_whole_or_not_at_all(book: Book) -> None:
    wenna, _ = fill(book)
    history = book.measures.history(wenna)
    assert book.forget(history[0]).what == "The waist of 9 March 2026 (28 1/4)"
    with pytest.raises(BookError, match="This figure is no longer in the book"):
        book.forget(history[1], history[0])
    assert book.measures.history(wenna) == history[1:]
    book.forget(*history[1:])
    assert book.measures.history(wenna) == ()
