"""A size set: one order drafted for several bodies, or for sizes of a size table.

    [sizes]                      # in the order's file; the command line may say it too
    table = "misses"
    sizes = ["8", "10", "12", "14"]

    [sizes.measures]             # what the table lacks: one for all, or one for each
    HT = "65 1/2"
    H = ["38", "39", "40 1/2", "42"]

or `bodies = ["brida.toml", "thea.toml"]` in place of table and sizes.

Terminology
    size      one body of the set, by its short name: "12", or the name of a file.
    refused   a size that cannot be drafted, or whose checks fail: nothing is cut of it.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from clothwright.body import Body, BodyError, body_from_tables, read_body
from clothwright.body.sizes import size_tables
from clothwright.findings import Severity
from clothwright.finishing.drawn import DrawnPattern
from clothwright.order.draft import draft
from clothwright.order.figures import figures
from clothwright.order.file import (
    Order,
    OrderError,
    order_from_table,
    read_text,
    toml_table,
)
from clothwright.order.pattern import pattern
from clothwright.units import Unit

Typed = str | int | float

SHORT = 12
"""Longest name of a size, in letters: it stands in a gap of its line."""


@dataclass(frozen=True)
class Asked:
    """Which sizes are wanted; what is empty is read from the order's own [sizes]."""

    table: str = ""
    sizes: tuple[str, ...] = ()
    bodies: tuple[str, ...] = ()
    measures: Mapping[str, Typed | Sequence[Typed]] = field(default_factory=dict)


@dataclass(frozen=True)
class Sized:
    """One size of a set: its order, or why there is none."""

    name: str
    told: str
    """Whose it is, in words: "size 12 of the table misses"."""

    order: Order | None
    faults: tuple[str, ...] = ()


@dataclass(frozen=True)
class MadeSize:
    """One size drafted, checked and finished; or refused, and why."""

    name: str
    told: str
    drawn: DrawnPattern | None
    refused: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    """What the checks want looked at again."""

    figures: Mapping[str, Any] = field(default_factory=dict)
    """As `order.figures`; empty when not drafted, or not wanted."""

    drafted: bool = False
    """False when it could not be drafted at all."""


def read_size_set(path: Path, asked: Asked | None = None) -> tuple[Sized, ...]:
    """The sizes of an order file. Raises OrderError when the set itself is at fault;
    a size whose measures are at fault comes back with its sentences."""
    place, folder = path.name, path.parent
    table = toml_table(read_text(path, "the order"), place)
    wanted = _wanted(table.pop("sizes", {}), asked or Asked(), place)
    base = order_from_table(table, place, folder, Body("", Unit.CM, {}))
    if wanted.bodies:
        out = [_of_file(base, name, folder) for name in wanted.bodies]
    else:
        out = list(_of_table(base, wanted, place))
    names = [s.name for s in out]
    twice = sorted({n for n in names if names.count(n) > 1})
    if twice:
        raise OrderError(f"{place}: size {twice[0]} stands twice; leave one out")
    return tuple(out)


def _wanted(own: object, asked: Asked, place: str) -> Asked:
    """What is asked, filled up from the file's [sizes]; its faults as sentences."""
    if not isinstance(own, dict):
        raise OrderError(f"{place}: write the sizes under [sizes]")
    known = ("table", "sizes", "bodies", "measures")
    for key in own:
        if key not in known:
            raise OrderError(
                f"{place}, [sizes]: {key} is not known here; it takes "
                f"{', '.join(known)}"
            )
    measures = own.get("measures", {})
    if not isinstance(measures, dict):
        raise OrderError(f"{place}: write [sizes.measures] as a table")
    named = asked.table or asked.sizes or asked.bodies
    listed = _names(own, "sizes", place)
    if asked.sizes and set(asked.sizes) <= set(listed):  # some of the file's own
        at = [listed.index(s) for s in asked.sizes]
        measures = {
            k: [v[i] for i in at]
            if isinstance(v, list) and len(v) == len(listed)
            else v
            for k, v in measures.items()
        }
    bodies = asked.bodies or (() if named else _names(own, "bodies", place))
    wanted = Asked(
        table="" if bodies else asked.table or str(own.get("table", "")),
        sizes=() if bodies else asked.sizes or listed,
        bodies=bodies,
        measures={**measures, **asked.measures},
    )
    if own.get("bodies") and own.get("table") and not named:
        raise OrderError(f"{place}, [sizes]: name a table or bodies, not both")
    if asked.bodies and (asked.table or asked.sizes):
        raise OrderError("name a table and its sizes, or bodies, not both")
    if bodies and wanted.measures:
        raise OrderError(
            f"{place}, [sizes]: measures fill up a table; a body's stand in its own "
            "file"
        )
    if not bodies and not wanted.table:
        raise OrderError(
            f"{place}: which sizes? Name a table and its sizes (--table misses "
            "--sizes 8,10,12), files of bodies (--bodies brida.toml,thea.toml), or "
            "write a [sizes] table"
        )
    return wanted


