"""A feature says its own seams: what it states is what it tells, in whatever order."""

import re
from itertools import combinations

import pytest

from clothwright.features import Feature
from clothwright.features.chains import Chains
from clothwright.order import OrderError
from clothwright.order.draft import Workroom
from clothwright.paper import Sheet
from combinations import FEATURES, RAW, features_of, on_body

STATED = 40
"""Orders that are refused state no seams; so many of them at the least do."""


def before_seams(room: Workroom) -> Sheet:
    """The table as it lay when the seams were stated."""
    names = [s.ground.key[1] for s in room.staged if isinstance(s.ground.key, tuple)]
    return room.staged[names.index("the seams") - 1].sheet


@pytest.fixture(scope="module")
def stated() -> dict[str, list[tuple[Feature, set[str]]]]:
    """Features by their kind, as they were set in an order for each kind, with the
    codes of the seams that they stated there."""
    found: dict[str, list[tuple[Feature, set[str]]]] = {}
    for i in range(len(FEATURES)):
        asked = on_body(features_of((RAW, i))[1], i, i % 50)
        room = Workroom()
        try:
            made = room.draft(asked)
        except OrderError:
            continue
        if made.left is not None:  # its numbers are of one side
            continue
        t = Chains(before_seams(room))
        for f in asked.features:
            codes = {s.code for s in f.sewn(t, made.numbers) if s is not None}
            found.setdefault(f.kind, []).append((f, codes))
    return found


def test_a_feature_states_the_seams_that_it_tells(
    stated: dict[str, list[tuple[Feature, set[str]]]],
) -> None:
    codes = {kind: set().union(*(c for _, c in of)) for kind, of in stated.items()}
    assert len(codes) > STATED
    assert sum(map(bool, codes.values())) > STATED / 2
    for kind in FEATURES:
        for code in codes.get(kind.model_fields["kind"].default, ()):
            number = re.findall(r"^S\d+", code)[0]
            assert {code, number} & kind.seams.keys(), (kind.title, code)


def test_two_features_never_state_one_seam(
    stated: dict[str, list[tuple[Feature, set[str]]]],
) -> None:
    """But of features that an order has only one of, as they are set: two sleeves, two
    skirts."""
    for one, other in combinations(sorted(stated), 2):
        for a, codes in stated[one]:
            for b, more in stated[other]:
                if codes & more:
                    apart = a.provides() & b.forbids().keys()
                    apart |= b.provides() & a.forbids().keys()
                    assert apart, (a, b, codes & more)
