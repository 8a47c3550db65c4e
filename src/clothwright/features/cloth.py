"""Width of cloth that pieces take (blocks G7)."""

from collections.abc import Iterable

from clothwright.curves import Point, left_normal
from clothwright.paper import Piece

SEAM_ALLOWANCE = 1.5
"""Allowed at either side of a piece when its cloth is measured, cm (first garment
18)."""


def widest_of(pieces: Iterable[Piece]) -> tuple[str, float]:
    """The piece that takes most of the cloth's width, and how much: opened out at its
    fold, straight grain along the cloth, allowances included, cm."""
    out = []
    for p in pieces:
        foot, head = p.grain or (Point(0.0, 0.0), Point(0.0, 1.0))
        ux, uy = left_normal(head - foot)
        reach = [x * ux + y * uy for x, y in p.outline.chords(0.05)]
        wide = (max(reach) - min(reach)) * (2 if p.fold else 1)
        out.append((wide + 2 * SEAM_ALLOWANCE, p.code))
    wide, code = max(out)
    return code, wide
