"""Trousers on the women of two public surveys: each drafts, or is refused with a
sentence that names a measure; at least 97 of 100 pass every check, and the crotch runs
on smooth over the inseam (T7). The whole of both is asked by `make survey`."""

import random

import pytest
from shapely.geometry import Polygon

from bodies import ansur_legs, bdims_women
from clothwright.body import Body, RuleSet
from clothwright.body.measures import measures
from clothwright.features import Feature
from clothwright.features.trousers.pleats import Pleats
from clothwright.features.trousers.trouser_pockets import Pockets, Shape
from clothwright.features.trousers.trouser_zip import SideZip
from clothwright.features.trousers.turn_ups import TurnUps
from clothwright.order import OrderError, draft
from clothwright.units import Unit
from orders import order, random_trousers, trouser_features
from verdict import unsound, verdict
from women import woman


def judge(
    bodies: tuple[Body, ...], rules: RuleSet, features: tuple[Feature, ...]
) -> None:
    passed = smooth = 0
    codes = set(measures()) | {m.name for m in measures().values()}
    for body in bodies:
        try:
            d = draft(order(body, features, estimates=rules))
        except OrderError as e:
            assert any(c in str(e) for c in codes), str(e)
            continue
        for sentence in d.failures():
            assert any(c in sentence for c in codes), sentence
        passed += not d.failed
        fork = next(a for a in d.report.angles if a.joint.code == "T7")
        smooth += abs(fork.off) < 1.0
        for piece in d.sheet.pieces.values():
            assert Polygon(piece.outline.flatten(0.02)).is_valid, piece.code
    assert passed >= 0.97 * len(bodies)
    assert smooth >= 0.97 * len(bodies)


@pytest.mark.parametrize("part", range(2))
def test_bdims(part: int) -> None:
    judge(bdims_women()[part::4], RuleSet.HANDBOOK, trouser_features())


@pytest.mark.parametrize("part", range(2))
def test_ansur(part: int) -> None:
    """With inside leg, thigh, ankle and foot as they were measured."""
    judge(ansur_legs()[part::10], RuleSet.SURVEY, trouser_features())


@pytest.mark.parametrize(
    "more",
    [
        (SideZip(),),
        (Pockets(shape=Shape.SEAM), TurnUps(depth=3.0)),
        (Pleats(), Pockets()),
    ],
    ids=lambda f: f[0].kind,
)
def test_variants(more: tuple[Feature, ...]) -> None:
    judge(bdims_women()[::13], RuleSet.HANDBOOK, trouser_features(*more))


@pytest.mark.parametrize("seed", range(40))
def test_a_random_woman_in_random_trousers(seed: int) -> None:
    """Passed, or refused with a sentence that names a measure or a number and says what
    to do; what passes is asked again from outside."""
    rng = random.Random(seed)
    features = random_trousers(rng)
    unit, rules = rng.choice(list(Unit)), rng.choice(list(RuleSet))
    made = order(woman(seed), features, unit=unit, estimates=rules)
    assert not list(unsound(made, verdict(made)))
