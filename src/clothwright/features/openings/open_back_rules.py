"""The rules of a low open back (first garment 9). Lengths cm, angles degrees."""

import math

from clothwright.rules import Kind, RuleError, RuleTable

_SRC = "first garment 9"

OPEN_BACK = RuleTable("low open back")
_rule = OPEN_BACK.rule


@_rule(
    "slant",
    "slanted edge",
    source=f"{_SRC}.2",
    formula="√((e1 − e2)² + (yW − y1)²)",
)
def slant(e1: float, e2: float, yW: float, y1: float) -> float:
    return math.hypot(e1 - e2, yW - y1)


@_rule(
    "x(E2)",
    "centre back edge at the waist",
    source=f"{_SRC}.2",
    key="x_back",
    formula="e2",
)
def _x_back(e2: float) -> float:
    return e2


@_rule(
    "gap",
    "gap of the open back at the waist",
    source=f"{_SRC}.6",
    formula="2·e2",
)
def gap(e2: float) -> float:
    return 2 * e2


@_rule("bd net", "back waist dart", source="blocks A4", key="bd_net", formula="bd")
def _bd_net(bd: float) -> float:
    return bd


@_rule("T", "edge taken by the rounded corner", source=f"{_SRC}.4", key="T_round")
def _rounding(rc: float, corner_turn: float) -> float:
    return rc * math.tan(math.radians(corner_turn) / 2)


@_rule(
    "∠E1",
    "corner of the back at E1",
    source=f"{_SRC}.3",
    kind=Kind.ANGLE,
    key="corner_E1",
    formula="180° less the turn from the neck's arrival into the slanted edge",
)
def _corner(
    e1: float,
    e2: float,
    y1: float,
    yW: float,
    bw: float,
    nr: float,
    Sb: float,
    Lrb: float,
    sigma_bs: float,
    sigma_b_new: float,
    tau: float,
) -> float:
    g, h = math.radians(sigma_bs), math.radians(sigma_b_new)
    x = bw + Sb * math.cos(g) - Lrb * math.cos(h)
    y = -nr + Sb * math.sin(g) - Lrb * math.sin(h)
    # arrival = start mirrored in the chord: 2·chord − start, as bearings
    start = 90.0 + sigma_b_new + tau
    chord = math.degrees(math.atan2(y1 - y, e1 - x))
    edge = math.degrees(math.atan2(yW - y1, e2 - e1))
    return 180.0 + (edge - (2 * chord - start) + 180) % 360 - 180


@_rule(
    "turn at E1",
    "turn of the edge at E1",
    source=f"{_SRC}.3",
    kind=Kind.ANGLE,
    key="corner_turn",
    formula="180° − ∠E1",
)
def _corner_turn(corner_E1: float) -> float:
    return abs(180.0 - corner_E1)


@_rule(
    "edge",
    "slanted edge below the rounding",
    source="first garment 10.2",
    key="edge_net",
)
def _edge_net(slant: float, T_round: float, te: float) -> float:
    return slant - T_round - te


@_rule(
    "tape",
    "stay tape of a slanted edge",
    source=f"{_SRC}.6",
    formula="slanted edge − te, less 1 in 100",
)
def tape(slant: float, te: float) -> float:
    return 0.99 * (slant - te)


FROM_NECK_POINT = RuleTable("open back measured from the shoulder neck point")
FROM_NAPE = RuleTable("open back measured from the nape")

_DB = "depth of the back neck, taken by the open back"


@FROM_NECK_POINT.rule("y1", "level of E1", source=f"{_SRC}.1", formula="Do − nr")
def y1(Do: float, nr: float, yW: float) -> float:
    return _above_waist(Do - nr, yW)


@FROM_NECK_POINT.rule("Db", _DB, source=_SRC, key="Db", formula="Do")
def _depth(Do: float) -> float:
    return Do


@FROM_NAPE.rule("y1", "level of E1", source=f"{_SRC}.1", key="y1", formula="Do")
def _y1_from_nape(Do: float, yW: float) -> float:
    return _above_waist(Do, yW)


@FROM_NAPE.rule("Db", _DB, source=_SRC, key="Db", formula="Do + nr")
def _depth_from_nape(Do: float, nr: float) -> float:
    return Do + nr


def _above_waist(level: float, yW: float) -> float:
    """The level of E1. Raises RuleError when it is too near the waist."""
    if level >= yW - 8:
        raise RuleError(
            "the open back reaches to less than 8 cm above the waist: "
            "make its depth (Do) smaller"
        )
    return level
