"""Rules of a drop shoulder: its armhole as it will be, and a low cap on it
(transformations 4)."""

from clothwright.blocks.bodice_curves import (
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
    side_square_back,
    side_square_front,
)
from clothwright.blocks.sleeve import HIGHEST, solve_cap
from clothwright.blocks.trial import by_trial
from clothwright.curves import Point, direction, rotate, turned
from clothwright.features.bodice import sleeved_armhole
from clothwright.features.bodice.extended_shoulder import (
    armhole,
    over_the_arm,
)
from clothwright.features.sleeves.sleeve_lengths import GOOD_SEAM
from clothwright.rules import RuleError, RuleTable

SRC = "transformations 4"

LOWER = 0.65
"""The cap is lower by this share of what the shoulder is run on, 60 to 70 %."""

WIDER = 0.4
"""The sleeve is wider by this share of it (common practice, no source)."""

UNDERARM = 1.0, 3.0
"""The underarm is lowered by so much unless the order says more, cm."""

_LOWEST = 3.0
"""A cap is at least so high, cm (common practice, no source)."""

_WIDEST = 30.0
"""A sleeve is at most so much wider than the arm, cm."""

DROP = RuleTable("drop shoulder")
_rule = DROP.rule

for _key, _symbol, _half, _draw in (
    ("A_f0", "Af0", "front", sleeved_armhole.front_armhole),
    ("A_b0", "Ab0", "back", sleeved_armhole.back_armhole),
):
    _rule(
        _symbol,
        f"{_half} armhole before the shoulder is run on",
        source="first garment 17.1",
        key=_key,
        formula="as drawn, from the shoulder's own tip to the underarm",
    )(_draw)


_FRONT = (
    *("x_hf", "y_hf", "S", "sigma_f", "sigma_f_new", "xs", "a", "yB", "yW"),
    *("x_BP", "y_BP", "theta", "ext", "ext_drop"),
)
_BACK = (
    *("x_tip_b", "y_tip_b", "sigma_b_new", "xs", "a", "yB", "yW"),
    *("ext", "ext_drop"),
)
"""What the dropped armholes are drawn by, beside `ul`."""

_DRAWN = "as drawn, from the end of the dropped shoulder to the lowered underarm"


@_rule(
    "Af",
    "front armhole",
    source=SRC,
    key="A_f",
    formula=_DRAWN,
    needs=(*_FRONT, "ul"),
)
def _front(
    x_hf: float,
    y_hf: float,
    S: float,
    sigma_f: float,
    sigma_f_new: float,
    xs: float,
    a: float,
    yB: float,
    yW: float,
    x_BP: float,
    y_BP: float,
    theta: float,
    ext: float,
    ext_drop: float,
    ul: float,
) -> float:
    own = Point(x_hf, y_hf) + outwards_front(sigma_f) * S
    inward = inward_front(sigma_f_new)
    tip = over_the_arm(own, outwards_front(sigma_f_new), inward, ext, ext_drop)
    closed, waist = Point(xs, yB), Point(xs + a, yW)
    low = closed + direction(closed, waist) * ul
    g = rotate(low, Point(x_BP, y_BP), theta)
    square = turned(side_square_front(closed, waist), theta)
    return armhole(g, square, tip, inward).length


@_rule(
    "Ab", "back armhole", source=SRC, key="A_b", formula=_DRAWN, needs=(*_BACK, "ul")
)
def _back(
    x_tip_b: float,
    y_tip_b: float,
    sigma_b_new: float,
    xs: float,
    a: float,
    yB: float,
    yW: float,
    ext: float,
    ext_drop: float,
    ul: float,
) -> float:
    inward = inward_back(sigma_b_new)
    own = Point(x_tip_b, y_tip_b)
    tip = over_the_arm(own, outwards_back(sigma_b_new), inward, ext, ext_drop)
    under, waist = Point(xs, yB), Point(xs - a, yW)
    low = under + direction(under, waist) * ul
    return armhole(low, side_square_back(under, waist), tip, inward).length


@_rule(
    "ul",
    "underarm lowered",
    key="ul",
    source="common practice, no source",
    formula="found so that the low cap fits a sleeve widened by 0.4 of ext; 1 to 3 cm",
    low=0.0,
    high=8.0,
    needs=("h_0", "e_usual", "UA", "E_cap", *_FRONT, *_BACK),
)
def _lowered(h_0: float, e_usual: float, UA: float, E_cap: float, *at: float) -> float:
    front, back = at[: len(_FRONT)], at[len(_FRONT) :]
    ext = back[-2]
    wanted = _low_cap(h_0, ext)

    def higher(ul: float) -> float:
        cap = solve_cap(
            UA + e_usual + WIDER * ext, _front(*front, ul), _back(*back, ul), E_cap
        )
        return (0.0 if cap is None else cap.height) - wanted

    low, high = UNDERARM
    if higher(low) >= 0:
        return low
    return by_trial(higher, low, high) or high


@_rule(
    "h0",
    "height of the cap before it is lowered",
    source="blocks B4, B5",
    key="h_0",
    formula="of a sleeve of the usual width on the armhole before the shoulder is run "
    "on, at most 0.36 of that",
)
def _whole_cap(
    e_usual: float, UA: float, A_f0: float, A_b0: float, E_cap: float
) -> float:
    cap = solve_cap(UA + e_usual, A_f0, A_b0, E_cap)
    if cap is None:
        raise RuleError(
            f"no cap for an arm of {UA:.1f} cm fits an armhole of {A_f0 + A_b0:.1f} "
            "cm: measure the upper arm (UA) again, or alter the depth of the armhole"
        )
    return min(cap.height, HIGHEST * (A_f0 + A_b0))


@_rule(
    "e",
    "ease of the upper arm",
    source=SRC,
    key="e_arm",
    formula="found so that the cap is lower than h0 by 0.65 of ext",
    low=1.0,
    high=_WIDEST,
)
def _wide(
    h_0: float,
    ext: float,
    e_usual: float,
    UA: float,
    A_f: float,
    A_b: float,
    E_cap: float,
) -> float:
    wanted = _low_cap(h_0, ext)

    def higher(ease: float) -> float:
        cap = solve_cap(UA + ease, A_f, A_b, E_cap)
        return (0.0 if cap is None else cap.height) - wanted

    if higher(e_usual) <= 0:
        return e_usual
    most = min(_WIDEST, A_f + A_b + E_cap - UA - 0.5)
    return by_trial(higher, e_usual, most) or most


@_rule(
    "yE",
    "elbow below the biceps line",
    source=f"blocks B9, {SRC}",
    key="y_E",
    formula="SE − ext − h + 0.5 cm",
    low=5.0,
    high=40.0,
)
def _elbow(SE: float, ext: float, h_cap: float) -> float:
    return SE - ext - h_cap + 0.5


def _low_cap(h_0: float, ext: float) -> float:
    """Height of the cap on a shoulder that is run on, cm."""
    return max(_LOWEST, h_0 - LOWER * ext)


LENGTH = RuleTable("length of a sleeve under a drop shoulder")


@LENGTH.rule(
    "lh",
    "length of the sleeve from T",
    source=f"{SRC}, first garment 17.3",
    formula="that of a set-in sleeve less ext, or h and 3.5 cm where that is longer",
    low=8.0,
    high=80.0,
)
def lh(lh_0: float, ext: float, h_cap: float) -> float:
    return max(lh_0 - ext, h_cap + GOOD_SEAM)
