"""Cards: clients with their measures over time, notes, photos and slips."""

from collections.abc import Mapping
from datetime import date
from typing import Annotated

from fastapi import APIRouter, File, Form, UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from clothwright.app.forms import day_of
from clothwright.app.workshop import styles, workshop_of
from clothwright.body import Body, Measure, check_body, lacking, measures
from clothwright.book import BookError, Client, Side, Stale, TakenMeasure
from clothwright.units import Unit, format_angle, format_length, opening

router = APIRouter()
Text = Annotated[str, Form()]

SIDED = ("torso lengths and widths", "lower body", "arm")
"""Groups of measures that can be another on her left side."""


@router.get("/cards")
def cards(request: Request) -> Response:
    """Every client."""
    shop = workshop_of(request)
    return shop.page(request, "cards.html", clients=shop.book.clients.all())


@router.post("/cards")
def add(request: Request, name: Text) -> Response:
    """A new card."""
    client = workshop_of(request).book.clients.add(name)
    return RedirectResponse(f"/cards/{client.id}", 303)


@router.get("/cards/{client_id}")
def card(request: Request, client_id: int) -> Response:
    """One client."""
    return _card(request, workshop_of(request).book.clients.get(client_id))


def _card(
    request: Request,
    client: Client,
    *,
    form: Mapping[str, str] | None = None,
    questions: tuple[tuple[str, str], ...] = (),
    said: str = "",
    status: int = 200,
) -> Response:
    shop = workshop_of(request)
    history = shop.book.measures.history(client)
    usual = shop.book.measures.last_unit() or Unit.IN
    unit = history[-1].unit if history else usual
    written = form or {"unit": unit.value, "taken": date.today().isoformat()}
    nothing = Body(client.name, unit, {})
    body = shop.book.measures.body(client) if history else nothing
    findings = check_body(body) if history else ()
    return shop.page(
        request,
        "card.html",
        status,
        client=client,
        written=written,
        groups=_groups(history, unit),
        two=any(k.startswith("left.") and v for k, v in written.items()),
        sided=[m for m in measures().values() if m.group in SIDED],
        days=_days(history, unit),
        questions=questions,
        said=said,
        findings=[str(f) for f in findings],
        today=date.today(),
        lacks=[(measures()[code].name, use) for code, use in lacking(body)],
        slips=shop.book.slips.of(client),
        notes=shop.book.notes.of(client),
        photos=shop.book.photos.of(client),
        styles={k: t.get("garment", k) for k, t in styles().items()},
        measured=bool(history),
    )


def _groups(
    history: tuple[TakenMeasure, ...], unit: Unit
) -> dict[str, list[dict[str, object]]]:
    """Every measure by group, in the order of taking, with its past."""
    out: dict[str, list[dict[str, object]]] = {}
    for m in measures().values():
        past = [
            {"id": h.id, "day": h.taken, "say": _said(m, h, unit), "by": h.by}
            for h in history
            if h.code == m.code
        ]
        out.setdefault(m.group, []).append(
            {"code": m.code, "name": m.name, "how": m.how, "past": past}
        )
    return out


def _by_name(fault: str, client: str) -> str:
    """A fault with the names of measures, which stand on the card, for their codes."""
    lines = [line.removeprefix(f"{client}, ") for line in fault.splitlines()]
    named = []
    for line in lines:
        place, colon, rest = line.partition(": ")
        of, comma, code = place.rpartition(", ")
        name = measures()[code].name if code in measures() else code
        named.append(f"{opening(of + comma + name)}{colon}{rest}")
    return ". ".join(named)


def _days(
    history: tuple[TakenMeasure, ...], unit: Unit
) -> dict[date, list[dict[str, object]]]:
    """Every figure ever taken by its day, the newest day first."""
    out: dict[date, list[dict[str, object]]] = {}
    for h in reversed(history):
        m = measures()[h.code]
        figure = {"id": h.id, "name": m.name, "say": _said(m, h, unit)}
        out.setdefault(h.taken, []).append(figure)
    return out


def _said(m: Measure, h: TakenMeasure, unit: Unit) -> str:
    size = (
        format_angle(h.value)
        if m.kind == "angle"
        else format_length(h.value, unit, body=True, unit_mark=False)
    )
    return size + (f" ({h.side.value})" if h.side is not Side.BOTH else "")


@router.post("/cards/{client_id}/measures")
async def record(request: Request, client_id: int) -> Response:
    """Write new measures under the old; odd ones are asked about first."""
    book = workshop_of(request).book
    client = book.clients.get(client_id)
    form = {k: str(v).strip() for k, v in (await request.form()).items()}
    typed: dict[str, str | dict[str, str]] = {
        c: form[c] for c in measures() if form.get(c)
    }
    left = {c: form[f"left.{c}"] for c in measures() if form.get(f"left.{c}")}
    if left:
        typed["left"] = left
    if not typed:
        said = "Nothing was written."
        return _card(request, client, form=form, said=said, status=400)
    unit = Unit.CM if form.get("unit") == "cm" else Unit.IN
    try:
        kept = book.measures.record(
            client,
            typed,
            unit=unit,
            taken=day_of(form.get("taken", "")) or date.today(),
            by=form.get("by", ""),
            note=form.get("note", ""),
            keep=[k.removeprefix("keep ") for k in form if k.startswith("keep ")],
        )
    except (BookError, ValueError) as e:
        said = _by_name(str(e), client.name)
        return _card(request, client, form=form, said=said, status=400)
    if kept.questions:
        asked = tuple((f.place, str(f)) for f in kept.questions)
        return _card(request, client, form=form, questions=asked, status=409)
    await workshop_of(request).refresh(client_id)
    return RedirectResponse(f"/cards/{client_id}", 303)


@router.post("/cards/{client_id}/name")
def rename(request: Request, client_id: int, name: Text) -> Response:
    """Another name."""
    from dataclasses import replace

    book = workshop_of(request).book
    kept = book.clients.change(replace(book.clients.get(client_id), name=name))
    if isinstance(kept, Stale):
        raise BookError(kept.sentence)
    return RedirectResponse(f"/cards/{client_id}", 303)


@router.post("/cards/{client_id}/notes")
def add_note(request: Request, client_id: int, text: Text) -> Response:
    """Write a note on the card."""
    book = workshop_of(request).book
    book.notes.add(book.clients.get(client_id), text)
    return RedirectResponse(f"/cards/{client_id}#notes", 303)


@router.post("/cards/{client_id}/photos")
async def add_photo(
    request: Request,
    client_id: int,
    photo: Annotated[UploadFile, File()],
    caption: Text = "",
) -> Response:
    """Lay a photo on the card."""
    book = workshop_of(request).book
    book.photos.add(book.clients.get(client_id), await photo.read(), caption)
    return RedirectResponse(f"/cards/{client_id}#photos", 303)
