"""Trousers at the fork and along the leg (cutting and costing 6).

Pulls that run from the fork: its handle is made longer, in front or behind, and the
inseam drawn again to the knee; loose folds there: shorter. A tight thigh: both forks,
0.3 of it in front and 0.7 behind (blocks E10). A tight calf: inseam and side go out
from the knee to the hem. A leg too short or too long: cut level below the knee.
"""

from typing import ClassVar, Literal

from clothwright.curves import Point, Vector
from clothwright.features.fittings.base import SOURCE, Alteration
from clothwright.features.fittings.carry import (
    STAYS,
    Shift,
    carry,
    level_slash,
    to_places,
)
from clothwright.features.fittings.ground import TROUSERS, Ground
from clothwright.features.fittings.trouser_paper import HALVES, INNER, MARKS
from clothwright.paper import Drafting, Verb
from clothwright.rules import RuleTable

IN_FRONT, BEHIND = 0.3, 0.7
"""Shares of what a thigh wants that front and back forks get (blocks E10)."""


# -- the forks -------------------------------------------------------------------------
def _forks(title: str, front: float, back: float) -> RuleTable:
    """The page of forks made longer by these shares of the amount."""
    page = RuleTable(title)
    if front:

        @page.rule(
            "fF",
            "fork of the front",
            key="fork_F",
            source=SOURCE,
            formula=f"fF {_told(front)}",
        )
        def _fork_front(fork_F: float, by: float) -> float:
            return fork_F + front * by

        @page.rule(
            "off",
            "crease nearer to the side than half way between it and the fork",
            key="off_F",
            source=SOURCE,
            formula=f"off {_told(front / 2)}: crease, side and centre front stay",
        )
        def _off(off_F: float, by: float) -> float:
            return off_F + front / 2 * by

    if back:

        @page.rule(
            "fB",
            "fork of the back",
            key="fork_B",
            source=SOURCE,
            formula=f"fB {_told(back)}",
        )
        def _fork_back(fork_B: float, by: float) -> float:
            return fork_B + back * by

    return page


def _told(share: float) -> str:
    way = "+" if share > 0 else "−"
    return f"{way} by" if abs(share) == 1 else f"{way} {abs(share):g}·by"


class ForksMoved(Alteration):
    """Forks made longer or shorter."""

    counted: ClassVar[str] = "each leg"
    ground: ClassVar[Ground] = TROUSERS
    shares: ClassVar[tuple[float, float]]
    """Of the amount, for front and back; above nought longer."""

    def apply(self, d: Drafting, at: str) -> None:
        for (code, half, _), share in zip(HALVES, self.shares, strict=True):
            if not share:
                continue
            d.part = f"trouser {half}"
            by = share * d.n[at]
            old = d[f"F{half[0]}"]
            out = Vector(INNER[code] * by, 0.0)
            sheet = carry(d.sheet, code, to_places(((old, old + out),)), MARKS[code])
            size = at if abs(share) == 1 else abs(by)
            d.lay(
                Verb.REDRAW,
                sheet,
                f"{code}.crotch",
                f"fork of the {half}, {'longer' if by > 0 else 'shorter'}; crotch and "
                "inseam to it",
                amounts=(("by {}", size),),
                detail="to nothing at the hip and at the knee"
                + (
                    "; lowered or raised until the inseam fits the front's"
                    if code == "TB"
                    else ""
                ),
                lines=tuple(sheet.edge(code, e).path for e in ("crotch", "inseam")),
            )


_FRONT_MOVES = ("TF.crotch", "TF.inseam")
_BACK_MOVES = ("TB.crotch", "TB.inseam")


class LongFrontFork(ForksMoved):
    """Front fork made longer."""

    do: Literal["longer front fork"] = "longer front fork"
    title: ClassVar[str] = "front fork of the trousers let out"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _forks("front fork let out", 1.0, 0.0)
    moves: ClassVar[tuple[str, ...]] = _FRONT_MOVES
    follows: ClassVar[str] = (
        "the back fork is lowered or raised until the inseams fit again; hip, side and "
        "crease stay"
    )
    shares: ClassVar[tuple[float, float]] = (1.0, 0.0)


