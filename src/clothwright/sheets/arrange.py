"""Pieces laid on paper so that little of it is wasted.

Tiled papers: the pages are one large sheet cut into tiles, and as few tiles as
possible carry anything. Large papers (A0, roll): every piece lies whole on one page,
as few and as short pages as possible; when one is too large for that, large papers
are tiled too. Pieces turn by quarter turns and are never turned over; 0.5 cm between
them, and 0.25 from a trim line that they do not cross. Lengths cm, y down; "the world"
is all tiles joined.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from clothwright.curves import IDENTITY, Motion, Path, Point, shift, turn
from clothwright.finishing.drawn import DrawnPiece
from clothwright.sheets.formats import Frame
from clothwright.sheets.looks import moved
from clothwright.sheets.raster import Grid, Shape, shape_of
from clothwright.sheets.tiles import Tile, Tiles, orders

HALO = 0.25
"""Free paper round a piece, cm: to trim lines that it does not cross."""

GAP = 2 * HALO
"""Least distance between two pieces, cm."""

CELL = 0.7
"""About the size of a cell of the grid on which places are tried, cm."""

OUTLINE = 0.05
"""Flattening tolerance of outlines for laying, cm; inside the gap."""


@dataclass(frozen=True)
class Arrangement:
    """Where everything lies. `pieces` are in the world's coordinates."""

    frame: Frame
    pieces: tuple[DrawnPiece, ...]
    motions: tuple[Motion, ...]
    """How each piece was moved from where it was drafted."""

    tiles: tuple[Tile, ...]
    """The tiles that carry something, row by row; the first one is (0, 0)."""

    joined: bool
    """True when pieces run over tiles, so that pages must be joined."""

    def origin(self, tile: Tile) -> Point:
        """The upper left of a tile in the world."""
        row, column = tile
        return Point(column * self.frame.live_width, row * self.frame.live_height)


@dataclass(frozen=True)
class _Turned:
    """A piece in one of its four turns, its upper left at 0, 0."""

    motion: Motion
    shape: Shape


def arrange(
    pieces: Sequence[DrawnPiece],
    frame: Frame,
    *,
    whole: bool,
    keep_clear: tuple[float, float] = (0.0, 0.0),
) -> Arrangement:
    """Lay pieces on pages; `keep_clear` (width, height) stays free on the first.

    `whole` asks for pieces that lie whole on one page where they all can.
    """
    cell = _cell(frame)
    size = _count(frame, cell)
    turned = [_turns(p.cut_line, cell) for p in pieces]
    bins = whole and all_fit(pieces, frame)
    clear = (
        min(size[0], math.ceil(keep_clear[0] / cell[0] - 1e-9)),
        min(size[1], math.ceil(keep_clear[1] / cell[1] - 1e-9)),
    )
    if bins:
        laid = _lay_whole(turned, frame, cell, clear)
    else:
        spots = Tiles(*size, clear).lay([[t.shape for t in w] for w in turned])
        laid = tuple(
            shift((x * cell[0], y * cell[1])) @ ways[i].motion
            for ways, (i, x, y) in zip(turned, spots, strict=True)
        )
    placed = tuple(moved(p, m) for p, m in zip(pieces, laid, strict=True))
    blank = Arrangement(frame, placed, laid, ((0, 0),), joined=not bins)
    return replace(blank, tiles=tuple(_used(blank)))


def all_fit(pieces: Sequence[DrawnPiece], frame: Frame) -> bool:
    """True when every piece can lie whole on one page."""
    least, most = sorted((frame.live_width, frame.live_height))
    for piece in pieces:
        left, top, right, foot = piece.cut_line.bounds()
        sides = sorted((right - left + GAP, foot - top + GAP))
        if sides[0] > least or sides[1] > most:
            return False
    return True


def _cell(frame: Frame) -> tuple[float, float]:
    """A cell that divides the live part evenly, so that tiles end on cells."""
    return (
        frame.live_width / round(frame.live_width / CELL),
        frame.live_height / round(frame.live_height / CELL),
    )


