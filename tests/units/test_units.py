"""Lengths as written and as shown (check values U1 to U9, exact)."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clothwright.units import (
    LengthError,
    Unit,
    format_length,
    ligne_to_cm,
    parse_angle,
    parse_length,
    parse_plain,
    pretty_length,
    pretty_text,
    retold,
    split_fraction,
    yards_up_to_eighth,
)

WRITTEN = [
    ("1 in", 2.54),
    ("36 in", 91.44),
    ("36 1/2", 92.71),
    ("36-1/2", 92.71),
    ("36.5", 92.71),
    ("36½", 92.71),
    ('34⅜"', 87.3125),
    ("5/8 in", 1.5875),
    (" 3 1/8 inches ", 7.9375),
    ("1 yd", 91.44),
    ("92cm", 92.0),
    ("92,5 cm", 92.5),
    ("8,3cm", 8.3),
    ("25 mm", 2.5),
    ("2.5 m", 250.0),
    ("⅝", 1.5875),
    ("3⁄8 in", 0.9525),
    ("6⁷⁄₁₆ in", 16.35125),
    ("¹³⁄₁₆", 2.06375),
]


@pytest.mark.parametrize(("text", "cm"), WRITTEN)
def test_every_written_form(text: str, cm: float) -> None:
    assert parse_length(text, Unit.IN) == pytest.approx(cm, abs=1e-9)


@pytest.mark.parametrize(
    "text", ["", "  ", "deep", "3 1/0", "3 el", "1/2/3", "nan", "inf", "--3"]
)
def test_what_cannot_be_read_is_said(text: str) -> None:
    with pytest.raises(LengthError) as e:
        parse_length(text, Unit.IN)
    assert str(e.value)


def test_a_number_without_a_unit_asks_for_one() -> None:
    with pytest.raises(LengthError, match='write "36 cm" or "36 in"'):
        parse_length("36")


def test_shown_values() -> None:
    assert format_length(92, Unit.IN, body=True) == "36 1/4 in"  # U3
    assert format_length(12.3, Unit.IN) == "4 13/16 in"  # U4
    assert pretty_length(12.3, Unit.IN) == "4¹³⁄₁₆ in"
    assert pretty_length(7.9375, Unit.IN) == "3⅛ in"
    assert format_length(92.26, Unit.CM, body=True) == "92.5 cm"
    yards = yards_up_to_eighth(237)  # U8
    assert (yards.whole, yards.num, yards.den) == (2, 5, 8)
    assert ligne_to_cm(40) == pytest.approx(2.54)  # U9


def test_slope_as_a_drop() -> None:
    """Worked example row 18: asin(1.875/5)."""
    assert parse_angle("drop 1 7/8 on 5") == pytest.approx(22.0243, abs=1e-4)
    assert parse_angle("21 1/2°") == 21.5


@pytest.mark.parametrize("text", ["1 7/8 in on 5 in", "1 7/8 on 5 in", "1 7/8 in on 5"])
def test_a_unit_on_one_part_of_a_drop_holds_for_both(text: str) -> None:
    assert parse_angle(f"drop {text}") == pytest.approx(22.0243, abs=1e-4)
    assert parse_angle("drop 4.7 cm on 5 in") == pytest.approx(21.7205, abs=1e-4)


@pytest.mark.parametrize(
    "wild", ["9" * 400, "9" * 400 + "/1", "9" * 5000 + " cm", "9" * 50, 1e308, 10**400]
)
def test_no_number_is_too_large_to_be_refused(wild: str | float) -> None:
    for read in (parse_angle, lambda t: parse_length(t, Unit.IN)):
        with pytest.raises(LengthError):
            read(wild)


@given(st.floats(0, 400, allow_nan=False))
def test_a_shown_inch_length_reads_back_within_half_a_sixteenth(cm: float) -> None:
    for text in (format_length(cm, Unit.IN), pretty_length(cm, Unit.IN)):
        assert parse_length(text, Unit.IN) == pytest.approx(cm, abs=2.54 / 32 + 1e-6)
    sign, whole, num, den = split_fraction(cm)
    assert sign * (whole + num / den) * 2.54 == pytest.approx(cm, abs=2.54 / 32 + 1e-6)
    assert math.gcd(num, den) in (1, den)


def test_a_sentence_is_retold_in_inches() -> None:
    said = "The strap is 2.5 cm wide; 3 cm must stay, 1.2 cmx not."
    assert retold(said, Unit.CM) == said
    assert retold(said, Unit.IN).startswith("The strap is 1 in wide; 1³⁄₁₆ in must")


def test_fractions_in_a_sentence_are_made_pretty() -> None:
    said = "at least 1 15/16 in, 1 3/8 yd for 25.30; scale 1/4, 3 3/4 inner"
    assert pretty_text(said) == (
        "at least 1¹⁵⁄₁₆ in, 1⅜ yd for 25.30; scale 1/4, 3 3/4 inner"
    )


def test_a_plain_number_has_no_unit() -> None:
    assert parse_plain("1/2") == 0.5
    with pytest.raises(LengthError, match="write a plain number, like 0.5"):
        parse_plain("50 %")
