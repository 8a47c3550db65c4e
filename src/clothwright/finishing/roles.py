"""What an edge is, for its allowance: read from its piece and name, and how wide each
is in both workroom tables (first garment 18, truing 8)."""

import math
from collections.abc import Mapping
from enum import Enum

from clothwright.curves import Path
from clothwright.paper import (
    LEFT_PIECE,
    ON_STAND,
    UNDER,
    Edge,
    EdgeKind,
    Piece,
    own_name,
)
from clothwright.units import Unit


class Role(Enum):
    """What an edge is, for its allowance."""

    FOLD = "fold"
    PANEL = "panel"
    DART = "dart"
    SHOULDER = "shoulder"
    SIDE = "side"
    PEPLUM_SIDE = "skirt seams"
    CENTRE_ZIP = "centre back"
    WAIST = "waist"
    EDGE = "neck, armhole and other faced edges"
    """Neck, armhole, slanted edge; trimmed after sewing."""

    JOIN = "lining join"
    """Lining to the free edge of a facing."""

    CAP = "cap of the sleeve"
    """Set into the armhole, with its allowance."""

    UNDERARM = "seam under the arm"
    """Both edges of the sleeve's own seam."""

    BAND = "band or cuff, and what is sewn to it"
    """All round a band or cuff of the sleeve, and the hem that is sewn to it."""

    COLLAR = "outer edges of a collar"
    """Enclosed: outer edges and ends of a collar, its stand, and where both meet."""

    TURNED = "hem, turned up"
    """Hem of the sleeve: the cloth below it is its facing, cut in one; hem inside a
    turn-up."""

    SMALL = "all round the panel behind"
    """All round the panel behind."""

    OPEN = "open edge"
    """Open edge of the back peplum, narrow hem."""

    DEEP_HEM = "hem, turned up deep"
    """Hem of a straight skirt."""

    GORE = "gore seams"

    TIER = "seams of tiers and flounces"
    """A tier gathered onto the one above."""

    POCKET = "pocket"
    """Mouth and bag of a pocket."""

    FLY = "fly"
    """Centre front down to the end of the fly, and what is sewn to it."""

    RAGLAN = "raglan seams"

    GUSSET = "gusset"

    INSEAM = "inseam"

    CROTCH = "crotch"
    """Crotch seam, front and lower curve."""

    SEAT = "seat at the waist"
    """Crotch seam of the back from the hip, where it begins as the rest, to the waist,
    where it has an inlay to be let out."""

    LEG_HEM = "hem of the leg, turned up deep"

    VENT = "vent"
    """Edges of a vent, neatened."""

    CASING = "top of the casing, turned in"

    KNIT = "seams of knitted cloth"
    """Sewn and neatened in one by an overedge stitch."""

    KNIT_HEM = "hem of knitted cloth, turned up"
    """Turned up once and covered by two needles."""

    HEM = "hem"
    """Narrow hem of the peplum, or of a flared sleeve."""

    FREE = "loose edge of a facing"
    """Free edge of a facing, neatened."""

    def width(self, unit: Unit) -> float:
        """The workroom's allowance in cm for an order in this unit."""
        cm, inch, _ = _TABLE[self]
        return inch * 2.54 if unit is Unit.IN else cm

    @property
    def turn(self) -> int:
        """Order of pressing, lower is sooner: at a corner the allowance pressed first
        ends on the mirror image of the other's cut line. A seam is pressed open before
        another crosses it; a turned hem takes the shape of the seams beside it."""
        return _TABLE[self][2]


