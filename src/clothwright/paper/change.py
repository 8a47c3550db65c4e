"""What a piece of work looks at on a sheet, and what it changes there.

The same work on another sheet goes the same way when that has the same names in the
same order, the same seams, and the same thing under every name that was looked at: what
it laid may then be laid on the other sheet unseen.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Generic, NamedTuple, TypeVar

from clothwright.curves import Path, Point
from clothwright.paper.piece import Piece
from clothwright.paper.seam import Seam
from clothwright.paper.sheet import Sheet
from clothwright.paper.things import Watched, less, more, watched

T = TypeVar("T")


@dataclass(unsafe_hash=True)
class Look:
    """Names of what was looked at on a sheet. All seams always count as looked at."""

    pieces: Final[set[str]] = field(default_factory=set)
    points: Final[set[str]] = field(default_factory=set)
    lines: Final[set[str]] = field(default_factory=set)

    def at(self, sheet: Sheet) -> Sheet:
        """The sheet, which notes here what of it is looked at."""
        return Sheet(
            watched(sheet.pieces, self.pieces),
            sheet.seams,
            watched(sheet.points, self.points),
            watched(sheet.lines, self.lines),
        )

    def finds_the_same(self, on: Sheet, other: Sheet) -> bool:
        """True when it would not tell the two sheets apart."""
        return (
            (on.seams is other.seams or on.seams == other.seams)
            and _same(self.pieces, on.pieces, other.pieces)
            and _same(self.points, on.points, other.points)
            and _same(self.lines, on.lines, other.lines)
        )


def _same(names: set[str], on: Mapping[str, T], other: Mapping[str, T]) -> bool:
    return tuple(on) == tuple(other) and all(
        on[n] is other[n] or on[n] == other[n] for n in names if n in on
    )


class Difference(NamedTuple, Generic[T]):
    """What has become of some things: those taken off, and those laid in their place,
    in that of others, or after them."""

    gone: frozenset[str]
    laid: Mapping[str, T]

    @classmethod
    def of(cls, things: Mapping[str, T]) -> "Difference[T]":
        """The difference noted by watched things."""
        assert isinstance(things, Watched), "a stage works on the sheet it is given"
        return cls(things.gone, things.laid)

    def on(self, things: Mapping[str, T]) -> Mapping[str, T]:
        """The same done to others."""
        if self.gone:
            things = less(things, self.gone)
        return more(things, self.laid) if self.laid else things

    def like(self, old: "Difference[T]") -> "Difference[T]":
        """The same, with the old one's things where they are equal."""
        if not self.laid:
            return self
        laid = {
            n: old.laid[n] if n in old.laid and old.laid[n] == t else t
            for n, t in self.laid.items()
        }
        return Difference(self.gone, laid)


@dataclass(unsafe_hash=True)
class Change:
    """A sheet as its difference from the one that it was made from."""

    pieces: Final[Difference[Piece]]
    seams: Final[tuple[Seam, ...]]
    points: Final[Difference[Point]]
    lines: Final[Difference[Path]]

    @classmethod
    def of(cls, sheet: Sheet) -> "Change":
        """What has become of a watched sheet."""
        return cls(
            Difference.of(sheet.pieces),
            sheet.seams,
            Difference.of(sheet.points),
            Difference.of(sheet.lines),
        )

    def on(self, sheet: Sheet) -> Sheet:
        """The change made to a sheet."""
        return Sheet(
            self.pieces.on(sheet.pieces),
            self.seams,
            self.points.on(sheet.points),
            self.lines.on(sheet.lines),
        )

    def like(self, old: "Change") -> "Change":
        """The same change, with the old one's things where they are equal, so that
        whoever knew those knows these."""
        return Change(
            self.pieces.like(old.pieces),
            old.seams if self.seams == old.seams else self.seams,
            self.points.like(old.points),
            self.lines.like(old.lines),
        )
