"""The cap of the sleeve against check values §6 (corrected tables, trial drafts [NUM]),
and against the text of blocks B3 with correction C3, drafted anew with numpy and scipy.
"""

import math
from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.optimize import fsolve

from bodies import P80, P92, P116
from clothwright.blocks.sleeve import (
    BACK,
    EVEN,
    FRONT,
    RAISED_EASE,
    SLEEVE,
    HalfShape,
    draft_cap,
    half_cap,
    solve_cap,
)
from clothwright.curves import Cubic, distance
from clothwright.paper import Drafting
from clothwright.rules import Given, Hand, Kind, Numbers, RuleError
from clothwright.truing.outline import wrong_way
from orders import drafted

MM = 0.1
BODIES = (P80, P92, P116)


@cache
def armholes(i: int) -> tuple[float, float, float]:
    """UA, front and back armhole of the check values' block."""
    d = drafted(BODIES[i])
    return d.n.UA, d.sheet.length("F", "armhole"), d.sheet.length("B", "armhole")


@pytest.mark.parametrize(
    ("i", "width", "height", "front", "back", "share"),
    [
        (0, 31.12, 13.88, 14.76, 16.36, 0.337),
        (1, 34.64, 14.69, 16.78, 17.86, 0.326),
        (2, 41.04, 17.26, 21.25, 19.79, 0.321),
    ],
)
def test_check_values(
    i: int, width: float, height: float, front: float, back: float, share: float
) -> None:
    """E 3.0, e 5.0; tolerances of the table."""
    UA, Af, Ab = armholes(i)
    Wb = UA + 5.0
    cap = solve_cap(Wb, Af, Ab, 3.0)
    assert cap is not None
    assert Wb == pytest.approx(width, abs=0.15)
    assert cap.height == pytest.approx(height, abs=0.15)
    assert cap.front == pytest.approx(front, abs=0.15)
    assert Wb - cap.front == pytest.approx(back, abs=0.15)
    assert cap.height / (Af + Ab) == pytest.approx(share, abs=0.005)


@pytest.mark.parametrize(
    ("E", "e", "width", "height", "share"),
    [
        (2.5, 4.0, 33.64, 14.83, 0.329),
        (3.8, 6.0, 35.64, 14.74, 0.327),
        (1.0, 7.0, 36.64, 12.21, 0.273),  # 12.21 by correction C3
    ],
)
def test_other_eases_of_p92(
    E: float, e: float, width: float, height: float, share: float
) -> None:
    UA, Af, Ab = armholes(1)
    cap = solve_cap(UA + e, Af, Ab, E)
    assert cap is not None
    assert UA + e == pytest.approx(width, abs=0.15)
    assert cap.height == pytest.approx(height, abs=0.05)
    assert cap.height / (Af + Ab) == pytest.approx(share, abs=0.005)


def _length(points: NDArray[np.float64]) -> float:
    """Arc length of a Bézier by 20-point Gauss quadrature."""
    x, weights = np.polynomial.legendre.leggauss(20)
    t = ((x + 1) / 2)[:, None]
    d = np.diff(points, axis=0) * 3
    slope = d[0] * (1 - t) ** 2 + 2 * d[1] * t * (1 - t) + d[2] * t**2
    return float(np.sum(weights / 2 * np.hypot(slope[:, 0], slope[:, 1])))


def _half(w: float, h: float, f: float, p: float, q: float) -> float:
    """Length of half a cap, read off the text of B3 and C3."""
    u, t = np.array([w, 0.0]), np.array([0.0, -h])
    i = u + f * (t - u)
    alpha = math.atan2(h, w) + math.radians(22)
    d = np.array([-math.cos(alpha), -math.sin(alpha)])
    l1, l2 = float(np.hypot(*(i - u))), float(np.hypot(*(t - i)))
    lower = np.array([u, u + [-p * l1, 0], i - 0.33 * l1 * d, i])
    upper = np.array([i, i + 0.36 * l2 * d, t + [q * l2, 0], t])
    return _length(lower) + _length(upper)


@pytest.mark.parametrize("i", range(3))
def test_against_the_text_drafted_anew(i: int) -> None:
    UA, Af, Ab = armholes(i)
    Wb, E = UA + 5.0, 3.0

    def off(v: NDArray[np.float64]) -> list[float]:
        w, h = v
        return [
            _half(w, h, 0.50, 0.40, 0.42) - Af - 0.45 * E,
            _half(Wb - w, h, 0.40, 0.38, 0.38) - Ab - 0.55 * E,
        ]

    w, h = fsolve(off, [0.485 * Wb, (Af + Ab) / 3])
    cap = solve_cap(Wb, Af, Ab, E)
    assert cap is not None
    assert cap.front == pytest.approx(w, abs=0.01 * MM)
    assert cap.height == pytest.approx(h, abs=0.01 * MM)


