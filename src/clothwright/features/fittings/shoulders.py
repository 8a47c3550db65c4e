"""Shoulders that slope more or less than the block's, or come forward.

Sloping and square: both tips go down or up, and the underarm with them, so that the
armhole keeps its depth. Forward: the front tip goes down, the back tip up (cutting and
costing 6). The shoulder keeps its length.
"""

import math
from typing import ClassVar, Literal

from clothwright.blocks.bodice_curves import outwards_back, outwards_front
from clothwright.curves import Point, Vector, distance, turn
from clothwright.features.fittings.base import SOURCE, Alteration, dart_kept
from clothwright.features.fittings.lines import carried, slope_of
from clothwright.paper import Drafting, Verb, redraw, straight
from clothwright.rules import Kind, RuleError, RuleTable


def _sloped(slope: float, length: float, down: float) -> float:
    """Slope of a shoulder of this length whose tip is laid lower, degrees."""
    rise = math.sin(math.radians(slope)) + down / length
    if not -0.26 < rise < 0.75:
        raise RuleError("the shoulder would slope too far: alter by less")
    return math.degrees(math.asin(rise))


def _slopes(page: RuleTable, front: float, back: float) -> None:
    @page.rule(
        "σf",
        "slope of the front shoulder",
        key="sigma_f",
        kind=Kind.ANGLE,
        source=SOURCE,
        formula=f"the tip {'lower' if front > 0 else 'higher'} by the amount",
    )
    def _front(sigma_f: float, SH: float, by: float) -> float:
        return _sloped(sigma_f, SH, front * by)

    @page.rule(
        "σb",
        "slope of the back shoulder",
        key="sigma_b",
        kind=Kind.ANGLE,
        source=SOURCE,
        formula=f"the tip {'lower' if back > 0 else 'higher'} by the amount",
    )
    def _back(sigma_b: float, SH: float, sd: float, se: float, by: float) -> float:
        return _sloped(sigma_b, SH + sd + se, back * by)


def _with_underarm(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)
    _slopes(page, sign, sign)
    way = "+" if sign > 0 else "−"

    @page.rule(
        "yB",
        "level of the bust line",
        key="yB",
        source=SOURCE,
        formula=f"yB {way} by: the armhole keeps its depth",
    )
    def _level(yB: float, by: float) -> float:
        return yB + sign * by

    @page.rule(
        "y(Pd)",
        "level of the point of the back waist dart",
        key="y_Pd",
        source=SOURCE,
        formula=f"y(Pd) {way} by",
    )
    def _point(y_Pd: float, by: float) -> float:
        return y_Pd + sign * by

    dart_kept(
        page,
        "raises the new underarm as it did the old",
        lambda old, by: (old[0], old[1] + sign * by, *old[2:]),
    )

    return page


_UNDERARM = {"B": ("ub", "Pd"), "F": ("G", "Gc")}
_PITCH = {"B": "pb", "F": "pf"}
"""Marks that go with the underarm, and the pitch."""


def _forward() -> RuleTable:
    page = RuleTable("shoulders forward")
    _slopes(page, 1.0, -1.0)
    return page


