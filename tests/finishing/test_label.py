"""Labels: where lines break, and that every piece can be told by a stranger.

What a label says after truing 10 and first garment 19.
"""

import math
from collections.abc import Sequence

import pytest

from clothwright.finishing.boxes import line_width
from clothwright.finishing.drawn import DrawnPattern, DrawnPiece, DrawnText, Meaning
from clothwright.finishing.label import GLUE, LEADING, broken
from clothwright.sheets import PageFormat
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import frame_of
from clothwright.sheets.joints import clear_of_joints
from clothwright.sheets.letters import width
from finished import ORDERS, made

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


@pytest.mark.parametrize("paper", [None, PageFormat.A4, PageFormat.LETTER])
@pytest.mark.parametrize("name", ORDERS)
def test_pieces_say_whose_they_are_too(name: str, paper: PageFormat | None) -> None:
    """Every piece its client, all but the narrowest order and date, and four of five
    of those their allowances; where words keep off the joins of pages, too."""
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
    assert allowances >= len(wide) * 4 / 5 - (paper is not None)


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
    """Truing 10; names that find no other room and figures may be 3.2 mm."""
    for piece in made(name).drawn.pieces:
        for t in piece.texts:
            assert t.height >= 0.32 * CM
        assert all(t.height >= 0.40 * CM for t in _label(piece) if t.bold)


@pytest.mark.parametrize("name", ORDERS)
def test_every_line_for_the_eye_and_every_fold_is_named(name: str) -> None:
    for piece in made(name).drawn.pieces:
        said = " ".join(t.text for t in piece.texts)
        for line in piece.lines:
            # a buttonhole is shorter than its name, which the first page says
            if line.meaning is Meaning.INNER and "buttonhole" not in line.note:
                assert line.note in said, piece.code
            if line.meaning is Meaning.FOLD:
                assert "on the fold" in said, piece.code
