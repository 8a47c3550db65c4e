"""Work that a workroom keeps from its last draft: stages, and what features checked.

Each is a pure function of a setting (`key`), of the numbers that it reads and of what
it looks at on the table. Where those are the same, so is the work.
"""

from dataclasses import dataclass, replace
from typing import Final

from clothwright.findings import Finding
from clothwright.paper import Change, Drafting, Look, Sheet, Step
from clothwright.rules import Numbers, Seen


@dataclass(unsafe_hash=True)
class Ground:
    """What a piece of work rests on."""

    key: Final[object]
    sheet: Final[Sheet]
    look: Final[Look]
    """What it looked at on the sheet."""

    numbers: Final[Seen]
    """What it read of the numbers."""

    def holds(self, key: object, sheet: Sheet, numbers: Numbers) -> bool:
        """True when the work done here stands there too."""
        return (
            key == self.key
            and numbers.agree_with(self.numbers)
            and (sheet is self.sheet or self.look.finds_the_same(self.sheet, sheet))
        )


@dataclass(unsafe_hash=True)
class Watch:
    """Numbers and a sheet while work is done with them, to tell what it rests on."""

    key: Final[object]
    numbers: Final[Numbers]
    on: Final[Sheet]
    look: Final[Look]
    sheet: Final[Sheet]
    """The same, watched: the one to work with."""

    @classmethod
    def begin(cls, key: object, numbers: Numbers, sheet: Sheet) -> "Watch":
        """Note from now on what is read."""
        numbers.forget()
        look = Look()
        return cls(key, numbers, sheet, look, look.at(sheet))

    def ground(self) -> Ground:
        """What the work has rested on until now."""
        return Ground(self.key, self.on, self.look, self.numbers.seen())


@dataclass(unsafe_hash=True)
class Checked:
    """What a feature found wrong on the finished draft."""

    ground: Final[Ground]
    findings: Final[tuple[Finding, ...]]


@dataclass(unsafe_hash=True)
class Staged:
    """A stage done: the table after it, and its steps."""

    ground: Final[Ground]
    change: Final[Change]
    sheet: Final[Sheet]
    steps: Final[tuple[Step, ...]]
    tables: Final[tuple[Sheet, ...]]
    """The watched sheet after each step that changes paper."""

    @classmethod
    def of(cls, watch: Watch, hand: Drafting, last: "Staged | None") -> "Staged":
        """What a hand has drafted; `last` is the same stage of the last draft."""
        change = Change.of(hand.sheet)
        if last is None:
            sheet = hand.sheet.unwatched()
        else:
            change = change.like(last.change)
            sheet = change.on(watch.on)
        steps, tables = tuple(hand.steps), tuple(hand.tables)
        return cls(watch.ground(), change, sheet, steps, tables)

    def on(self, sheet: Sheet) -> "Staged":
        """The stage done on a sheet on which its ground holds."""
        if sheet is self.ground.sheet:
            return self
        after = (Change.of(t).on(sheet) for t in self.tables)
        ground = Ground(self.ground.key, sheet, self.ground.look, self.ground.numbers)
        return Staged(
            ground,
            self.change,
            self.change.on(sheet),
            tuple(
                s if s.after is None else replace(s, after=next(after))
                for s in self.steps
            ),
            self.tables,
        )