_TABLE: Mapping[Role, tuple[float, float, int]] = {
    Role.FOLD: (0.0, 0.0, 0),
    Role.PANEL: (1.5, 0.625, 1),
    Role.DART: (0.0, 0.0, 1),
    Role.SHOULDER: (1.5, 0.625, 2),
    Role.SIDE: (2.0, 0.75, 2),
    Role.PEPLUM_SIDE: (1.5, 0.625, 2),
    Role.CENTRE_ZIP: (2.0, 0.75, 2),
    Role.WAIST: (1.5, 0.625, 3),
    Role.EDGE: (1.0, 0.5, 4),
    Role.JOIN: (1.2, 0.5, 4),
    Role.CAP: (1.0, 0.5, 4),
    Role.UNDERARM: (1.5, 0.625, 2),
    Role.BAND: (1.0, 0.5, 3),
    Role.COLLAR: (0.8, 0.375, 3),
    Role.TURNED: (2.5, 1.0, 1),
    Role.DEEP_HEM: (4.0, 1.5, 1),
    Role.GORE: (1.5, 0.625, 1),
    Role.TIER: (1.5, 0.625, 3),
    Role.POCKET: (1.0, 0.375, 1),
    Role.FLY: (1.5, 0.625, 2),
    Role.RAGLAN: (1.0, 0.5, 1),
    Role.GUSSET: (1.0, 0.5, 4),
    Role.INSEAM: (1.5, 0.625, 1),
    Role.CROTCH: (1.0, 0.375, 2),
    Role.SEAT: (2.5, 1.0, 2),
    Role.LEG_HEM: (4.0, 1.5, 0),
    Role.VENT: (1.0, 0.375, 4),
    Role.SMALL: (1.2, 0.5, 4),
    Role.OPEN: (1.5, 0.625, 4),
    Role.HEM: (1.5, 0.625, 0),
    Role.FREE: (0.6, 0.25, 5),
    Role.CASING: (1.0, 0.375, 1),
    Role.KNIT: (0.7, 0.25, 2),
    Role.KNIT_HEM: (2.0, 0.75, 1),
}
"""Allowance in cm, in inches, and order of pressing (first garment 17.4, 18; the cap
and the raglan as the armhole, the seam under the arm as other straight seams, bands and
cuffs as enclosed edges, truing 8)."""

_BY_NAME: Mapping[str, Role] = {
    "panel": Role.PANEL,
    "shoulder": Role.SHOULDER,
    "shoulder neck": Role.SHOULDER,
    "cap shoulder": Role.SHOULDER,
    "side": Role.SIDE,
    "side low": Role.SIDE,
    "side mid": Role.SIDE,
    "side high": Role.SIDE,
    "waist": Role.WAIST,
    "waist side": Role.WAIST,
    "waist mid": Role.WAIST,
    "cap waist 2": Role.WAIST,
    "foot of band": Role.WAIST,
    "foot of yoke": Role.PANEL,
    "top of lap": Role.WAIST,
    "end": Role.WAIST,
    "underlap": Role.WAIST,
    "slit": Role.SIDE,
    "other gore slit": Role.GORE,
    "gore slit": Role.GORE,
    "other slit": Role.SIDE,
    "other seam": Role.GORE,
    "seam": Role.GORE,
    "cap pleat": Role.WAIST,
    "cap pleat 2": Role.WAIST,
    "top": Role.TIER,
    "foot of tier": Role.TIER,
    "pocket": Role.POCKET,
    "bag": Role.POCKET,
    "side under": Role.SIDE,
    "waist under": Role.WAIST,
    "fly": Role.FLY,
    "fly under": Role.FLY,
    "fly below": Role.FLY,
    "crotch": Role.CROTCH,
    "seat": Role.SEAT,
    "inseam": Role.INSEAM,
    "vent": Role.VENT,
    "pleat inside": Role.PANEL,
    "pleat backing": Role.PANEL,
    "vent top": Role.VENT,
    "waist on": Role.WAIST,
    "waist over": Role.WAIST,
    "waist lap": Role.WAIST,
    "cap side": Role.SIDE,
    "cap side 2": Role.SIDE,
    "cap waist": Role.WAIST,
    "foot": Role.WAIST,
    "facing shoulder": Role.SHOULDER,
    "band upper": Role.EDGE,
    "band lower": Role.EDGE,
    "strap end": Role.SHOULDER,
    "nape": Role.EDGE,
    "neck": Role.EDGE,
    "neck side": Role.EDGE,
    "cap neck": Role.EDGE,
    "armhole": Role.EDGE,
    "armhole low": Role.EDGE,
    "cap armhole": Role.EDGE,
    "slant": Role.EDGE,
    "cap front": Role.CAP,
    "cap back": Role.CAP,
    "cap first": Role.CAP,
    "cap last": Role.CAP,
    "cap lap": Role.CAP,
    "raglan": Role.RAGLAN,
    "overarm": Role.SHOULDER,
    "underarm": Role.UNDERARM,
    "sleeve hem": Role.TURNED,
    "underarm front": Role.UNDERARM,
    "underarm back": Role.UNDERARM,
    "underarm back low": Role.UNDERARM,
    "cap elbow": Role.UNDERARM,
    "front seam": Role.UNDERARM,
    "back seam": Role.UNDERARM,
    "cb": Role.CENTRE_ZIP,
    "open": Role.OPEN,
    "hem": Role.HEM,
    "hem in": Role.TURNED,
    "free": Role.FREE,
    "stand": Role.EDGE,
    "lapel": Role.EDGE,
    "lapel top": Role.EDGE,
    "collar neck": Role.EDGE,
    "collar end": Role.COLLAR,
    "lower": Role.EDGE,
    "placket": Role.BAND,
    "placket foot": Role.BAND,
    "join": Role.JOIN,
}


