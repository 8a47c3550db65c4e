"""Before and after a fitting: changed pieces laid over each other, and what changed."""

import json
from pathlib import Path as FilePath

from clothwright.curves import Path, shift
from clothwright.finishing.wording import edge_words
from clothwright.order import Draft
from clothwright.order.fittings import EdgeChange, amounts, changes, laid_over
from clothwright.paper import Piece
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.drawing import Hand
from clothwright.sheets.figure import svg_of_lines
from clothwright.units import Unit, pretty_length

WIDTH, HEIGHT = 84.0, 88.0
"""Largest size of a piece's figure, mm."""


def write_fitting(
    before: Draft, after: Draft, target: FilePath, *, letter: bool = False
) -> None:
    """Write the page of a fitting as PDF (A4, or US Letter). Raises SheetError."""
    compile_to("fitting.typ", json.dumps(_data(before, after, letter)), target)


def _data(before: Draft, after: Draft, letter: bool) -> dict[str, object]:
    order = after.order
    unit = order.unit
    what = changes(before.sheet, after.sheet)
    pieces = []
    for code in what.moved:
        old = before.sheet.pieces.get(code)
        new = after.sheet.pieces.get(code)
        name = (new or old or before.sheet.piece(code)).name
        rows = [
            [
                edge_words(e.edge.partition(".")[2]),
                _length(e.before, unit),
                _length(e.after, unit),
                _by(e.before, e.after, unit),
            ]
            for e in what.edges
            if e.edge.partition(".")[0] == code and _seen(e, unit)
        ]
        svg = _over(old, new)
        pieces.append({"name": name, "code": code, "svg": svg, "edges": rows})
    return {
        "title": f"{order.garment}: the fitting",
        "subtitle": order.whose,
        "footer": order.footer,
        "paper": "us-letter" if letter else "a4",
        "amounts": amounts(before, after),
        "failures": list(after.failures()),
        "pieces": pieces,
    }


def _over(old: Piece | None, new: Piece | None) -> str:
    """The old outline thin and dashed, the new one solid, as they lie over each
    other."""
    lines: list[tuple[Hand, Path]] = []
    if old is not None:
        m = shift(laid_over(old, new)) if new is not None else None
        lines += [(Hand.OLD, e.path.moved(m) if m else e.path) for e in old.edges]
    if new is not None:
        lines += [(Hand.INK, e.path) for e in new.edges]
        if new.grain:
            lines.append((Hand.GUIDE, Path.line(*new.grain)))
    return svg_of_lines(lines, WIDTH, HEIGHT)


def _seen(e: EdgeChange, unit: Unit) -> bool:
    """False for a change that no tape in this unit reads."""
    if e.before is None or e.after is None:
        return True
    return pretty_length(abs(e.after - e.before), unit) != pretty_length(0.0, unit)


def _length(cm: float | None, unit: Unit) -> str:
    return "none" if cm is None else pretty_length(cm, unit)


def _by(a: float | None, b: float | None, unit: Unit) -> str:
    if a is None or b is None:
        return "new" if a is None else "gone"
    return f"{pretty_length(abs(b - a), unit)} {'longer' if b > a else 'shorter'}"
