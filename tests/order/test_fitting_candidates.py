"""The fitting of the demo's first order, and candidates of what is seen.

Demo scenario 8, 13 March 2027: te 1/4 in, ta 1/4 in, the peplum 6 to 6 1/2 in; its
figures are the notes' own.
"""

import math
import tomllib
from functools import cache
from importlib import resources
from pathlib import Path

import pytest
import tomli_w

from bodies import P92
from clothwright.features import KINDS, Feature
from clothwright.features.fitting import Fitting
from clothwright.features.fittings import BY_WORD
from clothwright.features.fittings.seen import all_seen, seen_by
from clothwright.order import Draft, Order, OrderError, Workroom, draft
from clothwright.order.file import order_from_table, order_from_text
from clothwright.order.fittings import (
    amounts,
    candidates,
    changes,
    compared,
    has_place_for,
    in_table,
    taken_over,
    told_again,
)
from clothwright.units import Unit
from orders import closed_back, order, sleeved_features

INCH, MM = 2.54, 0.1
DEMO = resources.files("clothwright.demo")
SEEN = (
    ("slanted edge of the open back stands off", None),
    ("gape at front armhole", None),
    ("peplum a little short", None),
)
"""The three rows of demo scenario 8 that change something, at what is tried first."""


def _text() -> str:
    return DEMO.joinpath("peplum-top.toml").read_text("utf8")


def _folder() -> Path:
    return Path(str(DEMO))


@cache
def before() -> Draft:
    return draft(order_from_text(_text(), "order 1", _folder()))


@cache
def after() -> Draft:
    """The order after the fitting, taken candidate by candidate."""
    table = tomllib.loads(_text())
    for words, amount in SEEN:
        now = order_from_table(table, "order 1", _folder())
        table = in_table(table, candidates(now, seen_by(words), amount)[0])
    return draft(order_from_text(tomli_w.dumps(table), "order 1", _folder()))


def test_the_demo_s_fitting_has_its_figures() -> None:
    n, was = after().numbers, before().numbers
    assert not after().failed
    assert n["te"] == pytest.approx(INCH / 4)
    assert n["ta"] == pytest.approx(INCH / 4)
    assert n["L"] == pytest.approx(6.5 * INCH)
    assert n["hem"] == pytest.approx((27.875 + 6.5 * math.pi) * INCH, abs=0.005)
    assert n["hem"] == pytest.approx(48.2954 * INCH, abs=0.005)
    assert n["r"] == was["r"]
    assert n["phi_a"] == pytest.approx(2.5, abs=0.05)
    assert n["kappa"] - was["kappa"] == pytest.approx(n["phi_a"], abs=1e-9)
    shorter = before().sheet.length("FS", "armhole") - after().sheet.length(
        "FS", "armhole"
    )
    assert shorter == pytest.approx(0.5, abs=0.2 * MM)
    hem = sum(after().sheet.length(c, "hem") for c in ("PF", "PB"))
    assert 2 * hem == pytest.approx(48.2954 * INCH, abs=0.5 * MM)


def test_the_demo_s_fitting_changes_what_must_follow_and_no_more() -> None:
    what = changes(before().sheet, after().sheet)
    assert set(what.moved) == {"FS", "BC", "UP", "FF", "BF", "PF", "PB"}
    edges = {e.edge for e in what.edges}
    assert {"FS.armhole", "BC.slant", "UP.outer", "PF.hem", "PB.hem"} <= edges
    assert not {e for e in edges if e.startswith(("FC.", "BS."))}
    assert amounts(before(), after()) == [
        "tightening of the front armhole (ta): from 0 in to ¼ in",
        "tightening of the slanted edge (te): from 0 in to ¼ in",
        "length of the peplum (L): from 6 in to 6½ in",
    ]
    told = compared(before(), after())
    assert told["seams meet"] is True
    armhole = told["edges"]["FS.armhole"]
    assert armhole["before"] - armhole["after"] == pytest.approx(0.5, abs=0.2 * MM)


def test_every_row_of_the_table_can_be_read() -> None:
    words = [s.words for s in all_seen()]
    assert len(set(words)) == len(words)
    for s in all_seen():
        for c in s.cure:
            if c.do:
                assert c.do in BY_WORD, c.do
                low, high = BY_WORD[c.do].usual
            else:
                assert c.field in KINDS[c.feature].numbers(), c.field
                assert c.follows
                low, high = c.usual
            assert low <= c.start <= high, s.words
            assert c.first(Unit.IN) == pytest.approx(c.start, abs=0.35), s.words
            assert c.way in (1, -1)
    cured = {c.do for s in all_seen() for c in s.cure if c.do}
    assert cured == set(BY_WORD), "every alteration answers something that is seen"


@pytest.mark.parametrize("features", [closed_back(), sleeved_features()])
def test_what_is_seen_has_a_cure_that_holds(features: tuple[Feature, ...]) -> None:
    made = order(P92, features)
    room = Workroom()
    for s in all_seen():
        found = candidates(made, s, room=room)
        for c in found:
            assert c.refused or c.changes.moved
            if not c.refused:
                again = draft(c.order)
                assert not again.failed
                assert changes(draft(made).sheet, again.sheet) == c.changes
        if any(has_place_for(made, c) for c in s.cure):
            assert found or s.place == "armhole", s.words


