"""Numbers of a button stand (transformations 7). Lengths cm."""

from clothwright.rules import RuleTable

_SRC = "transformations 7"

LEAST_EDGE = 0.6
"""A stand is wider than half the button by this at least, cm (7)."""

BEHIND = 3.5
"""The facing is twice the stand wide and 3 to 4 cm more (7), cm."""

BEYOND_HOLE = 1.5
"""The facing ends this far beyond the inner end of a buttonhole (6), cm."""

SHANK = 0.3
"""A buttonhole that lies across begins this far beyond its line, and is longer than the
button by as much, cm (7)."""

STAND = RuleTable("button stand")
_rule = STAND.rule
SINGLE = RuleTable("single-breasted")
DOUBLE = RuleTable("double-breasted")


@SINGLE.rule(
    "b",
    "button stand beyond the centre line",
    source=_SRC,
    key="b_stand",
    formula="the button's diameter, but at least half of it and 0.6 cm",
    low=0.8,
    high=12.0,
)
def _single(d_button: float) -> float:
    return max(d_button, d_button / 2 + LEAST_EDGE)


@DOUBLE.rule(
    "b",
    "button stand beyond the centre line",
    source=_SRC,
    key="b_stand",
    formula="6 cm",
    low=0.8,
    high=12.0,
)
def _double() -> float:
    return 6.0


@SINGLE.rule(
    "row",
    "row of buttons from the centre line",
    source=_SRC,
    key="b_row",
    formula="none: on it",
)
def _on_line() -> float:
    return 0.0


@DOUBLE.rule(
    "row",
    "row of buttons from the centre line",
    source=_SRC,
    key="b_row",
    formula="stand − (half the button + 0.6 cm)",
)
def _row(b_stand: float, d_button: float) -> float:
    return b_stand - d_button / 2 - LEAST_EDGE


@SINGLE.rule(
    "bf",
    "facing of the button stand inside the centre line",
    source=_SRC,
    key="b_facing",
    formula="stand + 3.5 cm: 2·stand + 3.5 cm in all",
)
def _facing(b_stand: float) -> float:
    return b_stand + BEHIND


@DOUBLE.rule(
    "bf",
    "facing of the button stand inside the centre line",
    source=f"{_SRC}, 6",
    key="b_facing",
    formula="row + half the button + 1.5 cm",
)
def _facing_double(b_row: float, d_button: float) -> float:
    return b_row + d_button / 2 + BEYOND_HOLE


@_rule(
    "hole",
    "length of a buttonhole",
    source=_SRC,
    key="b_hole",
    formula="diameter and thickness: d + 0.3 cm",
)
def _hole(d_button: float) -> float:
    return d_button + SHANK


@_rule(
    "b1",
    "first button below the edge, and the nearest to a waist seam",
    source=_SRC,
    key="b_first",
    formula="half the button + 0.8 cm",
)
def _first(d_button: float) -> float:
    return d_button / 2 + 0.8


@_rule(
    "b down",
    "where the buttoned edge begins, below the neck on the centre line",
    source=_SRC,
    key="b_down",
    formula="none: at the neck",
)
def _down() -> float:
    return 0.0
