"""The bust dart led to a corner of the centre front, which stays on the fold
(transformations 1.1)."""

import math
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.front_dart import OPENED, DartPlace, as_drafted
from clothwright.features.bodice.opened_dart import mouth
from clothwright.features.bodice.yokes import FrontYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import EdgeKind
from making.test_order import complete
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1
NECK, WAIST = DartPlace.CENTRE_NECK, DartPlace.CENTRE_WAIST


def led(
    to: DartPlace,
    how: TakenUp = TakenUp.DART,
    lining: Mode | None = None,
    front: FrontShape = FrontShape.ROUND,
) -> tuple[Feature, ...]:
    dart = BustDart(to=to, taken_up=how)
    return swapped(
        closed_back(lines="darts", lining=lining, front=front),
        dart,
        place_of="side dart",
    )


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("to", [NECK, WAIST])
def test_the_angle_goes_to_the_corner(body: Body, to: DartPlace) -> None:
    """Intake 2·|BP Q|·sin(θ/2) at Q; the centre front stays as it was, straight and on
    the fold (exact, given θ). The waist dart, closed too, adds the angle by which it
    opens at BP."""
    plain = as_drafted(draft(order(body, closed_back(lines="darts"))).sheet)
    made = draft(order(body, led(to)))
    assert not made.failed, made.failures()
    f, n, at = made.sheet.piece("F"), made.numbers, made.sheet.points
    o, bp = OPENED[to], at["BP"]
    angle = n.theta + n.phi_n
    if to is WAIST:
        legs = plain.edge("leg cf").path.start, plain.edge("leg side").path.end
        angle += degrees_between(legs[0] - bp, legs[1] - bp)
        assert not f.has("leg cf")
    wanted = 2 * distance(bp, at["Qc"]) * math.sin(math.radians(angle) / 2)
    assert distance(*mouth(f, o)) == pytest.approx(wanted, abs=MM)
    cf, before = f.edge("cf"), plain.edge("cf")
    assert cf.kind is EdgeKind.FOLD
    assert distance(cf.path.start, before.path.start) < 0.1 * MM
    assert distance(cf.path.end, before.path.end) < 0.1 * MM
    assert not f.has("dart low")
    assert distance(f.edge(o.leg_first).path.end, bp) == pytest.approx(2.0, abs=1e-6)
    assert not cut_faults(made)


@pytest.mark.parametrize("to", [NECK, WAIST])
@pytest.mark.parametrize("front", [FrontShape.ROUND, FrontShape.V, FrontShape.SQUARE])
def test_the_edge_meets_the_centre_as_before(to: DartPlace, front: FrontShape) -> None:
    """Folded to the stitched end the two corners of paper add up to the one that was
    there (truing 3); all edges keep their length."""
    plain = draft(order(P92, closed_back(lines="darts", front=front))).sheet.piece("F")
    f = draft(order(P92, led(to, front=front))).sheet.piece("F")
    o = OPENED[to]
    if to is NECK:
        sewn = f.interior_angle("neck") + f.interior_angle(o.leg_last)
        was = plain.interior_angle("neck")
    else:
        sewn = f.interior_angle("cf") + f.interior_angle(o.leg_last)
        was = plain.interior_angle("cf")
    assert sewn == pytest.approx(was, abs=0.1)
    for name in ("neck", "shoulder", "armhole", "cf"):
        assert f.edge(name).length == pytest.approx(plain.edge(name).length, abs=MM)
    waist = [
        sum(p.edge(e).length for e in ("waist", "waist side") if p.has(e))
        for p in (f, plain)
    ]
    assert waist[0] == pytest.approx(waist[1], abs=MM)


