"""Yokes: cut off and sewn on again, the bust dart below them (transformations 1.5)."""

import math
from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE
from clothwright.body import Body, RuleSet
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.block import Block, Depth
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.front_dart import DartPlace, as_drafted
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.side_level import SideLevel
from clothwright.features.bodice.sleeved_armhole import SleevedArmhole
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.yokes import BackYoke, FrontYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.linings.neck_facing import NeckFacing
from clothwright.features.linings.sewn_halves import sewn_back
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.sleeves.flutter_sleeve import FlutterSleeve
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from orders import closed_back, cut_faults, order, swapped
from women import woman

MM = 0.1


def yoked(
    *yokes: Feature, dart: Feature | None = None, lining: Mode | None = None
) -> tuple[Feature, ...]:
    features = closed_back(lines="darts", lining=lining)
    if dart is not None:
        features = swapped(features, dart, place_of="side dart")
    return (*features, *yokes)


@pytest.mark.parametrize(
    ("bow", "slope", "body"),
    list(product((0.0, 1.0, -1.0), (0.0, 2.0), (P80, P92, P116, YSOLDE))),
)
def test_both_parts_are_the_half_that_was(bow: float, slope: float, body: Body) -> None:
    """A cut keeps area and every other edge (exact); both sides of its seam are of one
    length; the yoke is as deep at the centre as ordered."""
    plain = draft(order(body, yoked()))
    made = draft(order(body, yoked(FrontYoke(bow=bow, slope=slope), BackYoke(bow=bow))))
    assert not made.failed, made.failures()
    n, sheet = made.numbers, made.sheet
    for whole, yoke, depth in (("F", "FY", n.Yf), ("B", "BY", n.Yb)):
        was = plain.sheet.piece(whole)
        parts = sheet.piece(whole), sheet.piece(yoke)
        assert sum(p.area for p in parts) == pytest.approx(was.area, abs=1e-6)
        for name in ("neck", "shoulder", "armhole"):
            total = sum(p.edge(name).length for p in parts if p.has(name))
            assert total == pytest.approx(was.edge(name).length, abs=1e-6)
        a, b = (p.edge("yoke").length for p in parts)
        assert a == pytest.approx(b, abs=1e-6)
        centre = sheet.points["Yc" if whole == "F" else "Ycb"]
        level = n.y_hf if whole == "F" else 0.0
        assert centre.y - level == pytest.approx(depth, abs=1e-6)
    for code in ("S3", "S8", "S9", "S10", "S11"):
        old, new = plain.sheet.seam(code), sheet.seam(code)
        for chain, again in ((old.left, new.left), (old.right, new.right)):
            assert sheet.chain_length(again) == pytest.approx(
                plain.sheet.chain_length(chain), abs=1e-6
            )
    if bow:  # a curved seam is square to the centre
        edge = sheet.edge("F", "yoke").path
        assert abs(edge.end_direction.y) < 1e-6
        mid = edge.segments[0].at(0.5)
        straight = (edge.start.y + edge.end.y) / 2
        assert mid.y - straight == pytest.approx(bow, abs=1e-6)
    assert not cut_faults(made)
    making_order(made)


@pytest.mark.parametrize(
    ("bow", "slope", "waves"),
    [(2.0, 0.0, False), (4.0, 0.0, True), (-4.0, 0.0, True), (4.0, 8.0, False)],
)
def test_a_seam_that_waves_is_doubted(bow: float, slope: float, waves: bool) -> None:
    """Square to the centre and bowed 4 cm it goes over 4 beyond both its ends; where it
    rises 8 to the armhole it has room for the bow."""
    made = draft(order(P92, yoked(BackYoke(bow=bow, slope=slope, depth=14.0))))
    told = [f for f in made.findings if f.code == "Y3"]
    assert bool(told) is waves
    seam = made.sheet.edge("B", "yoke").path
    low = max(p.y for p in seam.flatten(0.01)) - max(seam.start.y, seam.end.y)
    high = min(seam.start.y, seam.end.y) - min(p.y for p in seam.flatten(0.01))
    assert (max(low, high) > 2.5) is waves


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, YSOLDE, THEA])
@pytest.mark.parametrize("how", [TakenUp.DART, TakenUp.TUCK, TakenUp.GATHERS])
@pytest.mark.parametrize("mode", [None, Mode.TO_EDGE, Mode.BELOW_FACING])
def test_the_bust_dart_below_a_yoke(
    how: TakenUp, mode: Mode | None, body: Body
) -> None:
    """It opens by 2·|BP Qy|·sin(θ/2) (exact), and the yoke stays as it was; gathers are
    planned in the seam of the yoke."""
    dart = BustDart(to=DartPlace.YOKE, taken_up=how)
    made = draft(order(body, yoked(FrontYoke(), dart=dart, lining=mode)))
    assert not made.failed, made.failures()
    plain = draft(order(body, yoked(FrontYoke())))
    sheet = made.sheet
    for e in plain.sheet.piece("FY").edges:
        assert sheet.length("FY", e.name) == pytest.approx(e.length, abs=1e-6)
    reach = distance(sheet.points["BP"], sheet.points["Qy"])
    wanted = 2 * reach * math.sin(math.radians(made.numbers.theta) / 2)
    f = sheet.piece("F")
    if how is TakenUp.GATHERS:
        seam = sheet.seam("front yoke")
        assert seam.gathered
        assert seam.right[0].piece == "F"
        assert 0.7 * wanted < seam.ease.plan < 1.1 * wanted
    else:
        a, b = f.edge("dart yoke side").path, f.edge("dart yoke cf").path
        assert distance(a.start, b.end) == pytest.approx(wanted, abs=1e-6)
    assert f.has("side")
    assert not cut_faults(made)


