"""Where the back waist dart lies: its centre line and its point (blocks A2.9). cm."""

from clothwright.rules import RuleTable

BACK_WAIST_DART = RuleTable("back waist dart")
_rule = BACK_WAIST_DART.rule
_SRC = "blocks A2.9"

SPARE = 0.5
"""What must stay of half the bust ease at the bust points, cm: shaved paper and the
seams' own curves take a part of it (first garment 5.5)."""

LOWERED = 2.5
"""The back dart's point lies at most this far below the bust line, cm (A2.9)."""


@_rule(
    "y(Pd)",
    "level of the point of the back waist dart",
    key="y_Pd",
    source=f"{_SRC}, B1",
    formula="yB; with a low bust point up to 2.5 cm lower, where sides and dart would "
    "take the whole bust ease there",
)
def y_Pd(yB: float, yW: float, y_BP: float, a: float, bd: float, Eb: float) -> float:
    low = (y_BP - yB) / (yW - yB)
    left = max(0.0, Eb / 2 - SPARE - 2 * a * low)
    if low <= 0 or bd * low <= left or bd <= left:
        return yB
    # from here the dart takes just what is left for it at the bust points
    level = (bd * y_BP - left * yW) / (bd - left)
    return min(level, yB + LOWERED)


@_rule(
    "xd",
    "centre of the back waist dart from the centre back",
    source=_SRC,
    formula="XB/4 + 0.5 cm",
)
def xd(XB: float) -> float:
    return XB / 4 + 0.5
