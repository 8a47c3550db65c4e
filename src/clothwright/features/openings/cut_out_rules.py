"""The rules of a cut-out in a closed back (transformations 2, deep back). Lengths cm.

Where it lies and how wide it is was nowhere found written down: common practice, no
source, but for the line of the brassiere.
"""

from clothwright.rules import RuleError, RuleTable

PRACTICE = "common practice, no source"

SHORTEST = 4.0
"""A cut-out is at least so long, cm (common practice, no source)."""

CUT_OUT_BACK = RuleTable("cut-out back")
_rule = CUT_OUT_BACK.rule


@_rule(
    "co top",
    "top of the cut-out below the nape",
    source=PRACTICE,
    key="co_top",
    formula="3 cm below the back neck",
    low=1.5,
    high=25.0,
)
def _top(Db: float, nr: float) -> float:
    return Db - nr + 3.0


@_rule(
    "y(bra)",
    "line of the brassiere at the back",
    source="first garment 3.3",
    key="y_bra",
    formula="yB + 4 cm",
)
def _bra(yB: float) -> float:
    return yB + 4.0


@_rule(
    "co foot",
    "foot of the cut-out above the waist",
    source=PRACTICE,
    key="co_foot",
    formula="2 cm above the line of the brassiere",
    low=4.0,
    high=40.0,
)
def _foot(yW: float, y_bra: float) -> float:
    return yW - y_bra + 2.0


@_rule(
    "co long",
    "length of the cut-out",
    source="transformations 2",
    key="co_long",
    formula="yW − co foot − co top",
)
def _long(yW: float, co_foot: float, co_top: float) -> float:
    long = yW - co_foot - co_top
    if long < SHORTEST:
        raise RuleError(
            f"the cut-out would be only {max(0.0, long):.1f} cm long; {SHORTEST:g} cm "
            "is the least: begin it (co top) higher, or end it (co foot) lower"
        )
    return long


@_rule(
    "co half",
    "half the width of the cut-out",
    source=PRACTICE,
    key="co_half",
    formula="a quarter of its length, at most 5 cm",
    low=1.0,
    high=10.0,
)
def _half(co_long: float) -> float:
    return min(co_long / 4, 5.0)


@_rule(
    "co bra",
    "foot of the cut-out above the line of the brassiere",
    source="transformations 2",
    key="co_bra",
    formula="y(bra) − (yW − co foot)",
)
def _above_bra(y_bra: float, yW: float, co_foot: float) -> float:
    return y_bra - (yW - co_foot)
