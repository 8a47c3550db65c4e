"""At a fitting: what was seen, the alterations that could cure it on this draft, and
what a draft before and after has in common.

Lengths in cm. An amount is taken for each half; the candidates of what is seen are the
cures of its row (`features.fittings.seen`) that this order has a place for, each tried
on the draft itself.
"""

import copy
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from clothwright.curves import Vector, distance
from clothwright.features import KINDS
from clothwright.features.fitting import Fitting
from clothwright.features.fittings import BY_WORD
from clothwright.features.fittings.seen import Cure, Seen
from clothwright.finishing.wording import edge_words
from clothwright.order.draft import Draft, Workroom
from clothwright.order.file import Order, OrderError
from clothwright.order.fitted_rows import with_row, written
from clothwright.paper import Piece, Sheet
from clothwright.rules import Kind
from clothwright.units import Unit, pretty_length

CHANGED = 0.02
"""An edge whose length changes by less than this, cm, keeps its length."""

STAYED = 0.03
"""A corner this near to its old place, cm, has not moved."""


@dataclass(frozen=True)
class EdgeChange:
    """An edge's length before and after, cm; None where there is no such edge."""

    edge: str
    """"FS.armhole"."""

    before: float | None
    after: float | None


@dataclass(frozen=True)
class Changes:
    """What an alteration has changed on the finished table."""

    moved: tuple[str, ...]
    """Pieces whose outline is another."""

    edges: tuple[EdgeChange, ...]

    def pieces_told(self, sheet: Sheet) -> str:
        """Names of the pieces whose outline is another, as far as they are there."""
        found = (sheet.pieces[c].name for c in self.moved if c in sheet.pieces)
        return ", ".join(dict.fromkeys(found))

    def edges_told(self, sheet: Sheet, unit: Unit) -> list[str]:
        """Edges that read another length: "front, armhole: 9 in, then 8 in"."""
        out = []
        for e in self.edges:
            code, _, edge = e.edge.partition(".")
            old, new = (
                "none" if v is None else pretty_length(v, unit)
                for v in (e.before, e.after)
            )
            if old != new and code in sheet.pieces:
                name = sheet.pieces[code].name.lower()
                out.append(f"{name}, {edge_words(edge)}: {old}, then {new}")
        return out


@dataclass(frozen=True)
class Candidate:
    """A cure tried on this draft."""

    cure: Cure
    amount: float
    said: str
    """What is changed, in words and with its amount."""

    usual: tuple[float, float]
    most: float | None
    """What one slash takes, cm; None for a number of the order."""

    follows: str
    row: Mapping[str, Any]
    """What is to be written under its feature: a field, or an alteration."""

    order: Order
    draft: Draft | None
    refused: tuple[str, ...]
    """Why it cannot be had, in sentences; empty when every seam meets."""

    changes: Changes

    @property
    def kind(self) -> str:
        """The feature under which it is written."""
        return self.cure.feature or "fitting"

    @property
    def what(self) -> str:
        """Its field, or the alteration's word."""
        return self.cure.field or self.cure.do

    @property
    def counted(self) -> str:
        """On what the amount counts."""
        if self.cure.do:
            return BY_WORD[self.cure.do].counted
        return "all round" if self.cure.all_round else "each half"

    @property
    def in_two(self) -> float | None:
        """What two slashes take, cm; None where there is no second place."""
        kind = BY_WORD.get(self.cure.do)
        return kind.limit() if kind is not None and kind.second else None

    @property
    def change(self) -> float:
        """The amount, cm; below 0 where a number is made smaller."""
        return self.amount * (self.cure.way if self.cure.feature else 1)


def has_place_for(order: Order, cure: Cure) -> bool:
    """True where an order has what a cure alters: the block, or the feature."""
    if cure.do:
        return has_ground_for(order, cure.do)
    return order.feature(cure.feature) is not None


def has_ground_for(order: Order, do: str) -> bool:
    """True where an order has the block that an alteration is made on."""
    kind = BY_WORD.get(do)
    given = frozenset[str]().union(*(f.provides() for f in order.features))
    return kind is not None and given >= kind.wants().keys()


