"""What a feature says about a piece: where it stands among the others, which figures
show it, what its edges are, and what it is cut from.

A piece is told by the feature that makes it, next to the code that does; another may
say more of it (a torso, that the front ends in a hem). `said` gathers all of an order.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import IntEnum

from clothwright.features.roles import Role
from clothwright.paper import Edge, Piece


class Place(IntEnum):
    """Where a piece stands among those of a pattern, lower first; those of one place
    stand as their features tell them."""

    FRONT = 10
    """Front of a bodice."""

    BACK = 20
    """Back of a bodice."""

    SLEEVE = 30
    GUSSET = 40
    CUFF = 50
    """Band or cuff of a sleeve, and its placket."""

    PLACKET = 60
    COLLAR = 70
    BEHIND = 80
    """Panel behind an open back."""

    STRAP = 90
    PEPLUM_FRONT = 100
    """What hangs on the bodice: the front of a peplum or of a dress's skirt."""

    PEPLUM_BACK = 110
    SKIRT = 120
    YOKE = 130
    """Yoke of a skirt."""

    PLEAT = 140
    """Backing of a pleat."""

    PANEL = 150
    """Gores and tiers."""

    GODET = 160
    FLOUNCE = 170
    TROUSERS = 180
    KNIT = 190
    """All pieces of a knit top."""

    BAND = 200
    """A waistband: what is sewn to it is sewn last of the waist."""

    CONTOUR = 210
    """A waistband in the shape of the body."""

    WAIST_FACING = 220
    PATCH = 230
    """Pockets set on or into the cloth."""

    POCKET = 240
    """Pockets in a seam or at the waist."""

    FLY = 250
    FACING = 260
    """Facings of neck and armhole."""

    BINDING = 265
    """Bias strips that bind an edge."""

    STAND = 270
    """Facings of a button stand below the waist."""


Says = Role | Callable[[Piece, Edge], Role | None]
"""What an edge is; where that hangs on its shape or its kind, how it is found: None is
as its name tells."""


@dataclass(frozen=True)
class About:
    """What a feature says about a piece, by its code: one made on the way, too. What it
    leaves out stays as others say."""

    code: str
    place: Place | None = None
    """None: after all that have a place."""

    shown: tuple[str, ...] = ()
    """Parts of the draft ("front", "skirt back") whose figures show it."""

    edges: Mapping[str, Says] = field(default_factory=dict)
    """What its edges are, by name, where the name alone does not tell. A lining is cut
    as its shell where it says nothing of its own."""

    others: Says | None = None
    """What all its other edges are."""

    centres: Mapping[str, str] = field(default_factory=dict)
    """Edges that are a centre of the garment under another name: "fly": "centre front".
    """

    cloths: tuple[str, ...] = ()
    """Plain names of the cloths that it is cut from, if not the shell alone."""
