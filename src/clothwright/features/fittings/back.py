"""A back that is rounder, narrower or broader than the block's."""

import math
from typing import ClassVar, Literal

from clothwright.curves import Path, Point, Vector, mix, shift
from clothwright.features.fittings.base import (
    SOURCE,
    Alteration,
    turn_marks,
)
from clothwright.features.fittings.lines import armhole_to
from clothwright.paper import Drafting, On, Verb, meetings, move, redraw, spread
from clothwright.rules import Kind, RuleError, RuleTable

ROUND = RuleTable("back opened over the blades")
_rule = ROUND.rule


def _lower(key: str, symbol: str, name: str) -> None:
    def down(old: float, by: float) -> float:
        return old + by

    _rule(
        symbol,
        name,
        key=key,
        source=SOURCE,
        formula=f"{symbol} + by: the nape is that much higher",
        needs=(key, "by"),
    )(down)


_lower("yW", "yW", "level of the waist")
_lower("yB", "yB", "level of the bust line")
_lower("y_BP", "yBP", "level of the bust point")
_lower("y_hf", "y(hf)", "level of the front shoulder neck point")
_lower("y_Pd", "y(Pd)", "level of the point of the back waist dart")


def _shoulder(sigma_b: float, whole: float, by: float) -> tuple[float, float]:
    """Slope and length of the back shoulder from the raised neck to the same tip."""
    g = math.radians(sigma_b)
    across, down = whole * math.cos(g), whole * math.sin(g) + by
    return math.degrees(math.atan2(down, across)), math.hypot(across, down)


@_rule(
    "σb",
    "slope of the back shoulder",
    key="sigma_b",
    kind=Kind.ANGLE,
    source=SOURCE,
    formula="from the raised neck to the same tip",
)
def _slope(sigma_b: float, SH: float, sd: float, se: float, by: float) -> float:
    return _shoulder(sigma_b, SH + sd + se, by)[0]


MOST_EASED = 0.9
"""A back shoulder eases at most this, cm (transformations 1.4)."""


def _grown(sigma_b: float, SH: float, sd: float, se: float, by: float) -> float:
    whole = SH + sd + se
    return _shoulder(sigma_b, whole, by)[1] - whole


@_rule(
    "sd",
    "back shoulder dart",
    key="sd",
    source=SOURCE,
    formula="where there is a dart, it takes what the shoulder has grown",
)
def _dart(sigma_b: float, SH: float, sd: float, se: float, by: float) -> float:
    return sd + _grown(sigma_b, SH, sd, se, by) if sd > 0 else sd


@_rule(
    "se",
    "ease of the back shoulder",
    key="se",
    source="transformations 1.4",
    formula="without a dart: se and what the shoulder has grown, at most 0.9 cm",
)
def _eased(sigma_b: float, SH: float, sd: float, se: float, by: float) -> float:
    if sd > 0:
        return se
    new = se + _grown(sigma_b, SH, sd, se, by)
    if new > MOST_EASED:
        raise RuleError(
            f"the back shoulder would have to ease more than {MOST_EASED} cm: open the "
            "back by less, or give the back shoulder a dart "
            '(back_shoulder = "to panel" or "neck") that takes it'
        )
    return new


HIGHER = 0.5
"""A second slash lies this share of the way from the pitch up to the tip (common
practice, no source)."""


def _opened(d: Drafting, y: float, by: float) -> None:
    """Slash the back level and open it at the centre back, to nothing at the
    armhole."""
    before, b = d.sheet, d.sheet.piece("B")
    level = Path.line(Point(-50.0, y), Point(100.0, y))
    fault = (
        "the back is opened level with its pitch, which lies beside the armhole: "
        "measure XB and AS again"
    )
    cb, arm = (
        On(e, meetings(b.edge(e).path, level, fault)[0][0]) for e in ("cb", "armhole")
    )
    d.sheet = spread(d.sheet, "B", cb, arm, at_start=by, at_end=0.0, moving="shoulder")
    turn_marks(d, before, "B", "shoulder", ("hb", "tb"))


