"""Pieces on paper: apart, clear of the title, never turned over; shapely judges."""

import itertools
import math

import pattern_fixture as fx
import pytest
from shapely import Polygon, box

from clothwright.curves import degrees_between
from clothwright.finishing.drawn import DrawnPiece
from clothwright.sheets.arrange import GAP, Arrangement, arrange
from clothwright.sheets.formats import PageFormat, frame_of

MM = 0.1
CLEAR = (19.0, 13.0)


def _laid(page: PageFormat, pieces: tuple[DrawnPiece, ...]) -> Arrangement:
    whole = page in (PageFormat.A0, PageFormat.ROLL)
    clear = (min(CLEAR[0], frame_of(page).live_width), CLEAR[1])
    return arrange(pieces, frame_of(page), whole=whole, keep_clear=clear)


def _shape(piece: DrawnPiece) -> Polygon:
    return Polygon(piece.cut_line.flatten(0.001))


@pytest.mark.parametrize("page", list(PageFormat))
def test_pieces_lie_apart_and_clear_of_the_title(page: PageFormat) -> None:
    laid = _laid(page, fx.twelve())
    shapes = [_shape(p) for p in laid.pieces]
    for a, b in itertools.combinations(shapes, 2):
        assert a.distance(b) > GAP - 2 * MM  # the grid's outlines are 0.5 mm coarse
    title = box(0, 0, *CLEAR)
    assert all(s.intersection(title).area < 1e-6 for s in shapes)


@pytest.mark.parametrize("page", list(PageFormat))
def test_every_piece_keeps_its_shape_and_its_grain_is_square(page: PageFormat) -> None:
    """Quarter turns only, and never turned over: areas keep their sign."""
    for before, after in zip(fx.six(), _laid(page, fx.six()).pieces, strict=True):
        assert after.cut_line.area == pytest.approx(before.cut_line.area, abs=1e-6)
        assert after.cut_line.length == pytest.approx(before.cut_line.length, abs=1e-6)
        was, now = before.lines[-1].path, after.lines[-1].path
        turn = degrees_between(was.start_direction, now.start_direction)
        assert min(abs(turn - k) for k in (0, 90, 180)) < 1e-6


@pytest.mark.parametrize("page", list(PageFormat))
def test_the_pages_are_those_that_carry_paper(page: PageFormat) -> None:
    laid = _laid(page, fx.six())
    f = laid.frame
    shapes = [_shape(p) for p in laid.pieces]
    for row, column in itertools.product(range(12), range(12)):
        x, y = column * f.live_width, row * f.live_height
        tile = box(x, y, x + f.live_width, y + f.live_height)
        covered = sum(s.intersection(tile).area for s in shapes)
        if (row, column) in laid.tiles:
            assert covered > 1e-6 or (row, column) == (0, 0)
        else:
            assert covered < 0.01  # not even a millimetre square


def test_a_square_needs_no_second_page() -> None:
    laid = _laid(PageFormat.A4, (fx.square_piece(),))
    assert laid.tiles == ((0, 0),)


@pytest.mark.parametrize("page", [PageFormat.A0, PageFormat.ROLL])
def test_large_papers_hold_whole_pieces(page: PageFormat) -> None:
    pieces = tuple(p for p in fx.twelve() if p.code != "ST")
    laid = _laid(page, pieces)
    assert not laid.joined
    f = laid.frame
    for piece in laid.pieces:
        left, top, right, foot = piece.cut_line.bounds()
        row = math.floor(top / f.live_height + 1e-9)
        assert left >= -1e-6
        assert right <= f.live_width + 1e-6
        assert top >= row * f.live_height - 1e-6
        assert foot <= (row + 1) * f.live_height + 1e-6


def test_too_large_for_a_large_paper_is_joined() -> None:
    assert _laid(PageFormat.A0, (fx.strip(),)).joined


def test_paper_is_not_wasted() -> None:
    """Fewer tiles than the pieces would take one by one, each turned at its best."""
    f = frame_of(PageFormat.A4)
    alone = 0
    for piece in fx.six():
        left, top, right, foot = piece.cut_line.bounds()
        w, h = right - left, foot - top
        alone += min(
            math.ceil(a / f.live_width - 1e-9) * math.ceil(b / f.live_height - 1e-9)
            for a, b in ((w, h), (h, w))
        )
    assert len(_laid(PageFormat.A4, fx.six()).tiles) <= 0.7 * alone


def test_the_same_pieces_are_laid_the_same_way() -> None:
    first = _laid(PageFormat.A4, fx.twelve())
    assert first.pieces == _laid(PageFormat.A4, fx.twelve()).pieces


def test_no_pieces_is_one_page() -> None:
    assert _laid(PageFormat.A4, ()).tiles == ((0, 0),)
