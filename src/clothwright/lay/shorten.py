"""Many free pieces laid ever shorter, by a program of its own; `shortener.py` runs it.

The lay is made a little shorter than the shortest so far, its pieces overlap, and
`parting.py` parts them; then shorter again. What cannot be parted is kept; the next try
starts from one of those with little overlap, two of its large pieces exchanged (the
exploring of Gardeyn, Vanden Berghe and Wauters, 2025). What is parted, or nearly, goes
through the press, and nothing counts that has not passed the checker.

It reads a pickled `Task`, says with the start that it is ready, and prints a line of
JSON for every shorter lay: length, and way, x and y of every copy. Whoever runs it may
kill it at any time; it ends when its input does.
"""

import json
import pickle
import random
import sys
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import chain

import numpy as np

from clothwright.lay.beside import end_with_input
from clothwright.lay.bounds import area_bound
from clothwright.lay.check import check_lay
from clothwright.lay.depth import Floats, Whole, depths
from clothwright.lay.parting import PARTED, State, part
from clothwright.lay.pieces import Shape, copies
from clothwright.lay.place import Layout, Table
from clothwright.lay.press import pressed
from clothwright.lay.shortener import Task
from clothwright.lay.spread import Spread
from clothwright.lay.strip import settled

STEP = 0.01
"""Shorter at first by this share,"""

LESS = 0.6
"""by so much of it after each failure,"""

LEAST = 0.001
"""but not by less."""

PATIENCE = 200, 3
"""Rounds without less overlap, and tries in a row, before a length is given up (the
published figures)."""

HASTE = 60, 3
"""The same while it squeezes."""

NEARLY = 2.0
"""What overlaps no more than this, cells, is pressed: it may part there."""

KEPT = 10
"""Of what could not be parted so many are kept, those that overlap least."""

SPREAD = 0.25
"""Which of them is next: half a bell curve, this share of them wide."""

LARGE = 0.75
"""The largest pieces, with so much of the area, are those exchanged."""

UNPRESSED = 0.1
"""Until its first failure so much of the time goes by without the press, which takes
long where pieces lie loosely."""

EXPLORING = 0.85
"""Share of the time for that; the rest squeezes: all right of a random line is pushed
over it, and parted."""

SQUEEZE, SQUEEZED = 0.0007, 0.0001
"""By these shares, at first and at last."""


@dataclass(frozen=True)
class _Places:
    way: Whole
    x: Floats
    y: Floats


