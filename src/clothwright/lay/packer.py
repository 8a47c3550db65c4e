"""Free packing as a sparring partner: what it packs is read as a lay.

The packer knows no hands and no folds. So each copy goes to it with the hand that it
has in a lay of our own, and half pieces go as a comb: in the row of that lay, joined by
a spine under the fold and a wall across the cloth, so that they cannot leave it.
"""

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from clothwright.lay.pieces import ring_of
from clothwright.lay.place import Layout, Table
from clothwright.lay.strip import Item, Places, Strip, grouped, read, settled

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


class Packing:
    """All copies packed, with the hands, and the row on the fold, of a layout."""

    def __init__(
        self,
        table: Table,
        like: Layout,
        *,
        seconds: float,
        seed: int = 1,
        workers: int = 1,
        row_turned: bool = False,
    ) -> None:
        self.table, self.like = table, like
        self.row: tuple[tuple[int, int, float], ...] = ()
        low, high = table.spread.bands[0]
        fold = table.spread.near_fold
        self._margin = min(c.margin for c in table.copies)
        height = high - low + self._margin + (HAIR if fold else self._margin) + EXACT
        teeth = [i for i, c in enumerate(table.copies) if fold and c.shape.on_fold]
        rest = [i for i in range(len(table.copies)) if i not in teeth]
        items, self._groups = grouped(table, like, rest)
        if teeth:
            comb: Item = ("comb", self._comb(teeth, row_turned), 1, [0.0])
            items.insert(0, comb)
        self.program = Strip(items, height, seconds=seconds, seed=seed, workers=workers)

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
        high = table.spread.bands[0][1] + self._margin
        spine = shapely.box(left - HAIR, -HAIR, end, 1e-5)
        wall = shapely.box(left - HAIR, -HAIR, left, high)
        comb = shapely.union_all([*shapes, spine, wall])
        parts = [p for p in shapely.get_parts(comb) if isinstance(p, Polygon)]
        return list(ring_of(max(parts, key=lambda p: p.area)))

    def layout(self) -> Layout | None:
        """The shortest packing so far as a layout; the checker has the last word."""
        return self._layout(self.program.placed)

    def near(self) -> Layout | None:
        """What was last tried shorter still, in which a few pieces overlap; None when
        there is nothing new."""
        return self._layout(self.program.near())

    def _layout(self, placed: Places) -> Layout | None:
        table = self.table
        if not placed:
            return None
        at: list[tuple[float, float]] = [(0.0, 0.0)] * len(table.copies)
        choice = list(self.like.choice)
        lift = table.spread.bands[0][0] - self._margin - EXACT / 2
        if self.row:
            comb = next(p for p in placed if p[0] == "comb")
            lift = -comb[3]
            for i, v, x in self.row:
                at[i], choice[i] = (x + comb[2], 0.0), v
        read(table, self._groups, placed, (0.0, lift), choice, at)
        return settled(table, choice, at)


def _slide(last: BaseGeometry, points: list[tuple[float, float]]) -> float:
    """How far the next in the row can be pushed back towards those before it."""
    low, high = 0.0, last.bounds[2] - last.bounds[0]
    for _ in range(20):
        middle = (low + high) / 2
        there = Polygon([(x - middle, y) for x, y in points])
        free = last.intersection(there).area < 1e-6
        low, high = (middle, high) if free else (low, middle)
    return low
