"""One slip open: changes are tried, kept, taken back; the paper is drawn anew.

A change whose numbers cannot be drawn is refused with a sentence, and with the nearest
value that can be; a feature that lacks another, or does not go with it, may stand on
the slip, which then says so with the ways out, while the last paper stays.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import Any

from clothwright.app.cloth_words import changed_cloth
from clothwright.app.fitting import AtFitting, fitting_sentences
from clothwright.app.keeper import Keeper, Refusal
from clothwright.app.own_steps import steps_of_slip, with_steps
from clothwright.app.slipfile import (
    add_feature,
    feature_type,
    leave_off,
    read_slip,
    row,
    set_field,
    write_slip,
)
from clothwright.app.table import Table
from clothwright.app.words import Reading, label, say_choice, say_size
from clothwright.body import BodyError, measures
from clothwright.features import Feature
from clothwright.order import Draft, Order, OrderError, Workroom
from clothwright.order.file import order_from_table
from clothwright.order.together import disagreements
from clothwright.rules import Kind
from clothwright.units import (
    LengthError,
    Unit,
    format_length,
    parse_angle,
    parse_length,
    parse_plain,
)

PLACE = "the slip"
HOUSE = "the house rules"
SAME = 0.06
"""Figures nearer than this are one, cm: they were rounded on their way."""

TRIES = 7
"""Halvings on the way to the nearest value that can be drawn."""


@dataclass
class Room:
    """One slip on the table."""

    keeper: Keeper
    workroom: Workroom = field(default_factory=Workroom)
    table: Table = field(default_factory=Table)
    basting: bool = False
    """True when changes are tried and not kept."""

    tried: list[str] = field(default_factory=list)
    """What was basted, change by change."""

    revision: int = 0
    said: str = ""

    def __post_init__(self) -> None:
        """Raises OrderError when the kept order cannot even be read."""
        self.house = self.keeper.house()
        self.stitched = read_slip(self.keeper.text())
        basted = self.keeper.basted()
        self.basting = basted is not None
        self.tried = [basted] if basted is not None else []
        self.now = read_slip(basted) if basted is not None else self.stitched
        self.read: tuple[Mapping[str, Any], Order] | None = None
        self.shown = self.now
        self.order = self._order(self.now)
        self.draft: Draft | None = None
        self.settled: Draft | None = None
        self.faults: tuple[str, ...] = ()
        self.paper: dict[str, Any] = {
            "pieces": {},
            "places": {},
            "rows": [],
            "seams": {},
            "found": (),
        }
        self.under: dict[str, str] = {}
        self.card = self.keeper.card(self._unit())
        self.fitting = AtFitting(self.keeper)
        self._redraw()

    # -- changes --------------------------------------------------------------------
    def change(self, op: Mapping[str, Any]) -> Refusal | None:
        """Make one change. Gives the refusal when it cannot be made."""
        do = str(op.get("do", ""))
        made = _CHANGES.get(do)
        if made is not None and str(op.get("of", "")).startswith("cloth:"):
            made = Room._cloth
        if made is None:
            return Refusal("", f"the slip knows no change called {do}")
        try:
            refusal = made(self, op)
        except (OrderError, LengthError, BodyError) as e:
            refusal = Refusal(str(op.get("of", op.get("kind", ""))), _told(e))
            if self.shown is not self.now:
                self._redraw()
        self.revision += 1
        return refusal

    def _keep(self, table: dict[str, Any], said: str) -> None:
        """Draw a changed order and keep it, stitched or basted."""
        try:
            self._draw(table)
        except OrderError as e:
            if not disagreements(self.order.features):
                raise
            self.faults = e.sentences
        text = write_slip(table)
        if self.basting:
            self.keeper.baste(text, said)
            self.tried.append(text)
        else:
            self.keeper.stitch(text, said)
            self.stitched = table
        self.now = table
        self.said = said
        self._settle()

    def _set(self, op: Mapping[str, Any]) -> Refusal | None:
        """A number, pulled (`cm`) or typed (`to`); `live` while it is being pulled."""
        kind, name = _split(op)
        feature, typed = self._typed(kind, name, op)
        table = set_field(self.now, kind, name, typed)
        try:
            if op.get("live"):
                self._draw(table)
                return None
            old = self._say(feature, name)
            said = f"{_cap(label(feature, name))} {self._wanted(feature, name, typed)}"
            self._keep(table, f"{said}, was {old}")
        except OrderError as e:
            nearest = self._nearest(kind, name, typed) if not op.get("live") else None
            self._redraw()
            return Refusal(f"{kind}.{name}", _told(e), nearest)
        return None

    def _wanted(self, feature: Feature, name: str, typed: str | float) -> str:
        number, unit = feature.numbers()[name], self._unit()
        value = parse_length(typed, unit) if isinstance(typed, str) else typed
        return say_size(value, number.kind, unit)

    def _typed(
        self, kind: str, name: str, op: Mapping[str, Any]
    ) -> tuple[Feature, str | float]:
        """What is written in the order for a number. Raises OrderError, LengthError."""
        feature = self._feature(kind)
        number = feature.numbers().get(name)
        if number is None:
            raise OrderError(f"{PLACE}, {kind}: {name} is not a number")
        unit = self._unit()
        length = number.kind is Kind.LENGTH
        if "cm" in op:
            value = float(op["cm"])
            return feature, format_length(value, unit) if length else round(value, 3)
        to = str(op.get("to", "")).strip()
        in_unit = {"in": Unit.IN, "cm": Unit.CM}.get(str(op.get("unit")), unit)
        if length:
            return feature, format_length(parse_length(to, in_unit), unit)
        if number.kind is Kind.ANGLE:
            return feature, parse_angle(to)
        return feature, parse_plain(to)

    def _choose(self, op: Mapping[str, Any]) -> None:
        kind, name = _split(op)
        feature = self._feature(kind)
        if name in feature.numbers():
            raise OrderError(f"{PLACE}, {kind}: {name} is a number; set it")
        was, to = say_choice(getattr(feature, name)), op.get("to")
        said = f"{_cap(label(feature, name))}: {say_choice(to)}, was {was}"
        self._keep(set_field(self.now, kind, name, to), said)

    def _rule(self, op: Mapping[str, Any]) -> None:
        kind, name = _split(op)
        said = f"{_cap(label(feature_type(kind), name))} as the rule says"
        self._keep(set_field(self.now, kind, name, None), said)

    def _add(self, op: Mapping[str, Any]) -> None:
        kind = str(op.get("kind", ""))
        table = add_feature(self.now, kind)
        for name, value in dict(op.get("with", {})).items():
            table = set_field(table, kind, str(name), value)
        self._keep(table, f"{_cap(kind)} added")

    def _leave(self, op: Mapping[str, Any]) -> None:
        kind = str(op.get("kind", ""))
        self._keep(leave_off(self.now, kind), f"{_cap(kind)} left off")

    def _cloth(self, op: Mapping[str, Any]) -> None:
        """A word of a cloth; while its tape is pulled nothing is drawn."""
        if not op.get("live"):
            self._keep(*changed_cloth(self.now, str(op["of"]), op, self._unit()))

    def _own_steps(self, op: Mapping[str, Any]) -> None:
        """Her own steps, all anew."""
        said = "Steps by hand" if op.get("steps") else "No steps by hand"
        self._keep(with_steps(self.now, op.get("steps")), said)

    def _name_steps(self, op: Mapping[str, Any]) -> None:
        """Keep the steps under a name in the house rules, and call them by it."""
        name = " ".join(str(op.get("name", "")).split())
        if not name:
            raise OrderError("write a name to keep the steps under")
        steps = steps_of_slip(self.now)
        self.house = self.keeper.keep_style(name, steps, self._unit())
        table = set_field(self.now, "by hand", "step", None)
        self._keep(set_field(table, "by hand", "style", name), f"Style {name} kept")

    def _look(self, op: Mapping[str, Any]) -> None:
        """Point at a place of the body, or at what is seen there."""
        self.fitting.look(op, self._kept(), self.now)

    def _fit(self, op: Mapping[str, Any]) -> None:
        """Alter the slip after a fitting."""
        table, said, decision = self.fitting.chosen(op, self._kept(), self.now)
        self._keep(dict(table), said)
        if decision is not None:
            tried = len(self.tried) if self.basting else None
            self.fitting.decided(decision, tried)

    def _measure(self, op: Mapping[str, Any]) -> Refusal | None:
        code = str(op.get("of", "")).removeprefix("m:")
        if code not in measures():
            raise OrderError(f"{code} is no measure that is known here")
        m = measures()[code]
        typed = str(op.get("to", "")).strip()
        unit = {"in": Unit.IN, "cm": Unit.CM}.get(str(op.get("unit")), self._unit())
        if m.kind == "angle":
            parse_angle(typed)
        else:
            typed = format_length(parse_length(typed, unit), self._unit())
        if not self.basting:
            asked = self.keeper.measure(code, typed, self._unit(), bool(op.get("keep")))
            if asked:
                keep = {**op, "keep": True, "say": "Keep it"}
                return Refusal(f"m:{code}", asked, keep)
            self.card = self.keeper.card(self._unit())
        self._take_measures({code: typed}, f"{_cap(m.said)} {typed}")
        return None

    def _card(self, op: Mapping[str, Any]) -> None:
        """Take up the newest figures of the card."""
        self._take_measures(self.newer(), "Measured again")

    def newer(self) -> dict[str, str]:
        """Figures on the card that are others than the slip's, as written."""
        mine = self.order.body.values
        unit = self._unit()
        out = {}
        for code, typed in self.card.items():
            angle = measures()[code].kind == "angle"
            value = parse_angle(typed) if angle else parse_length(typed, unit)
            if code not in mine or abs(mine[code].value - value) > SAME:
                out[code] = typed
        return out

    def _take_measures(self, typed: Mapping[str, str], said: str) -> None:
        table = dict(self.now)
        table["measures"] = {**table.get("measures", {}), **typed}
        table["taken"] = date.today()
        self._keep(table, said)

    def _baste(self, op: Mapping[str, Any]) -> None:
        self.basting = True
        self.said = "Changes are tried and not kept until they are stitched"

    def _stitch(self, op: Mapping[str, Any]) -> None:
        if self.tried:
            self.keeper.stitch(write_slip(self.now), "What was basted is stitched")
            self.stitched = self.now
            self.tried = []
            self.fitting.stitched()
        self.basting = False
        self.said = "Stitched"
        self._lay_under()

    def _unpick(self, op: Mapping[str, Any]) -> None:
        if self.tried:
            self.tried.pop()
            self.fitting.unpicked(len(self.tried))
            left = self.tried[-1] if self.tried else None
            self.keeper.baste(left, "Unpicked")
            self.now = read_slip(left) if left else self.stitched
            self.basting = bool(self.tried)
        elif self.basting:
            self.basting = False
        elif not self.keeper.undo():
            raise OrderError("there is nothing to unpick")
        else:
            self.now = self.stitched = read_slip(self.keeper.text())
        self.said = "Unpicked"
        self._redraw()

    def _again(self, op: Mapping[str, Any]) -> None:
        if self.tried:
            raise OrderError("stitch or unpick what is basted first")
        if not self.keeper.redo():
            raise OrderError("there is nothing to make again")
        self.now = self.stitched = read_slip(self.keeper.text())
        self.said = "Made again"
        self._redraw()

    def reread(self) -> None:
        """Take up what another program has kept meanwhile."""
        self.__post_init__()
        self.revision += 1

    # -- drawing --------------------------------------------------------------------
    def reading(self, unit: Unit) -> Reading:
        """What the slip is told from, in the reader's unit."""
        against = disagreements(self.order.features)
        return Reading(
            self.shown,
            self.stitched,
            self.order.features,
            self.order.body,
            None if self.faults else self.draft,
            against,
            () if against else self.faults,
            unit,
            self.house,
            self.paper["found"],
            self.newer(),
            fitting_sentences(self.fitting, self.order, self.now, unit),
        )

    def _order(self, table: Mapping[str, Any]) -> Order:
        order = order_from_table(dict(table), PLACE, Path())
        if not self.house:
            return order
        return replace(order, house_text=self.house, house_place=HOUSE)

    def _kept(self) -> Order:
        """The kept order, read once while a number is being pulled."""
        if self.read is None or self.read[0] is not self.now:
            self.read = self.now, self._order(self.now)
        return self.read[1]

    def _draw(self, table: dict[str, Any]) -> None:
        """Put an order on the table; when it cannot be drafted the last paper stays.

        Raises OrderError.
        """
        self.order = self._order(table)
        self.shown = table
        self.draft = self.workroom.draft(self.order)
        self.paper = self.table.lay(self.draft)
        self.faults = ()

    def _redraw(self) -> None:
        """Put the kept order on the table again."""
        try:
            self._draw(self.now)
        except OrderError as e:
            self.faults = e.sentences
        self._settle()

    def _settle(self) -> None:
        """The order on the table is the kept one, and no number is being pulled."""
        self.settled = None if self.faults else self.draft
        self._lay_under()

    def _lay_under(self) -> None:
        """The stitched outlines that lie beneath basted paper."""
        self.under = {}
        if self.now == self.stitched:
            return
        try:
            old = Workroom().draft(self._order(self.stitched))
        except OrderError:
            return
        pieces = Table().lay(old)["pieces"]
        self.under = {
            code: p["cut"]
            for code, p in pieces.items()
            if code not in self.paper["pieces"]
            or self.paper["pieces"][code]["cut"] != p["cut"]
        }

    def _nearest(
        self, kind: str, name: str, typed: str | float
    ) -> dict[str, Any] | None:
        """The value nearest to the wanted one that can be drawn."""
        number = feature_type(kind).numbers()[name]
        if self.settled is None or number.key not in self.settled.numbers:
            return None
        unit = self._unit()
        good = self.settled.numbers[number.key]
        bad = parse_length(typed, unit) if isinstance(typed, str) else float(typed)
        start = good
        for bound in (number.low, number.high):
            if bound is not None and min(good, bad) <= bound <= max(good, bad):
                bad = bound
        for i in range(TRIES):
            mid = bad if i == 0 else (good + bad) / 2
            try:
                trial = set_field(
                    self.now, kind, name, _written(mid, number.kind, unit)
                )
                Workroom().draft(self._order(trial))
                good = mid
                if i == 0:
                    break
            except OrderError:
                bad = mid
        if abs(good - start) < 0.05:
            return None
        written = _written(good, number.kind, unit)
        return {
            "do": "set",
            "of": f"{kind}.{name}",
            "to": written,
            "say": f"Make it {say_size(good, number.kind, unit)}",
        }

    def _feature(self, kind: str) -> Feature:
        row(self.now, kind)
        return next(f for f in self._kept().features if f.kind == kind)

    def _say(self, feature: Feature, name: str) -> str:
        number = feature.numbers()[name]
        value = getattr(feature, name)
        if self.settled is not None and number.key in self.settled.numbers:
            value = self.settled.numbers[number.key]
        return (
            "by rule" if value is None else say_size(value, number.kind, self._unit())
        )

    def _unit(self) -> Unit:
        return Unit.IN if self.now.get("unit") == "in" else Unit.CM


