"""A skirt at the waist seam of a bodice (blocks G; demo scenario, order 2)."""

import math

import pytest

from bodies import P92, THEA, YSOLDE
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.block import Block, Depth
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.skirts.dress_skirt import Cut, DressSkirt
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.sheets.steps import steps_text
from orders import closed_back, main_features, order, sleeved_features, swapped

MM = 0.1


def dress(body: Body, *swaps: Feature, skirt: DressSkirt) -> Draft:
    features = [f for f in sleeved_features(*swaps) if f.kind != "peplum"]
    return draft(order(body, (*features, skirt)))


def test_the_demo_order_2() -> None:
    """Ysolde's sleeved dress: half circle, L 62; the waist seam is W + Ew = 97."""
    d = dress(
        YSOLDE,
        Block(bust_ease=8.0, waist_ease=3.0, depth=Depth.MEASURED),
        SetInSleeve(length=21.0, arm_ease=5.0, cap_ease=3.0),
        skirt=DressSkirt(length=62.0, fullness=0.5),
    )
    assert not d.failed, d.failures()
    n, sheet = d.numbers, d.sheet
    assert n.w == pytest.approx(97.0, abs=0.1 * MM)
    waist = 97.0 - 0.6 * 0.5
    assert n.r == pytest.approx(waist / math.pi, abs=0.1 * MM)
    hem = 2 * sum(sheet.length(c, "hem") for c in ("PF", "PB"))
    assert hem == pytest.approx(waist + math.pi * 62, abs=0.5 * MM)
    assert n.z == 18.0
    assert sheet.piece("PF").name == "Front skirt"
    assert {s.name for s in sheet.seams} >= {"skirt side"}


@pytest.mark.parametrize(
    "skirt", [*(DressSkirt(cut=c) for c in Cut), FittedDressSkirt()]
)
def test_no_number_or_step_of_a_dress_speaks_of_a_peplum(skirt: Feature) -> None:
    features = swapped(closed_back(lines="darts"), skirt, place_of="peplum")
    d = draft(order(P92, features))
    assert not d.failed, d.failures()
    told = [*(d.numbers.why(k).name for k in d.used if k in d.numbers), *steps_text(d)]
    told += [op.title for op in making_order(d).operations]
    assert any("skirt" in t for t in told)
    assert not [t for t in told if "peplum" in t]


@pytest.mark.parametrize("cut", Cut)
@pytest.mark.parametrize("body", [P92, THEA, YSOLDE], ids=lambda b: b.client)
def test_dresses_pass(body: Body, cut: Cut) -> None:
    skirt = DressSkirt(cut=cut, gathers=2.0 if cut is Cut.GATHERED else None)
    for features in (sleeved_features(), closed_back(lines="darts")):
        d = draft(order(body, swapped(features, skirt, place_of="peplum")))
        assert not d.failed, d.failures()


def test_a_dress_needs_its_zip_and_no_second_skirt() -> None:
    open_back = swapped(main_features(), DressSkirt(), place_of="peplum")
    with pytest.raises(OrderError, match="through its back or front"):
        draft(order(THEA, open_back))
    with pytest.raises(OrderError, match="one thing hangs at the waist"):
        draft(order(THEA, (*sleeved_features(), DressSkirt())))
    both = swapped(sleeved_features(), DressSkirt(), place_of="peplum")
    with pytest.raises(OrderError, match="a skirt zip needs a skirt"):
        draft(order(THEA, (*both, SkirtZip())))


def test_what_a_gathered_skirt_has_no_use_for_is_said() -> None:
    d = dress(THEA, skirt=DressSkirt(cut=Cut.GATHERED, fullness=1.0))
    assert any(f.code == "Q5" and "fullness" in str(f) for f in d.findings)


def test_gathers_do_not_meet_gathers() -> None:
    gathered = BackWaistDart(taken_up=TakenUp.GATHERS)
    both = swapped(closed_back(lines="darts"), gathered, place_of="back waist dart")
    for cut, fits in ((Cut.CIRCLE, True), (Cut.GATHERED, False)):
        asked = order(THEA, swapped(both, DressSkirt(cut=cut), place_of="peplum"))
        if fits:
            assert not draft(asked).failed
            continue
        with pytest.raises(OrderError, match="take the dart up as a dart"):
            draft(asked)
