"""Corners of a skirt in halves that flow when its seams are sewn (truing 4; blocks K5,
K6)."""

from collections.abc import Iterator

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.chains import WAISTS
from clothwright.features.skirts.about import YOKES
from clothwright.features.skirts.pocket_drawing import HIP_PIECE
from clothwright.features.skirts.slit_edges import SLIT
from clothwright.paper import UNDER, Piece, Sheet
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import SKIRT_HEM, SKIRT_WAIST


def _pleated(piece: Piece) -> bool:
    return piece.has(f"{UNDER} 1")


def _centre_pleat(
    sheet: Sheet, piece: Piece, where: str, outer: End
) -> Iterator[Joint]:
    """The waist square to the fold of an inverted pleat, seen on both sides of it, and
    square to the middle of its backing."""
    fold = Corner(piece.code, "yoke" if piece.has("yoke") else "waist", outer)
    yield Joint(f"waist over the pleat {where}", (fold,), 180.0, SKIRT_WAIST)
    back = next(
        p for p in (piece, sheet.pieces.get("PU")) if p is not None and p.has("backing")
    )
    yield Joint.fold(
        "waist of the backing", Corner(back.code, f"{UNDER} 1 over", outer)
    )


def _foot_of_yoke(yoke: Piece, half: str) -> Corner:
    end = End.END if half == "back" else End.START
    return Corner(yoke.code, "foot of yoke", end)


def skirt_joints(sheet: Sheet) -> list[Joint]:
    """Every joint of a skirt in halves whose edges are on the table (K5, K6)."""
    out: list[Joint] = []
    if not {BACK, FRONT} <= set(sheet.pieces):
        return out
    back, front = sheet.piece(BACK), sheet.piece(FRONT)
    tops = {c: sheet.pieces.get(y, sheet.piece(c)) for c, y in YOKES.items()}
    for half, piece in (("back", back), ("front", front)):
        top = tops[piece.code]
        names = [w for w in WAISTS if top.has(w)]
        inner = End.END if half == "back" else End.START
        outer = End.START if half == "back" else End.END
        for a, b in zip(names, names[1:], strict=False):
            corners = (Corner(top.code, a, inner), Corner(top.code, b, outer))
            which = (
                ""
                if len(names) == 2
                else " nearer to the " + ("centre" if a == "waist" else "side")
            )
            name = f"waist over the {half} dart{which}"
            out.append(Joint(name, corners, 180.0, SKIRT_WAIST))
        centre = "cb" if half == "back" else "cf"
        where = f"at the centre {half}"
        if top is not piece:
            low, what = _foot_of_yoke(top, half), f"yoke's seam {where}"
            out.append(
                Joint(what, (low,), 180.0, SKIRT_WAIST)
                if top.has("waist over")
                else Joint.fold(what, low)
            )
        if _pleated(piece):
            out += _centre_pleat(sheet, piece, where, outer)
        if top.has("waist over"):  # a wrap runs on over its centre
            corner = (Corner(top.code, "waist", outer),)
            out.append(Joint(f"waist {where}", corner, 180.0, SKIRT_WAIST))
        elif top is not piece or not _pleated(piece):
            out.append(Joint.fold(f"waist {where}", Corner(top.code, "waist", outer)))
        if piece.has(centre) and not piece.has("vent"):
            hem = End.END if half == "back" else End.START
            foot = "hem" if piece.has("hem") else "foot of tier"
            out.append(Joint.fold(f"{foot} {where}", Corner(piece.code, foot, hem)))
    sides = tops[BACK], sheet.pieces.get(HIP_PIECE, tops[FRONT])
    last = [next(w for w in reversed(WAISTS) if p.has(w)) for p in sides]
    corners = (
        Corner(sides[0].code, last[0], End.END),
        Corner(sides[1].code, last[1], End.START),
    )
    out.append(Joint("skirt waist over the side", corners, 180.0, SKIRT_WAIST))
    foot = "hem" if back.has("hem") else "foot of tier"
    corners = (Corner(BACK, foot, End.START), Corner(FRONT, foot, End.END))
    if not front.has(SLIT):
        out.append(Joint("skirt hem over the side", corners, 180.0, SKIRT_HEM))
    return out
