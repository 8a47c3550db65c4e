"""The free packer as a program beside us: what it says, and that it can do no harm."""

import time

import pytest

from clothwright.lay import check_lay, spread
from clothwright.lay.packer import Packing, can_pack
from clothwright.lay.pieces import copies
from clothwright.lay.place import Table
from clothwright.lay.search import greedy
from clothwright.lay.strip import Strip
from clothwright.order import Cloth, Fold
from laid import folded_set

SQUARE = [(0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (0.0, 5.0)]


def waited(strip: Strip) -> Strip:
    until = time.monotonic() + 30.0
    while not strip.done and time.monotonic() < until:
        time.sleep(0.02)
    return strip


def test_a_packing_is_told() -> None:
    strip = waited(Strip([("a", SQUARE, 2, [0.0])], 10.01, seconds=0.3))
    assert 5.0 <= strip.length <= 10.01  # as its clock allows
    assert [name for name, *_ in strip.placed] == ["a", "a"]


@pytest.mark.parametrize(
    "points",
    [
        [(0.0, 0.0), (99.0, 0.0), (99.0, 99.0), (0.0, 99.0)],  # does not fit
        [(0.0, 0.0), (5.0, 5.0), (5.0, 0.0), (0.0, 5.0)],  # crosses itself
        [(0.0, 0.0), (5.0, 5.0)],
    ],
)
def test_its_panics_stay_with_it(points: list[tuple[float, float]]) -> None:
    """Lay notes: bad input panics; here the child ends, and nothing was found."""
    strip = waited(Strip([("a", points, 1, [0.0])], 10.0, seconds=0.3))
    assert strip.done
    assert strip.placed == []
    assert strip.length == float("inf")


def test_it_ends_at_once_when_told() -> None:
    strip = Strip([("a", SQUARE, 9, [0.0])], 12.0, seconds=60.0)
    begun = time.monotonic()
    strip.stop()
    assert strip.done
    assert time.monotonic() - begun < 5.0


@pytest.mark.parametrize("row_turned", [False, True])
def test_half_pieces_stay_on_the_fold(row_turned: bool) -> None:
    """The comb of the lay notes: its lay passes the checker, gap and all."""
    on = spread(Cloth(width=150.0, selvedge=1.5), Fold.LENGTHWISE)
    shapes = folded_set("shirt11")
    table = Table(copies(shapes, on, gap=0.3), on)
    packing = Packing(table, greedy(table), seconds=0.6, row_turned=row_turned)
    waited(packing.program)
    layout = packing.layout()
    assert layout is not None
    assert not check_lay(shapes, on, table.placed(layout), layout.length, gap=0.3)
    closer = table.squeezed(layout)
    assert closer.length <= layout.length + 1e-9
    assert not check_lay(shapes, on, table.placed(closer), closer.length, gap=0.3)


def test_what_it_cannot_say_is_not_asked() -> None:
    shapes = folded_set("shirt11")
    two = spread(Cloth(width=300.0, selvedge=1.5), Fold.TWO)
    assert not can_pack(Table(copies(shapes, two), two))
