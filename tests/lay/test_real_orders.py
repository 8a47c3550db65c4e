"""Real orders at random, on random cloths: every lay passes the checker."""

import random
from collections.abc import Iterator
from dataclasses import dataclass, replace

import pytest
from shapely import Polygon

from bodies import BRIDA, P80, P92, P116, THEA, YSOLDE, bdims_women
from clothwright.features import Feature
from clothwright.features.bodice.back_waist_dart import BackWaistDart
from clothwright.features.bodice.side_dart import SideDart
from clothwright.features.necks.neck_shapes import FrontShape
from clothwright.features.necks.necklines import Neckline
from clothwright.lay import Budget, LayError, check_lay, cloths_of, lay
from clothwright.lay.match import links_of
from clothwright.lay.patterns import TRUE, matched_seams, shapes_of, unknotted
from clothwright.lay.pieces import copies, moved
from clothwright.order import (
    Cloth,
    Flaw,
    Fold,
    Order,
    OrderError,
    Pattern,
    draft,
    pattern,
)
from clothwright.order.cloths import CLOTHS
from combinations import combination
from orders import closed_back, order, sleeved_features

BODIES = (P80, P92, P116, BRIDA, YSOLDE, THEA)


def _in_place(
    base: tuple[Feature, ...], out: str, *new: Feature
) -> tuple[Feature, ...]:
    """An order's features, those of these kinds left out and others added."""
    gone = out.split(", ")
    return (*(f for f in base if f.kind not in gone), *new)


def cloth(rng: random.Random) -> Cloth:
    """A random cloth: width, selvedge, nap, shrinkage, stripes, fold, flaws."""
    fold = rng.choice((None, None, None, *Fold))
    width = rng.uniform(110.0, 160.0)
    flaws = tuple(
        Flaw(
            along=rng.uniform(5, 120),
            across=rng.uniform(2, width - 10),
            length=rng.uniform(1, 6),
            width=rng.uniform(1, 6),
        )
        for _ in range(0 if fold is Fold.ACROSS else rng.choice((0, 0, 1, 2)))
    )
    striped = rng.random() < 0.4
    return Cloth(
        width=width,
        selvedge=rng.choice((0.0, 0.6, 1.0, 1.5)),
        shrink_warp=rng.choice((0.0, 3.0, 8.0)),
        shrink_weft=rng.choice((0.0, 2.0)),
        steamed=rng.random() < 0.3,
        nap=fold is not Fold.ACROSS and rng.random() < 0.4,
        repeat_warp=rng.uniform(1.0, 12.0) if striped else None,
        repeat_weft=rng.uniform(1.0, 12.0) if striped and rng.random() < 0.4 else None,
        fold=fold,
        flaws=flaws,
    )


@dataclass(frozen=True)
class Told:
    """What became of one cloth of a random order."""

    what: str
    """"laid", "too wide", or what the checker has against it."""

    ways: tuple[str, ...]
    """What was asked of it: "nap", "stripes", "flaws", "tilt", the fold."""


def random_order(rng: random.Random) -> tuple[Order, Pattern]:
    """An order that passes its checks, and its pattern."""
    while True:
        body = rng.choice((*BODIES, *bdims_women()))
        asked = order(body, combination(rng))
        asked = replace(asked, cloths={k: cloth(rng) for k in CLOTHS})
        try:
            made = draft(asked)
        except OrderError:
            continue
        finished = pattern(made)
        if not finished.failed:
            return asked, finished


def laid(seed: int, layouts: int = 4) -> Iterator[Told]:
    """Every cloth of one random order laid, and held against the true outlines once
    more from outside."""
    rng = random.Random(seed)
    asked, made = random_order(rng)
    gap, tilt = rng.choice((0.0, 0.3, 0.7)), rng.choice((0.0, 0.0, 1.0))
    for key in cloths_of(made):
        on = asked.cloths[key]
        ways = _ways(on, tilt)
        try:
            it = lay(
                made, key, gap=gap, tilt=tilt, budget=Budget(layouts=layouts), seed=seed
            )
        except LayError as e:
            wide = "wide across the grain" in str(e) or "single layer" in str(e)
            yield Told("too wide" if wide else str(e), ways)
            continue
        spread = it.spread
        fine = shapes_of(made, key, growth=spread.growth, flat=TRUE)
        links = links_of(
            copies(it.shapes, spread, gap=gap), matched_seams(made, spread), spread
        )
        faults = check_lay(fine, spread, it.placed, it.length, gap=gap, meet=links)
        yield Told("; ".join(map(str, faults)) or "laid", (*ways, spread.fold.value))


