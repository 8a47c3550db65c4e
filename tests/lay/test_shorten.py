"""The search for shorter lays of many pieces: its tables against shapely's exact
distances, its parting against shapely's areas, its lays against the checker."""

import importlib
import itertools
import random
import subprocess
import sys
import time
from collections.abc import Callable

import numpy as np
import pytest
import shapely

from clothwright.lay import Budget, Shape, Spread, check_lay, solve
from clothwright.lay.beside import Beside
from clothwright.lay.depth import depths, signed_depth
from clothwright.lay.nofit import no_fit
from clothwright.lay.packer import Packing
from clothwright.lay.parting import State, between, part
from clothwright.lay.pieces import area_of, copies
from clothwright.lay.place import Layout, Table
from clothwright.lay.search import first_order, greedy
from clothwright.lay.shorten import Shortening
from clothwright.lay.shortener import (
    MOST_PIECES,
    MOST_WAYS,
    Shortener,
    Task,
    can_shorten,
    ways_of,
)
from laid import blob

solving = importlib.import_module("clothwright.lay.solve")
ON = Spread(60.0, ((0.0, 60.0),))


def blobs(kinds: int, each: int, seed: int = 5) -> tuple[Shape, ...]:
    rng = random.Random(seed)
    return tuple(
        Shape(
            f"B{k}", blob(rng, rng.uniform(6.0, 14.0)), count=each, turns=(0.0, 180.0)
        )
        for k in range(kinds)
    )


SHAPES = blobs(5, 4)


def table_of(shapes: tuple[Shape, ...], gap: float = 0.0) -> Table:
    return Table(copies(shapes, ON, gap=gap), ON)


@pytest.mark.parametrize("seed", range(8))
def test_depth_is_the_way_to_the_edge(seed: int) -> None:
    """At the points of the grid: shapely's distance to the boundary, and inside."""
    rng = random.Random(seed)
    hollow = no_fit(blob(rng, 10.0), blob(rng, 7.0))
    cell = 0.9
    x, y, grid = signed_depth(hollow, cell)
    rows, columns = np.indices(grid.shape)
    points = shapely.points((columns + x) * cell, (rows + y) * cell)
    exact = shapely.distance(hollow.boundary, points) / cell
    sign = np.where(shapely.contains(hollow, points), 1.0, -1.0)
    assert np.allclose(grid, exact * sign, atol=1e-3)
    assert (grid[0] < 0).all() and (grid[-1] < 0).all()
    assert (grid[:, 0] < 0).all() and (grid[:, -1] < 0).all()


def test_depth_between_the_points_is_true_to_a_share_of_a_cell() -> None:
    """Any shift of any two pieces in any turn, and the same seen from the other."""
    table = table_of(SHAPES)
    told, cell = depths(table)
    numbers = ways_of(table)
    first = {w: (i, k) for i, ws in enumerate(numbers) for k, w in enumerate(ws)}
    rng = random.Random(1)
    off = []
    for _ in range(3000):
        a, b = rng.randrange(len(first)), rng.randrange(len(first))
        hollow = table.no_fit(first[a], first[b])
        dx, dy = (rng.uniform(-25.0, 25.0) for _ in "xy")
        point = shapely.Point(dx, dy)
        inside = shapely.contains(hollow, point)
        exact = shapely.distance(hollow.boundary, point) / cell if inside else 0.0
        found = between(told, a, b, dx / cell, dy / cell)
        assert between(told, b, a, -dx / cell, -dy / cell) == pytest.approx(
            found, abs=1e-3
        )
        off.append(abs(found - exact))
    assert max(off) < 0.5
    assert np.mean(off) < 0.01
    assert sum(o > 0 for o in off) > 500  # many shifts did overlap


def heap(table: Table, length: float) -> tuple[State, float]:
    """All pieces on one spot; nothing is parted."""
    told, cell = depths(table)
    n = len(table.copies)
    middle = np.full(n, length / 2), np.full(n, ON.width / 2 / cell)
    state = State(told.ways[:, 0].copy(), *middle, np.zeros((n, n)), np.zeros((n, n)))
    return state, cell


