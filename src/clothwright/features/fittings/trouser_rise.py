"""Trousers at the rise, the seat and the waist behind (cutting and costing 6).

A rise that is too short or too long: front and back are cut level and laid apart or
overlapped in two places, a third of it below the hip line and two thirds above, so
that the hip line keeps its place (blocks E1). A full seat pulls the waist down behind:
the back is slashed level across the hip, opened at the seat seam to nothing at the
side; the waist rises and leans in. A flat seat, whose cloth folds below it, is the
reverse. A waist that gapes behind goes into the back darts.
"""

from typing import ClassVar, Literal

from clothwright.blocks.trouser_rules import BACK_KEYS, back_from
from clothwright.curves import Point, rotate, wedge_angle
from clothwright.features.fittings.base import SOURCE, Alteration
from clothwright.features.fittings.carry import level_slash
from clothwright.features.fittings.ground import TROUSERS, Ground
from clothwright.features.fittings.trouser_paper import HALVES, MARKS
from clothwright.paper import Drafting, PaperError, Verb
from clothwright.rules import RuleError, RuleTable

BELOW, ABOVE = 1 / 6, 0.38
"""Shares of the rise at which it is cut: below the hip line and above it, below every
dart."""

LEAST_TILT = 0.3
"""A seat line that leans by less stands upright, cm."""

WIDEST = 7.0
"""Both back darts together take in no more, cm (blocks E9)."""


# -- the rise --------------------------------------------------------------------------
def _rise(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "BRe",
        "body rise with ease",
        key="BRe",
        source=SOURCE,
        formula=f"BRe {'+' if sign > 0 else '−'} by",
    )
    def _bre(BRe: float, by: float) -> float:
        return BRe + sign * by

    return page


class RiseMoved(Alteration):
    """The rise of front and back lengthened or shortened."""

    ground: ClassVar[Ground] = TROUSERS
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        by = self.sign * d.n[at]
        for code, half, crotch in HALVES:
            d.part = f"trouser {half}"
            level, rise = d[crotch].y, d[crotch].y - d[f"W{half[0]}"].y
            sheet = d.sheet
            for share, at_height in ((1 / 3, BELOW), (2 / 3, ABOVE)):
                part, y = share * by, level - at_height * rise
                sheet = level_slash(sheet, code, y, part, part, MARKS[code])
            d.lay(
                Verb.SPREAD,
                sheet,
                code,
                f"{half} cut level below the hip line and above it, and "
                + ("laid apart" if by > 0 else "overlapped"),
                amounts=(
                    ("by {} below", abs(by) / 3),
                    ("by {} above", abs(by) * 2 / 3),
                    ("{} in all", at),
                ),
                detail="so that the hip line lies a third of the rise up, as it did",
            )


