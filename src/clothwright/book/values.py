"""What goes into the book and comes out: plain values.

Terminology
    client   whom she sews for; her card holds measures, notes and photos.
    slip     one order in the book; its text is what `order.file` reads.
    state    a slip's whole text at one time, with a sentence on what changed.
    line     a slip's states in the order they were stitched; it may branch.
    tip      the state that redo leads to, at the end of the branch in use.
    basting  a change that is tried and not kept; it never enters the line.
    shelf    what she keeps for all orders, like her house rules.

A client, a slip and a thing on the shelf carry their revision: what is changed through
an old value is answered with `Stale`, and nothing is overwritten.
"""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from clothwright.findings import Finding
from clothwright.units import Unit


@dataclass(frozen=True)
class Client:
    """One client."""

    id: int
    name: str
    made: datetime
    changed: datetime
    revision: int


class Side(StrEnum):
    """Which side of the body a measure was taken on."""

    BOTH = ""
    """One figure for both sides."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True)
class TakenMeasure:
    """One figure as it was taken once; it is never overwritten."""

    id: int
    client_id: int
    code: str
    side: Side
    typed: str
    """As she wrote it; without a unit of its own it is in `unit`."""

    unit: Unit
    value: float
    """cm, or degrees for SS."""

    taken: date
    how: str
    """How it was taken: "over a slip, tape easy"."""

    by: str
    note: str
    recorded: datetime


@dataclass(frozen=True)
class Recorded:
    """What became of measures that were to be recorded.

    With questions, nothing was saved: keep the odd figures by their codes, or measure
    again.
    """

    saved: tuple[TakenMeasure, ...] = ()
    questions: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class Slip:
    """One order in the book."""

    id: int
    number: int
    client_id: int
    client: str
    """The client's name, for showing."""

    title: str
    wanted: date | None
    handed_over: date | None
    made: datetime
    changed: datetime
    revision: int
    state: int
    """Number of the state that lies on the table."""

    tip: int
    parent: int | None
    """Number of the state before it; None at the first."""

    basted: bool

    @property
    def can_undo(self) -> bool:
        """There is a state before this one."""
        return self.parent is not None

    @property
    def can_redo(self) -> bool:
        """There is a state after this one, on the branch in use."""
        return self.state != self.tip


@dataclass(frozen=True)
class Stitch:
    """One state of a slip, without its text."""

    number: int
    """1, 2, 3 … in the order of stitching."""

    parent: int | None
    at: datetime
    said: str
    """What changed, in one sentence."""


@dataclass(frozen=True)
class Basting:
    """A change that is tried on a slip, with the slip's whole text."""

    on_state: int
    """The state that it was tried on."""

    at: datetime
    said: str
    text: str


@dataclass(frozen=True)
class Leaf:
    """A text that lies with a slip and is no part of its order."""

    name: str
    state: int
    """The state that it lies with; 0: with the slip as a whole."""

    at: datetime
    text: str


@dataclass(frozen=True)
class Note:
    """Words on a card or a slip."""

    id: int
    at: datetime
    text: str


@dataclass(frozen=True)
class Decided:
    """What was seen at a fitting, and what was decided."""

    id: int
    slip: int
    """Number of the slip that was fitted."""

    at: datetime
    seen: str
    said: str = ""
    """What was decided, in a sentence without a full stop; "" where all was kept."""

    kind: str = ""
    """The feature that was altered, "fitting" for an alteration of the block."""

    what: str = ""
    """Its field, or the alteration's word."""

    amount: float = 0.0
    """cm, each half; below 0 where a number was made smaller."""


class PhotoKind(StrEnum):
    """Kinds of pictures, by their media type."""

    JPEG = "image/jpeg"
    PNG = "image/png"
    WEBP = "image/webp"


@dataclass(frozen=True)
class Photo:
    """A picture on a card or a slip; its bytes are asked for by themselves."""

    id: int
    at: datetime
    kind: PhotoKind
    caption: str
    size: int
    """Bytes."""


HOUSE_RULES = "house rules"
"""Name of the house rules on the shelf."""

RATES = "rates"
"""Name of the house's rates on the shelf."""


@dataclass(frozen=True)
class ShelfItem:
    """A text that is kept for all orders. A new one has revision 0."""

    name: str
    text: str
    revision: int = 0
    changed: datetime | None = None


@dataclass(frozen=True)
class Stale:
    """Refused: this was changed in another window since it was read.

    Read it again and show it, or repeat the change with its new revision.
    """

    sentence: str
    revision: int
    """What is in the book now."""

    changed: datetime


@dataclass(frozen=True)
class Forgotten:
    """What was deleted for good."""

    what: str
    """What it was called: "Brida Hollin", "Slip 214"."""

    slips: int
    photos: int
    traces: bool
    """Bytes are left in the file, for another program had it open or the disk was
    full; they go when the book is next opened alone."""


@dataclass(frozen=True)
class Imported:
    """What came in from plain files."""

    clients: tuple[str, ...]
    said: tuple[str, ...]
    """What is otherwise than in the files, a sentence each."""
