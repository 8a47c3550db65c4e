"""Plausibility of measures: rules R1 to R30 of our notes on measures, §5, as amended.

Only taken values are judged, never estimates. Differences in cm; a finding's sentence
gives the measures in the body's own unit.
One file, for it is one table of thirty rules, a row each.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from clothwright.body.body import Body
from clothwright.body.measures import measures
from clothwright.findings import Finding, Severity
from clothwright.rules import Hand
from clothwright.units import Unit, format_angle, format_length

# R12 ends at 0.72, not 0.70: the corrected slope of NBP in the cup (C5) brings a full
# standard body to 0.7015, and no rule may fire on it.
_E, _W, _N = Severity.REFUSE, Severity.WARN, Severity.NOTE


@dataclass(frozen=True)
class _Test:
    code: str
    severity: Severity
    needs: tuple[str, ...]
    right: Callable[..., bool]
    """True when the measures agree."""

    says: str
    to_do: str


_NWB_MEAN = "Find the waist with a tied tape and the nape again, and measure both."

_TESTS: tuple[_Test, ...] = (
    _Test(
        "R2",
        _W,
        ("B", "HB"),
        lambda B, HB: HB - 1 <= B,
        "the high bust is larger than the bust",
        "The high bust was perhaps taken over the bust; measure both again.",
    ),
    _Test(
        "R3",
        _W,
        ("B", "HB"),
        lambda B, HB: B - HB <= 18,
        "bust and high bust are more than 18 cm (7 in) apart",
        "Measure both again.",
    ),
    _Test(
        "R4",
        _W,
        ("UB", "HB", "B"),
        lambda UB, HB, B: UB <= HB + 3 and UB >= 0.72 * B,
        "the underbust does not fit high bust and bust",
        "Measure it level, directly under the bust.",
    ),
    _Test(
        "R5",
        _N,
        ("W", "B"),
        lambda W, B: W < B + 10,
        "the waist is much larger than the bust",
        "The waist will be shaped for a full figure.",
    ),
    _Test(
        "R6",
        _W,
        ("W", "H"),
        lambda W, H: 0.62 <= W / H <= 0.95,
        "waist and hip do not fit each other",
        "Look whether both were taken at the right level.",
    ),
    _Test(
        "R7",
        _N,
        ("H", "B"),
        lambda H, B: -6 <= H - B <= 25,
        "hip and bust differ unusually",
        "Measure both again if in doubt.",
    ),
    _Test(
        "R7",
        _W,
        ("H", "W"),
        lambda H, W: 5 <= H - W <= 42,
        "hip and waist differ unusually",
        "Measure both again.",
    ),
    _Test(
        "R8",
        _W,
        ("W", "HH", "H"),
        lambda W, HH, H: W < HH <= H + 1,
        "the high hip does not lie between waist and hip",
        "Measure it 8 to 11 cm (3 to 4 1/2 in) below the waist.",
    ),
    _Test(
        "R8",
        _W,
        ("HH", "W", "H"),
        lambda HH, W, H: 0.45 * (H - W) <= HH - W <= 0.95 * (H - W),
        "the high hip does not lie where waist and hip put it",
        "Measure it 8 to 11 cm (3 to 4 1/2 in) below the waist.",
    ),
    _Test(
        "R9",
        _W,
        ("NWB", "HT"),
        lambda NWB, HT: 0.225 <= NWB / HT <= 0.275,
        "the back length does not fit the height",
        _NWB_MEAN,
    ),
    _Test(
        "R10",
        _W,
        ("SBW", "NWB"),
        lambda SBW, NWB: 1.0 <= SBW - NWB <= 3.5,
        "the two back lengths do not fit each other",
        "Mark nape and neck-shoulder point and measure both again.",
    ),
    _Test(
        "R11",
        _W,
        ("NFW", "SBW"),
        lambda NFW, SBW: -2.5 <= NFW - SBW <= 7,
        "front and back length do not fit each other",
        "Measure both from the neck-shoulder point again.",
    ),
    _Test(
        "R11",
        _W,
        ("NFW", "SBW", "B", "HB"),
        lambda NFW, SBW, B, HB: abs(NFW - SBW - (0.8 + 0.4 * (B - HB - 5))) <= 2.0,
        "front and back length do not fit the cup",
        "Look at the posture, and measure both from the neck-shoulder point again.",
    ),
    _Test(
        "R12",
        _W,
        ("NBP", "NFW"),
        lambda NBP, NFW: NBP < NFW - 10 and 0.52 <= NBP / NFW <= 0.72,
        "the bust depth does not fit the front length",
        "Measure both again.",
    ),
    _Test(
        "R13",
        _W,
        ("BPS", "B"),
        lambda BPS, B: 0.17 * B <= BPS <= 0.25 * B,
        "the bust span does not fit the bust",
        "Measure straight from point to point, not over the curve.",
    ),
    _Test(
        "R14",
        _W,
        ("XB", "B"),
        lambda XB, B: 0.33 * B <= XB <= 0.46 * B,
        "the back width does not fit the bust",
        "Measure it again.",
    ),
    _Test(
        "R14",
        _W,
        ("XB", "XC"),
        lambda XB, XC: -1.5 <= XB - XC <= 6,
        "back and front width do not fit each other",
        "Measure both at the same height.",
    ),
    _Test(
        "R15",
        _W,
        ("XB", "SW"),
        lambda XB, SW: XB <= SW + 1.0,
        "the back width is larger than the shoulder width",
        "Measure both again.",
    ),
    _Test(
        "R16",
        _W,
        ("SH", "SS", "N", "SW"),
        lambda SH, SS, N, SW: (
            abs(2 * SH * math.cos(math.radians(SS)) + 2 * (N / 5 - 0.3) - SW) <= 3.5
        ),
        "shoulder, neck and shoulder width do not fit together",
        "Measure the three again.",
    ),
    _Test(
        "R17",
        _W,
        ("AS", "NWB"),
        lambda AS, NWB: 0.44 * NWB <= AS <= 0.60 * NWB,
        "the armscye depth does not fit the back length",
        "Measure it down to a card held under both arms.",
    ),
    _Test(
        "R17",
        _W,
        ("AS", "NWB", "SD"),
        lambda AS, NWB, SD: abs(NWB - AS - SD) <= 2.5,
        "armscye depth, back length and side do not fit together",
        "Measure the three again.",
    ),
    _Test(
        "R18",
        _W,
        ("CFL", "NFW"),
        lambda CFL, NFW: NFW - 11 <= CFL <= NFW - 5.5,
        "the centre front does not fit the front length",
        "Measure both again.",
    ),
    _Test(
        "R19",
        _W,
        ("UA", "B"),
        lambda UA, B: 0.24 * B <= UA <= 0.38 * B,
        "the upper arm does not fit the bust",
        "Measure it again.",
    ),
    _Test(
        "R19",
        _E,
        ("UA", "FA"),
        lambda UA, FA: UA > FA,
        "the forearm is larger than the upper arm",
        "Measure both again.",
    ),
    _Test(
        "R19",
        _E,
        ("FA", "WR"),
        lambda FA, WR: FA > WR,
        "the wrist is larger than the forearm",
        "Measure both again.",
    ),
    _Test(
        "R19",
        _E,
        ("UA", "WR"),
        lambda UA, WR: UA > WR,
        "the wrist is larger than the upper arm",
        "Measure both again.",
    ),
    _Test(
        "R19",
        _W,
        ("EL", "FA"),
        lambda EL, FA: EL >= FA - 1,
        "the elbow is smaller than the forearm",
        "Measure both again.",
    ),
    _Test(
        "R20",
        _W,
        ("AG", "HB"),
        lambda AG, HB: 0.38 * (HB + 5) <= AG <= 0.50 * (HB + 5),
        "the armhole does not fit the frame",
        "Measure it with the arm down and the tape easy.",
    ),
    _Test(
        "R20",
        _W,
        ("AG", "UA"),
        lambda AG, UA: 1.25 * UA <= AG <= 1.7 * UA,
        "armhole and upper arm do not fit each other",
        "Measure both again.",
    ),
    _Test(
        "R21",
        _W,
        ("SE", "AL"),
        lambda SE, AL: 0.53 * AL <= SE <= 0.62 * AL,
        "the elbow does not lie where the arm length puts it",
        "Measure both again.",
    ),
    _Test(
        "R21",
        _W,
        ("UL", "AL"),
        lambda UL, AL: 0.68 * AL <= UL <= 0.80 * AL,
        "inner and outer arm length do not fit",
        "Measure both again.",
    ),
    _Test(
        "R22",
        _W,
        ("AL", "HT"),
        lambda AL, HT: 0.32 * HT <= AL <= 0.39 * HT,
        "the arm length does not fit the height",
        "Measure it again.",
    ),
    _Test(
        "R23",
        _W,
        ("WH", "HT"),
        lambda WH, HT: 0.095 * HT <= WH <= 0.15 * HT,
        "the hip depth does not fit the height",
        "Measure it again.",
    ),
    _Test(
        "R23",
        _W,
        ("WHH", "WH"),
        lambda WHH, WH: 0.35 <= WHH / WH <= 0.62,
        "the high hip depth does not fit the hip depth",
        "Measure both again.",
    ),
    _Test(
        "R24",
        _W,
        ("BR", "IL", "WF"),
        lambda BR, IL, WF: -3.5 <= BR + IL - WF <= 6.0,
        "crotch depth and inseam do not add up to the waist height",
        "Measure the three again.",
    ),
    _Test(
        "R24",
        _W,
        ("IL", "HT"),
        lambda IL, HT: 0.42 * HT <= IL <= 0.50 * HT,
        "the inseam does not fit the height",
        "Measure it again.",
    ),
    _Test(
        "R25",
        _W,
        ("CRL", "BR", "H"),
        lambda CRL, BR, H: 2 * BR + 0.06 * H <= CRL <= 2 * BR + 0.22 * H,
        "the crotch length does not fit crotch depth and hip",
        "Measure it again.",
    ),
    _Test(
        "R26",
        _W,
        ("TH", "H"),
        lambda TH, H: 0.50 * H <= TH <= 0.70 * H,
        "the thigh does not fit the hip",
        "Measure it again.",
    ),
    _Test(
        "R26",
        _W,
        ("KN", "H"),
        lambda KN, H: 0.30 * H <= KN <= 0.44 * H,
        "the knee does not fit the hip",
        "Measure it again.",
    ),
    _Test(
        "R26",
        _E,
        ("TH", "MT"),
        lambda TH, MT: TH > MT,
        "the mid thigh is larger than the thigh",
        "Measure both again.",
    ),
    _Test(
        "R26",
        _E,
        ("MT", "KN"),
        lambda MT, KN: MT > KN,
        "the knee is larger than the mid thigh",
        "Measure both again.",
    ),
    _Test(
        "R26",
        _E,
        ("TH", "KN"),
        lambda TH, KN: TH > KN,
        "the knee is larger than the thigh",
        "Measure both again.",
    ),
    _Test(
        "R26",
        _E,
        ("KN", "AN"),
        lambda KN, AN: KN > AN,
        "the ankle is larger than the knee",
        "Measure both again.",
    ),
    _Test(
        "R27",
        _N,
        ("N", "NK"),
        lambda N, NK: N >= NK - 1,
        "the collar neck is larger than the neck base",
        "Measure both again.",
    ),
    _Test(
        "R27",
        _N,
        ("N", "B"),
        lambda N, B: 0.33 * B <= N <= 0.47 * B,
        "the neck does not fit the bust",
        "Measure it again.",
    ),
)

_ABSURD_CM = {"B": 60.0, "H": 60.0, "W": 45.0, "HT": 120.0}
_ABSURD_IN = {"B": 62.0, "H": 65.0, "HT": 80.0}
_DOUBT_BEYOND = 0.15
"""Outside the usual by a further 15 % of the limit is a fault (measures §3)."""


def check_body(body: Body) -> tuple[Finding, ...]:
    """Every rule on the measures that the body has, gravest first."""
    found = [*_swapped(body), *_ranges(body), *_rules(body), *_sides(body)]
    order = (_E, _W, _N)
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
                _E,
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
        if low <= v <= high:
            continue
        far = v < low * (1 - _DOUBT_BEYOND) or v > high * (1 + _DOUBT_BEYOND)
        span = (
            f"{low:g}° to {high:g}°"
            if m.kind == "angle"
            else f"{format_length(low, body.unit, body=True, unit_mark=False)} to "
            f"{format_length(high, body.unit, body=True)}"
        )
        yield Finding(
            "range",
            _E if far else _W,
            f"{_show(body, code)} is {'far ' if far else ''}outside the usual {span}.",
            code,
            "Measure it again.",
            {code: v},
        )


def _rules(body: Body) -> Iterator[Finding]:
    for t in _TESTS:
        if not all(n in body for n in t.needs):
            continue
        if t.right(*[body[n] for n in t.needs]):
            continue
        from_table = all(body.values[n].hand is Hand.SIZE_TABLE for n in t.needs)
        severity = _N if t.code == "R2" and from_table else t.severity
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
                _N,
                f"{measures()[code].name} ({code}) is {_text(body, code, a)} on the "
                f"left and {_text(body, code, b)} on the right.",
                code,
                "The draft needs separate left and right halves.",
                {"left": a, "right": b},
            )
