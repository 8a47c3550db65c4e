"""The peplum against exact maths: girths, clearance, limits, the end of its zip."""

import math
import random
from dataclasses import replace

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, bdims_women
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.shoulder import Tightening
from clothwright.features.necks.necklines import BackNeckline
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.loops import Loops
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.features.skirts.peplum import Cut, Ends, Peplum, widest
from clothwright.features.skirts.peplum_rules import FLARED, body_at, girth_at
from clothwright.findings import Finding, Severity
from clothwright.order import Cloth, Draft, OrderError, draft, pattern
from orders import main_features, order

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def with_peplum(*new: Feature) -> tuple[Feature, ...]:
    """The main garment with these features in place of its own of the same kind."""
    swap = {f.kind: f for f in new}
    return tuple(swap.get(f.kind, f) for f in main_features())


def zipped(*new: Feature) -> tuple[Feature, ...]:
    """The main garment closed behind with a zip."""
    left_out = (LowOpenBack, Loops, UnderPanel, Tightening)
    kept = [f for f in with_peplum(*new) if not isinstance(f, left_out)]
    zip_ = next((f for f in new if isinstance(f, ConcealedZip)), ConcealedZip())
    return (*kept, BackNeckline(), zip_)


def found(made: Draft, code: str) -> list[Finding]:
    return [f for f in made.findings if f.code == code]


# -- girth and clearance (13.5) --------------------------------------------------------
@pytest.mark.parametrize("ends", list(Ends))
@pytest.mark.parametrize("f", [0.25, 0.33, 0.5, 0.75, 1.0])
@pytest.mark.parametrize("body", [P92, BRIDA])
def test_flared_girth_is_measured_on_the_paper(
    body: Body, f: float, ends: Ends
) -> None:
    """The arc at a depth, both halves, and what gapes behind, against the formula
    (exact): the paper is smaller by the bias yield and drawn on a radius r + y."""
    made = draft(order(body, with_peplum(Peplum(fullness=f, ends=ends))))
    n, sheet = made.numbers, made.sheet
    for y in (0.0, 4.0, n.L):
        arcs = 2 * (n.r + y) * math.radians(n.phi_F + n.phi_B)
        gap = 2 * n.e2 if ends is Ends.AT_EDGE else 0.0
        assert girth_at(n, y) == pytest.approx(arcs + n.by + gap, abs=1e-9)
    edges = sheet.length("PF", "hem") + sheet.length("PB", "hem")
    if ends is Ends.TO_CENTRE:  # without the underlap, which lies under
        edges -= (n.r + n.L) * math.asin(n.lap_P / (n.r + n.L))
    assert 2 * edges == pytest.approx(n.hem, abs=1e-4)
    assert 2 * n.e2 + 2 * (n.w_F + n.w_B) == pytest.approx(n.W + n.Ew, abs=0.02)


@pytest.mark.parametrize("ends", list(Ends))
@pytest.mark.parametrize("g", [1.3, 1.6, 2.5])
def test_gathered_girth_is_the_cloth(g: float, ends: Ends) -> None:
    """13.3: rectangles g times as wide; so is every girth below the waist (exact)."""
    made = draft(
        order(P92, with_peplum(Peplum(cut=Cut.GATHERED, gathers=g, ends=ends)))
    )
    n, sheet = made.numbers, made.sheet
    lap = n.lap_P if ends is Ends.TO_CENTRE else 0.0
    cloth = 2 * (sheet.length("PF", "hem") + sheet.length("PB", "hem") - lap)
    waist = 2 * (n.w_F + n.w_B + (n.e2 if ends is Ends.TO_CENTRE else 0.0))
    assert cloth == pytest.approx(g * waist, abs=1e-9)
    assert n.hem == pytest.approx(cloth, abs=1e-9)
    for y in (0.1, n.WHH, n.L):
        assert girth_at(n, y) == pytest.approx(cloth + n.gap_P, abs=1e-9)
    assert not made.failed


