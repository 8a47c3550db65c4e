"""Skirts at the hip and at the side of the waist (cutting and costing 6).

Strain or folds across the hip: the sides go out or come in, parallel from the hip to
the hem. Drag lines or folds above it: the side is let out or taken in over the high
hip. A side that drags to a high hip: the waist goes up at the side.
"""

from abc import abstractmethod
from typing import ClassVar, Literal

from clothwright.curves import Path, Point, Vector, shift
from clothwright.features.fittings.base import Alteration
from clothwright.features.fittings.carry import Shift, carry, to_places
from clothwright.features.fittings.ground import SKIRT, Ground
from clothwright.features.fittings.skirt_net import (
    FRONT_PAPER,
    HALVES,
    HalfPaper,
    Net,
    page,
    side_below,
)
from clothwright.paper import Drafting, On, Sheet, Verb, meetings, move, spread
from clothwright.rules import RuleTable

SIDES = ("SB.side", "SF.side")


class SidesMoved(Alteration):
    """The side of both halves moved alike."""

    ground: ClassVar[Ground] = SKIRT
    sign: ClassVar[float]
    words: ClassVar[str]
    amount: ClassVar[str]
    """What the hands say: "{} out"."""

    @abstractmethod
    def moved(self, d: Drafting, half: HalfPaper, by: float) -> Shift:
        """How the corners of a half go."""

    def apply(self, d: Drafting, at: str) -> None:
        by = self.sign * d.n[at]
        for half in HALVES:
            d.part = f"skirt {half.words}"
            sheet = carry(d.sheet, half.code, self.moved(d, half, by), half.marks)
            d.lay(
                Verb.REDRAW,
                sheet,
                f"{half.code}.side",
                f"{self.words} of the {half.words}",
                amounts=((self.amount, at if self.places == 1 else abs(by) / 2),),
                lines=(sheet.edge(half.code, "side").path,),
            )
        self.afterwards(d, at)

    def afterwards(self, d: Drafting, at: str) -> None:
        """What is laid elsewhere on the table."""


def aside(d: Drafting, key: float, says: str) -> None:
    """Lay the front aside, so that the sides meet again; `key` is how far."""
    m = shift(Vector(key, 0.0))
    marks = {
        k: m(d[k]) for k in (*FRONT_PAPER.marks, "Fs", "Mf") if k in d.sheet.points
    }
    d.part = "skirt front"
    d.lay(
        Verb.MOVE,
        move(d.sheet, FRONT_PAPER.code, m).named(**marks),
        FRONT_PAPER.code,
        says,
        amounts=(("by {}", abs(key)),),
    )


# -- the hip ---------------------------------------------------------------------------
def _hips(sign: float, places: int = 1) -> RuleTable:
    def change(net: Net, by: float) -> Net:
        by *= sign
        at_side = by / places
        return net._replace(
            xs_S=net.xs_S + by, xf_S=net.xf_S + by, a_S=net.a_S + at_side
        )

    way, half = ("+" if sign > 0 else "−"), ("/2" if places > 1 else "")
    return page(
        "hips of the skirt "
        + ("let out" if sign > 0 else "taken in")
        + (", in two places" if places > 1 else ""),
        change,
        {
            "xs_S": f"xs {way} by",
            "xf_S": f"xf {way} by",
            "a_S": f"a {way} by{half}: the waist stays at the side",
        },
    )


SLASH = 0.15
"""A plumb slash that shares in a let-out hip lies so far from the centre, share of the
half width: between the centre and the first dart (our ruling)."""


def _slashed(sheet: Sheet, half: HalfPaper, centre: Point, by: float) -> Sheet:
    """A half slashed plumb from the hem to the waist and opened all along."""
    p = sheet.piece(half.code)
    wide = abs(sheet.points[f"H{half.b}s"].x - centre.x)
    x = centre.x + half.out * SLASH * wide
    plumb = Path.line(Point(x, -20.0), Point(x, 400.0))
    fault = (
        f"a slash of the {half.words} for the hip misses its hem or its waist: let the "
        "hips out in one place"
    )
    ends = [
        On(e, meetings(p.edge(e).path, plumb, fault)[0][0]) for e in ("hem", "waist")
    ]
    after = spread(sheet, half.code, *ends, at_start=by, at_end=by, moving="side")
    m = shift(half.across(by))
    beyond = (
        k
        for k in half.marks
        if k in sheet.points and abs(sheet.points[k].x - centre.x) > SLASH * wide
    )
    return after.named(**{k: m(sheet.points[k]) for k in beyond})


