"""Numbers of the trued waist, and the curve of its edges (first garment 12).

What truing adds or takes is given back in the waist darts, front and back each its own
share, so that the stitched waist is the body's waist with ease. (The notes halve the
excess between front and back; each half keeping its own leaves the bodice and the
peplum equal edge by edge.)
"""

import math
from collections.abc import Callable
from functools import lru_cache

from clothwright.curves import SOLVE, Cubic, Pair, ahead, direction, distance
from clothwright.rules import RuleTable

_SRC = "first garment 12"

WAIST = RuleTable("waist seam")
TRUED = RuleTable("waist darts as cut, waist trued")
_rule = WAIST.rule


@_rule(
    "wF aim",
    "front waist by the measures, half",
    source=f"{_SRC}.4",
    key="aim_F",
    formula="front half − a − fd",
)
def _aim_front(front_half: float, a: float, fd: float) -> float:
    return front_half - a - fd


@_rule(
    "wB aim",
    "back waist by the measures, half",
    source=f"{_SRC}.4",
    key="aim_B",
    formula="xs − a − bd − set-in at the centre back",
)
def _aim_back(xs: float, a: float, bd_net: float, x_back: float) -> float:
    return xs - a - bd_net - x_back


@_rule(
    "w½", "stitched waist, half", source=f"{_SRC}.4", key="w_half", formula="wF + wB"
)
def _w_half(w_F: float, w_B: float) -> float:
    return w_F + w_B


@_rule("w", "stitched waist", source=f"{_SRC}.5", formula="2·w½")
def w(w_half: float) -> float:
    return 2 * w_half


def _dip(half_opening: float, depth: float) -> float:
    """0.5·t·sin α for a seam that leaves the plumb by `half_opening` over `depth` cm.

    t = min(5, 0.4 of the seam below its last bend): the numbers of the notes' own
    worked draft show that the neighbours meant there are the seams, not the waist.
    """
    t = min(5.0, 0.4 * depth)
    return 0.5 * t * half_opening / math.hypot(half_opening, depth)


@_rule(
    "δf",
    "lengthening at the front panel",
    source=f"{_SRC}.2",
    key="delta_f",
    formula="0.5·t·sin(ω/2)",
)
def _delta_f(fd: float, yW: float, y_Pf: float) -> float:
    return _dip(fd / 2, yW - y_Pf)


@_rule(
    "δs",
    "lengthening at the side",
    source=f"{_SRC}.2",
    key="delta_s",
    formula="0.5·t·sin(atan(a/(yW − yB)))",
)
def _delta_s(a: float, yW: float, yB: float) -> float:
    return _dip(a, yW - yB)


@_rule(
    "δb",
    "lengthening at the back panel",
    source=f"{_SRC}.2",
    key="delta_b",
    formula="0.5·t·sin(ωb/2)",
)
def _delta_b(bd_net: float, yW: float, y_Pd: float) -> float:
    return _dip(bd_net / 2, yW - y_Pd)


def waist_curve(
    start: Pair,
    end: Pair,
    down_start: Pair | None,
    down_end: Pair | None,
    dip_start: float,
    dip_end: float,
) -> Cubic:
    """A waist edge from right to left between two seams that run down to it.

    `down_*` is the unit direction of the seam where it meets the waist, None for a
    fold or a centre edge, where the waist is level; `dip_*` lengthens the seam.
    """
    u, v = down_start or (0.0, 1.0), down_end or (0.0, 1.0)
    p, q = ahead(start, u, dip_start), ahead(end, v, dip_end)
    third = distance(p, q) / 3
    (ux, uy), (vx, vy) = u, v  # the curve leaves and arrives square to these
    return Cubic(p, ahead(p, (-uy, ux), third), ahead(q, (vy, -vx), third), q)


def raised_at(x: float, sway: float, sway_dart: float, x_dart: float) -> float:
    """How far the back waist is raised (a sway back) at `x`, between the centre back
    and the dart's base at `x_dart`, cm."""
    return sway - (sway - sway_dart) * x / x_dart


@lru_cache(maxsize=3)  # the excess that is told is the first that is given back
def _front_length(
    fd: float,
    X: float,
    x_Pf: float,
    xs: float,
    a: float,
    yW: float,
    yB: float,
    y_Pf: float,
    delta_f: float,
    delta_s: float,
) -> float:
    apex, wf = (x_Pf, y_Pf), (xs + a, yW)
    d1, d2 = (x_Pf + fd / 2, yW), (x_Pf - fd / 2, yW)
    side = direction((xs, yB), wf)
    centre = waist_curve((X, yW), d1, None, direction(apex, d1), 0.0, delta_f)
    flank = waist_curve(d2, wf, direction(apex, d2), side, delta_f, delta_s)
    return centre.length + flank.length


