"""Speed of a size set of twenty of the main garment, from process start to nested A0.

Bodies lie evenly between the table's misses sizes 6 and 20, 165 cm tall, hips 94 to
118 cm. Time on the clock, and of all cores together; medians of three runs.
"""

import resource
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from clothwright.body.sizes import size_tables

COUNT = 20


def written(folder: Path) -> list[str]:
    """Measures files of the bodies; their names."""
    rows = size_tables()["misses"]
    low, high = rows["6"], rows["20"]
    names = []
    for i in range(COUNT):
        k = i / (COUNT - 1)
        measures = {c: low[c] + (high[c] - low[c]) * k for c in low}
        measures |= {"HT": 165.0, "H": 94 + 24 * k}
        lines = "\n".join(f"{c} = {v:.2f}" for c, v in measures.items())
        name = f"s{i + 1}.toml"
        text = f'client = "Size {i + 1}"\nunit = "cm"\n[measures]\n{lines}\n'
        (folder / name).write_text(text, "utf8")
        names.append(name)
    return names


def _spent() -> float:
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    return children.ru_utime + children.ru_stime


def main() -> None:
    """Print the figures."""
    with tempfile.TemporaryDirectory() as into:
        command = str(Path(sys.executable).parent / "clothwright")
        subprocess.run([command, "starter", into], check=True, capture_output=True)
        bodies = ",".join(written(Path(into)))
        call = [command, "sizes", f"{into}/peplum-top.toml", "--bodies", bodies]
        for told, more in (
            (f"{COUNT} sizes, nested on A0", ["--paper", "a0", "--only", "pdf"]),
            ("  in two processes", ["--paper", "a0", "--only", "pdf", "--cores", "2"]),
            (f"{COUNT} sizes apart, on A4", ["--apart", "--only", "pdf"]),
        ):
            clock, cores = [], []
            for _ in range(3):
                start, spent = time.perf_counter(), _spent()
                subprocess.run([*call, *more], check=True, capture_output=True)
                clock.append(time.perf_counter() - start)
                cores.append(_spent() - spent)
            middle = statistics.median
            print(f"{told}: {middle(clock):.1f} s; {middle(cores):.1f} s of all cores")


if __name__ == "__main__":
    main()
