"""The cloths of an order: the demo's as its scenario has them, and the short way."""

from decimal import Decimal
from pathlib import Path

import pytest

from clothwright.order import Cloth, Fold, SoldBy
from clothwright.order.cloths import read_cloths
from clothwright.units import Unit
from finished import made


def test_the_demo_is_told_its_cloths() -> None:
    """Demo scenario §3: widths, selvedges, shrinkage, prices."""
    cloths = made("peplum-top").draft.order.cloths
    assert [c.width for c in cloths.values()] == [140.0, 138.0, 90.0]
    shell = cloths["shell"]
    assert shell.usable == 138.0
    assert shell.price == Decimal("18.40")
    assert shell.sold_by is SoldBy.TENTH_METRE
    assert shell.growth == (1.0, 1.0)  # steamed, so never grown as well (§1.2)
    oat = made("zip-top").draft.order.shell
    assert oat.nap
    assert oat.growth == pytest.approx((1 / 0.98, 1 / 0.99), abs=1e-12)  # §1.2, exact
    assert all(p.nap for p in made("zip-top").drawn.pieces)


def test_the_short_way() -> None:
    table = {"cloth": "tweed", "cloth_width": "54 1/4", "nap": True}
    cloths, faults = read_cloths(table, "order", Unit.IN)
    assert not faults
    told = {"shell": {"name": "tweed", "width": "54 1/4", "selvedge": 0, "nap": True}}
    long, _ = read_cloths({"cloths": told}, "order", Unit.IN)
    assert cloths == long
    assert cloths["shell"].usable == pytest.approx(54.25 * 2.54)
    assert read_cloths({}, "order", Unit.CM) == ({"shell": Cloth()}, [])


def test_shops_sell_by_parts_of_a_metre_or_a_yard() -> None:
    """1 yd = 0.9144 m exactly (cutting and costing §2.9)."""
    steps = {s.value: s.step for s in SoldBy}
    assert steps == pytest.approx(
        {"0.1 m": 10.0, "0.25 m": 25.0, "1/8 yd": 11.43, "1/4 yd": 22.86}, abs=1e-9
    )
    assert Cloth().sold(Unit.IN) is SoldBy.EIGHTH_YARD
    assert Cloth().sold(Unit.CM) is SoldBy.TENTH_METRE
    assert SoldBy.QUARTER_YARD.unit == "yd"


def test_every_setting_is_told_in_the_docs() -> None:
    docs = (Path(__file__).parents[2] / "docs" / "orders.md").read_text("utf8")
    missing = [f for f in Cloth.model_fields if f"`{f}`" not in docs]
    assert not missing
    assert not [f.value for f in Fold if f'`"{f.value}"`' not in docs]
    assert not [s.value for s in SoldBy if f'`"{s.value}"`' not in docs]
