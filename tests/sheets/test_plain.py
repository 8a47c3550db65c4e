"""Words in ASCII; common practice, no outside source."""

import pytest

from clothwright.sheets.plain import plain
from clothwright.units import Unit, parse_length, pretty_length


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("13⅜ in", "13 3/8 in"),
        ("⅝ in", "5/8 in"),
        ("7¹¹⁄₁₆", "7 11/16"),
        ("¹⁵⁄₁₆ in", "15/16 in"),
        ("12¹⁵⁄₁₆ and 2³⁄₃₂", "12 15/16 and 2 3/32"),
        ("900 cm²", "900 cm2"),
        ("34⅜″", '34 3/8"'),
        ("Zoë Müller-Łoś", "Zoe Muller-Los"),
        ("a · b – c", "a - b - c"),
        ("±2°", "+/-2 deg"),
        ("line\nbreak\tand", "line break and"),
        ("Жанна", "?????"),
    ],
)
def test_words_become_ascii(text: str, written: str) -> None:
    assert plain(text) == written


@pytest.mark.parametrize("sixteenths", range(16 * 3))
def test_printed_lengths_read_back_the_same(sixteenths: int) -> None:
    """Every sixteenth as the pieces show it means the same to a machine's reader."""
    cm = (16 * 7 + sixteenths) * 2.54 / 16
    written = plain(pretty_length(cm, Unit.IN))
    assert parse_length(written) == pytest.approx(cm, abs=1e-6)
