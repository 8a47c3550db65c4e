"""Where the names of marks stand in a figure: beside their mark, off the lines, none
over another. Lengths are mm of the figure.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

from clothwright.curves import Path, Point


class Box(NamedTuple):
    """A part of a figure or of the paper."""

    left: float
    top: float
    right: float
    bottom: float


_Cell = tuple[int, int]

_CELL = 0.8
"""Lines and names are known by squares of so many mm."""

_GAP = 1.0
"""A name stands so far beside its mark."""

_RINGS = (0.0, 2.5, 5.0, 8.0)
"""How much further it may stand, and is led to then by a hair."""

_WIDE, _HIGH = 0.62, 0.78
"""Of the height of its letters, how wide one is, and how high above its foot."""

_INK, _PENCIL, _OUTER = 12, 5, 4
"""What it costs a name to lie on a cell of ink, on one of pencil, and a ring further
out; the cheapest place is taken."""


class Names:
    """The names of one figure, placed in turn within a room."""

    def __init__(self, room: Box) -> None:
        self.room = room
        self._ink = set[_Cell]()
        self._pencil = set[_Cell]()
        self._taken = set[_Cell]()

    def lines(self, path: Path, at: Point, scale: float, *, ink: bool) -> None:
        """Note a line of the paper, which begins at `at` and is drawn at a scale."""
        n = max(2, round(path.length * scale / _CELL * 1.5))
        for i in range(n + 1):
            x, y = (path.at_length(path.length * i / n) - at) * scale
            cell = math.floor(x / _CELL), math.floor(y / _CELL)
            (self._ink if ink else self._pencil).add(cell)

    def place(
        self, mark: Point, name: str, size: float, *, must: bool
    ) -> tuple[Box, Point | None] | None:
        """The place of a name beside its mark, and where a hair leads to it if it
        stands apart; None when there is none. A name that `must` be seen may lie on
        a line or stand apart."""
        best: tuple[int, Box, Point | None] | None = None
        for ring, far in enumerate(_RINGS if must else _RINGS[:1]):
            for box in self._round(mark, name, size, far):
                cells = set(_cells(box))
                if not self._inside(box) or cells & self._taken:
                    continue
                on = len(cells & self._ink), len(cells & self._pencil)
                cost = on[0] * _INK + on[1] * _PENCIL + ring * _OUTER
                if cost and not must:
                    continue
                if best is None or cost < best[0]:
                    best = cost, box, _nearest(box, mark) if ring else None
            if best is not None and best[0] <= (ring + 1) * _OUTER:
                break
        if best is None:
            return None
        _, box, led = best
        self._taken |= set(_cells(box))
        return box, led

    def _round(self, mark: Point, name: str, size: float, far: float) -> Iterator[Box]:
        """Places round a mark, at first to its right."""
        wide, high = _WIDE * size * len(name), _HIGH * size
        gap = _GAP + far
        slant = gap * 0.6
        x, y = mark
        for left, bottom in (
            (x + slant, y - slant),
            (x - slant - wide, y - slant),
            (x + slant, y + slant + high),
            (x - slant - wide, y + slant + high),
            (x + gap, y + high / 2),
            (x - gap - wide, y + high / 2),
            (x - wide / 2, y - gap),
            (x - wide / 2, y + gap + high),
        ):
            yield Box(left, bottom - high, left + wide, bottom)

    def _inside(self, box: Box) -> bool:
        room = self.room
        across = box.left >= room.left and box.right <= room.right
        return across and box.top >= room.top and box.bottom <= room.bottom


def _nearest(box: Box, mark: Point) -> Point:
    """The place of a box that is nearest to a mark."""
    return Point(
        min(max(mark.x, box.left), box.right), min(max(mark.y, box.top), box.bottom)
    )


def _cells(box: Box) -> Iterator[_Cell]:
    for x in range(math.floor(box.left / _CELL), math.floor(box.right / _CELL) + 1):
        for y in range(math.floor(box.top / _CELL), math.floor(box.bottom / _CELL) + 1):
            yield x, y
