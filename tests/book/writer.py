"""Writes in a book until it is killed: the other half of `test_kill`.

For each line of input a child is forked (what it needs is loaded by then) that opens
the book and writes; each line of its output is what the book has acknowledged.
"""

import os
import sys
from collections.abc import Iterable
from datetime import date
from itertools import count

from books import picture, slip
from clothwright.book import Book, open_book
from clothwright.units import Unit


def say(words: str) -> None:
    """One whole line at once, whatever happens next."""
    os.write(1, f"{words}\n".encode())


PHOTO = picture("PNG")


def write(book: Book, round_: int, numbers: Iterable[int]) -> None:
    """Write and say so, eight kinds in turn."""
    made = book.slips.all()[-1]
    client = book.clients.get(made.client_id)
    for n in numbers:
        name = f"{round_}.{n}"
        match n % 8:
            case 0:
                client = book.clients.add(name)
                made = book.slips.add(client, name, f"# {name}.0\n")
                what = "slip"
            case 1 | 5:
                made = slip(book.line.save(made, f"# {name}\n", "More."))
                what = "state"
            case 2:
                made = slip(book.bastings.baste(made, f"# {name}\n", "Tried."))
                what = "basting"
            case 3:
                book.measures.record(
                    client, {"W": "28"}, unit=Unit.IN, taken=date(2025, 3, 9), note=name
                )
                what = "measure"
            case 4:
                book.photos.add(made, PHOTO, name)
                what = "photo"
            case 6:
                book.notes.add(client, name)
                what = "note"
            case _:
                made = slip(book.bastings.unpick(made))
                what = "unpicking"
        say(f"{what} {name}")


def main(book: Book | None) -> None:
    """A child for each line of input: a path where a book is to be made, or a round."""
    say("ready")
    for line in sys.stdin:
        child = os.fork()
        if not child:
            say(f"pid {os.getpid()}")
            if book is None:
                open_book(line.strip())
                say("open")
                os._exit(0)
            round_ = int(line)
            write(book, round_, count(round_ % 8))  # each kind is often killed first
        os.waitpid(child, 0)
        say("dead")


if len(sys.argv) > 1:
    with open_book(sys.argv[1]) as book:
        write(book, 0, range(8))  # all that a child needs is loaded by then
    # the file is closed before the forks: each child has a connection of its own
    main(book)
else:
    main(None)
