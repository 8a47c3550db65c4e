"""The graph at work: given numbers, rules and house rules answer for a key."""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from operator import itemgetter
from typing import Final, NamedTuple

from clothwright.rules.errors import (
    CyclicRule,
    Missing,
    OutOfBounds,
    RuleError,
    UnknownNumber,
)
from clothwright.rules.rule import Kind, Rule


class Hand(Enum):
    """Who decided a number."""

    TAKEN = "taken"
    """Measured on the body."""

    SIZE_TABLE = "from a size table"
    """Read from a size table."""

    ESTIMATED = "estimated"
    """A rule's estimate of a measure that was not taken."""

    RULE = "rule"
    """A rule of the book."""

    HOUSE = "house rule"
    """The dressmaker's own rule."""

    CHOICE = "her choice"
    """Written in the order."""

    DEFAULT = "usual amount"
    """The feature's own default."""


@dataclass(slots=True, unsafe_hash=True)
class Given:
    """A number from outside the rules."""

    key: Final[str]
    symbol: Final[str]
    name: Final[str]
    kind: Final[Kind]
    value: Final[float]
    hand: Final[Hand]
    source: Final[str] = ""


@dataclass(frozen=True, slots=True)
class House:
    """A house rule ready to run: `rule` computes in place of the book's."""

    rule: Rule
    text: str
    """As she wrote it."""

    place: str = ""
    """File and key, for messages."""


@dataclass(frozen=True, slots=True)
class Reason:
    """One knot of the thread of `why`."""

    key: str
    symbol: str
    name: str
    kind: Kind
    value: float
    hand: Hand
    source: str
    formula: str
    sigma: float | None
    because: tuple["Reason", ...]

    def walk(self) -> Iterator["Reason"]:
        """This reason and all below it, each once."""
        seen: set[str] = set()
        stack = [self]
        while stack:
            r = stack.pop()
            if r.key in seen:
                continue
            seen.add(r.key)
            yield r
            stack.extend(reversed(r.because))


BEFORE_FITTING = "@0"
"""Ends the key of a number of the block as it was before a fitting altered it."""


def unfitted(key: str) -> str:
    """Key of a number as it was before the fitting."""
    return key + BEFORE_FITTING


class Seen(NamedTuple):
    """What somebody was told who asked for numbers."""

    values: Mapping[str, float]
    hands: Mapping[str, Hand | None]
    """Who decided them, of those of which that was asked, or whether they are there at
    all; None of one that is not."""


def _ruled(house: Mapping[str, House]) -> dict[str, Rule]:
    return {k: h.rule for k, h in house.items()}


