"""The nearest place on a curve, against two thousand even places of it.

The curves are those on which searches go wrong: handles laid on their ends, lines drawn
as curves, near parabolas, cusps, loops with two places about as near.
"""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from clothwright.curves import Cubic, Path, Place, Point, distance, mix
from shapes import MM, paths, points, shares

TINY = st.sampled_from([0.0, 1e-9, 1e-6, 1e-4, 1e-2])


def _from(p: Point, far: float, angle: float) -> Point:
    return p + Point(math.cos(angle), math.sin(angle)) * far


_angles = st.floats(0, math.tau)
_on_ends = st.builds(
    lambda a, b, d, far, angle: Cubic(a, _from(a, far, angle), b, d),
    points,
    points,
    points,
    TINY,
    _angles,
)
_straight = st.builds(
    lambda a, d, s, t, far, angle: Cubic(
        a, _from(mix(a, d, s), far, angle), mix(a, d, t), d
    ),
    points,
    points,
    st.floats(-0.3, 1.3),
    st.floats(-0.3, 1.3),
    TINY,
    _angles,
)
_parabolas = st.builds(
    lambda a, q, d, far, angle: Cubic(
        a, _from(mix(a, q, 2 / 3), far, angle), mix(d, q, 2 / 3), d
    ),
    points,
    points,
    points,
    TINY,
    _angles,
)
_any = st.builds(Cubic, points, points, points, points)
CURVES = st.one_of(_on_ends, _straight, _parabolas, _any)


def _truth(c: Cubic, p: Point) -> float:
    """Least distance of two thousand even places, bettered about the best of them."""
    n = 2000
    places = [(distance(q, p), i) for i, q in enumerate(c.evenly(n), 1)]
    _, i = min(places, default=(0.0, 0))
    low, high = max(0.0, (i - 1) / n), min(1.0, (i + 1) / n)
    around = (low + (high - low) * k / 200 for k in range(201))
    return min(distance(c.start, p), *(distance(c.at(t), p) for t in around))


@settings(max_examples=60)
@given(CURVES, points)
def test_no_place_is_nearer(c: Cubic, p: Point) -> None:
    t, d = c.nearest(p)
    assert 0.0 <= t <= 1.0
    assert distance(c.at(t), p) == pytest.approx(d, abs=1e-8)
    assert d <= _truth(c, p) + 0.001 * MM


@given(CURVES, shares)
def test_a_place_on_a_curve_is_found(c: Cubic, share: float) -> None:
    assert c.nearest(c.at(share))[1] < 0.0001 * MM


@pytest.mark.parametrize(
    ("curve", "p"),
    [
        (  # two places of its loop are as near within a hundredth of a millimetre
            Cubic(
                Point(9.553812338365692, 3.968605434976457),
                Point(2.1303382511620725, 16.328689471932),
                Point(-2.2909043386623686, 4.5844505515280645),
                Point(8.876819151606256, 15.32068465927965),
            ),
            Point(2.135123158091808, 10.240739245094385),
        ),
        (  # the first handle lies on the start, where the curve stands still
            Cubic(
                Point(5.868878597664676, 5.540343413250778),
                Point(5.868878597664676, 5.540343413250778),
                Point(6.39204356725655, 2.5246015228737697),
                Point(-9.707240569283382, -19.828705325091004),
            ),
            Point(5.868881809701798, 5.540324552451435),
        ),
        (  # or almost on it
            Cubic(
                Point(-3.223534483834854, -1.1840001952623602),
                Point(-3.2235344865706397, -1.184000192027789),
                Point(-18.503514042044614, -17.2901041791483),
                Point(-15.522040019984665, -0.22936255102176872),
            ),
            Point(-3.2250924123997238, -1.1827918956467092),
        ),
        (  # all but a cusp
            Cubic(
                Point(4.462081790158123, 1.1010087318536002),
                Point(-4.3678418777185755, 18.109701394296167),
                Point(-6.008255388459922, 10.146913485744907),
                Point(5.931014541384883, 9.071848611838043),
            ),
            Point(-2.474021758218367, 11.765867773965896),
        ),
    ],
)
def test_places_that_a_quicker_search_missed(curve: Cubic, p: Point) -> None:
    assert curve.nearest(p)[1] <= _truth(curve, p) + 0.0002 * MM


@given(paths(), st.one_of(points, st.none()))
def test_of_a_path_the_nearest_is_that_of_its_segments(
    path: Path, p: Point | None
) -> None:
    """Of two segments as near, the first; a joint is its former segment's end."""
    p = path.segments[-1].start if p is None else p
    best = Place(0, 0.0), math.inf
    for i, s in enumerate(path.segments):
        t, d = s.nearest(p)
        if d < best[1] - 1e-12:
            best = Place(i, t), d
    assert path.nearest(p) == best
