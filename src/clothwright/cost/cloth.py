"""The cloth of an order as it is bought: how much by its lay, at whose price."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from clothwright.cost.money import rounded
from clothwright.cost.rates import Rates
from clothwright.cost.sheet import YARD, ClothBought
from clothwright.order import Cloth
from clothwright.units import Unit

if TYPE_CHECKING:  # polygons take a moment to load
    from clothwright.lay.buy import ToBuy


def bought_by_lay(
    key: str, article: str, buy: ToBuy, cloth: Cloth, rates: Rates
) -> ClothBought:
    """What a lay says is bought of a cloth, by the length that the shop sells; at the
    order's price, or else at the house's for a metre. Raises CostError."""
    if cloth.price is None:
        metres = rounded(Decimal(repr(buy.cm)) / 100)
        return ClothBought(article, metres, rates.cloth_price(article, key))
    part, unit = buy.sold_by.value.split()
    parts = Fraction(part) * buy.steps
    amount = Decimal(parts.numerator) / parts.denominator
    return ClothBought(article, amount, cloth.price, unit)


def bought_as_said(
    key: str,
    article: str,
    amount: Decimal,
    cloth: Cloth | None,
    rates: Rates,
    unit: Unit,
    by: str = "m",
) -> ClothBought:
    """So much of a cloth (`by` "m" or "yd") at the order's price, or else at the
    house's. Raises CostError."""
    if cloth is None or cloth.price is None:
        metres = rounded(amount * YARD) if by == "yd" else amount
        return ClothBought(article, metres, rates.cloth_price(article, key))
    price, sold = cloth.price, cloth.sold(unit).unit
    if sold != by:
        price = rounded(price / YARD if sold == "yd" else price * YARD, rates.places)
    return ClothBought(article, amount, price, by)
