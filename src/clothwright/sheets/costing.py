"""Cost sheet, quote and outcome as pages."""

import json
from datetime import date
from decimal import Decimal
from pathlib import Path

from clothwright.cost import CostSheet, Outcome, Quote
from clothwright.cost.money import plain, shown
from clothwright.cost.sheet import Row
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.making_order import duration


def write_cost_sheet(sheet: CostSheet, target: Path, *, letter: bool = False) -> None:
    """Write the cost sheet, for the house alone, as PDF. Raises SheetError."""
    rows = [
        {
            "letter": row.letter,
            "name": row.words.capitalize(),
            "lines": [
                [x.name, x.quantity, x.unit_price, _money(sheet, x.amount)]
                for x in sheet.lines
                if x.row is row
            ],
            "total": _money(sheet, sheet.total(row)),
        }
        for row in Row
        if any(x.row is row for x in sheet.lines)
    ]
    spent = float(sum(sheet.minutes.values()))
    data = {
        **_head(sheet, "cost", letter),
        "note": f"Amounts in {sheet.rates.currency}; {duration(spent)} in all.",
        "columns": ["", "quantity", "price", sheet.rates.currency],
        "rows": rows,
        "totals": _totals(sheet),
    }
    compile_to("costing.typ", json.dumps(data), target)


_TO_PAY = "To pay"


def _totals(sheet: CostSheet) -> list[list[str]]:
    """F to J; what comes to nothing is left out."""
    rates = sheet.rates
    margin = "G  margin"
    if rates.margin_percent is not None:
        margin += f", {plain(rates.margin_percent)} % of the price"
    elif rates.markup_percent is not None:
        margin += f", {plain(rates.markup_percent)} % on the cost"
    unit = f"rounded up to {plain(rates.round_up_to)} {rates.currency}"
    lines: list[tuple[str, Decimal, bool]] = [
        ("F  full cost", sheet.full, True),
        (margin, sheet.margin, False),
        (unit, sheet.rounding, False),
        ("H  price", sheet.price, True),
        *_to_pay(sheet, "I  tax"),
    ]
    if sheet.to_pay == sheet.price:
        lines = [x for x in lines if x[0] != _TO_PAY]
    return [
        [words, _money(sheet, amount), "strong" if strong else ""]
        for words, amount, strong in lines
        if amount
    ]


def _to_pay(sheet: CostSheet, tax: str) -> list[tuple[str, Decimal, bool]]:
    rates = sheet.rates
    off = f"discount, {plain(sheet.plan.discount_percent)} %"
    share = f"{plain(rates.deposit_percent)} %"
    return [
        (off, -sheet.discount, False),
        (f"{tax}, {plain(rates.tax_percent)} %", sheet.tax, False),
        (_TO_PAY, sheet.to_pay, True),
        (f"deposit with the order, {share}", sheet.deposit, False),
        ("balance when it is handed over", sheet.balance, False),
    ]


def write_quote(quote: Quote, target: Path, *, letter: bool = False) -> None:
    """Write the client's page as PDF. Raises SheetError."""
    sheet = quote.sheet
    lines = [[words, _money(sheet, amount)] for words, amount in quote.lines]
    totals = [
        [words, _money(sheet, amount), "strong" if strong else ""]
        for words, amount, strong in (
            ("Price", sheet.price, True),
            *(x for x in _to_pay(sheet, "tax") if x[1]),
        )
    ]
    if sheet.to_pay == sheet.price:
        totals = [t for t in totals if t[0] != "Price"]
    data = {
        **_head(sheet, "quote", letter),
        "day": _day(quote.day),
        "until": _day(quote.until),
        "currency": sheet.rates.currency,
        "lines": lines,
        "totals": totals,
    }
    compile_to("quote.typ", json.dumps(data), target)


def write_outcome(outcome: Outcome, target: Path, *, letter: bool = False) -> None:
    """Write estimate and actual, line by line, as PDF. Raises SheetError."""
    sheet = outcome.sheet
    rows = []
    for row in Row:
        both = [b for b in outcome.lines if b.line.row is row]
        if not both:
            continue
        came = sum((b.came_to for b in both), Decimal(0))
        rows.append(
            {
                "letter": row.letter,
                "name": row.words.capitalize(),
                "lines": [
                    [
                        b.line.name,
                        _money(sheet, b.line.amount),
                        "" if b.actual is None else _money(sheet, b.actual),
                        _money(sheet, b.came_to - b.line.amount)
                        if b.came_to != b.line.amount
                        else "",
                    ]
                    for b in both
                ],
                "total": _money(sheet, came),
            }
        )
    totals = [
        ["estimated cost", _money(sheet, sheet.full), ""],
        ["what it cost", _money(sheet, outcome.full), "strong"],
        ["price as quoted", _money(sheet, sheet.price), ""],
        *([f"change: {c.what}", _money(sheet, c.price), ""] for c in outcome.changes),
        ["price with changes", _money(sheet, outcome.price), "strong"],
        ["left of it", _money(sheet, outcome.left), "strong"],
    ]
    data = {
        **_head(sheet, "estimate and outcome", letter),
        "note": f"Amounts in {sheet.rates.currency}. An empty place came as estimated.",
        "columns": ["", "estimated", "came to", "difference"],
        "rows": rows,
        "totals": totals,
    }
    compile_to("costing.typ", json.dumps(data), target)


def _head(sheet: CostSheet, what: str, letter: bool) -> dict[str, object]:
    order = sheet.making.draft.order
    return {
        "title": f"{order.garment}: {what}",
        "subtitle": f"{order.body.client}, order {order.number}".strip(", "),
        "footer": f"{order.garment}, {order.body.client}",
        "paper": "us-letter" if letter else "a4",
        "garment": order.garment,
        "client": order.body.client,
        "number": f", order {order.number}" if order.number else "",
    }


def _money(sheet: CostSheet, amount: Decimal) -> str:
    return shown(amount, sheet.rates.places).replace("-", "−")


def _day(day: date) -> str:
    return f"{day:%-d %B %Y}"
