"""The checker: may a lay be cut? It shares no code with what makes lays.

It knows the shapes, the spread cloth and where each piece lies, and looks at true
outlines only. Every fault is a finding with the piece, the place and the amount.
"""

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely
from shapely import Polygon
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from clothwright.findings import Finding, Severity
from clothwright.lay.pieces import Placed, Shape
from clothwright.lay.spread import Spread

ON_BORDER = 0.005
"""A piece may reach over a border by this, cm."""

ON_FOLD = 0.01
"""A fold edge lies on the fold within this, cm."""

OVERLAP = 0.001
"""Two pieces may share this much cloth, cm²: rounding."""

PHASE = 0.05
"""Matched net points share their stripe within this, cm."""

TURN = 1e-6
"""Two turns within this are one, degrees."""

Meeting = tuple[int, int, tuple[float, float], int, tuple[float, float]]
"""Two net points that share a stripe: 0 along the cloth or 1 across; index of a laid
piece and a point of its shape; and the same of its partner."""


def check_lay(
    shapes: Sequence[Shape],
    spread: Spread,
    placed: Sequence[Placed],
    length: float,
    *,
    gap: float = 0.0,
    meet: Sequence[Meeting] = (),
) -> tuple[Finding, ...]:
    """Everything for which a lay must not be cut; empty when it may.

    `meet` names net points that share a stripe. `gap` is the least room between two
    pieces. `data` of a finding names the laid pieces that it is about, by their place
    in `placed`: `piece` and `other`.
    """
    by_code = {s.code: s for s in shapes}
    unknown = sorted({p.code for p in placed} - set(by_code))
    if unknown:
        return (_fault("unknown", f"{', '.join(unknown)} is no piece of this order"),)
    whole = [p.code for p in placed if by_code[p.code].on_fold and not spread.folds]
    outlines = [_outline(by_code[p.code], p, opened=p.code in whole) for p in placed]
    found = list(_counts(shapes, spread, placed))
    for i, (p, outline) in enumerate(zip(placed, outlines, strict=True)):
        for fault in _lies_well(by_code[p.code], spread, p, outline, length):
            found.append(replace(fault, data={"piece": i, **fault.data}))
    found += _overlaps(shapes, placed, outlines, gap)
    found += _phases(spread, placed, meet)
    return tuple(found)


def _fault(code: str, why: str, place: str = "", **data: float) -> Finding:
    return Finding(code, Severity.REFUSE, f"{why}.", place, "Lay it again.", data)


def _outline(shape: Shape, p: Placed, *, opened: bool) -> BaseGeometry:
    """Where a shape lies: mirrored in y, turned, shifted."""
    ring: BaseGeometry = Polygon(shape.outline)
    if not ring.is_valid:
        ring = ring.buffer(0)
    if opened:
        sliver = shapely.box(*_fold_edge(shape))
        ring = shapely.union_all([ring, affine_transform(ring, _MIRROR), sliver])
    return affine_transform(ring, _matrix(p))


_MIRROR = [1, 0, 0, -1, 0, 0]


def _matrix(p: Placed) -> list[float]:
    """The six numbers of a laying: x' = a·x + b·y + e, y' = c·x + d·y + f."""
    a = math.radians(p.turn)
    c, s, k = math.cos(a), math.sin(a), -1.0 if p.mirrored else 1.0
    return [c, -s * k, s, c * k, p.x, p.y]


def _fold_edge(shape: Shape) -> tuple[float, float, float, float]:
    xs = [x for x, y in shape.outline if abs(y) < ON_FOLD]
    return min(xs), -1e-4, max(xs), 1e-4


