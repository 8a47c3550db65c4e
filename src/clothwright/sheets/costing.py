"""Cost sheet, quote and outcome as pages."""

import json
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from clothwright.cost import CostSheet, Outcome, Quote
from clothwright.cost.money import plain, shown
from clothwright.cost.sheet import Row
from clothwright.sheets.booklet import compile_to
from clothwright.sheets.making_order import duration
from clothwright.units import pretty_text


def write_cost_sheet(sheet: CostSheet, target: Path, *, letter: bool = False) -> None:
    """Write the cost sheet, for the house alone, as PDF. Raises SheetError."""
    compile_to("costing.typ", json.dumps(cost_told(sheet) | _paper(letter)), target)


def cost_text(sheet: CostSheet) -> list[str]:
    """The cost sheet as plain lines."""
    return _text(cost_told(sheet, say=str))


def cost_told(
    sheet: CostSheet, say: Callable[[str], str] = pretty_text
) -> dict[str, Any]:
    """Rows A to E with their sums, and the totals below, as they are printed; `say`
    writes their quantities."""
    rows = [
        {
            "letter": row.letter,
            "name": row.words.capitalize(),
            "lines": [
                [x.name, say(x.quantity), x.unit_price, _money(sheet, x.amount)]
                for x in sheet.lines
                if x.row is row
            ],
            "totals": ["", "", _money(sheet, sheet.total(row))],
        }
        for row in Row
        if any(x.row is row for x in sheet.lines)
    ]
    spent = float(sum(sheet.minutes.values()))
    return {
        **_head(sheet, "cost"),
        "note": f"Amounts in {sheet.rates.currency}; {duration(spent)} in all.",
        "columns": ["", "quantity", "price", sheet.rates.currency],
        "rows": rows,
        "totals": _totals(sheet),
    }


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
    compile_to("quote.typ", json.dumps(quote_told(quote) | _paper(letter)), target)


def quote_text(quote: Quote) -> list[str]:
    """The client's page as plain lines."""
    return _text(quote_told(quote))


def quote_told(quote: Quote) -> dict[str, Any]:
    """What the client reads, as it is printed."""
    sheet = quote.sheet
    lines = [[words, _money(sheet, amount), ""] for words, amount in quote.lines]
    totals = [
        [words, _money(sheet, amount), "strong" if strong else ""]
        for words, amount, strong in (
            ("Price", sheet.price, True),
            *(x for x in _to_pay(sheet, "tax") if x[1]),
        )
    ]
    if sheet.to_pay == sheet.price:
        totals = [t for t in totals if t[0] != "Price"]
    return {
        **_head(sheet, "quote"),
        "note": f"Stands until {_day(quote.until)}; amounts in {sheet.rates.currency}.",
        "day": _day(quote.day),
        "until": _day(quote.until),
        "currency": sheet.rates.currency,
        "rows": [],
        "totals": [*lines, *totals],
    }


def write_outcome(outcome: Outcome, target: Path, *, letter: bool = False) -> None:
    """Write estimate and actual, line by line, as PDF. Raises SheetError."""
    compile_to(
        "costing.typ", json.dumps(outcome_told(outcome) | _paper(letter)), target
    )


def outcome_text(outcome: Outcome) -> list[str]:
    """Estimate and actual as plain lines."""
    return _text(outcome_told(outcome))


def outcome_told(outcome: Outcome) -> dict[str, Any]:
    """Estimate and outcome of every line, as they are printed."""
    sheet = outcome.sheet
    rows = []
    for row in Row:
        both = [b for b in outcome.lines if b.line.row is row]
        if not both:
            continue
        came = sum((b.came_to for b in both), Decimal(0))
        estimated = sheet.total(row)
        rows.append(
            {
                "letter": row.letter,
                "name": row.words.capitalize(),
                "lines": [
                    [
                        b.line.name,
                        _money(sheet, b.line.amount),
                        "" if b.actual is None else _money(sheet, b.actual),
                        _difference(sheet, b.came_to - b.line.amount),
                    ]
                    for b in both
                ],
                "totals": [
                    _money(sheet, estimated),
                    _money(sheet, came),
                    _difference(sheet, came - estimated),
                ],
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
    return {
        **_head(sheet, "estimate and outcome"),
        "note": f"Amounts in {sheet.rates.currency}. An empty place came as estimated.",
        "columns": ["", "estimated", "came to", "difference"],
        "rows": rows,
        "totals": totals,
    }


def _head(sheet: CostSheet, what: str) -> dict[str, Any]:
    order = sheet.making.draft.order
    return {
        "title": f"{order.garment}: {what}",
        "subtitle": order.whose,
        "footer": order.footer,
        "garment": order.garment,
        "client": order.body.client,
        "number": f", order {order.number}" if order.number else "",
    }


def _paper(letter: bool) -> dict[str, Any]:
    return {"paper": "us-letter" if letter else "a4"}


def _difference(sheet: CostSheet, amount: Decimal) -> str:
    """More or less than estimated; nothing when it came as estimated."""
    return ("+" if amount > 0 else "") + _money(sheet, amount) if amount else ""


def _text(data: dict[str, Any]) -> list[str]:
    """A page's data as plain lines, amounts below each other."""
    note = ". ".join(t for t in (data["subtitle"], data["note"]) if t)
    lines = [data["title"], note]
    for row in data["rows"]:
        lines.append(_columns(f"{row['letter']}  {row['name']}", row["totals"]))
        lines += (_columns(f"   {name}", cells) for name, *cells in row["lines"])
    lines += (_columns(words, [amount]) for words, amount, _ in data["totals"])
    return lines


def _columns(name: str, cells: list[str]) -> str:
    *inner, last = cells
    line = f"{name:<34}{''.join(f'{c:>15}' for c in inner)}"
    return f"{line}{last:>{_LAST[len(inner)]}}".rstrip()


_LAST = {0: 42, 2: 12}
"""Width of the last column after so many others."""


def _money(sheet: CostSheet, amount: Decimal) -> str:
    return shown(amount, sheet.rates.places).replace("-", "−")


def _day(day: date) -> str:
    return f"{day:%-d %B %Y}"
