"""What is kept of immutable things: told by identity, worked out once."""

import sys
from concurrent.futures import ThreadPoolExecutor
from random import Random

import pytest

from clothwright.curves import Cubic, Path, Point, lately


def test_the_same_things_are_asked_once_and_equal_ones_again() -> None:
    asked: list[tuple[Path, Path]] = []

    @lately
    def both(a: Path, b: Path) -> float:
        asked.append((a, b))
        return a.length + b.length

    one, same = (Path.line(Point(0, 0), Point(3, 4)) for _ in range(2))
    assert one == same
    assert both(one, same) == both(one, same) == 10.0
    assert len(asked) == 1
    assert both(same, one) == both(one, one) == 10.0
    assert len(asked) == 3


def test_few_are_kept() -> None:
    asked = 0

    @lately
    def length(a: Path) -> float:
        nonlocal asked
        asked += 1
        return a.length

    paths = [Path.line(Point(0, 0), Point(1, i)) for i in range(100)]
    for p in paths:
        length(p)
    length(paths[-1])
    assert asked == 100
    length(paths[0])
    assert asked == 101


def test_threads_may_ask_at_once() -> None:
    """As the rooms of the app draft; an iterator over what is kept fails here."""

    @lately
    def same(thing: object) -> object:
        return thing

    def ask(_: int) -> bool:
        return all(same(thing) is thing for thing in (object() for _ in range(40_000)))

    usual = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    try:
        with ThreadPoolExecutor(4) as pool:
            assert all(pool.map(ask, range(4)))
    finally:
        sys.setswitchinterval(usual)


@pytest.mark.parametrize("seed", range(200))
def test_no_bend_is_tighter_than_the_bound(seed: int) -> None:
    """The bound of Newton's rule against the curvature itself, at 200 places."""
    r = Random(seed)
    flat = 0.2 if seed % 2 else 3.0  # every second one nearly straight
    y = [r.uniform(-flat, flat) for _ in range(4)]
    x = [0.0, r.uniform(1, 4.5), r.uniform(5.5, 9), 10.0]
    curve = Cubic(*(Point(*p) for p in zip(x, y, strict=True)))
    tightest = max(abs(curve.curvature(i / 200)) for i in range(1, 200))
    assert tightest * curve.least_radius <= 1 + 1e-9
    if seed % 2:
        assert curve.least_radius > 0
