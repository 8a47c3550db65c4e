"""Numbers of a cowl, and what is asked of it (transformations 2)."""

import math
from collections.abc import Iterator
from enum import Enum

from clothwright.curves import Point, distance, rotate
from clothwright.features.base import Number
from clothwright.features.necks.neck_contour import neck_end
from clothwright.features.necks.neck_findings import over_head
from clothwright.features.roles import Role
from clothwright.findings import Finding, Severity
from clothwright.paper import Piece, Sheet
from clothwright.rules import Kind, Numbers, RuleTable

SRC = "transformations 2"

MOST_TURNED = 15.0
"""The centre line is turned out by no more than this, degrees: the waist, square to it,
would come out too round (our own choice)."""

_LEFT = 4.0
"""Of a bust dart no less than this is left at the side, degrees (our own choice: a dart
narrower at its mouth than 1 cm)."""


class Folds(Enum):
    """How many folds the drape falls in."""

    ONE = "one"
    TWO = "two"
    THREE = "three"

    @property
    def count(self) -> int:
        return 1 + list(Folds).index(self)


def _counted(folds: Folds) -> RuleTable:
    page = RuleTable(f"cowl of {folds.value} fold{'' if folds is Folds.ONE else 's'}")

    @page.rule(
        "folds",
        "folds of the cowl",
        source="the order",
        key="folds",
        kind=Kind.COUNT,
        formula="chosen",
    )
    def _count() -> float:
        return folds.count

    drop = 6.0 if folds is Folds.THREE else 8.0

    @page.rule(
        "drop",
        "drop of each fold of the cowl",
        source=SRC,
        key="drop",
        formula=f"{drop:g} cm",
        low=4.0,
        high=12.0,
    )
    def _drop() -> float:
        return drop

    return page


COUNTED = {folds: _counted(folds) for folds in Folds}

COWL = RuleTable("cowl")
_rule = COWL.rule


DW_USUAL = Number("dw_usual", "dw usual", "usual width of a cowl", SRC, 4.0, 1.5)

_WITH_FACING = 6.2
"""Of the shoulder so much is left, cm: shoulder and facing part at the neck, and the
allowances of both take up to 3 cm there (our own trial)."""


@_rule(
    "dw",
    "width of the neck beyond the standard, along the shoulder",
    key="dw",
    source=SRC,
    formula=f"dw usual, or S − {_WITH_FACING:g} cm on a short shoulder",
    low=0.0,
    high=9.0,
)
def _width(dw_usual: float, S: float) -> float:
    return min(dw_usual, max(0.0, S - _WITH_FACING))


@_rule(
    "Df",
    "depth of the front neck, before the cowl is drawn",
    key="Df",
    source=SRC,
    formula="dep + 2 cm",
)
def _depth(dep: float) -> float:
    return dep + 2.0


@_rule(
    "cd",
    "depth of the drape at rest, below the ends of the neck",
    key="cd",
    source=SRC,
    formula="folds·drop of a fold",
    low=5.0,
    high=32.0,
)
def _drape(folds: float, drop: float) -> float:
    return folds * drop


_PLACE = ("x_hf", "y_hf", "S", "sigma_f", "sigma_f_new", "Lr", "X", "x_BP", "y_BP")


@_rule(
    "span/2",
    "centre front to the neck end of the shoulder, level",
    key="half_span",
    source=SRC,
    needs=(*_PLACE[:7],),
)
def _span(*place: float) -> float:
    return place[6] - neck_end(*place[:6]).x


@_rule(
    "ℓ/2 wanted",
    "half the edge that sags so far over the span",
    key="ell_wanted",
    source=SRC,
    formula="√(cd² + (span/2)²)",
)
def _wanted(cd: float, half_span: float) -> float:
    return math.hypot(cd, half_span)


@_rule(
    "θc",
    "part of the bust dart that goes into the cowl",
    kind=Kind.ANGLE,
    key="theta_c",
    source=SRC,
    needs=("ell_wanted", "theta", *_PLACE),
    formula="what brings the shoulder so far from the centre, at most θ; all of it "
    "where less than 4° would be left",
)
def _led(ell_wanted: float, theta: float, *place: float) -> float:
    p, bp = neck_end(*place[:6]), Point(place[7], place[8])
    v, reach = p - bp, distance(p, bp)
    k = (place[6] - ell_wanted - bp.x) / reach
    if k < -1.0:
        return theta
    wanted = math.degrees(math.atan2(v[1], v[0]) + math.acos(k))
    return theta if wanted > theta - _LEFT else max(0.0, wanted)


@_rule(
    "ℓ/2",
    "half the edge of the cowl",
    key="ell",
    source=SRC,
    needs=("ell_wanted", "theta_c", *_PLACE),
    formula="as wanted, or what the bust dart gives where that is more",
)
def _edge(ell_wanted: float, theta_c: float, *place: float) -> float:
    p, bp = neck_end(*place[:6]), Point(place[7], place[8])
    return max(ell_wanted, place[6] - rotate(p, bp, -theta_c).x)


@_rule(
    "sag",
    "depth of the drape as it comes out",
    key="sag",
    source=SRC,
    formula="√((ℓ/2)² − (span/2)²)",
)
def _sag(ell: float, half_span: float) -> float:
    return math.sqrt(max(0.0, ell**2 - half_span**2))


def cowl_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """The drape hangs above the bust, the shoulder stays on, the head passes."""
    low = sheet.points["Nf"].y + n.sag - n.y_BP
    if low > -2.0:
        yield Finding(
            "N1",
            Severity.REFUSE if low > 4.0 else Severity.WARN,
            f"The cowl falls to {abs(low):.1f} cm {'below' if low > 0 else 'above'} "
            "the bust points.",
            "cd",
            "Take fewer folds, or let each drop less.",
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
    yield from _cut_on_shoulder(sheet.piece("F"))
    yield from over_head(n, sheet)


def _cut_on_shoulder(front: Piece) -> Iterator[Finding]:
    """Shoulder and cut-on facing part so far at the neck that both get allowances."""
    if not front.has("facing shoulder"):
        return
    parted = 360.0 - front.interior_angle("shoulder")
    long = front.edge("facing shoulder").length
    least = Role.SHOULDER.widest / math.tan(math.radians(parted / 2))
    if long < least:
        yield Finding(
            "N13",
            Severity.REFUSE,
            f"Shoulder and facing of the cowl part by {parted:.0f}° only at the neck: "
            f"their allowances take {least:.1f} cm there, and the facing is "
            f"{long:.1f} cm long at the shoulder.",
            "dw",
            "Make the neck narrower (dw), narrow the shoulder less, or take fewer "
            "folds, or let each (drop) drop less.",
            {"parted": parted, "least": least, "long": long},
        )
