"""Changes that a slip takes: a number set, a word chosen, a feature added or left off,
a measure, a cloth, her own steps, what is altered after a fitting, what is tried, kept
or taken back.

Each gives the refusal when it is refused with a way out, and raises OrderError,
LengthError or BodyError when it cannot be made.
"""

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from clothwright.app.cloth_words import changed_cloth
from clothwright.app.keeper import Refusal
from clothwright.app.own_steps import steps_of_slip, with_steps
from clothwright.app.room import PLACE, Room
from clothwright.app.slipfile import add_feature, feature_type, leave_off, set_field
from clothwright.app.words import label, say_choice, say_size
from clothwright.body import BodyError, measures
from clothwright.features import Feature
from clothwright.order import OrderError, Workroom
from clothwright.rules import Kind
from clothwright.units import (
    LengthError,
    Unit,
    format_length,
    opening,
    parse_angle,
    parse_length,
    parse_plain,
)

TRIES = 7
"""Halvings on the way to the nearest value that can be drawn."""


def change(room: Room, op: Mapping[str, Any]) -> Refusal | None:
    """Make one change. Gives the refusal when it cannot be made."""
    do = str(op.get("do", ""))
    made = CHANGES.get(do)
    if made is not None and str(op.get("of", "")).startswith("cloth:"):
        made = _change_cloth
    if made is None:
        return Refusal("", f"the slip knows no change called {do}")
    try:
        refusal = made(room, op)
    except (OrderError, LengthError, BodyError) as e:
        refusal = Refusal(str(op.get("of", op.get("kind", ""))), _told(e))
        if room.shown is not room.now:
            room.redraw()
    room.revision += 1
    return refusal


def _set(room: Room, op: Mapping[str, Any]) -> Refusal | None:
    """A number, pulled (`cm`) or typed (`to`); `live` while it is being pulled."""
    kind, name = _split(op)
    feature, typed = _typed(room, kind, name, op)
    table = set_field(room.now, kind, name, typed)
    try:
        if op.get("live"):
            room.draw(table, pulled=True)
            return None
        old = _say(room, feature, name)
        said = f"{opening(label(feature, name))} {_wanted(room, feature, name, typed)}"
        room.keep(table, f"{said}, was {old}")
    except OrderError as e:
        nearest = _nearest(room, kind, name, typed) if not op.get("live") else None
        room.redraw()
        return Refusal(f"{kind}.{name}", _told(e), nearest)
    return None


def _wanted(room: Room, feature: Feature, name: str, typed: str | float) -> str:
    number, unit = feature.numbers()[name], room.unit()
    value = parse_length(typed, unit) if isinstance(typed, str) else typed
    return say_size(value, number.kind, unit)


def _typed(
    room: Room, kind: str, name: str, op: Mapping[str, Any]
) -> tuple[Feature, str | float]:
    """What is written in the order for a number. Raises OrderError, LengthError."""
    feature = room.feature(kind)
    number = feature.numbers().get(name)
    if number is None:
        raise OrderError(f"{PLACE}, {kind}: {name} is not a number")
    unit = room.unit()
    length = number.kind is Kind.LENGTH
    if "cm" in op:
        value = float(op["cm"])
        return feature, format_length(value, unit) if length else round(value, 3)
    to = str(op.get("to", "")).strip()
    in_unit = {"in": Unit.IN, "cm": Unit.CM}.get(str(op.get("unit")), unit)
    if length:
        return feature, format_length(parse_length(to, in_unit), unit)
    if number.kind is Kind.ANGLE:
        return feature, parse_angle(to)
    return feature, parse_plain(to)


def _choose(room: Room, op: Mapping[str, Any]) -> None:
    kind, name = _split(op)
    feature = room.feature(kind)
    if name in feature.numbers():
        raise OrderError(f"{PLACE}, {kind}: {name} is a number; set it")
    was, to = say_choice(getattr(feature, name)), op.get("to")
    said = f"{opening(label(feature, name))}: {say_choice(to)}, was {was}"
    room.keep(set_field(room.now, kind, name, to), said)


def _rule(room: Room, op: Mapping[str, Any]) -> None:
    kind, name = _split(op)
    said = f"{opening(label(feature_type(kind), name))} as the rule says"
    room.keep(set_field(room.now, kind, name, None), said)


def _add(room: Room, op: Mapping[str, Any]) -> None:
    kind = str(op.get("kind", ""))
    table = add_feature(room.now, kind)
    for name, value in dict(op.get("with", {})).items():
        table = set_field(table, kind, str(name), value)
    room.keep(table, f"{opening(kind)} added")


def _leave(room: Room, op: Mapping[str, Any]) -> None:
    kind = str(op.get("kind", ""))
    room.keep(leave_off(room.now, kind), f"{opening(kind)} left off")


def _change_cloth(room: Room, op: Mapping[str, Any]) -> None:
    """A word of a cloth; while its tape is pulled nothing is drawn."""
    if not op.get("live"):
        room.keep(*changed_cloth(room.now, str(op["of"]), op, room.unit()))


def _own_steps(room: Room, op: Mapping[str, Any]) -> None:
    """Her own steps, all anew."""
    said = "Steps by hand" if op.get("steps") else "No steps by hand"
    room.keep(with_steps(room.now, op.get("steps")), said)


