"""Formulas of house rules, as a workroom writes them (exact arithmetic)."""

import pytest

from clothwright.rules import Kind
from clothwright.rules.formula import FormulaError, read_formula
from clothwright.rules.house import HouseError, read_house
from clothwright.units import Unit

BUST = 36.5 * 2.54


def value(text: str, unit: Unit = Unit.IN) -> float:
    """Inches of a formula on a bust of 36 1/2 in."""
    read = read_formula(text, "house.toml, Dm", unit, {"B": "B"}, Kind.LENGTH)
    return read.compute(*[BUST for _ in read.needs]) / 2.54


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("B/6 + 1 in", 36.5 / 6 + 1),
        ("B/6-1/2 in", 36.5 / 6 - 0.5),
        ("B/6 - 1/2 in", 36.5 / 6 - 0.5),
        ("B/6-1/2", 36.5 / 6 - 0.5),
        ("B*1-1/2 in", 36.0),
        ("B - 3-1/2 in", 33.0),
        ("3-1/2 in", 3.5),
        ("1/4*B", 36.5 / 4),
        ("B/4 + ¾ in", 36.5 / 4 + 0.75),
        ("min(B/6, 3)", 3.0),
        ("max((B - 1)/5, 2 in)", 7.1),
    ],
)
def test_arithmetic(text: str, inches: float) -> None:
    assert value(text) == pytest.approx(inches, abs=1e-9)


@pytest.mark.parametrize(
    "text", ["", "B/0", "B +", "(B", "B 3", "bust", "B^2", "(" * 9000, "-" * 9000]
)
def test_what_cannot_be_computed_is_said(text: str) -> None:
    with pytest.raises(FormulaError, match="house.toml, Dm: "):
        value(text)


@pytest.mark.parametrize(
    "text", ["unit = ['cm']", "unit = 'cm'\nrules = 3", "unit = 'cm'\n[rules]\nx = 1"]
)
def test_a_house_file_that_cannot_be_used_is_said(text: str) -> None:
    with pytest.raises(HouseError, match="house.toml"):
        read_house(text, "house.toml", {}, ())
