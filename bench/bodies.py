"""The whole survey of bodies: every order on every woman, and what became of it.

Two public surveys and 1,000 random women, each with the demo's orders. Prints the
figures of docs/bodies.md, and ends with 1 when an order is neither passed nor refused
in words that name a measure or a number and say what to do.
"""

import random
import re
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from bodies import ansur_legs, ansur_women, bdims_women
from clothwright.body import RuleSet
from clothwright.features.bodice.torso import Torso
from clothwright.features.bodice.waist import WaistSeam
from clothwright.features.skirts.fitted_dress_skirt import FittedDressSkirt
from clothwright.features.skirts.vent import Vent
from clothwright.order import Order
from clothwright.units import Unit
from order.test_random_bodies import DEMOS, SKIRT, demo_features
from orders import closed_back, main_features, order, random_trousers, trouser_features
from verdict import unsound, verdict
from women import woman

WOMEN = 1000
Answer = tuple[str, tuple[str, ...], tuple[str, ...]]
"""Which group, the sentences of a refusal, and what is wrong with the answer."""


def orders(seed: int) -> Iterator[tuple[str, Order]]:
    """The orders of one random woman."""
    rng = random.Random(seed)
    for kind in (*DEMOS, SKIRT):
        unit, rules = rng.choice(list(Unit)), rng.choice(list(RuleSet))
        asked = order(woman(seed), demo_features(kind), unit=unit, estimates=rules)
        yield kind, asked
    trousers = random_trousers(rng)
    yield "random trousers", order(woman(seed), trousers, estimates=rules)


def surveyed(i: int) -> Iterator[tuple[str, Order]]:
    """The main garment, dresses and trousers on one woman of the public surveys."""
    women = bdims_women()
    if i < len(women):
        yield "bdims", order(women[i], main_features(pointed=False))
        yield "bdims, trousers", order(women[i], trouser_features())
        return
    k, rules = i - len(women), RuleSet.SURVEY
    features = main_features(pointed=False)
    yield "survey of 2012", order(ansur_women()[k], features, estimates=rules)
    legs = order(ansur_legs()[k], trouser_features(), estimates=rules)
    yield "survey of 2012, trousers", legs
    for name, more in (
        ("sheath dress", (Torso(), Vent())),
        ("dress with a straight skirt", (WaistSeam(), FittedDressSkirt(), Vent())),
    ):
        above = (f for f in closed_back(lines="darts") if f.kind not in _AT_WAIST)
        asked = order(ansur_women()[k], (*above, *more), estimates=rules)
        yield f"survey of 2012, {name}", asked


_AT_WAIST = ("waist seam", "peplum")


def judged(job: tuple[str, int]) -> list[Answer]:
    """The answers to all orders of one woman."""
    kind, i = job
    out = []
    for name, each in orders(i) if kind == "random" else surveyed(i):
        it = verdict(each)
        wrong = tuple(f"{name}, {kind} {i}: {u}" for u in unsound(each, it))
        out.append((name, it.refusals, wrong))
    return out


def main() -> None:
    """Ask all, print the figures."""
    real = len(bdims_women()) + len(ansur_women())
    jobs = [("real", i) for i in range(real)] + [("random", i) for i in range(WOMEN)]
    asked, passed, said = Counter[str](), Counter[str](), Counter[str]()
    wrong: list[str] = []
    with ProcessPoolExecutor() as pool:
        for answers in pool.map(judged, jobs, chunksize=8):
            for name, refusals, unsound_ in answers:
                asked[name] += 1
                passed[name] += not refusals
                said.update(_shape(r) for r in refusals[:1])
                wrong += unsound_
    print("| order | bodies | pass | refused |\n| --- | --- | --- | --- |")
    for name, n in asked.items():
        print(f"| {name} | {n} | {passed[name]} | {n - passed[name]} |")
    for sentence, n in said.most_common():
        print(f"{n:5d}  {sentence}")
    for line in wrong:
        print(f"unsound: {line}")
    sys.exit(1 if wrong else 0)


def _shape(sentence: str) -> str:
    """A sentence without its figures."""
    return re.sub(r"[-\d./⁄¹²³⁰⁴-₉½¼¾⅛⅜⅝⅞]+", "#", sentence)


if __name__ == "__main__":
    main()
