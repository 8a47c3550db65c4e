"""The cloth as it lies, as plain data for a page: lengths cm, sentences in her unit."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import lru_cache
from typing import Any

import numpy as np

from clothwright.app.bolt import Bolt
from clothwright.app.cloth_words import flaws_written
from clothwright.app.lying import Lying
from clothwright.app.table import reach
from clothwright.curves import Point
from clothwright.findings import Finding
from clothwright.lay import Shape, roomiest, told_fold
from clothwright.lay.pieces import turned
from clothwright.lay.remarks import remark
from clothwright.units import Unit, format_length

Data = dict[str, Any]


def shown(bolt: Bolt, unit: Unit) -> Data | None:
    """What lies on the table, for a page; None when nobody stands there."""
    with bolt.lock:
        if not bolt.at:
            return None
        if unit not in bolt.told:
            bolt.told[unit] = _told(bolt, unit)
        return bolt.told[unit]


def _told(bolt: Bolt, unit: Unit) -> Data:
    """The cloth that is looked at, and how far its search is."""
    key = bolt.at
    out: Data = {"cloth": key, "refused": bolt.refused.get(key, "")}
    out["seeking"] = (
        {"share": round(bolt.share, 2)} if bolt.seeking and bolt.sought == key else None
    )
    lying = bolt.lying.get(key)
    if lying is not None:
        out.update(_lying(lying, unit))
    return out


def _lying(lying: Lying, unit: Unit) -> Data:
    lay, faults = lying.laid.lay, lying.laid.faults
    spread, board = lay.spread, lying.board

    def show(cm: float) -> str:
        return format_length(cm, unit)

    at: dict[int, list[str]] = {}
    for fault in faults:
        for i in _about(fault):
            said = remark(fault, board.copies, spread, board.gap, unit, of=i)
            at.setdefault(i, []).append(said)
    pieces = []
    for i, (copy, p) in enumerate(zip(board.copies, lay.placed, strict=True)):
        shape = copy.shape
        path, label = _drawn(shape, p.mirrored, p.turn)
        pieces.append(
            {
                "code": shape.code,
                "name": shape.label,
                "hand": copy.hand,
                "cut": _cut(shape, spread.layers, board.on_fold(i)),
                "d": path,
                "at": [round(p.x, 3), round(p.y, 3)],
                "label": label,
                "on_fold": board.on_fold(i),
                "heads": 1 if spread.one_way else 2,
                "turned": p.turn == 180.0,
                "hands": board.has_hands(i),
                "faults": at.get(i, []),
            }
        )
    return {
        "name": lay.name,
        "fold": told_fold(spread.fold),
        "width": spread.width,
        "bands": [list(b) for b in spread.bands],
        "folds": [spread.near_fold, spread.far_fold],
        "layers": spread.layers,
        "length": round(lay.length, 3),
        "told": show(lay.length),
        "repeat": list(spread.repeat),
        "flaws": [[f.left, f.top, f.right, f.bottom] for f in spread.flaws],
        "flaws_typed": flaws_written(lay.cloth.flaws, unit),
        "near_edge": spread.near_edge,
        "pieces": pieces,
        "buy": {
            "told": lay.buy.told,
            "at": round(lay.buy.cm / spread.lengths - spread.end_loss, 2),
            "lost": spread.end_loss,
            "price": None if lay.buy.price is None else str(lay.buy.price),
            "parts": [[show(a.cm), a.reason] for a in lay.buy.parts],
        },
        "parts": round(lay.efficiency * 100),
        "bound": "" if faults else replace(lay, unit=unit).bound_told,
        "says": [
            s
            for s in (
                lay.saving,
                replace(lay, unit=unit).grown_told,
                lay.loose_told,
                *_others(lying, show),
            )
            if s
        ],
        "spare": list(lay.spare),
        "fault": [str(f) for f in faults if not _about(f)],
        "moves": len(lying.past),
        "kept": lying.kept == lay.placed,
    }


def _others(lying: Lying, show: Callable[[float], str]) -> Iterator[str]:
    for fold, length in lying.laid.lay.others[:2]:
        way = told_fold(fold)
        yield f"{way[0].upper()}{way[1:]}: it would take about {show(length)}."


def _about(fault: Finding) -> list[int]:
    return [int(fault.data[k]) for k in ("piece", "other") if k in fault.data]


def _cut(shape: Shape, layers: int, folded: bool) -> str:
    if folded:
        return "on the fold"
    return f"cut {shape.count}" if layers == 1 else f"{shape.count} in two layers"


@lru_cache(maxsize=512)
def _drawn(shape: Shape, mirrored: bool, turn: float) -> tuple[str, list[float]]:
    """The outline of a shape, turned but not shifted, as SVG path data; and where its
    name stands, with the room there and how far words reach to both sides."""
    points = turned(shape.outline, mirrored, turn)
    words = " ".join(f"{x:.2f} {y:.2f}" for x, y in points)
    x, y, room = roomiest(shape.outline)
    corners = np.array([*shape.outline, shape.outline[0]])
    long = reach(corners[:-1], corners[1:], Point(x, y), room)
    ((x, y),) = turned(((x, y),), mirrored, turn)
    return f"M{words}Z", [round(v, 2) for v in (x, y, room, long)]
