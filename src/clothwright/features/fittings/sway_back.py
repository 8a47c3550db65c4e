"""A hollow back, whose cloth folds across above the waist.

The fold is pinned out: the centre back is shortened by the amount, to nothing at the
side, so that the waist rises to the centre; the waist dart rises with it (cutting and
costing 6).
"""

from typing import ClassVar, Literal

from clothwright.features.fittings.base import SOURCE, Alteration
from clothwright.paper import Drafting, EdgeKind, Verb, redraw, straight
from clothwright.rules import RuleTable

PAGE = RuleTable("centre back shortened at the waist")


@PAGE.rule(
    "sw",
    "centre back raised at the waist",
    key="sway",
    source=SOURCE,
    formula="sw + by",
)
def _sway(sway: float, by: float) -> float:
    return sway + by


class SwayBack(Alteration):
    """Centre back shortened above the waist, to nothing at the side."""

    do: Literal["sway back"] = "sway back"
    title: ClassVar[str] = "centre back shortened for a hollow back"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = PAGE
    moves: ClassVar[tuple[str, ...]] = ("B.cb", "B.waist", "B.waist side", "B.leg cb")
    follows: ClassVar[str] = (
        "the back waist is trued again and keeps its length, and so does what hangs on "
        "it; the side stays"
    )
    clashes: ClassVar[dict[str, str]] = {
        "open back": "an open back is cut away where the fold lies; tighten its edge "
        "instead"
    }

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "back"
        by = d.n[at]
        share = 1 - d.n.xd / d["wb"].x
        d.point("CBw", "CBw", "centre back at the waist, raised", up=at)
        for mark, side in (("D1b", "centre side"), ("D2b", "side")):
            says = f"back dart at the waist, {side}, raised"
            d.point(mark, mark, says, up=by * share)
        b = d.sheet.piece("B")
        run = ["waist side", "leg side", "leg cb", "waist", "cb"]
        top = b.edge("cb").path.end
        spots = [d["wb"], d["D2b"], d["Pd"], d["D1b"], d["CBw"], top]
        edges = [
            straight(n, a, z, EdgeKind.FOLD if n == "cb" else EdgeKind.SEAM)
            for n, a, z in zip(run, spots, spots[1:], strict=False)
        ]
        d.lay(
            Verb.REDRAW,
            redraw(d.sheet, "B", run, edges),
            "B",
            "back waist, raised to the centre, and its dart",
            amounts=(("by {} at the centre back", at),),
            detail="to nothing at the side",
        )
