"""How what is decided at a fitting is written into an order."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from clothwright.features import KINDS, Feature
from clothwright.features.fitting import Fitting
from clothwright.order.faults import sentences
from clothwright.order.file import Order, OrderError, out_of_bounds
from clothwright.units import Unit, format_length


def written(cm: float, unit: Unit) -> str:
    """A length as it is written in an order file: to the 0.01 mm."""
    shown = format_length(cm, unit)
    text = f"{cm / (2.54 if unit is Unit.IN else 1.0):.4f}".rstrip("0").rstrip(".")
    return shown if _reads_as(shown, unit, cm) else f"{text} {unit.value}"


def _reads_as(text: str, unit: Unit, cm: float) -> bool:
    from clothwright.units import LengthError, parse_length

    try:
        return abs(parse_length(text, unit) - cm) < 1e-4
    except LengthError:
        return False


def with_row(order: Order, kind: str, row: Mapping[str, Any]) -> Order:
    """The order with a field set, or an alteration more. Raises OrderError."""
    context = {"unit": order.unit}
    place = f"{order.place}, {kind}"
    try:
        if kind != "fitting":
            read = KINDS[kind].model_validate({"kind": kind, **row}, context=context)
            (field,) = row
            old = order.feature(kind)
            if old is None:
                raise OrderError(f"{order.place}: there is no {kind} in this order")
            new: Feature = old.model_copy(update={field: getattr(read, field)})
        else:
            new = _with_alteration(order, row)
    except ValidationError as e:
        raise OrderError(*sentences(e, KINDS[kind], place)) from None
    if faults := out_of_bounds(new, order.unit, order.place):
        raise OrderError(*faults)
    kept = tuple(new if f.kind == kind else f for f in order.features)
    if order.feature(kind) is None:
        kept = (*kept, new)
    return replace(order, features=kept)


def _with_alteration(order: Order, row: Mapping[str, Any]) -> Fitting:
    """The order's fitting with an alteration more; one that is there already takes in
    more. Raises ValidationError."""
    old = order.feature("fitting")
    before = old.alteration if isinstance(old, Fitting) else ()
    read = Fitting.model_validate(
        {"alteration": [dict(row)]}, context={"unit": order.unit}
    ).alteration[0]
    kept = []
    for a in before:
        if a.do == read.do:
            more = {"do": a.do, "by": a.by + read.by}
            read = Fitting.model_validate({"alteration": [more]}).alteration[0]
        else:
            kept.append(a)
    return Fitting(alteration=(*kept, read))
