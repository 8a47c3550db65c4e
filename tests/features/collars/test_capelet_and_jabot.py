"""Capelet and jabot: parts of rings at the neck (transformations 5; blocks G13)."""

import math

import pytest

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import Point, distance
from clothwright.features import Feature
from clothwright.features.bodice.yokes import FrontYoke
from clothwright.features.collars.capelet import Capelet
from clothwright.features.collars.jabot import Jabot
from clothwright.features.collars.stand_collar import StandCollar
from clothwright.features.linings.lining import Lining
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.stand_edging import Edging
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import EdgeKind
from orders import order, sleeved_features, sound

MM = 0.1
BODIES = pytest.mark.parametrize(
    "body", [P80, P92, P116, THEA, YSOLDE], ids=lambda b: b.client
)


def top(*more: Feature, opens: bool = False) -> tuple[Feature, ...]:
    """A sleeved top with a zip behind, or buttoned in front."""
    if not opens:
        return sleeved_features(*more)
    features = sleeved_features(ButtonStand(), *more)
    return tuple(f for f in features if f.kind != "concealed zip")


# -- capelet ---------------------------------------------------------------------------
@BODIES
@pytest.mark.parametrize("share", [0.25, 0.5, 0.77])
def test_its_inner_arc_is_the_neck(body: Body, share: float) -> None:
    """§5: r = n·2/(2πf), n the half neck; hem and inner arc then differ by πf·depth of
    the half (G2)."""
    d = sound(body, top(Capelet(fullness=share, width=30.0)))
    sheet = d.sheet
    seam = sheet.seam("S80")
    neck, cape = (sheet.chain_length(c) for c in (seam.left, seam.right))
    assert cape == pytest.approx(neck, abs=0.1 * MM)
    r = 2 * neck / (2 * math.pi * share)
    arc = sheet.edge("CO", "neck").path
    for at in (0.0, 0.4, 1.0):
        p = arc.at_length(at * arc.length)
        assert distance(p, Point(0.0, 0.0)) == pytest.approx(r, abs=0.2 * MM)
    hem = sheet.length("CO", "hem")
    assert hem == pytest.approx(neck + math.pi * share * 30.0, abs=0.3 * MM)


@BODIES
def test_it_is_told_that_half_a_circle_does_not_pass_the_shoulders(body: Body) -> None:
    """Joined at the shoulder, front and back lie about three quarters round: 180° less
    both shoulders' slopes for the half."""
    for opens in (False, True):
        d = sound(body, top(Capelet(fullness=0.5), opens=opens))
        (told,) = [f for f in d.findings if f.code == "KC1"]
        assert told.severity is (Severity.NOTE if opens else Severity.WARN)
        n = d.numbers
        turning = 180.0 - n.sigma_f - n.sigma_b
        assert told.data["needed"] == pytest.approx(turning / 180.0, abs=0.05)
        fuller = sound(body, top(Capelet(fullness=told.data["needed"]), opens=opens))
        assert not [f for f in fuller.findings if f.code == "KC1"]


@pytest.mark.parametrize("woman", [*range(0, 993, 140)])
def test_left_out_its_part_of_a_circle_lies_over_the_shoulders(woman: int) -> None:
    """Exact: a line beside another is longer by its turn times the distance, and the
    neck turns by 180° less both shoulders' slopes."""
    d = sound(ansur_women()[woman], top(Capelet()))
    n = d.numbers
    turning = 180.0 - n.sigma_f - n.sigma_b
    assert n.f_cape == pytest.approx(turning / 180.0)
    assert not [f for f in d.findings if f.code == "KC1"]


def test_it_lies_on_the_fold_where_the_garment_is_closed() -> None:
    for opens, edge in ((False, "cf"), (True, "cb")):
        piece = sound(THEA, top(Capelet(), opens=opens)).sheet.piece("CO")
        assert piece.fold is not None and piece.fold.name == edge


def test_a_capelet_is_hung_hemmed_and_set() -> None:
    d = sound(THEA, top(Capelet(), opens=True))
    titles = [op.title for op in making_order(d).operations]
    done = [
        "Let the capelet hang a day, then level its edge",
        "Hem the capelet",
        "Set the capelet on the neck",
        "Face the neck",
    ]
    assert [t for t in titles if t in done] == done