class LongRise(RiseMoved):
    """Rise lengthened."""

    do: Literal["long rise"] = "long rise"
    title: ClassVar[str] = "rise of the trousers lengthened"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _rise("rise of the trousers lengthened", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("TF.crotch", "TF.side", "TB.seat", "TB.side")
    follows: ClassVar[str] = (
        "crotch seam and sides grow, front and back alike; waist and legs keep theirs"
    )
    sign: ClassVar[float] = 1.0


class ShortRise(RiseMoved):
    """Rise shortened."""

    do: Literal["short rise"] = "short rise"
    title: ClassVar[str] = "rise of the trousers shortened"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _rise("rise of the trousers shortened", -1.0)
    moves: ClassVar[tuple[str, ...]] = LongRise.moves
    follows: ClassVar[str] = (
        "crotch seam and sides shrink, front and back alike; waist and legs keep theirs"
    )
    sign: ClassVar[float] = -1.0


# -- the seat --------------------------------------------------------------------------
def _seat(title: str, sign: float) -> RuleTable:
    """The centre back waist turned about the side at the hip."""
    page = RuleTable(title)

    def turned(*numbers: float) -> tuple[float, float]:
        *block, by = numbers
        back = back_from(*block)
        side = back.leg.hip
        angle = wedge_angle(by, back.hip)
        q = rotate(back.cb_waist, side, -sign * angle)
        tilt = back.base.x - q.x
        if back.tilt < 2 * LEAST_TILT and tilt < back.tilt:
            raise RuleError(
                "the seat line stands upright already, as that of trousers that are "
                "pulled on does: leave this off and lower the centre back waist (rq)"
            )
        if tilt < LEAST_TILT <= back.tilt:
            raise RuleError("the seat line would stand upright: alter by less")
        return tilt, -back.front.rise - q.y

    def tilt(*numbers: float) -> float:
        return turned(*numbers)[0]

    def rise(*numbers: float) -> float:
        return turned(*numbers)[1]

    needs = (*BACK_KEYS, "by")
    how = "the centre back waist turned about the side at the hip"
    rule = page.rule
    rule("tl", "tilt of the seat", key="tl", source=SOURCE, formula=how, needs=needs)(
        tilt
    )
    rule(
        "rq",
        "rise of the centre back waist",
        key="rq",
        source=SOURCE,
        formula=how,
        needs=needs,
    )(rise)
    return page


class SeatMoved(Alteration):
    """The back slashed across the hip and opened or overlapped at its seat seam."""

    ground: ClassVar[Ground] = TROUSERS
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "trouser back"
        by = self.sign * d.n[at]
        sheet = level_slash(d.sheet, "TB", d["Yb"].y - 0.02, by, 0.0, MARKS["TB"])
        d.lay(
            Verb.SPREAD,
            sheet,
            "TB",
            "back slashed along the hip line and "
            + ("opened" if by > 0 else "overlapped"),
            amounts=(("by {} at the seat seam", at),),
            frm=("Hbs",),
            detail="to nothing at the side; the seat line is ruled again from its base "
            "to the new waist, and the side is as far from it at the hip as it was",
        )


class FullTrouserSeat(SeatMoved):
    """Back opened across the seat."""

    do: Literal["full seat of trousers"] = "full seat of trousers"
    title: ClassVar[str] = "trousers opened over the seat"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _seat("trousers opened over the seat", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("TB.seat", "TB.waist", "TB.crotch", "TB.side")
    follows: ClassVar[str] = (
        "the seat seam is longer and leans more; waist and side keep their lengths"
    )
    sign: ClassVar[float] = 1.0


class FlatTrouserSeat(SeatMoved):
    """Back overlapped across the seat."""

    do: Literal["flat seat of trousers"] = "flat seat of trousers"
    title: ClassVar[str] = "trousers overlapped under the seat"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _seat("trousers overlapped under the seat", -1.0)
    moves: ClassVar[tuple[str, ...]] = FullTrouserSeat.moves
    follows: ClassVar[str] = (
        "the seat seam is shorter and leans less; waist and side keep their lengths"
    )
    sign: ClassVar[float] = -1.0


# -- the waist behind ------------------------------------------------------------------
GAPING = RuleTable("waist of the trousers closed behind")


@GAPING.rule(
    "Ew", "ease at the waist", key="Ew", source=SOURCE, formula="Ew − 2·by, all round"
)
def _ease(Ew: float, by: float) -> float:
    return Ew - 2 * by


@GAPING.rule(
    "sh",
    "waist that the front takes from the back",
    key="sh",
    source=SOURCE,
    formula="sh + by/2: the front keeps its waist",
)
def _shift(sh: float, by: float) -> float:
    return sh + by / 2


@GAPING.rule(
    "bd T",
    "back waist darts of the trousers together",
    key="bd_T",
    source=SOURCE,
    formula="bd + by",
)
def _darts(bd_T: float, by: float) -> float:
    if bd_T <= 0:
        raise RuleError(
            "the back has no dart that could take the gaping waist: give the waist "
            "less ease (Ew) instead"
        )
    if bd_T + by > WIDEST:
        raise RuleError(
            f"the back darts would take in {bd_T + by:.1f} cm, more than "
            f"{WIDEST:g} cm: close the waist by less"
        )
    return bd_T + by


class CloseBackWaist(Alteration):
    """Back waist closed by its darts."""

    do: Literal["close back waist"] = "close back waist"
    title: ClassVar[str] = "waist of the trousers closed behind"
    usual: ClassVar[tuple[float, float]] = (0.5, 1.5)
    ground: ClassVar[Ground] = TROUSERS
    page: ClassVar[RuleTable] = GAPING
    moves: ClassVar[tuple[str, ...]] = ("TB.waist", "TB.waist side")
    follows: ClassVar[str] = (
        "the back darts take in as much more; what is sewn to the waist is twice as "
        "much shorter, all round"
    )

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "trouser back"
        darts = [i for i in (1, 2) if f"Pb{i}" in d.sheet.points]
        if not darts:
            raise PaperError("the back has no dart that could take the gaping waist")
        for i in darts:
            a, e = d[f"Db{i}"], d[f"Eb{i}"]
            share = d.n[at] / len(darts) / 2
            out = Point((e.x - a.x) / abs(e.x - a.x) * share, 0.0)
            for mark, way, which in ((f"Db{i}", -1, "centre"), (f"Eb{i}", 1, "side")):
                d.found(
                    mark,
                    d[mark] + out * way,
                    f"back dart, its leg nearer to the {which}, further out",
                    amounts=(("by {}", share),),
                    detail="the waist is shorter by what the darts take in more",
                )


AnyRise = LongRise | ShortRise | FullTrouserSeat | FlatTrouserSeat | CloseBackWaist
