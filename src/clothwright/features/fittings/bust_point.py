"""A bust point that lies higher or lower than the darts point to.

The points of both darts are moved, the side dart is drawn parallel (cutting and costing
6); the side seam keeps its length.
"""

from typing import ClassVar, Literal

from clothwright.features.fittings.base import SOURCE, Alteration, dart_kept
from clothwright.paper import Drafting, Verb, redraw, straight
from clothwright.rules import RuleTable


def _page(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "yBP",
        "level of the bust point",
        key="y_BP",
        source=SOURCE,
        formula=f"yBP {'+' if sign > 0 else '−'} by",
    )
    def _level(y_BP: float, by: float) -> float:
        return y_BP + sign * by

    dart_kept(
        page,
        "raises the underarm as before, about the new bust point",
        lambda old, by: (old[0], old[1], old[2], old[3] + sign * by, old[4]),
    )

    return page


class BustPointMoved(Alteration):
    """Points of the darts moved."""

    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "front"
        bp = d.point(
            "BP", "BP", "bust point as it lies on the body", down=self.sign * d.n[at]
        )
        sheet = d.sheet
        for one, two in (("leg cf", "leg side"), ("dart low", "dart high")):
            f = sheet.piece("F")
            legs = [
                straight(one, f.edge(one).path.start, bp),
                straight(two, bp, f.edge(two).path.end),
            ]
            sheet = redraw(sheet, "F", [one, two], legs)
        d.lay(
            Verb.REDRAW,
            sheet,
            "F",
            "both darts of the front, to the new BP",
            amounts=((("down" if self.sign > 0 else "up") + " by {}", at),),
        )


class LowerBustPoint(BustPointMoved):
    """Points of the darts lower."""

    do: Literal["lower bust point"] = "lower bust point"
    title: ClassVar[str] = "bust point lowered"
    usual: ClassVar[tuple[float, float]] = (0.6, 3.0)
    most: ClassVar[float] = 3.0
    page: ClassVar[RuleTable] = _page("bust point lowered", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("F.dart low", "F.dart high", "F.leg cf")
    follows: ClassVar[str] = (
        "both darts end at the new bust point, the side dart goes with it; panel lines "
        "are drawn over it"
    )
    sign: ClassVar[float] = 1.0


class RaiseBustPoint(BustPointMoved):
    """Points of the darts higher."""

    do: Literal["raise bust point"] = "raise bust point"
    title: ClassVar[str] = "bust point raised"
    usual: ClassVar[tuple[float, float]] = (0.6, 3.0)
    most: ClassVar[float] = 3.0
    moves: ClassVar[tuple[str, ...]] = ("F.dart low", "F.dart high", "F.leg cf")
    follows: ClassVar[str] = LowerBustPoint.follows
    page: ClassVar[RuleTable] = _page("bust point raised", -1.0)
    sign: ClassVar[float] = -1.0
