"""The front armhole of a full cup, pinched out at the pitch into the bust dart.

The front armhole grows by 0.35 to 0.4 for each cm of cup; past a cup of 7 a cutter
takes that out and sends it to the bust dart (corrections C19, common practice). cm,
degrees.
"""

from clothwright.blocks.bodice_curves import (
    front_armhole,
    front_pitch,
    inward_front,
    side_square_front,
)
from clothwright.blocks.bodice_rules import theta
from clothwright.curves import Point, rotate, turned
from clothwright.rules import Kind, RuleError, RuleTable

FULL_FROM = 7.0
"""A cup above this is full, cm."""

WIDE_DART = 20.0
"""A bust dart that opens by more than this is better split in two, degrees."""

FULL_CUP = RuleTable("front armhole pinched for a full cup")
_SRC = "corrections C19"


@FULL_CUP.rule(
    "ap",
    "pinched out of the front armhole",
    key="pinched",
    source=_SRC,
    formula="0.35·(c − 7), at most 2 cm, none up to a cup of 7 cm",
    low=0.0,
    high=3.0,
)
def _pinched(c: float) -> float:
    return min(2.0, 0.35 * max(0.0, c - FULL_FROM))


def armhole_length(
    angle: float,
    xs: float,
    yB: float,
    x_BP: float,
    y_BP: float,
    a: float,
    yW: float,
    X: float,
    xfw: float,
    x_tf: float,
    y_tf: float,
    sigma_f: float,
) -> float:
    """Front armhole of the block (A3.10) with the bust dart opened by `angle`."""
    bp, gc, tip = Point(x_BP, y_BP), Point(xs, yB), Point(x_tf, y_tf)
    g = rotate(gc, bp, angle)
    square = turned(side_square_front(gc, Point(xs + a, yW)), angle)
    inward = inward_front(sigma_f)
    pitch = front_pitch(tip, inward, X, xfw, g.y)
    return front_armhole(tip, inward, pitch, g, square).length


@FULL_CUP.rule(
    "θ",
    "angle of the bust dart",
    kind=Kind.ANGLE,
    key="theta",
    source=f"blocks A3.7, {_SRC}",
    formula="raised until the front armhole is shorter by ap",
)
def _raised(
    pinched: float,
    dl: float,
    xs: float,
    yB: float,
    x_BP: float,
    y_BP: float,
    a: float,
    yW: float,
    X: float,
    xfw: float,
    x_tf: float,
    y_tf: float,
    sigma_f: float,
) -> float:
    place = (xs, yB, x_BP, y_BP, a, yW, X, xfw, x_tf, y_tf, sigma_f)
    plain = theta(xs, yB, x_BP, y_BP, dl)
    aim = armhole_length(plain, *place) - pinched
    low, high = plain, plain + 20.0
    if armhole_length(high, *place) > aim:
        raise RuleError(
            f"the front armhole cannot be made {pinched:.1f} cm shorter in the bust "
            "dart: pinch less"
        )
    for _ in range(36):
        middle = (low + high) / 2
        if armhole_length(middle, *place) > aim:
            low = middle
        else:
            high = middle
    return low
