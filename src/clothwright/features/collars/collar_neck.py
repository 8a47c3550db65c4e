"""The neck that a collar is drafted from: front and back of the draft laid together
(transformations 5)."""

from clothwright.blocks.collar import ClosedNeck
from clothwright.curves import Cubic, Path, distance, from_pair, left_normal
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.chains import Chains
from clothwright.features.linings.sewn_halves import back_neck
from clothwright.features.openings.stand_band import BAND, banded
from clothwright.features.openings.stand_pieces import BACK, FRONT, STAND
from clothwright.paper import Sheet

NECK_STAND = "neck stand"
"""The neck of shell or collar beyond the centre line, on a stand that laps over."""


def closed_neck(sheet: Sheet, shoulder: float) -> ClosedNeck:
    """Both trued necks with their darts closed, the front laid on the back's paper
    edge to edge at the shoulder; `shoulder` is the front's length to its tip, cm."""
    front = sheet.piece("FC") if "FC" in sheet.pieces else as_drafted(sheet)
    back = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    neck, closed = back_neck(back)
    way = closed.direction(back.edge("shoulder").path.start_direction)
    mine: Path = front.edge("neck").path
    at = banded(sheet)
    if at is not None:  # the rest of the neck lies on the band
        end = sheet.edge(BAND, "neck").path
        if at is FRONT:
            mine += end.pinned(mine.end, end.end)
        else:
            neck = _as_one(end.pinned(end.start, neck.start), neck)
    out = front.edge("shoulder").path.end_direction * -1.0
    m = from_pair(mine.start, mine.start + out, neck.end, neck.end + way)
    laid = mine.moved(m).pinned(neck.end, m(mine.end))
    tip = neck.end + way * shoulder
    return ClosedNeck(neck, laid, tip, m, left_normal(neck.start_direction))


def _as_one(first: Path, second: Path) -> Path:
    """Two lines of which the second runs on from the first; a curve that was divided
    there is one again, so that its end may be raised in one sweep."""
    a, b = first.segments[-1], second.segments[0]
    if not (isinstance(a, Cubic) and isinstance(b, Cubic)):
        return first + second
    t = distance(a.handle2, a.end) / distance(a.handle2, b.handle1)
    out = a.start + (a.handle1 - a.start) * (1 / t)
    back = b.end + (b.handle2 - b.end) * (1 / (1 - t))
    whole = Cubic(a.start, out, back, b.end)
    return Path((*first.segments[:-1], whole, *second.segments[1:]))


def papers(sheet: Sheet, laid: ClosedNeck) -> tuple[Path, ...]:
    """The back's paper and the front's as they are laid together."""
    front = sheet.piece("FC") if "FC" in sheet.pieces else as_drafted(sheet)
    back = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    return back.outline, front.outline.moved(laid.turned)


def opens_behind(sheet: Sheet) -> bool:
    """True when the back opens at the centre: the collar is in two halves there."""
    shell = BACK.on(sheet, BACK.upper)
    opened = bool(shell) and sheet.piece(shell).has(STAND)
    return Chains(sheet).zipped() or opened or beyond(sheet, "B") > 0


def beyond(sheet: Sheet, half: str) -> float:
    """What a front ("F") or back ("B") runs on at the neck beyond its centre line, to
    lap over, cm: its edge "neck stand"."""
    codes = [f"{half}C", half]
    if banded(sheet) is (FRONT if half == "F" else BACK):
        codes = [BAND]
    code = next((c for c in codes if c in sheet.pieces), "")
    piece = sheet.pieces.get(code)
    if piece is None or not piece.has(NECK_STAND):
        return 0.0
    return piece.edge(NECK_STAND).length