def test_facings_are_traced_with_the_yoke_on() -> None:
    """Front and back lie again as they were drawn (exact)."""
    plain = draft(order(P92, yoked()))
    dart = BustDart(to=DartPlace.YOKE, taken_up=TakenUp.GATHERS)
    made = draft(order(P92, yoked(FrontYoke(), BackYoke(), dart=dart)))
    pairs = [(as_drafted(d.sheet), sewn_back(d.sheet).centre) for d in (plain, made)]
    for was, now in zip(*pairs, strict=True):
        for name in ("neck", "shoulder", "armhole"):
            a, b = was.edge(name).path, now.edge(name).path
            for s in (0.0, 0.25, 0.6, 1.0):
                gap = distance(a.at_length(a.length * s), b.at_length(b.length * s))
                assert gap < 0.1 * MM


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, YSOLDE, THEA])
@pytest.mark.parametrize("depth", [None, 10.0])
def test_a_back_yoke_takes_the_shoulder_dart(depth: float | None, body: Body) -> None:
    """The dart of 0.8 is closed in the yoke, whose seam opens at the armhole by
    2·|Ps Yab|·sin(θs/2) (exact), 0.6 to 1.2 (1.5); both sides of the seam are of one
    length, and the shoulder has its ease."""
    features = swapped(
        yoked(BackYoke(depth=depth)), Block(back_shoulder=BackShoulder.YOKE)
    )
    made = draft(order(body, features))
    assert not made.failed, made.failures()
    n, sheet = made.numbers, made.sheet
    p = sheet.points
    wide = distance(p["Yab"], p["Yab′"])
    reach = distance(p["Ps"], p["Yab"])
    wanted = 2 * reach * math.sin(math.radians(n.theta_s) / 2)
    assert wide == pytest.approx(wanted, abs=1e-6)
    assert 0.6 <= wide <= 1.2
    a, b = (sheet.length(code, "yoke") for code in ("B", "BY"))
    assert a == pytest.approx(b, abs=0.02)
    assert sheet.length("BY", "shoulder") == pytest.approx(n.Lrb, abs=0.1 * MM)
    assert not sheet.piece("BY").has("shoulder neck")
    if depth is None:
        assert p["Ycb"].y == pytest.approx(p["Ps"].y, abs=1e-6)
    assert not cut_faults(made)
    making_order(made)


@pytest.mark.parametrize(
    ("features", "says"),
    [
        (yoked(FrontYoke(), dart=BustDart()), "cut the bust dart in two"),
        (yoked(dart=BustDart(to=DartPlace.YOKE)), 'add a "front yoke"'),
        (
            swapped(yoked(), Block(back_shoulder=BackShoulder.YOKE)),
            'add a "back yoke"',
        ),
        (
            swapped(
                yoked(BackYoke(), lining=Mode.TO_EDGE),
                Block(back_shoulder=BackShoulder.YOKE),
            ),
            "lining",
        ),
        (
            swapped(yoked(BackYoke(bow=1.0)), Block(back_shoulder=BackShoulder.YOKE)),
            "make its bow 0",
        ),
        (
            yoked(FrontYoke(depth=6.0)),
            r'make the yoke \(depth of "front yoke"\) deeper',
        ),
        (yoked(FrontYoke(depth=28.0)), r'make it \(depth of "front yoke"\) less deep'),
        (yoked(BackYoke(slope=8.0, depth=6.0)), "misses the armhole"),
        (
            yoked(
                FrontYoke(),
                dart=BustDart(to=DartPlace.YOKE, share=0.5),
            ),
            "goes there whole",
        ),
    ],
)
def test_what_a_yoke_does_not_go_with(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, features))


def test_a_low_neck_leaves_no_room() -> None:
    deep = swapped(yoked(FrontYoke()), Neckline(shape=FrontShape.SCOOP))
    with pytest.raises(OrderError, match="must stay"):
        draft(order(P92, deep))


def test_a_seam_through_the_hollow_of_the_armhole_is_refused_in_words() -> None:
    """A shallow armhole bends on below the seam and up again: the seam would meet it
    twice, and the yoke's outline crossed itself."""
    features = (
        Block(depth=Depth.MEASURED),
        SleevedArmhole(),
        Neckline(shape=FrontShape.SQUARE, lean=0.8),
        BackNeckline(shape=BackShape.ROUND),
        SideDart(level=SideLevel.HIGH),
        BackArmholePrincess(),
        FrontYoke(),
        ConcealedZip(),
        FlutterSleeve(),
        Torso(),
        NeckFacing(),
    )
    with pytest.raises(
        OrderError,
        match=r'meets it twice: make the yoke \(depth of "front yoke"\) less',
    ):
        draft(order(woman(59), features, estimates=RuleSet.SURVEY))
