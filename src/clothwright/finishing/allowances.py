"""Seam allowances of an order (first garment 18, truing 8).

Two workroom tables, cm and inches (`roles`); an order takes the one of its unit and
never converts. Partners carry the same allowance.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from clothwright.features.roles import Role
from clothwright.features.said import Said
from clothwright.findings import Finding, Severity
from clothwright.finishing.roles import role_of
from clothwright.finishing.wording import edge_words
from clothwright.paper import Piece, SeamKind, Sheet, own_name
from clothwright.units import Unit, pretty_length

_INTERLINING = {Unit.CM: 0.3, Unit.IN: 0.125 * 2.54}
"""Interlining is cut net and this, cm (first garment 15)."""


@dataclass(frozen=True)
class Allowances:
    """Widths by role for one order; `said` is what its features say of the pieces, and
    `own` are the dressmaker's widths, in cm."""

    unit: Unit
    said: Said
    own: Mapping[Role, float] = field(default_factory=dict)
    hems: Mapping[str, Role] = field(default_factory=dict)
    """Hems that are as those of the panels beside them, by the codes of their pieces.
    """

    def role(self, piece: Piece, name: str) -> Role:
        """What an edge is."""
        if name == "hem" and piece.code in self.hems:
            return self.hems[piece.code]
        return role_of(piece, name, self.said)

    def width(self, role: Role) -> float:
        """Width in cm."""
        return self.own.get(role, role.width(self.unit))

    def of(self, piece: Piece, name: str) -> float:
        """Allowance of an edge in cm."""
        return self.width(self.role(piece, name))

    def ends(self, piece: Piece, name: str) -> tuple[float, float]:
        """Allowance of an edge where it begins and where it ends, cm."""
        width = self.of(piece, name)
        if self.role(piece, name) is Role.SEAT and piece.has("crotch"):
            curve = self.width(Role.CROTCH)
            hip_first = piece.before(name).name == "crotch"
            return (curve, width) if hip_first else (width, curve)
        return width, width

    def parts(self, pieces: Iterable[Piece]) -> tuple[tuple[str, str], ...]:
        """What these pieces' edges carry, widest first: ("waist, side", "1.5 cm")."""
        found: dict[float, list[str]] = {}
        for piece in pieces:
            for e in piece.edges:
                role = self.role(piece, e.name)
                if role is Role.INTERLINING:  # said of all interlining
                    continue
                words = found.setdefault(self.width(role), [])
                by_edge = role in (Role.EDGE, Role.PANEL)
                if by_edge and own_name(e.name).startswith("cap "):
                    continue  # over a dart: what is beside it is told
                said = edge_words(e.name).partition(", ")[0] if by_edge else role.value
                if said not in words:
                    words.append(said)
        return tuple(
            (", ".join(words), pretty_length(cm, self.unit))
            for cm, words in sorted(found.items(), reverse=True)
            if cm > 0
        )

    @property
    def beyond_stitching(self) -> float:
        """What interlining is cut outside the stitch line, cm (first garment 15)."""
        return _INTERLINING[self.unit]

    @property
    def interlining(self) -> str:
        """The same as it is written."""
        return pretty_length(self.beyond_stitching, self.unit)

    def note(self, pieces: Iterable[Piece]) -> str:
        """One sentence for the paper: what these pieces' edges carry, widest first."""
        parts = "; ".join(f"{edges} {width}" for edges, width in self.parts(pieces))
        return f"Allowances included: {parts}."


def check_partners(sheet: Sheet, allowances: Allowances) -> Iterable[Finding]:
    """Partners of a plain seam carry the same allowance (truing 8)."""
    for seam in sheet.seams:
        if seam.kind is not SeamKind.PLAIN:
            continue
        left, right = (
            {allowances.of(sheet.piece(r.piece), r.edge) for r in chain}
            for chain in (seam.left, seam.right)
        )
        if left == {0.0}:  # a slash, cut when its seam is stitched
            continue
        if left != right:  # along a chain it may change, on both sides alike
            widths = left | right
            yield Finding(
                seam.code,
                Severity.REFUSE,
                f"The two sides of the seam {seam.name} have different allowances.",
                seam.name,
                "Give both the same.",
                {"least": min(widths), "most": max(widths)},
            )
