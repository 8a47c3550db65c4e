"""Our own search for shorter lays of many pieces, as a program beside us.

What it does stands in `shorten.py`, which loads a compiler and so is never loaded here.
"""

import os
import pickle
import sys
import time
from dataclasses import dataclass, field
from typing import cast

from clothwright.lay.beside import Beside
from clothwright.lay.pieces import Shape
from clothwright.lay.place import Layout, Table
from clothwright.lay.spread import Spread
from clothwright.lay.strip import settled

MOST_WAYS = 80
"""So many outlines, each turn and hand its own, are held in tables; every pair needs
its no-fit polygon first, which takes a second or two for so many."""

MOST_PIECES = 40
"""More pieces than this are the packer's: there it was as good or better (48, 64 and 99
pieces, `docs/lay-figures.md`)."""


@dataclass(frozen=True)
class Task:
    """What the program is told to shorten."""

    shapes: tuple[Shape, ...]
    spread: Spread
    gap: float
    start: Layout
    seed: int
    seconds: float
    begun: float = field(default_factory=time.time)
    """When these seconds begin, by the clock of the machine: to load takes some."""


class Shortener:
    """A search that goes on beside us from a layout, until it is done or stopped."""

    def __init__(self, table: Table, task: Task) -> None:
        self.table = table
        self.program = Beside(
            [sys.executable, "-P", "-m", "clothwright.lay.shorten"],
            pickle.dumps(task),
            {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
        )

    @property
    def begun(self) -> bool:
        """True when all is loaded and compiled, and it searches."""
        return self.program.length < float("inf")

    def layout(self) -> Layout | None:
        """The shortest so far; the checker has the last word."""
        places = self.program.last()
        if not places:
            return None
        choice, at = cast(tuple[list[int], list[tuple[float, float]]], places)
        return settled(self.table, choice, at)


def ways_of(table: Table) -> list[list[int]]:
    """Of each copy its variants, numbered so that like outlines have one number."""
    known: dict[object, int] = {}
    return [
        [known.setdefault(v.points, len(known)) for v in c.variants]
        for c in table.copies
    ]


def can_shorten(table: Table) -> bool:
    """True when pieces are few enough to gain by it, and outlines for tables."""
    if len(table.copies) > MOST_PIECES:
        return False
    return max(w for ways in ways_of(table) for w in ways) < MOST_WAYS
