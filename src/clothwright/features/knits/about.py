"""What is said of every piece of a knit top."""

from clothwright.features.about import About, Place
from clothwright.features.roles import Role
from clothwright.paper import Edge, EdgeKind, Piece


def _edge(piece: Piece, edge: Edge) -> Role:
    return Role.KNIT_HEM if edge.kind is EdgeKind.FINISHED else Role.KNIT


def knitted(code: str, part: str) -> About:
    """A piece of knitted cloth, all its edges overedged, and its part of the draft."""
    return About(code, Place.KNIT, (part,), others=_edge)
