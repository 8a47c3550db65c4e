"""What all collars have in common: their numbers, pieces and seams (transformations 5).

Terminology
    collar       the upper collar CO, that is seen.
    undercollar  CN, on the bias, smaller at its outer edges by the turn of cloth.
    stand        CS, the part that stands up at the neck, where it is cut by itself.
"""

from collections.abc import Iterable, Mapping
from typing import ClassVar

from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number
from clothwright.features.chains import Chains
from clothwright.features.collars.collar_neck import opens_behind
from clothwright.features.collars.collar_pieces import COLLAR, STAND, UNDER
from clothwright.features.collars.collar_seams import collar_seams
from clothwright.features.linings.about import FACED
from clothwright.features.necks.neck_shapes import V_BACK
from clothwright.features.roles import Role
from clothwright.paper import Edge, EdgeKind, Piece, Seam, Sheet, own_name
from clothwright.rules import Numbers

SRC = "transformations 5"

TURN = Number(
    "c_turn",
    "turn of cloth",
    "undercollar within the collar at its outer edges",
    SRC,
    0.25,
    0.125,
    0.0,
    0.6,
    (0.2, 0.6),
)


def collar_edge(piece: Piece, edge: Edge) -> Role:
    """Its neck edge is sewn to the neck; what is not enclosed is hemmed."""
    if edge.kind is EdgeKind.FINISHED:
        return Role.HEM
    sewn_on = own_name(edge.name) in ("neck", "inside", "lapel")
    return Role.EDGE if sewn_on else Role.COLLAR


class Collar(Feature):
    """Base of the collars."""

    pieces: ClassVar[tuple[About, ...]] = (
        About(COLLAR, Place.COLLAR, ("collar",), others=collar_edge),
        About(UNDER, Place.COLLAR, ("collar",), others=collar_edge),
        About(STAND, Place.COLLAR, ("collar",), others=collar_edge),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S8": FACED["S8"],
        "S80": "collar to the neck, from the centre back to the centre front",
        "S81": "undercollar and collar, round the outside",
        "S82": "undercollar and collar, where they are sewn on",
        "S83": "upper edge of a collar's stand",
        "S84": "ends of a collar's stand; of a tie, its centre back",
        "S85": "centre back of an undercollar",
        "S86": "undercollar to its stand",
        "S87": "centre of a neck frill",
        "S88": "long edges of a tie",
        "S89": "ends of a tie",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"collar"})
    needs: ClassVar[Mapping[str, str]] = {
        "neckline": "a collar is sewn to a neck; add a neckline",
        "back neck": "a collar is sewn round the whole neck; add a back neckline",
    }
    clashes: ClassVar[Mapping[str, str]] = {
        "collar": "a neck has one collar",
        "wrap": "a collar is not yet drawn along the crossing edges of a wrap; leave "
        "it off",
        "cowl": "the edge of a cowl is folded back and has no seam for a collar",
        "strapless": "a strapless bodice has no neck for a collar",
        "halter": "a halter's neck ends in its straps, where no collar is sewn on",
        "open back": "a collar needs a back that is closed at the neck",
        "tightened shoulder": "a neck is not tightened under a collar",
        "winding neck": "a collar is not sewn to a sweetheart or a keyhole; take "
        "another neck",
        V_BACK: "a collar is not sewn to a pointed back neck; take another",
    }

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return collar_seams(t, n)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return collar_cuts(sheet)


def collar_cuts(sheet: Sheet) -> Mapping[str, Cuts]:
    """The collar is interlined; its undercollar is cut in two halves on the bias; of a
    stand there are two."""
    both = ("shell", "interlining")
    behind = opens_behind(sheet)
    out = {}
    if UNDER in sheet.pieces:
        how = ("2 (1 pair)", 2) if behind else ("1 on fold", 1)
        if COLLAR in sheet.pieces:
            out[COLLAR] = Cuts(*how, both)
        out[UNDER] = Cuts("2 (1 pair), on the bias", 2, bias=True)
    if STAND in sheet.pieces:
        out[STAND] = Cuts("2 on fold", 2, both)
    return out
