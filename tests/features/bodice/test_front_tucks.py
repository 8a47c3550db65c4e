"""Tucks down the front beside its centre (transformations 1.2, 1.6, 10)."""

from random import Random

import pytest

from bodies import BRIDA, P80, P92, P116, THEA, ansur_whole
from clothwright.body import Body
from clothwright.curves import Path, Point, distance
from clothwright.features import Feature
from clothwright.features.bodice.bust_dart import BustDart
from clothwright.features.bodice.front_dart import DartPlace
from clothwright.features.bodice.front_tucks import FrontTucks
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.yokes import FrontYoke
from clothwright.features.linings.lining import Mode
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft
from clothwright.paper import Piece
from making.test_order import complete
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1
LINES = ("armhole", "shoulder", "darts")


def front(made: Draft) -> Piece:
    return made.sheet.piece("FC" if "FC" in made.sheet.pieces else "F")


def tucked(lines: str, tucks: FrontTucks, lining: Mode | None = None) -> list[Feature]:
    return [*closed_back(lines=lines, lining=lining), tucks]


@pytest.mark.parametrize("body", [P80, P92, P116, BRIDA, THEA])
@pytest.mark.parametrize("lines", LINES)
def test_each_takes_twice_its_depth(lines: str, body: Body) -> None:
    """§10, exact: the front is wider by 2·n·depth wherever all are crossed, its seams
    take in as much and more where the edge slopes; other edges stay."""
    plain = draft(order(body, closed_back(lines=lines)))
    made = draft(order(body, tuple(tucked(lines, FrontTucks(count=3, depth=0.5)))))
    assert not made.failed, made.failures()
    assert not cut_faults(made)
    a, b = front(plain), front(made)
    widths = [p.outline.bounds()[2] - p.outline.bounds()[0] for p in (a, b)]
    assert widths[1] - widths[0] == pytest.approx(3.0, abs=1e-6)
    for e in a.edges:
        if e.name not in ("neck", "waist"):
            was = e.length
            assert b.edge(e.name).length == pytest.approx(was, abs=1e-6)
    assert 3.0 <= b.edge("waist").length - a.edge("waist").length + 0.02 < 3.2
    for s in made.sheet.seams:
        if s.tucked:
            was = plain.sheet.seam(s.code).ease.plan
            sides = [made.sheet.chain_length(k) for k in (s.right, s.left)]
            assert sides[0] - sides[1] == pytest.approx(s.ease.plan, abs=MM)
            assert s.ease.plan - abs(was) >= 2.8


def test_folded_the_neck_is_the_neck_it_was() -> None:
    """The visible half of a tuck is cut as the neck below it, its other half as the
    mirror image in the fold: each place has its like across the fold."""
    made = draft(order(P92, tuple(tucked("darts", FrontTucks(count=1, depth=0.8)))))
    neck = front(made).edge("neck").path
    lines = {k.name: k.path for k in front(made).lines}
    x = lines["fold of a tuck 1"].start.x
    for off in (0.2, 0.5, 0.79):
        ys = [_crossing(neck, at) for at in (x - off, x + off)]
        assert ys[0] == pytest.approx(ys[1], abs=1e-6)
    both = lines["stitch line of a tuck 1"], lines["stitch line of a tuck 2"]
    assert distance(both[0].end, both[1].end) == pytest.approx(1.6, abs=1e-6)


def _crossing(path: Path, x: float) -> float:
    plumb = Path.line(Point(x, -99.0), Point(x, 199.0))
    return path.at_length(path.meets(plumb)[0][0]).y


