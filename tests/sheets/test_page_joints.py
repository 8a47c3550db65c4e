"""Pages that are joined, read from the file by pdfplumber; shapely judges."""

from itertools import pairwise, product
from pathlib import Path

import pattern_fixture as fx
import pdfplumber
import pypdfium2
import pytest
from pdfplumber.page import Page
from shapely.geometry import Polygon, box

from clothwright.sheets import PageFormat, Scale, write_pdf
from clothwright.sheets.arrange import HALO, Arrangement, arrange
from clothwright.sheets.formats import BLEED, MARGIN, Frame, frame_of
from clothwright.sheets.joints import THREAD, joints
from clothwright.sheets.title import SQUARE_IN
from finished import ORDERS, made

CM = 72 / 2.54
MM = 0.1
HOME = (PageFormat.A4, PageFormat.LETTER)

MOST = {
    ("peplum-top", PageFormat.A4): 14,
    ("peplum-top", PageFormat.LETTER): 14,
    ("zip-top", PageFormat.A4): 15,
    ("zip-top", PageFormat.LETTER): 16,
    ("panelled-top", PageFormat.A4): 21,
    ("panelled-top", PageFormat.LETTER): 22,
    ("sleeved-top", PageFormat.A4): 15,
    ("sleeved-top", PageFormat.LETTER): 15,
    ("straight-skirt", PageFormat.A4): 13,
    ("straight-skirt", PageFormat.LETTER): 14,
    ("trousers", PageFormat.A4): 22,
    ("trousers", PageFormat.LETTER): 22,
    ("knit-top", PageFormat.A4): 12,
    ("knit-top", PageFormat.LETTER): 13,
    ("bishop-blouse", PageFormat.A4): 17,
    ("bishop-blouse", PageFormat.LETTER): 17,
    ("sheath-dress", PageFormat.A4): 18,
    ("sheath-dress", PageFormat.LETTER): 20,
}
"""Pages of the demo's orders, so that no change wastes paper unseen."""


def _tile(page: Page) -> tuple[int, int]:
    """Row and column from the page's name in its header."""
    name = page.crop((0, 0, 0.15 * page.width, 1.35 * CM)).extract_text().split()[0]
    return ord(name[0]) - ord("A"), int(name[1:]) - 1


def _straddlers(page: Page, f: Frame, have: set[tuple[int, int]]) -> list[str]:
    """Characters that a trim line of this page cuts. A character's box is as tall as
    its line, of which the ink of a capital leaves a fifth above and below."""
    row, column = _tile(page)
    left, right = f.left * CM, (f.left + f.live_width) * CM
    top, foot = f.top * CM, (f.top + f.live_height) * CM
    found = []
    for c in page.chars:
        bare = 0.2 * c["size"]
        beside, above = (1.0, bare) if c["upright"] else (bare, 1.0)
        down = c["bottom"] > top and c["top"] < foot
        across = c["x1"] > left and c["x0"] < right
        for x, other in ((left, (row, column - 1)), (right, (row, column + 1))):
            if other in have and down and c["x0"] < x - beside and c["x1"] > x + beside:
                found.append(c["text"])
        for y, other in ((top, (row - 1, column)), (foot, (row + 1, column))):
            if (
                other in have
                and across
                and c["top"] < y - above
                and c["bottom"] > y + above
            ):
                found.append(c["text"])
    return found


@pytest.mark.parametrize("page", HOME)
@pytest.mark.parametrize("name", ORDERS)
def test_no_word_runs_over_a_join(name: str, page: PageFormat, tmp_path: Path) -> None:
    """But on two facings that a join cuts where they are narrowest, a word each, and
    on a fly's shield that one cuts lengthwise, the line of its count; and on a neck
    band, whose fold has no other room for its figure."""
    target = tmp_path / "a.pdf"
    count = write_pdf(made(name).drawn, target, page=page)
    assert count <= MOST[name, page]
    with pdfplumber.open(target) as pdf:
        have = {_tile(p) for p in pdf.pages}
        assert len(have) == count
        cut = [c for p in pdf.pages for c in _straddlers(p, frame_of(page), have)]
    assert len(cut) <= _CUT.get(name, 0), cut


_CUT = {"peplum-top": 2, "sleeved-top": 6, "trousers": 34, "knit-top": 6}
"""Letters that a join cuts, each counted on both pages."""


def test_a_page_holds_its_own_words_only(tmp_path: Path) -> None:
    """Searched or read aloud, a page tells what is seen on it; of a word that runs
    over a join both pages hold all."""
    target = tmp_path / "a.pdf"
    drawn = made("peplum-top").drawn
    write_pdf(drawn, target)
    with pdfplumber.open(target) as pdf:
        for page in pdf.pages:
            for c in page.chars:
                assert -2 * CM < c["x0"] < page.width + 2 * CM
                assert -2 * CM < c["top"] < page.height + 2 * CM
        words = sum(len(p.chars) for p in pdf.pages[1:])
    assert words < 2 * sum(len(t.text) for p in drawn.pieces for t in p.texts) + 2000


def test_the_first_page_tells_how_to_join(tmp_path: Path) -> None:
    target = tmp_path / "a.pdf"
    write_pdf(made("peplum-top").drawn, target)
    with pdfplumber.open(target) as pdf:
        first = " ".join(pdf.pages[0].extract_text().split())
        other = " ".join(pdf.pages[1].extract_text().split())
    assert "pages are named by row and column, as on the map" in first
    assert "the halves of every numbered button make a ring" in first
    assert "Only this page has them" in first
    assert "To join" not in other


