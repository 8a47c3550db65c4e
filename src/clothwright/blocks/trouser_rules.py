"""Numbers of the trouser block, half body, cm (blocks E of our notes, with their
corrections C1, C2 and C4).

Each half stands on its own crease line; y runs down from the crotch line. The keys of
what a skirt has too end in _T.
"""

import math

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.trial import by_trial
from clothwright.blocks.trouser_curves import Back, Front
from clothwright.blocks.waist_line import as_trued
from clothwright.curves import Point
from clothwright.rules import Kind, RuleError, RuleTable

TROUSERS = RuleTable("trouser block")
_rule = TROUSERS.rule
_E = "blocks E"
_C1, _C4 = "corrections C1", "corrections C4"

CROTCH_ROOM = 0.5, 3.5
"""The crotch seam is so much longer than the body's crotch length, cm (T5)."""

THIGH_ROOM = 4.0
"""Room over the thigh at the crotch line, cm (T6)."""

SIDE_SHAPING = 3.5
"""A front side seam is taken in by no more between hip and waist, cm (E3)."""

ONE_BACK_DART, LEAST_BACK, LEAST_FRONT = 3.2, 1.0, 0.8
"""A wider back dart is made two, and narrower darts are left out, cm (E9; C4)."""

SECOND_FRONT = 1.2
"""Least width of a second front dart, cm (our own)."""

_FRONT = (
    *("BRe", "hip_F", "fork_F", "cf_in", "cf_down"),
    *("yk", "KW", "leg", "HW", "pl", "lf_T"),
)
"""What `Front` is made of."""

_BACK = (*_FRONT, "hip_B", "fork_B", "tl", "rq", "drop")
"""What `Front` and `Back` are made of."""


def _front(*n: float) -> Front:
    rise, hip, fork, cf_in, cf_down, knee, knee_girth, hem, hem_girth, pl, dart = n
    return Front(
        *(rise, hip, fork, cf_in, cf_down),
        *(knee, knee_girth, hem, hem_girth, pl, dart),
    )


def _back(*n: float) -> Back:
    hip, fork, tilt, rise, drop = n[len(_FRONT) :]
    return Back(_front(*n[: len(_FRONT)]), hip, fork, tilt, rise, drop)


# -- levels (E1) -----------------------------------------------------------------------
@_rule(
    "BRe",
    "body rise with ease",
    source=f"{_E}1",
    formula="BR + Er",
    low=18.0,
    high=50.0,
)
def BRe(BR: float, Er: float) -> float:
    return BR + Er


@_rule(
    "yh T", "hip above the crotch line", source=f"{_E}1", key="yh_T", formula="BRe/3"
)
def _hip_up(BRe: float) -> float:
    return BRe / 3


@_rule(
    "leg",
    "inside leg of the trousers",
    source=f"{_E}1",
    formula="IL",
    low=30.0,
    high=110.0,
)
def leg(IL: float) -> float:
    return IL


@_rule(
    "yk",
    "knee below the crotch line",
    source=f"{_E}1",
    formula="IL/2 − 4 cm",
    low=15.0,
    high=50.0,
)
def yk(IL: float, leg: float) -> float:
    knee = IL / 2 - 4.0
    if leg < knee + 5.0:
        raise RuleError(
            f"the inside leg of the trousers (leg) is {leg:.1f} cm and would end at "
            f"the knee, {knee:.1f} cm down, or above it: make leg longer"
        )
    return knee


# -- widths (E2, E5, E7) ---------------------------------------------------------------
@_rule(
    "KW",
    "width of the knee, all round",
    source=_E,
    formula="KN + 8 cm, at least 44 cm",
    low=34.0,
    high=90.0,
)
def KW(KN: float) -> float:
    return max(44.0, KN + 8.0)


@_rule(
    "HW",
    "width of the hem, all round",
    source=_E,
    formula="AN + 18 cm, at least 38 cm",
    low=26.0,
    high=120.0,
)
def HW(AN: float) -> float:
    return max(38.0, AN + 18.0)


def _to_each_side(symbol: str, half: str, level: str, girth: str, more: float) -> None:
    sign = "+" if more > 0 else "−"

    @_rule(
        symbol,
        f"{half} at the {level}, to each side of the crease",
        source=f"{_E}5",
        key=f"{symbol}_T",
        formula=f"({girth}/2 {sign} 1 cm)/2",
        needs=(girth,),
    )
    def _half(round_: float) -> float:
        return (round_ / 2 + more) / 2


