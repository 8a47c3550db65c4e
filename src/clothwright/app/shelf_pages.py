"""The shelf: house rules; and the book itself: backup, restore, plain files."""

import os
import tempfile
from datetime import date
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, File, Form, UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from clothwright.app.forms import number_of
from clothwright.app.workshop import Workshop, styles, workshop_of
from clothwright.book import HOUSE_RULES, RATES, BookError, ShelfItem, Stale
from clothwright.cost import CostError, demo_rates_text, rates_from_text

router = APIRouter()
Text = Annotated[str, Form()]


@router.get("/shelf")
def shelf(request: Request, said: str = "") -> Response:
    """What she keeps for all orders."""
    restored = "The book is as it was in the backup." if said == "restored" else ""
    return _shelf(workshop_of(request), request, 200, said=restored)


def _shelf(
    shop: Workshop,
    request: Request,
    status: int,
    *,
    said: str = "",
    rates: ShelfItem | None = None,
    wrong: tuple[str, ...] = (),
) -> Response:
    own = rates or shop.book.shelf.get(RATES) or ShelfItem(RATES, "")
    return shop.page(
        request,
        "shelf.html",
        status,
        house=shop.book.shelf.get(HOUSE_RULES) or ShelfItem(HOUSE_RULES, ""),
        rates=own,
        invented=not own.text.strip(),
        example=demo_rates_text(),
        wrong=wrong,
        styles={k: t.get("garment", k) for k, t in styles().items()},
        place=shop.book.place,
        clients=shop.book.clients.all(),
        said=said,
    )


@router.post("/shelf/house")
async def house(request: Request, text: Text = "", revision: Text = "0") -> Response:
    """Keep the house rules; every slip that lies open is drawn by them."""
    shop = workshop_of(request)
    at = number_of(revision, "Open the shelf anew and write them again.")
    text = text.replace("\r\n", "\n")
    kept = shop.book.shelf.put(ShelfItem(HOUSE_RULES, text, at))
    if isinstance(kept, Stale):
        raise BookError(kept.sentence)
    await shop.refresh()
    return RedirectResponse("/shelf", 303)


@router.post("/shelf/rates")
async def rates(request: Request, text: Text = "", revision: Text = "0") -> Response:
    """Keep the house's rates; what cannot be read is shown again, with what to mend."""
    shop = workshop_of(request)
    at = number_of(revision, "Open the shelf anew and write them again.")
    text = text.replace("\r\n", "\n")
    try:
        if text.strip():
            rates_from_text(text, "The rates")
    except CostError as e:
        typed = ShelfItem(RATES, text, at)
        return _shelf(shop, request, 400, rates=typed, wrong=e.sentences)
    kept = shop.book.shelf.put(ShelfItem(RATES, text, at))
    if isinstance(kept, Stale):
        raise BookError(kept.sentence)
    await shop.refresh()
    return RedirectResponse("/shelf#rates", 303)


@router.get("/shelf/backup")
def backup(request: Request) -> Response:
    """The whole book as one file."""
    book = workshop_of(request).book
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "book.db"
        book.backup(target)
        return _file(target, f"clothwright-{date.today()}.db")


@router.get("/shelf/export")
def export(request: Request, client: str = "") -> Response:
    """The book, or one client, as plain files in a zip."""
    book = workshop_of(request).book
    which = "Name a client by her number, or none for the whole book."
    whose = book.clients.get(number_of(client, which)) if client else None
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "book.zip"
        book.export(target, whose)
        return _file(target, f"clothwright-{date.today()}.zip")


def _file(path: Path, name: str) -> Response:
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(
        path.read_bytes(), media_type="application/octet-stream", headers=headers
    )


@router.post("/shelf/restore")
async def restore(request: Request, file: Annotated[UploadFile, File()]) -> Response:
    """Replace all that is in the book by a backup."""
    shop = workshop_of(request)
    with tempfile.TemporaryDirectory() as folder:
        source = await _received(file, Path(folder), ".db")
        shop.book.restore(source)
    for number in list(shop.desks):
        shop.drop(number)
    return RedirectResponse("/shelf?said=restored", 303)


@router.post("/shelf/import")
async def take_in(request: Request, file: Annotated[UploadFile, File()]) -> Response:
    """Add what an export holds."""
    shop = workshop_of(request)
    with tempfile.TemporaryDirectory() as folder:
        source = await _received(file, Path(folder), ".zip")
        got = shop.book.import_from(source)
    return shop.page(request, "imported.html", got=got)


async def _received(file: UploadFile, folder: Path, end: str) -> Path:
    target = folder / f"received{end}"
    handle = os.open(target, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "wb") as out:
        while part := await file.read(1 << 20):
            out.write(part)
    return target
