"""Front and back with their panels laid together as they are sewn (first garment 14.1).

Facings are traced from them, and the lining that hangs below a facing is cut by them.
"""

from dataclasses import dataclass

from clothwright.curves import IDENTITY, Motion, Path, direction, from_pair
from clothwright.features.back_dart import NECK_LEGS
from clothwright.paper import Piece, Sheet


@dataclass(frozen=True)
class SewnHalf:
    """A half of the shell with its panels in their sewn state, net lines clockwise.

    `neck` runs with the loop; `armhole` likewise; `side` runs from the underarm down;
    `motion` lays the side panel beside the centre panel.
    """

    neck: Path
    armhole: Path
    side: Path
    motion: Motion
    panel: Path | None
    """The panel seam from its start on the edge downwards, None without panels."""


def sewn_front(sheet: Sheet) -> SewnHalf:
    """The front with the side front laid on along the panel seam (14.1)."""
    if "F" in sheet.pieces:
        f = sheet.piece("F")
        g = f.edge("armhole").path.start
        u1 = f.edge("side high").path.start
        down = Path.line(g, g + direction(g, u1) * 20.0)
        return SewnHalf(
            f.edge("neck").path, f.edge("armhole").path, down, IDENTITY, None
        )
    fc, fs = sheet.piece("FC"), sheet.piece("FS")
    panel = fc.edge("panel").path.reversed()
    other = fs.edge("panel").path
    m = _lay_on(other, panel)
    armhole = fs.edge("armhole").path.moved(m)
    if fc.has("armhole"):
        head = fc.edge("armhole").path
        armhole = armhole.pinned(armhole.start, head.start) + head
    side = fs.edge("side").path.moved(m).reversed()
    return SewnHalf(fc.edge("neck").path, armhole, side, m, panel)


def sewn_back(sheet: Sheet) -> SewnHalf:
    """The back with the side back laid on along the panel seam, a dart at the neck
    closed: what that opens below its point is of no matter."""
    back = sheet.piece("B" if "B" in sheet.pieces else "BC")
    neck, closed = back_neck(back)
    if back.code == "B":
        armhole = back.edge("armhole").path.moved(closed)
        return SewnHalf(
            neck, armhole, back.edge("side").path.moved(closed), closed, None
        )
    bs = sheet.piece("BS")
    panel = back.edge("panel").path.moved(closed)
    m = _lay_on(bs.edge("panel").path.reversed(), panel)
    armhole = bs.edge("armhole").path.moved(m)
    if back.has("armhole"):
        head = back.edge("armhole").path.moved(closed)
        armhole = head + armhole.pinned(head.end, armhole.end)
    return SewnHalf(neck, armhole, bs.edge("side").path.moved(m), m, panel)


def back_neck(back: Piece) -> tuple[Path, Motion]:
    """The neck from the centre to the shoulder with its dart closed, and how what lies
    outward of the dart moves for that."""
    neck = back.edge("neck").path
    if not back.has("neck side"):
        return neck, IDENTITY
    down, up = (back.edge(leg).path for leg in NECK_LEGS)
    closed = from_pair(up.start, up.end, down.end, down.start)
    side = back.edge("neck side").path.moved(closed)
    return neck + side.pinned(neck.end, side.end), closed


def _lay_on(path: Path, on: Path) -> Motion:
    """The motion that lays the start of one line on another's, same direction."""
    return from_pair(
        path.start,
        path.start + path.start_direction,
        on.start,
        on.start + on.start_direction,
    )
