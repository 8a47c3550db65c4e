"""Printing and saving: every sheet of a slip, with a preview of its pages."""

import asyncio
import tempfile
from pathlib import Path

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from clothwright.app.worked_sheets import WORKED, worked
from clothwright.app.workshop import Workshop, workshop_of
from clothwright.cost import CostError
from clothwright.order import OrderError, Pattern, draft, pattern
from clothwright.order.file import order_from_text
from clothwright.sheets import (
    ROLL_WIDTH,
    PageFormat,
    Scale,
    write_dxf,
    write_hpgl,
    write_pdf,
    write_svg,
)
from clothwright.sheets.dimensions import write_dimensions
from clothwright.sheets.lesson import write_lesson
from clothwright.sheets.steps import write_steps

router = APIRouter()

PAPERS = {
    "a4": (PageFormat.A4, "A4 paper"),
    "letter": (PageFormat.LETTER, "letter paper"),
    "a0": (PageFormat.A0, "A0 paper"),
    "roll": (PageFormat.ROLL, "a roll of 91 cm"),
}
SCALES = {
    "full": (Scale.FULL, "full size"),
    "half": (Scale.HALF, "half size"),
    "quarter": (Scale.QUARTER, "quarter size"),
}
SHEETS = {
    "pattern.pdf": ("the whole pattern", "application/pdf"),
    "steps.pdf": ("the drafting steps", "application/pdf"),
    "lesson.pdf": ("the lesson, a step on a page", "application/pdf"),
    "dimensions.pdf": ("all dimensions", "application/pdf"),
    "lay.pdf": ("the lay of each cloth", "application/pdf"),
    "cutting.pdf": ("the cutting sheet", "application/pdf"),
    "making.pdf": ("the order of making", "application/pdf"),
    "cost.pdf": ("the cost, for the house", "application/pdf"),
    "quote.pdf": ("the quote, for the client", "application/pdf"),
    "outcome.pdf": ("estimate and what it took", "application/pdf"),
    "pattern.svg": ("one picture (SVG)", "image/svg+xml"),
    "pattern.dxf": ("for a cutter (DXF)", "image/vnd.dxf"),
    "pattern.plt": ("for a plotter (HP-GL)", "application/vnd.hp-hpgl"),
}
SMALL = 0.42
"""Size of a page in the preview, dots to a point."""


def finished(shop: Workshop, number: int, *, basted: bool) -> Pattern:
    """The pattern of a slip as it was stitched, or with what is basted.

    Raises BookError, OrderError.
    """
    slip = shop.book.slips.numbered(number)
    text = shop.book.line.text(slip)
    if basted:
        basting = shop.book.bastings.get(slip)
        text = basting.text if basting else text
    return pattern(draft(order_from_text(text, f"slip {number}", Path())))


@router.get("/slips/{number}/print")
def print_page(request: Request, number: int, sheet: str = "pattern.pdf") -> Response:
    """What to print, as a sentence, with the pages beside it."""
    shop = workshop_of(request)
    slip = shop.book.slips.numbered(number)
    found = finished(shop, number, basted=False)
    return shop.page(
        request,
        "print.html",
        slip=slip,
        papers={k: v[1] for k, v in PAPERS.items()},
        scales={k: v[1] for k, v in SCALES.items()},
        sheets={k: v[0] for k, v in SHEETS.items() if k.endswith(".pdf")},
        others={k: v[0] for k, v in SHEETS.items() if not k.endswith(".pdf")},
        wanted=sheet if sheet in SHEETS else "pattern.pdf",
        failures=[str(f) for f in found.findings if f.severity.value == "E"],
    )


@router.get("/slips/{number}/sheets/{name}")
async def sheet(
    request: Request,
    number: int,
    name: str,
    paper: str = "a4",
    scale: str = "full",
    dimensions: str = "yes",
    basted: str = "",
    save: str = "",
) -> Response:
    """One sheet as a file. Raises BookError, OrderError."""
    shop = workshop_of(request)
    data = await _made(shop, number, name, paper, scale, dimensions, basted)
    how = "attachment" if save or not name.endswith((".pdf", ".svg")) else "inline"
    headers = {"content-disposition": f'{how}; filename="slip-{number}-{name}"'}
    return Response(data, media_type=SHEETS[name][1], headers=headers)


@router.get("/slips/{number}/preview")
async def preview(
    request: Request,
    number: int,
    sheet: str = "pattern.pdf",
    paper: str = "a4",
    scale: str = "full",
    dimensions: str = "yes",
    basted: str = "",
) -> Response:
    """The pages of a sheet, small, as JSON with pictures in it; or why there are
    none."""
    shop = workshop_of(request)
    try:
        if not sheet.endswith(".pdf"):
            raise OrderError("Only what is printed has pages.")
        data = await _made(shop, number, sheet, paper, scale, dimensions, basted)
    except (OrderError, CostError) as e:
        return JSONResponse({"pages": [], "say": " ".join(str(e).splitlines())})
    return JSONResponse({"pages": await asyncio.to_thread(_pictures, data)})


async def _made(
    shop: Workshop,
    number: int,
    name: str,
    paper: str,
    scale: str,
    dimensions: str,
    basted: str,
) -> bytes:
    """A sheet as a file. Raises BookError, OrderError, CostError, SheetError."""
    if name not in SHEETS:
        raise OrderError("There is no such sheet.")
    if paper not in PAPERS or scale not in SCALES:
        raise OrderError("There is no such paper or size; choose one of the list.")
    if name in WORKED:
        desk = await shop.desk(number)
        async with desk.lock:
            return await asyncio.to_thread(worked, desk.work, name, paper == "letter")
    return await asyncio.to_thread(
        _drawn, shop, number, name, paper, scale, dimensions, basted
    )


def _drawn(
    shop: Workshop,
    number: int,
    name: str,
    paper: str,
    scale: str,
    dimensions: str,
    basted: str,
) -> bytes:
    found = finished(shop, number, basted=bool(basted))
    page, size = PAPERS[paper][0], SCALES[scale][0]
    figures, letter = dimensions == "yes", paper == "letter"
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / name
        if name == "pattern.pdf":
            write_pdf(found.drawn, target, page=page, scale=size, dimensions=figures)
        elif name == "steps.pdf":
            write_steps(found.draft, target, letter=letter)
        elif name == "lesson.pdf":
            write_lesson(found.draft, target, letter=letter)
        elif name == "dimensions.pdf":
            write_dimensions(found.draft, target, letter=letter)
        elif name == "pattern.svg":
            write_svg(found.drawn, target)
        elif name == "pattern.dxf":
            write_dxf(found.drawn, target)
        else:
            write_hpgl(
                found.drawn,
                target,
                scale=size,
                roll_width=ROLL_WIDTH,
                dimensions=figures,
            )
        return target.read_bytes()


def _pictures(data: bytes) -> list[str]:
    """Each page as a PNG in a data address; large pages are shown smaller."""
    import base64
    import io

    import pypdfium2

    out = []
    document = pypdfium2.PdfDocument(data)
    try:
        for page in document:
            size = SMALL * min(1.0, 900.0 / max(page.get_width(), page.get_height()))
            picture = io.BytesIO()
            page.render(scale=size).to_pil().save(picture, "PNG", optimize=False)
            code = base64.b64encode(picture.getvalue()).decode()
            out.append(f"data:image/png;base64,{code}")
    finally:
        document.close()
    return out
