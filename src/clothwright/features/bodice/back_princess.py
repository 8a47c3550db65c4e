"""Back princess line, from the armhole to the point of the back waist dart.

First garment 6: a cut from the armhole to the dart's point divides the back at once;
the side panel's corner at the point is rounded.
"""

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.back_shoulder_dart import OPEN, OpenShoulder
from clothwright.blocks.back_waist_dart import xd
from clothwright.blocks.bodice_curves import (
    back_armhole,
    back_pitch,
    inward_back,
    outwards_back,
    side_square_back,
)
from clothwright.curves import Path, Point, distance, rotate
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.back_dart import (
    BLADE_HIGH,
    LEG_NECK,
    has_dart,
    lead_to_panel,
    pivot,
)
from clothwright.features.bodice.panel_lines import (
    BACK,
    UpperCurve,
    corner,
    divide,
    draw_line,
    from_armhole,
    rounded,
    share_of_armhole,
    start_findings,
    start_on_armhole,
)
from clothwright.features.wholes import width_at_waist
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    Sheet,
    Spot,
    Verb,
    redraw,
    spot_on,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import Fillet
from clothwright.units.fields import Length, Ratio

_SRC = "first garment 6.2"

_SLASH = 1.5
"""The shoulder dart meets the panel line no nearer to the armhole, cm along it: what
lies above is cut off from there and turned (our own choice)."""

_NEAREST = "the place of the panel line nearest to Ps, 1.5 cm down it or more"

BACK_PANELS = RuleTable("back princess line")


@BACK_PANELS.rule(
    "ωb",
    "opening of the back waist dart at its point",
    kind=Kind.ANGLE,
    source=f"{_SRC}.2",
    formula="2·atan((bd/2)/(yW − yPd))",
)
def omega_b(bd_cut: float, yW: float, y_Pd: float) -> float:
    return math.degrees(2 * math.atan(bd_cut / 2 / (yW - y_Pd)))


@lru_cache(maxsize=16)
def _pivot(
    share: float | None,
    x_Ps: float,
    y_Ps: float,
    Sb: float,
    phi_b: float,
    xb: float,
    yB: float,
    xs: float,
    a: float,
    yW: float,
    xd: float,
    y_Pd: float,
    bd_cut: float,
    *open_: float,
) -> Point:
    """Z, the place of the panel line nearest to Ps (6.1), by trial.

    The line starts on the armhole with the shoulder dart open, whose tip hangs on Z a
    little: it is drawn again until Z stays.
    """
    shoulder, ps = OpenShoulder.of(*open_), Point(x_Ps, y_Ps)
    ub, wb = Point(xs, yB), Point(xs - a, yW)
    pd, d1 = Point(xd, y_Pd), Point(xd - bd_cut / 2, yW)
    z = ps
    for _ in range(8):
        turn, slope = shoulder.angle(z), shoulder.closed_slope(z)
        tip = rotate(shoulder.hb + outwards_back(slope) * Sb, z, turn)
        inward = inward_back(slope - phi_b + turn)
        pitch = back_pitch(tip, inward, xb, yB)
        start = pitch
        if share is not None:
            armhole = back_armhole(
                tip,
                inward,
                pitch,
                ub,
                side_square_back(ub, wb),
                yB - pitch.y,
            ).reversed()
            start = armhole.at_length(armhole.length * share)
        path = from_armhole(BACK, start, pd, d1).path
        along = path.length_to(path.nearest(ps)[0])
        z, before = path.at_length(max(_SLASH, along)), z
        if distance(z, before) < 1e-9:
            break
    return z


_PLACED = (
    *("x_Ps", "y_Ps", "Sb", "phi_b", "xb", "yB", "xs", "a", "yW", "xd", "y_Pd"),
    "bd_cut",
)


