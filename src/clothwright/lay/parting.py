"""Pieces that overlap, parted: one after another put down where it overlaps least.

Guided local search, as published for this problem: by Egeblad, Nielsen and Odgaard
(2007), by Umetani and others (2009), and by Gardeyn, Vanden Berghe and Wauters (2025,
arXiv 2509.13329), whose rules for the weights are followed here. The depth of each pair
is weighted; a piece that overlaps goes to the place and turn of the least weighted sum;
the weights of pairs that overlap still are raised, the others fall back. So a piece
that stays in the way grows dear until another makes room.

The place is sought over the whole cloth at once: the tables of all other pieces, each
times its weight, are added up on a coarse grid (Umetani and Murakami, 2022, on raster
pieces), and from its lowest hollows and from where the piece lies the sum is followed
downwards. Everything is in cells of `depth.py`, and in numba.
"""

import math
from typing import NamedTuple

import numpy as np
from numba import njit

from clothwright.lay.depth import COARSE, Depths, Floats, Grid, Whole

HOLLOWS = 4
"""Of the coarse sum so many, over all turns, are followed down."""

PARTED = 0.02
"""All pairs together overlap no more than this, cells: the press does the rest."""

RISE, RISE_MORE, FALL = 1.2, 0.8, 0.95
"""A weight is multiplied by 1.2, and by up to 2 for the deepest pair; by 0.95 when its
pair does not overlap, down to 1 (the published figures)."""

BETTER = 0.98
"""Less overlap by so much starts the patience anew."""

NEAR = 3.0
"""Pieces within so many coarse cells count while a place is followed down."""


class State(NamedTuple):
    """Where all copies lie; depths and weights of all pairs. Changed in place."""

    way: Whole
    x: Floats
    y: Floats
    depth: Floats
    weight: Floats


class _Room(NamedTuple):
    """What a move works in."""

    sums: Grid
    near: Whole
    value: Floats
    way: Whole
    column: Whole
    row: Whole
    corner: Floats


@njit(cache=True, fastmath=True)
def between(t: Depths, a: int, b: int, dx: float, dy: float) -> float:
    """How deep way b, shifted by dx and dy from way a, overlaps it, cells."""
    u, v = dx - t.spot[a, b, 0], dy - t.spot[a, b, 1]
    columns = t.spot[a, b, 2]
    if u <= 0 or v <= 0 or u >= columns - 1 or v >= t.spot[a, b, 3] - 1:
        return 0.0
    i, j = int(u), int(v)
    p, q = u - i, v - j
    k = t.start[a, b] + j * columns + i
    low = t.fine[k] + p * (t.fine[k + 1] - t.fine[k])
    k += columns
    high = t.fine[k] + p * (t.fine[k + 1] - t.fine[k])
    return float(max(low + q * (high - low), 0.0))


@njit(cache=True, fastmath=True)
def _value(
    t: Depths,
    s: State,
    near: Whole,
    count: int,
    i: int,
    place: tuple[int, float, float],
    bound: float,
) -> float:
    """The weighted sum of a copy in a place; given up from the bound on."""
    way, x, y = place
    total = 0.0
    for k in range(count):
        j = near[k]
        deep = between(t, s.way[j], way, x - s.x[j], y - s.y[j])
        total += s.weight[i, j] * deep
        if total >= bound:
            break
    return total


@njit(cache=True)
def _near(
    t: Depths, s: State, near: Whole, i: int, place: tuple[int, float, float]
) -> int:
    """Which copies lie near that place; how many."""
    way, x, y = place
    reach = NEAR * COARSE
    count = 0
    for j in range(s.x.size):
        spot = t.spot[s.way[j], way]
        u, v = x - s.x[j] - spot[0], y - s.y[j] - spot[1]
        if -reach < u < spot[2] + reach and -reach < v < spot[3] + reach and j != i:
            near[count] = j
            count += 1
    return count


