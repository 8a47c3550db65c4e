"""Rates: read, and refused in sentences that say what to write."""

from decimal import Decimal
from pathlib import Path

import pytest

from clothwright.cost import CostError, demo_rates, read_rates
from clothwright.cost.rates import rates_from_text
from clothwright.features.notions import Article
from clothwright.features.operations import Task
from clothwright.making.times import RANGES, USUAL

LEAST = 'currency = "EUR"\n[making]\nhour = 27.00\n'


def test_the_demo_s_house() -> None:
    """Rates of the demo's workroom and prices of its shop."""
    rates = demo_rates()
    assert (rates.currency, rates.hour) == ("EUR", Decimal("27.00"))
    assert [rates.overhead_percent, rates.handling_percent] == [35, 10]
    assert [rates.deposit_percent, rates.round_up_to] == [40, 1]
    assert rates.margin_percent is rates.markup_percent is None
    assert rates.notion(Article.BALL_BUTTON) == Decimal("0.55")
    assert rates.notion(Article.THREAD) == Decimal("2.80")
    assert rates.cloth_price("ink crêpe") == Decimal("18.40")
    assert rates.minutes[Task.NEW_BLOCK] == 75
    assert rates.minutes[Task.OWN_BLOCK] == 20


def test_every_task_has_a_usual_time_in_the_first_third() -> None:
    for task in Task:
        low, high = RANGES[task]
        assert low < high
        assert low <= USUAL[task] <= low + (high - low) / 2
        assert USUAL[task] == pytest.approx(low + (high - low) / 3, abs=0.5)


def test_marking_alone_takes_what_the_house_says_of_both() -> None:
    said = LEAST + '[minutes]\n"mark and interline" = 25\n'
    assert rates_from_text(said, "").minutes[Task.MARK_ALONE] == 25
    apart = rates_from_text(said + "mark = 15\n", "").minutes
    assert apart[Task.MARK] == 25 and apart[Task.MARK_ALONE] == 15


def test_what_is_left_out() -> None:
    rates = rates_from_text(LEAST, "rates.toml")
    assert rates.deposit_percent == rates.overhead_percent == 0
    assert rates.minutes[Task.DART] == 8
    with pytest.raises(CostError, match='write "ball button" = 1.50'):
        rates.notion(Article.BALL_BUTTON)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (LEAST + "[price]\nmargin_percent = 30\nmarkup_percent = 40\n", "not both"),
        (LEAST + "[price]\nmargin_percent = 100\n", "write less than 100"),
        (LEAST + "[price]\ndeposit_percent = 140\n", "write 0 to 100"),
        (LEAST + "[price]\nvalid_days = 0\n", "whole days"),
        (LEAST + "[price]\ntax_percent = -1\n", "write 0 or more"),
        (LEAST + "[price]\nmargn_percent = 3\n", "did you mean margin_percent?"),
        (LEAST + "overhead_percent = 3\noverhead_hour = 3\n", "not both"),
        (LEAST + '[notions]\n"bal button" = 1\n', "did you mean ball button?"),
        (LEAST + '[notions]\n"ball button" = "cheap"\n', "is no number"),
        (LEAST + "[notions]\nthread = nan\n", "is no number"),
        (LEAST + "[minutes]\ndart = true\n", "is no number"),
        (LEAST + "[minutes]\ndrat = 5\n", "did you mean dart?"),
        ("[making]\nhour = 27\n", "three capitals"),
        ('currency = "EUR"\n', "hour is missing"),
        ('currency = "EUR"\nmaking = 3\n', "write [making]"),
        ('currency = "EUR"\nplaces = 7\n[making]\nhour = 2\n', "write 0, 2 or 3"),
        ("currency = EUR\n", "miswritten"),
    ],
)
def test_faults_are_sentences(text: str, said: str) -> None:
    with pytest.raises(CostError) as refused:
        rates_from_text(text, "rates.toml")
    assert any(said in s for s in refused.value.sentences), refused.value.sentences
    assert all(s.startswith("rates.toml") for s in refused.value.sentences)


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(CostError, match="there is no such file"):
        read_rates(tmp_path / "none.toml")
