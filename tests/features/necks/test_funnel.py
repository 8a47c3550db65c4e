"""Funnel neck, cut on (transformations 2): CF raised 3 to 6, back 3 to 5, its side no
more than 12° from the vertical; the upper edge goes round the neck."""

import math

import pytest

from bodies import P80, P92, P116, THEA, YSOLDE, ansur_women
from clothwright.body import Body
from clothwright.curves import Point, Vector, degrees_between
from clothwright.features import Feature
from clothwright.features.block import Block
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.bodice.shoulder_princess import ShoulderPrincess
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.linings.lining import Mode
from clothwright.features.necks.funnel import FunnelNeck
from clothwright.features.necks.neck_findings import over_head
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import Edge, EdgeKind
from orders import closed_back, order, sleeved_features, swapped

MM = 0.1
NECK = Neckline(shape=FrontShape.STANDARD)
BEHIND = BackNeckline(shape=BackShape.STANDARD)


def made(body: Body, *swaps: Feature) -> Draft:
    d = draft(order(body, sleeved_features(NECK, BEHIND, FunnelNeck(), *swaps)))
    assert not d.failed, d.failures()
    return d


@pytest.mark.parametrize("body", [P80, P92, P116, THEA, YSOLDE, *ansur_women()[::47]])
def test_funnels_on_real_bodies(body: Body) -> None:
    """At the workroom's defaults the raises are the book's, the upper edge has the room
    of a stand (5: NK/2 + 0.8), front and back make one line over the side."""
    d = made(body)
    n, sheet = d.numbers, d.sheet
    assert 3.0 <= n.fn_front <= 6.2
    assert 3.0 <= n.fn_back <= 5.5
    front, back = (sheet.edge(c, "neck").path for c in ("FC", "BC"))
    assert front.length + back.length >= n.NK / 2 + 0.8 - 0.1
    sides = [
        sheet.edge("FC", "shoulder").path.end_direction,
        sheet.edge("BC", "shoulder").path.start_direction * -1.0,
    ]
    for side in sides:
        assert degrees_between(side, Vector(0.0, -1.0)) <= 12.0
    a = degrees_between(sides[0] * -1.0, front.start_direction)
    b = degrees_between(sides[1] * -1.0, back.end_direction * -1.0)
    assert a + b == pytest.approx(180.0, abs=0.5)
    walk = next(w for w in d.report.walks if w.seam.code == "S3")
    assert walk.ease == pytest.approx(n.se_left, abs=0.05)
    pattern(d, words=False)


def test_it_stands_on_the_neck() -> None:
    """3 up at the centre front, 2.5 at the sides, leaning in by 8°; the centre lines
    run on straight and the front stays on the fold."""
    funnel = FunnelNeck(front=7.0, side=2.5, back=5.5, lean=8.0)
    d = made(P92, funnel)
    sheet, n = d.sheet, d.numbers
    fc = sheet.piece("FC")
    assert sheet.points["C"].y - fc.edge("cf").path.start.y == pytest.approx(7.0)
    assert fc.edge("cf").kind is EdgeKind.FOLD and fc.edge("cf").path.straight
    top, base = sheet.points["Fs"], sheet.points["Nf′"]
    assert base.y - top.y == pytest.approx(2.5 * math.cos(math.radians(8.0)))
    assert top.x - base.x == pytest.approx(2.5 * math.sin(math.radians(8.0)))
    cb = sheet.edge("BC", "cb").path
    assert sheet.points["Cb"].y - cb.end.y == pytest.approx(5.5, abs=0.2 * MM)
    assert n.dw >= 1.5


def test_its_facing_follows_the_side_and_the_shoulder() -> None:
    d = made(P92)
    shell = d.sheet.edge("FC", "shoulder").path
    facing = d.sheet.edge("FF", "shoulder").path
    assert len(facing.segments) > 1
    for p in facing.flatten(0.05):
        assert shell.nearest(p)[1] < 0.3
    assert "FN2" in {f.code for f in d.findings}


