"""Estimate and outcome, line by line, worked out by hand."""

from decimal import Decimal
from pathlib import Path

import pytest

from clothwright.cost import CostError, outcome, read_actual
from clothwright.cost.sheet import Row
from cost.test_sheet import first

TOOK = """
[minutes]
loop = 140
[spent]
"ink crêpe" = 31.28
[[change]]
what = "peplum 1/2 in longer"
price = 12.00
[[change]]
what = "plain hem"
price = -4.00
"""


def taken(text: str, folder: Path) -> Path:
    path = folder / "actual.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_what_it_came_to(tmp_path: Path) -> None:
    """Loops 140 min for 110: 63.00 for 49.50, so making 424.80; overhead 35 % of it
    148.68; crêpe 31.28 for 29.44: full 620.95 + 13.50 + 4.72 + 1.84 = 641.01. Price
    621 + 12 − 4 = 629: 12.01 short."""
    came = outcome(first(), read_actual(taken(TOOK, tmp_path)))
    by_name = {b.line.name: b for b in came.lines}
    assert by_name["loop"].line.amount == Decimal("49.50")
    assert by_name["loop"].actual == Decimal("63.00")
    assert by_name["lining"].actual is None
    overhead = [b for b in came.lines if b.line.row is Row.OVERHEAD]
    assert [b.actual for b in overhead] == [Decimal("148.68")]
    assert came.full == Decimal("641.01")
    assert came.price == Decimal("629.00")
    assert came.left == Decimal("-12.01")


def test_the_estimate_stands_where_nothing_is_said(tmp_path: Path) -> None:
    came = outcome(first(), read_actual(taken("", tmp_path)))
    assert came.full == first().full
    assert all(b.actual is None for b in came.lines)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[minutes]\nlop = 3\n", "did you mean loop?"),
        ('[minutes]\n"concealed zip" = 3\n', "the estimate has no concealed zip"),
        ('[spent]\n"oat" = 3\n', "the estimate has no oat"),
        ('[spent]\nlining = "much"\n', "is no amount"),
        ("[spent]\nlining = -2\n", "is no amount"),
        ("minutes = 3\n", "write [minutes]"),
        ("hours = 3\n", "hours is not known here"),
        ('[[change]]\nwhat = "longer"\n', "each change under its own"),
        ("[minutes\n", "miswritten"),
    ],
)
def test_faults_are_sentences(text: str, said: str, tmp_path: Path) -> None:
    with pytest.raises(CostError) as refused:
        outcome(first(), read_actual(taken(text, tmp_path)))
    assert any(said in s for s in refused.value.sentences), refused.value.sentences
