"""The numbers of an order: measures, choices, defaults, rules and house rules."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache

from clothwright.body import estimates
from clothwright.curves import lately
from clothwright.features import Feature
from clothwright.features.bodice.shoulder import NO_TIGHTENING
from clothwright.features.necks.neck_contour import NO_CONTOUR
from clothwright.features.necks.over_head import OPEN_NECK
from clothwright.order.advice import in_settings
from clothwright.order.file import Order, OrderError
from clothwright.rules import (
    Given,
    Hand,
    House,
    Kind,
    Numbers,
    Rule,
    RuleError,
    unfitted,
)
from clothwright.rules.house import HouseError, read_house
from clothwright.units import Unit, retold


def rules_of(order: Order) -> dict[str, Rule]:
    """Every rule of an order by key; a later page replaces a rule of an earlier."""
    rules: dict[str, Rule] = dict(estimates(order.estimates).rules)
    rules.update(NO_TIGHTENING.rules)
    rules.update(NO_CONTOUR.rules)
    rules.update(OPEN_NECK.rules)
    for f in sorted(order.features, key=lambda f: f.page):
        for table in f.tables():
            rules.update(table.rules)
    return rules


def numbers_of(order: Order, before: Numbers | None = None) -> Numbers:
    """The order's numbers, house rules in place; `before` are those of the last draft.
    Raises OrderError."""
    rules = rules_of(order)
    given = _given(order)
    house: dict[str, House] = {}
    if order.house_text:
        try:
            house = read_house(
                order.house_text,
                order.house_place,
                _replaceable(rules, given, order.features),
                {g.key: g.kind for g in given},
            )
        except HouseError as e:
            raise OrderError(*str(e).splitlines()) from e
    kept = [g for g in given if not (g.key in house and g.hand is Hand.DEFAULT)]
    rules, house, kept = _rewritten(order, rules, house, kept)
    numbers = Numbers(rules, kept, house, before)
    for key in house:
        try:
            numbers[key]
        except RuleError as e:
            said = str(e)  # some name the file themselves, with the rule in it
            if not said.startswith(order.house_place):
                said = f"{order.house_place}: {said}"
            said = in_settings(retold(said, order.unit), order.features)
            raise OrderError(said) from e
    return numbers


def _rewritten(
    order: Order, rules: dict[str, Rule], house: dict[str, House], given: list[Given]
) -> tuple[dict[str, Rule], dict[str, House], list[Given]]:
    """The rules as a feature rewrites them that knows them all. A house rule, a choice
    or a default of a number that is rewritten stays with what that was before."""
    rewriting = [f for f in order.features if f.rewrites()]
    if not rewriting:
        return rules, house, given
    keys = frozenset(g.key for g in given)
    taken = {g.key: _as_taken(g) for g in given if g.key not in rules}
    ruled = {**taken, **rules, **{k: h.rule for k, h in house.items() if k not in keys}}
    for f in rewriting:
        new = f.rewritten(ruled, keys)
        if not new:
            continue
        rules = {**rules, **new}
        for key, h in list(house.items()):
            if unfitted(key) in new:
                house[unfitted(key)] = replace(h, rule=new[unfitted(key)])
                if key in new:
                    del house[key]
        given = [replace(g, key=unfitted(g.key)) if g.key in new else g for g in given]
        ruled = {**taken, **rules}
        ruled |= {k: h.rule for k, h in house.items() if k not in keys}
    return rules, house, given


def _cloth(order: Order) -> Iterable[Given]:
    """The width of the cloth, where the order says it."""
    usable = order.shell.usable
    if usable is not None:
        yield Given(
            "Cw",
            "Cw",
            "usable width of the cloth",
            Kind.LENGTH,
            usable,
            Hand.CHOICE,
            "the order",
        )


def _given(order: Order) -> list[Given]:
    """Measures, choices and defaults, each number once: a choice outranks a default,
    and of two defaults the later page's holds."""
    found = {g.key: g for g in order.body.given()}
    for f in sorted(order.features, key=lambda f: f.page):
        for g in _given_by(f, order.unit):
            known = found.get(g.key)
            if known is None or g.hand is not Hand.DEFAULT or known.hand is g.hand:
                found[g.key] = g
    return [*found.values(), *_cloth(order)]


@lately
def _given_by(feature: Feature, unit: Unit) -> tuple[Given, ...]:
    """The numbers of a feature: all but one feature stay as they are when a number is
    changed."""
    return tuple(feature.given(unit))


def _replaceable(
    rules: Mapping[str, Rule], given: Iterable[Given], features: Iterable[Feature]
) -> dict[str, Rule]:
    """What a house file may replace: rules, and the defaults of features; each within
    the bounds that an order has to keep to."""
    out = dict(rules)
    for g in given:
        if g.hand is Hand.DEFAULT and g.key not in out:
            out[g.key] = _as_taken(g)
    for f in features:
        for number in f.numbers().values():
            if number.key in out:
                rule = out[number.key]
                low = rule.low if number.low is None else number.low
                high = rule.high if number.high is None else number.high
                out[number.key] = replace(rule, low=low, high=high)
    return out


@lru_cache(maxsize=1024)
def _as_taken(g: Given) -> Rule:
    """The rule that a number is what it is."""
    return Rule(g.key, g.symbol, g.name, g.kind, g.source, (), lambda: g.value)
