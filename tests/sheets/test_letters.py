"""Measured and broken words."""

import pytest

from clothwright.sheets.letters import box_told, in_order, width, wrapped

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


@pytest.mark.parametrize("bold", [False, True])
def test_a_box_stands_for_what_the_font_lacks(bold: bool) -> None:
    """DejaVu Sans has no CJK and no sewing thread; what only joins signs, or tints
    them, is nothing to see (Unicode, emoji sequences)."""
    assert in_order("Yama 山 6 in", bold=bold) == "Yama □ 6 in"
    assert in_order("Ada \U0001f9f5", bold=bold) == "Ada □"
    assert in_order("\u2702\ufe0f", bold=bold) == "\u2702"
    assert in_order("\U0001f469\U0001f3fd\u200d\U0001f3a4", bold=bold) == "□□"


def test_a_box_is_told_once() -> None:
    (said,) = box_told(["Ada", "\U0001f9f5 Top \U0001f9f5", "山"])
    assert said.startswith("A box (□) stands for a character")
    assert box_told(["Đorđe ½ ✂", "שרה", "باب"]) == ()


def test_names_from_right_to_left_are_turned() -> None:
    """Hebrew by hand: the letters of the name from the left as they stand on paper.
    Arabic: beh-alef-beh is drawn in its initial and final forms (Unicode, forms B)."""
    assert in_order("Top · שרה · 6 in") == "Top · הרש · 6 in"
    beh_initial, alef_final, beh_alone = "\ufe91", "\ufe8e", "\ufe8f"
    assert in_order("باب") == beh_alone + alef_final + beh_initial
    assert in_order("Đorđe ½") == "Đorđe ½"
