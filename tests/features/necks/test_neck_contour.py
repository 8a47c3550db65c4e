"""Contoured, pointed and slit necks (transformations 1.8 and 2)."""

import math
from itertools import product

import pytest

from bodies import P80, P92, P116, YSOLDE, ansur_whole
from clothwright.body import Body
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.opened_dart import dart_angle_of
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.linings.lining import Lining, Mode
from clothwright.features.necks.neck_shapes import BackShape, FrontShape
from clothwright.features.necks.necklines import BackNeckline, Neckline
from clothwright.making import making_order
from clothwright.order import Draft, OrderError, draft, pattern
from clothwright.paper import EdgeKind, Sheet, straight
from orders import closed_back, cut_faults, order, sleeved_features, swapped

MM = 0.1


def necked(
    front: Neckline, back: BackNeckline | None = None, lines: str = "darts"
) -> tuple[Feature, ...]:
    features = swapped(closed_back(lines=lines), front)
    return swapped(features, back) if back else features


def side_dart(made: Draft) -> float:
    p = made.sheet.points
    table = Sheet().put(made.sheet.piece("F"))
    f = table.piece("F")
    bp = p["BP"]
    a, b = f.edge("dart low").path.start, f.edge("dart high").path.end
    return math.degrees(2 * math.asin(distance(a, b) / (2 * distance(bp, a))))


def test_a_wedge_sent_to_a_dart() -> None:
    """1.0 closed at 12 from BP adds 1.250 to a dart at 15 (G16, exact)."""
    turn = 2 * math.asin(1.0 / (2 * 12.0))
    assert 2 * 15.0 * math.sin(turn / 2) == pytest.approx(1.250, abs=1e-3)


@pytest.mark.parametrize(
    ("shape", "body"),
    list(
        product(
            (FrontShape.SCOOP, FrontShape.V, FrontShape.SQUARE, FrontShape.SWEETHEART),
            (P80, P92, P116, YSOLDE),
        )
    ),
)
def test_the_front_wedge_goes_to_the_bust_dart(shape: FrontShape, body: Body) -> None:
    """The dart opens by 2·asin(cn/(2·|BP Mn|)); shoulder and armhole keep their lengths
    (exact); the neck edge comes out shorter, by no more than twice the wedge."""
    plain = draft(order(body, necked(Neckline(shape=shape, contour=0.0))))
    drawn = draft(order(body, necked(Neckline(shape=shape, contour=1.0))))
    assert not drawn.failed, drawn.failures()
    n, m = drawn.numbers, drawn.sheet.points["Mn"]
    assert distance(drawn.sheet.points["BP"], m) == pytest.approx(n.reach_n, abs=1e-6)
    assert n.phi_n == pytest.approx(
        2 * math.degrees(math.asin(1.0 / (2 * n.reach_n))), abs=1e-9
    )
    assert side_dart(drawn) - side_dart(plain) == pytest.approx(n.phi_n, abs=1e-3)
    a, b = (d.sheet.piece("F") for d in (plain, drawn))
    for name in ("shoulder", "armhole", "side low", "side high"):
        assert b.edge(name).length == pytest.approx(a.edge(name).length, abs=1e-6)
    shorter = a.edge("neck").length - b.edge("neck").length
    assert 0.2 < shorter < 1.8
    assert b.edge("waist").length == pytest.approx(a.edge("waist").length, abs=1e-6)


@pytest.mark.parametrize("lines", ["armhole", "shoulder"])
def test_a_panel_line_takes_the_wedge_up(lines: str) -> None:
    """The opening at the start is 2·|BP Qf|·sin((θ + φn)/2) (exact)."""
    front = Neckline(shape=FrontShape.SCOOP, contour=1.0)
    made = draft(order(P92, necked(front, lines=lines)))
    assert not made.failed, made.failures()
    n, p = made.numbers, made.sheet.points
    turn = math.radians(n.theta + n.phi_n)
    wanted = 2 * distance(p["BP"], p["Qf"]) * math.sin(turn / 2)
    assert distance(p["Qf"], p["Q2"]) == pytest.approx(wanted, abs=1e-6)
    assert n.kappa == pytest.approx(n.theta + n.phi_n + n.phi_a + n.omega, abs=1e-9)


