"""Neck, shoulder, armhole and side of the knit bodice without darts (blocks F,
corrections C7). Lengths in cm, axes as in `blocks.knit_rules`."""

import math

from clothwright.blocks import knit_curves
from clothwright.blocks.trial import by_trial
from clothwright.rules import Kind, RuleTable

KNIT_OUTLINE = RuleTable("outline of the knit bodice")
_rule = KNIT_OUTLINE.rule
_SRC = "blocks F"

HEAD_ROOM = 2.0
"""An opening passes the head when it stretches to this much more, cm (8.1)."""

CREW = 8.0
"""Least depth of a round front neck, cm (F2)."""

DEEPEST = 16.0
"""The neck is deepened for the head to here, cm; then it must be widened (our ruling).
"""


# -- neck and shoulder -----------------------------------------------------------------
@_rule(
    "σ",
    "slope of both shoulders",
    kind=Kind.ANGLE,
    source=f"{_SRC}2",
    key="sigma",
    formula="SS − 1.5°",
)
def _sigma(SS: float) -> float:
    return SS - 1.5


@_rule(
    "S",
    "shoulder of the block",
    source=f"{_SRC}3",
    key="S",
    formula="SH less its narrowing; its tip at most 1 cm outside QB, which a cloth cut "
    "very close comes to",
)
def _shoulder(
    SH: float, knit_ti: float, bw: float, sigma: float, q_bust: float
) -> float:
    widest = q_bust - knit_curves.HOLLOW + knit_curves.OVER[1]
    return min(SH - knit_ti, (widest - bw) / math.cos(math.radians(sigma)))


@_rule(
    "Sr",
    "shoulder that the neck leaves",
    source=_SRC,
    key="S_left",
    formula="S less the widening of the neck",
)
def _left(S: float, knit_dw: float) -> float:
    return S - knit_dw


@_rule(
    "bw",
    "neck width of the block",
    source=f"{_SRC}2, corrections C7",
    formula="N/5 + 0.3 cm",
)
def bw(N: float) -> float:
    return N / 5 + 0.3


@_rule(
    "back depth",
    "depth of the back neck below the nape",
    source="corrections §3.3",
    key="knit_bd",
    formula="none; on a wide neck so much that 2 cm lie below the neck point",
    low=0.0,
    high=12.0,
)
def _back_depth(sigma: float, knit_dw: float) -> float:
    return max(0.0, knit_curves.neck_point(0.0, sigma, knit_dw).y + 2.0)


@_rule(
    "front depth",
    "depth of the front neck below the neck point of the block",
    source=f"{_SRC}2, N5",
    key="knit_fd",
    formula="8 cm, and more until the neck and its band stretch to the head and 2 cm; "
    "16 cm at most",
    low=5.0,
    high=30.0,
)
def _front_depth(
    bw: float,
    sigma: float,
    knit_dw: float,
    knit_bd: float,
    HEAD: float,
    s_knit: float,
    band_share: float,
    s_band: float,
) -> float:
    takes = min(1 + s_knit / 100, band_share * (1 + s_band / 100))
    least = (HEAD + HEAD_ROOM) / takes

    def short(depth: float) -> float:
        return 2 * knit_curves.neck(bw, sigma, knit_dw, knit_bd, depth) - least

    if short(CREW) >= 0:
        return CREW
    return by_trial(short, CREW, DEEPEST) or DEEPEST


@_rule(
    "neck",
    "neckline, all round",
    source=f"{_SRC}, N5",
    key="knit_neck",
    formula="as drawn, back and front, twice",
)
def _neck(
    bw: float, sigma: float, knit_dw: float, knit_bd: float, knit_fd: float
) -> float:
    return 2 * knit_curves.neck(bw, sigma, knit_dw, knit_bd, knit_fd)


# -- armhole ---------------------------------------------------------------------------
@_rule(
    "across",
    "half across back and front",
    source=f"{_SRC}3",
    key="across",
    formula="XB/2·(1 + 0.6·p), at most QB less 2 cm for the hollow of the armhole",
)
def _across(XB: float, p_bust: float, q_bust: float) -> float:
    return min(XB / 2 * (1 + 0.6 * p_bust / 100), q_bust - knit_curves.HOLLOW)


def _hole(
    q: float, q_waist: float, bw: float, sigma: float, S: float, across: float,
    yB: float, yW: float,
) -> float:  # fmt: skip
    return knit_curves.armhole(
        knit_curves.neck_point(bw, sigma, S), sigma, across, q, q_waist, yB, yW
    ).length


@_rule(
    "Ab",
    "back armhole",
    source=f"{_SRC}4",
    key="A_b",
    formula="as drawn, from the tip over the pitch to the underarm",
)
def _back_hole(
    q_bust: float,
    q_waist: float,
    bw: float,
    sigma: float,
    S: float,
    across: float,
    yB: float,
    yW: float,
) -> float:
    return _hole(q_bust, q_waist, bw, sigma, S, across, yB, yW)


@_rule(
    "Af",
    "front armhole",
    source=f"{_SRC}4",
    key="A_f",
    formula="as drawn; the back's, but to the underarm of a wider front",
)
def _front_hole(
    q_front: float,
    q_waist: float,
    bw: float,
    sigma: float,
    S: float,
    across: float,
    yB: float,
    yW: float,
    front_down: float,
) -> float:
    return _hole(q_front, q_waist, bw, sigma, S, across, yB, yW + front_down)


@_rule("A", "armhole", source=f"{_SRC}4", key="A_hole", formula="Af + Ab")
def _holes(A_f: float, A_b: float) -> float:
    return A_f + A_b


# -- sides -----------------------------------------------------------------------------
@_rule(
    "front down",
    "waist of the front below that of the back",
    source=f"{_SRC}1",
    key="front_down",
    formula="found so that the front's side is longer by what is eased in",
)
def _front_down(
    q_bust: float,
    q_front: float,
    q_waist: float,
    q_hip: float,
    yB: float,
    yW: float,
    WH_knit: float,
    knit_below: float,
    cup_long: float,
) -> float:
    if q_front == q_bust:
        return 0.0
    quarters = q_bust, q_waist, q_hip

    def upper(q: float, down: float) -> float:
        return (
            knit_curves.side(q, quarters, yB, (yW, yW + down), WH_knit, knit_below, 0.0)
            .segments[0]
            .length
        )

    back = upper(q_bust, 0.0)
    found = by_trial(lambda d: upper(q_front, d) - back - cup_long, -1.5, 2.5)
    return found or 0.0
