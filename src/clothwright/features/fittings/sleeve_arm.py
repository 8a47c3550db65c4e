"""Sleeves along the arm: too short, too long, and at the elbow of a bent one.

A straight sleeve is cut level once, a bent one in two places, half of the amount above
the elbow and half below it (cutting and costing 6; that it is halved is common
practice, no source).
"""

from typing import ClassVar, Literal

from clothwright.curves import Vector
from clothwright.features.fittings.base import SOURCE, Alteration
from clothwright.features.fittings.carry import carry, level_slash, to_places
from clothwright.features.fittings.ground import SLEEVE, Ground
from clothwright.features.fittings.sleeve_cap import MARKS
from clothwright.paper import Drafting, Verb
from clothwright.rules import RuleTable

_BENT = {"bent sleeve": "it alters a sleeve that is bent at the elbow; set its elbow"}


# -- length ----------------------------------------------------------------------------
def _length(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)
    way = "+" if sign > 0 else "−"

    @page.rule(
        "lh",
        "length of the sleeve from T",
        key="lh",
        source=SOURCE,
        formula=f"lh {way} by",
    )
    def _lh(lh: float, by: float) -> float:
        return lh + sign * by

    @page.rule(
        "elbow ↓",
        "elbow that a fitting lowers",
        key="elbow_down",
        source="common practice, no source",
        formula=f"elbow {way} by/2",
    )
    def _down(elbow_down: float, by: float) -> float:
        return elbow_down + sign * by / 2

    return page


class ArmLength(Alteration):
    """The sleeve cut level and laid apart or overlapped."""

    counted: ClassVar[str] = "each sleeve"
    ground: ClassVar[Ground] = SLEEVE
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "sleeve"
        by, sheet = self.sign * d.n[at], d.sheet
        bent = "Eb" in sheet.points
        end = d["Hc"].y
        elbow = d["Eb"].y if bent else 0.0
        parts = [(elbow / 2, by / 2), ((elbow + end) / 2 + by / 2, by / 2)]
        for y, part in parts if bent else [(end / 2, by)]:
            sheet = level_slash(sheet, "SL", y, part, part, MARKS, moving="hem")
        d.lay(
            Verb.SPREAD,
            sheet,
            "SL",
            "sleeve cut level "
            + ("above and below the elbow" if bent else "half way under the arm")
            + " and "
            + ("laid apart" if by > 0 else "overlapped"),
            amounts=(("by {} in all", at),),
            detail="half of it in each place" if bent else "",
        )


class LongArms(ArmLength):
    """Sleeve lengthened."""

    do: Literal["long arms"] = "long arms"
    title: ClassVar[str] = "sleeve lengthened"
    usual: ClassVar[tuple[float, float]] = (0.6, 4.0)
    most: ClassVar[float] = 4.0
    page: ClassVar[RuleTable] = _length("sleeve lengthened", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("SL.underarm front", "SL.underarm back")
    follows: ClassVar[str] = "both seams under the arm grow alike; the cap stays"
    sign: ClassVar[float] = 1.0


class ShortArms(ArmLength):
    """Sleeve shortened."""

    do: Literal["short arms"] = "short arms"
    title: ClassVar[str] = "sleeve shortened"
    usual: ClassVar[tuple[float, float]] = (0.6, 4.0)
    most: ClassVar[float] = 4.0
    page: ClassVar[RuleTable] = _length("sleeve shortened", -1.0)
    moves: ClassVar[tuple[str, ...]] = LongArms.moves
    follows: ClassVar[str] = "both seams under the arm shrink alike; the cap stays"
    sign: ClassVar[float] = -1.0


# -- the elbow -------------------------------------------------------------------------
FULL = RuleTable("sleeve let out at the elbow")


@FULL.rule(
    "elbow +",
    "width at the elbow that a fitting adds",
    key="elbow_more",
    source=SOURCE,
    formula="elbow + by, in all",
)
def _more(elbow_more: float, by: float) -> float:
    return elbow_more + by


class FullElbow(Alteration):
    """A bent sleeve let out at the elbow, half on each side."""

    do: Literal["full elbow"] = "full elbow"
    title: ClassVar[str] = "sleeve let out at the elbow"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    counted: ClassVar[str] = "all round"
    ground: ClassVar[Ground] = SLEEVE
    also: ClassVar[dict[str, str]] = _BENT
    page: ClassVar[RuleTable] = FULL
    moves: ClassVar[tuple[str, ...]] = ("SL.underarm front", "SL.underarm back")
    follows: ClassVar[str] = (
        "the amount is all round, half at each seam, to nothing at underarm and wrist; "
        "the elbow dart is drawn again"
    )

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "sleeve"
        half = d.n[at] / 2
        out = to_places(
            (d[m], d[m] + Vector(way * half, 0.0))
            for m, way in (("Ef", 1.0), ("Eb", -1.0))
        )
        sheet = carry(d.sheet, "SL", out, MARKS)
        d.lay(
            Verb.REDRAW,
            sheet,
            "SL",
            "both seams under the arm, out at the elbow",
            amounts=(("by {} in all", at),),
            detail="half of it on each side; the dart, or the ease, drawn again",
        )


def _level(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "elbow ↓",
        "elbow that a fitting lowers",
        key="elbow_down",
        source=SOURCE,
        formula=f"elbow {'+' if sign > 0 else '−'} by",
    )
    def _down(elbow_down: float, by: float) -> float:
        return elbow_down + sign * by

    return page


class ElbowMoved(Alteration):
    """The elbow of a bent sleeve, with its dart, moved down or up."""

    counted: ClassVar[str] = "each sleeve"
    ground: ClassVar[Ground] = SLEEVE
    also: ClassVar[dict[str, str]] = _BENT
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "sleeve"
        by = self.sign * d.n[at]
        marks = [m for m in ("Ef", "Eb", "Es", "Ed", "Ep") if m in d.sheet.points]
        down = to_places((d[m], d[m] + Vector(0.0, by)) for m in marks)
        sheet = carry(d.sheet, "SL", down, MARKS)
        d.lay(
            Verb.REDRAW,
            sheet,
            "SL",
            f"elbow of the sleeve, {'lower' if by > 0 else 'higher'}",
            amounts=((("down" if by > 0 else "up") + " by {}", at),),
            detail="with what takes the back seam in there",
        )


class LowerElbow(ElbowMoved):
    """Elbow lowered."""

    do: Literal["lower elbow"] = "lower elbow"
    title: ClassVar[str] = "elbow of the sleeve lowered"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _level("elbow of the sleeve lowered", 1.0)
    moves: ClassVar[tuple[str, ...]] = FullElbow.moves
    follows: ClassVar[str] = "cap and hem stay; the elbow dart goes with it"
    sign: ClassVar[float] = 1.0


class RaiseElbow(ElbowMoved):
    """Elbow raised."""

    do: Literal["raise elbow"] = "raise elbow"
    title: ClassVar[str] = "elbow of the sleeve raised"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _level("elbow of the sleeve raised", -1.0)
    moves: ClassVar[tuple[str, ...]] = FullElbow.moves
    follows: ClassVar[str] = "cap and hem stay; the elbow dart goes with it"
    sign: ClassVar[float] = -1.0


AnyArm = LongArms | ShortArms | FullElbow | LowerElbow | RaiseElbow
