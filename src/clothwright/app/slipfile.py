"""Changes of an order's file: a field set, a word chosen, a feature added or left off.

The order is its TOML table; every change gives a new one and nothing is edited in
place, so that any earlier state can be taken up again.
"""

import copy
import tomllib
from collections.abc import Mapping
from typing import Any

import tomli_w

from clothwright.features import KINDS, Feature, by_its_name
from clothwright.order import OrderError
from clothwright.rules import Kind
from clothwright.units import Unit

Table = Mapping[str, Any]


def read_slip(text: str) -> dict[str, Any]:
    """The table of an order's text. Raises OrderError."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as e:
        raise OrderError("the slip: its text cannot be read; unpick it") from e
    rows = table.get("feature")
    if isinstance(rows, list):
        table["feature"] = [by_its_name(r) if isinstance(r, dict) else r for r in rows]
    return table


def write_slip(table: Table) -> str:
    """The text of an order's table."""
    return tomli_w.dumps(table)


def feature_type(kind: str) -> type[Feature]:
    """The feature of this kind. Raises OrderError."""
    try:
        return KINDS[kind]
    except KeyError:
        raise OrderError(f"the slip: there is no feature {kind}") from None


def row(table: Table, kind: str) -> Mapping[str, Any]:
    """What the slip says of a feature. Raises OrderError when it has none such."""
    for r in table.get("feature", ()):
        if r.get("kind") == kind:
            return dict(r)
    raise OrderError(f"the slip has no {kind}; it was left off meanwhile")


def set_field(table: Table, kind: str, field: str, value: Any) -> dict[str, Any]:
    """The table with a field of a feature put to a value; None gives it back to its
    rule. Raises OrderError when there is no such feature or field."""
    if field == "kind" or field not in feature_type(kind).model_fields:
        raise OrderError(f"the slip, {kind}: {field} is not one of its settings")
    row(table, kind)
    out = copy.deepcopy(dict(table))
    for r in out["feature"]:
        if r.get("kind") == kind:
            if value is None:
                r.pop(field, None)
            else:
                r[field] = value
    return out


def add_feature(table: Table, kind: str) -> dict[str, Any]:
    """The table with a feature more, at its usual amounts."""
    feature_type(kind)
    out = copy.deepcopy(dict(table))
    rows = out.setdefault("feature", [])
    if any(r.get("kind") == kind for r in rows):
        raise OrderError(f"the slip: {kind} stands there already")
    rows.append({"kind": kind})
    rows.sort(key=lambda r: _place(r.get("kind")))
    return out


def leave_off(table: Table, kind: str) -> dict[str, Any]:
    """The table without a feature."""
    row(table, kind)
    out = copy.deepcopy(dict(table))
    out["feature"] = [r for r in out["feature"] if r.get("kind") != kind]
    return out


def in_unit(table: Table, unit: Unit) -> dict[str, Any]:
    """The same order in another unit: every length that is written without one gets
    that of the table, so that nothing is made longer or shorter by it."""
    was = Unit.IN if table.get("unit") == "in" else Unit.CM
    out = copy.deepcopy(dict(table))
    out["unit"] = unit.value
    if was is unit:
        return out
    for r in out.get("feature", ()):
        numbers = feature_type(str(r.get("kind"))).numbers()
        lengths = {f for f, n in numbers.items() if n.kind is Kind.LENGTH}
        r.update({f: _marked(v, was) for f, v in r.items() if f in lengths})
    for cloth in out.get("cloths", {}).values():
        cloth.update({f: _marked(v, was) for f, v in cloth.items() if f in _OF_CLOTH})
    return out


_OF_CLOTH = ("width", "selvedge", "repeat_warp", "repeat_weft")
"""Lengths of a cloth."""


def _marked(value: Any, unit: Unit) -> Any:
    """A length with its unit behind it, where it has none."""
    text = f"{value}"
    return f"{text} {unit.value}" if text[-1:].isnumeric() else value


def _place(kind: object) -> int:
    """Features stand in the order in which the book lists them."""
    return list(KINDS).index(str(kind)) if kind in KINDS else len(KINDS)
