"""Guards for bodies at the edge of the drafts: long shoulders, low bust points, waists
that take in nothing. Each moves only what the notes' own guards move, and says so."""

import pytest

from bodies import P80, P92, P116, ansur_women
from clothwright.blocks.bodice_curves import MOST_OVERHANG, WOBBLE
from clothwright.body import Body, RuleSet, estimates
from clothwright.curves import Cubic
from clothwright.features.bodice.armhole import MOST_MOVED
from clothwright.findings import Severity
from clothwright.order import Draft, OrderError, draft
from clothwright.rules import Numbers
from clothwright.truing.outline import wrong_way
from order.test_random_bodies import demo_features
from orders import main_features, order

MM = 0.1
LONG_SHOULDERS = (10042, 17828, 18143, 25891, 25978, 28731)
LOW_BUSTS = (13466, 23347, 25026, 28561, 28729, 29456)
"""Women of the survey who were refused before the guards, by their number there."""


def _woman(number: int) -> Draft:
    body = next(b for b in ansur_women() if b.client == f"ansur {number}")
    features = main_features(pointed=False)
    return draft(order(body, features, estimates=RuleSet.SURVEY))


@pytest.mark.parametrize("number", LONG_SHOULDERS)
def test_a_long_shoulder_moves_the_pitch_and_is_told(number: int) -> None:
    """C16: no armhole turns against its bend by more than 8°; the pitch is moved out no
    further than that asks, as C18 moves it."""
    made = _woman(number)
    n, points = made.numbers, made.sheet.points
    assert not made.failed
    upper = made.sheet.edge("FC", "armhole").path.reversed().segments[0]
    assert isinstance(upper, Cubic)
    assert wrong_way(upper) == pytest.approx(WOBBLE, abs=0.1)
    moved = n.X - points["pf"].x - n.xfw
    assert 0 < moved < MOST_MOVED
    told = [f for f in made.findings if f.code == "A4" and f.place == "XC"]
    assert bool(told) == (moved > 0.5 * MM)
    assert all("SH" in str(f) and "XC" in str(f) for f in told)


@pytest.mark.parametrize("body", [P80, P92, P116])
def test_standard_bodies_keep_their_pitch(body: Body) -> None:
    """A2.6, A3.9 and their guards alone."""
    made = draft(order(body, main_features()))
    n, p = made.numbers, made.sheet.points
    assert p["pf"].x == pytest.approx(max(n.X - n.xfw, p["Tf"].x + 0.8), abs=1e-9)
    most = max(n.xb, p["Tb"].x - MOST_OVERHANG)
    assert p["pb"].x == pytest.approx(min(most, p["Tb"].x - 0.3), abs=1e-9)


def test_a_shoulder_far_too_long_is_refused_by_its_measures() -> None:
    measures = {"HT": 165, "HB": 87, "B": 92, "W": 72, "H": 98}
    body = Body.of({**measures, "SH": 17.5, "XC": 30, "SS": 14})
    made = draft(order(body, main_features()))
    (said,) = (f for f in made.findings if f.code == "A4" and f.place == "XC")
    assert said.severity is Severity.REFUSE
    assert "SH" in str(said) and "XC" in str(said) and "narrowed of" in str(said)


@pytest.mark.parametrize("number", LOW_BUSTS)
def test_a_low_bust_point_lowers_the_back_dart(number: int) -> None:
    """A2.9: the dart's point lies up to 2.5 below the bust line; the finished bust is
    then no smaller than the body (B1) by more than the tape tells, 0.3 on a half."""
    made = _woman(number)
    n = made.numbers
    assert not made.failed
    assert n.yB <= n.y_Pd <= n.yB + 2.5
    assert made.sheet.points["Pd"].y == pytest.approx(n.y_Pd)
    (said,) = (f for f in made.findings if f.code == "B1")
    assert said.data["half"] >= n.B / 2 - 0.3


@pytest.mark.parametrize("body", [P80, P92, P116])
def test_standard_bodies_keep_the_dart_on_the_bust_line(body: Body) -> None:
    """First garment 6.2: Pd = (xd, yB)."""
    n = draft(order(body, main_features())).numbers
    assert n.y_Pd == n.yB


@pytest.mark.parametrize("rules", list(RuleSet))
def test_no_estimate_breaks_its_own_rule(rules: RuleSet) -> None:
    """R12: NBP is at most 0.72 of NFW; without the bound a bust of 140 on 150 cm of
    height would have its bust point 5 cm above the waist."""
    body = Body.of({"HT": 150, "B": 140, "W": 115, "H": 140})
    n = Numbers(estimates(rules).rules, body.given())
    assert pytest.approx(0.72 * n.NFW) == n.NBP
    plain = Numbers(estimates(rules).rules, P92.given())
    assert plain.NBP < 0.72 * plain.NFW


FULL = {"HT": 165.0, "HB": 90.0, "B": 96.0, "W": 98.0, "H": 106.0}
"""A waist that takes in nothing, front or back (A4: "0 or 1.2")."""


@pytest.mark.parametrize("name", ["zip-top", "panelled-top", "peplum-top"])
def test_a_full_waist_has_no_darts(name: str) -> None:
    """The fronts and backs are ruled through at the waist, which is body and ease."""
    made = draft(order(Body.of(FULL), demo_features(name)))
    assert not made.failed, made.failures()
    n, sheet = made.numbers, made.sheet
    assert n.fd == 0 and n.bd == 0
    if name == "zip-top":
        assert not sheet.piece("F").has("leg cf")
        assert "front waist dart" not in {s.code for s in sheet.seams}
    total = sum(
        sheet.length(c, e)
        for c in ("FC", "FS", "F", "BS", "BC")
        if c in sheet.pieces
        for e in ("waist", "waist side")
        if sheet.piece(c).has(e)
    )
    gap = n.e2 if name == "peplum-top" else 0.0
    assert total + gap == pytest.approx((n.W + n.Ew) / 2, abs=0.05)


LOW = {"HT": 150.0, "HB": 100.0, "B": 112.0, "W": 78.0, "H": 108.0, "NWB": 36.0}
"""A slim waist close below a low bust point."""


@pytest.mark.parametrize(
    ("name", "more", "words"),
    [
        ("peplum-top", {"NBP": 33.0, "NFW": 40.0}, ("NBP", "NFW", "waist_ease")),
        ("zip-top", {"NBP": 33.0, "NFW": 40.0}, ("NBP", "NFW", "waist_ease")),
    ],
)
def test_a_dart_that_cannot_be_sewn_is_refused_by_its_measures(
    name: str, more: dict[str, float], words: tuple[str, ...]
) -> None:
    with pytest.raises(OrderError) as e:
        draft(order(Body.of({**LOW, **more}), demo_features(name)))
    assert all(w in str(e.value) for w in words), str(e.value)
