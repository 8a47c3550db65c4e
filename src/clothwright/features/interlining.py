"""Interlining and tape: what is cut without a pattern of its own (first garment 15)."""

from collections.abc import Callable, Iterable

from clothwright.paper import MarkKind, Sheet
from clothwright.rules import Numbers

STRIP = 2.5
"""Width of the strip of interlining under a row of loops, cm (15)."""


def interlining_notes(
    n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
) -> Iterable[str]:
    """The strips under the loops and the tape of the waist. (The tape of a slanted
    edge is told with the edge.)"""
    back = sheet.pieces.get("BC")
    if back is not None and any(m.kind is MarkKind.LOOP for m in back.marks):
        rows = "each slanted edge" if n.rows > 1 else "the slanted edge with the loops"
        yield (
            f"Interlining under the loops: a strip {fmt(STRIP)} wide and "
            f"{fmt(back.edge('slant').length)} long for {rows}, on the back."
        )
    yield f"Stay tape for the waist: {fmt(n.w)}."
