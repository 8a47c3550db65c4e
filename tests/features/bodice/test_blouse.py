"""A bodice that blouses over its waist (blocks D7: 0.6 to 4 cm longer)."""

import pytest

from bodies import BRIDA, P80, P92, THEA, ansur_whole
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.waist import WaistSeam
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from making.test_order import complete
from orders import closed_back, cut_faults, order, swapped

MM = 0.1


def blouse(by: float | None, how: TakenUp = TakenUp.GATHERS) -> tuple[Feature, ...]:
    front = BustDart(to=DartPlace.WAIST, taken_up=how)
    features = swapped(closed_back(lines="darts"), front, place_of="side dart")
    features = swapped(features, BackWaistDart(taken_up=how))
    return swapped(features, WaistSeam(blouse=by))


@pytest.mark.parametrize("how", [TakenUp.DART, TakenUp.GATHERS])
@pytest.mark.parametrize("body", [P80, P92, BRIDA, THEA, ansur_whole()[130]])
def test_it_is_longer_and_no_narrower(body: Body, how: TakenUp) -> None:
    """The centres grow by the blouse; with sewn darts the waist edges keep their
    lengths; sides and dart legs stay of one length (transformations 1.9)."""
    plain, made = (draft(order(body, blouse(k, how))) for k in (None, 3.0))
    assert not made.failed, made.failures()
    was, now = plain.sheet, made.sheet
    cf = now.length("F", "cf") - was.length("F", "cf")
    assert cf == pytest.approx(3.0, abs=1e-6)
    for code in ("F", "B"):
        for e in was.piece(code).edges:
            if e.name.startswith("waist") and how is TakenUp.DART:
                assert now.length(code, e.name) == pytest.approx(e.length, abs=0.05)
    side = now.length("F", "side") - was.length("F", "side")
    assert 2.8 < side <= 3.0 + 1e-6
    walk = next(w for w in made.report.walks if w.seam.code == "S4")
    assert walk.ease == pytest.approx(0.0, abs=0.2 * MM)
    assert not cut_faults(made)
    complete(making_order(made))
    said = [f for f in made.findings if f.code == "W2"]
    assert len(said) == (2 if how is TakenUp.DART else 0)


def test_a_gathered_waist_is_drawn_up_before_it_is_taped() -> None:
    """The tape is as long as the waist is when it is sewn."""
    told = [o.title for o in making_order(draft(order(P92, blouse(3.0)))).operations]
    tape = told.index("Tape the bodice's waist")
    for half in ("front", "back"):
        assert told.index(f"Gather the waist of the {half}") < tape
    sewn = making_order(draft(order(P92, blouse(3.0, TakenUp.DART)))).operations
    assert not any("Gather the waist" in o.title for o in sewn)
    waist = next(o for o in sewn if o.title == "Sew the waist")
    assert waist.says[0] == "The side seams meet."  # there are no panels


@pytest.mark.parametrize("i", range(0, 993, 160))
def test_real_women_get_it(i: int) -> None:
    for how in (TakenUp.DART, TakenUp.GATHERS):
        made = draft(order(ansur_whole()[i], blouse(4.0, how)))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


def test_what_does_not_go_together() -> None:
    features = swapped(closed_back(), WaistSeam(blouse=2.0))
    with pytest.raises(OrderError, match="take darts in front"):
        draft(order(P92, features))
