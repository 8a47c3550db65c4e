"""The garment as it is sewn: the draft's table, and how often each piece is cut.

A draft is one half; a piece on the fold has each of its edges twice, a pair has them
once on each of its two.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from clothwright.features.about import Place
from clothwright.features.operations import Work
from clothwright.features.roles import Role
from clothwright.finishing.allowances import Allowances
from clothwright.finishing.drawn import CutCount
from clothwright.paper import Run, Seam, SeamKind, Sheet, own_name

_OF_ROLE: Mapping[Role, Work] = {
    Role.SHOULDER: Work.SHOULDER,
    Role.SIDE: Work.SIDE,
    Role.PEPLUM_SIDE: Work.SKIRT,
    Role.GORE: Work.SKIRT,
    Role.TIER: Work.SKIRT,
    Role.CENTRE_ZIP: Work.CENTRE,
    Role.WAIST: Work.WAIST,
    Role.CAP: Work.SLEEVE,
    Role.GUSSET: Work.SLEEVE,
    Role.RAGLAN: Work.FLAT,
    Role.UNDERARM: Work.SLEEVE_SEAM,
    Role.JOIN: Work.JOIN,
}
"""What a plain seam of this edge is; any other is a panel seam."""

_BODICE = {Place.FRONT, Place.BACK}


def _of_knit(edges: Sequence[str]) -> Work:
    """What a seam of knitted cloth is; a sleeve is set before the sides are closed, and
    what is no seam of the bodice sews a band."""
    if any(e.startswith("cap") for e in edges):
        return Work.FLAT
    if set(edges) == {"shoulder"}:
        return Work.SHOULDER
    sides = {"side", "underarm front", "underarm back"}
    return Work.SIDE if set(edges) <= sides else Work.CUFF


@dataclass(frozen=True)
class Garment:
    """The table, the counts of its pieces by code, and their allowances."""

    sheet: Sheet
    cuts: Mapping[str, tuple[CutCount, ...]]
    allowances: Allowances

    def place(self, code: str) -> Place | None:
        """Where a piece stands among the others; of a lining, where its shell does."""
        return self.allowances.said.place(code)

    def role(self, run: Run) -> Role:
        """What an edge is."""
        return self.allowances.role(self.sheet.piece(run.piece), run.edge)

    @property
    def lined(self) -> bool:
        """True when it has a lining, under which no raw edge is seen."""
        return any(code.startswith("L.") for code in self.sheet.pieces)

    @property
    def bagged(self) -> bool:
        """True when a lining is bagged to the shell's edges in place of a facing."""
        return any(
            s.kind is SeamKind.FACED and any(r.piece.startswith("L.") for r in s.runs())
            for s in self.sheet.seams
        )

    def edges(self, code: str) -> int:
        """How often the garment has an edge of a piece, in its first cloth."""
        halves = 1 if self.sheet.piece(code).fold is None else 2
        return self.cuts[code][0].count * halves

    def times(self, seam: Seam) -> int:
        """How often the garment has a seam: once for each left and right, once where
        two halves meet."""
        if seam.kind is SeamKind.TWIN:
            return self.edges(seam.left[0].piece) * (2 if self._bag(seam) else 1) // 2
        sides = (seam.left, seam.right)
        return min(self.edges(side[0].piece) for side in sides)

    def length(self, seam: Seam) -> float:
        """Length of a seam wherever the garment has it, cm."""
        return self.times(seam) * self.sheet.chain_length(seam.left)

    def edge_length(self, run: Run) -> float:
        """Length of an edge wherever the garment has it, cm."""
        return self.edges(run.piece) * self.sheet.length(run.piece, run.edge)

    def work(self, seam: Seam) -> Work:
        """The kind of work in which a seam is sewn."""
        work = self.work_alike(seam)
        lined = any(r.piece.startswith("L.") for r in seam.runs())
        if not lined or work in (Work.EDGE, Work.JOIN):
            return work
        if seam.kind is SeamKind.LAPPED:
            return Work.LINED
        if work is Work.SIDE and self.bagged:
            return work  # in one with the shell's, over the turned armhole
        return Work.LINING_ROUND if work in (Work.WAIST, Work.CENTRE) else Work.LINING

    def work_alike(self, seam: Seam) -> Work:
        """The same, were a lining's seam the shell's."""
        match seam.kind:
            case SeamKind.FACED:
                return Work.EDGE
            case SeamKind.LAPPED:
                return Work.WAIST
            case SeamKind.DART:
                return Work.DART
            case SeamKind.TWIN:
                return Work.BAG if self._bag(seam) else Work.CENTRE
        places = {self.place(r.piece) for r in seam.runs()}
        roles = [self.role(r) for r in seam.runs()]
        if Place.BAND in places:
            return Work.BAND
        if roles[0] is Role.KNIT:
            return _of_knit([r.edge for r in seam.runs()])
        telling = (r for r in roles if r in (Role.CAP, Role.JOIN, Role.GUSSET))
        work = _OF_ROLE.get(next(telling, roles[0]), Work.PANEL)
        if work is Work.SHOULDER and (not places & _BODICE or self._of_facing(seam)):
            return Work.FACING
        if work is Work.SIDE and not places & {*_BODICE, Place.FACING}:
            return Work.SKIRT
        return work

    def _of_facing(self, seam: Seam) -> bool:
        """True for the shoulder of a facing that is cut on to a button stand."""
        return any(
            own_name(r.edge) == "facing shoulder"
            and self.sheet.piece(r.piece).has("neck")
            for r in seam.runs()
        )

    def _bag(self, seam: Seam) -> bool:
        """True for a piece that is sewn to itself cut in lining."""
        cloths = {c.cloth for r in seam.runs() for c in self.cuts[r.piece]}
        return {"shell", "lining"} <= cloths
