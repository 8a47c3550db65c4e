"""Every feature alone and 300 random valid orders, each on 50 women of a survey.

Each drafts with all checks passed, or is refused in words that name a measure or a
number and say what to do. Prints the table of docs/bodies.md and what was said, and
ends with 1 at a fault: a traceback, an answer that is unsound (tests/verdict.py), or
paper that does not fit together though no feature's own check says why.
"""

import argparse
import re
import sys
import traceback
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from bodies import ansur_whole
from combinations import (
    ALONE,
    COMBINED,
    FEATURES,
    RAW,
    features_of,
    name,
    on_body,
    told,
)
from order.test_combinations import judged

OUTSIDE = 10
"""Of so many bodies one is asked from outside too, by shapely, which takes longer than
the draft."""


@dataclass
class Answers:
    """What became of one order on all bodies."""

    who: str
    """"alone, side dart" or "combination 17"."""

    order: str
    kinds: tuple[str, ...]
    passed: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    """Sentences without their figures."""

    faults: list[str] = field(default_factory=list)


def asked_of(job: tuple[str, int], women: range) -> Answers:
    """One order on all bodies."""
    who, features = features_of(job)
    out = Answers(who, told(features), tuple(f.kind for f in features))
    for i, k in enumerate(women):
        asked = on_body(features, job[1], k)
        try:
            it, wrong = judged(asked, whole=not out.passed, outside=i % OUTSIDE == 0)
        except Exception:
            out.faults.append(f"body {k}: {traceback.format_exc(limit=-3)}")
            continue
        out.passed += not it.refusals
        out.refused.update(_shape(r) for r in it.refusals[:1])
        out.faults += (f"body {k}: {w}" for w in wrong)
    return out


def _jobs(asked: argparse.Namespace) -> Iterator[tuple[str, int]]:
    yield from ((ALONE, i) for i in range(len(FEATURES) if asked.alone else 0))
    what = RAW if asked.unsifted else COMBINED
    yield from ((what, i) for i in range(asked.first, asked.first + asked.combinations))


def main() -> None:
    """Ask all, print the figures."""
    wish = argparse.ArgumentParser(description=__doc__)
    wish.add_argument("--combinations", type=int, default=300)
    wish.add_argument("--first", type=int, default=0)
    wish.add_argument("--bodies", type=int, default=50)
    wish.add_argument("--alone", action=argparse.BooleanOptionalAction, default=True)
    wish.add_argument("--unsifted", action="store_true", help="that none may get, too")
    wish.add_argument("--minutes", type=float, default=600.0, help="and no longer")
    wish.add_argument("--processes", type=int, default=2)
    asked = wish.parse_args()
    every = len(ansur_whole()) // asked.bodies
    women = range(0, every * asked.bodies, every)
    jobs = list(_jobs(asked))
    found = []
    pool = ProcessPoolExecutor(asked.processes)
    waiting = [pool.submit(asked_of, job, women) for job in jobs]
    try:
        for done in as_completed(waiting, timeout=asked.minutes * 60):
            found.append(done.result())
            print(f"\r{len(found)} of {len(jobs)}", end="", file=sys.stderr, flush=True)
    except TimeoutError:
        pool.shutdown(wait=False, cancel_futures=True)
    print(file=sys.stderr)
    sys.exit(1 if _told(found, len(women)) else 0)


def _told(found: list[Answers], women: int) -> bool:
    """Print all; True when there are faults."""
    print(
        "| orders | drafts | pass | refused | faults |\n| --- | --- | --- | --- | --- |"
    )
    of_alone = [a for a in found if a.who.startswith(ALONE)]
    others = [a for a in found if not a.who.startswith(ALONE)]
    for what, some in (("every feature alone", of_alone), ("combinations", others)):
        passed, faults = sum(a.passed for a in some), sum(len(a.faults) for a in some)
        refused = sum(a.refused.total() for a in some)
        drafts = len(some) * women
        print(f"| {len(some)}, {what} | {drafts} | {passed} | {refused} | {faults} |")
    said, of_kind = Counter[str](), Counter[str]()
    asked = Counter(k for a in others for k in a.kinds)
    for a in found:
        said.update(a.refused)
        if not a.who.startswith(ALONE):
            of_kind.update(dict.fromkeys(a.kinds, a.passed / women))
    print("\nfeature: in combinations, share of its drafts that passed")
    for k in map(name, FEATURES):
        share = f"{of_kind[k] / asked[k]:.0%}" if asked[k] else ""
        print(f"    {k}: {asked[k]}, {share}")
    print("\nsaid when refused")
    for sentence, n in said.most_common():
        print(f"{n:6d}  {sentence}")
    print("\norders that nobody gets")
    for a in found:
        if a.passed == 0 and women > 1:
            print(f"  {a.who}: {a.order}\n      {a.refused.most_common(1)}")
    for a in found:
        if a.faults:
            print(f"\nfaults of {a.who}: {a.order}")
            shapes = Counter(_shape(re.sub(r"^body \d+: ", "", f)) for f in a.faults)
            first = {_shape(re.sub(r"^body \d+: ", "", f)): f for f in a.faults[::-1]}
            for shape, n in shapes.most_common():
                print(f"{n:6d}  {first[shape]}")
    return any(a.faults for a in found)


def _shape(sentence: str) -> str:
    """A sentence without its figures."""
    return re.sub(r"[-\d./⁄¹²³⁰⁴-₉½¼¾⅛⅜⅝⅞]+", "#", sentence)


if __name__ == "__main__":
    main()
