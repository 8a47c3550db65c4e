"""Boxes of words, and the lines that they must not touch.

The width of words is judged generously, since the outputs use different faces.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from clothwright.curves import Point, Vector, mix
from clothwright.finishing.drawn import DrawnText

WIDTH = 0.80
"""Mean width of a character by the height of a capital. DejaVu Sans, the widest face
that the outputs use, measures 0.75 on labels."""

HATCH = 0.2
"""Between the lines over a box of words, cm: less than the height of any other."""

BOLDER = 1.14
"""How much wider bold letters are."""

Spot = tuple[float, float]

Chain = Sequence[Spot]
"""Points joined by straight lines."""


@dataclass(frozen=True)
class Box:
    """A box of words: middle, half sizes, and the direction in which it reads."""

    at: Point
    half_w: float
    half_h: float
    along: Vector

    def corners(self, room: float = 0.0) -> list[Point]:
        """The four corners, grown by `room` cm."""
        (x, y), (ux, uy) = self.at, self.along
        w, h = self.half_w + room, self.half_h + room
        return [
            Point(x + ux * a - uy * b, y + uy * a + ux * b)
            for a, b in ((-w, -h), (w, -h), (w, h), (-w, h))
        ]

    def hatched(self) -> list[Point]:
        """A line to and fro over all of the box, so close that no words fit between."""
        a, b, c, e = self.corners()
        n = math.ceil(2 * self.half_h / HATCH)
        rows = ((mix(a, e, i / n), mix(b, c, i / n)) for i in range(n + 1))
        return [p for i, row in enumerate(rows) for p in row[:: -1 if i % 2 else 1]]


_BY_LETTER = {
    c: wide
    for wide, letters in (
        (0.4, " iljIJ.,·′"),
        (0.3, "⁄"),
        (0.55, "ftr;:()-/⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉"),
        (1.05, "CDGHNOQRUw"),
        (0.95, "ABEKSVXZ"),
        (1.37, "MWm¼½¾⅛⅜⅝⅞⅓⅔"),
    )
    for c in letters
}
"""Widths of the narrow and the wide characters by the height of a capital, rounded from
DejaVu Sans."""

_OTHER = 0.88
"""Width of any other character likewise: figures, and most letters."""


@lru_cache(4096)
def _width_of(text: str) -> float:
    """A generous width by the height of a capital: what so many characters measure in
    the mean or, in a line of wide ones, what these do."""
    by_letter = sum(_BY_LETTER.get(c, _OTHER) for c in text)
    return max(WIDTH * len(text), by_letter)


def line_width(text: str, height: float, *, bold: bool = False) -> float:
    """A generous width of a line, cm."""
    return (BOLDER if bold else 1.0) * _width_of(text) * height


def text_box(text: DrawnText) -> Box:
    """The box of one line of words."""
    a = math.radians(text.degrees)
    wide = line_width(text.text, text.height, bold=text.bold)
    return Box(text.at, wide / 2, text.height * 0.62, Vector(math.cos(a), math.sin(a)))


class Obstacles:
    """Lines that words must keep off, as short straight stretches in a coarse grid."""

    def __init__(self, cell: float = 2.0) -> None:
        self._cell = cell
        self._grid: dict[tuple[int, int], list[tuple[Spot, Spot]]] = {}

    def add(self, points: Chain) -> None:
        """Keep words off a line through points."""
        c = self._cell
        for a, b in zip(points, points[1:], strict=False):
            x0, x1 = sorted((a[0], b[0]))
            y0, y1 = sorted((a[1], b[1]))
            for i in range(math.floor(x0 / c), math.floor(x1 / c) + 1):
                for j in range(math.floor(y0 / c), math.floor(y1 / c) + 1):
                    self._grid.setdefault((i, j), []).append((a, b))

    def hit(self, box: Box, room: float = 0.0) -> bool:
        """True when a line touches the box."""
        (ux, uy), (x, y) = box.along, box.at
        w, h = box.half_w + room, box.half_h + room
        # the box's extent along the page
        ex, ey = abs(ux) * w + abs(uy) * h, abs(uy) * w + abs(ux) * h
        c, grid = self._cell, self._grid
        for i in range(math.floor((x - ex) / c), math.floor((x + ex) / c) + 1):
            for j in range(math.floor((y - ey) / c), math.floor((y + ey) / c) + 1):
                for (ax, ay), (bx, by) in grid.get((i, j), ()):
                    ax, ay, bx, by = ax - x, ay - y, bx - x, by - y
                    if _crosses_box(
                        ax * ux + ay * uy,
                        ay * ux - ax * uy,
                        bx * ux + by * uy,
                        by * ux - bx * uy,
                        w,
                        h,
                    ):
                        return True
        return False


def _crosses_box(
    ax: float, ay: float, bx: float, by: float, w: float, h: float
) -> bool:
    """True when the stretch a–b touches the box of half sizes w, h about the origin
    (slab test)."""
    if (ax > w and bx > w) or (ax < -w and bx < -w):
        return False
    if (ay > h and by > h) or (ay < -h and by < -h):
        return False
    t0, t1 = 0.0, 1.0
    for p, q, s in ((ax, bx, w), (ay, by, h)):
        d = q - p
        if abs(d) < 1e-12:
            continue  # the quick tests above have seen to it
        lo, hi = (-s - p) / d, (s - p) / d
        if lo > hi:
            lo, hi = hi, lo
        t0, t1 = max(t0, lo), min(t1, hi)
        if t0 > t1:
            return False
    return True
