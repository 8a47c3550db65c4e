"""Showing lengths: fractions of an inch, tenths of a centimetre."""

import math
import re
from fractions import Fraction
from typing import NamedTuple

from clothwright.units.unit import Unit

_VULGAR = {
    (1, 2): "½",
    (1, 4): "¼",
    (3, 4): "¾",
    (1, 8): "⅛",
    (3, 8): "⅜",
    (5, 8): "⅝",
    (7, 8): "⅞",
}
_SUPER = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_SUB = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


class Fraction16(NamedTuple):
    """A shown length in inches: sign, whole inches, and a reduced fraction."""

    sign: int
    whole: int
    num: int
    den: int


def split_fraction(cm: float, finest: int = 16) -> Fraction16:
    """A length in inches, rounded (half up) to 1/`finest` and reduced."""
    parts = math.floor(abs(cm) / 2.54 * finest + 0.5 + 1e-9)
    whole, num = divmod(parts, finest)
    g = math.gcd(num, finest)
    sign = -1 if cm < 0 and parts else 1
    return Fraction16(sign, whole, num // g, finest // g)


def _decimals(cm: float, body: bool) -> str:
    if body and abs(cm) > 50:
        half = math.floor(cm * 2 + 0.5) / 2
        return f"{half:g}"
    return f"{cm + 0.0:.1f}" if abs(cm) >= 0.05 else "0.0"


def format_length(
    cm: float,
    unit: Unit,
    *,
    finest: int = 16,
    unit_mark: bool = True,
    body: bool = False,
) -> str:
    """A length in plain characters: `12 3/8 in`, `92.5 cm`.

    Inches go to 1/`finest` (1/8 for body measures); centimetres to 0.1, or 0.5 for
    body girths over 50 cm.
    """
    mark = f" {unit.value}" if unit_mark else ""
    if unit is Unit.CM:
        return _decimals(cm, body) + mark
    sign, whole, num, den = split_fraction(cm, 8 if body else finest)
    fraction = f" {num}/{den}" if num else ""
    return ("-" if sign < 0 else "") + f"{_whole(whole, num)}{fraction}".strip() + mark


def pretty_length(
    cm: float,
    unit: Unit,
    *,
    finest: int = 16,
    unit_mark: bool = True,
    body: bool = False,
) -> str:
    """A length with real fraction characters: `12⅜ in`, `4¹³⁄₁₆ in`."""
    if unit is Unit.CM:
        return format_length(cm, unit, unit_mark=unit_mark, body=body)
    sign, whole, num, den = split_fraction(cm, 8 if body else finest)
    minus, mark = "−" if sign < 0 else "", f" {unit.value}" if unit_mark else ""
    return f"{minus}{_whole(whole, num)}{_fraction(num, den)}{mark}"


def _whole(whole: int, num: int) -> str:
    """Whole inches, left out before a fraction that stands alone."""
    return "" if num and not whole else str(whole)


def _fraction(num: int, den: int) -> str:
    """A fraction in one character, or in small figures; nothing for nought."""
    if num == 0:
        return ""
    return _VULGAR.get((num, den)) or (
        f"{str(num).translate(_SUPER)}⁄{str(den).translate(_SUB)}"
    )


_PLAIN_IN_TEXT = re.compile(r"(?:(\d+) )?\b(\d+)/(\d+)(?= (?:in|yd)\b)")


def pretty_text(text: str) -> str:
    """Words with every "1 15/16 in" in real fraction characters: "1¹⁵⁄₁₆ in"."""

    def pretty(m: re.Match[str]) -> str:
        return (m[1] or "") + _fraction(int(m[2]), int(m[3]))

    return _PLAIN_IN_TEXT.sub(pretty, text)


def format_angle(degrees: float) -> str:
    """An angle to a tenth of a degree: `21.5°`."""
    return f"{degrees:.1f}°"


def yards_up_to_eighth(cm: float) -> Fraction16:
    """Cloth to buy, rounded up to 1/8 yd, as whole yards and a fraction."""
    eighths = math.ceil(cm / 91.44 * 8 - 1e-9)
    whole, num = divmod(eighths, 8)
    g = math.gcd(num, 8)
    return Fraction16(1, whole, num // g, 8 // g)


def mixed(number: Fraction) -> str:
    """A number in plain characters, whole and fraction: "1 5/8", "3/8", "2"."""
    whole, rest = divmod(number, 1)
    return " ".join(str(part) for part in (whole, rest) if part) or "0"


def metres_up_to_tenth(cm: float) -> float:
    """Cloth to buy in metres, rounded up to 0.1 m."""
    return math.ceil(cm / 10 - 1e-9) / 10


def ligne_to_cm(lignes: float) -> float:
    """Button size: 1 ligne is 1/40 in."""
    return lignes * 2.54 / 40


def cm_to_ligne(cm: float) -> float:
    """Button size in lignes, to the nearest half."""
    return round(cm / 2.54 * 40 * 2) / 2


_LONG = r"([\d.]*[\d¼-¾⅛-⅞⁰-₉⁄]* (?:in|cm))\b"
_OVER = re.compile(rf"(?<= ){_LONG}([^;]*; up to )(?=\1 )")
_UNDER = re.compile(
    rf"(?<= )(?:only )?{_LONG}([^;]*; )(?=\1 (?:must stay|is the least|at least))"
)


def told_apart(text: str) -> str:
    """A sentence whose two lengths read alike, though the first is beyond the second:
    "lies 1.4 cm off; up to 1.4 cm lies close" says "a little over 1.4 cm", and "only 1
    cm wide; 1 cm must stay" "a little under 1 cm"."""
    return _UNDER.sub(r"a little under \1\2", _OVER.sub(r"a little over \1\2", text))


_CM_IN_TEXT = re.compile(r"(\d+(?:\.\d+)?) cm\b")


def opening(words: str) -> str:
    """Words at the head of a sentence, with a capital."""
    return words[:1].upper() + words[1:]


def retold(text: str, unit: Unit) -> str:
    """A sentence with every "2.5 cm" in the user's unit.

    Rules and features think in centimetres and say so; this is the edge where their
    sentences reach someone who thinks in inches.
    """
    if unit is Unit.CM:
        return text
    return _CM_IN_TEXT.sub(lambda m: pretty_length(float(m[1]), unit), text)