@njit(cache=True, fastmath=True)
def _down(
    t: Depths,
    s: State,
    near: Whole,
    i: int,
    place: tuple[int, float, float],
    length: float,
    steps: tuple[float, float],
) -> tuple[float, tuple[int, float, float]]:
    """Follow the sum downwards, with ever shorter steps in random directions."""
    way, x, y = place
    left, right = -t.ends[way, 0], length - t.ends[way, 1]
    low, high = t.ends[way, 2], t.ends[way, 3]
    count = _near(t, s, near, i, place)
    value = _value(t, s, near, count, i, place, 1e30)
    step, last = steps
    while step > last and value > 0.0:
        k = np.random.randint(0, 4)
        angle = math.pi * (np.random.random() if k == 3 else k / 4)
        u, v = step * math.cos(angle), step * math.sin(angle)
        best = value
        for _ in range(2):
            to = min(max(x + u, left), right), min(max(y + v, low), high)
            there = _value(t, s, near, count, i, (way, to[0], to[1]), best)
            if there < best:
                best, place = there, (way, to[0], to[1])
            u, v = -u, -v
        if best < value:
            value = best
            _, x, y = place
            step *= 1.1
        else:
            step *= 0.65
    return value, (way, x, y)


@njit(cache=True, fastmath=True)
def _add_up(
    t: Depths, s: State, i: int, corner: tuple[int, float, float], sums: Grid
) -> None:
    """The weighted sums of a copy over the coarse grid that begins at a corner."""
    way, x, y = corner
    rows, columns = sums.shape
    sums[:, :] = np.float32(0.0)
    for j in range(s.x.size):
        if j == i:
            continue
        a = s.way[j]
        weight = np.float32(s.weight[i, j])
        u = int(round(x - s.x[j])) - t.spot[a, way, 0]
        v = int(round(y - s.y[j])) - t.spot[a, way, 1]
        right, down = u // COARSE, v // COARSE
        phase = (v - down * COARSE) * COARSE + u - right * COARSE
        wide, high = t.coarse_size[a, way]
        first, last = max(0, -right), min(columns, wide - right)
        if last <= first:
            continue
        begin = t.coarse_start[a, way] + phase * wide * high
        for r in range(max(0, -down), min(rows, high - down)):
            k = begin + (r + down) * wide + right
            into, add = sums[r, first:last], t.coarse[k + first : k + last]
            for c in range(last - first):
                into[c] += weight * add[c]


@njit(cache=True, fastmath=True)
def _hollows(sums: Grid, way: int, room: _Room) -> None:
    """Keep the lowest points of the grid that are no higher than those round them."""
    rows, columns = sums.shape
    last = HOLLOWS - 1
    for r in range(rows):
        line = sums[r]
        low = line[0]
        for c in range(1, columns):
            low = min(low, line[c])
        if low >= room.value[last]:
            continue
        for c in range(columns):
            value = line[c]
            if value >= room.value[last]:
                continue
            lowest = True
            for q in range(max(0, r - 1), min(rows, r + 2)):
                for p in range(max(0, c - 1), min(columns, c + 2)):
                    before = q < r or (q == r and p < c)
                    if sums[q, p] < value or (before and sums[q, p] == value):
                        lowest = False
            if not lowest:
                continue
            k = last
            while k > 0 and room.value[k - 1] > value:
                room.value[k], room.way[k] = room.value[k - 1], room.way[k - 1]
                room.column[k], room.row[k] = room.column[k - 1], room.row[k - 1]
                k -= 1
            room.value[k], room.way[k], room.column[k], room.row[k] = value, way, c, r


@njit(cache=True, fastmath=True)
def _move(t: Depths, s: State, i: int, length: float, room: _Room) -> None:
    """Put a copy where it overlaps least by weight; it stays if nowhere is better."""
    here = 0.0
    for j in range(s.x.size):
        here += s.weight[i, j] * s.depth[i, j]
    wide = float(COARSE)
    own = (s.way[i], s.x[i], s.y[i])
    best, place = _down(t, s, room.near, i, own, length, (wide, 0.05))
    room.value[:] = 1e30
    for k in range(t.ways.shape[1]):
        way = t.ways[i, k]
        if way < 0:
            break
        across = t.ends[way, 3] - t.ends[way, 2]
        along = length - t.ends[way, 1] + t.ends[way, 0]
        if along < 0.0:
            continue
        x = -t.ends[way, 0] + np.random.random() * min(wide, along)
        y = t.ends[way, 2] + np.random.random() * min(wide, across)
        columns = int((length - t.ends[way, 1] - x) / wide) + 1
        rows = int((t.ends[way, 3] - y) / wide) + 1
        sums = room.sums[:rows, :columns]
        _add_up(t, s, i, (way, x, y), sums)
        _hollows(sums, way, room)
        room.corner[way, 0], room.corner[way, 1] = x, y
    for k in range(HOLLOWS):
        if room.value[k] >= 1e30 or best <= 0.0:
            break
        way = room.way[k]
        x = room.corner[way, 0] + room.column[k] * wide
        y = room.corner[way, 1] + room.row[k] * wide
        start = (way, x, y)
        steps = (0.7 * wide, 0.15 * wide)
        value, there = _down(t, s, room.near, i, start, length, steps)
        if value < best:
            best, place = value, there
    best, place = _down(t, s, room.near, i, place, length, (0.15 * wide, 0.005))
    if best < here:
        s.way[i], s.x[i], s.y[i] = place
        _measure(t, s, i)