@given(
    st.floats(17, 30),
    st.floats(-4, 4),
    st.floats(0.62, 0.85),
    st.floats(0, 4.5),
)
def test_what_is_found_fits(Af: float, more: float, wide: float, E: float) -> None:
    """Every cap found is as long as armhole and ease, half by half, or in all with the
    notch moved by the rest (B4, B6, A10, A11)."""
    Ab = Af + more
    Wb = wide * (Af + Ab)
    cap = solve_cap(Wb, Af, Ab, E)
    assert cap is not None
    front = half_cap(cap.front, cap.height, FRONT).length
    back = half_cap(Wb - cap.front, cap.height, BACK).length
    assert front + back == pytest.approx(Af + Ab + E, abs=0.01 * MM)
    assert front - cap.over == pytest.approx(Af + 0.45 * E, abs=0.01 * MM)
    assert EVEN[0] <= cap.front / Wb <= EVEN[1]
    if cap.over:
        assert cap.front == pytest.approx(0.49 * Wb)


def test_a_cap_that_is_solved_in_all() -> None:
    """Armholes too unlike each other: 0.49 of the width goes in front."""
    long_front = solve_cap(34.0, 26.0, 19.0, 3.0)
    long_back = solve_cap(34.0, 19.0, 26.0, 3.0)
    assert long_front is not None
    assert long_back is not None
    assert long_front.over < -1.0  # the front cap is too short: the notch goes back
    assert long_back.over > 1.0


@pytest.mark.parametrize("shape", [FRONT, BACK])
@pytest.mark.parametrize("height", [10.0, 14.0, 18.0])
@pytest.mark.parametrize("width", [14.0, 17.0, 21.0])
def test_the_curve(shape: HalfShape, height: float, width: float) -> None:
    """Level at the underarm and at the top (S4), smooth between, turning the wrong way
    by 0.3° at most (C3)."""
    half = half_cap(width, height, shape)
    assert half.start_direction == pytest.approx((-1.0, 0.0), abs=1e-9)
    assert half.end_direction == pytest.approx((-1.0, 0.0), abs=1e-9)
    hollow, crown = half.segments
    assert hollow.end_direction == pytest.approx(crown.start_direction, abs=1e-9)
    for s in half.segments:
        assert isinstance(s, Cubic)
        assert wrong_way(s) <= 0.3


def numbers(**chosen: float) -> Numbers:
    rules = {**SLEEVE.rules, **RAISED_EASE.rules}
    return Numbers(
        rules, [Given(k, k, k, Kind.LENGTH, v, Hand.CHOICE) for k, v in chosen.items()]
    )


@pytest.mark.parametrize(("Af", "Ab"), [(22.3, 22.7), (26.0, 19.0), (19.0, 26.0)])
def test_the_shoulder_notch_divides_the_cap(Af: float, Ab: float) -> None:
    n = numbers(A_f=Af, A_b=Ab, E_cap=3.0, UA=29.64, e_usual=5.0)
    d = Drafting(n)
    cap = draft_cap(d)
    to_notch = cap.length_to_point(d["K"])
    assert to_notch == pytest.approx(Ab + 1.65, abs=0.01 * MM)
    assert cap.length - to_notch == pytest.approx(Af + 1.35, abs=0.01 * MM)
    on_crown = cap.length_to_point(d["T"]) - to_notch
    assert -on_crown == pytest.approx(n.cap_over, abs=0.01 * MM)  # towards the front
    assert distance(d["Ub"], d["Uf"]) == pytest.approx(n.Wb)


def test_a_slim_arm_is_given_more_ease() -> None:
    """h at most 0.36·A; at 8 cm the ease is accepted as it is (B5, A13)."""
    n = numbers(A_f=22.3, A_b=22.7, E_cap=3.0, UA=25.5, e_usual=5.0)
    assert 5.0 < n.e_arm < 8.0
    assert n.h_share <= 0.36
    less = solve_cap(n.Wb - 0.25, 22.3, 22.7, 3.0)
    assert less is not None
    assert less.height / 45.0 > 0.36
    slim = numbers(A_f=22.3, A_b=22.7, E_cap=3.0, UA=20.0, e_usual=5.0)
    assert slim.e_arm == 8.0
    assert slim.h_share > 0.36


def test_no_cap_for_an_arm_as_wide_as_the_armhole_is_long() -> None:
    n = numbers(A_f=20.0, A_b=20.0, E_cap=0.0, UA=44.0, e_usual=5.0)
    with pytest.raises(RuleError, match="upper arm"):
        _ = n.h_cap
