"""Reading lengths and angles in every written form.

`36`, `36.5`, `36,5`, `36 1/2`, `36-1/2`, `36½`, `34⅜"`, `92 cm`, `1 yd`, `25 mm`,
and a shoulder slope as `drop 1 7/8 on 5`. Results are cm and degrees.
"""

import math
import re
import unicodedata

from clothwright.units.unit import Unit

_CM = {
    "cm": 1.0,
    "centimetre": 1.0,
    "centimetres": 1.0,
    "mm": 0.1,
    "millimetres": 0.1,
    "m": 100.0,
    "metre": 100.0,
    "metres": 100.0,
    "in": 2.54,
    "inch": 2.54,
    "inches": 2.54,
    '"': 2.54,
    "″": 2.54,
    "”": 2.54,
    "''": 2.54,
    "yd": 91.44,
    "yard": 91.44,
    "yards": 91.44,
}
_NUMBER = re.compile(
    r"""^(?P<sign>[-−+])?\s*
    (?: (?P<whole>\d+)(?:\s+|\s*-\s*)(?P<num>\d+)\s*/\s*(?P<den>\d+)
      | (?P<num2>\d+)\s*/\s*(?P<den2>\d+)
      | (?P<dec>\d+(?:[.,]\d+)?|[.,]\d+) )
    \s*(?P<unit>[^\d\s].*)?$""",
    re.VERBOSE,
)


LARGEST = 1e6
"""No length of a workroom, and no angle, comes near this (cm, degrees)."""

_AN_ANGLE = "an angle"

LONGEST_TEXT = 60
"""More letters than any written length has."""


class LengthError(ValueError):
    """A length or angle that cannot be read. `str()` is the sentence for the user."""


_HIGH = "⁰¹²³⁴⁵⁶⁷⁸⁹"
_HIGH_FRACTION = re.compile(f"[{_HIGH}]+(?=[⁄∕/])")
_SMALL = str.maketrans(_HIGH + "₀₁₂₃₄₅₆₇₈₉", "0123456789" * 2)


def _plain_fractions(text: str) -> str:
    text = _HIGH_FRACTION.sub(lambda m: " " + m[0], text).translate(_SMALL)
    out: list[str] = []
    for ch in text.strip():
        if ch in "⁄∕":
            out.append("/")
            continue
        folded = unicodedata.normalize("NFKD", ch)
        if "⁄" in folded and ch != folded:
            out.append(" " + folded.replace("⁄", "/"))
        elif ch in "\u00a0\u2009\u202f":
            out.append(" ")
        else:
            out.append(ch)
    return "".join(out).strip()


def _number(text: str, what: str) -> tuple[float, str]:
    shown = text.strip()
    if not shown:
        raise LengthError(f"{what} is blank: write a number, like 36 1/2 or 92.5")
    if len(shown) > LONGEST_TEXT:
        raise LengthError(f'"{shown[:20]}…" is too long for {what}: write a number')
    m = _NUMBER.match(_plain_fractions(text))
    if m is None:
        like = (
            'degrees, like 21.5, or "drop 1 7/8 on 5"'
            if what == _AN_ANGLE
            else "a number, like 36 1/2 in or 92.5 cm"
        )
        raise LengthError(f'"{shown}" cannot be read as {what}: write {like}')
    if m["den"] or m["den2"]:
        den = int(m["den"] or m["den2"])
        if den == 0:
            raise LengthError(f'"{shown}" divides by nought: mend the fraction')
        value = int(m["whole"] or 0) + int(m["num"] or m["num2"]) / den
    else:
        value = float(m["dec"].replace(",", "."))
    if m["sign"] in ("-", "−"):
        value = -value
    return value, (m["unit"] or "").strip()


def parse_plain(text: str) -> float:
    """A bare number or fraction, no unit. Raises LengthError."""
    value, unit = _number(text, "a number")
    if unit:
        raise LengthError(
            f'"{text.strip()}" has a unit where none belongs: write a '
            "plain number, like 0.5"
        )
    return value


def parse_length(text: str | float, default_unit: Unit | None = None) -> float:
    """A written length in cm.

    A number without a unit takes `default_unit`. Raises LengthError, with a sentence
    that says what to write, for anything else.
    """
    if isinstance(text, bool):
        raise LengthError("yes or no stands where a length is wanted")
    if isinstance(text, int | float):
        if not abs(text) <= LARGEST:
            raise LengthError(f"{str(text)[:20]} is no length: write a number")
        value, unit = float(text), ""
    else:
        value, unit = _number(text, "a length")
    if not unit:
        if default_unit is None:
            raise LengthError(f'"{text}" has no unit: write "{text} cm" or "{text} in"')
        unit = default_unit.value
    return _in_cm(value, unit, text)


def _in_cm(value: float, unit: str, text: str | float) -> float:
    key = unit.lower().rstrip(".")
    if key not in _CM:
        raise LengthError(
            f'"{text}" is in "{unit}", which is no unit of length here: '
            "write cm, mm, in or yd"
        )
    cm = value * _CM[key]
    if abs(cm) > LARGEST:
        raise LengthError(f'"{text}" is too large for a length: write it again')
    return cm


_DROP = re.compile(r"^drop\s+(.+?)\s+on\s+(.+)$", re.IGNORECASE)


def parse_angle(text: str | float) -> float:
    """A written angle in degrees: `21.5`, `21 1/2°`, or `drop 1 7/8 on 5` (the fall
    of a line over its length; a unit written on one of the two holds for both).
    Raises LengthError."""
    if isinstance(text, bool):
        raise LengthError("yes or no stands where an angle is wanted")
    if isinstance(text, int | float):
        if not abs(text) <= LARGEST:
            raise LengthError(f"{str(text)[:20]} is no angle: write degrees")
        return float(text)
    m = _DROP.match(text.strip())
    if m:
        (fall, unit), (run, run_unit) = (
            _number(part, "a length") for part in m.groups()
        )
        drop = _in_cm(fall, unit or run_unit or "cm", text)
        length = _in_cm(run, run_unit or unit or "cm", text)
        if not 0 <= drop < length:
            raise LengthError(
                f'"{text}": the drop must be smaller than the length it is taken on'
            )
        return math.degrees(math.asin(drop / length))
    value, unit = _number(text, _AN_ANGLE)
    if unit.lower() not in ("", "°", "deg", "degrees", "degree"):
        raise LengthError(
            f'"{text}" is no angle: write degrees, like 21.5, or "drop 1 7/8 on 5"'
        )
    if abs(value) > LARGEST:
        raise LengthError(f'"{text}" is too large for an angle: write degrees')
    return value
