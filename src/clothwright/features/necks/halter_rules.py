"""Numbers of a halter, and what is asked of it (transformations 1.8, 2)."""

import math
from collections.abc import Iterator

from clothwright.blocks.bodice_curves import (
    inward_front,
    outwards_front,
    side_square_front,
)
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    direction,
    distance,
    rotate,
    turned,
)
from clothwright.features.bodice.armhole import cover_findings
from clothwright.features.necks.neck_contour import drawn_in, neck_end
from clothwright.features.necks.neck_findings import contoured
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers, RuleTable

SRC = "transformations 2"

HALTER_BAND = "HN"
"""Code of the band behind the neck."""

CONTOUR = 1.0, 2.0
"""Usual contour of a cut-away armhole, cm (1.8)."""

BELOW_TOP = 4.0
"""The back waist dart ends so far below the upper edge of the back, cm (our own choice:
the facing passes above it)."""

HALTER = RuleTable("halter")
_rule = HALTER.rule


@_rule(
    "S",
    "finished shoulder: as far as the strap reaches",
    key="S",
    source=SRC,
    formula="dw + strap",
)
def _shoulder(dw: float, strap: float) -> float:
    return dw + strap


@_rule("ta", "tightening of the front armhole", source=SRC, formula="none: contoured")
def ta() -> float:
    return 0.0


@_rule(
    "Df",
    "depth of the front neck",
    key="Df",
    source=SRC,
    formula="dep + 8 cm",
    low=3.0,
    high=30.0,
)
def _depth(dep: float) -> float:
    return dep + 8.0


@_rule(
    "y(Cb)",
    "upper edge of the back at the centre back",
    key="y_top",
    source=SRC,
    formula="yB + bt",
)
def _top(yB: float, bt: float) -> float:
    return yB + bt


@_rule(
    "y(Pd)",
    "level of the point of the back waist dart",
    key="y_Pd",
    source=SRC,
    formula=f"{BELOW_TOP:g} cm below the upper edge of the back",
)
def _dart(y_top: float) -> float:
    return y_top + BELOW_TOP


BY_NECK = RuleTable("halter band by the neck")
BY_NN = RuleTable("halter band by the tape")


@BY_NECK.rule(
    "nh",
    "half the band behind the neck",
    key="nh",
    source=SRC,
    formula="nape to the middle of the strap, straight across the back",
    low=5.0,
    high=25.0,
)
def _by_neck(bw: float, nr: float, dw: float, strap: float, sigma_b: float) -> float:
    out, g = dw + strap / 2, math.radians(sigma_b)
    return math.hypot(bw + out * math.cos(g), out * math.sin(g) - nr)


_AT = ("x_hf", "y_hf", "sigma_f", "dw", "strap", "x_BP", "y_BP")


@BY_NN.rule(
    "nh",
    "half the band behind the neck",
    key="nh",
    source=SRC,
    needs=("NN", *_AT),
    formula="NN less what the front takes from the bust point to the strap",
    low=5.0,
    high=25.0,
)
def _by_tape(
    NN: float,
    x_hf: float,
    y_hf: float,
    sigma_f: float,
    dw: float,
    strap: float,
    x_BP: float,
    y_BP: float,
) -> float:
    middle = Point(x_hf, y_hf) + outwards_front(sigma_f) * (dw + strap / 2)
    return NN - distance(middle, Point(x_BP, y_BP))


def cut_away(g: Point, square: Vector, tip: Point, inward: Vector) -> Path:
    """The armhole from the underarm, square to the side, to the strap, square to its
    end."""
    across, up = abs(tip.x - g.x), abs(g.y - tip.y)
    h, k = 0.55 * across, 0.42 * up
    return Path((Cubic(g, g + square * h, tip + inward * k, tip),))


_PLACE = (
    *("x_hf", "y_hf", "S", "sigma_f", "sigma_f_new", "ur", "xs", "a", "yB", "yW"),
    *("theta", "x_BP", "y_BP"),
)


def _edge(
    x_hf: float,
    y_hf: float,
    S: float,
    sigma_f: float,
    sigma_f_new: float,
    ur: float,
    xs: float,
    a: float,
    yB: float,
    yW: float,
    theta: float,
    x_BP: float,
    y_BP: float,
) -> Path:
    g, wf, bp = Point(xs, yB), Point(xs + a, yW), Point(x_BP, y_BP)
    raised = g - direction(g, wf) * ur
    return cut_away(
        rotate(raised, bp, theta),
        turned(side_square_front(g, wf), theta),
        neck_end(x_hf, y_hf, S, sigma_f, sigma_f_new, 0.0),
        inward_front(sigma_f_new),
    ).reversed()


drawn_in(HALTER, 1.2, _PLACE, _edge)


def halter_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """Cup and brassiere are covered, and the edge is drawn in as is usual."""
    more = "Make the strap wider, or raise the underarm."
    yield from cover_findings(n, sheet, "strap", more)
    low = sheet.lines["neck front"].bounds()[3] - n.y_BP
    if low > -4.0:
        yield Finding(
            "N1",
            Severity.REFUSE if low > 2.0 else Severity.WARN,
            "The front neck reaches below the bust points."
            if low > 2.0
            else "The front neck comes near the line of the brassiere.",
            "Df",
            "Make it (Df) less deep.",
            {"Df": n.Df},
        )
    if n.bt > 4.0:
        yield Finding(
            "N6",
            Severity.WARN,
            "The back reaches below the line of the brassiere.",
            "bt",
            "Raise its upper edge, or say so to the client.",
            {"bt": n.bt},
        )
    if n.cn > 0:
        yield from contoured("front", n.cn, CONTOUR)
