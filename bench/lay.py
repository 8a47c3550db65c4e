"""How short the lays are: seven open garment instances beside their best known lays and
the free packer alone, and four invented sets on folded cloth.

Prints the tables of `docs/lay-figures.md`. Half an hour on two cores; `--seconds 10`
for a shorter look, `--only mao` for one of them.
"""

import argparse
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))

from clothwright.lay import Budget, Shape, Spread, check_lay, solve, spread
from clothwright.lay.packer import Packing
from clothwright.lay.pieces import area_of, copies
from clothwright.lay.place import Table
from clothwright.lay.search import greedy
from clothwright.order import Cloth, Fold
from laid import INSTANCES, folded_set, instance

FOLDED = {
    ("dress9", False): 118.7,
    ("dress9", True): 126.2,
    ("shirt11", False): 122.3,
    ("shirt11", True): 125.5,
    ("gored9", False): 154.5,
    ("dress13", False): 188.2,
    ("dress13", True): 188.9,
}
"""Best lengths known before, cm."""


def packed_alone(shapes: tuple[Shape, ...], on: Spread, seconds: float) -> float:
    """Length of the free packer's own lay in the same time."""
    table = Table(copies(shapes, on), on)
    packing = Packing(table, greedy(table), seconds=seconds, workers=2)
    while not packing.program.done:
        time.sleep(0.2)
    return packing.program.length


def combed_alone(shapes: tuple[Shape, ...], on: Spread, seconds: float) -> float:
    """Length of the free packer's own lay round the pieces on the fold, in the order of
    the greedy lay from either end, in the same time."""
    table = Table(copies(shapes, on), on)
    found = []
    for turned in (False, True):
        packing = Packing(
            table, greedy(table), seconds=seconds / 2, workers=2, row_turned=turned
        )
        while not packing.program.done:
            time.sleep(0.2)
        layout = packing.layout()
        found += [layout.length] if layout is not None else []
    return min(found)


def main() -> None:
    """Both tables."""
    wish = argparse.ArgumentParser(description=__doc__)
    wish.add_argument("--seconds", type=float, default=60.0)
    wish.add_argument("--folded", type=float, default=30.0)
    wish.add_argument("--only", nargs="*", default=[])
    wish.add_argument("--ours", action="store_true", help="not the packer alone")
    told = wish.parse_args()
    print("| instance | best known % | ours % | ratio | packer alone % | ratio |")
    print("| --- | --- | --- | --- | --- | --- |")
    ratios: list[tuple[float, float]] = []
    for name in INSTANCES:
        if told.only and name not in told.only:
            continue
        shapes, on, best = instance(name)
        area = sum(area_of(s.outline) * s.count for s in shapes)
        solved = solve(shapes, on, budget=Budget(seconds=told.seconds))
        assert not check_lay(shapes, on, solved.placed, solved.length)
        ours = area / (on.width * solved.length)
        alone = 0.0
        if not told.ours:
            alone = area / (on.width * packed_alone(shapes, on, told.seconds))
        ratios.append((ours / best, alone / best))
        print(
            f"| {name} | {best * 100:.2f} | {ours * 100:.2f} | {ours / best:.3f} | "
            f"{alone * 100:.2f} | {alone / best:.3f} |",
            flush=True,
        )
    if ratios:
        means = [sum(r[k] for r in ratios) / len(ratios) for k in (0, 1)]
        print(f"| mean | | | {means[0]:.3f} | | {means[1]:.3f} |")
    print("\n| set | best before, cm | ours, cm | bound, cm | seconds | packer, cm |")
    print("| --- | --- | --- | --- | --- | --- |")
    for (name, one_way), before in FOLDED.items():
        if told.only and name not in told.only:
            continue
        on = spread(Cloth(width=150.0, selvedge=1.5, nap=one_way), Fold.LENGTHWISE)
        begun = time.monotonic()
        shapes = folded_set(name)
        solved = solve(shapes, on, budget=Budget(seconds=told.folded))
        took = time.monotonic() - begun
        alone = 0.0 if told.ours else combed_alone(shapes, on, told.folded)
        way = "one way" if one_way else "two way"
        print(
            f"| {name}, {way} | {before} | {solved.length:.2f} | {solved.bound:.1f} | "
            f"{took:.0f} | {alone:.2f} |",
            flush=True,
        )


if __name__ == "__main__":
    main()
