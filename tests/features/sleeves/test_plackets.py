"""The half placket of a neck and the plackets of sleeves (transformations 7)."""

import pytest

from bodies import P92, THEA, YSOLDE, ansur_women
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.linings.lining import Lining
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.features.notions import Article
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.neck_placket import NeckPlacket
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.features.sleeves.sleeve_placket import SleevePlacket
from clothwright.finishing.wording import edge_words
from clothwright.making.cutting import cutting_sheet
from clothwright.making.order import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import EdgeKind, MarkKind
from clothwright.sheets.telling import tell
from clothwright.truing import walk
from clothwright.units import Unit
from orders import closed_back, order, sleeved_features, swapped

MM = 0.1


# -- the neck ------------------------------------------------------------------------
def polo(*swaps: Feature, placket: NeckPlacket | None = None) -> tuple[Feature, ...]:
    """A top that opens at the left side, its neck by a half placket."""
    features = swapped(
        sleeved_features(*swaps), UnderarmZip(), place_of="concealed zip"
    )
    return (*features, placket or NeckPlacket())


@pytest.mark.parametrize("body", [P92, THEA, YSOLDE, *ansur_women()[::240]])
def test_the_window_and_its_bands(body: Body) -> None:
    """Width 3 of 2.5 to 3.5, length 15 of 12 to 20 (7): the window is as wide as its
    bands; the neck's edge is that of the neckline, less what the bands take."""
    d = draft(order(body, polo()))
    assert not d.failed, d.failures()
    pattern(d, words=False)
    fc, band = d.sheet.piece("FC"), d.sheet.piece("NP")
    assert fc.edge("placket foot").length == pytest.approx(1.5)
    assert band.edge("foot").length == pytest.approx(3.0, abs=0.1 * MM)
    assert fc.edge("placket").length == pytest.approx(
        band.edge("side").length, abs=0.1 * MM
    )
    centre = d.sheet.points["C"]
    assert fc.edge("cf").path.start.y - centre.y == pytest.approx(15.0, abs=0.1 * MM)
    assert fc.edge("cf").kind is EdgeKind.FOLD
    neck = d.sheet.lines["neck front"].length
    whole = fc.edge("neck").length + band.edge("top").length / 2
    assert whole == pytest.approx(neck, abs=0.2 * MM)
    # the buttons lie on the centre line, half their diameter and 0.8 below the neck
    at = [m.at for m in band.marks if m.kind is MarkKind.BUTTON]
    assert all(p.x == pytest.approx(centre.x, abs=0.1 * MM) for p in at)
    assert at[0].y - centre.y == pytest.approx(0.55 + 0.8, abs=0.1 * MM)
    for s in d.sheet.seams:
        if s.code in ("S8", "S76", "S77", "S78"):
            assert walk(d.sheet, s).severity is None, s.code


def test_the_slit_lets_the_head_through() -> None:
    """Edge and twice the slit come over the head and 2 (2, rule 3)."""
    short, long = (
        draft(order(P92, polo(placket=NeckPlacket(length=x)))) for x in (None, 8.0)
    )
    assert not any(f.code == "R-j" for f in (*short.findings, *long.findings))
    closed = [f for f in polo() if f.kind != "neck placket"]
    assert any(f.code == "R-j" for f in draft(order(P92, tuple(closed))).findings)


@pytest.mark.parametrize(
    "shape", [FrontShape.ROUND, FrontShape.BOAT, FrontShape.SQUARE, FrontShape.STANDARD]
)
@pytest.mark.parametrize("lines", ["armhole", "darts", "mixed", "shoulder"])
def test_it_opens_every_plain_neck(shape: FrontShape, lines: str) -> None:
    features = (*closed_back(lines=lines, front=shape), NeckPlacket(width=2.5))
    d = draft(order(YSOLDE, features))
    assert not d.failed, d.failures()
    pattern(d, words=False)


def test_what_the_neck_placket_refuses() -> None:
    deep = draft(order(P92, polo(placket=NeckPlacket(length=29.0))))
    assert any(f.code == "NP1" for f in deep.findings)
    assert deep.failed
    with pytest.raises(OrderError, match="no edge for its bands"):
        draft(order(P92, polo(Neckline(shape=FrontShape.V))))
    with pytest.raises(OrderError, match="not lined yet"):
        draft(order(P92, (*closed_back(), NeckPlacket(), Lining())))
    stand = swapped(sleeved_features(), ButtonStand(), place_of="concealed zip")
    with pytest.raises(OrderError, match="needs no half placket"):
        draft(order(P92, (*stand, NeckPlacket())))


def test_its_bands_are_sewn_before_the_shoulders() -> None:
    m = making_order(draft(order(THEA, polo())))
    titles = [op.title for op in m.operations]
    bands = titles.index("Sew the bands of the neck placket into the front")
    assert bands < titles.index("Sew the shoulders")
    (buttons,) = (
        k for k in cutting_sheet(m).notions if k.article is Article.FLAT_BUTTON
    )
    assert buttons.count == 4  # three, 6 apart on 15 less 1.35 and 3; one to spare


# -- the sleeve ----------------------------------------------------------------------
def cuffed(cuff: Cuff) -> Draft:
    features = sleeved_features(
        SetInSleeve(reach=Reach.WRIST), GatheredHem(fullness=1.6), cuff
    )
    d = draft(order(THEA, features))
    assert not d.failed, d.failures()
    return d


def test_a_continuous_strip_goes_round_the_slit() -> None:
    """2·slit and two allowances, 3 wide (7)."""
    sheet = cutting_sheet(making_order(cuffed(Cuff(slit=9.0))))
    (strip,) = (k for k in sheet.strips if k.article is Article.PLACKET)
    assert (strip.count, strip.length, strip.size) == (2, 20.0, 3.0)


def test_a_tailored_placket_is_drawn() -> None:
    """2 to 2.5 wide (7); it covers the slit and what is stitched above it."""
    d = cuffed(Cuff(slit=10.0, placket=SleevePlacket.TAILORED))
    pattern(d, words=False)
    p = d.sheet.piece("PL")
    assert p.edge("foot").length == pytest.approx(2 * 2.25)
    assert p.edge("outer").length == pytest.approx(12.5)
    assert p.edge("slit edge").length == pytest.approx(11.0)
    left, top, right, bottom = p.outline.bounds()
    assert right - left == pytest.approx(4.5)
    assert bottom - top == pytest.approx(12.5 + 2.25 / 2)
    assert not any("waist" in edge_words(e.name) for e in p.edges)
    m = making_order(d)
    assert "Set the tailored plackets into the sleeves" in [
        op.title for op in m.operations
    ]
    (strip,) = (k for k in cutting_sheet(m).strips if k.article is Article.PLACKET)
    assert strip.length == pytest.approx(12.0)
    assert "Bind the slits of the sleeves" not in [op.title for op in m.operations]
    (step,) = (s for s in d.steps if s.makes == "PL")
    told = tell(step, Unit.IN, d.numbers, d.sheet)
    assert "1 in above the slit" in told
    assert " cm" not in told, "an inch order has inches alone"
