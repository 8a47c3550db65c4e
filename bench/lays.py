"""Two hundred random orders on random cloths, every lay through the checker.

Prints the figures of docs/lay-figures.md; ends with 1 when a lay may not be cut. A
quarter of an hour; `--from 50 --count 50` for a part of them.
"""

import argparse
import sys
from collections import Counter
from pathlib import Path

sys.path[0] = str(Path(__file__).parents[1] / "tests")  # for bench has a lay.py

from lay.test_real_orders import laid  # noqa: E402


def main() -> int:
    """All orders, and what became of them."""
    wish = argparse.ArgumentParser(description=__doc__)
    wish.add_argument("--from", type=int, default=0, dest="start")
    wish.add_argument("--count", type=int, default=200)
    told = wish.parse_args()
    became: Counter[str] = Counter()
    ways: Counter[str] = Counter()
    wrong = 0
    for seed in range(told.start, told.start + told.count):
        for each in laid(seed):
            if each.what not in ("laid", "too wide"):
                wrong += 1
                print(f"order {seed}: {each.what}", flush=True)
                continue
            became[each.what] += 1
            if each.what == "laid":
                ways.update(each.ways)
        print(f"{seed + 1}: {dict(became)}", file=sys.stderr, flush=True)
    print(f"{told.count} orders: {dict(became)}, {wrong} that may not be cut")
    print(", ".join(f"{word} {n}" for word, n in sorted(ways.items())))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
