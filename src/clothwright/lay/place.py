"""Laying pieces one after another, each as far to the end of the cloth as it goes.

A piece may stand where its domain (a box between the borders, the line of a fold, the
lines of a stripe) is not covered by the no-fit polygons of what lies already; of those
places it takes the one nearest to the beginning, then nearest to the near edge. So
every rule of the cloth is a domain or a list of variants, and nothing overlaps.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry
from shapely.geometry.base import BaseGeometry

from clothwright.lay.match import Link, Phases, phases
from clothwright.lay.nofit import NoFits
from clothwright.lay.pieces import Copy, Placed
from clothwright.lay.spread import Spread

SLACK = 1e-3
"""A border gives way by this, so that an exact fit is seen, cm."""

GRID = 1e-6
"""Places closer than this are one place, cm."""

SQUEEZES = 6
"""Rounds of putting each piece down again nearer to the beginning."""

MEAN_WEIGHT = 0.02
"""Of the mean place of the cloth that is used, beside the length, in the cost: of two
equal lengths the one with more room at its end is the better start for a shorter."""


@dataclass(frozen=True)
class Layout:
    """All copies in the order in which they were laid."""

    order: tuple[int, ...]
    choice: tuple[int, ...]
    """Variant of each copy, by copy."""

    at: tuple[tuple[float, float], ...]
    """Where its origin stands, by copy."""

    length: float
    cost: float


class Table:
    """The spread cloth and all that is to be laid on it.

    `links` say which net points of which copies share a stripe; `known` keeps no-fit
    polygons from one table to the next.
    """

    def __init__(
        self,
        copies: Sequence[Copy],
        spread: Spread,
        links: Sequence[Link] = (),
        known: NoFits | None = None,
    ) -> None:
        self.copies, self.spread, self.links = tuple(copies), spread, tuple(links)
        self.area = sum(c.area for c in self.copies)
        self._known = known or NoFits()
        self._outline = [
            [self._known.outline(v.points, v.mirrored, v.turn) for v in c.variants]
            for c in self.copies
        ]
        self._spans = [
            [_span([x for x, _ in v.points], c.margin) for v in c.variants]
            for c in self.copies
        ]
        self._margin = max(c.margin for c in self.copies)
        self._flaws = [
            self._known.outline(
                (
                    (f.left, f.top),
                    (f.right, f.top),
                    (f.right, f.bottom),
                    (f.left, f.bottom),
                )
            )
            for f in spread.flaws
        ]
        self._last_flaw = max((f.right for f in spread.flaws), default=0.0)

    def lay(
        self,
        order: Sequence[int],
        choice: Sequence[int],
        *,
        limit: float = float("inf"),
        before: Layout | None = None,
    ) -> Layout | None:
        """Lay the copies in this order, each in its chosen variant.

        Gives up with None as soon as the lay gets longer than `limit`. What stands in
        `before` is kept as far as order and choice agree with it.
        """
        at: dict[int, tuple[float, float]] = {}
        done = 0
        if before is not None and not self.links:
            for i, j in zip(order, before.order, strict=True):
                if i != j or choice[i] != before.choice[i]:
                    break
                at[i] = before.at[i]
                done += 1
        right = max((self._right(i, choice[i], at[i][0]) for i in at), default=0.0)
        if right > limit:
            return None
        bound = phases(self.links, self.copies, choice) if self.links else ({}, {})
        begun: dict[tuple[int, int], float] = {}
        for i in order[done:]:
            spot = self._spot(i, choice, at, right, limit, bound, begun)
            if spot is None:
                return None
            at[i] = spot
            right = max(right, self._right(i, choice[i], spot[0]))
        return self._layout(order, choice, at, right)

    def squeezed(self, layout: Layout) -> Layout:
        """A lay with each piece taken up and put down as near to the beginning as it
        goes among the others, as often as that moves any; never longer."""
        at = dict(enumerate(layout.at))
        order, choice = layout.order, layout.choice
        for _ in range(SQUEEZES):
            still = True
            for i in sorted(at, key=lambda k: (at[k][0], k)):
                old = at.pop(i)
                across = self.copies[i].variants[choice[i]].across
                left = self._spans[i][choice[i]][0]
                low, high = -left, max(old[0], -left) + GRID
                domain = _domain((low, high), across, (None, None), (None, None))
                spot = _first(self._free(domain, i, choice[i], at, choice))
                moved = spot is not None and spot[0] < old[0] - 10 * GRID
                at[i] = spot if moved and spot is not None else old
                still = still and not moved
            if still:
                break
        length = max(self._right(i, choice[i], at[i][0]) for i in at)
        order = tuple(sorted(at, key=lambda k: (at[k][0], k)))
        return self._layout(order, choice, at, length)

    def _layout(
        self,
        order: Sequence[int],
        choice: Sequence[int],
        at: dict[int, tuple[float, float]],
        length: float,
    ) -> Layout:
        mean = 0.0
        for i, c in enumerate(self.copies):
            left, right = self._spans[i][choice[i]]
            mean += c.area * (at[i][0] + (left + right) / 2)
        cost = length + MEAN_WEIGHT * mean / self.area
        places = tuple(at[i] for i in range(len(self.copies)))
        return Layout(tuple(order), tuple(choice), places, length, cost)

    def _right(self, i: int, variant: int, x: float) -> float:
        return x + self._spans[i][variant][1]

    def _spot(
        self,
        i: int,
        choice: Sequence[int],
        at: dict[int, tuple[float, float]],
        right: float,
        limit: float,
        bound: Phases,
        begun: dict[tuple[int, int], float],
    ) -> tuple[float, float] | None:
        v = choice[i]
        left, end = self._spans[i][v]
        step = self.spread.repeat
        reach = max(right, self._last_flaw) + 2 * self._margin + (step[0] or 0.0)
        low, high = -left, min(reach - left + GRID, limit - end)
        if high < low:
            return None
        groups = [bound[axis].get(i) for axis in (0, 1)]
        phase = [
            begun[axis, g[0]] + g[1]
            if g is not None and (axis, g[0]) in begun
            else None
            for axis, g in enumerate(groups)
        ]
        domain = _domain(
            (low, high), self.copies[i].variants[v].across, phase, self.spread.repeat
        )
        spot = _first(self._free(domain, i, v, at, choice))
        if spot is not None:
            for axis, g in enumerate(groups):
                if g is not None and phase[axis] is None:
                    begun[axis, g[0]] = spot[axis] - g[1]
        return spot

    def _free(
        self,
        domain: Geometry,
        i: int,
        v: int,
        at: dict[int, tuple[float, float]],
        choice: Sequence[int],
    ) -> Geometry:
        """What of a domain is not covered."""
        mine = self._outline[i][v]
        geoms = [self._known.between(self._outline[j][choice[j]], mine) for j in at]
        shifts = list(at.values())
        for flaw in self._flaws:
            geoms.append(self._known.between(flaw, mine))
            shifts.append((0.0, 0.0))
        if not geoms:
            return domain
        cover = _shifted(geoms, np.array(shifts))
        near = cover[shapely.intersects(shapely.box(*shapely.bounds(domain)), cover)]
        if len(near) == 0:
            return domain
        return shapely.difference(domain, shapely.union_all(near))

    def no_fit(
        self, standing: tuple[int, int], moving: tuple[int, int]
    ) -> BaseGeometry:
        """Shifts at which two overlap, each a copy and its variant."""
        (i, v), (j, w) = standing, moving
        return self._known.between(self._outline[i][v], self._outline[j][w])

    def placed(self, layout: Layout) -> tuple[Placed, ...]:
        """A layout as it is drawn and checked."""
        out = []
        for i, c in enumerate(self.copies):
            v = c.variants[layout.choice[i]]
            x, y = layout.at[i]
            out.append(Placed(c.shape.code, v.mirrored, v.turn, x, y))
        return tuple(out)


def _span(xs: list[float], margin: float) -> tuple[float, float]:
    return min(xs) + margin, max(xs) - margin


def _shifted(
    geoms: Sequence[Geometry], shifts: NDArray[np.float64]
) -> NDArray[np.object_]:
    """Each geometry moved by its own shift."""
    many = np.array(geoms, dtype=object)
    coords, which = shapely.get_coordinates(many, return_index=True)
    return shapely.set_coordinates(many, coords + shifts[which])


def _domain(
    along: tuple[float, float],
    across: tuple[tuple[float, float], ...],
    phase: Sequence[float | None],
    repeat: tuple[float | None, float | None],
) -> Geometry:
    """Where an origin may stand: boxes, lines or points."""
    xs: list[tuple[float, float]] = [along]
    if phase[0] is not None and repeat[0] is not None:
        xs = _lattice(along, phase[0], repeat[0])
    ys = [(a, b) if a == b else (a - SLACK, b + SLACK) for a, b in across]
    if phase[1] is not None and repeat[1] is not None:
        ys = [s for r in ys for s in _lattice(r, phase[1], repeat[1])]
    parts: list[Geometry] = []
    for a, b in xs:
        for c, d in ys:
            if a == b and c == d:
                parts.append(shapely.Point(a, c))
            elif a == b or c == d:
                parts.append(shapely.LineString([(a, c), (b, d)]))
            else:
                parts.append(shapely.box(a, c, b, d))
    if len(parts) == 1:
        return parts[0]
    return shapely.union_all(parts)


def _lattice(
    span: tuple[float, float], phase: float, repeat: float
) -> list[tuple[float, float]]:
    first = int(np.ceil((span[0] - phase) / repeat - 1e-9))
    last = int(np.floor((span[1] - phase) / repeat + 1e-9))
    return [(phase + k * repeat,) * 2 for k in range(first, last + 1)]


def _first(free: Geometry) -> tuple[float, float] | None:
    """The corner nearest to the beginning, then to the near edge."""
    coords = shapely.get_coordinates(free)
    if len(coords) == 0:
        return None
    xs = np.round(coords[:, 0] / GRID)
    candidates = coords[xs == xs.min()]
    x, y = candidates[np.argmin(candidates[:, 1])]
    return float(x), float(y)
