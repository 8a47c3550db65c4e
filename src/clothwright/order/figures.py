"""Every number, point, edge and seam of a draft as plain data, for other programs.

Symbols are those printed in the trade notes (`Dm`, `θ`, `Nf′`); `ascii` gives the key
of a symbol that is not plain letters. Lengths are cm, angles degrees; x runs from the
centre back to the centre front, y down from the nape. Pieces that were turned while
drafting lie where the draft left them. The layout is stable: names may be added, none
is renamed without a new `format` number.
"""

from typing import Any

from clothwright.findings import Finding
from clothwright.order.draft import Draft
from clothwright.rules import Reason, RuleError
from clothwright.truing import walk

FORMAT = 1


def figures(draft: Draft) -> dict[str, Any]:
    """The draft as plain data; see the module for what it holds."""
    numbers: dict[str, Any] = {}
    ascii_keys: dict[str, str] = {}
    for key in draft.numbers.keys():  # noqa: SIM118
        try:
            reason = draft.numbers.why(key)
        except RuleError:
            continue  # an estimate whose own measures are missing
        numbers[reason.symbol] = _number(reason)
        if reason.symbol != key:
            ascii_keys[reason.symbol] = key
    return {
        "format": FORMAT,
        "order": {
            "garment": draft.order.garment,
            "number": draft.order.number,
            "client": draft.order.body.client,
            "unit": draft.order.unit.value,
            "features": [f.kind for f in draft.order.features],
        },
        "numbers": numbers,
        "ascii": ascii_keys,
        "points": {n: [p.x, p.y] for n, p in draft.sheet.points.items()},
        "edges": {
            f"{p.code}.{e.name}": e.length
            for p in draft.sheet.pieces.values()
            for e in p.edges
        },
        "areas": {p.code: p.area for p in draft.sheet.pieces.values()},
        "seams": {s.code: _seam(draft, s.code) for s in draft.sheet.seams},
        "findings": [_finding(f) for f in draft.findings],
        "failed": draft.failed,
        **({"left": figures(draft.left)} if draft.left else {}),
    }


def _number(r: Reason) -> dict[str, Any]:
    return {
        "value": r.value,
        "unit": "cm" if r.kind.value == "body cm" else r.kind.value,
        "name": r.name,
        "from": r.hand.value,
        "source": r.source,
        "needs": [b.symbol for b in r.because],
        **({"sigma": r.sigma} if r.sigma is not None else {}),
    }


def _seam(draft: Draft, code: str) -> dict[str, Any]:
    seam = draft.sheet.seam(code)
    w = walk(draft.sheet, seam)
    return {
        "name": seam.name,
        "left": [str(r) for r in seam.left],
        "right": [str(r) for r in seam.right],
        "left length": w.left,
        "right length": w.right,
        "ease": w.ease,
        "planned ease": seam.ease.plan,
        "accepted": [seam.ease.low, seam.ease.high],
        "notches": [[n.left, n.right, n.ticks] for n in seam.notches],
    }


def _finding(f: Finding) -> dict[str, Any]:
    return {
        "code": f.code,
        "severity": f.severity.value,
        "place": f.place,
        "sentence": str(f),
        "data": dict(f.data),
    }
