"""Hems of panels that are turned up alike: where a seam runs down into the hem, what is
turned up on both sides of it is sewn on as one (truing 9)."""

from collections.abc import Mapping

from clothwright.features.roles import Role
from clothwright.features.said import Said
from clothwright.finishing.roles import role_of
from clothwright.paper import EdgeKind, Piece, SeamKind, Sheet, own_name

_DEEPEST_FIRST = (Role.DEEP_HEM, Role.TURNED, Role.HEM)


def level_hems(sheet: Sheet, said: Said) -> Mapping[str, Role]:
    """The hems, by the codes of their pieces, that are turned up less deep than their
    own curve lets them, since that of a panel beside them bends more."""
    found: dict[str, Role] = {}
    panels = [
        {r.piece for r in s.runs() if _into_hem(sheet.piece(r.piece), r.edge)}
        for s in sheet.seams
        if s.kind is SeamKind.PLAIN
    ]
    beside = [codes for codes in panels if len(codes) > 1]
    for _ in beside:  # the least of all panels, from one to the next
        for codes in beside:
            own = {c: role_of(sheet.piece(c), "hem", said) for c in codes}
            roles = [found.get(c, r) for c, r in own.items()]
            if not all(r in _DEEPEST_FIRST for r in roles):
                continue
            least = max(roles, key=_DEEPEST_FIRST.index)
            found.update({c: least for c, r in own.items() if r is not least})
    return found


def _into_hem(piece: Piece, edge: str) -> bool:
    """True for the seam of a panel that ends at a hem."""
    if not (own_name(edge).startswith("panel") and piece.has("hem")):
        return False
    ends = (piece.before("hem").name, piece.after("hem").name)
    return edge in ends and piece.edge("hem").kind is EdgeKind.FINISHED
