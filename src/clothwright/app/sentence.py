"""A sentence of the slip, and its live words.

A word says what stands there, who wrote it and what it does when it is touched.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

from clothwright.units import opening


class Pen(Enum):
    """Who wrote a word."""

    PENCIL = "pencil"
    """It follows a rule, or is a usual amount."""

    INK = "ink"
    """The dressmaker decided it."""

    THREAD = "thread"
    """Basted: tried and not kept."""

    GUESS = "guess"
    """Estimated: not measured yet."""


class Opens(Enum):
    """What a word does when it is touched."""

    TAPE = "tape"
    CHOICE = "choice"
    REST = "rest"
    """The feature's other settings, and leaving it off."""

    MEASURE = "measure"
    WRITE = "write"
    """A line to write on."""

    CARD = "card"
    """All measures."""

    SEAM = "seam"
    STEP = "step"
    ACT = "act"
    """A change that is made at once: `do` says which."""


@dataclass(frozen=True)
class Word:
    """A live word. `of` names what it stands for: "neckline.depth", "m:B", "s:S1"."""

    of: str
    say: str
    pen: Pen
    opens: Opens
    help: str = ""
    do: Mapping[str, Any] | None = None

    def plain(self) -> dict[str, Any]:
        """As sent to the page."""
        out: dict[str, Any] = {
            "of": self.of,
            "say": self.say,
            "pen": self.pen.value,
            "opens": self.opens.value,
        }
        if self.help:
            out["help"] = self.help
        if self.do is not None:
            out["do"] = dict(self.do)
        return out


Runs = tuple[str | Word, ...]


@dataclass(frozen=True)
class Sentence:
    """One sentence of the slip; `rest` waits behind the feature's name; `said` is what
    is said against it, each with its ways out."""

    id: str
    runs: Runs
    rest: Runs = ()
    said: tuple[Runs, ...] = ()
    grave: bool = False

    def plain(self) -> dict[str, Any]:
        """As sent to the page."""
        return {
            "id": self.id,
            "runs": _plain(self.runs),
            "rest": _plain(self.rest),
            "said": [_plain(s) for s in self.said],
            "grave": self.grave,
        }


def _plain(runs: Runs) -> list[Any]:
    return [r if isinstance(r, str) else r.plain() for r in runs]


def stopped(runs: list[str | Word]) -> Runs:
    """A list that ends with a comma, ended with a full stop."""
    if runs and runs[-1] == ", ":
        return (*runs[:-1], ".")
    return tuple(runs)


def plain_why(why: str) -> str:
    """Why things do not go together, without what is to be written in a file."""
    told = re.sub(r";[^;]*kind = .*| kind = ", "", why).split(";")[0]
    return f"{opening(told)}."