def candidates(
    order: Order,
    seen: Seen,
    amount: float | None = None,
    *,
    room: Workroom | None = None,
) -> tuple[Candidate, ...]:
    """The cures of what is seen, tried on this order by `amount` cm, or by what is
    usually tried first. Those that can be had come first. Raises OrderError when the
    order itself cannot be drafted."""
    room = room or Workroom()
    before = room.draft(order)
    found = []
    for cure in seen.cure:
        if not has_place_for(order, cure):
            continue
        by = cure.first(order.unit) if amount is None else amount
        tried = _tried(before, cure, by, room)
        if tried.refused or tried.changes.moved:
            found.append(tried)
    room.draft(order)
    return tuple(sorted(found, key=lambda c: bool(c.refused)))


def _tried(before: Draft, cure: Cure, by: float, room: Workroom) -> Candidate:
    order = before.order
    unit = order.unit
    nothing = Changes((), ())
    if cure.do:
        kind = BY_WORD[cure.do]
        usual, most, follows = kind.usual, kind.most, kind.follows
        said = f"{kind.title} by {pretty_length(by, unit)}"
        if kind.second and by > kind.most:
            said += f", half of it {kind.second}"
        row: dict[str, Any] = {"do": cure.do, "by": written(by, unit)}
    else:
        value = current(before, cure) + cure.way * by
        number = KINDS[cure.feature].numbers()[cure.field]
        usual, most, follows = cure.usual, None, cure.follows
        said = (
            f"{number.name} ({number.symbol}): from "
            f"{pretty_length(value - cure.way * by, unit)} to "
            f"{pretty_length(value, unit)}"
        )
        row = {cure.field: written(value, unit)}

    def candidate(
        after: Order, draft: Draft | None, why: tuple[str, ...], what: Changes
    ) -> Candidate:
        return Candidate(
            cure, by, said, usual, most, follows, row, after, draft, why, what
        )

    try:
        after = with_row(order, cure.feature or "fitting", row)
        draft = room.draft(after)
    except OrderError as e:
        return candidate(order, None, e.sentences, nothing)
    return candidate(after, draft, draft.failures(), changes(before.sheet, draft.sheet))


def taken_over(
    order: Order,
    kind: str,
    what: str,
    amount: float,
    *,
    room: Workroom | None = None,
) -> Candidate | None:
    """What was decided at another order's fitting, tried on this one; None when this
    order has no place for it, or has it already. Raises OrderError when the order
    itself cannot be drafted."""
    if kind == "fitting":
        fitting = order.feature(kind)
        had = fitting.alteration if isinstance(fitting, Fitting) else ()
        if not has_ground_for(order, what) or any(a.do == what for a in had):
            return None
        cure = Cure(do=what, start=amount, inch="0")
    else:
        feature = KINDS.get(kind)
        if order.feature(kind) is None or feature is None:
            return None
        if what not in feature.numbers():
            return None
        way = 1 if amount > 0 else -1
        cure = Cure(feature=kind, field=what, way=way, start=abs(amount), inch="0")
    room = room or Workroom()
    return _tried(room.draft(order), cure, abs(amount), room)


def told_again(kind: str, what: str, amount: float, unit: Unit) -> str:
    """What was decided, in words that another order understands: "tightening of the
    front armhole (ta) by ¼ in more"."""
    by = pretty_length(abs(amount), unit)
    if kind == "fitting":
        return f"{BY_WORD[what].title if what in BY_WORD else what} by {by}"
    feature = KINDS.get(kind)
    number = feature.numbers().get(what) if feature else None
    name = f"{number.name} ({number.symbol})" if number else what
    return f"{name} {by} {'more' if amount > 0 else 'less'}"


def current(draft: Draft, cure: Cure) -> float:
    """What the number of a cure is now, cm."""
    number = KINDS[cure.feature].numbers()[cure.field]
    return draft.numbers[number.key]


# -- before and after ------------------------------------------------------------------
def changes(before: Sheet, after: Sheet) -> Changes:
    """What is another on the second table: outlines, and lengths of edges."""
    codes = [c for c in before.pieces if c in after.pieces]
    codes += [c for c in after.pieces if c not in before.pieces]
    moved, edges = [], []
    for code in codes:
        old, new = before.pieces.get(code), after.piece(code)
        if old is None or _another(old, new):
            moved.append(code)
        names = [e.name for e in new.edges]
        names += [e.name for e in old.edges if not new.has(e.name)] if old else []
        for name in names:
            a = old.edge(name).length if old and old.has(name) else None
            b = new.edge(name).length if new.has(name) else None
            if a is None or b is None or abs(a - b) >= CHANGED:
                edges.append(EdgeChange(f"{code}.{name}", a, b))
    gone = [c for c in before.pieces if c not in after.pieces]
    return Changes((*moved, *gone), tuple(edges))


