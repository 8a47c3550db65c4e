"""The app on HTTP: pages, sheets and the socket of each slip.

No other host is asked for anything: every script, style and picture lies in this
package.
"""

import mimetypes
from collections.abc import Iterable

from fastapi import FastAPI
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request
from starlette.responses import Response
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp

from clothwright import __version__
from clothwright.app import (
    card_pages,
    door_pages,
    forget_pages,
    past_pages,
    print_pages,
    shelf_pages,
    slip_pages,
)
from clothwright.app.guard import LOOPBACK, Guard
from clothwright.app.workshop import HERE, Workshop, workshop_of
from clothwright.book import Book, BookError
from clothwright.cost import CostError
from clothwright.order import OrderError
from clothwright.sheets import SheetError

_PAGES = (
    slip_pages.router,
    past_pages.router,
    print_pages.router,
    card_pages.router,
    shelf_pages.router,
    door_pages.router,
    forget_pages.router,
)

mimetypes.add_type("text/javascript", ".js")


def create_app(
    book: Book,
    *,
    hosts: Iterable[str] = LOOPBACK,
    password: str = "",
    secret: str = "",
    secure: bool = False,
) -> ASGIApp:
    """The whole app on an open book, behind its guard; see `guard` for the rest."""
    app = FastAPI(docs_url=None, redoc_url=None, openapi_url=None)
    app.state.workshop = Workshop(book)
    for pages in _PAGES:
        app.include_router(pages)
    static = StaticFiles(directory=HERE / "static")
    app.mount(f"/static/{__version__}", static, name="static")
    for kind in (BookError, CostError, OrderError, SheetError):
        app.add_exception_handler(kind, _sentence)
    app.add_exception_handler(404, _nothing)
    app.add_exception_handler(HTTPException, _not_so)
    app.add_exception_handler(RequestValidationError, _not_so)
    app.add_exception_handler(ClientDisconnect, _gone)
    app.add_exception_handler(Exception, _fault)
    return Guard(app, hosts=hosts, password=password, secret=secret, secure=secure)


async def _sentence(request: Request, fault: Exception) -> Response:
    """A fault of the user's, as a page with its sentence."""
    shop = workshop_of(request)
    return shop.page(request, "fault.html", 400, say=str(fault).splitlines())


async def _nothing(request: Request, fault: Exception) -> Response:
    say = ["There is nothing at this address."]
    return workshop_of(request).page(request, "fault.html", 404, say=say)


async def _not_so(request: Request, fault: Exception) -> Response:
    """What no page of ours sends: another method, a form that lacks a field."""
    code = fault.status_code if isinstance(fault, HTTPException) else 400
    say = ["This cannot be read as it was sent. Go back, and write it again."]
    return workshop_of(request).page(request, "fault.html", code, say=say)


async def _gone(request: Request, fault: Exception) -> Response:
    """Who sent it has hung up in the middle; nobody reads this."""
    return Response(status_code=400)


async def _fault(request: Request, fault: Exception) -> Response:
    say = ["This went wrong in the workroom; what was kept is kept. Try it again."]
    return workshop_of(request).page(request, "fault.html", 500, say=say)
