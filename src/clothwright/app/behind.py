"""What lies behind a word: the tape of a number, the choices of a word, and why."""

import contextlib
from dataclasses import replace
from enum import Enum
from typing import Any

from clothwright.app.own_steps import behind_steps
from clothwright.app.slipfile import feature_type
from clothwright.app.words import Reading, label, say_choice, say_size
from clothwright.body import measures
from clothwright.features import Feature, Number
from clothwright.features.hand.by_hand import ByHand
from clothwright.order import OrderError
from clothwright.order.numbers import numbers_of
from clothwright.order.styles import named_styles
from clothwright.order.telling import show, why_of
from clothwright.rules import Hand, Kind, Reason, RuleError
from clothwright.units import Unit, opening

GRAIN = {Unit.IN: 2.54 / 16, Unit.CM: 0.1}
"""One mark of the tape, cm."""

FAR = 2.0
"""A tape without an upper bound shows this many times the value."""


def behind_field(r: Reading, kind: str, field: str) -> dict[str, Any]:
    """The tape or the choices of a feature's setting. Raises OrderError."""
    model = feature_type(kind)
    feature = next((f for f in r.features if f.kind == kind), None)
    if feature is None or field not in model.model_fields or field == "kind":
        raise OrderError(f"the slip has no {kind} with {field}")
    number = model.numbers().get(field)
    if isinstance(feature, ByHand):
        return behind_steps(r) if field == "step" else _named(r, feature)
    if number is None:
        return _choice(feature, field)
    return _tape(r, feature, field, number)


def _named(r: Reading, feature: ByHand) -> dict[str, Any]:
    """The styles of the house file, by name."""
    names = list(named_styles(r.house, "the house rules")) if r.house else []
    return {
        "opens": "choice",
        "name": "style",
        "now": feature.style,
        "words": [{"say": n, "to": n} for n in names],
    }


def _choice(feature: Feature, field: str) -> dict[str, Any]:
    now = getattr(feature, field)
    words: list[Any] = list(type(now)) if isinstance(now, Enum) else [True, False]
    return {
        "opens": "choice",
        "name": label(feature, field),
        "now": say_choice(now),
        "words": [
            {"say": say_choice(w), "to": w.value if isinstance(w, Enum) else w}
            for w in words
        ],
    }


def _tape(r: Reading, feature: Feature, field: str, number: Number) -> dict[str, Any]:
    unit = r.unit
    rule = _by_rule(r, feature, field, number)
    value = getattr(feature, field)
    if r.draft is not None:
        with contextlib.suppress(RuleError):  # a number that this style has no use for
            value = r.draft.numbers[number.key]
    if value is None:
        value = rule if rule is not None else 0.0
    low = number.low if number.low is not None else 0.0
    high = number.high if number.high is not None else max(FAR * value, 10.0)
    length = number.kind is Kind.LENGTH
    grain = GRAIN[unit] if length else 0.5 if number.kind is Kind.ANGLE else 0.01

    def say(v: float) -> str:
        return say_size(v, number.kind, unit)

    line = f"Between {say(low)} and {say(high)}."
    if number.usual is not None:
        line += f" Usual is {say(number.usual[0])} to {say(number.usual[1])}."
    out: dict[str, Any] = {
        "opens": "tape",
        "name": number.name,
        "value": value,
        "low": low,
        "high": high,
        "grain": grain,
        "length": length,
        "line": line,
        "hers": getattr(feature, field) is not None,
        "key": number.key,
    }
    if rule is not None:
        out["rule"] = {"value": rule, "say": say(rule)}
    return out


def _by_rule(r: Reading, feature: Feature, field: str, number: Number) -> float | None:
    """What the number would be if she left it to its rule."""
    if r.draft is None:
        return number.default(r.unit)
    order = r.draft.order
    features = tuple(
        f.model_copy(update={field: None}) if f.kind == feature.kind else f
        for f in order.features
    )
    try:
        return numbers_of(replace(order, features=features))[number.key]
    except (RuleError, OrderError):
        return None


def behind_measure(r: Reading, code: str) -> dict[str, Any]:
    """How a measure is taken, and what stands on the card. Raises OrderError."""
    if code not in measures():
        raise OrderError(f"{code} is no measure that is known here")
    m = measures()[code]
    taken = r.body.values.get(code)
    return {
        "opens": "measure",
        "name": m.name,
        "code": code,
        "how": m.how,
        "angle": m.kind == "angle",
        "typed": taken.typed if taken else "",
        "value": taken.value if taken else None,
        "low": m.low,
        "high": m.high,
    }


# -- why -----------------------------------------------------------------------------
KNOTS = 6

_KNOT = {
    Hand.TAKEN: "tape",
    Hand.SIZE_TABLE: "tape",
    Hand.ESTIMATED: "guess",
    Hand.RULE: "ruler",
    Hand.HOUSE: "ruler",
    Hand.CHOICE: "pen",
    Hand.DEFAULT: "ruler",
}


def why(r: Reading, name: str) -> dict[str, Any]:
    """The thread of a number, a point or an edge, with three to six knots; each knot
    may be asked for in its turn. Raises OrderError."""
    if r.draft is None:
        raise OrderError("the order cannot be drawn, so nothing can be followed back")
    found = why_of(r.draft, name)
    if not found:
        raise OrderError(f"there is nothing called {name} in this draft")
    knots: list[dict[str, Any]] = []
    seen: set[str] = set()
    queue = list(found)
    while queue and len(knots) < KNOTS:
        reason = queue.pop(0)
        if reason.key in seen:
            continue
        seen.add(reason.key)
        knots.append(_knot(r, reason))
        queue += [b for b in reason.because if abs(b.value) > 0.005]
    return {"of": name, "knots": knots}


def _knot(r: Reading, reason: Reason) -> dict[str, Any]:
    unit = r.unit
    size = show(reason.value, reason.kind, unit)
    name = opening(reason.name)
    small = {
        Hand.TAKEN: reason.source,
        Hand.SIZE_TABLE: reason.source,
        Hand.ESTIMATED: "estimated, not measured",
        Hand.RULE: "by rule",
        Hand.HOUSE: "your house rule",
        Hand.CHOICE: "inked by you",
        Hand.DEFAULT: "the usual amount",
    }[reason.hand]
    formula = ""
    if reason.formula and reason.hand is not Hand.ESTIMATED:
        from clothwright.units import retold

        formula = f"{reason.symbol} = {retold(reason.formula, unit)}"
    source = "" if reason.hand in (Hand.TAKEN, Hand.CHOICE) else reason.source
    return {
        "key": reason.key,
        "knot": _KNOT[reason.hand],
        "say": f"{name}: {size}.",
        "formula": formula,
        "small": small + (f" ({source})" if source and source != small else ""),
    }
