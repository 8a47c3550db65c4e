"""A skirt of knitted cloth without darts, front and back alike, drafted as by hand: a
quarter on the fold (blocks C4, C5, F1; measures 8.1). cm, y down, the waist at the
centre front at the origin."""

from clothwright.blocks import knit_curves
from clothwright.blocks.knit_rules import BY_STRETCH, by_stretch
from clothwright.curves import Path, Point, Vector, shift, unit
from clothwright.paper import Drafting, Edge, EdgeKind, Piece, Verb, straight
from clothwright.rules import Kind, Numbers, RuleTable

SKIRT = "KQ"
"""Code of the piece."""

LEAN = 4.0
"""A side is taken in by no more from the hip to the waist, cm (corrections C7)."""

_AT_TOP = 0.3
"""A quarter of the casing's top is narrower than its fold by at most this share of its
depth: the lean of the side (our own)."""

KNIT_SKIRT = RuleTable("knit skirt")
_rule = KNIT_SKIRT.rule
_EASE = "measures 8.1"


@_rule(
    "ph",
    "ease at the hip, per cent",
    kind=Kind.RATIO,
    source=_EASE,
    key="p_hip",
    formula=BY_STRETCH,
    low=-20.0,
    high=40.0,
)
def _ph(s_knit: float, recovery: float) -> float:
    return by_stretch("hip", s_knit, recovery)


@_rule(
    "pl",
    "change of the lengths, per cent",
    kind=Kind.RATIO,
    source="our own",
    key="p_len",
    formula="none: a skirt hangs, and is not held to its length",
)
def _pl() -> float:
    return 0.0


@_rule(
    "QW",
    "waist quarter",
    source="blocks F1, corrections C7; transformations 8",
    key="q_waist",
    formula="W/4, or QH − 4 cm, or what stretches to H/4 at the top of the casing too, "
    "where that is more",
)
def _waist(W: float, H: float, q_hip: float, s_knit: float, casing: float) -> float:
    return max(W / 4, q_hip - LEAN, passes(H, s_knit) / 4 + _AT_TOP * casing)


@_rule(
    "raise",
    "rise of the waist at the side",
    source="blocks C4",
    key="knit_raise",
    formula="0.3 of what the side is taken in: 1.2 cm for 4 cm",
    low=0.0,
    high=1.5,
)
def _raise(q_hip: float, q_waist: float) -> float:
    return max(0.0, 0.3 * (q_hip - q_waist))


def passes(H: float, s_knit: float) -> float:
    """Girth that stretches to the hip: H/(1 + s), cm (transformations 8)."""
    return H / (1 + s_knit / 100)


def lean_of(q_waist: float, q_hip: float, hip: float) -> float:
    """How far the side leans out at the waist for each cm down (C5)."""
    return 0.4 * (q_hip - q_waist) / (0.33 * hip)


def waist_edge(q_waist: float, q_hip: float, up: float, hip: float) -> Path:
    """The waist of a quarter from the centre, level, to the side, square to it."""
    way = unit(Vector(lean_of(q_waist, q_hip, hip), 1.0))
    return knit_curves.hem_line(Point(0.0, 0.0), Point(q_waist, -up), way)


def side(n: Numbers) -> Path:
    """The side from the waist down to the hem."""
    up = n.knit_raise
    lean = lean_of(n.q_waist, n.q_hip, n.WH_knit)
    path = knit_curves.below_waist(
        n.q_waist, n.q_hip, n.WH_knit + up, n.L + up, n.knit_out, lean
    )
    return path.moved(shift(Vector(0.0, -up)))


def draft(d: Drafting) -> None:
    """Draft a quarter (piece KQ), cut twice on the fold, for front and back."""
    n = d.n
    d.part = "knit skirt"
    d.start("Oq", Point(0.0, 0.0), "waist on the fold")
    d.point("Mq", "Oq", "hem on the fold", down="L")
    d.point("Wq", "Oq", "side at the waist", right="q_waist", up="knit_raise")
    if n.WH_knit < n.L:
        d.point("Hq", "Oq", "side at the hip", right="q_hip", down="WH_knit")
    path = side(n)
    foot = d.found(
        "Lq",
        path.end,
        "side at the hem",
        frm=("Mq",),
        amounts=(("towards the side", path.end.x),),
        detail="as far down the side" if n.knit_out > 0 else "",
    )
    waist = waist_edge(n.q_waist, n.q_hip, n.knit_raise, n.WH_knit)
    hem = knit_curves.hem_line(d["Mq"], foot, path.end_direction).reversed()
    edges = (
        Edge("waist", waist),
        Edge("side", path),
        Edge("hem", hem, EdgeKind.FINISHED),
        straight("centre", hem.end, waist.start, EdgeKind.FOLD),
    )
    grain = Point(n.q_waist / 2, 0.15 * n.L), Point(n.q_waist / 2, 0.85 * n.L)
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(SKIRT, "Skirt, front and back", edges, grain=grain)),
        SKIRT,
        "skirt, front and back alike",
        frm=("Wq", "Lq"),
        detail="the side in a curve to the hip, then ruled; waist and hem level on the "
        "fold and square to the side",
    )
