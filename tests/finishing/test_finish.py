"""Finished pieces: cut lines, corners, notches and words.

Widths and corners of first garment 18 and truing 8 (common practice, no source);
shapely judges overlaps.
"""

from itertools import combinations

import pytest
from shapely.geometry import LineString, Point, Polygon

from bodies import BRIDA
from clothwright.curves import Path as PaperPath
from clothwright.curves import Point as P
from clothwright.curves import distance
from clothwright.features import Feature
from clothwright.features.bodice.strapless import Strapless
from clothwright.features.collars.shirt_collar import ShirtCollar
from clothwright.features.necks.halter import Halter
from clothwright.features.necks.straps import Straps
from clothwright.features.openings.button_stand import ButtonStand
from clothwright.features.openings.under_panel import UnderPanel
from clothwright.features.roles import Role
from clothwright.features.said import Said
from clothwright.features.sleeves.cuff import Cuff
from clothwright.features.sleeves.gathered_hem import GatheredHem
from clothwright.features.sleeves.set_in_sleeve import SetInSleeve
from clothwright.features.sleeves.sleeve_lengths import Reach
from clothwright.findings import Severity
from clothwright.finishing.allowances import Allowances, check_partners
from clothwright.finishing.boxes import text_box
from clothwright.finishing.cutline import cut_line
from clothwright.finishing.drawn import DrawnLine, DrawnPiece, Meaning
from clothwright.finishing.lettering import bracket
from clothwright.order import draft, pattern
from clothwright.paper import (
    Edge,
    EdgeKind,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    straight,
)
from clothwright.sheets.looks import strokes
from clothwright.units import Unit
from finished import ORDERS, made
from orders import closed_back, order, sleeved_features, swapped

MM = 0.1


def test_a_square_piece_gets_square_corners() -> None:
    """All edges of one rank: corners run on until they meet (exact)."""
    a, b, c, d = P(0, 0), P(10, 0), P(10, 10), P(0, 10)
    piece = Piece(
        "UP",
        "Patch",
        (
            straight("top", a, b),
            straight("right", b, c),
            straight("low", c, d),
            straight("left", d, a),
        ),
    )
    line = cut_line(piece, Allowances(Unit.CM, Said(UnderPanel.pieces)))
    w = Role.SMALL.width(Unit.CM)
    assert line.outline.area == pytest.approx((10 + 2 * w) ** 2, abs=1e-6)


def test_a_hollow_too_tight_is_named() -> None:
    a, b, c, d = P(0, 0), P(10, 0), P(10, 10), P(0, 10)
    g, h = P(4.4, 0), P(5.6, 0)
    hollow = PaperPath.cubic(g, P(4.4, 0.8), P(5.6, 0.8), h)  # radius 6 mm
    piece = Piece(
        "UP",
        "Patch",
        (
            straight("top", a, g),
            Edge("hollow", hollow),
            straight("top on", h, b),
            straight("right", b, c),
            straight("low", c, d),
            straight("left", d, a),
        ),
    )
    line = cut_line(piece, Allowances(Unit.CM, Said()))
    assert line.narrow == ("hollow",)
    assert Polygon(line.outline.flatten(0.001)).is_valid


def test_a_fold_has_no_allowance() -> None:
    a, b, c, d = P(0, 0), P(10, 0), P(10, 10), P(0, 10)
    piece = Piece(
        "UP",
        "Patch",
        (
            straight("top", a, b),
            straight("fold", b, c, EdgeKind.FOLD),
            straight("low", c, d),
            straight("left", d, a),
        ),
    )
    line = cut_line(piece, Allowances(Unit.CM, Said()))
    assert line.outline.bounds()[2] == pytest.approx(10.0, abs=1e-6)


def test_mirrored_corner_lies_under_the_crossing_edge() -> None:
    """At a seam pressed open, the allowance's end is the mirror image, in the stitch
    line, of the cut line that crosses it (exact for straight lines)."""
    a, b, c, d = P(0, 0), P(10, 3), P(10, 14), P(0, 14)
    piece = Piece(
        "FS",
        "Side",
        (
            straight("armhole", a, b),
            straight("side", b, c),
            straight("waist", c, d),
            straight("panel", d, a),
        ),
    )
    line = cut_line(piece, Allowances(Unit.CM, Said()))
    poly = Polygon(line.outline.flatten(0.001))
    side = Role.SIDE.width(Unit.CM)
    # inside points near the corner, mirrored in the side's stitch line (x = 10)
    for depth in (0.3, 1.0, 1.7):
        top_in = poly.intersection(LineString([(10 - depth, -20), (10 - depth, 7)]))
        top_out = poly.intersection(LineString([(10 + depth, -20), (10 + depth, 7)]))
        if depth < side:
            assert top_in.bounds[1] == pytest.approx(top_out.bounds[1], abs=0.2 * MM)