_CHANGES: Mapping[str, Callable[[Room, Mapping[str, Any]], Refusal | None]] = {
    "set": Room._set,
    "choose": Room._choose,
    "rule": Room._rule,
    "add": Room._add,
    "leave": Room._leave,
    "own steps": Room._own_steps,
    "name steps": Room._name_steps,
    "look": Room._look,
    "take": Room._fit,
    "take over": Room._fit,
    "let out": Room._fit,
    "measure": Room._measure,
    "card": Room._card,
    "baste": Room._baste,
    "stitch": Room._stitch,
    "unpick": Room._unpick,
    "again": Room._again,
}


def _written(value: float, kind: Kind, unit: Unit) -> str | float:
    return format_length(value, unit) if kind is Kind.LENGTH else round(value, 3)


def _split(op: Mapping[str, Any]) -> tuple[str, str]:
    kind, _, name = str(op.get("of", "")).rpartition(".")
    if name not in feature_type(kind).model_fields:
        raise OrderError(f"{PLACE}, {kind}: {name} is not one of its settings")
    return kind, name


def _told(e: Exception) -> str:
    text = " ".join(str(e).splitlines())
    text = re.sub(rf"^{PLACE}(, feature \d+ \([^)]*\))?[:,] ", "", text)
    return _cap(text) + ("" if text.endswith(".") else ".")


def _cap(text: str) -> str:
    return text[:1].upper() + text[1:]
