"""Runs of steps that stand in the house file under a name.

    unit = "cm"

    [[styles."neck gathers".step]]
    do = "cut"
    piece = "F"
    ...

An order calls them by hand: kind = "by hand", style = "neck gathers".
"""

import difflib
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from clothwright.features.by_hand import ByHand
from clothwright.order.faults import sentences
from clothwright.order.file import Order, OrderError, toml_table
from clothwright.units import Unit


def with_styles(order: Order) -> Order:
    """The order with the steps of its style, if it calls one. Raises OrderError."""
    hand = order.feature("by hand")
    if not isinstance(hand, ByHand) or not hand.style or hand.steps:
        return order
    styles = named_styles(order.house_text, order.house_place)
    if hand.style not in styles:
        near = difflib.get_close_matches(hand.style, list(styles), 1)
        hint = (
            f"; did you mean {near[0]}?"
            if near
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
        raise OrderError(*sentences(e, "by hand", where)) from None
