"""The raglan (transformations 4).

Bodies are the check values' standard ones, the demo's clients and women of the survey
of 2012, drafted whole.
"""

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Path, distance
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.skirts.peplum import Cut, Peplum
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.features.sleeves.raglan import Raglan
from clothwright.features.sleeves.set_in_sleeve import Elbow, SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.sleeves.two_piece_sleeve import TwoPieceSleeve
from clothwright.findings import Severity
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.cutline import cut_line
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.truing.outline import tightest
from clothwright.units import Unit
from orders import order, sleeved_features

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA, *ansur_women()[::200])


def made(body: Body, *swaps: Feature, unit: Unit = Unit.CM) -> Draft:
    return draft(order(body, features(*swaps), unit=unit, estimates=RuleSet.SURVEY))


def features(*swaps: Feature) -> tuple[Feature, ...]:
    usual: tuple[Feature, ...] = (
        SideDart(),
        BackWaistDart(),
        Peplum(cut=Cut.CIRCLE),
        Raglan(),
    )
    kinds = {f.kind for f in swaps}
    if "bust dart" in kinds:
        usual = usual[1:]
    keep = {"front armhole princess", "back armhole princess"} - kinds
    return tuple(f for f in sleeved_features(*usual, *swaps) if f.kind not in keep)


@pytest.mark.parametrize("body", BODIES)
def test_it_sews(body: Body) -> None:
    """The raglan seams are equal within 0.3; the overarm seam is longer behind by the
    shoulder's ease; the neck, the sleeve and its hem run on over the seams."""
    d = made(body)
    p = pattern(d, words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]
    assert {"SL", "F top", "B top"}.isdisjoint(d.sheet.pieces)
    walks = {w.seam.code: w for w in d.report.walks}
    for code in ("S23", "S24"):
        assert walks[code].ease == pytest.approx(0.0, abs=0.3)
        assert walks[code].holds
    assert walks["S3"].ease == pytest.approx(d.numbers.se_left, abs=0.05 * MM)
    assert walks["S25"].ease == pytest.approx(0.0, abs=0.1 * MM)
    angles = {a.joint.name: a for a in d.report.angles}
    for name in ("neck over the front raglan", "neck over the back raglan"):
        assert sum(angles[name].parts) == pytest.approx(180.0, abs=0.1)
    for name in ("neck over the shoulder", "underarm", "sleeve under the arm"):
        assert sum(angles[name].parts) == pytest.approx(180.0, abs=2.0)
    assert angles["hem over the overarm seam"].parts == pytest.approx((90, 90), abs=0.1)


@pytest.mark.parametrize("body", BODIES)
def test_the_raglan_line(body: Body) -> None:
    """From 2.5 to 4 down the front neck, 2 to 3 along the back, bowed 0.6 to 1.0, into
    the armhole at its notch or below."""
    d = made(body)
    for code, whole, down, notch in (("F", "neck", 3.2, 7.5), ("B", "neck", 2.5, 9.5)):
        sleeve = f"SL{code}"
        assert d.sheet.length(sleeve, whole) == pytest.approx(down, abs=0.1 * MM)
        raglan = d.sheet.edge(code, "raglan").path
        if code == "B":
            raglan = raglan.reversed()
        into = d.sheet.points["Rfn" if code == "F" else "Rbn"]
        low = raglan.length_to_point(into)
        assert 3.5 - 1e-6 <= low <= notch + 1e-6
        line = raglan.between(low, raglan.length)
        chord = Path.line(line.start, line.end)
        points = (line.at_length(line.length * i / 60) for i in range(61))
        bow = max(chord.nearest(p)[1] for p in points if _outside(chord, p, code))
        assert 0.6 <= bow <= 1.0


@pytest.mark.parametrize("body", [*BODIES, *ansur_women()[95::140]])
def test_the_line_runs_on_round_in_the_cap(body: Body) -> None:
    """Shoulder and cap meet at 30 to 40 degrees: the sleeve's line is rounded there,
    to no less than 4 cm (common practice), and its cut line does not cross itself."""
    d = made(body)
    for code in ("SLF", "SLB"):
        piece = d.sheet.piece(code)
        assert tightest(piece.edge("raglan").path)[1] > 3.95
        line = cut_line(piece, Allowances(Unit.CM, d.order.said))
        assert line.crossing is None
        assert line.narrow == line.wide == ()