_to_each_side("kF", "front", "knee", "KW", -1.0)
_to_each_side("mF", "front", "hem", "HW", -1.0)
_to_each_side("kB", "back", "knee", "KW", 1.0)
_to_each_side("mB", "back", "hem", "HW", 1.0)


@_rule(
    "hipF",
    "front half width at the hip",
    source=f"{_E}2",
    key="hip_F",
    formula="(H + Eh)/4 − 0.5 cm",
)
def _hip_front(H: float, Eh: float) -> float:
    return (H + Eh) / 4 - 0.5


@_rule(
    "hipB",
    "back half width at the hip",
    source=f"{_E}7",
    key="hip_B",
    formula="(H + Eh)/4 + 0.5 cm",
)
def _hip_back(H: float, Eh: float) -> float:
    return (H + Eh) / 4 + 0.5


@_rule(
    "tt",
    "wanting at the thigh with the usual forks",
    source=f"{_E}10, T6",
    key="tt",
    formula="TH + 4 cm − width at the crotch line, kept between nought and 2 cm",
    low=0.0,
    high=2.0,
    needs=("TH", "H", "Eh", "BRe", "cf_in", "cf_down", "yk", "KW", "leg", "HW", "tl"),
)
def _thigh(
    TH: float,
    H: float,
    Eh: float,
    rise: float,
    cf_in: float,
    cf_down: float,
    knee: float,
    knee_girth: float,
    hem: float,
    hem_girth: float,
    tl: float,
) -> float:
    hip = (H + Eh) / 4
    front = Front(
        *(rise, hip - 0.5, H / 20 + 0.5, cf_in, cf_down),
        *(knee, knee_girth, hem, hem_girth),
    )
    back = Back(front, hip + 0.5, H / 10 + 1.0, tl, 2.5, 0.0)
    width = front.leg.width_at_crotch() + back.leg.width_at_crotch()
    return clip(TH + THIGH_ROOM - width, 0.0, 2.0)


@_rule(
    "fF",
    "fork of the front",
    source=f"{_E}2, E10",
    key="fork_F",
    formula="H/20 + 0.5 cm, and 0.3 of what the thigh wants",
    low=3.0,
    high=10.0,
)
def _fork_front(H: float, tt: float) -> float:
    return H / 20 + 0.5 + 0.3 * tt


@_rule(
    "fB",
    "fork of the back",
    source=f"{_E}7, E10",
    key="fork_B",
    formula="H/10 + 1 cm, and 0.7 of what the thigh wants",
    low=6.0,
    high=20.0,
)
def _fork_back(H: float, tt: float) -> float:
    return H / 10 + 1.0 + 0.7 * tt


@_rule(
    "xcf",
    "centre front upright from the crease",
    source=f"{_E}2",
    key="xcf",
    formula="(hipF − fF)/2",
)
def _xcf(hip_F: float, fork_F: float) -> float:
    return (hip_F - fork_F) / 2


@_rule(
    "half F",
    "front from the crease to the fork and to the side",
    source=f"{_E}2",
    key="half_F",
    formula="(hipF + fF)/2",
)
def _half_front(hip_F: float, fork_F: float) -> float:
    return (hip_F + fork_F) / 2


@_rule(
    "xK",
    "base of the seat line from the crease of the back",
    source=f"{_E}7",
    key="x_K",
    formula="xcf − 1 cm",
)
def _base(xcf: float) -> float:
    return xcf - 1.0


@_rule(
    "tl",
    "tilt of the seat",
    source=f"{_E}7",
    formula="(H − W)/8, kept between 2 cm and 4.5 cm",
    low=0.5,
    high=6.0,
)
def tl(H: float, W: float) -> float:
    return clip((H - W) / 8, 2.0, 4.5)


@_rule(
    "drop",
    "fork of the back below the crotch line",
    source=f"{_E}8",
    key="drop",
    formula="found so that the back inseam to the knee is shorter than the front's by "
    "what it is stretched",
    needs=(*_FRONT, "hip_B", "fork_B", "tl", "st"),
)
def _drop(*n: float) -> float:
    *rest, stretched = n
    aim = _front(*n[: len(_FRONT)]).leg.inseam().segments[0].length - stretched

    def off(drop: float) -> float:
        return _back(*rest, 2.5, drop).leg.inseam().segments[0].length - aim

    found = by_trial(off, -4.0, 8.0)
    if found is None:
        raise RuleError(
            "the back inseam cannot be made to fit the front's: the hip (H) and the "
            "inside leg (IL) do not go together; measure both again"
        )
    return found


