"""Numbers of a skirt pleated all round (transformations §10), and of its panels."""

from enum import Enum

from clothwright.rules import Kind, RuleTable

SRC = "transformations §10"

PLEATED = RuleTable("pleated skirt")
KNIFE, BOX = RuleTable("knife pleats"), RuleTable("box pleats")
_rule = PLEATED.rule


@_rule("M", "hem, as the pleats lie", source=SRC, key="M", formula="H + Eh")
def _hem(H: float, Eh: float) -> float:
    return H + Eh


@_rule(
    "pn",
    "pleats of a panel",
    source=SRC,
    key="pn",
    kind=Kind.COUNT,
    formula="hip of a panel / (wanted face + gap), to the nearest",
)
def _count(h_gore: float, pv0: float, pg: float) -> float:
    return max(1, round(h_gore / (pv0 + pg)))


@_rule(
    "pv",
    "face of a pleat at the hip",
    source=SRC,
    key="pv",
    formula="hip of a panel / pleats − gap",
)
def _face(h_gore: float, pn: float, pg: float) -> float:
    return h_gore / pn - pg


@_rule(
    "pt",
    "taken in at the waist by each pleat",
    source=SRC,
    key="pt",
    formula="(hip − waist)/n",
)
def _taken(h_gore: float, w_gore: float, pn: float) -> float:
    return (h_gore - w_gore) / pn


@_rule(
    "p down",
    "pleats stitched down, from the waist",
    source=SRC,
    key="p_down",
    formula="WH",
    low=3.0,
    high=40.0,
)
def _down(WH: float) -> float:
    return WH


@_rule("pg", "between box pleats", source=SRC, key="pg", low=0.0, high=20.0)
def _no_gap() -> float:
    return 0.0


@KNIFE.rule(
    "pu",
    "depth folded under",
    source=SRC,
    key="pu",
    formula="the face: touching pleats take three times the length",
    low=1.0,
    high=15.0,
)
def _knife_depth(pv: float) -> float:
    return pv


@BOX.rule(
    "pu",
    "depth folded under",
    source=SRC,
    key="pu",
    formula="half the face: touching pleats take three times the length",
    low=1.0,
    high=15.0,
)
def _box_depth(pv: float) -> float:
    return pv / 2


@KNIFE.rule(
    "cloth",
    "cloth of a panel",
    source=SRC,
    key="p_cloth",
    formula="n·(v + 2u)",
)
def _knife_cloth(pn: float, pv: float, pu: float) -> float:
    return pn * (pv + 2 * pu)


@BOX.rule(
    "cloth",
    "cloth of a panel",
    source=SRC,
    key="p_cloth",
    formula="n·(v + g + 4u)",
)
def _box_cloth(pn: float, pv: float, pg: float, pu: float) -> float:
    return pn * (pv + pg + 4 * pu)


class Panels(Enum):
    """Of how many panels it is sewn; a seam lies in an inner fold."""

    TWO = "two"
    THREE = "three"
    FOUR = "four"
    FIVE = "five"
    SIX = "six"

    @property
    def count(self) -> int:
        return 2 + list(Panels).index(self)


def _counted(panels: Panels) -> RuleTable:
    page = RuleTable(f"{panels.value} panels")

    @page.rule(
        "n",
        "panels",
        source="the order",
        key="gores",
        kind=Kind.COUNT,
        formula="chosen",
    )
    def _panels() -> float:
        return panels.count

    return page


COUNTED = {panels: _counted(panels) for panels in Panels}
