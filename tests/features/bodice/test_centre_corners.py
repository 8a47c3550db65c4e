"""Corners at the centre: square unless the neckline says that it comes to a point."""

import pytest

from bodies import P92, THEA
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.linings.facing import Facing
from clothwright.features.necks import neck_shapes
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.skirts.peplum import Peplum
from clothwright.order import draft
from orders import order


def _closed(front: FrontShape, back: BackShape) -> tuple[Feature, ...]:
    return (
        Block(),
        SleevelessArmhole(),
        Neckline(shape=front),
        BackNeckline(shape=back),
        FrontArmholePrincess(),
        BackArmholePrincess(),
        ConcealedZip(),
        WaistSeam(),
        Peplum(),
        Facing(),
    )


@pytest.mark.parametrize("back", list(BackShape))
@pytest.mark.parametrize("body", [P92, THEA])
def test_the_back_neck_is_square_at_the_centre(back: BackShape, body: Body) -> None:
    own = back is BackShape.STANDARD  # the block's own neck is as wide in front
    front = FrontShape.STANDARD if own else FrontShape.BOAT
    made = draft(order(body, _closed(front, back)))
    named = [j.joint.name for j in made.report.angles]
    assert ("neck at the centre back" in named) == (back is not BackShape.V)
    assert not made.failed, made.failures()


def test_a_neck_that_comes_slanting_to_the_fold_is_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A boat neck drawn like a V's side arrives at more than 95°."""
    v = neck_shapes.FRONT_CURVES[FrontShape.V]
    monkeypatch.setitem(neck_shapes.FRONT_CURVES, FrontShape.BOAT, v)
    made = draft(order(P92, _closed(FrontShape.BOAT, BackShape.BOAT)))
    assert any("centre front" in f for f in made.failures())
