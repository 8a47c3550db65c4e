"""Underlining (transformations 6): the shell's pieces cut once more, 0.15 less at the
sides, mounted before anything is sewn."""

import pytest

from bodies import P92, YSOLDE, ansur_women
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.linings.lining import Mode
from clothwright.features.linings.underlining import Parts, Underlining
from clothwright.lay.patterns import shapes_of
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import OrderError, draft, pattern
from orders import (
    closed_back,
    order,
    sleeved_features,
    straight_skirt,
    trouser_features,
)


def cut(body: Body, *features: Feature) -> dict[str, dict[str, str]]:
    d = draft(order(body, features))
    assert not d.failed, d.failures()
    pattern(d, words=False)
    cloths = cutting_sheet(making_order(d)).cloths
    return {k: {p.code: p.how for p in pieces} for k, pieces in cloths.items()}


@pytest.mark.parametrize("body", [P92, YSOLDE, *ansur_women()[::50]])
def test_the_bodice_is_cut_once_more(body: Body) -> None:
    """As often and in the same way as the shell, of every piece of the bodice; not
    sleeves, facings, nor what hangs on the waist."""
    cloths = cut(body, *sleeved_features(), Underlining())
    shell, under = cloths["shell"], cloths["underlining"]
    assert set(under) == {"FC", "FS", "BC", "BS"}
    assert all(shell[c] == how for c, how in under.items())
    assert list(cloths)[:2] == ["shell", "underlining"]


def test_skirts_and_all() -> None:
    both = cut(P92, *sleeved_features(), Underlining(parts=Parts.ALL))["underlining"]
    assert set(both) == {"FC", "FS", "BC", "BS", "PF", "PB"}
    skirt = cut(P92, *straight_skirt(), Underlining(parts=Parts.SKIRT))["underlining"]
    assert set(skirt) == {"SF", "SB"}
    with pytest.raises(OrderError, match='parts to "the skirt"'):
        draft(order(P92, (*straight_skirt(), Underlining())))
    legs = (*trouser_features(), Underlining(parts=Parts.SKIRT))
    none = draft(order(P92, legs))
    assert "UL1" in {f.code for f in none.findings} and none.failed


@pytest.mark.parametrize("lines", ["armhole", "darts"])
def test_it_is_mounted_before_anything_is_sewn(lines: str) -> None:
    top = closed_back(lines=lines, lining=Mode.BELOW_FACING)
    d = draft(order(P92, (*top, Underlining())))
    ops = [op.title for op in making_order(d).operations]
    at = ops.index("Mount the underlining")
    assert ops.index("Cut the underlining") < at
    assert at < ops.index("Stay-stitch necks and armholes")
    first = min(i for i, op in enumerate(making_order(d).operations) if op.seams)
    assert at < first
    (op,) = (o for o in making_order(d).operations if o.title == ops[at])
    assert ("dart" in " ".join(op.says)) == (lines == "darts")


def test_its_lay_is_of_the_same_pieces() -> None:
    d = draft(order(P92, (*sleeved_features(), Underlining())))
    p = pattern(d, words=False)
    shell, under = (shapes_of(p, c) for c in ("shell", "underlining"))
    of = {k.code: k for k in shell}
    assert {k.code for k in under} == {"FC", "FS", "BC", "BS"}
    assert all(of[k.code].count == k.count for k in under)
    assert all(of[k.code].outline == k.outline for k in under)
    assert d.numbers.ul_less == 0.15
