"""The straight skirt block fitted to a bodice's waist, half body, cm (blocks C and D6).

Each half's waist is the bodice's, so that the side seams meet; its first dart stands
where the bodice's dart or panel seam does. What a half takes in from hip to waist is
shared by side and darts as in C3, and the hip is divided so that it comes out so.
"""

from collections.abc import Sequence

from clothwright.blocks import skirt
from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.skirt_curves import Half, Plan, plan, trued
from clothwright.blocks.skirt_darts import SKIRT_DARTS
from clothwright.blocks.skirt_rules import LEAST, SKIRT, WIDEST, shares
from clothwright.blocks.trial import by_trial
from clothwright.blocks.waist_line import as_trued
from clothwright.curves import IDENTITY
from clothwright.paper import Drafting
from clothwright.rules import RuleTable

BACK, FRONT = "PB", "PF"
"""Codes of the pieces: what hangs on a waist seam."""

_D6 = "blocks D6"
_KEPT = ("AB", "H_S", "half_S", "xs_S", "xf_S", "fs_S", "y_hem", "hem_S")
_LENGTHS = ("lb_in", "lb_out", "lf")

FITTED = RuleTable(
    "straight skirt fitted to a bodice",
    {k: SKIRT.rules[k] for k in _KEPT} | {k: SKIRT_DARTS.rules[k] for k in _LENGTHS},
)
_rule = FITTED.rule

MOST_MOVED = 0.75
"""The hip is divided at most so far from its middle, cm (C1: +0.5 for a prominent
seat, −1.0)."""

_SPARE = 0.3
"""Two darts keep so much room for the curved waist's excess, cm."""


def _half_waist(symbol: str, half: str) -> None:
    @_rule(
        f"wS{symbol}",
        f"{half} waist of the skirt, half",
        source=_D6,
        key=f"w_S{symbol}",
        formula=f"w{symbol} less its share of ew",
        needs=(f"w_{symbol}", "w_half", "ew"),
    )
    def _waist(w: float, w_half: float, ew: float) -> float:
        return w - ew * w / w_half


_half_waist("F", "front")
_half_waist("B", "back")


@_rule(
    "sup S",
    "what the waist of the skirt takes in on the half",
    source="blocks C2",
    key="sup_S",
    formula="half − wSF − wSB",
)
def _sup(half_S: float, w_SF: float, w_SB: float) -> float:
    return half_S - w_SF - w_SB


@_rule(
    "hs",
    "front half wider and back half narrower by",
    source=f"blocks C1, {_D6}",
    key="hs",
    formula="so that the darts of the front take their share, within 0.75 cm",
    low=-1.5,
    high=1.5,
)
def _hs(sup_S: float, fs_S: float, half_S: float, w_SF: float) -> float:
    a, _, fd = shares(sup_S, fs_S)
    return clip(w_SF + a + fd - half_S / 2, -MOST_MOVED, MOST_MOVED)


def _parted(taken: float, a: float) -> tuple[float, float]:
    """(side, darts) of what a half takes in, the side `a` where that leaves a dart of a
    width that can be sewn."""
    dart = taken - a
    over = max(0.0, dart - (2 * WIDEST - _SPARE))
    return (taken, 0.0) if dart < LEAST else (a + over, dart - over)


