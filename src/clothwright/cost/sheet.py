"""The cost sheet of an order: rows A to J (cutting and costing 4).

A materials: metres × price, and handling as a share of them; B notions; C making:
minutes × rate / 60; D other direct cost; E overhead; F full cost; G margin; H price;
I tax on the price after discount; J deposit and balance.
"""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from typing import NamedTuple

from clothwright.cost.money import by_margin, by_markup, plain, rounded, shown, up_to
from clothwright.cost.rates import Rates
from clothwright.features.notions import Notion
from clothwright.features.operations import Task
from clothwright.making import MakingOrder
from clothwright.making.cutting import bought, cutting_sheet
from clothwright.units import mixed

YARD = Decimal("0.9144")
"""Metres in a yard."""


class ClothBought(NamedTuple):
    """Cloth for an order: its name, how much is bought, and the price of one `unit`."""

    name: str
    amount: Decimal
    price: Decimal
    unit: str = "m"
    """"m" or "yd"."""

    @property
    def metres(self) -> Decimal:
        """What is bought, in metres."""
        return self.amount * YARD if self.unit == "yd" else self.amount


class Row(Enum):
    """Kinds of lines, by the letters of the sheet."""

    def __init__(self, letter: str, words: str) -> None:
        self.letter, self.words = letter, words

    MATERIALS = "A", "materials"
    NOTIONS = "B", "notions"
    MAKING = "C", "making"
    OTHER = "D", "other direct cost"
    OVERHEAD = "E", "overhead"


class Line(NamedTuple):
    """One line: what, how much of it, at what price, and what that comes to."""

    row: Row
    name: str
    quantity: str
    unit_price: str
    amount: Decimal


@dataclass(frozen=True)
class Plan:
    """What of an order the pattern cannot tell."""

    new_block: bool = False
    """Her block is drafted anew, and tried in a toile."""

    fittings: int = 1
    other: Mapping[str, Decimal] = field(default_factory=dict)
    """Dyeing, embroidery, a courier: name and amount."""

    discount_percent: Decimal = Decimal(0)


@dataclass(frozen=True)
class CostSheet:
    """An order's cost, worked out; amounts in the currency of the rates."""

    making: MakingOrder
    rates: Rates
    plan: Plan
    lines: tuple[Line, ...]
    minutes: Mapping[Task, Decimal]
    """Minutes of each task, in all."""

    def total(self, row: Row) -> Decimal:
        """Sum of the lines of a row."""
        return sum((x.amount for x in self.lines if x.row is row), Decimal(0))

    @property
    def full(self) -> Decimal:
        """F: the full cost."""
        return sum((x.amount for x in self.lines), Decimal(0))

    @property
    def margin(self) -> Decimal:
        """G: by markup on the cost or by margin of the price."""
        rates, price = self.rates, self.full
        if rates.margin_percent is not None:
            price = by_margin(price, rates.margin_percent)
        elif rates.markup_percent is not None:
            price = by_markup(price, rates.markup_percent)
        return self._round(price) - self.full

    @property
    def rounding(self) -> Decimal:
        """What the price goes up to the whole unit."""
        exact, unit = self.full + self.margin, self.rates.round_up_to
        return up_to(exact, unit) - exact if unit else Decimal(0)

    @property
    def price(self) -> Decimal:
        """H: the price before discount and tax."""
        return self.full + self.margin + self.rounding

    @property
    def discount(self) -> Decimal:
        """Taken off the price."""
        return self._round(self.price * self.plan.discount_percent / 100)

    @property
    def tax(self) -> Decimal:
        """I: on the price after discount."""
        after = self.price - self.discount
        return self._round(after * self.rates.tax_percent / 100)

    @property
    def to_pay(self) -> Decimal:
        """The price after discount, with tax."""
        return self.price - self.discount + self.tax

    @property
    def deposit(self) -> Decimal:
        """J: with the order."""
        return self._round(self.to_pay * self.rates.deposit_percent / 100)

    @property
    def balance(self) -> Decimal:
        """J: what is left to pay."""
        return self.to_pay - self.deposit

    def _round(self, amount: Decimal) -> Decimal:
        return rounded(amount, self.rates.places)


