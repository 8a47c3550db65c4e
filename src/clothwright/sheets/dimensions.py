"""The dimensions sheet: every edge, seam and mark with its figure."""

import json
from collections.abc import Callable
from pathlib import Path

from clothwright.finishing.wording import edge_words as edge_words
from clothwright.order import Draft
from clothwright.paper import Edge, SeamKind, Sheet
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.telling import mark_name
from clothwright.truing import Walk, walk
from clothwright.units import pretty_length


def write_dimensions(draft: Draft, target: Path, *, letter: bool = False) -> None:
    """Write the dimensions sheet as PDF (A4, or US Letter). Raises SheetError."""
    compile_to("dimensions.typ", json.dumps(_data(draft, letter)), target)


def _data(draft: Draft, letter: bool) -> dict[str, object]:
    order, sheet = draft.order, draft.sheet

    def show(cm: float) -> str:
        return pretty_length(cm, order.unit)

    pieces = []
    for p in sheet.pieces.values():
        edges = [
            [edge_words(e.name), show(e.length), _sewn_to(sheet, p.code, e)]
            for e in p.edges
        ]
        pieces.append({"name": p.name, "edges": edges})
    seams = []
    for seam in sheet.seams:
        w = walk(sheet, seam)
        ends = f"{seam.name}, {seam.start} to {seam.end}" if seam.start else seam.name
        seams.append([ends, show(w.left), show(w.right), _compared(w, show)])
    return {
        "title": f"{order.garment}: dimensions",
        "subtitle": f"{order.whose}. " if order.whose else "",
        "footer": order.footer,
        "paper": "us-letter" if letter else "a4",
        "pieces": pieces,
        "seams": seams,
        "marks": [
            [
                mark_name(name),
                show(p.x),
                show(abs(p.y)) + (" up" if p.y < -0.05 else ""),
            ]
            for name, p in draft.sheet.points.items()
        ],
    }


def _sewn_to(sheet: Sheet, piece: str, edge: Edge) -> str:
    """The edges that an edge is sewn to, or what it is when it is sewn to none."""
    partners = []
    for s in sheet.seams_of(piece, edge.name):
        if s.kind is SeamKind.TWIN:
            partners.append("its own twin")
            continue
        mine = any((r.piece, r.edge) == (piece, edge.name) for r in s.left)
        runs = s.right if mine else s.left
        partners.append(
            " + ".join(
                f"{sheet.piece(r.piece).name.lower()}, {edge_words(r.edge)}"
                for r in runs
            )
        )
    return "; ".join(partners) or edge.kind.value


def _compared(w: Walk, show: Callable[[float], str]) -> str:
    """The second side beside the first."""
    by = show(abs(w.ease))
    if by == show(0.0):
        return "the same"
    if w.ease < 0:
        return f"{by} shorter"
    if w.seam.runs_on or w.seam.kind in (SeamKind.FACED, SeamKind.LAPPED):
        return f"{by} longer"
    return f"{by} gathered in" if w.seam.gathered else f"{by} eased in"
