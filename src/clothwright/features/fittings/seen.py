"""What can be seen at a fitting and what cures it: the table `seen.toml`."""

import difflib
import tomllib
from functools import cache
from importlib import resources
from typing import Self

from pydantic import BaseModel, ConfigDict, model_validator

from clothwright.units import Unit, parse_length


class Cure(BaseModel):
    """One way to cure what is seen; lengths in cm, per half."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    do: str = ""
    """An alteration by its word; or blank, and the cure is a number of the order."""

    feature: str = ""
    field: str = ""
    way: int = 1
    """1 adds to the number, -1 takes off."""

    start: float
    inch: str
    usual: tuple[float, float] = (0.0, 0.0)
    follows: str = ""
    all_round: bool = False
    """The number counts all round, not on each half."""

    of_style: bool = False
    """It says how she likes it, not how she is built: not offered on her next order."""

    @model_validator(mode="after")
    def _one(self) -> Self:
        if bool(self.do) == bool(self.feature and self.field):
            raise ValueError("a cure is an alteration or a number of the order")
        return self

    def first(self, unit: Unit) -> float:
        """What to try first, cm."""
        return parse_length(self.inch, unit) if unit is Unit.IN else self.start


class Seen(BaseModel):
    """What is seen on the client."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    words: str
    place: str
    cure: tuple[Cure, ...]


@cache
def all_seen() -> tuple[Seen, ...]:
    """Everything that can be seen, in the order of the table."""
    text = resources.files(__package__).joinpath("seen.toml").read_text("utf8")
    return tuple(Seen.model_validate(row) for row in tomllib.loads(text)["seen"])


def of_body(kind: str, what: str) -> bool:
    """True for a cure that has to do with how a client is built."""
    return not any(
        c.of_style
        for s in all_seen()
        for c in s.cure
        if (c.feature, c.field) == (kind, what)
    )


def seen_by(words: str) -> Seen:
    """What is meant by some words. Raises ValueError with a sentence."""
    wanted = " ".join(words.lower().split())
    rows = {s.words: s for s in all_seen()}
    if wanted in rows:
        return rows[wanted]
    within = [s for w, s in rows.items() if wanted and wanted in w]
    if len(within) == 1:
        return within[0]
    near = [s.words for s in within] or difflib.get_close_matches(wanted, rows, 3, 0.5)
    hint = (
        f"; do you mean {' or '.join(repr(w) for w in near)}?"
        if near
        else "; `clothwright fitting` without an order lists all that can be seen"
    )
    raise ValueError(f"what is seen is not known by {words!r}{hint}")
