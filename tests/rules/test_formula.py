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
        read_house(text, "house.toml", {}, {})


NAMES = {"B": "B", "SS": "SS", "n": "n", "f": "f"}
KINDS = {"B": Kind.BODY, "SS": Kind.ANGLE, "n": Kind.COUNT, "f": Kind.RATIO}


@pytest.mark.parametrize(
    ("text", "kind", "says"),
    [
        ("SS", Kind.LENGTH, "comes to an angle, and a length is wanted"),
        ("B + SS", Kind.LENGTH, "a length and an angle stand side by side"),
        ("B*B", Kind.LENGTH, "comes to an area"),
        ("n", Kind.LENGTH, "comes to a plain number"),
        ("B/2", Kind.ANGLE, "comes to a length, and an angle is wanted"),
        ("B", Kind.RATIO, "comes to a length, and a plain number is wanted"),
        ("1 in", Kind.COUNT, "comes to a length"),
        ("max(B, SS)", Kind.LENGTH, "stand side by side"),
        ("B - 2°", Kind.LENGTH, "stand side by side"),
    ],
)
def test_a_formula_counts_what_its_rule_does(text: str, kind: Kind, says: str) -> None:
    with pytest.raises(FormulaError, match=f"^house.toml, x: .*{says}"):
        read_formula(text, "house.toml, x", Unit.IN, NAMES, kind, KINDS)


@pytest.mark.parametrize(
    ("text", "kind", "comes_to"),
    [
        ("SS - 2", Kind.ANGLE, 20.0),
        ("SS - 2°", Kind.ANGLE, 20.0),
        ("SS*B/B", Kind.ANGLE, 22.0),
        ("B*(1 + f)", Kind.LENGTH, 90.0 * 1.5),
        ("max(f, 1)*B", Kind.LENGTH, 90.0),
        ("B*B/B + 1", Kind.LENGTH, 92.54),
        ("B/(2 in) - 3", Kind.RATIO, 90.0 / 5.08 - 3),
        ("max(2, 3)*B", Kind.LENGTH, 270.0),
        ("3", Kind.COUNT, 3.0),
        ("-2", Kind.LENGTH, -5.08),
    ],
)
def test_bare_numbers_count_what_stands_beside_them(
    text: str, kind: Kind, comes_to: float
) -> None:
    values = {"B": 90.0, "SS": 22.0, "n": 4.0, "f": 0.5}
    read = read_formula(text, "house.toml, x", Unit.IN, NAMES, kind, KINDS)
    assert read.compute(*(values[k] for k in read.needs)) == pytest.approx(comes_to)
