"""What an edge is, for its allowance, and how wide that is in both workroom tables
(first garment 18, truing 8)."""

import math
from collections.abc import Mapping
from enum import Enum

from clothwright.curves import Path
from clothwright.features.skirts.slit_edges import own_hem
from clothwright.paper import Edge, EdgeKind, Piece
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
    OPENING = "edges of an opening that do not lap"
    WAIST = "waist"
    EDGE = "neck, armhole and other faced edges"
    """Neck, armhole, slanted edge; trimmed after sewing."""

    SLASH = "slash and cut-out on the fold"
    """Edges on either side of a fold of the cloth, which has no more for them."""

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

    INTERLINING = "interlining that has a pattern of its own"

    KNIT = "seams of knitted cloth"
    """Sewn and neatened in one by an overedge stitch."""

    KNIT_HEM = "hem of knitted cloth, turned up"
    """Turned up once and covered by two needles."""

    HEM = "hem"
    """Narrow hem of the peplum, or of a flared sleeve."""

    BOUND = "bound edge, cut net"
    """Bound by a strip, the raw edge of both within it."""

    FREE = "loose edge of a facing"
    """Free edge of a facing, neatened."""

    def width(self, unit: Unit) -> float:
        """The workroom's allowance in cm for an order in this unit."""
        cm, inch, _ = _TABLE[self]
        return inch * 2.54 if unit is Unit.IN else cm

    @property
    def widest(self) -> float:
        """The wider of both workrooms' allowances, cm."""
        return max(self.width(unit) for unit in Unit)

    @property
    def turn(self) -> int:
        """Order of pressing, lower is sooner: at a corner the allowance pressed first
        ends on the mirror image of the other's cut line. A seam is pressed open before
        another crosses it; a turned hem takes the shape of the seams beside it."""
        return _TABLE[self][2]


FREE_ABOVE = "free above"
"""Edge of a facing above the place where a lining begins to hang from it."""

_TABLE: Mapping[Role, tuple[float, float, int]] = {
    Role.FOLD: (0.0, 0.0, 0),
    Role.PANEL: (1.5, 0.625, 1),
    Role.DART: (0.0, 0.0, 1),
    Role.SHOULDER: (1.5, 0.625, 2),
    Role.SIDE: (2.0, 0.75, 2),
    Role.PEPLUM_SIDE: (1.5, 0.625, 2),
    Role.CENTRE_ZIP: (2.0, 0.75, 2),
    Role.OPENING: (1.5, 0.625, 4),
    Role.WAIST: (1.5, 0.625, 3),
    Role.EDGE: (1.0, 0.5, 4),
    Role.SLASH: (0.4, 0.15625, 4),
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
    Role.BOUND: (0.0, 0.0, 5),
    Role.FREE: (0.6, 0.25, 5),
    Role.CASING: (1.0, 0.375, 1),
    Role.INTERLINING: (0.3, 0.125, 5),
    Role.KNIT: (0.7, 0.25, 2),
    Role.KNIT_HEM: (2.0, 0.75, 1),
}
"""Allowance in cm, in inches, and order of pressing (first garment 17.4, 18; the cap
and the raglan as the armhole, the seam under the arm as other straight seams, bands and
cuffs as enclosed edges, truing 8)."""

_FLAT, _FLARED = 9.5, 15.0
"""Turning of the hem of a half front or back up to which a deep hem, and a middling,
can be eased flat: 2·h·Φ is then 5 in 100 of it (truing 9), degrees."""


def hem_of_skirt(hem: Path) -> Role:
    """As deep as the hem's curve lets it be eased away (truing 9)."""
    bend = sum(hem.turning())
    if bend <= _FLAT:
        return Role.DEEP_HEM
    return Role.TURNED if bend <= _FLARED else Role.HEM


def skirt_hem(piece: Piece, edge: Edge) -> Role:
    """A skirt's hem, as deep as it may be; sewn to a tier or a flounce, their seam."""
    return hem_of_skirt(own_hem(piece)) if edge.kind is EdgeKind.FINISHED else Role.TIER


def bodice_hem(piece: Piece, edge: Edge) -> Role | None:
    """The hem of a bodice that is one with the skirt."""
    return hem_of_skirt(own_hem(piece)) if edge.kind is EdgeKind.FINISHED else None


def sleeve_hem(piece: Piece, edge: Edge) -> Role:
    """The hem of a sleeve: sewn into a band, or turned up; narrow where, turned up in
    one, it would be more than a twentieth longer than its place: 2·h·Φ, Φ its bend
    (truing 9)."""
    if edge.kind is EdgeKind.SEAM:
        return Role.BAND
    bend = math.radians(edge.path.turning()[0])  # where it is round, not hollow
    flared = 2 * _TABLE[Role.TURNED][0] * bend > 0.05 * edge.length
    return Role.HEM if flared else Role.TURNED
