"""A body whose sides differ: each side's piece is cut once, right side up."""

from dataclasses import replace

from bodies import P92
from clothwright.body.body import MeasureValue
from clothwright.lay import Budget, check_lay, lay
from clothwright.lay.patterns import TRUE, shapes_of
from clothwright.order import Cloth, Fold, draft
from clothwright.order.pattern import pattern
from orders import main_features, order

LOWER = {"SS": 3.0, "SH": -0.8, "AS": 0.7}
"""What the left side has more: a lower, narrower shoulder and a deeper armhole."""


def test_each_side_is_laid_once_right_side_up() -> None:
    features = main_features(pointed=False)
    known = draft(order(P92, features)).numbers
    right = {c: MeasureValue(c, known[c], "") for c in LOWER}
    left = {c: MeasureValue(c, known[c] + by, "") for c, by in LOWER.items()}
    body = replace(P92, values={**P92.values, **right}, left=left)
    asked = order(body, features)
    cloth = Cloth(width=140.0, repeat_warp=4.0)
    made = pattern(draft(replace(asked, cloths={"shell": cloth})))
    assert not made.failed
    once = [p.code for p in made.drawn.pieces if p.cuts[0].how.startswith("1, right")]
    assert len(once) > 4
    done = lay(made, fold=Fold.SINGLE, budget=Budget(layouts=4))
    for code in once:
        (placed,) = [p for p in done.placed if p.code == code]
        assert not placed.mirrored
    fine = shapes_of(made, "shell", flat=TRUE)
    assert not check_lay(fine, done.spread, done.placed, done.length, gap=0.3)
    folded = lay(made, fold=Fold.LENGTHWISE, budget=Budget(layouts=4))
    names = {s.label for s in shapes_of(made, "shell") if s.code in once}
    assert names <= set(folded.spare)
