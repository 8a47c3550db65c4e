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
    from clothwright.book import Book, Client

app = typer.Typer(
    rich_markup_mode=None,
    no_args_is_help=True,
    help="Clients, measures and orders: back up, export, forget.",
)

REFUSED = 3

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
def forget(
    context: typer.Context,
    client: Annotated[str, typer.Argument(help="Name or number of the client.")],
    yes: Yes = False,
) -> None:
    """Delete a client for good: card, slips, notes, photos."""
    with _open(context) as book:
        found = _client(book, client)
        if not yes:
            slips = len(book.slips.of(found))
            typer.confirm(
                f"Delete {found.name} and {slips} slip{'' if slips == 1 else 's'} for "
                "good?",
                abort=True,
            )
        gone = book.forget(found)
        print(f"{gone.client} is gone from the book.")
        if gone.traces:
            print(
                "Some bytes are left in the file, for another program has it open or "
                "the disk is full; they go when the book is next opened alone."
            )
        print("Backups and exports that you made before still have her.")


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