def _taken(symbol: str, half: str, width: str, dart: str, drop: str) -> None:
    """Side and darts of a half."""
    intake, waist = f"a_S{symbol}", f"w_S{symbol}"

    @_rule(
        f"{dart} S",
        f"{half} darts of the skirt together",
        source=f"blocks C3, {_D6}",
        key=f"{dart}_S",
        formula="what the half takes in less 0.22 of the whole; none under 1 cm",
        low=0.0,
        high=8.0,
        needs=(width, waist, "sup_S", "fs_S"),
    )
    def _darts(x: float, w: float, sup: float, front: float) -> float:
        return _parted(x - w, shares(sup, front)[0])[1]

    @_rule(
        f"a S{symbol}",
        f"intake of the {half} side at the waist of the skirt",
        source=f"blocks C3, {_D6}",
        key=intake,
        formula="0.22 of the whole intake; without a dart all that the half takes in",
        low=-8.0,
        high=8.0,
        needs=(width, waist, f"{dart}_S", "r_S", drop, "WH"),
    )
    def _side(
        x: float, w: float, darts: float, r: float, down: float, hip: float
    ) -> float:
        if darts:
            return x - w - darts

        def over(each: float) -> float:
            return Half(x, each, r, down, hip).waist().length - w

        return by_trial(over, x - w - 2.0, x - w + 2.0) or x - w


_taken("B", "back", "xs_S", "bd", "db_S")
_taken("F", "front", "xf_S", "fd", "df_S")


@_rule(
    "r SF",
    "rise of the front's side waist",
    source="blocks K3",
    key="r_SF",
    formula="r S, and what makes both side seams of one length",
)
def _rise(a_SB: float, a_SF: float, r_S: float, WH: float) -> float:
    aim = _over_hip(a_SB, r_S, WH)

    def over(r: float) -> float:
        return _over_hip(a_SF, r, WH) - aim

    return by_trial(over, r_S - 2.0, r_S + 2.0) or r_S


def _over_hip(a: float, r: float, hip: float) -> float:
    """Length of a side from the waist to the hip, cm."""
    half = Half(20.0, a, r, 0.0, hip, 0.0, hip + 10.0)
    return half.side().length - 10.0


ONE_BACK, ONE_FRONT = 3.2, 2.4
"""More is shared by two darts, cm (C8)."""


def fitted(
    half: Half,
    total: float,
    aim: float,
    at: float,
    most: float,
    lengths: tuple[float, float],
) -> Plan:
    """The darts of a half whose trued waist is `aim` long, a share `at` of it before
    the first dart; a second, where they are over `most`, stands half way on to the
    side."""
    if total <= 0:
        return Plan((), (), ())
    place = at
    for _ in range(8):
        places = ((place,), (place, (1.0 + place) / 2))
        found = _wide_enough(
            half, total, aim, 1 if total <= most else 2, places, lengths
        )
        waist = trued(half, found)
        off = at - waist.edges[0].length / waist.net
        if abs(off) < MEETS:
            break
        place += off
    return found


def _wide_enough(
    half: Half,
    total: float,
    aim: float,
    count: int,
    places: Sequence[Sequence[float]],
    lengths: Sequence[float],
) -> Plan:
    """The darts at these places, of the width that leaves `aim` of the trued waist."""

    def made(width: float) -> Plan:
        return plan(width, count, places, lengths, WIDEST)

    return made(as_trued(total, aim, lambda width: trued(half, made(width)).net))


MEETS = 1e-5
"""A dart stands within this share of the waist of where it should."""


def draft(d: Drafting, front_at: float, back_at: float) -> None:
    """Draft both halves, their first darts at these shares of the waist from the
    centre."""
    n = d.n
    back = Half(n.xs_S, n.a_SB, n.r_S, n.db_S, n.WH, n.fl_S, n.L)
    front = Half(n.xf_S, n.a_SF, n.r_SF, n.df_S, n.WH, n.fl_S, n.L)
    plans = (
        fitted(back, n.bd_S, n.w_SB, back_at, ONE_BACK, (n.lb_in, n.lb_out)),
        fitted(front, n.fd_S, n.w_SF, front_at, ONE_FRONT, (n.lf, n.lf)),
    )
    skirt.lay(
        d,
        skirt.Side(
            *(BACK, "Back skirt", back, plans[0], IDENTITY), *("Od", "right", "Wcb")
        ),
        skirt.Side(
            *(FRONT, "Front skirt", front, plans[1], skirt.onto_front(n)),
            *("Fd", "left", "Wcf", "r_SF"),
        ),
    )
