"""Every number, point, edge and seam of a draft as plain data, for other programs.

Symbols are those printed in the trade notes (`Dm`, `θ`, `Nf′`); `ascii` gives the key
of a symbol that is not plain letters. Lengths are cm, angles degrees; x runs from the
centre back to the centre front, y down from the nape. Pieces that were turned while
drafting lie where the draft left them. The layout is stable: names may be added, none
is renamed without a new `format` number.
"""

from collections.abc import Iterator
from typing import Any

from clothwright.features.chains import Chains
from clothwright.features.laid import TOLERANCE, Laid, laid
from clothwright.features.linings.facing_seams import back_armhole, front_armhole
from clothwright.findings import Finding
from clothwright.order.draft import Draft
from clothwright.rules import Reason, RuleError
from clothwright.truing import walk

FORMAT = 2


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
    for symbol, name, value in taped(draft):
        numbers.setdefault(symbol, _taped(name, value))
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
        "seams": {
            **{s.code: _seam(draft, s.code) for s in draft.sheet.seams},
            **{w.code: _laid(w) for w in laid(draft.sheet, draft.numbers)},
        },
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


def taped(draft: Draft) -> Iterator[tuple[str, str, float]]:
    """Symbol, name and length (cm) of what no rule gives and the tape finds on the
    paper: lengths of a step that was found by trial, and of the armhole."""
    for step in draft.steps:
        for a in step.amounts:
            if a.symbol:
                yield a.symbol, step.says, a.value
    chains = Chains(draft.sheet)
    front, back = (chains.length(of(chains)) for of in (front_armhole, back_armhole))
    if front and back:
        yield "Af", "front armhole", front
        yield "Ab", "back armhole", back
        yield "A", "armhole", front + back


def _taped(name: str, value: float) -> dict[str, Any]:
    return {
        "value": value,
        "unit": "cm",
        "name": name,
        "from": "measured on the paper",
        "source": "",
        "needs": [],
    }


def _laid(w: Laid) -> dict[str, Any]:
    return {
        "name": w.name,
        "left": list(w.left),
        "right": list(w.right),
        "left length": w.left_length,
        "right length": w.right_length,
        "ease": w.right_length - w.left_length,
        "planned ease": 0.0,
        "accepted": [-TOLERANCE, TOLERANCE],
        "notches": [[a, b, 0] for a, b in w.places],
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
