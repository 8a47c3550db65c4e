"""The block of words on a piece: how its lines are broken, and where it stands.

A block is tried in several shapes, in the largest letters, in the middle of the
piece first. One that finds no room is divided into its groups; on a piece too crowded
for those, every line stands where it can, in smaller letters if need be.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from itertools import product
from typing import NamedTuple

from clothwright.curves import Point, Vector, turned
from clothwright.finishing.boxes import line_width, text_box
from clothwright.finishing.drawn import DrawnText, Meaning
from clothwright.finishing.room import Room

LEADING = 1.45
"""Line to line by the height of the letters."""

ROOMS = (0.8, 0.35, 0.1)
"""Free paper around a label, cm: ample, enough, and the least that still reads."""

SHAPES = ((34, False), (26, False), (20, False), (70, True), (44, True), (15, False))
"""Widest lines that are tried, in characters; True lets short lines share one."""

GLUE = "\u00a0"
"""A blank at which no line breaks."""

OPEN_END = 0.3
"""What a break after a word costs, against the square of a line's empty share."""

Group = tuple[str, ...]


class Labeller:
    """Finds places on one piece."""

    def __init__(
        self,
        free: Callable[[float], Room],
        turns: Sequence[float],
        spots: Sequence[Point],
        heights: Sequence[float],
        small: Sequence[float],
    ) -> None:
        """`free` gives the free paper for a reading direction; `turns` are the
        directions in degrees,
        `heights` those of capitals in cm, the best first, `small` what else is tried
        for lines that stand by themselves, the largest first; `spots` are where words
        are looked for: the middle, then the ends."""
        self._free = free
        self.turns, self.spots = turns, spots
        self.heights, self._small = heights, small
        self._rooms: dict[float, Room] = {}
        self._taken: list[DrawnText] = []
        self.unsaid: list[str] = []
        """Lines that were left off."""

    def place(
        self, groups: Sequence[Group], *, apart: bool, last: bool = False
    ) -> list[DrawnText]:
        """The words of all groups; of those after the first, those that find room.
        Empty when the first does not, as one block or, if they may, `apart`; at the
        `last` in the smallest letters."""
        everything = [line for g in groups for line in g]
        out = self._block(everything, ROOMS[:2], self.spots[0])
        small = self._small if last else self._small[:1]
        for least in (math.inf, *small) if apart else (math.inf,):
            if not out:
                out = self._first(groups[0], apart, least)
                for g in groups[1:] if out else ():
                    out += self._rest(g, out[-1])
        return out

    def _first(self, group: Group, apart: bool, least: float) -> list[DrawnText]:
        """The first group in one block, else line by line."""
        found = self._block(group, ROOMS[1:], self.spots[0], least=least)
        if found:
            return found
        for spot in self.spots if apart else ():
            found = self._strung(group, spot, least)
            if found:
                return found
        return []

    def _rest(self, group: Group, last: DrawnText) -> list[DrawnText]:
        """A further group below the last line: in one block, else those of its lines
        that find room, if need be in small letters."""
        to = last.at + _down(last.degrees) * (2 * last.height)
        out = self._block(group, ROOMS[1:], to, bold=False, least=self._small[0])
        for line in () if out else group:
            found = self._small_line(line, to)
            if not found:
                self.unsaid.append(line.replace(GLUE, " "))
            out += found
            to = _behind(out[-1]) if out else to
        return out

    def _small_line(self, line: str, to: Point) -> list[DrawnText]:
        """A line by itself, in letters as large as find room."""
        for least in self._small:
            found = self._line(line, to, bold=False, least=least)
            if found:
                return found
        return []

    def _strung(self, group: Group, to: Point, least: float) -> list[DrawnText]:
        """Every line in a place of its own, one after the other along the piece; none
        when one finds no room."""
        out: list[DrawnText] = []
        for i, line in enumerate(group):
            found = self._line(line, to, bold=i == 0, least=least)
            if not found:
                self._rooms.clear()
                self._taken.clear()
                return []
            out += found
            to = _behind(out[-1])
        return out

    def _line(
        self, line: str, to: Point, *, bold: bool, least: float = math.inf
    ) -> list[DrawnText]:
        """One line by itself, along the longest edge if it can, with no break."""
        one = (line,)
        return self._block(one, ROOMS[-1:], to, bold=bold, strung=True, least=least)

    def _room(self, degrees: float) -> Room:
        """The paper that is still free, for a reading direction."""
        if degrees not in self._rooms:
            room = self._rooms[degrees] = self._free(degrees)
            for t in self._taken:
                room.keep_off(text_box(t).hatched())
        return self._rooms[degrees]

    def _take(self, found: Sequence[DrawnText]) -> None:
        self._taken += found
        for t in found:
            for room in self._rooms.values():
                room.keep_off(text_box(t).hatched())

    def _block(
        self,
        lines: Sequence[str],
        rooms: Sequence[float],
        to: Point,
        *,
        bold: bool = True,
        strung: bool = False,
        least: float = math.inf,
    ) -> list[DrawnText]:
        """The lines as one block, near to a point, in the best direction with the most
        of `rooms` around it; or nothing. `strung` lines run along the longest edge if
        they can, with no break; letters go down to the `least` height where the usual
        ones find no room."""
        heights = list(self.heights)
        if least < heights[-1]:
            heights.append(least)
        shapes = [(s, s.wide(), s.tall()) for s in _shapes(tuple(lines), bold)]
        turns = list(self.turns)
        if strung:
            shapes.sort(key=lambda shape: len(shape[0].lines))
            turns.reverse()
        for degrees in turns:
            paper = self._room(degrees)
            for room, height, (shape, wide, tall) in product(rooms, heights, shapes):
                w, h = wide * height + 2 * room, height * tall + 2 * room
                at = paper.nearest(w, h, to)
                if at is not None:
                    found = shape.set(at, height, degrees)
                    self._take(found)
                    return found
        return []


