"""The cost of the demo's first order, worked out by hand from its rates."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from clothwright.cost import (
    ClothBought,
    CostError,
    CostSheet,
    Plan,
    cost_sheet,
    demo_rates,
    quote,
)
from clothwright.cost.sheet import Row
from clothwright.features.operations import Task
from clothwright.making import MakingOrder, making_order
from clothwright.making.cutting import bought, cutting_sheet
from finished import made

BOUGHT = (
    ClothBought("ink crêpe", Decimal("1.6"), Decimal("18.40")),
    ClothBought("lining", Decimal("0.3"), Decimal("7.20")),
    ClothBought("interlining", Decimal("0.6"), Decimal("6.80")),
)


@cache
def top() -> MakingOrder:
    return making_order(made("peplum-top").draft)


def first() -> CostSheet:
    """Order 1: a new block with its toile, one fitting."""
    return cost_sheet(top(), demo_rates(), BOUGHT, Plan(new_block=True))


def amounts(sheet: CostSheet, row: Row) -> dict[str, Decimal]:
    return {x.name: x.amount for x in sheet.lines if x.row is row}


def test_materials() -> None:
    """1.6 × 18.40 = 29.44; 0.3 × 7.20 = 2.16; 0.6 × 6.80 = 4.08; the toile as long as
    the shell, 1.6 × 4.10 = 6.56; 10 % of 42.24 = 4.224."""
    assert amounts(first(), Row.MATERIALS) == {
        "ink crêpe": Decimal("29.44"),
        "lining": Decimal("2.16"),
        "interlining": Decimal("4.08"),
        "toile": Decimal("6.56"),
        "handling, 10 %": Decimal("4.22"),
    }
    assert first().total(Row.MATERIALS) == Decimal("46.46")


def test_notions() -> None:
    """22 loops, so 23 ball buttons × 0.55 = 12.65. Tape (rows 32, 37 of the worked
    example): 2 × 0.99 × 28.1638 + 28 × 2.54 = 126.88 cm, 1.3 m × 0.60 = 0.78. One hook
    at the waist 0.20. Thread: 147 m, 2 reels × 2.80 = 5.60."""
    tape = 2 * 0.99 * 28.1638 + 28 * 2.54
    assert tape == pytest.approx(126.88, abs=0.01)
    every = {one.article.value: one for one in bought(cutting_sheet(top()))}
    assert every["stay tape"].total == pytest.approx(tape, abs=0.05)
    assert 100 < cutting_sheet(top()).metres < 200
    assert amounts(first(), Row.NOTIONS) == {
        "ball button": Decimal("12.65"),
        "stay tape": Decimal("0.78"),
        "hook and eye": Decimal("0.20"),
        "thread": Decimal("5.60"),
    }


MINUTES = {
    Task.MEASURE: 27,  # 20 + (40 − 20)/3 = 26.7
    Task.NEW_BLOCK: 75,  # the house's own
    Task.TOILE: 140,  # 90 + 150/3
    Task.FITTING: 40,  # 30 + 30/3
    Task.CUT: 50,  # 30 + 60/3
    Task.CUT_LINING: 7,  # a quarter of 20 + 25/3 = 28: the panel behind alone
    Task.MARK: 33,  # 20 + 40/3
    Task.STAY: 3 * 9,  # necks and armholes, slanted edges, waist
    Task.PANEL: 4 * 20,  # 15 + 15/3; front and back, left and right
    Task.BAG: 15,
    Task.LOOP: 22 * 5,  # 4 + 4/3 = 5.3; 11 a side (row 33)
    Task.SEAMS: 3 * 10,  # shoulders, sides, peplum sides: half of 15 + 15/3
    Task.FACE: 2 * 25,  # 20 + 15/3; neck with slanted edges, armholes
    Task.NARROW_HEM: 12,
    Task.WAIST: 20,
    Task.BY_HAND: 2 * 15,  # facing tacked, panel behind felled
    Task.BUTTON: 22 * 3,
    Task.HOOK: 4,
    Task.CIRCLE_HEM: 70,  # 45 + 75/3
    Task.FINISH: 28,  # 20 + 25/3
}


def test_minutes_are_those_of_the_garment() -> None:
    assert first().minutes == MINUTES
    assert sum(MINUTES.values()) == 914


def test_price_deposit_and_balance() -> None:
    """Making 914 × 27/60 = 411.30; overhead 35 % = 143.955, half up 143.96; F = 46.46 +
    19.23 + 411.30 + 143.96 = 620.95; no margin; up to 621; deposit 40 % = 248.40."""
    sheet = first()
    assert sheet.total(Row.MAKING) == Decimal("411.30")
    assert sheet.total(Row.OVERHEAD) == Decimal("143.96")
    assert sheet.full == Decimal("620.95")
    assert sheet.margin == 0
    assert sheet.rounding == Decimal("0.05")
    assert sheet.price == sheet.to_pay == Decimal(621)
    assert sheet.deposit == Decimal("248.40")
    assert sheet.balance == Decimal("372.60")


def test_the_quote_adds_up_and_shows_no_rate() -> None:
    """621 − 46.46 − 19.23 = 555.31 for the making; 30 days from 6 February."""
    told = quote(first(), date(2027, 2, 6))
    assert told.lines == (
        ("Cloth", Decimal("46.46")),
        ("Notions", Decimal("19.23")),
        ("Making, fittings included", Decimal("555.31")),
    )
    assert told.until == date(2027, 3, 8)


def test_tax_is_on_the_price_after_discount() -> None:
    """621 less 10 % = 558.90; 20 % of that = 111.78."""
    rates = replace(demo_rates(), tax_percent=Decimal(20))
    plan = Plan(new_block=True, discount_percent=Decimal(10))
    sheet = cost_sheet(top(), rates, BOUGHT, plan)
    assert sheet.discount == Decimal("62.10")
    assert sheet.tax == Decimal("111.78")
    assert sheet.to_pay == Decimal("670.68")


def test_overhead_by_the_hour() -> None:
    """914 min × 12.00/60 = 182.80."""
    rates = replace(
        demo_rates(), overhead_percent=Decimal(0), overhead_hour=Decimal(12)
    )
    sheet = cost_sheet(top(), rates, BOUGHT, Plan(new_block=True))
    assert sheet.total(Row.OVERHEAD) == Decimal("182.80")


def test_a_missing_price_is_a_sentence() -> None:
    rates = replace(demo_rates(), notions={})
    with pytest.raises(CostError, match='price for stay tape; write "stay tape"'):
        cost_sheet(top(), rates, BOUGHT)


percents = st.decimals(0, 90, places=1)
money = st.decimals(0, 200, places=2)


@settings(max_examples=80)
@given(
    metres=st.decimals("0.1", 9, places=1),
    price=money,
    hour=money,
    overhead=percents,
    handling=percents,
    margin=st.none() | percents,
    markup=percents,
    tax=percents,
    deposit=percents,
    discount=percents,
    up=st.sampled_from((0, 1, 5)),
)
def test_totals_are_the_sums_of_rounded_lines(
    metres: Decimal,
    price: Decimal,
    hour: Decimal,
    overhead: Decimal,
    handling: Decimal,
    margin: Decimal | None,
    markup: Decimal,
    tax: Decimal,
    deposit: Decimal,
    discount: Decimal,
    up: int,
) -> None:
    rates = replace(
        demo_rates(),
        hour=hour,
        overhead_percent=overhead,
        handling_percent=handling,
        margin_percent=margin,
        markup_percent=markup if margin is None else None,
        round_up_to=Decimal(up),
        tax_percent=tax,
        deposit_percent=deposit,
    )
    cloth = (ClothBought("shell", metres, price),)
    plan = Plan(discount_percent=discount)
    sheet = cost_sheet(top(), rates, cloth, plan)
    cent = Decimal("0.01")
    assert all(x.amount == x.amount.quantize(cent) for x in sheet.lines)
    assert sheet.full == sum(sheet.total(row) for row in Row)
    before = sheet.full + sheet.margin
    assert 0 <= sheet.price - before < max(Decimal(up), cent)
    if up:
        assert sheet.price % up == 0
    if margin is None:
        assert abs(before - sheet.full * (1 + markup / 100)) <= cent / 2
    else:  # what is kept is its share of the price, to a cent
        assert abs(sheet.margin - before * margin / 100) <= cent
    assert sheet.deposit + sheet.balance == sheet.to_pay
    told = quote(sheet, date(2027, 2, 6))
    assert sum(amount for _, amount in told.lines) == sheet.price


def test_what_has_no_interlining_is_marked_alone() -> None:
    knit = {
        x.name: x.amount
        for x in cost_sheet(
            making_order(made("knit-top").draft), demo_rates(), ()
        ).lines
        if x.row is Row.MAKING
    }
    assert "mark" in knit and "mark and interline" not in knit
    faced = {x.name for x in first().lines}
    assert "mark and interline" in faced and "mark" not in faced
