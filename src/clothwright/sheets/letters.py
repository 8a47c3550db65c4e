"""Letters: the two fonts that every printed sheet uses, and their measures.

DejaVu Sans carries the eighths, arrows, primes and the letters of most European
names, Hebrew and Arabic; a character that it lacks is refused, never printed as a
blank. Heights are those of capital letters, in cm.
"""

import re
from functools import cache
from pathlib import Path

from clothwright.sheets.write import SheetError

FONTS = Path(__file__).parent / "fonts"
"""Folder of the font files and their licence."""

PLAIN, BOLD = "Clothwright", "Clothwright-Bold"
"""Names by which the fonts are known while a page is drawn."""

_FILES = {PLAIN: "DejaVuSans.ttf", BOLD: "DejaVuSans-Bold.ttf"}

CAPITAL = 0.729
"""Height of a capital over the size of the font (DejaVu Sans, 1493 of 2048)."""

POINT = 2.54 / 72
"""One typographic point, cm."""


@cache
def _glyphs(font: str) -> frozenset[int]:
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    made = TTFont(font, str(FONTS / _FILES[font]))
    pdfmetrics.registerFont(made)
    return frozenset(made.face.charToGlyph)


_LETTERS = "[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+"
_FROM_THE_RIGHT = re.compile(rf"{_LETTERS}(?:[ '’.-]+{_LETTERS})*")
"""A name in Hebrew or Arabic letters. It is turned by itself: the figures after it
belong to the sentence, which reads from the left."""


def _turned(name: re.Match[str]) -> str:
    from arabic_reshaper import reshape

    return str(reshape(name[0]))[::-1]


def in_order(text: str, *, bold: bool = False) -> str:
    """One line's characters from left to right, as they are to be drawn: names that are
    read from right to left are turned, and Arabic letters joined.

    Raises SheetError naming the first character that is missing from the font.
    """
    text = _FROM_THE_RIGHT.sub(_turned, text)
    have = _glyphs(BOLD if bold else PLAIN)
    for ch in text:
        if ord(ch) not in have:
            raise SheetError(
                f'"{text}": the character {ch!r} is not in the printing font; '
                "write it in other letters."
            )
    return text


def width(text: str, height: float, *, bold: bool = False) -> float:
    """Printed width in cm of a line whose capitals are `height` cm tall."""
    from reportlab.pdfbase import pdfmetrics

    font = BOLD if bold else PLAIN
    _glyphs(font)
    size = height / CAPITAL / POINT
    return float(pdfmetrics.stringWidth(text, font, size)) * POINT


def wrapped(
    text: str, height: float, across: float, *, bold: bool = False
) -> list[str]:
    """The text in lines at most `across` cm wide; too long a word is divided."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, height, bold=bold) <= across:
            lines[-1] = longer
            continue
        while len(word) > 1 and width(word, height, bold=bold) > across:
            n = len(word) - 1
            while n > 1 and width(word[:n], height, bold=bold) > across:
                n -= 1
            lines.append(word[:n])
            word = word[n:]
        lines.append(word)
    return lines
