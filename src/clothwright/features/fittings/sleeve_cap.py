"""Sleeves at the cap and the biceps (cutting and costing 6).

A sleeve that drags to the cap on both sides: the cap is raised, and as it keeps its
length to the armhole, the underarms come in; folds across it: lowered. An arm that is
tight: the biceps is spread, and the cap comes down. Drags to the front or to the back:
the top of the cap is turned forward or back of the shoulder notch, and the cap is drawn
again; each half of it keeps its length to its half of the armhole.
"""

from functools import partial
from typing import ClassVar, Literal

from clothwright.blocks.sleeve import turned_cap
from clothwright.blocks.trial import by_trial
from clothwright.curves import Path, Point, Vector
from clothwright.features.fittings.base import SOURCE, Alteration
from clothwright.features.fittings.carry import Shift, carried, carry
from clothwright.features.fittings.ground import SLEEVE, Ground
from clothwright.paper import Drafting, PaperError, Sheet, Verb
from clothwright.rules import RuleError, RuleTable

MARKS = ("T", "K", "Uf", "Ub", "If", "Ib", "Ef", "Eb", "Es", "Ed", "Ep") + (
    *("Hf", "Hb", "Hc"),
)
"""Marks of the sleeve."""


def cap_of(sheet: Sheet) -> Path:
    """The whole cap, from the back underarm to the front."""
    return sheet.edge("SL", "cap back").path + sheet.edge("SL", "cap front").path


def drawn_out(d: Drafting, outwards: float, up: float, turn: float = 0.0) -> Shift:
    """The sleeve with its underarms moved outwards, or both back by `turn`, its top up,
    and what lies below the underarms up as far as the top."""
    top, f, b = d["T"], d["Uf"], d["Ub"]
    elbow = d["Eb"].y if "Eb" in d.sheet.points else 0.0

    def shift(p: Point) -> Vector:
        side = 1.0 if p.x > (f.x + b.x) / 2 else -1.0
        if p.y > f.y + 0.01:
            middle = abs(p.x - (f.x + b.x) / 2) < 0.25 * (f.x - b.x)
            share = max(0.0, 1 - p.y / elbow) if elbow else 0.0 if middle else 1.0
            return Vector((side * outwards - turn) * share, -up)
        share = min(1.0, max(0.0, p.y / top.y))
        return Vector((side * outwards - turn) * (1 - share), -up * share)

    return shift


def redrawn(d: Drafting, shift: Shift, says: str, told: tuple[str, str]) -> None:
    """The sleeve drawn again, and the cap divided anew at the shoulder notch."""
    sheet = carry(d.sheet, "SL", shift, MARKS)
    cap = cap_of(sheet)
    back, front = cap.split_at_length(d.sheet.length("SL", "cap back"))
    p = sheet.piece("SL")
    halves = {"cap back": back, "cap front": front}
    edges = (e.along(halves.get(e.name, e.path)) for e in p.edges)
    sheet = sheet.put(p.with_edges(edges)).named(K=back.end)
    d.lay(Verb.REDRAW, sheet, "SL", says, amounts=(told,), lines=(cap,))


# -- height and width ------------------------------------------------------------------
def _height(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "arm +",
        "biceps width that a fitting adds",
        key="arm_more",
        source=SOURCE,
        formula="found so that the cap is "
        + ("higher" if sign > 0 else "lower")
        + " by the amount",
    )
    def _more(
        arm_more: float,
        UA: float,
        e_arm: float,
        A_f: float,
        A_b: float,
        E_cap: float,
        head_turn: float,
        by: float,
    ) -> float:
        def height(more: float) -> float:
            cap = turned_cap(UA + e_arm + more, A_f, A_b, E_cap, head_turn)
            if cap is None:
                raise RuleError("no cap of this height fits the armhole: alter by less")
            return cap.height

        aim = height(arm_more) + sign * by
        span = sorted((arm_more, arm_more - sign * 5 * by))
        found = by_trial(lambda more: height(more) - aim, *span)
        if found is None:
            raise RuleError("no cap of this height fits the armhole: alter by less")
        return found

    return page


class CapMoved(Alteration):
    """The top of the cap moved up or down, the underarms so that the cap keeps its
    length."""

    counted: ClassVar[str] = "each sleeve"
    ground: ClassVar[Ground] = SLEEVE
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "sleeve"
        by = self.sign * d.n[at]
        was = cap_of(d.sheet)

        def longer(out: float) -> float:
            return carried(was, drawn_out(d, out, by)).length - was.length

        out = by_trial(longer, -4 * abs(by), 4 * abs(by))
        if out is None:
            raise PaperError("the cap cannot be drawn so: make the amount smaller")
        redrawn(
            d,
            drawn_out(d, out, by),
            f"cap of the sleeve, {'higher' if by > 0 else 'lower'}; its underarms "
            f"{'in' if by > 0 else 'out'} until it is as long as it was",
            (("up" if by > 0 else "down") + " by {}", at),
        )


_CAP = ("SL.cap back", "SL.cap front", "SL.underarm back", "SL.underarm front")


class RaiseCap(CapMoved):
    """Cap raised."""

    do: Literal["raise cap"] = "raise cap"
    title: ClassVar[str] = "cap of the sleeve raised"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _height("cap of the sleeve raised", 1.0)
    moves: ClassVar[tuple[str, ...]] = _CAP
    follows: ClassVar[str] = (
        "the cap keeps its length to the armhole, so the sleeve is narrower round the "
        "arm; from its top it is as long as it was"
    )
    sign: ClassVar[float] = 1.0


