"""A body longer or shorter to the waist than the block.

Front and back are cut level above the waist and laid apart, or overlapped, by the
amount; the darts are ruled again to their points (cutting and costing 6).
"""

from typing import ClassVar, Literal

from clothwright.curves import Path, Point
from clothwright.features.fittings.base import SOURCE, Alteration
from clothwright.paper import Drafting, On, Verb, meetings, redraw, spread, straight
from clothwright.rules import RuleError, RuleTable

ABOVE_WAIST = 3.0
"""The lengthening line lies this far above the waist, cm: below every side dart."""

LEAST_SIDE = 8.0
"""A side shorter than this has no room for the armhole's facing and a dart, cm."""


def _page(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "yW",
        "level of the waist",
        key="yW",
        source=SOURCE,
        formula=f"yW {'+' if sign > 0 else '−'} by",
    )
    def _level(yW: float, yB: float, by: float) -> float:
        new = yW + sign * by
        if new - yB < LEAST_SIDE:
            raise RuleError(
                f"the side would be {new - yB:.1f} cm long only: shorten it by less"
            )
        return new

    return page


class WaistMoved(Alteration):
    """Front and back lengthened or shortened above the waist."""

    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        by = self.sign * d.n[at]
        for code, half, cuts in _CUTS:
            d.part = half
            sheet = d.sheet
            p = sheet.piece(code)
            level = Path.line(
                Point(-50.0, d["CBw"].y - ABOVE_WAIST),
                Point(200.0, d["CBw"].y - ABOVE_WAIST),
            )
            for one, two, moving in cuts:
                fault = (
                    f"the {half} is too short above the waist to be altered there: "
                    "measure NWB and NFW again"
                )
                start, end = (
                    On(e, meetings(sheet.edge(code, e).path, level, fault)[0][0])
                    for e in (one, two)
                )
                sheet = spread(
                    sheet, code, start, end, at_start=by, at_end=by, moving=moving
                )
            for one, two in _DARTS[code]:
                p = sheet.piece(code)
                a, b = p.edge(one).path, p.edge(two).path
                legs = [straight(one, a.start, a.end), straight(two, b.start, b.end)]
                sheet = redraw(sheet, code, [one, two], legs)
            d.lay(
                Verb.SPREAD,
                sheet,
                code,
                f"{half} cut level, {ABOVE_WAIST:g} cm above the waist, and "
                + ("laid apart" if by > 0 else "overlapped"),
                amounts=(("by {} all along", at),),
                detail="the dart ruled again to its point, the side straight",
            )
        down = Point(0.0, by)
        marks = ("CBw", "wb", "D1b", "D2b", "CFw", "wf", "D1", "D2")
        d.sheet = d.sheet.named(**{m: d[m] + down for m in marks})


class LongWaist(WaistMoved):
    """Front and back lengthened above the waist."""

    do: Literal["long waist"] = "long waist"
    title: ClassVar[str] = "lengthened above the waist"
    usual: ClassVar[tuple[float, float]] = (0.6, 4.0)
    most: ClassVar[float] = 4.0
    page: ClassVar[RuleTable] = _page("lengthened above the waist", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("F.side low", "F.cf", "B.side", "B.cb")
    follows: ClassVar[str] = "sides and centre lines grow alike; the darts are redrawn"
    sign: ClassVar[float] = 1.0


_CUTS = (
    (
        "B",
        "back",
        (("cb", "leg cb", "waist"), ("leg side", "side", "waist side")),
    ),
    (
        "F",
        "front",
        (("cf", "leg cf", "waist"), ("leg side", "side low", "waist side")),
    ),
)
_DARTS = {"B": (("leg side", "leg cb"),), "F": (("leg cf", "leg side"),)}


class ShortWaist(WaistMoved):
    """Front and back shortened above the waist."""

    do: Literal["short waist"] = "short waist"
    title: ClassVar[str] = "shortened above the waist"
    moves: ClassVar[tuple[str, ...]] = LongWaist.moves
    most: ClassVar[float] = 2.5
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _page("shortened above the waist", -1.0)
    follows: ClassVar[str] = (
        "sides and centre lines shrink alike; the darts are redrawn"
    )
    sign: ClassVar[float] = -1.0
