"""Labels of narrow pieces: jets and bindings carry theirs too, on every paper (truing
10); what finds no room at all is told."""

from collections.abc import Iterator, Sequence
from itertools import combinations
from pathlib import Path

import pdfplumber
import pytest
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

from bodies import P80, P92, THEA
from clothwright.body import Body
from clothwright.curves import Point
from clothwright.features import Feature
from clothwright.features.pockets.back_pocket import BackPocket
from clothwright.features.pockets.breast_pocket import BreastPocket
from clothwright.features.pockets.set_on import Shape
from clothwright.features.pockets.set_pocket import SetPocket
from clothwright.features.skirts.skirt_zip import SkirtZip
from clothwright.features.skirts.straight_skirt import StraightSkirt
from clothwright.features.skirts.waist_facing import WaistFacing
from clothwright.features.sleeves.puffed_cap import PuffedCap
from clothwright.finishing.boxes import Obstacles, text_box
from clothwright.finishing.drawn import DrawnPattern, DrawnPiece, DrawnText, Meaning
from clothwright.finishing.finish import label_findings
from clothwright.finishing.lettering import lettered
from clothwright.order import draft, pattern
from clothwright.sheets import PageFormat, Scale, write_pdf
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import frame_of
from clothwright.sheets.joints import clear_of_joints
from combinations import FEATURES, alone, name
from orders import closed_back, order, trouser_features

CM = 1.0
NOUGHT = Point(0.0, 0.0)
ORDERS = {
    "back pocket": trouser_features(BackPocket(shape=Shape.JETTED)),
    "breast pocket": (
        *closed_back(lines="darts"),
        BreastPocket(shape=Shape.JETTED),
    ),
}
JETS = {"back pocket": "KJ", "breast pocket": "XJ"}


def laid(drawn: DrawnPattern) -> Iterator[Sequence[DrawnPiece]]:
    """The pieces on pages of A0 and of A4."""
    for paper in (PageFormat.A0, PageFormat.A4):
        whole = paper is PageFormat.A0
        pages = arrange(drawn.pieces, frame_of(paper), whole=whole)
        if pages.joined:
            pages = clear_of_joints(pages, drawn.pieces, 1.0)
        yield pages.pieces


def unlabelled(piece: DrawnPiece) -> list[str]:
    """What a stranger must know of a piece and it does not say."""
    said = " ".join(t.text for t in piece.texts if t.meaning is Meaning.LABEL)
    asked = [piece.name.upper(), f"piece {piece.number} of {piece.total}"]
    asked += [f"cut {c.how.partition(', ')[0]}" for c in piece.cuts]
    return [words for words in asked if words not in said]


def overlapping(piece: DrawnPiece) -> list[tuple[str, str]]:
    """Words of a piece that lie over each other."""
    boxes = [(t, Polygon(text_box(t).corners())) for t in piece.texts]
    return [
        (s.text, t.text)
        for (s, a), (t, b) in combinations(boxes, 2)
        if s.degrees != t.degrees and a.intersects(b)  # lines of one block lie close
    ]


def grazed(piece: DrawnPiece) -> float:
    """How much of the grain line lies within 3 mm of a stitch line, cm."""
    lines = {m: [k.path for k in piece.lines if k.meaning is m] for m in Meaning}
    sewn = unary_union([LineString(p.flatten(0.02)) for p in lines[Meaning.SEW]])
    (grain,) = lines[Meaning.GRAIN]
    return LineString((grain.start, grain.end)).intersection(sewn.buffer(0.3)).length


