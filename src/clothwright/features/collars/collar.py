"""What all collars have in common: their numbers, pieces and places (transformations
5).

Terminology
    collar       the upper collar CO, that is seen.
    undercollar  CN, on the bias, smaller at its outer edges by the turn of cloth.
    stand        CS, the part that stands up at the neck, where it is cut by itself.

A half collar runs from the centre back to the centre front. Where the garment opens at
the centre back it is in two halves; else it lies on the fold there.
"""

from collections.abc import Mapping
from dataclasses import replace
from enum import Enum
from typing import ClassVar

from clothwright.blocks.collar import (
    Ends,
    beside,
    out_of,
    rounded_end,
    smaller,
)
from clothwright.curves import Path, Vector, inset
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts, Feature, Number
from clothwright.features.collars.collar_neck import opens_behind
from clothwright.features.garment_joints import V_BACK
from clothwright.features.grain import longest_line
from clothwright.features.linings.about import FACED
from clothwright.features.roles import Role
from clothwright.paper import (
    ON_STAND,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Sheet,
    own_name,
    straight,
)

SRC = "transformations 5"

COLLAR, UNDER, STAND = "CO", "CN", "CS"
"""Codes of the pieces."""

_BIAS = Vector(0.5**0.5, -(0.5**0.5))

_ROLL = 0.3
"""A collar that stands by less lies flat, and has no roll line, cm."""

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


class CollarEnd(Enum):
    """How a collar ends at the front."""

    ROUND = "round"
    SQUARE = "square"


def collar_edge(piece: Piece, edge: Edge) -> Role:  # noqa: ARG001
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


def grained(piece: Piece) -> Piece:
    """A collar with its grain along the fold, or plumb as it was drafted."""
    fold = piece.fold
    up = fold.path.start_direction if fold else Vector(0.0, -1.0)
    return replace(piece, grain=longest_line(piece, up))


def flat_edges(
    neck: Path, width: float, end: CollarEnd, *, behind: bool
) -> tuple[Edge, ...]:
    """Edges of a collar of one width, clockwise from its neck edge."""
    outer = beside(neck, width, to_centre=not behind)
    if end is CollarEnd.SQUARE:
        front = (straight("end", neck.end, outer.start),)
        return (Edge("neck", neck), *front, *closing(neck, outer, behind=behind))
    outer = rounded_end(neck.end, out_of(neck), outer, width)
    if behind:
        way = out_of(neck.reversed()) * -1.0
        outer = rounded_end(neck.start, way, outer.reversed(), width).reversed()
        return (Edge("neck", neck), Edge("outer", outer))
    return (Edge("neck", neck), *closing(neck, outer, behind=False))


def one_layer(neck: Path, width: float, name: str, *, behind: bool) -> Piece:
    """A collar of one layer, hemmed all round, on the fold where the garment is
    closed: behind, or in front."""
    outer = beside(neck, width, to_centre=not behind)
    done, fold = EdgeKind.FINISHED, EdgeKind.FOLD
    cf = ("cf", fold) if behind else ("end", done)
    cb = ("end back", done) if behind else ("cb", fold)
    edges = (
        Edge("neck", neck),
        straight(cf[0], neck.end, outer.start, cf[1]),
        Edge("hem", outer, done),
        straight(cb[0], outer.end, neck.start, cb[1]),
    )
    return grained(Piece(COLLAR, name, edges))


def closing(neck: Path, outer: Path, *, behind: bool) -> tuple[Edge, ...]:
    """The outer edge, and what leads from it to the neck at the centre back."""
    back = ("end back", EdgeKind.SEAM) if behind else ("cb", EdgeKind.FOLD)
    return (
        Edge("outer", outer),
        straight(back[0], outer.end, neck.start, back[1]),
    )


_SEWN = ("neck", "foot")
"""The edge that is sewn to the neck, or to a stand."""


def outside(piece: Piece) -> tuple[list[Edge], Ends]:
    """The outer edges of a collar, clockwise, and whether they begin and end at the
    edge that is sewn on, or at a fold or a seam of the centre back."""
    first, *rest = piece.rolled_to(next(n for n in _SEWN if piece.has(n)))
    rest = [e for e in rest if not e.name.endswith(ON_STAND)]
    names = [e.name for e in rest]
    at_neck = names[0] != "cb", names[-1] != "cb"
    return [e for e in rest if e.name != "cb"], at_neck


def undercollar(upper: Piece, turn: float) -> Piece:
    """The undercollar of a collar: the same where it is sewn on, smaller outside, on
    the bias; on the collar's fold it has a seam."""
    edges, at_neck = outside(upper)
    sewn = upper.edge(next(n for n in _SEWN if upper.has(n)))
    small = smaller([e.path for e in edges], turn, at_neck)
    loop = [e.along(path) for e, path in zip(edges, small, strict=True)]
    if not at_neck[0]:
        loop.insert(0, straight("cb", sewn.path.end, small[0].start))
    if not at_neck[1]:
        loop.append(straight("cb", small[-1].end, sewn.path.start))
    on = [e for e in upper.edges if e.name.endswith(ON_STAND)]  # it ends at the neck
    piece = Piece(UNDER, "Undercollar", (sewn, *loop, *on), lines=upper.lines)
    return replace(piece, grain=longest_line(piece, _BIAS))


def roll_line(neck: Path, stand: float) -> tuple[InnerLine, ...]:
    """Where the collar rolls over: its stand at the centre back, nothing at the front;
    none where it lies flat."""
    if stand < _ROLL:
        return ()
    return (InnerLine("roll line", inset(neck, stand, 0.0)),)
