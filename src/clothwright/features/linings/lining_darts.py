"""The bust dart of a front's lining (first garment 8 and 15)."""

from dataclasses import replace

from clothwright.curves import Point, direction, midpoint
from clothwright.features.bodice.dropped import runs_below
from clothwright.features.linings.sewn_halves import SIDE_DARTS
from clothwright.paper import (
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    redraw,
    straight,
    tape,
)


def closed_front(sheet: Sheet, front: Piece) -> Piece:
    """The front with its bust dart in the waist dart; its side then has the name that
    it has in the shell. Where it has none at its edge it keeps its side dart below a
    neck facing, which does not reach that."""
    neck_alone = "FF" in sheet.pieces and not sheet.piece("FF").has("side")
    if neck_alone and (runs_below(front) or not front.has("leg cf")):
        if front.has("dart low") and not sheet.piece("F").has("dart low"):
            raise PaperError(
                "the lining would keep the bust dart at its side, where the front has "
                'none: leave a part of it there (share), take a "side dart", or use a '
                "front princess line"
            )
        return front
    side = "side" if sheet.piece("F").has("side") else "side low"
    closed = dart_at_waist(front, sheet.points["BP"], side)
    return replace(closed, grain=front.grain)


def dart_at_waist(front: Piece, bp: Point, side: str = "side low") -> Piece:
    """A front with its side darts closed into the waist dart, as the facing was traced
    (8); its point stands as far below the bust point as before. `side` names what is
    then one line."""
    code = front.code
    if runs_below(front):
        raise PaperError(
            "the front of a torso in one piece has no waist dart at its edge for the "
            "lining's side dart to be closed into: leave the bust dart at the side and "
            'set mode = "to the edge", or use a front princess line'
        )
    if not front.has("leg cf"):
        raise PaperError(
            "the front takes in nothing at the waist, so the lining's side dart "
            'has no waist dart to be closed into: set mode = "to the edge", or use a '
            "front princess line"
        )
    below = front.edge("leg cf").path.end.y - bp.y
    darts = [legs for legs in SIDE_DARTS if front.has(legs[0])]
    sheet = Sheet().put(front)
    for first, second in (*darts, ("leg cf", "leg side")):
        a, b = front.edge(first).path.start, front.edge(second).path.end
        legs = [straight(first, a, bp), straight(second, bp, b)]
        sheet = redraw(sheet, code, [first, second], legs)
    for low, high in darts:
        dart = Seam(low, "side dart", (Run(code, low, True),), (Run(code, high),))
        sheet = tape(sheet.sew(dart), low, moving="side low")
    p = sheet.piece(code)
    sides = [e.name for e in p.edges if e.name.startswith("side")]
    ends = p.edge(sides[0]).path.start, p.edge(sides[-1]).path.end
    sheet = redraw(sheet, code, sides, [straight(side, *ends)])
    d1, d2 = p.edge("leg cf").path.start, p.edge("leg side").path.end
    point = bp + direction(bp, midpoint(d1, d2)) * below
    legs = [straight("leg cf", d1, point), straight("leg side", point, d2)]
    return redraw(sheet, code, ["leg cf", "leg side"], legs).piece(code)