def test_the_whole_of_a_curved_neighbour_is_mirrored() -> None:
    """A turned hem beside seams that curve: folded up, its ends lie on the seams' own
    allowances all the way (truing 8, mirrored hem; shapely folds)."""
    a, b, c, d = P(0, 0), P(24, 0), P(22, 5), P(2, 5)
    left = PaperPath.cubic(d, P(2, 3.5), P(0, 1.5), a)
    right = PaperPath.cubic(b, P(24, 1.5), P(22, 3.5), c)
    piece = Piece(
        "SL",
        "Sleeve",
        (
            straight("cap front", a, b),
            Edge("underarm front", right),
            straight("hem", c, d, EdgeKind.FINISHED),
            Edge("underarm back", left),
        ),
    )
    line = cut_line(piece, Allowances(Unit.CM, Said(SetInSleeve.pieces)))
    poly = Polygon(line.outline.flatten(0.001))
    for depth in (0.5, 1.5, 2.4):
        above, below = (
            poly.intersection(LineString([(-20, y), (50, y)])).bounds
            for y in (5 - depth, 5 + depth)
        )
        assert above[0] == pytest.approx(below[0], abs=0.1 * MM)
        assert above[2] == pytest.approx(below[2], abs=0.1 * MM)


@pytest.mark.parametrize("name", ORDERS)
def test_allowances_are_as_wide_as_they_say(name: str) -> None:
    """At the middle of every edge the cut line is its allowance away, within 0.3 mm."""
    p = made(name)
    plan = Allowances(p.draft.order.unit, p.draft.order.said)
    for drawn in p.drawn.pieces:
        net = p.draft.sheet.piece(drawn.code)
        ring = LineString(drawn.cut_line.flatten(0.001))
        for e in net.edges:
            if plan.role(net, e.name) in (Role.DART, Role.FOLD):
                continue
            mid = e.path.at_length(e.length / 2)
            gap = ring.distance(Point(mid))
            width = sum(plan.ends(net, e.name)) / 2
            if e.length > 4 * width:
                assert gap == pytest.approx(width, abs=0.3 * MM), (drawn.code, e.name)


def test_every_notch_has_its_mate() -> None:
    for name in ORDERS:
        p = made(name)
        # one side of a joint is the joint itself, and a twin is the same piece again
        asked = sum(
            n.ticks * (1 if s.kind is SeamKind.TWIN or "joint" in n.note else 2)
            for s in p.draft.sheet.seams
            for n in s.notches
        )
        drawn = sum(
            len([k for k in piece.notches if not k.note.startswith(("loop", "dart"))])
            for piece in p.drawn.pieces
        )
        assert drawn == asked


@pytest.mark.parametrize("name", ORDERS)
def test_no_word_lies_over_a_line_or_another_word(name: str) -> None:
    """Every stroke that is drawn, notches, arrowheads and brackets too; tape runs along
    the stitch line, where figures may touch it."""
    for piece in made(name).drawn.pieces:
        _words_are_clear(piece)


def test_nor_on_the_small_pieces_of_other_styles() -> None:
    """A halter's band, a strap, a shirt's stand and cuff."""
    halter = _without("neckline", "back neckline", "sleeveless armhole", Halter())
    strapless = _without("neckline", "back neckline", "sleeveless armhole", Strapless())
    shirt = swapped(sleeved_features(*SHIRT), ButtonStand(), place_of="concealed zip")
    for features in (halter, (*strapless, Straps()), shirt):
        for piece in pattern(draft(order(BRIDA, features))).drawn.pieces:
            _words_are_clear(piece)


SHIRT = (SetInSleeve(reach=Reach.WRIST), GatheredHem(), Cuff(), ShirtCollar())


def _without(*kinds: str | Feature) -> tuple[Feature, ...]:
    """A closed back with darts, without some features but with others."""
    block, *rest = (f for f in closed_back(lines="darts") if f.kind not in kinds)
    return (block, *(f for f in kinds if isinstance(f, Feature)), *rest)


def _words_are_clear(piece: DrawnPiece) -> None:
    lines = [
        (k.meaning, LineString(k.path.flatten(0.01)))
        for k in strokes(piece)
        if k.meaning is not Meaning.TAPE
    ]
    inside = Polygon(piece.cut_line.flatten(0.01))
    boxes = [(t, Polygon(text_box(t).corners(-0.05))) for t in piece.texts]
    for t, box in boxes:
        assert inside.contains(box), (piece.code, t.text)
        for meaning, line in lines:
            assert not line.intersects(box), (piece.code, t.text, meaning)
    for (s, one), (t, other) in combinations(boxes, 2):
        assert not one.intersects(other), (piece.code, s.text, t.text)


def _of(piece: DrawnPiece, meaning: Meaning) -> list[DrawnLine]:
    return [k for k in piece.lines if k.meaning is meaning]


@pytest.mark.parametrize("name", ORDERS)
def test_a_fold_s_bracket_is_clear_of_the_stitch_lines(name: str) -> None:
    """On a V neck too, where the fold ends in a point."""
    for piece in made(name).drawn.pieces:
        runs = _of(piece, Meaning.BRACKET)
        assert len(runs) == len(_of(piece, Meaning.FOLD))
        sewn = [LineString(k.path.flatten(0.01)) for k in _of(piece, Meaning.SEW)]
        for run in runs:
            drawn = LineString(bracket(run.path))
            assert run.path.length > 1.0
            assert all(drawn.distance(line) > 0.2 for line in sewn), piece.code


