"""A drawstring beside the elastic of a casing (transformations 8)."""

from dataclasses import replace

import pytest

from bodies import P80, P92, P116, THEA, ansur_legs, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.notions import Article
from clothwright.features.operations import Hazard
from clothwright.features.skirts.cord import Holes
from clothwright.features.skirts.drawstring import Drawstring
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.gathered_skirt import GatheredSkirt
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.trouser_elastic import TrouserElastic
from clothwright.features.trousers.trousers import Trousers
from clothwright.making.cutting import bought, cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.cautions import of_garment
from clothwright.order.wearer import Wearer
from clothwright.paper import Piece
from orders import order

MM = 0.1
SKIRT: tuple[Feature, ...] = (GatheredSkirt(), ElasticWaist())
LEGS: tuple[Feature, ...] = (Trousers(), TrouserElastic())
BOTH = pytest.mark.parametrize(
    ("on", "code"), [(SKIRT, "SF"), (LEGS, "TF")], ids=["skirt", "trousers"]
)


def made(on: tuple[Feature, ...], string: Drawstring, body: Body = P92) -> Draft:
    d = draft(order(body, (*on, string)))
    assert not d.failed, d.failures()
    return d


def fold(piece: Piece) -> float:
    return next(k.path for k in piece.lines if "folded" in k.name).start.y


def cord_and_openings(d: Draft, code: str) -> None:
    """The cord is long enough, and an opening lies half way down the casing, 2.5 cm
    from the centre, in the outer layer."""
    n = d.numbers
    assert n.drawstring >= n.W + 50.0
    assert n.drawstring == pytest.approx(max(n.W + 55.0, n.H + 2.0 + 20.0))
    piece = d.sheet.piece(code)
    (mark,) = (m for m in piece.marks if "drawstring" in m.name)
    line = next(k.path for k in piece.lines if "folded" in k.name)
    assert line.nearest(mark.at)[1] == pytest.approx(n.casing / 2, abs=0.2 * MM)
    centre = piece.edge("crotch" if code == "TF" else "cf").path
    assert centre.nearest(mark.at)[1] == pytest.approx(2.5, abs=2 * MM)
    assert piece.contains(mark.at)
    assert mark.at.y > max(line.start.y, line.end.y) - 2 * MM


@BOTH
@pytest.mark.parametrize("body", [P80, P92, P116, THEA], ids=lambda b: b.client)
def test_the_cord_is_the_waist_and_its_ends(
    on: tuple[Feature, ...], code: str, body: Body
) -> None:
    """Girth + 50 to 60 (8); opened to the H + 2 that passes the hip at least 20 cm are
    left to hold (common practice, no source)."""
    d = made(on, Drawstring(), body)
    cord_and_openings(d, code)
    assert not pattern(d, words=False).failed


@BOTH
def test_eyelets_or_buttonholes(on: tuple[Feature, ...], code: str) -> None:
    """A buttonhole is as long as the cord is wide and 0.3 (7); it stands upright."""
    sewn = made(on, Drawstring(through=Holes.BUTTONHOLES, cord=1.0))
    lines = [k.path for k in sewn.sheet.piece(code).lines if "buttonhole" in k.name]
    assert [k.length for k in lines] == pytest.approx([1.3])
    assert lines[0].start.x == lines[0].end.x
    told = [op.title for op in making_order(sewn).operations]
    assert told.index("Work two buttonholes in the front") < told.index(
        "Turn the casing down and draw the elastic in"
    )
    assert told.index("Turn the casing down and draw the elastic in") < told.index(
        "Draw the drawstring in"
    )
    eyelets = made(on, Drawstring())
    assert not [k for k in eyelets.sheet.piece(code).lines if "buttonhole" in k.name]
    with_eyelets, without = (
        {k.article: k.count for k in bought(cutting_sheet(making_order(d)))}
        for d in (eyelets, sewn)
    )
    assert with_eyelets[Article.EYELET] == 2
    assert with_eyelets[Article.DRAWSTRING] == 1
    assert Article.EYELET not in without


def test_a_cord_is_a_hazard_for_children() -> None:
    """A reminder that defers to the rules in force (cutting and costing 7)."""
    d = made(LEGS, Drawstring())
    hazards = {h for op in making_order(d).operations for h in op.hazards}
    assert Hazard.CORD in hazards
    said = of_garment(hazards, replace(d.order, wearer=Wearer.CHILD))
    assert any("ties can catch" in s and "rules in force" in s for s in said)


def test_a_cord_too_wide_for_the_casing_is_refused() -> None:
    """Elastic 1 makes a casing of 1.4, in which 0.8 is left for the opening."""
    features = (GatheredSkirt(), ElasticWaist(width=1.0), Drawstring(cord=0.8))
    d = draft(order(P92, features))
    (fault,) = [f for f in d.findings if f.code == "DS1"]
    assert "room for 0.8 cm" in fault.sentence
    assert "0.5 cm wide or less" in fault.to_do
    assert d.failed


def test_it_wants_a_casing() -> None:
    banded = GatheredSkirt(), SkirtZip(), Waistband(), Drawstring()
    with pytest.raises(OrderError, match="runs beside an elastic"):
        draft(order(P92, banded))


@pytest.mark.parametrize(
    ("on", "code", "women"),
    [(LEGS, "TF", ansur_legs()[::160]), (SKIRT, "SF", ansur_women()[::400])],
    ids=["trousers", "skirt"],
)
def test_women_of_the_survey(
    on: tuple[Feature, ...], code: str, women: tuple[Body, ...]
) -> None:
    for woman in women:
        d = draft(order(woman, (*on, Drawstring()), estimates=RuleSet.SURVEY))
        assert not d.failed, d.failures()
        cord_and_openings(d, code)
