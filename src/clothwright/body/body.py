"""A client's measures, as typed and in cm.

    client = "Brida Hollin"
    unit = "in"
    taken = 2027-02-06
    by = "M. T."

    [measures]
    B = "36 1/2"
    SS = "drop 1 7/8 on 5"

    [measures.left]     # only where the two sides differ
    SS = "20"

A measure goes by its code or its name. `size_table = "misses"` and `size = "12"` fill
in what is not taken from a published table. Every fault is one plain sentence.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from typing import Any

from clothwright.body.measures import by_name, measures
from clothwright.body.sizes import size_tables
from clothwright.rules import Given, Hand
from clothwright.units import (
    LengthError,
    MiswrittenError,
    Unit,
    did_you_mean,
    nearest,
    parse_angle,
    parse_length,
    read_toml,
)

TWICE = 0.6
"""A measure given twice may differ by this much, cm (R29)."""


class BodyError(ValueError):
    """Measures that cannot be used; one sentence a line."""


@dataclass(frozen=True)
class MeasureValue:
    """One measure of one body."""

    code: str
    value: float
    """cm, or degrees for SS."""

    typed: str
    hand: Hand = Hand.TAKEN
    taken: date | None = None
    by: str = ""


@dataclass(frozen=True)
class Body:
    """All measures of one body at one time."""

    client: str
    unit: Unit
    values: Mapping[str, MeasureValue]
    left: Mapping[str, MeasureValue] = field(default_factory=dict)
    right: Mapping[str, MeasureValue] = field(default_factory=dict)
    taken: date | None = None
    by: str = ""

    def __getitem__(self, code: str) -> float:
        return self.values[code].value

    def __contains__(self, code: str) -> bool:
        return code in self.values

    def get(self, code: str) -> float | None:
        """The value, or None when it was not taken."""
        v = self.values.get(code)
        return v.value if v else None

    def given(self) -> tuple[Given, ...]:
        """The measures as numbers of the rule graph."""
        return self._given

    @cached_property
    def _given(self) -> tuple[Given, ...]:
        table = measures()
        return tuple(
            Given(
                v.code,
                v.code,
                table[v.code].name,
                table[v.code].number_kind,
                v.value,
                v.hand,
                _origin(v),
            )
            for v in self.values.values()
        )

    @classmethod
    def of(
        cls,
        values: Mapping[str, float],
        *,
        client: str = "",
        unit: Unit = Unit.CM,
        hand: Hand = Hand.TAKEN,
    ) -> "Body":
        """A body from values in cm (SS in degrees), for tests and tables.

        Raises BodyError for a value that is no measure.
        """
        made = {}
        for code, v in values.items():
            if code not in measures():
                raise BodyError(_unknown(code, "the measures"))
            if not math.isfinite(v) or v <= 0:
                raise BodyError(_nothing(code, f"{v:g}", "the measures"))
            made[code] = MeasureValue(code, float(v), f"{v:g}", hand)
        return cls(client, unit, made)


def _origin(v: MeasureValue) -> str:
    if v.hand is Hand.SIZE_TABLE:
        return f"size table, {v.typed}"
    return f"taken {v.taken:%-d %B %Y}" if v.taken else "as given"


def read_body(text: str, place: str) -> Body:
    """A body from the text of a measures file. Raises BodyError."""
    how = 'each line is name = value, and fractions stand in "quotes"'
    try:
        table = read_toml(text, how)
    except MiswrittenError as e:
        raise BodyError(f"{place}: {e}") from None
    return body_from_tables(table, place)


def body_from_tables(table: Mapping[str, Any], place: str) -> Body:
    """A body from a table as TOML reads it. Raises BodyError with all faults."""
    if "feature" in table:
        named = table.get("measures")
        where = f"in {named}" if isinstance(named, str) else "in a file of their own"
        raise BodyError(f"{place} is an order; its measures stand {where}")
    faults: list[str] = []
    for key in table:
        if key not in _KEYS:
            if key == "estimates":
                faults.append(f"{place}: {key} stands in the order; leave it out")
                continue
            hint = did_you_mean(key, _KEYS, _CALLED) or "leave it out"
            faults.append(f"{place}: {key} is not known here; {hint}")
    units = {"cm": Unit.CM, "in": Unit.IN}
    if str(table.get("unit")) not in units:
        faults.append(f'{place}: say the unit: unit = "cm" or unit = "in"')
    unit = units.get(str(table.get("unit")), Unit.CM)
    taken = table.get("taken")
    if taken is not None and not isinstance(taken, date):
        faults.append(f"{place}: taken is a date, like taken = 2027-02-06")
        taken = None
    sized = _sized(table, place, faults)
    rows = table.get("measures", {} if sized else None)
    if not isinstance(rows, Mapping) or not (rows or sized):
        faults.append(f"{place}: there are no measures; write them under [measures]")
        rows = {}
    by = str(table.get("by", ""))
    sides: dict[str, Mapping[str, MeasureValue]] = {"left": {}, "right": {}}
    plain = {k: v for k, v in rows.items() if k not in sides}
    values = _values(plain, unit, taken, by, place, faults)
    for side in sides:
        part = rows.get(side, {})
        if isinstance(part, Mapping):
            sides[side] = _values(part, unit, taken, by, f"{place}, {side}", faults)
        else:
            faults.append(f"{place}: write [measures.{side}] as a table")
    values = {**sized, **values}
    for code in {*sides["left"], *sides["right"]} - set(values):
        both = [s[code] for s in sides.values() if code in s]
        mean = sum(v.value for v in both) / len(both)
        values[code] = MeasureValue(code, mean, both[0].typed, Hand.TAKEN, taken, by)
    client, odd = one_line(table, "client", "", place)
    faults += odd
    if faults:
        raise BodyError("\n".join(faults))
    return Body(
        client,
        unit,
        values,
        sides["left"],
        sides["right"],
        taken,
        by,
    )


LONGEST_LINE = 300
"""Letters in a name or a title that is printed."""


def one_line(
    table: Mapping[str, Any], key: str, usual: str, place: str
) -> tuple[str, list[str]]:
    """What is printed as a name or a title, and what is wrong with it."""
    text = str(table.get(key, usual))
    if len(text) > LONGEST_LINE:
        most = f"write at most {LONGEST_LINE} letters"
        return usual, [f"{place}: {key} is too long; {most}"]
    if not text.isprintable():
        return usual, [
            f"{place}: {key} holds a line break, or a sign that has no print; write it "
            "in one line of plain letters"
        ]
    return text, []


_KEYS = ("client", "unit", "taken", "by", "measures", "size_table", "size")

_CALLED = {
    "name": ("client",),
    "customer": ("client",),
    "date": ("taken",),
    "table": ("size_table",),
}
"""Other words for them."""


def _sized(
    table: Mapping[str, Any], place: str, faults: list[str]
) -> dict[str, MeasureValue]:
    """The measures of a size table, when the file names one."""
    if "size" not in table and "size_table" not in table:
        return {}
    tables = size_tables()
    name = table.get("size_table")
    if str(name) not in tables:
        words = " or ".join(f'"{t}"' for t in tables)
        faults.append(f"{place}: size_table = {name} is not known; write {words}")
        return {}
    sizes = tables[str(name)]
    size = str(table.get("size"))
    if size not in sizes:
        faults.append(
            f"{place}: the table {name} has no size {size}; it has {', '.join(sizes)}"
        )
        return {}
    return {
        code: MeasureValue(code, value, f"size {size}", Hand.SIZE_TABLE)
        for code, value in sizes[size].items()
    }


def _values(
    rows: Mapping[str, Any],
    unit: Unit,
    taken: date | None,
    by: str,
    place: str,
    faults: list[str],
) -> dict[str, MeasureValue]:
    out: dict[str, MeasureValue] = {}
    for name, typed in rows.items():
        code = by_name().get(name.strip().lower())
        if code is None:
            faults.append(_unknown(name, place))
            continue
        try:
            if not isinstance(typed, str | int | float) or isinstance(typed, bool):
                raise LengthError('write a number, like 36.5 or "36 1/2"')
            if measures()[code].kind == "angle":
                value = parse_angle(typed)
            else:
                value = parse_length(typed, unit)
        except LengthError as e:
            faults.append(f"{place}, {name}: {e}")
            continue
        if not value > 0:
            faults.append(_nothing(name, str(typed), place))
            continue
        old = out.get(code)
        if old is not None and abs(old.value - value) > TWICE:
            faults.append(
                f"{place}: {measures()[code].name} ({code}) is given twice, as "
                f"{old.typed} and as {typed}; keep the right one"
            )
        out[code] = MeasureValue(code, value, str(typed), Hand.TAKEN, taken, by)
    return out


def _unknown(name: str, place: str) -> str:
    near = [f"{by_name()[n]} ({n})" for n in nearest(name, sorted(by_name()))]
    hint = f"; did you mean {' or '.join(near)}?" if near else ""
    return f"{place}: {name} is no measure that is known here{hint}"


def _nothing(name: str, typed: str, place: str) -> str:
    return f"{place}, {name}: {typed} cannot be a measure; measure it again"
