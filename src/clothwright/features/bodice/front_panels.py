"""The front divided over the bust point, from the armhole or the shoulder.

A cut from the edge over the bust point down the waist dart, then the side dart is
taped shut on the side panel (first garment 5 and 7); the side panel's edge is rounded
over the bust and eased there.
"""

import math
from collections.abc import Iterable

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    distance,
    rotate,
    turn,
    wedge_angle,
)
from clothwright.features.base import Number
from clothwright.features.bodice.opened_dart import dart_angle_of
from clothwright.features.bodice.panel_lines import (
    FRONT,
    UpperCurve,
    corner,
    divide,
    draw_line,
    rounded,
)
from clothwright.features.wholes import width_at_waist
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    On,
    Sheet,
    Taped,
    Verb,
    redraw,
    spot_on,
    spread,
    straight,
    tape,
)
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.truing import Fillet

_SRC = "first garment 5"

_SLIVER = 1.0
"""A panel less wide at the waist is all allowance, cm (common practice, no source)."""

FRONT_PANELS = RuleTable("front princess line")
_rule = FRONT_PANELS.rule

EASE = Number(
    "ep",
    "ep",
    "ease of the side panel over the bust",
    f"{_SRC}.4",
    0.3,
    0.125,
    0.0,
    0.6,
)


@_rule(
    "y(Pf)",
    "level of the point of the front waist dart",
    source=f"{_SRC}.1",
    formula="yBP: the dart is cut to the bust point",
    key="y_Pf",
)
def _apex(y_BP: float) -> float:
    return y_BP


@_rule(
    "ω",
    "opening of the waist dart at the bust point",
    kind=Kind.ANGLE,
    source=f"{_SRC}.6",
    formula="2·atan((fd/2)/(yW − yBP))",
)
def omega(fd_cut: float, yW: float, y_Pf: float) -> float:
    return math.degrees(2 * math.atan(fd_cut / 2 / (yW - y_Pf)))


@_rule(
    "φa",
    "turn that tightens the front armhole",
    kind=Kind.ANGLE,
    source="first garment 4.3",
    formula="2·asin(ta/(2·|BP Qf|))",
)
def phi_a(ta: float, reach_Qf: float) -> float:
    return wedge_angle(ta, reach_Qf)


@_rule(
    "θ + φn",
    "bust dart with the contour of the neck",
    kind=Kind.ANGLE,
    key="theta_c",
    source=f"{_SRC}.1, transformations 1.8",
)
def _theta_c(theta: float, phi_n: float) -> float:
    return theta + phi_n


@_rule(
    "κ",
    "corner of the side panel at the bust point",
    kind=Kind.ANGLE,
    source=f"{_SRC}.6",
    formula="θ + φn + φa + ω",
)
def kappa(theta: float, phi_n: float, phi_a: float, omega: float) -> float:
    k = theta + phi_n + phi_a + omega
    if k > 60:
        raise RuleError(
            f"the front panel line would turn by {k:.0f}° over the bust, more than 60°:"
            f" the bust dart opens by {theta:.0f}° and the waist dart by {omega:.0f}°; "
            f"measure {'NBP and NFW' if omega > theta else 'NFW and NWB'} again, or "
            "give the waist more ease (Ew), so that its dart is narrower"
        )
    return k


_ROUNDEST, _SHAVED = 8.0, 0.3
"""Radius that needs not be passed, and paper that may be shaved off, cm (5.3.7)."""


@_rule(
    "Rmax",
    "largest radius over the bust, by what may be shaved off there",
    key="R_max",
    source=f"{_SRC}.7",
    formula="0.3 cm/(sec(κ/2) − 1)",
)
def _largest(kappa: float) -> float:
    depth = 1 / math.cos(math.radians(kappa) / 2) - 1
    return _SHAVED / depth if depth > 0 else _ROUNDEST


@_rule(
    "Rf",
    "radius that rounds the side panel over the bust",
    key="R_bust",
    source=f"{_SRC}.7",
    formula="min(8 cm, Rmax)",
)
def _radius(R_max: float) -> float:
    return min(_ROUNDEST, R_max)


@_rule(
    "T(Rf)",
    "from the bust point to where the rounding begins",
    key="T_bust",
    source=f"{_SRC}.7",
    formula="Rf·tan(κ/2)",
)
def _tangent(kappa: float) -> float:
    return Fillet.of(kappa).tangent


@_rule(
    "shaved",
    "paper that the rounding takes off at the bust point",
    source=f"{_SRC}.7",
    formula="Rf·(sec(κ/2) − 1)",
)
def shaved(kappa: float) -> float:
    return Fillet.of(kappa).shaved


@_rule(
    "loss",
    "seam that the rounding takes up",
    source=f"{_SRC}.7",
    formula="Rf·(2·tan(κ/2) − κ)",
)
def loss(kappa: float) -> float:
    return Fillet.of(kappa).loss