def cost_sheet(
    making: MakingOrder,
    rates: Rates,
    cloths: Iterable[ClothBought],
    plan: Plan | None = None,
) -> CostSheet:
    """The cost of an order: `cloths` are what is bought for it, `plan` what the pattern
    cannot tell. Raises CostError when a price is missing."""
    plan = plan or Plan()
    minutes = task_minutes(making, rates, plan)
    lines = [
        *_materials(tuple(cloths), rates, plan),
        *_notions(making, rates),
        *_making(minutes, rates),
        *(
            Line(Row.OTHER, name, "", "", rounded(amount, rates.places))
            for name, amount in plan.other.items()
        ),
    ]
    lines += _overhead(lines, minutes, rates)
    return CostSheet(making, rates, plan, tuple(lines), minutes)


def task_minutes(
    making: MakingOrder, rates: Rates, plan: Plan
) -> Mapping[Task, Decimal]:
    """Minutes of every task: before the making, then as they come in it."""
    counts: dict[Task, float] = {Task.MEASURE: 1}
    counts[Task.NEW_BLOCK if plan.new_block else Task.OWN_BLOCK] = 1
    if plan.new_block:
        counts[Task.TOILE] = 1
    if plan.fittings:
        counts[Task.FITTING] = plan.fittings
    for operation in making.operations:
        if operation.task is not None:
            task = operation.task
            counts[task] = counts.get(task, 0.0) + operation.count
    return {t: Decimal(repr(c)) * rates.minutes[t] for t, c in counts.items()}


def _materials(
    cloths: tuple[ClothBought, ...], rates: Rates, plan: Plan
) -> Iterator[Line]:
    if plan.new_block and cloths and not any(c.name == "toile" for c in cloths):
        shell = cloths[0]
        metres = rounded(shell.metres)
        cloths += (ClothBought("toile", metres, rates.cloth_price("toile")),)
    total = Decimal(0)
    for name, bought_, price, unit in cloths:
        amount = rounded(bought_ * price, rates.places)
        total += amount
        yield Line(
            Row.MATERIALS,
            name,
            _told(bought_, unit),
            shown(price, rates.places),
            amount,
        )
    if rates.handling_percent and total:
        share = rates.handling_percent
        amount = rounded(total * share / 100, rates.places)
        name = f"handling, {plain(share)} %"
        yield Line(Row.MATERIALS, name, "", "", amount)


def _told(amount: Decimal, unit: str) -> str:
    """A length of cloth as a shop tells it: "1.6 m", "1 5/8 yd"."""
    parts = Fraction(amount)
    if unit == "yd" and parts.denominator <= 8:
        return f"{mixed(parts)} yd"
    return f"{plain(amount)} {unit}"


def _notions(making: MakingOrder, rates: Rates) -> Iterator[Line]:
    for one in bought(cutting_sheet(making), float(rates.reel)):
        price = rates.notion(one.article)
        count, words = _quantity(one)
        amount = rounded(count * price, rates.places)
        yield Line(
            Row.NOTIONS, one.article.value, words, shown(price, rates.places), amount
        )


def _quantity(one: Notion) -> tuple[Decimal, str]:
    """Pieces, or metres up to the next tenth, as a shop cuts them."""
    if one.total is None or not one.article.by_length:
        return Decimal(one.count), f"{one.count}"
    tenths = math.ceil(one.total / 10 - 1e-9)
    metres = Decimal(tenths) / 10
    return metres, f"{metres} m"


def _making(minutes: Mapping[Task, Decimal], rates: Rates) -> Iterator[Line]:
    for task, spent in minutes.items():
        amount = rounded(spent * rates.hour / 60, rates.places)
        per = f"{plain(spent)} min"
        yield Line(
            Row.MAKING,
            task.value,
            per,
            f"{shown(rates.hour, rates.places)} an hour",
            amount,
        )


def _overhead(
    lines: Iterable[Line], minutes: Mapping[Task, Decimal], rates: Rates
) -> Iterator[Line]:
    making = sum((x.amount for x in lines if x.row is Row.MAKING), Decimal(0))
    spent = sum(minutes.values(), Decimal(0))
    if rates.overhead_percent:
        share = rates.overhead_percent
        amount = rounded(making * share / 100, rates.places)
        name = f"{plain(share)} % of the making"
        yield Line(Row.OVERHEAD, name, "", "", amount)
    if rates.overhead_hour:
        amount = rounded(spent * rates.overhead_hour / 60, rates.places)
        per = f"{plain(spent)} min"
        price = f"{shown(rates.overhead_hour, rates.places)} an hour"
        yield Line(Row.OVERHEAD, "by the hour", per, price, amount)
