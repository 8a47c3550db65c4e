"""Numbers of a kimono sleeve (transformations 4)."""

from dataclasses import replace
from math import hypot

from clothwright.blocks.bodice_curves import (
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
)
from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Point, direction, rotate, turned
from clothwright.features.sleeves.kimono_cut import LEFT_OF_SIDE, STEEP
from clothwright.features.sleeves.kimono_lines import Arm, Round, apart, evened
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.rules import Kind, RuleTable

_SRC = "transformations 4"
_OWN = "common practice, no source"

ROOM = 5.0
"""The sleeve is so much wider than the upper arm, cm (common practice, no source)."""

_GUSSET_GIVES = 0.5
"""Share of its width that a gusset gives round the arm (common practice, no source)."""

KIMONO = RuleTable("kimono sleeve")
_rule = KIMONO.rule

LENGTHS: dict[Reach, RuleTable] = {
    r: RuleTable(f"length of a kimono sleeve {r.value}") for r in Reach
}

for _reach, _formula, _needs, _how in (
    (Reach.SHORT, "18 cm", (), lambda: 18.0),
    (Reach.ELBOW, "SE − 2 cm", ("SE",), lambda se: se - 2.0),
    (
        Reach.THREE_QUARTER,
        "half way from SE to AL",
        ("SE", "AL"),
        lambda se, al: (se + al) / 2,
    ),
    (Reach.WRIST, "AL", ("AL",), lambda al: al),
):
    LENGTHS[_reach].rule(
        "lk",
        "length of the sleeve from the tip of the shoulder",
        source=f"{_SRC}: overarm SH + AL",
        formula=_formula,
        low=10.0,
        high=80.0,
        needs=_needs,
        key="lk",
    )(_how)


@_rule(
    "km hem",
    "hem of the kimono sleeve",
    key="km_hem",
    source=_OWN,
    formula="the arm there and 8 cm above the elbow, 6 cm below it, HD + 1 cm at least",
    low=16.0,
    high=80.0,
)
def _hem(
    lk: float, UA: float, EL: float, WR: float, HD: float, SE: float, AL: float
) -> float:
    if lk <= SE / 2:
        return UA + 8.0
    if lk <= SE:
        return UA + (EL - UA) * (lk - SE / 2) / (SE / 2) + 8.0
    return max(EL + (WR - EL) * min(1.0, (lk - SE) / (AL - SE)) + 6.0, HD + 1.0)


PLACE = (
    *("x_hf", "y_hf", "S", "sigma_f", "sigma_f_new"),
    *("x_tip_b", "y_tip_b", "sigma_b_new"),
    *("xs", "a", "yB", "yW", "x_BP", "y_BP", "theta", "phi_n", "km_raise"),
)
"""Where shoulders, sides and bust point lie: what `arms` takes."""


def arms(
    angle: float,
    length: float,
    hem: float,
    x_hf: float,
    y_hf: float,
    S: float,
    sigma_f: float,
    sigma_f_new: float,
    x_tip_b: float,
    y_tip_b: float,
    sigma_b_new: float,
    xs: float,
    a: float,
    yB: float,
    yW: float,
    x_BP: float,
    y_BP: float,
    theta: float,
    phi_n: float,
    km_raise: float,
) -> tuple[Arm, Arm]:
    """Front and back of a sleeve whose overarm line lies `angle` below the level, the
    underarm not yet lowered. A neck that is drawn in turns shoulder and side of the
    front by φn about the bust point."""
    bp = Point(x_BP, y_BP)
    tip_f = rotate(Point(x_hf, y_hf) + outwards_front(sigma_f) * S, bp, phi_n)
    tip_b = Point(x_tip_b, y_tip_b)
    closed, waist = Point(xs, yB), Point(xs + a, yW)
    under, low = Point(xs, yB), Point(xs - a, yW)
    down_f = turned(direction(closed, waist), theta + phi_n)
    down_b = direction(under, low)
    less = apart(down_f, down_b)
    return (
        Arm(
            -1,
            tip_f,
            turned(outwards_front(sigma_f_new), phi_n),
            tip_f - turned(inward_front(sigma_f_new), phi_n) * km_raise,
            rotate(closed, bp, theta + phi_n),
            down_f,
            angle - less,
            length,
            hem / 2,
        ),
        Arm(
            1,
            tip_b,
            outwards_back(sigma_b_new),
            tip_b - inward_back(sigma_b_new) * km_raise,
            under,
            down_b,
            angle + less,
            length,
            hem / 2,
        ),
    )


def _lowered(halves: tuple[Arm, Arm], angle: float, UA: float, gw: float) -> float:
    """How far the underarm is lowered for the room round the arm, cm."""
    have = sum(h.wide for h in halves)
    each = sum(h.down.x * h.across.x + h.down.y * h.across.y for h in halves)
    gives = _GUSSET_GIVES * gw if angle > STEEP else 0.0
    return clip((UA + ROOM - gives - have) / each, 3.0, 8.0)


@_rule(
    "km drop",
    "underarm lowered for a kimono sleeve",
    key="km_drop",
    source=_SRC,
    formula="found so that the sleeve is UA + 5 cm round at the corner under the arm, "
    "with half of a gusset; 3 to 8 cm",
    low=0.0,
    high=14.0,
    needs=("UA", "km_angle", "gw", *PLACE),
)
def _drop(UA: float, km_angle: float, gw: float, *place: float) -> float:
    return _lowered(arms(km_angle, 0.0, 0.0, *place), km_angle, UA, gw)


@_rule(
    "km angle",
    "overarm line below the level, front and back between them",
    kind=Kind.ANGLE,
    key="km_angle",
    source=_SRC,
    formula="32°; 42°, with a gusset, where the side is too short for the round under "
    "the arm",
    low=25.0,
    high=60.0,
    needs=("UA", "gw", "lk", "km_hem", "km_R", *PLACE),
)
def _angle(
    UA: float, gw: float, lk: float, km_hem: float, km_R: float, *place: float
) -> float:
    halves = arms(USUAL, lk, km_hem, *place)
    drop = _lowered(halves, USUAL, UA, gw)
    _, a, yB, yW = place[_XS : _XS + 4]
    room = hypot(a, yW - yB) - drop - LEFT_OF_SIDE
    lowered = tuple(replace(h, corner=h.corner + h.down * drop) for h in halves)
    longer = evened(lowered, km_R) or 0.0
    reaches = (
        Round.of(arm, arm.under(more)[0], km_R).reach
        for arm, more in zip(lowered, (-longer, longer), strict=True)
    )
    return USUAL if max(reaches) < room - _NEAR else WITH_GUSSET


USUAL, WITH_GUSSET = 32.0, 42.0
"""The overarm line where there is room for the round, and where a gusset takes its
place, degrees below the level (30 to 55; a gusset from 40: transformations 4)."""

_XS = PLACE.index("xs")

_NEAR = 0.1
"""The side is drawn so much shorter at most when it is trued, cm."""
