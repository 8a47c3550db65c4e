"""What is said of the pieces and the seams that several skirts have."""

from collections.abc import Iterable

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import Path
from clothwright.features.about import About, Place, Says
from clothwright.features.roles import Role, hem_of_skirt, skirt_hem
from clothwright.features.skirts.slit_edges import own_hem, own_side
from clothwright.findings import Finding, Severity
from clothwright.paper import Edge, Piece, Sheet
from clothwright.rules import Numbers

GORE, GORE_FACING = "SG", "WFG"
"""Codes of a gore or a panel, and of the facing of its waist."""

YOKES = {FRONT: "SYF", BACK: "SYB"}
"""Code of the hip yoke of each half."""

HALVES = (
    About("SF", Place.SKIRT, ("skirt front",), {"hem": skirt_hem}),
    About("SB", Place.SKIRT, ("skirt back",), {"hem": skirt_hem}),
)
"""Front and back of a skirt."""

SEAMS = {
    "S34": "side seam of a skirt",
    "S35": "centre back seam of a skirt",
}

ONE_HANGS = (
    "one thing hangs at the waist: a peplum, a skirt, or a torso, which is bodice and "
    "skirt in one; leave the other off"
)
"""Why two of them do not go together."""

HANGING_SEAMS = {"S7": "side seam of a peplum or of a skirt on a bodice"}

POCKET_SEAMS = {
    "S46": "mouth of a slanting pocket",
    "S47": "bag of a pocket",
}


def hem_line(code: str) -> str:
    """Name of the line that keeps the hem of an A-line's half, from its centre."""
    return f"A-line, hem of {code}"


def closed_dart(code: str, k: str) -> str:
    """Name of the line that keeps the slash below a dart that an A-line has closed; `k`
    ends the names of the dart's legs."""
    return f"A-line, dart{k} of {code}"


def round_hem(sheet: Sheet, n: Numbers, codes: Iterable[str]) -> float:
    """The hem of a straight skirt all round, cm: that of an A-line as it was drawn."""
    halves = [sheet.lines[hem_line(c)] for c in codes if hem_line(c) in sheet.lines]
    return 2 * sum(h.length for h in halves) if halves else n.hem_S


def hip_lines(sheet: Sheet, codes: Iterable[str]) -> float:
    """The hip lines of the halves together, cm, without what a slash opened there."""
    lines = (k for c in codes for k in sheet.piece(c).lines)
    return sum(k.path.length for k in lines if k.name.startswith("hip line"))


def over_high_hip(room: float) -> Iterable[Finding]:
    """What is said of a dress's skirt with so much room over the high hip, cm (K8)."""
    if room < 1.0:
        yield Finding(
            "K8",
            Severity.REFUSE if room < -2.0 else Severity.WARN,
            f"Over the high hip the skirt has {room:.1f} cm of room; 1 cm at least is "
            "wanted.",
            "HH",
            "Measure HH and WHH again, or give the hip more ease (Eh).",
            {"room": room},
        )


_LONG = 35.0
"""What hangs on a waist and is so long is a skirt, no peplum, cm."""


_STRAIGHT_LEAN, _TURNED_LEAN = 0.5, 7.5
"""Lean of the seam of a panel at the hem up to which it is as good as straight, and up
to which a middling hem can be eased flat: 2·h·Φ is then about 5 in 100 of the hem of a
gore (truing 9), degrees."""


def hanging_hem(piece: Piece, edge: Edge) -> Role | None:
    """The hem of what hangs on a waist: that of a skirt as deep as it may be; of a
    peplum narrow, as the name of its edge says."""
    if own_side(piece) < _LONG:
        return None
    hem = own_hem(piece)
    if not piece.has("panel") or _plumb(piece.edge("panel").path):
        return hem_of_skirt(hem)
    # each seam of a gore leans by so much: a gore between two is bent twice
    lean = sum(hem.turning()) / (2 if piece.has("side") else 1)
    if lean <= _STRAIGHT_LEAN:
        return Role.DEEP_HEM
    return Role.TURNED if lean <= _TURNED_LEAN else Role.HEM


def _plumb(path: Path) -> bool:
    """True for a panel seam that does not flare, below a torso's."""
    return path.straight and abs(path.start_direction.x) < 1e-6


_EDGES: dict[str, Says] = {
    "side": Role.PEPLUM_SIDE,
    "panel": Role.PEPLUM_SIDE,
    "hem": hanging_hem,
}

HANGING = (
    About("PF", Place.PEPLUM_FRONT, ("peplum", "skirt", "skirt front"), _EDGES),
    About("PB", Place.PEPLUM_BACK, ("peplum", "skirt", "skirt back"), _EDGES),
    *(About(c, Place.PEPLUM_FRONT, ("peplum",), _EDGES) for c in ("PFC", "PFS")),
    *(About(c, Place.PEPLUM_BACK, ("peplum",), _EDGES) for c in ("PBC", "PBS")),
)
"""What hangs on a bodice: the halves of a peplum or a dress's skirt, whole or in
panels."""

PANEL_SEAMS = {
    "S19": "front panel seam of a peplum in panels",
    "S20": "back panel seam of a peplum in panels",
}
