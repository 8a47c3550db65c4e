"""The free packer as a program beside us: items in, ever shorter packings out."""

import json
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import cast

from clothwright.lay.beside import Beside
from clothwright.lay.place import MEAN_WEIGHT, Layout, Table

Item = tuple[str, Sequence[tuple[float, float]], int, Sequence[float]]
"""An item as the packer is told it: name, points, how many, turns in degrees."""

Places = list[tuple[str, float, float, float]]
"""Name, turn, x and y of every item."""

EXPLORING = 0.8
"""Share of the packer's time for exploring; the rest squeezes."""


class Strip(Beside):
    """One run of the packer; it goes on beside us until it is done or stopped."""

    def __init__(
        self,
        items: Sequence[Item],
        height: float,
        *,
        seconds: float,
        seed: int = 1,
        workers: int = 1,
    ) -> None:
        told = {
            "height": height,
            "seconds": seconds,
            "seed": seed,
            "workers": workers,
            "share": EXPLORING,
            "items": items,
        }
        packing = Path(__file__).with_name("packing.py")
        super().__init__(
            [sys.executable, "-I", str(packing)], f"{json.dumps(told)}\n".encode()
        )

    @property
    def placed(self) -> Places:
        """Name, turn, x and y of every item in its shortest packing; empty without
        one."""
        return _read(self.last())

    def near(self) -> Places:
        """The same of what it last tried shorter still, in which a few items overlap;
        empty when it has tried nothing since this was asked."""
        return _read(self.last_try())


def _read(places: list[object]) -> Places:
    items = cast(list[tuple[str, float, float, float]], places)
    return [(str(n), t, x, y) for n, t, x, y in items]


@dataclass(frozen=True)
class Group:
    """Copies of one shape and hand, told to the packer as one item."""

    copies: tuple[int, ...]
    base: int
    """The variant whose points were told."""


def grouped(
    table: Table, like: Layout, which: Sequence[int]
) -> tuple[list[Item], dict[str, Group]]:
    """Copies as items, each with the hand that it has in a layout."""
    found: dict[tuple[str, bool], list[int]] = {}
    for i in which:
        c = table.copies[i]
        hand = c.variants[like.choice[i]].mirrored
        found.setdefault((c.shape.code, hand), []).append(i)
    items: list[Item] = []
    groups: dict[str, Group] = {}
    for n, ((_, hand), members) in enumerate(sorted(found.items())):
        variants = table.copies[members[0]].variants
        ways = [k for k, v in enumerate(variants) if v.mirrored == hand]
        base = variants[ways[0]]
        turns = [variants[k].turn - base.turn for k in ways]
        groups[str(n)] = Group(tuple(members), ways[0])
        items.append((str(n), base.points, len(members), turns))
    return items, groups


def read(
    table: Table,
    groups: dict[str, Group],
    placed: Sequence[tuple[str, float, float, float]],
    shift: tuple[float, float],
    choice: list[int],
    at: list[tuple[float, float]],
) -> None:
    """Put what the packer placed into `choice` and `at`, moved by `shift`."""
    used: dict[str, int] = {}
    for name, turn, x, y in placed:
        group = groups.get(name)
        if group is None:
            continue
        k = used.get(name, 0)
        used[name] = k + 1
        i = group.copies[k]
        variants = table.copies[i].variants
        base = variants[group.base]
        choice[i] = min(
            (w for w, v in enumerate(variants) if v.mirrored == base.mirrored),
            key=lambda w: abs((variants[w].turn - base.turn - turn + 180) % 360 - 180),
        )
        at[i] = (x + shift[0], y + shift[1])


def settled(
    table: Table, choice: Sequence[int], at: Sequence[tuple[float, float]]
) -> Layout:
    """A layout from places, pushed to the beginning of the cloth."""
    spans = []
    for i, c in enumerate(table.copies):
        xs = [x for x, _ in c.variants[choice[i]].points]
        spans.append((min(xs) + c.margin + at[i][0], max(xs) - c.margin + at[i][0]))
    start = min(a for a, _ in spans)
    places = tuple((x - start, y) for x, y in at)
    length = max(b for _, b in spans) - start
    middle = sum(
        c.area * ((a + b) / 2 - start)
        for c, (a, b) in zip(table.copies, spans, strict=True)
    )
    order = tuple(sorted(range(len(at)), key=lambda i: (places[i][0], i)))
    cost = length + MEAN_WEIGHT * middle / table.area
    return Layout(order, tuple(choice), places, length, cost)
