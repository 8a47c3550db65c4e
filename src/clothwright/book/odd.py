"""Measures that are odd against the client's own past, to be asked about.

How far a body's figure may wander between two takings is common practice, no source:
a girth by 8 % and at least 4 cm, a length by 6 % and at least 2 cm, the shoulder slope
by 4 degrees. Whether measures of one day fit each other is `body.check_body`'s.
"""

from datetime import date

from clothwright.body import measures
from clothwright.book.values import Side, TakenMeasure
from clothwright.findings import Finding, Severity
from clothwright.units import Unit, format_angle, format_length, opening

GIRTH_SHARE, GIRTH_LEAST = 0.08, 4.0
LENGTH_SHARE, LENGTH_LEAST = 0.06, 2.0
"""Share of the former figure, and cm."""

ANGLE_LEAST = 4.0
"""Degrees."""

SWAPPED = 0.04
"""A figure this near to 2.54 times the former, or its part, has its unit exchanged."""


def question(
    code: str, side: Side, value: float, unit: Unit, taken: date, past: TakenMeasure
) -> Finding | None:
    """What to ask about a figure, beside the last one taken before; None when it fits.

    `value` in cm, or degrees for SS.
    """
    measure = measures()[code]
    apart = value - past.value
    if abs(apart) <= _allowed(measure.kind, past.value):
        return None
    name = measure.said.split(" (")[0]
    name = opening(name)
    where = f" on the {side}" if side else ""
    if measure.kind == "angle":
        now, by = format_angle(value), format_angle(abs(apart))
    else:
        now = format_length(value, unit, body=True)
        by = format_length(abs(apart), unit, body=True, unit_mark=False)
    more = "more" if apart > 0 else "less"
    sentence = f"{name}{where} {now} is {by} {more} than {_when(past.taken, taken)}."
    ratio = value / past.value
    swapped = measure.kind != "angle" and any(
        abs(ratio / r - 1) <= SWAPPED for r in (2.54, 1 / 2.54)
    )
    return Finding(
        "odd",
        Severity.WARN,
        sentence,
        f"{code}.{side}" if side else code,
        "Inches and centimetres are perhaps exchanged; say the unit, or measure again."
        if swapped
        else "Keep it, or measure again.",
        {"now": value, "then": past.value},
    )


def _allowed(kind: str, past: float) -> float:
    if kind == "angle":
        return ANGLE_LEAST
    if kind == "girth":
        return max(GIRTH_LEAST, GIRTH_SHARE * past)
    return max(LENGTH_LEAST, LENGTH_SHARE * past)


def _when(then: date, now: date) -> str:
    """ "in March", "on 3 March", "in March 2026": as exact as it helps."""
    if then == now:
        return "earlier that day"
    if then.year != now.year:
        return f"in {then:%B %Y}"
    if then.month != now.month:
        return f"in {then:%B}"
    return f"on {then:%-d %B}"
