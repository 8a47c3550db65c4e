"""Rules and lines of a wrap front (transformations 1.8, 2)."""

from collections.abc import Iterator

from clothwright.blocks.bodice_curves import inward_front
from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Path, Point, Vector, direction, distance
from clothwright.features.necks.neck_contour import drawn_in, neck_end
from clothwright.features.necks.neck_findings import contoured
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers, RuleTable

SRC = "transformations 2"

CROSSING = 8.0, 15.0
"""Usual crossing of the centre at the waist, cm."""

DRAWN_IN = 1.5, 2.5
"""Usual contour of the edge, each half, cm (1.8)."""

WRAP = RuleTable("wrap front")
_rule = WRAP.rule


@_rule(
    "wx",
    "crossing of the centre front at the waist",
    key="wx",
    source=SRC,
    formula="to the waist dart of the other side, kept between 8 cm and 15 cm",
    low=6.0,
    high=16.0,
)
def _crossing(X: float, x_BP: float, fd: float) -> float:
    return clip(X - x_BP - fd / 2, *CROSSING)


@_rule(
    "dw",
    "width of the neck beyond the standard, along the shoulder",
    key="dw",
    source=SRC,
    formula="1 cm",
)
def _width() -> float:
    return 1.0


@_rule(
    "strip w",
    "facing beside the edge at the waist",
    key="strip_w",
    source="transformations 6",
    formula="7 cm, at most the crossing less 1 cm",
    low=3.0,
    high=12.0,
)
def _strip(wx: float) -> float:
    return min(7.0, wx - 1.0)


_PLACE = ("X", "x_hf", "y_hf", "S", "sigma_f", "sigma_f_new", "Lr", "tau", "wx", "yW")


def _upper(
    X: float,
    x_hf: float,
    y_hf: float,
    S: float,
    sigma_f: float,
    sigma_f_new: float,
    Lr: float,
    tau: float,
    wx: float,
    yW: float,
) -> Path:
    p = neck_end(x_hf, y_hf, S, sigma_f, sigma_f_new, Lr)
    start = inward_front(sigma_f_new - tau)
    c = crossed(p, start, X, Point(X + wx, yW))
    return upper_edge(p, c, start)


@_rule(
    "Df",
    "depth of the front neck, where the edge crosses the centre",
    key="Df",
    source=SRC,
    needs=_PLACE,
    formula="on the line from the shoulder to the end of the edge at the waist",
)
def _depth(*place: float) -> float:
    return _upper(*place).end.y - place[2]


drawn_in(WRAP, DRAWN_IN[0], _PLACE, _upper, DRAWN_IN[1])


def upper_edge(p: Point, c: Point, start: Vector) -> Path:
    """The edge, shoulder to centre: square to the shoulder, then straight."""
    m = p + start * (0.33 * distance(p, c))
    return Path.cubic(p, m, c - direction(m, c) * (0.40 * distance(p, c)), c)


def crossed(p: Point, start: Vector, centre: float, foot: Point) -> Point:
    """Where the edge from `p` crosses the centre line, so that it runs straight on to
    its foot at the waist."""
    y = p.y + (foot.y - p.y) * (centre - p.x) / (foot.x - p.x)
    for _ in range(20):
        m = p + start * (0.33 * distance(p, Point(centre, y)))
        y = m.y + (foot.y - m.y) * (centre - m.x) / (foot.x - m.x)
    return Point(centre, y)


def wrap_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """What a wrap is asked besides its seams."""
    low = sheet.points["C"].y - n.y_BP
    if low > -4.0:
        yield Finding(
            "N1",
            Severity.REFUSE if low > 2.0 else Severity.WARN,
            "The two edges of the wrap cross "
            f"{'below the bust points' if low > 2.0 else 'near the bust points'}.",
            "wx",
            "Let them cross the centre further (wx) at the waist.",
            {"low": low},
        )
    if n.Lr < 3.0:
        yield Finding(
            "N2",
            Severity.WARN,
            "Less than 3 cm is left of the shoulder.",
            "dw",
            "Make the neck narrower.",
            {"Lr": n.Lr},
        )
    if n.cn > 0:
        yield from contoured("front", n.cn, DRAWN_IN)