# -- jabot -----------------------------------------------------------------------------
@BODIES
@pytest.mark.parametrize("opens", [False, True])
def test_its_inner_edge_is_as_long_as_it_is_sewn_on(body: Body, *, opens: bool) -> None:
    """G13: r = s/φ, outer edge φ·(r + D), so that their ratio is the fullness."""
    d = sound(body, top(Jabot(), opens=opens))
    sheet = d.sheet
    inner, hem = (sheet.length("JA", e) for e in ("inner", "hem"))
    assert inner == pytest.approx(22.0, abs=0.1 * MM)
    assert hem == pytest.approx(3 * 22.0, abs=0.1 * MM)
    assert sheet.length("JA", "end low") == pytest.approx(9.0)
    front = sheet.piece("FC").edge("stand" if opens else "cf").path
    mark = next(k for k in sheet.piece("FC").marks if k.name == "end of the jabot")
    assert front.length_to_point(mark.at) == pytest.approx(22.0, abs=0.1 * MM)
    assert front.nearest(mark.at)[1] < 0.1 * MM
    assert mark.at.y > front.start.y


def test_a_pair_on_the_centre_and_one_in_an_edge() -> None:
    for opens, count in ((False, 2), (True, 1)):
        d = sound(THEA, top(Jabot(), opens=opens))
        shell = cutting_sheet(making_order(d)).cloths["shell"]
        assert [c.count for c in shell if c.code == "JA"] == [count]


def test_a_jabot_is_sewn_before_the_edge_is_faced() -> None:
    for opens, on, after in (
        (False, "Stitch the jabot on", "Face the neck"),
        (
            True,
            "Baste the jabot to the edge of the right front",
            "Face the front edges",
        ),
    ):
        d = sound(YSOLDE, top(Jabot(), opens=opens))
        titles = [op.title for op in making_order(d).operations]
        done = ["Hem the jabot", on, after]
        assert [t for t in titles if t in done] == done
        assert not [t for t in titles if "loose edges of the jabot" in t]


def test_it_goes_with_a_collar_and_a_lining() -> None:
    d = sound(P92, top(Jabot(length=15.0), StandCollar(), opens=True))
    assert {"JA", "CS"} <= set(d.sheet.pieces)
    d = sound(P92, top(Jabot(length=15.0), Lining()))
    assert not d.sheet.piece("L.FC").marks


# -- both ------------------------------------------------------------------------------
def test_real_women() -> None:
    women = ansur_women()[::120]
    assert len(women) >= 8
    passed = 0
    for i, body in enumerate(women):
        more = Capelet(fullness=(0.25, 0.5, 0.77)[i % 3]), Jabot(length=15.0)
        asked = order(body, top(*more, opens=bool(i % 2)), estimates=RuleSet.SURVEY)
        passed += not pattern(draft(asked), words=False).failed
    assert passed >= len(women) - 1


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (top(Jabot(fullness=5.0, width=5.0)), "make it less full"),
        (top(Jabot(fullness=3.32, length=21.78)), "no room for their allowances"),
        (top(Jabot(), FrontYoke()), "over the seam of a yoke"),
        (
            top(Jabot(), ButtonStand(edge=Edging.BAND), opens=True),
            'set edge = "with a facing of its own"',
        ),
        (top(Jabot(), ButtonStand(edge=Edging.CUT_ON), opens=True), "that is sewn"),
        (top(Capelet(), StandCollar()), "a neck has one collar"),
    ],
)
def test_what_is_refused_is_said(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError, match=said):
        draft(order(THEA, features))


def test_a_jabot_longer_than_the_front_is_refused() -> None:
    d = draft(order(THEA, top(Jabot(length=45.0, width=20.0))))
    (told,) = [f for f in d.findings if f.code == "JA1"]
    assert told.severity is Severity.REFUSE
    assert told.data["front"] == pytest.approx(d.sheet.length("FC", "cf"))


def test_a_jabot_in_the_fold_is_finished_all_round() -> None:
    piece = sound(THEA, top(Jabot())).sheet.piece("JA")
    assert {e.kind for e in piece.edges} == {EdgeKind.FINISHED}
