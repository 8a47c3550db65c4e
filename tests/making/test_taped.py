"""What is drawn taped is taped, and its tape is bought (cutting and costing 4)."""

import pytest

from bodies import THEA
from clothwright.features import Feature
from clothwright.features.notions import Article
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.gored_skirt import GoredSkirt
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.trouser_pockets import Shape
from clothwright.making import making_order
from clothwright.order import Draft, draft
from orders import order

MM = 0.1


def tapes(d: Draft, of: Feature) -> tuple[list[float], list[str]]:
    """Lengths of a feature's tapes, cm, and what is done that speaks of tape."""
    bought = [
        (k.length or 0.0) * k.count
        for k in of.notions(d.numbers, d.sheet)
        if k.article in (Article.TAPE, Article.STAY)
    ]
    done = [
        op.title
        for op in of.operations(d.numbers, d.sheet, str)
        if any("ape" in words for words in (op.title, *op.says))
    ]
    return bought, done


def buys_and_sews_its_tape(d: Draft) -> None:
    """Tape that is drawn is bought and sewn: asked of every feature alone, in
    tests/order/test_combinations.py."""
    for f in d.order.features:
        if list(f.taped(d.sheet)):
            bought, done = tapes(d, f)
            assert bought, f.kind
            assert done, f.kind


@pytest.mark.parametrize("skirt", [StraightSkirt(), GoredSkirt()])
def test_the_tape_of_a_faced_waist_is_as_long_as_the_waist(skirt: Feature) -> None:
    """The stitched waist is body and ease (blocks C)."""
    facing = WaistFacing()
    d = draft(order(THEA, (skirt, SkirtZip(), facing)))
    bought, done = tapes(d, facing)
    assert bought == [pytest.approx(d.numbers.W + d.numbers.Ew, abs=2.0 * MM)]
    assert "Tape the waist" in done
    titles = [op.title for op in making_order(d).operations]
    assert titles.index("Tape the waist") < titles.index("Face the waist")


def test_the_mouths_of_slanting_pockets_are_taped() -> None:
    pockets = SkirtPockets(shape=Shape.SLANT)
    d = draft(order(THEA, (StraightSkirt(), SkirtZip(), pockets, Waistband())))
    mouth = d.sheet.length("SF", "pocket")
    assert tapes(d, pockets)[0] == [pytest.approx(2 * mouth)]
    titles = [op.title for op in making_order(d).operations]
    assert titles.index("Tape the pocket mouths") < titles.index("Make the pockets")


def test_a_shaped_band_is_taped_before_it_is_faced() -> None:
    band = ContourBand()
    d = draft(order(THEA, (StraightSkirt(), SkirtZip(), band)))
    waist = d.numbers.W + d.numbers.Ew
    assert tapes(d, band)[0] == [pytest.approx(waist, abs=2.0 * MM)]
    taped, faced = (
        next(k for k, op in enumerate(making_order(d).operations) if word in op.title)
        for word in ("Tape the upper edge", "Face the shaped band")
    )
    assert taped < faced