class Shortening:
    """A search for shorter lays of many pieces."""

    def __init__(
        self,
        shapes: tuple[Shape, ...],
        spread: Spread,
        start: Layout,
        *,
        gap: float = 0.0,
        seed: int = 1,
    ) -> None:
        self.shapes, self.spread, self.gap = shapes, spread, gap
        self.table = Table(copies(shapes, spread, gap=gap), spread)
        self.best = start
        self.depths, self.cell = depths(self.table)
        self.moves = 0
        ends = self.depths.ends
        spans = np.append(ends[:, 1] - ends[:, 0], np.inf)[self.depths.ways]
        longest = float(spans.min(1).max())
        self._floor = max(area_bound(self.table.copies, spread) / self.cell, longest)
        self._seed, self._random = seed * 1_000_003, random.Random(seed)
        order = sorted(
            range(len(self.table.copies)), key=lambda i: -self.table.copies[i].area
        )
        total, self._large = 0.0, list[int]()
        for i in order:
            if total < LARGE * self.table.area or len(self._large) < 2:
                self._large.append(i)
            total += self.table.copies[i].area

    def ready(self) -> Layout:
        """The start, parted once within its own length, so that all is compiled."""
        self._part(*self._taken(self.best), HASTE)
        return self.best

    def run(self, spent: Callable[[], float]) -> Iterator[Layout]:
        """Ever shorter lays, until the share that is spent reaches 1 or none can be
        shorter."""
        yield from self._explore(spent)
        yield from self._squeeze(spent)

    def _explore(self, spent: Callable[[], float]) -> Iterator[Layout]:
        step, due = STEP, UNPRESSED
        now, length = self._taken(self.best)
        aim = length * (1 - step)
        loose: _Places | None = None
        failed: list[tuple[float, int, _Places]] = []
        while spent() < EXPLORING and length > self._floor + PARTED:
            aim = max(aim, self._floor)
            overlap, found = self._part(now, aim, PATIENCE)
            if overlap <= PARTED and step == STEP and spent() < due:
                now, length, loose = found, aim, found
                aim *= 1 - step
                continue
            if overlap > PARTED and loose is not None and self._press(loose):
                yield self.best
                _, length = self._taken(self.best)
            loose, due = None, spent() + UNPRESSED
            shorter = overlap < NEARLY and self._press(found)
            if shorter:
                yield self.best
            if overlap <= PARTED or shorter:
                now, length = self._taken(self.best) if shorter else (found, aim)
                aim, failed = length * (1 - step), []
                continue
            step = max(LESS * step, LEAST)
            aim = length * (1 - step)
            failed = sorted([*failed, (overlap, self.moves, found)])[:KEPT]
            k = int(abs(self._random.gauss(0.0, SPREAD)) * len(failed))
            now = self._exchanged(failed[min(k, len(failed) - 1)][2])
        if loose is not None and self._press(loose):
            yield self.best

    def _squeeze(self, spent: Callable[[], float]) -> Iterator[Layout]:
        now, length = self._taken(self.best)
        while (share := spent()) < 1.0 and length > self._floor + PARTED:
            late = (share - EXPLORING) / (1 - EXPLORING)
            off = length * (SQUEEZE + (SQUEEZED - SQUEEZE) * late)
            off = min(off, length - self._floor)
            overlap, found = self._part(
                self._pushed(now, length, off), length - off, HASTE
            )
            if overlap < NEARLY and self._press(found):
                yield self.best
                now, length = self._taken(self.best)
            elif overlap <= PARTED:
                now, length = found, length - off

    def _part(
        self, places: _Places, length: float, patience: tuple[int, int]
    ) -> tuple[float, _Places]:
        """Part within a length: what still overlaps, and where all lie then."""
        count = len(places.x)
        pairs = np.zeros((count, count))
        state = State(
            places.way.copy(), places.x.copy(), places.y.copy(), pairs, pairs.copy()
        )
        self._seed += 1
        seed = self._seed % 2**31
        overlap, moves = part(self.depths, state, length, *patience, seed)
        self.moves += moves
        return overlap, _Places(state.way, state.x, state.y)

    def _press(self, places: _Places) -> bool:
        """Press it; True when that is the shortest, and may be cut."""
        choice = [
            list(row).index(way)
            for row, way in zip(self.depths.ways, places.way, strict=True)
        ]
        at = [
            (float(x), float(y))
            for x, y in zip(places.x * self.cell, places.y * self.cell, strict=True)
        ]
        layout = pressed(self.table, settled(self.table, choice, at))
        if layout.length >= self.best.length:
            return False
        placed = self.table.placed(layout)
        if check_lay(self.shapes, self.spread, placed, layout.length, gap=self.gap):
            return False
        self.best = layout
        return True

    def _taken(self, layout: Layout) -> tuple[_Places, float]:
        """A layout in cells, and its length."""
        way = np.array(
            [w[k] for w, k in zip(self.depths.ways, layout.choice, strict=True)]
        )
        x, y = np.array(layout.at).T / self.cell
        return _Places(way, x, y), layout.length / self.cell

    def _pushed(self, places: _Places, length: float, off: float) -> _Places:
        """All pieces right of a random line pushed back."""
        ends = self.depths.ends[places.way]
        middle = places.x + (ends[:, 0] + ends[:, 1]) / 2
        right = middle > self._random.random() * length
        return _Places(places.way, places.x - off * right, places.y)

    def _exchanged(self, places: _Places) -> _Places:
        """Two large pieces of different shapes, one in the place of the other."""
        one = self._random.choice(self._large)
        code = self.table.copies[one].shape.code
        others = [i for i in self._large if self.table.copies[i].shape.code != code]
        if not others:
            return places
        two = self._random.choice(others)
        ends = self.depths.ends[places.way]
        middle = (ends[:, 0] + ends[:, 1]) / 2
        x, y = places.x + middle, places.y.copy()
        x[[one, two]], y[[one, two]] = x[[two, one]], y[[two, one]]
        return _Places(places.way, x - middle, y)


def main() -> None:
    """Shorten what stands on standard input."""
    task = pickle.load(sys.stdin.buffer)
    assert isinstance(task, Task)
    threading.Thread(target=end_with_input, daemon=True).start()
    search = Shortening(
        task.shapes, task.spread, task.start, gap=task.gap, seed=task.seed
    )
    found = search.run(lambda: (time.time() - task.begun) / task.seconds)
    for lay in chain([search.ready()], found):
        print(json.dumps([lay.length, [lay.choice, lay.at], True]), flush=True)


if __name__ == "__main__":
    main()
