"""A fuller or smaller bust than the block's: opened or overlapped at the bust point.

The front is slashed from the armhole at the pitch to the bust point and from there to
the waist. The side opens by the amount at the bust point, hinged at the armhole; what
lies below is let down by 0.9 of it [0.8–1.0]; bust dart and waist dart take it in again
(cutting and costing 6). The armhole, the side seam and the waist keep their lengths.
"""

import math
from typing import ClassVar, Literal, NamedTuple

from clothwright.curves import (
    Point,
    Vector,
    degrees_between,
    distance,
    rotate,
    shift,
    wedge_angle,
)
from clothwright.features.fittings.base import (
    FRONT_MARKS,
    SOURCE,
    Alteration,
    turn_marks,
)
from clothwright.features.fittings.front_armhole import pitch
from clothwright.paper import (
    CornerAfter,
    Drafting,
    EdgeKind,
    On,
    Verb,
    move,
    redraw,
    spread,
    straight,
)
from clothwright.rules import Kind, RuleError, RuleTable

_WORDS = {True: ("opened", "out", "up"), False: ("overlapped", "in", "down")}
"""What is done at the slash, and where the centre front goes."""

LENGTHENED = 0.9
"""Share of the opening by which the centre front grows [0.8–1.0]."""

_PITCH = (
    *("X", "xfw", "x_hf", "y_hf", "sigma_f", "SH", "xs", "yB", "x_BP", "y_BP"),
    "theta",
)


class Opened(NamedTuple):
    """The side of the front after the slash has opened."""

    wider: float
    """What the front grows at the bust, cm."""

    angle: float
    """Angle of the bust dart, degrees."""


def open_at_bust(
    by: float, pitch_at: Point, bp: Point, gc: Point, theta: float
) -> Opened:
    """Open (or overlap, below 0) by `by` cm at the bust point, hinged at the pitch.

    `gc` is the underarm with the bust dart closed. The underarm swings with the side;
    the paper below goes out until both are equally far from the bust point, so that the
    side seam keeps its length. Raises RuleError.
    """
    arm = distance(pitch_at, bp)
    swing = wedge_angle(by, arm)
    g = rotate(rotate(gc, bp, theta), pitch_at, swing)
    dx, dy = bp.x - gc.x, bp.y - gc.y - LENGTHENED * by
    rest = distance(g, bp) ** 2 - dy**2
    if rest <= 0:
        raise RuleError(
            "the bust point lies too far below the armhole for this: alter by less"
        )
    wider = math.sqrt(rest) - dx
    below = gc + Vector(-wider, LENGTHENED * by)
    return Opened(wider, degrees_between(below - bp, g - bp))


def _page(title: str, sign: float) -> RuleTable:
    page = RuleTable(title)

    def how(numbers: tuple[float, ...]) -> Opened:
        *place, by = numbers
        at = pitch(*place)
        xs, yB, x_BP, y_BP, theta = place[6:]
        return open_at_bust(sign * by, at, Point(x_BP, y_BP), Point(xs, yB), theta)

    needs = (*_PITCH, "by")

    @page.rule(
        "δ",
        "what the front grows at the bust",
        key="wider",
        source=SOURCE,
        formula="until the side seam keeps its length",
        needs=needs,
    )
    def _wider(*numbers: float) -> float:
        return how(numbers).wider

    @page.rule(
        "θ",
        "angle of the bust dart",
        key="theta",
        kind=Kind.ANGLE,
        source=SOURCE,
        formula="between the side above and below, at the bust point",
        needs=needs,
    )
    def _theta(*numbers: float) -> float:
        angle = how(numbers).angle
        if angle < 3.0:
            raise RuleError(
                f"{title}: the bust dart would open by {angle:.1f}° only, less than "
                "3°: alter by less"
            )
        return angle

    def grows(key: str, symbol: str, name: str) -> None:
        def more(old: float, wider: float) -> float:
            return old + wider

        page.rule(
            symbol,
            name,
            key=key,
            source=SOURCE,
            formula=f"{symbol} + δ",
            needs=(key, "wider"),
        )(more)

    grows("X", "X", "line of the centre front")
    grows("half", "half", "half bust with ease")
    grows("front_half", "half − xs", "front half width")
    grows("x_BP", "x(BP)", "bust point, across")
    grows("x_hf", "x(hf)", "front shoulder neck point, across")

    @page.rule("fd", "front waist dart", key="fd", source=SOURCE, formula="fd + δ")
    def _fd(fd: float, wider: float) -> float:
        if fd + wider < 0:
            raise RuleError(
                f"{title}: the front waist dart takes in {fd:.1f} cm only, less "
                "than is overlapped: alter by less"
            )
        return fd + wider

    def rises(key: str, symbol: str, name: str) -> None:
        def less(old: float, by: float) -> float:
            return old - sign * LENGTHENED * by

        page.rule(
            symbol,
            name,
            key=key,
            source=SOURCE,
            formula=f"{symbol} {'−' if sign > 0 else '+'} 0.9·by, the waist level",
            needs=(key, "by"),
        )(less)

    rises("y_BP", "yBP", "level of the bust point")
    rises("y_hf", "y(hf)", "level of the front shoulder neck point")
    return page