def test_the_body_is_straight_from_waist_to_high_hip_to_hip() -> None:
    n = draft(order(BRIDA, with_peplum())).numbers
    for y, girth in (
        (0.0, n.W),
        (n.WHH, n.HH),
        (n.WH, n.H),
        (n.WHH / 2, (n.W + n.HH) / 2),
        ((n.WHH + n.WH) / 2, (n.HH + n.H) / 2),
        (n.WH + 20.0, n.H),
    ):
        assert body_at(n, y) == pytest.approx(girth, abs=1e-9)


@pytest.mark.parametrize("seed", range(90))
def test_clearance_is_judged_down_to_the_hem(seed: int) -> None:
    """Against a walk down the body in millimetres, from 1 cm below the waist."""
    rng = random.Random(seed)
    body = rng.choice(BODIES) if seed % 3 == 0 else bdims_women()[2 * seed]
    length, f = rng.uniform(8, 40), rng.choice((0.1, 0.2, 0.25, 0.33, 0.5))
    made = draft(order(body, with_peplum(Peplum(length=length, fullness=f))))
    n = made.numbers
    gaps = [
        girth_at(n, y) - body_at(n, y) - 2.0
        for y in (0.1 * i for i in range(10, int(10 * length) + 1))
    ]
    doubt = found(made, "Q2")
    if min(gaps) < -0.05:
        (said,) = doubt
        assert said.data["peplum"] - said.data["body"] - 2.0 <= min(gaps) + 0.05
        assert said.data["y"] <= length
        assert said.severity is Severity.WARN
        needed = math.ceil(said.data["needed"] * 100) / 100
        if needed <= 1.0:
            wider = with_peplum(Peplum(length=length, fullness=needed))
            assert not found(draft(order(body, wider)), "Q2")
    elif min(gaps) > 0.0:
        assert not doubt


def test_clearance_goes_on_below_the_high_hip() -> None:
    """A quarter circle clears this high hip, not her hip (exact)."""
    body = Body.of({"HT": 165, "HB": 87, "B": 92, "W": 72, "HH": 80, "H": 116})
    short = draft(order(body, with_peplum(Peplum(fullness=0.25, length=9.0))))
    long = draft(order(body, with_peplum(Peplum(fullness=0.25, length=25.0))))
    assert not found(short, "Q2")
    (said,) = found(long, "Q2")
    n = long.numbers
    assert said.data["y"] == pytest.approx(n.WH)
    assert said.data["peplum"] == pytest.approx(
        n.W + n.Ew + 2 * math.pi * 0.25 * n.WH, abs=0.02
    )


def test_a_scant_gathered_peplum_is_doubted_and_told_how_much() -> None:
    body = Body.of({"HT": 165, "HB": 87, "B": 92, "W": 72, "HH": 95, "H": 120})
    scant = Peplum(cut=Cut.GATHERED, gathers=1.3, length=25.0)
    (said,) = found(draft(order(body, with_peplum(scant))), "Q2")
    enough = math.ceil(said.data["needed"] * 100) / 100
    full = Peplum(cut=Cut.GATHERED, gathers=enough, length=25.0)
    assert not found(draft(order(body, with_peplum(full))), "Q2")
    assert f"{enough:g} times" in str(said)


# -- limits (13.5, 25) -----------------------------------------------------------------
@pytest.mark.parametrize(("f", "tight"), [(1.0, False), (1.5, False), (1.75, True)])
def test_a_tight_waist_arc_is_doubted(f: float, tight: bool) -> None:
    """r < 5: the arc of a small waist, from 1.5 circles on."""
    small = Body.of({"HT": 150, "HB": 70, "B": 74, "W": 52, "H": 80})
    made = draft(order(small, zipped(Peplum(fullness=f))))
    assert bool(found(made, "Q1")) == tight
    assert (made.numbers.r < 5.0) == tight
    assert found(made, "usual") or f == 1.0


def test_arcs_below_two_centimetres_and_fronts_over_their_fold_are_refused() -> None:
    radius = FLARED.rules["r"].compute
    assert radius(4 * math.pi, 1.0) == pytest.approx(2.0)
    with pytest.raises(ValueError, match="smaller share"):
        radius(12.0, 1.0)
    with pytest.raises(ValueError, match="over itself"):
        FLARED.rules["phi_F"].compute(1.75, 22.0, 12.0)
    with pytest.raises(OrderError, match="share of a circle"):
        draft(
            order(
                P80, with_peplum(LowOpenBack(waist=6.0, top=6.0), Peplum(fullness=1.75))
            )
        )


