"""Labels of a nest: what all sizes share, and each size's name on its own layer."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from clothwright.curves import Vector
from clothwright.finishing.drawn import DrawnText
from clothwright.sheets.letters import width
from clothwright.sheets.nest import SLOT


def parted(text: DrawnText) -> Iterator[tuple[str, DrawnText]]:
    """The words of a line that all sizes share, under "", and its sizes, each where it
    stands in the whole line."""
    parts = text.text.split(SLOT)
    if len(parts) == 1:
        yield "", text
        return
    blank = width("n n", text.height, bold=text.bold) - width(
        "nn", text.height, bold=text.bold
    )
    widths = [width(p, text.height, bold=text.bold) for p in parts]
    a = math.radians(text.degrees)
    along = Vector(math.cos(a), math.sin(a))
    left = -(math.fsum(widths) + blank * (len(parts) - 1)) / 2
    for i, (part, wide) in enumerate(zip(parts, widths, strict=True)):
        if part.strip():
            at = text.at + along * (left + wide / 2)
            shared = i in (0, len(parts) - 1) or part != part.strip()
            yield "" if shared else part, replace(text, text=part, at=at)
        left += wide + blank


def words_apart(
    texts: Iterable[DrawnText],
) -> tuple[list[DrawnText], dict[str, list[DrawnText]]]:
    """The words that all sizes share, and those of every size."""
    shared: list[DrawnText] = []
    own: dict[str, list[DrawnText]] = {}
    for text in texts:
        for size, part in parted(text):
            if size:
                own.setdefault(size, []).append(part)
            else:
                shared.append(part)
    return shared, own