def _outside(chord: Path, p: tuple[float, float], code: str) -> bool:
    a, b = chord.start, chord.end
    side = (b.x - a.x) * (p[1] - a.y) - (b.y - a.y) * (p[0] - a.x)
    return side < 0 if code == "F" else side > 0


@pytest.mark.parametrize("body", BODIES)
def test_the_tip_stands_above_the_cap(body: Body) -> None:
    """The gap at T is 0.6 to 1.2 in front, and behind what makes the overarm seam of
    one length, 0.2 off it at the most on these bodies; what is cut off keeps its area
    and shape: the shoulder of the sleeve is the shoulder of the body."""
    d = made(body)
    n, k = d.numbers, d.sheet.points["K"]
    for code, length, gap in (("SLF", n.Lr, (0.9, 0.9)), ("SLB", n.Lrb, (0.7, 1.6))):
        path = d.sheet.edge(code, "overarm").path
        path = path.reversed() if code == "SLF" else path
        tip = path.at_length(length)
        assert distance(path.start, tip) == pytest.approx(length, abs=0.5 * MM)
        assert gap[0] - 0.02 <= k.y - tip.y <= gap[1] + 0.02


@pytest.mark.parametrize(("body", "told"), [(P92, False), (P116, True)])
def test_a_long_front_armhole_is_told(body: Body, told: bool) -> None:
    """The cup of P116 lengthens the front armhole beyond the cap: a note says so."""
    assert ("RG2" in {f.code for f in made(body).findings}) is told


def test_the_cap_has_no_ease() -> None:
    """The cap is dropped by its ease (1–2): a lower cap on the same armhole."""
    n = made(P92).numbers
    plain = draft(order(P92, sleeved_features(), estimates=RuleSet.SURVEY)).numbers
    assert n.E_cap == 0.0
    assert n.Wb == plain.Wb
    assert 0.6 <= plain.h_cap - n.h_cap <= 2.0
    d = made(P92, SetInSleeve(cap_ease=2.0))
    assert "RG1" in {f.code for f in d.findings if f.severity is Severity.REFUSE}


@pytest.mark.parametrize(
    "swaps",
    [
        (SetInSleeve(reach=Reach.WRIST, elbow=Elbow.DART),),
        (SetInSleeve(reach=Reach.WRIST, elbow=Elbow.EASE),),
        (SetInSleeve(reach=Reach.WRIST), Cuff()),
        (BustDart(to=DartPlace.WAIST),),
    ],
)
@pytest.mark.parametrize("unit", [Unit.CM, Unit.IN])
def test_with_other_sleeves(swaps: tuple[Feature, ...], unit: Unit) -> None:
    d = made(BRIDA, *swaps, unit=unit)
    p = pattern(d, words=False)
    assert not p.failed, [str(f) for f in p.findings if f.severity is Severity.REFUSE]


def test_the_order_of_making() -> None:
    """Overarm first, the raglan while the body lies flat, then the facing, then the
    sides and the seams under the arm."""
    titles = [op.title for op in making_order(made(P92)).operations]
    wanted = (
        "Sew the overarm seams",
        "Sew the raglan seams",
        "Face the neck",
        "Sew the sleeve seams",
        "Sew the sides",
    )
    assert [t for t in titles if t in wanted] == list(wanted)
    assert "Set the sleeves" not in titles


@pytest.mark.parametrize(
    ("swaps", "says"),
    [
        ((PuffedCap(),), "one kind of cap"),
        ((SetInSleeve(reach=Reach.WRIST), TwoPieceSleeve()), "its own two pieces"),
        ((FrontArmholePrincess(),), "side dart"),
        ((BustDart(to=DartPlace.SHOULDER),), "lead it to the waist"),
        ((Block(back_shoulder=BackShoulder.NECK),), 'back_shoulder = "ease"'),
    ],
)
def test_what_goes_together(swaps: tuple[Feature, ...], says: str) -> None:
    without = ("side dart",) if "front armhole princess" in swaps[0].kind else ()
    asked = tuple(f for f in features(*swaps) if f.kind not in without)
    with pytest.raises(OrderError, match=says):
        draft(order(P92, asked))