def test_they_lie_as_far_apart_as_said() -> None:
    """From a fold to the next stitch line, once the tucks are folded."""
    tucks = FrontTucks(count=4, depth=0.3, apart=0.9, beside=2.0)
    made = draft(order(P92, tuple(tucked("darts", tucks))))
    lines = {k.name: k.path.start.x for k in front(made).lines}
    n = made.numbers
    assert n.X - lines["stitch line of a tuck 1"] == pytest.approx(2.0, abs=1e-6)
    for k in (1, 2, 3):
        gap = (
            lines[f"stitch line of a tuck {2 * k}"]
            - lines[f"stitch line of a tuck {2 * k + 1}"]
        )
        assert gap == pytest.approx(0.3 + 0.9, abs=1e-6)


@pytest.mark.parametrize("lines", LINES)
def test_facing_and_lining_are_those_of_a_plain_front(lines: str) -> None:
    for lining in (Mode.BELOW_FACING, Mode.TO_EDGE):
        usual = closed_back(lines=lines, lining=lining)
        plain = draft(order(P92, usual))
        made = draft(order(P92, tuple(tucked(lines, FrontTucks(), lining))))
        assert not made.failed, made.failures()
        for code, piece in plain.sheet.pieces.items():
            if code not in ("F", "FC"):
                other = made.sheet.piece(code)
                assert [e.length for e in other.edges] == pytest.approx(
                    [e.length for e in piece.edges], abs=1e-6
                )
        complete(making_order(made))


def test_they_are_sewn_before_the_seams() -> None:
    making = making_order(draft(order(P92, tuple(tucked("armhole", FrontTucks())))))
    complete(making)
    titles = [s.title for s in making.operations]
    at = titles.index("Sew the tucks of the front")
    assert making.operations[at].count == 8.0
    assert at < next(i for i, t in enumerate(titles) if "panel" in t)


@pytest.mark.parametrize("lines", LINES)
def test_a_torso_gets_them_down_to_its_hem(lines: str) -> None:
    usual = [f for f in tucked(lines, FrontTucks()) if f.kind not in _WAIST]
    made = draft(order(THEA, (*usual, Torso())))
    assert not made.failed, made.failures()
    assert not cut_faults(made)


_WAIST = ("waist seam", "peplum")


def test_below_a_yoke_and_beside_a_stand() -> None:
    below = draft(order(P92, (*tucked("darts", FrontTucks()), FrontYoke())))
    assert not below.failed, below.failures()
    assert any(s.tucked and ("F", "yoke") in s for s in below.sheet.seams)
    usual = sleeved_features(SideDart(), ButtonStand(), FrontTucks(beside=3.0))
    usual = tuple(
        f for f in usual if f.kind not in ("front armhole princess", "concealed zip")
    )
    beside = draft(order(P92, usual))
    assert not beside.failed, beside.failures()
    assert not cut_faults(beside)
    complete(making_order(beside))


@pytest.mark.parametrize("lines", LINES)
def test_real_women_get_them(lines: str) -> None:
    for body in Random(13).sample(ansur_whole(), 6):
        made = draft(order(body, tuple(tucked(lines, FrontTucks(), Mode.TO_EDGE))))
        assert not made.failed, made.failures()
        assert not cut_faults(made)


@pytest.mark.parametrize("tucks", [FrontTucks(count=14), FrontTucks(beside=11.0)])
def test_what_has_no_room_is_refused(tucks: FrontTucks) -> None:
    with pytest.raises(OrderError, match="a tuck of the front would"):
        draft(order(P92, tuple(tucked("darts", tucks))))


def test_tucks_that_lie_on_each_other_are_refused() -> None:
    made = draft(order(P92, tuple(tucked("darts", FrontTucks(depth=0.8, apart=0.5)))))
    told = next(f for f in made.findings if f.code == "T1")
    assert told.severity is Severity.REFUSE


def test_a_dart_at_the_neck_has_no_tucks_beside_it() -> None:
    dart = BustDart(to=DartPlace.NECK)
    features = swapped(tuple(tucked("darts", FrontTucks())), dart, place_of="side dart")
    with pytest.raises(OrderError, match="opens in the neck, where the tucks begin"):
        draft(order(P92, features))
