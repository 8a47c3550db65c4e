"""Cloth to buy, by the arithmetic of cutting and costing §1.2, 1.4, 2.7 and 2.9."""

from decimal import Decimal

import pytest

from clothwright.lay import spread, to_buy
from clothwright.order import Cloth, Fold, SoldBy
from clothwright.units import Unit

PLAIN = Cloth(width=140.0, price=Decimal("18.40"), sold_by=SoldBy.TENTH_METRE)


def parts(
    length: float, cloth: Cloth, fold: Fold = Fold.LENGTHWISE, *, toile: bool = True
) -> list[float]:
    bought = to_buy(length, cloth, spread(cloth, fold), Unit.CM, toile=toile)
    assert bought.cm == pytest.approx(sum(a.cm for a in bought.parts), abs=1e-9)
    assert all(a.reason for a in bought.parts)
    return [a.cm for a in bought.parts[:-1]]


def test_each_addition_has_its_amount() -> None:
    # 2 cm lost at either end (§2.7), 3 % and 5 cm at least (§2.9)
    assert parts(100.0, PLAIN) == pytest.approx([100, 4, 5])
    assert parts(300.0, PLAIN) == pytest.approx([300, 4, 9])
    # 10 cm when no toile was made
    assert parts(300.0, PLAIN, toile=False) == pytest.approx([300, 4, 9, 10])
    # 5 % for a cloth that is shrunk first, and its own shrinkage where that is more
    steamed = PLAIN.model_copy(update={"steamed": True, "shrink_warp": 3.0})
    assert parts(200.0, steamed) == pytest.approx([200, 4, 6, 10])
    viscose = steamed.model_copy(update={"shrink_warp": 10.0})
    assert parts(180.0, viscose) == pytest.approx([180, 4, 5.4, 20])
    # never grown and shrunk both (§1.2): the pieces of this one grow
    grown = PLAIN.model_copy(update={"shrink_warp": 4.0})
    assert parts(200.0, grown) == pytest.approx([200, 4, 6])
    # stripes: 5 cm at either end, and one repeat (§2.7, §1.4)
    striped = PLAIN.model_copy(update={"repeat_warp": 6.0})
    assert parts(200.0, striped) == pytest.approx([200, 10, 6, 6])
    # folded across it is twice the lay
    assert parts(100.0, PLAIN, Fold.ACROSS) == pytest.approx([200, 4, 6])


def test_u12_pieces_grow_by_their_cloth_s_shrinkage() -> None:
    """Check values U12: net length 100, shrinkage 4 %: cut 104.17."""
    cloth = Cloth(width=140.0, shrink_warp=4.0)
    assert 100 * spread(cloth, Fold.SINGLE).growth[0] == pytest.approx(104.17, abs=0.01)


@pytest.mark.parametrize(
    ("sold", "told", "cm", "price"),
    [
        # 131 + 4 + 5 = 140 cm is needed
        (SoldBy.TENTH_METRE, "1.4 m", 140.0, "25.76"),
        (SoldBy.QUARTER_METRE, "1.50 m", 150.0, "27.60"),
        (SoldBy.EIGHTH_YARD, "1 5/8 yd", 148.59, "29.90"),
        (SoldBy.QUARTER_YARD, "1 3/4 yd", 160.02, "32.20"),
    ],
)
def test_up_to_what_the_shop_sells(
    sold: SoldBy, told: str, cm: float, price: str
) -> None:
    """§2.9; 1 yd = 91.44 cm exactly; prices by hand."""
    cloth = PLAIN.model_copy(update={"sold_by": sold})
    bought = to_buy(131.0, cloth, spread(cloth, Fold.SINGLE), Unit.CM)
    assert bought.told == told
    assert bought.cm == pytest.approx(cm, abs=1e-9)
    assert str(bought.price) == price


def test_money_is_rounded_half_up() -> None:
    cloth = PLAIN.model_copy(update={"price": Decimal("0.05")})
    bought = to_buy(21.0, cloth, spread(cloth, Fold.SINGLE), Unit.CM)
    assert bought.cm == 30.0
    assert bought.price == Decimal("0.02")  # 0.015
    free = PLAIN.model_copy(update={"price": None})
    assert to_buy(21.0, free, spread(free, Fold.SINGLE), Unit.CM).price is None


def test_whole_and_small_yards() -> None:
    cloth = PLAIN.model_copy(update={"sold_by": SoldBy.QUARTER_YARD})
    on = spread(cloth, Fold.SINGLE)
    assert to_buy(80.0, cloth, on, Unit.IN).told == "1 yd"
    assert to_buy(50.0, cloth, on, Unit.IN).told == "3/4 yd"
