"""A free packing of one strip, run as a program of its own by `strip.py`.

Reads a line with a JSON object: `height`, `seconds`, `seed`, `workers`, `share` (of the
time for exploring; the rest squeezes) and `items`, each `[id, points, demand, turns]`.
Prints a line for every shorter packing: `[length, [[id, turn, x, y], …], true]`, and
one with `false` for what it tried shorter still, in which a few items overlap. Whoever
runs it may kill it at any time; it ends when its input does. It imports nothing of this
program, so that it starts at once and neither the packer's clock nor a fault in it can
do harm.
"""

import json
import os
import sys
import threading
from datetime import timedelta

import spyrrow

DEPTH = 3
"""Of the packer's tree of the strip: the same packings as with 4, a little sooner."""


def end_with_input() -> None:
    """End at once when nobody is there any more."""
    while os.read(0, 1024):
        pass
    os._exit(0)


def main() -> None:
    """Pack what stands on standard input."""
    told = json.loads(sys.stdin.readline())
    threading.Thread(target=end_with_input, daemon=True).start()
    items = [
        spyrrow.Item(name, [(x, y) for x, y in points], demand, turns)
        for name, points, demand, turns in told["items"]
    ]
    strip = spyrrow.StripPackingInstance("strip", told["height"], items)
    config = spyrrow.StripPackingConfig(
        early_termination=False,
        total_computation_time=1,
        num_workers=told["workers"],
        seed=told["seed"],
        quadtree_depth=DEPTH,
    )
    seconds, share = told["seconds"], told["share"]
    config.exploration_time = timedelta(seconds=seconds * share)
    config.compression_time = timedelta(seconds=seconds * (1 - share))
    queue = spyrrow.ProgressQueue()
    valid = (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas)
    tried = (spyrrow.ReportType.ExplInfeas, spyrrow.ReportType.ExplImproving)
    done = threading.Event()
    shortest = [float("inf")]

    def tell(solution: spyrrow.StripPackingSolution) -> None:
        if solution.width < shortest[0]:
            shortest[0] = solution.width
            say(solution, valid=True)

    def say(solution: spyrrow.StripPackingSolution, *, valid: bool) -> None:
        placed = [[p.id, p.rotation, *p.translation] for p in solution.placed_items]
        print(json.dumps([solution.width, placed, valid]), flush=True)

    def listen() -> None:
        while not done.wait(0.05):
            reports = queue.drain()
            for kind, solution in reports:
                if kind in valid:
                    tell(solution)
            if reports and reports[-1][0] in tried:
                say(reports[-1][1], valid=False)

    listener = threading.Thread(target=listen)
    listener.start()
    try:
        last = strip.solve(config, queue)
    finally:
        done.set()
        listener.join()
    tell(last)


if __name__ == "__main__":
    main()
