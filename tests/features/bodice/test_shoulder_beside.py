"""Panel lines from the shoulder that pass no dart (transformations 1.5)."""

import math
from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body, RuleSet
from clothwright.curves import degrees_between, distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart_rules import MOST_EASE
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.bodice.torso import Torso
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining, Mode
from clothwright.making import making_order
from clothwright.order import OrderError, draft
from making.test_order import complete
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1
AWAY = [-5.0, -3.0, 2.0, 3.0]


def lines(away: float | None, ease: float | None = None) -> tuple[Feature, ...]:
    new = ShoulderPrincess(beside=away, ease=ease)
    return swapped(closed_back(lines="shoulder"), new)


def test_a_front_that_is_all_allowance_is_refused_by_its_line() -> None:
    """It would be 0.2 cm wide at the waist, or cross the centre."""
    torso = Torso(length=60.0)
    for away in (-7.0, -8.0):
        features = (*(f for f in lines(away) if f.kind != "waist seam"), torso)
        features = tuple(f for f in features if f.kind not in ("peplum", "dress skirt"))
        told = draft(order(THEA, features)).failures()
        assert 'Take the panel line (its "beside") nearer' in told[0], told


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("away", AWAY)
def test_the_dart_stays_at_the_side(body: Body, away: float) -> None:
    """The seam has no ease and passes no dart; the side dart is the one that a front
    in one piece has, but for its end, which keeps off the line (1.5)."""
    made = draft(order(body, lines(away)))
    assert not made.failed, made.failures()
    n, sheet = made.numbers, made.sheet
    fs, fc = sheet.piece("FS"), sheet.piece("FC")
    darted = draft(order(body, closed_back(lines="darts")))
    low = "dart low 2" if fs.has("dart low 2") else "dart low"
    width = distance(fs.edge(low).path.start, fs.edge("dart high").path.end)
    front = darted.sheet.piece("F")
    whole = distance(front.edge(low).path.start, front.edge("dart high").path.end)
    assert width == pytest.approx(whole, abs=0.1 * MM)
    walk = next(w for w in made.report.walks if w.seam.code == "S1")
    assert walk.ease == pytest.approx(0.0, abs=1.0 * MM)
    assert not [e for e in fc.edges if e.name.startswith("dart")]
    ends = [fs.edge(k).path.end for k in ("dart low", low)]
    assert all(fs.edge("panel").path.nearest(p)[1] > 0.3 for p in ends)
    bp = sheet.points["BP"]
    assert (fs if away < 0 else fc).contains(bp)
    line = fc.edge("panel").path
    assert line.nearest(bp)[1] == pytest.approx(abs(away), abs=1.2)
    assert sheet.points["Pf"].x == pytest.approx(n.x_BP - away, abs=1e-9)
    assert not cut_faults(made)
    complete(making_order(made))


@pytest.mark.parametrize("body", [P92, THEA], ids=lambda b: b.client)
def test_the_waist_is_what_it_was(body: Body) -> None:
    """The waist dart goes with the line: the stitched waist stays as long."""
    over, by = (draft(order(body, lines(k))) for k in (None, -4.0))
    lengths = [
        sum(m.sheet.length(c, "waist") for c in ("FC", "FS")) for m in (over, by)
    ]
    assert lengths[0] == pytest.approx(lengths[1], abs=0.5 * MM)


@pytest.mark.parametrize("away", AWAY)
def test_the_line_is_even(away: float) -> None:
    sheet = draft(order(P92, lines(away))).sheet
    for code in ("FC", "FS"):
        path = sheet.edge(code, "panel").path
        bends = [
            degrees_between(a.end_direction, b.start_direction)
            for a, b in zip(path.segments, path.segments[1:], strict=False)
        ]
        assert max(bends) < 1.0


@pytest.mark.parametrize("away", [-4.0, 2.5, 5.0])
@pytest.mark.parametrize(
    "inside", ["faced", "to the edge", "below", "torso", "sleeves"]
)
def test_what_it_goes_with(away: float, inside: str) -> None:
    features = lines(away)
    if inside == "sleeves":
        panels = "front armhole princess", "back armhole princess"
        features = tuple(f for f in sleeved_features() if f.kind not in panels)
        features = (*features, ShoulderPrincess(beside=away), Lining())
    if inside == "below":
        features = (*swapped(features, Facing(side=3.0)), Lining())
    if inside == "to the edge":
        features = tuple(f for f in features if f.kind != "facing")
        features = (*features, Lining(mode=Mode.TO_EDGE))
    if inside == "torso":
        kept = tuple(f for f in features if f.kind not in ("waist seam", "peplum"))
        features = (*kept, Torso())
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    complete(making_order(made))


def test_real_women_get_it() -> None:
    rng = Random(11)
    for body in rng.sample(ansur_whole(), 8):
        away = rng.choice((*AWAY, 4.5))
        made = draft(order(body, lines(away), estimates=RuleSet.SURVEY))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


@pytest.mark.parametrize(
    ("features", "said"),
    [
        (lines(0.5), "passes over it"),
        (lines(-4.0, 0.3), "leave its ease"),
        ((*lines(-4.0), SideDart()), "one line only"),
        (
            (*swapped(lines(-4.0), Facing(side=9.0)), Lining()),
            "deep at the side, where the bust dart",
        ),
    ],
)
def test_what_does_not_go_together(features: tuple[Feature, ...], said: str) -> None:
    with pytest.raises(OrderError, match=said):
        draft(order(P92, features))


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("away", [3.5, 6.0])
def test_further_out_a_rest_of_the_dart_is_in_the_seam(body: Body, away: float) -> None:
    """More than 3 cm from the bust point the line needs the rest of the dart as ease of
    0.6 or a small dart (1.5): 2·|BP P|·sin(θ/2) (1.1, exact)."""
    made = draft(order(body, lines(away)))
    assert not made.failed, made.failures()
    n, at = made.numbers, made.sheet.points
    rest = 2 * distance(at["BP"], at["P2"])
    rest *= math.sin(math.radians(n.theta + n.phi_n) / 2)
    assert at["BP"].x - at["P2"].x == pytest.approx(away, abs=1e-6)
    assert n.rest_f == pytest.approx(rest, abs=1e-6)
    fc, fs = (made.sheet.piece(c) for c in ("FC", "FS"))
    assert fs.has("side")
    assert fc.has("dart panel low") is (rest > MOST_EASE)
    walk = next(w for w in made.report.walks if w.seam.code == "S1")
    eased = 0.0 if rest > MOST_EASE else -rest
    assert walk.ease == pytest.approx(eased, abs=0.5 * MM)
    assert not cut_faults(made)
    complete(making_order(made))


def test_a_strapless_bodice_has_its_line_over_the_bust_point() -> None:
    """It is refused in words, not by a number that such a line has not."""
    features = tuple(
        f
        for f in closed_back(lines="shoulder")
        if f.kind not in ("neckline", "back neckline", "sleeveless armhole")
    )
    features = swapped(features, ShoulderPrincess(beside=-1.5))
    with pytest.raises(OrderError, match="not yet led up to a top edge"):
        draft(order(P92, (*features, Strapless())))
