"""Lays of shapes: valid whatever the order, repeatable, never longer for more work."""

import itertools
import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from clothwright.lay import (
    Box,
    Budget,
    LayError,
    Progress,
    Shape,
    Spread,
    check_lay,
    solve,
    spread,
)
from clothwright.lay.pieces import area_of, copies
from clothwright.lay.place import Table
from clothwright.lay.search import greedy, search
from clothwright.order import Cloth, Flaw, Fold
from laid import blob, folded_set, half, instance

CLOTH = Cloth(width=150.0, selvedge=1.5)


def random_order(seed: int) -> tuple[tuple[Shape, ...], Spread, float]:
    """Some pieces, a cloth and a gap."""
    rng = random.Random(seed)
    shapes = []
    for k in range(rng.randint(1, 6)):
        size = rng.uniform(2.0, 18.0)
        if rng.random() < 0.35:
            shapes.append(Shape(f"H{k}", half(rng, size), on_fold=True))
        else:
            paired = rng.random() < 0.8
            marks = (("S1", 0.0, 0.0),) if rng.random() < 0.7 else ()
            count = rng.choice((2, 4)) if paired else 1
            shapes.append(
                Shape(f"P{k}", blob(rng, size), count=count, paired=paired, marks=marks)
            )
    fold = rng.choice(list(Fold))
    striped = rng.random() < 0.3
    cloth = Cloth(
        width=rng.uniform(70.0, 160.0),
        selvedge=rng.choice((0.0, 0.6, 1.5)),
        nap=fold is not Fold.ACROSS and rng.random() < 0.4,
        repeat_warp=rng.uniform(1.0, 9.0) if striped else None,
        repeat_weft=rng.uniform(1.0, 9.0)
        if striped and fold is Fold.SINGLE and rng.random() < 0.5
        else None,
        shrink_warp=rng.choice((0.0, 3.0)),
        flaws=(
            Flaw(
                along=rng.uniform(2, 30),
                across=rng.uniform(0, 50),
                length=3.0,
                width=4.0,
            ),
        )
        if fold is not Fold.ACROSS and rng.random() < 0.3
        else (),
    )
    tilt = rng.choice((0.0, 0.0, 1.0))
    return tuple(shapes), spread(cloth, fold, tilt=tilt), rng.choice((0.0, 0.3))


def test_two_hundred_random_orders() -> None:
    """Every lay passes the checker; what cannot be laid is said to be too wide."""
    laid = striped = 0
    for seed in range(200):
        shapes, on, gap = random_order(seed)
        try:
            solved = solve(
                shapes, on, gap=gap, seams=("S1",), budget=Budget(layouts=3), seed=seed
            )
        except LayError as e:
            assert "wide across the grain" in str(e), (seed, str(e))
            continue
        assert not check_lay(shapes, on, solved.placed, solved.length, gap=gap), seed
        assert solved.length >= solved.area_bound - 1e-6
        laid += 1
        striped += on.striped
    assert laid > 150
    assert striped > 20


@pytest.mark.parametrize("name", ["dress9", "shirt11"])
def test_more_layouts_never_make_a_longer_lay(name: str) -> None:
    on = spread(CLOTH, Fold.LENGTHWISE)
    shapes = folded_set(name)
    lengths = [
        solve(shapes, on, budget=Budget(layouts=n), seed=3).length
        for n in (1, 2, 5, 20, 60, 150)
    ]
    assert lengths == sorted(lengths, reverse=True)
    assert lengths[-1] < lengths[0]


@pytest.mark.parametrize("fold", [Fold.SINGLE, Fold.LENGTHWISE, Fold.TWO])
def test_a_place_on_the_spread_is_one_on_the_open_cloth(fold: Fold) -> None:
    """A flaw pointed at is told by its place on the open cloth; laid out, it lies where
    it was pointed at."""
    plain = spread(CLOTH, fold)
    assert plain.near_edge is not None
    flaw = Flaw(along=40.0, across=plain.near_edge + 10.0, length=3.0, width=2.0)
    on = spread(CLOTH.model_copy(update={"flaws": (flaw,)}), fold)
    (box,) = on.flaws
    assert (box.top, box.bottom) == pytest.approx((10.0, 12.0))
    assert spread(CLOTH, Fold.ACROSS).near_edge is None


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10_000), st.integers(1, 12), st.integers(1, 25))
def test_a_longer_search_is_a_shorter_one_continued(
    seed: int, some: int, more: int
) -> None:
    """On any cloth (folds, nap, stripes, flaws, tilt), by the counted layouts."""
    shapes, on, gap = random_order(seed)
    lengths = []
    for layouts in (some, some + more):
        try:
            solved = solve(
                shapes,
                on,
                gap=gap,
                seams=("S1",),
                budget=Budget(layouts=layouts),
                seed=seed,
            )
        except LayError:
            return
        lengths.append(solved.length)
    assert lengths[1] <= lengths[0] + 1e-9