def test_a_heap_is_parted() -> None:
    """Twenty pieces on one spot, on half as much cloth again as they take."""
    table = table_of(SHAPES)
    told, cell = depths(table)
    length = 1.6 * table.area / ON.width / cell
    state, _ = heap(table, length)
    overlap, moves = part(told, state, length, 60, 2, 3)
    assert overlap <= 0.02
    assert moves > 20
    numbers = ways_of(table)
    lying = []
    for i, c in enumerate(table.copies):
        v = c.variants[numbers[i].index(int(state.way[i]))]
        points = [(x + state.x[i] * cell, y + state.y[i] * cell) for x, y in v.points]
        lying.append(shapely.Polygon(points))
    for one, two in itertools.combinations(lying, 2):
        assert one.intersection(two).area < 0.05 * cell * max(one.length, two.length)
    around = shapely.box(0, 0, length * cell, ON.width).buffer(1e-6)
    assert all(around.contains(p) for p in lying)


def test_what_cannot_be_parted_is_said() -> None:
    """On less cloth than the pieces' own area something must overlap."""
    table = table_of(SHAPES)
    told, cell = depths(table)
    length = 0.9 * table.area / ON.width / cell
    state, _ = heap(table, length)
    overlap, _ = part(told, state, length, 5, 1, 3)
    assert overlap > 1.0
    assert overlap == pytest.approx(state.depth.sum() / 2)


def shortened(
    shapes: tuple[Shape, ...], moves: int, seed: int, gap: float = 0.0
) -> list[Layout]:
    table = table_of(shapes, gap)
    search = Shortening(shapes, ON, greedy(table), gap=gap, seed=seed)
    return list(search.run(lambda: search.moves / moves))


@pytest.mark.parametrize("gap", [0.0, 0.4])
def test_every_lay_is_shorter_and_may_be_cut(gap: float) -> None:
    table = table_of(SHAPES, gap)
    start = greedy(table)
    lays = shortened(SHAPES, 20000, 1, gap)
    lengths = [start.length, *(lay.length for lay in lays)]
    assert len(lengths) > 2
    assert all(b < a for a, b in itertools.pairwise(lengths))
    for lay in lays:
        assert not check_lay(SHAPES, ON, table.placed(lay), lay.length, gap=gap)
    assert lays[-1].length < 0.97 * start.length


def test_the_same_seed_gives_the_same_lay() -> None:
    """Counted in moves no clock has a say; more moves are never longer."""
    some = shortened(SHAPES, 3000, 4)
    assert some == shortened(SHAPES, 3000, 4)
    assert some != shortened(SHAPES, 3000, 5)


def waited(so: Callable[[], bool]) -> None:
    """Wait until it is so."""
    until = time.monotonic() + 300.0
    while not so():
        assert time.monotonic() < until
        time.sleep(0.05)


def test_it_goes_on_beside_us() -> None:
    """The program tells that it has begun, and lays that may be cut."""
    table = table_of(SHAPES)
    start = greedy(table)
    beside = Shortener(table, Task(SHAPES, ON, 0.0, start, 1, 600.0))
    assert not beside.begun
    waited(lambda: beside.begun)
    waited(lambda: beside.program.length < start.length)
    beside.program.stop()
    layout = beside.layout()
    assert layout is not None
    assert layout.length == pytest.approx(beside.program.length)
    assert layout.length < start.length
    assert not check_lay(SHAPES, ON, table.placed(layout), layout.length)


def test_it_ends_at_once_when_told() -> None:
    table = table_of(SHAPES)
    beside = Shortener(table, Task(SHAPES, ON, 0.0, greedy(table), 1, 600.0))
    begun = time.monotonic()
    beside.program.stop()
    assert beside.program.done
    assert time.monotonic() - begun < 5.0
    assert beside.layout() is None


def ends_with_its_input(program: Beside) -> None:
    waited(lambda: program.length < float("inf"))
    assert not program.done
    stdin = program._process.stdin
    assert stdin is not None
    stdin.close()
    waited(lambda: program.done)


def test_what_goes_on_beside_us_ends_with_us() -> None:
    """Killed, a program stops nobody; those beside it see that their input ends."""
    table = table_of(SHAPES)
    start = greedy(table)
    for beside in (
        Shortener(table, Task(SHAPES, ON, 0.0, start, 1, 600.0)),
        Packing(table, start, seconds=600.0),
    ):
        ends_with_its_input(beside.program)


def squares(count: int, side: float = 10.0) -> Shape:
    ring = ((0.0, 0.0), (side, 0.0), (side, side), (0.0, side))
    return Shape("Q", ring, count=count)


