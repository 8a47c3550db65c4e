"""Shorts: lengths, hems trued over both seams, room of the leg, real bodies."""

import pytest
from shapely.geometry import LineString, Polygon

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, ansur_legs, ansur_whole
from clothwright.blocks.trousers import BACK, FRONT
from clothwright.body import Body, RuleSet
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.shorts import ROOM, Shorts, leg_girth
from clothwright.features.trousers.trouser_pockets import Pockets
from clothwright.features.trousers.trousers import Trousers
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.truing import walk
from clothwright.units import Unit
from orders import order, trouser_features
from verdict import unsound, verdict

MM = 0.1
BODIES = (P80, P92, P116, BRIDA, THEA, YSOLDE)


def made(length: float | None = None, body: Body = THEA) -> Draft:
    return draft(order(body, (*trouser_features(), Shorts(length=length))))


@pytest.mark.parametrize("length", [4.0, 10.0, 25.0, 45.0])
@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_they_pass_and_their_cut_lines_hold(length: float, body: Body) -> None:
    d = made(length, body)
    assert not d.failed, d.failures()
    done = pattern(d, words=False)
    assert not done.drawn.failures
    for piece in done.drawn.pieces:
        cut = Polygon(piece.cut_line.flatten(0.002))
        net = Polygon(d.sheet.piece(piece.code).outline.flatten(0.002))
        assert cut.is_valid
        assert cut.buffer(0.1 * MM).contains(net)


@pytest.mark.parametrize("body", BODIES, ids=lambda b: b.client)
def test_seams_and_corners(body: Body) -> None:
    """As long inside the leg as said; the back by its part of what is stretched; sides
    alike; hem square to side and inseam, so that it runs on (180°, exact)."""
    d = made(10.0, body)
    n, sheet = d.numbers, d.sheet
    assert sheet.length(FRONT, "inseam") == pytest.approx(10.0, abs=0.1 * MM)
    w = walk(sheet, sheet.seam("S41"))
    whole = draft(order(body, trouser_features())).sheet
    knee = whole.seam("S41").notches[0].left
    assert w.ease == pytest.approx(-n.st * 10.0 / knee, abs=0.1 * MM)
    assert walk(sheet, sheet.seam("S40")).ease == pytest.approx(0.0, abs=0.1 * MM)
    for code in (FRONT, BACK):
        p = sheet.piece(code)
        for edge in (p.before("hem").name, "hem"):
            assert p.interior_angle(edge) == pytest.approx(90.0, abs=1.0)


def test_above_the_hem_nothing_changes() -> None:
    long, short = draft(order(THEA, trouser_features())), made(10.0)
    for code in (FRONT, BACK):
        for edge in ("crotch", "waist"):
            whole = long.sheet.edge(code, edge).path
            assert short.sheet.edge(code, edge).path == whole
        level = LineString([(-500, 2.0), (500, 2.0)])
        a, b = (
            Polygon(x.sheet.piece(code).outline.flatten(0.005)) for x in (long, short)
        )
        wide = a.intersection(level).length
        assert b.intersection(level).length == pytest.approx(wide, abs=0.1 * MM)


def test_a_leg_that_binds_is_told() -> None:
    """Thigh to knee as a cone (common practice): hem under it is refused."""
    d = made(10.0)
    n = d.numbers
    assert leg_girth(n, 0.0) == n.TH
    assert leg_girth(n, n.yk) == pytest.approx(n.KN)
    hem = sum(d.sheet.length(c, "hem") for c in (FRONT, BACK))
    assert hem >= leg_girth(n, 10.0) + ROOM
    stout = Body.of(
        {"HT": 165, "HB": 87, "B": 92, "W": 72, "H": 98, "TH": 70, "KN": 48},
        client="stout",
    )
    d = made(12.0, stout)
    says = [str(f) for f in d.findings if f.code == "SH1"]
    assert says
    assert "are wanted" in says[0]


def test_they_are_told_and_go_with_pockets_and_pleats() -> None:
    d = draft(order(THEA, (*trouser_features(), Shorts(), Pleats(), Pockets())))
    assert not d.failed, d.failures()
    assert [op for op in making_order(d).operations if op.title == "Sew the inseams"]
    inch = draft(order(BRIDA, (*trouser_features(), Shorts()), unit=Unit.IN))
    assert inch.sheet.length(FRONT, "inseam") == pytest.approx(4 * 2.54, abs=0.1 * MM)


def test_what_hardly_stretches_is_not_told() -> None:
    """Legs of 10 cm take 1 mm of what long ones stretch: no iron is taken for it."""
    for d, told in (
        (made(10.0), False),
        (draft(order(THEA, trouser_features())), True),
    ):
        says = [
            *pattern(d, words=False).drawn.notes,
            *(s for o in making_order(d).operations for s in o.says),
        ]
        assert any("tretch" in s for s in says) == told


def test_what_does_not_go_is_refused() -> None:
    with pytest.raises(OrderError, match="leave them off"):
        draft(order(THEA, (*trouser_features(), Shorts(), TurnUps())))
    small = Body.of({"HT": 150, "HB": 76, "B": 80, "W": 62, "H": 88}, client="small")
    with pytest.raises(OrderError, match="make them shorter"):
        made(65.0, small)


def test_a_crease_beside_the_hem_is_told_by_length_and_width() -> None:
    wide = Trousers(hem=120.0, inside_leg=39.8, stretched=0.65)
    with pytest.raises(
        OrderError,
        match=r'\(length of "shorts"\) longer, or .*\(hem of "trousers"\) narrower',
    ):
        draft(order(ansur_whole()[0], trouser_features(wide, Shorts())))


def test_real_women() -> None:
    """Every 45th woman of the survey, whose thighs were measured."""
    women = ansur_legs()[::45]
    assert len(women) >= 20
    for body in women:
        features = (*trouser_features(), Shorts())
        asked = order(body, features, estimates=RuleSet.SURVEY)
        it = verdict(asked)
        assert not list(unsound(asked, it)), it.refusals
