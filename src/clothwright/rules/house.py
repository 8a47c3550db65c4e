"""House rules: a dressmaker's own numbers and plain arithmetic in place of a rule's.

    unit = "in"

    [rules]
    Dm = "B/6 + 1 in"
    bw = "3 in"

A rule goes by its key or its symbol. The right-hand side is a number with a unit, or
arithmetic with + − * / and brackets on measures and other rules, with min() and max().
A bare number that multiplies or divides is a plain number; one that stands alone or is
added to a length is in the file's unit. Nothing is ever evaluated as program text.
"""

import difflib
import re
import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace

from clothwright.rules.errors import RuleError
from clothwright.rules.graph import House
from clothwright.rules.rule import Kind, Rule
from clothwright.units import LengthError, Unit, parse_angle, parse_length, parse_plain


class HouseError(RuleError):
    """House rules that cannot be used; one sentence a line."""


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


def read_house(
    text: str, place: str, rules: Mapping[str, Rule], known: Iterable[str]
) -> dict[str, House]:
    """House rules from their file's text, by key.

    `rules` are what may be replaced; `known` are other numbers (measures, choices)
    that a formula may name. Raises HouseError with a sentence for every fault.
    """
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as e:
        line = str(e).split("line ")[1].split(",")[0] if "line " in str(e) else ""
        raise HouseError(
            f"{place}: something is miswritten{f' in line {line}' if line else ''}: "
            'write each rule as name = "formula"'
        ) from None
    faults: list[str] = []
    units = {"cm": Unit.CM, "in": Unit.IN}
    if table.get("unit") not in units:
        faults.append(f'{place}: say the unit: unit = "cm" or unit = "in"')
    unit = units.get(str(table.get("unit")), Unit.CM)
    for key in table:
        if key not in ("unit", "rules"):
            faults.append(f"{place}: {key} is not known here; put rules under [rules]")
    names = {**{r.symbol: k for k, r in rules.items()}, **{k: k for k in rules}}
    readable = {**names, **{k: k for k in known}}
    rows = table.get("rules", {})
    if not isinstance(rows, Mapping):
        faults.append(f"{place}: write the rules under [rules]")
        rows = {}
    out: dict[str, House] = {}
    for name, formula in rows.items():
        where = f"{place}, {name}"
        key = names.get(str(name), "")
        if not key:
            faults.append(f"{where}: {_not_known(name, names)}")
            continue
        try:
            out[key] = _house(rules[key], formula, where, unit, readable)
        except HouseError as e:
            faults.append(str(e))
    if faults:
        raise HouseError("\n".join(faults))
    return out


def _not_known(name: str, names: Mapping[str, str]) -> str:
    near = difflib.get_close_matches(name, sorted(names), 1)
    return f"there is no number {name}" + (f"; did you mean {near[0]}?" if near else "")


def _house(
    rule: Rule, formula: object, where: str, unit: Unit, names: Mapping[str, str]
) -> House:
    if isinstance(formula, bool) or not isinstance(formula, str | int | float):
        raise HouseError(f'{where}: write a number or a formula in "quotes"')
    shown = str(formula)
    try:
        if rule.kind is Kind.ANGLE and not any(ch.isalpha() for ch in shown):
            angle = parse_angle(formula)
            value = _Value((), lambda _: angle)
        else:
            value = _Parser(shown, where, unit, names, rule.kind).parse()
    except LengthError as e:
        raise HouseError(f"{where}: {e}") from None
    needs = tuple(dict.fromkeys(value.needs))

    def compute(*values: float) -> float:
        return value.compute(dict(zip(needs, values, strict=True)))

    made = replace(rule, needs=needs, compute=compute, formula=shown, sigma=None)
    return House(made, shown, where)


class _Parser:
    """sum := product (± product)*; product := factor (×÷ factor)*."""

    def __init__(
        self, text: str, where: str, unit: Unit, names: Mapping[str, str], kind: Kind
    ) -> None:
        self.where, self.unit, self.names, self.kind = where, unit, names, kind
        self.tokens: list[tuple[str, str, str]] = []
        at = 0
        while at < len(text.rstrip()):
            m = _TOKEN.match(text, at)
            if m is None or m.end() == at:
                raise HouseError(
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

    def parse(self) -> _Value:
        if not self.tokens:
            raise HouseError(f"{self.where}: the formula is blank; write a number")
        value = self._sum()
        if self.at < len(self.tokens):
            raise HouseError(
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
            raise HouseError(f"{self.where}: the formula ends too soon")
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
                raise HouseError(f"{self.where}: {_not_known(text, self.names)}")
            key = self.names[text]
            return _Value((key,), lambda n: n[key])
        if text == "-":
            inner = self._factor()
            return _Value(inner.needs, lambda n: -inner.compute(n), inner.bare)
        if text == "(":
            inner = self._sum()
            self._close()
            return inner
        raise HouseError(f'{self.where}: "{text}" stands where a number is wanted')

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
            raise HouseError(f"{self.where}: a bracket is not closed")
        self.at += 1


def _plus(a: _Value, b: _Value, sign: float) -> Callable[[Mapping[str, float]], float]:
    return lambda n: a.compute(n) + sign * b.compute(n)


def _times(a: _Value, b: _Value) -> Callable[[Mapping[str, float]], float]:
    return lambda n: a.compute(n) * b.compute(n)


def _divide(a: _Value, b: _Value, where: str) -> Callable[[Mapping[str, float]], float]:
    def divide(n: Mapping[str, float]) -> float:
        below = b.compute(n)
        if below == 0:
            raise HouseError(f"{where}: the formula divides by nought")
        return a.compute(n) / below

    return divide