def test_loops_are_half_rings_and_only_the_first_is_notched() -> None:
    """So that the loops cannot be taken for the notches of the facing."""
    (back,) = [p for p in made("peplum-top").drawn.pieces if p.code == "BC"]
    rings = _of(back, Meaning.LOOP)
    assert len(rings) == 11  # the order's loops on one edge (demo scenario 6)
    assert [n.note for n in back.notches if "loop" in n.note] == ["loop 1"]
    slant = next(k.path for k in back.lines if k.note == "BC.slant")
    net = Polygon(made("peplum-top").draft.sheet.piece("BC").outline.flatten(0.001))
    for ring in rings:
        assert slant.nearest(ring.path.start)[1] < 0.1 * MM
        assert slant.nearest(ring.path.end)[1] < 0.1 * MM
        assert not net.contains(Point(ring.path.at_length(ring.path.length / 2)))


def test_a_grain_line_keeps_off_the_buttons() -> None:
    (panel,) = [p for p in made("peplum-top").drawn.pieces if p.code == "UP"]
    (grain,) = _of(panel, Meaning.GRAIN)
    assert grain.path.length >= 15.0  # truing 7
    for cross in _of(panel, Meaning.DRILL):
        line = LineString(cross.path.flatten(0.01))
        assert line.distance(LineString(grain.path.flatten(0.01))) > 0.2


def test_a_dart_says_what_it_takes_in() -> None:
    """The figure at its mouth is the width of the mouth, not the way round its cap."""
    (front,) = [p for p in made("zip-top").drawn.pieces if p.code == "F"]
    said = {t.text for t in front.texts}
    legs = [k.path for k in _of(front, Meaning.DART)]
    assert len(legs) == 4
    for first, second in zip(legs[::2], legs[1::2], strict=True):
        mouth = distance(first.start, second.end)
        assert f"dart {mouth:.1f}" in said
        assert f"{first.length:.1f}" in said


@pytest.mark.parametrize("name", ORDERS)
def test_every_dart_says_how_wide_it_is(name: str) -> None:
    """Without the word, where the mouth is too narrow for it."""
    for piece in made(name).drawn.pieces:
        said = {t.text for t in piece.texts}
        for b in piece.wording.beside:
            if b.text.startswith("dart "):
                assert said & {b.text, b.text.removeprefix("dart ")}, piece.code


def test_only_what_is_gathered_says_so() -> None:
    """Not the waist of an open back, on which the facing's foot covers a part."""
    for piece in made("peplum-top").drawn.pieces:
        assert not any("gather" in b.text for b in piece.wording.beside), piece.code
    back = next(p for p in made("peplum-top").drawn.pieces if p.code == "BC")
    waist = made("peplum-top").draft.sheet.length("BC", "waist") / 2.54
    shown = f"{int(waist)}¹⁄₁₆"  # 2.05 in to the nearest sixteenth
    assert shown in {t.text for t in back.texts}


@pytest.mark.parametrize("name", ORDERS)
def test_every_piece_has_a_grain_line(name: str) -> None:
    for piece in made(name).drawn.pieces:
        assert _of(piece, Meaning.GRAIN), piece.code
        assert piece.cuts


def test_partners_of_other_allowances_are_refused() -> None:
    """Truing 8: seam partners have the same allowance, whatever their names."""
    a, b, c, d = P(0, 0), P(10, 0), P(10, 10), P(0, 10)
    corners = (a, b), (b, c), (c, d), (d, a)

    def piece(code: str, *names: str) -> Piece:
        edges = (straight(n, *ends) for n, ends in zip(names, corners, strict=True))
        return Piece(code, code, tuple(edges))

    sheet = (
        Sheet()
        .put(piece("FS", "armhole", "side", "waist", "panel"))
        .put(piece("BS", "armhole", "panel", "waist", "side"))
    )
    for mine, theirs, severity in (
        ("side", "side", None),
        ("side", "panel", Severity.REFUSE),
    ):
        seam = Seam("S4", "side", (Run("FS", mine),), (Run("BS", theirs),), "a", "b")
        found = list(check_partners(sheet.sew(seam), Allowances(Unit.CM, Said())))
        assert [f.severity for f in found] == ([severity] if severity else [])


def test_partners_have_one_allowance() -> None:
    for name in ORDERS:
        assert not [f for f in made(name).findings if "allowances" in f.sentence]


@pytest.mark.parametrize("name", ORDERS)
def test_nothing_crosses_a_fold(name: str) -> None:
    """The paper of a piece on the fold lies wholly on one side of it (within 0.1 mm),
    a V neck's allowance included."""
    for drawn in made(name).drawn.pieces:
        fold = made(name).draft.sheet.piece(drawn.code).fold
        if fold is None:
            continue
        u, o = fold.path.start_direction, fold.path.start
        for q in drawn.cut_line.flatten(0.001):
            beyond = u[1] * (q[0] - o[0]) - u[0] * (q[1] - o[1])
            assert beyond <= 0.1 * MM, (drawn.code, q)
