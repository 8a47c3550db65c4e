"""Plausibility of measures: rules R1 to R30 of our notes on measures, §5, as amended.

Only taken values are judged, never estimates. A finding's sentence gives the measures
in the body's own unit; how measures go together stands in `agreements`.
"""

from collections.abc import Iterator

from clothwright.body.agreements import AGREEMENTS
from clothwright.body.body import Body
from clothwright.body.measures import measures
from clothwright.findings import Finding, Severity
from clothwright.rules import Hand
from clothwright.units import Unit, format_angle, format_length

_ABSURD_CM = {"B": 60.0, "H": 60.0, "W": 45.0, "HT": 120.0}
_ABSURD_IN = {"B": 62.0, "H": 65.0, "HT": 80.0}
_DOUBT_BEYOND = 0.15
"""Outside the usual by a further 15 % of the limit is a fault (measures §3)."""


def check_body(body: Body) -> tuple[Finding, ...]:
    """Every rule on the measures that the body has, gravest first."""
    found = [*_swapped(body), *_ranges(body), *_rules(body), *_sides(body)]
    order = tuple(Severity)
    return tuple(sorted(found, key=lambda f: order.index(f.severity)))


def _show(body: Body, code: str) -> str:
    return f"{measures()[code].name} ({code}) {_text(body, code, body[code])}"


def _text(body: Body, code: str, value: float) -> str:
    if measures()[code].kind == "angle":
        return format_angle(value)
    return format_length(value, body.unit, body=True)


def _swapped(body: Body) -> Iterator[Finding]:
    """R1: inches and centimetres exchanged, or a half measure given."""
    table = _ABSURD_CM if body.unit is Unit.CM else _ABSURD_IN
    for code, limit in table.items():
        v = body.get(code)
        if v is None:
            continue
        wrong = v < limit if body.unit is Unit.CM else v / 2.54 > limit
        if wrong:
            yield Finding(
                "R1",
                Severity.REFUSE,
                f"{_show(body, code)} cannot be: inches and centimetres are exchanged, "
                "or a half measure is given.",
                code,
                "Say the right unit, or measure again.",
                {code: v},
            )


def _ranges(body: Body) -> Iterator[Finding]:
    for code in body.values:
        m, v = measures()[code], body[code]
        low, high = m.low, m.high
        angle = m.kind == "angle"

        def read(value: float, *, mark: bool = True, angle: bool = angle) -> str:
            if angle:
                return f"{value:g}°"
            return format_length(value, body.unit, body=True, unit_mark=mark)

        # what reads as the end of the range is not told to be outside of it
        if low <= v <= high or read(v) in (read(low), read(high)):
            continue
        far = v < low * (1 - _DOUBT_BEYOND) or v > high * (1 + _DOUBT_BEYOND)
        span = f"{read(low, mark=False)} to {read(high)}"
        yield Finding(
            "range",
            Severity.REFUSE if far else Severity.WARN,
            f"{_show(body, code)} is {'far ' if far else ''}outside the usual {span}.",
            code,
            f"Measure it again{_exchanged(body, code) if far else ''}.",
            {code: v},
        )


def _exchanged(body: Body, code: str) -> str:
    """What to write when the bare figure would do in the other unit."""
    m, typed = measures()[code], body.values[code].typed
    if m.kind == "angle" or not typed.replace(" ", "").replace("/", "").isdecimal():
        return ""
    inches = body.unit is Unit.IN
    other = body[code] / 2.54 if inches else body[code] * 2.54
    if not m.low <= other <= m.high:
        return ""
    return f', or write "{typed} {"cm" if inches else "in"}" if it was read so'


def _rules(body: Body) -> Iterator[Finding]:
    for t in AGREEMENTS:
        if not all(n in body for n in t.needs):
            continue
        if t.right(*[body[n] for n in t.needs]):
            continue
        from_table = all(body.values[n].hand is Hand.SIZE_TABLE for n in t.needs)
        severity = Severity.NOTE if t.code == "R2" and from_table else t.severity
        values = ", ".join(_show(body, n) for n in t.needs)
        yield Finding(
            t.code,
            severity,
            f"{values}: {t.says}.",
            t.needs[0],
            t.to_do,
            {n: body[n] for n in t.needs},
        )


def _sides(body: Body) -> Iterator[Finding]:
    """R28: the two sides differ enough to be drafted apart. A side that is not given
    has the common value."""
    for code in dict.fromkeys((*body.left, *body.right)):
        common = body.values[code]
        a = body.left.get(code, common).value
        b = body.right.get(code, common).value
        limit = 1.5 if measures()[code].kind == "angle" else 0.6
        if abs(a - b) > limit:
            yield Finding(
                "R28",
                Severity.NOTE,
                f"{measures()[code].name} ({code}) is {_text(body, code, a)} on the "
                f"left and {_text(body, code, b)} on the right.",
                code,
                "The two sides are drafted apart.",
                {"left": a, "right": b},
            )