class LowerCap(CapMoved):
    """Cap lowered."""

    do: Literal["lower cap"] = "lower cap"
    title: ClassVar[str] = "cap of the sleeve lowered"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _height("cap of the sleeve lowered", -1.0)
    moves: ClassVar[tuple[str, ...]] = _CAP
    follows: ClassVar[str] = (
        "the cap keeps its length to the armhole, so the sleeve is wider round the "
        "arm; from its top it is as long as it was"
    )
    sign: ClassVar[float] = -1.0


def _width(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "arm +",
        "biceps width that a fitting adds",
        key="arm_more",
        source=SOURCE,
        formula=f"arm {'+' if sign > 0 else '−'} by, in all",
    )
    def _more(arm_more: float, by: float) -> float:
        return arm_more + sign * by

    return page


class BicepsMoved(Alteration):
    """The sleeve wider or narrower at the biceps, the cap so high that it keeps its
    length. The amount counts all round (cutting and costing 6: "total")."""

    ground: ClassVar[Ground] = SLEEVE
    counted: ClassVar[str] = "all round"
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "sleeve"
        by = self.sign * d.n[at]
        was = cap_of(d.sheet)

        def longer(up: float) -> float:
            return carried(was, drawn_out(d, by / 2, up)).length - was.length

        up = by_trial(longer, -3 * abs(by), 3 * abs(by))
        if up is None:
            raise PaperError("the cap cannot be drawn so: make the amount smaller")
        redrawn(
            d,
            drawn_out(d, by / 2, up),
            f"sleeve {'spread' if by > 0 else 'overlapped'} from cap to hem, its cap "
            f"{'lower' if by > 0 else 'higher'} until that is as long as it was",
            ("by {} in all, half on each side", at),
        )


class FullArms(BicepsMoved):
    """Sleeve let out at the biceps."""

    do: Literal["full arms"] = "full arms"
    title: ClassVar[str] = "sleeve spread at the biceps"
    usual: ClassVar[tuple[float, float]] = (1.0, 4.0)
    most: ClassVar[float] = 4.0
    page: ClassVar[RuleTable] = _width("sleeve spread at the biceps", 1.0)
    moves: ClassVar[tuple[str, ...]] = _CAP
    follows: ClassVar[str] = (
        "the amount is all round; the cap keeps its length to the armhole, so it is "
        "lower"
    )
    sign: ClassVar[float] = 1.0


class ThinArms(BicepsMoved):
    """Sleeve taken in at the biceps."""

    do: Literal["thin arms"] = "thin arms"
    title: ClassVar[str] = "sleeve taken in at the biceps"
    usual: ClassVar[tuple[float, float]] = (1.0, 2.5)
    page: ClassVar[RuleTable] = _width("sleeve taken in at the biceps", -1.0)
    moves: ClassVar[tuple[str, ...]] = _CAP
    follows: ClassVar[str] = (
        "the amount is all round; the cap keeps its length to the armhole, so it is "
        "higher"
    )
    sign: ClassVar[float] = -1.0


# -- the head turned -------------------------------------------------------------------
def _turned(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "turn",
        "top of the cap before the shoulder notch, at a fitting",
        key="head_turn",
        source=SOURCE,
        formula=f"turn {'+' if sign > 0 else '−'} by",
    )
    def _turn(head_turn: float, by: float) -> float:
        return head_turn + sign * by

    return page


class HeadTurned(Alteration):
    """The top of the cap moved along it, forward or back of the shoulder notch; the
    sleeve hangs plumb from its top as before."""

    counted: ClassVar[str] = "each sleeve"
    ground: ClassVar[Ground] = SLEEVE
    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "sleeve"
        by = self.sign * d.n[at]
        was = cap_of(d.sheet)
        before = was.length_to_point(d["T"])

        def off(way: tuple[float, float]) -> tuple[float, float]:
            shift = drawn_out(d, 0.0, way[1], way[0])
            now = carried(was, shift)
            top = now.length_to_point(d["T"] + shift(d["T"]))
            return top - before - by, now.length - was.length

        def longer(aside: float, up: float) -> float:
            return off((aside, up))[1]

        aside, up = by, 0.0
        for _ in range(12):  # the top aside, then up or down, until both are right
            aside -= off((aside, up))[0]
            found = by_trial(partial(longer, aside), -2.0, 2.0)
            if found is None:
                raise PaperError("the cap cannot be turned so: make the amount smaller")
            up = found
        redrawn(
            d,
            drawn_out(d, 0.0, up, aside),
            f"cap of the sleeve: both underarms set {'back' if by > 0 else 'forward'} "
            "until its top lies further "
            + ("forward on it" if by > 0 else "back on it"),
            ("by {} along the cap", at),
        )


class TurnForward(HeadTurned):
    """Top of the cap turned forward."""

    do: Literal["turn sleeve forward"] = "turn sleeve forward"
    title: ClassVar[str] = "head of the sleeve turned forward"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _turned("head of the sleeve turned forward", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("SL.cap back", "SL.cap front")
    follows: ClassVar[str] = (
        "the shoulder notch lies that far behind the top; each half of the cap keeps "
        "its length to its half of the armhole"
    )
    sign: ClassVar[float] = 1.0


class TurnBack(HeadTurned):
    """Top of the cap turned back."""

    do: Literal["turn sleeve back"] = "turn sleeve back"
    title: ClassVar[str] = "head of the sleeve turned back"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _turned("head of the sleeve turned back", -1.0)
    moves: ClassVar[tuple[str, ...]] = ("SL.cap back", "SL.cap front")
    follows: ClassVar[str] = (
        "the shoulder notch lies that far before the top; each half of the cap keeps "
        "its length to its half of the armhole"
    )
    sign: ClassVar[float] = -1.0


AnyCap = RaiseCap | LowerCap | FullArms | ThinArms | TurnForward | TurnBack
