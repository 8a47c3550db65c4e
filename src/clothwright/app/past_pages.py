"""A slip's earlier states, notes and photos."""

from datetime import date, datetime
from typing import Annotated

from fastapi import APIRouter, File, Form, UploadFile
from starlette.requests import Request
from starlette.responses import JSONResponse, RedirectResponse, Response

from clothwright.app.forms import day_of
from clothwright.app.keeping import InBook
from clothwright.app.workshop import workshop_of
from clothwright.book import BookError, Client, Slip, Stale

router = APIRouter()
Text = Annotated[str, Form()]


@router.get("/slips/{number}/past")
def past(request: Request, number: int) -> Response:
    """Every state that was ever stitched, and what was written beside it."""
    shop = workshop_of(request)
    slip = shop.book.slips.numbered(number)
    return shop.page(
        request,
        "past.html",
        slip=slip,
        states=reversed(shop.book.line.stitches(slip)),
        notes=shop.book.notes.of(slip),
        photos=shop.book.photos.of(slip),
    )


@router.get("/slips/{number}/beside")
def beside(request: Request, number: int) -> Response:
    """Notes and photos of the slip and of its client's card, the newest first."""
    book = workshop_of(request).book
    slip = book.slips.numbered(number)
    places: tuple[tuple[Slip | Client, str], ...] = (
        (slip, "this slip"),
        (book.clients.get(slip.client_id), "her card"),
    )
    notes = [(n.at, n.text, said) for on, said in places for n in book.notes.of(on)]
    photos = [
        (p.at, p.id, p.caption, said) for on, said in places for p in book.photos.of(on)
    ]
    return JSONResponse(
        {
            "notes": [
                {"day": _day(at), "text": text, "on": on}
                for at, text, on in sorted(notes, reverse=True)
            ],
            "photos": [
                {"day": _day(at), "id": i, "caption": caption, "on": on}
                for at, i, caption, on in sorted(photos, reverse=True)
            ],
        }
    )


def _day(at: datetime) -> str:
    return f"{at.astimezone():%-d %B %Y}"


@router.post("/slips/{number}/past")
async def take_up(
    request: Request, number: int, state: Annotated[int, Form()]
) -> Response:
    """Lay an earlier state on the table again; the later ones stay."""
    desk = await workshop_of(request).desk(number)
    async with desk.lock:
        keeper = desk.room.keeper
        assert isinstance(keeper, InBook)
        keeper.fresh()
        keeper.go_to(state)
        desk.room.reread()
    desk.wake()
    return RedirectResponse(f"/slips/{number}", 303)


@router.post("/slips/{number}/head")
async def change_head(
    request: Request,
    number: int,
    title: Text,
    wanted: Text = "",
    handed_over: Text = "",
) -> Response:
    """Another title or day."""
    from dataclasses import replace

    shop = workshop_of(request)
    slip = shop.book.slips.numbered(number)
    changed = replace(
        slip,
        title=title,
        wanted=day_of(wanted),
        handed_over=(slip.handed_over or date.today()) if handed_over else None,
    )
    kept = shop.book.slips.change(changed)
    if isinstance(kept, Stale):
        raise BookError(kept.sentence)
    desk = shop.desks.get(number)
    if desk is not None:
        async with desk.lock:
            assert isinstance(desk.room.keeper, InBook)
            desk.room.keeper.fresh()
        desk.wake()
    return RedirectResponse(f"/slips/{number}/past", 303)


@router.post("/slips/{number}/notes")
def add_note(request: Request, number: int, text: Text) -> Response:
    """Write a note on the slip."""
    book = workshop_of(request).book
    book.notes.add(book.slips.numbered(number), text)
    return RedirectResponse(f"/slips/{number}/past#notes", 303)


@router.post("/slips/{number}/photos")
async def add_photo(
    request: Request,
    number: int,
    photo: Annotated[UploadFile, File()],
    caption: Text = "",
) -> Response:
    """Lay a photo on the slip."""
    book = workshop_of(request).book
    book.photos.add(book.slips.numbered(number), await photo.read(), caption)
    return RedirectResponse(f"/slips/{number}/past#photos", 303)


@router.get("/photos/{photo_id}")
def photo_file(request: Request, photo_id: int) -> Response:
    """A photo as it was given."""
    book = workshop_of(request).book
    photo = book.photos.get(photo_id)
    return Response(book.photos.data(photo), media_type=photo.kind.value)
