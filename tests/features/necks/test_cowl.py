"""Cowls (transformations 2)."""

import math
from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, direction, distance
from clothwright.features import Feature
from clothwright.features.bodice.armhole import SleevelessArmhole
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.cowl import Cowl
from clothwright.features.necks.cowl_rules import MOST_TURNED, Folds
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.cutline import cut_line
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft
from clothwright.order.pattern import pattern
from clothwright.paper import EdgeKind
from clothwright.sheets.steps import steps_text
from clothwright.units import Unit
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1
DEGREE = 1.0


def sleeveless(cowl: Cowl) -> tuple[Feature, ...]:
    out = swapped(closed_back(lines="darts"), cowl, place_of="neckline")
    return tuple(f for f in out if f.kind != "side dart")


def sleeved(cowl: Cowl) -> tuple[Feature, ...]:
    out = swapped(sleeved_features(), cowl, place_of="neckline")
    return tuple(f for f in out if f.kind != "front armhole princess")


@pytest.mark.parametrize(
    ("body", "folds"), list(product((P80, P92, P116, BRIDA, YSOLDE, THEA), Folds))
)
def test_the_edge_is_square_and_as_long_as_it_sags(body: Body, folds: Folds) -> None:
    """Half the edge is √(depth² + (span/2)²), square to the centre; folds of 6 to 10 cm
    each (2, exact for a V-shaped sag). Waist, shoulder and armhole keep their
    lengths."""
    made = draft(order(body, sleeved(Cowl(folds=folds))))
    assert not made.failed, made.failures()
    n, sheet = made.numbers, made.sheet
    front, edge = sheet.piece("F"), sheet.lines["neck front"]
    assert edge.length == pytest.approx(n.ell, abs=MM / 2)
    assert n.sag == pytest.approx(math.sqrt(n.ell**2 - n.half_span**2))
    assert n.half_span == pytest.approx(n.X - sheet.points["Nf"].x)
    assert 6.0 * folds.count <= n.sag
    assert n.sag >= n.cd - 1e-6
    cf = front.edge("cf").path
    square = degrees_between(direction(edge.start, edge.end), cf.start_direction)
    assert square == pytest.approx(90.0, abs=0.1 * DEGREE)
    turn = degrees_between(cf.start_direction, (0.0, 1.0))
    assert turn <= MOST_TURNED + 1e-6
    assert front.edge("cf").path.length == pytest.approx(
        distance(edge.end, cf.end) + n.fc, abs=1e-6
    )
    plain = draft(order(body, swapped(sleeved_features(), SideDart(), place_of=_LINE)))
    was = plain.sheet.piece("F")
    assert front.edge("armhole").length == pytest.approx(
        was.edge("armhole").length, abs=1e-6
    )
    assert front.edge("waist").length == pytest.approx(
        was.edge("waist").length, abs=MM / 10
    )
    assert front.interior_angle("cf") == pytest.approx(90.0, abs=DEGREE)
    for code in ("shoulder", "facing shoulder"):
        assert front.has(code)


_LINE = "front armhole princess"


@pytest.mark.parametrize("body", [P80, P92, P116, YSOLDE])
def test_the_bust_dart_is_led_into_it(body: Body) -> None:
    """The shoulder's neck end turns about BP by θc (exact); of the dart all is led, or
    4° and more are left."""
    made = draft(order(body, sleeved(Cowl())))
    n = made.numbers
    p, bp = made.sheet.points["Nf"], made.sheet.points["BP"]
    end = made.sheet.lines["neck front"].start
    assert degrees_between(p - bp, end - bp) == pytest.approx(n.theta_c, abs=1e-6)
    left = n.theta - n.theta_c
    assert left == 0.0 or left >= 4.0
    assert made.sheet.piece("F").has("dart low") is (left > 0)


