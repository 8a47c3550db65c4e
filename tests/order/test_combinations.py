"""Random orders of all that is registered, and every feature alone.

Each order passes every check, is finished and has its making order, or is refused in
words that name a measure or a number and say what to do. `make combos` asks 300 orders
on 50 women; this is its first part.
"""

import re
from random import Random

import pytest

from bodies import THEA, ansur_whole
from clothwright.body import Body, RuleSet
from clothwright.features import Feature
from clothwright.findings import Severity
from clothwright.making import making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, Order, OrderError, draft, pattern
from clothwright.order.together import disagreements
from clothwright.units import Unit
from combinations import (
    FEATURES,
    alone,
    combination,
    name,
    others,
    together,
    told,
    usual_of,
)
from making.test_order import complete
from making.test_taped import buys_and_sews_its_tape
from orders import order
from verdict import Verdict, unexplained, unsound, verdict


def judged(
    asked: Order, *, whole: bool = True, outside: bool = True
) -> tuple[Verdict, list[str]]:
    """What an order came to, and what is wrong with that; with `whole` the pattern, its
    cutting and its making order too, with `outside` what shapely says of a pass."""
    it = verdict(asked)
    wrong = [*unexplained(it)]
    if outside or it.refusals:
        wrong += unsound(asked, it)
    if whole and it.made is not None and not it.refusals:
        wrong += finished(it.made)
    return it, wrong


def finished(made: Draft) -> list[str]:
    """Faults of the finished pattern. Raises when its making order is incomplete."""
    making = making_order(made)
    complete(making)
    cutting_sheet(making)
    found = pattern(made, words=False).findings
    return [str(f) for f in found if f.severity is Severity.REFUSE]


@pytest.mark.parametrize("kind", FEATURES, ids=name)
def test_every_feature_alone(kind: type[Feature]) -> None:
    """The least order with it is drafted, on a full body too, and says what it makes;
    every piece bears words, or they are told beside it."""
    features = alone(kind)
    assert kind in map(type, features)
    for body, unit in others():
        it, wrong = judged(order(body, features, unit=unit))
        assert not wrong, told(features)
        assert it.made is not None, told(features)
        assert not it.refusals, told(features)
        says_what_it_makes(it.made)
        buys_and_sews_its_tape(it.made)
        for piece in pattern(it.made).drawn.pieces:
            assert piece.texts or piece.unsaid, piece.code


def says_what_it_makes(made: Draft) -> None:
    """Every piece has a place among the others, and every seam's code a meaning, which
    `why` tells of a seam that a garment has not. A lining is as its shell."""
    for code in made.sheet.pieces:
        assert made.order.said.place(code), code
    known = {code for f in made.order.features for code in f.seams}
    for seam in made.sheet.seams:
        shells = re.match(r"S\d+", seam.code)
        assert not shells or shells[0] in known, seam.code


@pytest.mark.parametrize("seed", range(40))
def test_random_combinations(seed: int) -> None:
    kind = FEATURES[seed * 7 % len(FEATURES)]
    features = combination(Random(seed), kind)
    body: Body
    for k, body in enumerate((ansur_whole()[seed * 20], THEA)):
        unit, rules = list(Unit)[(seed + k) % 2], list(RuleSet)[seed % 2]
        asked = order(body, features, unit=unit, estimates=rules)
        assert not judged(asked, whole=not k)[1], told(features)


@pytest.mark.parametrize("seed", range(60))
def test_random_combinations_that_a_body_may_not_get(seed: int) -> None:
    """Features that go together by their words, whatever a standard body says."""
    features = together(Random(seed))
    asked = order(ansur_whole()[seed * 15], features, estimates=RuleSet.SURVEY)
    assert not judged(asked)[1], told(features)


@pytest.mark.parametrize("kind", FEATURES, ids=name)
def test_a_feature_by_itself_is_drafted_or_told_what_it_needs(
    kind: type[Feature],
) -> None:
    """No order of one or two features ends in a traceback."""
    for block in ("straight skirt", "trousers", "bodice block"):
        under = [f for f in FEATURES if name(f) == block and f is not kind]
        features = [usual_of(f) for f in (*under, kind)]
        try:
            draft(order(THEA, tuple(features)))
        except OrderError as e:
            told_ = [d.told("order") for d in disagreements(features)]
            assert told_ == [] or list(e.sentences) == told_
