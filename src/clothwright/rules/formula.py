"""Formulas: plain arithmetic on numbers of the graph, read from text.

sum := product (± product)*; product := factor (×÷ factor)*. Names are keys or symbols;
min() and max() choose. A bare number that multiplies or divides is a plain number; one
that stands alone or is added to a length is in the unit given. Nothing is evaluated as
program text. After × or ÷ a hyphen is a minus: B/6-1/2 in is B/6 less 1/2 in.
"""

import difflib
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from clothwright.rules.errors import RuleError
from clothwright.rules.rule import Kind
from clothwright.units import Unit, parse_length, parse_plain


class FormulaError(RuleError):
    """A formula that cannot be read or computed; one plain sentence."""


class Formula(NamedTuple):
    """What a formula needs, by key, and how it is computed from those, in order."""

    needs: tuple[str, ...]
    compute: Callable[..., float]


def read_formula(
    text: str, where: str, unit: Unit, names: Mapping[str, str], kind: Kind
) -> Formula:
    """Read a formula. `names` maps every name that it may use to a key; `where` is the
    place for messages. Raises FormulaError (LengthError for a miswritten number)."""
    value = _Parser(text, where, unit, names, kind).parse()
    needs = tuple(dict.fromkeys(value.needs))

    def compute(*values: float) -> float:
        return value.compute(dict(zip(needs, values, strict=True)))

    return Formula(needs, compute)


def not_known(name: str, names: Iterable[str]) -> str:
    """ "there is no number bx; did you mean bw?"."""
    near = difflib.get_close_matches(name, sorted(names), 1)
    return f"there is no number {name}" + (f"; did you mean {near[0]}?" if near else "")


@dataclass(frozen=True)
class _Value:
    """A part of a formula: what it needs, how it is computed, and whether it is a bare
    number (whose unit is decided by its neighbours)."""

    needs: tuple[str, ...]
    compute: Callable[[Mapping[str, float]], float]
    bare: bool = False


_TOKEN = re.compile(
    r"""\s*(?:
      (?P<number>\d+\s+\d+/\d+|\d+-\d+/\d+|\d+/\d+(?=\s*(?:in|cm|")|\s*$)
        |\d+(?:[.,]\d+)?[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞])
        \s*(?P<unit>inches|inch|in\b|cm\b|mm\b|"|″)?
    | (?P<name>[^\W\d]\w*)
    | (?P<op>[-+*/(),−×·])
    )""",
    re.VERBOSE,
)


_DEEPEST = 50
"""Brackets in one another; no rule of a workroom needs a tenth of it."""


_TIMES = "*/×·"

_AFTER_TIMES = re.compile(r"\s*(?P<number>\d+)(?=\s*-\s*\d+/\d+)(?P<unit>)(?P<name>)")

MOST_PARTS = 120
"""Numbers, names and signs in one formula; more is no rule of a workroom."""


