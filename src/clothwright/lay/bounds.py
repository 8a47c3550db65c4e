"""How short a lay can get: two lengths that no lay of these pieces can go below.

The area bound is all the cloth that the pieces cover over the usable width. The row
bound is the shortest row of the pieces on the fold; it takes it that none of them tucks
into the hollow of its neighbour from beyond the next.
"""

from collections.abc import Sequence
from functools import cache

import shapely

from clothwright.lay.nofit import no_fit
from clothwright.lay.pieces import Copy, Variant
from clothwright.lay.spread import Spread

MOST_IN_ROW = 10
"""Rows of more pieces are not gone through."""


def area_bound(copies: Sequence[Copy], spread: Spread) -> float:
    """Covered cloth over usable width, cm."""
    return sum(c.area for c in copies) / spread.usable


def row_bound(copies: Sequence[Copy], spread: Spread) -> float:
    """Length of the shortest row along the fold, cm; 0 without one. With a fold on
    either side, of the longer of the two rows."""
    row = [c for c in copies if c.shape.on_fold and spread.folds]
    if not row or len(row) > MOST_IN_ROW:
        return 0.0
    if not spread.far_fold:
        return _rows(row, 0.0)[(1 << len(row)) - 1]
    near, far = _rows(row, 0.0), _rows(row, spread.width)
    full = (1 << len(row)) - 1
    return min(max(near[s], far[full ^ s]) for s in range(full + 1))


def _rows(row: Sequence[Copy], fold: float) -> list[float]:
    """Shortest length of the row of every subset, on the fold at this y."""
    ways: list[tuple[int, Variant, float]] = [
        (i, v, c.margin)
        for i, c in enumerate(row)
        for v in c.variants
        if v.across[0][0] == fold
    ]
    n, best = len(row), [float("inf")] * (1 << len(row))
    best[0] = 0.0
    step = cache(_step)
    ends: list[dict[int, float]] = [{} for _ in range(1 << n)]
    for k, (i, v, margin) in enumerate(ways):
        xs = [x for x, _ in v.points]
        ends[1 << i][k] = -(min(xs) + margin)  # where the origin of the first stands
    for done in range(1, 1 << n):
        for k, at in ends[done].items():
            v, margin = ways[k][1], ways[k][2]
            right = at + max(x for x, _ in v.points) - margin
            best[done] = min(best[done], right)
            for m, (j, w, _) in enumerate(ways):
                if done >> j & 1:
                    continue
                there = at + step(v, w)
                known = ends[done | 1 << j].get(m)
                if known is None or there < known:
                    ends[done | 1 << j][m] = there
    return best


def _step(standing: Variant, following: Variant) -> float:
    """How far behind one piece on the fold the next has to stand at least."""
    cover = no_fit(standing.points, following.points)
    left, _, right, _ = shapely.bounds(cover)
    line = shapely.LineString([(left - 1, 0.0), (right + 1, 0.0)])
    return float(shapely.bounds(line.intersection(cover))[2])
