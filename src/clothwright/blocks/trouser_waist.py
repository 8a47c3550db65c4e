"""Numbers of the waist of the trouser block: its darts, its shaping at the side (blocks
E3, E9 of our notes, with their correction C4); half body, cm."""

import math
from dataclasses import replace

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.trial import by_trial
from clothwright.blocks.trouser_curves import Back
from clothwright.blocks.trouser_rules import (
    BACK_KEYS,
    FRONT_KEYS,
    back_from,
    front_from,
)
from clothwright.blocks.waist_line import as_trued
from clothwright.curves import Point
from clothwright.rules import Kind, RuleError, RuleTable

TROUSER_WAIST = RuleTable("waist of the trouser block")
_rule = TROUSER_WAIST.rule
_E = "blocks E"
_C4 = "corrections C4"

SIDE_SHAPING = 3.5
"""A front side seam is taken in by no more between hip and waist, cm (E3)."""

ONE_BACK_DART, LEAST_BACK, LEAST_FRONT = 3.2, 1.0, 0.8
"""A wider back dart is made two, and narrower darts are left out, cm (E9; C4)."""

SECOND_FRONT = 1.2
"""Least width of a second front dart, cm (our own)."""


@_rule(
    "in2",
    "side shaping of the front with the first dart alone",
    source=_C4,
    key="in2",
)
def _in2(
    W: float, Ew: float, xcf: float, half_F: float, cf_in: float, cf_down: float
) -> float:
    across = ((W + Ew) / 4 + 2.0) ** 2 - cf_down**2
    return xcf - cf_in - math.sqrt(max(0.0, across)) + half_F


@_rule(
    "sh",
    "waist that the front takes from the back",
    source=_C4,
    key="sh",
    formula="in2 − 4 cm, kept between nought and 1 cm",
    low=-2.0,
    high=2.0,
)
def _shift(in2: float) -> float:
    return clip(in2 - 4.0, 0.0, 1.0)


@_rule(
    "fd 0",
    "front waist dart by the block, or both together",
    source=f"{_E}3, {_C4}",
    key="fd_0",
    formula="up to 2 cm, then up to 3 cm where the side would be shaped too much; a "
    "second dart beyond",
    low=0.0,
    high=8.0,
)
def _front_dart(in2: float, sh: float) -> float:
    dart = clip(in2, 0.0, 2.0) + clip(in2 - 3.0, 0.0, 1.0)
    dart = dart if dart >= LEAST_FRONT else 0.0
    shaped = in2 + 2.0 - dart - sh
    if shaped > SIDE_SHAPING:
        dart += max(SECOND_FRONT, shaped - 3.0)
    return dart


@_rule(
    "fd T",
    "front waist darts or pleats of the trousers together",
    source=f"{_E}3, {_C4}",
    key="fd_T",
    formula="fd 0 + pl",
)
def _front_intake(fd_0: float, pl: float) -> float:
    return fd_0 + pl


@_rule(
    "fs T",
    "share of the front dart on the crease, where there are two",
    source="our own",
    key="fs_T",
    kind=Kind.RATIO,
    formula="0.6, but not over 3 cm",
    low=0.3,
    high=1.0,
)
def _first_share(fd_T: float) -> float:
    return min(0.6, 3.0 / fd_T) if fd_T > 0 else 0.6


@_rule(
    "n fd",
    "front darts of each half",
    source=f"{_E}3, {_C4}",
    key="nf_T",
    kind=Kind.COUNT,
    formula="one up to 3 cm, else two",
    low=0,
    high=2,
)
def _front_count(fd_T: float) -> float:
    return 0 if fd_T <= 0 else 1 if fd_T <= 3.0 + 1e-9 else 2


@_rule(
    "wTF",
    "front waist of the trousers, half",
    source=f"{_E}3, {_C4}",
    key="w_SF",
    formula="(W + Ew)/4 + sh",
)
def _waist_front(W: float, Ew: float, sh: float) -> float:
    return (W + Ew) / 4 + sh


@_rule(
    "wTB",
    "back waist of the trousers, half",
    source=f"{_E}9, {_C4}",
    key="w_SB",
    formula="(W + Ew)/4 − sh",
)
def _waist_back(W: float, Ew: float, sh: float) -> float:
    return (W + Ew) / 4 - sh


@_rule(
    "xwF",
    "side waist of the front from the crease",
    source=f"{_E}3, {_C4}",
    key="x_wF",
    formula="so far from the centre front as the front waist and its darts",
    needs=(*FRONT_KEYS, "w_SF", "fd_T"),
)
def _side_waist_front(*n: float) -> float:
    *rest, net, dart = n
    front = front_from(*rest)
    cf = front.cf_waist
    across = (net + dart) ** 2 - (cf.y + front.rise) ** 2
    x = cf.x - math.sqrt(max(0.0, across))
    if dart > 0:
        return x
    return by_trial(lambda at: front.line(at).length - net, x - 2, x + 2) or x


