"""Pieces laid on paper so that little of it is wasted.

Tiled papers: the pages are one large sheet cut into tiles, and as few tiles as
possible carry anything. Large papers (A0, roll): every piece lies whole on one page,
as few and as short pages as possible; when one is too large for that, large papers
are tiled too. Pieces turn by quarter turns and are never turned over; 0.6 cm between
them. Lengths cm, y down; "the world" is all tiles joined. Our own method: largest
first, each where it opens fewest new tiles, over a few orders and sheet widths.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from clothwright.curves import IDENTITY, Motion, Path, Point, shift, turn
from clothwright.finishing.drawn import DrawnPiece
from clothwright.sheets.formats import Frame
from clothwright.sheets.looks import moved
from clothwright.sheets.raster import Grid, Shape, shape_of

GAP = 0.6
"""Least distance between two pieces, cm."""

CELL = 1.0
"""About the size of a cell of the grid on which places are tried, cm."""

OUTLINE = 0.05
"""Flattening tolerance of outlines for laying, cm; inside the gap."""

Tile = tuple[int, int]
"""(row, column) of a tile, from 0."""


@dataclass(frozen=True)
class Arrangement:
    """Where everything lies. `pieces` are in the world's coordinates."""

    frame: Frame
    pieces: tuple[DrawnPiece, ...]
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
    turned = [_turns(p.cut_line, cell) for p in pieces]
    best: tuple[Score, Laid] | None = None
    found: tuple[Score, Laid] | None
    bins = whole and all(
        any(_fits(t.shape, frame, cell) for t in ways) for ways in turned
    )
    known: Known = {}
    for order in _orders(turned):
        for across in (0,) if bins else _widths(turned, frame, cell):
            if bins:
                found = _lay_whole(turned, order, frame, cell, keep_clear)
            else:
                most = best[0][0] if best else None
                found = _lay_tiled(
                    turned, order, frame, cell, keep_clear, across, known, most
                )
            if found and (best is None or found[0] < best[0]):
                best = found
    laid = best[1] if best else ()
    placed = tuple(moved(p, m) for p, m in zip(pieces, laid, strict=True))
    blank = Arrangement(frame, placed, ((0, 0),), joined=not bins)
    return replace(blank, tiles=tuple(_used(blank)))


Known = dict[tuple[int, int, int], tuple[Tile, ...]]
"""Tiles that a shape covers, by its identity and its place in a tile."""

Score = tuple[int, float]
Laid = tuple[Motion, ...]


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
        corner = Point(-min(p[0] for p in pts), -min(p[1] for p in pts))
        m = shift(corner) @ m
        out.append(_Turned(m, shape_of([m(p) for p in points], cell, GAP)))
    return tuple(out)


def _fits(shape: Shape, frame: Frame, cell: tuple[float, float]) -> bool:
    columns, rows = _count(frame, cell)
    return shape.columns <= columns and len(shape.rows) <= rows


def _orders(turned: Sequence[tuple[_Turned, ...]]) -> list[list[int]]:
    """Largest first, by both sides, by area and by longer side."""
    shapes = [w[0].shape for w in turned]
    keys = [
        [s.columns + len(s.rows) for s in shapes],
        [s.cells for s in shapes],
        [max(s.columns, len(s.rows)) for s in shapes],
    ]
    out: list[list[int]] = []
    for key in keys:
        order = sorted(range(len(shapes)), key=lambda i: (-key[i], i))
        if order not in out:
            out.append(order)
    return out


def _widths(
    turned: Sequence[tuple[_Turned, ...]], frame: Frame, cell: tuple[float, float]
) -> range:
    """Sheet widths to try, in tiles."""
    columns, _ = _count(frame, cell)
    narrow = max((min(t.shape.columns for t in w) for w in turned), default=1)
    least = max(1, math.ceil(narrow / columns))
    return range(least, least + 4)


def _lay_tiled(
    turned: Sequence[tuple[_Turned, ...]],
    order: Sequence[int],
    frame: Frame,
    cell: tuple[float, float],
    keep_clear: tuple[float, float],
    across: int,
    known: Known,
    most: int | None,
) -> tuple[Score, Laid] | None:
    """Lay on a sheet so many tiles wide; None when it takes more than `most`."""
    tw, th = _count(frame, cell)
    cells = sum(w[0].shape.cells for w in turned)
    longest = max((max(t.shape.columns for t in w) for w in turned), default=1)
    down = math.ceil((1.5 * cells / (tw * across) + longest) / th) + 1
    while True:
        table = _Table(Grid(tw * across, th * down), tw, th, known)
        table.reserve(keep_clear, cell)
        laid = table.lay(turned, order, cell, most)
        if laid is not None:
            break
        if most is not None and len(table.used) > most:
            return None
        down *= 2
    return (len(table.used), float(table.lowest)), laid


