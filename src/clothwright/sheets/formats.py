"""Papers and scales: the closed choices of a full-scale output.

Sizes are centimetres. A4 and A0 are ISO 216, Letter is ANSI A (8.5 × 11 in); a
roll's width is whatever stands on the plotter, 91.4 cm (36 in) unless told.
"""

from dataclasses import dataclass
from enum import Enum

ROLL_WIDTH = 91.4
"""Width of the usual plotter roll, cm (36 in)."""

ROLL_LEAST, ROLL_MOST = 30.0, 250.0
"""Narrowest and widest roll accepted, cm."""

ROLL_LENGTH = 500.0
"""Longest page cut from a roll, cm; a PDF page ends at 14,400 pt = 508 cm."""


class PageFormat(Enum):
    """The paper that is printed on."""

    A4 = "A4"
    """21.0 × 29.7 cm."""

    LETTER = "US Letter"
    """21.59 × 27.94 cm."""

    A0 = "A0"
    """84.1 × 118.9 cm."""

    ROLL = "roll"
    """A roll of any width, cut to the length that is needed."""


class Scale(Enum):
    """How large the pattern is drawn; the value is paper length over true length."""

    FULL = 1.0
    """As it is cut."""

    HALF = 0.5
    """For a half-size stand."""

    QUARTER = 0.25
    """For a notebook and for planning."""


@dataclass(frozen=True, slots=True)
class Frame:
    """A page and the part of it that carries the pattern, in cm.

    The live part lies `left` and `top` from the page's upper left corner. Lines run
    on `BLEED` beyond it, so that a slip of the scissors shows no gap.
    """

    width: float
    height: float
    left: float
    top: float
    live_width: float
    live_height: float


BLEED = 0.2
"""How far lines run on beyond the trim line, cm; pieces that end there keep farther
off it, so that nothing of a page's neighbours is seen that does not run on."""

MARGIN = 1.0
"""Empty margin left, right and below, cm. Printers leave 0.3 or a little more blank,
and nothing that counts lies within 0.5 of that (truing 11.14)."""

HEADER = 1.6
"""Margin above, with the header's lines in it, cm."""

_SIZES = {
    PageFormat.A4: (21.0, 29.7),
    PageFormat.LETTER: (21.59, 27.94),
    PageFormat.A0: (84.1, 118.9),
}


def frame_of(page: PageFormat, roll_width: float = ROLL_WIDTH) -> Frame:
    """The page and its live part; a roll as long as a page may be.

    Raises ValueError for a roll narrower than 30 or wider than 250 cm.
    """
    if page is PageFormat.ROLL:
        if not ROLL_LEAST <= roll_width <= ROLL_MOST:
            raise ValueError(
                f"Roll width: {roll_width:g} cm is outside {ROLL_LEAST:g} to "
                f"{ROLL_MOST:g} cm; give the width of the paper on the roll."
            )
        width, height = roll_width, ROLL_LENGTH
    else:
        width, height = _SIZES[page]
    live = width - 2 * MARGIN, height - HEADER - MARGIN
    return Frame(width, height, MARGIN, HEADER, *live)
