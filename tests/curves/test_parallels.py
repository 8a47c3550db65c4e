"""Set-off curves: every point the allowance away, within FIT; refusals where a hollow
is too tight; flattening within its stated tolerance."""

import math

import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.perimeterPen import PerimeterPen
from fontTools.pens.recordingPen import RecordingPen
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString
from shapely import Point as ShapelyPoint

from clothwright.curves import FIT, Cubic, Line, Path, Point, distance
from clothwright.paper import Piece
from shapes import MM, cubics, gentle, lines, paths, pieces

allowances = st.floats(0.3, 5).flatmap(lambda d: st.sampled_from([d, -d]))


@given(gentle(), allowances)
def test_a_parallel_is_the_allowance_away(c: Cubic, d: float) -> None:
    assume(min(1 + c.curvature(i / 200) * d for i in range(201)) > 0.1)
    path = Path(c.parallel(d))
    line = LineString(Path((c,)).flatten(1e-5))
    for i in range(41):
        p = path.at_length(path.length * i / 40)
        assert line.distance(ShapelyPoint(p)) == pytest.approx(abs(d), abs=FIT)


@given(gentle(), allowances)
def test_a_parallel_leaves_on_the_left_as_seen(c: Cubic, d: float) -> None:
    """Outside of a clockwise outline, for an allowance above zero."""
    assume(min(1 + c.curvature(i / 200) * d for i in range(201)) > 0.1)
    parts = c.parallel(d)
    for at, p, u in (
        (c.start, parts[0].start, c.start_direction),
        (c.end, parts[-1].end, c.end_direction),
    ):
        assert distance(p, at + Point(u[1], -u[0]) * d) < FIT
    for a, b in zip(parts, parts[1:], strict=False):
        assert distance(a.end, b.start) < 1e-6


@given(lines, allowances)
def test_a_line_is_set_off_exactly(k: Line, d: float) -> None:
    (p,) = k.parallel(d)
    assert p.length == pytest.approx(k.length)
    u = k.start_direction
    assert distance(p.start, k.start + Point(u[1], -u[0]) * d) < 1e-9


def test_no_allowance_is_the_curve_itself() -> None:
    c = Cubic(Point(0, 0), Point(3, 2), Point(6, 2), Point(9, 0))
    assert c.parallel(0) == (c,)


def test_a_hollow_too_tight_is_refused() -> None:
    """A half circle of radius 2 can't be set off inwards by 2.5 cm."""
    k = 2 * 0.5522847498
    c = Cubic(Point(2, 0), Point(2, k), Point(k, 2), Point(0, 2))
    with pytest.raises(ValueError, match=r"2\.5 cm is wider than the curve's hollow"):
        c.parallel(-2.5)
    with pytest.raises(ValueError, match="wider"):
        c.reversed().parallel(2.5)
    outside = Path(c.parallel(2.5))
    assert outside.length == pytest.approx(4.5 * math.pi / 2, abs=0.1 * MM)


@given(paths(), st.sampled_from([0.5, 0.05, 0.005, 0.0005]))
def test_flattening_stays_within_its_tolerance(path: Path, tolerance: float) -> None:
    pts = path.flatten(tolerance)
    chords = LineString(pts)
    assert (pts[0], pts[-1]) == (path.start, path.end)
    for i in range(60):
        p = path.at_length(path.length * i / 59)
        assert chords.distance(ShapelyPoint(p)) <= tolerance + 1e-7
    assert all(path.nearest(p)[1] < 1e-6 for p in pts[:: max(1, len(pts) // 20)])


@given(cubics)
def test_flattening_any_curve(c: Cubic) -> None:
    chords = LineString(Path((c,)).flatten(0.01))
    assert all(
        chords.distance(ShapelyPoint(c.at(i / 100))) <= 0.0101 for i in range(101)
    )


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan])
def test_flattening_needs_a_tolerance(bad: float) -> None:
    with pytest.raises(ValueError, match="above zero"):
        Path.line(Point(0, 0), Point(1, 0)).flatten(bad)


@given(paths())
def test_a_path_narrates_itself(path: Path) -> None:
    """fontTools' recorder hears one command a segment, and plays it back."""
    pen = RecordingPen()
    path.draw(pen)
    first, *middle, last = pen.value
    assert first == ("moveTo", (path.start,))
    assert last == ("closePath" if path.closed else "endPath", ())
    for s, (verb, args) in zip(path.segments, middle, strict=True):
        assert verb == ("curveTo" if isinstance(s, Cubic) else "lineTo")
        assert args == s.points[1:]
    again = RecordingPen()
    pen.replay(again)
    assert again.value == pen.value


@given(pieces())
def test_other_listeners_agree_on_a_loop(piece: Piece) -> None:
    outline = piece.outline
    recorder, area, bounds = RecordingPen(), AreaPen(), BoundsPen(None)
    length = PerimeterPen(tolerance=1e-6)
    for pen in (recorder, area, bounds, length):
        outline.draw(pen)
    assert recorder.value[-1] == ("closePath", ())
    assert area.value == pytest.approx(outline.area, rel=1e-9)
    assert length.value == pytest.approx(outline.length, abs=1e-4)
    assert outline.bounds() == pytest.approx(bounds.bounds, abs=0.1 * MM)
