"""Numbers of the torso block, half body, cm (blocks D of our notes, with C21).

The bodice and the skirt in one through the waist. x runs from the centre back to the
centre front, y down from the nape. The bodice's own intake at the side (a) is measured
from the plumb line below the underarm, the torso's (a') from the straight line between
underarm and hip; both take in the same.
"""

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.skirt_rules import SKIRT
from clothwright.rules import RuleError, RuleTable

TORSO = RuleTable("torso block", {k: SKIRT.rules[k] for k in ("AB", "H_S")})
_rule = TORSO.rule
_D = "blocks D"

LEAST_DART = 1.2
"""A narrower waist dart is left to the sides, cm (A4)."""

BACK_WIDEST, FRONT_WIDEST, CENTRE_WIDEST = 4.5, 3.5, 2.0
"""What a fish-eye dart, back and front, and the centre back seam take in, cm (D4)."""

SIDE_WIDEST = 4.0
"""What a side takes in at most before the darts take more than that, cm (C3)."""

LEAN = 4.0
"""The side leans so far at most from the underarm to the hip, cm (D2)."""

BELOW_HIP, FROM_HIP = 2.0, 2.5
"""The hem lies so far below the hip at least; a dart ends so far above it, cm (C8)."""


@_rule(
    "half H",
    "half hip of the torso with ease",
    source=f"{_D}2",
    key="half_H",
    formula="(H + Eh)/2; AB when that is greater (C2)",
)
def _half(H_S: float, Eh: float) -> float:
    return (H_S + Eh) / 2


@_rule(
    "xh",
    "back half width at the hip",
    source=f"{_D}2, corrections C21",
    key="xh",
    formula="half H/2 − hs; where the side would lean over 4 cm, so that back and "
    "front lean alike",
)
def _xh(half_H: float, half: float, hs: float, xs: float) -> float:
    xh, each = half_H / 2 - hs, (half_H - half) / 2
    front = half_H - xh - (half - xs)
    return xs + each if max(abs(each), abs(xh - xs), abs(front)) > LEAN else xh


@_rule(
    "xh front",
    "front half width at the hip",
    source=f"{_D}2",
    key="xh_f",
    formula="half H − xh",
)
def _xh_front(half_H: float, xh: float) -> float:
    return half_H - xh


def on_line(top: float, hip: float, down: float, below: float) -> float:
    """Where the straight line from the underarm, `top` from the centre and `down` above
    the waist, to the hip, `below` it, crosses the waist (D3), cm from the centre."""
    return (top * below + hip * down) / (below + down)


@_rule(
    "xl",
    "straight side line of the back at the waist",
    source=f"{_D}3",
    key="x_l",
    formula="(xs·WH + xh·SDl)/(WH + SDl), SDl = yW − yB",
)
def _line(xs: float, xh: float, yW: float, yB: float, WH: float) -> float:
    return on_line(xs, xh, yW - yB, WH)


@_rule(
    "xl front",
    "straight side line of the front at the waist",
    source=f"{_D}3",
    key="x_l_f",
    formula="the same with the front's widths",
)
def _line_front(
    front_half: float, xh_f: float, yW: float, yB: float, WH: float
) -> float:
    return on_line(front_half, xh_f, yW - yB, WH)


@_rule(
    "sup T",
    "what the torso takes in at the waist, half",
    source=f"{_D}3",
    key="sup_T",
    formula="xl + xl front − (W + Ew)/2",
)
def _sup(x_l: float, x_l_f: float, W: float, Ew: float) -> float:
    return x_l + x_l_f - (W + Ew) / 2


def shares(sup: float, *, folded: bool = False) -> tuple[float, float, float, float]:
    """(side a' each, back dart, front dart, centre back) that close the waist, cm: 0.18
    twice, 0.32, 0.26 and 0.06; what a dart cannot take goes to the sides, and what
    these cannot take to the darts again (D3, D4). A centre back that lies on the fold,
    `folded`, takes nothing."""
    if sup <= 0:
        return sup / 2, 0.0, 0.0, 0.0
    cb = 0.0 if folded else clip(0.06 * sup, 0.0, CENTRE_WIDEST)
    bd = clip(0.32 * sup, 0.0, BACK_WIDEST)
    fd = clip(0.26 * sup, 0.0, FRONT_WIDEST)
    bd, fd = (0.0 if dart < LEAST_DART else dart for dart in (bd, fd))
    a = (sup - bd - fd - cb) / 2
    over = max(0.0, a - SIDE_WIDEST)
    return a - over, bd + over, fd + over, cb


@_rule(
    "a'",
    "intake of each side from the straight line",
    source=f"{_D}3, D4",
    key="a_T",
    formula="0.18 of the intake, and what the darts cannot take",
    low=-8.0,
    high=6.0,
)
def _a_line(sup_T: float) -> float:
    return shares(sup_T)[0]