@pytest.mark.parametrize("lines", ["armhole", "darts", "shoulder"])
@pytest.mark.parametrize("shape", [BackShape.V, BackShape.U, BackShape.SCOOP])
def test_the_back_wedge_goes_to_the_waist_dart(shape: BackShape, lines: str) -> None:
    """The back's shoulder and stitched waist are as they were; its waist dart, sewn or
    in the panel seam, is wider by the wedge (exact)."""
    if lines == "shoulder":
        back = BackNeckline(shape=shape, contour=0.8)
        front = Neckline(shape=FrontShape.ROUND)
        with pytest.raises(OrderError, match="both turn the shoulder"):
            draft(order(P92, necked(front, back, lines)))
        return
    made = []
    for amount in (0.0, 0.8):
        back = BackNeckline(shape=shape, contour=amount)
        front = Neckline(shape=FrontShape.ROUND)
        made.append(draft(order(P92, necked(front, back, lines))))
        assert not made[-1].failed, made[-1].failures()
    plain, drawn = made
    for code in ("B", "BC", "BS"):
        if code not in plain.sheet.pieces:
            continue
        for name in ("shoulder", "armhole", "side", "waist", "waist side"):
            if plain.sheet.piece(code).has(name):
                a, b = (d.sheet.length(code, name) for d in made)
                assert b == pytest.approx(a, abs=0.1 * MM)
    if lines == "darts":
        angles = [dart_angle_of(d.sheet.piece("B"), "leg side", "leg cb") for d in made]
        gained = angles[1] - angles[0]
        assert gained == pytest.approx(drawn.numbers.phi_nb, abs=0.05)


@pytest.mark.parametrize("k", [54, 126, 219])
@pytest.mark.parametrize("lines", ["armhole", "darts"])
def test_without_a_back_dart_the_back_wedge_goes_to_the_armhole(
    lines: str, k: int
) -> None:
    """A back that takes in nothing at the waist has no dart to open: side and waist
    stay where they were (exact)."""
    made = []
    for amount in (0.0, 0.8):
        back = BackNeckline(shape=BackShape.SCOOP, contour=amount)
        front = Neckline(shape=FrontShape.ROUND)
        made.append(draft(order(ansur_whole()[k], necked(front, back, lines))))
        assert not made[-1].failed, made[-1].failures()
    plain, drawn = (d.sheet for d in made)
    assert made[1].numbers.bd_net == 0.0
    arms = [
        sum(e.length for p in s.pieces.values() for e in p.edges if e.name == "armhole")
        for s in (plain, drawn)
    ]
    assert arms[1] == pytest.approx(arms[0], abs=0.5 * MM)
    for code in ("B", "BC", "BS"):
        for name in ("side", "waist", "waist side"):
            if code in plain.pieces and plain.piece(code).has(name):
                a, b = plain.edge(code, name), drawn.edge(code, name)
                assert b.length == pytest.approx(a.length, abs=0.1 * MM)
                assert distance(b.path.end, a.path.end) < 0.1 * MM


@pytest.mark.parametrize("body", [P80, P92, P116, YSOLDE])
def test_a_sweetheart_comes_to_a_point_above_its_arcs(body: Body) -> None:
    """The arcs' feet 2.5 (2 to 4) below the point, smooth there, clear of the bust
    points; drawn in by 1.2·(0.6 + 0.1·c) unasked."""
    made = draft(order(body, necked(Neckline(shape=FrontShape.SWEETHEART))))
    assert not made.failed, made.failures()
    n, neck = made.numbers, made.sheet.piece("F").edge("neck").path
    assert neck.bounds()[3] - neck.end.y == pytest.approx(2.5, abs=0.1 * MM)
    side, arc = neck.segments
    assert distance(side.end_direction, arc.start_direction) < 1e-6
    assert n.cn == pytest.approx(min(2.0, 1.2 * min(1.8, max(0.6, 0.6 + 0.1 * n.c))))
    assert not cut_faults(made)


