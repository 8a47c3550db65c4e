"""The strap across a low back: hooked, sewn in or of elastic (transformations 2)."""

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.features import Feature
from clothwright.features.bodice.yokes import BackYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.back_strap import BackStrap, Held
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.notions import Article
from clothwright.making import making_order
from clothwright.order import draft
from order.test_combinations import finished
from orders import closed_back, order, sound, swapped

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA, *ansur_whole()[50::400])


def low(
    strap: BackStrap,
    *more: Feature,
    lines: str = "darts",
    lining: Mode | None = None,
    depth: float = 18.0,
) -> tuple[Feature, ...]:
    neck = BackNeckline(shape=BackShape.U, depth=depth)
    features = closed_back(lines=lines, front=FrontShape.SCOOP, lining=lining)
    return (*swapped(features, neck), strap, *more)


@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("held", Held)
@pytest.mark.parametrize("mode", [None, Mode.TO_EDGE, Mode.BELOW_FACING])
def test_it_is_held_as_ordered(mode: Mode | None, held: Held, body: Body) -> None:
    """From edge to edge it is as long as the back is open at its level (exact): hooked
    2.5 longer, sewn in half of it on the fold, of elastic a tenth less and no paper;
    it is caught before the edge is turned, in a facing or a lining."""
    made = sound(body, low(BackStrap(held=held), lining=mode, lines="armhole"))
    sheet = made.sheet
    across = 2 * sheet.points["Ks"].x
    making = making_order(made)
    strap = next(f for f in made.order.features if f.kind == "back strap")
    bought = {k.article: k for k in strap.notions(made.numbers, sheet)}
    if held is Held.ELASTIC:
        assert "BK" not in sheet.pieces
        assert "S67" not in {s.code for s in sheet.seams}
        long = bought[Article.ELASTIC].length
        assert long == pytest.approx(0.9 * across + 2 * 1.5)
        assert bought[Article.ELASTIC].size == pytest.approx(2.5)
    elif held is Held.SEWN:
        assert sheet.piece("BK").fold is not None
        assert sheet.length("BK", "band upper") == pytest.approx(across / 2)
    else:
        assert sheet.length("BK", "band upper") == pytest.approx(across + 2.5)
    assert (Article.HOOK in bought) is (held is Held.HOOKED)
    marked = [k for k in sheet.piece("BC").marks if k.name == "back strap"]
    assert len(marked) == 1
    titles = [op.title for op in making.operations]
    basted = next(i for i, t in enumerate(titles) if "baste" in t.lower())
    edge = ("Face the neck", "Bag out the neck")
    turned = next(i for i, t in enumerate(titles) if t.startswith(edge))
    assert basted < turned
    assert not finished(made)


def test_a_closed_strap_lets_the_head_through() -> None:
    """Neck and strap round, by hand: twice the front neck and the back neck down to the
    strap, and the strap; an elastic gives 0.4 of its length (BK1)."""
    high = BackStrap(held=Held.SEWN, level=4.0)
    features = swapped(
        low(high, depth=14.0), Neckline(shape=FrontShape.ROUND, width=0.5)
    )
    made = draft(order(BRIDA, features))
    (told,) = [f for f in made.findings if f.code == "BK1"]
    sheet, at = made.sheet, made.sheet.points["Ks"]
    back = sheet.edge("B", "neck").path
    above = back.length - back.length_to_point(at)
    if back.start.y < back.end.y:
        above = back.length_to_point(at)
    front = sheet.length("F", "neck")
    assert told.data["round"] == pytest.approx(2 * (front + above + at.x), abs=MM)
    assert told.data["round"] < made.numbers.HEAD + 2.0
    for other in (BackStrap(level=4.0), BackStrap(held=Held.SEWN)):
        codes = {f.code for f in draft(order(BRIDA, low(other))).findings}
        assert "BK1" not in codes


def test_shoulders_that_are_held_may_be_narrow() -> None:
    """Above a low back 4 cm of shoulder must stay, or a strap holds them on (2): N2."""
    wide = Neckline(shape=FrontShape.SCOOP, width=7.2)
    held = swapped(low(BackStrap()), wide)
    loose = tuple(f for f in held if f.kind != "back strap")
    left = {draft(order(P80, f)).numbers.Lr for f in (held, loose)}
    assert all(3.0 < lr < 4.0 for lr in left), left
    for features, doubted in ((held, False), (loose, True)):
        told = [f for f in draft(order(P80, features)).findings if f.code == "N2"]
        assert bool(told) is doubted
    assert "add a strap across the back" in str(told[0])


def test_it_is_caught_in_the_edge_of_a_yoke() -> None:
    made = sound(P92, low(BackStrap(level=5.0), BackYoke(depth=14.0), depth=10.0))
    seam = made.sheet.seam("S67")
    assert [r.piece for r in seam.left] == ["BY"]
    assert any(k.name == "back strap" for k in made.sheet.piece("BY").marks)


def test_only_elastic_is_shorter() -> None:
    made = sound(P92, low(BackStrap(shorter=12.0)))
    assert any("has no use for shorter" in str(f) for f in made.findings)
