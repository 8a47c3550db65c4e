"""Side dart and waist darts instead of panel lines (first garment 8)."""

import math
from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.full_cup import WIDE_DART
from clothwright.curves import (
    Path,
    Point,
    cross,
    degrees_between,
    direction,
    distance,
    dot,
    midpoint,
    turn,
)
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.bodice.front_dart import tighten_armhole
from clothwright.features.bodice.side_level import AT_LEVEL, SideLevel
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Ease,
    Edge,
    On,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    cut,
    move,
    redraw,
    straight,
)
from clothwright.paper.drafting import Size
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 8"

POINTS_APART = 2.5
"""The points of two darts lie at least this far apart, cm (truing 5)."""

APART, TO_WAIST, LEAST_APART = 4.0, 5.0, 2.5
"""Two darts lie this far apart at the side, the lower this far from the waist (B20) and
at least that far from the upper, cm (common practice, no source)."""

SIDE_DART = RuleTable("side dart")
_rule = SIDE_DART.rule


def set_back_by(BUB: float) -> float:
    """How far a bust dart ends from the bust point, cm (A3.8, A4)."""
    return clip(0.33 * BUB, 1.5, 3.5)


@_rule(
    "y(Pf)",
    "level of the point of the front waist dart",
    source="blocks A3.12",
    key="y_Pf",
    formula="yBP + 2.5 cm",
)
def _apex(y_BP: float) -> float:
    return y_BP + 2.5


@_rule(
    "set-back",
    "stitched end of the side dart from the bust point",
    key="set_back",
    source="blocks A3.8, corrections A4",
    formula="a third of BUB, kept between 1.5 cm and 3.5 cm",
    low=0.0,
    high=6.0,
)
def _set_back(BUB: float) -> float:
    return set_back_by(BUB)


@_rule("ep", "ease over the bust", source=_SRC, key="ep", formula="none: a dart")
def _no_ease() -> float:
    return 0.0


@_rule(
    "side darts",
    "number of side darts",
    key="n_darts",
    kind=Kind.COUNT,
    source="corrections C19",
    formula="two where the bust dart is over 20° and the side has room, else one",
    low=1,
    high=2,
)
def _number(theta: float, phi_n: float, yd: float, yW: float) -> float:
    return (
        2.0 if theta + phi_n > WIDE_DART and yW - yd >= TO_WAIST + LEAST_APART else 1.0
    )


NO_DART = 1e-6
"""A waist that takes in less than this at a dart, cm, has none there."""


def without_dart(d: Drafting, piece: str, seam: str, run: list[str]) -> None:
    """Rule the waist of a piece through where nothing is taken in (A4: "0 or 1.2")."""
    p = d.sheet.piece(piece)
    waist = straight("waist", p.edge(run[0]).path.start, p.edge(run[-1]).path.end)
    d.lay(
        Verb.REDRAW,
        redraw(d.sheet.unsew(seam), piece, run, [waist]),
        f"{piece}.waist",
        "waist ruled through, for nothing is taken in at the dart",
    )


@_rule(
    "ω",
    "opening of the front waist dart",
    kind=Kind.ANGLE,
    key="omega",
    source=f"{_SRC}, blocks A3.12",
    formula="2·atan((fd/2)/(yW − yPf))",
)
def _omega(fd_cut: float, yW: float, y_Pf: float) -> float:
    depth = yW - y_Pf
    angle = math.degrees(2 * math.atan2(fd_cut / 2, depth))
    if fd_cut > NO_DART and angle > 60.0:
        raise RuleError(
            f"the front waist dart would take in {fd_cut:.1f} cm and end only "
            f"{max(0.0, depth):.1f} cm above the waist: measure NBP and NFW again, or "
            "give the waist more ease (Ew), so that the dart is narrower"
        )
    return angle


def front_waist_dart(d: Drafting) -> None:
    """End the front waist dart at its own point; rule the waist where it has none."""
    n = d.n
    if n.fd < NO_DART:
        run = ["waist", "leg cf", "leg side", "waist side"]
        without_dart(d, "F", "front waist dart", run)
        return
    pf = d.point("Pf", "BP", "point of the front waist dart", down=n.y_Pf - n.y_BP)
    f = d.sheet.piece("F")
    legs = f.edge("leg cf").path.start, f.edge("leg side").path.end
    sheet = redraw(
        d.sheet,
        "F",
        ["leg cf", "leg side"],
        [straight("leg cf", legs[0], pf), straight("leg side", pf, legs[1])],
    )
    d.lay(
        Verb.REDRAW,
        sheet,
        "F",
        "waist dart of the front",
        amounts=(("the waist dart opening by {}", "omega"),),
    )


