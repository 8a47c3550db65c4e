"""The command line of the book: `clothwright book …`.

The book is the file under the user's data folder, or what --book or CLOTHWRIGHT_BOOK
names. Exit codes: 0 done; 2 the command was misused; 3 the book could not do it.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from clothwright.book import Book, Client, Forgettable, Slip

app = typer.Typer(
    rich_markup_mode=None,
    no_args_is_help=True,
    help="Clients, measures and orders: back up, export, forget.",
)

MISUSED, REFUSED = 2, 3

Yes = Annotated[bool, typer.Option("--yes", help="Do not ask.")]


@dataclass(frozen=True)
class _Place:
    """Which book was named, if any."""

    place: str | None


@app.callback()
def _named(
    context: typer.Context,
    book: Annotated[
        str | None,
        typer.Option(
            envvar="CLOTHWRIGHT_BOOK",
            show_envvar=True,
            help="File of the book, or postgresql://name@server/book.",
        ),
    ] = None,
) -> None:
    context.obj = _Place(book)


@contextmanager
def _open(context: typer.Context) -> Iterator[Book]:
    """The book; its refusals end the command with a sentence."""
    from clothwright.book import BookError, open_book

    named: _Place = context.obj
    try:
        with open_book(named.place) as book:
            yield book
    except BookError as e:
        print(e, file=sys.stderr)
        raise typer.Exit(REFUSED) from None


@app.command()
def clients(context: typer.Context) -> None:
    """List every client: number, name, slips."""
    with _open(context) as book:
        slips = book.slips.all()
        for client in book.clients.all():
            numbers = sorted(s.number for s in slips if s.client_id == client.id)
            hers = f"  slips {', '.join(map(str, numbers))}" if numbers else ""
            print(f"{client.id}  {client.name}{hers}")


@app.command()
def backup(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(help="File for the backup.")],
) -> None:
    """Write the whole book to one file."""
    with _open(context) as book:
        book.backup(target)
        print(target)


@app.command()
def restore(
    context: typer.Context,
    source: Annotated[Path, typer.Argument(help="File of a backup.")],
    yes: Yes = False,
) -> None:
    """Replace all that is in the book by a backup."""
    with _open(context) as book:
        if book.clients.all() and not yes:
            typer.confirm(f"Replace all that is in {book.place}?", abort=True)
        book.restore(source)
        print(f"{len(book.clients.all())} clients, {len(book.slips.all())} slips")


@app.command()
def export(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(help="New folder, or a name in .zip.")],
    client: Annotated[
        str | None, typer.Option(help="Only this client: name or number.")
    ] = None,
) -> None:
    """Write the book, or one client, as plain files."""
    with _open(context) as book:
        book.export(target, _client(book, client) if client else None)
        print(target)


@app.command("import")
def import_from(
    context: typer.Context,
    place: Annotated[Path, typer.Argument(help="Folder or zip of an export.")],
) -> None:
    """Add the clients of an export; what is in the book stays."""
    with _open(context) as book:
        done = book.import_from(place)
        for line in (*done.clients, *done.said):
            print(line)


@app.command()
def card(
    context: typer.Context,
    client: Annotated[str, typer.Argument(help="Name or number of the client.")],
) -> None:
    """List what is kept of a client, with the numbers to forget it by."""
    with _open(context) as book:
        hers = _client(book, client)
        for m in book.measures.history(hers):
            side = f" {m.side.value}" if m.side.value else ""
            print(f"figure {m.id}  {m.code}{side} {m.typed}  {m.taken}")
        _written_on(book, hers)
        for slip in book.slips.of(hers):
            print(f"slip {slip.number}  {slip.title}")
            for d in book.fittings.of(slip):
                print(f"fitting {d.id}  {d.seen}{f': {d.said}' if d.said else ''}")
            _written_on(book, slip)


def _written_on(book: Book, on: Client | Slip) -> None:
    for note in book.notes.of(on):
        print(f"note {note.id}  {' '.join(note.text.split())[:60]}")
    for photo in book.photos.of(on):
        print(f"photo {photo.id}  {photo.caption}".rstrip())


_Number = Annotated[int | None, typer.Option(help="Only this one, by its number.")]


@app.command()
def forget(
    context: typer.Context,
    client: Annotated[
        str | None, typer.Argument(help="Name or number of a client.")
    ] = None,
    slip: _Number = None,
    figure: _Number = None,
    fitting: _Number = None,
    note: _Number = None,
    photo: _Number = None,
    yes: Yes = False,
) -> None:
    """Delete for good: a client with all that is hers; or one slip, figure, fitting,
    note or photo, by the number that `card` lists."""
    named = [x for x in (client, slip, figure, fitting, note, photo) if x is not None]
    if len(named) != 1:
        print(
            "Name a client, or one of --slip, --figure, --fitting, --note, --photo.",
            file=sys.stderr,
        )
        raise typer.Exit(MISUSED)
    with _open(context) as book:
        thing, said = _to_forget(book, client, slip, figure, fitting, note, photo)
        if not yes:
            typer.confirm(f"Delete {said} for good?", abort=True)
        gone = book.forget(thing)
        print(f"{gone.what} is gone from the book.")
        if gone.traces:
            print(
                "Some bytes are left in the file, for another program has it open or "
                "the disk is full; they go when the book is next opened alone."
            )
        whom = "her" if client else "it"
        print(f"Backups and exports that you made before still have {whom}.")


def _to_forget(
    book: Book,
    client: str | None,
    slip: int | None,
    figure: int | None,
    fitting: int | None,
    note: int | None,
    photo: int | None,
) -> tuple[Forgettable, str]:
    """The one thing that is named, and what to ask about it. Raises BookError."""
    if client is not None:
        hers = _client(book, client)
        n = len(book.slips.of(hers))
        return hers, f"{hers.name} and {n} slip{'' if n == 1 else 's'}"
    if slip is not None:
        s = book.slips.numbered(slip)
        return s, f"slip {s.number} ({s.client}: {s.title})"
    if figure is not None:
        m = book.measures.get(figure)
        return m, f"{m.code} {m.typed} of {m.taken}"
    if fitting is not None:
        d = book.fittings.get(fitting)
        return d, f"what was seen on slip {d.slip}: {d.seen}"
    if note is not None:
        return book.notes.get(note), f"note {note}"
    p = book.photos.get(photo or 0)
    return p, f"photo {p.id}{f' ({p.caption})' if p.caption else ''}"


def _client(book: Book, name: str) -> Client:
    """A client by name or number; one alone must fit. Raises BookError."""
    from clothwright.book import BookError

    every = book.clients.all()
    found = [k for k in every if str(k.id) == name] or [
        k for k in every if k.name.casefold() == " ".join(name.split()).casefold()
    ]
    if len(found) == 1:
        return found[0]
    if found:
        numbers = ", ".join(str(k.id) for k in found)
        raise BookError(f"{len(found)} clients have this name; say {numbers}.")
    raise BookError(
        f"There is no client {name} in the book; `clothwright book clients` lists all."
    )