def test_a_peplum_wider_than_its_cloth() -> None:
    """G7: the half front opened out, 2·(r + L)·sin φF, and its allowances (exact)."""
    made = draft(order(P92, with_peplum(Peplum(fullness=0.75))))
    n = made.numbers
    code, wide = widest(made.sheet)
    assert code == "PF"
    across = 2 * (n.r + n.L) * math.sin(math.radians(n.phi_F))
    assert wide == pytest.approx(across + 3.0, abs=0.01)
    for width, doubted in ((wide - 0.1, True), (wide + 0.1, False)):
        cloth = Cloth(width=width, selvedge=0.0)
        asked = replace(made.order, cloths={"shell": cloth})
        assert bool(found(draft(asked), "Q3")) == doubted
    assert not found(made, "Q3")  # nothing is known of the cloth
    told = [t for t in pattern(made, words=False).drawn.notes if "selvedges" in t]
    assert not told  # any dress cloth is wide enough
    full = draft(order(P116, with_peplum(Peplum(fullness=0.5, length=40.0))))
    (said,) = [t for t in pattern(full, words=False).drawn.notes if "selvedges" in t]
    assert f"{widest(full.sheet)[1]:.1f} cm" in said


def test_numbers_that_a_cut_does_not_use_are_named() -> None:
    made = draft(order(P92, with_peplum(Peplum(cut=Cut.GATHERED, fullness=0.5))))
    (said,) = found(made, "Q5")
    assert "fullness" in str(said)
    assert not found(draft(order(P92, with_peplum(Peplum(fullness=0.5)))), "Q5")


# -- the zip's end (16.3) --------------------------------------------------------------
@pytest.mark.parametrize("cut", list(Cut))
@pytest.mark.parametrize("f", [0.1, 0.25, 0.5])
@pytest.mark.parametrize("body", [P92, YSOLDE, THEA])
def test_the_zip_ends_where_the_top_goes_on(body: Body, f: float, cut: Cut) -> None:
    made = draft(order(body, zipped(Peplum(fullness=f, cut=cut, gathers=1.2))))
    n = made.numbers
    if cut is Cut.GATHERED:
        girth = 1.2 * 2 * (n.w_F + n.w_B)
    else:
        girth = n.w + 2 * math.pi * f * 12.0
    assert girth_at(n, n.z) == pytest.approx(girth, abs=1e-9)
    assert bool(found(made, "Z2")) == (girth < n.B + 2 and girth < n.H)


@pytest.mark.parametrize(("length", "ends"), [(15.0, 12.0), (12.0, 10.0), (8.0, 6.0)])
def test_the_zip_ends_two_above_a_short_hem(length: float, ends: float) -> None:
    made = draft(order(P92, zipped(Peplum(length=length))))
    assert made.numbers.z == pytest.approx(ends)
    assert not found(made, "Z1")
    low = zipped(Peplum(length=length), ConcealedZip(below_waist=length - 1.9))
    (told,) = found(draft(order(P92, low)), "Z1")
    assert '(below_waist of "concealed zip")' in told.to_do


def test_the_zip_to_buy() -> None:
    """16.3: from 0.5 below the neck to z below the waist, and 2.5 more."""
    made = draft(order(P92, zipped()))
    opening = made.sheet.length("BC", "cb") - 0.5 + 12.0
    said = " ".join(t for t in pattern(made, words=False).drawn.notes if "zip" in t)
    assert f"{opening:.1f} cm long" in said
    assert f"at least {opening + 2.5:.1f} cm" in said
    assert "hook and eye" in said


def test_how_it_is_told() -> None:
    assert "{fullness}" in Peplum(cut=Cut.PANELLED).said()
    assert "{gathers}" in Peplum(cut=Cut.GATHERED).said()
    assert "{fullness}" not in Peplum(cut=Cut.GATHERED).said()
