"""Cost: what an order costs to make, what it is sold for, and how it came out.

Terminology
    rates     a house's own file (TOML): currency, prices of notions, rate of making,
              overhead, margin or markup, deposit, minutes of each task.
    line      quantity × unit price, rounded by itself; a total is the sum of its lines.
    row       lines of one kind, A to E; F is their sum, the full cost.
    quote     what the client reads: what she pays for, and no rate of the house.
    outcome   the estimate beside what it really took, and changes agreed later.

Money is `Decimal`, rounded half up to the currency's places (cutting and costing 4).
"""

from clothwright.cost.cloth import bought_as_said, bought_by_lay
from clothwright.cost.money import CostError
from clothwright.cost.outcome import (
    Outcome,
    actual_from_text,
    outcome,
    read_actual,
)
from clothwright.cost.quote import Quote, quote
from clothwright.cost.rates import (
    Rates,
    demo_rates,
    demo_rates_text,
    rates_from_text,
    read_rates,
)
from clothwright.cost.sheet import ClothBought, CostSheet, Plan, cost_sheet

__all__ = [
    "ClothBought",
    "CostError",
    "CostSheet",
    "Outcome",
    "Plan",
    "Quote",
    "Rates",
    "actual_from_text",
    "bought_as_said",
    "bought_by_lay",
    "cost_sheet",
    "demo_rates",
    "demo_rates_text",
    "outcome",
    "quote",
    "rates_from_text",
    "read_actual",
    "read_rates",
]
