"""Numbers of a peplum, and how it clears the body (first garment 13, blocks G).

A peplum's girth grows evenly with the depth: by 2πf a centimetre when it is flared, not
at all when it is gathered. With w the stitched waist and f the share of a full circle,
r = w/(2πf) and hem = w + 2πf·L (exact). Lengths cm, angles degrees.
"""

import math
from collections.abc import Iterable
from dataclasses import replace

from clothwright.blocks import circle
from clothwright.features.wholes import below_waist
from clothwright.findings import Finding, Severity
from clothwright.rules import Kind, Numbers, RuleError, RuleTable

_SRC = "first garment 13"
_PLEATS = "transformations §10"

CLEAR = 2.0
"""Room between the peplum and the body, all round, cm (13.5)."""

PEPLUM = RuleTable("peplum")
FLARED = RuleTable("peplum from a segment of a circle")
GATHERED = RuleTable("gathered peplum")
AT_EDGE = RuleTable("peplum ends where the bodice ends")
TO_CENTRE = RuleTable("peplum runs on to the centre back")


def called(page: RuleTable, word: str) -> RuleTable:
    """A peplum's page of rules for what hangs there under another name."""
    rules = {
        key: replace(rule, name=rule.name.replace("peplum", word))
        for key, rule in page.rules.items()
    }
    return RuleTable(page.title.replace("peplum", word), rules)


# -- where the back ends ---------------------------------------------------------------
@AT_EDGE.rule(
    "wPB",
    "waist of the back peplum, half",
    source=f"{_SRC}.4",
    key="w_PB",
    formula="wB",
)
def _pb_edge(w_B: float) -> float:
    return w_B


@AT_EDGE.rule(
    "tl",
    "tail of the panel below the waist",
    source="first garment 11.2",
    key="tl",
    formula="as chosen",
)
def _tail(tail_full: float) -> float:
    return tail_full


@AT_EDGE.rule(
    "gap P",
    "gap between the peplum's back edges at the waist",
    source=f"{_SRC}.4",
    key="gap_P",
    formula="gap of the back",
)
def _gap_edge(gap: float) -> float:
    return gap


@TO_CENTRE.rule(
    "wPB",
    "waist of the back peplum, half",
    source=f"{_SRC}.4",
    key="w_PB",
    formula="wB + e2",
)
def _pb_centre(w_B: float, x_back: float) -> float:
    return w_B + x_back


@TO_CENTRE.rule(
    "tl",
    "tail of the panel below the waist",
    key="tl",
    source="first garment 11.2",
    formula="none: sewn in at the waist",
)
def _no_tail() -> float:
    return 0.0


@TO_CENTRE.rule(
    "gap P",
    "gap between the peplum's back edges at the waist",
    source=f"{_SRC}.4",
    key="gap_P",
    formula="none: the edges meet",
)
def _no_gap() -> float:
    return 0.0


# -- every peplum ----------------------------------------------------------------------
@PEPLUM.rule(
    "wP",
    "finished waist of the peplum, all round",
    source="first garment 12.5, 13.1",
    key="w_P",
    formula="2·(wF + wPB) − 2·ew",
)
def w_P(w_F: float, w_PB: float, ew: float) -> float:
    return 2 * (w_F + w_PB) - 2 * ew


@PEPLUM.rule(
    "room",
    "peplum at the high hip, all round",
    source=f"{_SRC}.5",
    formula="girth below the waist + flare·WHH",
)
def room(w_below: float, flare: float, WHH: float) -> float:
    return w_below + flare * WHH


# -- a segment of a circle -------------------------------------------------------------
@FLARED.rule(
    "by",
    "bias yield of the waist, all round",
    source=f"{_SRC}.1.1",
    formula="by full·f",
)
def by(by_full: float, f: float) -> float:
    return by_full * f


@FLARED.rule(
    "wc",
    "waist of the peplum as cut, all round",
    source=f"{_SRC}.1.1",
    formula="wP − by",
)
def wc(w_P: float, by: float) -> float:
    return w_P - by


@FLARED.rule(
    "r", "radius of the waist arc", source=f"{_SRC}.1.1, blocks G1", formula="wc/(2πf)"
)
def r(wc: float, f: float) -> float:
    radius = circle.radius(wc, f)
    if radius < 2:
        raise RuleError(
            f"the arc of the waist has a radius of only {radius:.1f} cm: "
            "choose a smaller share of a circle"
        )
    return radius


@FLARED.rule("r + L", "radius of the hem arc", source=f"{_SRC}.1.1", key="r_hem")
def _r_hem(r: float, L: float) -> float:
    return r + L


@FLARED.rule(
    "hem",
    "hem of the peplum, all round",
    source=f"{_SRC}.1.1, blocks G2",
    formula="wc + 2πf·L",
)
def hem(wc: float, f: float, L: float) -> float:
    return circle.hem(wc, f, L)


MOST_HALF = 170.0
"""A half front of more degrees than this leaves no room for its seam beside the
fold (exact at 180°)."""


@FLARED.rule(
    "φF",
    "angle of the front peplum, half",
    kind=Kind.ANGLE,
    source=f"{_SRC}.1.2",
    key="phi_F",
    formula="180°·f·wF/(wF + wPB)",
)
def _phi_front(f: float, w_F: float, w_PB: float) -> float:
    angle = 180 * f * w_F / (w_F + w_PB)
    if angle > MOST_HALF:
        raise RuleError(
            f"the front would fill {2 * angle:.0f}° of a circle and lie over itself on "
            "the fold: choose a smaller share of a circle"
        )
    return angle