class _Shape(NamedTuple):
    """A block of lines; the first `bold` of them are the name."""

    lines: Group
    bold: int

    def wide(self) -> float:
        """Width by the height of a capital."""
        return max(
            line_width(t, 1.0, bold=i < self.bold) for i, t in enumerate(self.lines)
        )

    def tall(self) -> float:
        """Height by that of a capital."""
        return 1.24 + LEADING * (len(self.lines) - 1)

    def set(self, at: Point, height: float, degrees: float) -> list[DrawnText]:
        """The lines with the middle of the block at a point."""
        step = _down(degrees) * (height * LEADING)
        middle = (len(self.lines) - 1) / 2
        return [
            DrawnText(
                Meaning.LABEL,
                t.replace(GLUE, " "),
                at + step * (i - middle),
                height,
                degrees,
                bold=i < self.bold,
            )
            for i, t in enumerate(self.lines)
        ]


def _behind(line: DrawnText) -> Point:
    """Where words go on behind a line."""
    run = line_width(line.text, line.height) + line.height
    return line.at + turned(_down(line.degrees), -90) * run


def _down(degrees: float) -> Vector:
    """From line to line."""
    a = math.radians(degrees)
    return Vector(-math.sin(a), math.cos(a))


@cache
def _shapes(lines: Group, bold: bool) -> tuple[_Shape, ...]:
    """The lines broken and joined in every shape that is tried, each once."""
    out: dict[_Shape, None] = {}
    head, rest = (lines[:1], lines[1:]) if bold else ((), lines)
    for most, shared in SHAPES:
        name = [t for line in head for t in broken(line, most)]
        below = _shared(rest, most) if shared else rest
        said = [t for line in below for t in broken(line, most)]
        out[_Shape((*name, *said), len(name))] = None
    return tuple(out)


def _shared(lines: Iterable[str], most: int) -> Iterator[str]:
    """Lines joined by points as long as they are short enough."""
    now = ""
    for line in lines:
        longer = f"{now} · {line}" if now else line
        if now and len(longer) > most:
            yield now
            longer = line
        now = longer
    if now:
        yield now


def broken(text: str, most: int) -> list[str]:
    """The text in as few lines of at most `most` characters as can be, of even
    length, broken after a comma or semicolon sooner than after a word. A longer word
    has a line of its own."""
    words = text.split(" ")
    n = len(words)
    best: list[tuple[int, float, int]] = [(0, 0.0, 0)] * (n + 1)
    for i in range(n - 1, -1, -1):
        tries = []
        for j in range(i + 1, n + 1):
            line = " ".join(words[i:j])
            if len(line) > most and j > i + 1:
                break
            slack = (most - len(line)) / most
            open_end = j < n and line[-1] not in ",;:·"
            cost = slack * slack + (OPEN_END if open_end else 0.0)
            tries.append((best[j][0] + 1, best[j][1] + cost, j))
        best[i] = min(tries)
    out, i = [], 0
    while i < n:
        j = best[i][2]
        out.append(" ".join(words[i:j]))
        i = j
    return out
