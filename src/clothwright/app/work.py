"""What is done with a slip when it is drawn: its cloth, its making, its cost."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import tomli_w

from clothwright.app import costing
from clothwright.app.bolt import Bolt
from clothwright.app.changes import change
from clothwright.app.cloth_words import (
    bought_sentence,
    cloth_sentences,
    cloths_wanted,
)
from clothwright.app.keeper import Refusal
from clothwright.app.lying import Spoken
from clothwright.app.room import Room
from clothwright.app.sentence import Sentence
from clothwright.app.slipfile import write_slip
from clothwright.app.words import Reading
from clothwright.cost import CostError, CostSheet, Rates
from clothwright.making import MakingOrder, making_order
from clothwright.making.cutting import cutting_sheet
from clothwright.order import Draft, OrderError
from clothwright.sheets.cutting_sheet import cutting_told
from clothwright.sheets.making_order import duration, making_told
from clothwright.units import Unit, opening

if TYPE_CHECKING:
    from clothwright.lay import Lay

TICKS = "ticks"


@dataclass
class Work:
    """The cloth, the making and the cost of one room's slip."""

    room: Room
    bolt: Bolt = field(init=False)
    ordered: tuple[Draft, MakingOrder] | None = None
    comes: str = ""
    """What it comes to, as it was last reckoned."""

    def __post_init__(self) -> None:
        self.bolt = Bolt(self.room.keeper)

    # -- changes ---------------------------------------------------------------------
    def change(self, op: Mapping[str, Any]) -> Refusal | None:
        """Make a change of the order, or of what is done with it."""
        of = str(op.get("of", ""))
        try:
            if op.get("do") == "lay":
                self.bolt.hand(op, self._spoken())
            elif op.get("do") == "tick":
                self._tick(of, bool(op.get("to")))
            elif of.startswith("cost:"):
                if not op.get("live"):
                    wish = costing.changed(self.wish(), op)
                    self.room.keeper.put_leaf(costing.LEAF, costing.write_wish(wish))
                    self.comes = ""
            else:
                return self._of_order(op)
        except (OrderError, CostError) as e:
            said = str(e)
            said = opening(said)
            return Refusal(of, said if said.endswith(".") else f"{said}.")
        return None

    def _of_order(self, op: Mapping[str, Any]) -> Refusal | None:
        refusal = change(self.room, op)
        if not op.get("live"):
            self.comes = ""
            self.follow()
        return refusal

    def follow(self) -> None:
        """Look at the lay anew where somebody stands at it: the order changed."""
        if self.bolt.at and self.room.settled is not None:
            self.bolt.take_up(self._spoken())

    def _tick(self, title: str, done: bool) -> None:
        titles = [op.title for op in self.making().operations]
        if title not in titles:
            raise OrderError("that is not in the order of making any more")
        ticked = (self.ticked() | {title}) if done else (self.ticked() - {title})
        kept = sorted(ticked, key=lambda t: titles.index(t) if t in titles else -1)
        self.room.keeper.put_leaf(TICKS, tomli_w.dumps({"done": kept}))

    # -- what is known ---------------------------------------------------------------
    def ticked(self) -> set[str]:
        """Operations that are done, by their titles."""
        try:
            rows = tomllib.loads(self.room.keeper.leaf(TICKS)).get("done", [])
        except tomllib.TOMLDecodeError:
            return set()
        return {str(r) for r in rows}

    def wish(self) -> costing.Wish:
        """What she decides of the cost."""
        return costing.read_wish(self.room.keeper.leaf(costing.LEAF))

    def rates(self) -> Rates:
        """Her rates, or an invented house's. Raises CostError."""
        return costing.house_rates(self.room.keeper.rates())

    def making(self) -> MakingOrder:
        """The making order. Raises OrderError while the order cannot be drawn."""
        draft = self._draft()
        if self.ordered is None or self.ordered[0] is not draft:
            self.ordered = draft, making_order(draft)
        return self.ordered[1]

    def making_data(self) -> dict[str, Any]:
        """The making order to tick, and the cutting sheet, as they are printed."""
        making, done = self.making(), self.ticked()
        rates = self._some_rates()
        minutes = {task: float(m) for task, m in rates.minutes.items()}
        told = making_told(making, minutes)
        for part in told["parts"]:
            for op in part["operations"]:
                op["done"] = op["title"] in done
        reel = float(rates.reel)
        return {
            "order": told,
            "cutting": cutting_told(cutting_sheet(making), reel=reel),
        }

    def cost_data(self) -> dict[str, Any]:
        """The cost, line by line; or what is still to be known."""
        wish = self.wish()
        try:
            rates, sheet = self.rates(), self.cost_sheet()
            data = costing.told(sheet, wish, invented=not self.room.keeper.rates())
        except costing.Missing as e:
            self.comes = ""
            return {"missing": list(e.cloths), "refused": self._why(e.cloths)}
        except CostError as e:
            return {"missing": [], "refused": " ".join(e.sentences)}
        deposit = f", {sheet.deposit} of it with the order" if sheet.deposit else ""
        self.comes = f"It comes to {sheet.to_pay} {rates.currency}{deposit}."
        return data

    def cost_sheet(self) -> CostSheet:
        """The cost. Raises OrderError, CostError, costing.Missing."""
        self.bolt.take_up(self._spoken())
        self.bolt.take_all_kept()
        return costing.reckoned(self.making(), self.rates(), self.wish(), self.bolt)

    def kept_lays(self) -> "list[Lay]":
        """The lays that are kept with the order as it stands."""
        self.bolt.take_up(self._spoken())
        return self.bolt.take_all_kept()

    def title(self) -> str:
        """What heads the slip's sheets."""
        order = self._draft().order
        return f"{order.garment}, {order.body.client}"

    def _why(self, cloths: tuple[str, ...]) -> str:
        """Why some cloths are not known, where their search has said so."""
        return " ".join(self.bolt.refused.get(c, "") for c in cloths).strip()

    # -- told ------------------------------------------------------------------------
    def paragraphs(self, r: Reading) -> dict[str, list[dict[str, Any]]]:
        """What the slip says of its cloth, its making and its cost."""
        lying = {k: v for k in cloths_wanted(r) if (v := self.bolt.lying.get(k))}
        fine = {k: v.laid.lay for k, v in lying.items() if not v.laid.faults}
        loose = [k for k, lay in fine.items() if lying[k].kept != lay.placed]
        buys = {k: lay.buy.told for k, lay in fine.items()}
        cloth = [
            *bought_sentence(buys, loose),
            *cloth_sentences(r, self.room.order.cloths),
        ]
        told = {"Cloth": cloth, "Making": [], "Cost": []}
        if r.draft is not None and self.room.settled is not None:
            told["Making"] = [self._making_sentence()]
            comes = self.comes or "What it costs, and what she pays."
            wish = costing.sentences(self.wish(), cloths_wanted(r), self.bolt)
            told["Cost"] = [Sentence("comes", (comes,)), *wish]
        return {name: [s.plain() for s in said] for name, said in told.items()}

    def _making_sentence(self) -> Sentence:
        operations, ticked = self.making().operations, self.ticked()
        minutes = self._some_rates().minutes
        spent = sum(op.count * float(minutes[op.task]) for op in operations if op.task)
        n = sum(op.title in ticked for op in operations)
        done = (
            "all done"
            if n == len(operations)
            else "one done"
            if n == 1
            else f"{n} done"
            if n
            else "none done"
        )
        said = f"{len(operations)} things to do, about {duration(spent)}; {done}."
        return Sentence("making", (said,))

    def parts(self, unit: Unit) -> dict[str, Any]:
        """What a page shows beside the slip."""
        bolt = self.bolt
        return {
            "lay": self._lay(unit),
            "laying": [bolt.sought, *bolt.waiting, len(bolt.lying), bolt.searches],
        }

    # -- inside ----------------------------------------------------------------------
    def _lay(self, unit: Unit) -> dict[str, Any] | None:
        """What lies on the cloth, when somebody stands there."""
        if not self.bolt.at:
            return None
        from clothwright.app.bolt_pages import shown  # loads the lay

        return shown(self.bolt, unit)

    def _some_rates(self) -> Rates:
        try:
            return self.rates()
        except CostError:
            return costing.house_rates("")

    def _draft(self) -> Draft:
        if self.room.settled is None:
            raise OrderError("the order cannot be drawn yet; mend it in Style first")
        return self.room.settled

    def _spoken(self) -> Spoken:
        room = self.room
        return Spoken(
            self._draft(),
            write_slip(room.now),
            room.house,
            room.order.cloths,
            room.basting,
        )
