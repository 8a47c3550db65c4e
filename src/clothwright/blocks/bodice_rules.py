"""Numbers of the fitted bodice block: waist darts, side bust dart, half body.

Lengths in cm, angles in degrees; x runs from the centre back to the centre front,
y down from the nape. The rules follow common flat-cutting practice as set down in
our own notes on blocks (A1 to A4, with their corrections); each names its paragraph.
"""

import math

from clothwright.blocks.bodice_curves import back_neck_curve, front_neck_curve
from clothwright.blocks.trial import by_trial
from clothwright.rules import Kind, RuleError, RuleTable

BODICE = RuleTable("bodice block")
MEASURED_ARCS = RuleTable("front and back share from measured arcs")
CUP_SHARE = RuleTable("front and back share from the cup")

_rule = BODICE.rule
_A1, _A2, _A3, _A4 = "blocks A1", "blocks A2", "blocks A3", "blocks A4"


def clip(v: float, low: float, high: float) -> float:
    """`v` kept between two bounds."""
    return max(low, min(high, v))


# -- A1: derived values ---------------------------------------------------------------
@_rule("half", "half bust with ease", source=f"{_A1}.1", formula="(B + Eb)/2")
def half(B: float, Eb: float) -> float:
    return (B + Eb) / 2


@CUP_SHARE.rule(
    "s",
    "share that the front takes from the back",
    source=f"{_A1}.2, corrections C8",
    formula="0.25·c − 0.6 cm, kept between nought and 4 cm",
)
def s(c: float) -> float:
    return clip(0.25 * c - 0.6, 0.0, 4.0)


@MEASURED_ARCS.rule(
    "s",
    "share that the front takes from the back",
    key="s",
    source=f"{_A1}.2, corrections A21",
    formula="(FA2 − BA)/2, kept between nought and 4 cm",
)
def _arcs(BA: float, FA2: float) -> float:
    return clip((FA2 - BA) / 2, 0.0, 4.0)


@_rule("xs", "back half width", source=f"{_A1}.3", formula="half/2 − s")
def xs(half: float, s: float) -> float:
    return half / 2 - s


@_rule("half − xs", "front half width", source=f"{_A1}.3", formula="half − xs")
def front_half(half: float, xs: float) -> float:
    return half - xs


@_rule("yW", "level of the waist", source=f"{_A1}.4", formula="NWB")
def yW(NWB: float) -> float:
    return NWB


@_rule("X", "line of the centre front", source=f"{_A1}.4", formula="half")
def X(half: float) -> float:
    return half


@_rule(
    "bw",
    "back neck width",
    source=f"{_A1}.6",
    formula="N/5 − 0.3 cm",
    low=4.5,
    high=11.0,
)
def bw(N: float) -> float:
    return N / 5 - 0.3


@_rule(
    "nr",
    "rise of the back neck",
    source=f"{_A1}.6",
    formula="0.28·bw, kept between 1.7 cm and 2.5 cm",
    low=0.8,
    high=4.0,
)
def nr(bw: float) -> float:
    return clip(0.28 * bw, 1.7, 2.5)


@_rule(
    "σb",
    "slope of the back shoulder",
    kind=Kind.ANGLE,
    source=f"{_A1}.7",
    formula="SS − 2°",
)
def sigma_b(SS: float) -> float:
    return SS - 2.0


@_rule(
    "σf",
    "slope of the front shoulder",
    kind=Kind.ANGLE,
    source=f"{_A1}.7",
    formula="SS + 2°",
)
def sigma_f(SS: float) -> float:
    return SS + 2.0


@_rule("xb", "half across back with ease", source=f"{_A1}.8", formula="XB/2 + 0.6 cm")
def xb(XB: float) -> float:
    return XB / 2 + 0.6


@_rule("xfw", "half across front with ease", source=f"{_A1}.8", formula="XC/2 + 0.3 cm")
def xfw(XC: float) -> float:
    return XC / 2 + 0.3


# -- A4: shaping of the waist --------------------------------------------------------
def waist_shares(sup: float) -> tuple[float, float, float]:
    """(side intake each, back dart, front dart) that close the waist exactly, cm."""
    a = clip(0.14 * sup, -3.0, 3.5)
    bd = clip(0.32 * sup, 0.0, 4.5)
    bd = 0.0 if bd < 1.2 else bd
    fd = sup - 2 * a - bd
    if fd > 5:
        t = max(0.0, min(3.0 - a, (fd - 5) / 2))
        a, fd = a + t, fd - 2 * t
    if fd < 1.2:
        a, fd = a + fd / 2, 0.0
    return a, bd, fd


@_rule(
    "sup",
    "what the waist takes in on the half",
    source=f"{_A1}.9",
    formula="half − (W + Ew)/2",
)
def sup(half: float, W: float, Ew: float) -> float:
    return half - (W + Ew) / 2


@_rule(
    "a",
    "intake of each side seam at the waist",
    source=f"{_A4}, corrections C13",
    formula="0.14 of the intake, and what the front dart cannot take",
    low=-8.0,
    high=4.0,
)
def a(sup: float) -> float:
    return waist_shares(sup)[0]


@_rule(
    "bd",
    "back waist dart",
    source=_A4,
    formula="0.32 of the intake, at most 4.5 cm, none under 1.2 cm",
    low=0.0,
    high=6.0,
)
def bd(sup: float) -> float:
    return waist_shares(sup)[1]


@_rule(
    "fd",
    "front waist dart",
    source=_A4,
    formula="what sides and back dart leave of the intake",
)
def fd(sup: float, a: float, bd: float) -> float:
    rest = sup - 2 * a - bd
    if rest < -0.01:
        raise RuleError(
            "the sides and the back dart take in more than the waist asks for: "
            "make a or bd smaller"
        )
    return max(0.0, rest)