class Numbers:
    """All numbers of one draft, computed when asked for and then kept.

    Reading goes by key: `numbers["yB"]`, or by attribute: `numbers.yB`. Of the numbers
    of the draft before, those are kept behind which nothing has changed.
    """

    def __init__(
        self,
        rules: Mapping[str, Rule],
        given: Iterable[Given] = (),
        house: Mapping[str, House] | None = None,
        before: "Numbers | None" = None,
    ) -> None:
        self._rules = rules
        self._given = {g.key: g for g in given}
        self._house = dict(house or {})
        self._values: dict[str, float] = {k: g.value for k, g in self._given.items()}
        if before is not None:
            self._values |= self._still(before)
        self._open: list[str] = []
        self.read: dict[str, float] = {}
        """What was asked for from outside since all was last forgotten."""

        self._asked: set[str] = set()
        """Keys of which it was asked since then whether they are here, or whose they
        are."""

    def _still(self, before: "Numbers") -> dict[str, float]:
        """What `before` has computed by rules that hold here too, from numbers that
        are here the same."""
        values: dict[str, float] = {}
        same: set[str] = set()
        given, rules = self._given, {**self._rules, **_ruled(self._house)}
        known = {**before._rules, **_ruled(before._house)}
        for key, value in before._values.items():  # what a rule needs comes before it
            if key in given:
                if given[key].value == value:
                    same.add(key)
            elif key not in before._given:
                rule = rules.get(key)
                if rule is known[key] and same.issuperset(rule.needs):
                    same.add(key)
                    values[key] = value
        return values

    # -- values -------------------------------------------------------------------
    def __getitem__(self, key: str) -> float:
        value = self._values.get(key)
        if value is None:
            value = self._compute(key)
        self.read[key] = value
        return value

    def __getattr__(self, key: str) -> float:
        if key[0] == "_":
            raise AttributeError(key)
        # the next time it is found as a property, in a third of the time that a look
        # in vain takes
        setattr(Numbers, key, property(itemgetter(key)))
        return self[key]

    def __contains__(self, key: str) -> bool:
        self._asked.add(key)
        return self._here(key)

    def _here(self, key: str) -> bool:
        return key in self._given or key in self._house or key in self._rules

    def _rule(self, key: str) -> Rule | None:
        house = self._house.get(key)
        return self._rules.get(key) if house is None else house.rule

    def _active(self, key: str) -> Rule:
        rule = self._rule(key)
        if rule is not None:
            return rule
        users = tuple(r.name for r in self._rules.values() if key in r.needs)
        if users or self._open:
            raise Missing(key, users)
        raise UnknownNumber(key)

    def _value(self, key: str) -> float:
        if key in self._values:
            return self._values[key]
        return self._compute(key)

    def _compute(self, key: str) -> float:
        if key in self._open:
            raise CyclicRule(tuple(self._open[self._open.index(key) :]))
        rule = self._active(key)
        self._open.append(key)
        try:
            known = self._values
            value = float(
                rule.compute(
                    *[known[n] if n in known else self._compute(n) for n in rule.needs]
                )
            )
        except ZeroDivisionError as e:
            raise RuleError(
                f"{rule.name} ({rule.symbol}) divides by nothing with these numbers"
            ) from e
        finally:
            self._open.pop()
        if not math.isfinite(value):
            raise RuleError(f"{rule.name} ({rule.symbol}) comes to no number")
        if key in self._house:
            self._check_bounds(key, value)
        self._values[key] = value
        return value

    def _check_bounds(self, key: str, value: float) -> None:
        rule, house = self._house[key].rule, self._house[key]
        low, high = rule.low, rule.high
        if rule.kind is Kind.COUNT and abs(value - round(value)) > 1e-9:
            raise OutOfBounds(
                f"{house.place}: {rule.name} ({rule.symbol}) = {house.text} comes to "
                f"{value:.2f} here; write a whole number",
                key,
            )
        if (low is None or value >= low - 1e-9) and (
            high is None or value <= high + 1e-9
        ):
            return
        unit = {Kind.ANGLE: "°", Kind.RATIO: "", Kind.COUNT: ""}.get(rule.kind, " cm")
        if low is None or high is None:
            span = f"at least {low:g}" if high is None else f"at most {high:g}"
        else:  # each with its unit, so that both are retold in the user's
            span = f"{low:g}{unit} to {high:g}"
        raise OutOfBounds(
            f"{house.place}: {rule.name} ({rule.symbol}) = {house.text} comes to "
            f"{value:.2f}{unit} here; the draft stands with {span}{unit}",
            key,
        )

    def forget(self) -> None:
        """Begin anew to note what is asked for."""
        self.read.clear()
        self._asked.clear()

    def seen(self) -> Seen:
        """What was asked for from outside since all was last forgotten."""
        hands = {k: self._whose(k) for k in self._asked} if self._asked else {}
        return Seen(self.read.copy(), hands)

    def agree_with(self, seen: Seen) -> bool:
        """True when whoever asks for these now is told the same."""
        for key, hand in seen.hands.items():
            if self._whose(key) is not hand:
                return False
        if seen.values.items() <= self._values.items():
            return True
        try:
            return all(self._value(k) == v for k, v in seen.values.items())
        except (ValueError, ArithmeticError, IndexError):
            return False  # whoever asks is told, in a sentence

    @property
    def unfitted(self) -> "Numbers":
        """The same numbers as they were before a fitting altered them."""
        keys = " ".join((*self._given, *self._rules))  # one search, not one for each
        return _Unfitted(self) if BEFORE_FITTING in keys else self

    def called(self, key: str) -> str:
        """The key under which the number that is read by this key stands."""
        return key

    # -- where they come from -------------------------------------------------------
    def hand(self, key: str) -> Hand:
        """Who decided this number."""
        self._asked.add(key)
        return self._hand(key)

    def _whose(self, key: str) -> Hand | None:
        """The same; None when it is not here."""
        return self._hand(key) if self._here(key) else None

    def _hand(self, key: str) -> Hand:
        if key in self._given:
            return self._given[key].hand
        if key in self._house:
            return Hand.HOUSE
        return Hand.ESTIMATED if self._active(key).sigma is not None else Hand.RULE

    def why(self, key: str) -> Reason:
        """The number followed back to its measures, rules and choices."""
        value = self._value(key)
        if key in self._given:
            g = self._given[key]
            return Reason(
                key, g.symbol, g.name, g.kind, value, g.hand, g.source, "", None, ()
            )
        rule = self._active(key)
        house = self._house.get(key)
        return Reason(
            key,
            rule.symbol,
            rule.name,
            rule.kind,
            value,
            self.hand(key),
            house.place if house else rule.source,
            house.text if house else rule.formula,
            rule.sigma,
            tuple(self.why(n) for n in rule.needs),
        )

    def overruled(self) -> dict[str, House]:
        """House rules that a measure or a choice of the order outranks, by key."""
        return {k: h for k, h in self._house.items() if k in self._given}

    def behind(self, keys: Iterable[str]) -> tuple[str, ...]:
        """These keys and all that they rest on, each once, sorted."""
        found = set(keys)
        todo = list(found)
        while todo:
            key = todo.pop()
            for need in () if key in self._given else self._active(key).needs:
                if need not in found:
                    found.add(need)
                    todo.append(need)
        return tuple(sorted(found))

    def keys(self) -> tuple[str, ...]:
        """Every key that can be asked for, sorted."""
        return tuple(sorted({*self._given, *self._house, *self._rules}))

    def users(self, key: str) -> tuple[str, ...]:
        """Keys of the rules that need this number directly."""
        return tuple(
            sorted(k for k in (*self._rules, *self._house) if key in self._needs(k))
        )

    def _needs(self, key: str) -> tuple[str, ...]:
        return () if key in self._given else self._active(key).needs

    def missing(self, wanted: Iterable[str]) -> dict[str, tuple[str, ...]]:
        """Keys that have neither value nor rule, with all that each is wanted for."""
        out: dict[str, list[str]] = {}
        seen: set[str] = set()

        def visit(key: str, for_what: str) -> None:
            if not self._here(key):
                names = out.setdefault(key, [])
                if for_what not in names:
                    names.append(for_what)
                return
            if key in seen or key in self._given:
                return
            seen.add(key)
            rule = self._active(key)
            for n in rule.needs:
                visit(n, rule.name)

        for w in wanted:
            visit(w, w)
        return {k: tuple(v) for k, v in out.items()}


class _Unfitted(Numbers):
    """A view of numbers: by the key of one that a fitting has altered, what it was."""

    def __init__(self, of: Numbers) -> None:
        self.__dict__ = of.__dict__

    def __getitem__(self, key: str) -> float:
        return super().__getitem__(self.called(key))

    def called(self, key: str) -> str:
        before = unfitted(key)
        return before if before in self else key