@_rule(
    "rq",
    "rise of the centre back waist",
    source=f"{_E}7, T5",
    key="rq",
    formula="2.5 cm; more or less, from 2 cm to 3.5 cm, when the crotch seam would "
    "be shorter or longer than CRL asks",
    low=0.0,
    high=5.0,
    needs=(*_FRONT, "hip_B", "fork_B", "tl", "drop", "CRL"),
)
def _raise(*n: float) -> float:
    *rest, drop, crl = n
    back = _back(*rest, 2.5, drop)
    room = back.crotch().length + back.front.crotch().length - crl
    low, high = CROTCH_ROOM
    return clip(2.5 + max(0.0, low - room) - max(0.0, room - high), 2.0, 3.5)


# -- waist (E3, E9) --------------------------------------------------------------------
def _trial_intake(net: float, hip_F: float, fork_F: float, cf: Point) -> float:
    """Side shaping of the front with a dart of 2 cm (C4)."""
    across = math.sqrt(max(0.0, (net + 2.0) ** 2 - cf.y**2))
    return cf.x - across + (hip_F + fork_F) / 2


_WAIST = ("W", "Ew", "hip_F", "fork_F", "cf_in", "cf_down")


def _intake(
    W: float, Ew: float, hip_F: float, fork_F: float, cf_in: float, cf_down: float
) -> float:
    cf = Point((hip_F - fork_F) / 2 - cf_in, cf_down)
    return _trial_intake((W + Ew) / 4, hip_F, fork_F, cf)


@_rule(
    "in2",
    "side shaping of the front with a dart of 2 cm",
    source=_C4,
    key="in2",
    needs=_WAIST,
)
def _in2(*n: float) -> float:
    return _intake(*n)


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


@_rule("pl", "fullness that pleats add to the front", source=f"{_E}3", key="pl")
def _no_pleats() -> float:
    return 0.0


@_rule("pleated", "front pleated", source=f"{_E}3", key="pleated", kind=Kind.COUNT)
def _not_pleated() -> float:
    return 0


@_rule(
    "lf T",
    "length of the front dart",
    source=f"{_E}3",
    key="lf_T",
    formula="9.5 cm",
    low=6.0,
    high=14.0,
)
def _front_length() -> float:
    return 9.5


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
    needs=(*_FRONT, "w_SF", "fd_T"),
)
def _side_waist_front(*n: float) -> float:
    *rest, net, dart = n
    front = _front(*rest)
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
    needs=(*_FRONT, "w_SF", "fd_T", "nf_T", "fs_T", "x_wF"),
)
def _front_cut(*n: float) -> float:
    *rest, net, total, count, first, x = n
    front = _front(*rest)

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


_SIDE = (*_BACK, "x_wF", "w_SB", "bd_T")


@_rule(
    "xwB",
    "side waist of the back from its crease",
    source=f"{_E}9, {_C4}",
    key="x_wB",
    formula="net and darts from the centre back waist, outseams equal",
    needs=_SIDE,
)
def _side_waist_x(*n: float) -> float:
    return back_side_waist(_back(*n[: len(_BACK)]), *n[len(_BACK) :]).x


@_rule(
    "ywB",
    "side waist of the back above the crotch line",
    source=f"{_E}9, {_C4}",
    key="y_wB",
    formula="at such a level that the outseams are equal",
    needs=_SIDE,
)
def _side_waist_y(*n: float) -> float:
    return -back_side_waist(_back(*n[: len(_BACK)]), *n[len(_BACK) :]).y


@_rule(
    "bd T cut",
    "back darts of the trousers as cut, together",
    source=f"{_E}9, truing 3.6",
    key="bd_T_cut",
    formula="changed until the waist, trued over the folded darts, is wTB",
    needs=(*_BACK, "w_SB", "bd_T", "nb_T", "x_wB", "y_wB"),
)
def _back_cut(*n: float) -> float:
    net, total, count, x, y = n[len(_BACK) :]
    back, side = _back(*n[: len(_BACK)]), Point(x, -y)
    return as_trued(total, net, lambda t: back.waist(side, back_widths(t, count)).net)


@_rule(
    "apart",
    "crease of the back from that of the front, on the paper",
    source="our own",
    key="apart",
    formula="hipF + hipB + 12 cm",
)
def _apart(hip_F: float, hip_B: float) -> float:
    return hip_F + hip_B + 12.0
