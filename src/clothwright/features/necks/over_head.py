"""A neck that is closed all round and must pass the head: what its front is deeper for
that (transformations 2; the 2 cm as of every neck that is drawn on). Lengths cm.

Only a depth that the order leaves out is deepened. A feature that leaves the neck
without an opening puts `CLOSED_NECK` in, one that opens it again `SLIT_NECK`.
"""

from clothwright.blocks.bodice_curves import (
    inward_back,
    inward_front,
    outwards_back,
    outwards_front,
)
from clothwright.blocks.trial import by_trial
from clothwright.curves import Point
from clothwright.features.necks.neck_shapes import (
    BELOW_DEP,
    FRONT_CURVES,
    MORE,
    BackShape,
    FrontShape,
    back_curve,
)
from clothwright.rules import RuleTable

OVER_HEAD = 2.0
"""What is drawn on over the head is so much wider than it, cm (transformations 2)."""

_SRC = "transformations 2"

_DEEPEST = 20.0
"""A neck is deepened to here for the head, cm below the shoulder neck point; then it
must be widened (our own)."""

_SPARE = 0.2
"""So much more than the least, for what truing and a mm take, cm (our own)."""

_NAME = "what the front neck is deeper for the head"

OPEN_NECK = RuleTable("neck that opens")
CLOSED_NECK = RuleTable("neck without an opening")
SLIT_NECK = RuleTable("neck that a slit opens")


def _none() -> float:
    return 0.0


for _table, _so in (
    (OPEN_NECK, "none: the neck opens, or its depth is enough"),
    (SLIT_NECK, "none: the neck opens by a slit"),
):
    _table.rule("Df +", _NAME, key="neck_more", source=_SRC, formula=_so)(_none)


@CLOSED_NECK.rule(
    "Df +",
    _NAME,
    key="neck_more",
    source=_SRC,
    formula="what the neck wants, closed, to pass the head",
)
def _closed(deeper: float) -> float:
    return deeper


def _back_table(shape: BackShape) -> RuleTable:
    """How long half of a back neck of this shape is."""
    table = RuleTable(f"{shape.value} neck round the head, back")

    @table.rule(
        "neck b",
        "half of the back neck",
        key="neck_back",
        source="exact maths: its curve",
        formula="as drawn, less what it is drawn in",
    )
    def _long(
        bw: float,
        Sb: float,
        Lrb: float,
        sigma_bs: float,
        sigma_b_new: float,
        tau: float,
        Db: float,
        cnb: float,
    ) -> float:
        tip = Point(bw, 0.0) + outwards_back(sigma_bs) * Sb
        end = tip - outwards_back(sigma_b_new) * Lrb
        start = inward_back(sigma_b_new + tau)
        return back_curve(shape, end, Point(0.0, Db), start).length - cnb

    return table


_FRONT = (
    "HEAD",
    "neck_back",
    "fw",
    "S",
    "Lr",
    "sigma_f",
    "sigma_f_new",
    "tau",
    "cn",
)


def _front_table(shape: FrontShape) -> RuleTable:
    """How much deeper a front neck of this shape passes the head."""
    table = RuleTable(f"{shape.value} neck round the head, front")
    usual = ("df_boat",) if shape is FrontShape.BOAT else ("dep",)

    @table.rule(
        "Df head",
        "what a closed front neck is deeper",
        key="deeper",
        source=_SRC,
        formula="found so that the whole neck is the head (HEAD) and 2 cm round",
        needs=(*_FRONT, *usual, *MORE.get(shape, ())),
    )
    def _deeper(
        head: float,
        back: float,
        fw: float,
        shoulder: float,
        left: float,
        slope: float,
        new_slope: float,
        tau: float,
        cn: float,
        usual: float,
        *more: float,
    ) -> float:
        deep = usual + BELOW_DEP.get(shape, 0.0)
        end = outwards_front(slope) * shoulder - outwards_front(new_slope) * left
        start = inward_front(new_slope - tau)
        wanted = (head + OVER_HEAD + _SPARE) / 2 - back + cn

        def over(depth: float) -> float:
            at, centre = Point(end.x, end.y), Point(fw, depth)
            args = (at, centre, start, new_slope - tau)
            return FRONT_CURVES[shape](*args, *(more or (0.0,))).length - wanted

        as_block = shape is FrontShape.STANDARD  # drawn as it is, not deepened
        if as_block or over(deep) >= 0:
            return 0.0
        return (by_trial(over, deep, _DEEPEST) or _DEEPEST) - deep

    return table


HEAD_FRONT = {shape: _front_table(shape) for shape in FrontShape}
HEAD_BACK = {shape: _back_table(shape) for shape in BackShape}