def _pivot_rules(title: str, *share: str) -> RuleTable:
    """Rules of Z for a line from the pitch, or from a share of the armhole."""
    table = RuleTable(title)
    needs = (*share, *_PLACED, *OPEN)

    def place(numbers: tuple[float, ...]) -> Point:
        return _pivot(*numbers) if share else _pivot(None, *numbers)

    @table.rule(
        "x(Z)",
        "where the shoulder dart meets the panel line, across",
        key="x_Z",
        source="first garment 6.1",
        formula=_NEAREST,
        needs=needs,
    )
    def _x(*numbers: float) -> float:
        return place(numbers).x

    @table.rule(
        "y(Z)",
        "level at which the shoulder dart meets the panel line",
        key="y_Z",
        source="first garment 6.1",
        formula=_NEAREST,
        needs=needs,
    )
    def _y(*numbers: float) -> float:
        return place(numbers).y

    return table


BACK_BESIDE = RuleTable("back panel line beside the place of the waist dart")


@BACK_BESIDE.rule(
    "xd",
    "centre of the back waist dart from the centre back",
    key="xd",
    source="transformations 1.5, blocks A2.9",
    formula="XB/4 + 0.5 cm + beside b: the line takes it in",
)
def _xd(XB: float, beside_b: float) -> float:
    return xd(XB) + beside_b


PIVOT_AT_PITCH = _pivot_rules("shoulder dart and a panel line from the pitch")
PIVOT_AT_SHARE = _pivot_rules("shoulder dart and a panel line by share", "share_b")


class BackArmholePrincess(Feature):
    """Back princess line from the armhole to the waist dart."""

    kind: Literal["back armhole princess"] = "back armhole princess"
    title: ClassVar[str] = "Armhole princess, back"
    sentence: ClassVar[str] = "[Princess lines] from the armhole behind."
    shows: ClassVar[Shown] = {
        "share b": ("BC.panel",),
        "beside b": ("BC.panel",),
        "Qb": ("BC.panel",),
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"back panels", "back panel seam", "back armhole line"}
    )
    needs: ClassVar[dict[str, str]] = {"armhole": "say how the armhole is finished"}
    clashes: ClassVar[dict[str, str]] = {
        "back panels": "the back waist dart can go into one line only; leave one off"
    }

    share: Annotated[Ratio | None, share_of_armhole(BACK)] = None
    beside: Annotated[
        Length | None,
        Number(
            "beside_b",
            "beside b",
            "back panel line from the usual place of the waist dart, towards the side",
            "transformations 1.5",
            low=-2.5,
            high=5.0,
            usual=(-1.5, 4.0),
        ),
    ] = None
    """How far the line, and the waist dart in it, lie from where that dart usually is.
    """

    def said(self) -> str:
        if self.beside is None:
            return self.sentence
        return "[Panel lines] from the armhole behind, {beside} nearer to the side."

    def tables(self) -> tuple[RuleTable, ...]:
        pivot = PIVOT_AT_PITCH if self.share is None else PIVOT_AT_SHARE
        beside = () if self.beside is None else (BACK_BESIDE,)
        return (BACK_PANELS, *beside, pivot)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BACK_PANELS, "back princess line", self._apply),)

    def _apply(self, d: Drafting) -> None:
        d.part = "back"
        armhole = d.sheet.edge("B", "armhole").path.reversed()  # underarm to tip
        qb = start_on_armhole(d, BACK, armhole, at_pitch=self.share is None)
        upper = _upper(d.sheet, qb).path
        draw_line(d, BACK, upper)
        if not has_dart(d.sheet):
            split_back(d, spot_on(d.sheet.piece("B"), "armhole", qb), upper)
            return
        slash, rest = upper.split(upper.nearest(d["Z"])[0])
        lead_to_panel(d, slash.pinned(slash.start, d["Z"]))
        split_back(d, CornerAfter(BLADE_HIGH), rest.pinned(d["Z"], rest.end))
        bc = d.sheet.piece("BC")
        armhole = bc.edge("armhole high").path
        d.sheet = redraw(d.sheet, "BC", ["armhole high"], [Edge("armhole", armhole)])

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from back_findings(n, sheet)
        yield from start_findings(BACK, _upper(sheet, sheet.points["Qb"]))
        yield from _height_findings(sheet)