@pytest.mark.parametrize("kind", FEATURES, ids=name)
def test_every_piece_of_every_feature_is_labelled(kind: type[Feature]) -> None:
    """No word lies over another, and no grain line along a seam (it once lay on the
    loose edge of a front facing, all the way down); notches reach the cut line, at the
    foot of a slanting pocket too."""
    made = pattern(draft(order(P92, alone(kind))))
    for pieces in laid(made.drawn):
        for piece in pieces:
            assert not unlabelled(piece), piece.code
            assert not overlapping(piece), piece.code
    assert "label" not in {f.code for f in made.findings}
    for piece in made.drawn.pieces:
        if piece.code not in JETS.values():
            assert grazed(piece) < 5.0 * CM, piece.code
        for notch in piece.notches:
            assert piece.cut_line.nearest(notch.outer)[1] < 0.05 * CM, notch.note


def test_a_figure_in_the_middle_of_a_line_of_words_is_seen() -> None:
    """A small box within a large one meets none of its sides."""
    long = DrawnText(Meaning.LABEL, "shell, interlining: cut 4 of each", NOUGHT, 0.5)
    for k in range(-5, 6):
        there = Obstacles()
        there.add(text_box(long).hatched())
        small = DrawnText(Meaning.DIMENSION, "4⅜", Point(k * 1.0, 0.05), 0.32)
        assert there.hit(text_box(small))


@pytest.mark.parametrize("body", [P80, P92, THEA])
@pytest.mark.parametrize("which", ORDERS)
def test_a_jet_has_its_label_in_its_allowances(which: str, body: Body) -> None:
    """A strip of 1 cm says all that others say, inside its cut line and over no line
    of its own."""
    drawn = pattern(draft(order(body, ORDERS[which]))).drawn
    for pieces in laid(drawn):
        jet = next(p for p in pieces if p.code == JETS[which])
        assert not unlabelled(jet)
        assert drawn.client in " ".join(t.text for t in jet.texts)
        paper = Polygon(jet.cut_line.flatten(0.01))
        lines = Obstacles()
        for line in jet.lines:
            lines.add(line.path.flatten(0.01))
        for t in jet.texts:
            box = text_box(t)
            assert paper.contains(Polygon(box.corners())), t.text
            assert not lines.hit(box), t.text
            assert t.height >= 0.22 * CM


def test_what_has_no_room_for_any_label_is_told(tmp_path: Path) -> None:
    """At a quarter of its size a jet is 2.5 mm wide, its allowances too: the first page
    says what is to be written on it; a warning does, were a full size so narrow."""
    drawn = pattern(draft(order(P92, ORDERS["back pocket"]))).drawn
    jet = next(p for p in drawn.pieces if p.code == "KJ")
    assert not list(label_findings(jet))
    (found,) = label_findings(lettered(jet, scale=0.25))
    assert str(found).startswith(
        "Jet is too narrow for its label and has none. Write on it by hand: JET; "
    )
    target = tmp_path / "quarter.pdf"
    write_pdf(drawn, target, page=PageFormat.A4, scale=Scale.QUARTER)
    with pdfplumber.open(target) as pdf:
        first = pdf.pages[0].extract_text().replace("\n", " ")
    assert "Jet, too narrow here for its label: JET; " in first
    assert f"piece {jet.number} of {jet.total}" in first


def test_both_halves_of_a_gathered_cap_say_what_they_come_to() -> None:
    """Words beside the back half were sought outside it, and left off."""
    made = pattern(draft(order(P92, alone(PuffedCap))))
    (sleeve,) = (p for p in made.drawn.pieces if p.code == "SL")
    said = [t.text for t in sleeve.texts if t.text.startswith("gather to")]
    assert len(said) == 2


def test_a_line_that_a_dart_divides_is_named_once() -> None:
    """The upper stitching of a pocket, on either side of a dart's point."""
    features = (StraightSkirt(), SetPocket(shape=Shape.JETTED), SkirtZip())
    drawn = pattern(draft(order(P92, (*features, WaistFacing())))).drawn
    (front,) = (p for p in drawn.pieces if p.code == "SF")
    said = [t.text for t in front.texts]
    assert len([k for k in front.lines if k.note == "upper stitching"]) > 1
    assert said.count("upper stitching") == 1
