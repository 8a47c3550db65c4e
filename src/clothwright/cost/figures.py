"""The cost sheet, the quote and the outcome as plain data; money as decimal text."""

from typing import Any

from clothwright.cost.outcome import Outcome
from clothwright.cost.quote import Quote
from clothwright.cost.sheet import CostSheet, Row


def cost_figures(sheet: CostSheet) -> dict[str, Any]:
    """Every line and every total, by the letters of the sheet."""
    return {
        "currency": sheet.rates.currency,
        "lines": [
            {
                "row": line.row.letter,
                "name": line.name,
                "quantity": line.quantity,
                "unit_price": line.unit_price,
                "amount": str(line.amount),
            }
            for line in sheet.lines
        ],
        "minutes": {t.value: float(m) for t, m in sheet.minutes.items()},
        **{row.letter: str(sheet.total(row)) for row in Row},
        "F": str(sheet.full),
        "G": str(sheet.margin),
        "rounding": str(sheet.rounding),
        "H": str(sheet.price),
        "discount": str(sheet.discount),
        "I": str(sheet.tax),
        "to_pay": str(sheet.to_pay),
        "deposit": str(sheet.deposit),
        "balance": str(sheet.balance),
    }


def quote_figures(quote: Quote) -> dict[str, Any]:
    """What the client reads, and nothing else."""
    sheet = quote.sheet
    return {
        "currency": sheet.rates.currency,
        "day": quote.day.isoformat(),
        "until": quote.until.isoformat(),
        "lines": [[words, str(amount)] for words, amount in quote.lines],
        "price": str(sheet.price),
        "discount": str(sheet.discount),
        "tax": str(sheet.tax),
        "to_pay": str(sheet.to_pay),
        "deposit": str(sheet.deposit),
        "balance": str(sheet.balance),
    }


def outcome_figures(outcome: Outcome) -> dict[str, Any]:
    """Estimate and actual of every line, changes, and what is left."""
    return {
        "currency": outcome.sheet.rates.currency,
        "lines": [
            {
                "row": b.line.row.letter,
                "name": b.line.name,
                "estimated": str(b.line.amount),
                "actual": None if b.actual is None else str(b.actual),
            }
            for b in outcome.lines
        ],
        "changes": [[c.what, str(c.price)] for c in outcome.changes],
        "estimated": str(outcome.sheet.full),
        "actual": str(outcome.full),
        "price": str(outcome.price),
        "left": str(outcome.left),
    }
