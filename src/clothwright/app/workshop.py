"""What all pages share: the book, the open rooms, the templates."""

import asyncio
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from importlib import resources
from pathlib import Path
from typing import Any

import tomli_w
from fastapi.templating import Jinja2Templates
from markupsafe import Markup
from starlette.requests import HTTPConnection, Request
from starlette.responses import Response

from clothwright import __version__
from clothwright.app.keeping import InBook
from clothwright.app.room import Room
from clothwright.app.slipfile import in_unit, read_slip
from clothwright.app.tabs import Desk
from clothwright.body import read_body
from clothwright.book import Book, Client, Slip
from clothwright.order import OrderError
from clothwright.units import Unit, opening

HERE = Path(str(resources.files("clothwright.app")))
OPEN = 20
"""Rooms that stay open when nobody looks at them."""


@dataclass
class Workshop:
    """One running app: the book and the slips that lie open."""

    book: Book
    desks: dict[int, Desk] = field(default_factory=dict)
    lock: asyncio.Lock = field(default_factory=asyncio.Lock)

    def __post_init__(self) -> None:
        self.pages = Jinja2Templates(directory=HERE / "pages")
        self.pages.env.globals.update(version=__version__)
        self.pages.env.filters["day"] = day
        self.pages.env.filters["figured"] = figured
        self.pages.env.filters["first_up"] = opening

    async def desk(self, number: int) -> Desk:
        """The desk of a slip, opened if need be. Raises BookError, OrderError."""
        async with self.lock:
            desk = self.desks.get(number)
            if desk is None:
                desk = await asyncio.to_thread(self._open, number)
                desk.loop = asyncio.get_running_loop()
                self.desks[number] = desk
                self._tidy()
            return desk

    def _open(self, number: int) -> Desk:
        keeper = InBook(self.book, self.book.slips.numbered(number))
        return Desk(Room(keeper), lambda: head(keeper.slip))

    def _tidy(self) -> None:
        idle = [n for n, d in self.desks.items() if not d.tabs]
        for number in idle[: max(0, len(self.desks) - OPEN)]:
            self.desks.pop(number).work.bolt.close()

    def drop(self, number: int) -> None:
        """Forget an open room, whose slip was deleted or restored."""
        desk = self.desks.pop(number, None)
        if desk is not None:
            desk.work.bolt.close()
            for tab in desk.tabs:
                tab.gone.set()

    async def refresh(self, client: int | None = None) -> None:
        """Draw open slips anew, all or a client's: her card or the shelf changed."""
        for desk in list(self.desks.values()):
            keeper = desk.room.keeper
            assert isinstance(keeper, InBook)
            if client in (None, keeper.slip.client_id):
                async with desk.lock:
                    await asyncio.to_thread(keeper.fresh)
                    await asyncio.to_thread(desk.room.reread)
                    await asyncio.to_thread(desk.work.follow)
                desk.wake()

    def page(
        self, request: Request, name: str, status: int = 200, **values: Any
    ) -> Response:
        """A page from its template."""
        return self.pages.TemplateResponse(request, name, values, status_code=status)


def workshop_of(connection: HTTPConnection) -> Workshop:
    """The workshop that a request came to."""
    found = connection.app.state.workshop
    assert isinstance(found, Workshop)
    return found


def head(slip: Slip) -> dict[str, Any]:
    """What heads a slip."""
    return {
        "number": slip.number,
        "client": slip.client,
        "garment": slip.title,
        "wanted": day(slip.wanted),
        "changed": f"{slip.changed.astimezone():%H:%M}",
    }


def day(d: date | None) -> str:
    """A day in words: "Friday 14 June"; with its year when that is another."""
    if d is None:
        return ""
    year = "" if d.year == date.today().year else f" {d.year}"
    return f"{d:%A} {d.day} {d:%B}{year}"


_FRACTION = re.compile(r"(?:(\d+) )?(\d+)/(\d+)")


def figured(text: str) -> Markup:
    """Words with their fractions built from small figures, as the slip has them."""
    out, done = Markup(), 0
    for m in _FRACTION.finditer(text):
        out += text[done : m.start()]
        out += Markup(
            '<span class="fr" role="text" aria-label="{}">{}<sup>{}</sup><i>\u2044</i>'
            "<sub>{}</sub></span>"
        ).format(m[0], m[1] or "", m[2], m[3])
        done = m.end()
    return out + text[done:]


# -- styles to start from ------------------------------------------------------------
def styles() -> Mapping[str, Mapping[str, Any]]:
    """Orders to start from, by file name, as their tables."""
    out = {}
    for file in sorted(resources.files("clothwright.demo").iterdir(), key=str):
        if file.name.endswith(".toml"):
            table = read_slip(file.read_text(encoding="utf-8"))
            if "feature" in table:
                out[file.name.removesuffix(".toml")] = table
    return out


def made_up(book: Book, style: str) -> Slip:
    """A made-up client with her measures, and a slip in a style, to try things on.

    Raises OrderError when the style is not on the shelf.
    """
    table = _style(style)
    text = resources.files("clothwright.demo").joinpath(str(table["measures"]))
    body = read_body(text.read_text(encoding="utf-8"), "the made-up client")
    client = next((c for c in book.clients.all() if c.name == body.client), None)
    if client is None:
        client = book.clients.add(body.client)
    if not book.measures.history(client):
        typed = {v.code: v.typed for v in body.values.values()}
        book.measures.record(
            client,
            typed,
            unit=body.unit,
            taken=min(body.taken or date.today(), date.today()),
            by=body.by,
        )
    return new_slip(book, client, style, str(table.get("garment", "")), None)


def new_slip(
    book: Book, client: Client, style: str, title: str, wanted: date | None
) -> Slip:
    """A slip in a style on a client's newest measures, in the unit in which these were
    taken. Raises BookError, OrderError."""
    measured = book.measures.table(client)
    unit = Unit.IN if measured["unit"] == "in" else Unit.CM
    found = in_unit(_style(style), unit)
    table = {k: v for k, v in found.items() if k not in ("measures", "number")}
    table.update(measured)
    table["garment"] = title or str(table.get("garment", "Garment"))
    text = tomli_w.dumps(table)
    return book.slips.add(client, table["garment"], text, wanted=wanted)


def _style(name: str) -> Mapping[str, Any]:
    found = styles().get(name)
    if found is None:
        raise OrderError("That style is not on the shelf; choose one that is.")
    return found
