"""From a finished pattern to the shapes that are laid on one of its cloths."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from clothwright.curves import Motion, Point, direction, distance, shift
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.drawn import CutCount, DrawnPiece, Meaning
from clothwright.lay.match import PAIR
from clothwright.lay.pieces import (
    Outline,
    Shape,
    area_of,
    opened,
    ring_of,
    turned,
)
from clothwright.lay.spread import LayError, Spread
from clothwright.order import Pattern
from clothwright.paper import Seam, SeamKind

FLAT = 0.02
"""Outlines are flattened to chords within this when they are laid, cm."""

TRUE = 0.002
"""The same when a lay is checked."""

ALONG = (0.0, 180.0)
ON_BIAS = (0.0, 90.0, 180.0, 270.0)
"""Ways to turn a piece on a cloth without a nap; at 45° the weft does as the warp."""

ON_GRAIN = 1.0
"""A fold is on the straight grain within this, degrees."""


def shapes_of(
    pattern: Pattern,
    cloth: str,
    *,
    growth: tuple[float, float] = (1.0, 1.0),
    flat: float = FLAT,
) -> tuple[Shape, ...]:
    """All pieces cut from a cloth ("shell", "lining", …), grain along x, grown by what
    the cloth will shrink. Raises LayError when nothing is cut from it."""
    out: list[Shape] = []
    marks = _marks(pattern)
    for piece in pattern.drawn.pieces:
        for cut in piece.cuts:
            if cut.cloth == cloth:
                out.append(_shape(pattern, piece, cut, marks, growth, flat))
    if not out:
        known = {c.cloth: None for p in pattern.drawn.pieces for c in p.cuts}
        raise LayError(
            f"nothing is cut from {cloth}; the cloths of this order are "
            f"{', '.join(known)}"
        )
    return tuple(out)


_BEYOND = 0.01
"""A half piece may reach over its fold by this, cm: rounding."""


def cloths_of(pattern: Pattern) -> tuple[str, ...]:
    """The cloths that pieces are cut from, in the order of the pieces."""
    return tuple(dict.fromkeys(c.cloth for p in pattern.drawn.pieces for c in p.cuts))


def _shape(
    pattern: Pattern,
    piece: DrawnPiece,
    cut: CutCount,
    marks: dict[str, list[tuple[str, Point]]],
    growth: tuple[float, float],
    flat: float,
) -> Shape:
    points = _outline(pattern, piece, cut, flat)
    frame, fold, aslant = _frame(piece)
    if sum(frame(p)[1] for p in points) < 0 and fold:  # the half that lies above
        frame = Motion(d=-1.0) @ frame
    k, m = growth

    def laid(p: tuple[float, float]) -> tuple[float, float]:
        x, y = frame(p)
        return x * k, (0.0 if fold and abs(y) < 0.01 else y) * m

    paired = "pair" in cut.how
    told = tuple((code, *laid(p)) for code, p in marks.get(piece.code, ()))
    if paired:
        told = ((f"{PAIR} {piece.code}", *laid(points[0])), *told)
    outline = [laid(p) for p in points]
    if fold:
        outline = _to_the_fold(outline)
    shape = Shape(
        code=piece.code,
        outline=_tidy(outline),
        name=piece.name,
        on_fold=fold,
        count=cut.count,
        paired=paired,
        flipped=frame.flips,
        turns=ON_BIAS if cut.bias else ALONG,
        marks=told,
        flat=flat,
    )
    if fold and aslant:  # off the straight grain a half cannot lie on a fold
        whole = opened(shape)
        shape = replace(
            whole, outline=turned(whole.outline, False, aslant), even=False, marks=()
        )
    return shape


def _frame(piece: DrawnPiece) -> tuple[Motion, bool, float]:
    """The motion that lays a piece with its grain along x, or its fold on y = 0 with
    its grain forward; whether it lies on a fold; and how far its fold is off the grain,
    degrees (0 when it is on it)."""
    grain = next((k.path for k in piece.lines if k.meaning is Meaning.GRAIN), None)
    way = direction(grain.start, grain.end) if grain else Point(0.0, -1.0)
    fold = next((k.path for k in piece.lines if k.meaning is Meaning.FOLD), None)
    if fold is None or not piece.on_fold:
        return _level(way[0], way[1]), False, 0.0
    along = direction(fold.start, fold.end)
    if along[0] * way[0] + along[1] * way[1] < 0:
        along = along * -1.0
    frame = _level(along[0], along[1])
    off = math.degrees(
        math.atan2(
            along[0] * way[1] - along[1] * way[0], along[0] * way[0] + along[1] * way[1]
        )
    )
    x, y = frame(fold.start)
    return shift((-x, -y)) @ frame, True, -off if abs(off) > ON_GRAIN else 0.0


def _level(x: float, y: float) -> Motion:
    """The turn that lays a direction along x."""
    return Motion(x, -y, y, x)


def _outline(
    pattern: Pattern, piece: DrawnPiece, cut: CutCount, flat: float
) -> list[tuple[float, float]]:
    """What is cut: the cut line; of interlining a little outside the stitch line."""
    line = unknotted([(p[0], p[1]) for p in piece.cut_line.flatten(flat)])
    if cut.cloth != "interlining":
        return line
    from shapely import Polygon

    order = pattern.draft.order
    net = pattern.draft.sheet.piece(piece.code).outline.flatten(flat)
    wide = Polygon(net).buffer(
        Allowances(order.unit, order.said).beyond_stitching,
        join_style="mitre",
        mitre_limit=2.0,
    )
    part = wide.intersection(Polygon(line))
    return list(ring_of(part)) if isinstance(part, Polygon) else line


def unknotted(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """An outline without a knot finer than any blade, where two curves of a cut line
    meet; one that truly crosses itself stays as it is, and is refused."""
    from shapely import Polygon, get_parts

    drawn = Polygon(points)
    if drawn.is_valid:
        return points
    parts = [p for p in get_parts(drawn.buffer(0)) if isinstance(p, Polygon)]
    whole = max(parts, key=lambda p: p.area)
    rest = sum(p.area for p in parts) - whole.area
    off = abs(whole.area - area_of(tuple(points)))
    return list(ring_of(whole)) if max(rest, off) < _KNOT else points


_KNOT = 0.01
"""A knot of less than this is none, cm²."""


def _to_the_fold(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """A half piece without what would lie beyond its fold: an allowance inside a slit
    at the centre, for which there is no cloth."""
    if min(y for _, y in points) >= -_BEYOND:
        return points
    from shapely import Polygon, box, get_parts

    half = Polygon(points)
    x0, _, x1, y1 = half.bounds
    parts = get_parts(half.buffer(0).intersection(box(x0, 0.0, x1, y1)))
    whole = max((p for p in parts if isinstance(p, Polygon)), key=lambda p: p.area)
    return list(ring_of(whole))


def _tidy(points: Sequence[tuple[float, float]]) -> Outline:
    """Without points that stand twice, not closed."""
    out: list[tuple[float, float]] = []
    for p in points:
        if not out or distance(Point(*p), Point(*out[-1])) > 1e-6:
            out.append(p)
    if distance(Point(*out[0]), Point(*out[-1])) < 1e-6:
        out.pop()
    return tuple(out)


def _marks(pattern: Pattern) -> dict[str, list[tuple[str, Point]]]:
    """Where stripes are to meet, by piece: for each seam its lowest notch, or else its
    beginning (cutting and costing §1.4: from the hem up)."""
    out: dict[str, list[tuple[str, Point]]] = {}
    sheet = pattern.draft.sheet
    for seam in sheet.seams:
        if _weight(seam) is None:
            continue
        if seam.notches:
            notch = max(
                seam.notches, key=lambda n: sheet.chain_at(seam.left, n.left)[1][1]
            )
            lengths = notch.left, notch.right
        else:
            lengths = 0.0, 0.0
        sides = zip((seam.left, seam.right), lengths, strict=True)
        for run, point in {sheet.chain_at(chain, s)[:2] for chain, s in sides}:
            out.setdefault(run.piece, []).append((seam.code, point))
    return out


def matched_seams(pattern: Pattern, spread: Spread) -> tuple[str, ...]:
    """Codes of what meets in stripes, the weightiest first."""
    if not spread.striped:
        return ()
    return (
        *(f"{PAIR} {p.code}" for p in pattern.drawn.pieces),
        *(code for _, code in sorted(_weighed(pattern), key=lambda w: w[0])),
    )


def seam_names(pattern: Pattern, spread: Spread) -> dict[str, str]:
    """Names of what meets in stripes by their codes, the weightiest first."""
    names = {s.code: s.name for s in pattern.draft.sheet.seams}
    names |= {
        f"{PAIR} {p.code}": f"left and right {p.name.lower()}"
        for p in pattern.drawn.pieces
    }
    return {code: names[code] for code in matched_seams(pattern, spread)}


def _weighed(pattern: Pattern) -> Iterator[tuple[int, str]]:
    for seam in pattern.draft.sheet.seams:
        weight = _weight(seam)
        if weight is not None:
            yield weight, seam.code


def _weight(seam: Seam) -> int | None:
    """How early a seam is matched; None: not at all."""
    if seam.kind is SeamKind.TWIN:
        return 0
    if seam.kind is not SeamKind.PLAIN or "shoulder" in seam.name.lower():
        return None
    if "waist" in seam.name.lower():
        return 3
    return 1 if seam.notches else 2
