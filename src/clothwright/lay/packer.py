"""Free packing as a sparring partner: what it packs is read as a lay.

The packer knows no hands and no folds. So each copy goes to it with the hand that it
has in a lay of our own, and half pieces go as a comb: in the row of that lay, joined by
a spine under the fold and a wall across the cloth, so that they cannot leave it.
"""

import json
import subprocess
import sys
import threading
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from clothwright.lay.pieces import ring_of
from clothwright.lay.place import MEAN_WEIGHT, Layout, Table

HAIR = 0.002
"""Thickness of the comb's spine and wall, cm."""

TOOTH_GAP = 0.05
"""Between neighbours in the comb, so that no gap closes to a hole, cm."""

EXACT = 0.003
"""What the strip is wider than the cloth, so that exact fits are found, cm; half of it
may lie over a border."""


def can_pack(table: Table) -> bool:
    """True when the packer can say all that this cloth demands."""
    spread = table.spread
    return not (table.links or spread.flaws or len(spread.bands) > 1 or spread.far_fold)


@dataclass(frozen=True)
class _Item:
    """What goes to the packer under one id."""

    copies: tuple[int, ...]
    base: tuple[int, ...]
    """Variant of each copy whose points were sent."""


class Packing:
    """One run of the packer; it goes on beside us until it is done or stopped."""

    def __init__(
        self,
        table: Table,
        like: Layout,
        *,
        seconds: float,
        seed: int = 1,
        workers: int = 1,
        share: float = 0.8,
        row_turned: bool = False,
    ) -> None:
        self.table, self.like = table, like
        self.row: tuple[tuple[int, int, float], ...] = ()
        self._items: dict[str, _Item] = {}
        self._line = ""
        told = {
            "height": self._height(),
            "seconds": seconds,
            "seed": seed,
            "workers": workers,
            "share": share,
            "items": self._told(row_turned),
        }
        self._process = subprocess.Popen(
            [sys.executable, "-I", str(Path(__file__).with_name("packing.py"))],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            start_new_session=True,
        )
        self._reader = threading.Thread(
            target=self._run, args=(json.dumps(told),), daemon=True
        )
        self._reader.start()

    def _run(self, told: str) -> None:
        stdin, stdout = self._process.stdin, self._process.stdout
        assert stdin is not None
        assert stdout is not None
        with suppress(OSError):
            stdin.write(told)
            stdin.close()
        with stdout:
            for line in stdout:
                if line.endswith("\n"):
                    self._line = line
        self._process.wait()

    @property
    def done(self) -> bool:
        """True when it has nothing more to say."""
        return not self._reader.is_alive()

    def stop(self) -> None:
        """End it at once; what it has found stays."""
        self._process.kill()
        self._reader.join(2.0)

    @property
    def length(self) -> float:
        """Length of its shortest packing so far; infinite without one."""
        return float(json.loads(self._line)[0]) if self._line else float("inf")

    def _height(self) -> float:
        low, high = self.table.spread.bands[0]
        margin = min(c.margin for c in self.table.copies)
        fold = self.table.spread.near_fold
        return high - low + (HAIR + margin if fold else 2 * margin) + EXACT

    def _told(self, row_turned: bool) -> list[list[object]]:
        """The items: the comb, then copies of one shape and hand together."""
        table, like = self.table, self.like
        fold = table.spread.near_fold
        out: list[list[object]] = []
        teeth = [i for i, c in enumerate(table.copies) if fold and c.shape.on_fold]
        if teeth:
            out.append(["comb", self._comb(teeth, row_turned), 1, [0.0]])
        groups: dict[tuple[str, bool], list[int]] = {}
        for i, c in enumerate(table.copies):
            if i not in teeth:
                hand = c.variants[like.choice[i]].mirrored
                groups.setdefault((c.shape.code, hand), []).append(i)
        for n, ((_, hand), members) in enumerate(sorted(groups.items())):
            ways = [
                k
                for k, v in enumerate(table.copies[members[0]].variants)
                if v.mirrored == hand
            ]
            variants = table.copies[members[0]].variants
            base = variants[ways[0]]
            turns = [variants[k].turn - base.turn for k in ways]
            self._items[str(n)] = _Item(tuple(members), (ways[0],) * len(members))
            out.append([str(n), list(base.points), len(members), turns])
        return out

    def _comb(self, teeth: list[int], row_turned: bool) -> list[tuple[float, float]]:
        table, like = self.table, self.like
        teeth = sorted(teeth, key=lambda i: like.at[i][0], reverse=row_turned)
        row: list[tuple[int, int, float]] = []
        shapes: list[Polygon] = []
        for i in teeth:
            v = like.choice[i]
            points = table.copies[i].variants[v].points
            x = -min(p[0] for p in points)
            if shapes:
                last = shapely.union_all(shapes)
                x += last.bounds[2]
                x -= _slide(last, [(px + x, py) for px, py in points])
                x += TOOTH_GAP
            row.append((i, v, x))
            shapes.append(Polygon([(px + x, py) for px, py in points]))
        self.row = tuple(row)
        _, _, end, _ = shapely.union_all(shapes).bounds
        left = min(s.bounds[0] for s in shapes)
        high = self.table.spread.bands[0][1] + min(c.margin for c in table.copies)
        spine = shapely.box(left - HAIR, -HAIR, end, 1e-5)
        wall = shapely.box(left - HAIR, -HAIR, left, high)
        comb = shapely.union_all([*shapes, spine, wall])
        parts = [p for p in shapely.get_parts(comb) if isinstance(p, Polygon)]
        return list(ring_of(max(parts, key=lambda p: p.area)))

    def layout(self) -> Layout | None:
        """Its shortest packing so far as a layout; the checker has the last word."""
        if not self._line:
            return None
        _, placed = json.loads(self._line)
        table = self.table
        n = len(table.copies)
        at: list[tuple[float, float]] = [(0.0, 0.0)] * n
        choice = list(self.like.choice)
        lift = table.spread.bands[0][0] - min(c.margin for c in table.copies)
        lift -= EXACT / 2
        if self.row:
            comb = next(p for p in placed if p[0] == "comb")
            lift = -comb[3]
            for i, v, x in self.row:
                at[i], choice[i] = (x + comb[2], 0.0), v
        used: dict[str, int] = {}
        for name, turn, x, y in placed:
            if name == "comb":
                continue
            item, k = self._items[name], used.get(name, 0)
            used[name] = k + 1
            i = item.copies[k]
            variants = table.copies[i].variants
            base = variants[item.base[k]]
            choice[i] = min(
                (w for w, v in enumerate(variants) if v.mirrored == base.mirrored),
                key=lambda w: abs(
                    (variants[w].turn - base.turn - turn + 180) % 360 - 180
                ),
            )
            at[i] = (x, y + lift)
        return _settled(table, choice, at)


