"""Letters: the two fonts that every printed sheet uses, and their measures.

DejaVu Sans carries the eighths, arrows, primes and the letters of most European
names, Hebrew and Arabic; for a character that it lacks a box is printed, never a blank,
and the first page says so. Heights are those of capital letters, in cm.
"""

import re
from collections.abc import Iterable
from functools import cache
from pathlib import Path

FONTS = Path(__file__).parent / "fonts"
"""Folder of the font files and their licence."""

PLAIN, BOLD = "Clothwright", "Clothwright-Bold"
"""Names by which the fonts are known while a page is drawn."""

_FILES = {PLAIN: "DejaVuSans.ttf", BOLD: "DejaVuSans-Bold.ttf"}

CAPITAL = 0.729
"""Height of a capital over the size of the font (DejaVu Sans, 1493 of 2048)."""

BOX = "□"
"""Stands for a character that the fonts lack."""

BOXED = (
    f"A box ({BOX}) stands for a character that the printing font lacks; write it in "
    "by hand, or the name in other letters."
)

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


_UNSEEN = re.compile(
    "[\u200b-\u200f\u2060\ufe00-\ufe0f\U0001f3fb-\U0001f3ff\U000e0020-\U000e007f]"
)
"""What only joins, turns or colours the signs beside it."""


def in_order(text: str, *, bold: bool = False) -> str:
    """One line's characters from left to right, as they are to be drawn: names that are
    read from right to left are turned, Arabic letters joined, and what the font lacks
    is a box."""
    text = _FROM_THE_RIGHT.sub(_turned, _UNSEEN.sub("", text))
    have = _glyphs(BOLD if bold else PLAIN)
    return "".join(ch if ord(ch) in have else BOX for ch in text)


def box_told(texts: Iterable[str]) -> tuple[str, ...]:
    """What is said where a character of these lines is printed as a box."""
    letters = "".join(sorted(set("".join(texts))))
    return (BOXED,) if BOX in in_order(letters, bold=True) else ()


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
