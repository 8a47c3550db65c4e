"""The search for a short lay: annealing over the order and the variants.

There is no clock in it. It counts the layouts that it tries, so that a seed and a
number of layouts always give the same lay, and more layouts never a longer one: a
longer search is a shorter one continued.
"""

import math
import random
from collections.abc import Iterator

from clothwright.lay.place import Layout, Table

FIRST_ROUND = 250
"""Layouts of the first round of cooling; each later round has `LONGER` as many."""

LONGER = 1.6

WARM, COLD = 0.02, 0.0004
"""Temperature at the beginning and at the end of a round, as a share of the length."""


def greedy(table: Table) -> Layout:
    """On the fold first, then the largest first; the first lay of all."""
    order = first_order(table)
    choice = [0] * len(order)
    layout = table.lay(order, choice)
    assert layout is not None  # nothing limits it
    return layout


def first_order(table: Table) -> list[int]:
    """Fold pieces first, then by area."""
    return sorted(
        range(len(table.copies)),
        key=lambda i: (not table.copies[i].shape.on_fold, -table.copies[i].area, i),
    )


def search(
    table: Table,
    *,
    seed: int = 1,
    start: Layout | None = None,
) -> Iterator[Layout]:
    """The best layout so far, once for every layout tried; without end.

    Begins with `start`, or the greedy lay.
    """
    rng = random.Random(seed)
    best = start or greedy(table)
    yield best
    n = len(table.copies)
    if n == 1 and len(table.copies[0].variants) == 1:
        while True:
            yield best
    count = FIRST_ROUND
    kicked = False
    while True:
        now = best
        if kicked:  # every other round begins elsewhere
            now = _shaken(table, best, rng)
        for step in range(count):
            heat = WARM * (COLD / WARM) ** (step / count) * best.length
            order, choice = _moved(table, now, rng)
            limit = now.cost - heat * math.log(1.0 - rng.random())
            tried = table.lay(order, choice, limit=limit, before=now)
            if tried is not None and tried.cost <= limit:
                now = tried
                if _shorter(now, best):
                    best = now
            yield best
        count = round(count * LONGER)
        kicked = not kicked


def _shorter(a: Layout, b: Layout) -> bool:
    return (round(a.length, 4), a.cost) < (round(b.length, 4), b.cost)


def _shaken(table: Table, layout: Layout, rng: random.Random) -> Layout:
    """A layout from an order that is mixed up."""
    order, choice = list(layout.order), list(layout.choice)
    for _ in range(max(2, len(order) // 2)):
        _move(table, order, choice, rng)
    out = table.lay(order, choice)
    return layout if out is None else out


def _moved(
    table: Table, layout: Layout, rng: random.Random
) -> tuple[list[int], list[int]]:
    order, choice = list(layout.order), list(layout.choice)
    _move(table, order, choice, rng)
    if rng.random() < 0.3:
        _move(table, order, choice, rng)
    return order, choice


def _move(
    table: Table, order: list[int], choice: list[int], rng: random.Random
) -> None:
    """Swap two, move one elsewhere, or lay one another way."""
    n = len(order)
    kind = rng.random()
    if n == 1 or kind < 0.35:
        free = [i for i in order if len(table.copies[i].variants) > 1]
        if free:
            i = free[rng.randrange(len(free))]
            other = rng.randrange(len(table.copies[i].variants) - 1)
            choice[i] = other + (other >= choice[i])
            return
    if n == 1:
        return
    a, b = rng.sample(range(n), 2)
    if kind < 0.7:
        order[a], order[b] = order[b], order[a]
    else:
        order.insert(b, order.pop(a))
