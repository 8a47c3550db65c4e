"""The balance of a skirt: what its seat, its abdomen and a hollow back ask for.

A full seat lifts the hem behind and pulls the sides back: the back is slashed level
across the hip and opened at the centre to nothing at the side, the centre back is
ruled straight again, the side goes out by half as much, and the darts grow. A flat
seat is the reverse; an abdomen is the seat of the front. A hollow back folds across
below the waist: the waist is lowered at the centre back, to nothing at the side
(cutting and costing 6; that the side goes out by half is our ruling).
"""

from typing import ClassVar, Literal

from clothwright.curves import Point, Vector
from clothwright.features.fittings.base import Alteration
from clothwright.features.fittings.carry import both, carry, level_slash, to_places
from clothwright.features.fittings.ground import SKIRT, Ground
from clothwright.features.fittings.skirt_hips import aside
from clothwright.features.fittings.skirt_net import (
    BACK_PAPER,
    FRONT_PAPER,
    HalfPaper,
    Net,
    page,
    side_below,
)
from clothwright.paper import Drafting, Verb
from clothwright.rules import RuleTable

AT_SIDE = 0.5
"""The side goes out by this share of what is opened at the centre (our ruling)."""

BELOW_HIP = 6.0
"""A second slash lies so far below the first, cm (common practice, no source)."""


def _swung(title: str, sign: float, *, back: bool) -> RuleTable:
    def change(net: Net, by: float) -> Net:
        by *= sign
        if back:
            return net._replace(db_S=net.db_S - by, xs_S=net.xs_S + AT_SIDE * by)
        return net._replace(df_S=net.df_S - by, xf_S=net.xf_S + AT_SIDE * by)

    up, out = ("−", "+") if sign > 0 else ("+", "−")
    width, drop, w = ("xs_S", "db_S", "xs") if back else ("xf_S", "df_S", "xf")
    return page(title, change, {drop: f"{drop[:2]} {up} by", width: f"{w} {out} by/2"})


class CentreSwung(Alteration):
    """A half slashed across the hip and opened or overlapped at its centre."""

    ground: ClassVar[Ground] = SKIRT
    sign: ClassVar[float]
    half: ClassVar[HalfPaper]
    second: ClassVar[str] = f"{BELOW_HIP:g} cm below the hip"

    def apply(self, d: Drafting, at: str) -> None:
        half, by = self.half, self.sign * d.n[at]
        d.part = f"skirt {half.words}"
        b, far = half.b, half.across(AT_SIDE * by)
        hip, waist, centre = d[f"H{b}s"], d[f"W{b}s"], d[f"C{b}"]
        top = Point(centre.x, centre.y - by)
        sheet, share = d.sheet, by / self.places
        for y in (hip.y + BELOW_HIP, hip.y)[-self.places :]:
            sheet = level_slash(sheet, half.code, y, share, 0.0, half.marks)
        d.lay(
            Verb.SPREAD,
            sheet,
            half.code,
            f"{half.words} slashed level across the hip"
            + (f", again {BELOW_HIP:g} cm below," if self.places > 1 else "")
            + " and "
            + ("opened" if by > 0 else "overlapped"),
            amounts=(("by {} at the centre", at),),
            frm=(f"H{b}s",),
            detail="to nothing at the side"
            + (", half of it in each place" if self.places > 1 else ""),
        )
        tilted = [sheet.points[m] for m in (f"C{b}", f"W{b}s", f"H{b}s")]
        fold = sheet.piece(half.code).fold
        assert fold is not None
        name = fold.name
        shift = both(
            to_places(zip(tilted, (top, waist + far, hip + far), strict=True)),
            side_below(d, half, far),
        )
        sheet = carry(sheet, half.code, shift, half.marks)
        p = sheet.piece(half.code)
        sheet = sheet.put(
            p.with_edges(
                e.along(e.path.line(e.path.start, e.path.end)) if e.name == name else e
                for e in p.edges
            )
        )
        d.lay(
            Verb.REDRAW,
            sheet,
            half.code,
            f"centre {half.words}, ruled straight again; side of the {half.words}",
            amounts=((f"{'out' if by > 0 else 'in'} by {{}} at the side", abs(far.x)),),
            detail="the waist between them; what it has too much goes into the darts",
        )
        aside(d, abs(far.x) * self.sign, "front laid so that the sides meet")


