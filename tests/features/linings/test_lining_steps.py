"""A lining as the hand makes it: piece after piece over the shell's paper."""

import pytest

from bodies import P92
from clothwright.features import Feature
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.order import draft
from clothwright.paper import Verb
from clothwright.sheets.drawing import Hand
from clothwright.sheets.figure import figure
from clothwright.sheets.steps import steps_text
from orders import closed_back, order, sleeved_features, straight_skirt

LINED: dict[str, tuple[Feature, ...]] = {
    "to the edge": closed_back(lining=Mode.TO_EDGE),
    "darts to the edge": closed_back(lines="darts", lining=Mode.TO_EDGE),
    "below the facing": closed_back(lining=Mode.BELOW_FACING),
    "darts below the facing": closed_back(lines="darts", lining=Mode.BELOW_FACING),
    "sleeves": sleeved_features(SetInSleeve(), Lining()),
    "skirt": straight_skirt(SkirtLining()),
}


@pytest.mark.parametrize("name", LINED)
def test_every_piece_of_the_lining_has_its_step_and_figure(name: str) -> None:
    made = draft(order(P92, LINED[name]))
    own = [(i, s) for i, s in enumerate(made.steps) if s.part.endswith("lining")]
    traced = {s.makes for _, s in own if s.verb is Verb.TRACE}
    lining = {c for c in made.sheet.pieces if c.startswith("L.")}
    assert traced >= lining - {"L.SBL"}
    for i, s in own:
        svg = figure(made.steps, i, made.order.said)
        if s.verb is Verb.SEW:
            assert svg == ""
            continue
        assert svg.count(Hand.INK.value[0]) >= 1, s.says
        if s.verb is Verb.TRACE:
            assert s.over, s.says  # the shell's net line lies under it
            assert Hand.PENCIL.value[0] in svg


def test_the_numbers_of_a_lining_to_the_edge_are_told() -> None:
    """Roll 0.3, slack 0.5 at the waist, hem 1.5 (first garment 15)."""
    lines = [
        t for t in steps_text(draft(order(P92, LINED["to the edge"]))) if "lining" in t
    ]
    centre = next(t for t in lines if "centre front lining" in t)
    for words in ("0.3 cm", "neck", "0.5 cm longer at the waist", "at the shoulder"):
        assert words in centre
    peplum = next(t for t in lines if "front peplum lining" in t)
    assert "1.5 cm shorter at the hem" in peplum


def test_the_underarm_is_raised_in_a_step_of_its_own() -> None:
    """1 cm up and 0.3 out on the body, 2 on the sleeve (transformations 6)."""
    lines = steps_text(draft(order(P92, LINED["sleeves"])))
    body = next(t for t in lines if "under the arm, so that" in t)
    assert "up along the side by 1.0 cm, and out by 0.3 cm" in body
    sleeve = next(t for t in lines if "sleeve lining" in t)
    assert "cm higher under the arm" in sleeve
    assert "1.5 cm shorter at the hem" in sleeve


def test_a_bust_dart_is_led_to_the_waist_before_the_facing_is_cut_off() -> None:
    lines = steps_text(draft(order(P92, LINED["darts below the facing"])))
    closed = next(i for i, t in enumerate(lines) if "its bust dart taped shut" in t)
    assert "front lining, cut off along the loose edge" in lines[closed + 1]
