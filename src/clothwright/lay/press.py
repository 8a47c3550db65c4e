"""All pieces of a lay pressed towards its beginning at once.

Laying one after another, or pushing one at a time, sticks where two pieces hold each
other. Here every pair near each other keeps a straight line between its convex parts,
the one with the most room, and all shifts are found together: a linear programme for
the shortest lay (HiGHS, by scipy). Then the lines are chosen anew, until nothing more
is gained. Turns, hands and neighbours stay; what is found is never longer.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from clothwright.lay.nofit import convex_parts
from clothwright.lay.place import SLACK, Layout, Table
from clothwright.lay.strip import settled

STEP = 0.01
"""How far a piece goes in one round, as a share of the cloth's width."""

ROUNDS = 100
"""So many rounds at the most; seven were enough for a hundred pieces well packed."""

GAIN = 1e-5
"""A round that gains less than this share of the length is the last."""

MEAN = 1e-4
"""Weight of each piece's own place beside the length: what may lie nearer, does."""

Array = NDArray[np.float64]


@dataclass(frozen=True)
class _Part:
    """A convex part of a piece in its turn: corners, and unit normals outwards."""

    points: Array
    normals: Array


@dataclass(frozen=True)
class _Body:
    """A piece as convex parts, with its box and the boxes of the parts."""

    parts: tuple[_Part, ...]
    box: Array
    boxes: Array


def pressed(table: Table, layout: Layout) -> Layout:
    """The layout pressed together; the same where stripes hold the pieces."""
    if table.links:
        return layout
    press = _Press(table, layout)
    length = layout.length
    for _ in range(ROUNDS):
        found = press.round()
        if found is None or length - found < GAIN * length:
            break
        length = found
    at = [(float(x), float(y)) for x, y in press.at[: len(table.copies)]]
    out = settled(table, layout.choice, at)
    return out if out.length < layout.length else layout


