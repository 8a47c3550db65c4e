"""Pivot: what hangs on one point turns about it; nothing is stretched. Exact maths."""

import math

import pytest

from clothwright.curves import Point, distance
from clothwright.paper import PaperError, Piece, Sheet, pivot, straight


def darted() -> Piece:
    """A square of 20 cm with a dart of 3 cm in its upper edge and a slit in its side,
    both to its middle."""
    p = Point(10, 10)
    corners = [
        ("top", Point(0, 0), Point(8.5, 0)),
        ("leg a", Point(8.5, 0), p),
        ("leg b", p, Point(11.5, 0)),
        ("top right", Point(11.5, 0), Point(20, 0)),
        ("right", Point(20, 0), Point(20, 10)),
        ("slit a", Point(20, 10), p),
        ("slit b", p, Point(20, 10)),
        ("rest", Point(20, 10), Point(20, 20)),
        ("foot", Point(20, 20), Point(0, 20)),
        ("left", Point(0, 20), Point(0, 0)),
    ]
    return Piece("P", "Piece", tuple(straight(n, a, b) for n, a, b in corners))


@pytest.mark.parametrize("share", [0.3, 1.0])
def test_one_dart_closes_by_as_much_as_the_other_opens(share: float) -> None:
    """The angle is kept; the intake elsewhere is 2·|PQ|·sin(θ/2) (exact)."""
    sheet = Sheet().put(darted())
    theta = 2 * math.degrees(math.atan(1.5 / 10))
    turned = pivot(sheet, "P", "leg b", "slit a", -share * theta).piece("P")
    for e in darted().edges:
        assert turned.edge(e.name).length == pytest.approx(e.length, abs=1e-9)
    assert turned.area == pytest.approx(darted().area, abs=1e-9)
    opened = distance(turned.edge("slit a").path.start, turned.edge("slit b").path.end)
    half = math.radians(share * theta) / 2
    assert opened == pytest.approx(2 * 10 * math.sin(half), abs=1e-9)
    mouth = distance(turned.edge("leg a").path.start, turned.edge("leg b").path.end)
    leg = math.hypot(1.5, 10)
    left = math.radians((1 - share) * theta) / 2
    assert mouth == pytest.approx(2 * leg * math.sin(left), abs=1e-9)


def test_a_part_that_hangs_on_more_than_a_point_is_refused() -> None:
    with pytest.raises(PaperError, match="does not hang on one point"):
        pivot(Sheet().put(darted()), "P", "leg b", "right", 5.0)
