"""What the book acknowledged survives a kill at any moment (200 kills in mid-write)."""

import os
import random
import signal
import sqlite3
import subprocess
import sys
import time
from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from books import Clock, fill
from clothwright.book import open_book
from clothwright.book.pictures import bare

ROUNDS = 200
MOST_WRITES = 6
"""After so many acknowledgements at most a writer is killed."""

LONGEST_WRITE = 0.006
"""Seconds; a kill comes at any moment of the next write."""

KEPT = {
    "slip": "SELECT c.name FROM clients c JOIN slips s ON s.client_id = c.id",
    "state": "SELECT text FROM states WHERE number > 1",
    "measure": "SELECT note FROM measures",
    "photo": "SELECT caption FROM photos",
    "note": "SELECT text FROM notes",
}
"""Where what is acknowledged by a word is found."""

pytestmark = pytest.mark.skipif(os.name != "posix", reason="kills by signal")


class Writer:
    """A program that writes in a book and is killed."""

    def __init__(self, process: subprocess.Popen[str]) -> None:
        assert process.stdin is not None
        assert process.stdout is not None
        self._to, self._from = process.stdin, process.stdout
        while self._line() != "ready":
            pass

    def _line(self) -> str:
        return self._from.readline().strip()

    def killed(self, line: str, writes: int, then: float) -> list[str]:
        """What it acknowledged until a kill, `then` seconds after so many writes."""
        self._to.write(f"{line}\n")
        self._to.flush()
        word, pid = self._line().split()
        assert word == "pid"
        said = [self._line() for _ in range(writes)]
        time.sleep(then)
        with suppress(ProcessLookupError):  # a quick machine: it was done already
            os.kill(int(pid), signal.SIGKILL)
        while (line := self._line()) != "dead":
            said.append(line)
        return said


@contextmanager
def writer(*arguments: str) -> Iterator[Writer]:
    """A writer that waits for its rounds."""
    tests = Path(__file__).parents[1]
    with subprocess.Popen(
        [sys.executable, str(tests / "book/writer.py"), *arguments],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(tests), *sys.path])},
    ) as process:
        made = Writer(process)
        yield made
        assert process.stdin is not None
        process.stdin.close()


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    """A folder in memory where there is one: a kill does not reach what the system
    holds, and 200 rounds take a quarter of the time."""
    memory = Path("/dev/shm")
    if not memory.is_dir():
        yield tmp_path
        return
    with TemporaryDirectory(dir=memory) as made:
        yield Path(made)


def test_nothing_acknowledged_is_lost_by_a_kill(folder: Path) -> None:
    path, chance = folder / "book.db", random.Random(20270503)
    with open_book(path, clock=Clock()) as book:
        fill(book)
    acknowledged: dict[str, set[str]] = defaultdict(set)
    with writer(str(path)) as it:
        for round_ in range(1, ROUNDS + 1):
            said = it.killed(
                str(round_),
                chance.randint(0, MOST_WRITES),
                chance.uniform(0, LONGEST_WRITE),
            )
            _check(path, said)
            for line in said:
                what, name = line.split()
                acknowledged[what].add(name)
    kept = _kept(path)
    for what in KEPT:
        assert acknowledged[what] <= kept[what]
        rounds = [n.split(".")[0] for n in kept[what] - acknowledged[what]]
        rounds = [r for r in rounds if r.isdigit() and r != "0"]
        assert len(set(rounds)) == len(rounds), "one write at most was not yet said"
        assert len(acknowledged[what]) > ROUNDS / 10, "each kind was often written"
    with open_book(path) as book:
        for slip in book.slips.all():
            assert book.line.text(slip)
            for photo in book.photos.of(slip):
                data = book.photos.data(photo)
                assert (len(data), bare(data)) == (photo.size, (data, photo.kind))


def test_a_kill_while_the_book_is_made_leaves_one_to_open(folder: Path) -> None:
    chance = random.Random(3)
    with writer() as it:
        for round_ in range(10):
            path = folder / f"book-{round_}.db"
            it.killed(str(path), 0, chance.uniform(0, 0.3))
            with open_book(path) as book:
                book.clients.add("Thea Vane")
                assert [k.name for k in book.clients.all()] == ["Thea Vane"]


def _check(path: Path, said: list[str]) -> None:
    """After each kill: the file is whole, and what was acknowledged is there."""
    with sqlite3.connect(path) as c:
        assert c.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert c.execute("PRAGMA foreign_key_check").fetchall() == []
        basted = {t.strip("# \n") for (t,) in c.execute("SELECT text FROM basted")}
    c.close()
    kept = _kept(path)
    for line in said:
        what, name = line.split()
        assert what not in KEPT or name in kept[what], f"{line} is lost"
    if said and said[-1].startswith(("measure", "photo")):  # no unpicking was under way
        tried = [line.split()[1] for line in said if line.startswith("basting")]
        assert set(tried[-1:]) <= basted, "the basting is lost"


def _kept(path: Path) -> dict[str, set[str]]:
    with sqlite3.connect(path) as c:
        found = {
            what: {str(v).strip("# \n") for (v,) in c.execute(statement)}
            for what, statement in KEPT.items()
        }
    c.close()
    return found
