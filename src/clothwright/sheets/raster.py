"""Pieces as squares of a grid: the reckoning behind laying them close together.

A grid is one whole number; bit `y * columns + x` is the cell x, y. Shifting that
number slides a piece, and "and" tells whether two pieces touch, so every place on
the paper is tried at once. Cells are (width, height) in cm.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from clothwright.curves import Point

EDGE = 1e-6
"""An outline that passes a cell's edge by less than this stays outside, in cells."""


@dataclass(frozen=True)
class Shape:
    """A piece as rows of cells, its upper left cell at 0, 0."""

    columns: int
    rows: tuple[int, ...]
    """The cells that it covers, one number a row."""

    fat: tuple[int, ...]
    """The same grown by the gap; `border` cells more on every side."""

    border: int
    runs: tuple[tuple[int, int, int], ...]
    """(row, first column, length) of every unbroken run of cells."""

    def tiles(self, x: int, y: int, tw: int, th: int) -> tuple[tuple[int, int], ...]:
        """(row, column) of the tiles of tw × th cells that it lies on, laid at x, y."""
        found: list[tuple[int, int]] = []
        for first in range(0, len(self.rows) + y, th):
            bits = 0
            for i in range(max(0, first - y), min(len(self.rows), first - y + th)):
                bits |= self.rows[i]
            bits <<= x
            column = 0
            while bits:
                if bits & ((1 << tw) - 1):
                    found.append((first // th, column))
                bits >>= tw
                column += 1
        return tuple(found)

    @property
    def cells(self) -> int:
        """How many cells it covers."""
        return sum(r.bit_count() for r in self.rows)


def shape_of(points: Sequence[Point], cell: tuple[float, float], gap: float) -> Shape:
    """A closed outline, its upper left at 0, 0, as the cells that cover it."""
    cx, cy = cell
    width = max(p[0] for p in points)
    height = max(p[1] for p in points)
    columns = max(1, math.ceil(width / cx - EDGE))
    count = max(1, math.ceil(height / cy - EDGE))
    border = math.ceil(gap / min(cx, cy))
    inside = [_inside(points, (i + 0.5) * cy, cx, columns) for i in range(count)]
    rows = _edges(points, cell, 0.0, 0, columns, count)
    fat = _edges(points, cell, gap, border, columns, count) if border else rows
    for i, row in enumerate(inside):
        rows[i] |= row
        if border:
            fat[i + border] |= row << border
    runs = tuple((i, *run) for i, r in enumerate(rows) for run in _runs(r))
    return Shape(columns, tuple(rows), tuple(fat), border, runs)


def _edges(
    points: Sequence[Point],
    cell: tuple[float, float],
    grow: float,
    border: int,
    columns: int,
    count: int,
) -> list[int]:
    """The cells that come within `grow` of the outline, sideways or up and down.

    An edge that runs along the border of two cells belongs to neither.
    """
    cx, cy = cell
    right, low = columns + 2 * border - 1, count + 2 * border - 1
    rows = [0] * (low + 1)
    for a, b in zip(points, points[1:], strict=False):
        (xa, ya), (xb, yb) = (a, b) if a[1] <= b[1] else (b, a)
        first = int((ya - grow) / cy + border + EDGE)
        last = int((yb + grow) / cy + border - EDGE)
        slope = (xb - xa) / (yb - ya) if yb > ya else 0.0
        for i in range(max(0, first), min(low, last) + 1):
            top, foot = (i - border) * cy - grow, (i - border + 1) * cy + grow
            x0 = xa + slope * (top - ya) if top > ya and slope else xa
            x1 = xa + slope * (foot - ya) if foot < yb and slope else xb
            if x1 < x0:
                x0, x1 = x1, x0
            c0 = max(0, int((x0 - grow) / cx + border + EDGE))
            c1 = min(right, int((x1 + grow) / cx + border - EDGE))
            if c1 >= c0:
                rows[i] |= ((1 << (c1 - c0 + 1)) - 1) << c0
    return rows


def _inside(points: Sequence[Point], y: float, cx: float, columns: int) -> int:
    """The cells whose middles on the line `y` lie inside the outline."""
    cuts = sorted(
        a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])
        for a, b in zip(points, points[1:], strict=False)
        if (a[1] <= y) != (b[1] <= y)
    )
    row = 0
    for left, right in zip(cuts[::2], cuts[1::2], strict=False):
        first = max(0, math.ceil(left / cx - 0.5))
        last = min(columns - 1, math.floor(right / cx - 0.5))
        if last >= first:
            row |= ((1 << (last - first + 1)) - 1) << first
    return row


def _runs(row: int) -> Iterator[tuple[int, int]]:
    at = 0
    while row:
        skip = (row & -row).bit_length() - 1
        row >>= skip
        length = ((row + 1) & ~row).bit_length() - 1
        yield at + skip, length
        row >>= length
        at += skip + length


class Grid:
    """A sheet of paper as cells, some of them taken."""

    def __init__(self, columns: int, rows: int) -> None:
        self.columns, self.rows = columns, rows
        self.taken = 0
        self._combs: dict[tuple[int, int], int] = {}

    def comb(self, first: int, step: int) -> int:
        """The leftmost cell of every `step`-th row from the row `first` on."""
        key = first, step
        if key not in self._combs:
            rows = range(first, self.rows, step)
            self._combs[key] = sum(1 << (y * self.columns) for y in rows)
        return self._combs[key]

    def block(self, x: int, y: int, columns: int, rows: int) -> int:
        """A rectangle of cells, cut off at the sheet's edge."""
        columns, rows = min(columns, self.columns - x), min(rows, self.rows - y)
        if columns <= 0 or rows <= 0:
            return 0
        line = ((1 << columns) - 1) << x
        every = ((1 << (self.columns * rows)) - 1) // ((1 << self.columns) - 1)
        return (line * every) << (y * self.columns)

    def free(self, shape: Shape, shut: int = 0) -> int:
        """Every place where the shape's upper left cell may lie; `shut` is barred."""
        across = self.columns - shape.columns + 1
        down = self.rows - len(shape.rows) + 1
        if across < 1 or down < 1:
            return 0
        grown = [self.taken | shut]
        barred = 0
        for y, x, length in shape.runs:
            k = length.bit_length() - 1
            while len(grown) <= k:
                last = grown[-1]
                grown.append(last | last >> (1 << (len(grown) - 1)))
            at = y * self.columns + x
            barred |= grown[k] >> at
            if length != 1 << k:
                barred |= grown[k] >> (at + length - (1 << k))
        return self.block(0, 0, across, down) & ~barred

    def take(self, shape: Shape, place: int) -> None:
        """Lay the shape, and the gap round it, on the sheet."""
        y0, x0 = divmod(place, self.columns)
        whole = (1 << self.columns) - 1
        for i, row in enumerate(shape.fat):
            y = y0 + i - shape.border
            if 0 <= y < self.rows:
                bits = (row << x0) >> shape.border & whole
                self.taken |= bits << (y * self.columns)
