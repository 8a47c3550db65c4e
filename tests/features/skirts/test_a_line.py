"""A straight skirt opened to an A-line by closing its darts (transformations 1.7)."""

import math
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.pockets.set_pocket import SetPocket
from clothwright.features.skirts.a_line import ALine, Closes
from clothwright.features.skirts.centre_pleat import CentrePleat
from clothwright.features.skirts.contour_band import ContourBand
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.flounce import Flounce
from clothwright.features.skirts.godets import Godets
from clothwright.features.skirts.hip_yoke import HipYoke
from clothwright.features.skirts.skirt_lining import SkirtLining
from clothwright.features.skirts.skirt_pockets import SkirtPockets
from clothwright.features.skirts.skirt_zip import SkirtZip, Where
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.trousers.trouser_pockets import Shape
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import Piece
from making.test_order import complete
from orders import closed_back, cut_faults, order, straight_skirt, swapped

MM = 0.1
HALVES = ("SB", "SF")


def made(closes: Closes, body: Body = THEA, *more: Feature) -> Draft:
    return draft(order(body, straight_skirt(ALine(closes=closes), *more)))


def points(piece: Piece) -> list[tuple[float, float, float]]:
    """(angle, leg, level of the point) of a plain half's darts, from the centre."""
    out = []
    for k in ("", " 2"):
        if not piece.has(f"dart centre{k}"):
            continue
        legs = [piece.edge(f"dart {w}{k}").path for w in ("centre", "side")]
        ends = [(p.start, p.end) for p in legs]
        point = next(p for p in ends[0] if min(distance(p, q) for q in ends[1]) < 1e-6)
        tops = [next(p for p in e if distance(p, point) > 1.0) for e in ends]
        angle = degrees_between(tops[0] - point, tops[1] - point)
        out.append((angle, distance(tops[0], point), point.y))
    return out


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("closes", Closes)
def test_the_hem_opens_by_the_dart(closes: Closes, body: Body) -> None:
    """By 2·L·sin(θ/2) for each, and half of that at the side, at most 6 cm (exact)."""
    plain = draft(order(body, straight_skirt()))
    opened = made(closes, body)
    assert not opened.failed, opened.failures()
    assert not cut_faults(opened)
    n = plain.numbers
    for code in HALVES:
        before, after = plain.sheet.piece(code), opened.sheet.piece(code)
        darts = points(before)
        closed = darts if closes is Closes.ALL else darts[-1:]
        gained = sum(
            2 * (n.L - y) * math.sin(math.radians(angle) / 2) for angle, _, y in closed
        )
        assert gained > 4.0
        out = min(6.0, gained / 2)
        hem = after.edge("hem").length - before.edge("hem").length
        # arcs are longer than chords, the side runs out beside the hem
        assert gained + 0.9 * out < hem < 1.02 * gained + 1.1 * out
        left = [k for k in ("", " 2") if after.has(f"dart centre{k}")]
        assert len(left) == len(darts) - len(closed)


@pytest.mark.parametrize("closes", Closes)
def test_waist_side_and_hip_stay(closes: Closes) -> None:
    """The waist is as long as with its darts sewn, both sides as they were; the hem is
    as far below the waist at the side; the corners flow (joints)."""
    plain, opened = draft(order(THEA, straight_skirt())), made(closes)
    for code in HALVES:
        before, after = plain.sheet.piece(code), opened.sheet.piece(code)
        waists = [
            sum(e.length for e in p.edges if e.name.startswith("waist"))
            for p in (before, after)
        ]
        assert waists[1] == pytest.approx(waists[0], abs=0.1 * MM)
        assert after.edge("side").length == pytest.approx(
            before.edge("side").length, abs=0.1 * MM
        )
        hips = sum(k.path.length for k in after.lines if k.name.startswith("hip line"))
        assert hips == pytest.approx(before.lines[0].path.length, abs=0.1 * MM)
    assert not [f for f in opened.findings if f.code == "angle"]


