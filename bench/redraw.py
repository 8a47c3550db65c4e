"""Speed of the main garment: redraw, change, process start to PDF, many bodies.

Figures are medians of several runs on one core; ratios are taken within one run. Arc
length is timed against svgpathtools on the same curves.
"""

import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from bodies import BRIDA, bdims_women
from clothwright.curves import Cubic, Point
from clothwright.features.open_back import LowOpenBack
from clothwright.features.peplum import Peplum
from clothwright.order import Order, Workroom, draft
from clothwright.units import Unit
from orders import main_features, order


def median_ms(work: Callable[[], object], runs: int = 31) -> float:
    """Median time of a call, ms, after two calls that are not counted."""
    work(), work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times) * 1000


def changed(base: Order, **numbers: object) -> Order:
    """The order with one feature's number changed."""
    from dataclasses import replace

    features = tuple(
        f.model_copy(update=numbers)
        if isinstance(f, (LowOpenBack, Peplum))
        and all(n in type(f).model_fields for n in numbers)
        else f
        for f in base.features
    )
    return replace(base, features=features)


def main() -> None:
    """Print every figure."""
    base = order(BRIDA, main_features(), unit=Unit.IN)
    print(f"full redraw with all checks: {median_ms(lambda: draft(base)):.1f} ms")

    room = Workroom()
    room.draft(base)
    step = iter(range(10**6))

    def change_peplum() -> None:
        room.draft(changed(base, length=14.0 + (next(step) % 50) * 0.01))

    print(f"peplum length changed:       {median_ms(change_peplum):.1f} ms")

    def change_back() -> None:
        room.draft(changed(base, depth=15.0 + (next(step) % 50) * 0.01))

    print(f"depth of the back changed:   {median_ms(change_back):.1f} ms")

    with tempfile.TemporaryDirectory() as folder:
        command = str(Path(sys.executable).parent / "clothwright")
        subprocess.run([command, "starter", folder], check=True, capture_output=True)
        call = [command, "make", f"{folder}/peplum-top.toml", "--only", "pdf"]
        run = median_ms(
            lambda: subprocess.run(call, check=True, capture_output=True), 7
        )
        print(f"process start to A4 PDF:     {run:.0f} ms")

    for count in (50, 200):
        start = time.perf_counter()
        for body in bdims_women()[:count]:
            draft(order(body, main_features()))
        spent = time.perf_counter() - start
        each = spent / count * 1000
        print(f"{count} bodies: {spent:.2f} s, {each:.1f} ms each")
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"peak memory:                 {peak:.0f} MB")
    arc_length()


def arc_length() -> None:
    """Ours against svgpathtools, the same 200 curves, fresh each time."""
    from svgpathtools import CubicBezier

    curves = [
        ((i % 7, 0.0), (i % 5 + 3.0, 1.0), (4.0, i % 11 + 1.0), (6.0, 10.0))
        for i in range(200)
    ]

    def ours() -> list[float]:
        made = [Cubic(*(Point(float(x), float(y)) for x, y in c)) for c in curves]
        return [c.length for c in made]

    def theirs() -> list[float]:
        made = [CubicBezier(*(complex(x, y) for x, y in c)) for c in curves]
        return [c.length(error=1e-6) for c in made]

    a, b = median_ms(ours, 9), median_ms(theirs, 9)
    worst = max(abs(x - y) for x, y in zip(ours(), theirs(), strict=True))
    print(f"arc length of 200 curves:    {a:.2f} ms; svgpathtools {b:.1f} ms")
    print(f"  ratio {b / a:.0f}, greatest difference {worst:.1e} cm")


if __name__ == "__main__":
    main()