def test_a_seed_and_a_number_of_layouts_give_one_lay() -> None:
    on = spread(CLOTH, Fold.LENGTHWISE)
    first, again = (
        solve(folded_set("dress9"), on, budget=Budget(layouts=80), seed=7)
        for _ in range(2)
    )
    assert first.placed == again.placed


def test_greedy_and_bounds_as_measured() -> None:
    """The lay notes' table: greedy lengths and row bounds of the invented sets."""
    for name, one_way, first, row in (
        ("dress9", False, 145.0, 113.8),
        ("dress9", True, 145.0, 114.5),
        ("shirt11", False, 128.4, 99.4),
        ("gored9", False, 186.2, 154.5),
        ("dress13", True, 191.1, 188.9),
    ):
        on = spread(replace_nap(one_way), Fold.LENGTHWISE)
        table = Table(copies(folded_set(name), on), on)
        assert greedy(table).length == pytest.approx(first, abs=0.06), name
        solved = solve(folded_set(name), on, budget=Budget(layouts=1))
        assert solved.row_bound == pytest.approx(row, abs=0.06), name


def replace_nap(nap: bool) -> Cloth:
    return Cloth(width=150.0, selvedge=1.5, nap=nap)


def test_at_the_bound_the_search_stops() -> None:
    """gored9 two-way reaches its row bound (lay notes: 154.5)."""
    on = spread(CLOTH, Fold.LENGTHWISE)
    solved = solve(folded_set("gored9"), on, budget=Budget(layouts=5000))
    assert solved.at_bound
    assert solved.tried < 5000
    assert solved.length == pytest.approx(154.5, abs=0.06)


def test_it_stops_when_told_and_tells_how_far_it_is() -> None:
    on = spread(CLOTH, Fold.LENGTHWISE)
    seen: list[Progress] = []
    solved = solve(
        folded_set("dress9"),
        on,
        budget=Budget(layouts=1000),
        told=seen.append,
        stop=lambda: len(seen) >= 10,
    )
    assert solved.stopped
    assert len(seen) == 10
    lengths = [p.length for p in seen]
    assert lengths == sorted(lengths, reverse=True)
    assert all(0 < p.share <= 1 for p in seen)


def test_ctrl_c_keeps_the_best_so_far() -> None:
    on = spread(CLOTH, Fold.LENGTHWISE)

    def interrupt(p: Progress) -> None:
        raise KeyboardInterrupt

    solved = solve(folded_set("dress9"), on, told=interrupt, budget=Budget(seconds=60))
    assert solved.stopped
    assert not check_lay(folded_set("dress9"), on, solved.placed, solved.length)


def test_the_packer_helps_where_pieces_lie_freely() -> None:
    """Seconds, not layouts: the free packer works beside the search. Its result depends
    on the machine, so only validity and a floor are held."""
    on = spread(CLOTH, Fold.LENGTHWISE)
    shapes = folded_set("dress9")
    solved = solve(shapes, on, budget=Budget(seconds=2.0))
    assert not check_lay(shapes, on, solved.placed, solved.length)
    assert solved.length < 140.0  # greedy: 145.0; the notes' best: 118.7


def test_many_free_pieces_are_packed() -> None:
    """24 pieces of an open instance in a few seconds: 0.80 of the best known density
    is a floor for any machine (see the README of the authorities)."""
    shapes, on, best = instance("marques")
    solved = solve(shapes, on, budget=Budget(seconds=4.0))
    assert not check_lay(shapes, on, solved.placed, solved.length)
    area = sum(area_of(s.outline) * s.count for s in shapes)
    assert area / (on.width * solved.length) > 0.80 * best


