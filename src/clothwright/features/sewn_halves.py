"""Front and back with their panels laid together as they are sewn (first garment 14.1).

Facings are traced from them, and the lining that hangs below a facing is cut by them.
"""

from dataclasses import dataclass

from clothwright.curves import IDENTITY, Motion, Path, direction, from_pair
from clothwright.paper import Sheet


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
    """The back with the side back laid on along the panel seam."""
    if "B" in sheet.pieces:
        b = sheet.piece("B")
        return SewnHalf(
            b.edge("neck").path,
            b.edge("armhole").path,
            b.edge("side").path,
            IDENTITY,
            None,
        )
    bc, bs = sheet.piece("BC"), sheet.piece("BS")
    panel = bc.edge("panel").path
    other = bs.edge("panel").path.reversed()
    m = _lay_on(other, panel)
    armhole = bs.edge("armhole").path.moved(m)
    if bc.has("armhole"):
        head = bc.edge("armhole").path
        armhole = head + armhole.pinned(head.end, armhole.end)
    return SewnHalf(
        bc.edge("neck").path, armhole, bs.edge("side").path.moved(m), m, panel
    )


def _lay_on(path: Path, on: Path) -> Motion:
    """The motion that lays the start of one line on another's, same direction."""
    return from_pair(
        path.start,
        path.start + path.start_direction,
        on.start,
        on.start + on.start_direction,
    )
