"""Numbers of a kimono sleeve (transformations 4)."""

from clothwright.blocks.bodice_curves import (
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
)
from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Point, direction, rotate, turned
from clothwright.features.sleeves.kimono_cut import STEEP
from clothwright.features.sleeves.kimono_lines import Arm, apart
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.rules import RuleTable

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


@_rule(
    "km drop",
    "underarm lowered for a kimono sleeve",
    key="km_drop",
    source=_SRC,
    formula="found so that the sleeve is UA + 5 cm round at the corner under the arm, "
    "with half of a gusset; 3 to 8 cm",
    low=0.0,
    high=14.0,
)
def _drop(
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
    UA: float,
    km_angle: float,
    km_raise: float,
    gw: float,
) -> float:
    tip_f = Point(x_hf, y_hf) + outwards_front(sigma_f) * S
    tip_b = Point(x_tip_b, y_tip_b)
    closed, waist = Point(xs, yB), Point(xs + a, yW)
    under, low = Point(xs, yB), Point(xs - a, yW)
    down_f = turned(direction(closed, waist), theta)
    down_b = direction(under, low)
    less = apart(down_f, down_b)
    halves = (
        Arm(
            -1,
            tip_f,
            outwards_front(sigma_f_new),
            tip_f - inward_front(sigma_f_new) * km_raise,
            rotate(closed, Point(x_BP, y_BP), theta),
            down_f,
            km_angle - less,
            0.0,
            0.0,
        ),
        Arm(
            1,
            tip_b,
            outwards_back(sigma_b_new),
            tip_b - inward_back(sigma_b_new) * km_raise,
            under,
            down_b,
            km_angle + less,
            0.0,
            0.0,
        ),
    )
    have = sum(h.wide for h in halves)
    each = sum(h.down.x * h.across.x + h.down.y * h.across.y for h in halves)
    gives = _GUSSET_GIVES * gw if km_angle > STEEP else 0.0
    return clip((UA + ROOM - gives - have) / each, 3.0, 8.0)