class HipsMoved(SidesMoved):
    """The side from the hip to the hem moved, the waist kept."""

    words: ClassVar[str] = "side from the hip to the hem"
    second: ClassVar[str] = "in a plumb slash between centre and darts"

    def apply(self, d: Drafting, at: str) -> None:
        if self.places > 1:
            by = self.sign * d.n[at] / 2
            for half in HALVES:
                d.part = f"skirt {half.words}"
                d.lay(
                    Verb.SPREAD,
                    _slashed(d.sheet, half, d[half.centre], by),
                    half.code,
                    f"{half.words} slashed plumb from hem to waist, between the centre "
                    "and the darts, and " + ("opened" if by > 0 else "overlapped"),
                    amounts=(("by {} all along", abs(by)), ("half of {}", at)),
                    detail="what the waist has too much goes into the darts",
                )
        super().apply(d, at)

    def moved(self, d: Drafting, half: HalfPaper, by: float) -> Shift:
        return side_below(d, half, half.across(by / self.places))

    def afterwards(self, d: Drafting, at: str) -> None:
        aside(d, 2 * self.sign * d.n[at], "front laid so that the sides meet")


class FullHips(HipsMoved):
    """Sides let out at the hip."""

    do: Literal["full hips"] = "full hips"
    title: ClassVar[str] = "skirt let out at the hips"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _hips(1.0)
    split: ClassVar[RuleTable] = _hips(1.0, 2)
    moves: ClassVar[tuple[str, ...]] = (*SIDES, "SB.hem", "SF.hem")
    follows: ClassVar[str] = (
        "the sides are parallel to the old ones from the hip to the hem; the waist "
        "keeps its length"
    )
    sign: ClassVar[float] = 1.0
    amount: ClassVar[str] = "{} out, parallel; to nothing at the waist"


class NarrowHips(HipsMoved):
    """Sides taken in at the hip."""

    do: Literal["narrow hips"] = "narrow hips"
    title: ClassVar[str] = "skirt taken in at the hips"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _hips(-1.0)
    second: ClassVar[str] = ""
    moves: ClassVar[tuple[str, ...]] = FullHips.moves
    follows: ClassVar[str] = FullHips.follows
    sign: ClassVar[float] = -1.0
    amount: ClassVar[str] = "{} in, parallel; to nothing at the waist"


# -- above the hip ---------------------------------------------------------------------
def _above(sign: float) -> RuleTable:
    def change(net: Net, by: float) -> Net:
        return net._replace(a_S=net.a_S - sign * by)

    way = "−" if sign > 0 else "+"
    return page(
        "skirt " + ("let out" if sign > 0 else "taken in") + " over the high hip",
        change,
        {"a_S": f"a {way} by; the darts take it"},
    )


class WaistAtSideMoved(SidesMoved):
    """The waist end of the side moved across."""

    words: ClassVar[str] = "side from the waist to the hip"

    def moved(self, d: Drafting, half: HalfPaper, by: float) -> Shift:
        old = d[f"W{half.b}s"]
        return to_places(((old, old + half.across(by)),))


class FullHighHips(WaistAtSideMoved):
    """Sides let out over the high hip, the darts made deeper."""

    do: Literal["full high hips"] = "full high hips"
    title: ClassVar[str] = "skirt let out over the high hip"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _above(1.0)
    moves: ClassVar[tuple[str, ...]] = (*SIDES, "SB.waist", "SF.waist")
    follows: ClassVar[str] = "the darts take in as much more; the hip stays"
    sign: ClassVar[float] = 1.0
    amount: ClassVar[str] = "{} out at the waist, to nothing at the hip"


class FlatHighHips(WaistAtSideMoved):
    """Sides taken in over the high hip, the darts made shallower."""

    do: Literal["flat high hips"] = "flat high hips"
    title: ClassVar[str] = "skirt taken in over the high hip"
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _above(-1.0)
    moves: ClassVar[tuple[str, ...]] = FullHighHips.moves
    follows: ClassVar[str] = "the darts take in as much less; the hip stays"
    sign: ClassVar[float] = -1.0
    amount: ClassVar[str] = "{} in at the waist, to nothing at the hip"


