"""Length, angle and ratio as fields of a model.

A validation context `{"unit": Unit}` says that values come from a file: strings and
bare numbers take that unit. Without a context, floats are centimetres (from code).
"""

from typing import Annotated

from pydantic import BeforeValidator, ValidationInfo

from clothwright.units.read import LengthError, parse_angle, parse_length, parse_plain
from clothwright.units.unit import Unit


def _length(value: object, info: ValidationInfo) -> object:
    if value is None:
        return None
    unit = (info.context or {}).get("unit")
    if isinstance(value, str | int | float):
        return parse_length(
            value, unit or (None if isinstance(value, str) else Unit.CM)
        )
    raise ValueError("write a length, like 12.5 cm or 5 in")


def _angle(value: object) -> object:
    if isinstance(value, str | int | float):
        return parse_angle(value)
    raise ValueError("write an angle in degrees")


def _ratio(value: object) -> object:
    if value is None:
        return None
    if isinstance(value, str):
        return parse_plain(value)
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    raise LengthError("write a number or a fraction, like 0.5 or 1/2")


Length = Annotated[float, BeforeValidator(_length, json_schema_input_type=str)]
"""A length in cm; see the module for how it is read."""

Angle = Annotated[float, BeforeValidator(_angle, json_schema_input_type=str)]
"""An angle in degrees."""

Ratio = Annotated[float, BeforeValidator(_ratio, json_schema_input_type=str)]
"""A share or a ratio: a number or a written fraction."""
