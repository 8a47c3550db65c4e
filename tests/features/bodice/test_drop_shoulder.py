"""The drop shoulder (transformations 4, blocks B1).

Bodies are the check values' standard ones, the demo's clients and women of the survey
of 2012, drafted whole.
"""

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.drop_shoulder import DropShoulder
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.skirts.peplum import Cut, Peplum
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.raglan import Raglan
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.units import Unit
from orders import order, sleeved_features

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA, *ansur_women()[100::200])


def features(*swaps: Feature) -> tuple[Feature, ...]:
    usual: tuple[Feature, ...] = (
        BackWaistDart(),
        Peplum(cut=Cut.CIRCLE),
        DropShoulder(),
    )
    if "bust dart" not in {f.kind for f in swaps}:
        usual = (SideDart(), *usual)
    off = ("front armhole princess", "back armhole princess", "sleeved armhole")
    return tuple(
        f for f in sleeved_features(*usual, *swaps) if f.kind not in off or f in swaps
    )


def made(body: Body, *swaps: Feature, unit: Unit = Unit.CM) -> Draft:
    return draft(order(body, features(*swaps), unit=unit, estimates=RuleSet.SURVEY))


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("out", [3.0, None, 8.0])
def test_it_sews(body: Body, out: float | None) -> None:
    """The armhole of the numbers is the one on paper; cap ease 0 to 0.5, here 0.3; the
    shoulder is as long behind and its ease."""
    d = made(body, DropShoulder(out=out))
    p = pattern(d, words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]
    n = d.numbers
    assert d.sheet.length("F", "armhole") == pytest.approx(n.A_f, abs=0.01 * MM)
    assert d.sheet.length("B", "armhole") == pytest.approx(n.A_b, abs=0.01 * MM)
    walks = {w.seam.code: w for w in d.report.walks}
    took = walks["S23"].ease + walks["S24"].ease
    assert took == pytest.approx(0.3, abs=0.1 * MM)
    assert walks["S3"].ease == pytest.approx(n.se_left, abs=0.1 * MM)


@pytest.mark.parametrize("body", [b for b in BODIES if b is not P116])
def test_the_cap_is_lower_and_the_sleeve_wider(body: Body) -> None:
    """The shoulder runs on by 3 to 8; the cap is lower by 60 to 70 % of that, and the
    sleeve wider than a set-in one."""
    n = made(body).numbers
    assert n.ext == 5.0
    assert 0.6 * n.ext <= n.h_0 - n.h_cap <= 0.7 * n.ext
    assert n.e_arm > n.e_usual


def test_a_cap_that_is_lowered_more_is_told() -> None:
    """P116: no lower underarm brings the cap up again; the draft says so."""
    d = made(P116)
    n = d.numbers
    assert n.h_0 - n.h_cap > 0.7 * n.ext
    assert "DS1" in {f.code for f in d.findings}


def test_the_shoulder_and_the_length() -> None:
    """The tip is 5 along the shoulder line and 1 down; the sleeve is shorter by 5, and
    so is what it has above the elbow: neck to wrist stays SH + AL."""
    long = SetInSleeve(reach=Reach.WRIST, elbow=Elbow.EASE)
    d, plain = made(P92, long), draft(order(P92, sleeved_features(long)))
    at, n = d.sheet.points, d.numbers
    assert distance(at["Tf"], at["Te"]) == pytest.approx((5.0**2 + 1.0) ** 0.5)
    assert n.lh == pytest.approx(n.AL - 5.0)
    assert n.y_E + n.h_cap == pytest.approx(n.SE - 5.0 + 0.5)
    assert plain.numbers.below_elbow == pytest.approx(n.below_elbow, abs=0.6)


@pytest.mark.parametrize(
    "swaps",
    [
        (SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART),),
        (SetInSleeve(reach=Reach.WRIST), GatheredHem(), Cuff()),
        (PuffedCap(),),
        (BustDart(to=DartPlace.WAIST),),
    ],
)
@pytest.mark.parametrize("unit", [Unit.CM, Unit.IN])
def test_with_other_sleeves(swaps: tuple[Feature, ...], unit: Unit) -> None:
    p = pattern(made(BRIDA, *swaps, unit=unit), words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]


def test_it_is_sewn_on_flat() -> None:
    titles = [op.title for op in making_order(made(P92)).operations]
    wanted = ("Sew the shoulders", "Sew the sleeves on flat", "Sew the sides")
    assert [t for t in titles if t in wanted] == list(wanted)
    assert "Set the sleeves" not in titles


def test_an_underarm_lowered_to_the_dart_is_refused() -> None:
    with pytest.raises(OrderError, match=r"make that \d\.\d cm or less"):
        made(P92, DropShoulder(lowered=5.0))


@pytest.mark.parametrize(
    ("swap", "says"),
    [
        (SleevedArmhole(), "one kind of armhole"),
        (Raglan(), "has no shoulder over the arm"),
        (BustDart(to=DartPlace.ARMHOLE), "lead it to the waist"),
    ],
)
def test_what_goes_together(swap: Feature, says: str) -> None:
    with pytest.raises(OrderError, match=says):
        made(P92, swap)