class ShouldersMoved(Alteration):
    """Both shoulder tips moved, and the underarm with them or not."""

    tips: ClassVar[tuple[float, float]]
    """Way of the front tip and of the back tip: 1 is down."""

    underarm: ClassVar[float]
    """Way of the underarm: 1 is down, 0 stays."""

    def apply(self, d: Drafting, at: str) -> None:
        by, (front, back) = d.n[at], self.tips
        d.part = "back"
        hb, tb = d["hb"], d["tb"]
        slope, length = slope_of(hb, tb), distance(hb, tb)
        tip = hb + outwards_back(_sloped(slope, length, back * by)) * length
        self._shoulder(d, "B", "tb", tip, back, at)
        d.part = "front"
        tf = d.sheet.edge("F", "shoulder").path  # tip to neck
        slope, length = slope_of(tf.end, tf.start), tf.length
        tip = tf.end + outwards_front(_sloped(slope, length, front * by)) * length
        self._shoulder(d, "F", "tf", tip, front, at)

    def _shoulder(
        self, d: Drafting, code: str, mark: str, tip: Point, way: float, at: str
    ) -> None:
        p = d.sheet.piece(code)
        half = "back" if code == "B" else "front"
        old = d[mark]
        d.found(
            mark,
            tip,
            f"shoulder tip of the {half}, {'lower' if way > 0 else 'higher'}",
            amounts=((("down" if way > 0 else "up") + " by {}", at),),
            detail="as far from the shoulder neck point as before",
        )
        arm = p.edge("armhole")
        moved = carried(arm.path, old, tip, self.underarm * d.n[at])
        if code == "B":
            m = turn(d["hb"], slope_of(d["hb"], tip) - slope_of(d["hb"], old))
            above = [e.moved(m) for e in p.edges if e.name.startswith("shoulder")]
            dart = {k: m(d[k]) for k in ("D1s", "D2s", "Ps") if k in d.sheet.points}
            d.sheet = d.sheet.named(**dart)
            run = [*(e.name for e in above), "armhole", "side"]
            side = p.edge("side").path
            edges = [*above, arm.along(moved), straight("side", moved.end, side.end)]
        else:
            run = ["side high", "armhole", "shoulder"]
            side = p.edge("side high").path
            end = p.edge("shoulder").path.end
            edges = [
                straight("side high", side.start, moved.start),
                arm.along(moved),
                straight("shoulder", tip, end),
            ]
        down = Vector(0.0, self.underarm * d.n[at])
        under = {m: d[m] + down for m in _UNDERARM[code]}
        middle = moved.segments[0].end
        d.sheet = d.sheet.named(**under, **{_PITCH[code]: middle})
        words = f"shoulder of the {half}, to the new tip"
        if self.underarm:
            words += ", and the armhole with its underarm as far"
        d.lay(
            Verb.REDRAW,
            redraw(d.sheet, code, run, edges),
            code,
            words,
            amounts=((("down" if way > 0 else "up") + " by {}", at),),
            lines=tuple(e.path for e in edges),
        )


class SlopingShoulders(ShouldersMoved):
    """Tips and underarm lower."""

    do: Literal["sloping shoulders"] = "sloping shoulders"
    title: ClassVar[str] = "shoulders sloped"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _with_underarm("shoulders sloped", 1.0)
    moves: ClassVar[tuple[str, ...]] = (
        "F.shoulder",
        "F.armhole",
        "B.shoulder",
        "B.armhole",
        "F.side high",
        "B.side",
    )
    follows: ClassVar[str] = (
        "the underarm goes down as far, so the armhole keeps its depth; the sides are "
        "as much shorter"
    )
    tips: ClassVar[tuple[float, float]] = (1.0, 1.0)
    underarm: ClassVar[float] = 1.0


class SquareShoulders(ShouldersMoved):
    """Tips and underarm higher."""

    do: Literal["square shoulders"] = "square shoulders"
    title: ClassVar[str] = "shoulders squared"
    moves: ClassVar[tuple[str, ...]] = SlopingShoulders.moves
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _with_underarm("shoulders squared", -1.0)
    follows: ClassVar[str] = (
        "the underarm goes up as far, so the armhole keeps its depth; the sides are as "
        "much longer"
    )
    tips: ClassVar[tuple[float, float]] = (-1.0, -1.0)
    underarm: ClassVar[float] = -1.0


class ForwardShoulders(ShouldersMoved):
    """Front tip lower, back tip higher."""

    do: Literal["forward shoulders"] = "forward shoulders"
    title: ClassVar[str] = "shoulder seam brought forward"
    usual: ClassVar[tuple[float, float]] = (0.5, 1.5)
    page: ClassVar[RuleTable] = _forward()
    moves: ClassVar[tuple[str, ...]] = (
        "F.shoulder",
        "F.armhole",
        "B.shoulder",
        "B.armhole",
    )
    follows: ClassVar[str] = (
        "the front armhole is shorter and the back armhole longer; a sleeve's shoulder "
        "notch goes forward with the seam"
    )
    tips: ClassVar[tuple[float, float]] = (1.0, -1.0)
    underarm: ClassVar[float] = 0.0
