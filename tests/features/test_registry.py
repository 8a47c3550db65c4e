"""What holds for the model of every feature that is registered."""

import pytest

from clothwright.features import KINDS, Feature
from clothwright.features.said import seam_codes
from clothwright.rules import Kind
from clothwright.units import Unit


@pytest.mark.parametrize("kind", KINDS.values(), ids=KINDS)
def test_both_defaults_are_one_habit(kind: type[Feature]) -> None:
    """What is no length is the same in inches; a length is about the same, and both
    lie within the bounds."""
    for number in kind.numbers().values():
        usual = [v for u in Unit if (v := number.default(u)) is not None]
        for value in usual:
            assert number.low is not None and number.high is not None, number.name
            assert number.low <= value <= number.high, number.name
        apart = max(usual, default=0.0) - min(usual, default=0.0)
        assert apart <= (3.0 if number.kind is Kind.LENGTH else 0.0), number.name


def test_a_seam_code_has_one_meaning() -> None:
    """Features that share a seam say the same of it."""
    means: dict[str, str] = {}
    for code, what in seam_codes():
        assert means.setdefault(code, what) == what, code


@pytest.mark.parametrize("kind", KINDS.values(), ids=KINDS)
def test_what_a_refusal_lists_stands_with_commas(kind: type[Feature]) -> None:
    """Two names in quotes never stand side by side with nothing between them."""
    for said in (*kind.needs.values(), *kind.clashes.values()):
        assert '" "' not in said
