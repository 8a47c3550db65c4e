"""Money: exact decimal arithmetic against the check values U10 and U11."""

from decimal import Decimal

import pytest

from clothwright.cost.money import (
    CostError,
    by_margin,
    by_markup,
    plain,
    rounded,
    shown,
    up_to,
)


def test_margin_and_markup_of_a_cost_of_1000() -> None:
    """U11: 30 % margin 1428.57, 40 % markup 1400.00."""
    cost = Decimal(1000)
    assert rounded(by_margin(cost, Decimal(30))) == Decimal("1428.57")
    assert rounded(by_markup(cost, Decimal(40))) == Decimal("1400.00")


def test_a_markup_as_margin() -> None:
    """U10: 50 % on the cost is a third of the price; either gives the same price."""
    cost = Decimal("100.00")
    same = by_margin(cost, Decimal(100) / 3)
    assert rounded(same) == rounded(by_markup(cost, Decimal(50))) == Decimal(150)


def test_a_margin_of_all_is_refused() -> None:
    with pytest.raises(CostError, match="less than 100"):
        by_margin(Decimal(10), Decimal(100))


@pytest.mark.parametrize(
    ("amount", "places", "expected"),
    [
        ("0.005", 2, "0.01"),
        ("0.0049", 2, "0.00"),
        ("143.955", 2, "143.96"),
        ("2.5", 0, "3"),
        ("1.0005", 3, "1.001"),
    ],
)
def test_half_goes_up(amount: str, places: int, expected: str) -> None:
    assert rounded(Decimal(amount), places) == Decimal(expected)


@pytest.mark.parametrize(
    ("amount", "unit", "expected"),
    [("620.01", "1", "621"), ("620", "1", "620"), ("621", "5", "625")],
)
def test_up_to_the_whole_unit(amount: str, unit: str, expected: str) -> None:
    assert up_to(Decimal(amount), Decimal(unit)) == Decimal(expected)


def test_amounts_are_written_with_their_places() -> None:
    assert shown(Decimal("18.4")) == "18.40"
    assert shown(Decimal("0.125")) == "0.125"
    assert shown(Decimal("1200"), 0) == "1200"
    assert plain(Decimal("10.0")) == "10"
    assert plain(Decimal("100")) == "100"
