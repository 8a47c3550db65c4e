"""A free packing of one strip, run as a program of its own.

    python packing.py < strip.json

Reads one JSON object: `height`, `seconds`, `seed`, `workers`, `share` (of the time for
exploring; the rest squeezes) and `items`, each `[id, points, demand, turns]`. Prints a
line for every shorter packing: `[length, [[id, turn, x, y], …]]`. Whoever runs it may
kill it at any time. It imports nothing of this program, so that it starts at once and
neither the packer's clock nor a fault in it can do harm.
"""

import json
import sys
import threading
from datetime import timedelta

import spyrrow


def main() -> None:
    """Pack what stands on standard input."""
    told = json.load(sys.stdin)
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
    )
    seconds, share = told["seconds"], told["share"]
    config.exploration_time = timedelta(seconds=seconds * share)
    config.compression_time = timedelta(seconds=seconds * (1 - share))
    queue = spyrrow.ProgressQueue()
    valid = (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas)
    done = threading.Event()
    shortest = [float("inf")]

    def tell(solution: spyrrow.StripPackingSolution) -> None:
        if solution.width < shortest[0]:
            shortest[0] = solution.width
            placed = [[p.id, p.rotation, *p.translation] for p in solution.placed_items]
            print(json.dumps([solution.width, placed]), flush=True)

    def listen() -> None:
        while not done.wait(0.05):
            for kind, solution in queue.drain():
                if kind in valid:  # the other reports overlap
                    tell(solution)

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
