"""The racer back (transformations 3, cut-away; 1.8): where the armholes run, how they
leave the shoulder, what finishes them. Shapely judges distances."""

import math

import pytest
from shapely.geometry import LineString
from shapely.geometry import Point as Spot

from bodies import BODIES, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.back_waist_dart_rules import BackPlace
from clothwright.features.bodice.racer_back import FrontCut, RacerBack
from clothwright.features.linings.armhole_binding import ArmholeBinding
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Mode
from clothwright.features.linings.neck_binding import NeckBinding
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.order.figures import figures
from orders import closed_back, cut_faults, order, swapped
from verdict import unsound, verdict

MM = 0.1


def racer(
    *more: Feature,
    lines: str = "darts",
    lining: Mode | None = None,
    bound: bool = False,
) -> tuple[Feature, ...]:
    """A scooped top with a racer back and a zip."""
    features = closed_back(
        lines=lines, front=FrontShape.SCOOP, back=BackShape.SCOOP, lining=lining
    )
    features = swapped(features, RacerBack(), place_of="sleeveless armhole")
    for f in more:
        features = swapped(features, f)
    if bound:
        kept = (f for f in features if f.kind != "facing")
        features = (*kept, NeckBinding(), ArmholeBinding())
    return features


STYLES = {
    "faced": racer(),
    "bound": racer(bound=True),
    "cut away in front": racer(RacerBack(front=FrontCut.CUT), bound=True),
    "lined below the facing": racer(lining=Mode.BELOW_FACING),
    "lined to the edge": racer(lining=Mode.TO_EDGE),
}


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    return draft(order(body, features))


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("body", BODIES[1:], ids=lambda b: b.client)
def test_every_body_gets_it(style: str, body: Body) -> None:
    d = made(STYLES[style], body)
    assert not d.failed, d.failures()
    assert not cut_faults(d)
    assert making_order(d).operations


@pytest.mark.parametrize("style", STYLES)
def test_women_of_the_survey(style: str) -> None:
    passed = 0
    for woman in ansur_women()[::120]:
        asked = order(woman, STYLES[style], estimates=RuleSet.SURVEY)
        it = verdict(asked)
        assert list(unsound(asked, it)) == []
        passed += not it.refusals
    assert passed >= 5


@pytest.mark.parametrize("half", [6.0, 8.0, 10.0])
def test_the_back_is_narrowest_where_ordered(half: float) -> None:
    """The armhole comes no nearer to the centre than ordered, 0.6 of yB down."""
    d = made(racer(RacerBack(half=half)))
    points = d.sheet.edge("B", "armhole").path.flatten(0.001)
    nearest = min(points, key=lambda p: p[0])
    assert nearest[0] == pytest.approx(half, abs=0.1 * MM)
    assert nearest[1] == pytest.approx(0.6 * d.numbers.yB, abs=5 * MM)


@pytest.mark.parametrize("body", BODIES[1:], ids=lambda b: b.client)
def test_both_armholes_run_on_over_the_shoulder(body: Body) -> None:
    """The corners of front and back are 180° together, the back's less than square by
    the lean: twice the slope of the chord to the narrowest place (a parabola), less the
    slope of the shoulder."""
    d = made(STYLES["faced"], body)
    n, sheet = d.numbers, d.sheet
    front, back = sheet.piece("F"), sheet.piece("B")
    corners = [front.interior_angle("armhole"), back.interior_angle("shoulder")]
    assert sum(corners) == pytest.approx(180.0, abs=0.1)
    assert corners[1] == pytest.approx(90.0 - n.r_lean, abs=0.1)
    tip, pb = sheet.points["Tb"], sheet.points["pb"]
    leaves = back.edge("armhole").path.start_direction
    down = degrees_between(leaves, pb - tip)
    chord = math.degrees(math.atan2(tip.x - pb.x, pb.y - tip.y))
    start = math.degrees(math.atan2(-leaves.x, leaves.y))
    assert math.tan(math.radians(start)) == pytest.approx(
        2 * math.tan(math.radians(chord)), abs=1e-6
    )
    assert down > 0


def test_the_strap_is_what_the_neck_leaves_of_half_the_shoulder() -> None:
    d = made(STYLES["faced"])
    n = d.numbers
    assert n.ti == pytest.approx(n.SH / 2)
    assert d.sheet.length("F", "shoulder") == pytest.approx(
        n.SH / 2 - n.dw, abs=MM / 10
    )


def test_the_front_covers_the_cup_unless_it_is_cut_away_too() -> None:
    """1.5 outside the cup (transformations 3), measured by shapely."""
    gaps = {}
    for cut in FrontCut:
        d = made(racer(RacerBack(front=cut)), P116)
        line = LineString(d.sheet.lines["armhole front"].flatten(0.002))
        gaps[cut] = line.distance(Spot(d.sheet.points["BP"]))
        told = [f for f in d.findings if f.code == "A5"]
        assert bool(told) == (gaps[cut] < d.numbers.BUB + 1.5 - 0.05)
        if told:
            assert told[0].data["beside"] == pytest.approx(gaps[cut], abs=0.02)
    assert gaps[FrontCut.COVERED] > gaps[FrontCut.CUT] + 0.5


def test_the_front_is_tightened_at_the_pitch() -> None:
    """1.0 in all of the usual 1 to 2 (1.8): into the side dart."""
    plain, tight = (made(racer(RacerBack(tightened=t))) for t in (0.0, None))
    loss = plain.sheet.length("F", "armhole") - tight.sheet.length("F", "armhole")
    assert tight.numbers.ta == 1.0
    assert 0.6 < loss < 1.05  # a wedge of t takes about 0.78 t (corrections 3.6)


def test_the_facing_clears_the_armhole() -> None:
    """It crosses the centre below the armholes, 1 from them or more."""
    for body in (P92, P116, THEA):
        facing = made(STYLES["faced"], body).sheet.piece("BF")
        free = LineString(facing.edge("free").path.flatten(0.002))
        armhole = LineString(facing.edge("armhole").path.flatten(0.002))
        assert free.distance(armhole) > 1.0


def test_symbols_are_told_apart() -> None:
    d = made(STYLES["bound"])
    symbols = [d.numbers.why(k).symbol for k in d.used]
    assert len(symbols) == len(set(symbols))
    assert {"r half", "r level", "r lean"} <= set(figures(d)["numbers"])


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (racer(RacerBack(half=16.0)), r"make it \(half of .racer back.\) narrower"),
        (racer(RacerBack(half=3.0, narrowed=2.0)), r"would lean by \d+°"),
        (
            racer(RacerBack(level=6.0, half=12.0, narrowed=2.0)),
            "5 cm is the least: lay that",
        ),
        (racer(lines="armhole"), "take a back waist dart in place of the princess"),
        (racer(Block(back_shoulder=BackShoulder.NECK)), "no room in a racer's strap"),
        (
            racer(BackWaistDart(to=BackPlace.ARMHOLE)),
            "leave the back waist dart at the waist",
        ),
        ((*racer(), ArmholeBinding()), "an all-in-one facing finishes the armholes"),
    ],
)
def test_what_is_refused_in_words(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        made(features)


def test_a_faced_strap_that_is_too_narrow_may_be_bound() -> None:
    narrow = RacerBack(narrowed=7.2)
    faced, bound = made(racer(narrow)), made(racer(narrow, bound=True))
    assert "bind the edges" in " ".join(str(f) for f in faced.findings)
    assert faced.failed
    assert not bound.failed, bound.failures()
    assert Facing().kind not in {f.kind for f in bound.order.features}
