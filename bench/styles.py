"""Each sleeve, dresses and trousers on all 993 women of the survey of 2012.

Prints the second table of docs/bodies.md: how many orders pass every check, and on how
many the seams meet that are asked for: cap on armhole, skirt on waist, crotch over the
inseam. Five minutes of one core.
"""

import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent / "tests"))

from bodies import ansur_legs, ansur_women
from clothwright.body import RuleSet
from clothwright.features.skirts.dress_skirt import Cut, DressSkirt
from clothwright.order import Draft, Order, OrderError, draft
from order.test_real_bodies import SLEEVES
from orders import closed_features, order, sleeved_features, swapped, trouser_features

SMOOTH = 1.0
"""Degrees by which the crotch may bend over the inseam."""


def orders(k: int) -> Iterator[tuple[str, Order]]:
    """All orders of one woman, each with its name."""
    woman, rules = ansur_women()[k], RuleSet.SURVEY
    yield "set-in sleeve", order(woman, sleeved_features(), estimates=rules)
    for style, features in SLEEVES.items():
        made = order(woman, sleeved_features(*features), estimates=rules)
        yield f"sleeve: {style}", made
    for cut in Cut:
        skirt = DressSkirt(cut=cut)
        dress = swapped(closed_features(), skirt, place_of="peplum")
        yield f"dress, skirt {cut.value}", order(woman, dress, estimates=rules)
        sleeved = swapped(sleeved_features(), skirt, place_of="peplum")
        made = order(woman, sleeved, estimates=rules)
        yield f"sleeved dress, skirt {cut.value}", made
    legs = order(ansur_legs()[k], trouser_features(), estimates=rules)
    yield "trousers", legs


def meets(name: str, made: Draft) -> bool:
    """True when the seams meet that this order is asked for, within their ease."""
    if name == "trousers":
        fork = next(a for a in made.report.angles if a.joint.code == "T7")
        return abs(fork.off) < SMOOTH
    edge = "cap" if "sleeve:" in name or name == "set-in sleeve" else "waist"
    walks = [
        w
        for w in made.report.walks
        if any(r.edge.startswith(edge) for r in (*w.seam.left, *w.seam.right))
    ]
    assert walks, name
    return all(w.severity is None for w in walks)


def asked(k: int) -> list[tuple[str, bool, bool, str]]:
    """Of each order: its name, whether it passes, whether its seams meet, else why."""
    out = []
    for name, each in orders(k):
        try:
            made = draft(each)
        except OrderError as e:
            out.append((name, False, False, str(e)))
            continue
        why = "; ".join(made.failures())
        out.append((name, not made.failed, meets(name, made), why))
    return out


def main() -> None:
    """Ask all, print the figures."""
    women = range(0, len(ansur_women()), int(sys.argv[1]) if sys.argv[1:] else 1)
    passed, met, said = Counter[str](), Counter[str](), Counter[str]()
    with ProcessPoolExecutor() as pool:
        for answers in pool.map(asked, women, chunksize=8):
            for name, ok, meeting, why in answers:
                passed[name] += ok
                met[name] += meeting
                said[f"{name}: {why}"] += bool(why)
    print("| order | bodies | pass | seams meet |\n| --- | --- | --- | --- |")
    for name in passed:
        print(f"| {name} | {len(women)} | {passed[name]} | {met[name]} |")
    for why, n in said.most_common(12):
        print(f"{n:5d}  {why}")


if __name__ == "__main__":
    main()
