"""Advice names settings as they are written in the order, not by symbols."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import clothwright.features
from clothwright.body import measures
from clothwright.features import KINDS
from clothwright.order.advice import in_settings
from clothwright.units import told_apart

TROUSERS = [KINDS["trousers"](kind="trousers")]
HOME = Path(clothwright.features.__file__).parent


def test_a_symbol_is_told_as_its_setting() -> None:
    said = in_settings("Measure W and H again, or give more ease (Ew).", TROUSERS)
    assert said == (
        'Measure W and H again, or give more ease (waist_ease of "trousers").'
    )


def test_measures_and_other_brackets_stay() -> None:
    for said in ("the waist (W) again", "two rows (crosses) of it", "(Ew) first"):
        assert in_settings(said, TROUSERS) == said


def test_two_symbols_at_once() -> None:
    strapless = [KINDS["strapless"](kind="strapless")]
    said = in_settings("Fold less out above the bust (cn, cm).", strapless)
    assert said == (
        'Fold less out above the bust (contour of "strapless", between of "strapless").'
    )


def sentences(file: Path) -> Iterator[str]:
    """Every text of a module that may reach her: what is no docstring."""
    tree = ast.parse(file.read_text("utf8"))
    docs = {id(n.value) for n in ast.walk(tree) if isinstance(n, ast.Expr)}
    for n in ast.walk(tree):
        if isinstance(n, ast.Constant) and isinstance(n.value, str):
            yield from () if id(n) in docs else (n.value,)


def test_every_symbol_in_advice_can_be_told() -> None:
    """A bare symbol is a measure's code or some feature's setting, so that a word takes
    its place."""
    symbols = {n.symbol for k in KINDS for n in KINDS[k].numbers().values()}
    fields = {field for k in KINDS for field in KINDS[k].model_fields}
    known = symbols | fields | set(measures()) | {"crosses", "notches"}
    bare = [
        (file.name, text)
        for file in HOME.rglob("*.py")
        for text in sentences(file)
        for m in re.finditer(r"[a-z] \(([A-Za-z ]{1,12}(?:, [A-Za-z ]{1,6})*)\)", text)
        if not set(m[1].split(", ")) <= known and "lining" not in text
    ]
    assert bare == []


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("lies ⁹⁄₁₆ in off; up to ⁹⁄₁₆ in is well", "a little over ⁹⁄₁₆ in off; up"),
        ("lies 1.4 cm off; up to 1.4 cm is well", "a little over 1.4 cm off; up to"),
        ("lies 1¼ in off; up to ¼ in is well", "lies 1¼ in off; up to ¼"),
        ("lies 1.5 cm off; up to 1.4 cm is well", "lies 1.5 cm off; up to 1.4"),
        ("is only 1 in wide; 1 in must stay", "is a little under 1 in wide; 1 in"),
        ("lies 4 mm off; 4 mm is the least", "lies 4 mm off; 4 mm is the least"),
        ("is only 2.4 cm wide; 2.5 cm must stay", "is only 2.4 cm wide; 2.5"),
    ],
)
def test_two_lengths_that_read_alike(said: str, told: str) -> None:
    assert told in told_apart(said)