class SideDart(Feature):
    """Front in one piece with a side dart and a waist dart."""

    kind: Literal["side dart"] = "side dart"
    title: ClassVar[str] = "Side dart"
    sentence: ClassVar[str] = (
        "The front is in one piece, with a [side dart] {level} that ends {set_back} "
        "from the bust point and a waist dart."
    )
    pieces: ClassVar[tuple[About, ...]] = (About("strip", shown=("front",)),)
    gives: ClassVar[frozenset[str]] = frozenset({"front panels"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a side dart is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "front panels": "the bust dart can go into one line only; leave one off"
    }

    level: SideLevel = SideLevel.LEVEL
    set_back: Annotated[
        Length | None,
        Number(
            "set_back",
            "set-back",
            "stitched end of the side dart from the bust point",
            "blocks A3.8",
            low=0.0,
            high=6.0,
            usual=(1.5, 3.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SIDE_DART, AT_LEVEL[self.level])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FRONT_PANELS, "the darts of the front", self._apply),)

    def _apply(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        if n.ta > 0:
            tighten_armhole(d)
        end_side_darts(d)
        front_waist_dart(d)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from side_dart_findings(n)
        yield from waist_dart_findings(n)


def side_dart_findings(n: Numbers) -> Iterable[Finding]:
    """Checks of a dart at the side: its room there, its width."""
    if n.yd - n.yB < LEAST_APART or n.yW - n.yd < TO_WAIST:
        yield Finding(
            "B20",
            Severity.REFUSE,
            f"The side is only {n.yW - n.yB:.1f} cm long, too short for a side dart.",
            "yd",
            "Measure NWB and AS again, draft the armhole as measured, or use a "
            "princess line.",
            {"above": n.yd - n.yB, "below": n.yW - n.yd},
        )
    if n.theta > WIDE_DART and n.n_darts < 2:
        yield Finding(
            "P6",
            Severity.WARN,
            f"The side dart opens by {n.theta:.0f}°, wide for one dart.",
            "θ",
            "Use two darts, or a princess line.",
            {"θ": n.theta},
        )


def waist_dart_findings(n: Numbers) -> Iterable[Finding]:
    """Checks of a front waist dart that ends below the bust point."""
    if n.fd > NO_DART and n.omega > 40:
        yield Finding(
            "P1",
            Severity.WARN,
            f"The front waist dart opens by {n.omega:.0f}°, wide for its length.",
            "ω",
            "Look at NBP again, or use a princess line.",
            {"ω": n.omega},
        )
    if n.fd > 6:
        yield Finding(
            "P2",
            Severity.WARN,
            "The front waist dart takes in more than 6 cm.",
            "fd",
            "Use two darts, or a princess line.",
            {"fd": n.fd},
        )


def end_side_darts(d: Drafting) -> None:
    """End the side dart short of the bust point, as two where it is wide."""
    if d.n.n_darts > 1:
        _split(d)
    else:
        _end_short(d)


def _stitched_end(
    d: Drafting, name: str, a: Point, b: Point, back: Size, says: str
) -> Point:
    """Stitched end of a dart from `a` and `b` on the side, half way between its legs,
    which meet in BP; it lies `back` from there."""
    bp = d["BP"]
    return d.found(
        name,
        bp + direction(bp, midpoint(a, b)) * d.size(back),
        says,
        amounts=(("from BP", back),),
        detail="half way between the legs",
    )


def _end_short(d: Drafting) -> None:
    """End the side dart short of BP."""
    f = d.sheet.piece("F")
    u2, u1 = f.edge("dart low").path.start, f.edge("dart high").path.end
    apex = _stitched_end(d, "As", u1, u2, "set_back", "stitched end of the side dart")
    legs = [straight("dart low", u2, apex), straight("dart high", apex, u1)]
    d.sheet = redraw(d.sheet, "F", ["dart low", "dart high"], legs)


def _split(d: Drafting) -> None:
    """Share a wide dart between two: a strip of the side below it is cut out to BP and
    turned up by half of the dart, so that the other half opens below the strip."""
    bp = d["BP"]
    f = d.sheet.piece("F")
    below = f.edge("side low").path  # wf to U2
    apart = min(APART, below.length - TO_WAIST)
    v = d.found(
        "V2",
        below.at_length(below.length - apart),
        "lower side dart, lower end",
        amounts=(("along the side from U2", apart),),
    )
    sheet = cut(
        d.sheet,
        "F",
        Path.line(v, bp),
        On("side low", below.length - apart),
        CornerAfter("dart low"),
        edge="slash",
        seam="slash",
        seam_name="slash",
        into=(("strip", "Strip of the side"), ("F", "Front")),
    )
    d.lay(Verb.CUT, sheet, "F", "front slashed from V2 to BP")
    u2, u1 = below.end, f.edge("dart high").path.end
    half = degrees_between(u1 - bp, u2 - bp) / 2
    sheet = move(sheet, "strip", turn(bp, half))
    side = sheet.edge("strip", "side low").path
    d.lay(
        Verb.MOVE,
        sheet,
        "strip",
        "strip between the slash and the side dart, turned up about BP to the middle "
        "of the dart",
        amounts=(("at the side by {}", distance(u2, side.end)),),
        frm=("BP",),
    )
    upper = _stitched_end(
        d, "As", u1, side.end, "set_back", "stitched end of the upper side dart"
    )
    # as far from BP as makes the two points lie apart
    way = direction(bp, midpoint(side.start, v))
    along, off = dot(upper - bp, way), cross(way, upper - bp)
    back = along + math.sqrt(max(0.0, POINTS_APART**2 - off**2))
    says = "stitched end of the lower side dart"
    lower = _stitched_end(d, "As2", side.start, v, max(back, d.n.set_back), says)
    legs = [
        straight("dart low 2", v, lower),
        straight("dart high 2", lower, side.start),
        Edge("side mid", side),
        straight("dart low", side.end, upper),
        straight("dart high", upper, u1),
    ]
    sheet = redraw(sheet.without("strip"), "F", ["slash", "dart high"], legs)
    d.lay(
        Verb.REDRAW,
        sheet.sew(*(_dart(*names) for names in _TWO)),
        "F",
        "strip taped in, two side darts in place of one",
    )


_TWO = (
    ("side dart", "dart low", "dart high"),
    ("lower side dart", "dart low 2", "dart high 2"),
)


def _dart(name: str, low: str, high: str) -> Seam:
    return Seam(
        name,
        name,
        (Run("F", low),),
        (Run("F", high, True),),
        "side",
        "point",
        Ease.about(0.0, 0.1),
        kind=SeamKind.DART,
    )
