"""The trued waist (12): joints, excess, and what the peplum takes from it."""

import math
import random

import pytest

from bodies import BRIDA, P92, THEA, YSOLDE, bdims_women
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.waist import WaistSeam, waist_edges
from clothwright.features.openings.open_back import LowOpenBack
from clothwright.findings import Severity
from clothwright.order import OrderError, draft
from orders import main_features, order

BODIES = (P92, BRIDA, YSOLDE, THEA, *bdims_women()[::4])


def with_waist(*new: Feature) -> tuple[Feature, ...]:
    """The main garment with these features in place of its own of the same kind."""
    swap = {f.kind: f for f in new}
    return tuple(swap.get(f.kind, f) for f in main_features())


@pytest.mark.parametrize("body", BODIES)
def test_the_stitched_waist_is_the_body_and_ease_less_the_gap(body: Body) -> None:
    """12.4: Σ edges = (W + Ew)/2 − e2 within 0.05; 12.6: sums 180°, partners equal."""
    rng = random.Random(body.client)
    ease, set_in = rng.uniform(1.5, 4.0), rng.uniform(0.0, 3.0)
    back = LowOpenBack(waist=set_in)
    try:
        made = draft(order(body, with_waist(Block(waist_ease=ease), back)))
    except OrderError as e:
        assert "make " in str(e)
        return
    n, sheet = made.numbers, made.sheet
    edges = sum(sheet.length(*e) for e in waist_edges(sheet))
    assert edges == pytest.approx((n.W + ease) / 2 - set_in, abs=0.02)
    assert n.w == pytest.approx(2 * edges, abs=0.04)
    for a in made.report.angles:
        if a.joint.name.startswith("waist over"):
            assert a.sum == pytest.approx(180.0, abs=1e-6)
    for walk in made.report.walks:
        if walk.seam.code in ("S2", "S4"):
            assert walk.ease == pytest.approx(0.0, abs=0.05)


@pytest.mark.parametrize("body", BODIES[:16])
def test_a_waist_left_as_it_was_trued(body: Body) -> None:
    """12.5: the peplum takes the stitched waist, which then is the aim and its excess
    (−0.08 to −0.11 on common figures)."""
    made = draft(order(body, main_features(given_back=False)))
    n, sheet = made.numbers, made.sheet
    edges = sum(sheet.length(*e) for e in waist_edges(sheet))
    assert n.w_half == pytest.approx(edges, abs=1e-3)
    assert n.w_half == pytest.approx((n.W + n.Ew) / 2 - n.e2 + n.ex, abs=1e-6)
    assert n.fd_cut == n.fd
    for code in ("S5", "S6"):
        (walk,) = [w for w in made.report.walks if w.seam.code == code]
        assert walk.holds


def test_limits_of_the_excess() -> None:
    """25: over 0.3 is doubted, over 0.6 refused; here by the number alone."""
    made = draft(order(P92, main_features()))
    n = made.numbers
    for ex, severity in (
        (-0.29, None),
        (-0.31, Severity.WARN),
        (0.59, Severity.WARN),
        (-0.61, Severity.REFUSE),
    ):
        house = f'unit = "cm"\n[rules]\nex = "{ex} cm"\n'
        asked = draft(order(P92, main_features(), house=house))
        got = [f.severity for f in asked.findings if f.code == "W1"]
        assert got == ([severity] if severity else []), ex
    assert abs(n.ex) < 0.3


@pytest.mark.parametrize("ease", [0.0, 0.3, 0.6])
def test_a_bodice_eased_on(ease: float) -> None:
    """12.5: the peplum half is w½ − ew; more than 0.6 is unusual."""
    made = draft(order(P92, with_waist(WaistSeam(ease=ease))))
    n, sheet = made.numbers, made.sheet
    half = sheet.length("PF", "waist") + sheet.length("PB", "waist")
    assert half == pytest.approx(n.w_half - ease - n.by / 2, abs=1e-4)
    assert n.r == pytest.approx(2 * half / (2 * math.pi * n.f), abs=1e-4)
    assert not [f for f in made.findings if f.code in ("S5", "S6", "usual")]
