"""Move: rigid motion of a piece. A pivot is a turn about a point."""

from clothwright.curves import Motion
from clothwright.paper.sheet import Sheet


def move(sheet: Sheet, piece: str, motion: Motion) -> Sheet:
    """The piece laid elsewhere. All lengths and angles are kept; seams stay stated."""
    return sheet.put(sheet.piece(piece).moved(motion))