def test_an_exact_fit_is_found() -> None:
    """Two squares of 5 lie one above the other on 10 cm."""
    square = ((0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (0.0, 5.0))
    on = spread(Cloth(width=20.0, selvedge=5.0), Fold.SINGLE)
    solved = solve((Shape("S", square, count=2),), on, budget=Budget(layouts=5))
    assert solved.length == pytest.approx(5.0, abs=0.01)


def test_two_folds_hold_a_piece_on_either_side() -> None:
    """Selvedges to the middle: two half pieces of one length lie beside each other."""
    box = ((0.0, 0.0), (50.0, 0.0), (50.0, 20.0), (0.0, 20.0))
    shapes = (Shape("A", box, on_fold=True), Shape("B", box, on_fold=True))
    on = spread(Cloth(width=90.0, selvedge=1.0), Fold.TWO)
    assert on.bands == ((0.0, 21.5), (23.5, 45.0))
    solved = solve(shapes, on, budget=Budget(layouts=40))
    assert solved.length == pytest.approx(50.0, abs=0.01)
    assert solved.row_bound == pytest.approx(50.0, abs=1e-6)
    assert sorted(p.y for p in solved.placed) == [0.0, 45.0]
    single = spread(Cloth(width=90.0, selvedge=1.0), Fold.LENGTHWISE)
    assert solve(shapes, single, budget=Budget(layouts=5)).length == pytest.approx(
        100.0
    )


def test_flaws_lie_where_the_fold_brings_them() -> None:
    cloth = Cloth(
        width=100.0,
        selvedge=1.0,
        flaws=(Flaw(along=12.0, across=45.0, length=3.0, width=10.0),),
    )
    assert spread(cloth, Fold.SINGLE).flaws == (Box(10.0, 45.0, 13.0, 55.0),)
    # the fold at 50 divides it
    assert spread(cloth, Fold.LENGTHWISE).flaws == (
        Box(10.0, 0.0, 13.0, 5.0),
        Box(10.0, 0.0, 13.0, 5.0),
    )
    assert spread(cloth, Fold.TWO).flaws == (Box(10.0, 20.0, 13.0, 30.0),)


def test_a_tilt_shortens_but_never_beyond_one_degree() -> None:
    """Cutting and costing §2.5: at most 1°."""
    on = spread(Cloth(width=60.0), Fold.SINGLE, tilt=1.0)
    solved = solve(
        (Shape("S", blob(random.Random(1), 9.0)),), on, budget=Budget(layouts=30)
    )
    assert solved.placed[0].turn % 180 in (0.0, 1.0, 179.0)
    with pytest.raises(LayError, match="tilt"):
        spread(Cloth(width=60.0), Fold.SINGLE, tilt=1.5)


def test_pieces_on_the_bias_may_lie_four_ways() -> None:
    """45° to the warp is kept by quarter turns: a long piece lies where it fits."""
    bar = ((0.0, 0.0), (40.0, 0.0), (40.0, 6.0), (0.0, 6.0))
    on = spread(Cloth(width=44.0), Fold.SINGLE)
    bias = Shape("B", bar, turns=(0.0, 90.0, 180.0, 270.0))
    assert solve((bias,), on, budget=Budget(layouts=40)).length == pytest.approx(6.0)
    straight = replace(bias, turns=(0.0, 180.0))
    assert solve((straight,), on, budget=Budget(layouts=40)).length == pytest.approx(
        40.0
    )


def test_an_outline_that_crosses_itself_is_refused() -> None:
    bow = Shape("X", ((0, 0), (10, 10), (10, 0), (0, 10)), name="Bow")
    with pytest.raises(LayError, match="outline of Bow crosses itself"):
        solve((bow,), spread(Cloth(width=75.0), Fold.SINGLE))


def test_too_wide_a_piece_is_named() -> None:
    shapes = (Shape("W", ((0, 0), (10, 0), (10, 80), (0, 80)), name="Wide skirt"),)
    with pytest.raises(LayError, match=r"Wide skirt is 80.0 cm wide across the grain"):
        solve(shapes, spread(Cloth(width=75.0), Fold.SINGLE))


def test_the_search_only_ever_gets_shorter() -> None:
    on = spread(CLOTH, Fold.LENGTHWISE)
    table = Table(copies(folded_set("shirt11"), on), on)
    lengths = [k.length for k in itertools.islice(search(table), 120)]
    assert all(b <= a + 1e-9 for a, b in itertools.pairwise(lengths))
    assert lengths[-1] >= sum(area_of(s.outline) for s in folded_set("shirt11")) / 73.5