@lru_cache(maxsize=3)
def _back_length(
    bd: float,
    xs: float,
    a: float,
    xd: float,
    x_back: float,
    yW: float,
    yB: float,
    y_Pd: float,
    delta_b: float,
    delta_s: float,
    sway: float,
    sway_dart: float,
) -> float:
    apex, wb = (xd, y_Pd), (xs - a, yW)
    base = yW - sway_dart
    d1, d2 = (xd - bd / 2, base), (xd + bd / 2, base)
    side = direction((xs, yB), wb)
    flank = waist_curve(wb, d2, side, direction(apex, d2), delta_s, delta_b)
    cb = x_back, yW - raised_at(x_back, sway, sway_dart, d1[0])
    centre = waist_curve(d1, cb, direction(apex, d1), None, delta_b, 0.0)
    return flank.length + centre.length


_FRONT = ("X", "x_Pf", "xs", "a", "yW", "yB", "y_Pf", "delta_f", "delta_s")
_BACK = (
    *("xs", "a", "xd", "x_back", "yW", "yB", "y_Pd", "delta_b", "delta_s"),
    *("sway", "sway_dart"),
)
"""Where the trued edges lie: what `_front_length` and `_back_length` take after the
dart."""


@_rule(
    "exF",
    "excess of the trued front waist",
    source=f"{_SRC}.4",
    key="ex_F",
    formula="trued edges − wF aim",
    needs=("aim_F", "fd", *_FRONT),
)
def _ex_front(aim_F: float, fd: float, *place: float) -> float:
    return _front_length(fd, *place) - aim_F


@_rule(
    "exB",
    "excess of the trued back waist",
    source=f"{_SRC}.4",
    key="ex_B",
    formula="trued edges − wB aim",
    needs=("aim_B", "bd_net", *_BACK),
)
def _ex_back(aim_B: float, bd_net: float, *place: float) -> float:
    return _back_length(bd_net, *place) - aim_B


@_rule("ex", "excess of the trued waist", source=f"{_SRC}.4", formula="exF + exB")
def ex(ex_F: float, ex_B: float) -> float:
    return ex_F + ex_B


def _given_back(dart: float, excess: Callable[[float], float]) -> float:
    """The dart changed until the trued edges have no excess, within 0.01 mm."""
    for _ in range(4):
        more = excess(dart)
        dart += more
        if abs(more) < SOLVE:  # the next would be a hundredth of it
            break
    return dart


@TRUED.rule(
    "fd cut",
    "front waist dart as cut",
    source=f"{_SRC}.4",
    key="fd_cut",
    formula="fd changed by the excess of the trued front waist",
    needs=("aim_F", "fd", *_FRONT),
)
def _fd_cut(aim_F: float, fd: float, *place: float) -> float:
    return _given_back(fd, lambda dart: _front_length(dart, *place) - aim_F)


@TRUED.rule(
    "bd cut",
    "back waist dart as cut",
    source=f"{_SRC}.4",
    key="bd_cut",
    formula="bd changed by the excess of the trued back waist",
    needs=("aim_B", "bd_net", *_BACK),
)
def _bd_cut(aim_B: float, bd_net: float, *place: float) -> float:
    return _given_back(bd_net, lambda dart: _back_length(dart, *place) - aim_B)


LEVEL_BACK = RuleTable("waist darts as the block has them, waist trued")


@LEVEL_BACK.rule("bd cut", "back waist dart as cut", source="blocks A4", key="bd_cut")
def _bd_level(bd_net: float) -> float:
    return bd_net


def _stitched(symbol: str, half: str) -> None:
    """The stitched waist of a half: as wanted when the excess is given back in its
    dart, else as it was trued (12.4, 12.5)."""
    key, aim, over = f"w_{symbol}", f"aim_{symbol}", f"ex_{symbol}"
    title, source = f"stitched {half} waist, half", f"{_SRC}.4"
    given, kept = f"w{symbol} aim", f"w{symbol} aim + ex{symbol}"

    @TRUED.rule(
        f"w{symbol}", title, source=source, key=key, formula=given, needs=(aim,)
    )
    def _as_wanted(aim: float) -> float:
        return aim

    @LEVEL_BACK.rule(
        f"w{symbol}", title, source=source, key=key, formula=kept, needs=(aim, over)
    )
    def _as_trued(aim: float, excess: float) -> float:
        return aim + excess


_stitched("F", "front")
_stitched("B", "back")
