"""A knit skirt drawn in by elastic (blocks C4, F1; transformations 8; measures 8.1)."""

import pytest
from shapely.geometry import Polygon

from bodies import P80, P92, P116, THEA, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features.knits.hem_band import HemBand
from clothwright.features.knits.knit_skirt import KnitSkirt, Top
from clothwright.features.operations import Stitch, Work
from clothwright.features.skirts.elastic_waist import ElasticWaist
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.waistband import Waistband
from clothwright.making.cutting import bought, cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, draft, pattern
from clothwright.paper import EdgeKind
from orders import order, refused

MM = 0.1


def made(skirt: KnitSkirt, body: Body = P92) -> Draft:
    return draft(order(body, (skirt,)))


def fold(d: Draft) -> float:
    lines = d.sheet.piece("KQ").lines
    return next(k.path.length for k in lines if "folded" in k.name)


@pytest.mark.parametrize("body", [P80, P92, P116, THEA], ids=lambda b: b.client)
def test_by_hand(body: Body) -> None:
    """The hip is a quarter of H(1 + p), the waist no more than 4 cm less (C7), its fold
    and its top stretch to the hip: (1 + s) times 4 quarters, s 0.5. Cut lines hold
    their nets (shapely)."""
    it = pattern(made(KnitSkirt(hip=-5.0), body), words=False)
    assert not it.failed, it.findings
    n, sheet = it.draft.numbers, it.draft.sheet
    assert n.q_hip == pytest.approx(n.H * 0.95 / 4)
    assert n.q_hip - n.q_waist <= 4.0 + 1e-9
    assert 4 * 1.5 * sheet.length("KQ", "waist") >= n.H
    assert 4 * 1.5 * fold(it.draft) >= n.H
    assert n.elastic == pytest.approx(0.92 * n.W)
    side, hem = sheet.edge("KQ", "side").path, sheet.edge("KQ", "hem").path
    level = sheet.points["Hq"]
    assert side.nearest(level)[1] < 0.1 * MM
    assert hem.length == pytest.approx(n.q_hip, abs=0.1 * MM)
    (drawn,) = it.drawn.pieces
    net = Polygon(sheet.piece("KQ").outline.flatten(0.001))
    cut = Polygon(drawn.cut_line.flatten(0.002))
    assert cut.buffer(0.1 * MM).contains(net)


def test_a_cloth_that_hardly_stretches_still_passes_the_hip() -> None:
    """At 20 per cent W 60 with H 104: H/1.2 = 86.7 round, and more for the top of the
    casing; W/4 alone would be 15."""
    slim = Body.of({"HT": 165, "HB": 83, "B": 88, "W": 60, "H": 104}, client="slim")
    d = made(KnitSkirt(stretch=20.0), slim)
    assert not d.failed, d.failures()
    assert 4 * d.sheet.length("KQ", "waist") * 1.2 >= 104.0


def test_flared() -> None:
    """Each side let out by 6 at the hem, its seam as long as the straight one below
    the hip, waist and hem square to it."""
    straight, flared = (made(KnitSkirt(flare=f)) for f in (0.0, 6.0))
    n = flared.numbers
    assert flared.sheet.points["Lq"].x == pytest.approx(n.q_hip + 6.0, abs=2 * MM)
    below = [
        d.sheet.length("KQ", "side")
        - d.sheet.edge("KQ", "side").path.length_to_point(d.sheet.points["Hq"])
        for d in (straight, flared)
    ]
    assert below[0] == pytest.approx(below[1], abs=0.1 * MM)
    piece = flared.sheet.piece("KQ")
    assert piece.interior_angle("side") == pytest.approx(90.0, abs=8.0)
    assert piece.interior_angle("hem") == pytest.approx(90.0, abs=0.5)


def test_what_the_cloth_must_do() -> None:
    codes = {f.code for f in made(KnitSkirt(stretch=15.0)).findings}
    assert "KN0" in codes
    codes = {f.code for f in made(KnitSkirt(recovery=80.0)).findings}
    assert "KN9" in codes
    assert made(KnitSkirt(recovery=80.0)).numbers.p_hip >= 0
    close = made(KnitSkirt(hip=-19.0, stretch=30.0))
    assert "KN6" in {f.code for f in close.findings}
    long = made(KnitSkirt(length=85.0, stretch=25.0, hip=-10.0), P80)
    assert "KN11" in {f.code for f in long.findings}