def _slide(last: BaseGeometry, points: list[tuple[float, float]]) -> float:
    """How far the next in the row can be pushed back towards those before it."""
    low, high = 0.0, last.bounds[2] - last.bounds[0]
    for _ in range(20):
        middle = (low + high) / 2
        there = Polygon([(x - middle, y) for x, y in points])
        free = last.intersection(there).area < 1e-6
        low, high = (middle, high) if free else (low, middle)
    return low


def _settled(table: Table, choice: list[int], at: list[tuple[float, float]]) -> Layout:
    """A layout from places, pushed to the beginning of the cloth."""
    spans = []
    for i, c in enumerate(table.copies):
        xs = [x for x, _ in c.variants[choice[i]].points]
        spans.append((min(xs) + c.margin + at[i][0], max(xs) - c.margin + at[i][0]))
    start = min(a for a, _ in spans)
    places = tuple((x - start, y) for x, y in at)
    length = max(b for _, b in spans) - start
    middle = sum(
        c.area * ((a + b) / 2 - start)
        for c, (a, b) in zip(table.copies, spans, strict=True)
    )
    order = tuple(sorted(range(len(at)), key=lambda i: (places[i][0], i)))
    cost = length + MEAN_WEIGHT * middle / table.area
    return Layout(order, tuple(choice), places, length, cost)
