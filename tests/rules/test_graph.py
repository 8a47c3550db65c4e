"""The rule graph: lazy, traced, and plain about what is wrong."""

from dataclasses import replace

import pytest

from clothwright.rules import (
    CyclicRule,
    Given,
    Hand,
    House,
    Kind,
    Missing,
    Numbers,
    OutOfBounds,
    RuleError,
    RuleTable,
    UnknownNumber,
)

BOOK = RuleTable("a small book")
ASKED: list[str] = []


@BOOK.rule("d", "dart", source="book 1", formula="b/4", low=1.0, high=30.0)
def dart(b: float) -> float:
    ASKED.append("dart")
    return b / 4


@BOOK.rule("e", "edge", source="book 2")
def edge(dart: float, length: float) -> float:
    ASKED.append("edge")
    return dart + length


@BOOK.rule("g", "guess", source="book 3", sigma=1.5)
def guess(b: float) -> float:
    return b / 2


@BOOK.rule("o", "over nothing", source="book 4")
def over(b: float) -> float:
    return 1 / (b - b)


@BOOK.rule("h", "hem", source="book 5")
def hem(guess: float) -> float:
    return guess * 2


def given(**values: float) -> list[Given]:
    return [Given(k, k, k, Kind.BODY, v, Hand.TAKEN) for k, v in values.items()]


def test_a_number_is_computed_once_and_only_when_asked() -> None:
    ASKED.clear()
    n = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    assert ASKED == []
    assert n["edge"] == n.edge == 13.0
    assert ASKED == ["dart", "edge"]


def test_reads_are_those_asked_from_outside() -> None:
    n = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    assert n.edge == 13.0
    assert n.read == {"edge": 13.0}


def test_why_follows_to_the_measures() -> None:
    n = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    reason = n.why("edge")
    assert [r.key for r in reason.walk()] == ["edge", "dart", "b", "length"]
    assert reason.because[0].formula == "b/4"
    assert "guess" in n.behind(["hem"])
    assert n.hand("guess") is Hand.ESTIMATED


def test_missing_names_all_that_it_is_for() -> None:
    n = Numbers(BOOK.rules, given(length=3.0))
    with pytest.raises(Missing, match=r"b is missing; it is needed for dart"):
        _ = n.edge
    assert n.missing(["edge", "hem"])["b"] == ("dart", "guess")


def test_rings_unknowns_and_nothing() -> None:
    book = RuleTable("ring")

    @book.rule("x", "one", source="")
    def x(y: float) -> float:
        return y

    @book.rule("y", "other", source="")
    def y(x: float) -> float:
        return x

    with pytest.raises(CyclicRule, match="each need the other"):
        _ = Numbers(book.rules).x
    with pytest.raises(UnknownNumber, match="zzz"):
        _ = Numbers(book.rules)["zzz"]
    with pytest.raises(RuleError, match="divides by nothing"):
        _ = Numbers(BOOK.rules, given(b=2.0)).over


def test_a_house_rule_replaces_and_is_bounded() -> None:
    rule = BOOK.rules["dart"]
    from dataclasses import replace

    mine = House(replace(rule, needs=(), compute=lambda: 12.0), "12 cm", "h.toml, d")
    n = Numbers(BOOK.rules, given(b=40.0, length=3.0), {"dart": mine})
    assert n.edge == 15.0
    assert n.hand("dart") is Hand.HOUSE
    wild = House(replace(rule, needs=(), compute=lambda: 99.0), "99", "h.toml, d")
    with pytest.raises(OutOfBounds, match=r"h\.toml, d: dart \(d\) = 99 comes to"):
        _ = Numbers(BOOK.rules, given(b=40.0), {"dart": wild}).dart


def test_numbers_of_the_last_draft_stand_where_nothing_behind_them_changed() -> None:
    first = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    assert (first["edge"], first["hem"]) == (13.0, 40.0)
    ASKED.clear()
    second = Numbers(BOOK.rules, given(b=40.0, length=5.0), before=first)
    assert second["edge"] == 15.0 and second["hem"] == 40.0
    assert ASKED == ["edge"]  # the dart rests on b alone
    third = Numbers(BOOK.rules, given(b=44.0, length=5.0), before=second)
    assert (third["edge"], third["hem"]) == (16.0, 44.0)


def test_a_rule_replaced_given_or_taken_back_is_never_the_last_draft_s() -> None:
    plain = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    assert plain["edge"] == 13.0
    chosen = Numbers(BOOK.rules, given(b=40.0, length=3.0, dart=7.0), before=plain)
    assert chosen["edge"] == 10.0
    back = Numbers(BOOK.rules, given(b=40.0, length=3.0), before=chosen)
    assert back["edge"] == 13.0
    own = RuleTable("another book")
    own.rule("d", "dart", source="book 9", key="dart")(_half)
    other = Numbers({**BOOK.rules, **own.rules}, given(b=40.0, length=3.0), before=back)
    assert other["edge"] == 23.0


def test_a_house_rule_replaced_is_never_the_last_draft_s() -> None:
    def housed(value: float, before: Numbers | None) -> Numbers:
        rule = RuleTable("hers")
        rule.rule("d", "dart", source="", key="dart")(lambda: value)
        house = {"dart": House(rule.rules["dart"], f"{value}")}
        return Numbers(BOOK.rules, given(b=40.0, length=3.0), house, before)

    first = housed(2.0, None)
    assert first["edge"] == 5.0
    assert housed(4.0, first)["edge"] == 7.0


def _half(b: float) -> float:
    return b / 2


def test_numbers_agree_with_what_was_seen_or_not() -> None:
    n = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    assert n.edge == 13.0
    seen = n.seen()
    assert seen.values == {"edge": 13.0}
    assert Numbers(BOOK.rules, given(b=36.0, length=4.0)).agree_with(seen)
    assert not Numbers(BOOK.rules, given(b=36.0, length=3.0)).agree_with(seen)
    assert not Numbers(BOOK.rules, given(length=3.0)).agree_with(seen)


def test_what_is_there_and_whose_it_is_is_seen_too() -> None:
    without = Numbers(BOOK.rules, given(length=3.0))
    assert "b" not in without
    told_without = without.seen()
    with_it = Numbers(BOOK.rules, given(b=40.0, length=3.0))
    assert not with_it.agree_with(told_without)
    assert Numbers(BOOK.rules, given(length=4.0)).agree_with(told_without)
    assert "b" in with_it
    assert not without.agree_with(with_it.seen())
    with_it.forget()
    assert without.agree_with(with_it.seen())


def test_a_number_that_another_hand_gives_is_seen() -> None:
    (taken,) = given(b=40.0)
    n = Numbers(BOOK.rules, [taken])
    n.hand("b")
    assert Numbers(BOOK.rules, [taken]).agree_with(n.seen())
    by_default = replace(taken, hand=Hand.DEFAULT)
    assert not Numbers(BOOK.rules, [by_default]).agree_with(n.seen())
