"""Deleting for good: a client, a slip, a figure, a whole measuring, a note, a photo.

Each is asked about on a page of its own, which says what goes and what stays.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Form
from starlette.requests import Request
from starlette.responses import Response

from clothwright.app.workshop import Workshop, workshop_of
from clothwright.body import measures
from clothwright.book import Book, BookError, Forgettable
from clothwright.order import OrderError

router = APIRouter()
Text = Annotated[str, Form()]


@dataclass(frozen=True)
class _Asked:
    """What is to go, in words, and what is to be drawn anew then."""

    things: tuple[Forgettable, ...]
    what: str
    goes: str
    client: int | None = None
    slip: int | None = None


_FIGURES_STAY = "Slips that were drawn with it keep their own figures."


def _slip(book: Book, number: int) -> _Asked:
    slip = book.slips.numbered(number)
    goes = (
        f"The order for {slip.client} ({slip.title}) goes with every earlier state, "
        "its notes and its photos. Its number is not given again."
    )
    return _Asked((slip,), f"slip {number}", goes, slip=number)


def _figure(book: Book, number: int) -> _Asked:
    m = book.measures.get(number)
    history = book.measures.history(book.clients.get(m.client_id))
    others = [x for x in history if x.code == m.code and x.id != m.id]
    then = "the newest of the others counts" if others else "none is left of it"
    what = f"the {measures()[m.code].said} of {m.taken:%-d %B %Y}"
    goes = f"{m.typed} goes from the card; {then}. "
    return _Asked((m,), what, goes + _FIGURES_STAY, client=m.client_id)


def _measuring(book: Book, number: int) -> _Asked:
    m = book.measures.get(number)
    history = book.measures.history(book.clients.get(m.client_id))
    day = tuple(x for x in history if x.taken == m.taken)
    figures = f"{len(day)} figures go" if len(day) > 1 else "One figure goes"
    goes = f"{figures} from the card; those of other days count. {_FIGURES_STAY}"
    what = f"all that was measured on {m.taken:%-d %B %Y}"
    return _Asked(day, what, goes, client=m.client_id)


def _note(book: Book, number: int) -> _Asked:
    note = book.notes.get(number)
    return _Asked((note,), "this note", f"“{note.text.strip()}” goes.")


def _photo(book: Book, number: int) -> _Asked:
    photo = book.photos.get(number)
    return _Asked(
        (photo,), "this photo", photo.caption and f"It shows {photo.caption}."
    )


_KINDS: Mapping[str, Callable[[Book, int], _Asked]] = {
    "slip": _slip,
    "figure": _figure,
    "measuring": _measuring,
    "note": _note,
    "photo": _photo,
}


def _asked(shop: Workshop, kind: str, number: int) -> _Asked:
    found = _KINDS.get(kind)
    if found is None:
        raise OrderError("There is nothing of this kind to delete.")
    return found(shop.book, number)


def _back(back: str) -> str:
    """A place of the workroom's own to go back to."""
    return back if back.startswith("/") and "//" not in back else "/"


@router.get("/forget/{kind}/{number}")
def ask(request: Request, kind: str, number: int, back: str = "/") -> Response:
    """Ask before one thing is deleted for good."""
    shop = workshop_of(request)
    asked = _asked(shop, kind, number)
    return shop.page(
        request, "forget.html", asked=asked, number=number, back=_back(back)
    )


@router.post("/forget/{kind}/{number}")
async def forget(
    request: Request, kind: str, number: int, back: Text = "/"
) -> Response:
    """Delete one thing for good."""
    shop = workshop_of(request)
    asked = _asked(shop, kind, number)
    if asked.slip is not None:
        shop.drop(asked.slip)
    gone = shop.book.forget(*asked.things)
    if asked.client is not None:
        await shop.refresh(asked.client)
    return shop.page(
        request, "forgotten.html", asked=asked, gone=gone, back=_back(back)
    )


@router.get("/cards/{client_id}/forget")
def ask_client(request: Request, client_id: int) -> Response:
    """Ask before a client is deleted for good."""
    shop = workshop_of(request)
    client = shop.book.clients.get(client_id)
    slips = shop.book.slips.of(client)
    return shop.page(request, "forget_client.html", client=client, slips=slips)


@router.post("/cards/{client_id}/forget")
def forget_client(request: Request, client_id: int, name: Text = "") -> Response:
    """Delete a client for good, with all that belongs to her."""
    shop = workshop_of(request)
    book = shop.book
    client = book.clients.get(client_id)
    if name.strip() != client.name:
        raise BookError(f"Write {client.name} as it stands, so that it is meant.")
    for slip in book.slips.of(client):
        shop.drop(slip.number)
    gone = book.forget(client)
    return shop.page(request, "forgotten.html", asked=None, gone=gone, back="/cards")
