"""The door: a password is asked for when the workroom is open to the network."""

from typing import Annotated

from fastapi import APIRouter, Form
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from clothwright.app.guard import COOKIE, Guard
from clothwright.app.workshop import workshop_of

router = APIRouter()


@router.get("/door")
def door(request: Request) -> Response:
    """Ask for the password."""
    return workshop_of(request).page(request, "door.html", say="")


@router.post("/door")
def log_in(request: Request, password: Annotated[str, Form()] = "") -> Response:
    """Open to the right password."""
    guard = request.state.guard
    assert isinstance(guard, Guard)
    who = request.client.host if request.client else "?"
    shop = workshop_of(request)
    try:
        cookie = guard.log_in(who, password[:200])
    except ValueError as e:
        return shop.page(request, "door.html", 429, say=str(e))
    if cookie is None:
        say = "That is not the password."
        return shop.page(request, "door.html", 403, say=say)
    return RedirectResponse("/", 303, headers={"set-cookie": cookie})


@router.post("/leave")
def leave(request: Request) -> Response:
    """Log out at this browser."""
    gone = f"{COOKIE}=; Path=/; Max-Age=0; HttpOnly; SameSite=Strict"
    return RedirectResponse("/door", 303, headers={"set-cookie": gone})
