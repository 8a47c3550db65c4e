"""The checker: good lays pass, and whatever is wrong with a lay is refused."""

import random
from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clothwright.lay import (
    Box,
    Budget,
    Placed,
    Shape,
    Solved,
    Spread,
    check_lay,
    solve,
    spread,
)
from clothwright.order import Cloth, Fold
from laid import INSTANCES, folded_set, instance, record

CLOTH = Cloth(width=150.0, selvedge=1.5)


@cache
def made(
    cloth: Cloth = CLOTH, fold: Fold = Fold.LENGTHWISE
) -> tuple[tuple[Shape, ...], Spread, Solved]:
    shapes = folded_set("dress9")
    on = spread(cloth, fold)
    return shapes, on, solve(shapes, on, budget=Budget(layouts=2))


def codes(
    shapes: tuple[Shape, ...], on: Spread, placed: tuple[Placed, ...], length: float
) -> set[str]:
    return {f.code for f in check_lay(shapes, on, placed, length)}


@pytest.mark.parametrize("name", INSTANCES)
def test_the_best_known_lays_pass(name: str) -> None:
    """The record layouts (see their README: no overlap at all in double precision)."""
    shapes, on, density = instance(name)
    placed, length = record(name)
    assert not check_lay(shapes, on, placed, length)
    # one piece taken away, or the cloth cut a hundredth shorter
    assert codes(shapes, on, placed[1:], length) == {"count"}
    assert "ends" in codes(shapes, on, placed, 0.99 * length)


@pytest.mark.parametrize("fold", list(Fold))
def test_our_own_lay_passes(fold: Fold) -> None:
    shapes, on, solved = made(replace_fold(fold), fold)
    assert not check_lay(shapes, on, solved.placed, solved.length)


def replace_fold(fold: Fold) -> Cloth:
    """Two folds need a wide cloth for these pieces."""
    return Cloth(width=300.0, selvedge=1.5) if fold is Fold.TWO else CLOTH


def test_r_s_a_piece_against_the_nap() -> None:
    """Check values R-s: nap cloth, piece rotated 180°: reject."""
    shapes, on, solved = made(Cloth(width=150.0, selvedge=1.5, nap=True))
    assert on.one_way
    assert not check_lay(shapes, on, solved.placed, solved.length)
    for i, p in enumerate(solved.placed):
        turned = replace(p, turn=180.0)
        lay = (*solved.placed[:i], turned, *solved.placed[i + 1 :])
        assert "grain" in codes(shapes, on, lay, solved.length)


@given(
    st.integers(0, 8), st.sampled_from(list(Fold)), st.randoms(use_true_random=False)
)
def test_wrong_lays_are_refused(i: int, fold: Fold, rng: random.Random) -> None:
    """One thing is spoilt in a good lay, and the checker says what."""
    shapes, on, solved = made(replace_fold(fold), fold)
    i %= len(solved.placed)
    p, placed = solved.placed[i], list(solved.placed)
    shape = next(s for s in shapes if s.code == p.code)
    kind = rng.choice(("overlap", "border", "ends", "count", "grain", "fold", "flaw"))
    if kind == "overlap":
        other = placed[i - 1]
        mine = _middle(shape, p)
        theirs = _middle(next(s for s in shapes if s.code == other.code), other)
        placed[i] = replace(p, x=p.x + theirs[0] - mine[0], y=p.y + theirs[1] - mine[1])
        expected = {"overlap", "border", "fold"}
    elif kind == "border":
        placed[i] = replace(p, y=p.y + rng.choice((-1, 1)) * on.width)
        expected = {"border"}
    elif kind == "ends":
        placed[i] = replace(p, x=p.x + rng.choice((-1, 1)) * 2 * solved.length)
        expected = {"ends"}
    elif kind == "count":
        del placed[i]
        expected = {"count"}
    elif kind == "grain":
        placed[i] = replace(p, turn=p.turn + rng.choice((2.0, 45.0, 90.0, -3.0)))
        expected = {"grain"}
    elif kind == "fold" and on.near_fold and shape.on_fold:
        placed[i] = replace(p, y=p.y + rng.choice((0.02, -0.02)))
        expected = {"fold"}
    else:
        x, y = _middle(shape, p)
        flaw = Box(x - 1, y - 1, x + 1, y + 1)
        on = replace(on, flaws=(flaw,))
        expected = {"flaw"}
        if not _covers(shape, p, on, (x, y)):
            return
    assert codes(shapes, on, tuple(placed), solved.length) & expected


def _middle(shape: Shape, p: Placed) -> tuple[float, float]:
    from shapely import Polygon

    from clothwright.lay import laid_outline

    inside = Polygon(laid_outline(shape, p)).representative_point()
    return inside.x, inside.y


def _covers(shape: Shape, p: Placed, on: Spread, at: tuple[float, float]) -> bool:
    from shapely import Point, Polygon

    from clothwright.lay import laid_outline

    return bool(Polygon(laid_outline(shape, p)).contains(Point(at)))


def test_pairs_are_left_and_right() -> None:
    square = ((0.0, 0.0), (10.0, 0.0), (12.0, 7.0), (0.0, 10.0))
    shape = Shape("S", square, count=2, paired=True)
    on = spread(Cloth(width=60.0), Fold.SINGLE)
    solved = solve((shape,), on, budget=Budget(layouts=2))
    assert {p.mirrored for p in solved.placed} == {False, True}
    twice = tuple(Placed("S", False, 0.0, 20.0 * k, 10.0) for k in range(2))
    assert codes((shape,), on, twice, 40.0) == {"pair"}
    alone = replace(shape, count=1, paired=False)
    wrong = (Placed("S", True, 0.0, 0.0, 30.0),)
    assert codes((alone,), on, wrong, 40.0) == {"hand"}
    assert codes((alone,), on, (Placed("X", True, 0.0, 0.0, 30.0),), 40.0) == {
        "unknown"
    }


def test_room_between_pieces() -> None:
    """Cutting and costing §2.4: at least 0.3 cm for shears."""
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    shape = Shape("S", square, count=2)
    on = spread(Cloth(width=60.0), Fold.SINGLE)
    near = (Placed("S", False, 0.0, 0.0, 10.0), Placed("S", False, 0.0, 10.2, 10.0))
    assert {f.code for f in check_lay((shape,), on, near, 30.0, gap=0.3)} == {"gap"}
    assert not check_lay((shape,), on, near, 30.0, gap=0.2)


def test_stripes_that_miss_each_other() -> None:
    """Cutting and costing §1.4: `(y_A - y_B) mod Rw = 0`."""
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    shapes = (Shape("A", square), Shape("B", square))
    on = spread(Cloth(width=60.0, repeat_warp=4.0), Fold.SINGLE)
    meet = ((0, 0, (2.0, 0.0), 1, (3.0, 0.0)),)
    for x, fits in ((15.0, True), (11.0, True), (13.0, False), (11.1, False)):
        lay = (Placed("A", False, 0.0, 0.0, 10.0), Placed("B", False, 0.0, x, 10.0))
        found = {f.code for f in check_lay(shapes, on, lay, 30.0, meet=meet)}
        assert found == (set() if fits else {"phase"}), x