@pytest.mark.parametrize("slit", [6.0, 8.0, 12.0])
@pytest.mark.parametrize("mode", [None, Mode.TO_EDGE, Mode.BELOW_FACING])
def test_a_keyhole_closes_with_a_button_and_a_loop(
    slit: float, mode: Mode | None
) -> None:
    """The drop is as long as ordered, faced with the neck, and what closes it is bought
    and sewn."""
    neck = Neckline(shape=FrontShape.KEYHOLE, slit=slit)
    features = necked(neck)
    if mode is not None:
        if mode is Mode.TO_EDGE:
            features = tuple(f for f in features if f.kind != "facing")
        features = (*features, Lining(mode=mode))
    made = draft(order(P92, features))
    assert not made.failed, made.failures()
    assert any("not cut out" in note for note in pattern(made, words=False).drawn.notes)
    for piece in pattern(made, words=False).drawn.pieces:
        if piece.on_fold:  # no cloth is beyond it, inside the slit either
            fold = made.sheet.piece(piece.code).fold
            assert fold is not None
            x = fold.path.start.x
            over = [p.x - x for p in piece.cut_line.flatten(0.01)]
            assert min(max(over), -min(over)) < 0.02
    path = made.sheet.piece("F").edge("neck").path
    assert path.end.y - made.sheet.points["C"].y == pytest.approx(slit, abs=1e-9)
    told = [op.title for op in making_order(made).operations]
    assert any("loop" in t and "keyhole" in t for t in told)
    assert any("button" in t and "keyhole" in t for t in told)
    assert not cut_faults(made)


def test_a_neck_without_an_opening_passes_the_head() -> None:
    """HEAD 56 and 2 (R-j): a round neck is refused, one that is low in front and behind
    is not; nor is any whose back opens."""
    for front, back, passes in (
        (FrontShape.ROUND, BackShape.ROUND, False),
        (FrontShape.KEYHOLE, BackShape.ROUND, False),
        (FrontShape.SCOOP, BackShape.U, True),
    ):
        features = necked(Neckline(shape=front), BackNeckline(shape=back))
        made = draft(order(P92, features))
        assert not [f for f in made.findings if f.code == "R-j"]
        b, n = made.sheet.piece("B"), made.numbers
        on_fold = straight(
            "cb", b.edge("cb").path.start, b.edge("cb").path.end, EdgeKind.FOLD
        )
        sheet = made.sheet.put(b.with_edge(on_fold))
        necks = [sheet.lines[f"neck {half}"].length for half in ("front", "back")]
        found = [f for f in features[2].checks(n, sheet) if f.code == "R-j"]
        assert bool(found) is not passes
        assert (2 * sum(necks) >= 58.0) is passes


@pytest.mark.parametrize("amount", [0.1, 2.0])
def test_an_unusual_contour_is_doubted(amount: float) -> None:
    """A scoop 0.6 to 1.0, scaled 0.6 to 1.8 by the cup (1.8)."""
    front = Neckline(shape=FrontShape.SCOOP, contour=amount)
    made = draft(order(P92, necked(front)))
    assert [f for f in made.findings if f.code == "N12"]


def test_side_darts_still_split_when_the_wedge_makes_them_wide() -> None:
    """Over 20° two darts (C19)."""
    front = Neckline(shape=FrontShape.V, contour=2.0)
    features = swapped(necked(front), SideDart())
    made = draft(order(P116, features))
    n = made.numbers
    assert (n.n_darts > 1) == (n.theta + n.phi_n > 20.0)


@pytest.mark.parametrize("shape", [FrontShape.SWEETHEART, FrontShape.KEYHOLE])
def test_a_neck_facing_is_refused_for_a_winding_neck(shape: FrontShape) -> None:
    with pytest.raises(OrderError, match="not yet drawn for a sweetheart"):
        draft(order(P92, sleeved_features(Neckline(shape=shape))))
