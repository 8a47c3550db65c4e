"""The fitting on a slip: what is seen, its candidates, what was taken over.

She points at a place, then at what is seen there; the candidates are tried on the draft
and told with what they move. Taking one writes it on the slip; stitched, it is kept in
the book with what was seen.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, NamedTuple, Protocol

from clothwright.app.sentence import Opens, Pen, Sentence, Word
from clothwright.app.slipfile import Table, leave_off, set_field
from clothwright.features.fitting import Fitting
from clothwright.features.fittings.seen import Seen, all_seen, seen_by
from clothwright.order import Order, OrderError, Workroom
from clothwright.order.fitted_rows import written
from clothwright.order.fittings import (
    Candidate,
    candidates,
    has_ground_for,
    has_place_for,
    in_table,
    taken_over,
    told_again,
)
from clothwright.units import Unit, opening, pretty_length

STEP = {Unit.IN: 2.54 / 8, Unit.CM: 0.3}
"""A little more or less, cm."""


class Decision(NamedTuple):
    """What goes into the book when a change is stitched."""

    seen: str
    said: str
    kind: str
    what: str
    amount: float


class Offer(NamedTuple):
    """What was decided at the client's last fitting."""

    slip: int
    seen: str
    kind: str
    what: str
    amount: float


@dataclass(frozen=True)
class Looking:
    """What she looks at: a place, what is seen there, and what could cure it."""

    place: str = ""
    seen: str = ""
    found: tuple[Candidate, ...] = ()
    on: Table | None = None
    """The order that the candidates were tried on."""


class Keeper(Protocol):
    """Where what was decided at fittings is kept."""

    def offers(self) -> tuple[Offer, ...]:
        """What was decided at the client's last fitting, of another slip."""
        ...

    def decide(self, decision: Decision) -> None:
        """Keep what was seen and decided at a fitting."""
        ...


@dataclass
class AtFitting:
    """The fitting of one slip on the table."""

    keeper: Keeper
    looking: Looking = field(default_factory=Looking)
    basted: list[tuple[int, Decision]] = field(default_factory=list)
    """What was decided by changes that are basted, with how many these were then."""

    def __post_init__(self) -> None:
        self.offers = self.keeper.offers()

    def look(self, op: Mapping[str, Any], order: Order, on: Table) -> None:
        """A place, or something seen, is pointed at. Raises OrderError."""
        if "seen" not in op:
            self.looking = Looking(place=str(op.get("place", "")))
            return
        by = op.get("by")
        if by is not None and (not isinstance(by, int | float) or not 0 < by < 20):
            raise OrderError("say how much, more than nothing")
        try:
            row = seen_by(str(op["seen"]))
        except ValueError as e:
            raise OrderError(str(e)) from None
        amount = None if by is None else float(by)
        found = candidates(order, row, amount, room=Workroom())
        self.looking = Looking(row.place, row.words, found, on)

    def chosen(
        self, op: Mapping[str, Any], order: Order, on: Table
    ) -> tuple[Table, str, Decision | None]:
        """The slip with a candidate taken, with something of her last fitting taken
        over, or without one of its alterations; what to say of it; and what was
        decided. Raises OrderError."""
        if op.get("do") == "let out":
            return _let_out(op, order, on), "An alteration left off", None
        if op.get("do") == "take":
            c, seen = self._taken(op, on)
        else:
            c, seen = self._carried(op, order)
        if c.refused:
            raise OrderError(*c.refused)
        decision = Decision(seen, c.said, c.kind, c.what, c.change)
        return in_table(on, c), f"At the fitting: {c.said}", decision

    def _taken(self, op: Mapping[str, Any], on: Table) -> tuple[Candidate, str]:
        if self.looking.on is not on:
            raise OrderError("the slip has changed since; point at what is seen again")
        n = _which(op, len(self.looking.found), "there is no such candidate")
        return self.looking.found[n], self.looking.seen

    def _carried(self, op: Mapping[str, Any], order: Order) -> tuple[Candidate, str]:
        n = _which(op, len(self.offers), "there is no such thing to take over")
        o = self.offers[n]
        c = taken_over(order, o.kind, o.what, o.amount)
        if c is None:
            raise OrderError("this order has no place for it")
        return c, f"{o.seen} (slip {o.slip})"

    def decided(self, decision: Decision, tried: int | None) -> None:
        """Keep what was decided, at once or, when it is basted (the how manieth of the
        basted changes), with the stitching."""
        self.looking = Looking()
        if tried is not None:
            self.basted.append((tried, decision))
            return
        self.keeper.decide(decision)
        self.offers = self.keeper.offers()

    def stitched(self) -> None:
        """What was basted is kept."""
        for _, decision in self.basted:
            self.keeper.decide(decision)
        self.basted = []
        self.offers = self.keeper.offers()

    def unpicked(self, tried: int) -> None:
        """Only so many basted changes are left."""
        self.basted = [b for b in self.basted if b[0] <= tried]


def _which(op: Mapping[str, Any], count: int, none: str) -> int:
    n = op.get("which")
    if not isinstance(n, int) or not 0 <= n < count:
        raise OrderError(none)
    return n


