"""Numbers of a strapless bodice, and what is asked of it (transformations 1.8)."""

import math
from collections.abc import Iterator

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import wedge_angle
from clothwright.features.chains import BACK_LINE, FRONT_LINE
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Kind, Numbers, RuleTable

SRC = "transformations 1.8"
CUT = "cutting and costing 3"

COVER = 1.5
"""The top edge keeps so far outside the cup, of radius BUB, cm (transformations 3)."""

LEAST_OVER = 3.0
"""Least that the dip in front may stand above the bust points, cm (2, sweetheart)."""

MOST_AT_SEAM = 1.2
"""Most that is taken in at the top of one seam, cm (1.8)."""

LOOSE = 1.0
"""A top edge this much wider than it should be, all round, stands off, cm (our own
choice: half of what may be taken in at one seam on both sides)."""

BELOW_TOP = 4.0
"""The back waist dart ends so far below the upper edge of the back, cm (our own choice,
as in a halter: the facing passes above it)."""

STRAPLESS = RuleTable("strapless bodice")
_rule = STRAPLESS.rule


@_rule(
    "ht",
    "top edge above the bust point",
    key="ht",
    source="transformations 3",
    formula="BUB + 1.5 cm: the cup is covered",
    low=4.0,
    high=14.0,
)
def _above(BUB: float) -> float:
    return clip(BUB + COVER, 4.0, 14.0)


@_rule(
    "ur",
    "top edge above the underarm of the block, along the side",
    key="ur",
    source="blocks A1.5",
    formula="(yB − AS + us)·(side of the block)/(yW − yB)",
)
def _raised(yB: float, AS: float, us: float, yW: float, a: float) -> float:
    return (yB - AS + us) * math.hypot(a, yW - yB) / (yW - yB)


@_rule(
    "y(Cb)",
    "top edge at the centre back",
    key="y_top",
    source="transformations 2",
    formula="yB + bt",
)
def _back(yB: float, bt: float) -> float:
    return yB + bt


@_rule(
    "y(Pd)",
    "level of the point of the back waist dart",
    key="y_Pd",
    source="transformations 2",
    formula=f"{BELOW_TOP:g} cm below the top edge",
)
def _dart(y_top: float) -> float:
    return y_top + BELOW_TOP


@_rule(
    "cn",
    "contour above the bust, sent to the bust dart",
    key="cn",
    source=SRC,
    formula="0.9 cm·(0.6 + 0.1·c), kept between 0.6 cm and 1.2 cm",
    low=0.0,
    high=2.0,
)
def _contour(c: float) -> float:
    return clip(0.9 * (0.6 + 0.1 * c), 0.6, 1.2)


@_rule(
    "φa′",
    "turn of the contour above the bust",
    kind=Kind.ANGLE,
    key="phi_above",
    source=SRC,
    formula="2·asin(cn/(2·ht))",
)
def _turn_above(cn: float, ht: float) -> float:
    return wedge_angle(cn, ht)


@_rule(
    "|BP Mc|",
    "bust point to the wedge between the busts",
    key="reach_between",
    source=SRC,
    formula="a third of the way to the centre front, a quarter of the dip below the "
    "top",
)
def _reach(X: float, x_BP: float, ht: float, dip: float) -> float:
    return math.hypot((X - x_BP) / 3, ht - dip / 4)


@_rule(
    "φc",
    "turn of the contour between the busts",
    kind=Kind.ANGLE,
    key="phi_between",
    source=SRC,
    formula="2·asin(cm/(2·|BP Mc|))",
)
def _turn_between(cm: float, reach_between: float) -> float:
    return wedge_angle(cm, reach_between)


@_rule(
    "φn",
    "turn of both wedges, by which the bust dart opens",
    kind=Kind.ANGLE,
    key="phi_n",
    source=SRC,
    formula="φa′ + φc",
)
def _turn(phi_above: float, phi_between: float) -> float:
    return phi_above + phi_between


@_rule(
    "stay",
    "waist stay as it is cut",
    key="stay",
    source=CUT,
    formula="W − 0.5 cm, and 4 cm to lap",
)
def _stay(W: float) -> float:
    return W - 0.5 + 4.0


@_rule(
    "HB top",
    "half the top edge, as it should be",
    key="top_half",
    source=SRC,
    formula="HB/2, less the firmness",
)
def _half(HB: float, fm: float) -> float:
    return HB / 2 * (1 - fm)


def strapless_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """The top edge covers the bust, is no wider than the body there, and its panels
    and sides meet (these last are walked as seams and joints)."""
    dip = n.ht - n.dip
    if dip < LEAST_OVER - 1e-6:
        yield Finding(
            "TE1",
            Severity.REFUSE if dip < 1.0 else Severity.WARN,
            f"The top edge comes within {max(dip, 0.0):.1f} cm of the bust points at "
            f"the centre front; {LEAST_OVER:g} cm must stay above them.",
            "dip",
            "Make the dip less deep, or the top edge (ht) higher.",
            {"above": dip},
        )
    if n.ht < n.BUB - 1e-6:
        yield Finding(
            "TE2",
            Severity.WARN,
            f"The top edge stands {n.ht:.1f} cm above the bust points: the cup, of "
            f"{n.BUB:.1f} cm, is not covered.",
            "ht",
            "Raise the top edge.",
            {"ht": n.ht, "BUB": n.BUB},
        )
    half = half_top(sheet)
    over = 2 * (half - n.HB / 2)
    if over > LOOSE:
        yield Finding(
            "TE3",
            Severity.WARN,
            f"The top edge is {2 * half:.1f} cm round, laid level, {over:.1f} cm more "
            f"than the body there (HB {n.HB:.1f} cm): it will stand off.",
            "cn",
            "Fold more out above the bust (cn), draft with less ease (Eb), or draw a "
            "cord through the edge; measure HB again.",
            {"half": half, "HB": n.HB},
        )
    least = n.HB / 2 * 0.96
    if half < least:
        yield Finding(
            "TE4",
            Severity.WARN,
            f"The top edge is {2 * half:.1f} cm round, laid level; the body there (HB) "
            f"is {n.HB:.1f} cm: it will cut in.",
            "cn",
            "Fold less out above the bust (cn, cm), or draft with more ease (Eb).",
            {"half": half, "HB": n.HB},
        )
    up = sheet.lines["top side back"].length
    if up < 8.0:
        yield Finding(
            "TE5",
            Severity.WARN,
            f"The side is only {up:.1f} cm high: little holds the bodice there.",
            "us",
            "Raise the top edge at the side (us), or measure AS and NWB again.",
            {"side": up},
        )
    if n.bt > 7.0 - 1e-6 or n.y_top > n.yW - 8.0:
        yield Finding(
            "TE6",
            Severity.WARN,
            "The back is cut very low: little holds the bodice there.",
            "bt",
            "Raise the top edge at the centre back.",
            {"bt": n.bt},
        )
    if n.Eb > 2.0:
        yield Finding(
            "TE7",
            Severity.WARN,
            f"The bust has {n.Eb:.1f} cm of ease; a bodice without straps is held up "
            "by its fit, with none.",
            "Eb",
            "Leave the ease at the bust out.",
            {"Eb": n.Eb},
        )


def half_top(sheet: Sheet) -> float:
    """Half the top edge, laid level, cm: how far it reaches across front and back with
    their panels laid together."""
    front, back = sheet.lines[FRONT_LINE], sheet.lines[BACK_LINE]
    return (front.end.x - front.start.x) + (back.end.x - back.start.x)
