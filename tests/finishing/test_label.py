"""Labels: where lines break, and that every piece can be told by a stranger.

What a label says after truing 10 and first garment 19.
"""

import math
from collections.abc import Sequence
from pathlib import Path

import pdfplumber
import pytest

from clothwright import order as orders_of
from clothwright.body import Body
from clothwright.curves import Point
from clothwright.features.linings.armhole_binding import ArmholeBinding
from clothwright.features.linings.neck_binding import NeckBinding
from clothwright.finishing.boxes import Obstacles, line_width, text_box
from clothwright.finishing.drawn import DrawnPattern, DrawnPiece, DrawnText, Meaning
from clothwright.finishing.label import GLUE, LEADING, broken
from clothwright.finishing.lettering import lettered
from clothwright.sheets import PageFormat, Scale, write_pdf
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import frame_of
from clothwright.sheets.joints import clear_of_joints, joints
from clothwright.sheets.letters import width
from finished import ORDERS, made
from orders import closed_back, order

CM = 1.0
TITLE = f"V-neck top with panelled peplum, order{GLUE}6"


@pytest.mark.parametrize("most", [8, 15, 20, 26, 34, 70])
def test_lines_are_short_and_lose_nothing(most: int) -> None:
    lines = broken(TITLE, most)
    assert " ".join(lines) == TITLE
    for line in lines:
        assert len(line) <= most or " " not in line


def test_lines_break_between_things_and_are_even() -> None:
    assert broken(TITLE, 34) == ["V-neck top with panelled peplum,", f"order{GLUE}6"]
    assert broken("one two three four five six", 16) == [
        "one two three",
        "four five six",
    ]
    assert broken(TITLE, 70) == [TITLE]
    widths = (
        f"allowances included: side{GLUE}2.0{GLUE}cm; waist, panel{GLUE}1.5{GLUE}cm"
    )
    for line in broken(widths, 22):
        assert not line.endswith(("2.0", "1.5", "side", "panel"))


def test_on_a_small_paper_names_keep_off_the_grain_as_well() -> None:
    """Half a millimetre of paper, at a quarter of the size as at the full."""
    piece = next(p for p in made("peplum-top").drawn.pieces if p.code == "UP")
    (grain,) = (k.path for k in piece.lines if k.meaning is Meaning.GRAIN)
    line = Obstacles()
    line.add([grain.start, grain.end])
    for scale in (1.0, 0.5, 0.25):
        beside = {t for b in piece.wording.beside for t in (b.text, b.short) if t}
        texts = [t for t in lettered(piece, scale=scale).texts if t.text in beside]
        assert texts
        for t in texts:
            assert not line.hit(text_box(t), 0.049 * CM / scale), t.text


def _label(piece: DrawnPiece) -> list[DrawnText]:
    return [t for t in piece.texts if t.meaning is Meaning.LABEL]


@pytest.mark.parametrize("name", ORDERS)
def test_every_piece_is_named_counted_and_numbered(name: str) -> None:
    drawn = made(name).drawn
    for piece in drawn.pieces:
        said = " ".join(t.text for t in _label(piece))
        assert piece.name.upper() in said
        assert f"piece {piece.number} of {piece.total}" in said
        for cut in piece.cuts:
            count, _, way = cut.how.partition(", ")
            assert f"cut {count}" in said, piece.code
            assert way in said, piece.code
        bold = [t.text for t in _label(piece) if t.bold]
        assert " ".join(bold) == piece.name.upper()


NARROW = {
    ("sleeved-top", "FF"),
    ("sleeved-top", "BF"),
    ("bishop-blouse", "BF"),
    ("knit-top", "KN"),
}
"""Neck facings of 4 and 5 cm, a neck band of 4: of whose they are, what finds room."""


FULL = ("trousers", "FL")
"""A fly facing of 4 cm: its allowances stand on the first page."""


@pytest.mark.parametrize("paper", [None, PageFormat.A4, PageFormat.LETTER])
@pytest.mark.parametrize("name", ORDERS)
def test_pieces_say_whose_they_are_too(name: str, paper: PageFormat | None) -> None:
    """Every piece its client, all but the narrowest order and date, and all of those
    but one their allowances; where words keep off the joins of pages, too."""
    drawn = made(name).drawn
    pieces = drawn.pieces if paper is None else _joined(drawn, paper)
    wide = [p for p in pieces if (name, p.code) not in NARROW]
    allowances = 0
    for piece in pieces:
        said = " ".join(t.text for t in _label(piece))
        assert drawn.client in said, piece.code
        if piece in wide:
            allowances += "allowances included" in said
            assert f"measured {drawn.measured}" in said, piece.code
            assert f"order {drawn.title.rsplit(' ', 1)[1]}" in said, piece.code
    assert allowances == sum((name, p.code) != FULL for p in wide)


