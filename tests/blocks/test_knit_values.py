"""The knit bodice against check values §9 (corrected tables, trial drafts [NUM]; G27,
G28 exact), and its armhole drawn anew with numpy from the words of blocks F4."""

import math
from itertools import pairwise

import numpy as np
import pytest
from numpy.typing import NDArray

from bodies import P80, P92, P116, ansur_whole
from clothwright.blocks import knit_curves
from clothwright.body import Body
from clothwright.body.ease import knit_class, knit_ease, knits, most_negative
from clothwright.curves import Vector, degrees_between
from clothwright.features.knits.knit_bodice import KnitBodice
from clothwright.features.knits.knit_sleeve import KnitSleeve
from clothwright.features.knits.neck_band import NeckBand
from clothwright.order import Draft, draft
from orders import order

MM = 0.1
BODIES = (P80, P92, P116)


def made(body: Body, **settings: float) -> Draft:
    knit = KnitBodice.model_validate({"bust": -5.0, **settings})
    return draft(order(body, (knit, KnitSleeve(), NeckBand())))


@pytest.mark.parametrize(
    ("body", "bust", "waist", "hip", "armhole"),
    [
        (P80, 19.00, 15.65, 20.90, 38.69),
        (P92, 21.85, 18.18, 23.27, 42.07),
        (P116, 27.55, 24.75, 28.97, 49.67),
    ],
    ids=lambda b: getattr(b, "client", ""),
)
def test_check_values(
    body: Body, bust: float, waist: float, hip: float, armhole: float
) -> None:
    """p −5, waist p + 6; the armhole is twice the back's, without the wider front of a
    full cup (corrections C7.3)."""
    n = made(body).numbers
    assert n.q_bust == pytest.approx(bust, abs=0.01)
    assert n.q_waist == pytest.approx(waist, abs=0.01)
    assert n.q_hip == pytest.approx(hip, abs=0.01)
    assert 2 * n.A_b == pytest.approx(armhole, abs=0.2)


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_girths_on_the_paper(body: Body) -> None:
    """N1: what is drawn is body·(1 + p), and what a full cup adds to the front."""
    d = made(body)
    n, sheet = d.numbers, d.sheet
    wide = {}
    for code, centre in (("KB", 0.0), ("KF", n.X)):
        side = sheet.edge(code, "side").path
        under = max((side.start, side.end), key=lambda p: -p.y)
        foot = max((side.start, side.end), key=lambda p: p.y)
        wide[code] = abs(under.x - centre), abs(foot.x - centre)
    cup = max(0.0, 0.25 * (n.c - 7.0))
    bust = 2 * (wide["KB"][0] + wide["KF"][0])
    assert bust == pytest.approx(0.95 * n.B + 2 * cup, abs=MM)
    hem = 2 * (wide["KB"][1] + wide["KF"][1])
    assert hem == pytest.approx(0.95 * n.H, abs=MM)  # it ends at the hip


@pytest.mark.parametrize(("stretch", "most"), [(50.0, -20.0), (20.0, -9.09)])
def test_half_of_the_stretch(stretch: float, most: float) -> None:
    """G27, G28; and the rule's own number."""
    assert 100 * most_negative(stretch / 100) == pytest.approx(most, abs=0.01)
    assert made(P92, stretch=stretch).numbers.p_least == pytest.approx(most, abs=0.01)


@pytest.mark.parametrize("place", ["bust", "waist", "hip", "arm", "length"])
def test_more_stretch_never_makes_it_wider(place: str) -> None:
    """Measures 8.1: within every class from the most to the least, the ends exact."""
    shares = [knit_ease(place, s / 100) for s in range(10, 201)]
    for knit in knits():
        low, high = getattr(knit, place)
        a, b = knit.stretch
        assert knit_ease(place, b) == pytest.approx(low, abs=1e-9)
        if knit_class(a) is knit:
            assert knit_ease(place, a) == pytest.approx(high, abs=1e-9)
        inside = [s / 100 for s in range(10, 201) if knit_class(s / 100) is knit]
        values = [knit_ease(place, s) for s in inside]
        assert all(x >= y - 1e-9 for x, y in pairwise(values))
    assert max(shares) <= 0.08 + 1e-9