def test_every_place_of_the_hem_hangs_as_deep() -> None:
    """From the point of the closed dart the hem is an arc: no place of it lies further
    from there, or nearer, than its foot."""
    opened = made(Closes.OUTER)
    lines = opened.sheet.lines
    for code in HALVES:
        slash = next(
            v for k, v in lines.items() if k.endswith(f"of {code}") and "dart" in k
        )
        hem, point = opened.sheet.edge(code, "hem").path, slash.start
        near, _ = hem.nearest(slash.end)
        at = hem.length_to(near)
        centre_first = hem.start.y > hem.end.y
        for s in (2.0, 5.0, 8.0):
            q = hem.at_length(at + s if centre_first else at - s)
            if abs(distance(q, point) - slash.length) > MM:
                # past the arc the hem leaves it square, and lies outside
                assert distance(q, point) > slash.length - MM


def test_the_walk_is_wider() -> None:
    """A plain knee-long skirt without a vent hinders the step, the A-line does not."""
    usual = tuple(
        f for f in straight_skirt(StraightSkirt(length=75.0)) if f.kind != "vent"
    )
    plain = draft(order(THEA, usual))
    opened = draft(order(THEA, (*usual, ALine())))
    assert "stride" in {f.code for f in plain.findings}
    assert "stride" not in {f.code for f in opened.findings}


@pytest.mark.parametrize(
    "more",
    [
        (SkirtLining(),),
        (SkirtPockets(),),
        (SkirtPockets(shape=Shape.SLANT),),
        (SetPocket(),),
        (ContourBand(),),
        (WaistFacing(),),
        (CentrePleat(),),
        (Godets(),),
        (Flounce(),),
        (SkirtZip(where=Where.SIDE),),
    ],
    ids=lambda m: m[0].kind,
)
@pytest.mark.parametrize("closes", Closes)
def test_what_goes_with_it(closes: Closes, more: tuple[Feature, ...]) -> None:
    features = straight_skirt(ALine(closes=closes), *more)
    if {f.kind for f in more} & {"contour waistband", "waist facing"}:
        features = tuple(f for f in features if f.kind != "waistband")
    if {f.kind for f in more} & {"godets", "flounce"}:
        features = tuple(f for f in features if f.kind != "vent")
    done = draft(order(THEA, features))
    assert not done.failed, done.failures()
    assert not cut_faults(done)
    complete(making_order(done))


@pytest.mark.parametrize("closes", Closes)
def test_real_women_get_it(closes: Closes) -> None:
    for body in Random(7).sample(ansur_whole(), 8):
        done = made(closes, body, SkirtLining())
        assert not done.failed, done.failures()
        assert not cut_faults(done)
        complete(making_order(done))


@pytest.mark.parametrize("closes", Closes)
def test_a_dress_gets_it(closes: Closes) -> None:
    """Where the skirt has no dart left for the bodice's, a notch meets that."""
    usual = swapped(closed_back(lines="darts"), FittedDressSkirt(), place_of="peplum")
    for body in (P92, THEA, *Random(2).sample(ansur_whole(), 3)):
        done = draft(order(body, (*usual, ALine(closes=closes))))
        assert not done.failed, done.failures()
        assert not cut_faults(done)
        complete(making_order(done))


def test_below_a_dart_at_the_centre_front() -> None:
    usual = swapped(closed_back(lines="darts"), FittedDressSkirt(), place_of="peplum")
    dart = BustDart(to=DartPlace.CENTRE_WAIST)
    usual = swapped(usual, dart, place_of="side dart")
    done = draft(order(P92, (*usual, ALine(closes=Closes.ALL))))
    assert not done.failed, done.failures()


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (straight_skirt(ALine(), HipYoke()), "closes the darts itself"),
        (
            straight_skirt(ALine(), StraightSkirt(flare=3.0)),
            "leave the flare of the skirt",
        ),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError) as told:
        draft(order(THEA, features))
    assert said in str(told.value)