def test_what_it_goes_with() -> None:
    assert "one way only" in refused(KnitSkirt(), Waistband())
    assert refused(KnitSkirt(), SkirtZip())
    assert 'take a "gathered skirt"' in refused(KnitSkirt(), ElasticWaist())
    assert "for a knit bodice" in refused(KnitSkirt(), HemBand())


def test_how_it_is_cut_and_made() -> None:
    m = making_order(made(KnitSkirt()))
    titles = [op.title for op in m.operations]
    assert titles.index("Sew the sides of the skirt") < titles.index(
        "Turn the casing down and draw the elastic in"
    )
    (casing,) = (op for op in m.operations if op.work is Work.BAND)
    assert casing.stitch is Stitch.ZIGZAG, "a lockstitch breaks over the hip"
    sheet = cutting_sheet(m)
    (piece,) = sheet.cloths["shell"]
    assert (piece.code, piece.how, piece.count) == ("KQ", "2 on fold", 2)
    assert bought(sheet)[0].total == pytest.approx(0.92 * 72.0 + 2.0)
    side = m.draft.sheet.seam("S121")
    assert m.garment.times(side) == 2


@pytest.mark.parametrize("top", [Top.SELF, Top.RIB])
def test_a_band_in_place_of_the_elastic(top: Top) -> None:
    """0.80 to 0.92 of the waist (truing 2), cut double in two halves; it stretches to
    the hip (8): by 0.5, or rib by 0.8."""
    d = made(KnitSkirt(top=top))
    assert not pattern(d, words=False).failed, d.failures()
    n, sheet = d.numbers, d.sheet
    assert sheet.edge("KQ", "waist").kind is EdgeKind.SEAM
    assert n.knit_waist == pytest.approx(4 * sheet.length("KQ", "waist"), abs=0.1 * MM)
    band = sheet.piece("KV")
    assert 4 * band.edge("waist").length == pytest.approx(n.band_waist, abs=0.1 * MM)
    assert band.edge("end").length == pytest.approx(2 * 5.0)
    assert 0.80 <= n.band_waist / n.knit_waist <= 0.92
    assert n.band_waist * (1.5 if top is Top.SELF else 1.8) >= n.H
    m = making_order(d)
    titles = [op.title for op in m.operations]
    assert titles.index("Sew the sides of the skirt") < titles.index(
        "Set the waistband"
    )
    assert not any("elastic" in t for t in titles)
    cloths = cutting_sheet(m).cloths
    cut = {c: [p.code for p in of] for c, of in cloths.items()}
    assert cut == (
        {"shell": ["KQ", "KV"]} if top is Top.SELF else {"shell": ["KQ"], "rib": ["KV"]}
    )


def test_a_band_that_does_not_pass_the_hip_is_refused() -> None:
    d = made(KnitSkirt(top=Top.SELF, share=0.75, stretch=30.0))
    assert [f for f in d.findings if f.code == "KN17"]
    assert d.failed


@pytest.mark.parametrize("stretch", [20.0, 50.0, 90.0])
def test_women_of_the_survey(stretch: float) -> None:
    for i, woman in enumerate(ansur_women()[::100]):
        skirt = KnitSkirt(stretch=stretch, flare=4.0, top=list(Top)[i % 3])
        d = draft(order(woman, (skirt,), estimates=RuleSet.SURVEY))
        assert not pattern(d, words=False).failed, d.failures()


@pytest.mark.parametrize(
    ("skirt", "symbol"),
    [
        (KnitSkirt(band=6.0), "wb"),
        (KnitSkirt(share=0.9), "rw"),
        (KnitSkirt(top=Top.SELF, width=3.0), "we"),
        (KnitSkirt(top=Top.RIB, shorter=8.0), "less"),
    ],
)
def test_a_number_that_its_top_does_not_use_is_told(
    skirt: KnitSkirt, symbol: str
) -> None:
    """It is none of the draft's numbers, and she is told so."""
    d = made(skirt)
    (told,) = (f for f in d.findings if f.code == "Q5")
    assert told.place == symbol
    assert skirt.top.value in str(told)
    key = next(k.key for k in skirt.numbers().values() if k.symbol == symbol)
    assert key not in d.numbers
    assert not [f for f in made(KnitSkirt(top=skirt.top)).findings if f.code == "Q5"]
