"""How alterations change the numbers of the block, so that all that follows agrees.

The block is drafted from its numbers as they were; then it is altered in paper, one
alteration after the other. Each alteration has a page of rules with the numbers that it
changes, in terms of what they were before it. So a number of the block has several
lives: before the fitting ("theta@0"), after the first alteration ("theta@1"), and as
the garment is drafted ("theta", the last of these). Every other number of the block is
held as it was; what is no number of the block follows by its own rule.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache

from clothwright.rules import Rule, RuleTable, unfitted

BY = "by"
"""Stands for the alteration's own amount in its page of rules."""


def amount_key(i: int) -> str:
    """Key of the amount of the i-th alteration."""
    return f"fit{i}"


def fitted(
    rules: Mapping[str, Rule],
    given: Collection[str],
    pages: Iterable[tuple[RuleTable, frozenset[str]]],
) -> dict[str, Rule]:
    """Rules to be put beside and in place of `rules` for a run of alterations.

    `given` are numbers that no rule gives; in `rules` they stand as they are taken.
    Each page is one alteration's, with the numbers of the block that it is made on: its
    keys are such numbers, or words of its own for what it works with.
    """
    pages = tuple(pages)
    block = frozenset[str]().union(*(held for _, held in pages))
    changed = {k for p, _ in pages for k in p.rules if k in block}
    moved = _resting_on(changed, rules, given)
    now = {k: unfitted(k) for k in moved}
    out = {
        unfitted(k): _renamed(rules[k], unfitted(k), _names(rules[k].needs, now), 0)
        for k in moved
        if k not in given
    }
    for i, (page, _) in enumerate(pages, 1):
        own = {
            k: f"{k}@{i}" if k in block else f"{amount_key(i)}.{k}" for k in page.rules
        }
        inner = {k: v for k, v in own.items() if k not in block}
        names = {**now, **inner, BY: amount_key(i)}
        for k, rule in page.rules.items():
            out[own[k]] = _renamed(rule, own[k], _names(rule.needs, names), i)
        now |= {k: v for k, v in own.items() if k in block}
    for k in moved & block:
        out[k] = _last(rules[k], now[k])
    return out


def _resting_on(
    keys: Iterable[str], rules: Mapping[str, Rule], given: Collection[str]
) -> frozenset[str]:
    """These keys, and all that rest on them by some rule."""
    users: dict[str, list[str]] = {}
    for k, r in rules.items():
        if k not in given:
            for need in r.needs:
                users.setdefault(need, []).append(k)
    found = {k for k in keys if k in rules}
    todo = list(found)
    while todo:
        for k in users.get(todo.pop(), ()):
            if k not in found:
                found.add(k)
                todo.append(k)
    return frozenset(found)


def _names(needs: tuple[str, ...], names: Mapping[str, str]) -> tuple[str, ...]:
    return tuple(names.get(n, n) for n in needs)


@lru_cache(maxsize=4096)
def _renamed(rule: Rule, key: str, needs: tuple[str, ...], life: int) -> Rule:
    """A rule under the key of one life of its number. (Kept, so that a number is not
    computed again where nothing behind it has changed.)"""
    sign = _LIVES[min(life, len(_LIVES) - 1)]
    when = ", before the fitting" if not life else ", altered"
    return replace(
        rule, key=key, symbol=rule.symbol + sign, name=rule.name + when, needs=needs
    )


_LIVES = "₀₁₂₃₄₅₆₇₈₉"


@lru_cache(maxsize=4096)
def _last(rule: Rule, key: str) -> Rule:
    return replace(
        rule, needs=(key,), compute=_itself, formula="as the fitting leaves it"
    )


def _itself(value: float) -> float:
    return value
