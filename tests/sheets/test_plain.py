"""Words in ASCII; common practice, no outside source."""

import pytest

from clothwright.sheets.plain import plain


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("13⅜ in", "13 3/8 in"),
        ("⅝ in", "5/8 in"),
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