@pytest.mark.parametrize(
    ("demo", "place"),
    [
        ("sleeved-top", "sleeve"),
        ("bishop-blouse", "sleeve"),
        ("straight-skirt", "skirt"),
        ("trousers", "trousers"),
    ],
)
def test_what_is_seen_on_a_sleeve_a_skirt_and_trousers_has_a_cure(
    demo: str, place: str
) -> None:
    made = order_from_text(
        DEMO.joinpath(f"{demo}.toml").read_text("utf8"), demo, _folder()
    )
    for s in all_seen():
        found = candidates(made, s)
        if s.place == place:
            assert any(not c.refused for c in found), s.words
        else:
            assert all(has_place_for(made, c.cure) for c in found), s.words


def test_words_are_found_and_unknown_ones_are_told() -> None:
    assert seen_by("  Gape at FRONT neck ").words == "gape at front neck"
    assert seen_by("hem up at centre").place == "back"
    with pytest.raises(ValueError, match="do you mean"):
        seen_by("gape")
    with pytest.raises(ValueError, match="lists all that can be seen"):
        seen_by("zzz")


def test_more_of_the_same_adds_up_until_one_slash_is_full() -> None:
    made = order(P92, closed_back())
    seen = seen_by("gape at front neck")
    for total in (1.0, 2.0):
        (c,) = [c for c in candidates(made, seen, 1.0) if c.cure.do]
        assert not c.refused
        made = c.order
        fitting = made.feature("fitting")
        assert isinstance(fitting, Fitting)
        assert [a.by for a in fitting.alteration] == [pytest.approx(total)]
    (c,) = [c for c in candidates(made, seen, 1.0) if c.cure.do]
    assert "at most 2.5 cm" in c.refused[0]
    assert "second place" in c.refused[0]


def test_what_was_decided_is_taken_over() -> None:
    made = order(P92, closed_back())
    c = taken_over(made, "fitting", "sloping shoulders", 0.8)
    assert c is not None and not c.refused
    assert taken_over(c.order, "fitting", "sloping shoulders", 0.8) is None
    c = taken_over(made, "sleeveless armhole", "narrowed", -0.5)
    assert c is not None
    assert c.change == pytest.approx(-0.5)
    assert c.draft is not None
    assert c.draft.numbers["ti"] == pytest.approx(draft(made).numbers["ti"] - 0.5)
    assert taken_over(made, "low open back", "tightened", 0.6) is None
    assert taken_over(made, "no such", "thing", 0.6) is None
    assert told_again("sleeveless armhole", "tightened", 0.635, Unit.IN) == (
        "tightening of the front armhole (ta) ¼ in more"
    )
    assert told_again("fitting", "full bust", 1.2, Unit.CM) == (
        "front opened for a full bust by 1.2 cm"
    )


def _demo_order(name: str) -> Order:
    text = DEMO.joinpath(f"{name}.toml").read_text("utf8")
    return order_from_text(text, name, _folder())


def test_what_was_decided_is_taken_over_where_the_garment_has_it() -> None:
    """A skirt's seat on her next skirt, not on trousers or a top; a sleeve's on a
    blouse."""
    skirt, trousers = _demo_order("straight-skirt"), _demo_order("trousers")
    top, blouse = _demo_order("peplum-top"), _demo_order("bishop-blouse")
    for on, what in (
        (skirt, "full seat of skirt"),
        (trousers, "full seat of trousers"),
        (blouse, "turn sleeve forward"),
    ):
        c = taken_over(on, "fitting", what, 0.8)
        assert c is not None and not c.refused, what
        assert c.changes.moved
        for other in (skirt, trousers, top, blouse):
            if other is on:
                continue
            assert taken_over(other, "fitting", what, 0.8) is None


def test_an_alteration_stands_after_the_block_in_the_file() -> None:
    for name, what in (
        ("straight-skirt", "skirt hem up at the back"),
        ("trousers", "trousers tight round the thighs"),
    ):
        table = tomllib.loads(DEMO.joinpath(f"{name}.toml").read_text("utf8"))
        now = order_from_table(table, name, _folder())
        written = in_table(table, candidates(now, seen_by(what))[0])
        kinds = [r["kind"] for r in written["feature"]]
        assert kinds[1] == "fitting"
        again = order_from_text(tomli_w.dumps(written), name, _folder())
        assert not draft(again).failed


def test_more_than_one_place_takes_is_shared_between_two() -> None:
    made = _demo_order("straight-skirt")
    c = candidates(made, seen_by("skirt hem up at the back"), 3.0)[0]
    assert not c.refused
    assert c.said.endswith("by 3.0 cm, half of it 6 cm below the hip")
    assert (c.most, c.in_two) == (2.5, 5.0)
    assert c.draft is not None
    (told,) = amounts(draft(made), c.draft)
    assert told == "skirt opened over the seat by 3.0 cm, in two places"
    c = candidates(made, seen_by("skirt hem up at the back"), 6.0)[0]
    assert "at most 2.5 cm in one place and 5 cm in two" in c.refused[0]


def test_bad_alterations_are_told() -> None:
    for row, why in (
        ({"do": "glue", "by": 1}, "glue"),
        ({"do": "full bust"}, "by is missing"),
        ({"do": "full bust", "by": "9 cm"}, "at most 2.5 cm"),
        ({"do": "full bust", "by": "-1 cm"}, "more than nothing"),
        ({"do": "full bust", "by": 1, "x": 2}, "x is not known"),
    ):
        table = tomllib.loads(_text())
        table["feature"].append({"kind": "fitting", "alteration": [row]})
        with pytest.raises(OrderError, match=why):
            order_from_table(table, "order 1", _folder())
