"""Seams: which chains of edges are sewn together, and how."""

from dataclasses import dataclass
from enum import Enum
from typing import Final, NamedTuple

from clothwright.curves import held


class SeamKind(Enum):
    """How two chains of edges come together."""

    PLAIN = "plain seam"
    """Right sides together, stitched, pressed open."""

    DART = "dart"
    """A piece sewn to itself; the two legs meet at the apex."""

    FACED = "faced edge"
    """A facing or lining turned to the inside along a finished edge."""

    TWIN = "sewn to its twin"
    """An edge sewn to its own twin: its mirror image at a centre seam, or the same
    piece cut in lining. Both sides name the same edges."""

    LAPPED = "lapped"
    """One edge lies over a line of the other."""


class Run(NamedTuple):
    """One edge as a part of a chain; `backward` walks against the piece's loop."""

    piece: str
    edge: str
    backward: bool = False

    def __str__(self) -> str:
        return f"{self.piece}.{self.edge}"


class Ease(NamedTuple):
    """What the right chain is longer than the left, cm: planned, and accepted from
    `low` to `high`."""

    plan: float
    low: float
    high: float

    @classmethod
    def about(cls, plan: float, tolerance: float) -> "Ease":
        """A planned ease, accepted within a tolerance to either side."""
        return cls(plan, plan - tolerance, plan + tolerance)


JOINT = "joint"
"""Note of a notch on the right that meets a joint of the left chain: the seam that ends
there needs no notch beside it."""

JOINT_RIGHT = "joint on the right"
"""Note of a notch on the left that meets a joint of the right chain."""


GATHERED = 1.0
"""A seam without a zone that takes in more than this is gathered, less is eased, cm."""


class NotchPair(NamedTuple):
    """A notch on both partners: lengths in cm along each chain from the start."""

    left: float
    right: float
    ticks: int = 1
    note: str = ""


@dataclass(unsafe_hash=True)
class Seam:
    """Two chains walked in the same direction, from `start` to `end`.

    The ease lies between two lengths of the left chain (`zone`), or anywhere when
    there is none.
    """

    code: Final[str]
    name: Final[str]
    left: Final[tuple[Run, ...]]
    right: Final[tuple[Run, ...]]
    start: Final[str] = ""
    end: Final[str] = ""
    ease: Final[Ease] = Ease(0.0, -0.1, 0.1)
    zone: Final[tuple[float, float] | None] = None
    notches: Final[tuple[NotchPair, ...]] = ()
    kind: Final[SeamKind] = SeamKind.PLAIN
    drawn_up: Final[bool] = False
    """Gathered, and not eased, between the two ends of its zone."""

    stretched: Final[bool] = False
    """The shorter right side is stretched onto the left: a band of knitted cloth, the
    back inseam of trousers, a flat collar."""

    tucked: Final[bool] = False
    """What it takes in is laid in tucks, not gathered."""

    turned: Final[bool] = False
    """Two layers that are turned: what the right side is longer by is for the turn of
    the cloth and its corners, eased and never gathered, however much."""

    runs_on: Final[bool] = False
    """The right side is longer than the left, and its rest is left free at an end: a
    facing that goes on to the hem beside a lining which hangs shorter."""

    free: Final[float] = 0.0
    """So much of its planned ease lies at the end of the right side, beyond its zone:
    the neck before a tie that stops short for its knot, cm."""

    @property
    def gathered(self) -> bool:
        """True when the right side is gathered in, not eased: it takes in much, all
        along its length, or is drawn up within its zone. What is lapped over a longer
        line, as a facing's foot, leaves the rest of it free."""
        much = self.kind is not SeamKind.LAPPED and self.ease.plan > GATHERED
        even = self.zone is None and not (self.turned or self.runs_on)
        return self.drawn_up or (even and much)

    @held
    def pieces(self) -> frozenset[str]:
        """Codes of the pieces whose edges it sews."""
        return frozenset([r[0] for r in self.left + self.right])

    def runs(self) -> tuple[Run, ...]:
        """Every edge of the seam."""
        return self.left + self.right

    def over(self, left: tuple[Run, ...], right: tuple[Run, ...]) -> "Seam":
        """The seam over other chains."""
        if left == self.left and right == self.right:
            return self
        return Seam(
            self.code,
            self.name,
            left,
            right,
            self.start,
            self.end,
            self.ease,
            self.zone,
            self.notches,
            self.kind,
            self.drawn_up,
            self.stretched,
            self.tucked,
            self.turned,
            self.runs_on,
            self.free,
        )

    def __contains__(self, run: object) -> bool:
        return any((r.piece, r.edge) == run for r in self.runs())
