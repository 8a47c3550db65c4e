"""All pieces of a lay pressed towards its beginning at once.

Laying one after another, or pushing one at a time, sticks where two pieces hold each
other. Here every pair near each other keeps a straight line between its convex parts,
the one with the most room, and all shifts are found together: a linear programme for
the shortest lay (HiGHS, by scipy). Then the lines are chosen anew, until nothing more
is gained. Turns, hands and neighbours stay; what is found is never longer.

Pieces that overlap a little, as the packer's failed attempts do, are pushed apart on
the way: what the lines still lack is bought off with length, dearer than any cloth.
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

LACK = 20.0
"""Price of a cm that a line lacks, in cm of length: a line nearly along the cloth may
lack little and save much."""

PARTED = 5e-7
"""A line that lacks no more than this lacks nothing: rounding, cm."""

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
    """The layout pressed together; the same where stripes hold the pieces.

    One whose pieces overlap may come back longer, or overlapping still: the checker has
    the last word.
    """
    if table.links:
        return layout
    press = _Press(table, layout)
    length, lack = layout.length, float("inf")
    overlapped = False
    for _ in range(ROUNDS):
        found = press.round()
        if found is None:
            break
        shorter, length = length - found, found
        before, lack = lack, press.lack
        overlapped = overlapped or lack > 0.0
        if not (before or lack) and shorter < GAIN * length:
            break
    at = [(float(x), float(y)) for x, y in press.at[: len(table.copies)]]
    out = settled(table, layout.choice, at)
    return out if overlapped or out.length < layout.length else layout


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
        y = self.at[: self.count, 1]
        inside = np.clip(y, *self.across.T)
        over = np.abs(inside - y) > 2 * SLACK  # else it is an exact fit, and stays
        y[over] = inside[over]
        margins = np.array([c.margin for c in table.copies])
        spans = np.array([b.box[0] for b in self.bodies[: self.count]])
        self.left, self.right = spans[:, 0] + margins, spans[:, 1] - margins
        self.areas = np.array([c.area for c in table.copies]) / table.area
        self.lack = 0.0
        """What all lines together lacked before the last round, cm."""

        self._apart: dict[tuple[int, int], tuple[Array, Array]] = {}

    def round(self) -> float | None:
        """Move all by at most a step; the length then, None when it cannot be found."""
        from scipy.optimize import linprog
        from scipy.sparse import csr_matrix

        n, at = self.count, self.at
        i, j, normal, room = self._lines()
        rows, k = np.arange(len(i)), np.arange(n)
        lacking = np.flatnonzero(room < -PARTED)
        room[(room < 0.0) & (room >= -PARTED)] = 0.0  # rounding
        self.lack = -float(room[lacking].sum())
        # normal · (shift of j - shift of i) + what it still lacks >= -room, and
        # length >= right ends
        last, length = rows.size + k, 2 * len(at)
        spots = [
            (normal[:, 0], rows, 2 * i),
            (normal[:, 1], rows, 2 * i + 1),
            (-normal[:, 0], rows, 2 * j),
            (-normal[:, 1], rows, 2 * j + 1),
            (np.ones(n), last, 2 * k),
            (-np.ones(n), last, np.full(n, length)),
            (-np.ones(lacking.size), lacking, length + 1 + np.arange(lacking.size)),
        ]
        data, row, column = (np.concatenate(s) for s in zip(*spots, strict=True))
        size = length + 1 + lacking.size
        apart = csr_matrix((data, (row, column)), shape=(rows.size + n, size))
        limit = np.concatenate([room, -(at[:n, 0] + self.right)])
        cost = np.zeros(size)
        cost[length], cost[length + 1 :] = 1.0, LACK
        cost[: 2 * n : 2] = MEAN * self.areas
        low, high = np.zeros(size), np.zeros(size)
        low[: 2 * n : 2] = np.minimum(
            0, np.maximum(-self.step, -(at[:n, 0] + self.left))
        )
        high[: 2 * n : 2] = self.step
        across = np.clip(self.across - at[:n, 1, None], -self.step, self.step)
        low[1 : 2 * n : 2] = np.minimum(0, across[:, 0])
        high[1 : 2 * n : 2] = np.maximum(0, across[:, 1])
        high[length:] = np.inf
        found = linprog(
            cost,
            A_ub=apart,
            b_ub=limit,
            bounds=np.stack([low, high], 1),
            method="highs",
        )
        if found.status != 0:
            return None
        self.at = at + found.x[:length].reshape(-1, 2)
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
                    rooms.append(float(room[m]))
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