def _upper(sheet: Sheet, qb: Point) -> UpperCurve:
    return from_armhole(BACK, qb, sheet.points["Pd"], sheet.points["D1b"])


def split_back(d: Drafting, start: Spot, path: Path) -> None:
    """Divide the back along `path`, from `start` on its outline to the dart's point.

    What of a panel edge lies above the start, the legs of a shoulder dart, is joined to
    it; every corner of the two edges is rounded.
    """
    divide(d, BACK, start, path)
    sheet = d.sheet
    bc, bs = sheet.piece("BC"), sheet.piece("BS")
    above_c, above_s = bc.before("cut").name, bs.after("cut").name
    run_c, run_s = ["cut", "leg cb"], ["leg side", "cut"]
    centre, side = bc.edge("cut").path, bs.edge("cut").path.reversed()
    if above_c in _LEGS:
        centre, run_c = _joined(bc.edge(above_c).path, centre), [above_c, *run_c]
        side = _joined(bs.edge(above_s).path.reversed(), side)
        run_s = [*run_s, above_s]
    centre = centre + bc.edge("leg cb").path  # Pd to D1b, in one line with the curve
    lower = bs.edge("leg side").path.reversed()  # Pd to D2b
    fillet = Fillet.of(corner(side, lower))
    side = rounded(side, lower, fillet)
    sheet = redraw(sheet, "BS", run_s, [Edge("panel", side.reversed())])
    waist = Edge("waist", bs.edge("waist side").path)
    sheet = redraw(sheet, "BS", ["waist side"], [waist])
    sheet = redraw(sheet, "BC", run_c, [Edge("panel", centre)])
    over = "Pd" if above_c not in _LEGS else f"{pivot(sheet)} and Pd"
    d.lay(
        Verb.REDRAW,
        sheet,
        "BS.panel",
        f"panel edge of the side back, rounded over {over}",
        amounts=(("above and below Pd", fillet.tangent),),
        lines=(side,),
    )


_LEGS = (LEG_NECK, BLADE_HIGH)
"""Legs of a shoulder dart on the back panel's paper, led to the seam or the panel."""


def _joined(upper: Path, lower: Path) -> Path:
    return rounded(upper, lower, Fillet.of(corner(upper, lower)))


def back_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Checks of back panels (6.2)."""
    width = width_at_waist(sheet, "BC")
    if width < 2.5:
        yield Finding(
            "P4",
            Severity.REFUSE,
            f"The back panel is only {width:.1f} cm wide at the waist; "
            "2.5 cm must stay.",
            "BC",
            _wider_at_waist(n),
            {"width": width},
        )
    elif width < 4.0:
        yield Finding(
            "P4",
            Severity.WARN,
            f"The back panel is only {width:.1f} cm wide at the waist.",
            "BC",
            _wider_at_waist(n),
            {"width": width},
        )


def _wider_at_waist(n: Numbers) -> str:
    """What leaves a back panel more of the waist: what was taken from it."""
    if "e2" in n and n.e2 > 0:
        return "Make the set-in at the waist (e2) smaller."
    if "beside_b" in n and n.beside_b < 0:
        return "Lead its line (beside b) nearer to the side."
    return "Measure XB and W again."


def _height_findings(sheet: Sheet) -> Iterable[Finding]:
    """A note where front and back lines leave the armhole at other heights (6.2.1)."""
    there = any(p.has("armhole") for p in sheet.pieces.values())
    if there and "Qf" in sheet.points and "pf" in sheet.points:
        up_f = sheet.points["G"].y - sheet.points["Qf"].y
        up_b = sheet.points["ub"].y - sheet.points["Qb"].y
        if abs(up_f - up_b) > 3.5:
            yield Finding(
                "P5",
                Severity.NOTE,
                "Front and back panel lines leave the armhole at different heights.",
                "Qb",
                "",
                {"front": up_f, "back": up_b},
            )
