"""Free boxes inside a piece, judged by shapely."""

import math
import random

import pytest
from shapely.geometry import LineString, Polygon

from clothwright.curves import Point
from clothwright.finishing.room import SQUARE, Room

RING = [(0.0, 0.0), (17.0, 2.0), (21.0, 13.0), (12.0, 9.0), (6.0, 22.0), (0.0, 0.0)]
"""A piece with a hollow, cm."""


def _box(at: Point, wide: float, tall: float, degrees: float) -> Polygon:
    a = math.radians(degrees)
    u, v = (math.cos(a), math.sin(a)), (-math.sin(a), math.cos(a))
    return Polygon(
        [
            (
                at.x + u[0] * sx * wide / 2 + v[0] * sy * tall / 2,
                at.y + u[1] * sx * wide / 2 + v[1] * sy * tall / 2,
            )
            for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1))
        ]
    )


def _lines(seed: int) -> list[list[tuple[float, float]]]:
    chance = random.Random(seed)
    return [
        [(chance.uniform(0, 21), chance.uniform(0, 22)) for _ in range(2)]
        for _ in range(3)
    ]


@pytest.mark.parametrize("degrees", [0.0, 90.0, 31.0, -58.0])
@pytest.mark.parametrize("seed", range(6))
def test_a_box_found_is_free(degrees: float, seed: int) -> None:
    lines = _lines(seed)
    room = Room([RING], lines, degrees)
    piece = Polygon(RING)
    for wide, tall in ((4.0, 1.2), (2.0, 2.0), (7.0, 0.6)):
        at = room.nearest(wide, tall, Point(8, 8))
        if at is None:
            continue
        box = _box(at, wide, tall, degrees)
        assert piece.contains(box)
        assert not any(LineString(k).intersects(box) for k in lines)


@pytest.mark.parametrize("degrees", [0.0, 90.0, 31.0, -58.0])
@pytest.mark.parametrize("seed", range(6))
def test_no_box_is_missed(degrees: float, seed: int) -> None:
    """Where a box with two squares of the grid to spare is free, one is found, and no
    farther from the wish than that one, to within two squares."""
    lines = _lines(seed)
    room = Room([RING], lines, degrees)
    piece = Polygon(RING)
    wish = Point(9, 8)
    wide, tall, spare = 3.0, 1.2, 2 * SQUARE
    places = [Point(x * 0.5, y * 0.5) for x in range(42) for y in range(44)]
    free = [
        p
        for p in places
        if piece.contains(box := _box(p, wide + spare, tall + spare, degrees))
        and not any(LineString(k).intersects(box) for k in lines)
    ]
    at = room.nearest(wide, tall, wish)
    if free:
        assert at is not None
        least = min(math.dist(p, wish) for p in free)
        assert math.dist(at, wish) <= least + 2 * SQUARE


def test_a_line_barred_later_is_kept_off() -> None:
    ring = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0), (0.0, 0.0)]
    room = Room([ring], [], 0.0)
    assert room.nearest(4, 1, Point(5, 5)) is not None
    room.keep_off([(0.0, 5.0), (10.0, 5.0)])
    at = room.nearest(4, 1, Point(5, 5))
    assert at is not None
    assert abs(at.y - 5) >= 0.5
    assert room.nearest(4, 6, Point(5, 5)) is None