class _Table:
    """A large sheet of tiles while pieces are being laid on it."""

    def __init__(self, grid: Grid, tw: int, th: int, known: Known) -> None:
        self.grid, self.tw, self.th, self.known = grid, tw, th, known
        self.used: set[Tile] = set()
        self.unused = grid.block(0, 0, grid.columns, grid.rows)
        self.lowest = 0
        self._open((0, 0))

    def _open(self, tile: Tile) -> None:
        if tile not in self.used:
            self.used.add(tile)
            self.unused &= ~self._tile(tile)

    def _tile(self, tile: Tile) -> int:
        return self.grid.block(tile[1] * self.tw, tile[0] * self.th, self.tw, self.th)

    def reserve(self, clear: tuple[float, float], cell: tuple[float, float]) -> None:
        """Keep the upper left of the first tile free."""
        columns = min(self.tw, math.ceil(clear[0] / cell[0] - 1e-9))
        rows = min(self.th, math.ceil(clear[1] / cell[1] - 1e-9))
        self.grid.taken |= self.grid.block(0, 0, columns, rows)

    def lay(
        self,
        turned: Sequence[tuple[_Turned, ...]],
        order: Sequence[int],
        cell: tuple[float, float],
        most: int | None,
    ) -> Laid | None:
        """A motion for every piece; None when the sheet is too short or too full."""
        out: list[Motion] = [IDENTITY] * len(turned)
        for i in order:
            found = self._place(turned[i])
            if found is None:
                return None
            way, place = found
            for tile in self._touched(way.shape, place):
                self._open(tile)
            if most is not None and len(self.used) > most:
                return None
            self.grid.take(way.shape, place)
            y, x = divmod(place, self.grid.columns)
            self.lowest = max(self.lowest, y + len(way.shape.rows))
            out[i] = shift((x * cell[0], y * cell[1])) @ way.motion
        return tuple(out)

    def _place(self, ways: Sequence[_Turned]) -> tuple[_Turned, int] | None:
        """The first place on open tiles, else the one that opens fewest."""
        for way in ways:
            free = self.grid.free(way.shape, self.unused)
            if free:
                return way, _lowest(free)
        best: tuple[tuple[int, int], _Turned, int] | None = None
        for way in ways:
            free = self.grid.free(way.shape)
            for place in self._likely(way.shape, free):
                touched = self._touched(way.shape, place)
                fresh = sum(t not in self.used for t in touched)
                if best is None or (fresh, place) < best[0]:
                    best = (fresh, place), way, place
        return best[1:] if best else None

    def _likely(self, shape: Shape, free: int) -> Iterator[int]:
        """Places worth trying: against tile edges, and the first of all."""
        if not free:
            return
        yield _lowest(free)
        columns, rows, across = shape.columns, len(shape.rows), self.grid.columns
        lefts = _every(self.tw, 0, across)
        rights = _every(self.tw, -columns % self.tw, across)
        tops = self.grid.comb(0, self.th)
        feet = self.grid.comb(-rows % self.th, self.th)
        for xs in (lefts, rights):
            for comb in (tops, feet):
                yield from _bits(free & xs * comb, 12)
            yield from _bits(free & xs * self.grid.comb(0, 1), 4)
        for comb in (tops, feet):
            yield from _bits(free & ((1 << across) - 1) * comb, 4)

    def _touched(self, shape: Shape, place: int) -> list[Tile]:
        y, x = divmod(place, self.grid.columns)
        row, y = divmod(y, self.th)
        column, x = divmod(x, self.tw)
        key = id(shape), x, y
        if key not in self.known:
            self.known[key] = shape.tiles(x, y, self.tw, self.th)
        return [(row + r, column + c) for r, c in self.known[key]]


def _lay_whole(
    turned: Sequence[tuple[_Turned, ...]],
    order: Sequence[int],
    frame: Frame,
    cell: tuple[float, float],
    keep_clear: tuple[float, float],
) -> tuple[Score, Laid]:
    tw, th = _count(frame, cell)
    pages: list[Grid] = []
    lengths: list[int] = []
    out: list[Motion] = [IDENTITY] * len(turned)

    def new_page() -> None:
        pages.append(Grid(tw, th))
        lengths.append(0)

    new_page()
    columns = math.ceil(keep_clear[0] / cell[0] - 1e-9)
    rows = math.ceil(keep_clear[1] / cell[1] - 1e-9)
    pages[0].taken = pages[0].block(0, 0, columns, rows)
    lengths[0] = rows
    for i in order:
        best: tuple[int, int, int, _Turned] | None = None
        page = 0
        while best is None:
            if page == len(pages):
                new_page()
            for way in turned[i]:
                free = pages[page].free(way.shape)
                if free:
                    place = _lowest(free)
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
    return (len(pages), float(sum(lengths))), tuple(out)


def _lowest(bits: int) -> int:
    return (bits & -bits).bit_length() - 1


def _bits(bits: int, most: int) -> Iterator[int]:
    for _ in range(most):
        if not bits:
            return
        yield _lowest(bits)
        bits &= bits - 1


def _every(step: int, first: int, end: int) -> int:
    return sum(1 << x for x in range(first, end, step))


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