def _let_out(op: Mapping[str, Any], order: Order, on: Table) -> Table:
    fitting = order.feature("fitting")
    had = fitting.alteration if isinstance(fitting, Fitting) else ()
    n = _which(op, len(had), "there is no such alteration on the slip")
    kept = [a for i, a in enumerate(had) if i != n]
    if not kept:
        return leave_off(on, "fitting")
    rows = [{"do": a.do, "by": written(a.by, order.unit)} for a in kept]
    return set_field(on, "fitting", "alteration", rows)


# -- told ------------------------------------------------------------------------------
def fitting_sentences(
    at: AtFitting, order: Order, on: Table, unit: Unit
) -> tuple[Sentence, ...]:
    """The paragraph of the fitting."""
    looking = at.looking
    return (
        *_offered(at.offers, order, unit),
        _pointing(order),
        *_seen(looking, order),
        *_candidates(looking, on, unit),
        *_on_slip(order, unit),
    )


def _act(of: str, say: str, **do: Any) -> Word:
    return Word(of, say, Pen.INK, Opens.ACT, do=do)


def _pointing(order: Order) -> Sentence:
    """The places of her body that this garment covers."""
    runs: list[str | Word] = ["What is seen on her? Point at the "]
    places = list(dict.fromkeys(s.place for s in _curable(order)))
    for i, place in enumerate(places):
        if i:
            runs.append(" or " if i == len(places) - 1 else ", ")
        runs.append(_act(f"look {place}", place, do="look", place=place))
    return Sentence("fitting", (*runs, "."))


def _curable(order: Order) -> Iterator[Seen]:
    """What can be seen where this garment covers her."""
    return (s for s in all_seen() if any(has_place_for(order, c) for c in s.cure))


def _seen(looking: Looking, order: Order) -> Iterator[Sentence]:
    if not looking.place or looking.seen:
        return
    here = [s for s in _curable(order) if s.place == looking.place]
    for s in here:
        word = _act(f"see {s.words}", s.words, do="look", seen=s.words)
        yield Sentence(f"see {s.words}", (word, "?"))
    if not here:
        yield Sentence("see nothing", ("Nothing is known of that place.",))


def _candidates(looking: Looking, on: Table, unit: Unit) -> Iterator[Sentence]:
    if not looking.seen or looking.on is not on:
        return
    if not looking.found:
        yield Sentence("no cure", (f"Nothing here cures “{looking.seen}”.",))
    for i, c in enumerate(looking.found):
        yield _candidate(looking, i, c, unit)


def _candidate(looking: Looking, i: int, c: Candidate, unit: Unit) -> Sentence:
    head = f"Seen: {looking.seen}. " if i == 0 else "Or: "
    said = f"{head}{opening(c.said)}. "
    step = STEP[unit]

    def other(say: str, by: float) -> Word:
        return _act(f"cure {i} {say}", say, do="look", seen=looking.seen, by=by)

    change: list[str | Word] = [other("a little more", c.amount + step), "."]
    if c.amount - step > 0.05:
        less = "a little less" if c.refused else "A little less"
        change = [other(less, c.amount - step), " or ", *change]
    low, high = (pretty_length(v, unit) for v in c.usual)
    usual = f"Usual is {low} to {high} {c.counted}."
    if c.refused:
        return Sentence(
            f"cure {i}",
            (said, "It cannot be drawn so; try ", *change),
            said=tuple((s,) for s in c.refused),
        )
    take = _act(f"cure {i}", "Take it", do="take", which=i)
    more = Word(f"moves {i}", "what moves", Pen.INK, Opens.REST, "what it moves")
    runs = (said, take, ". ", *change, f" {usual} {opening(c.follows)}: ", more, ".")
    return Sentence(f"cure {i}", runs, rest=(_moved(c, unit),))


def _moved(c: Candidate, unit: Unit) -> str:
    """Pieces that move, and edges that change their length, in words."""
    assert c.draft is not None
    sheet = c.draft.sheet
    told = map(opening, c.changes.edges_told(sheet, unit))
    return ". ".join([f"It moves: {c.changes.pieces_told(sheet)}", *told]) + "."


def _on_slip(order: Order, unit: Unit) -> Iterator[Sentence]:
    fitting = order.feature("fitting")
    if not isinstance(fitting, Fitting):
        return
    for i, a in enumerate(fitting.alteration):
        out = _act(f"let out {i}", "Leave it off", do="let out", which=i)
        says = opening(a.told(pretty_length(a.by, unit)))
        yield Sentence(f"altered {i}", (f"{says}. ", out, "."))


def _offered(offers: tuple[Offer, ...], order: Order, unit: Unit) -> Iterator[Sentence]:
    for i, o in enumerate(offers):
        if o.kind == "fitting":
            if not has_ground_for(order, o.what):
                continue
        elif order.feature(o.kind) is None:
            continue
        again = told_again(o.kind, o.what, o.amount, unit)
        take = _act(f"over {i}", "take it over", do="take over", which=i)
        said = f"At her last fitting (slip {o.slip}): {again}: "
        yield Sentence(f"over {i}", (said, take, "?"))
