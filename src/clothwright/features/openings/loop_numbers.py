"""Numbers of every loop, wherever its row lies (first garment 10.5)."""

from clothwright.features.base import Number
from clothwright.rules import Kind

_SRC = "first garment 10.5"

ENDS_APART = Number("e_loop", "e", "ends of a loop apart", _SRC, 0.6, 0.25, 0.2, 1.5)

CORD_ALLOWANCE = Number(
    "SA_loop", "SA", "allowance of a loop's end", _SRC, 1.2, 0.5, 0.5, 2.5
)

TIGHTER = Number(
    "snug",
    "snug",
    "share by which a loop is made tighter than its button",
    _SRC,
    0.0,
    None,
    0.0,
    0.05,
    kind=Kind.RATIO,
)
