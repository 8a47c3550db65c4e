"""Fittings in the book: what was seen on a slip, and what is taken over to the next.

`clothwright book seen`, `clothwright book fittings`, `clothwright book take-over`.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from clothwright.cli_book import _client, _open
from clothwright.cli_fitting import told
from clothwright.cli_shared import MISUSED, refuse

if TYPE_CHECKING:
    from clothwright.book import Book, Slip
    from clothwright.order import Order
    from clothwright.order.fittings import Candidate

Number = Annotated[int, typer.Argument(help="Number of the slip.")]


def seen(
    context: typer.Context,
    slip: Number,
    words: Annotated[str, typer.Argument(help='What was seen: "gape at front neck".')],
    by: Annotated[
        str, typer.Option(help='How much, each half: "3/8 in"; else the usual start.')
    ] = "",
    take: Annotated[
        int, typer.Option(help="Alter the slip by this candidate of the list.")
    ] = 0,
    keep: Annotated[
        bool, typer.Option("--keep", help="Write it down and alter nothing.")
    ] = False,
) -> None:
    """Write down what was seen at a fitting, and alter the slip by a candidate."""
    from clothwright.features.fittings.seen import seen_by
    from clothwright.order import OrderError
    from clothwright.order.fittings import candidates
    from clothwright.units import LengthError, parse_length

    with _open(context) as book:
        on = book.slips.numbered(slip)
        if keep:
            book.fittings.add(on, words)
            print(f"Slip {slip}: {words}. Nothing altered.")
            return
        try:
            order = _order(book, on)
            row = seen_by(words)
            amount = parse_length(by, order.unit) if by else None
            found = candidates(order, row, amount)
        except OrderError as e:
            refuse(e.sentences)
        except (LengthError, ValueError) as e:
            refuse((str(e),), MISUSED)
        if not take:
            print(f"Seen: {row.words}.")
            for i, c in enumerate(found, 1):
                print("\n".join(told(i, c, order.unit)))
            print("Take one with --take, or write it down alone with --keep.")
            return
        if not 1 <= take <= len(found):
            refuse((f"there are {len(found)} candidates; say one of them",), MISUSED)
        _take(book, on, found[take - 1], row.words)


def fittings(
    context: typer.Context,
    client: Annotated[str, typer.Argument(help="Name or number of the client.")],
) -> None:
    """List what was seen and decided at a client's fittings."""
    with _open(context) as book:
        hers = book.fittings.of(_client(book, client))
        for d in hers:
            then = f": {d.said}" if d.said else ": kept as it is"
            print(f"{d.at.astimezone():%Y-%m-%d}  slip {d.slip}  {d.seen}{then}")
        if not hers:
            print("Nothing was seen at a fitting yet.")


def take_over(
    context: typer.Context,
    slip: Number,
    take: Annotated[int, typer.Option(help="Take this one of the list over.")] = 0,
) -> None:
    """Offer what was decided at a client's last fitting for her next slip."""
    from clothwright.book.fittings import last_fitting
    from clothwright.order import OrderError
    from clothwright.order.fittings import taken_over, told_again

    with _open(context) as book:
        on = book.slips.numbered(slip)
        try:
            order = _order(book, on)
            client = book.clients.get(on.client_id)
            last = last_fitting(book.fittings.of(client), on)
            tried = ((d, taken_over(order, d.kind, d.what, d.amount)) for d in last)
            offers = [(d, c) for d, c in tried if c is not None]
        except OrderError as e:
            refuse(e.sentences)
        if not offers:
            print(f"There is nothing to take over for slip {slip}.")
            return
        if not take:
            for i, (d, c) in enumerate(offers, 1):
                said = told_again(d.kind, d.what, d.amount, order.unit)
                print(f"{i}. At her last fitting (slip {d.slip}): {said}.")
                for s in c.refused:
                    print(f"   It cannot be drawn so: {s}")
            print("Take one over with --take.")
            return
        if not 1 <= take <= len(offers):
            refuse((f"there are {len(offers)} to take over; say one",), MISUSED)
        d, c = offers[take - 1]
        _take(book, on, c, f"{d.seen} (slip {d.slip})")


def _take(book: Book, on: Slip, c: Candidate, words: str) -> None:
    import tomli_w

    from clothwright.book import Stale
    from clothwright.order.file import toml_table
    from clothwright.order.fittings import in_table

    if c.refused:
        refuse(c.refused)
    table = in_table(toml_table(book.line.text(on), f"slip {on.number}"), c)
    said = f"At the fitting: {c.said}"
    kept = book.line.save(on, tomli_w.dumps(table), said)
    if isinstance(kept, Stale):
        refuse((kept.sentence,))
    book.fittings.add(
        kept, words, said=c.said, kind=c.kind, what=c.what, amount=c.change
    )
    print(f"Slip {on.number}: {c.said}. All seams meet.")


def _order(book: Book, slip: Slip) -> Order:
    """The order as it lies on a slip, with the house rules of the shelf. Raises
    OrderError."""
    from clothwright.book import HOUSE_RULES
    from clothwright.order.file import order_from_text

    place = f"slip {slip.number}"
    order = order_from_text(book.line.text(slip), place, Path())
    house = book.shelf.get(HOUSE_RULES)
    if house is not None and house.text:
        order = replace(order, house_text=house.text, house_place=HOUSE_RULES)
    return order


def add_to(app: typer.Typer) -> None:
    """Put these commands among those of the book."""
    app.command()(seen)
    app.command()(fittings)
    app.command("take-over")(take_over)
