"""Where the buttons of a stand lie along its centre line (transformations 7)."""

import math
from dataclasses import dataclass
from itertools import pairwise

_NEAR = 0.6
"""Less than this share of the wanted distance from the first button to the bust is not
worth a button of its own."""


_WIDE = 1.25
"""No distance is wider than so many times the wanted one (7: 8 of 7 to 10)."""


_ONE = 1.0
"""Two buttons nearer to each other than this are one, cm."""


@dataclass(frozen=True)
class Places:
    """Buttons along a centre line, cm below its top, and below the waist seam."""

    upper: tuple[float, ...]
    lower: tuple[float, ...]

    def gaps(self, waist: float) -> list[float]:
        """From button to button, cm; `waist` is the centre line above the waist."""
        at = [*self.upper, *(waist + y for y in self.lower)]
        return [b - a for a, b in pairwise(at)]


def places(
    first: float,
    bust: float | None,
    waist: float,
    below: float,
    wanted: float,
    *,
    above: float,
    seam: float,
    clear: float,
) -> Places:
    """The buttons: the first, one at bust level, one `above` the waist, evenly between
    about as `wanted`, and on as far as `clear` above the hem.

    `first`, `bust` and `waist` are cm below the top of the centre line, `below` is what
    hangs below the waist seam, from which a button keeps `seam` away. Raises ValueError
    when the first lies below the last above the waist.
    """
    last = waist - above
    if first > last:
        raise ValueError("the first button lies below the waist's")
    marks = [first]
    if bust is not None and first + _NEAR * wanted < bust < last - 1.0:
        marks.append(bust)
    upper, step = [first], wanted
    for a, b in pairwise((*marks, last)):
        if b - a < _ONE:
            continue
        parts = max(1, round((b - a) / wanted), math.ceil((b - a) / (_WIDE * wanted)))
        step = (b - a) / parts
        upper += [a + step * k for k in range(1, parts + 1)]
    lower: list[float] = []
    at = step - above
    while at <= below - clear + 1e-9:
        if at >= seam - 1e-9:
            lower.append(at)
        at += step
    return Places(tuple(upper), tuple(lower))
