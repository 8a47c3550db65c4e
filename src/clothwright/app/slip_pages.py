"""The pile of slips, one slip, and its socket."""

import asyncio
import contextlib
from typing import Annotated

from fastapi import APIRouter, Form
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.websockets import WebSocket, WebSocketDisconnect

from clothwright.app.forms import day_of, number_of
from clothwright.app.tabs import Tab
from clothwright.app.workshop import made_up, new_slip, styles, workshop_of
from clothwright.book import BookError
from clothwright.order import OrderError
from clothwright.units import Unit

router = APIRouter()

Text = Annotated[str, Form()]


@router.get("/")
def pile(request: Request) -> Response:
    """The pile of orders, sorted by what is due."""
    shop = workshop_of(request)
    return shop.page(
        request,
        "slips.html",
        slips=shop.book.slips.due(),
        clients=shop.book.clients.all(),
        styles={k: t.get("garment", k) for k, t in styles().items()},
    )


@router.post("/slips")
def add(
    request: Request,
    client: Text,
    style: Text,
    title: Text = "",
    wanted: Text = "",
) -> Response:
    """Write a new slip."""
    book = workshop_of(request).book
    whose = book.clients.get(number_of(client, "Choose whom it is for."))
    slip = new_slip(book, whose, style, title, day_of(wanted))
    return RedirectResponse(f"/slips/{slip.number}", 303)


@router.post("/made-up")
def try_it(request: Request, style: Text = "peplum-top") -> Response:
    """A made-up client and a slip, to try the app with."""
    slip = made_up(workshop_of(request).book, style)
    return RedirectResponse(f"/slips/{slip.number}", 303)


@router.get("/slips/{number}")
def slip_page(request: Request, number: int) -> Response:
    """One slip with the table beside it."""
    shop = workshop_of(request)
    slip = shop.book.slips.numbered(number)
    unit = "in" if 'unit = "in"' in shop.book.line.text(slip) else "cm"
    return shop.page(request, "slip.html", slip=slip, unit=unit)


@router.websocket("/slips/{number}/table")
async def table(socket: WebSocket, number: int, unit: str = "in") -> None:
    """The socket of one page at a slip."""
    await socket.accept()
    try:
        desk = await workshop_of(socket).desk(number)
    except (BookError, OrderError) as e:
        await socket.send_json({"is": "refused", "of": "", "say": str(e), "answer": 0})
        await socket.close(4404)
        return
    tab = Tab(desk, socket.send_text, Unit.IN if unit == "in" else Unit.CM)
    desk.tabs.append(tab)
    tab.news.set()
    tasks = [
        asyncio.create_task(t)
        for t in (tab.tell(), _hear(socket, tab), tab.gone.wait())
    ]
    try:
        done, _ = await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
        for task in done:
            with contextlib.suppress(WebSocketDisconnect, RuntimeError):
                task.result()
    finally:
        for task in tasks:
            task.cancel()
        desk.tabs.remove(tab)
        with contextlib.suppress(WebSocketDisconnect, RuntimeError):  # it may be gone
            await socket.close()


async def _hear(socket: WebSocket, tab: Tab) -> None:
    while True:
        await tab.hear(await socket.receive_text())