@pytest.mark.parametrize("to", [NECK, WAIST])
def test_gathers_lie_from_the_fold_on(to: DartPlace) -> None:
    """The edge is longer by the mouth and drawn up to the zone: a notch at its far end,
    none on the fold; it meets the fold square."""
    made = draft(order(P92, led(to, TakenUp.GATHERS)))
    f, o = made.sheet.piece("F"), OPENED[to]
    seams = [
        s
        for s in made.sheet.seams
        if s.drawn_up and any(r == ("F", o.edge) for r in (r[:2] for r in s.runs()))
    ]
    assert seams
    for s in seams:
        assert s.zone is not None
        assert s.zone[1] - s.zone[0] == pytest.approx(8.0, abs=1.5 * MM)  # the roll
        whole = made.sheet.chain_length(s.left)
        at_fold = s.zone[0] < 1e-6 or s.zone[1] > whole - 1e-6
        assert at_fold
        assert all(0.5 < k.left < whole - 0.5 for k in s.notches)
    lines = made.sheet.lines
    kept = sum(lines[o.kept(e)].length for e in (o.first, o.last) if e)
    wide = distance(lines[o.kept(o.leg_first)].start, lines[o.kept(o.leg_last)].end)
    assert f.edge(o.edge).length > kept + 0.85 * wide
    corner = f.interior_angle("neck" if to is NECK else "cf")
    assert corner == pytest.approx(90.0, abs=0.1)
    making = making_order(made)
    complete(making)
    drawn = next(p for p in pattern(made, words=False).drawn.pieces if p.code == "F")
    gathers = [k.path for k in drawn.lines if k.note == "gather"]
    assert gathers


@pytest.mark.parametrize("to", [NECK, WAIST])
def test_one_front_is_cut_and_the_darts_lie_to_the_side(to: DartPlace) -> None:
    making = making_order(draft(order(P92, led(to))))
    complete(making)
    front = next(r for r in cutting_sheet(making).cloths["shell"] if r.code == "F")
    assert "fold" in front.how
    sewn = [s for s in making.operations if "centre front of the" in s.title]
    assert len(sewn) == 1
    assert sewn[0].press == "towards the side"
    waist_darts = [s for s in making.operations if "front waist dart" in s.title]
    assert bool(waist_darts) is (to is NECK)


@pytest.mark.parametrize("how", [TakenUp.DART, TakenUp.GATHERS])
@pytest.mark.parametrize("to", [NECK, WAIST])
def test_real_women_get_it(to: DartPlace, how: TakenUp) -> None:
    for body in Random(5).sample(ansur_whole(), 6):
        for lining in (None, Mode.BELOW_FACING, Mode.TO_EDGE):
            made = draft(order(body, led(to, how, lining)))
            assert not made.failed, made.failures()
            assert not cut_faults(made)


def test_the_facing_is_that_of_a_plain_front() -> None:
    plain = draft(order(P92, closed_back(lines="darts"))).sheet.piece("FF")
    made = draft(order(P92, led(NECK))).sheet.piece("FF")
    assert made.fold is not None
    a, b = (p.edge("free").path for p in (made, plain))
    assert distance(a.start, b.start) < 0.02
    assert a.length == pytest.approx(b.length, abs=0.02)


def test_a_straight_skirt_hangs_below_it() -> None:
    """Where the bodice has no dart any more, both are notched where the skirt's is."""
    features = swapped(led(WAIST), FittedDressSkirt(), place_of="peplum")
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    seam = made.sheet.seam("S5")
    assert [k.ticks for k in seam.notches] == [1]
    complete(making_order(made))


def test_below_a_yoke_it_may_go_to_the_waist() -> None:
    made = draft(order(P92, (*led(WAIST), FrontYoke())))
    assert not made.failed, made.failures()
    assert not cut_faults(made)


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (led(NECK, TakenUp.TUCKS), "a fold would lie across the middle"),
        (led(WAIST, TakenUp.EASE), "a fold would lie across the middle"),
        (led(NECK, front=FrontShape.SWEETHEART), "point of a sweetheart"),
        (led(NECK, TakenUp.GATHERS, front=FrontShape.V), "in the point of the neck"),
        ((*led(NECK), FrontYoke()), "the yoke's seam would cut the bust dart in two"),
        (
            sleeved_features(BustDart(to=NECK)),
            "can go into one line only",
        ),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError, match=said):
        draft(order(P92, features))


def test_it_goes_there_whole() -> None:
    features = swapped(
        closed_back(lines="darts"), BustDart(to=WAIST, share=0.5), place_of="side dart"
    )
    with pytest.raises(OrderError, match="centre front of the waist goes there whole"):
        draft(order(P92, features))