@njit(cache=True, fastmath=True)
def _measure(t: Depths, s: State, i: int) -> None:
    """How deep a copy overlaps each other one."""
    for j in range(s.x.size):
        if j != i:
            x, y = s.x[i] - s.x[j], s.y[i] - s.y[j]
            deep = between(t, s.way[j], s.way[i], x, y)
            s.depth[i, j] = s.depth[j, i] = deep


@njit(cache=True)
def _weigh(s: State) -> None:
    """Raise the weights of the pairs that overlap, let those of the others fall."""
    deepest = s.depth.max()
    for i in range(s.x.size):
        for j in range(i):
            rise = FALL
            if s.depth[i, j] > 0.0:
                rise = RISE + RISE_MORE * s.depth[i, j] / deepest
            weight = max(1.0, s.weight[i, j] * rise)
            s.weight[i, j] = s.weight[j, i] = weight


@njit(cache=True)
def _put(s: State, way: Whole, x: Floats, y: Floats) -> None:
    s.way[:], s.x[:], s.y[:] = way, x, y


@njit(cache=True, nogil=True)  # so that a thread sees it when the input ends
def part(
    t: Depths, s: State, length: float, patience: int, tries: int, seed: int
) -> tuple[float, int]:
    """Part all copies within a length: what still overlaps, cells, and moves made.

    After so many rounds without less overlap it goes back to the least, with the
    weights as they are; after so many such tries in a row it gives up. The state is
    left as it overlapped least. The same seed always does the same.
    """
    np.random.seed(seed)
    count = s.x.size
    for i in range(count):
        ends = t.ends[s.way[i]]
        s.x[i] = min(max(s.x[i], -ends[0]), length - ends[1])
        s.y[i] = min(max(s.y[i], ends[2]), ends[3])
    s.weight[:, :] = 1.0
    for i in range(count):
        _measure(t, s, i)
    room = _Room(
        np.zeros(
            (
                int((t.ends[:, 3] - t.ends[:, 2]).max() / COARSE) + 2,
                int((length + (t.ends[:, 0] - t.ends[:, 1]).max()) / COARSE) + 2,
            ),
            np.float32,
        ),
        np.zeros(count, np.int64),
        np.zeros(HOLLOWS),
        np.zeros(HOLLOWS, np.int64),
        np.zeros(HOLLOWS, np.int64),
        np.zeros(HOLLOWS, np.int64),
        np.zeros((t.ends.shape[0], 2)),
    )
    least = at_try = s.depth.sum() / 2
    way, x, y = s.way.copy(), s.x.copy(), s.y.copy()
    moves = idle = tried = 0
    while least > PARTED:
        for i in np.random.permutation(count):
            if s.depth[i].max() > 0.0:
                _move(t, s, i, length, room)
                moves += 1
        total = s.depth.sum() / 2
        if total >= least:
            idle += 1
        elif total < BETTER * least:
            idle = 0
        if total < least:
            least = total
            way[:], x[:], y[:] = s.way, s.x, s.y
        _weigh(s)
        if idle > patience:
            tried = tried + 1 if least >= BETTER * at_try else 0
            if tried >= tries:
                break
            at_try, idle = least, 0
            _put(s, way, x, y)
            for i in range(count):
                _measure(t, s, i)
    _put(s, way, x, y)
    for i in range(count):
        _measure(t, s, i)
    return least, moves
