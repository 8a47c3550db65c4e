"""Move: rigid motion of a piece. A pivot is a turn about a point."""

from clothwright.curves import Motion
from clothwright.paper.seam import Run
from clothwright.paper.sheet import Sheet


def move(sheet: Sheet, piece: str, motion: Motion) -> Sheet:
    """The piece laid elsewhere. All lengths and angles are kept; seams stay stated.

    The loop of a piece that is turned over runs the other way past its edges, so its
    seams are walked against the loop where they were walked with it: from the same end.
    """
    out = sheet.put(sheet.piece(piece).moved(motion))
    if not motion.flips:
        return out

    def over(run: Run) -> tuple[Run, ...]:
        return (run._replace(backward=not run.backward),)

    return out.with_runs(over, piece)
