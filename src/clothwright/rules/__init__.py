"""Numbers that know where they come from.

Terminology
    rule     one line of the book: a pure function with a symbol, a unit and a source.
             Its parameters are the keys of the numbers that it needs.
    given    a number that comes from outside the rules: a measure, a choice of the
             order, a default.
    house    a dressmaker's own replacement for a rule: a number or plain arithmetic.
    numbers  the graph at work: each number is computed when it is first asked for.
    why      a number followed back to measures, rules and choices.
"""

from clothwright.rules.errors import (
    CyclicRule,
    Missing,
    OutOfBounds,
    RuleError,
    UnknownNumber,
)
from clothwright.rules.graph import Given, Hand, House, Numbers, Reason, Seen, unfitted
from clothwright.rules.rule import Kind, Rule, RuleTable

__all__ = [
    "CyclicRule",
    "Given",
    "Hand",
    "House",
    "Kind",
    "Missing",
    "Numbers",
    "OutOfBounds",
    "Reason",
    "Rule",
    "RuleError",
    "RuleTable",
    "Seen",
    "UnknownNumber",
    "unfitted",
]
