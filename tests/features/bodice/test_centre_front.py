"""The bust dart led to the centre front, which is a seam then (transformations 1.1)."""

import math
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import Point, Vector, degrees_between, direction, distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.centre_front import CENTRE_SEAM
from clothwright.features.bodice.front_dart import OPENED, DartPlace, as_drafted
from clothwright.features.bodice.opened_dart import mouth
from clothwright.features.bodice.yokes import FrontYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.necklines import Neckline
from clothwright.features.openings.button_stand import ButtonStand, Where
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import OrderError, draft, pattern
from clothwright.paper import EdgeKind, SeamKind
from clothwright.sheets.steps import steps_text
from making.test_order import complete
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1
CF = OPENED[DartPlace.CENTRE]


def led(
    how: TakenUp = TakenUp.DART,
    lining: Mode | None = None,
    share: float | None = None,
    along: float | None = None,
) -> tuple[Feature, ...]:
    dart = BustDart(to=DartPlace.CENTRE, taken_up=how, share=share, along=along)
    return swapped(
        closed_back(lines="darts", lining=lining), dart, place_of="side dart"
    )


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
def test_the_angle_goes_with_the_dart(body: Body) -> None:
    """Intake 2·|BP Q|·sin(θ/2) level with the bust point; both halves of the centre
    as long as it was; above the dart nothing moves (exact, given θ)."""
    plain = as_drafted(draft(order(body, closed_back(lines="darts"))).sheet)
    made = draft(order(body, led()))
    assert not made.failed, made.failures()
    f, n, at = made.sheet.piece("F"), made.numbers, made.sheet.points
    reach = distance(at["BP"], at[CF.mark])
    wanted = 2 * reach * math.sin(math.radians(n.theta) / 2)
    assert distance(*mouth(f, CF)) == pytest.approx(wanted, abs=1e-6)
    assert at[CF.mark].y == pytest.approx(n.y_BP, abs=1e-6)
    whole = f.edge("cf").length + f.edge("cf low").length
    assert whole == pytest.approx(plain.edge("cf").length, abs=1e-6)
    for name in ("neck", "shoulder", "armhole"):
        for end in ("start", "end"):
            a, b = (getattr(p.edge(name).path, end) for p in (f, plain))
            assert distance(a, b) < 0.02
    low = f.edge("cf low").path
    turned = degrees_between(low.end_direction, Vector(0.0, 1.0))
    assert turned == pytest.approx(n.theta, abs=0.01)
    assert not f.has("dart low")
    assert not cut_faults(made)


def test_the_centre_is_a_seam_and_a_pair_is_cut() -> None:
    made = draft(order(P92, led()))
    f, seam = made.sheet.piece("F"), made.sheet.seam(CENTRE_SEAM)
    assert f.fold is None
    assert {f.edge(r.edge).kind for r in seam.left} == {EdgeKind.SEAM}
    assert seam.kind is SeamKind.TWIN
    making = making_order(made)
    complete(making)
    assert "Sew the centre front seam" in [s.title for s in making.operations]
    drawn = next(p for p in pattern(made).drawn.pieces if p.code == "F")
    said = " ".join(t.text for t in drawn.texts).partition("allowances included")[2]
    assert "centre front" in said  # by its own name: there is no panel
    assert "panel" not in said
    assert "cap" not in said
    front = next(r for r in cutting_sheet(making).cloths["shell"] if r.code == "F")
    assert "pair" in front.how
    assert f.grain is not None
    assert direction(*f.grain).x == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("how", [TakenUp.TUCK, TakenUp.TUCKS, TakenUp.GATHERS])
def test_it_may_be_taken_up_otherwise(how: TakenUp) -> None:
    made = draft(order(P92, led(how)))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    making = making_order(made)
    complete(making)
    if how is TakenUp.GATHERS:  # as long as the stretch is when it is finished
        said = next(
            s for s in making.operations if "Gather the centre front" in s.title
        )
        assert "8.0 cm" in " ".join(said.says)
        seam = made.sheet.seam(CENTRE_SEAM)
        a, b = (k.left for k in seam.notches)
        wide = made.sheet.length("F", "cf") - sum(
            made.sheet.lines[CF.kept(e)].length for e in (CF.first, CF.last)
        )
        assert b - a == pytest.approx(8.0 + wide, abs=1e-6)
        drawn = next(
            p for p in pattern(made, words=False).drawn.pieces if p.code == "F"
        )
        gathers = [k.path for k in drawn.lines if k.note == "gather"]
        assert sum(g.length for g in gathers) == pytest.approx(b - a, abs=MM)


@pytest.mark.parametrize("how", [TakenUp.DART, TakenUp.GATHERS])
def test_real_women_get_it(how: TakenUp) -> None:
    rng = Random(3)
    for body in rng.sample(ansur_whole(), 8):
        for features in (led(how, Mode.BELOW_FACING), led(how, Mode.TO_EDGE)):
            made = draft(order(body, features))
            assert not made.failed, made.failures()
            assert not cut_faults(made)


def test_the_facing_is_that_of_a_plain_front() -> None:
    """It is traced with the dart at the side, and lies on the fold."""
    plain = draft(order(P92, closed_back(lines="darts"))).sheet.piece("FF")
    made = draft(order(P92, led())).sheet.piece("FF")
    assert made.fold is not None
    a, b = (p.edge("free").path for p in (made, plain))
    assert distance(a.start, b.start) < 0.02
    assert a.length == pytest.approx(b.length, abs=0.02)


def test_a_low_neck_leaves_no_room() -> None:
    features = swapped(led(), Neckline(depth=27.0))
    with pytest.raises(OrderError, match="below the neck at the centre front"):
        draft(order(P92, features))


def test_below_a_yoke_it_is_the_yoke_that_leaves_no_room() -> None:
    """It opens under the yoke's seam: no neck (Df) alters that."""
    with pytest.raises(OrderError) as said:
        draft(order(P92, (*led(along=0.05), FrontYoke())))
    assert "below the seam of the yoke at the centre front" in str(said.value)
    assert 'make the yoke (depth of "front yoke") less deep' in str(said.value)
    assert "Df" not in str(said.value)
    steps = steps_text(draft(order(P92, (*led(along=0.5), FrontYoke()))))
    place = next(t for t in steps if "new place of the bust dart" in t)
    assert "from the seam of the yoke" in place


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (led(TakenUp.DART, share=0.5), "goes there whole"),
        (
            tuple(
                f
                for f in (
                    *sleeved_features(BustDart(to=DartPlace.CENTRE), ButtonStand()),
                )
                if f.kind not in ("front armhole princess", "concealed zip")
            ),
            "where no front edge can be",
        ),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError, match=said):
        draft(order(P92, features))


def test_a_place_along_the_centre_is_taken() -> None:
    made = draft(order(P92, led(along=0.6)))
    neck = as_drafted(draft(order(P92, closed_back(lines="darts"))).sheet).edge("cf")
    at: Point = made.sheet.points[CF.mark]
    assert at.y - neck.path.start.y == pytest.approx(0.6 * neck.length, abs=1e-6)


@pytest.mark.parametrize("body", [P92, P116, BRIDA])
def test_it_may_button_at_the_back(body: Body) -> None:
    """A stand at the back leaves the centre front for the dart and its seam."""
    stand = ButtonStand(where=Where.BACK)
    features = swapped(led(), stand, place_of="concealed zip")
    made = draft(order(body, features))
    assert not made.failed, made.failures()
    assert {CENTRE_SEAM, "S73"} <= {s.code for s in made.sheet.seams}
    assert not cut_faults(made)
    complete(making_order(made))
