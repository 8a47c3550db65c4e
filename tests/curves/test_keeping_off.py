"""A path keeps off another: few places are asked, and the answer is that of all."""

from hypothesis import example, given
from hypothesis import strategies as st
from shapely.geometry import LineString
from shapely.geometry import Point as ShapelyPoint

from clothwright.curves import Path, Point, polyline
from shapes import paths, points

corners = st.lists(points, min_size=2, max_size=8, unique=True)


@given(corners, corners, st.floats(0.1, 20))
@example([Point(0, 0), Point(9, 0)], [Point(0, 5), Point(4, 1), Point(9, 5)], 2.0)
@example([Point(0, 0), Point(9, 0)], [Point(0, 5), Point(4, 1), Point(9, 5)], 0.5)
def test_as_shapely_finds_it_for_every_place(
    here: list[Point], there: list[Point], by: float
) -> None:
    path, other = polyline(here), polyline(there)
    places = [other.length * i / 40 for i in range(41)]
    line, way = LineString(here), LineString(there)
    gap = min(line.distance(ShapelyPoint(way.interpolate(s))) for s in places)
    if abs(gap - by) > 1e-5:
        assert path.keeps_off(other, by, places) == (gap > by)


@given(paths(), paths(), st.floats(0.1, 20))
def test_curves_as_when_every_place_is_asked(
    path: Path, other: Path, by: float
) -> None:
    places = [other.length * i / 20 for i in range(21)]
    gap = min(path.nearest(other.at_length(s))[1] for s in places)
    if abs(gap - by) > 1e-5:
        assert path.keeps_off(other, by, places) == (gap > by)
