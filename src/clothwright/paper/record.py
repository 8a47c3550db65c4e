"""The record: every step of a draft, as data, with the geometry that it made.

Text is made from it elsewhere, in the user's unit; nothing here is a sentence in a
unit. A step's figure is drawn from the lines and points of the steps before it.
"""

from dataclasses import dataclass, field
from enum import Enum
from typing import Final

from clothwright.curves import Path, Point
from clothwright.paper.sheet import Sheet


class Verb(Enum):
    """What the hand does in a step."""

    START = "start"
    """Put down the first mark of a draft."""

    MEASURE = "measure"
    """From a mark, measure across and up or down."""

    ALONG = "along"
    """From a mark, measure along a line."""

    TURN = "turn"
    """Turn a mark or a line about a point."""

    FIND = "find"
    """A mark where lines meet, or found by trial with the tape."""

    RULE = "rule a line"
    """Draw straight between marks."""

    CURVE = "curve"
    """Draw a curve through marks."""

    CUT = "cut"
    MOVE = "move"
    TAPE = "tape"
    SPREAD = "spread"
    REDRAW = "redraw"
    OUTLINE = "outline"
    """Draw a piece from its marks."""

    TRACE = "trace"
    """Copy a piece from others."""

    UNFOLD = "unfold"
    SEW = "sew"
    """State what is sewn to what; notch it."""


@dataclass(slots=True, unsafe_hash=True)
class Amount:
    """A number used in a step: how it is laid off, and the number's key."""

    how: Final[str]
    """"right", "down", "along", "by {}", "deep": the direction in words; the size comes
    before them, or where {} stands."""

    key: Final[str]
    """Key of the number in the graph; empty for one that no rule names."""

    value: Final[float]
    angle: Final[bool] = False
    symbol: Final[str] = ""
    """Symbol of a length found on the paper, which no rule gives: "o"."""


@dataclass(unsafe_hash=True)
class Step:
    """One step of the draft."""

    verb: Final[Verb]
    makes: Final[str]
    """The mark, line, edge or piece that it makes: "hb", "FC.neck"."""

    says: Final[str]
    """What that is, in words: "shoulder neck point of the back"."""

    frm: Final[tuple[str, ...]] = ()
    """The marks it starts from."""

    amounts: Final[tuple[Amount, ...]] = ()
    detail: Final[str] = ""
    """How a line runs, in words without figures: "square to the shoulder"."""

    at: Final[Point | None] = None
    lines: Final[tuple[Path, ...]] = ()
    over: Final[tuple[Path, ...]] = ()
    """What lies under the paper that it makes: the outlines that are traced over, the
    rays from the centre of an arc."""

    part: Final[str] = ""
    """The draft that it belongs to, for its figure: "back", "front", "peplum"."""

    feature: Final[str] = ""
    """The kind of the feature that asked for it."""

    after: Final[Sheet | None] = field(default=None, repr=False, compare=False)
    """The table after the step, for steps that change paper."""
