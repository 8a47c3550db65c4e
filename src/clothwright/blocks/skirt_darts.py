"""Numbers of the darts of the straight skirt block: how many, how wide, how long
(blocks C7 to C9 of our notes); half body, cm.

The darts take what the curved waist has too much, and are changed once more until the
waist, trued over the folded darts, is as long as it should be.
"""

from collections.abc import Callable

from clothwright.blocks.skirt_curves import Half, Plan, plan, trued
from clothwright.blocks.skirt_rules import WIDEST, waist_lines
from clothwright.blocks.waist_line import as_trued
from clothwright.curves import Path, Point
from clothwright.paper import Piece
from clothwright.rules import Kind, RuleTable

SKIRT_DARTS = RuleTable("darts of the straight skirt")
_rule = SKIRT_DARTS.rule
_C = "blocks C"

FROM_HIP = 2.5
"""A dart ends at least so far above the hip, cm (C8)."""

BACK_PLACES = (0.45,), (1 / 3, 2 / 3)
FRONT_PLACES = (0.52,), (0.4, 0.7)
"""Where one dart stands, and two, as shares of the net waist from the centre (C8)."""


@_rule(
    "ex S",
    "excess of the curved waist of the skirt",
    source=f"{_C}7",
    key="ex_S",
    formula="curves − darts − (W + Ew)/2",
)
def _ex(
    a_S: float,
    xs_S: float,
    xf_S: float,
    r_S: float,
    db_S: float,
    df_S: float,
    WH: float,
    bd_S: float,
    fd_S: float,
    W: float,
    Ew: float,
) -> float:
    lines = waist_lines(a_S, xs_S, xf_S, r_S, db_S, df_S, WH)
    return lines - bd_S - fd_S - (W + Ew) / 2


@_rule(
    "bd S set",
    "back darts with their share of the excess",
    source=f"{_C}7",
    key="bd_set",
    formula="bd + 0.6·ex",
)
def _bd_set(bd_S: float, fd_S: float, ex_S: float) -> float:
    return bd_S + ex_S * (0.6 if fd_S else 1.0) if bd_S else 0.0


@_rule(
    "fd S set",
    "front darts with their share of the excess",
    source=f"{_C}7",
    key="fd_set",
    formula="fd + 0.4·ex",
)
def _fd_set(bd_S: float, fd_S: float, ex_S: float) -> float:
    return fd_S + ex_S * (0.4 if bd_S else 1.0) if fd_S else 0.0


@_rule(
    "n back",
    "back darts of each half",
    source=f"{_C}8",
    key="nb_S",
    kind=Kind.COUNT,
    formula="one up to 3.2 cm, else two",
    low=0,
    high=2,
)
def _nb(bd_set: float) -> float:
    return 0 if bd_set <= 0 else 1 if bd_set <= 3.2 else 2


@_rule(
    "n front",
    "front darts of each half",
    source=f"{_C}8",
    key="nf_S",
    kind=Kind.COUNT,
    formula="one up to 2.4 cm, else two",
    low=0,
    high=2,
)
def _nf(fd_set: float) -> float:
    return 0 if fd_set <= 0 else 1 if fd_set <= 2.4 else 2


def _length(key: str, name: str, usual: float) -> None:
    @_rule(
        key.replace("_", " "),
        name,
        source=f"{_C}8",
        key=key,
        formula=f"{usual:g} cm, but ending 2.5 cm above the hip",
        low=5.0,
        high=20.0,
    )
    def _dart_length(WH: float, db_S: float) -> float:
        return min(usual, WH - FROM_HIP - db_S)


_length("lb_in", "length of the back dart nearer to the centre", 13.5)
_length("lb_out", "length of the back dart nearer to the side", 12.0)
_length("lf", "length of the front darts", 9.0)


def back_plan(total: float, nb: float, inner: float, outer: float) -> Plan:
    """The darts of the back."""
    return plan(total, round(nb), BACK_PLACES, (inner, outer), WIDEST)


