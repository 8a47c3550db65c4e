"""Pieces laid on one large sheet that is printed in tiles: as few tiles as possible.

The largest piece first, each where it opens fewest new tiles; over a few orders and
sheet widths, then with one piece after another moved to the front of the best order.
Our own method. Places and sizes are cells of the grid.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product

from clothwright.sheets.raster import Block, Grid, Shape, touching

Tile = tuple[int, int]
"""(row, column) of a tile, from 0."""

Spot = tuple[int, int, int]
"""(turn, column, row) of a piece: which of its turns, and where."""

WIDER = (1, 2, 0, 3)
"""Sheet widths that are tried, in tiles more than the widest piece needs; of sheets
with as few tiles the first counts, so that the joined paper is no ribbon."""

COUNTERS = 5
"""Binary digits of the number of tiles that one piece may open."""


@dataclass(frozen=True)
class Tiles:
    """The tiles of a sheet, in cells, with what stays free on the first."""

    width: int
    height: int
    clear: tuple[int, int]
    """Columns and rows of the first tile that are kept free."""

    _touch: dict[tuple[int, int], "_Slid"] = field(default_factory=dict, compare=False)
    _narrow: dict[tuple[int, int, int], int] = field(
        default_factory=dict, compare=False
    )

    def lay(self, ways: Sequence[Sequence[Shape]]) -> list[Spot]:
        """A spot for every piece; `ways` are the shapes of its turns."""
        best = _Best()
        widths = self._widths(ways)
        for order in orders(ways):
            for across in widths:
                self._try(ways, order, across, best)
        for i in best.order[1:]:
            order = [i, *(j for j in best.order if j != i)]
            self._try(ways, order, best.across, best)
        return best.spots

    def _widths(self, ways: Sequence[Sequence[Shape]]) -> list[int]:
        narrow = max((min(s.columns for s in w) for w in ways), default=1)
        return [math.ceil(narrow / self.width) + more for more in WIDER]

    def _try(
        self,
        ways: Sequence[Sequence[Shape]],
        order: Sequence[int],
        across: int,
        best: "_Best",
    ) -> None:
        """Lay in an order on a sheet so many tiles wide; keep it when it is better."""
        cells = sum(w[0].cells for w in ways)
        down = math.ceil(1.25 * cells / (self.width * across) / self.height) + 1
        while True:
            table = _Table(self, across, down)
            laid = table.lay(ways, order, best.most)
            if laid is not None:
                best.take(laid, len(table.used), across, order)
                return
            if not table.short:
                return
            down += 2

    def touching(self, shape: Shape, columns: int) -> "_Slid":
        """The places at which a shape touches a tile, on a sheet so many cells wide."""
        return self._known(id(shape), shape, shape.blocks, columns)

    def narrowly(self, shape: Shape, across: int, down: int) -> int:
        """The places, on a sheet of so many tiles, at which a shape runs over the edge
        of some tile with less than the core of it."""
        key = id(shape), across, down
        if key not in self._narrow:
            columns, bad = self.width * across, 0
            touched = self.touching(shape, columns)
            crossed = self._known(-id(shape), shape, shape.core, columns)
            for tile in product(range(down), range(across)):
                bad |= touched.at(tile) & ~crossed.at(tile)
            self._narrow[key] = bad
        return self._narrow[key]

    def _known(
        self, name: int, shape: Shape, blocks: Sequence[Block], columns: int
    ) -> "_Slid":
        """Reckoned once for a tile far enough inside, and slid from there."""
        found = self._touch.get((name, columns))
        if found is None:
            row = math.ceil(len(shape.rows) / self.height)
            column = math.ceil(shape.columns / self.width)
            line = ((1 << self.width) - 1) << (column * self.width)
            top = row * self.height
            cells = sum(line << ((top + y) * columns) for y in range(self.height))
            step = self.height * columns
            start = row * step + column * self.width
            places = touching(blocks, cells, columns)
            found = self._touch[name, columns] = _Slid(places, step, self.width, start)
        return found


@dataclass(frozen=True, slots=True)
class _Slid:
    """The places at which something touches a tile, for any tile by sliding."""

    places: int
    down: int
    right: int
    start: int

    def at(self, tile: Tile) -> int:
        by = tile[0] * self.down + tile[1] * self.right - self.start
        return self.places << by if by > 0 else self.places >> -by


class _Best:
    """The best layout so far."""

    def __init__(self) -> None:
        self.spots: list[Spot] = []
        self.order: Sequence[int] = ()
        self.across = 0
        self.most: int | None = None
        """Tiles that a better layout may use."""

    def take(
        self, spots: list[Spot], used: int, across: int, order: Sequence[int]
    ) -> None:
        self.spots, self.across, self.order = spots, across, order
        self.most = used - 1


class _Table:
    """A large sheet of tiles while pieces are being laid on it."""

    def __init__(self, tiles: Tiles, across: int, down: int) -> None:
        self.tiles, self.size = tiles, (across, down)
        self.grid = Grid(tiles.width * across, tiles.height * down)
        self.grid.taken = self.grid.block(0, 0, *tiles.clear)
        self.used = {(0, 0)}
        self.unused = {(r, c) for r in range(down) for c in range(across)} - self.used
        self.short = False
        """True when a piece found no place at all."""

    def lay(
        self,
        ways: Sequence[Sequence[Shape]],
        order: Sequence[int],
        most: int | None,
    ) -> list[Spot] | None:
        """A spot for every piece; None when that takes more than `most` tiles, or
        more than the sheet has."""
        out: list[Spot] = [(0, 0, 0)] * len(ways)
        rest = sum(w[0].cells for w in ways)
        tile = self.tiles.width * self.tiles.height
        room = tile - self.grid.taken.bit_count()
        for i in order:
            found = self._place(ways[i])
            if found is None:
                self.short = True
                return None
            way, place = found
            shape = ways[i][way]
            y, x = divmod(place, self.grid.columns)
            before = len(self.used)
            self.used.update(shape.tiles(x, y, self.tiles.width, self.tiles.height))
            self.unused -= self.used
            rest -= shape.cells
            room += (len(self.used) - before) * tile - shape.cells
            if most is not None and len(self.used) + max(0, rest - room) / tile > most:
                return None
            self.grid.take(shape, place)
            out[i] = way, x, y
        return out

    def _place(self, ways: Sequence[Shape]) -> tuple[int, int] | None:
        """The first place on open tiles, else the first of those that open fewest. It
        begins no lower than just below the open tiles."""
        lowest = 1 + max(r for r, _ in self.used)
        within = (1 << (self.grid.columns * (lowest * self.tiles.height + 1))) - 1
        best: tuple[int, int, int] | None = None
        for i, shape in enumerate(ways):
            free = self.grid.free(shape) & within
            free = free & ~self.tiles.narrowly(shape, *self.size) or free
            if not free:
                continue
            reach = lowest + (len(shape.rows) - 1) // self.tiles.height
            fresh, places = self._fewest(shape, free, reach)
            found = fresh, _first(places), i
            if not fresh:
                return i, found[1]
            if best is None or found < best:
                best = found
        return (best[2], best[1]) if best else None

    def _fewest(self, shape: Shape, free: int, reach: int) -> tuple[int, int]:
        """The least number of tiles that a free place opens, and the places that open
        no more: every place counts its tiles, down to the row `reach`, at once, in
        binary digits."""
        digits = [0] * COUNTERS
        touched = self.tiles.touching(shape, self.grid.columns)
        for tile in self.unused:
            if tile[0] > reach:
                continue
            carry = touched.at(tile) & free
            for k in range(COUNTERS):
                if not carry:
                    break
                digits[k], carry = digits[k] ^ carry, digits[k] & carry
        count = 0
        for k in reversed(range(COUNTERS)):
            fewer = free & ~digits[k]
            if fewer:
                free = fewer
            else:
                count |= 1 << k
        return count, free


def orders(ways: Sequence[Sequence[Shape]]) -> Iterator[list[int]]:
    """Largest first, by both sides, by area and by longer side."""
    shapes = [w[0] for w in ways]
    keys = (
        [s.columns + len(s.rows) for s in shapes],
        [s.cells for s in shapes],
        [max(s.columns, len(s.rows)) for s in shapes],
    )
    seen: list[list[int]] = []
    for key in keys:
        order = sorted(range(len(shapes)), key=lambda i: (-key[i], i))
        if order not in seen:
            seen.append(order)
            yield order


def _first(bits: int) -> int:
    return (bits & -bits).bit_length() - 1