@_rule(
    "cb T",
    "share of the centre back seam",
    source=f"{_D}3",
    key="cb_T",
    formula="0.06 of the intake, at most 2 cm",
    low=0.0,
    high=3.0,
)
def _cb(sup_T: float) -> float:
    return shares(sup_T)[3]


@_rule(
    "a",
    "intake of each side seam at the waist",
    source=f"{_D}3",
    key="a",
    formula="a' less what the straight lines run outwards",
    low=-12.0,
    high=8.0,
)
def _a(a_T: float, x_l: float, x_l_f: float, xs: float, front_half: float) -> float:
    return a_T - (x_l - xs + x_l_f - front_half) / 2


@_rule(
    "bd",
    "back waist dart, with the centre back seam",
    source=f"{_D}3, D4",
    key="bd",
    formula="0.32 of the intake, at most 4.5 cm, none under 1.2 cm; and cb T",
    low=0.0,
    high=8.0,
)
def _bd(sup_T: float, cb_T: float) -> float:
    return shares(sup_T)[1] + cb_T


@_rule(
    "bd cut", "back waist dart as cut", source=f"{_D}4", key="bd_cut", formula="bd net"
)
def _bd_cut(bd_net: float) -> float:
    return bd_net


@_rule(
    "shift",
    "side seam at the waist moved to the front",
    source=f"{_D}3",
    key="side_shift",
    formula="half of what the back's straight line runs out more than the front's",
)
def _shift(x_l: float, xs: float, x_l_f: float, front_half: float) -> float:
    return (x_l - xs - (x_l_f - front_half)) / 2


def _dart_below(key: str, symbol: str, half: str, usual: float) -> None:
    @_rule(
        symbol,
        f"{half} dart below the waist",
        source=f"{_D}4",
        key=key,
        formula=f"{usual:g} cm, but ending 2.5 cm above the hip",
        low=5.0,
        high=20.0,
    )
    def _length(WH: float) -> float:
        return min(usual, WH - FROM_HIP)


_dart_below("lb_T", "lb", "back", 13.5)
_dart_below("lf_T", "lf", "front", 9.5)


@_rule(
    "fl",
    "out at the hem, each side (below nought it is tapered)",
    source="blocks C5",
    key="fl_T",
    formula="none: the side hangs plumb from the hip",
    low=-4.0,
    high=12.0,
)
def _plumb() -> float:
    return 0.0


@_rule(
    "hem T",
    "level of the hem below the hip",
    source=_D,
    key="below_hip",
    formula="L − WH",
)
def _below(L: float, WH: float, fl_T: float) -> float:
    below = L - WH
    if below < BELOW_HIP - 1e-9:
        raise RuleError(
            f"the torso (L) ends {below:.1f} cm below the hip (WH), and {BELOW_HIP:g} "
            f"cm at least are wanted: make it at least {WH + BELOW_HIP:.1f} cm long"
        )
    if abs(fl_T) > 0.5 * below:
        raise RuleError(
            f"the torso is flared (fl) too far for its length (L): flare or taper it "
            f"by {0.5 * below:.1f} cm at most, or make it longer"
        )
    return below


ZIP_END = RuleTable("zip of a torso")


@ZIP_END.rule(
    "z",
    "end of the zip below the waist",
    source="transformations §7",
    formula="WH − 2 cm, and 2 cm above the hem",
    low=0.0,
    high=25.0,
)
def z(WH: float, L: float) -> float:
    return zip_end(WH, L)


def zip_end(WH: float, reach: float) -> float:
    """How far below the waist the zip of a torso ends, cm: above the hip, and above a
    hem that lies `reach` below."""
    return min(WH, reach) - 2.0


CENTRE_SEAM = RuleTable("centre back seam of a torso")


@CENTRE_SEAM.rule(
    "cbs",
    "intake of the centre back seam",
    source=f"{_D}3",
    key="cbs",
    formula="cb T",
    low=0.0,
    high=3.0,
)
def _cbs(cb_T: float) -> float:
    return cb_T


CENTRE_FOLD = RuleTable("torso with its centre back on the fold")


@CENTRE_FOLD.rule(
    "cb T",
    "share of the centre back seam",
    source=f"{_D}3",
    key="cb_T",
    formula="none: it is on the fold",
)
def _no_seam() -> float:
    return 0.0


@CENTRE_FOLD.rule(
    "a'",
    "intake of each side from the straight line",
    source=f"{_D}3, D4",
    key="a_T",
    formula="half of the intake less the darts",
    low=-8.0,
    high=6.0,
)
def _a_folded(sup_T: float) -> float:
    return shares(sup_T, folded=True)[0]


@CENTRE_FOLD.rule(
    "bd",
    "back waist dart",
    source=f"{_D}3, D4",
    key="bd",
    formula="0.32 of the intake, at most 4.5 cm, none under 1.2 cm",
    low=0.0,
    high=8.0,
)
def _bd_folded(sup_T: float) -> float:
    return shares(sup_T, folded=True)[1]