def front_plan(total: float, nf: float, length: float) -> Plan:
    """The darts of the front."""
    return plan(total, round(nf), FRONT_PLACES, (length, length), WIDEST)


@_rule(
    "wSB",
    "back waist of the skirt, half",
    source=f"{_C}7",
    key="w_SB",
    formula="curve − darts",
)
def _w_back(
    bd_set: float, xs_S: float, a_S: float, r_S: float, db_S: float, WH: float
) -> float:
    return Half(xs_S, a_S, r_S, db_S, WH).waist().length - bd_set


@_rule(
    "wSF",
    "front waist of the skirt, half",
    source=f"{_C}7",
    key="w_SF",
    formula="curve − darts",
)
def _w_front(
    fd_set: float, xf_S: float, a_S: float, r_S: float, df_S: float, WH: float
) -> float:
    return Half(xf_S, a_S, r_S, df_S, WH).waist().length - fd_set


def _as_trued(
    half: Half, total: float, aim: float, plan_of: Callable[[float], Plan]
) -> float:
    """Darts changed until the trued waist is as long as it should be."""
    return as_trued(total, aim, lambda t: trued(half, plan_of(t)).net)


@_rule(
    "bd S cut",
    "back darts as cut, together",
    source=f"{_C}7, truing 3.6",
    key="bd_S_cut",
    formula="changed until the waist, trued over the folded darts, is as long again",
)
def _bd_cut(
    w_SB: float,
    bd_set: float,
    nb_S: float,
    xs_S: float,
    a_S: float,
    r_S: float,
    db_S: float,
    WH: float,
    lb_in: float,
    lb_out: float,
) -> float:
    half = Half(xs_S, a_S, r_S, db_S, WH)
    return _as_trued(half, bd_set, w_SB, lambda t: back_plan(t, nb_S, lb_in, lb_out))


@_rule(
    "fd S cut",
    "front darts as cut, together",
    source=f"{_C}7, truing 3.6",
    key="fd_S_cut",
    formula="changed until the waist, trued over the folded darts, is as long again",
)
def _fd_cut(
    w_SF: float,
    fd_set: float,
    nf_S: float,
    xf_S: float,
    a_S: float,
    r_S: float,
    df_S: float,
    WH: float,
    lf: float,
) -> float:
    half = Half(xf_S, a_S, r_S, df_S, WH)
    return _as_trued(half, fd_set, w_SF, lambda t: front_plan(t, nf_S, lf))


@_rule(
    "net SF",
    "front part of a band, half",
    source=f"{_C}3",
    key="net_SF",
    formula="xf − a − fd, straight",
)
def _net_front(xf_S: float, a_S: float, fd_S: float) -> float:
    return xf_S - a_S - fd_S


@_rule(
    "net SB",
    "back part of a band, half",
    source=f"{_C}3",
    key="net_SB",
    formula="xs − a − bd, straight",
)
def _net_back(xs_S: float, a_S: float, bd_S: float) -> float:
    return xs_S - a_S - bd_S


def open_darts(lines: Plan, top: float, y: float) -> float:
    """What the darts still take in at a level, each from its full width at `top` to
    nought at its point (corrections A9), cm."""
    return sum(
        w * max(0.0, 1 - (y - top) / length)
        for w, length in zip(lines.widths, lines.lengths, strict=True)
    )


def width_at(half: Half, lines: Plan, y: float) -> float:
    """A half's width at a level above the hip with its darts closed, cm."""
    side = half.side()
    level = Path.line(Point(-100.0, y), Point(200.0, y))
    hits = side.meets(level)
    x = side.at_length(hits[0][0]).x if hits else half.width
    return x - open_darts(lines, half.drop, y)


def darts_at(piece: Piece, level: Path) -> float:
    """What the darts of a skirt's half take at a level, one or two of them, cm."""
    taken = 0.0
    for e in piece.edges:
        if e.name.startswith("dart centre"):
            other = piece.edge(e.name.replace("centre", "side"))
            across = [s for leg in (e, other) for s, _ in level.meets(leg.path)]
            taken += max(across) - min(across) if across else 0.0
    return taken