@pytest.mark.parametrize("lines", ["armhole", "darts", "mixed"])
@pytest.mark.parametrize("lining", [None, *Mode])
def test_funnels_of_sleeveless_tops(lines: str, lining: Mode | None) -> None:
    top = closed_back(
        lines=lines, front=FrontShape.STANDARD, back=BackShape.STANDARD, lining=lining
    )
    d = draft(order(YSOLDE, (*top, FunnelNeck())))
    assert not d.failed, d.failures()
    pattern(d, words=False)


def test_a_funnel_buttons() -> None:
    top = swapped(
        sleeved_features(NECK, BEHIND), ButtonStand(), place_of="concealed zip"
    )
    d = draft(order(P92, (*top, FunnelNeck())))
    assert not d.failed, d.failures()
    first = next(m for m in d.sheet.piece("FC").marks if m.name == "button 1").at
    top_y = d.sheet.points["Fc"].y
    assert first.y - top_y == pytest.approx(d.numbers.b_first, abs=0.2 * MM)


def test_without_an_opening_it_must_pass_the_head() -> None:
    """2·(front + back) of the upper edge, against HEAD + 2 (2, rule 3)."""
    d = made(P92)
    back = d.sheet.piece("BC")
    cb = back.edge("cb")
    closed = back.with_edge(Edge(cb.name, cb.path, EdgeKind.FOLD))
    (found,) = over_head(d.numbers, d.sheet.put(closed))
    half = sum(d.sheet.length(c, "neck") for c in ("FC", "BC"))
    assert found.data["round"] == pytest.approx(2 * half, abs=0.2)
    assert d.sheet.lines["neck front"].end == Point(d.numbers.X, d.sheet.points["Fc"].y)


def test_what_it_refuses() -> None:
    def refused(*features: Feature) -> None:
        draft(order(P92, features))

    with pytest.raises(OrderError, match="one collar"):
        refused(*sleeved_features(NECK, BEHIND, FunnelNeck(), ShirtCollar()))
    with pytest.raises(OrderError, match="round neck"):
        v = Neckline(shape=FrontShape.V)
        refused(*sleeved_features(v, BEHIND, FunnelNeck()))
    with pytest.raises(OrderError, match="bend both ways"):
        refused(*sleeved_features(NECK, BEHIND, FunnelNeck(front=2.0, tilt=5.0)))
    deep = BackNeckline(shape=BackShape.STANDARD, depth=28.0)
    for behind in (deep, BackNeckline(shape=BackShape.STANDARD, depth=12.0)):
        with pytest.raises(
            OrderError, match=r'back.* higher .*\(depth of "back neckline"\) less deep'
        ):
            refused(*sleeved_features(NECK, behind, FunnelNeck()))
    with pytest.raises(
        OrderError, match=r'\(front of "funnel neck"\) lower there, or its tilt'
    ):
        refused(*sleeved_features(NECK, BEHIND, FunnelNeck(front=9.0, tilt=2.0)))
    with pytest.raises(OrderError, match="shoulder"):
        top = closed_back(lines="shoulder", front=FrontShape.STANDARD)
        assert any(isinstance(f, ShoulderPrincess) for f in top)
        refused(*top, FunnelNeck())
    narrow = Neckline(shape=FrontShape.STANDARD, width=0.5)
    tight = draft(order(P92, sleeved_features(narrow, BEHIND, FunnelNeck(lean=12.0))))
    assert "FN1" in {f.code for f in tight.findings}


@pytest.mark.parametrize("way", [BackShoulder.TO_PANEL, BackShoulder.EASE])
@pytest.mark.parametrize("body", [P92, THEA, *ansur_women()[20::200]])
def test_a_funnel_above_a_dart_that_is_led_away(body: Body, way: BackShoulder) -> None:
    """The shoulder is ruled over the closed dart, and the funnel's side runs on from it
    as in front: of one length but for the ease, steep at the top."""
    d = made(body, Block(back_shoulder=way))
    walk = next(w for w in d.report.walks if w.seam.code == "S3")
    assert walk.ease == pytest.approx(d.numbers.se_left, abs=MM)
    side = d.sheet.edge("BC", "shoulder").path.start_direction * -1.0
    assert degrees_between(side, Vector(0.0, -1.0)) <= 12.0
