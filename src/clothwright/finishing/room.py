"""Free paper inside a piece, as squares of a fine grid: where words may stand.

A grid is one whole number, a bit for each square; shifting it slides a box of words,
so every place of the box is tried at once. A grid is made for one reading direction.
"""

import math
from collections.abc import Iterable

from clothwright.curves import Point, Vector
from clothwright.finishing.boxes import Chain, Spot

SQUARE = 0.2
"""Side of a square of the grid, cm."""


class Room:
    """The free squares inside a closed outline, seen in one reading direction.

    `loop` are the chains of the outline, `lines` what words keep off. A line bars
    every square that it touches.
    """

    def __init__(
        self, loop: Iterable[Chain], lines: Iterable[Chain], degrees: float
    ) -> None:
        a = math.radians(degrees)
        self.along = Vector(math.cos(a), math.sin(a))
        outline = [self._seen(chain) for chain in loop]
        xs = [x for chain in outline for x, _ in chain]
        ys = [y for chain in outline for _, y in chain]
        self._left, self._top = min(xs) - 2, min(ys) - 2
        self._bytes = math.ceil((max(xs) - self._left + 2) / 8)
        self._columns = 8 * self._bytes
        self._rows = [0] * math.ceil(max(ys) - self._top + 2)
        cuts: list[list[float]] = [[] for _ in self._rows]
        for part in outline:
            self._bar(part, cuts)
        whole = (1 << self._columns) - 1
        for i, crossings in enumerate(cuts):
            self._rows[i] |= whole & ~_filled(sorted(crossings))
        for chain in lines:
            self._bar(self._seen(chain))
        self._taken: int | None = None
        self._full: set[tuple[int, int]] = set()
        """Boxes, in squares, that found no place; none does once more is barred."""

    def _seen(self, chain: Chain) -> list[Spot]:
        """Points in squares, x along the reading direction."""
        u, v = self.along[0] / SQUARE, self.along[1] / SQUARE
        return [(x * u + y * v, y * u - x * v) for x, y in chain]

    def keep_off(self, chain: Chain) -> None:
        """Bar one more line."""
        self._bar(self._seen(chain))
        self._taken = None

    def _bar(self, chain: Chain, cuts: list[list[float]] | None = None) -> None:
        """Bar the squares that a chain touches; note where it cuts their middles."""
        rows, last = self._rows, len(self._rows) - 1
        right = self._columns - 1
        left, top = self._left, self._top
        for (xa, ya), (xb, yb) in zip(chain, chain[1:], strict=False):
            if ya > yb:
                xa, ya, xb, yb = xb, yb, xa, ya
            xa, ya, xb, yb = xa - left, ya - top, xb - left, yb - top
            if yb < 0 or ya > last + 1 or (xa < 0 and xb < 0):
                continue
            slope = (xb - xa) / (yb - ya) if yb > ya else 0.0
            first, end = max(0, int(ya)), int(yb)
            x1 = xa + slope * (first - ya) if first > ya else xa
            for i in range(first, min(last, end) + 1):
                x0 = x1
                x1 = xa + slope * (i + 1 - ya) if i < end else xb
                c0, c1 = (int(x0), int(x1)) if x0 < x1 else (int(x1), int(x0))
                if c0 < 0 or c1 > right:
                    c0, c1 = max(0, c0), min(right, c1)
                if c1 >= c0:
                    rows[i] |= (2 << c1) - (1 << c0)
                if cuts is not None and ya <= i + 0.5 < yb:
                    cuts[i].append(xa + slope * (i + 0.5 - ya))

    def nearest(self, wide: float, tall: float, to: Point) -> Point | None:
        """The middle, nearest to `to`, of a free box of this size (cm); None when
        there is none."""
        w, h = math.ceil(wide / SQUARE), math.ceil(tall / SQUARE)
        if w > self._columns or h >= len(self._rows):
            return None
        if any(w >= a and h >= b for a, b in self._full):
            return None
        if self._taken is None:
            said = b"".join(r.to_bytes(self._bytes, "little") for r in self._rows)
            self._taken = int.from_bytes(said, "little")
        shut = _slid(_slid(self._taken, w, 1), h, self._columns)
        count, size = len(self._rows) - h, self._bytes
        bits = ~shut & ((1 << (self._columns * count)) - 1)
        if not bits:
            self._full.add((w, h))
            return None
        free = bits.to_bytes(size * count, "little")
        ((x, y),) = self._seen((to,))
        column, row = x - self._left - w / 2, y - self._top - h / 2
        best: tuple[float, int, int] | None = None
        for i in sorted(range(count), key=lambda i: abs(i - row)):
            if best is not None and (i - row) ** 2 >= best[0]:
                break
            here = int.from_bytes(free[i * size : (i + 1) * size], "little")
            for j in _nearest_bits(here, math.floor(column)):
                away = (i - row) ** 2 + (j - column) ** 2
                if best is None or away < best[0]:
                    best = away, i, j
        assert best is not None
        return self._place(best[2] + w / 2, best[1] + h / 2)

    def _place(self, column: float, row: float) -> Point:
        x, y = (column + self._left) * SQUARE, (row + self._top) * SQUARE
        u, v = self.along
        return Point(x * u - y * v, x * v + y * u)


def _filled(cuts: list[float]) -> int:
    """The squares of a row whose middles lie between a first and a second cut."""
    bits = 0
    for a, b in zip(cuts[::2], cuts[1::2], strict=False):
        first, end = math.ceil(a - 0.5), math.ceil(b - 0.5)
        if end > first:
            bits |= ((1 << (end - first)) - 1) << first
    return bits


def _slid(bits: int, count: int, step: int) -> int:
    """Each square together with the `count` - 1 that follow it at `step`."""
    done = 1
    while done < count:
        by = min(done, count - done)
        bits |= bits >> (by * step)
        done += by
    return bits


def _nearest_bits(bits: int, column: int) -> Iterable[int]:
    """The last bit up to a column, and the first after it."""
    column = max(0, column)
    before = bits & ((2 << column) - 1)
    if before:
        yield before.bit_length() - 1
    after = bits >> (column + 1)
    if after:
        yield column + (after & -after).bit_length()
