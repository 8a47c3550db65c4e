"""Cut-outs whose centre back is sewn together above them, faced or bound
(transformations 2, deep back c: facing or binding)."""

import math

import pytest
from shapely.geometry import LineString
from shapely.geometry import Point as Spot

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.features.linings.facing import Facing
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.linings.neck_binding import NeckBinding
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.notions import Article
from clothwright.features.openings.bound_cut_out import BoundCutOut
from clothwright.features.openings.concealed_zip import ConcealedZip
from clothwright.features.openings.cut_out_back import Closing, CutOutBack
from clothwright.features.openings.cut_out_shapes import CutOutShape
from clothwright.features.openings.underarm_zip import UnderarmZip
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import SeamKind
from clothwright.truing import walk
from features.linings.test_binding import bound
from orders import closed_back, cut_faults, order, swapped
from verdict import unsound, verdict

MM = 0.1
SHAPES = list(CutOutShape)
BODIES = (P80, P92, P116, THEA, YSOLDE)
SEWN = Closing.SEWN


def faced(cut: CutOutBack, *more: Feature, lines: str = "darts") -> tuple[Feature, ...]:
    """A wide neck, which goes over the head, and a zip below the cut-out."""
    top = closed_back(front=FrontShape.SCOOP, back=BackShape.BOAT, lines=lines)
    for one in more:
        top = swapped(top, one)
    return (*top, cut)


def bound_round(cut: BoundCutOut, *more: Feature) -> tuple[Feature, ...]:
    return bound(cut, *more, front=FrontShape.SCOOP, back=BackShape.BOAT)


def made(features: tuple[Feature, ...], body: Body = P92) -> Draft:
    d = draft(order(body, features))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_every_body_gets_it(body: Body, shape: CutOutShape) -> None:
    """All seams walk, the pattern is finished, the centre back is sewn above it."""
    for features in (
        faced(CutOutBack(shape=shape, closing=SEWN)),
        faced(CutOutBack(shape=shape, closing=SEWN), lines="armhole"),
        bound_round(BoundCutOut(shape=shape)),
    ):
        d = made(features, body)
        assert not cut_faults(d)
        assert making_order(d).operations
        for code in ("S142", "S21"):
            seam = d.sheet.seam(code)
            assert seam.kind is SeamKind.TWIN
            assert walk(d.sheet, seam).holds
        back = d.sheet.piece("BC" if "BC" in d.sheet.pieces else "B")
        assert not back.has("cb nape")
        above = back.edge("cb above").path
        assert above.start.y == pytest.approx(d.numbers.co_top, abs=0.5 * MM)


def test_women_of_the_survey() -> None:
    for features in (
        faced(CutOutBack(closing=SEWN), Lining(mode=Mode.BELOW_FACING)),
        bound_round(BoundCutOut(shape=CutOutShape.OVAL)),
    ):
        passed = 0
        for woman in ansur_women()[::120]:
            asked = order(woman, features, estimates=RuleSet.SURVEY)
            it = verdict(asked)
            assert list(unsound(asked, it)) == []
            passed += not it.refusals
        assert passed >= 5


def test_no_loop_and_no_button() -> None:
    loop, sewn = made(faced(CutOutBack())), made(faced(CutOutBack(closing=SEWN)))
    for d, has in ((loop, True), (sewn, False)):
        articles = {k.article for k in cutting_sheet(making_order(d)).notions}
        assert (Article.BALL_BUTTON in articles) is has
        titles = [op.title for op in making_order(d).operations]
        assert any("button" in t for t in titles) is has
    assert "Sew the centre back above the cut-out" in titles
    assert {"S142", "S142a"} <= {s.code for s in sewn.sheet.seams}


def test_the_seam_above_has_the_allowance_of_the_centre_back() -> None:
    """2.0 above as below; the opening 1.0 where it is faced, none where it is bound."""
    for features, wide in (
        (faced(CutOutBack(top=9.0, closing=SEWN)), 1.0),
        (bound_round(BoundCutOut(top=9.0)), 0.0),
    ):
        it = pattern(made(features), words=False)
        drawn = next(p for p in it.drawn.pieces if p.code == "B")
        cut = LineString(drawn.cut_line.flatten(0.002))
        for edge, right in (("cb above", 2.0), ("cb", 2.0), ("cut-out", wide)):
            net = it.draft.sheet.edge("B", edge).path
            middle = Spot(net.at_length(net.length / 2))
            assert cut.distance(middle) == pytest.approx(right, abs=0.2 * MM)


@pytest.mark.parametrize("shape", SHAPES)
def test_the_strip_is_that_of_the_neck(shape: CutOutShape) -> None:
    """As wide, as much shorter than the edge (shapely); where the edge comes to a point
    it runs on by the width over tan of its angle."""
    d = made(
        bound_round(
            BoundCutOut(shape=shape),
            NeckBinding(width=0.6, short=4.0),
            ConcealedZip(shaped=False),
        )
    )
    edge = LineString(d.sheet.edge("B", "cut-out").path.flatten(0.001))
    strip = d.sheet.piece("VC")
    assert strip.edge("cut-out 1").length == pytest.approx(
        0.96 * edge.length, abs=0.005
    )
    assert strip.outline.bounds()[3] == pytest.approx(2.4)
    on = sum(e.length for e in strip.edges if e.name.startswith("run on"))
    path = d.sheet.edge("B", "cut-out").path
    right = 0.0
    for way in (path.start_direction, path.end_direction * -1.0):
        angle = math.atan2(abs(way.x), abs(way.y))
        right += 0.6 / math.tan(angle) if math.degrees(angle) < 80 else 0.0
    assert on == pytest.approx(right, abs=1e-6)
    cuts = {p.code: p for p in cutting_sheet(making_order(d)).cloths["shell"]}
    assert cuts["VC"].count == 2


def test_a_closed_neck_goes_over_the_head_or_is_refused() -> None:
    """The edge is the way in (2, rule 3): HEAD and 2 of it, unless it closes by a
    loop."""
    small = closed_back(
        front=FrontShape.STANDARD, back=BackShape.STANDARD, lines="darts"
    )
    for cut, refused in ((CutOutBack(), False), (CutOutBack(closing=SEWN), True)):
        d = draft(order(P92, (*small, cut)))
        told = [str(f) for f in d.findings if f.code == "R-j"]
        assert bool(told) is refused
    assert "close with a loop above its cut-out" in told[0]


def test_what_is_refused_in_words() -> None:
    cut = BoundCutOut()
    for features, says in (
        ((*bound_round(cut), Facing()), "finishes the armholes too"),
        ((*faced(CutOutBack()), cut), "a back has one cut-out"),
        ((*closed_back(lines="darts"), cut), 'add a "neck binding", or take a'),
        (bound(CutOutBack()), 'below a bound neck take a "bound cut-out"'),
        (
            swapped(
                faced(CutOutBack(closing=SEWN)), UnderarmZip(), place_of="concealed zip"
            ),
            'add a "concealed zip"',
        ),
        (
            bound_round(cut, UnderarmZip(), ConcealedZip()),
            "a top closes in one place",
        ),
        (bound_round(BoundCutOut(top=1.6)), "must stay for two bindings"),
    ):
        with pytest.raises(OrderError) as e:
            draft(order(P92, features))
        assert says in str(e.value), says
