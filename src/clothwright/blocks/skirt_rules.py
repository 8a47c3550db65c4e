"""Numbers of the straight skirt block, half body, cm (blocks C of our notes, with their
corrections C13, A8).

x runs from the centre back to the centre front, y down from the waist level. The keys
end in _S, so that a skirt can stand beside a bodice.
"""

from clothwright.blocks.bodice_rules import clip
from clothwright.blocks.skirt_curves import Half
from clothwright.blocks.trial import by_trial
from clothwright.rules import Kind, RuleError, RuleTable

SKIRT = RuleTable("straight skirt block")
_rule = SKIRT.rule
_C = "blocks C"

WIDEST = 3.8
"""No dart is wider, cm (C8, K7)."""

LEAST = 1.0
"""Darts of a half that come to less are left to the side seam, cm (C13)."""


@_rule(
    "AB",
    "abdomen girth",
    source=f"{_C}2",
    formula="H − 3 cm where it was not taken: not prominent",
    kind=Kind.BODY,
)
def AB(H: float) -> float:
    return H - 3.0


def _prominent(AB: float, H: float) -> bool:
    return H - 3.0 + 1e-9 < AB


@_rule(
    "H S",
    "hip that the skirt is drafted to",
    source=f"{_C}2",
    key="H_S",
    formula="H; AB when that is greater",
)
def _hip(H: float, AB: float) -> float:
    return max(H, AB)


@_rule(
    "half S",
    "half hip of the skirt with ease",
    source=f"{_C}1",
    key="half_S",
    formula="(H + Eh)/2",
)
def _half(H_S: float, Eh: float) -> float:
    return (H_S + Eh) / 2


@_rule(
    "xs S",
    "back half width of the skirt",
    source=f"{_C}1",
    key="xs_S",
    formula="half/2 − hs",
)
def _xs(half_S: float, hs: float) -> float:
    return half_S / 2 - hs


@_rule(
    "xf S",
    "front half width of the skirt",
    source=f"{_C}1, corrections A8",
    key="xf_S",
    formula="half − xs",
)
def _xf(half_S: float, xs_S: float) -> float:
    return half_S - xs_S


@_rule(
    "sup S",
    "what the waist of the skirt takes in on the half",
    source=f"{_C}2",
    key="sup_S",
    formula="half − (W + Ew)/2",
)
def _sup(half_S: float, W: float, Ew: float) -> float:
    return half_S - (W + Ew) / 2


def shares(sup: float, front: float) -> tuple[float, float, float]:
    """(side intake each, back darts, front darts) that close the waist, cm; `front` is
    the share of the darts that the front takes (C3, corrections C13)."""
    if sup <= 0:
        return sup / 2, 0.0, 0.0
    a = clip(0.22 * sup, 0.0, 4.0)
    rest = sup - 2 * a
    bd, fd = (1 - front) * rest, front * rest
    over = max(0.0, bd - (2 * WIDEST - 0.3))  # the back keeps room for the excess
    bd, fd = bd - over, fd + over
    for small in (bd, fd):
        a += small / 2 if small < LEAST else 0.0
    return a, bd if bd >= LEAST else 0.0, fd if fd >= LEAST else 0.0


@_rule(
    "front share",
    "share of the skirt's darts that the front takes",
    source=f"{_C}2, C3",
    key="fs_S",
    kind=Kind.RATIO,
    formula="0.38; 0.5 when the abdomen is prominent",
    low=0.2,
    high=0.6,
)
def _front_share(AB: float, H: float) -> float:
    return 0.5 if _prominent(AB, H) else 0.38


def waist_lines(
    a: float, xs: float, xf: float, r: float, db: float, df: float, hip: float
) -> float:
    """Both waist curves together, cm."""
    return sum(
        Half(w, a, r, drop, hip).waist().length for w, drop in ((xs, db), (xf, df))
    )


@_rule(
    "a S",
    "intake of each side seam at the waist of the skirt",
    source=f"{_C}3, corrections C13",
    key="a_S",
    formula="0.22 of the intake, at most 4 cm, and what is too little for a dart",
    low=-6.0,
    high=6.0,
)
def _a(
    sup_S: float,
    fs_S: float,
    xs_S: float,
    xf_S: float,
    W: float,
    Ew: float,
    r_S: float,
    db_S: float,
    df_S: float,
    WH: float,
) -> float:
    a, bd, fd = shares(sup_S, fs_S)
    if bd or fd:
        return a

    def over(each: float) -> float:
        return waist_lines(each, xs_S, xf_S, r_S, db_S, df_S, WH) - (W + Ew) / 2

    return by_trial(over, a - 2.0, a + 2.0) or a


def _dart(half: str, index: int, share: str) -> None:
    key = f"{half[0]}d_S"

    @_rule(
        f"{half[0]}d S",
        f"{half} darts of the skirt together",
        source=f"{_C}3, corrections C13",
        key=key,
        formula=f"{share} of what the sides leave, none under 1 cm",
        low=0.0,
        high=8.0,
    )
    def _total(sup_S: float, fs_S: float) -> float:
        return shares(sup_S, fs_S)[index]


_dart("back", 1, "0.62")
_dart("front", 2, "0.38")


@_rule(
    "y hem",
    "level of the hem at the side of the skirt",
    source=f"{_C}5, blocks G9",
    key="y_hem",
    formula="as far below the hip along the side as at the centre",
)
def _y_hem(L: float, WH: float, fl_S: float) -> float:
    below = L - WH
    if below < 5.0:
        raise RuleError(
            f"the skirt (L) ends only {below:.1f} cm below the hip (WH): make it longer"
        )
    if abs(fl_S) > 0.5 * below:
        raise RuleError(
            f"the skirt is flared (fl) too far for its length (L): flare or taper it "
            f"by {0.5 * below:.1f} cm at most, or make it longer"
        )
    return Half(20.0, 0.0, 0.0, 0.0, WH, fl_S, L).hem_at_side.y


@_rule(
    "hem S",
    "hem of the skirt, all round",
    source=f"{_C}5",
    key="hem_S",
    formula="2·half + 4·fl, along the hem",
)
def _hem(
    half_S: float,
    xs_S: float,
    xf_S: float,
    WH: float,
    L: float,
    fl_S: float,
    y_hem: float,
) -> float:
    return 2 * sum(
        Half(w, 0.0, 0.0, 0.0, WH, fl_S, L).hem().length for w in (xs_S, xf_S)
    )
