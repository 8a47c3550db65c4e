"""House rules: a dressmaker's own numbers and plain arithmetic in place of a rule's.

    unit = "in"

    [rules]
    Dm = "B/6 + 1 in"
    bw = "3 in"

Runs of steps under `[styles]` are read elsewhere. A rule goes by its key or its
symbol. The right-hand side is a number with a unit, or arithmetic with + − * / and
brackets on measures and other rules (see `formula`).
"""

from collections.abc import Mapping
from dataclasses import replace

from clothwright.rules.errors import RuleError
from clothwright.rules.formula import (
    Formula,
    FormulaError,
    not_known,
    read_formula,
)
from clothwright.rules.graph import House
from clothwright.rules.rule import Kind, Rule
from clothwright.units import (
    LengthError,
    MiswrittenError,
    Unit,
    parse_angle,
    read_toml,
)


class HouseError(RuleError):
    """House rules that cannot be used; one sentence a line."""


def read_house(
    text: str, place: str, rules: Mapping[str, Rule], known: Mapping[str, Kind]
) -> dict[str, House]:
    """House rules from their file's text, by key.

    `rules` are what may be replaced; `known` are other numbers (measures, choices)
    that a formula may name, with what each counts. Raises HouseError
    with a sentence for every fault.
    """
    try:
        table = read_toml(text, 'write each rule as name = "formula"')
    except MiswrittenError as e:
        raise HouseError(f"{place}: {e}") from None
    faults: list[str] = []
    units = {"cm": Unit.CM, "in": Unit.IN}
    if str(table.get("unit")) not in units:
        faults.append(f'{place}: say the unit: unit = "cm" or unit = "in"')
    unit = units.get(str(table.get("unit")), Unit.CM)
    for key in table:
        if key not in ("unit", "rules", "styles"):
            faults.append(f"{place}: {key} is not known here; put rules under [rules]")
    names = {**{r.symbol: k for k, r in rules.items()}, **{k: k for k in rules}}
    readable = {**names, **{k: k for k in known}}
    kinds = {**{k: r.kind for k, r in rules.items()}, **known}
    rows = table.get("rules", {})
    if not isinstance(rows, Mapping):
        faults.append(f"{place}: write the rules under [rules]")
        rows = {}
    out: dict[str, House] = {}
    for name, formula in rows.items():
        where = f"{place}, {name}"
        key = names.get(str(name), "")
        if not key:
            faults.append(f"{where}: {not_known(name, names)}")
            continue
        try:
            out[key] = _house(rules[key], formula, where, unit, readable, kinds)
        except HouseError as e:
            faults.append(str(e))
    if faults:
        raise HouseError("\n".join(faults))
    return out


def _house(
    rule: Rule,
    formula: object,
    where: str,
    unit: Unit,
    names: Mapping[str, str],
    kinds: Mapping[str, Kind],
) -> House:
    if isinstance(formula, bool) or not isinstance(formula, str | int | float):
        raise HouseError(f'{where}: write a number or a formula in "quotes"')
    shown = str(formula)
    try:
        if rule.kind is Kind.ANGLE and not any(ch.isalpha() for ch in shown):
            angle = parse_angle(formula)
            read = Formula((), lambda: angle)
        else:
            read = read_formula(shown, where, unit, names, rule.kind, kinds)
    except LengthError as e:
        raise HouseError(f"{where}: {e}") from None
    except FormulaError as e:
        raise HouseError(str(e)) from None
    made = replace(
        rule, needs=read.needs, compute=read.compute, formula=shown, sigma=None
    )
    return House(made, shown, where)
