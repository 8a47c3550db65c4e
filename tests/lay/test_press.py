"""All pieces pressed together: never longer, nothing overlaps, every rule of the cloth
kept. The checker (`lay.check`) shares nothing with the press."""

import random
from dataclasses import replace

import pytest

from clothwright.lay import Shape, Spread, check_lay, spread
from clothwright.lay.pieces import copies
from clothwright.lay.place import Layout, Table
from clothwright.lay.press import pressed
from clothwright.lay.search import greedy
from clothwright.lay.spread import Box
from clothwright.lay.strip import settled
from clothwright.order import Cloth, Fold
from laid import INSTANCES, blob, folded_set, half, instance


def loosened(layout: Layout, table: Table, share: float) -> Layout:
    """The same with every piece further from the beginning, as if it were stretched;
    what stands behind another stays behind it."""
    at = tuple((x * (1 + share), y) for x, y in layout.at)
    return replace(layout, at=at, length=layout.length * (1 + share))


def test_a_row_of_squares_closes_up() -> None:
    square = ((0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (0.0, 5.0))
    on = Spread(5.0, ((0.0, 5.0),))
    table = Table(copies((Shape("a", square, count=4),), on), on)
    apart = replace(
        greedy(table),
        at=((0.0, 0.0), (6.0, 0.0), (11.5, 0.0), (17.0, 0.0)),
        length=22.0,
    )
    turned = replace(apart, choice=(0, 0, 0, 0))
    assert pressed(table, turned).length == pytest.approx(20.0, abs=1e-6)


def test_two_wedges_slide_into_each_other_only_together() -> None:
    """Each is held by the other and by an edge of the cloth; a 3-4-5 triangle and its
    like make a box of 4 by 3, so that the lay is 4 long."""
    wedge = ((0.0, 0.0), (4.0, 0.0), (0.0, 3.0))
    on = Spread(3.0, ((0.0, 3.0),))
    table = Table(copies((Shape("w", wedge, count=2),), on), on)
    ways = [v.turn for v in table.copies[0].variants]
    choice = (ways.index(0.0), ways.index(180.0))
    start = replace(
        greedy(table), choice=choice, at=((0.0, 0.0), (4.6, 3.0)), length=4.6
    )
    assert pressed(table, start).length == pytest.approx(4.0, abs=1e-6)


@pytest.mark.parametrize("seed", range(12))
def test_random_lays_stay_valid(seed: int) -> None:
    rng = random.Random(seed)
    shapes = (
        *(
            Shape(f"f{k}", half(rng, rng.uniform(6, 20)), on_fold=True)
            for k in range(2)
        ),
        *(Shape(f"p{k}", blob(rng, rng.uniform(5, 20)), count=2) for k in range(4)),
    )
    cloth = Cloth(width=150.0, selvedge=1.5)
    on = spread(cloth, rng.choice([Fold.LENGTHWISE, Fold.SINGLE, Fold.TWO]))
    if seed % 3 == 0:
        on = replace(on, flaws=(Box(10.0, 10.0, 14.0, 16.0),))
    gap = rng.choice([0.0, 0.5])
    table = Table(copies(shapes, on, gap=gap), on)
    start = greedy(table)
    before = len(check_lay(shapes, on, table.placed(start), start.length, gap=gap))
    assert before == 0
    found = pressed(table, start)
    assert found.length <= start.length
    assert not check_lay(shapes, on, table.placed(found), found.length, gap=gap)


@pytest.mark.parametrize("name", INSTANCES)
def test_open_instances_close_up_where_a_gap_was_left(name: str) -> None:
    """Laid with a gap of a hundredth of the width, then pressed without it."""
    shapes, on, _ = instance(name)
    gap = 0.01 * on.width
    start = greedy(Table(copies(shapes, on, gap=gap), on))
    table = Table(copies(shapes, on), on)
    assert not check_lay(shapes, on, table.placed(start), start.length)
    found = pressed(table, start)
    assert found.length < start.length - 2 * gap
    assert not check_lay(shapes, on, table.placed(found), found.length)


def test_a_piece_stays_on_its_fold_and_off_a_flaw() -> None:
    on = spread(Cloth(width=150.0, selvedge=1.5), Fold.LENGTHWISE)
    on = replace(on, flaws=(Box(0.0, 0.0, 8.0, 5.0),))
    shapes = folded_set("shirt11")
    table = Table(copies(shapes, on), on)
    start = greedy(table)
    loose = loosened(start, table, 0.05)
    assert not check_lay(shapes, on, table.placed(loose), loose.length)
    found = pressed(table, loose)
    assert found.length < loose.length - 1
    assert not check_lay(shapes, on, table.placed(found), found.length)


def test_what_overlaps_is_parted() -> None:
    """Ten squares of 10 in two rows of a strip of 20, pushed into each other by up to
    2, and over the borders: parted they take 50 at the least, by their area."""
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    shapes = (Shape("a", square, count=10, turns=(0.0,)),)
    on = Spread(20.0, ((0.0, 20.0),))
    table = Table(copies(shapes, on), on)
    rng = random.Random(4)
    at = [
        (8.0 * (k // 2) + rng.random(), 10.0 * (k % 2) + rng.random())
        for k in range(10)
    ]
    start = settled(table, (0,) * 10, at)
    assert check_lay(shapes, on, table.placed(start), start.length)
    found = pressed(table, start)
    assert not check_lay(shapes, on, table.placed(found), found.length)
    assert found.length == pytest.approx(50.0, abs=0.01)
