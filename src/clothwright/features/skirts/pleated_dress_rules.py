"""Numbers of a pleated skirt on a bodice, half by half (transformations §10)."""

from clothwright.blocks.fitted_dress import FITTED
from clothwright.features.skirts.pleated_skirt_rules import PLEATED, SRC
from clothwright.rules import Kind, Numbers, RuleTable

PLEATED_DRESS = RuleTable(
    "pleated skirt of a dress",
    {k: FITTED.rules[k] for k in ("AB", "H_S", "half_S", "w_SF", "w_SB", "sup_S")}
    | {k: PLEATED.rules[k] for k in ("p_down", "pg")},
)
KNIFE, BOX = RuleTable("knife pleats"), RuleTable("box pleats")
_rule = PLEATED_DRESS.rule


def _half(symbol: str, half: str) -> None:
    width, waist = f"x_S{symbol}", f"w_S{symbol}"
    count, face, taken = f"pn_{symbol}", f"pv_{symbol}", f"pt_{symbol}"

    @_rule(
        f"x S{symbol}",
        f"{half} half width of the skirt at the hip, as the pleats lie",
        source=SRC,
        key=width,
        formula=f"wS{symbol} + sup S/2",
        needs=(waist, "sup_S"),
    )
    def _width(w: float, sup: float) -> float:
        return w + sup / 2

    @_rule(
        f"pn {symbol}",
        f"pleats of the {half} half beside the face at its centre",
        source=SRC,
        key=count,
        kind=Kind.COUNT,
        formula="half width / (wanted face + gap) − ½, to the nearest",
        needs=(width, "pv0", "pg"),
    )
    def _count(x: float, face: float, gap: float) -> float:
        return max(1, round(x / (face + gap) - 0.5))

    @_rule(
        f"pv {symbol}",
        f"face of a pleat of the {half} at the hip",
        source=SRC,
        key=face,
        formula="half width / (pleats + ½) − gap",
        needs=(width, count, "pg"),
    )
    def _face(x: float, n: float, gap: float) -> float:
        return x / (n + 0.5) - gap

    @_rule(
        f"pt {symbol}",
        f"taken in at the waist by each pleat of the {half}",
        source=SRC,
        key=taken,
        formula="(hip − waist)/(pleats + ½)",
        needs=(width, waist, count),
    )
    def _taken(x: float, w: float, n: float) -> float:
        return (x - w) / (n + 0.5)


_half("F", "front")
_half("B", "back")


@KNIFE.rule(
    "pu",
    "depth folded under",
    source=SRC,
    key="pu",
    formula="the smaller face: touching pleats take three times the length",
    low=1.0,
    high=15.0,
)
def _knife_depth(pv_F: float, pv_B: float) -> float:
    return min(pv_F, pv_B)


@BOX.rule(
    "pu",
    "depth folded under",
    source=SRC,
    key="pu",
    formula="half the smaller face: touching pleats take three times the length",
    low=1.0,
    high=15.0,
)
def _box_depth(pv_F: float, pv_B: float) -> float:
    return min(pv_F, pv_B) / 2


def _cloth(symbol: str, half: str) -> None:
    of = (f"pn_{symbol}", f"pv_{symbol}", "pu")

    @KNIFE.rule(
        f"cloth {symbol}",
        f"cloth of the {half} half",
        source=SRC,
        key=f"cloth_{symbol}",
        formula="(pleats + ½)·v + (2·pleats + 1)·u",
        needs=of,
    )
    def _knife(n: float, face: float, depth: float) -> float:
        return (n + 0.5) * face + (2 * n + 1) * depth

    @BOX.rule(
        f"cloth {symbol}",
        f"cloth of the {half} half",
        source=SRC,
        key=f"cloth_{symbol}",
        formula="(pleats + ½)·(v + g + 4u)",
        needs=(*of, "pg"),
    )
    def _box(n: float, face: float, depth: float, gap: float) -> float:
        return (n + 0.5) * (face + gap + 4 * depth)


_cloth("F", "front")
_cloth("B", "back")


def pleats_all_round(n: Numbers, *, box: bool) -> float:
    """Folds all round: of knife pleats also one at each side, of box pleats two of
    each, and half a one of each half at the centre."""
    beside = 2 * (n.pn_F + n.pn_B)
    return 2 * (beside + 2) if box else beside + 2
