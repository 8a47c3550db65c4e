"""Backup to one file and back: the same book, whatever it lies on."""

import sqlite3
import stat
from pathlib import Path

import pytest

from books import Clock, fill, old_file, order, slip, stale
from clothwright.book import Book, BookError, open_book
from clothwright.book.opening import open_store
from clothwright.book.tables import META

Rows = dict[str, list[tuple[object, ...]]]


def rows(place: str | Path) -> Rows:
    """Every row of a book but its revisions, which a restored book counts on."""
    store = open_store(place)
    with store.reading() as c:
        found = {
            t.name: sorted(
                tuple(
                    v
                    for k, v in row._mapping.items()
                    if k != "revision" or t.name == "moves"
                )
                for row in c.execute(t.select())
            )
            for t in META.sorted_tables
        }
    store.engine.dispose()
    return found


def test_a_backup_is_one_private_file_that_opens(book: Book, tmp_path: Path) -> None:
    wenna, top = fill(book)
    target = tmp_path / "saved" / "backup.db"
    target.parent.mkdir()
    book.backup(target)
    assert [p.name for p in target.parent.iterdir()] == ["backup.db"]
    assert stat.S_IMODE(target.stat().st_mode) == 0o600
    with sqlite3.connect(target) as c:
        assert c.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert c.execute("PRAGMA foreign_key_check").fetchall() == []
    c.close()
    assert rows(target) == rows(book.place if "://" not in book.place else target)
    with open_book(target) as copy:
        assert copy.clients.get(wenna.id) == wenna
        assert copy.slips.get(top.id) == top
        assert copy.line.stitches(top) == book.line.stitches(top)
        assert copy.bastings.get(top) == book.bastings.get(top)
        photos = book.photos.of(top)
        assert copy.photos.of(top) == photos
        assert [copy.photos.data(p) for p in photos] == [
            book.photos.data(p) for p in photos
        ]


def test_a_restored_book_is_the_backup(place: str, tmp_path: Path) -> None:
    target = tmp_path / "backup.db"
    with open_book(place, clock=Clock()) as book:
        wenna, top = fill(book)
        saved = rows(place)
        book.backup(target)
        top = slip(book.line.save(top, order(9), "After the backup."))
        late = book.clients.add("After Backup")
        book.slips.add(late, "Late", order(8))
        book.forget(wenna)
        book.restore(target)
        again = rows(place)
        ((_, last, untidy),) = again.pop("about")
        assert (last, untidy) == (3, False), "number 3 was given and is not again"
        saved.pop("about")
        assert again == saved
        assert book.clients.add("New One").id > late.id, "nor is an id"
        assert book.slips.add(wenna, "Next", order(7)).number == 4
        restored = book.slips.get(top.id)
        slip(book.line.undo(restored))


def test_windows_from_before_the_restoring_are_refused(
    book: Book, tmp_path: Path
) -> None:
    _, top = fill(book)
    book.backup(tmp_path / "backup.db")
    shelf = book.shelf.all()[0]
    for n in range(3):
        top = slip(book.line.save(top, order(n), f"Change {n}."))
        book.restore(tmp_path / "backup.db")
        stale(book.line.save(top, order(9), "From an old window."))
        top = book.slips.get(top.id)
    stale(book.shelf.put(shelf))


def test_an_old_backup_is_restored_and_stays_as_it_is(
    book: Book, tmp_path: Path
) -> None:
    fill(book)
    old = old_file(tmp_path / "old.db")
    before = old.read_bytes()
    book.restore(old)
    assert [k.name for k in book.clients.all()] == ["Wenna Årsdotter"]
    assert old.read_bytes() == before
    assert book.slips.add(book.clients.all()[0], "Next", order(1)).number == 8


def test_a_backup_while_another_writes(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        fill(book)
        other = sqlite3.connect(tmp_path / "book.db", isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        other.execute("DELETE FROM clients")
        book.backup(tmp_path / "backup.db")
        other.execute("ROLLBACK")
        other.close()
        assert rows(tmp_path / "backup.db") == rows(tmp_path / "book.db")


def test_what_is_no_backup_changes_nothing(place: str, tmp_path: Path) -> None:
    with open_book(place, clock=Clock()) as book:
        fill(book)
        before = rows(place)
        (tmp_path / "empty").write_bytes(b"")
        (tmp_path / "words").write_text("The neck is deeper. " * 90)
        cut = tmp_path / "cut.db"
        book.backup(cut)
        cut.write_bytes(cut.read_bytes()[: 4096 * 5])
        for name in ("none", "empty", "words", "cut.db", "."):
            with pytest.raises(BookError):
                book.restore(tmp_path / name)
        with open_book(tmp_path / "in-use.db") as used:
            used.clients.add("Thea Vane")
            with pytest.raises(BookError, match="is a book in use; make a backup"):
                book.restore(tmp_path / "in-use.db")
        assert rows(place) == before


def test_the_book_is_not_its_own_backup(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        fill(book)
        for go in (book.backup, book.restore):
            with pytest.raises(BookError, match="is the book itself"):
                go(tmp_path / "book.db")
        assert len(book.clients.all()) == 2


def test_a_backup_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        fill(book)
        with pytest.raises(BookError, match="there is no such folder"):
            book.backup(tmp_path / "none" / "backup.db")
        old = tmp_path / "backup.db"
        book.backup(old)
        book.notes.add(book.clients.all()[0], "More.")
        book.backup(old)
        assert rows(old) == rows(tmp_path / "book.db"), "an older one makes way"
