"""One slip open: changes are tried, kept, taken back; the paper is drawn anew.

A change whose numbers cannot be drawn is refused with a sentence, and with the nearest
value that can be; a feature that lacks another, or does not go with it, may stand on
the slip, which then says so with the ways out, while the last paper stays.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from clothwright.app.fitting import AtFitting, fitting_sentences
from clothwright.app.keeper import Keeper
from clothwright.app.slipfile import (
    read_slip,
    row,
    write_slip,
)
from clothwright.app.table import Table
from clothwright.app.words import Reading
from clothwright.body import measures
from clothwright.features import Feature
from clothwright.order import Draft, Order, OrderError, Workroom
from clothwright.order.file import order_from_table
from clothwright.order.together import disagreements
from clothwright.units import (
    Unit,
    parse_angle,
    parse_length,
)

HOUSE = "the house rules"
PLACE = "the slip"
SAME = 0.06
"""Figures nearer than this are one, cm: they were rounded on their way."""


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
        self.order = self.order_of(self.now)
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
        self.card = self.keeper.card(self.unit())
        self.fitting = AtFitting(self.keeper)
        self.redraw()

    # -- changes --------------------------------------------------------------------
    def keep(self, table: dict[str, Any], said: str) -> None:
        """Draw a changed order and keep it, stitched or basted."""
        try:
            self.draw(table)
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

    def newer(self) -> dict[str, str]:
        """Figures on the card that are others than the slip's, as written."""
        mine = self.order.body.values
        unit = self.unit()
        out = {}
        for code, typed in self.card.items():
            angle = measures()[code].kind == "angle"
            value = parse_angle(typed) if angle else parse_length(typed, unit)
            if code not in mine or abs(mine[code].value - value) > SAME:
                out[code] = typed
        return out

    def baste(self) -> None:
        """Try changes without keeping them."""
        self.basting = True
        self.said = "Changes are tried and not kept until they are stitched"

    def stitch(self) -> None:
        """Keep what was tried."""
        if self.tried:
            self.keeper.stitch(write_slip(self.now), "What was basted is stitched")
            self.stitched = self.now
            self.tried = []
            self.fitting.stitched()
        self.basting = False
        self.said = "Stitched"
        self._lay_under()

    def unpick(self) -> None:
        """Take the last change back. Raises OrderError when there is none."""
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
        self.redraw()

    def again(self) -> None:
        """Make again what was taken back. Raises OrderError when nothing was."""
        if self.tried:
            raise OrderError("stitch or unpick what is basted first")
        if not self.keeper.redo():
            raise OrderError("there is nothing to make again")
        self.now = self.stitched = read_slip(self.keeper.text())
        self.said = "Made again"
        self.redraw()

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

    def order_of(self, table: Mapping[str, Any]) -> Order:
        """The order that a slip writes, with the house rules. Raises OrderError."""
        order = order_from_table(dict(table), PLACE, Path())
        if not self.house:
            return order
        return replace(order, house_text=self.house, house_place=HOUSE)

    def kept(self) -> Order:
        """The kept order, read once while a number is being pulled."""
        if self.read is None or self.read[0] is not self.now:
            self.read = self.now, self.order_of(self.now)
        return self.read[1]

    def draw(self, table: dict[str, Any], *, pulled: bool = False) -> None:
        """Put an order on the table; when it cannot be drafted the last paper stays.
        While a number is `pulled` no piece is moved aside for another.

        Raises OrderError.
        """
        self.order = self.order_of(table)
        self.shown = table
        self.draft = self.workroom.draft(self.order)
        self.paper = self.table.lay(self.draft, stay=pulled)
        self.faults = ()

    def redraw(self) -> None:
        """Put the kept order on the table again."""
        try:
            self.draw(self.now)
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
            old = Workroom().draft(self.order_of(self.stitched))
        except OrderError:
            return
        pieces = Table().lay(old)["pieces"]
        self.under = {
            code: p["cut"]
            for code, p in pieces.items()
            if code not in self.paper["pieces"]
            or self.paper["pieces"][code]["cut"] != p["cut"]
        }

    def feature(self, kind: str) -> Feature:
        """A feature of the kept order. Raises OrderError."""
        row(self.now, kind)
        return next(f for f in self.kept().features if f.kind == kind)

    def unit(self) -> Unit:
        """The unit in which the order is written."""
        return Unit.IN if self.now.get("unit") == "in" else Unit.CM