class _Press:
    """Where everything stands, the flaws of the cloth behind the pieces."""

    def __init__(self, table: Table, layout: Layout) -> None:
        chosen = [
            c.variants[k] for c, k in zip(table.copies, layout.choice, strict=True)
        ]
        flaws = [
            ((f.left, f.top), (f.right, f.top), (f.right, f.bottom), (f.left, f.bottom))
            for f in table.spread.flaws
        ]
        bodies: dict[object, _Body] = {}
        self.bodies = [
            bodies.setdefault(points, _body(points))
            if points not in bodies
            else bodies[points]
            for points in (*(v.points for v in chosen), *flaws)
        ]
        self.count = len(chosen)
        self.at: Array = np.array([*layout.at, *((0.0, 0.0) for _ in flaws)])
        self.step = STEP * table.spread.width
        self.across = np.array(
            [_range(v.across, y) for v, (_, y) in zip(chosen, layout.at, strict=True)]
        )
        margins = np.array([c.margin for c in table.copies])
        spans = np.array([b.box[0] for b in self.bodies[: self.count]])
        self.left, self.right = spans[:, 0] + margins, spans[:, 1] - margins
        self.areas = np.array([c.area for c in table.copies]) / table.area
        self._apart: dict[tuple[int, int], tuple[Array, Array]] = {}

    def round(self) -> float | None:
        """Move all by at most a step; the length then, None when it cannot be found."""
        from scipy.optimize import linprog
        from scipy.sparse import csr_matrix

        n, at = self.count, self.at
        i, j, normal, room = self._lines()
        rows, k = np.arange(len(i)), np.arange(n)
        # normal · (shift of j - shift of i) >= -room, and length >= right ends
        last = rows.size + k
        spots = [
            (normal[:, 0], rows, 2 * i),
            (normal[:, 1], rows, 2 * i + 1),
            (-normal[:, 0], rows, 2 * j),
            (-normal[:, 1], rows, 2 * j + 1),
            (np.ones(n), last, 2 * k),
            (-np.ones(n), last, np.full(n, 2 * len(at))),
        ]
        data, row, column = (np.concatenate(s) for s in zip(*spots, strict=True))
        size = 2 * len(at) + 1
        apart = csr_matrix((data, (row, column)), shape=(rows.size + n, size))
        limit = np.concatenate([room, -(at[:n, 0] + self.right)])
        cost = np.zeros(size)
        cost[-1] = 1.0
        cost[: 2 * n : 2] = MEAN * self.areas
        low, high = np.zeros(size), np.zeros(size)
        low[: 2 * n : 2] = np.minimum(
            0, np.maximum(-self.step, -(at[:n, 0] + self.left))
        )
        high[: 2 * n : 2] = self.step
        y = at[:n, 1]
        low[1 : 2 * n : 2] = np.minimum(
            0, np.maximum(-self.step, self.across[:, 0] - y)
        )
        high[1 : 2 * n : 2] = np.maximum(
            0, np.minimum(self.step, self.across[:, 1] - y)
        )
        high[-1] = np.inf
        found = linprog(
            cost,
            A_ub=apart,
            b_ub=limit,
            bounds=np.stack([low, high], 1),
            method="highs",
        )
        if found.status != 0:
            return None
        self.at = at + found.x[:-1].reshape(-1, 2)
        return float(np.max(self.at[:n, 0] + self.right))

    def _lines(self) -> tuple[Array, Array, Array, Array]:
        """For every pair of parts near each other: the two bodies, the normal of the
        line between them that has the most room, and that room."""
        reach = 2 * self.step
        boxes = np.array([b.box for b in self.bodies]) + self.at[:, :, None]
        i, j = np.triu_indices(len(self.bodies), 1)
        near = (boxes[j, :, 0] - reach <= boxes[i, :, 1]).all(1)
        near &= (boxes[j, :, 1] + reach >= boxes[i, :, 0]).all(1)
        near &= i < self.count
        first: list[int] = []
        second: list[int] = []
        normals: list[Array] = []
        rooms: list[float] = []
        for a, b in zip(i[near], j[near], strict=True):
            one, two = self.bodies[a], self.bodies[b]
            way = self.at[b] - self.at[a]
            there = two.boxes + way[:, None]
            close = (there[None, :, :, 0] - reach <= one.boxes[:, None, :, 1]).all(2)
            close &= (there[None, :, :, 1] + reach >= one.boxes[:, None, :, 0]).all(2)
            for p, q in zip(*np.nonzero(close), strict=True):
                n, support = self._between(one.parts[p], two.parts[q])
                room = n @ way - support
                m = int(np.argmax(room))
                if room[m] <= 2 * np.sqrt(2) * self.step:
                    first.append(int(a))
                    second.append(int(b))
                    normals.append(n[m])
                    rooms.append(max(float(room[m]), 0.0))
        return (
            np.array(first, dtype=int),
            np.array(second, dtype=int),
            np.array(normals).reshape(-1, 2),
            np.array(rooms),
        )

    def _between(self, one: _Part, two: _Part) -> tuple[Array, Array]:
        """The lines that can part two convex parts: normals, and what the shift
        between their origins has to measure along each."""
        known = self._apart.get((id(one), id(two)))
        if known is None:
            n = np.concatenate([one.normals, -two.normals])
            support = (n @ one.points.T).max(1) - (n @ two.points.T).min(1)
            known = self._apart[id(one), id(two)] = n, support
        return known


def _body(points: tuple[tuple[float, float], ...]) -> _Body:
    parts = tuple(_Part(p, _normals(p)) for p in convex_parts(points))
    boxes = np.array([[p.points.min(0), p.points.max(0)] for p in parts])
    boxes = boxes.transpose(0, 2, 1)  # part, axis, (low, high)
    box = np.stack([boxes[:, :, 0].min(0), boxes[:, :, 1].max(0)], 1)
    return _Body(parts, box, boxes)


def _normals(points: Array) -> Array:
    """Unit normals outwards of a convex outline that runs counter-clockwise."""
    edges = np.roll(points, -1, 0) - points
    normals = np.stack([edges[:, 1], -edges[:, 0]], 1)
    lengths = np.hypot(normals[:, 0], normals[:, 1])
    solid = lengths > 1e-9
    return np.asarray(normals[solid] / lengths[solid, None])


def _range(across: tuple[tuple[float, float], ...], y: float) -> tuple[float, float]:
    """The range across the cloth in which an origin stands."""
    return min(across, key=lambda r: max(r[0] - y, y - r[1], -SLACK))