@pytest.mark.parametrize(
    ("kind", "folds"), list(product((sleeveless, sleeved), (Folds.ONE, Folds.TWO)))
)
def test_real_women(kind: object, folds: Folds) -> None:
    """Every 40th woman of the survey passes every check."""
    cowl = Cowl(folds=folds)
    features = sleeved(cowl) if kind is sleeved else sleeveless(cowl)
    for body in ansur_women()[::40]:
        made = draft(order(body, features, estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


def test_its_facing_is_cut_on_and_meets_the_backs() -> None:
    """10 deep at the centre (8 to 12); beside an armhole's facing each takes half of
    the shoulder."""
    for kind in (sleeveless, sleeved):
        made = draft(order(BRIDA, kind(Cowl())))
        sheet = made.sheet
        mine = sheet.length("F", "facing shoulder")
        if kind is sleeveless:
            assert sheet.length("FF", "shoulder") == pytest.approx(mine)
            mine *= 2
        else:
            assert "FF" not in sheet.pieces
        assert sheet.length("BF", "shoulder") == pytest.approx(mine, abs=MM)


def test_the_front_is_cut_on_the_bias() -> None:
    """Grain at 45° to the fold; the half is opened, since cloth folds on its grain."""
    made = draft(order(BRIDA, sleeved(Cowl())))
    front = made.sheet.piece("F")
    assert front.grain is not None
    assert front.fold is not None
    fold = front.fold.path
    bias = degrees_between(direction(*front.grain), direction(fold.start, fold.end))
    assert min(bias, 180 - bias) == pytest.approx(45.0, abs=0.01)
    making = making_order(made)
    cut = {c.code: c for c in cutting_sheet(making).cloths["shell"]}
    assert cut["F"].count == 1
    assert "bias" in cut["F"].how
    assert any("on the bias" in note for note in pattern(made, words=False).drawn.notes)
    assert any("cowl" in line for line in steps_text(made))


@pytest.mark.parametrize(
    ("cowl", "says"),
    [
        (Cowl(folds=Folds.THREE, drop=10.0), "take fewer folds"),
        (Cowl(folds=Folds.THREE, drop=12.0, width=0.0), "take fewer folds"),
    ],
)
def test_too_deep_a_drape_is_refused(cowl: Cowl, says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(P92, sleeved(cowl)))


@pytest.mark.parametrize("body", ansur_whole()[19::160])
def test_a_facing_too_short_for_its_allowance_is_refused(body: Body) -> None:
    """Three folds turn the shoulder up to 52 degrees from its facing, which an
    all-in-one facing leaves half of the shoulder: where both allowances do not fit in
    (their bisector, exact), the check says so, and the cut line alone never does."""
    features = (*sleeveless(Cowl(folds=Folds.THREE, width=4.68, facing=8.19)),)
    features = swapped(features, SleevelessArmhole(narrowed=2.69))
    made = draft(order(body, features, estimates=RuleSet.SURVEY))
    told = [f for f in made.findings if f.code == "N13"]
    front = made.sheet.piece("F")
    half = math.radians(360.0 - front.interior_angle("shoulder")) / 2
    fits = front.edge("facing shoulder").length * math.tan(half)
    assert bool(told) is (fits < 1.6)
    narrow = cut_line(front, Allowances(Unit.CM, made.order.said)).narrow
    assert not narrow or told


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("folds", list(Folds)[:2])
def test_the_lining_without_sleeves_hangs_from_the_armhole_facing(
    body: Body, folds: Folds
) -> None:
    """Its neck begins on the edge of that facing, half way from the shoulder down to
    its own foot (common practice, no source); below, lining and facing are of one
    length; above, the edge stays loose."""
    made = draft(order(body, (*sleeveless(Cowl(folds=folds)), Lining())))
    assert not made.failed, made.failures()
    sheet = made.sheet
    lining, facing = sheet.piece("L.F"), sheet.piece("FF")
    assert lining.edge("join").length == pytest.approx(
        facing.edge("free").length, abs=0.1 * MM
    )
    plain = draft(order(body, sleeveless(Cowl(folds=folds))))
    whole = facing.edge("free above").length + facing.edge("free").length
    assert whole == pytest.approx(plain.sheet.length("FF", "free"), abs=0.01 * MM)
    assert lining.edge("neck").kind is EdgeKind.FINISHED
    assert not lining.has("shoulder")
    neck = lining.edge("neck").path
    assert 20.0 < lining.interior_angle("join") < 150.0
    assert neck.end.x == pytest.approx(made.numbers.X)
    assert neck.end.y < made.numbers.y_BP
    assert not cut_faults(made)
    told = [op.title for op in making_order(made).operations]
    assert "Hem the neck of the front lining" in told


def test_what_does_not_go_together() -> None:
    to_edge = (f for f in sleeveless(Cowl()) if f.kind != "facing")
    with pytest.raises(OrderError, match="hold the folds"):
        draft(order(BRIDA, (*to_edge, Lining(mode=Mode.TO_EDGE))))
    with pytest.raises(OrderError, match="one line only"):
        draft(order(BRIDA, (*sleeveless(Cowl()), SideDart())))