class RoundBack(Alteration):
    """Back opened across the blades."""

    do: Literal["round back"] = "round back"
    title: ClassVar[str] = "back opened over the blades"
    second: ClassVar[str] = "half way up from the pitch"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = ROUND
    moves: ClassVar[tuple[str, ...]] = ("B.cb", "B.neck", "B.shoulder")
    follows: ClassVar[str] = (
        "centre back and nape are as much higher; what the back shoulder grows goes "
        "into its dart, or is eased"
    )
    clashes: ClassVar[dict[str, str]] = {
        "open back": "an open back cuts the blades away; tighten or let out its edge "
        "instead"
    }

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "back"
        two = self.places > 1
        pitch, tip, share = d["pb"], d["tb"], d.n[at] / self.places
        for y in (pitch.y, mix(pitch, tip, HIGHER).y)[: self.places]:
            _opened(d, y, share)
        d.lay(
            Verb.SPREAD,
            d.sheet,
            "B",
            "back slashed across the blades, level with the pitch"
            + (" and half way from there to the shoulder tip" if two else "")
            + ", and opened",
            amounts=(("by {} at the centre back", at),),
            frm=("pb",),
            detail=("half of it in each place, " if two else "")
            + "to nothing at the armhole; the centre back is ruled straight "
            "again, the neck traced at the new nape, and what the shoulder has grown "
            "goes into its dart or is eased",
        )
        down = shift(Vector(0.0, d.n[at]))
        sheet = move(move(d.sheet, "B", down), "F", down)
        d.lay(
            Verb.MOVE,
            sheet,
            "B, F",
            "back and front laid lower, the nape on O again",
            amounts=(("by {}", at),),
        )
        d.sheet = sheet.named(
            **{m: down(p) for m, p in sheet.points.items() if m != "O"}
        )


def _across(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    @page.rule(
        "xb",
        "half across back with ease",
        key="xb",
        source=SOURCE,
        formula=f"xb {'+' if sign > 0 else '−'} by",
    )
    def _xb(xb: float, by: float) -> float:
        return xb + sign * by

    return page


NARROW = _across("back narrowed", -1.0)
BROAD = _across("back let out", 1.0)

OVERHANG = 0.3
"""The back tip hangs at least this far over the pitch, cm (blocks A2.7)."""


def _longer(
    xb: float,
    bw: float,
    sigma_b: float,
    SH: float,
    ti: float,
    sd: float,
    se: float,
    by: float,
) -> float:
    """What the back shoulder grows, so that its tip hangs over the new pitch."""
    level = math.cos(math.radians(sigma_b))
    tip = bw + (SH - ti + sd + se) * level
    return max(0.0, xb + by + OVERHANG - tip) / level


_NEEDS = ("xb", "bw", "sigma_b", "SH", "ti", "sd", "se", "by")


@BROAD.rule(
    "sd",
    "back shoulder dart",
    key="sd",
    source=SOURCE,
    formula="where there is a dart, it takes what the shoulder must grow",
    needs=_NEEDS,
)
def _broad_dart(*numbers: float) -> float:
    sd = numbers[5]
    return sd + _longer(*numbers) if sd > 0 else sd


@BROAD.rule(
    "se",
    "ease of the back shoulder",
    key="se",
    source="transformations 1.4",
    formula="without a dart: se and what the shoulder must grow, at most 0.9 cm",
    needs=_NEEDS,
)
def _broad_ease(*numbers: float) -> float:
    sd, se = numbers[5:7]
    new = se if sd > 0 else se + _longer(*numbers)
    if new > max(se, MOST_EASED):
        raise RuleError(
            "the shoulder tip hangs too little over the back armhole: let the shoulder "
            "out at the tip (ti) first, give the back shoulder a dart "
            '(back_shoulder = "to panel" or "neck"), or alter by less'
        )
    return new


class BackPitchMoved(Alteration):
    """Back armhole moved at the pitch."""

    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "back"
        way = {"right": at} if self.sign > 0 else {"left": at}
        d.point("pb", "pb", "back pitch point", **way)
        edge = d.sheet.edge("B", "armhole")
        path = armhole_to(edge.path, Point(self.sign * d.n[at], 0.0))
        d.lay(
            Verb.REDRAW,
            redraw(d.sheet, "B", ["armhole"], [edge.along(path)]),
            "B.armhole",
            "back armhole, through the new pitch",
            amounts=(("{} " + ("out" if self.sign > 0 else "in"), at),),
            lines=(path,),
        )


class NarrowBack(BackPitchMoved):
    """Back taken in at the armhole."""

    do: Literal["narrow back"] = "narrow back"
    title: ClassVar[str] = "back narrowed at the armhole"
    usual: ClassVar[tuple[float, float]] = (0.5, 1.2)
    page: ClassVar[RuleTable] = NARROW
    moves: ClassVar[tuple[str, ...]] = ("B.armhole",)
    follows: ClassVar[str] = "the back armhole is hollower; a sleeve is drawn to it"
    sign: ClassVar[float] = -1.0


class BroadBack(BackPitchMoved):
    """Back let out at the armhole."""

    do: Literal["broad back"] = "broad back"
    title: ClassVar[str] = "back let out at the armhole"
    usual: ClassVar[tuple[float, float]] = (0.5, 1.2)
    moves: ClassVar[tuple[str, ...]] = NarrowBack.moves
    page: ClassVar[RuleTable] = BROAD
    follows: ClassVar[str] = (
        "the back armhole is flatter, and the back shoulder grows where its tip would "
        "hang too little over it: eased, or into its dart"
    )
    sign: ClassVar[float] = 1.0