def _length(*handles: NDArray[np.float64]) -> float:
    """Length of a cubic by its four points."""
    t = np.linspace(0, 1, 4001)[:, None]
    a, b, c, e = handles
    curve = (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c
    return float(np.hypot(*np.diff(curve + t**3 * e, axis=0).T).sum())


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_the_armhole_drawn_anew(body: Body) -> None:
    """F4 and A2.7 with numpy: pitch at 0.55, handles 0.30, 0.38 above and 0.60, 0.55
    below, the last square to the side and longer where it reaches less than 3.3."""
    n = made(body).numbers
    sigma = math.radians(n.sigma)
    tip = np.array([n.bw, -2.0]) + n.S * np.array([math.cos(sigma), math.sin(sigma)])
    inward = np.array([-math.sin(sigma), math.cos(sigma)])
    x = min(max(n.across, tip[0] - 3.0), tip[0] - 0.3)
    pitch = np.array([x, tip[1] + 0.55 * (n.yB - tip[1])])
    under = np.array([n.q_bust, n.yB])
    lean = np.array([n.q_waist - n.q_bust, n.yW - n.yB])
    square = np.array([-lean[1], lean[0]]) / np.hypot(*lean)
    chord = np.hypot(*(pitch - tip))
    down = np.array([0.0, 1.0])
    reach = under[0] - pitch[0]
    share = min(0.95, 0.55 + 0.35 * max(0.0, 3.3 - reach))
    upper = _length(
        tip, tip + 0.30 * chord * inward, pitch - 0.38 * chord * down, pitch
    )
    lower = _length(
        pitch,
        pitch + 0.60 * (n.yB - pitch[1]) * down,
        under + share * reach * square,
        under,
    )
    assert n.A_b == pytest.approx(upper + lower, abs=0.01)


@pytest.mark.parametrize("k", [0, 114, 494, 931])
def test_a_cloth_cut_very_close_leaves_the_armhole_a_hollow(k: int) -> None:
    """Cut 18 per cent smaller, wide shoulders on a small bust lay the pitch outside the
    underarm: the tip comes in to 1 cm outside it at most, the line across to 2 cm
    inside (our own trial)."""
    knit = KnitBodice(stretch=200.0)
    d = draft(order(ansur_whole()[k], (knit, KnitSleeve(), NeckBand())))
    n = d.numbers
    tip = n.bw + n.S * math.cos(math.radians(n.sigma))
    assert n.p_bust == pytest.approx(-18.0)
    assert tip <= n.q_bust + 1.0 + 1e-9
    assert n.across <= n.q_bust - 2.0 + 1e-9
    arm = d.sheet.edge("KB", "armhole").path
    assert min(p.x for p in arm.flatten(0.01)) <= n.q_bust - 2.0 + MM
    assert not d.failed


def test_the_side_is_upright_at_a_waist_that_is_narrowest() -> None:
    """The side never bends back: lean between what it does above and below."""
    assert knit_curves.lean_at_waist(20.0, 17.0, 23.0, 20.0, 20.0) == 0.0
    lean = knit_curves.lean_at_waist(20.0, 22.0, 26.0, 20.0, 20.0)
    assert 0.1 < lean < 0.2
    upper = knit_curves.to_waist(20.0, 22.0, 20.0, 40.0, lean)
    lower = knit_curves.below_waist(22.0, 26.0, 20.0, 30.0, 0.0, lean)
    assert degrees_between(upper.end_direction, lower.start_direction) < 1e-6
    assert lower.end_direction == pytest.approx(Vector(0.0, 1.0))
    xs = [p.x for p in (*upper.flatten(0.01), *lower.flatten(0.01))]
    assert all(b >= a - 1e-6 for a, b in pairwise(xs))
