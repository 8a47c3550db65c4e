"""`clothwright book`: the book's few chores, each with a plain answer."""

from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from books import Clock, fill, whole_order
from clothwright.book import open_book
from clothwright.cli import app


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A filled book, which the commands find by themselves."""
    path = tmp_path / "book.db"
    with open_book(path, clock=Clock()) as book:
        fill(book)
    monkeypatch.setenv("CLOTHWRIGHT_BOOK", str(path))
    return path


def run(*words: str | int | Path, answer: str = "") -> Result:
    return CliRunner().invoke(app, ["book", *map(str, words)], input=answer)


def test_clients_are_listed(place: Path) -> None:
    assert run("clients").stdout.splitlines() == [
        "2  Odile Marchbank  slips 2",
        "1  Wenna Årsdotter-Qvist  slips 1",
    ]


def test_backup_and_restore(place: Path, tmp_path: Path) -> None:
    saved = tmp_path / "saved.db"
    done = run("backup", saved)
    assert (done.exit_code, done.stdout) == (0, f"{saved}\n")
    run("forget", "Odile Marchbank", "--yes")
    asked = run("restore", saved, answer="n\n")
    assert asked.exit_code == 1
    assert len(run("clients").stdout.splitlines()) == 1
    done = run("restore", saved, "--yes")
    assert (done.exit_code, done.stdout) == (0, "2 clients, 2 slips\n")
    fresh = tmp_path / "fresh.db"
    done = run("--book", fresh, "restore", saved)
    assert done.stdout == "2 clients, 2 slips\n", "a new book has nothing to ask about"


def test_export_and_import(place: Path, tmp_path: Path) -> None:
    assert run("export", tmp_path / "all.zip").exit_code == 0
    assert (
        run("export", tmp_path / "one", "--client", "odile  marchbank").exit_code == 0
    )
    fresh = tmp_path / "fresh.db"
    done = run("--book", fresh, "import", tmp_path / "one")
    assert done.stdout == "Odile Marchbank\n"
    done = run("--book", fresh, "import", tmp_path / "all.zip")
    assert done.exit_code == 3
    assert done.stderr == (
        "Odile Marchbank is in this book already; nothing was imported.\n"
    )
    run("--book", fresh, "forget", "odile marchbank", "--yes")
    done = run("--book", fresh, "import", tmp_path / "all.zip")
    assert done.stdout.splitlines() == ["Wenna Årsdotter-Qvist", "Odile Marchbank"]


def test_forget_asks_and_says_what_is_left(place: Path) -> None:
    asked = run("forget", "1", answer="n\n")
    assert asked.exit_code == 1
    assert "Delete Wenna Årsdotter-Qvist and 1 slip for good?" in asked.output
    done = run("forget", "1", answer="y\n")
    assert done.exit_code == 0
    assert "Wenna Årsdotter-Qvist is gone from the book." in done.stdout
    assert "Backups and exports that you made before still have her." in done.stdout
    assert b"Wenna" not in place.read_bytes()


def test_one_thing_is_forgotten_by_its_number(place: Path) -> None:
    lines = run("card", "1").stdout.splitlines()
    assert lines[0] == "figure 1  W 28 1/4  2026-03-09"
    assert "slip 1  Peplum top" in lines
    kinds = ("figure", "fitting", "note", "photo", "slip")
    for kind in kinds:
        listed = [x for x in run("card", "1").stdout.splitlines() if x.startswith(kind)]
        number = listed[0].split()[1]
        asked = run("forget", f"--{kind}", number, answer="n\n")
        assert asked.exit_code == 1 and "for good?" in asked.output
        done = run("forget", f"--{kind}", number, "--yes")
        assert done.exit_code == 0 and "is gone from the book." in done.stdout
        assert listed[0] not in run("card", "1").stdout.splitlines()
        again = run("forget", f"--{kind}", number, "--yes")
        assert again.exit_code == 3 and "in the book" in again.stderr
    for words in ([], ["1", "--slip", "1"], ["--note", "1", "--photo", "1"]):
        misused = run("forget", *words)
        assert misused.exit_code == 2 and "Name a client, or one of" in misused.stderr


def test_a_client_is_named_or_the_command_says_who_could_be_meant(place: Path) -> None:
    missing = run("forget", "Nobody", "--yes")
    assert missing.exit_code == 3
    assert missing.stderr.startswith("There is no client Nobody in the book;")
    with open_book(place) as book:
        book.clients.add("Odile Marchbank")
    twice = run("forget", "Odile Marchbank", "--yes")
    assert twice.exit_code == 3
    assert twice.stderr == "2 clients have this name; say 2, 3.\n"
    assert len(run("clients").stdout.splitlines()) == 3


@pytest.mark.parametrize("words", [["clients"], ["backup", "x"], ["import", "x"]])
def test_a_place_that_is_no_book_is_one_sentence(
    tmp_path: Path, words: list[str]
) -> None:
    (tmp_path / "words").write_text("The neck is deeper. " * 90)
    done = run("--book", tmp_path / "words", *words)
    assert done.exit_code == 3
    assert done.stderr == "This file is not a book; name another file.\n"


def test_the_other_commands_do_not_load_the_book() -> None:
    import subprocess
    import sys

    code = (
        "import sys, clothwright.cli; "
        "print({'sqlalchemy', 'alembic', 'PIL'} & set(sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    assert done.stdout == "set()\n"


def test_a_fitting_is_written_down_and_taken_over(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "fittings.db"
    monkeypatch.setenv("CLOTHWRIGHT_BOOK", str(path))
    text = whole_order("peplum-top")
    with open_book(path, clock=Clock()) as book:
        brida = book.clients.add("Brida Hollin")
        book.slips.add(brida, "Peplum top", text)
        book.slips.add(brida, "Second top", text)
    assert "2. Front armhole closed" in run("seen", 1, "gape at front armhole").stdout
    done = run("seen", 1, "gape at front armhole", "--by", "1/4", "--take", 1)
    assert done.stdout.startswith("Slip 1: tightening of the front armhole (ta)")
    run("seen", 1, "waist easy when singing", "--keep")
    lines = run("fittings", "Brida Hollin").stdout.splitlines()
    assert lines[0].endswith(
        "slip 1  gape at front armhole: tightening of the front armhole (ta): "
        "from 0 in to ¼ in"
    )
    assert lines[1].endswith("waist easy when singing: kept as it is")
    offered = run("take-over", 2).stdout
    assert "At her last fitting (slip 1): tightening of the front armhole" in offered
    assert run("take-over", 2, "--take", 1).exit_code == 0
    assert "nothing to take over" in run("take-over", 2).stdout
    with open_book(path) as book:
        assert 'tightened = "1/4 in"' in book.line.text(book.slips.numbered(2))
    for words, why in (
        (("seen", 1, "zzz"), "lists all"),
        (("seen", 9, "neck tight"), "There is no slip 9"),
        (("seen", 1, "neck tight", "--take", 9), "candidates"),
        (("take-over", 2, "--take", 4), "take over"),
    ):
        done = run(*words)
        assert done.exit_code in (0, 2, 3), done.output
        assert why in done.output, (words, done.output)