class BustAltered(Alteration):
    """Front opened or overlapped at the bust point."""

    sign: ClassVar[float]

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "front"
        before, by = d.sheet, self.sign * d.n[at]
        s = d.sheet.edge("F", "armhole").path.length_to_point(d["pf"])
        sheet = spread(
            d.sheet,
            "F",
            On("armhole", s),
            CornerAfter("dart low"),
            at_start=0.0,
            at_end=by,
            moving="side high",
        )
        done, out, up = _WORDS[by > 0]
        d.lay(
            Verb.SPREAD,
            sheet,
            "F",
            f"front slashed from the armhole at the pitch to BP, the side {done}",
            amounts=(("by {} at BP", at),),
            frm=("pf", "BP"),
            detail="to nothing at the armhole",
        )
        turn_marks(d, before, "F", "side high", ("G", "U1"))
        m = shift(Vector(d.n[f"{at}.wider"], -LENGTHENED * by))
        stays = ("Gc", "wf", "U2", "D2")
        d.sheet = d.sheet.named(**{k: m(d[k]) for k in FRONT_MARKS if k not in stays})
        d.sheet = d.sheet.named(CFw=Point(d["CFw"].x, d["wf"].y))
        d.sheet = d.sheet.named(D1=Point(d["D1"].x, d["wf"].y))
        f = move(d.sheet, "F", m).piece("F")
        cf = straight("cf", f.edge("cf").path.start, d["CFw"], EdgeKind.FOLD)
        names = ["cf", "waist", "leg cf", "leg side", "waist side", "side low"]
        names += ["dart low", "gap end", "dart high"]
        below = [
            cf,
            straight("waist", d["CFw"], d["D1"]),
            straight("leg cf", d["D1"], d["BP"]),
            straight("leg side", d["BP"], d["D2"]),
            straight("waist side", d["D2"], d["wf"]),
            straight("side low", d["wf"], d["U2"]),
            straight("dart low", d["U2"], d["BP"]),
            straight("dart high", d["BP"], d["U1"]),
        ]
        sheet = redraw(d.sheet.put(f), "F", names, below)
        d.lay(
            Verb.REDRAW,
            sheet,
            "F",
            f"front beside the slash, laid {out} with its neck and centre line",
            amounts=(
                (f"{out} by {{}}", f"{at}.wider"),
                (f"{up} by {{}}", LENGTHENED * abs(by)),
            ),
            detail="the side below the dart stays; the centre front is ruled to the "
            "waist, and both darts to BP again",
        )


class FullBust(BustAltered):
    """Front opened at the bust point."""

    do: Literal["full bust"] = "full bust"
    title: ClassVar[str] = "front opened for a full bust"
    usual: ClassVar[tuple[float, float]] = (0.6, 2.5)
    page: ClassVar[RuleTable] = _page("front opened for a full bust", 1.0)
    moves: ClassVar[tuple[str, ...]] = ("F.side high", "F.cf", "F.waist")
    follows: ClassVar[str] = (
        "bust dart and waist dart grow, the centre front is 0.9 of it longer; armhole, "
        "side and waist keep their lengths"
    )
    sign: ClassVar[float] = 1.0


class SmallBust(BustAltered):
    """Front overlapped at the bust point."""

    do: Literal["small bust"] = "small bust"
    title: ClassVar[str] = "front overlapped for a small bust"
    moves: ClassVar[tuple[str, ...]] = FullBust.moves
    usual: ClassVar[tuple[float, float]] = (0.6, 1.5)
    page: ClassVar[RuleTable] = _page("front overlapped for a small bust", -1.0)
    follows: ClassVar[str] = (
        "bust dart and waist dart shrink, the centre front is 0.9 of it shorter; "
        "armhole, side and waist keep their lengths"
    )
    sign: ClassVar[float] = -1.0