def _name_steps(room: Room, op: Mapping[str, Any]) -> None:
    """Keep the steps under a name in the house rules, and call them by it."""
    name = " ".join(str(op.get("name", "")).split())
    if not name:
        raise OrderError("write a name to keep the steps under")
    steps = steps_of_slip(room.now)
    room.house = room.keeper.keep_style(name, steps, room.unit())
    table = set_field(room.now, "by hand", "step", None)
    room.keep(set_field(table, "by hand", "style", name), f"Style {name} kept")


def _look(room: Room, op: Mapping[str, Any]) -> None:
    """Point at a place of the body, or at what is seen there."""
    room.fitting.look(op, room.kept(), room.now)


def _fit(room: Room, op: Mapping[str, Any]) -> None:
    """Alter the slip after a fitting."""
    table, said, decision = room.fitting.chosen(op, room.kept(), room.now)
    room.keep(dict(table), said)
    if decision is not None:
        tried = len(room.tried) if room.basting else None
        room.fitting.decided(decision, tried)


def _measure(room: Room, op: Mapping[str, Any]) -> Refusal | None:
    code = str(op.get("of", "")).removeprefix("m:")
    if code not in measures():
        raise OrderError(f"{code} is no measure that is known here")
    m = measures()[code]
    typed = str(op.get("to", "")).strip()
    unit = {"in": Unit.IN, "cm": Unit.CM}.get(str(op.get("unit")), room.unit())
    if m.kind == "angle":
        parse_angle(typed)
    else:
        typed = format_length(parse_length(typed, unit), room.unit())
    if not room.basting:
        asked = room.keeper.measure(code, typed, room.unit(), bool(op.get("keep")))
        if asked:
            keep = {**op, "keep": True, "say": "Keep it"}
            return Refusal(f"m:{code}", asked, keep)
        room.card = room.keeper.card(room.unit())
    _take_measures(room, {code: typed}, f"{opening(m.said)} {typed}")
    return None


def _card(room: Room, op: Mapping[str, Any]) -> None:
    """Take up the newest figures of the card."""
    _take_measures(room, room.newer(), "Measured again")


def _take_measures(room: Room, typed: Mapping[str, str], said: str) -> None:
    table = dict(room.now)
    table["measures"] = {**table.get("measures", {}), **typed}
    table["taken"] = date.today()
    room.keep(table, said)


def _nearest(
    room: Room, kind: str, name: str, typed: str | float
) -> dict[str, Any] | None:
    """The value nearest to the wanted one that can be drawn."""
    number = feature_type(kind).numbers()[name]
    if room.settled is None or number.key not in room.settled.numbers:
        return None
    unit = room.unit()
    good = room.settled.numbers[number.key]
    bad = parse_length(typed, unit) if isinstance(typed, str) else float(typed)
    start = good
    for bound in (number.low, number.high):
        if bound is not None and min(good, bad) <= bound <= max(good, bad):
            bad = bound
    for i in range(TRIES):
        mid = bad if i == 0 else (good + bad) / 2
        try:
            trial = set_field(room.now, kind, name, _written(mid, number.kind, unit))
            Workroom().draft(room.order_of(trial))
            good = mid
            if i == 0:
                break
        except OrderError:
            bad = mid
    if abs(good - start) < 0.05:
        return None
    written = _written(good, number.kind, unit)
    return {
        "do": "set",
        "of": f"{kind}.{name}",
        "to": written,
        "say": f"Make it {say_size(good, number.kind, unit)}",
    }


def _say(room: Room, feature: Feature, name: str) -> str:
    number = feature.numbers()[name]
    value = getattr(feature, name)
    if room.settled is not None and number.key in room.settled.numbers:
        value = room.settled.numbers[number.key]
    return "by rule" if value is None else say_size(value, number.kind, room.unit())


CHANGES: Mapping[str, Callable[[Room, Mapping[str, Any]], Refusal | None]] = {
    "set": _set,
    "choose": _choose,
    "rule": _rule,
    "add": _add,
    "leave": _leave,
    "own steps": _own_steps,
    "name steps": _name_steps,
    "look": _look,
    "take": _fit,
    "take over": _fit,
    "let out": _fit,
    "measure": _measure,
    "card": _card,
    "baste": lambda room, op: room.baste(),
    "stitch": lambda room, op: room.stitch(),
    "unpick": lambda room, op: room.unpick(),
    "again": lambda room, op: room.again(),
}
"""What each change is called by the page."""


def _written(value: float, kind: Kind, unit: Unit) -> str | float:
    return format_length(value, unit) if kind is Kind.LENGTH else round(value, 3)


def _split(op: Mapping[str, Any]) -> tuple[str, str]:
    kind, _, name = str(op.get("of", "")).rpartition(".")
    if name not in feature_type(kind).model_fields:
        raise OrderError(f"{PLACE}, {kind}: {name} is not one of its settings")
    return kind, name


def _told(e: Exception) -> str:
    text = " ".join(str(e).splitlines())
    text = re.sub(rf"^{PLACE}(, feature \d+ \([^)]*\))?[:,] ", "", text)
    return opening(text) + ("" if text.endswith(".") else ".")
