"""A bust dart shared by several parallel tucks (transformations 1.6)."""

import pytest

from bodies import BRIDA, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.centre_corner import CORNERS
from clothwright.features.bodice.front_dart import OPENED, DartPlace
from clothwright.features.bodice.yokes import FrontYoke
from clothwright.finishing.drawn import Meaning
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from orders import closed_back, order
from verdict import unsound, verdict

MM = 0.1


def tucked(
    place: DartPlace,
    count: int = 3,
    *,
    share: float | None = None,
    apart: float | None = None,
) -> tuple[Feature, ...]:
    dart = BustDart(
        to=place, taken_up=TakenUp.TUCKS, tucks=count, share=share, apart=apart
    )
    usual = (f for f in closed_back(lines="darts") if f.kind != "side dart")
    yoke = (FrontYoke(),) if place is DartPlace.YOKE else ()
    return (*usual, dart, *yoke)


def made(place: DartPlace, count: int = 3, body: Body = THEA) -> Draft:
    return draft(order(body, tucked(place, count)))


@pytest.mark.parametrize("place", [p for p in DartPlace if p not in CORNERS])
@pytest.mark.parametrize("body", [P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_they_pass(place: DartPlace, body: Body) -> None:
    d = made(place, body=body)
    assert not d.failed, d.failures()
    assert not pattern(d, words=False).drawn.failures


@pytest.mark.parametrize("place", [DartPlace.SHOULDER, DartPlace.WAIST])
def test_the_intake_is_divided(place: DartPlace) -> None:
    """Each takes its part of 2·|PQ|·sin(θ/2), exact; parallel, as far apart as said."""
    d = made(place, 4)
    o = OPENED[place]
    a, b = (d.sheet.lines[f"gathered {e}"] for e in (o.leg_first, o.leg_last))
    whole = distance(a.start, b.end)
    lines = {k.name: k.path for k in d.sheet.piece("F").lines}
    ways = []
    starts = []
    for i in range(1, 5):
        fold, to = lines[f"tuck {i}, fold"], lines[f"tuck {i}, to here"]
        assert distance(fold.start, to.start) == pytest.approx(whole / 4, abs=0.2 * MM)
        assert fold.start.x < to.start.x  # folded towards the centre front
        ways += [fold.start_direction, to.start_direction]
        starts += [fold.start, to.start]
    assert max(degrees_between(ways[0], w) for w in ways) < 0.01
    starts.sort()
    gaps = [distance(p, q) for p, q in zip(starts, starts[1:], strict=False)][1::2]
    assert gaps == pytest.approx([1.2] * 3, abs=0.2 * MM)


def test_the_seam_takes_in_what_the_dart_did() -> None:
    d = made(DartPlace.SHOULDER)
    s = d.sheet.seam("S3")
    assert s.tucked
    o = OPENED[DartPlace.SHOULDER]
    a, b = (d.sheet.lines[f"gathered {e}"] for e in (o.leg_first, o.leg_last))
    assert s.ease.plan == pytest.approx(distance(a.start, b.end), abs=0.7)
    op = next(x for x in making_order(d).operations if x.title.startswith("Lay the t"))
    assert op.count == 6.0
    piece = next(p for p in pattern(d, words=False).drawn.pieces if p.code == "F")
    assert sum(k.meaning is Meaning.ARROW for k in piece.lines) == 3
    assert not any("gather" in b.text for b in piece.wording.beside)


def test_too_small_and_too_many_are_refused() -> None:
    """0.3 cm is the least of a tuck (1.6)."""
    flat = Body.of({"HT": 165, "HB": 88, "B": 90, "W": 72, "H": 98}, client="flat")
    d = draft(order(flat, tucked(DartPlace.NECK, 9, share=0.3, apart=0.4)))
    assert any("is the least" in f for f in d.failures()), d.failures()
    with pytest.raises(OrderError, match="make them fewer"):
        draft(order(THEA, tucked(DartPlace.SHOULDER, 9, apart=3.0)))


def test_real_women() -> None:
    women = ansur_women()[::45]
    assert len(women) >= 20
    for body in women:
        asked = order(body, tucked(DartPlace.SHOULDER), estimates=RuleSet.SURVEY)
        it = verdict(asked)
        assert not list(unsound(asked, it)), it.refusals