def _ways(on: Cloth, tilt: float) -> tuple[str, ...]:
    told = {
        "nap": on.nap,
        "stripes": on.repeat_warp is not None,
        "flaws": bool(on.flaws),
        "tilt": tilt > 0,
        "shrinks": on.growth != (1.0, 1.0),
    }
    return tuple(word for word, so in told.items() if so)


@pytest.mark.parametrize("seed", [0, 40, 80, 160])
def test_random_orders_on_random_cloths(seed: int) -> None:
    """What cannot be laid is too wide for the cloth, and that is said."""
    found = [told.what for told in laid(seed, layouts=2)]
    assert found
    assert set(found) <= {"laid", "too wide"}


def test_a_keyhole_lies_on_the_fold() -> None:
    """The allowance inside its slit ends at the fold: there is no cloth beyond it."""
    neck = Neckline(shape=FrontShape.KEYHOLE)
    asked = order(THEA, _in_place(closed_back(), "neckline", neck))
    told = {k: Cloth(width=150.0, fold=Fold.LENGTHWISE) for k in CLOTHS}
    made = pattern(draft(replace(asked, cloths=told)))
    for key in cloths_of(made):
        on_fold = [s for s in shapes_of(made, key) if s.on_fold]
        assert on_fold
        assert all(min(y for _, y in s.outline) > -0.01 for s in on_fold)
        assert lay(made, key, budget=Budget(layouts=2)).spread.folds


def test_a_knot_finer_than_a_blade_is_left_out() -> None:
    """A hair's knot goes; an outline that truly crosses itself stays, to be refused."""
    knot = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (5.0, 10.0), (5.01, 10.01)]
    hair = [*knot, (5.01, 9.99), (0.0, 10.0)]
    assert not Polygon(hair).is_valid
    mended = Polygon(unknotted(hair))
    assert mended.is_valid
    assert mended.area == pytest.approx(100.0, abs=0.1)
    bow = [(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)]
    assert unknotted(bow) == bow


def test_more_layouts_never_make_a_longer_lay_of_an_order() -> None:
    """Whichever way the cloth is folded: that does not hang on how long is looked."""
    asked = order(THEA, closed_back(lines="darts"))
    made = pattern(draft(replace(asked, cloths={"shell": Cloth(width=140.0)})))
    found = [lay(made, budget=Budget(layouts=n)) for n in (1, 3, 9, 20)]
    lengths = [it.length * it.spread.lengths for it in found]
    assert lengths == sorted(lengths, reverse=True)
    assert len({it.spread.fold for it in found}) == 1


def test_a_sleeve_meets_itself_and_not_the_other() -> None:
    """Its seam joins its own two edges, which are level at the hem; the sides of a
    whole piece are sewn to other pieces, not to each other."""
    asked = order(THEA, sleeved_features(SideDart(), BackWaistDart()))
    gone = "front armhole princess, back armhole princess"
    told = Cloth(width=150.0, repeat_warp=4.0, fold=Fold.SINGLE)
    asked = replace(asked, features=_in_place(asked.features, gone))
    made = pattern(draft(replace(asked, cloths={"shell": told})))
    it = lay(made, budget=Budget(layouts=2))
    level = [
        abs(x - u)
        for c in it.solved.copies
        if c.shape.code == "SL"
        for code, x, _ in c.shape.marks
        for other, u, _ in c.shape.marks
        if code == other == "S25"
    ]
    assert level
    assert ("under the arm" in it.loose_told) == (max(level) > 0.1)
    assert "left and right front" not in it.loose_told


def test_seams_at_which_stripes_miss_are_told() -> None:
    """A garment closed in the round closes rings; measured from outside, at the net
    points of its seams."""
    asked = order(THEA, closed_back(lines="darts"))
    told = Cloth(width=150.0, repeat_warp=4.0, fold=Fold.LENGTHWISE)
    made = pattern(draft(replace(asked, cloths={"shell": told})))
    it = lay(made, budget=Budget(layouts=3))
    at = {p.code: i for i, p in enumerate(it.placed)}
    assert len(at) == len(it.placed)
    points: dict[str, list[tuple[int, float, float]]] = {}
    for c, p in zip(it.solved.copies, it.placed, strict=True):
        for code, x, y in c.shape.marks:
            points.setdefault(code, []).append((at[p.code], *moved([(x, y)], p)[0]))
    missed = {
        it.seams[code]
        for code, met in points.items()
        if code in it.seams
        and len(met) == 2
        and abs((met[0][1] - met[1][1] + 2.0) % 4.0 - 2.0) > 0.1
    }
    assert missed
    assert it.loose_told.startswith("The stripes do not meet at: ")
    assert all(name in it.loose_told for name in missed)
    plain = {"shell": Cloth(width=150.0)}
    made = pattern(draft(replace(asked, cloths=plain)))
    assert lay(made, budget=Budget(layouts=1)).loose_told == ""