class FullSeat(CentreSwung):
    """Back opened across the seat."""

    do: Literal["full seat of skirt"] = "full seat of skirt"
    title: ClassVar[str] = "skirt opened over the seat"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _swung("skirt opened over the seat", 1.0, back=True)
    moves: ClassVar[tuple[str, ...]] = ("SB.cb", "SB.waist", "SB.side", "SB.hem")
    follows: ClassVar[str] = (
        "the centre back is as much longer, the back half as much wider at the side; "
        "its darts grow, the waist keeps its length"
    )
    sign: ClassVar[float] = 1.0
    half: ClassVar[HalfPaper] = BACK_PAPER


class FlatSeat(CentreSwung):
    """Back overlapped across the seat."""

    do: Literal["flat seat of skirt"] = "flat seat of skirt"
    title: ClassVar[str] = "skirt overlapped under the seat"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _swung(
        "skirt overlapped under the seat", -1.0, back=True
    )
    moves: ClassVar[tuple[str, ...]] = FullSeat.moves
    follows: ClassVar[str] = (
        "the centre back is as much shorter, the back half as much narrower at the "
        "side; its darts shrink, the waist keeps its length"
    )
    sign: ClassVar[float] = -1.0
    half: ClassVar[HalfPaper] = BACK_PAPER


class FullAbdomen(CentreSwung):
    """Front opened across the abdomen."""

    do: Literal["full abdomen"] = "full abdomen"
    title: ClassVar[str] = "skirt opened over the abdomen"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _swung("skirt opened over the abdomen", 1.0, back=False)
    moves: ClassVar[tuple[str, ...]] = ("SF.cf", "SF.waist", "SF.side", "SF.hem")
    follows: ClassVar[str] = (
        "the centre front is as much longer, the front half as much wider at the side; "
        "its darts grow, the waist keeps its length"
    )
    sign: ClassVar[float] = 1.0
    half: ClassVar[HalfPaper] = FRONT_PAPER


class FlatAbdomen(CentreSwung):
    """Front overlapped across the abdomen."""

    do: Literal["flat abdomen"] = "flat abdomen"
    title: ClassVar[str] = "skirt overlapped over the abdomen"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    page: ClassVar[RuleTable] = _swung(
        "skirt overlapped over the abdomen", -1.0, back=False
    )
    moves: ClassVar[tuple[str, ...]] = FullAbdomen.moves
    follows: ClassVar[str] = (
        "the centre front is as much shorter, the front half as much narrower at the "
        "side; its darts shrink, the waist keeps its length"
    )
    sign: ClassVar[float] = -1.0
    half: ClassVar[HalfPaper] = FRONT_PAPER


def _lower(net: Net, by: float) -> Net:
    return net._replace(db_S=net.db_S + by)


class HollowBack(Alteration):
    """Waist lowered at the centre back, to nothing at the side."""

    do: Literal["hollow back of skirt"] = "hollow back of skirt"
    title: ClassVar[str] = "waist of the skirt lowered for a hollow back"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.0)
    ground: ClassVar[Ground] = SKIRT
    page: ClassVar[RuleTable] = page(
        "waist of the skirt lowered for a hollow back", _lower, {"db_S": "db + by"}
    )
    moves: ClassVar[tuple[str, ...]] = ("SB.cb", "SB.waist")
    follows: ClassVar[str] = (
        "the back waist is trued again over its darts and keeps its length; the side "
        "stays"
    )

    def apply(self, d: Drafting, at: str) -> None:
        half, by = BACK_PAPER, d.n[at]
        d.part = "skirt back"
        wide, level = d["Wbs"].x - d["Os"].x, d["Hbs"].y / 2

        def down(p: Point) -> Vector:
            if p.y > level:
                return Vector(0.0, 0.0)
            return Vector(0.0, by * (1 - (p.x - d["Os"].x) / wide))

        sheet = carry(d.sheet, half.code, down, half.marks)
        d.lay(
            Verb.REDRAW,
            sheet,
            "SB.waist",
            "waist of the back, lowered to the centre, and its darts",
            amounts=(("by {} at the centre back", at),),
            detail="to nothing at the side",
            lines=(sheet.edge("SB", "waist").path,),
        )


AnyBalance = FullSeat | FlatSeat | FullAbdomen | FlatAbdomen | HollowBack