def front_widths(total: float, count: float, first: float) -> tuple[float, ...]:
    """The front darts or pleats: of two the one on the crease takes a share."""
    if count < 1:
        return ()
    return (total,) if count < 2 else (first * total, (1 - first) * total)


def back_widths(total: float, count: float) -> tuple[float, ...]:
    """The back darts: of two the inner takes 0.55."""
    if count < 1:
        return ()
    return (total,) if count < 2 else (0.55 * total, 0.45 * total)


@_rule(
    "fd T cut",
    "front darts of the trousers as cut, together",
    source=f"{_E}3, truing 3.6",
    key="fd_T_cut",
    formula="changed until the waist, trued over the folded darts, is wTF",
    needs=(*FRONT_KEYS, "w_SF", "fd_T", "nf_T", "fs_T", "x_wF"),
)
def _front_cut(*n: float) -> float:
    *rest, net, total, count, first, x = n
    front = front_from(*rest)

    def trued(t: float) -> float:
        return front.waist(x, front_widths(t, count, first)).net

    return as_trued(total, net, trued)


@_rule(
    "bd T",
    "back waist darts of the trousers together",
    source=f"{_E}9, {_C4}",
    key="bd_T",
    formula="0.45·(hipB − wTB), at most 5 cm, none under 1 cm",
    low=0.0,
    high=7.0,
)
def _back_dart(hip_B: float, w_SB: float) -> float:
    dart = clip(0.45 * (hip_B - w_SB), 0.0, 5.0)
    return dart if dart >= LEAST_BACK else 0.0


@_rule(
    "n bd",
    "back darts of each half",
    source=f"{_E}9",
    key="nb_T",
    kind=Kind.COUNT,
    formula="one up to 3.2 cm, else two",
    low=0,
    high=2,
)
def _back_count(bd_T: float) -> float:
    return 0 if bd_T <= 0 else 1 if bd_T <= ONE_BACK_DART else 2


def _side_waist(back: Back, reach: float, aim: float) -> Point | None:
    """The side waist at `reach` from the centre back waist, at such a level that the
    back outseam is `aim` long."""
    q = back.cb_waist

    def at(y: float) -> Point:
        across = reach**2 - (y - q.y) ** 2
        return Point(q.x - math.sqrt(max(0.0, across)), y)

    y0 = -back.front.rise
    found = by_trial(lambda y: back.leg.side(at(y)).length - aim, y0 - 4.0, y0 + 6.0)
    return None if found is None else at(found)


def back_side_waist(back: Back, x_front: float, net: float, dart: float) -> Point:
    """The side waist of the back: net and darts away from the centre back waist, and
    its outseam as long as the front's (C4). Raises RuleError when there is none."""
    front = back.front
    aim = front.leg.side(Point(x_front, -front.rise)).length
    reach = net + dart
    at = _side_waist(back, reach, aim)
    if at is None:
        raise RuleError(
            "the side seams of back and front cannot be made equal: the waist (W) and "
            "the hip (H) do not go together; measure both again"
        )
    for _ in range(6):  # without a dart the curve itself is the net waist
        if dart > 0 or at is None:
            break
        more = net - back.line(at).length
        reach += more
        at = _side_waist(back, reach, aim) or at
        if abs(more) < 1e-6:
            break
    return at


@_rule(
    "lb T",
    "length of the back dart, of two the inner",
    source=f"{_E}9",
    key="lb_T",
    formula="13 cm; a second is 11 cm at most",
    low=6.0,
    high=16.0,
)
def _back_length() -> float:
    return 13.0


_SIDE = (*BACK_KEYS, "x_wF", "w_SB", "bd_T")


@_rule(
    "xwB",
    "side waist of the back from its crease",
    source=f"{_E}9, {_C4}",
    key="x_wB",
    formula="net and darts from the centre back waist, outseams equal",
    needs=_SIDE,
)
def _side_waist_x(*n: float) -> float:
    return back_side_waist(back_from(*n[: len(BACK_KEYS)]), *n[len(BACK_KEYS) :]).x


@_rule(
    "ywB",
    "side waist of the back above the crotch line",
    source=f"{_E}9, {_C4}",
    key="y_wB",
    formula="at such a level that the outseams are equal",
    needs=_SIDE,
)
def _side_waist_y(*n: float) -> float:
    return -back_side_waist(back_from(*n[: len(BACK_KEYS)]), *n[len(BACK_KEYS) :]).y


@_rule(
    "bd T cut",
    "back darts of the trousers as cut, together",
    source=f"{_E}9, truing 3.6",
    key="bd_T_cut",
    formula="changed until the waist, trued over the folded darts, is wTB",
    needs=(*BACK_KEYS, "w_SB", "bd_T", "nb_T", "x_wB", "y_wB", "lb_T"),
)
def _back_cut(*n: float) -> float:
    net, total, count, x, y, dart = n[len(BACK_KEYS) :]
    back, side = replace(back_from(*n[: len(BACK_KEYS)]), dart=dart), Point(x, -y)
    return as_trued(total, net, lambda t: back.waist(side, back_widths(t, count)).net)
