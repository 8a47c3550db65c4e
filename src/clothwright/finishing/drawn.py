"""Drawn things: what a finished piece shows, decided once, as meanings.

An output chooses how a meaning looks; it never asks a piece how it is stored.
All coordinates are cm on the cutter's page (y down), real size.
"""

from dataclasses import dataclass, field
from datetime import date
from enum import Enum
from typing import NamedTuple

from clothwright.curves import Path, Point


class Meaning(Enum):
    """What a line or a word on the paper means."""

    CUT = "cut line"
    """Where the paper and the cloth are cut; closed."""

    SEW = "stitch line"
    """The net line."""

    FOLD = "fold"
    """An edge laid on the fold of the cloth."""

    BRACKET = "fold bracket"
    """The run of the bracket along a fold, clear of the lines beside it."""

    GRAIN = "grain line"
    """Straight grain; arrows at both ends, one end with nap."""

    NOTCH = "notch"
    """A T from the cut line to the net line with a bar on it."""

    DRILL = "drill mark"
    """A small cross inside the piece."""

    LOOP = "loop"
    """Half a ring outside the stitch line where a loop is sewn in."""

    DART = "dart"
    """Stitch lines of a dart."""

    INNER = "inner line"
    """A line for the eye: bust line, button line, lap line."""

    PLACEMENT = "placement line"
    """Where the fold of a pleat is laid to."""

    ARROW = "arrow of a pleat"
    """From a fold to where it is laid; a head at its end."""

    TAPE = "stay tape"
    """An edge to be taped: wavy."""

    EASE = "ease"
    """A stretch eased or gathered in: dashes or waves with its figure."""

    LABEL = "label"
    """Words on the piece."""

    DIMENSION = "dimension"
    """A length written along its edge."""


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A line with a meaning. `note` names it ("bust line", "FC.panel")."""

    meaning: Meaning
    path: Path
    note: str = ""


@dataclass(frozen=True, slots=True)
class DrawnNotch:
    """A notch: from `outer` on the cut line to `net` on the stitch line.

    `count` ticks in a set (1 front, 2 back, 3 centre back).
    """

    net: Point
    outer: Point
    count: int
    note: str = ""


@dataclass(frozen=True, slots=True)
class DrawnText:
    """Words centred on `at`, `height` cm tall, turned `degrees` clockwise."""

    meaning: Meaning
    text: str
    at: Point
    height: float
    degrees: float = 0.0
    bold: bool = False


class Zone(NamedTuple):
    """A stretch of a piece's edge that is eased or gathered in."""

    path: Path
    to: float
    """What it comes to when it is sewn, cm."""

    drawn_up: bool
    """Gathered, not eased."""

    notched: bool
    """It lies between two notches, and begins and ends at no end of the seam."""


@dataclass(frozen=True, slots=True)
class Beside:
    """Words that belong beside a line; `right` of it only, or on either side.

    `short` says it where the words are too long.
    """

    meaning: Meaning
    text: str
    path: Path
    right: bool = False
    short: str = ""


@dataclass(frozen=True, slots=True)
class Wording:
    """What is to be written on a piece. Where it stands is found for each paper."""

    label: tuple[tuple[str, ...], ...] = ()
    """Groups of lines, the weightiest first; the very first line is the name."""

    beside: tuple[Beside, ...] = ()
    """Figures along the edges, names of lines."""


@dataclass(frozen=True, slots=True)
class CutCount:
    """How many to cut from one cloth."""

    cloth: str
    """Plain name of the cloth: "shell", "underlining", "lining", "interlining"."""

    count: int
    how: str
    """"1 on fold", "2 (1 pair)", ..., as printed."""

    bias: bool = False
    """On the bias: the grain may lie along the warp or across it."""


@dataclass(frozen=True)
class DrawnPiece:
    """A finished piece, ready for any output."""

    code: str
    """Short code of the piece: FC, BS, UP."""

    name: str
    """"Front", "Side back", ..."""

    number: int
    total: int
    cuts: tuple[CutCount, ...]
    cut_line: Path
    """Closed outline on which the paper is cut, clockwise as seen."""

    lines: tuple[DrawnLine, ...]
    """All other lines; stitch lines one per edge, `note` = "FC.panel"."""

    notches: tuple[DrawnNotch, ...] = ()
    texts: tuple[DrawnText, ...] = ()
    wording: Wording = Wording()
    on_fold: bool = False
    area: float = field(default=0.0)
    """Net area in cm²."""

    nap: bool = False
    """True when the grain arrow has one head only."""

    unsaid: tuple[str, ...] = ()
    """Lines of the label that find no room on the paper."""

    @property
    def nameless(self) -> bool:
        """True when no part of its label finds room."""
        return self.name.upper() in self.unsaid


@dataclass(frozen=True)
class DrawnPattern:
    """All finished pieces of an order, with what is printed beside them."""

    title: str
    """Garment and order: "Sleeveless peplum top, order 1"."""

    client: str
    taken: date | None
    """Date of the measures: a pattern is the same whenever it is printed."""

    unit: str
    """"in" or "cm": the unit of every printed figure."""

    pieces: tuple[DrawnPiece, ...]
    allowance_note: str
    """One sentence on allowances."""

    failures: tuple[str, ...] = ()
    """Sentences of failed checks; printed on the first page when there are any."""

    cautions: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    """Estimated measures and other things the cutter must know."""

    @property
    def measured(self) -> str:
        """Date of the measures, as printed."""
        return as_printed(self.taken)

    @property
    def whose(self) -> str:
        """For whom, and when she was measured where that is known."""
        when = f"measured {self.measured}" if self.measured else ""
        return ", ".join(said for said in (self.client, when) if said)


def as_printed(day: date | None) -> str:
    """A date in words: "6 February 2027"; nothing for none."""
    return f"{day:%-d %B %Y}" if day else ""
