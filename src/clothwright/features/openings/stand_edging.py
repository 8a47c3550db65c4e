"""How the edge of a button stand is finished (transformations 6 and 7)."""

from collections.abc import Mapping
from enum import Enum


class Edging(Enum):
    """How the edge of the stand is finished."""

    FACED = "with a facing of its own"
    """Sewn to the edge."""

    CUT_ON = "with its facing cut on"
    """In one with the front, folded back along the edge."""

    BAND = "as a band sewn on"
    """As a shirt's: the front is cut back to its seam."""


NOT_WITH: Mapping[Edging, Mapping[str, str]] = {
    Edging.FACED: {},
    Edging.CUT_ON: {},
    Edging.BAND: {
        "lining": "a top with a front band is faced and not lined yet; leave the "
        "lining off, or let the button stand have a facing",
    },
}
"""Words that an edging does not allow beside it."""
