"""Numbers of the knit bodice without darts (blocks F, corrections C7; measures 8.1).

Lengths in cm; x runs from the centre back to the centre front, y down from the nape.
Stretch and ease are per cent, as they are measured: 10 cm of cloth pulled to 15 cm
stretch 50.
"""

from clothwright.blocks import knit_curves
from clothwright.blocks.bodice_rules import clip
from clothwright.body.ease import knit_ease, most_negative
from clothwright.curves import Point
from clothwright.rules import Kind, RuleTable

KNIT = RuleTable("knit bodice")
_rule = KNIT.rule
_SRC = "blocks F"
_EASE = "measures 8.1"

RECOVERS = 90.0
"""A cloth that comes back by less than this, per cent, is not cut close (8.1)."""

CUP = 7.0
"""A fuller cup than this needs a wider and longer front, cm (F1)."""


BY_STRETCH = (
    "by the stretch of the cloth; not below 0 where it comes back by less than 90 per "
    "cent"
)


def by_stretch(place: str, s: float, recovery: float) -> float:
    """Per cent of ease for a stretch in per cent."""
    p = 100.0 * knit_ease(place, s / 100)
    return max(p, 0.0) if recovery < RECOVERS else p


# -- ease ------------------------------------------------------------------------------
@_rule(
    "p",
    "ease at the bust, per cent",
    kind=Kind.RATIO,
    source=_EASE,
    key="p_bust",
    formula=BY_STRETCH,
    low=-20.0,
    high=30.0,
)
def _p(s_knit: float, recovery: float) -> float:
    return by_stretch("bust", s_knit, recovery)


@_rule(
    "pw",
    "ease at the waist, per cent",
    kind=Kind.RATIO,
    source=f"{_SRC}1",
    key="p_waist",
    formula="p + 6",
    low=-20.0,
    high=40.0,
)
def _pw(p_bust: float) -> float:
    return p_bust + 6.0


@_rule(
    "ph",
    "ease at the hip, per cent",
    kind=Kind.RATIO,
    source=f"{_SRC}1, corrections C7",
    key="p_hip",
    formula="p",
    low=-20.0,
    high=40.0,
)
def _ph(p_bust: float) -> float:
    return p_bust


@_rule(
    "pl",
    "change of the lengths, per cent",
    kind=Kind.RATIO,
    source=f"{_EASE}, {_SRC}2",
    key="p_len",
    formula="by the stretch of the cloth; none where p is not below 0",
    low=-12.0,
    high=0.0,
)
def _pl(s_knit: float, p_bust: float) -> float:
    return 100.0 * knit_ease("length", s_knit / 100) if p_bust < 0 else 0.0


@_rule(
    "least p",
    "least ease that this cloth takes, per cent",
    kind=Kind.RATIO,
    source=_EASE,
    key="p_least",
    formula="half of the stretch: −0.5·s/(1 + 0.5·s)",
)
def _least(s_knit: float) -> float:
    return 100.0 * most_negative(s_knit / 100)


# -- widths ----------------------------------------------------------------------------
@_rule(
    "QB",
    "bust quarter, back",
    source=f"{_SRC}1",
    key="q_bust",
    formula="B·(1 + p)/4",
)
def _quarter(B: float, p_bust: float) -> float:
    return B * (1 + p_bust / 100) / 4


@_rule(
    "wider",
    "front wider than the back at the bust",
    source=f"{_SRC}1",
    key="cup_wide",
    formula="0.25·(c − 7 cm) for a cup over 7 cm",
)
def _wider(c: float) -> float:
    return max(0.0, 0.25 * (c - CUP))


@_rule(
    "QF",
    "bust quarter, front",
    source=f"{_SRC}1",
    key="q_front",
    formula="QB and what the front is wider",
)
def _front_quarter(q_bust: float, cup_wide: float) -> float:
    return q_bust + cup_wide


@_rule(
    "longer",
    "front side eased onto the back over the bust",
    source=f"{_SRC}1",
    key="cup_long",
    formula="0.6 cm to 1.2 cm for a cup from 7 cm to 13 cm",
)
def _longer(c: float) -> float:
    return clip(0.6 + 0.1 * (c - CUP), 0.6, 1.2) if c > CUP else 0.0


@_rule(
    "QW",
    "waist quarter",
    source=f"{_SRC}1, corrections C7",
    key="q_waist",
    formula="W·(1 + pw)/4, or QB − 4 cm where that is more",
)
def _waist(W: float, p_waist: float, q_bust: float) -> float:
    return max(W * (1 + p_waist / 100) / 4, q_bust - 4.0)


@_rule("QH", "hip quarter", source=f"{_SRC}1", key="q_hip", formula="H·(1 + ph)/4")
def _hip(H: float, p_hip: float) -> float:
    return H * (1 + p_hip / 100) / 4


@_rule(
    "X",
    "line of the centre front",
    source="our own",
    formula="from the centre back: both halves at their widest, and 8 cm between",
)
def X(q_front: float, q_waist: float, q_hip: float, knit_out: float) -> float:
    return 2 * (max(q_front, q_waist, q_hip) + knit_out) + 8.0


# -- levels ----------------------------------------------------------------------------
@_rule("yW", "level of the waist", source=f"{_SRC}2", formula="NWB·(1 + pl)")
def yW(NWB: float, p_len: float) -> float:
    return NWB * (1 + p_len / 100)


@_rule(
    "WHk",
    "waist to hip on the cloth",
    source=f"{_SRC}2",
    key="WH_knit",
    formula="WH·(1 + pl)",
)
def _wh(WH: float, p_len: float) -> float:
    return WH * (1 + p_len / 100)


@_rule(
    "yB",
    "level of the bust line",
    source=f"{_SRC}3",
    formula="AS and what the armhole is deeper",
)
def yB(AS: float, knit_depth: float) -> float:
    return AS + knit_depth


@_rule(
    "band below",
    "width of what is sewn to the hem",
    source="our own",
    key="hem_depth",
    formula="none",
)
def _no_band() -> float:
    return 0.0


@_rule(
    "hem",
    "lower edge, all round",
    source=f"{_SRC}1",
    key="knit_hem",
    formula="as drawn: back and front, twice",
)
def _hem(
    q_bust: float,
    q_waist: float,
    q_hip: float,
    yB: float,
    yW: float,
    WH_knit: float,
    knit_below: float,
    knit_out: float,
) -> float:
    quarters = q_bust, q_waist, q_hip
    side = knit_curves.side(
        q_bust, quarters, yB, (yW, yW), WH_knit, knit_below, knit_out
    )
    foot = Point(0.0, yW + knit_below)
    return 4 * knit_curves.hem_line(foot, side.end, side.end_direction).length
