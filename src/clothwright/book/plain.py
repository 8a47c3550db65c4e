"""The plain files of an export: what stands in which, for writing and for reading.

    book.toml                        format, the last number given to a slip
    shelf.toml, shelf/…              what lies on the shelf
    clients/001-brida-hollin/
      client.toml                    name, every figure ever taken, notes, photos
      measures.toml                  the newest figures, as an order names them
      photos/001.jpg
      slips/0214/
        slip.toml                    head, states, moves, basting, fittings, leaves,
                                     notes, photos
        order.toml                   the order as it lies on the table
        basted.toml
        leaves/001-lay-shell.toml    what lies with the slip: a lay, ticks, what it took
        states/0001.toml             the order's text at each state
        photos/001.jpg

`measures.toml` and `order.toml` are copies for other uses; an import leaves them.
"""

import re
import tomllib
import unicodedata
from datetime import date
from typing import Annotated, TypeVar

import tomli_w
from pydantic import AwareDatetime, BaseModel, ConfigDict, Field, ValidationError

from clothwright.book.errors import BookError
from clothwright.book.slips import HIGHEST_NUMBER
from clothwright.book.values import PhotoKind, Side
from clothwright.units import Unit

FORMAT = 3
"""1 had no fittings, 2 no leaves."""

BOOK, SHELF = "book.toml", "shelf.toml"
CLIENT, SLIP = "client.toml", "slip.toml"
MEASURES, ORDER, BASTED = "measures.toml", "order.toml", "basted.toml"

TEXT_LIMIT = 32 * 1024**2
"""Bytes in a plain file that is no photo."""

ENDINGS = {PhotoKind.JPEG: "jpg", PhotoKind.PNG: "png", PhotoKind.WEBP: "webp"}

Counted = Annotated[int, Field(ge=1, le=HIGHEST_NUMBER)]


class Page(BaseModel):
    """What all plain files have in common."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class BookPage(Page):
    """`book.toml`."""

    format: int
    last_number: Annotated[int, Field(ge=0, le=HIGHEST_NUMBER)] = 0


class NoteRow(Page):
    """One note."""

    at: AwareDatetime
    text: str


class PhotoRow(Page):
    """One photo; `file` is beside the page, in `photos`."""

    at: AwareDatetime
    caption: str
    file: str


class MeasureRow(Page):
    """One figure as it was taken."""

    code: str
    side: Side
    typed: str
    unit: Unit
    taken: date
    how: str
    by: str
    note: str
    recorded: AwareDatetime


class ClientPage(Page):
    """`client.toml`."""

    name: str
    made: AwareDatetime
    changed: AwareDatetime
    measure: tuple[MeasureRow, ...] = ()
    note: tuple[NoteRow, ...] = ()
    photo: tuple[PhotoRow, ...] = ()


class StateRow(Page):
    """One state; its text is in `states`."""

    number: Counted
    parent: Counted | None = None
    at: AwareDatetime
    said: str


class MoveRow(Page):
    """Which state lay on the table since when."""

    state: Counted
    at: AwareDatetime


class BastedRow(Page):
    """What is basted; its text is in `basted.toml`."""

    on_state: Counted
    at: AwareDatetime
    said: str


class FittingRow(Page):
    """What was seen at a fitting, and what was decided."""

    at: AwareDatetime
    seen: str
    said: str = ""
    kind: str = ""
    what: str = ""
    amount: float = 0.0


class LeafRow(Page):
    """One leaf; its text is in `file`. State 0: of the slip as a whole."""

    name: str
    state: Annotated[int, Field(ge=0, le=HIGHEST_NUMBER)]
    at: AwareDatetime
    file: str


class SlipPage(Page):
    """`slip.toml`."""

    number: Counted
    title: str
    wanted: date | None = None
    handed_over: date | None = None
    made: AwareDatetime
    changed: AwareDatetime
    state: Counted
    tip: Counted
    states: tuple[StateRow, ...]
    moves: tuple[MoveRow, ...]
    basted: BastedRow | None = None
    fitting: tuple[FittingRow, ...] = ()
    leaf: tuple[LeafRow, ...] = ()
    note: tuple[NoteRow, ...] = ()
    photo: tuple[PhotoRow, ...] = ()


class ShelfRow(Page):
    """One thing on the shelf."""

    name: str
    changed: AwareDatetime
    file: str


class ShelfPage(Page):
    """`shelf.toml`."""

    item: tuple[ShelfRow, ...] = ()


def to_toml(page: Page) -> bytes:
    """A page as a plain file."""
    table = page.model_dump(exclude_none=True)
    return tomli_w.dumps(_plain(table)).encode()


def _plain(value: object) -> dict[str, object]:
    assert isinstance(value, dict)
    return {k: _value(v) for k, v in value.items() if v != ()}


def _value(value: object) -> object:
    if isinstance(value, dict):
        return _plain(value)
    if isinstance(value, tuple):
        return [_value(v) for v in value]
    if isinstance(value, Side | Unit):
        return value.value
    return value


P = TypeVar("P", bound=Page)


def from_toml(kind: type[P], data: bytes, place: str) -> P:
    """A page from a plain file. Raises BookError with the place and the fault."""
    try:
        return kind.model_validate(tomllib.loads(data.decode()))
    except ValidationError as e:
        first = e.errors(include_url=False)[0]
        where = ", ".join(
            f"{part + 1}" if isinstance(part, int) else part for part in first["loc"]
        )
        raise BookError(f"{place}, {where}: {first['msg']}.") from None
    except UnicodeDecodeError:
        raise BookError(f"{place} is not plain text (UTF-8).") from None
    except tomllib.TOMLDecodeError as e:
        raise BookError(f"{place} is miswritten: {e}.") from None
    except RecursionError:
        raise BookError(f"{place} is miswritten: its brackets are too deep.") from None


def slug(name: str) -> str:
    """A name as part of a file's name, plain letters only: "brida-hollin"."""
    letters = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore")
    return re.sub(r"[^a-z0-9]+", "-", letters.decode()).strip("-")[:40] or "client"
