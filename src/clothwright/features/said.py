"""What all features of an order say about its pieces, gathered; and what each seam code
stands for."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property

from clothwright.features import KINDS, Feature
from clothwright.features.about import About, Place, Says
from clothwright.features.roles import Role
from clothwright.paper import Edge, Piece, own_piece

LINING = "L."
"""Begins the code of a piece of the lining: "L.F" is cut behind "F"."""


@dataclass(frozen=True)
class Said:
    """What features say about pieces, in the order in which the features are told."""

    abouts: tuple[About, ...] = ()

    def place(self, code: str) -> Place | None:
        """Where a piece stands, of whichever side; of a lining, where its shell
        does."""
        found = self._ranks.get(own_piece(code).removeprefix(LINING))
        return found and found[0]

    def in_order(self, codes: Iterable[str]) -> tuple[str, ...]:
        """The codes of pieces as they are numbered: by their places, the left one after
        its right; then those without a place, as they come."""
        placed, others = [], []
        for code in codes:
            rank = self._ranks.get(own_piece(code))
            if rank is None:
                others.append(code)
            else:
                placed.append((rank, code != own_piece(code), code))
        return (*(code for _, _, code in sorted(placed)), *others)

    def shown(self, part: str) -> tuple[str, ...]:
        """Codes of the pieces that the figures of a part of the draft show."""
        return self._shown.get(part, ())

    def cloths(self, code: str) -> tuple[str, ...]:
        """Plain names of the cloths that a piece is cut from; empty when no feature
        says."""
        return self._cloths.get(code, ())

    def centres(self, code: str) -> Mapping[str, str]:
        """Edges of a piece that are a centre under another name, and which."""
        return self._centres.get(code, {})

    def role(self, piece: Piece, name: str, edge: Edge) -> Role | None:
        """What is said of an edge; None when that is left to its name."""
        own = own_piece(piece.code)
        for code in (own, own.removeprefix(LINING)):
            says = self._edges.get((code, name)) or self._others.get(code)
            if says is not None:
                return says if isinstance(says, Role) else says(piece, edge)
        return None

    @cached_property
    def _ranks(self) -> Mapping[str, tuple[Place, int]]:
        out: dict[str, tuple[Place, int]] = {}
        for i, a in enumerate(self.abouts):
            if a.place is not None:
                out.setdefault(a.code, (a.place, i))
        return out

    @cached_property
    def _shown(self) -> Mapping[str, tuple[str, ...]]:
        out: dict[str, tuple[str, ...]] = {}
        for a in self.abouts:
            for part in a.shown:
                if a.code not in out.get(part, ()):
                    out[part] = (*out.get(part, ()), a.code)
        return out

    @cached_property
    def _cloths(self) -> Mapping[str, tuple[str, ...]]:
        return {a.code: a.cloths for a in self.abouts if a.cloths}

    @cached_property
    def _centres(self) -> Mapping[str, Mapping[str, str]]:
        return {a.code: a.centres for a in self.abouts if a.centres}

    @cached_property
    def _edges(self) -> Mapping[tuple[str, str], Says]:
        return {(a.code, e): says for a in self.abouts for e, says in a.edges.items()}

    @cached_property
    def _others(self) -> Mapping[str, Says]:
        return {a.code: a.others for a in self.abouts if a.others is not None}


def said_of(features: Iterable[Feature]) -> Said:
    """What these features say about pieces."""
    return _gathered(tuple(type(f) for f in in_turn(features)))


def in_turn(features: Iterable[Feature]) -> list[Feature]:
    """Features in the order in which they are told; any that are not registered,
    last."""
    turns = _turns()
    return sorted(features, key=lambda f: turns.get(f.kind, len(turns)))


@cache
def _turns() -> Mapping[str, int]:
    return {kind: i for i, kind in enumerate(KINDS)}


@cache
def _gathered(features: tuple[type[Feature], ...]) -> Said:
    return Said(tuple(a for f in features for a in f.pieces))


def seam_codes() -> Iterator[tuple[str, str]]:
    """Every seam code with what it stands for. Reads all features."""
    for feature in KINDS.values():
        yield from feature.seams.items()