def split_panels(d: Drafting, edge: str, upper: UpperCurve) -> None:
    """Cut the front along `upper`, from `edge` over BP, down the waist dart and close
    the side dart."""
    n = d.n
    qf, bp = upper.path.start, d["BP"]
    theta = dart_angle_of(d.sheet.piece("F"), "dart low", "dart high")
    draw_line(d, FRONT, upper.path)
    divide(d, FRONT, spot_on(d.sheet.piece("F"), edge, qf), upper.path)
    sheet = tape(d.sheet, "side dart", moving="side high")
    d.sheet = sheet.named(Q2=rotate(qf, bp, -theta))
    d.lay(
        Verb.TAPE,
        d.sheet,
        "FS",
        "side dart closed on the side front",
        amounts=(("its upper part turned by {}", "theta_c"),),
        frm=("BP",),
    )
    fs = d.sheet.piece("FS")
    wf = fs.edge("side low").path.start
    gc = fs.edge("side high").path.end
    sheet = redraw(d.sheet, "FS", ["side low", "side high"], [straight("side", wf, gc)])
    waist = Edge("waist", fs.edge("waist side").path)
    sheet = redraw(sheet, "FS", ["waist side"], [waist])
    if n.phi_a > 0 and edge == "armhole":
        sheet = _tighten(d, sheet)
    fc = sheet.piece("FC")
    panel = fc.edge("leg cf").path + fc.edge("cut").path
    sheet = redraw(sheet, "FC", ["leg cf", "cut"], [Edge("panel", panel)])
    d.lay(
        Verb.REDRAW,
        sheet,
        "FC.panel",
        "panel edge of the front, one line from Qf over BP to D1",
    )
    _ease_over_bust(d, sheet, d["D2"])


def _tighten(d: Drafting, sheet: Sheet) -> Sheet:
    """Turn the side front's upper curve on by φa and redraw the lower curve of its
    armhole to it (5.4).

    Of a line that starts above the pitch, the armhole from the pitch up to it turns
    too: redrawn alone, as the notes have it, that short piece folds over.
    """
    m = turn(d["BP"], -d.n.phi_a)
    fs = sheet.piece("FS")
    upper = fs.edge("cut").path.moved(m)  # Q2 to BP
    lower, *above = fs.edge("armhole").path.segments  # Gc to Q2
    end, arrive = m(lower.end), m.direction(lower.end_direction)
    out, back = distance(*lower.points[:2]), distance(*lower.points[-2:])
    redrawn = Cubic(
        lower.start, lower.start + lower.start_direction * out, end - arrive * back, end
    )
    armhole = Path((redrawn, *(s.moved(m) for s in above)))
    return redraw(
        sheet, "FS", ["armhole", "cut"], [Edge("armhole", armhole), Edge("cut", upper)]
    ).named(Q2=upper.start)


def _ease_over_bust(d: Drafting, sheet: Sheet, d2: Point) -> None:
    """Spread the side front at BP level and round its panel edge (5.3, 5.4)."""
    n, bp = d.n, d["BP"]
    fs = sheet.piece("FS")
    side = fs.edge("side").path
    upper, lower = fs.edge("cut").path, Path.line(bp, d2)
    a, b = side.start, side.end  # wf up to Gc
    t = min(0.95, max(0.05, (bp.y - a.y) / (b.y - a.y)))
    hinge = side.at_length(t * side.length)
    fc_length = sheet.length("FC", "panel")

    def panel(opening: float) -> Path:
        angle = wedge_angle(opening, distance(hinge, bp))
        turned_up = upper.moved(turn(hinge, -angle))
        f = Fillet.of(corner(turned_up, lower))
        return rounded(turned_up, lower, f, opening)

    opening = n.ep + n.loss
    for _ in range(3):
        opening += n.ep - (panel(opening).length - fc_length)
    path = panel(opening)
    d.found("J", hinge, "hinge of the ease on the side seam, level with BP")
    sheet = sheet.named(J=hinge)
    if opening > 1e-6:
        sheet = spread(
            sheet,
            "FS",
            On("side", distance(a, hinge)),
            CornerAfter("cut"),
            at_start=0.0,
            at_end=opening,
            moving="armhole",
        )
        run = ["cut", "gap end", "leg side"]
    else:
        run = ["cut", "leg side"]
    d.lay(
        Verb.SPREAD,
        sheet,
        "FS",
        "side front opened at the bust for ease",
        amounts=(("by {}", Taped("o", opening)),),
        frm=("J", "BP"),
        detail="from nothing at J: what lies above the line from J to BP turns up",
    )
    gc = sheet.edge("FS", "side").path.end
    # panel() bridges the gap itself: its upper part is the turned curve
    sheet = redraw(sheet, "FS", run, [Edge("panel", path)])
    sheet = redraw(sheet, "FS", ["side"], [straight("side", a, gc)])
    d.lay(
        Verb.REDRAW,
        sheet,
        "FS.panel",
        "panel edge of the side front, rounded over BP",
        amounts=(("above and below BP", Fillet.of(corner(upper, lower)).tangent),),
        lines=(path,),
    )


def panel_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Checks of a front panel line (5.5)."""
    if n.R_bust < 4:
        yield Finding(
            "P1",
            Severity.WARN,
            f"The side front turns by {n.kappa:.0f}° over the bust, a sharp bend.",
            "front panel",
            "Leave a small dart at the side, or steam the seam over a ham.",
            {"κ": n.kappa},
        )
    yield from waist_findings(n, sheet, "Measure W and BPS again, or use fewer panels.")


def waist_findings(n: Numbers, sheet: Sheet, wider: str) -> Iterable[Finding]:
    """What a front panel line makes of the waist (5.5); `wider` says what makes a panel
    wider."""
    if n.fd > 6:
        yield Finding(
            "P2",
            Severity.WARN,
            f"The front waist takes in {n.fd:.1f} cm at one place, more than 6 cm.",
            "fd",
            "Take part of it at the side or in a second dart.",
            {"fd": n.fd},
        )
    for code in ("FC", "FS"):
        if code not in sheet.pieces:
            continue
        width = width_at_waist(sheet, code)
        if width < 5.0:
            yield Finding(
                "P3",
                Severity.REFUSE if width < _SLIVER else Severity.WARN,
                f"{sheet.piece(code).name} is only {width:.1f} cm wide at the waist.",
                code,
                wider,
                {"width": width},
            )
