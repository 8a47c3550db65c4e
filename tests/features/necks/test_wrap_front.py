"""Wrap fronts (transformations 1.8 and 2)."""

import math
from itertools import product

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.empire import EmpireSeam
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.necks.wrap_front import WrapFront
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import EdgeKind
from clothwright.units import Unit
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1


def wrapped(wrap: Feature, lines: str = "darts") -> tuple[Feature, ...]:
    return swapped(closed_back(lines=lines), wrap, place_of="neckline")


def sleeved(wrap: Feature) -> tuple[Feature, ...]:
    out = swapped(sleeved_features(), wrap, place_of="neckline")
    return swapped(out, SideDart(), place_of="front armhole princess")


@pytest.mark.parametrize(
    ("body", "crossing"),
    list(product((P80, P92, P116, BRIDA, YSOLDE, THEA), (None, 8.0, 12.0, 15.0))),
)
def test_the_front_is_whole_and_crosses(body: Body, crossing: float | None) -> None:
    """Beyond the centre the waist is `wx` long (8 to 15 usual), the rest of the half as
    it was; the edge is smooth, and ends at that waist."""
    made = draft(order(body, wrapped(WrapFront(crossing=crossing, contour=0.0))))
    plain = draft(order(body, closed_back(lines="darts")))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    n, f = made.numbers, made.sheet.piece("F")
    assert n.wx == pytest.approx(crossing or n.wx)
    assert 8.0 <= n.wx <= 15.0
    assert f.fold is None
    assert f.edge("waist over").length == pytest.approx(n.wx, abs=MM / 2)
    half = plain.sheet.piece("F")
    for name in ("waist", "side low", "armhole"):
        assert f.edge(name).length == pytest.approx(half.edge(name).length, abs=MM)
    edge = f.edge("neck").path
    assert distance(edge.end, made.sheet.points["Wx"]) < 1e-6
    upper, lower = edge.segments
    assert upper.end.x == pytest.approx(n.X, abs=1e-6)
    assert distance(upper.end_direction, lower.start_direction) < 1e-6
    # straight from the centre on: what the chord is shorter than the edge
    assert lower.length - distance(lower.start, lower.end) < MM
    # the line from the shoulder to the foot crosses the centre at C (similar triangles)
    p, w = made.sheet.points["Nf′"], made.sheet.points["Wx"]
    straight = p.y + (w.y - p.y) * (n.X - p.x) / (w.x - p.x)
    assert upper.end.y == pytest.approx(straight, abs=2.0)


def test_the_dart_of_the_other_side_is_laid_shut() -> None:
    """What crosses by 14 is as long as the waist that it lies on, dart folded: the
    dart's own width is not in it (exact)."""
    made = draft(order(P92, wrapped(WrapFront(crossing=14.0))))
    f = made.sheet.piece("F")
    over = f.edge("waist over").path
    assert over.length == pytest.approx(14.0, abs=1e-3)
    dart = distance(f.edge("waist").path.end, f.edge("waist side").path.start)
    assert dart > 1.0
    assert distance(over.start, over.end) > 14.0 - MM
    legs = [e.name for e in f.edges if e.name.startswith("leg")]
    assert sorted(legs) == ["leg cf", "leg side"]


@pytest.mark.parametrize("body", [P80, P92, P116, YSOLDE])
def test_the_edge_is_drawn_in(body: Body) -> None:
    """A wedge of `cn` at its reach from BP opens the side dart by 2·asin(cn/(2·reach));
    left out it is 1.5·(0.6 + 0.1·c), 0.9 to 2 (1.8)."""
    made = draft(order(body, wrapped(WrapFront())))
    n = made.numbers
    assert n.cn == pytest.approx(min(2.0, 1.5 * min(1.8, max(0.6, 0.6 + 0.1 * n.c))))
    turn = math.degrees(2 * math.asin(n.cn / (2 * n.reach_n)))
    assert n.phi_n == pytest.approx(turn)
    plain = draft(order(body, wrapped(WrapFront(contour=0.0))))

    def dart(d: Draft) -> float:
        f, bp = d.sheet.piece("F"), d.sheet.points["BP"]
        a, b = f.edge("dart low").path.start, f.edge("dart high").path.end
        return math.degrees(2 * math.asin(distance(a, b) / (2 * distance(bp, a))))

    assert dart(made) - dart(plain) == pytest.approx(turn, abs=1e-3)
    edges = [d.sheet.length("F", "neck") for d in (plain, made)]
    assert 0.3 < edges[0] - edges[1] < n.cn + 1.0


@pytest.mark.parametrize("rules", [wrapped, sleeved])
def test_real_women(rules: object) -> None:
    """Every 33rd woman of the survey: all pass every check."""
    features = sleeved(WrapFront()) if rules is sleeved else wrapped(WrapFront())
    for body in ansur_women()[::33]:
        made = draft(order(body, features, estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


@pytest.mark.parametrize("width", [0.0, 1.0, 3.0])
def test_the_facing_follows_the_edge(width: float) -> None:
    """7 wide at the waist, clear of the bust point, finished on the inside only."""
    for features in (wrapped(WrapFront(width=width)), sleeved(WrapFront(width=width))):
        made = draft(order(BRIDA, features))
        assert not made.failed, made.failures()
        ff = made.sheet.piece("FF")
        assert ff.fold is None
        assert ff.edge("free").kind is EdgeKind.FINISHED
        corner = math.radians(made.sheet.piece("F").interior_angle("neck"))
        wide = ff.edge("foot").length + made.numbers.rho / math.sin(corner)
        assert wide == pytest.approx(7.0, abs=MM)
        assert not ff.contains(made.sheet.points["BP"])


def test_it_is_made_and_cut() -> None:
    made = draft(order(BRIDA, wrapped(WrapFront()), unit=Unit.IN))
    making = making_order(made)
    titles = [op.title for op in making.operations]
    assert titles.index("Tape the edges of the wrap") < titles.index("Face the neck")
    lay, waist = "Lay the fronts over each other", "Sew the waist"
    assert titles.index(lay) < titles.index(waist)
    cut = {c.code: c for c in cutting_sheet(making).cloths["shell"]}
    assert cut["F"].how == cut["FF"].how == "2 (1 pair)"


@pytest.mark.parametrize(
    ("wrap", "says"),
    [
        (WrapFront(strip=12.0), 'strip of "wrap front"'),
        (WrapFront(crossing=16.0, strip=12.0, width=6.0), "past the bust point"),
    ],
)
def test_what_cannot_be_is_said(wrap: WrapFront, says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(BRIDA, wrapped(wrap)))


@pytest.mark.parametrize(
    ("more", "place_of", "says"),
    [
        (EmpireSeam(), "", "crossing fronts"),
        (BustDart(to=DartPlace.NECK), "side dart", "would stretch it"),
    ],
)
def test_what_does_not_go_together(more: Feature, place_of: str, says: str) -> None:
    features = swapped(wrapped(WrapFront()), more, place_of=place_of)
    with pytest.raises(OrderError, match=says):
        draft(order(BRIDA, features))


def test_a_wrap_that_crosses_low_is_doubted() -> None:
    made = draft(order(BRIDA, wrapped(WrapFront(crossing=6.0))))
    assert any("cross near the bust points" in str(f) for f in made.findings)