class ShortFrontFork(ForksMoved):
    """Front fork made shorter."""

    do: Literal["shorter front fork"] = "shorter front fork"
    title: ClassVar[str] = "front fork of the trousers taken in"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _forks("front fork taken in", -1.0, 0.0)
    moves: ClassVar[tuple[str, ...]] = _FRONT_MOVES
    follows: ClassVar[str] = LongFrontFork.follows
    shares: ClassVar[tuple[float, float]] = (-1.0, 0.0)


class LongBackFork(ForksMoved):
    """Back fork made longer."""

    do: Literal["longer back fork"] = "longer back fork"
    title: ClassVar[str] = "back fork of the trousers let out"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _forks("back fork let out", 0.0, 1.0)
    moves: ClassVar[tuple[str, ...]] = _BACK_MOVES
    follows: ClassVar[str] = (
        "the fork is lowered or raised until the inseams fit again; hip, side and "
        "crease stay"
    )
    shares: ClassVar[tuple[float, float]] = (0.0, 1.0)


class ShortBackFork(ForksMoved):
    """Back fork made shorter."""

    do: Literal["shorter back fork"] = "shorter back fork"
    title: ClassVar[str] = "back fork of the trousers taken in"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _forks("back fork taken in", 0.0, -1.0)
    moves: ClassVar[tuple[str, ...]] = _BACK_MOVES
    follows: ClassVar[str] = LongBackFork.follows
    shares: ClassVar[tuple[float, float]] = (0.0, -1.0)


class FullThighs(ForksMoved):
    """Both forks made longer for the thigh."""

    do: Literal["full thighs"] = "full thighs"
    title: ClassVar[str] = "legs of the trousers let out at the thigh"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _forks("legs let out at the thigh", IN_FRONT, BEHIND)
    moves: ClassVar[tuple[str, ...]] = _FRONT_MOVES + _BACK_MOVES
    follows: ClassVar[str] = (
        "each leg is as much wider at the crotch line, 0.3 in front and 0.7 behind; "
        "the inseams fit again"
    )
    shares: ClassVar[tuple[float, float]] = (IN_FRONT, BEHIND)


class ThinThighs(ForksMoved):
    """Both forks made shorter for a thin thigh."""

    do: Literal["thin thighs"] = "thin thighs"
    title: ClassVar[str] = "legs of the trousers taken in at the thigh"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _forks("legs taken in at the thigh", -IN_FRONT, -BEHIND)
    moves: ClassVar[tuple[str, ...]] = FullThighs.moves
    follows: ClassVar[str] = (
        "each leg is as much narrower at the crotch line, 0.3 in front and 0.7 behind; "
        "the inseams fit again"
    )
    shares: ClassVar[tuple[float, float]] = (-IN_FRONT, -BEHIND)


# -- the lower leg ---------------------------------------------------------------------
def _lower_leg(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)
    way = "+" if sign > 0 else "−"
    for key, name in (
        ("KW", "width of the knee, all round"),
        ("HW", "width of the hem, all round"),
    ):
        page.rule(
            key,
            name,
            key=key,
            source=SOURCE,
            formula=f"{key} {way} 4·by: at inseam and side, front and back",
            needs=(key, "by"),
        )(lambda old, by: old + 4 * sign * by)
    return page


class LowerLegMoved(Alteration):
    """Inseam and side moved from the knee to the hem."""

    counted: ClassVar[str] = "each seam"
    ground: ClassVar[Ground] = TROUSERS
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        by = self.sign * d.n[at]
        for code, half, crotch in HALVES:
            d.part = f"trouser {half}"
            sheet = carry(
                d.sheet, code, _from_knee(d, half[0], d[crotch].x, by), MARKS[code]
            )
            d.lay(
                Verb.REDRAW,
                sheet,
                code,
                f"inseam and side of the {half}, from the knee to the hem",
                amounts=(("{} " + ("out" if by > 0 else "in") + " at each", at),),
                detail="parallel; to nothing at fork and hip",
                lines=tuple(sheet.edge(code, e).path for e in ("inseam", "side")),
            )


def _from_knee(d: Drafting, b: str, crease: float, by: float) -> Shift:
    knee = d[f"K{b}"].y - 0.02

    def shift(p: Point) -> Vector:
        if p.y < knee or abs(p.x - crease) < 0.5:
            return STAYS
        return Vector(by if p.x > crease else -by, 0.0)

    return shift