def _counts(
    shapes: Sequence[Shape], spread: Spread, placed: Sequence[Placed]
) -> Iterator[Finding]:
    """Each piece the right number of times, pairs from both hands."""
    laid = Counter(p.code for p in placed)
    mirrored = Counter(p.code for p in placed if p.mirrored)
    for s in shapes:
        folded = spread.folds and s.on_fold
        double = spread.fold.value != "single" and not folded
        wanted = -(-s.count // 2) if double else s.count
        if laid[s.code] != wanted:
            yield _fault(
                "count", f"{s.label} is laid {laid[s.code]} times, not {wanted}", s.code
            )
        elif s.paired and not double and 2 * mirrored[s.code] != wanted:
            yield _fault(
                "pair", f"{s.label} is not laid in pairs, left and right", s.code
            )


def _lies_well(
    shape: Shape, spread: Spread, p: Placed, outline: BaseGeometry, length: float
) -> Iterator[Finding]:
    allowed = (0.0,) if spread.one_way else shape.turns
    off = min(abs((p.turn - t + 180) % 360 - 180) for t in allowed)
    fold_piece = shape.on_fold and spread.folds
    if off > (0.0 if fold_piece else spread.tilt) + TURN:
        why = (
            "against the nap" if spread.one_way else f"{off:.1f} degrees off its grain"
        )
        yield _fault("grain", f"{shape.label} lies {why}", shape.code, off=off)
    single = spread.fold.value == "single"
    if single and p.mirrored and not (shape.paired or shape.even or shape.on_fold):
        yield _fault("hand", f"{shape.label} lies wrong side up", shape.code)
    left, top, right, bottom = outline.bounds
    if left < -ON_BORDER or right > length + ON_BORDER:
        over = max(-left, right - length)
        yield _fault(
            "ends", f"{shape.label} reaches over an end", shape.code, over=over
        )
    if not any(
        top >= a - ON_BORDER and bottom <= b + ON_BORDER for a, b in spread.bands
    ):
        yield _fault(
            "border",
            f"{shape.label} reaches over a border",
            shape.code,
            outside=max(-top, bottom - spread.width),
        )
    if fold_piece and not _on_a_fold(shape, spread, p):
        yield _fault("fold", f"{shape.label} does not lie on the fold", shape.code)
    for flaw in spread.flaws:
        hole = shapely.box(flaw.left, flaw.top, flaw.right, flaw.bottom)
        if outline.intersection(hole).area > OVERLAP:
            yield _fault("flaw", f"{shape.label} lies on a flaw", shape.code)


def _on_a_fold(shape: Shape, spread: Spread, p: Placed) -> bool:
    """The fold edge on a fold, the piece on the inner side of it."""
    _, _, c, d, _, f = _matrix(p)
    edge = [(x, y) for x, y in shape.outline if abs(y) < ON_FOLD]
    ys = [c * x + d * y + f for x, y in edge]
    inside = [c * x + d * y + f for x, y in shape.outline]
    near = spread.near_fold and max(abs(y) for y in ys) <= ON_FOLD
    far = spread.far_fold and max(abs(y - spread.width) for y in ys) <= ON_FOLD
    if near:
        return min(inside) >= -ON_FOLD
    return far and max(inside) <= spread.width + ON_FOLD


def _overlaps(
    shapes: Sequence[Shape],
    placed: Sequence[Placed],
    outlines: Sequence[BaseGeometry],
    gap: float,
) -> Iterator[Finding]:
    names = {s.code: s.label for s in shapes}
    soft = {s.code: s.flat for s in shapes}
    tree = shapely.STRtree(outlines)
    pairs = tree.query([o.buffer(gap) for o in outlines] if gap else outlines)
    for i, j in sorted((int(i), int(j)) for i, j in pairs.T if i < j):
        shared = outlines[i].intersection(outlines[j]).area
        a, b = placed[i].code, placed[j].code
        who = f"{names[a]} and {names[b]}"
        if shared >= OVERLAP:
            yield _fault(
                "overlap",
                f"{who} overlap by {shared:.3f} cm²",
                a,
                piece=i,
                other=j,
                shared=shared,
            )
            continue
        apart = outlines[i].distance(outlines[j])
        if apart < gap - 2 * max(soft[a], soft[b]) - 0.01:
            yield _fault(
                "gap",
                f"{who} lie {apart:.2f} cm apart, not {gap:.2f}",
                a,
                piece=i,
                other=j,
                apart=apart,
            )


def _phases(
    spread: Spread,
    placed: Sequence[Placed],
    meet: Sequence[Meeting],
) -> Iterator[Finding]:
    """`(x_A - x_B) mod R = 0` at net points that are sewn together."""
    for axis, i, here, j, there in meet:
        repeat = spread.repeat[axis]
        if repeat is None:
            continue
        p, q = _at(placed[i], here), _at(placed[j], there)
        off = (p[axis] - q[axis] + repeat / 2) % repeat - repeat / 2
        if abs(off) > PHASE:
            yield _fault(
                "phase",
                f"The stripes of {placed[i].code} and {placed[j].code} miss each other "
                f"by {abs(off):.2f} cm {('along', 'across')[axis]} the cloth",
                placed[i].code,
                piece=i,
                other=j,
                off=abs(off),
                axis=axis,
            )


def _at(p: Placed, point: tuple[float, float]) -> tuple[float, float]:
    a, b, c, d, e, f = _matrix(p)
    x, y = point
    return a * x + b * y + e, c * x + d * y + f