# -- A2: back -------------------------------------------------------------------------
@_rule("Ls", "back shoulder as drafted", source=f"{_A2}.3", formula="SH + sd + se")
def Ls(SH: float, sd: float, se: float) -> float:
    return SH + sd + se


@_rule(
    "y(tb)",
    "level of the back shoulder tip",
    source=f"{_A2}.4",
    formula="Ls·sin σb − nr",
)
def y_tb(nr: float, Ls: float, sigma_b: float) -> float:
    return Ls * math.sin(math.radians(sigma_b)) - nr


@_rule(
    "sw",
    "centre back raised at the waist",
    key="sway",
    source="cutting and costing 6",
    formula="none: the waist is level",
    low=0.0,
    high=2.5,
)
def sway() -> float:
    return 0.0


@_rule(
    "swd",
    "back waist dart raised at the waist",
    key="sway_dart",
    source="cutting and costing 6",
    formula="from sw at the centre back to nothing at the side",
)
def sway_dart(sway: float, xd: float, xs: float, a: float) -> float:
    return sway * (1 - xd / (xs - a))


# -- A3: front -------------------------------------------------------------------------
@_rule("fw", "front neck width", source=f"{_A3}.1", formula="bw − 0.3 cm")
def fw(bw: float) -> float:
    return bw - 0.3


@_rule("x(BP)", "bust point, across", source=f"{_A3}.1", formula="X − BPS/2")
def x_BP(X: float, BPS: float) -> float:
    return X - BPS / 2


@_rule(
    "x(Pf)",
    "centre of the front waist dart, across",
    source=f"{_A3}.12",
    formula="xBP",
    key="x_Pf",
)
def x_Pf(x_BP: float) -> float:
    return x_BP


@_rule(
    "yBP",
    "level of the bust point",
    source=f"{_A3}.1",
    formula="yW − (NFW − NBP)",
    low=12.0,
    high=40.0,
)
def y_BP(yW: float, NFW: float, NBP: float) -> float:
    return yW - (NFW - NBP)


@_rule(
    "y(hf)",
    "level of the front shoulder neck point",
    source=f"{_A3}.2",
    formula="up from BP so that neck to bust point measures NBP",
)
def y_hf(y_BP: float, NBP: float, BPS: float, fw: float) -> float:
    rest = NBP**2 - (BPS / 2 - fw) ** 2
    if rest <= 0:
        raise RuleError(
            "neck to bust point (NBP) is too short for this bust span (BPS): "
            "measure both again"
        )
    return y_BP - math.sqrt(rest)


@_rule("x(hf)", "front shoulder neck point, across", source=f"{_A3}.2")
def x_hf(X: float, fw: float) -> float:
    return X - fw


@_rule(
    "dep",
    "front neck depth",
    source=f"{_A3}.3",
    formula="found so that both neck curves add up to N/2 + 0.25 cm",
    low=4.0,
    high=14.0,
)
def dep(N: float, bw: float, nr: float, fw: float, sigma_f: float) -> float:
    aim = N / 2 + 0.25 - back_neck_curve(bw, nr).length

    def over(depth: float) -> float:
        return front_neck_curve(0, 0, fw, depth, sigma_f).length - aim

    depth = by_trial(over, 2.0, 20.0)
    if depth is None:
        raise RuleError(
            "no front neck depth fits this neck girth (N): measure the neck again"
        )
    return depth


@_rule("x(tf)", "front shoulder tip, across", source=f"{_A3}.4")
def x_tf(x_hf: float, SH: float, sigma_f: float) -> float:
    return x_hf - SH * math.cos(math.radians(sigma_f))


@_rule("y(tf)", "level of the front shoulder tip", source=f"{_A3}.4")
def y_tf(y_hf: float, SH: float, sigma_f: float) -> float:
    return y_hf + SH * math.sin(math.radians(sigma_f))


@_rule(
    "dl",
    "rise of the front underarm (bust dart)",
    source=f"{_A3}.6",
    formula="NFW − (NWB + nr) + 2.3 cm, kept between 1.2 cm and 8.5 cm",
    low=0.0,
    high=9.0,
)
def dl(NFW: float, NWB: float, nr: float) -> float:
    return clip(NFW - (NWB + nr) + 2.3, 1.2, 8.5)


@_rule(
    "θ",
    "angle of the bust dart",
    kind=Kind.ANGLE,
    source=f"{_A3}.7, corrections A2",
    formula="the smallest turn about BP that raises the underarm by dl",
)
def theta(xs: float, yB: float, x_BP: float, y_BP: float, dl: float) -> float:
    dx, dy = xs - x_BP, yB - y_BP
    r, aim = math.hypot(dx, dy), dy - dl
    if abs(aim) <= r:
        base, half_angle = math.atan2(dx, dy), math.acos(aim / r)
        found = sorted(
            math.degrees(v) % 360 for v in (base + half_angle, base - half_angle)
        )
        for v in found:
            if 0 < v < 40:
                return v
    raise RuleError(
        "the bust dart cannot be drafted: the bust point (NBP) lies at or above the "
        "armhole, or the front length (NFW) is far too long; measure NBP and NFW again"
    )


@_rule(
    "yd",
    "level of the side dart",
    source=f"{_A3}.8, corrections A5",
    formula="yBP + 1.5 cm, within the side seam",
)
def yd(y_BP: float, yB: float, yW: float) -> float:
    return min(max(y_BP + 1.5, yB + 4.0), yW - 6.0)
