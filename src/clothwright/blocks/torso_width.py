"""How wide a torso, or another piece, is on the paper with its darts closed. cm."""

from collections.abc import Sequence

from clothwright.blocks.skirt_darts import darts_at
from clothwright.blocks.slit import within_slit
from clothwright.blocks.torso import PIECES, fish_eye
from clothwright.curves import Path, Point
from clothwright.paper import Sheet

LAID_IN_TUCKS = "laid in tucks in front"
"""Name of the line that keeps how much of a half is laid in tucks beside its centre."""


_AT_CENTRE = ("F", "FC")


def width_at(sheet: Sheet, level: float, codes: Sequence[str] = PIECES) -> float:
    """The torso's half width at a level, its darts closed, cm; or that of other
    pieces."""
    total = 0.0
    line = Path.line(Point(-60.0, level), Point(500.0, level))
    for code in codes:
        if code not in sheet.pieces:
            continue
        piece = sheet.piece(code)
        # a vent lies beyond the centre back
        hits = [max(s, -line.start.x) for s in within_slit(piece, line)]
        if code in _AT_CENTRE:  # a stand lies beyond, a band is cut off before
            hits = [min(hits), sheet.points["CFw"].x - line.start.x]
        elif piece.has("band") or piece.has("stand"):  # or stands apart, to be laced
            hits = [-line.start.x, max(hits)]
        total += max(hits) - min(hits) if hits else 0.0
        dart = fish_eye(sheet, code)
        legs = [e.path for e in piece.edges if e.name.startswith("leg ")]
        taken = [*legs, dart] if dart else legs
        across = [s for path in taken for s, _ in line.meets(path)]
        total -= max(across) - min(across) if across else 0.0
        total -= darts_at(piece, line)
        if code in ("F", "FC") and LAID_IN_TUCKS in sheet.lines:
            total -= sheet.lines[LAID_IN_TUCKS].length
    return total
