"""Measured and broken words."""

import pytest

from clothwright.sheets.letters import BOLD, PLAIN, in_order, width, wrapped
from clothwright.sheets.write import SheetError

LINE = "Side seams: 38.4 cm against 39.1 cm, 0.7 cm apart; allowed 0.2 cm."


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("across", [2.0, 5.0, 19.0])
def test_lines_fit_and_lose_no_word(across: float, bold: bool) -> None:
    lines = wrapped(LINE, 0.3, across, bold=bold)
    assert all(width(k, 0.3, bold=bold) <= across for k in lines)
    assert " ".join(lines) == LINE


def test_a_word_longer_than_the_line_is_divided() -> None:
    word = "x" * 300
    lines = wrapped(word, 0.3, 5.0)
    assert len(lines) > 5
    assert "".join(lines) == word
    assert all(width(k, 0.3) <= 5.0 for k in lines)


def test_a_capital_is_as_tall_as_asked() -> None:
    """The font's own figures: capitals 1493 of 2048 units."""
    from fontTools.ttLib import TTFont

    from clothwright.sheets.letters import CAPITAL, FONTS

    font = TTFont(FONTS / "DejaVuSans.ttf")
    height = font["glyf"]["H"].yMax / font["head"].unitsPerEm
    assert pytest.approx(CAPITAL, abs=0.001) == height


def test_a_missing_character_is_named() -> None:
    with pytest.raises(SheetError, match=r'^"山": the character \'山\' is not'):
        in_order("山")
    assert PLAIN != BOLD


def test_names_from_right_to_left_are_turned() -> None:
    """Hebrew by hand: the letters of the name from the left as they stand on paper.
    Arabic: beh-alef-beh is drawn in its initial and final forms (Unicode, forms B)."""
    assert in_order("Top · שרה · 6 in") == "Top · הרש · 6 in"
    beh_initial, alef_final, beh_alone = "\ufe91", "\ufe8e", "\ufe8f"
    assert in_order("باب") == beh_alone + alef_final + beh_initial
    assert in_order("Đorđe ½") == "Đorđe ½"
