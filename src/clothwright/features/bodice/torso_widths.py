"""Widths of a torso above a seam below the waist, and of its skirt below that."""

from clothwright.blocks.slit import within_slit
from clothwright.blocks.torso_width import width_at
from clothwright.curves import Path, Point
from clothwright.features.bodice.dropped import LOWER
from clothwright.paper import Sheet
from clothwright.rules import Numbers


def half_at(n: Numbers, sheet: Sheet, below: float) -> float:
    """Half width so far below the waist, darts closed, cm: of the torso above its seam,
    of the skirt cut off it below."""
    level = n.yW + below
    if "dd" not in n or below <= n.dd:
        return width_at(sheet, level)
    line = Path.line(Point(-60.0, level), Point(200.0, level))
    total, origin = 0.0, line.start.x
    for code, _ in LOWER.values():
        if code not in sheet.pieces:
            continue
        piece = sheet.piece(code)
        hits = [max(s, -origin) for s in within_slit(piece, line)]  # of a vent
        if code in ("PF", "PFC"):  # a stand lies beyond, a band is cut off before
            hits = [min(hits), sheet.points["CFw"].x - origin]
        elif piece.has("band") or piece.has("stand"):
            hits = [-origin, max(hits)]
        legs = [e.path for e in piece.edges if e.name.startswith("dart ")]
        across = [s for leg in legs for s, _ in line.meets(leg)]
        total += max(hits) - min(hits)
        total -= max(across) - min(across) if across else 0.0
    return total
