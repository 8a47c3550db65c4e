"""Runs of steps that stand in the house file under a name.

    unit = "cm"

    [[styles."neck gathers".step]]
    do = "cut"
    piece = "F"
    ...

An order calls them by hand: kind = "by hand", style = "neck gathers".
"""

import re
from dataclasses import replace
from typing import Any

import tomli_w
from pydantic import ValidationError

from clothwright.features.hand.by_hand import ByHand
from clothwright.order.faults import sentences
from clothwright.order.file import Order, OrderError, toml_table
from clothwright.units import Unit, did_you_mean


def with_styles(order: Order) -> Order:
    """The order with the steps of its style, if it calls one. Raises OrderError."""
    hand = order.feature("by hand")
    if not isinstance(hand, ByHand) or not hand.style or hand.step:
        return order
    styles = named_styles(order.house_text, order.house_place)
    if hand.style not in styles:
        hint = (
            f"; {near}"
            if (near := did_you_mean(hand.style, styles))
            else f"; it has {', '.join(styles)}"
            if styles
            else "; write its steps under [styles]"
        )
        where = order.house_place or "the house file"
        raise OrderError(
            f"{order.place}, by hand: there is no style {hand.style!r} in {where}{hint}"
        )
    made = styles[hand.style].model_copy(update={"style": hand.style})
    features = tuple(made if f is hand else f for f in order.features)
    return replace(order, features=features)


def named_styles(text: str, place: str) -> dict[str, ByHand]:
    """The styles of a house file, by name. Raises OrderError with all faults."""
    table = toml_table(text, place or "the house file")
    rows = table.get("styles", {})
    if not isinstance(rows, dict):
        raise OrderError(f'{place}: write each style as [[styles."its name".step]]')
    unit = Unit.IN if table.get("unit") == "in" else Unit.CM
    out: dict[str, ByHand] = {}
    faults: list[str] = []
    for name, row in rows.items():
        where = f"{place}, style {name}"
        try:
            out[name] = _style(row, where, unit)
        except OrderError as e:
            faults += e.sentences
    if faults:
        raise OrderError(*faults)
    return out


def _style(row: Any, where: str, unit: Unit) -> ByHand:
    if not isinstance(row, dict) or not isinstance(row.get("step"), list):
        raise OrderError(f"{where}: write its steps, each under [[styles.….step]]")
    try:
        return ByHand.model_validate(row, context={"unit": unit})
    except ValidationError as e:
        raise OrderError(*sentences(e, ByHand, where)) from None


def house_with_style(text: str, name: str, steps: list[Any], unit: Unit) -> str:
    """A house file's text with a style more at its end; what stands there stays as she
    wrote it. `unit` is that of the steps. Raises OrderError."""
    place = "the house rules"
    if name in named_styles(text, place):
        raise OrderError(f"there is a style {name} already; give this one another name")
    table = toml_table(text, place)
    if not text.strip():
        text = f'unit = "{unit.value}"\n'
    elif table.get("unit", unit.value) != unit.value:
        steps = [_said_in(s, unit) for s in steps]
    row = tomli_w.dumps({"styles": {name: {"step": steps}}})
    return f"{text.rstrip()}\n\n{row}"


def _said_in(value: Any, unit: Unit) -> Any:
    """A step with a unit written behind every bare length. Raises OrderError."""
    if isinstance(value, list):
        return [_said_in(v, unit) for v in value]
    if not isinstance(value, dict):
        return value
    return {
        k: _length(v, unit) if k in _LENGTHS else _said_in(v, unit)
        for k, v in value.items()
    }


_LENGTHS = ("along", "right", "down", "bow", "by", "by_end")


def _length(value: Any, unit: Unit) -> Any:
    text = str(value).strip()
    if re.fullmatch(r"-?[\d ./,½¼¾⅛⅜⅝⅞-]+", text):
        return f"{text} {unit.value}"
    if re.search(r"[-+]", text):
        raise OrderError(
            f"the house rules are in another unit than the slip: write {unit.value} "
            f"behind the lengths in {text}"
        )
    return value
