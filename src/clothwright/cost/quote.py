"""The quote: what the client pays for, and no rate of the house."""

from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from clothwright.cost.sheet import CostSheet, Row


@dataclass(frozen=True)
class Quote:
    """Lines that add up to the price; then discount, tax, deposit, balance."""

    sheet: CostSheet
    day: date
    lines: tuple[tuple[str, Decimal], ...]

    @property
    def until(self) -> date:
        """The last day on which it stands."""
        return self.day + timedelta(days=self.sheet.rates.valid_days)


def quote(sheet: CostSheet, day: date) -> Quote:
    """The quote of a cost sheet, given on a day.

    Making holds labour, overhead, margin and what the price was rounded up by.
    """
    cloth, notions, other = (
        sheet.total(r) for r in (Row.MATERIALS, Row.NOTIONS, Row.OTHER)
    )
    making = "Making, fittings included" if sheet.plan.fittings else "Making"
    lines = [
        ("Cloth", cloth),
        ("Notions", notions),
        (making, sheet.price - cloth - notions - other),
        *((x.name, x.amount) for x in sheet.lines if x.row is Row.OTHER),
    ]
    return Quote(sheet, day, tuple((w, amount) for w, amount in lines if amount))
