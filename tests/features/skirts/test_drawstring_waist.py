"""A drawstring that draws a waist in alone (transformations 8)."""

from dataclasses import replace

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_legs, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.notions import Article
from clothwright.features.operations import Hazard
from clothwright.features.skirts.cord import Holes
from clothwright.features.skirts.drawstring import Drawstring
from clothwright.features.skirts.drawstring_waist import DrawstringWaist
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.gathered_skirt import GatheredSkirt
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waistband import Waistband
from clothwright.features.trousers.fly import Fly
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.shorts import Shorts
from clothwright.features.trousers.trouser_drawstring import TrouserDrawstring
from clothwright.features.trousers.trouser_elastic import TrouserElastic
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trousers import Trousers
from clothwright.making import making_order
from clothwright.making.cutting import bought, cutting_sheet
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.order.cautions import of_garment
from clothwright.order.together import disagreements
from clothwright.order.wearer import Wearer
from clothwright.units import Unit
from orders import cut_faults, order
from verdict import verdict

MM = 0.1
KINDS: dict[str, tuple[Feature, ...]] = {
    "skirt": (GatheredSkirt(), DrawstringWaist()),
    "trousers, pockets": (
        Trousers(),
        TrouserDrawstring(),
        Pockets(shape=Shape.SEAM),
    ),
    "shorts, buttonholes": (
        Trousers(),
        Shorts(),
        TrouserDrawstring(cord=1.2, through=Holes.BUTTONHOLES),
    ),
}
FRONTS = {"skirt": "SF", "trousers, pockets": "TF", "shorts, buttonholes": "TF"}


def made(kind: str, body: Body = THEA, unit: Unit = Unit.CM) -> Draft:
    d = draft(order(body, KINDS[kind], unit=unit))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA], ids=lambda b: b.client)
def test_it_passes_and_is_sewn(kind: str, body: Body) -> None:
    d = made(kind, body, Unit.IN if body is BRIDA else Unit.CM)
    assert not pattern(d, words=False).drawn.failures
    assert not cut_faults(d)
    ops = making_order(d).operations
    titles = [op.title for op in ops]
    assert titles.index("Turn the casing down") < titles.index("Draw the drawstring in")
    assert not any("elastic" in " ".join((op.title, *op.says)) for op in ops)
    assert not any("Gather the skirt" in t for t in titles)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("body", [P80, P116, THEA], ids=lambda b: b.client)
def test_casing_openings_and_cord(kind: str, body: Body) -> None:
    """The casing takes the opening and 0.5 cm above and below it, 2 cm at least; it
    passes the hip and 2 cm (8: H + 2); the cord is the girth and 50 to 60 long (8), and
    at least 20 cm more than it opens to."""
    d = made(kind, body)
    n, piece = d.numbers, d.sheet.piece(FRONTS[kind])
    assert n.casing == pytest.approx(max(2.0, n.ds_cord + 0.3 + 1.0))
    fold = next(k.path for k in piece.lines if k.name == "waist line, folded")
    (mark,) = (m for m in piece.marks if m.name == "opening for the drawstring")
    assert fold.nearest(mark.at)[1] == pytest.approx(n.casing / 2, abs=0.2 * MM)
    codes = ("SF", "SB") if FRONTS[kind] == "SF" else ("TF", "TB")
    folds = [
        next(k.path.length for k in d.sheet.piece(c).lines if "folded" in k.name)
        for c in codes
    ]
    assert 2 * sum(folds) >= n.H + 2.0 - 1e-6
    assert n.drawstring == pytest.approx(max(n.W + 55.0, n.H + 22.0))
    articles = [k.article for k in bought(cutting_sheet(making_order(d)))]
    assert Article.DRAWSTRING in articles
    assert Article.ELASTIC not in articles


def test_a_child_has_no_cord_without_a_caution() -> None:
    d = made("skirt")
    hazards = {h for op in making_order(d).operations for h in op.hazards}
    assert Hazard.CORD in hazards
    child = replace(d.order, wearer=Wearer.CHILD)
    assert any("ties can catch" in said for said in of_garment(hazards, child))


@pytest.mark.parametrize(
    ("features", "says"),
    [
        ((GatheredSkirt(), DrawstringWaist(), SkirtZip()), "opens once|needs no zip"),
        ((GatheredSkirt(), DrawstringWaist(), ElasticWaist()), "one way only"),
        ((GatheredSkirt(), DrawstringWaist(), Drawstring()), "one drawstring"),
        ((StraightSkirt(), DrawstringWaist()), 'take a "gathered skirt"'),
        ((Trousers(), TrouserDrawstring(), Fly()), "open once|no fly"),
        ((Trousers(), TrouserDrawstring(), Pleats()), "leave the pleats off"),
        ((Trousers(), TrouserDrawstring(), Pockets()), "in the side seam"),
    ],
)
def test_what_does_not_go_is_refused(features: tuple[Feature, ...], says: str) -> None:
    with pytest.raises(OrderError, match=says):
        draft(order(THEA, features))


def test_a_skirt_too_narrow_for_the_hip_is_refused() -> None:
    d = draft(order(P92, (GatheredSkirt(gathers=1.1), DrawstringWaist())))
    assert any("does not pass the hip" in f for f in d.failures())


@pytest.mark.parametrize(
    "garment",
    [
        (GatheredSkirt(),),
        (Trousers(),),
        (GatheredSkirt(), SkirtZip(), Waistband()),
    ],
)
def test_a_drawstring_without_a_casing_is_one_true_sentence(
    garment: tuple[Feature, ...],
) -> None:
    """What would be added for it is waist finish and opening in one: neither is asked
    for beside it."""
    (only,) = disagreements((*garment, Drawstring()))
    assert only.kind == "drawstring"
    assert "drawstring waist" in only.why
    mended = {
        "gathered skirt": (*garment[:1], ElasticWaist(), Drawstring()),
        "trousers": (*garment[:1], TrouserElastic(), Drawstring()),
    }
    assert not disagreements(mended[garment[0].kind])


def test_what_is_lacking_besides_is_still_told() -> None:
    """A skirt alone lacks both; what a zip's own want would bring is not the waist."""
    both = {d.why.split(";")[0] for d in disagreements((GatheredSkirt(),))}
    assert len(both) == 2


@pytest.mark.parametrize("kind", ["skirt", "trousers, pockets"])
def test_real_women(kind: str) -> None:
    """Passed, or refused as with elastic."""
    women = (ansur_women() if kind == "skirt" else ansur_legs())[::90]
    assert len(women) >= 6
    elastic = ElasticWaist() if kind == "skirt" else TrouserElastic()
    plain = (KINDS[kind][0], elastic, *KINDS[kind][2:])
    for body in women:
        it = verdict(order(body, KINDS[kind], estimates=RuleSet.SURVEY))
        bare = verdict(order(body, plain, estimates=RuleSet.SURVEY))
        assert set(it.refusals) <= set(bare.refusals), (body.client, it.refusals)
