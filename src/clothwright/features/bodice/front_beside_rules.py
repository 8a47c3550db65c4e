"""Numbers of a panel line that passes beside the bust point (transformations 1.5, panel
lines)."""

import math

from clothwright.features.base import Number
from clothwright.features.bodice.front_panels import omega, phi_a
from clothwright.rules import Kind, RuleTable

_SRC = "transformations 1.5"

BESIDE = RuleTable("front panel line beside the bust point")
_rule = BESIDE.rule

BESIDE_BP = Number(
    "beside_f",
    "beside f",
    "front panel line from the bust point, towards the side",
    _SRC,
    low=1.0,
    high=8.0,
    usual=(3.0, 6.0),
)

_BELOW, _LEAST_BELOW = 2.5, 1.0
"""The waist dart dies away so far below the bust point, and below the place where the
line crosses the side dart, cm (blocks A3.12)."""


@_rule(
    "x(Pf)",
    "centre of the front waist dart, across",
    source=_SRC,
    formula="xBP − beside f: the line takes it in",
    key="x_Pf",
)
def _x(x_BP: float, beside_f: float) -> float:
    return x_BP - beside_f


@_rule(
    "y(P)",
    "level at which the panel line crosses the side dart",
    source=_SRC,
    formula="on the lower leg of that dart",
    key="y_P",
)
def _crossing(
    x_BP: float,
    y_BP: float,
    beside_f: float,
    xs: float,
    a: float,
    yd: float,
    yB: float,
    yW: float,
) -> float:
    x_U2 = xs + a * (yd - yB) / (yW - yB)
    return y_BP + (yd - y_BP) * beside_f / (x_BP - x_U2)


@_rule(
    "y(Pf)",
    "level of the point of the front waist dart",
    source="blocks A3.12",
    formula="yBP + 2.5 cm, at least 1 cm below y(P)",
    key="y_Pf",
)
def _y(y_BP: float, y_P: float) -> float:
    return max(y_BP + _BELOW, y_P + _LEAST_BELOW)


_rule(
    "ω",
    "opening of the waist dart at its point",
    kind=Kind.ANGLE,
    source="first garment 5.6",
    formula="2·atan((fd/2)/(yW − yPf))",
)(omega)

_rule(
    "φa",
    "turn that tightens the front armhole",
    kind=Kind.ANGLE,
    source="first garment 4.3",
    formula="2·asin(ta/(2·|BP Qf|))",
)(phi_a)


@_rule(
    "rest",
    "rest of the bust dart at the panel line",
    source="transformations 1.1, 1.5",
    formula="2·|BP P|·sin((θ + φn + φa)/2)",
    key="rest_f",
)
def _rest(
    beside_f: float,
    y_P: float,
    y_BP: float,
    theta: float,
    phi_n: float,
    phi_a: float,
) -> float:
    reach = math.hypot(beside_f, y_P - y_BP)
    return 2 * reach * math.sin(math.radians(theta + phi_n + phi_a) / 2)


@_rule(
    "ep",
    "ease of the side panel over the bust",
    source=_SRC,
    formula="none: the centre panel is the longer one, by the rest",
    key="ep",
)
def _ease(rest_f: float) -> float:
    return -rest_f


@_rule(
    "set-back p",
    "end of the dart in the panel seam from the bust point",
    source="transformations 1.1",
    formula="1.5 cm",
    key="set_back_p",
    low=0.0,
    high=4.0,
)
def _set_back() -> float:
    return 1.5


BESIDE_ONLY = {
    "strapless": "a panel line beside the bust point is not yet led up to a top edge; "
    "let the line pass over the bust point",
}
"""What a panel line beside the bust point does not allow."""
