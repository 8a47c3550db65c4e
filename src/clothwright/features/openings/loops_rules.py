"""Numbers of loops, buttons and lacing along a slanted edge (first garment 10).

Loop i lies T + g1 + i·spacing below E1 along the edge as it is worn, which runs
straight from e1 to e2. Lengths cm.
"""

import math
from itertools import pairwise

from clothwright.rules import Kind, RuleError, RuleTable

_SRC = "first garment 10"

LOOPS = RuleTable("loops")
EVEN = RuleTable("loops spaced evenly")
EXACT = RuleTable("loops at the wanted spacing")
BALL = RuleTable("ball buttons")
FLAT = RuleTable("flat buttons")
_rule = LOOPS.rule


@_rule(
    "u",
    "edge that the loops can use",
    source=f"{_SRC}.2",
    formula="slanted edge − rounding − g1 − g2",
)
def u(edge_net: float, g1: float, g2: float) -> float:
    left = edge_net - g1 - g2
    if left <= 0:
        raise RuleError(
            "the slanted edge is too short for loops: make the back (Do) lower, or "
            "what is left at the ends of the row (g1, g2) less"
        )
    return left


@EVEN.rule(
    "n",
    "loops in a row",
    kind=Kind.COUNT,
    source=f"{_SRC}.3",
    key="n_loops",
    low=2,
    high=80,
    formula="1 + u/sp, to the nearest",
)
def _n_even(u: float, sp: float) -> float:
    return _at_least_two(1 + math.floor(u / sp + 0.5 + 1e-9))


@EVEN.rule(
    "spacing",
    "distance from loop to loop",
    source=f"{_SRC}.3",
    key="spacing",
    low=0.8,
    high=10,
    formula="u/(n − 1)",
)
def _spacing_even(u: float, n_loops: float) -> float:
    return u / (n_loops - 1)


@EXACT.rule(
    "n",
    "loops in a row",
    kind=Kind.COUNT,
    source=f"{_SRC}.3",
    key="n_loops",
    low=2,
    high=80,
    formula="1 + u/sp, whole",
)
def _n_exact(u: float, sp: float) -> float:
    return _at_least_two(1 + math.floor(u / sp + 1e-9))


@EXACT.rule(
    "spacing",
    "distance from loop to loop",
    source=f"{_SRC}.3",
    key="spacing",
    low=0.8,
    high=10,
    formula="sp",
)
def _spacing_exact(sp: float) -> float:
    return sp


def _at_least_two(n: int) -> float:
    if n < 2:
        raise RuleError(
            "the edge holds fewer than two loops: set them (sp) closer together"
        )
    return float(n)


@_rule(
    "rest",
    "edge left over below the last loop",
    source=f"{_SRC}.3",
    formula="u − (n − 1)·spacing",
)
def rest(u: float, n_loops: float, spacing: float) -> float:
    return u - (n_loops - 1) * spacing


@BALL.rule(
    "Cb",
    "girth of the button",
    source=f"{_SRC}.5",
    key="C_button",
    formula="π·diameter for a ball",
)
def _girth(dia: float) -> float:
    return math.pi * dia


@FLAT.rule(
    "Cb",
    "girth of the button",
    source=f"{_SRC}.5",
    key="C_button",
    formula="2·(diameter + thickness)",
)
def _girth_flat(dia: float, thick: float) -> float:
    return 2 * (dia + thick)


@_rule(
    "v",
    "cord that shows in a loop",
    source=f"{_SRC}.5",
    key="v_cord",
    formula="(Cb − e), less what it is made tighter",
)
def _cord(C_button: float, e_loop: float, snug: float) -> float:
    v = (C_button - e_loop) * (1 - snug)
    if v <= e_loop:
        raise RuleError(_TOO_SMALL)
    return v


_TOO_SMALL = (
    "the button is too small for loop ends this far apart: set the ends (e) closer, or "
    "take a larger button (dia)"
)


@_rule("v + 2·SA", "cord cut for a loop", source=f"{_SRC}.5", key="cord_cut")
def _cord_cut(v_cord: float, SA_loop: float) -> float:
    return v_cord + 2 * SA_loop


@_rule(
    "reach",
    "reach of a loop beyond the edge",
    source=f"{_SRC}.5",
    formula="√((v/2)² − (e/2)²)",
)
def reach(v_cord: float, e_loop: float) -> float:
    return math.sqrt((v_cord / 2) ** 2 - (e_loop / 2) ** 2)


@_rule(
    "in",
    "middle of a button from the slanted edge",
    source=f"{_SRC}.5",
    key="button_in",
    formula="reach − diameter/2",
)
def _button_in(reach: float, dia: float) -> float:
    if reach <= dia / 2:
        raise RuleError(_TOO_SMALL)
    return reach - dia / 2


@_rule("rows·n", "loops in all", kind=Kind.COUNT, source=f"{_SRC}.5", key="loops_all")
def _all(n_loops: float, rows: float) -> float:
    return rows * n_loops


@_rule(
    "cord",
    "loop cord in all, with a tenth more",
    source=f"{_SRC}.5",
    key="cord_all",
    formula="rows·n·(v + 2·SA)·1.1",
)
def _cord_all(loops_all: float, cord_cut: float) -> float:
    return loops_all * cord_cut * 1.1


@_rule("buttons", "buttons, with one to spare", kind=Kind.COUNT, source=f"{_SRC}.5")
def buttons(loops_all: float) -> float:
    return loops_all + 1


def _gap(
    i: float,
    e1: float,
    e2: float,
    slant: float,
    te: float,
    T_round: float,
    g1: float,
    spacing: float,
) -> float:
    """Gap between the two edges at loop i, which counts from 0 at the top."""
    along = (T_round + g1 + i * spacing) / (slant - te)
    return 2 * (e1 + (e2 - e1) * along)


_EDGE = ("e1", "e2", "slant", "te", "T_round", "g1", "spacing")
"""What `_gap` takes after the loop."""


@_rule(
    "gap 1",
    "gap between the edges at the first loop",
    source=f"{_SRC}.6",
    key="gap_first",
    formula="2·set-in at the first loop",
    needs=_EDGE,
)
def _gap_first(*edge: float) -> float:
    return _gap(0, *edge)


@_rule(
    "gap n",
    "gap between the edges at the last loop",
    source=f"{_SRC}.6, 10.8",
    key="gap_last",
    formula="2·set-in at the last loop",
    needs=("n_loops", *_EDGE),
)
def _gap_last(n_loops: float, *edge: float) -> float:
    return _gap(n_loops - 1, *edge)


LACED = RuleTable("loops laced")
TO_TIE = 35.0
"""Cord left at either end of a lacing, cm (10.6)."""


@LACED.rule("buttons", "buttons", kind=Kind.COUNT, source=f"{_SRC}.6", key="buttons")
def _no_buttons() -> float:
    return 0.0


@LACED.rule(
    "lacing",
    "cord to lace with",
    source=f"{_SRC}.6",
    key="lacing",
    formula="gap 1 + 2·Σ √(mean gap² + spacing²) + 2·35 cm to tie",
    needs=("n_loops", *_EDGE),
)
def _lacing(n_loops: float, *edge: float) -> float:
    gaps = [_gap(i, *edge) for i in range(int(n_loops))]
    spacing = edge[-1]
    crosses = (math.hypot((a + b) / 2, spacing) for a, b in pairwise(gaps))
    return gaps[0] + 2 * sum(crosses) + 2 * TO_TIE