class FullCalves(LowerLegMoved):
    """Legs let out from the knee down."""

    do: Literal["full calves"] = "full calves"
    title: ClassVar[str] = "legs of the trousers let out from the knee down"
    usual: ClassVar[tuple[float, float]] = (0.3, 1.0)
    page: ClassVar[RuleTable] = _lower_leg("legs let out from the knee down", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("TF.side", "TF.inseam", "TB.side", "TB.inseam")
    follows: ClassVar[str] = (
        "knee and hem are four times as much wider, all round; fork and hip stay"
    )
    sign: ClassVar[float] = 1.0


class ThinCalves(LowerLegMoved):
    """Legs taken in from the knee down."""

    do: Literal["thin calves"] = "thin calves"
    title: ClassVar[str] = "legs of the trousers taken in from the knee down"
    usual: ClassVar[tuple[float, float]] = (0.3, 1.0)
    page: ClassVar[RuleTable] = _lower_leg("legs taken in from the knee down", -1.0)
    moves: ClassVar[tuple[str, ...]] = FullCalves.moves
    follows: ClassVar[str] = (
        "knee and hem are four times as much narrower, all round; fork and hip stay"
    )
    sign: ClassVar[float] = -1.0


def _length(title: str, sign: float, places: int = 1) -> RuleTable:
    page = RuleTable(title + (", in two places" if places > 1 else ""))
    if places > 1:

        @page.rule(
            "yk",
            "knee below the crotch line",
            key="yk",
            source=SOURCE,
            formula=f"yk {'+' if sign > 0 else '−'} by/2",
        )
        def _yk(yk: float, by: float) -> float:
            return yk + sign * by / 2

    @page.rule(
        "leg",
        "inside leg of the trousers",
        key="leg",
        source=SOURCE,
        formula=f"leg {'+' if sign > 0 else '−'} by",
    )
    def _leg(leg: float, by: float) -> float:
        return leg + sign * by

    return page


class LegsMoved(Alteration):
    """Front and back cut level below the knee and laid apart or overlapped."""

    counted: ClassVar[str] = "each leg"
    ground: ClassVar[Ground] = TROUSERS
    second: ClassVar[str] = "above the knee"
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        by = self.sign * d.n[at]
        share = by / self.places
        for code, half, crotch in HALVES:
            d.part = f"trouser {half}"
            knee, hem = d[f"K{half[0]}"].y, d[f"M{half[0]}"].y
            sheet = d.sheet
            for y in ((knee + hem) / 2, (knee + d[crotch].y) / 2)[: self.places]:
                sheet = level_slash(
                    sheet, code, y, share, share, MARKS[code], moving="hem"
                )
            d.lay(
                Verb.SPREAD,
                sheet,
                code,
                f"{half} cut level between knee and hem"
                + (" and between fork and knee" if self.places > 1 else "")
                + " and "
                + ("laid apart" if by > 0 else "overlapped"),
                amounts=(("by {} all along", at),),
                detail=("half of it in each place; " if self.places > 1 else "")
                + "inseam and side ruled again from the knee to the hem",
            )


class LongLegs(LegsMoved):
    """Legs lengthened."""

    do: Literal["long legs"] = "long legs"
    title: ClassVar[str] = "legs of the trousers lengthened"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _length("legs of the trousers lengthened", 1.0)
    split: ClassVar[RuleTable] = _length("legs of the trousers lengthened", 1.0, 2)
    moves: ClassVar[tuple[str, ...]] = FullCalves.moves
    follows: ClassVar[str] = "inseams and sides grow alike; the hem keeps its width"
    sign: ClassVar[float] = 1.0


class ShortLegs(LegsMoved):
    """Legs shortened."""

    do: Literal["short legs"] = "short legs"
    title: ClassVar[str] = "legs of the trousers shortened"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _length("legs of the trousers shortened", -1.0)
    split: ClassVar[RuleTable] = _length("legs of the trousers shortened", -1.0, 2)
    moves: ClassVar[tuple[str, ...]] = FullCalves.moves
    follows: ClassVar[str] = "inseams and sides shrink alike; the hem keeps its width"
    sign: ClassVar[float] = -1.0


AnyLeg = (
    LongFrontFork
    | ShortFrontFork
    | LongBackFork
    | ShortBackFork
    | FullThighs
    | ThinThighs
    | FullCalves
    | ThinCalves
    | LongLegs
    | ShortLegs
)