# -- the waist -------------------------------------------------------------------------
def _waist(sign: float) -> RuleTable:
    def change(net: Net, by: float) -> Net:
        by *= sign
        return net._replace(a_S=net.a_S - by, Ew=net.Ew + 4 * by)

    back, on = ("−", "+") if sign > 0 else ("+", "−")
    return page(
        "waist of the skirt " + ("let out" if sign > 0 else "taken in"),
        change,
        {"a_S": f"a {back} by", "Ew": f"Ew {on} 4·by"},
    )


class FullWaist(WaistAtSideMoved):
    """Waist let out at the sides."""

    do: Literal["full waist"] = "full waist"
    title: ClassVar[str] = "waist of the skirt let out"
    usual: ClassVar[tuple[float, float]] = (0.3, 1.0)
    page: ClassVar[RuleTable] = _waist(1.0)
    moves: ClassVar[tuple[str, ...]] = FullHighHips.moves
    follows: ClassVar[str] = (
        "what is sewn to the waist is four times as much longer; hip and darts stay"
    )
    sign: ClassVar[float] = 1.0
    amount: ClassVar[str] = FullHighHips.amount


class SmallWaist(WaistAtSideMoved):
    """Waist taken in at the sides."""

    do: Literal["small waist"] = "small waist"
    title: ClassVar[str] = "waist of the skirt taken in"
    usual: ClassVar[tuple[float, float]] = (0.3, 1.0)
    page: ClassVar[RuleTable] = _waist(-1.0)
    moves: ClassVar[tuple[str, ...]] = FullHighHips.moves
    follows: ClassVar[str] = (
        "what is sewn to the waist is four times as much shorter; hip and darts stay"
    )
    sign: ClassVar[float] = -1.0
    amount: ClassVar[str] = FlatHighHips.amount


# -- a high hip ------------------------------------------------------------------------
def _high(sign: float) -> RuleTable:
    def change(net: Net, by: float) -> Net:
        return net._replace(r_S=net.r_S + sign * by)

    return page(
        "side waist of the skirt " + ("raised" if sign > 0 else "lowered"),
        change,
        {"r_S": f"r {'+' if sign > 0 else '−'} by"},
    )


class SideWaistMoved(SidesMoved):
    """The side waist moved up or down, the waist line to nothing at the centre."""

    words: ClassVar[str] = "side to its new waist, and the waist"

    def moved(self, d: Drafting, half: HalfPaper, by: float) -> Shift:
        centre, side = d[half.centre], d[f"W{half.b}s"]
        wide, level = abs(side.x - centre.x), d[f"H{half.b}s"].y / 2

        def up(p: Point) -> Vector:
            if p.y > level:  # points of darts stay
                return Vector(0.0, 0.0)
            return Vector(0.0, -by * (abs(p.x - centre.x) / wide) ** 2)

        return up


class HighHips(SideWaistMoved):
    """Waist raised at the sides."""

    do: Literal["high hips"] = "high hips"
    title: ClassVar[str] = "waist of the skirt raised at the sides"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _high(1.0)
    moves: ClassVar[tuple[str, ...]] = FullHighHips.moves
    follows: ClassVar[str] = (
        "the sides are as much longer, the waist runs in a curve to nothing at the "
        "centres and keeps its length"
    )
    sign: ClassVar[float] = 1.0
    amount: ClassVar[str] = "{} up at the side, to nothing at the centre"


class LowHips(SideWaistMoved):
    """Waist lowered at the sides."""

    do: Literal["low hips"] = "low hips"
    title: ClassVar[str] = "waist of the skirt lowered at the sides"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _high(-1.0)
    moves: ClassVar[tuple[str, ...]] = FullHighHips.moves
    follows: ClassVar[str] = (
        "the sides are as much shorter, the waist runs in a curve to nothing at the "
        "centres and keeps its length"
    )
    sign: ClassVar[float] = -1.0
    amount: ClassVar[str] = "{} down at the side, to nothing at the centre"


AnyHips = (
    FullHips
    | NarrowHips
    | FullHighHips
    | FlatHighHips
    | FullWaist
    | SmallWaist
    | HighHips
    | LowHips
)