class _Parser:
    """Reads one formula from its tokens."""

    def __init__(
        self, text: str, where: str, unit: Unit, names: Mapping[str, str], kind: Kind
    ) -> None:
        self.where, self.unit, self.names, self.kind = where, unit, names, kind
        self.tokens: list[tuple[str, str, str]] = []
        at = 0
        while at < len(text.rstrip()):
            after_times = self.tokens and self.tokens[-1][1] in _TIMES
            m = _AFTER_TIMES.match(text, at) if after_times else None
            m = m or _TOKEN.match(text, at)
            if len(self.tokens) == MOST_PARTS:
                raise FormulaError(f"{where}: the formula is too long; make it shorter")
            if m is None or m.end() == at:
                raise FormulaError(
                    f'{where}: "{text[at:].strip()[:20]}" cannot be read; use numbers, '
                    "measures and + - * / ( )"
                )
            at = m.end()
            if m["number"]:
                self.tokens.append(("number", m["number"] or "", m["unit"] or ""))
            elif m["name"]:
                self.tokens.append(("name", m["name"], ""))
            else:
                self.tokens.append(("op", m["op"].replace("−", "-"), ""))
        self.at = 0
        self.depth = 0

    def parse(self) -> _Value:
        if not self.tokens:
            raise FormulaError(f"{self.where}: the formula is blank; write a number")
        value = self._sum()
        if self.at < len(self.tokens):
            raise FormulaError(
                f'{self.where}: "{self.tokens[self.at][1]}" stands where the formula '
                "should end"
            )
        return self._length(value)

    def _peek(self, *ops: str) -> bool:
        return self.at < len(self.tokens) and (
            self.tokens[self.at][0] == "op" and self.tokens[self.at][1] in ops
        )

    def _length(self, v: _Value) -> _Value:
        """A bare number that stands alone or is added is in the file's unit."""
        if not v.bare or self.kind not in (Kind.LENGTH, Kind.BODY):
            return v
        k = self.unit.cm
        return _Value(v.needs, lambda n: v.compute(n) * k)

    def _sum(self) -> _Value:
        left = self._product()
        while self._peek("+", "-"):
            op = self.tokens[self.at][1]
            self.at += 1
            right = self._product()
            bare = left.bare and right.bare
            if not bare:
                left, right = self._length(left), self._length(right)
            sign = 1.0 if op == "+" else -1.0
            left = _Value(left.needs + right.needs, _plus(left, right, sign), bare)
        return left

    def _product(self) -> _Value:
        left = self._factor()
        while self._peek("*", "/", "×", "·"):
            op = self.tokens[self.at][1]
            self.at += 1
            right = self._factor()
            bare = left.bare and right.bare
            needs = left.needs + right.needs
            if op == "/":
                left = _Value(needs, _divide(left, right, self.where), bare)
            else:
                left = _Value(needs, _times(left, right), bare)
        return left

    def _factor(self) -> _Value:
        if self.at >= len(self.tokens):
            raise FormulaError(f"{self.where}: the formula ends too soon")
        kind, text, unit = self.tokens[self.at]
        self.at += 1
        if kind == "number":
            if unit:
                cm = parse_length(f"{text} {unit}")
                return _Value((), lambda _: cm)
            plain = parse_plain(text)
            return _Value((), lambda _: plain, bare=True)
        if kind == "name":
            if text in ("min", "max") and self._peek("("):
                return self._choice(min if text == "min" else max)
            if text not in self.names:
                raise FormulaError(f"{self.where}: {not_known(text, self.names)}")
            key = self.names[text]
            return _Value((key,), lambda n: n[key])
        if text == "-":
            inner = self._factor()
            return _Value(inner.needs, lambda n: -inner.compute(n), inner.bare)
        if text == "(":
            self.depth += 1
            if self.depth > _DEEPEST:
                raise FormulaError(f"{self.where}: too many brackets in one another")
            inner = self._sum()
            self._close()
            self.depth -= 1
            return inner
        raise FormulaError(f'{self.where}: "{text}" stands where a number is wanted')

    def _choice(self, pick: Callable[[Iterable[float]], float]) -> _Value:
        self.at += 1
        parts = [self._length(self._sum())]
        while self._peek(","):
            self.at += 1
            parts.append(self._length(self._sum()))
        self._close()
        needs = tuple(k for p in parts for k in p.needs)
        return _Value(needs, lambda n: pick([p.compute(n) for p in parts]))

    def _close(self) -> None:
        if not self._peek(")"):
            raise FormulaError(f"{self.where}: a bracket is not closed")
        self.at += 1


def _plus(a: _Value, b: _Value, sign: float) -> Callable[[Mapping[str, float]], float]:
    return lambda n: a.compute(n) + sign * b.compute(n)


def _times(a: _Value, b: _Value) -> Callable[[Mapping[str, float]], float]:
    return lambda n: a.compute(n) * b.compute(n)


def _divide(a: _Value, b: _Value, where: str) -> Callable[[Mapping[str, float]], float]:
    def divide(n: Mapping[str, float]) -> float:
        below = b.compute(n)
        if below == 0:
            raise FormulaError(f"{where}: the formula divides by nought")
        return a.compute(n) / below

    return divide
