"""What an edge is, for its allowance: as the features say of its piece, or by its name
(first garment 18, truing 8)."""

from collections.abc import Mapping

from clothwright.features.roles import Role
from clothwright.features.said import Said
from clothwright.paper import ON_STAND, UNDER, EdgeKind, Piece, own_name

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
    "panel under": Role.PANEL,
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
    "facing neck": Role.EDGE,
    "facing armhole": Role.EDGE,
    "facing side": Role.SIDE,
    "facing waist": Role.WAIST,
    "band": Role.BAND,
    "band upper": Role.EDGE,
    "band lower": Role.EDGE,
    "strap end": Role.SHOULDER,
    "nape": Role.EDGE,
    "neck": Role.EDGE,
    "top edge": Role.EDGE,
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
    "free above": Role.FREE,
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


def role_of(piece: Piece, name: str, said: Said) -> Role:
    """The role of an edge: as a feature says of its piece, else as its name tells."""
    edge, name = piece.edge(name), own_name(name)
    if name.endswith(ON_STAND):  # as what it runs on from
        name = name.removesuffix(ON_STAND)
        edge = piece.edge(name) if piece.has(name) else edge
    if edge.kind is EdgeKind.FOLD:
        return Role.FOLD
    told = said.role(piece, name, edge)
    if told is not None:
        return told
    if name.startswith(("leg", "dart", "pleat")) and name not in _BY_NAME:
        return Role.DART
    if name.startswith(("waist ", UNDER)) and name not in _BY_NAME:
        return Role.WAIST
    if name == "free" and edge.kind is EdgeKind.SEAM:
        return Role.JOIN
    if name == "panel" and edge.kind is EdgeKind.FINISHED:
        return Role.FREE
    return _BY_NAME.get(name, Role.PANEL)
