"""A half as it was before its yoke was cut off, kept as lines on the table.

Facings and linings are traced from it, and checked against it.
"""

from clothwright.paper import Edge, EdgeKind, Piece, Sheet
from clothwright.rules import Numbers

_CENTRES = ("cf", "cb")


def keep_whole(sheet: Sheet, code: str, whole: Piece | None = None) -> Sheet:
    """The sheet that remembers a piece edge by edge: as it lies, or `whole`, in place
    of what it remembered."""
    edges = enumerate((sheet.piece(code) if whole is None else whole).edges)
    kept = {f"whole {code} {i:02d} {e.name}": e.path for i, e in edges}
    return sheet.undrawn(f"whole {code} ").drawn(**kept)


WAIST_IN_BAND = "waist in the band"
"""What of the waist of a half lies in a band, kept as a line that is named so and by
its half."""


def waist_in_band(sheet: Sheet, half: str) -> float:
    """The same of the "front" or the "back", cm; nought without a band."""
    kept = sheet.lines.get(f"{WAIST_IN_BAND}, {half}")
    return 0.0 if kept is None else kept.length


def is_kept(sheet: Sheet, code: str) -> bool:
    """True when a piece is remembered as it was."""
    return any(name.startswith(f"whole {code} ") for name in sheet.lines)


def width_at_waist(sheet: Sheet, code: str) -> float:
    """Width of a panel at the waist, cm; of one that runs on below or is cut above, as
    kept."""
    kept = sheet.lines.get(f"waist of {code}")
    if kept is None:
        kept = before_yoke(sheet, code).edge("waist").path
    return kept.length


def before_yoke(sheet: Sheet, code: str) -> Piece:
    """The piece as it was remembered; as it lies when it was not."""
    p = sheet.piece(code)
    before = f"whole {code} "
    kept = sorted([name for name in sheet.lines if name.startswith(before)])
    if not kept:
        return p
    kinds = {e.name: e.kind for e in p.edges if e.name in _CENTRES}
    edges = []
    for key in kept:
        name = key.removeprefix(before)[3:]
        kind = kinds.get(name, EdgeKind.SEAM)
        edges.append(Edge(name, sheet.lines[key], kind))
    return Piece(code, p.name, tuple(edges), grain=p.grain)


def cloth_at_waist(n: Numbers) -> float | None:
    """How many times its finished waist the cloth is that a pleater pleats ("pr") or
    that is gathered ("g") into it; None where it is sewn on plain."""
    if "pr" in n:
        return n.pr
    return n.g if "g" in n else None


def below_waist(n: Numbers) -> float:
    """How far below the waist the seam lies on which a peplum or a skirt hangs, cm:
    nought, but below a torso."""
    return n.dd if "dd" in n else 0.0


def zip_end(n: Numbers) -> float:
    """How far below the waist a zip ends along the cloth, cm. What is said of it (z)
    lies on the body: one that passes a seam over which a torso blouses goes round that
    too."""
    return n.z + n.blouse if "dd" in n and n.z > n.dd else n.z


def reach(n: Numbers) -> float:
    """How far below the waist a top or a dress reaches, cm."""
    return n.L + n.dd if "L_T" in n else n.L
