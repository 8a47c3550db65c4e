"""Cloth as it is bought, by the metre or the yard, at whose price."""

from decimal import Decimal

from clothwright.cost import bought_as_said, bought_by_lay, demo_rates
from clothwright.lay import Spread, to_buy
from clothwright.order import Cloth, SoldBy
from clothwright.units import Unit

RATES = demo_rates()
PLAIN = Spread(width=70.0, bands=((0.0, 69.0),))


def test_yards_are_charged_by_the_yard() -> None:
    """1 1/8 yd at 20.00: 22.50. A lay of 95 cm, 4 cm of ends and 5 cm for cutting are
    104 cm; 1/8 yd is 11.43 cm, ten of them 114.3 (nine would be 102.87)."""
    cloth = Cloth(price=Decimal("20.00"), sold_by=SoldBy.EIGHTH_YARD)
    buy = to_buy(95.0, cloth, PLAIN, Unit.IN)
    got = bought_by_lay("shell", "ink crêpe", buy, cloth, RATES)
    assert (got.amount, got.unit, got.price) == (Decimal("1.25"), "yd", Decimal(20))
    assert got.metres == Decimal("1.143000")


def test_without_a_price_of_its_own_the_house_s_is_taken() -> None:
    buy = to_buy(95.0, Cloth(), PLAIN, Unit.CM)
    got = bought_by_lay("shell", "ink crêpe", buy, Cloth(), RATES)
    assert (got.amount, got.unit) == (Decimal("1.10"), "m")
    assert got.price == RATES.cloth["ink crêpe"]


def test_metres_said_by_hand_of_a_cloth_sold_by_the_yard() -> None:
    """20.00 a yard is 21.87 a metre: 20 / 0.9144 = 21.8723."""
    cloth = Cloth(price=Decimal("20.00"), sold_by=SoldBy.QUARTER_YARD)
    got = bought_as_said("shell", "crêpe", Decimal("1.5"), cloth, RATES, Unit.IN)
    assert (got.amount, got.unit, got.price) == (Decimal("1.5"), "m", Decimal("21.87"))


def test_yards_said_by_hand() -> None:
    """Of a cloth sold by the yard at its price; of one at 20.00 a metre at 18.29 a yard
    (20 × 0.9144 = 18.288); at the house's price in metres, 1.75 yd being 1.60 m."""
    amount = Decimal("1.75")
    for sold, price in ((SoldBy.EIGHTH_YARD, "20.00"), (SoldBy.TENTH_METRE, "18.29")):
        cloth = Cloth(price=Decimal("20.00"), sold_by=sold)
        got = bought_as_said("shell", "crêpe", amount, cloth, RATES, Unit.IN, "yd")
        assert (got.amount, got.unit, got.price) == (amount, "yd", Decimal(price))
    got = bought_as_said("lining", "lining", amount, None, RATES, Unit.IN, "yd")
    assert (got.amount, got.unit) == (Decimal("1.60"), "m")
