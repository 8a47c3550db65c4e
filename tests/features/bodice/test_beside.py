"""Panel lines beside the bust point and the blade (transformations 1.5)."""

import math
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import Vector, degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.back_princess import BackArmholePrincess
from clothwright.features.bodice.bust_dart_rules import MOST_EASE
from clothwright.features.bodice.front_princess import FrontArmholePrincess
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.bodice.torso import Torso
from clothwright.features.linings.lining import Lining, Mode
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from clothwright.sheets.steps import steps_text
from making.test_order import complete
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1


def beside(
    front: float | None, back: float | None = None, *, sleeves: bool = False
) -> tuple[Feature, ...]:
    features = sleeved_features() if sleeves else closed_back()
    features = swapped(features, FrontArmholePrincess(beside=front))
    return swapped(features, BackArmholePrincess(beside=back))


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("away", [2.0, 4.0, 6.0])
def test_the_rest_of_the_dart_is_kept(body: Body, away: float) -> None:
    """From the line to the bust point it opens by 2·|BP P|·sin(θ/2) (1.1, exact): eased
    in up to 0.6 cm, a dart above (1.5), and then the edges are of one length."""
    made = draft(order(body, beside(away)))
    assert not made.failed, made.failures()
    n, at = made.numbers, made.sheet.points
    bp, p1, p2 = at["BP"], at["P1"], at["P2"]
    assert bp.x - p2.x == pytest.approx(away, abs=1e-6)
    assert p2.y == pytest.approx(n.y_P, abs=1e-6)
    rest = 2 * distance(bp, p2) * math.sin(math.radians(n.theta + n.phi_n) / 2)
    assert distance(p1, p2) == pytest.approx(rest, abs=1e-6)
    assert n.rest_f == pytest.approx(rest, abs=1e-6)
    walk = next(w for w in made.report.walks if w.seam.code == "S1")
    fc = made.sheet.piece("FC")
    if rest <= MOST_EASE:
        assert not fc.has("dart panel low")
        assert walk.ease == pytest.approx(-rest, abs=0.5 * MM)
    else:
        legs = [fc.edge(e).length for e in ("dart panel low", "dart panel high")]
        assert legs[0] == pytest.approx(legs[1], abs=0.2 * MM)
        assert walk.ease == pytest.approx(0.0, abs=0.5 * MM)
    assert not cut_faults(made)
    complete(making_order(made))


@pytest.mark.parametrize("body", [P92, THEA])
def test_the_line_is_even_where_the_dart_is_closed(body: Body) -> None:
    """On the side front it runs plumb from above into the place where it crossed the
    dart, and leaves the waist dart's leg by half of that dart."""
    made = draft(order(body, beside(4.0)))
    panel, p2 = made.sheet.edge("FS", "panel").path, made.sheet.points["P2"]
    s = panel.length_to_point(p2)
    for k in (-0.5, 0.0, 0.5):
        lean = degrees_between(panel.direction_at_length(s + k), Vector(0.0, 1.0))
        assert lean < 6.0
    bends = [
        degrees_between(a.end_direction, b.start_direction)
        for a, b in zip(panel.segments, panel.segments[1:], strict=False)
    ]
    assert max(bends) < 1.0


def test_a_turn_is_told_in_degrees() -> None:
    """It was told in cm."""
    made = draft(order(P92, beside(4.0)))
    (told,) = (s for s in steps_text(made) if "its upper part turned by" in s)
    assert f"turned by {made.numbers.theta + made.numbers.phi_n:.1f}°" in told


def test_the_waist_is_what_it_was() -> None:
    """The waist dart goes with the line: the stitched waist stays as long."""
    over, by = (draft(order(P92, beside(k))) for k in (None, 5.0))
    lengths = [
        sum(m.sheet.length(c, "waist") for c in ("FC", "FS")) for m in (over, by)
    ]
    assert lengths[0] == pytest.approx(lengths[1], abs=0.5 * MM)
    moved = [m.sheet.length("FC", "waist") for m in (over, by)]
    assert moved[1] - moved[0] == pytest.approx(5.0, abs=0.3 * MM * 10)


def test_a_back_panel_with_little_waist_is_told_by_its_line() -> None:
    """On a narrow back, nearest to the centre, less than 4 cm of it stay (6.2)."""
    (told,) = (
        str(f)
        for f in draft(order(ansur_whole()[12], beside(None, -2.5))).findings
        if f.code == "P4"
    )
    assert '(beside of "back armhole princess") nearer to the side' in told


def test_the_back_line_takes_the_waist_dart_along() -> None:
    for by in (-2.0, 3.0):
        plain, moved = (draft(order(P92, beside(None, k))) for k in (None, by))
        assert not moved.failed, moved.failures()
        assert moved.numbers.xd - plain.numbers.xd == pytest.approx(by, abs=1e-9)
        assert not cut_faults(moved)


def test_real_women_get_it() -> None:
    rng = Random(5)
    for body in rng.sample(ansur_whole(), 8):
        front, back = rng.choice((2.0, 3.5, 5.0)), rng.choice((None, 2.0, 3.0))
        for sleeves in (False, True):
            made = draft(order(body, beside(front, back, sleeves=sleeves)))
            assert not made.failed, made.failures()
            assert not cut_faults(made)


INSIDE = ["to the edge", "below", "sleeves", "torso", "lined torso"]


def inside(away: float, how: str) -> tuple[Feature, ...]:
    features = beside(away, sleeves=how == "sleeves")
    if how == "to the edge":
        features = tuple(f for f in features if f.kind != "facing")
        return (*features, Lining(mode=Mode.TO_EDGE))
    if "torso" in how:
        kept = tuple(f for f in features if f.kind not in ("waist seam", "peplum"))
        features = (*kept, Torso(length=60.0))
    return features if how == "torso" else (*features, Lining())


@pytest.mark.parametrize("how", INSIDE)
@pytest.mark.parametrize("away", [1.5, 3.0, 5.0])
@pytest.mark.parametrize("body", [P92, P116, BRIDA], ids=lambda b: b.client)
def test_lined_and_in_one_with_the_skirt(body: Body, away: float, how: str) -> None:
    """The lining has the same rest of the dart as the shell where it reaches above it,
    sewn in a dart above 0.6 cm (1.5), and its seams are of one length then."""
    made = draft(order(body, inside(away, how)))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    complete(making_order(made))
    n, sheet = made.numbers, made.sheet
    darted = n.rest_f > MOST_EASE
    assert sheet.piece("FC").has("dart panel low") is darted
    walks = {w.seam.code: w for w in made.report.walks}
    assert walks["S1"].ease == pytest.approx(0.0 if darted else -n.rest_f, abs=MM)
    if how == "torso":
        return
    lined = sheet.piece("L.FC")
    assert lined.has("dart panel low") is darted
    assert walks["LS1"].ease == pytest.approx(walks["S1"].ease, abs=1.5 * MM)
    if darted:
        mine, shell = (
            distance(
                p.edge("dart panel low").path.start, p.edge("dart panel high").path.end
            )
            for p in (lined, sheet.piece("FC"))
        )
        assert mine == pytest.approx(shell, abs=0.1 * MM)


@pytest.mark.parametrize(
    ("new", "said"),
    [
        (Strapless(), "not yet led up to a top edge"),
        (FrontArmholePrincess(beside=4.0, ease=0.3), "leave its ease"),
    ],
)
def test_what_does_not_go_together(new: Feature, said: str) -> None:
    features = swapped(beside(4.0), new)
    with pytest.raises(OrderError, match=said):
        draft(order(P92, features))
