"""A rule and a table of rules."""

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from enum import Enum


class Kind(Enum):
    """What a number counts; decides how it is shown, never how it is stored."""

    LENGTH = "cm"
    """A pattern distance, in cm (shown to 1/16 in or 0.1 cm)."""

    BODY = "body cm"
    """A body measure, in cm (shown to 1/8 in or 0.5 cm over 50)."""

    ANGLE = "degrees"
    """An angle, in degrees."""

    RATIO = "ratio"
    """A share or a ratio, no unit."""

    COUNT = "count"
    """A whole number of things."""


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule. `compute` takes the numbers named in `needs`, in that order."""

    key: str
    symbol: str
    name: str
    kind: Kind
    source: str
    needs: tuple[str, ...]
    compute: Callable[..., float]
    formula: str = ""
    low: float | None = None
    high: float | None = None
    sigma: float | None = None
    """Standard deviation of an estimate, in the rule's own unit; None: exact."""


@dataclass
class RuleTable:
    """A named page of rules. Rules are added with the `rule` decorator."""

    title: str
    rules: dict[str, Rule] = field(default_factory=dict)

    def rule(
        self,
        symbol: str,
        name: str,
        *,
        source: str,
        kind: Kind = Kind.LENGTH,
        formula: str = "",
        low: float | None = None,
        high: float | None = None,
        sigma: float | None = None,
        key: str = "",
        needs: tuple[str, ...] = (),
    ) -> Callable[[Callable[..., float]], Callable[..., float]]:
        """Register a function as a rule; its name is the key (unless one is given),
        its parameters are what it needs (unless `needs` names that, in their order,
        for a function that takes a run of numbers on to another).

        `low` and `high` bound what a house rule may put in its place.
        """

        def add(fn: Callable[..., float]) -> Callable[..., float]:
            self.add(
                Rule(
                    key or fn.__name__,
                    symbol,
                    name,
                    kind,
                    source,
                    needs or tuple(inspect.signature(fn).parameters),
                    fn,
                    formula,
                    low,
                    high,
                    sigma,
                )
            )
            return fn

        return add

    def add(self, rule: Rule) -> None:
        """Add one rule. Raises KeyError when its key is taken."""
        if rule.key in self.rules:
            raise KeyError(f"the rule {rule.key} stands twice in {self.title}")
        self.rules[rule.key] = rule

    def __iter__(self) -> Iterator[Rule]:
        return iter(self.rules.values())
