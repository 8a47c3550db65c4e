"""What covers the seam that sews a collar's stand to the neck (transformations 6; that
a stand does it by itself is common practice, no source)."""

from collections.abc import Mapping
from enum import Enum


class Inside(Enum):
    """What the seam of the neck lies in."""

    FACED = "under the facing of the neck"

    IN_STAND = "between its two layers"
    """The inner stand is felled over it, as a shirt's: with a front that buttons, whose
    facings or bands end in the collar."""


GIVEN: Mapping[Inside, frozenset[str]] = {
    Inside.FACED: frozenset(),
    Inside.IN_STAND: frozenset({"inside finish"}),
}

WANTED: Mapping[Inside, Mapping[str, str]] = {
    Inside.FACED: {},
    Inside.IN_STAND: {
        "front opening": "a stand covers the seam of the neck by itself where the "
        'front buttons; add a "button stand" in front, or let the neck have a facing',
        "armhole finish": "a stand that covers the seam of the neck leaves the "
        'armholes open; without sleeves take an all-in-one "facing", or add an '
        '"armhole binding"',
    },
}

NOT_BESIDE: Mapping[Inside, Mapping[str, str]] = {
    Inside.FACED: {},
    Inside.IN_STAND: {
        "inside finish": "the seam of the neck lies between the layers of the collar's "
        "stand and needs no facing; leave one of the two off",
        "lining": "a top without a facing of the neck is not lined yet; let the neck "
        "have a facing",
    },
}
"""Words that a stand which covers the seam of the neck does not allow beside it."""
