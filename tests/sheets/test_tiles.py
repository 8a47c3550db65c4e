"""The reckoning behind the laying, against counting cell by cell."""

import random

import pytest

from clothwright.curves import Point
from clothwright.sheets.raster import Grid, Shape, shape_of, touching
from clothwright.sheets.tiles import Tiles, _Table

CELL = (1.0, 1.0)


def _shape(seed: int) -> Shape:
    """A random triangle, up to 7 × 7 cells."""
    chance = random.Random(seed)
    pts = [Point(chance.uniform(0, 6.5), chance.uniform(0, 6.5)) for _ in range(3)]
    left, top = min(p.x for p in pts), min(p.y for p in pts)
    pts = [p - (left, top) for p in pts]
    return shape_of([*pts, pts[0]], CELL, 0.0)


def _box(wide: float, tall: float) -> Shape:
    ring = [Point(0, 0), Point(wide, 0), Point(wide, tall), Point(0, tall)]
    return shape_of([*ring, ring[0]], CELL, 0.0)


def _cells(shape: Shape) -> set[tuple[int, int]]:
    return {
        (x, y)
        for y, row in enumerate(shape.rows)
        for x in range(shape.columns)
        if row >> x & 1
    }


@pytest.mark.parametrize("seed", range(20))
def test_blocks_are_the_shape(seed: int) -> None:
    shape = _shape(seed)
    cells = {
        (x + i, y + j)
        for y, x, wide, tall in shape.blocks
        for i in range(wide)
        for j in range(tall)
    }
    assert cells == _cells(shape)


@pytest.mark.parametrize("seed", range(20))
def test_touching_places_are_those_that_overlap(seed: int) -> None:
    shape, chance = _shape(seed), random.Random(-seed)
    columns, rows = 19, 17
    taken = {(chance.randrange(columns), chance.randrange(rows)) for _ in range(9)}
    bits = sum(1 << (y * columns + x) for x, y in taken)
    found = touching(shape.blocks, bits, columns)
    for y in range(rows - len(shape.rows) + 1):
        for x in range(columns - shape.columns + 1):
            over = {(x + i, y + j) for i, j in _cells(shape)} & taken
            assert bool(found >> (y * columns + x) & 1) == bool(over)


@pytest.mark.parametrize("seed", range(20))
def test_narrow_crossings_are_known(seed: int) -> None:
    """Places at which a shape reaches a tile with cells of its edge only."""
    shape = _shape(seed)
    core = {
        (x + i, y + j)
        for y, x, wide, tall in shape.core
        for i in range(wide)
        for j in range(tall)
    }
    found = Tiles(5, 4, (0, 0)).narrowly(shape, 3, 4)
    for y in range(16 - len(shape.rows) + 1):
        for x in range(15 - shape.columns + 1):
            reached = {((y + j) // 4, (x + i) // 5) for i, j in _cells(shape)}
            crossed = {((y + j) // 4, (x + i) // 5) for i, j in core}
            assert bool(found >> (y * 15 + x) & 1) == (reached != crossed)


@pytest.mark.parametrize("seed", range(20))
def test_places_that_open_fewest_tiles(seed: int) -> None:
    """Every free place counted by hand: the least number, and all that have it."""
    shape = _shape(seed)
    tiles = Tiles(5, 4, (3, 2))
    table = _Table(tiles, 4, 5)
    table.used |= {(0, 1), (2, 2)}
    table.unused -= table.used
    grid: Grid = table.grid
    free = grid.free(shape)
    least, places = table._fewest(shape, free, 5)
    opened = {}
    for place in range(grid.columns * grid.rows):
        if not free >> place & 1:
            continue
        y, x = divmod(place, grid.columns)
        touched = {((y + j) // 4, (x + i) // 5) for i, j in _cells(shape)}
        opened[place] = len(touched - table.used)
    assert least == min(opened.values())
    assert {p for p in opened if places >> p & 1} == {
        p for p, n in opened.items() if n == least
    }
    assert touched == set(shape.tiles(x, y, 5, 4))


def test_pieces_share_a_tile() -> None:
    """Four pieces of half a tile each, and one of a quarter beside the kept corner."""
    half = shape_of(
        [Point(*p) for p in ((0, 0), (5, 0), (5, 8), (0, 8), (0, 0))], CELL, 0
    )
    small = shape_of(
        [Point(*p) for p in ((0, 0), (5, 0), (5, 4), (0, 4), (0, 0))], CELL, 0
    )
    spots = Tiles(10, 8, (10, 4)).lay([[half]] * 4 + [[small]])
    used = {
        t
        for shape, (_, x, y) in zip([half] * 4 + [small], spots, strict=True)
        for t in shape.tiles(x, y, 10, 8)
    }
    assert len(used | {(0, 0)}) == 3
