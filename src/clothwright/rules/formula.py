"""Formulas: plain arithmetic on numbers of the graph, read from text.

sum := product (± product)*; product := factor (×÷ factor)*. Names are keys or symbols;
min() and max() choose. A bare number that multiplies or divides is a plain number; one
that stands alone or is added to a length is in the unit given. Lengths are not added
to angles, and the whole comes to what its rule counts. Nothing is evaluated as program
text. After × or ÷ a hyphen is a minus: B/6-1/2 in is B/6 less 1/2 in.
"""

import difflib
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
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
    text: str,
    where: str,
    unit: Unit,
    names: Mapping[str, str],
    kind: Kind,
    kinds: Mapping[str, Kind] | None = None,
) -> Formula:
    """Read a formula. `names` maps every name that it may use to a key; `kinds` says
    what the number of a key counts (of one that it leaves out nothing is known);
    `where` is the place for messages. Raises FormulaError (LengthError for a miswritten
    number)."""
    value = _Parser(text, where, unit, names, kind, kinds or {}).parse()
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
    counts: "_Counts | None" = None
    """None: nothing is known of it."""


class _Counts(NamedTuple):
    """What a part of a formula counts, as powers: an area is a length twice over."""

    length: int = 0
    angle: int = 0

    def told(self) -> str:
        """ "a length", in words."""
        return _TOLD.get(self, "neither length nor angle nor plain number")


_PLAIN, _LENGTH, _ANGLE = _Counts(), _Counts(1), _Counts(0, 1)
_TOLD = {
    _PLAIN: "a plain number",
    _LENGTH: "a length",
    _ANGLE: "an angle",
    _Counts(2): "an area",
}
_OF_KIND = {
    Kind.LENGTH: _LENGTH,
    Kind.BODY: _LENGTH,
    Kind.ANGLE: _ANGLE,
    Kind.RATIO: _PLAIN,
    Kind.COUNT: _PLAIN,
}
_INSTEAD = {
    _LENGTH: "B/6 + 1 in",
    _ANGLE: "SS - 2",
    _PLAIN: "W/H, or a bare number",
}


_TOKEN = re.compile(
    r"""\s*(?:
      (?P<number>\d+\s+\d+/\d+|\d+-\d+/\d+|\d+/\d+(?=\s*(?:in|cm|")|\s*$)
        |\d+(?:[.,]\d+)?[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞])
        \s*(?P<unit>inches|inch|in\b|cm\b|mm\b|"|″|°)?
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
        self,
        text: str,
        where: str,
        unit: Unit,
        names: Mapping[str, str],
        kind: Kind,
        kinds: Mapping[str, Kind],
    ) -> None:
        self.where, self.unit, self.names, self.kind = where, unit, names, kind
        self.kinds = kinds
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
        wanted = _OF_KIND[self.kind]
        if value.counts not in (None, wanted) and not value.bare:
            raise FormulaError(
                f"{self.where}: the formula comes to {value.counts.told()}, and "
                f"{wanted.told()} is wanted; write something like {_INSTEAD[wanted]}"
            )
        return self._length(value) if wanted == _LENGTH else value

    def _peek(self, *ops: str) -> bool:
        return self.at < len(self.tokens) and (
            self.tokens[self.at][0] == "op" and self.tokens[self.at][1] in ops
        )

    def _length(self, v: _Value) -> _Value:
        """A bare number that stands alone or is added is in the file's unit."""
        if not v.bare:
            return v
        k = self.unit.cm
        return _Value(v.needs, lambda n: v.compute(n) * k, counts=_LENGTH)

    def _alike(self, parts: list[_Value]) -> list[_Value]:
        """Parts that are added or compared: bare numbers beside them count what they
        do, and what is left must count the same."""
        known = [p for p in parts if not p.bare]
        if not known:
            return parts
        counts = [p.counts for p in known if p.counts is not None]
        for other in counts[1:]:
            if other != counts[0]:
                raise FormulaError(
                    f"{self.where}: {counts[0].told()} and {other.told()} stand side "
                    "by side; add and compare like with like"
                )
        what = counts[0] if counts else _OF_KIND[self.kind]
        if what == _LENGTH:
            return [self._length(p) for p in parts]
        return [replace(p, bare=False, counts=p.counts and what) for p in parts]

    def _sum(self) -> _Value:
        left = self._product()
        while self._peek("+", "-"):
            op = self.tokens[self.at][1]
            self.at += 1
            left, right = self._alike([left, self._product()])
            sign = 1.0 if op == "+" else -1.0
            left = _Value(
                left.needs + right.needs,
                _plus(left, right, sign),
                left.bare,
                left.counts,
            )
        return left

    def _product(self) -> _Value:
        left = self._factor()
        while self._peek("*", "/", "×", "·"):
            op = self.tokens[self.at][1]
            self.at += 1
            right = self._factor()
            bare = left.bare and right.bare
            needs = left.needs + right.needs
            divide = op == "/"
            counts = _together(left.counts, right.counts, -1 if divide else 1)
            done = _divide(left, right, self.where) if divide else _times(left, right)
            left = _Value(needs, done, bare, counts)
        return left

    def _factor(self) -> _Value:
        if self.at >= len(self.tokens):
            raise FormulaError(f"{self.where}: the formula ends too soon")
        kind, text, unit = self.tokens[self.at]
        self.at += 1
        if kind == "number":
            if unit == "°":
                angle = parse_plain(text)
                return _Value((), lambda _: angle, counts=_ANGLE)
            if unit:
                cm = parse_length(f"{text} {unit}")
                return _Value((), lambda _: cm, counts=_LENGTH)
            plain = parse_plain(text)
            return _Value((), lambda _: plain, bare=True, counts=_PLAIN)
        if kind == "name":
            if text in ("min", "max") and self._peek("("):
                return self._choice(min if text == "min" else max)
            if text not in self.names:
                raise FormulaError(f"{self.where}: {not_known(text, self.names)}")
            key = self.names[text]
            of = self.kinds.get(key)
            return _Value((key,), lambda n: n[key], counts=of and _OF_KIND[of])
        if text == "-":
            inner = self._factor()
            return replace(inner, compute=lambda n: -inner.compute(n))
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
        parts = [self._sum()]
        while self._peek(","):
            self.at += 1
            parts.append(self._sum())
        self._close()
        parts = self._alike(parts)
        needs = tuple(k for p in parts for k in p.needs)
        return _Value(
            needs,
            lambda n: pick([p.compute(n) for p in parts]),
            parts[0].bare,
            parts[0].counts,
        )

    def _close(self) -> None:
        if not self._peek(")"):
            raise FormulaError(f"{self.where}: a bracket is not closed")
        self.at += 1


def _together(a: _Counts | None, b: _Counts | None, sign: int) -> _Counts | None:
    """What a product (or, with −1, a quotient) counts."""
    if a is None or b is None:
        return None
    return _Counts(a.length + sign * b.length, a.angle + sign * b.angle)


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
