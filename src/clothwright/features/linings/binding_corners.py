"""The corners of an edge that is bound, and what the strip takes for them
(transformations 3; mitres are common practice, no source).

Terminology
    hollow    a corner that points into the garment: of a square neck, or of a V. The
              line of stitches, a width inside, is longer there than the edge, so that
              the strip is; what is too much at its fold is sewn off.
    point     a corner of the garment that stands out: of a sweetheart, or beside a
              keyhole. There the line of stitches is shorter, and the strip is folded.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from clothwright.curves import Point, Vector, cross, degrees_between, distance, polyline
from clothwright.features.chains import Chains
from clothwright.paper import InnerLine, Run

MITRE = "mitre"

_CORNER = 15.0
"""A strip is led round a smaller turn of an edge as round a curve, degrees (common
practice)."""

_MEET = 1e-3
"""Edges of a piece whose ends lie nearer follow each other, cm."""


class Corner(NamedTuple):
    """A corner of an edge that is walked from one end."""

    at: float
    """Length along the edge up to it, cm."""

    turn: float
    """How far the edge turns there, degrees: above 0 it is hollow, below 0 a point."""

    def half(self, width: float) -> float:
        """What the line of stitches, `width` cm inside, is longer or shorter on either
        side of it, cm."""
        return width * math.tan(math.radians(abs(self.turn) / 2))


def corners(t: Chains, chain: Sequence[Run]) -> tuple[Corner, ...]:
    """The corners within a chain."""
    return tuple(_corners(t, chain))


def _corners(t: Chains, chain: Sequence[Run]) -> Iterator[Corner]:
    done, before = 0.0, None
    for run in chain:
        path = t.sheet.run_path(run)
        segments = path.segments
        if before is not None and _goes_on(before, run, t):
            segments = (t.sheet.run_path(before).segments[-1], *segments)
        else:
            segments = (segments[0], *segments)  # nothing is turned at its beginning
        at = done
        for a, b in pairwise(segments):
            turn = degrees_between(a.end_direction, b.start_direction)
            if a is not b and turn > _CORNER:
                out = cross(a.end_direction, b.start_direction) > 0
                yield Corner(at, turn if out is run.backward else -turn)
            at += b.length
        done, before = done + path.length, run


def _goes_on(before: Run, run: Run, t: Chains) -> bool:
    """True when two edges follow each other on their piece."""
    end, start = t.sheet.run_path(before).end, t.sheet.run_path(run).start
    return before.piece == run.piece and distance(end, start) < _MEET


def across(at: Point, name: str, w: float) -> InnerLine:
    """The mark across a strip, four times `w` wide, where two stretches of it meet."""
    return InnerLine(name, polyline((at, at + Vector(0.0, 4 * w))))


def mitred(at: Point, half: float, w: float, *, hollow: bool) -> InnerLine:
    """The mitre of a corner at `at` on the strip's upper edge, or at its middle: in a
    hollow it takes most at the fold of the strip, over a point nothing there."""
    down, aside = Vector(0.0, w), Vector(half, 0.0)
    head, middle = at + down, at + down * 2
    foot = middle + down
    if hollow:
        loop = [head, middle + aside, foot, middle - aside, head]
    else:
        loop = [middle, head - aside, head + aside, middle]
        loop += [foot - aside, foot + aside, middle]
    return InnerLine(MITRE, polyline(loop))