def _count(frame: Frame, cell: tuple[float, float]) -> tuple[int, int]:
    return round(frame.live_width / cell[0]), round(frame.live_height / cell[1])


def _turns(outline: Path, cell: tuple[float, float]) -> tuple[_Turned, ...]:
    points = outline.flatten(OUTLINE)
    out = []
    for degrees in (0, 90, 180, 270):
        m = turn(Point(0, 0), degrees) if degrees else IDENTITY
        pts = [m(p) for p in points]
        left, top = min(p[0] for p in pts), min(p[1] for p in pts)
        m = shift(Point(HALO - left, HALO - top)) @ m
        out.append(_Turned(m, shape_of([m(p) for p in points], cell, HALO)))
    return tuple(out)


def _lay_whole(
    turned: Sequence[tuple[_Turned, ...]],
    frame: Frame,
    cell: tuple[float, float],
    clear: tuple[int, int],
) -> tuple[Motion, ...]:
    """As few and as short pages as a few orders give; of more than one page also
    those with one piece after another moved to the front."""
    shapes = [[t.shape for t in ways] for ways in turned]
    best = min(_filled(turned, o, frame, cell, clear) for o in orders(shapes))
    if best.pages > 1:
        fronts = ([i, *(j for j in best.order if j != i)] for i in best.order[1:])
        best = min(best, *(_filled(turned, o, frame, cell, clear) for o in fronts))
    return best.motions


class _Filled(NamedTuple):
    """Pages filled in an order; the least is the best."""

    pages: int
    length: int
    """Of all pages together, in cells."""

    order: list[int]
    motions: tuple[Motion, ...]


def _filled(
    turned: Sequence[tuple[_Turned, ...]],
    order: list[int],
    frame: Frame,
    cell: tuple[float, float],
    clear: tuple[int, int],
) -> _Filled:
    """Lay every piece in an order, each on the first page that has room."""
    tw, th = _count(frame, cell)
    pages: list[Grid] = []
    lengths: list[int] = []
    out: list[Motion] = [IDENTITY] * len(turned)

    def new_page() -> None:
        pages.append(Grid(tw, th))
        lengths.append(0)

    new_page()
    pages[0].taken = pages[0].block(0, 0, *clear)
    lengths[0] = clear[1]
    for i in order:
        best: tuple[int, int, int, _Turned] | None = None
        page = 0
        while best is None:
            if page == len(pages):
                new_page()
            for way in turned[i]:
                free = pages[page].free(way.shape)
                if free:
                    place = (free & -free).bit_length() - 1
                    foot = place // tw + len(way.shape.rows)
                    score = max(foot, lengths[page]), foot, place, way
                    if best is None or score[:3] < best[:3]:
                        best = score
            page += 1
        page -= 1
        _, foot, place, way = best
        pages[page].take(way.shape, place)
        lengths[page] = max(lengths[page], foot)
        y, x = divmod(place, tw)
        at = (x * cell[0], y * cell[1] + page * frame.live_height)
        out[i] = shift(at) @ way.motion
    return _Filled(len(pages), sum(lengths), order, tuple(out))


def _used(a: Arrangement) -> list[Tile]:
    """The tiles that paper of some piece really lies on, and the first one."""
    w, h = a.frame.live_width, a.frame.live_height
    used = {(0, 0)}
    for piece in a.pieces:
        pts = piece.cut_line.flatten(OUTLINE)
        columns = max(1, math.ceil(max(p[0] for p in pts) / w - 1e-6))
        rows = max(1, math.ceil(max(p[1] for p in pts) / h - 1e-6))
        shape = shape_of(pts, (w, h), 0.0)
        for r in range(rows):
            for c in range(columns):
                if shape.rows[r] >> c & 1:
                    used.add((r, c))
    return sorted(used)
