"""A panel line from the shoulder that passes no dart (transformations 1.5).

It runs beside the bust point, which lies in the side panel when it keeps towards the
centre; the bust dart stays at the side, sewn in the side panel, and ends short of the
line. Only the waist dart goes with it.
"""

from collections.abc import Iterable

from clothwright.curves import Point, distance, mix
from clothwright.features.base import Number
from clothwright.features.bodice.front_beside import waist_dart
from clothwright.features.bodice.front_dart import tighten_armhole
from clothwright.features.bodice.front_panels import waist_findings
from clothwright.features.bodice.panel_lines import (
    FRONT,
    UpperCurve,
    divide,
    from_shoulder,
    joined,
)
from clothwright.features.bodice.side_dart import (
    end_side_darts,
    set_back_by,
    side_dart_findings,
)
from clothwright.findings import Finding
from clothwright.paper import Drafting, Edge, PaperError, Sheet, Verb, redraw, spot_on
from clothwright.rules import Numbers, RuleTable

_SRC = "transformations 1.5"

LEAST = 1.0
"""A line nearer to the bust point than this passes over it, cm (our own)."""

PAST = 3.0
"""A line so far towards the side passes outside the end of the dart; beyond, it crosses
the dart, of which a rest is eased or sewn in the seam, cm (1.5)."""

_CLEAR = 0.7
"""The dart ends so far beside the line, cm (our own: its point is no part of the
seam)."""

SHOULDER_BESIDE = RuleTable("front panel line from the shoulder, beside the bust point")

BESIDE_S = Number(
    "beside_f",
    "beside f",
    "front panel line from the bust point, towards the side (below nought, the centre)",
    _SRC,
    low=-8.0,
    high=8.0,
    usual=(-3.0, 6.0),
)


@SHOULDER_BESIDE.rule(
    "x(Pf)",
    "centre of the front waist dart, across",
    source=_SRC,
    formula="xBP − beside f: the line takes it in",
    key="x_Pf",
)
def _x(x_BP: float, beside_f: float) -> float:
    return x_BP - beside_f


@SHOULDER_BESIDE.rule(
    "set-back",
    "stitched end of the side dart from the bust point",
    key="set_back",
    source="blocks A3.8, transformations 1.1",
    formula="a third of BUB, kept between 1.5 cm and 3.5 cm, and 0.7 cm beyond the "
    "line",
    low=0.0,
    high=6.0,
)
def _set_back(BUB: float, beside_f: float) -> float:
    return max(set_back_by(BUB), beside_f + _CLEAR)


def start_on_shoulder(d: Drafting) -> Point:
    """Mark the start of the front line on the shoulder."""
    at = mix(d["Nf′"], d["Tf"], d.n.share_s)
    return d.found(
        "Qf",
        at,
        "start of the front panel line on the shoulder",
        amounts=(("along the shoulder from Nf′", distance(d["Nf′"], at)),),
    )


def divide_beside_dart(d: Drafting) -> None:
    """End the side dart; cut the front from the shoulder past it to the point of the
    waist dart, and so down that."""
    n = d.n
    d.part = "front"
    if abs(n.beside_f) < LEAST:
        raise PaperError(
            f"a panel line {abs(n.beside_f):.1f} cm beside the bust point passes over "
            f'it: leave "beside" out, or make it {LEAST:g} cm or more (less than '
            f"−{LEAST:g} towards the centre)"
        )
    if n.ta > 0:
        tighten_armhole(d)
    end_side_darts(d)
    qf = start_on_shoulder(d)
    apex = d.point(
        "Pf",
        "BP",
        "point of the waist dart in the panel line",
        left=n.x_BP - n.x_Pf,
        down=n.y_Pf - n.y_BP,
    )
    d.sheet = waist_dart(d.sheet, d["D1"], apex, d["D2"])
    upper = upper_beside_dart(d.sheet, qf).path
    d.draw(
        "front panel, upper",
        upper,
        "front panel line",
        frm=("Qf", "Pf"),
        detail="an even curve that runs into the dart's centre leg without a corner",
    )
    legs = [e for e in d.sheet.piece("F").edges if e.name.startswith("dart")]
    if any(upper.meets(e.path) for e in legs):
        raise PaperError(
            'the front panel line would cross the bust dart: bring it (its "beside") '
            "nearer to the bust point, or let the dart end further out (set-back)"
        )
    divide(d, FRONT, spot_on(d.sheet.piece("F"), "shoulder", qf), upper)
    _edges(d)


def upper_beside_dart(sheet: Sheet, qf: Point) -> UpperCurve:
    """The line from the shoulder to the point of the waist dart."""
    p = sheet.points
    return from_shoulder(FRONT, qf, p["Pf"], p["D1"], p["Tf"] - p["Nf′"])


def _edges(d: Drafting) -> None:
    """The panel edges, each in one line."""
    fc, fs = d.sheet.piece("FC"), d.sheet.piece("FS")
    line = fc.edge("leg cf").path + fc.edge("cut").path
    side = joined(fs.edge("cut").path, fs.edge("leg side").path)
    sheet = redraw(d.sheet, "FC", ["leg cf", "cut"], [Edge("panel", line)])
    sheet = redraw(sheet, "FS", ["cut", "leg side"], [Edge("panel", side)])
    waist = Edge("waist", fs.edge("waist side").path)
    sheet = redraw(sheet, "FS", ["waist side"], [waist])
    d.lay(
        Verb.REDRAW,
        sheet,
        "FC.panel",
        "panel edges, each one line; the bust dart stays in the side front",
        lines=(line, side),
    )


def findings_beside_dart(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Checks of a line that passes no dart."""
    yield from side_dart_findings(n)
    yield from waist_findings(
        n, sheet, 'Take the panel line (its "beside") nearer to the bust point.'
    )
