"""An alteration: what is changed on the pattern after a toile was seen on the client.

Terminology
    seen        what shows on the body: folds, drags, gaping.
    alteration  a change of the block that answers it, by an amount, per half.
    slash       a line cut in the paper that opens or is overlapped by the amount.

Amounts are the usual starting ranges per half (cutting and costing 6); one slash takes
at most 2.5 cm (1 in), more is split in two places.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable, Iterable, Mapping
from typing import ClassVar, Self

from pydantic import BaseModel, ConfigDict, model_validator

from clothwright.blocks.bodice_rules import theta as plain_theta
from clothwright.curves import Path, Point, direction, distance, from_pair, wedge_angle
from clothwright.features.fittings.ground import BODICE, Ground
from clothwright.paper import Drafting, PaperError, Piece, Sheet
from clothwright.rules import Kind, RuleTable
from clothwright.units.fields import Length

MOST_ON_A_SLASH = 2.5
"""One slash opens or is overlapped by at most this, cm."""

SOURCE = "cutting and costing 6"

FRONT_MARKS = (
    *("hf", "tf", "pf", "C block", "CFw", "BP", "Gc", "G", "wf", "U1", "U2", "D1"),
    "D2",
)
"""Marks of the front of the block."""


class Alteration(BaseModel, ABC):
    """Base of all alterations. `by` is in cm, above nought."""

    model_config = ConfigDict(
        extra="forbid", frozen=True, allow_inf_nan=False, defer_build=True
    )

    do: str = ""
    by: Length

    title: ClassVar[str]
    """What is done, as the record tells it: "front neck closed"."""

    ground: ClassVar[Ground] = BODICE
    """What it is made on."""

    also: ClassVar[Mapping[str, str]] = {}
    """Words that some feature must give besides: the sentence when none does."""

    usual: ClassVar[tuple[float, float]]
    """Usual amounts, cm."""

    counted: ClassVar[str] = "each half"
    """On what the amount counts."""

    most: ClassVar[float] = MOST_ON_A_SLASH
    """What one place takes, cm."""

    second: ClassVar[str] = ""
    """Where a second line lies on which an amount that is too much for one place is
    shared, half in each; blank when there is none."""

    page: ClassVar[RuleTable]
    """The numbers of the block that it changes; see `numbers`."""

    split: ClassVar[RuleTable | None] = None
    """The same in two places, where that comes to other numbers."""

    moves: ClassVar[tuple[str, ...]]
    """Pieces and edges of the block that it moves: "F.neck"."""

    follows: ClassVar[str]
    """What must follow, in words."""

    clashes: ClassVar[Mapping[str, str]] = {}
    """Words that no feature may give beside it: why."""

    @classmethod
    def wants(cls) -> Mapping[str, str]:
        """Words that features of the order must give: the sentence when none does."""
        return {cls.ground.word: cls.ground.needs, **cls.also}

    @model_validator(mode="after")
    def _within(self) -> Self:
        if self.by <= 0:
            raise ValueError(
                "by is how much, more than nothing; for the other way there is an "
                "alteration of its own"
            )
        if self.by > self.limit() + 1e-9:
            rest = (
                f"and {self.limit():g} cm in two; measure again"
                if self.second
                else "; take the rest in a second place, or measure again"
            )
            raise ValueError(
                f"{self.do} takes at most {self.most:g} cm in one place"
                + (" " if self.second else "")
                + rest
            )
        return self

    @classmethod
    def limit(cls) -> float:
        """The most that it takes, in one place or in two, cm."""
        return cls.most * (2 if cls.second else 1)

    @property
    def places(self) -> int:
        """In how many places its amount is shared."""
        return 2 if self.by > self.most + 1e-9 else 1

    @property
    def rules(self) -> RuleTable:
        """The numbers of the block that it changes, by this amount."""
        return self.split if self.split and self.places > 1 else self.page

    def told(self, by: str) -> str:
        """What is done, by how much (as it is shown), and in how many places."""
        return f"{self.title} by {by}" + (", in two places" if self.places > 1 else "")

    @abstractmethod
    def apply(self, d: Drafting, at: str) -> None:
        """Alter its pieces on the table; `at` is the key of the amount. Raises
        PaperError."""


def dart_kept(
    page: RuleTable,
    formula: str,
    moved: Callable[[tuple[float, ...], float], tuple[float, ...]],
) -> None:
    """Rewrite the bust dart of a page so that it raises the underarm as before.

    `moved` gives (xs, yB, x_BP, y_BP, dl) as they are after the amount.
    """

    @page.rule(
        "θ",
        "angle of the bust dart",
        key="theta",
        kind=Kind.ANGLE,
        source=SOURCE,
        formula=formula,
    )
    def _theta(
        theta: float,
        xs: float,
        yB: float,
        x_BP: float,
        y_BP: float,
        dl: float,
        by: float,
    ) -> float:
        old = (xs, yB, x_BP, y_BP, dl)
        return theta + plain_theta(*moved(old, by)) - plain_theta(*old)


def slash_start(piece: Piece, apex: Point, through: Point) -> tuple[str, float]:
    """Edge of a piece, and the length along it, where the line from `apex` through a
    point leaves the paper. Raises PaperError."""
    ray = Path.line(apex, apex + direction(apex, through) * 90.0)
    found: list[tuple[float, str, float]] = []
    for e in piece.edges:
        for s, t in e.path.meets(ray):
            if t > 1.0 and 0.05 < s < e.length - 0.05:
                found.append((t, e.name, s))
    if not found:
        raise PaperError(
            f"the slash from the bust point of {piece.code} meets no edge: make the "
            "amount smaller"
        )
    _, name, s = min(found)
    return name, s


def turn_marks(
    d: Drafting, before: Sheet, piece: str, edge: str, names: Iterable[str]
) -> None:
    """Marks that lie on a part of a piece go with it; `edge` is an edge of that part
    whose ends tell how it has moved."""
    old, new = before.edge(piece, edge).path, d.sheet.edge(piece, edge).path
    m = from_pair(old.start, old.end, new.start, new.end)
    moved = {n: m(before.points[n]) for n in names if n in before.points}
    d.sheet = d.sheet.named(**moved)


def opened(mark: Point, apex: Point, by: float) -> float:
    """Degrees by which a slash from `apex` opens by `by` at `mark`. Raises
    PaperError."""
    arm = distance(mark, apex)
    if by > arm:
        raise PaperError("the slash is too short to take this amount: make it smaller")
    return wedge_angle(by, arm)
