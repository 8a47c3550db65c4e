"""Alterations of sleeves after a fitting: what is let out is measured again on the
paper."""

import pytest

from bodies import P92
from clothwright.features.fittings.ground import (
    SLEEVE,
)
from clothwright.order import Draft, OrderError, draft
from features.sleeves.test_block_alterations import GARMENTS, MM, by_word, cm, fitted
from orders import order, sleeved_features

# -- sleeve ----------------------------------------------------------------------------
BENT = GARMENTS[SLEEVE.word]
PLAIN_SLEEVE = draft(order(P92, BENT))


def halves(d: Draft) -> tuple[float, float]:
    """The cap from the underarms to the shoulder notch, front and back."""
    return cm(d, "SL.cap front"), cm(d, "SL.cap back")


@pytest.mark.parametrize(("word", "sign"), [("raise cap", 1), ("lower cap", -1)])
def test_a_cap_is_higher_by_the_amount_and_fits_its_armhole(
    word: str, sign: int
) -> None:
    for by in (0.6, 1.5):
        d, n = by_word(word, by), PLAIN_SLEEVE.numbers
        assert d.numbers["h_cap"] - n["h_cap"] == pytest.approx(sign * by, abs=1e-4)
        assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE), abs=0.2 * MM)
        assert (d.numbers["Wb"] - n["Wb"]) * sign < 0
        assert d.numbers["lh"] == n["lh"]


@pytest.mark.parametrize(("word", "sign"), [("full arms", 1), ("thin arms", -1)])
def test_an_arm_is_wider_by_the_amount_all_round(word: str, sign: int) -> None:
    by = 1.6
    d, n = by_word(word, by), PLAIN_SLEEVE.numbers
    assert d.numbers["Wb"] - n["Wb"] == pytest.approx(sign * by)
    across = d.sheet.points["Uf"].x - d.sheet.points["Ub"].x
    assert across == pytest.approx(d.numbers["Wb"])
    assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE), abs=0.2 * MM)
    assert (d.numbers["h_cap"] - n["h_cap"]) * sign < 0


@pytest.mark.parametrize(
    ("word", "sign"), [("turn sleeve forward", 1), ("turn sleeve back", -1)]
)
def test_the_top_is_turned_and_each_half_fits_its_armhole(word: str, sign: int) -> None:
    for by in (0.6, 1.5):
        d = by_word(word, by)
        assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE), abs=0.2 * MM)
        cap = d.sheet.edge("SL", "cap back").path + d.sheet.edge("SL", "cap front").path
        was = PLAIN_SLEEVE.sheet.edge("SL", "cap back").path
        was += PLAIN_SLEEVE.sheet.edge("SL", "cap front").path
        on = cap.length_to_point(d.sheet.points["T"])
        before = was.length_to_point(PLAIN_SLEEVE.sheet.points["T"])
        assert on - before == pytest.approx(sign * by, abs=0.5 * MM)


@pytest.mark.parametrize(("word", "sign"), [("long arms", 1), ("short arms", -1)])
def test_a_bent_sleeve_grows_half_above_and_half_below_the_elbow(
    word: str, sign: int
) -> None:
    by = 2.0
    d, n = by_word(word, by), PLAIN_SLEEVE.numbers
    assert d.numbers["lh"] - n["lh"] == pytest.approx(sign * by)
    assert d.numbers["y_E"] - n["y_E"] == pytest.approx(sign * by / 2)
    below = d.numbers["below_elbow"] - n["below_elbow"]
    assert below == pytest.approx(sign * by / 2)
    assert halves(d) == pytest.approx(halves(PLAIN_SLEEVE))


def test_the_elbow_is_let_out_and_moved() -> None:
    n = PLAIN_SLEEVE.numbers
    d = by_word("full elbow", 1.2)
    across = d.sheet.points["Ef"].x - d.sheet.points["Eb"].x
    assert across - n["We"] == pytest.approx(1.2)
    for word, sign in (("lower elbow", 1), ("raise elbow", -1)):
        d = by_word(word, 1.2)
        down = d.sheet.points["Eb"].y - PLAIN_SLEEVE.sheet.points["Eb"].y
        assert down == pytest.approx(sign * 1.2)
        assert d.numbers["lh"] == n["lh"]
    straight = sleeved_features()
    with pytest.raises(OrderError, match="bent at the elbow"):
        fitted(straight, {"full elbow": 1.0})
