"""Sheets of an order whose client has no name: nothing is left dangling."""

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path

import pdfplumber
import pytest

from clothwright.cost import CostSheet, cost_sheet, demo_rates
from clothwright.cost.quote import quote
from clothwright.making import MakingOrder, making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.making.times import USUAL
from clothwright.order import draft
from clothwright.sheets.costing import cost_text, write_cost_sheet, write_quote
from clothwright.sheets.cutting_sheet import write_cutting_sheet
from clothwright.sheets.dimensions import write_dimensions
from clothwright.sheets.lesson import write_lesson
from clothwright.sheets.making_order import write_making_order
from clothwright.sheets.steps import write_steps
from finished import made

GARMENT = "Jersey top"


@cache
def nameless() -> MakingOrder:
    order = made("knit-top").draft.order
    body = replace(order.body, client="")
    return making_order(draft(replace(order, body=body, number="")))


def cost() -> CostSheet:
    return cost_sheet(nameless(), demo_rates(), ())


WRITERS: dict[str, Callable[[Path], object]] = {
    "cost": lambda to: write_cost_sheet(cost(), to),
    "quote": lambda to: write_quote(quote(cost(), date(2027, 2, 6)), to),
    "cutting": lambda to: write_cutting_sheet(cutting_sheet(nameless()), to),
    "making": lambda to: write_making_order(nameless(), USUAL, to),
    "dimensions": lambda to: write_dimensions(nameless().draft, to),
    "lesson": lambda to: write_lesson(nameless().draft, to),
    "steps": lambda to: write_steps(nameless().draft, to),
}


@pytest.mark.parametrize("name", WRITERS)
def test_no_comma_or_word_waits_for_a_name(name: str, tmp_path: Path) -> None:
    target = tmp_path / f"{name}.pdf"
    WRITERS[name](target)
    with pdfplumber.open(target) as pdf:
        lines = [x for p in pdf.pages for x in (p.extract_text() or "").splitlines()]
    heads = [x for x in lines if x.startswith((GARMENT, "For", "Measures", ".", ","))]
    assert heads
    for line in heads:
        assert not re.match(rf"{GARMENT},|For$|Measures of|[.,]", line), line
    if name not in ("quote", "lesson"):
        assert f"{GARMENT} 1 of" in " ".join(lines)


def test_the_cost_as_text_begins_with_its_note() -> None:
    assert cost_text(cost())[1].startswith("Amounts in EUR")
