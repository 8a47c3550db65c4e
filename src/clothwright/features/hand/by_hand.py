"""Steps that the dressmaker takes by herself, after all features are drafted.

She cuts, tapes, spreads, redraws, traces and moves on any piece; every step says how
it was measured, so that the same steps are taken on another body. A run of steps may
stand in the house file under a name, and is then called by it.
"""

from functools import cache
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from clothwright.features.base import Feature, Rank, Stage
from clothwright.features.hand.hand_laying import Move, Trace, Unfold
from clothwright.features.hand.hand_steps import Cut, Redraw, Spread, Tape, with_grain
from clothwright.paper import Drafting, PaperError
from clothwright.rules import RuleError, RuleTable

HandStep = Annotated[
    Cut | Tape | Spread | Redraw | Trace | Move | Unfold, Field(discriminator="do")
]


class ByHand(Feature):
    """Her own steps on the finished table."""

    kind: Literal["by hand"] = "by hand"
    title: ClassVar[str] = "By hand"
    sentence: ClassVar[str] = "Then the style “{style}” is made [by hand]."
    style: str = ""
    """Name of a run of steps in the house file; the steps stand here when it is blank.
    """

    step: tuple[HandStep, ...] = ()

    def said(self) -> str:
        if self.style:
            return "Then the style “{style}” is made [by hand]."
        words = " and ".join(dict.fromkeys(s.do for s in self.step)) or "nothing yet"
        count = f"{len(self.step)} steps" if len(self.step) != 1 else "one step"
        return (
            f"Then {count} [by hand]: {words}."
            if self.step
            else ("Then, [by hand], nothing yet.")
        )

    def tables(self) -> tuple[RuleTable, ...]:
        """The lengths of the steps, as numbers that can be followed back."""
        return (_table(self.step),)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BY_HAND, "her own steps", self._apply),)

    def _apply(self, d: Drafting) -> None:
        d.part = "by hand"
        for i, step in enumerate(self.step, 1):
            before = d.sheet
            try:
                step.apply(d, _key(i))
                d.sheet = with_grain(before, d.sheet)
            except (PaperError, RuleError) as e:
                raise PaperError(f"step {i} ({step.do}): {e}") from e


def _key(i: int) -> str:
    return f"h{i}"


@cache
def _table(steps: tuple[HandStep, ...]) -> RuleTable:
    table = RuleTable("by hand")
    for i, step in enumerate(steps, 1):
        for at, amount, words in step.measured():
            name = f"step {i}, {step.do}: {words}"
            table.add(amount.rule(f"{_key(i)}.{at}", name))
    return table
