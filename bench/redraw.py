"""Speed of the main garment: redraw, every change, process start to PDF, many bodies;
and the redraw of a dress with sleeves.

Figures are medians of several runs, in time of one core, so that other work on the
machine counts little; ratios are taken within one run. Arc length is timed against
svgpathtools on the same curves.
"""

import gc
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import partial
from importlib import resources
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from bodies import bdims_women
from clothwright.curves import Cubic, Point
from clothwright.features import Feature
from clothwright.features.bodice.back_shoulder import BackShoulder
from clothwright.features.skirts.dress_skirt import DressSkirt
from clothwright.order import Order, OrderError, Workroom, draft, read_order
from clothwright.rules import Kind
from orders import main_features, order


def median_ms(work: Callable[[], object], runs: int = 31) -> float:
    """Median time of a call, ms, after two calls that are not counted."""
    work(), work()
    return statistics.median(_ms(work) for _ in range(runs))


def _ms(work: Callable[[], object]) -> float:
    start = _spent()
    work()
    return (_spent() - start) * 1000


def _spent() -> float:
    """Seconds of a core that this process and its finished children have used."""
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.process_time() + children.ru_utime + children.ru_stime


WITH: Mapping[tuple[str, str], Mapping[str, object]] = {
    ("bodice block", "back_shoulder_dart"): {"back_shoulder": BackShoulder.TO_PANEL},
    ("front armhole princess", "beside"): {"ease": None},
}
"""Numbers that are drafted with another setting beside them alone."""

ELSEWHERE = {
    ("bodice block", "back_shoulder_dart"): "sleeved-top.toml",
    ("waist seam", "blouse"): "bishop-blouse.toml",
}
"""Numbers that go with no open back, or no princess line, and an order for them."""


def demo(name: str) -> Order:
    """An order of the demo."""
    with resources.as_file(resources.files("clothwright.demo")) as folder:
        return read_order(folder / name)


def changes(base: Order) -> Iterator[tuple[str, Order, Order]]:
    """Every number of every feature a little more, and a little more again."""
    known = draft(base).numbers
    for feature in base.features:
        for field, number in feature.numbers().items():
            where = feature.kind, field
            other = ELSEWHERE.get(where)
            on = demo(other) if other else base
            if number.key in known and where not in WITH:
                value = known[number.key]
            else:  # none yet: the middle of what is usual, or allowed
                low, high = number.usual or (number.low or 0.0, number.high or 1.0)
                value = (low + high) / 2
            step = 1.0 if number.kind is Kind.COUNT else 0.01
            if number.high is not None and value + 2 * step > number.high:
                step = -step
            made = []
            for k in (1, 2):
                new = {**WITH.get(where, {}), field: value + k * step}
                made.append(replace(on, features=_altered(on, feature.kind, new)))
            of = f", of {other}" if other else ""
            yield f"{feature.kind}, {field}{of}", made[0], made[1]


def _altered(order: Order, kind: str, new: Mapping[str, object]) -> tuple[Feature, ...]:
    return tuple(
        f.model_copy(update=dict(new)) if f.kind == kind else f for f in order.features
    )


def change_ms(one: Order, other: Order, runs: int = 5) -> float:
    """Median time in which a workroom follows a change of one number, ms."""
    room = Workroom()
    room.draft(one), room.draft(other)
    times = [_ms(partial(room.draft, o)) for _ in range(runs) for o in (one, other)]
    return statistics.median(times)


def every_change(base: Order) -> None:
    """Change each number of each feature alone; tell the median and the slowest."""
    times: list[tuple[float, str]] = []
    for name, one, other in changes(base):
        try:
            times.append((change_ms(one, other), name))
        except OrderError:
            print(f"  left out, it cannot be drafted so: {name}")
    times.sort()
    middle = statistics.median(t for t, _ in times)
    over = sum(t >= 10 for t, _ in times)
    print(f"one of {len(times)} numbers changed:   median {middle:.1f} ms")
    print(f"  under 10 ms:               {len(times) - over} of {len(times)}")
    print(f"  slowest:                   {times[-1][0]:.1f} ms ({times[-1][1]})")


def dress(top: Order) -> Order:
    """The sleeved top with the skirt of a dress in the place of its peplum."""
    features = (DressSkirt() if f.kind == "peplum" else f for f in top.features)
    return replace(top, features=tuple(features))


def main() -> None:
    """Print every figure."""
    base, sleeved = demo("peplum-top.toml"), demo("sleeved-top.toml")
    # as the app is set: what a draft makes holds no rings
    gc.freeze()
    gc.set_threshold(10_000, 20, 20)
    print(f"full redraw with all checks: {median_ms(lambda: draft(base)):.1f} ms")
    every_change(base)
    long = dress(sleeved)
    print(f"a dress with sleeves:        {median_ms(lambda: draft(long)):.1f} ms")
    every_change(long)
    with tempfile.TemporaryDirectory() as into:
        command = str(Path(sys.executable).parent / "clothwright")
        subprocess.run([command, "starter", into], check=True, capture_output=True)
        call = [command, "make", f"{into}/peplum-top.toml", "--only", "pdf"]
        run = median_ms(
            lambda: subprocess.run(call, check=True, capture_output=True), 7
        )
        print(f"process start to A4 PDF:     {run:.0f} ms")

    for count in (50, 200):
        start = _spent()
        for body in bdims_women()[:count]:
            draft(order(body, main_features()))
        spent = _spent() - start
        print(f"{count} bodies: {spent:.2f} s, {spent / count * 1000:.1f} ms each")
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