@FLARED.rule(
    "φB",
    "angle of the back peplum, half",
    kind=Kind.ANGLE,
    source=f"{_SRC}.1.2",
    key="phi_B",
    formula="180°·f·wPB/(wF + wPB)",
)
def _phi_back(f: float, w_F: float, w_PB: float) -> float:
    return 180 * f * w_PB / (w_F + w_PB)


@FLARED.rule(
    "wP below",
    "girth of the peplum just below the waist",
    source=f"{_SRC}.5",
    key="w_below",
    formula="wP",
)
def _below_flared(w_P: float) -> float:
    return w_P


@FLARED.rule(
    "flare",
    "what the peplum gains all round, share of its depth",
    kind=Kind.RATIO,
    source=f"{_SRC}.5, blocks G2",
    formula="2πf",
)
def flare(f: float) -> float:
    return 2 * math.pi * f


# -- in sunburst pleats ----------------------------------------------------------------
SUNBURST = RuleTable(
    "peplum in sunburst pleats",
    {k: FLARED.rules[k] for k in ("r", "r_hem", "hem", "w_below", "flare")},
)


@SUNBURST.rule(
    "wc",
    "waist of the peplum as its pleats lie, all round",
    source=_PLEATS,
    key="wc",
    formula="wP: pleats do not yield",
)
def _wc_pleated(w_P: float) -> float:
    return w_P


def _pleated_angle(symbol: str, half: str, own: str, other: str) -> None:
    """The angle of a half in the cloth."""

    @SUNBURST.rule(
        f"φ{symbol}",
        f"angle of the {half} peplum in the cloth, half",
        kind=Kind.ANGLE,
        source=_PLEATS,
        key=f"phi_{symbol}",
        formula=f"180°·f·pr·{own.replace('_', '')}/(wF + wPB)",
        needs=("f", "pr", own, other),
    )
    def _angle(f: float, pr: float, w: float, rest: float) -> float:
        angle = 180 * f * pr * w / (w + rest)
        if angle > MOST_HALF:
            raise RuleError(
                f"the {half} would fill {2 * angle:.0f}° of a circle in the cloth and "
                "lie over itself: choose a smaller share of a circle (f) or pleating "
                "ratio (pr)"
            )
        return angle


_pleated_angle("F", "front", "w_F", "w_PB")
_pleated_angle("B", "back", "w_PB", "w_F")


# -- gathered --------------------------------------------------------------------------
@GATHERED.rule(
    "wP below",
    "girth of the peplum just below the waist",
    source=f"{_SRC}.3, blocks G10",
    key="w_below",
    formula="g·2·(wF + wPB)",
)
def _below_gathered(g: float, w_F: float, w_PB: float) -> float:
    return g * 2 * (w_F + w_PB)


@GATHERED.rule(
    "flare",
    "what the peplum gains all round, share of its depth",
    kind=Kind.RATIO,
    source=f"{_SRC}.3",
    key="flare",
    formula="none: straight pieces",
)
def _no_flare() -> float:
    return 0.0


@GATHERED.rule(
    "hem",
    "hem of the peplum, all round",
    source=f"{_SRC}.3",
    key="hem",
    formula="girth below the waist",
)
def _hem_gathered(w_below: float) -> float:
    return w_below


# -- over the body ---------------------------------------------------------------------
def girth_at(n: Numbers, y: float) -> float:
    """Girth of the peplum `y` cm below the waist, all round, the gap of an open back
    counted (13.5, corrections 3.10)."""
    return n.w_below + n.gap_P + n.flare * (y - below_waist(n))


def body_at(n: Numbers, y: float) -> float:
    """Girth of the body `y` cm below the waist: from W straight to HH at the high hip,
    on to H at the hip, H below it (13.5)."""
    if y <= n.WHH:
        return n.W + (n.HH - n.W) * y / n.WHH
    if y >= n.WH:
        return n.H
    return n.HH + (n.H - n.HH) * (y - n.WHH) / (n.WH - n.WHH)


def clearance(
    n: Numbers, *, gathered: bool, called: str = "peplum"
) -> Iterable[Finding]:
    """Whether the peplum, or what it is called, clears the body with its room (13.5).

    Both girths run straight between waist, high hip, hip and hem, so these levels tell
    all. At the waist itself the waist's own ease rules.
    """
    top = below_waist(n)
    foot = top + n.L
    levels = [y for y in (n.WHH, n.WH, foot) if top < y <= foot]
    y = max(levels, key=lambda y: body_at(n, y) - girth_at(n, y))
    wide, body = girth_at(n, y), body_at(n, y)
    if wide >= body + CLEAR - 1e-9:
        return
    if gathered:
        needed = (body + CLEAR - n.gap_P) / (n.w_below / n.g)
        to_do = f"Gather at least {_up(needed)} times the waist, or shorten it."
    else:
        needed = max(
            (body_at(n, y) + CLEAR - n.w_below - n.gap_P) / (2 * math.pi * (y - top))
            for y in levels
        )
        to_do = f"Take at least {_up(needed)} of a circle, or shorten it."
    yield Finding(
        "Q2",
        Severity.WARN,
        f"The {called} does not clear the body {y:.0f} cm below the waist: it is "
        f"{wide:.1f} cm round there, the body {body:.1f} cm; {CLEAR:.0f} cm of room is "
        "wanted.",
        "g" if gathered else "f",
        to_do,
        {"peplum": wide, "body": body, "y": y, "needed": needed},
    )


def _up(share: float) -> str:
    """A ratio in hundredths, rounded up so that it suffices."""
    return f"{math.ceil(share * 100 - 1e-6) / 100:g}"
