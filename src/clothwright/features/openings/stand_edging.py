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


def not_with(edging: Edging, half: str) -> Mapping[str, str]:
    """Words that an edging of the "front" or the "back" does not allow beside it."""
    if edging is not Edging.CUT_ON:
        return {}
    return {
        f"{half} yoke": "a facing cut on would be divided by the yoke; let the button "
        "stand have a facing of its own, or a band",
    }