def _names(own: Mapping[str, Any], key: str, place: str) -> tuple[str, ...]:
    got = own.get(key, [])
    if not isinstance(got, list):
        raise OrderError(f'{place}, [sizes]: {key} is a list, like ["8", "10"]')
    return tuple(str(g) for g in got)


def _of_file(base: Order, name: str, folder: Path) -> Sized:
    """A body of its own file, beside the order's unless it says another place."""
    short = Path(name).stem[:SHORT]
    try:
        body = read_body(read_text(folder / name, "the measures"), name)
    except (BodyError, OrderError) as e:
        return Sized(short, name, None, tuple(str(e).splitlines()))
    taken = f", measured {body.taken:%-d %B %Y}" if body.taken else ""
    return Sized(short, f"{body.client or name}{taken}", replace(base, body=body))


def _of_table(base: Order, wanted: Asked, place: str) -> Iterable[Sized]:
    """Sizes of a table, all of them when none is named."""
    tables = size_tables()
    if wanted.table not in tables:
        words = " or ".join(f'"{t}"' for t in tables)
        raise OrderError(
            f"{place}: the size table {wanted.table!r} is not known; write {words}"
        )
    rows = tables[wanted.table]
    sizes = wanted.sizes or tuple(rows)
    for size in sizes:
        if size not in rows:
            raise OrderError(
                f"{place}: the table {wanted.table} has no size {size}; it has "
                f"{', '.join(rows)}"
            )
    for code, given in wanted.measures.items():
        if isinstance(given, list | tuple) and len(given) not in (1, len(sizes)):
            raise OrderError(
                f"{place}, [sizes.measures]: {code} is given {len(given)} times for "
                f"{len(sizes)} sizes; give one for all, or one for each"
            )
    for i, size in enumerate(sizes):
        told = f"size {size} of the table {wanted.table}"
        try:
            body = body_from_tables(
                {
                    "client": f"Size {size}",
                    "unit": base.unit.value,
                    "size_table": wanted.table,
                    "size": size,
                    "measures": {k: _ith(v, i) for k, v in wanted.measures.items()},
                },
                f"{place}, size {size}",
            )
        except BodyError as e:
            yield Sized(size, told, None, tuple(str(e).splitlines()))
            continue
        yield Sized(size, told, replace(base, body=body))


def _ith(given: Typed | Sequence[Typed], i: int) -> Typed:
    if isinstance(given, str | int | float):
        return given
    return given[i] if len(given) > 1 else given[0]


def make_size(sized: Sized, *, words: bool = True, figured: bool = True) -> MadeSize:
    """Draft, check and finish one size. What is refused is not drawn.

    Without `words` its pieces are not lettered, which a nest does not need; with
    `figured` it comes with all its figures.
    """
    if sized.order is None:
        return MadeSize(sized.name, sized.told, None, sized.faults)
    try:
        made = pattern(draft(sized.order), words=words)
    except OrderError as e:
        return MadeSize(sized.name, sized.told, None, e.sentences)
    faults, doubts = (
        tuple(str(f) for f in made.findings if f.severity is severity)
        for severity in (Severity.REFUSE, Severity.WARN)
    )
    all_found = replace(made.draft, findings=made.findings)
    return MadeSize(
        sized.name,
        sized.told,
        None if made.failed else made.drawn,
        faults,
        doubts,
        figures(all_found) if figured else {},
        drafted=True,
    )
