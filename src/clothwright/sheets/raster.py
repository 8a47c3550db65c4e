"""Pieces as squares of a grid: the reckoning behind laying them close together.

A grid is one whole number; bit `y * columns + x` is the cell x, y. Shifting that
number slides a piece, and "and" tells whether two pieces touch, so every place on
the paper is tried at once. Cells are (width, height) in cm.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from clothwright.curves import Point

STEP = 0.3
"""Outlines are followed in steps of at most this, cm."""


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

    @property
    def cells(self) -> int:
        """How many cells it covers."""
        return sum(r.bit_count() for r in self.rows)


def shape_of(
    points: Sequence[Point],
    cell: tuple[float, float],
    gap: float,
    *,
    step: float = STEP,
) -> Shape:
    """A closed outline, its upper left at 0, 0, as the cells that cover it.

    A corner that reaches less than half a `step` (cm) into a cell may be missed.
    """
    cx, cy = cell
    width = max(p[0] for p in points)
    height = max(p[1] for p in points)
    columns = max(1, math.ceil(width / cx - 1e-6))
    count = max(1, math.ceil(height / cy - 1e-6))
    border = math.ceil(gap / min(cx, cy))
    rows = _cover(points, cell, 0.0, 0, columns, count, step)
    fat = _cover(points, cell, gap, border, columns, count, step)
    runs = tuple((i, *run) for i, r in enumerate(rows) for run in _runs(r))
    return Shape(columns, tuple(rows), tuple(fat), border, runs)


def _cover(
    points: Sequence[Point],
    cell: tuple[float, float],
    grow: float,
    border: int,
    columns: int,
    count: int,
    step: float,
) -> list[int]:
    cx, cy = cell
    wide, tall = columns + 2 * border, count + 2 * border
    rows = [0] * tall
    right, low = wide - 1, tall - 1
    for x, y in _walk(points, step):
        x0 = max(0, int((x - grow) / cx + border + 1e-6))
        x1 = min(right, int((x + grow) / cx + border - 1e-6))
        y0 = max(0, int((y - grow) / cy + border + 1e-6))
        y1 = min(low, int((y + grow) / cy + border - 1e-6))
        span = ((1 << max(1, x1 - x0 + 1)) - 1) << x0
        for i in range(y0, max(y0, y1) + 1):
            rows[i] |= span
    for i in range(count):
        rows[i + border] |= _inside(points, (i + 0.5) * cy, cx, columns) << border
    return rows


def _walk(points: Sequence[Point], step: float) -> Iterator[tuple[float, float]]:
    for a, b in zip(points, points[1:], strict=False):
        n = max(1, math.ceil(math.hypot(b[0] - a[0], b[1] - a[1]) / step))
        for i in range(n):
            t = i / n
            yield a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t


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

    def pattern(self, xs: int, ys: Sequence[int]) -> int:
        """Cells in the columns of the number `xs` and the rows `ys`."""
        out = 0
        for y in ys:
            out |= xs << (y * self.columns)
        return out

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

    def mask(self, shape: Shape, place: int) -> int:
        """The cells of the shape laid with its upper left on the bit `place`."""
        out = 0
        for i, row in enumerate(shape.rows):
            out |= row << (place + i * self.columns)
        return out

    def take(self, shape: Shape, place: int) -> None:
        """Lay the shape, and the gap round it, on the sheet."""
        y0, x0 = divmod(place, self.columns)
        whole = (1 << self.columns) - 1
        for i, row in enumerate(shape.fat):
            y = y0 + i - shape.border
            if 0 <= y < self.rows:
                bits = (row << x0) >> shape.border & whole
                self.taken |= bits << (y * self.columns)
