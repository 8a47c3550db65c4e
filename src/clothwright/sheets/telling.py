"""The hand instruction of a step, told from its data in the user's unit.

Nothing is written twice: a step holds what was measured, from where and by which
number; the sentence is made here.
"""

import math
import re
from collections.abc import Callable

from clothwright.paper import Amount, Sheet, Step, Verb
from clothwright.rules import Kind, Numbers, RuleError
from clothwright.units import Unit, format_angle, opening, pretty_length

Teller = Callable[[Step, Unit, Numbers, Sheet], str]

_WAY = {
    "right": ("towards the centre front", "towards the centre back"),
    "left": ("towards the centre back", "towards the centre front"),
    "down": ("down", "up"),
    "up": ("up", "down"),
}
_OWN_WAY = {
    "trouser front": {"towards the centre back": "towards the side"},
    "trouser back": {"towards the centre front": "towards the side"},
    "knit back": {"towards the centre front": "towards the side"},
    "knit skirt": {"towards the centre front": "towards the side"},
    "knit front": {"towards the centre back": "towards the side"},
}
"""Of parts that lie apart: what is on the far side of them."""
_OTHER = {"right": "left", "left": "right"}

NOTHING = 0.005
"""A size under this (cm) is not measured, the mark lies level or plumb."""


def tell(step: Step, unit: Unit, numbers: Numbers, sheet: Sheet) -> str:
    """One plain instruction. `sheet` holds the named marks, for a turn's chord."""
    return mark_name(opening(_TELL[step.verb](step, unit, numbers, sheet)) + ".")


_OF = {
    "tf": "block",
    "tb": "block",
    "Pf": "dart",
    "Hf": "sleeve",
    "Hb": "sleeve",
    "Ub": "sleeve",
    "Uf": "sleeve",
}
"""Marks that another is told from by a capital alone, and whose they are: the block's
shoulder tips beside the finished ones (Tf), a dart's point beside the pitch (pf)."""

_MARK = re.compile(rf"\b({'|'.join(_OF)})\b(′?)")


def mark_name(words: str) -> str:
    """A mark's name as the sheets show it, alone or in a sentence."""
    return _MARK.sub(lambda found: f"{found[0]} {_OF[found[1]]}", words)


def amount(a: Amount, unit: Unit, numbers: Numbers) -> str:
    """A size as it is laid off."""
    if a.angle:
        return format_angle(abs(a.value))
    kind = Kind.LENGTH
    if a.key:
        try:
            kind = numbers.why(a.key).kind
        except RuleError:
            kind = Kind.LENGTH
    if kind is Kind.ANGLE:
        return format_angle(abs(a.value))
    if kind is Kind.RATIO:
        return f"{a.value:g}"
    if kind is Kind.COUNT:
        return f"{a.value:.0f}"
    return pretty_length(abs(a.value), unit)


def _start(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
    return f"mark {s.makes}, {s.says}"


def _measure(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
    parts = []
    for a in s.amounts:
        if _nothing(a, unit):
            continue
        ahead, back = _ways(s, a.how)
        parts.append(f"{amount(a, unit, n)} {ahead if a.value > 0 else back}")
    how = " and ".join(parts) if parts else "nothing"
    return f"from {s.frm[0]} measure {how}; mark {s.makes}, {s.says}"


def _along(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
    assert s.at is not None
    across, down = s.at - sheet.points[s.frm[0]]
    run = _laid(s, abs(across), "right" if across > 0 else "left", unit)
    fall = _laid(s, abs(down), "down" if down > 0 else "up", unit)
    return (
        f"from {s.frm[0]} measure {amount(s.amounts[0], unit, n)} along {s.detail} "
        f"({run} and {fall}); mark {s.makes}, {s.says}"
    )


def _ways(s: Step, how: str) -> tuple[str, str]:
    """The way in words, and the opposite; a sleeve has no centre front, its band no
    front at all."""
    ahead, back = _WAY[how]
    if s.part == "band" and how in ("right", "left"):
        return f"to the {how}", f"to the {_OTHER[how]}"
    if s.part == "sleeve":
        return ahead.replace("centre ", ""), back.replace("centre ", "")
    own = _OWN_WAY.get(s.part, {})
    return own.get(ahead, ahead), own.get(back, back)


def _laid(s: Step, cm: float, way: str, unit: Unit) -> str:
    return f"{pretty_length(cm, unit)} {_ways(s, way)[0]}"


def _turn(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
    """Told by the way that the mark goes, which the hand sees, and then the angle."""
    assert s.at is not None
    of, about = s.frm
    across, down = s.at - sheet.points[of]
    if abs(down) >= abs(across):
        way = "down" if down > 0 else "up"
    else:
        way = "right" if across > 0 else "left"
    chord = pretty_length(math.hypot(across, down), unit)
    return (
        f"swing {of} {_WAY[way][0]} about {about} until it has moved {chord} "
        f"({amount(s.amounts[0], unit, n)}); mark {s.makes}, {s.says}"
    )


def _sizes(s: Step, unit: Unit, n: Numbers) -> list[str]:
    return [_put(a.how, amount(a, unit, n)) for a in s.amounts if not _nothing(a, unit)]


def _nothing(a: Amount, unit: Unit) -> bool:
    """True for a size that the tape does not show."""
    if abs(a.value) < NOTHING or a.angle or a.key:
        return abs(a.value) < NOTHING
    return pretty_length(abs(a.value), unit) == pretty_length(0.0, unit)


def _put(how: str, size: str) -> str:
    """The size in its place in the words, or before them."""
    return how.format(size) if "{}" in how else f"{size} {how}"


def _find(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
    sizes = _sizes(s, unit, n)
    how = "; ".join([", ".join(sizes), s.detail]).strip("; ")
    if sizes and s.frm and not re.search(rf"\b{re.escape(s.frm[0])}(?![\w′])", how):
        how = f"from {s.frm[0]}, {how}"
    return f"mark {s.makes}, {s.says}" + (f": {how}" if how else "")


def _draw(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
    verb = "rule" if s.verb is Verb.RULE else "draw"
    through = ""
    if len(s.frm) >= 2:
        through = f" from {s.frm[0]} to {s.frm[-1]}"
        if len(s.frm) > 2:
            through = (
                f" from {s.frm[0]} through {', '.join(s.frm[1:-1])} to {s.frm[-1]}"
            )
    return f"{verb} the {s.says}{through}" + (f", {s.detail}" if s.detail else "")


def _paper(word: str) -> Teller:
    def tell_paper(s: Step, unit: Unit, n: Numbers, sheet: Sheet) -> str:
        sizes = ", ".join(_sizes(s, unit, n))
        return f"{word}: {s.says}" + "".join(f", {t}" for t in (sizes, s.detail) if t)

    return tell_paper


_TELL: dict[Verb, Teller] = {
    Verb.START: _start,
    Verb.MEASURE: _measure,
    Verb.ALONG: _along,
    Verb.TURN: _turn,
    Verb.FIND: _find,
    Verb.RULE: _draw,
    Verb.CURVE: _draw,
    Verb.CUT: _paper("cut the paper"),
    Verb.MOVE: _paper("move the paper"),
    Verb.TAPE: _paper("tape"),
    Verb.SPREAD: _paper("spread"),
    Verb.REDRAW: _paper("redraw"),
    Verb.OUTLINE: _paper("draw"),
    Verb.TRACE: _paper("trace"),
    Verb.UNFOLD: _paper("unfold"),
    Verb.SEW: _paper("walk and mark"),
}
