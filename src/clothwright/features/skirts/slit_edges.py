"""The edges of a slit in a side seam, for what hangs behind it or is sewn to its
piece."""

from clothwright.curves import Path, direction, turned
from clothwright.paper import Edge, EdgeKind, Piece, Sheet, redraw, straight

SLIT, TOP = "side slit", "top of side slit"
"""Edges of the facing of a slit that is cut in one with a half."""

FRONTS = ("SF", "PFS", "PF", "FS", "F")
BACKS = ("SB", "PBS", "PB", "BS", "B")
"""Pieces at whose side and hem a slit can be."""


def at_hem(sheet: Sheet) -> tuple[str, str]:
    """The front and the back that have both the side and the hem."""
    front, back = (
        next(c for c in codes if c in sheet.pieces and sheet.piece(c).has("hem"))
        for codes in (FRONTS, BACKS)
    )
    return front, back


def slit_in(piece: Piece) -> Edge:
    """The side seam where it comes to the hem."""
    beside = (piece.before("hem"), piece.after("hem"))
    return next(e for e in beside if e.name.startswith("side"))


def slitted(sheet: Sheet, code: str) -> bool:
    """True for a piece with a slit at its side."""
    return code in sheet.pieces and sheet.piece(code).has(SLIT)


def without_facing(piece: Piece) -> Piece:
    """The piece without the facing of its slit: cut off along the side, where a lining
    hangs open."""
    if not piece.has(SLIT):
        return piece
    hem, front = piece.edge("hem").path, piece.after("hem").name == SLIT
    top = piece.edge(TOP).path
    up = top.end if front else top.start
    out = direction(up, top.start if front else top.end)
    for way in (turned(out, 90), turned(out, -90)):  # the side is square to the top
        hits = hem.meets(Path.line(up, up + way * (piece.edge(SLIT).length + 20.0)))
        if hits:
            break
    at = hits[0][0]
    corner = hem.at_length(at)
    if front:
        run = ["hem", SLIT, TOP]
        short = hem.between(0.0, at).pinned(hem.start, corner)
        new = [Edge("hem", short, _DONE), straight("open", corner, up, _DONE)]
    else:
        run = [TOP, SLIT, "hem"]
        short = hem.between(at, hem.length).pinned(corner, hem.end)
        new = [straight("open", up, corner, _DONE), Edge("hem", short, _DONE)]
    return redraw(Sheet().put(piece), piece.code, run, new).piece(piece.code)


def own_side(piece: Piece) -> float:
    """Length of the side down to the hem, cm, or of a panel's seam where it has none:
    beside a slit with what of it is open."""
    long = piece.edge("side" if piece.has("side") else "panel").length
    return long + (piece.edge(SLIT).length if piece.has(SLIT) else 0.0)


def own_hem(piece: Piece) -> Path:
    """The hem without that of a slit's facing, which lies back on it."""
    return without_facing(piece).edge("hem").path


_DONE = EdgeKind.FINISHED
