"""Lengths and angles as people write them; centimetres and degrees inside.

Inches, fractions and the choice of unit exist at the edges of the program only. A
stored value is never rounded; only what is shown is.
"""

from clothwright.units.near import did_you_mean, nearest
from clothwright.units.read import (
    LengthError,
    parse_angle,
    parse_length,
    parse_plain,
)
from clothwright.units.show import (
    Fraction16,
    cm_to_ligne,
    format_angle,
    format_length,
    ligne_to_cm,
    metres_up_to_tenth,
    mixed,
    opening,
    pretty_length,
    pretty_text,
    retold,
    split_fraction,
    told_apart,
    yards_up_to_eighth,
)
from clothwright.units.toml import MiswrittenError, read_toml
from clothwright.units.unit import CM_PER_INCH, Unit

__all__ = [
    "CM_PER_INCH",
    "Fraction16",
    "LengthError",
    "MiswrittenError",
    "Unit",
    "cm_to_ligne",
    "did_you_mean",
    "format_angle",
    "format_length",
    "ligne_to_cm",
    "metres_up_to_tenth",
    "mixed",
    "opening",
    "nearest",
    "parse_angle",
    "parse_length",
    "parse_plain",
    "pretty_length",
    "pretty_text",
    "read_toml",
    "retold",
    "split_fraction",
    "told_apart",
    "yards_up_to_eighth",
]
