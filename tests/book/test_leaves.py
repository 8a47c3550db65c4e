"""Leaves: texts that lie with a slip or with one of its states."""

from pathlib import Path

from books import Clock, order, slip
from clothwright.book import Book, BookError, Slip, open_book


def laid(book: Book) -> Slip:
    """A slip of two states, with a lay at the first and ticks on the whole."""
    client = book.clients.add("Odile Marchbank")
    top = book.slips.add(client, "Peplum top", order(1))
    top = slip(book.leaves.put(top, "lay shell", "length = 91.3", of_state=True))
    top = slip(book.leaves.put(top, "ticks", 'done = ["Cut the shell"]'))
    return slip(book.line.save(top, order(2), "Neck deeper."))


def text(book: Book, of: Slip, name: str) -> str | None:
    found = book.leaves.get(of, name)
    return found.text if found else None


def test_a_leaf_lies_with_its_state_and_those_that_came_of_it(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        top = laid(book)
        assert text(book, top, "lay shell") == "length = 91.3"
        top = slip(book.leaves.put(top, "lay shell", "length = 95.0", of_state=True))
        assert text(book, top, "lay shell") == "length = 95.0"
        top = slip(book.line.undo(top))
        assert text(book, top, "lay shell") == "length = 91.3"
        assert text(book, top, "ticks") == 'done = ["Cut the shell"]'
        top = slip(book.leaves.put(top, "ticks", " "))
        assert text(book, top, "ticks") is None


def test_two_windows_do_not_overwrite_each_other(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        top = laid(book)
        slip(book.leaves.put(top, "ticks", "done = []"))
        refused = book.leaves.put(top, "ticks", 'done = ["Hem"]')
        assert not isinstance(refused, Slip)
        assert text(book, top, "ticks") == "done = []"


def test_leaves_go_with_exports_backups_and_forgetting(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        top = laid(book)
        book.export(tmp_path / "plain")
        book.backup(tmp_path / "backup.db")
        book.forget(top)
        for other in ("b.db", "c.db"):
            with open_book(tmp_path / other, clock=Clock()) as copy:
                if other == "b.db":
                    copy.import_from(tmp_path / "plain")
                else:
                    copy.restore(tmp_path / "backup.db")
                same = copy.slips.numbered(top.number)
                assert text(copy, same, "lay shell") == "length = 91.3"
                assert text(copy, same, "ticks") == 'done = ["Cut the shell"]'
    assert b"Cut the shell" not in (tmp_path / "book.db").read_bytes()


def test_a_leaf_of_a_state_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with open_book(tmp_path / "book.db", clock=Clock()) as book:
        laid(book)
        book.export(tmp_path / "plain")
    (page,) = (tmp_path / "plain").rglob("slip.toml")
    found = page.read_text()
    assert 'name = "lay shell"\nstate = 1' in found
    page.write_text(found.replace('shell"\nstate = 1', 'shell"\nstate = 7'))
    with open_book(tmp_path / "b.db", clock=Clock()) as copy:
        try:
            copy.import_from(tmp_path / "plain")
        except BookError as e:
            assert "states do not follow each other" in str(e)
        else:
            raise AssertionError("it was taken in")
