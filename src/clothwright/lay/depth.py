"""How deep two pieces overlap, as tables made once for all pairs of outlines.

The depth of a shift of one piece against another is the way to the edge of their no-fit
polygon: what they must at least be moved to part (penetration depth, the measure of
overlap that Imamichi, Yagiura and Nagamochi took for strip packing, 2009). It is kept
with a sign, inwards positive, on a square grid, and read between the points of the grid
by straight lines both ways: true to rounding along straight edges, and to a share of a
cell at corners. Lengths are in cells. Compiled by numba: imported only where it runs.
"""

import math
from typing import NamedTuple

import numpy as np
import shapely
from numba import njit
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from clothwright.lay.place import Table
from clothwright.lay.shortener import ways_of

COARSE = 2
"""A coarse cell is so many cells wide."""

CELLS = 2500
"""In a table, on average."""

FEWEST, MOST = 7e5, 16e6
"""In all tables together: few outlines have finer ones."""

Floats = NDArray[np.float64]
Grid = NDArray[np.float32]
Whole = NDArray[np.int64]


class Depths(NamedTuple):
    """The tables, for the ordered pairs of ways: outlines in their turn and hand."""

    fine: Grid
    start: Whole
    """Where the fine table of a pair begins."""

    spot: Whole
    """First column and row of it, and how many columns and rows."""

    coarse: Grid
    """Every second point of a table, in every second row, one such table for each of
    the points at which that can begin; nothing below zero."""

    coarse_start: Whole
    coarse_size: Whole
    """Columns and rows of each."""

    ends: Floats
    """Of each way: left and right end from its origin, and the range of the origin
    across the cloth."""

    ways: Whole
    """Of each copy, those in which it may lie, by variant; −1 behind the last."""


def depths(table: Table) -> tuple[Depths, float]:
    """All tables of a cloth and what is laid on it, and the width of a cell, cm."""
    numbers = ways_of(table)
    count = 1 + max(w for ways in numbers for w in ways)
    first = {w: (i, k) for i, ways in enumerate(numbers) for k, w in enumerate(ways)}
    pairs = [(a, b) for a in range(count) for b in range(a, count)]
    no_fits = {(a, b): table.no_fit(first[a], first[b]) for a, b in pairs}
    area = sum(
        (g.bounds[2] - g.bounds[0]) * (g.bounds[3] - g.bounds[1]) * (1 + (a != b))
        for (a, b), g in no_fits.items()
    )
    cell = math.sqrt(area / min(max(CELLS * count**2, FEWEST), MOST))
    start = np.zeros((count, count), np.int64)
    spot = np.zeros((count, count, 4), np.int64)
    coarse_start = np.zeros((count, count), np.int64)
    coarse_size = np.zeros((count, count, 2), np.int64)
    fine: list[Grid] = []
    coarse: list[Grid] = []
    at = coarse_at = 0
    for a, b in pairs:
        x, y, there = signed_depth(no_fits[a, b], cell)
        rows, columns = there.shape
        back = (b, a, 1 - x - columns, 1 - y - rows, there[::-1, ::-1])
        for i, j, left, low, grid in ((a, b, x, y, there), back)[: 1 + (a != b)]:
            start[i, j], spot[i, j] = at, (left, low, columns, rows)
            fine.append(grid.ravel())
            at += grid.size
            phases = _phases(grid)
            coarse_start[i, j], coarse_size[i, j] = coarse_at, phases.shape[:1:-1]
            coarse.append(phases.ravel())
            coarse_at += phases.size
    ends = np.array([_ends(table, *first[w]) for w in range(count)]) / cell
    ways = np.full((len(numbers), max(map(len, numbers))), -1, np.int64)
    for k, row in enumerate(numbers):
        ways[k, : len(row)] = row
    tables = Depths(
        np.concatenate(fine),
        start,
        spot,
        np.concatenate(coarse),
        coarse_start,
        coarse_size,
        ends,
        ways,
    )
    return tables, cell


def signed_depth(no_fit: BaseGeometry, cell: float) -> tuple[int, int, Grid]:
    """First column and row of a grid round a no-fit polygon, and at its points the way
    to the nearest edge, in cells, positive inside."""
    rings = [
        np.asarray(ring.coords) / cell
        for p in shapely.get_parts(no_fit)
        if isinstance(p, shapely.Polygon)
        for ring in (p.exterior, *p.interiors)
    ]
    edges = np.concatenate([np.hstack([r[:-1], r[1:]]) for r in rings])
    (x0, y0), (x1, y1) = edges[:, :2].min(0), edges[:, :2].max(0)
    x, y = math.floor(x0) - 1, math.floor(y0) - 1
    grid = np.empty((math.ceil(y1) + 2 - y, math.ceil(x1) + 2 - x), np.float32)
    edges[:, ::2] -= x
    edges[:, 1::2] -= y
    _fill(np.ascontiguousarray(edges.T, np.float32), grid)
    return x, y, grid


@njit(cache=True, fastmath=True)
def _fill(edges: Grid, grid: Grid) -> None:
    """The signed way to the nearest of the edges, at each whole point."""
    rows, columns = grid.shape
    zero, one = np.float32(0.0), np.float32(1.0)
    crossed = np.zeros(columns + 1, np.int64)
    for r in range(rows):
        y = np.float32(r)
        row = grid[r]
        row[:] = np.float32(1e18)
        crossed[:] = 0
        for e in range(edges.shape[1]):
            ax, ay, bx, by = edges[0, e], edges[1, e], edges[2, e], edges[3, e]
            dx, dy = bx - ax, by - ay
            square = dx * dx + dy * dy
            if square <= zero:
                continue
            part = one / square
            up = y - ay
            for c in range(columns):
                along = np.float32(c) - ax
                t = min(max((along * dx + up * dy) * part, zero), one)
                u, v = along - t * dx, up - t * dy
                row[c] = min(row[c], u * u + v * v)
            if (ay > y) != (by > y):
                c = int(math.ceil(ax + dx * (up / dy)))
                crossed[min(max(c, 0), columns)] += 1
        inside = 0
        for c in range(columns):
            inside += crossed[c]
            way = math.sqrt(row[c])
            row[c] = way if inside % 2 else -way


def _phases(grid: Grid) -> Grid:
    """First row, first column, rows, columns: the coarse tables of a grid."""
    rows, columns = (-(-n // COARSE) for n in grid.shape)
    whole = np.zeros((rows * COARSE, columns * COARSE), np.float32)
    whole[: grid.shape[0], : grid.shape[1]] = np.maximum(grid, 0)
    return np.ascontiguousarray(
        whole.reshape(rows, COARSE, columns, COARSE).transpose(1, 3, 0, 2)
    )


def _ends(table: Table, i: int, k: int) -> tuple[float, float, float, float]:
    copy = table.copies[i]
    xs = [x for x, _ in copy.variants[k].points]
    low, high = copy.variants[k].across[0]
    if low > high:  # an exact fit, by rounding
        low = high = (low + high) / 2
    return min(xs) + copy.margin, max(xs) - copy.margin, low, high