@pytest.mark.parametrize("name", ORDERS)
def test_notes_keep_clear_of_the_buttons(name: str, tmp_path: Path) -> None:
    """The ring and the thread at the right trim line have their room."""
    target = tmp_path / "a.pdf"
    f = frame_of(PageFormat.A4)
    write_pdf(made(name).drawn, target)
    with pdfplumber.open(target) as pdf:
        lines = pdf.pages[0].extract_text_lines(x_tolerance=1.5)
    # what stands at the left edge below the squares, and is no word on a piece
    below = [k for k in lines if k["top"] > (f.top + SQUARE_IN) * CM]
    notes = [k for k in below if abs(k["x0"] - f.left * CM) < MM * CM]
    assert any(k["text"].startswith("To join") for k in notes)
    end = max(c["x1"] for k in notes for c in _run(k["chars"]))
    assert end < (f.left + f.live_width - THREAD) * CM


def _run(chars: list[dict[str, float]]) -> list[dict[str, float]]:
    """The first characters of a line, up to a gap wider than words have."""
    for i, (a, b) in enumerate(pairwise(chars), 1):
        if b["x0"] - a["x1"] > 1.0 * CM:
            return chars[:i]
    return chars


@pytest.mark.parametrize("name", ORDERS)
def test_small_scales_have_nothing_to_join(name: str, tmp_path: Path) -> None:
    """Pieces that fit lie whole on the page; the block says the scale aloud and that
    the test squares are not scaled."""
    target = tmp_path / "a.pdf"
    unit = made(name).drawn.unit
    for scale, word in ((Scale.HALF, "HALF SCALE"), (Scale.QUARTER, "QUARTER SCALE")):
        write_pdf(made(name).drawn, target, scale=scale)
        with pdfplumber.open(target) as pdf:
            first = " ".join(pdf.pages[0].extract_text().split())
            squares = [
                round(r["width"] / CM, 3)
                for r in pdf.pages[0].rects
                if abs(r["width"] - r["height"]) < 0.01 and r["width"] > 9 * CM
            ]
        assert sorted(squares) == [10.0, 10.16]
        assert word in first
        assert "The squares are 10 cm and 4 in on the paper." in first
        here = 4 if unit == "in" else 10
        assert f"{here} {unit} here are {here / scale.value:g} {unit}" in first
        assert ("To join" in first) == (not _whole(name, scale))


def _whole(name: str, scale: Scale) -> bool:
    """Whether the longest piece fits the page."""
    boxes = [p.cut_line.bounds() for p in made(name).drawn.pieces]
    longest = max(max(b[2] - b[0], b[3] - b[1]) for b in boxes)
    return longest * scale.value < frame_of(PageFormat.A4).live_height


def _laid(name: str, page: PageFormat) -> Arrangement:
    f = frame_of(page)
    clear = f.live_width, 13.0
    return arrange(made(name).drawn.pieces, f, whole=False, keep_clear=clear)


@pytest.mark.parametrize("page", HOME)
@pytest.mark.parametrize("name", ORDERS)
def test_pieces_lie_on_a_page_or_keep_off_it(name: str, page: PageFormat) -> None:
    """A piece runs on to a page by more than a sliver, or stays clear of its trim
    line; but a piece as wide as a page has no choice."""
    laid = _laid(name, page)
    f = laid.frame
    assert HALO > BLEED  # so that a neighbour's paper is never seen on a page
    columns = 2 + max(c for _, c in laid.tiles)
    rows = 2 + max(r for r, _ in laid.tiles)
    for piece in laid.pieces:
        shape = Polygon(piece.cut_line.flatten(0.001))
        left, top, right, foot = shape.bounds
        assert left > HALO - 0.5 * MM
        assert top > HALO - 0.5 * MM
        if 0 <= f.live_width - (right - left) < 2 * HALO:
            continue
        for r, c in product(range(rows), range(columns)):
            at = laid.origin((r, c))
            tile = box(at.x, at.y, at.x + f.live_width, at.y + f.live_height)
            gap = shape.distance(tile)
            if gap > 0:
                assert gap > HALO - 0.5 * MM, (piece.code, r, c)
                continue
            x0, y0, x1, y1 = shape.intersection(tile).bounds
            assert min(x1 - x0, y1 - y0) > 0.2, (piece.code, r, c)


def test_every_page_has_marks_where_it_is_joined() -> None:
    """Truing 11, item 14: a button at every joint, half on each of its two pages."""
    for name in ORDERS:
        laid = _laid(name, PageFormat.A4)
        met = joints(laid)
        for a, b in met:
            assert abs(a[0] - b[0]) + abs(a[1] - b[1]) == 1
        crossing = {t for joint in met for t in joint}
        assert crossing == set(laid.tiles)


def test_whole_pages_show_nothing_of_the_next(tmp_path: Path) -> None:
    """On large papers nothing runs on beyond the last piece of a page."""
    target = tmp_path / "a.pdf"
    pieces = [p for p in fx.twelve() if p.code != "ST"] * 3
    count = write_pdf(fx.of_pieces(*pieces), target, page=PageFormat.A0)
    assert count > 1
    pdf = pypdfium2.PdfDocument(target)
    dpi = 50.8  # two pixels a millimetre
    for i in range(count):
        seen = pdf[i].render(scale=dpi / 72, grayscale=True).to_numpy()
        assert (seen[-round(MARGIN * 20) :] > 250).all()
    pdf.close()
