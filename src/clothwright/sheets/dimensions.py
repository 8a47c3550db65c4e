"""The dimensions sheet: every edge, seam and mark with its figure."""

import json
from pathlib import Path

from clothwright.order import Draft
from clothwright.sheets.booklet import compile_to
from clothwright.truing import walk
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
        edges = []
        for e in p.edges:
            partners = []
            for s in sheet.seams_of(p.code, e.name):
                mine = any((r.piece, r.edge) == (p.code, e.name) for r in s.left)
                other = s.right if mine else s.left
                partners.append(f"{' + '.join(str(r) for r in other)} ({s.code})")
            edges.append([e.name, show(e.length), "; ".join(partners) or e.kind.value])
        pieces.append({"name": f"{p.name} ({p.code})", "edges": edges})
    seams = []
    for seam in sheet.seams:
        w = walk(sheet, seam)
        ends = f"{seam.name}, {seam.start} to {seam.end}" if seam.start else seam.name
        eased = show(w.ease) if abs(w.ease) >= 0.05 else "–"
        seams.append([seam.code, ends, show(w.left), show(w.right), eased])
    return {
        "title": f"{order.garment}: dimensions",
        "subtitle": f"{order.body.client}, order {order.number}. ",
        "footer": f"{order.garment}, {order.body.client}",
        "paper": "us-letter" if letter else "a4",
        "pieces": pieces,
        "seams": seams,
        "marks": [
            [name, show(p.x), show(p.y)] for name, p in draft.sheet.points.items()
        ],
    }
