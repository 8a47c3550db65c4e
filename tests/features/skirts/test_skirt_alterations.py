"""Alterations of skirts after a fitting: what is let out is measured again on the
paper."""

import pytest

from bodies import P92
from clothwright.features.fittings import BY_WORD
from clothwright.order import Draft, draft
from features.sleeves.test_block_alterations import MM, by_word, cm, waist
from orders import order, straight_skirt

# -- skirt -----------------------------------------------------------------------------
PLAIN_SKIRT = draft(order(P92, straight_skirt()))


def hip(d: Draft, code: str) -> float:
    (line,) = (x for x in d.sheet.piece(code).lines if x.name == "hip line")
    return line.path.length


@pytest.mark.parametrize(("word", "sign"), [("full hips", 1), ("narrow hips", -1)])
def test_hips_move_at_both_sides_and_the_waist_stays(word: str, sign: int) -> None:
    for by in (0.6, 1.3, 2.0):
        d = by_word(word, by)
        for code in ("SB", "SF"):
            assert hip(d, code) - hip(PLAIN_SKIRT, code) == pytest.approx(sign * by)
            hem = cm(d, f"{code}.hem") - cm(PLAIN_SKIRT, f"{code}.hem")
            assert hem == pytest.approx(sign * by, abs=0.1 * MM)
            assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)


def test_hips_in_two_places_are_let_out_by_the_whole() -> None:
    """Half at the side and half in a slash, which the darts take at the waist."""
    by = 4.0
    d, n = by_word("full hips", by), PLAIN_SKIRT.numbers
    assert not d.failed, d.failures()
    assert d.numbers["xs_S"] - n["xs_S"] == pytest.approx(by)
    assert d.numbers["a_S"] - n["a_S"] == pytest.approx(by / 2)
    assert d.numbers["bd_S"] - n["bd_S"] == pytest.approx(by / 2, abs=0.3)
    for code in ("SB", "SF"):
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)
    with pytest.raises(ValueError, match="in one place and 5 cm in two"):
        BY_WORD["full hips"](by=5.2)


@pytest.mark.parametrize(
    ("word", "sign"), [("full high hips", 1), ("flat high hips", -1)]
)
def test_above_the_hip_the_darts_take_what_the_side_gives(word: str, sign: int) -> None:
    by = 0.8
    d, n = by_word(word, by), PLAIN_SKIRT.numbers
    assert n["a_S"] - d.numbers["a_S"] == pytest.approx(sign * by, abs=1e-6)
    for dart in ("bd_S", "fd_S"):
        assert d.numbers[dart] - n[dart] == pytest.approx(sign * by, abs=0.1)
    for code in ("SB", "SF"):
        assert hip(d, code) == pytest.approx(hip(PLAIN_SKIRT, code))
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)


@pytest.mark.parametrize(("word", "sign"), [("full waist", 1), ("small waist", -1)])
def test_the_waist_moves_by_four_times_the_amount(word: str, sign: int) -> None:
    by = 0.6
    d = by_word(word, by)
    for code in ("SB", "SF"):
        grown = waist(d, code) - waist(PLAIN_SKIRT, code)
        assert grown == pytest.approx(sign * by, abs=MM / 2)
        assert hip(d, code) == pytest.approx(hip(PLAIN_SKIRT, code))
    assert d.numbers["Ew"] - PLAIN_SKIRT.numbers["Ew"] == pytest.approx(4 * sign * by)


@pytest.mark.parametrize(("word", "sign"), [("high hips", 1), ("low hips", -1)])
def test_the_side_waist_goes_up_and_the_centres_stay(word: str, sign: int) -> None:
    by = 0.7
    d = by_word(word, by)
    for b in ("b", "f"):
        up = PLAIN_SKIRT.sheet.points[f"W{b}s"].y - d.sheet.points[f"W{b}s"].y
        assert up == pytest.approx(sign * by)
        assert d.sheet.points[f"C{b}"] == PLAIN_SKIRT.sheet.points[f"C{b}"]
    for code in ("SB", "SF"):
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)


SWUNG = {
    "full seat of skirt": ("SB", "Cb", "bd_S", 1),
    "flat seat of skirt": ("SB", "Cb", "bd_S", -1),
    "full abdomen": ("SF", "Cf", "fd_S", 1),
    "flat abdomen": ("SF", "Cf", "fd_S", -1),
}


@pytest.mark.parametrize("word", SWUNG)
def test_a_seat_opens_the_centre_and_widens_the_side(word: str) -> None:
    """By the amount at the centre, by half of it at the side; the other half stays."""
    code, mark, dart, sign = SWUNG[word]
    other = "SF" if code == "SB" else "SB"
    for by in (0.6, 1.2, 4.0):  # the last in two places
        d = by_word(word, by)
        if by < 2.0 or sign > 0:
            assert not d.failed, d.failures()
        up = PLAIN_SKIRT.sheet.points[mark].y - d.sheet.points[mark].y
        assert up == pytest.approx(sign * by)
        wider = hip(d, code) - hip(PLAIN_SKIRT, code)
        assert wider == pytest.approx(sign * by / 2)
        assert waist(d, code) == pytest.approx(waist(PLAIN_SKIRT, code), abs=MM / 2)
        if by < 2.0:
            more = d.numbers[dart] - PLAIN_SKIRT.numbers[dart]
            assert more == pytest.approx(sign * by / 2, abs=0.2)  # and the curve
        for e in d.sheet.piece(other).edges:
            was = PLAIN_SKIRT.sheet.length(other, e.name)
            if by < 2.0:  # beyond, a dart may go, and its sides take the rest
                assert e.length == pytest.approx(was, abs=0.1 * MM), e.name


def test_a_hollow_back_lowers_the_centre_alone() -> None:
    for by in (0.6, 1.5):
        d = by_word("hollow back of skirt", by)
        low = d.sheet.points["Cb"].y - PLAIN_SKIRT.sheet.points["Cb"].y
        assert low == pytest.approx(by)
        assert d.sheet.points["Wbs"] == PLAIN_SKIRT.sheet.points["Wbs"]
        assert waist(d, "SB") == pytest.approx(waist(PLAIN_SKIRT, "SB"), abs=MM / 2)