def role_of(piece: Piece, name: str) -> Role:
    """The role of an edge, from its piece and its name."""
    edge, name = piece.edge(name), own_name(name)
    if name.endswith(ON_STAND):  # as what it runs on from
        name = name.removesuffix(ON_STAND)
        edge = piece.edge(name) if piece.has(name) else edge
    if edge.kind is EdgeKind.FOLD:
        return Role.FOLD
    code = piece.code.removeprefix("L.").removesuffix(LEFT_PIECE)
    if code in ("SF", "SB") and name == "waist" and edge.kind is EdgeKind.FINISHED:
        return Role.CASING
    if code in _KNIT:
        return Role.KNIT_HEM if edge.kind is EdgeKind.FINISHED else Role.KNIT
    if code == "UP":
        return Role.SMALL
    if code in _SET:
        return Role.TURNED if (code, name) == ("KP", "mouth") else _SET[code]
    if code == "GU":
        return Role.GUSSET
    sleeve = code in ("SL", "ST", "SU") or (
        code in ("SLF", "SLB") and piece.has("raglan")
    )
    if code in ("BA", "CU", "NP", "PL") or (
        sleeve and name.startswith("hem") and edge.kind is EdgeKind.SEAM
    ):
        return Role.BAND
    if code in ("CO", "CN", "CS"):
        return _of_collar(edge, name)
    if sleeve and name == "hem":
        return Role.HEM if _flared(edge) else Role.TURNED
    if piece.code.startswith(("L.S", "L.T")) and name == "hem":
        return Role.TURNED
    if code in ("PF", "PB") and name == "hem" and piece.edge("side").length >= _LONG:
        return _skirt_hem(edge.path)
    if code in _BODICE and name == "hem" and edge.kind is EdgeKind.FINISHED:
        return _skirt_hem(edge.path)
    if code in _SKIRT and name == "hem":
        return _skirt_hem(edge.path) if edge.kind is EdgeKind.FINISHED else Role.TIER
    if code in ("TF", "TB") and name == "hem":
        return Role.LEG_HEM
    if code == "WB" or (code in ("FL", "SH") and name.startswith("top")):
        return Role.WAIST
    if code.startswith("P") and name in ("side", "panel"):
        return Role.PEPLUM_SIDE
    if name.startswith(("leg", "dart", "pleat")) and name not in _BY_NAME:
        return Role.DART
    if name.startswith(("waist ", UNDER)) and name not in _BY_NAME:
        return Role.WAIST
    if name == "free" and edge.kind is EdgeKind.SEAM:
        return Role.JOIN
    if name == "panel" and edge.kind is EdgeKind.FINISHED:
        return Role.FREE
    return _BY_NAME.get(name, Role.PANEL)


_SET = {"KP": Role.EDGE, "KW": Role.EDGE, "KO": Role.POCKET}
"""Patch, welt and bag of a pocket that is set on or into a skirt."""

_BODICE = ("F", "FC", "FS", "B", "BC", "BS")
"""Pieces of a bodice, which end in a hem where it is one with the skirt."""


def _of_collar(edge: Edge, name: str) -> Role:
    """Its neck edge is sewn to the neck; what is not enclosed is hemmed."""
    if edge.kind is EdgeKind.FINISHED:
        return Role.HEM
    return Role.EDGE if name in ("neck", "inside", "lapel") else Role.COLLAR


_SKIRT = ("SB", "SF", "SG", "PU", "T2", "T3", "T4")
"""Pieces that a skirt ends in."""

_KNIT = ("KF", "KB", "KS", "KC", "KN", "KA", "KH")
"""Pieces of knitted cloth."""

_LONG = 35.0
"""What hangs on a waist and is so long is a skirt, no peplum, cm."""

_FLAT, _FLARED = 9.5, 15.0
"""Turning of the hem of a half front or back up to which a deep hem, and a middling,
can be eased flat: 2·h·Φ is then 5 in 100 of it (truing 9), degrees."""


def _skirt_hem(hem: Path) -> Role:
    """As deep as the hem's curve lets it be eased away (truing 9)."""
    bend = sum(hem.turning())
    if bend <= _FLAT:
        return Role.DEEP_HEM
    return Role.TURNED if bend <= _FLARED else Role.HEM


def _flared(hem: Edge) -> bool:
    """True when a hem, turned up in one, would be more than a twentieth longer than its
    place: 2·h·Φ, Φ its bend (truing 9). It is then turned narrow."""
    bend = math.radians(hem.path.turning()[0])  # where it is round, not hollow
    return 2 * _TABLE[Role.TURNED][0] * bend > 0.05 * hem.length
