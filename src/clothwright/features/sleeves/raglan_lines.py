"""The lines of a raglan: bowed from the neck into the armhole, and as long again where
they lie on the sleeve (transformations 4)."""

import math
from collections.abc import Iterator

from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    cross,
    direction,
    distance,
    turned,
)
from clothwright.paper import PaperError

_HANDLE = 0.35
"""Handle of a curve between two places of the seams, share of its chord."""

_MOST_TURNED = 50.0
"""The raglan line leaves the neck at most so far off the straight, degrees."""

_LOWEST = 3.5
"""The line runs into the armhole at least so far from the underarm, cm."""

_ROUND = 4.0
"""Least radius of the line where it runs into the cap, cm, where it can have it (common
practice, no source)."""

_RUNS_IN = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7)
"""The line is tried to run into the cap so far down from where it meets it, shares of
the way to the underarm."""


def runs_in(arm: Path, neck: Point, bow: float, notch: float, outward: float) -> float:
    """How far from the underarm a bowed line from the neck runs on in the armhole, cm;
    the notch where it would do so higher."""

    def beside(s: float) -> float:
        at = arm.at_length(s)
        chord = direction(at, neck)
        wanted = math.atan(4 * bow / distance(at, neck))
        found = math.asin(outward * cross(chord, arm.direction_at_length(s)))
        return found - wanted

    if beside(notch) <= 0:
        return notch
    return by_trial(beside, _LOWEST, notch) or _LOWEST


def bowed(a: Point, way: Vector, b: Point, bow: float, outward: float) -> Path:
    """The raglan line from the armhole, which it leaves along, to the neck, `bow`
    outside the straight at the most."""
    chord = distance(a, b)
    straight = direction(a, b)

    def at(angle: float, first: float) -> Cubic:
        arrive = turned(straight, angle)
        return Cubic(a, a + way * (first * chord), b - arrive * (_HANDLE * chord), b)

    for first in (_HANDLE, 0.27, 0.2, 0.13):

        def over(angle: float, first: float = first) -> float:
            points = at(angle, first).evenly(24)
            return (
                max(outward * cross(straight, (x - a.x, y - a.y)) for x, y in points)
                - bow
            )

        angle = by_trial(over, -_MOST_TURNED, _MOST_TURNED)
        if angle is not None:
            return Path((at(angle, first),))
    raise PaperError(
        "no raglan line has this bow: leave the bow to its usual amount, or begin the "
        "line at another place of the neck"
    )


def curve(a: Point, leave: Vector, b: Point, arrive: Vector) -> Path:
    """A curve that leaves `a` and reaches `b` along two ways."""
    reach = _HANDLE * distance(a, b)
    return Path.cubic(a, a + leave * reach, b - arrive * reach, b)


def run_on(line: Path, cap: Path) -> Path:
    """The raglan line from the neck as it lies there, run on in the cap from the place
    where it meets it down to the underarm; as long as both.

    Line and cap meet at an angle. The corner is rounded down to the highest place at
    which the line can run into the cap without a tight bend.
    """
    found = [
        (at, curve)
        for at in (share * cap.length for share in _RUNS_IN)
        for curve in _as_long(
            line, cap.at_length(at), cap.direction_at_length(at), line.length + at
        )
    ]
    if not found:
        raise PaperError(
            "the raglan line does not run into the cap of the sleeve: set its bow "
            "(rg bow) nearer to the usual"
        )
    at, curve = min(found, key=lambda each: max(_bends(each[1]), 1 / _ROUND))
    return Path((curve,)) + cap.between(at, cap.length).pinned(curve.end, cap.end)


def _as_long(line: Path, to: Point, arrive: Vector, length: float) -> Iterator[Cubic]:
    """Curves that leave the neck as the line does and reach `to`, `length` cm long."""
    a, leave = line.start, line.start_direction
    chord = distance(a, to)

    def of(first: float, last: float) -> Cubic:
        return Cubic(a, a + leave * (first * chord), to - arrive * (last * chord), to)

    for first in (_HANDLE, 0.25, 0.45, 0.15, 0.55):

        def over(last: float, first: float = first) -> float:
            return of(first, last).length - length

        last = by_trial(over, 0.03, 0.75)
        if last is not None:
            yield of(first, last)


def _bends(curve: Cubic) -> float:
    """The sharpest bend of a curve, 1/cm."""
    return max(abs(curve.curvature(i / 24)) for i in range(25))