@pytest.mark.parametrize("name", ORDERS)
def test_no_word_lies_over_a_join(name: str) -> None:
    """Where the piece leaves another place (truing 10); what is left off is kept."""
    drawn = made(name).drawn
    laid = arrange(drawn.pieces, frame_of(PageFormat.A4), whole=False)
    laid = clear_of_joints(laid, drawn.pieces, 1.0)
    there = Obstacles()
    for a, b in joints(laid):
        corner, f = laid.origin(b), laid.frame
        run = Point(0, f.live_height) if a[0] == b[0] else Point(f.live_width, 0)
        there.add([corner, corner + run])
    for piece, draft in zip(laid.pieces, drawn.pieces, strict=True):
        assert not [t.text for t in piece.texts if there.hit(text_box(t))], piece.code
        said = " ".join(t.text for t in piece.texts)
        said += " ".join(piece.unsaid)
        for line in (*draft.wording.label[0], *draft.wording.label[2]):
            words = line.replace(GLUE, " ").split()
            assert all(word in said for word in words), piece.code


def test_what_a_label_leaves_off_stands_on_the_first_page(tmp_path: Path) -> None:
    drawn = made("peplum-top").drawn
    target = tmp_path / "quarter.pdf"
    write_pdf(drawn, target, page=PageFormat.A4, scale=Scale.QUARTER)
    with pdfplumber.open(target) as pdf:
        first = pdf.pages[0].extract_text()
    assert "Panel behind: ink crêpe, lining, interlining: cut 1 on fold" in first


def _joined(drawn: DrawnPattern, paper: PageFormat) -> Sequence[DrawnPiece]:
    """The pieces as they lie on pages that are joined."""
    laid = arrange(drawn.pieces, frame_of(paper), whole=False)
    return clear_of_joints(laid, drawn.pieces, 1.0).pieces


@pytest.mark.parametrize("text", ["1½", "18", "14⅜", "11¹⁄₁₆", "WAISTBAND", "FLY"])
@pytest.mark.parametrize("bold", [False, True])
def test_words_are_no_wider_than_is_reckoned(text: str, bold: bool) -> None:
    """Short words of wide letters too, as the printing font measures them."""
    assert width(text, 0.4, bold=bold) <= line_width(text, 0.4, bold=bold) + 0.03 * CM


@pytest.mark.parametrize("name", ORDERS)
def test_name_and_count_stand_together(name: str) -> None:
    """Line under line in one reading direction, but on the narrow panel behind, where
    they follow each other along it."""
    for piece in made(name).drawn.pieces:
        label = [t for t in _label(piece) if t.text not in _beside(piece)]
        i = next(i for i, t in enumerate(label) if t.bold)
        j = next(j for j, t in enumerate(label) if "piece " in t.text)
        block = label[i : j + 1]
        turns = {round(t.degrees, 3) for t in block}
        if piece.code == "UP":
            assert len(turns) <= 2
            continue
        assert len(turns) == 1, piece.code
        a = math.radians(block[0].degrees)
        down = (-math.sin(a), math.cos(a))
        for s, t in zip(block, block[1:], strict=False):
            step = (t.at.x - s.at.x) * down[0] + (t.at.y - s.at.y) * down[1]
            assert step == pytest.approx(LEADING * s.height, abs=0.01 * CM)


def _beside(piece: DrawnPiece) -> set[str]:
    return {s for b in piece.wording.beside for s in (b.text, b.short)}


@pytest.mark.parametrize("name", ORDERS)
def test_letters_are_at_least_4_mm(name: str) -> None:
    """Truing 10; names that find no other room and figures may be 3.2 mm, and what
    stands below name and count 2.2 mm before it is left off."""
    for piece in made(name).drawn.pieces:
        first = {t.replace(GLUE, " ") for t in piece.wording.label[0]}
        for t in piece.texts:
            least = 0.32 if t.text in first | _beside(piece) else 0.22
            assert t.height >= least * CM
        assert all(t.height >= 0.40 * CM for t in _label(piece) if t.bold)


@pytest.mark.parametrize("name", ORDERS)
def test_every_line_for_the_eye_and_every_fold_is_named(name: str) -> None:
    for piece in made(name).drawn.pieces:
        said = " ".join(t.text for t in piece.texts)
        for line in piece.lines:
            if line.meaning is Meaning.INNER:
                assert line.note in said, piece.code
            if line.meaning is Meaning.FOLD:
                assert "on the fold" in said, piece.code


def test_a_pattern_of_no_named_client_has_labels_too() -> None:
    """Nothing of a label is empty, which could not be broken into lines."""
    body = Body.of({"HT": 165, "HB": 87, "B": 92, "W": 72, "H": 98})
    above = closed_back(lines="darts")
    parts = tuple(f for f in above if f.kind != "facing")
    made_of = orders_of.draft(order(body, (*parts, NeckBinding(), ArmholeBinding())))
    drawn = orders_of.pattern(made_of).drawn
    assert drawn.client == "" and drawn.whose == ""
    for piece in drawn.pieces:
        assert all(all(group) for group in piece.wording.label), piece.code
