"""What tests of the book share: a clock, an invented order, a whole book."""

import io
import sqlite3
import tomllib
from datetime import UTC, date, datetime, timedelta
from functools import cache
from importlib import resources
from pathlib import Path
from tempfile import mkdtemp

import tomli_w
from PIL import Image

from clothwright.book import (
    HOUSE_RULES,
    Book,
    Client,
    ShelfItem,
    Slip,
    Stale,
    open_book,
)
from clothwright.units import Unit

START = datetime(2027, 5, 3, 8, 0, tzinfo=UTC)

ORDER = (
    resources.files("clothwright.demo")
    .joinpath("peplum-top.toml")
    .read_text(encoding="utf-8")
)


class Clock:
    """A clock that goes on by a minute each time it is looked at."""

    def __init__(self) -> None:
        self.time = START

    def __call__(self) -> datetime:
        self.time += timedelta(minutes=1)
        return self.time


def order(n: int) -> str:
    """An order's text that is unlike all others."""
    return f"{ORDER}\n# state {n}\n"


def long_order(n: int, times: int) -> str:
    """The same, so many times as long: repeated as notes."""
    notes = (order(n) * (times - 1)).splitlines()
    return order(n) + "".join(f"# {line}\n" for line in notes)


def whole_order(name: str) -> str:
    """A demo order's text with its measures in it, as a slip has them."""
    demo = resources.files("clothwright.demo")
    table = tomllib.loads(demo.joinpath(f"{name}.toml").read_text("utf8"))
    taken = tomllib.loads(demo.joinpath(table["measures"]).read_text("utf8"))
    return tomli_w.dumps(
        {**table, "measures": taken["measures"], "client": taken["client"]}
    )


def slip(got: Slip | Stale) -> Slip:
    """A change that was not refused."""
    assert isinstance(got, Slip), got
    return got


def stale(got: object) -> Stale:
    """A change that was refused."""
    assert isinstance(got, Stale), got
    return got


def picture(kind: str = "JPEG", colour: str = "#9c2a2a") -> bytes:
    """A small picture as a file's bytes."""
    out = io.BytesIO()
    Image.new("RGB", (48, 32), colour).save(out, kind)
    return out.getvalue()


def fill(book: Book) -> tuple[Client, Slip]:
    """Some of everything; the client and the slip that have most of it."""
    wenna = book.clients.add("Wenna Årsdotter-Qvist")
    other = book.clients.add("Odile Marchbank")
    for day, waist, how in (
        (date(2026, 3, 9), "28 1/4", "over a slip, tape easy"),
        (date(2027, 4, 30), "28 3/4", "over a dress"),
    ):
        book.measures.record(
            wenna,
            {"W": waist, "B": "36 1/2", "H": "99 cm", "HT": "5.5", "SS": "22"}
            | ({"left": {"SH": "4 7/8"}} if how == "over a dress" else {}),
            unit=Unit.IN,
            taken=day,
            how=how,
            by="M. T.",
            note="after lunch",
            keep=["HT"],
        )
    book.measures.record(other, {"W": "71"}, unit=Unit.CM, taken=date(2027, 5, 1))
    top = book.slips.add(wenna, "Peplum top", order(1), wanted=date(2027, 6, 1))
    book.slips.add(other, "Zip top, brown", order(0))
    top = slip(book.line.save(top, order(2), "The neck is ½ in deeper."))
    top = slip(book.line.undo(top))
    top = slip(book.line.save(top, order(3), 'The peplum is "longer".'))
    top = slip(book.line.save(top, order(4), "A collar."))
    top = slip(book.line.undo(top))
    top = slip(book.bastings.baste(top, order(5), "The back is lower."))
    book.fittings.add(top, "neck tight, she says")
    book.fittings.add(
        top,
        "gape at front armhole",
        said="tightening of the front armhole (ta): from 0 in to ¼ in",
        kind="sleeveless armhole",
        what="tightened",
        amount=0.635,
    )
    book.notes.add(wenna, "Likes her collars wide.\r\nSister of nobody.\n\t'\\\"")
    book.notes.add(top, "Hem by hand")
    book.photos.add(wenna, picture("JPEG"), "at the window")
    book.photos.add(top, picture("PNG"))
    book.photos.add(top, picture("WEBP"), "back gapes")
    book.shelf.put(ShelfItem(HOUSE_RULES, 'unit = "in"\n\n[rules]\ndep = "3 in"\n'))
    book.shelf.put(ShelfItem("calico", "# house word\r\n"))
    return wenna, book.slips.get(top.id)


@cache
def filled() -> tuple[bytes, bytes]:
    """A filled book's file, and its export as a zip."""
    folder = Path(mkdtemp())
    with open_book(folder / "book.db", clock=Clock()) as book:
        fill(book)
        book.export(folder / "export.zip")
    return (folder / "book.db").read_bytes(), (folder / "export.zip").read_bytes()


def old_file(path: Path) -> Path:
    """A book as version 0001 wrote it."""
    dump = Path(__file__).parent / "book" / "old-0001.sql"
    with sqlite3.connect(path) as c:
        c.executescript(dump.read_text("utf8"))
    c.close()
    return path
