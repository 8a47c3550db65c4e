"""Pieces as they are laid: outlines with the grain along the cloth, and how often.

A `Shape` lies with its grain along +x, its arrow's head (with a nap) towards +x; a
half piece lies with its fold edge on y = 0 and itself above it (y > 0). Mirroring
(y to -y) keeps the grain, turning by 180° heads it the other way. Coordinates cm,
y down on the plan.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from clothwright.lay.outward import outward
from clothwright.lay.spread import Spread

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

ROUGH = 0.15
"""Curves are laid with so few corners that none lies further outside, cm."""

Outline = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Shape:
    """One kind of piece, to be laid one or more times."""

    code: str
    outline: Outline
    """Closed by itself; no point twice in a row."""

    name: str = ""
    on_fold: bool = False
    """A half piece: its edge on y = 0 has to lie on a fold of the cloth."""

    count: int = 1
    """How many are cut; a half piece on the fold counts as one."""

    paired: bool = False
    """Cut in mirrored pairs."""

    even: bool = False
    """Its own mirror image about the grain (a half piece opened out)."""

    flipped: bool = False
    """The half is the mirror image of what was drawn."""

    turns: tuple[float, ...] = (0.0, 180.0)
    """Degrees by which it may be turned where the cloth has no nap; on the true bias
    also 90 and 270."""

    marks: tuple[tuple[str, float, float], ...] = ()
    """Net points at which stripes meet: code of the seam, x, y."""

    flat: float = 0.0
    """How far its curves may lie outside the outline, cm."""

    @property
    def label(self) -> str:
        """Its name, or its code."""
        return self.name or self.code


@dataclass(frozen=True)
class Placed:
    """One laying of a shape: mirrored (y to -y) or not, then turned about the origin,
    counter-clockwise in x right, y up; then shifted by `x`, `y` cm."""

    code: str
    mirrored: bool
    turn: float
    x: float
    y: float


@dataclass(frozen=True)
class Variant:
    """One way in which a copy may lie: its points, turned but not shifted, and where
    its origin may stand across the cloth."""

    mirrored: bool
    turn: float
    points: tuple[tuple[float, float], ...]
    across: tuple[tuple[float, float], ...]
    """Ranges of y for the origin; a single value on a fold."""


@dataclass(frozen=True)
class Copy:
    """One thing to lay, in one of several ways."""

    shape: Shape
    variants: tuple[Variant, ...]
    hand: str = ""
    """"left" or "right" of a pair that is laid twice."""

    margin: float = 0.0
    """The points lie so far outside the outline, all round but on the fold, and may
    reach over a border by that, cm."""

    area: float = 0.0
    """Of the outline itself, cm²."""


def moved(points: Iterable[tuple[float, float]], p: Placed) -> Outline:
    """Points of a shape where it has been laid."""
    return tuple((x + p.x, y + p.y) for x, y in turned(points, p.mirrored, p.turn))


def turned(
    points: Iterable[tuple[float, float]], mirrored: bool, degrees: float
) -> Outline:
    """Points mirrored (y to -y) and then turned about the origin."""
    quarters = degrees / 90
    if quarters == round(quarters):  # exact, so that straight edges stay straight
        c, s = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[round(quarters) % 4]
    else:
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    k = -1 if mirrored else 1
    return tuple((c * x - s * k * y, s * x + c * k * y) for x, y in points)


def laid_outline(shape: Shape, placed: Placed) -> Outline:
    """The outline of a shape where it lies."""
    return moved(shape.outline, placed)


def roomiest(outline: Outline) -> tuple[float, float, float]:
    """Where an outline has most room round a point: x, y and how much, cm."""
    from shapely import Polygon, maximum_inscribed_circle

    line = maximum_inscribed_circle(Polygon(outline), tolerance=0.2)
    (x, y), (u, v) = line.coords
    return float(x), float(y), math.hypot(u - x, v - y)


def ring_of(polygon: "Polygon") -> Outline:
    """The outline of a polygon."""
    return tuple((float(x), float(y)) for x, y in polygon.exterior.coords[:-1])


def area_of(outline: Outline) -> float:
    """Area of a simple outline, cm²."""
    ring = zip(outline, (*outline[1:], outline[0]), strict=True)
    return abs(math.fsum(a[0] * b[1] - a[1] * b[0] for a, b in ring)) / 2


def opened(shape: Shape) -> Shape:
    """A half piece as a whole one."""
    from shapely import Polygon, union_all

    if not shape.on_fold:
        return shape
    half = Polygon(shape.outline)
    # a hair over the fold, so that both halves grow together
    other = Polygon([(x, -y) for x, y in shape.outline])
    seam = Polygon(_band(shape.outline))
    whole = union_all([half, other, seam], grid_size=1e-6)
    if not isinstance(whole, Polygon):
        raise ValueError(f"{shape.label} does not lie on its fold")
    marks = tuple(
        m for c, x, y in shape.marks for m in dict.fromkeys(((c, x, y), (c, x, -y)))
    )
    return replace(
        shape,
        outline=ring_of(whole),
        on_fold=False,
        even=True,
        marks=marks,
    )


def _band(outline: Outline) -> Outline:
    """A hair-thin box along the fold edge of a half piece."""
    xs = [x for x, y in outline if abs(y) < 1e-3]
    a, b, e = min(xs), max(xs), 1e-3
    return ((a, -e), (b, -e), (b, e), (a, e))


def copies(
    shapes: Sequence[Shape], spread: Spread, *, gap: float = 0.0
) -> tuple[Copy, ...]:
    """All that has to be laid on a spread cloth, with every way that is allowed.

    Outlines are grown by half the `gap` and what their curves need, all round but on
    the fold.
    """
    out: list[Copy] = []
    for shape in shapes:
        if shape.on_fold and not spread.folds:
            shape = opened(shape)
        grown = _grown(shape, gap)
        margin = gap / 2
        area = area_of(shape.outline)
        for hand, hands in _hands(shape, spread):
            ways = tuple(_variants(shape, grown, spread, hands, margin))
            out.append(Copy(shape, ways, hand, margin, area))
    return tuple(out)


def _hands(shape: Shape, spread: Spread) -> Iterator[tuple[str, tuple[bool, ...]]]:
    """Each laying of a shape: its name and whether it may be mirrored."""
    either = (False,) if shape.even else (False, True)
    if shape.on_fold:
        for _ in range(shape.count):
            yield "", (False, True)
    elif spread.layers == 2:
        for _ in range(math.ceil(shape.count / 2)):
            yield "", either
    elif shape.paired:
        for _ in range(shape.count // 2):
            yield "right", (False,)
            yield "left", (True,)
    else:
        for _ in range(shape.count):
            yield "", (False,)


def _variants(
    shape: Shape,
    grown: Outline,
    spread: Spread,
    hands: tuple[bool, ...],
    margin: float,
) -> Iterator[Variant]:
    turns = [t for t in shape.turns if not spread.one_way or t == 0]
    if spread.tilt and not shape.on_fold:
        turns = [t + k * spread.tilt for t in turns for k in (0.0, -1.0, 1.0)]
    for turn in turns:
        for hand in hands:
            points = turned(grown, hand, turn)
            low, high = min(y for _, y in points), max(y for _, y in points)
            if shape.on_fold:
                up = hand == (turn == 180.0)  # on the near fold; else on the far one
                at = 0.0 if up else spread.width
                if not (spread.near_fold if up else spread.far_fold):
                    continue
                band = spread.bands[0 if up else -1]
                if band[0] - margin <= low + at + 1e-6 + margin and (
                    high + at <= band[1] + margin + 1e-6
                ):
                    yield Variant(hand, turn, points, ((at, at),))
                continue
            ranges = tuple(
                (a - margin - low, b + margin - high)
                for a, b in spread.bands
                if b + margin - high >= a - margin - low - 1e-6
            )
            if ranges:
                yield Variant(hand, turn, points, ranges)


@lru_cache(maxsize=256)
def _grown(shape: Shape, gap: float) -> Outline:
    """The outline with half the gap round it, and room for its curves."""
    from shapely import Polygon, box, get_parts

    by = gap / 2 + shape.flat
    if by == 0.0:
        return shape.outline
    true = Polygon(shape.outline)
    wide: BaseGeometry = true.buffer(by, join_style="mitre", mitre_limit=2.0)
    if shape.on_fold:
        x0, _, x1, y1 = wide.bounds
        wide = wide.intersection(box(x0, 0.0, x1, y1))
    parts = [p for p in get_parts(wide) if isinstance(p, Polygon)]
    rough = ring_of(max(parts, key=lambda p: p.area))
    if shape.flat == 0.0:
        return rough
    plain = outward(rough, ROUGH, on_fold=shape.on_fold)
    return plain if Polygon(plain).is_valid else rough
