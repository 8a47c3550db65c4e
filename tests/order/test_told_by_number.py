"""Orders found at random whose paper does not meet: the feature at fault says by which
of its numbers, beside what the paper says."""

import pytest

from bodies import ansur_whole
from clothwright.body import RuleSet
from clothwright.features import KINDS, Feature
from clothwright.findings import Severity
from clothwright.order import OrderError, draft
from clothwright.units import Unit
from orders import order


def feature(kind: str, **settings: object) -> Feature:
    return KINDS[kind].model_validate({"kind": kind, **settings})


FACING_BESIDE_THE_PANEL_SEAM = (
    feature("bodice block"),
    feature("sleeved armhole"),
    feature("neckline", shape="V", width=4.83),
    feature("back neckline", shape="scoop"),
    feature("shoulder princess", share=0.59),
    feature("underarm zip"),
    feature("set-in sleeve"),
    feature("torso"),
    feature("neck facing"),
    feature("lining"),
)
FACING_BEYOND_THE_PANEL_SEAMS = (
    feature("bodice block", back_shoulder_ease=0.94),
    *FACING_BESIDE_THE_PANEL_SEAM[1:],
)
HOLLOW_BERTHA = (
    feature("bodice block"),
    feature("sleeveless armhole", narrowed=3.12),
    feature("neckline", shape="standard"),
    feature("back neckline", shape="scoop"),
    feature("front armhole princess"),
    feature("back waist dart"),
    feature("open zip", where="at the back"),
    feature("waist seam"),
    feature("dress skirt"),
    feature("facing"),
    feature("bertha"),
)
WIDE_ROLL_BELOW_A_TOP_EDGE = (
    feature("bodice block"),
    feature("strapless", shape="sweetheart"),
    feature("shoulder princess"),
    feature("concealed zip"),
    feature("waist seam"),
    feature("straight dress skirt"),
    feature("lining", mode="to the edge", roll=0.6),
)

FEW_WIDE_PLEATS = (
    feature("bodice block", bust_ease=6.36, depth="as measured"),
    feature("strapless"),
    feature("shoulder princess"),
    feature("concealed zip"),
    feature("waist seam"),
    feature("pleated dress skirt", shape="box pleats", face=11.47),
    feature("lining", mode="to the edge"),
)


@pytest.mark.parametrize(
    ("features", "woman", "unit", "rules", "code", "setting"),
    [
        (FACING_BESIDE_THE_PANEL_SEAM, 705, Unit.IN, 0, "N5", "shoulder of"),
        (FACING_BEYOND_THE_PANEL_SEAMS, 304, Unit.CM, 0, "N5", "3.1 cm wide or less"),
        (HOLLOW_BERTHA, 705, Unit.IN, 0, "KB2", "width of"),
        (WIDE_ROLL_BELOW_A_TOP_EDGE, 846, Unit.CM, 1, "N4", "roll of"),
        (FEW_WIDE_PLEATS, 931, Unit.IN, 1, "PL4", "face of"),
    ],
)
def test_what_does_not_meet_is_told_by_a_number(
    features: tuple[Feature, ...],
    woman: int,
    unit: Unit,
    rules: int,
    code: str,
    setting: str,
) -> None:
    estimates = list(RuleSet)[rules]
    asked = order(ansur_whole()[woman], features, unit=unit, estimates=estimates)
    told = [f for f in draft(asked).findings if f.code == code]
    assert told
    assert all(f.severity is Severity.REFUSE and setting in f.to_do for f in told)


def test_geometry_that_gives_out_names_what_was_set() -> None:
    """A racer's back cut away down to the waist: its facing turns back on itself. The
    sentence names what she set, though neither number has a usual amount."""
    features = (
        feature("bodice block"),
        feature("racer back", level=24.0, tightened=1.96),
        *map(feature, ("neckline", "back neckline", "tent", "button stand")),
        *map(feature, ("torso", "facing")),
    )
    with pytest.raises(OrderError, match='level of "racer back"') as told:
        draft(order(ansur_whole()[560], features))
    assert 'tightened of "racer back"' in str(told.value)


TOP = (
    feature("bodice block"),
    *map(feature, ("neckline", "back neckline", "tent", "concealed zip")),
    feature("torso"),
)
SLEEVED = (*TOP, feature("sleeved armhole"), feature("neck facing"))
RACER = (*TOP, feature("racer back"), feature("facing"))
SLEEVELESS = (*TOP, feature("sleeveless armhole"), feature("facing"))


@pytest.mark.parametrize(
    ("features", "setting"),
    [
        (
            (*RACER, feature("front yoke", bow=-4.0)),
            'bow of "front yoke"',
        ),
        ((*SLEEVELESS, feature("back yoke", depth=25.0)), 'depth of "back yoke"'),
        ((*SLEEVELESS, feature("neck placket", width=1.9)), 'width of "neck placket"'),
        (
            (*SLEEVELESS, feature("flat collar", width=3.0, overlap=8.2)),
            'overlap of "flat collar"',
        ),
        (
            (
                *SLEEVED,
                feature("set-in sleeve", reach="to the wrist", elbow="dart"),
                feature("cuff", girth=38.0),
            ),
            'girth of "cuff"',
        ),
        (
            (
                feature("bodice block"),
                *(feature("sleeveless armhole"), feature("facing"), feature("torso")),
                *(feature("neckline", shape="standard"), feature("back neckline")),
                feature("shoulder princess"),
                feature("button stand", rows="double-breasted"),
                feature("shawl collar", break_point=50.0),
            ),
            'break_point of "shawl collar"',
        ),
    ],
    ids=lambda x: x if isinstance(x, str) else "",
)
def test_an_amount_that_does_not_go_is_told_by_its_setting(
    features: tuple[Feature, ...], setting: str
) -> None:
    """Amounts within their bounds, found at random, that no body gets with the rest."""
    try:
        told = draft(order(ansur_whole()[725], features)).failures()
    except OrderError as e:
        told = e.sentences
    assert told
    assert any(setting in sentence for sentence in told), told


def test_a_need_that_nobody_meets_as_usual_names_no_other() -> None:
    """A word that a feature gives in one of its settings only: nothing to leave off."""
    with pytest.raises(OrderError, match="order, shawl collar: a collar with a lapel"):
        draft(
            order(
                ansur_whole()[725],
                (*SLEEVELESS, feature("button stand"), feature("shawl collar")),
            )
        )
