"""Loops of a closed outline found and cut out.

An outline set off from another runs over itself wherever the paper has a hollow: past
a corner that points inwards, in a curve tighter than the width, across a slit. Scissors
turn off where the lines cross; what lies beyond the crossing is left out.
"""

from collections.abc import Iterator, Sequence
from itertools import accumulate

from clothwright.curves.cubic import Segment
from clothwright.curves.meet import crossings

_JOINT = 1e-5
"""Two meetings of neighbours nearer than this, cm along the line, are their joint."""

_MOST = 200
"""Loops cut out of one outline, at most: far more than any piece has."""

Part = tuple[int, Segment]
"""A segment, or what is left of one, with the number of the segment that it was."""


def without_loops(ring: Sequence[Segment]) -> list[Part]:
    """A closed run of segments without its loops, the shortest cut out first.

    Each loop that is cut out is the shorter way round from a crossing back to itself.
    What cannot be mended (an outline that crosses itself still) is returned as it is
    left: ask it again.
    """
    parts: list[Part] = list(enumerate(ring))
    for _ in range(_MOST):
        starts = [0.0, *accumulate(s.length for _, s in parts)]
        whole = starts[-1]
        loops: list[tuple[float, list[Part]]] = []
        for i, t, j, u in _meetings([seg for _, seg in parts]):
            p = starts[i] + _length_to(parts[i][1], t)
            q = starts[j] + _length_to(parts[j][1], u)
            loop = min(q - p, whole - (q - p))
            if loop > _JOINT:
                inside = q - p < whole / 2
                loops.append((loop, _cut_out(parts, i, t, j, u, inside=inside)))
        if not loops:
            return parts
        parts = min(loops, key=lambda found: found[0])[1]
    return parts


def _length_to(seg: Segment, t: float) -> float:
    if t <= 0:
        return 0.0
    return seg.length if t >= 1 else seg.part(0.0, t).length


def _meetings(ring: Sequence[Segment]) -> Iterator[tuple[int, float, int, float]]:
    """Every pair of places (segment and parameter, twice) where the ring meets itself,
    joints included."""
    boxes = []
    for s in ring:
        xs, ys = [p[0] for p in s.points], [p[1] for p in s.points]
        boxes.append((min(xs), min(ys), max(xs), max(ys)))
    for i, (left, top, right, bottom) in enumerate(boxes):
        for j in range(i + 1, len(boxes)):
            b = boxes[j]
            if b[0] > right or b[2] < left or b[1] > bottom or b[3] < top:
                continue
            for t, u in crossings(ring[i], ring[j]):
                yield i, t, j, u


def _cut_out(
    parts: list[Part], i: int, t: float, j: int, u: float, *, inside: bool
) -> list[Part]:
    """Leave out what lies between two places, or what lies around it."""
    if inside:
        return [
            *parts[:i],
            *_part(parts[i], 0.0, t),
            *_part(parts[j], u, 1.0),
            *parts[j + 1 :],
        ]
    return [*_part(parts[i], t, 1.0), *parts[i + 1 : j], *_part(parts[j], 0.0, u)]


def _part(part: Part, t0: float, t1: float) -> list[Part]:
    number, seg = part
    if (t1 - t0) * seg.length <= _JOINT:
        return []
    return [part if (t0, t1) == (0.0, 1.0) else (number, seg.part(t0, t1))]
