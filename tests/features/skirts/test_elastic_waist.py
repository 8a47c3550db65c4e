"""Elastic in a casing at a gathered waist (transformations §8)."""

import pytest
from shapely.geometry import Polygon

from bodies import P80, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.skirts.circle_skirt import CircleSkirt
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.gathered_skirt import GatheredSkirt, Tiers
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waistband import Waistband
from clothwright.making.cutting import bought, cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, draft, pattern
from orders import order, refused

MM = 0.1


def made(*more: Feature, body: Body = P92, gathers: float = 2.0) -> Draft:
    skirt = GatheredSkirt(gathers=gathers)
    return draft(order(body, (skirt, *(more or (ElasticWaist(),)))))


@pytest.mark.parametrize("body", [P80, P92, P116, THEA], ids=lambda b: b.client)
@pytest.mark.parametrize("tiers", [Tiers.ONE, Tiers.THREE])
def test_casing_and_elastic(tiers: Tiers, body: Body) -> None:
    """Casing elastic + 0.4; elastic W less 8 in 100; the front is longer by the casing
    alone; cut lines hold their nets (shapely)."""
    skirt = GatheredSkirt(tiers=tiers)
    it = pattern(draft(order(body, (skirt, ElasticWaist()))), words=False)
    banded = draft(order(body, (skirt, SkirtZip(), Waistband())))
    assert not it.failed, it.findings
    n, sheet = it.draft.numbers, it.draft.sheet
    assert n.casing == pytest.approx(3.4)
    assert n.elastic == pytest.approx(0.92 * n.W)
    for code in ("SF", "SB"):
        longer = sheet.length(code, "side") - banded.sheet.length(code, "side")
        assert longer == pytest.approx(3.4, abs=1e-9)
        waist = sheet.length(code, "waist")
        assert waist == pytest.approx(banded.sheet.length(code, "waist"), abs=1e-9)
    for drawn in it.drawn.pieces:
        net = Polygon(sheet.piece(drawn.code).outline.flatten(0.001))
        cut = Polygon(drawn.cut_line.flatten(0.002))
        assert cut.buffer(0.1 * MM).contains(net)
    front = next(p for p in it.drawn.pieces if p.code == "SF")
    top = min(p.y for p in front.cut_line.flatten(0.01))
    assert top == pytest.approx(-3.4 - 1.0, abs=1e-6)  # top turn 1


def test_it_passes_the_hip_or_says_so() -> None:
    """Finished girth ≥ H + 2: P92 has W 72 and H 98, so 100 cm of (W + Ew)·g."""
    ease = made().numbers.Ew
    just = 100.0 / (72.0 + ease)
    assert not [f for f in made(gathers=just + 1e-6).findings if f.code == "EW1"]
    close = made(gathers=just - 0.01)
    (fault,) = [f for f in close.findings if f.code == "EW1"]
    assert "100.0 cm is the least" in fault.sentence
    assert close.failed


def test_elastic_that_must_stretch_to_twice_is_doubted() -> None:
    slim = Body.of({"HT": 165, "HB": 80, "B": 85, "W": 55, "H": 102}, client="slim")
    codes = {f.code for f in made(body=slim, gathers=2.2).findings}
    assert "EW2" in codes
    assert "EW2" not in {f.code for f in made().findings}


def test_what_it_goes_with() -> None:
    assert 'take a "gathered skirt"' in refused(StraightSkirt(), ElasticWaist())
    assert 'take a "gathered skirt"' in refused(CircleSkirt(), ElasticWaist())
    skirt = GatheredSkirt()
    assert "needs no zip" in refused(skirt, SkirtZip(), ElasticWaist())
    assert "one way only" in refused(skirt, ElasticWaist(), Waistband())


def test_it_is_bought_and_drawn_in() -> None:
    """W 72 less 8 in 100 and 2 to lap; no gathering stitches and no tape."""
    m = making_order(made())
    titles = [op.title for op in m.operations]
    assert not any("Gather" in t for t in titles)
    assert titles.index("Sew the skirt side seams") < titles.index(
        "Turn the casing down and draw the elastic in"
    )
    elastic = bought(cutting_sheet(m))[0]
    assert elastic.total == pytest.approx(0.92 * 72.0 + 2.0)


def test_women_of_the_survey() -> None:
    features = GatheredSkirt(), ElasticWaist()
    for woman in ansur_women()[::100]:
        d = draft(order(woman, features, estimates=RuleSet.SURVEY))
        assert not d.failed, d.failures()
