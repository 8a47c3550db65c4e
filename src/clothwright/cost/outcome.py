"""The outcome: the estimate beside what it really took, and changes agreed later.

A file says what it really took; what it leaves out came as estimated:

    [minutes]                      # in all, by task
    loop = 140
    [spent]                        # in all, by the name of the line
    "ink crêpe" = 36.80

    [[change]]                     # agreed after the toile, added to the price
    what = "peplum 1/2 in longer"
    price = 12.00
"""

from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import NamedTuple

from clothwright.cost.money import CostError, rounded
from clothwright.cost.sheet import CostSheet, Line, Row
from clothwright.features.operations import Task
from clothwright.order.file import OrderError, read_text
from clothwright.units import MiswrittenError, did_you_mean, read_toml


class Change(NamedTuple):
    """Something agreed after the estimate, and its price."""

    what: str
    price: Decimal


@dataclass(frozen=True)
class Actual:
    """What an order really took, as far as it was written down."""

    minutes: dict[Task, Decimal]
    spent: dict[str, Decimal]
    changes: tuple[Change, ...]
    place: str = "actual.toml"


class Both(NamedTuple):
    """A line of the estimate, and what it came to; None: as estimated."""

    line: Line
    actual: Decimal | None

    @property
    def came_to(self) -> Decimal:
        """What it cost."""
        return self.line.amount if self.actual is None else self.actual


@dataclass(frozen=True)
class Outcome:
    """Estimate and actual of every line."""

    sheet: CostSheet
    lines: tuple[Both, ...]
    changes: tuple[Change, ...]

    @property
    def full(self) -> Decimal:
        """What it really cost."""
        return sum((b.came_to for b in self.lines), Decimal(0))

    @property
    def price(self) -> Decimal:
        """The price with the changes, before discount and tax."""
        return self.sheet.price + sum((c.price for c in self.changes), Decimal(0))

    @property
    def left(self) -> Decimal:
        """What is left of the price, its discount taken off, when all is paid."""
        return self.price - self.sheet.discount - self.full


def outcome(sheet: CostSheet, actual: Actual) -> Outcome:
    """The estimate beside what it took. Raises CostError for a line that the estimate
    does not have."""
    rates = sheet.rates
    names = [x.name for x in sheet.lines if x.row in (Row.MATERIALS, Row.NOTIONS)]
    names += [x.name for x in sheet.lines if x.row is Row.OTHER]
    for name in actual.spent:
        if name not in names:
            raise CostError(_no_line(actual.place, "spent", name, names))
    tasks = [t.value for t in sheet.minutes]
    for task in actual.minutes:
        if task not in sheet.minutes:
            raise CostError(_no_line(actual.place, "minutes", task.value, tasks))
    by_task = {t.value: m for t, m in actual.minutes.items()}
    both: list[Both] = []
    for line in sheet.lines:
        found: Decimal | None = None
        if line.row is Row.MAKING and line.name in by_task:
            spent = by_task[line.name] * rates.hour / 60
            found = rounded(spent, rates.places)
        elif line.row is not Row.MAKING:
            found = actual.spent.get(line.name)
        both.append(Both(line, found))
    if actual.minutes:
        both = [_overhead(b, both, sheet, actual) for b in both]
    return Outcome(sheet, tuple(both), actual.changes)


def _overhead(b: Both, both: list[Both], sheet: CostSheet, actual: Actual) -> Both:
    """Overhead follows the making that was really done."""
    if b.line.row is not Row.OVERHEAD:
        return b
    rates = sheet.rates
    making = sum((x.came_to for x in both if x.line.row is Row.MAKING), Decimal(0))
    spent = sum({**sheet.minutes, **actual.minutes}.values(), Decimal(0))
    amount = making * rates.overhead_percent / 100 + spent * rates.overhead_hour / 60
    return b._replace(actual=rounded(amount, rates.places))


def _no_line(place: str, part: str, name: str, names: list[str]) -> str:
    hint = did_you_mean(name, names) or f"it has {', '.join(names)}"
    return f"{place}, [{part}]: the estimate has no {name}; {hint}"


def read_actual(path: Path) -> Actual:
    """What an order took, from a file. Raises CostError."""
    try:
        text = read_text(path, "what it took")
    except OrderError as e:
        raise CostError(*e.sentences) from e
    return actual_from_text(text, path.name)


def actual_from_text(text: str, place: str) -> Actual:
    """What an order took, from TOML. Raises CostError."""
    try:
        table = read_toml(text, "each line is name = value", Decimal)
    except MiswrittenError as e:
        raise CostError(f"{place}: {e}") from None
    faults = [
        f"{place}: {key} is not known here; it has [minutes], [spent] and [[change]]"
        for key in table
        if key not in ("minutes", "spent", "change")
    ]
    known = {t.value: t for t in Task}
    minutes: dict[Task, Decimal] = {}
    for name, got in _amounts(table.get("minutes", {}), place, "minutes", faults):
        if name in known:
            minutes[known[name]] = got
        else:
            faults.append(_no_line(place, "minutes", name, list(known)))
    spent = dict(_amounts(table.get("spent", {}), place, "spent", faults))
    changes = _changes(table.get("change", []), place, faults)
    if faults:
        raise CostError(*faults)
    return Actual(minutes, spent, changes, place)


def _amounts(
    part: object, place: str, name: str, faults: list[str]
) -> list[tuple[str, Decimal]]:
    if not isinstance(part, dict):
        faults.append(f"{place}: {name} is a table; write [{name}] and its lines below")
        return []
    out = []
    for key, got in part.items():
        amount = _amount(got)
        if amount is None:
            faults.append(
                f"{place}, [{name}]: {key} = {got!s} is no amount; write {key} = "
                "12.50, say"
            )
        else:
            out.append((str(key), amount))
    return out


def _amount(got: object, *, less: bool = False) -> Decimal | None:
    """An amount of 0 or more, or any with `less`; None for anything else."""
    if isinstance(got, bool) or not isinstance(got, int | Decimal):
        return None
    amount = Decimal(got)
    return amount if amount.is_finite() and (less or amount >= 0) else None


def _changes(rows: object, place: str, faults: list[str]) -> tuple[Change, ...]:
    wrong = (
        f"{place}: write each change under its own [[change]], with what = "
        '"longer peplum" and price = 12.00, say'
    )
    out = []
    for row in rows if isinstance(rows, list) else [rows]:
        price = None
        if isinstance(row, dict):  # a change may lower the price
            price = _amount(row.get("price"), less=True)
        if not isinstance(row, dict) or price is None or set(row) != {"what", "price"}:
            faults.append(wrong)
            break
        out.append(Change(str(row["what"]), price))
    return tuple(out)
