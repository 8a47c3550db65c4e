"""Inch workroom practice (common practice, no source), by house rules in inches."""

from collections.abc import Mapping

import pytest

from bodies import BRIDA
from clothwright.body import Body
from clothwright.features.said import Said
from clothwright.order import Draft, draft
from clothwright.units import Unit
from orders import main_features, order

INCH = 2.54
HOUSE = """
unit = "in"
[rules]
Dm = "B/6 + 1 in"
bw = "3 in"
dep = "3 in"
nr = "1 in"
nipF = "1/2"
nipB = "1/4"
"""


def made(house: str = HOUSE, changed: Mapping[str, float] | None = None) -> Draft:
    values = {k: v.value for k, v in BRIDA.values.items()} | dict(changed or {})
    body = Body.of(values, unit=Unit.IN)
    return draft(order(body, main_features(), unit=Unit.IN, house=house))


@pytest.mark.parametrize("bust", [30, 32, 34, 36, 38, 40, 42])
def test_bust_by_six_and_an_inch(bust: int) -> None:
    """I1 and check values A30 to A42: exact arithmetic of the rule."""
    change = {"B": bust * INCH, "HB": (bust - 2) * INCH}
    n = made(changed=change if bust in (34, 36, 38) else {}).numbers
    aim = (bust if bust in (34, 36, 38) else 36.5) / 6 + 1
    assert n.Dm == pytest.approx(aim * INCH, abs=1e-6)


def test_standard_neck_three_by_three() -> None:
    """I2: width 3 in, depth 3 in front and 1 in behind."""
    n = made().numbers
    assert (n.bw, n.dep, n.nr) == pytest.approx((3 * INCH, 3 * INCH, INCH), abs=1e-9)


def test_boat_width_is_the_neck_and_half_of_what_is_left() -> None:
    """I3: 3 in and a 5 in shoulder give 5 1/2 in (the finished shoulder is 5 in)."""
    change = {"SH": 5.375 * INCH}  # 3/8 in is narrowed at the tip
    n = made(changed=change).numbers
    assert n.bw + n.dw == pytest.approx(5.5 * INCH, abs=1e-9)


def test_tightening_a_half_and_a_quarter() -> None:
    """I4: at the neck end, to nothing at the tip; shoulders keep their length."""
    d = made()
    assert d.numbers.nipF == pytest.approx(INCH / 2, abs=1e-9)
    assert d.numbers.nipB == pytest.approx(INCH / 4, abs=1e-9)
    p = d.sheet.points
    for a, b, nip in (("Nf", "Nf′", 0.5), ("Nb", "Nb′", 0.25)):
        gap = ((p[a].x - p[b].x) ** 2 + (p[a].y - p[b].y) ** 2) ** 0.5
        assert gap == pytest.approx(nip * INCH, abs=1e-6)
    assert d.sheet.length("FC", "shoulder") == pytest.approx(d.numbers.Lr, abs=1e-6)


def test_set_ins_from_the_centre_back() -> None:
    """I5: measured from the centre back and measured again on the finished edge."""
    d = made()
    slant = d.sheet.edge("BC", "slant").path
    assert slant.end.x == pytest.approx(2 * INCH, abs=0.01)
    assert slant.start.x == pytest.approx(1 * INCH, abs=0.01)


def test_loops_an_inch_apart_and_the_first_is_notched() -> None:
    """I6; evenly spaced loops may differ by sp/(2(n − 1)) at most (exact)."""
    d = made()
    n = d.numbers
    assert abs(n.spacing - INCH) <= INCH / (2 * (n.n_loops - 1)) + 1e-9
    marks = [m for m in d.sheet.piece("BC").marks if m.name.startswith("loop")]
    assert len(marks) == n.n_loops


def test_panel_behind_reaches_under_the_edges() -> None:
    """I7: a separate piece on the fold, 1/2 to 1 in under the edges."""
    d = made()
    panel = d.sheet.piece("UP")
    assert panel.fold is not None
    assert 0.5 * INCH <= d.numbers.ov <= 1.0 * INCH


def test_small_panels_have_half_an_inch() -> None:
    """I8: allowance of small panels and enclosed edges."""
    from clothwright.features.roles import Role
    from clothwright.finishing.allowances import Allowances

    assert Allowances(Unit.IN, Said()).width(Role.SMALL) == pytest.approx(INCH / 2)


def test_a_house_rule_is_shown_wherever_the_number_is() -> None:
    reason = made().numbers.why("yB")
    knots = {r.key: r for r in reason.walk()}
    assert knots["Dm"].hand.value == "house rule"
    assert knots["Dm"].formula == "B/6 + 1 in"
