"""Cautions: printed where they apply, deferring to the rules in force."""

from dataclasses import replace

import pytest

from bodies import P92
from clothwright.features.openings.loops import Loops, Rows
from clothwright.making import making_order
from clothwright.making.figures import making_figures
from clothwright.making.times import USUAL
from clothwright.order import OrderError, draft, pattern
from clothwright.order.file import order_from_text
from clothwright.order.wearer import Use, Wearer
from finished import made
from orders import main_features, order, sleeved_features, swapped


def first_page(wearer: Wearer, use: Use = Use.DAY, *, loops: bool = True) -> str:
    features = main_features() if loops else sleeved_features()
    wanted = replace(order(P92, features), wearer=wearer, use=use)
    return " ".join(pattern(draft(wanted), words=False).drawn.cautions)


def test_a_child_s_loops_are_to_be_designed_out() -> None:
    said = first_page(Wearer.CHILD)
    assert "Design them out" in said
    assert "rules in force" in said
    assert "pulled off" in said
    assert "under three" in first_page(Wearer.UNDER_THREE)


def test_an_adult_s_garment_says_less() -> None:
    said = first_page(Wearer.ADULT)
    assert "hazard on children's clothes" in said
    assert "For a child" not in said
    assert "children" not in first_page(Wearer.ADULT, loops=False)


def test_a_child_s_hook_is_a_small_part() -> None:
    said = first_page(Wearer.CHILD, loops=False)
    assert "pulled off" in said
    assert "loops" not in said


def test_nightwear_and_flame() -> None:
    assert "open flame" in first_page(Wearer.ADULT, Use.NIGHTWEAR)
    assert "open flame" not in first_page(Wearer.ADULT)


def test_no_caution_claims_that_a_rule_is_met() -> None:
    for wearer in Wearer:
        said = first_page(wearer, Use.NIGHTWEAR).lower()
        for claim in ("complies", "compliant", "conforms", "safe", "approved"):
            assert claim not in said


def test_work_that_can_hurt_is_cautioned_where_it_is_done() -> None:
    told = making_figures(making_order(made("peplum-top").draft), USUAL)
    by_work: dict[str, str] = {}
    for op in told["operations"]:
        said = " ".join(op["cautions"])
        by_work[op["work"]] = by_work.get(op["work"], "") + said
    assert "rotary blade" in by_work["cut out"]
    assert "Iron off" in by_work["interline"]
    assert "needles" in by_work["press, label, inspect"]
    assert "rotary" not in by_work["sides"]


def test_lacing_has_no_small_parts_but_a_cord() -> None:
    laced = swapped(main_features(), Loops(rows=Rows.LACING))
    wanted = replace(order(P92, laced), wearer=Wearer.CHILD)
    assert "loops, cords and ties" in " ".join(
        pattern(draft(wanted), words=False).drawn.cautions
    )


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('wearer = "dog"', 'write "adult", "child" or "child under three"'),
        ("wearer = 3", 'write "adult", "child" or "child under three"'),
        ('use = "swim"', 'write "day" or "nightwear"'),
    ],
)
def test_words_that_are_not_known(line: str, said: str) -> None:
    from importlib import resources

    folder = resources.files("clothwright.demo")
    with resources.as_file(folder) as path:
        text = (path / "peplum-top.toml").read_text(encoding="utf-8")
        with pytest.raises(OrderError, match=said):
            order_from_text(f"{line}\n{text}", "top.toml", path)
        good = order_from_text(f'wearer = "child"\nuse = "nightwear"\n{text}', "", path)
    assert (good.wearer, good.use) == (Wearer.CHILD, Use.NIGHTWEAR)