def bars(count: int, long: float) -> Shape:
    ring = ((0.0, 0.0), (long, 0.0), (long, 3.0), (0.0, 3.0))
    return Shape("L", ring, count=count)


def test_it_ends_where_the_longest_piece_fills_it() -> None:
    """Nothing is shorter than its longest piece: it says so by ending."""
    shapes = (bars(2, 80.0), *SHAPES)
    table = table_of(shapes)
    worst = first_order(table)[::-1]
    start = table.lay(worst, [0] * len(worst))
    assert start is not None
    assert start.length > 90.0
    lays = list(Shortening(shapes, ON, start).run(lambda: 0.1))
    assert lays[-1].length == pytest.approx(80.0, abs=0.01)
    assert shortened((bars(16, 80.0),), 10**6, 1) == []


def test_a_lay_at_its_bound_is_not_sought_shorter() -> None:
    """Three rows of six squares of 10 on 60; ten minutes are not waited for."""
    begun = time.monotonic()
    solved = solve((squares(18),), ON, budget=Budget(seconds=600.0))
    assert solved.at_bound and not solved.stopped
    assert solved.length == pytest.approx(30.0, abs=0.05)
    assert time.monotonic() - begun < 300.0


def test_many_pieces_are_shortened_in_a_long_search(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The packer made silent, what is shorter than greedy is our own search's."""
    monkeypatch.setattr(Packing, "layout", lambda self: None)
    monkeypatch.setattr(Packing, "near", lambda self: None)
    monkeypatch.setattr(solving, "BEGUN", 0.001)
    first = greedy(table_of(SHAPES)).length
    lengths = [first]
    solved = solve(
        SHAPES,
        ON,
        budget=Budget(seconds=300.0),
        told=lambda p: lengths.append(p.length),
        stop=lambda: lengths[-1] < first - 1e-6,
    )
    assert solved.stopped
    assert solved.length < first
    assert not check_lay(SHAPES, ON, solved.placed, solved.length)


class Broken(Shortener):
    """One whose program ends at once, as without the compiler."""

    def __init__(self, table: Table, task: Task) -> None:
        self.table = table
        self.program = Beside([sys.executable, "-c", "raise SystemExit(1)"], b"")


class Silent(Shortener):
    """One whose program has not begun, as while its loops are compiled."""

    def __init__(self, table: Table, task: Task) -> None:
        self.table = table
        code = "import time; time.sleep(600)"
        self.program = Beside([sys.executable, "-c", code], b"")


@pytest.mark.parametrize("kind", [Broken, Silent])
def test_where_it_cannot_run_the_packer_goes_on(
    kind: type[Shortener], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(solving, "Shortener", kind)
    monkeypatch.setattr(solving, "LONG", 1.0)
    packed: list[float] = []

    begin = Packing.__init__

    def watched(
        self: Packing,
        table: Table,
        like: Layout,
        *,
        seconds: float,
        seed: int,
        workers: int,
    ) -> None:
        packed.append(seconds)
        begin(self, table, like, seconds=seconds, seed=seed, workers=workers)

    monkeypatch.setattr(Packing, "__init__", watched)
    solved = solve(SHAPES, ON, budget=Budget(seconds=3.0))
    assert len(packed) == 2
    assert packed[0] < packed[1]
    assert not check_lay(SHAPES, ON, solved.placed, solved.length)


def test_too_many_outlines_are_left_to_the_packer() -> None:
    assert can_shorten(table_of(SHAPES))
    tilted = Spread(60.0, ON.bands, tilt=1.0)  # each turn in three ways
    for kinds in (MOST_WAYS // 6, MOST_WAYS // 6 + 1):
        table = Table(copies(blobs(kinds, 1), tilted), tilted)
        assert can_shorten(table) is (6 * kinds <= MOST_WAYS)
    assert not can_shorten(table_of(blobs(2, MOST_PIECES // 2 + 1)))


def test_no_compiler_is_loaded_here() -> None:
    """Start-up time: only the program beside us loads it."""
    code = "import sys, clothwright.lay.solve; assert 'numba' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True)


def test_area_is_a_floor() -> None:
    """No lay is shorter than its pieces' area allows."""
    area = sum(area_of(s.outline) * s.count for s in SHAPES)
    assert shortened(SHAPES, 3000, 2)[-1].length > area / ON.width
