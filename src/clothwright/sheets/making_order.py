"""The making order to hang on the wall: numbered operations with boxes to tick."""

import json
from collections.abc import Mapping
from itertools import groupby
from pathlib import Path
from typing import Any

from clothwright.features.operations import Operation, Stitch, Task, Work
from clothwright.making import MakingOrder
from clothwright.making.telling import seam_line
from clothwright.order.cautions import NO_PROOF, at_work, of_garment
from clothwright.sheets.booklet import compile_to
from clothwright.units import Unit, pretty_length

_PARTS = (
    (1, "Cut and make ready"),
    (6, "Flat"),
    (8, "Round"),
    (9, "The waist and below"),
    (11, "Inside"),
    (12, "To close it"),
    (14, "To finish"),
)
"""Headings by the last place of the general list that stands under each."""


def write_making_order(
    making: MakingOrder,
    minutes: Mapping[Task, float],
    target: Path,
    *,
    letter: bool = False,
) -> None:
    """Write the making order as PDF (A4, or US Letter). Raises SheetError."""
    compile_to(
        "making_order.typ",
        json.dumps(making_told(making, minutes, letter=letter)),
        target,
    )


def making_told(
    making: MakingOrder, minutes: Mapping[Task, float], *, letter: bool = False
) -> dict[str, Any]:
    """All that the page says, under its headings."""
    order = making.draft.order
    spent = sum(op.count * minutes[op.task] for op in making.operations if op.task)
    numbered = enumerate(making.operations, 1)
    parts = []
    for name, group in groupby(numbered, key=lambda pair: _part(pair[1].work)):
        rows = [_operation(making, minutes, i, op) for i, op in group]
        said: set[str] = set()
        for row in rows:  # each caution once in a part
            row["cautions"] = [c for c in row["cautions"] if c not in said]
            said |= set(row["cautions"])
        parts.append({"name": name, "operations": rows})
    hazards = [h for op in making.operations for h in op.hazards]
    return {
        "title": f"{order.garment}: making order",
        "subtitle": order.whose,
        "footer": order.footer,
        "paper": "us-letter" if letter else "a4",
        "time": f"{len(making.operations)} operations, about {duration(spent)}",
        "parts": parts,
        "cautions": [*of_garment(hazards, order), NO_PROOF],
    }


def duration(minutes: float) -> str:
    """Minutes as hours and minutes."""
    hours, rest = divmod(round(minutes), 60)
    parts = [f"{hours} h"] if hours else []
    parts += [f"{rest} min"] if rest or not hours else []
    return " ".join(parts)


def _part(work: Work) -> str:
    return next(name for last, name in _PARTS if work.place <= last)


def _operation(
    making: MakingOrder, minutes: Mapping[Task, float], number: int, op: Operation
) -> dict[str, Any]:
    draft = making.draft
    unit = draft.order.unit
    lines = [seam_line(making, s) for s in making.seams(op)]
    time = op.count * minutes[op.task] if op.task else 0.0
    # what a grown-up's garment asks for is said once, at the end
    child = draft.order.wearer.child
    garment = set() if child else set(of_garment(op.hazards, draft.order))
    return {
        "number": number,
        "title": op.title,
        "time": duration(time) if time else "",
        "says": list(op.says),
        "how": " · ".join(_how(op, making, unit)),
        "seams": [
            {
                "name": f"{line.pieces}, {line.ends}",
                "length": line.length,
                "allowance": line.allowance,
                "match": "; ".join(t for t in (line.notches, line.ease) if t),
            }
            for line in lines
        ],
        "cautions": [c for c in at_work(op.hazards, draft.order) if c not in garment],
    }


def _how(op: Operation, making: MakingOrder, unit: Unit) -> list[str]:
    """Stitch, seam, length, neatening, pressing."""
    out = []
    if op.stitch is not None:
        hand = op.stitch is Stitch.HAND
        out.append("by hand" if hand else f"{op.stitch.words} {op.stitch.number}")
    if op.seam_type is not None:
        out.append(f"{op.seam_type.words} ({op.seam_type.number})")
    main = making.stitched(op).get(op.stitch) if op.stitch else None
    if main is not None and (op.length is not None or not op.seams):
        out.append(f"{pretty_length(main, unit)} long")
    if op.neatened:
        edges = "both edges" if op.neatened == 2 else "the edges together"
        if not op.seams:
            edges = "the raw edge"
        out.append(f"{edges} neatened ({Stitch.OVEREDGE.number})")
    if op.press:
        out.append(f"press {op.press}")
    return out
