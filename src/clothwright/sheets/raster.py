"""Pieces as squares of a grid: the reckoning behind laying them close together.

A grid is one whole number; bit `y * columns + x` is the cell x, y. Shifting that
number slides a piece, and "and" tells whether two pieces touch, so every place on
the paper is tried at once. Cells are (width, height) in cm.
"""

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise

from clothwright.curves import Point

EDGE = 1e-6
"""An outline that passes a cell's edge by less than this stays outside, in cells."""


Block = tuple[int, int, int, int]
"""(row, first column, columns, rows)."""


@dataclass(frozen=True)
class Shape:
    """A piece as rows of cells, its upper left cell at 0, 0."""

    columns: int
    rows: tuple[int, ...]
    """The cells that it covers, one number a row."""

    blocks: tuple[Block, ...]
    """Blocks that together are its cells."""

    core: tuple[Block, ...] = ()
    """Blocks of those cells whose middles lie inside the outline itself."""

    def tiles(self, x: int, y: int, tw: int, th: int) -> Iterator[tuple[int, int]]:
        """(row, column) of the tiles of tw × th cells that it lies on, laid at x, y."""
        for first in range(y - y % th, len(self.rows) + y, th):
            bits = 0
            for i in range(max(0, first - y), min(len(self.rows), first - y + th)):
                bits |= self.rows[i]
            bits <<= x
            column = 0
            while bits:
                if bits & ((1 << tw) - 1):
                    yield first // th, column
                bits >>= tw
                column += 1

    @cached_property
    def cells(self) -> int:
        """How many cells it covers."""
        return sum(r.bit_count() for r in self.rows)


def shape_of(points: Sequence[Point], cell: tuple[float, float], grow: float) -> Shape:
    """A closed outline as the cells that it covers when it is grown by `grow`; it
    lies `grow` from 0, 0."""
    cx, cy = cell
    width = max(p[0] for p in points) + grow
    height = max(p[1] for p in points) + grow
    columns = max(1, math.ceil(width / cx - EDGE))
    count = max(1, math.ceil(height / cy - EDGE))
    core = _middles(points, cell, columns, count)
    edge = _edges(points, cell, grow, columns, count)
    rows = tuple(a | b for a, b in zip(core, edge, strict=True))
    return Shape(columns, rows, tuple(_blocks(rows)), tuple(_blocks(core)))


def _edges(
    points: Sequence[Point],
    cell: tuple[float, float],
    grow: float,
    columns: int,
    count: int,
) -> list[int]:
    """The cells that come within `grow` of the outline, sideways or up and down.

    An edge that runs along the border of two cells belongs to neither.
    """
    cx, cy = cell
    right, low = columns - 1, count - 1
    rows = [0] * count
    for a, b in zip(points, points[1:], strict=False):
        (xa, ya), (xb, yb) = (a, b) if a[1] <= b[1] else (b, a)
        first = int((ya - grow) / cy + EDGE)
        last = int((yb + grow) / cy - EDGE)
        slope = (xb - xa) / (yb - ya) if yb > ya else 0.0
        for i in range(max(0, first), min(low, last) + 1):
            top, foot = i * cy - grow, (i + 1) * cy + grow
            x0 = xa + slope * (top - ya) if top > ya and slope else xa
            x1 = xa + slope * (foot - ya) if foot < yb and slope else xb
            if x1 < x0:
                x0, x1 = x1, x0
            c0 = max(0, int((x0 - grow) / cx + EDGE))
            c1 = min(right, int((x1 + grow) / cx - EDGE))
            if c1 >= c0:
                rows[i] |= ((1 << (c1 - c0 + 1)) - 1) << c0
    return rows


