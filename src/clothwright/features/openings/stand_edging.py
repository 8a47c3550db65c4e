"""How the edge of a button stand is finished (transformations 6 and 7)."""

from enum import Enum


class Edging(Enum):
    """How the edge of the stand is finished."""

    FACED = "with a facing of its own"
    """Sewn to the edge."""

    CUT_ON = "with its facing cut on"
    """In one with the front, folded back along the edge."""

    BAND = "as a band sewn on"
    """As a shirt's: the front is cut back to its seam."""
