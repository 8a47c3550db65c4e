"""The two units a workroom thinks in."""

from enum import Enum

CM_PER_INCH = 2.54
"""Exact by definition (international inch, 1959)."""


class Unit(Enum):
    """Unit of an order or of a file of measures."""

    CM = "cm"
    IN = "in"

    @property
    def cm(self) -> float:
        """Centimetres in one of it."""
        return CM_PER_INCH if self is Unit.IN else 1.0