def _middles(
    points: Sequence[Point], cell: tuple[float, float], columns: int, count: int
) -> list[int]:
    """The cells whose middles lie inside the outline."""
    cx, cy = cell
    middles = [(i + 0.5) * cy for i in range(count)]
    cuts: list[list[float]] = [[] for _ in middles]
    for a, b in pairwise(points):
        i, j = bisect_left(middles, a[1]), bisect_left(middles, b[1])
        for k in range(i, j) if i < j else range(j, i):
            x = a[0] + (b[0] - a[0]) * (middles[k] - a[1]) / (b[1] - a[1])
            cuts[k].append(x)
    return [_filled(sorted(c), cx, columns) for c in cuts]


def _filled(cuts: list[float], cx: float, columns: int) -> int:
    """The cells of a row whose middles lie between a first and a second cut."""
    row = 0
    for left, right in zip(cuts[::2], cuts[1::2], strict=False):
        first = max(0, math.ceil(left / cx - 0.5))
        last = min(columns - 1, math.floor(right / cx - 0.5))
        if last >= first:
            row |= ((1 << (last - first + 1)) - 1) << first
    return row


def _blocks(rows: Sequence[int]) -> Iterator[Block]:
    """Runs that stand unchanged in rows below each other are one block."""
    open_runs: dict[tuple[int, int], int] = {}
    for i, row in enumerate([*rows, 0]):
        runs = set(_runs(row))
        for run in [r for r in open_runs if r not in runs]:
            first = open_runs.pop(run)
            yield first, *run, i - first
        for run in runs:
            open_runs.setdefault(run, i)


def _runs(row: int) -> Iterator[tuple[int, int]]:
    at = 0
    while row:
        skip = (row & -row).bit_length() - 1
        row >>= skip
        length = ((row + 1) & ~row).bit_length() - 1
        yield at + skip, length
        row >>= length
        at += skip + length


@lru_cache(256)
def _rectangle(columns: int, rows: int, across: int) -> int:
    """The upper left cells, so many across and down, of a grid `across` wide."""
    every = ((1 << (across * rows)) - 1) // ((1 << across) - 1)
    return ((1 << columns) - 1) * every


class Grid:
    """A sheet of paper as cells, some of them taken."""

    def __init__(self, columns: int, rows: int) -> None:
        self.columns, self.rows = columns, rows
        self.taken = 0

    def block(self, x: int, y: int, columns: int, rows: int) -> int:
        """A rectangle of cells, cut off at the sheet's edge."""
        columns, rows = min(columns, self.columns - x), min(rows, self.rows - y)
        if columns <= 0 or rows <= 0:
            return 0
        return _rectangle(columns, rows, self.columns) << (y * self.columns + x)

    def free(self, shape: Shape) -> int:
        """Every place where the shape's upper left cell may lie."""
        across = self.columns - shape.columns + 1
        down = self.rows - len(shape.rows) + 1
        if across < 1 or down < 1:
            return 0
        barred = touching(shape.blocks, self.taken, self.columns)
        return self.block(0, 0, across, down) & ~barred

    def take(self, shape: Shape, place: int) -> None:
        """Lay the shape on the sheet."""
        for i, row in enumerate(shape.rows):
            self.taken |= row << (place + i * self.columns)


def touching(blocks: Sequence[Block], cells: int, columns: int) -> int:
    """The places at which blocks touch any of these cells, in a grid so wide."""
    grown = {(0, 0): cells}
    """The cells smeared over 2^k columns and 2^j rows."""
    found = 0
    for y, x, wide, tall in blocks:
        k, j = wide.bit_length() - 1, tall.bit_length() - 1
        smear = _grown(grown, k, j, columns)
        at = y * columns + x
        right, low = wide - (1 << k), (tall - (1 << j)) * columns
        found |= smear >> at
        if right:
            found |= smear >> (at + right)
        if low:
            found |= smear >> (at + low)
            if right:
                found |= smear >> (at + right + low)
    return found


def _grown(grown: dict[tuple[int, int], int], k: int, j: int, columns: int) -> int:
    known = grown.get((k, j))
    if known is None:
        less = (
            _grown(grown, k, j - 1, columns) if j else _grown(grown, k - 1, 0, columns)
        )
        by = columns << (j - 1) if j else 1 << (k - 1)
        known = grown[k, j] = less | less >> by
    return known
