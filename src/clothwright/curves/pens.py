"""The pen protocol: shapes narrate themselves, listeners decide.

It is the protocol of fontTools' pens, so any of its pens can listen.
"""

from typing import Protocol


class Pen(Protocol):
    """A listener. Points are (x, y) pairs in cm, y down."""

    def moveTo(self, pt: tuple[float, float]) -> None:
        """A new path starts here."""

    def lineTo(self, pt: tuple[float, float]) -> None:
        """Straight on to `pt`."""

    def curveTo(self, *points: tuple[float, float]) -> None:
        """A cubic: two handles, then the end."""

    def closePath(self) -> None:
        """The path ends where it began."""

    def endPath(self) -> None:
        """The path ends open."""