def _another(old: Piece, new: Piece) -> bool:
    by = laid_over(old, new)
    if len(old.edges) != len(new.edges):
        return True
    return any(
        distance(a.path.at_length(a.length * t) + by, b.path.at_length(b.length * t))
        > STAYED
        for a, b in zip(old.edges, new.edges, strict=True)
        for t in (0.0, 0.5)
    )


def laid_over(old: Piece, new: Piece) -> Vector:
    """How the old piece is shifted to lie over the new one: so that most of its corners
    fall together, and of such ways the shortest."""
    shared = [e.name for e in new.edges if old.has(e.name)]
    ways = [new.edge(n).path.start - old.edge(n).path.start for n in shared] or [
        Vector(0.0, 0.0)
    ]

    def how_well(way: Vector) -> tuple[int, float]:
        gaps = [distance(way, w) for w in ways]
        return -sum(g < STAYED for g in gaps), distance(way, Vector(0.0, 0.0))

    return min(ways, key=how_well)


def compared(before: Draft, after: Draft) -> dict[str, Any]:
    """Before and after as plain data: numbers chosen otherwise, lengths of edges (cm),
    pieces that have moved, and whether every seam meets."""
    what = changes(before.sheet, after.sheet)
    return {
        "format": 1,
        "order": after.order.number,
        "client": after.order.body.client,
        "amounts": amounts(before, after),
        "pieces": list(what.moved),
        "edges": {
            e.edge: {"before": _round(e.before), "after": _round(e.after)}
            for e in what.edges
        },
        "seams meet": not after.failed,
        "failures": list(after.failures()),
    }


def _round(cm: float | None) -> float | None:
    return None if cm is None else round(cm, 4)


def amounts(old: Draft, new: Draft) -> list[str]:
    """What the second order has otherwise, in sentences without a full stop."""
    before, after = old.order, new.order
    unit, out = after.unit, []
    for f in after.features:
        had = before.feature(f.kind)
        if isinstance(f, Fitting):
            known = had.alteration if isinstance(had, Fitting) else ()
            out += [
                a.told(pretty_length(a.by, unit))
                for a in f.alteration
                if a not in known
            ]
            continue
        if had is None:
            out.append(f"{f.kind} added")
            continue
        for field, number in f.numbers().items():
            if getattr(had, field) == getattr(f, field):
                continue
            was, now = (
                show(d.numbers[number.key], number.kind, unit) for d in (old, new)
            )
            if was != now:
                out.append(f"{number.name} ({number.symbol}): from {was} to {now}")
    out += [
        f"{f.kind} left off" for f in before.features if after.feature(f.kind) is None
    ]
    return out


def show(value: float, kind: Kind, unit: Unit) -> str:
    """A number of an order in the user's unit."""
    return pretty_length(value, unit) if kind is Kind.LENGTH else f"{value:g}"


def in_table(table: Mapping[str, Any], c: Candidate) -> dict[str, Any]:
    """An order's table with a candidate written into it."""
    out = copy.deepcopy(dict(table))
    rows: list[dict[str, Any]] = out.setdefault("feature", [])
    mine = next((r for r in rows if r.get("kind") == c.kind), None)
    if c.kind != "fitting":
        if mine is not None:
            mine.update(c.row)
        return out
    unit = c.order.unit
    fitting = c.order.feature("fitting")
    assert isinstance(fitting, Fitting)
    told = [{"do": a.do, "by": written(a.by, unit)} for a in fitting.alteration]
    if mine is None:
        at = next((i for i, r in enumerate(rows) if _is_block(r.get("kind"))), -1)
        rows.insert(at + 1, {"kind": "fitting", "alteration": told})
    else:
        mine["alteration"] = told
    return out


def _is_block(kind: object) -> bool:
    return isinstance(kind, str) and kind in KINDS and "block" in KINDS[kind].gives
