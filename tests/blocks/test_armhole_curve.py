"""The upper armhole: square to the shoulder, upright at the pitch, no bump between."""

import math
from itertools import product

import pytest
from svgpathtools import CubicBezier

from clothwright.blocks.bodice_curves import front_armhole, inward_front
from clothwright.curves import Cubic, Point, Vector

MM = 0.1
SLOPES = (8.0, 12.0, 16.0, 20.0, 24.0, 28.0, 32.0)
OVERHANGS = (0.3, 0.8, 1.5, 3.0)
"""The guards keep 0.3 behind and 0.8 in front (A2.7, A3.9); 3.0 is the most (C18)."""


def upper(slope: float, overhang: float, depth: float) -> Cubic:
    tip, pitch = Point(30.0, 2.0), Point(30.0 + overhang, 2.0 + depth)
    path = front_armhole(
        tip, inward_front(slope), pitch, Point(24.0, 20.0), Vector(1.0, 0.0)
    )
    curve = path.segments[0]
    assert isinstance(curve, Cubic)
    return curve


CASES = [
    (slope, overhang, depth)
    for slope, overhang, depth in product(SLOPES, OVERHANGS, (8.5, 10.0, 11.5))
    if 1.5 * overhang < depth * math.tan(math.radians(slope))
]
"""Square shoulders with a wide overhang (the rest) lean less than the line from tip to
pitch: there a hollow must turn back, and C16 lets the checklist say so."""


@pytest.mark.parametrize(("slope", "overhang", "depth"), CASES)
def test_no_bump_at_the_pitch(slope: float, overhang: float, depth: float) -> None:
    """B18, C16: up to 3° the wrong way passes; we ask for half of it. No paper past
    the plumb line of the pitch, which would narrow the back by twice as much."""
    curve = upper(slope, overhang, depth)
    judge = CubicBezier(*(complex(*p) for p in curve.points))
    headings = [math.atan2(t.imag, t.real) for t in map(judge.unit_tangent, _steps())]
    turns = [b - a for a, b in zip(headings, headings[1:], strict=False)]
    right, wrong = sum(t for t in turns if t > 0), -sum(t for t in turns if t < 0)
    assert math.degrees(min(right, wrong)) < 1.5
    past = max(judge.point(t).real for t in _steps()) - curve.end.x
    assert past < 0.8 * MM
    assert math.degrees(headings[0]) == pytest.approx(90 - slope, abs=0.01)
    assert math.degrees(headings[-1]) == pytest.approx(90.0, abs=0.01)


def _steps() -> list[float]:
    return [i / 400 for i in range(401)]


def test_the_handles_of_the_notes_are_kept_where_they_draw_well() -> None:
    """A2.7, A3.10: 0.30 and 0.38 of the chord; a change of slope makes no jump."""
    curve = upper(20.0, 2.0, 10.0)
    chord = math.dist(curve.start, curve.end)
    assert math.dist(curve.start, curve.handle1) == pytest.approx(0.30 * chord)
    assert math.dist(curve.handle2, curve.end) == pytest.approx(0.38 * chord)
    drawn = [upper(10.0 + i / 20, 0.8, 10.0) for i in range(400)]
    steps = [b.nearest(a.at(0.5))[1] for a, b in zip(drawn, drawn[1:], strict=False)]
    assert max(steps) < 0.1 * MM
