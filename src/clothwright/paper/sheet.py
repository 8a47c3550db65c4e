"""The sheet: all pieces and all seams of a draft, one immutable value."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Final

from clothwright.curves import Path, Point, Vector
from clothwright.paper.piece import Edge, PaperError, Piece
from clothwright.paper.seam import Run, Seam
from clothwright.paper.things import LASTING, Watched, bare, lasting, less, more

_NONE: Mapping[str, Any] = MappingProxyType({})


@dataclass(init=False, unsafe_hash=True)
class Sheet:
    """Pieces by code, seams in the order stated, named points and lines."""

    pieces: Final[Mapping[str, Piece]]
    seams: Final[tuple[Seam, ...]]
    points: Final[Mapping[str, Point]]
    lines: Final[Mapping[str, Path]]
    """Lines drawn on the table that are not, or not yet, edges of a piece."""

    def __init__(
        self,
        pieces: Mapping[str, Piece] = _NONE,
        seams: tuple[Seam, ...] = (),
        points: Mapping[str, Point] = _NONE,
        lines: Mapping[str, Path] = _NONE,
    ) -> None:
        self.pieces = pieces if type(pieces) in LASTING else lasting(pieces)
        self.points = points if type(points) in LASTING else lasting(points)
        self.lines = lines if type(lines) in LASTING else lasting(lines)
        self.seams = seams

    # -- asking -----------------------------------------------------------------
    def piece(self, code: str) -> Piece:
        """The piece of this code. Raises PaperError when it is not on the sheet."""
        try:
            return self.pieces[code]
        except KeyError:
            raise PaperError(f"there is no piece {code} on the table") from None

    def edge(self, piece: str, edge: str) -> Edge:
        """An edge by the codes of piece and edge."""
        return self.piece(piece).edge(edge)

    def length(self, piece: str, edge: str) -> float:
        """Length of an edge, cm."""
        return self.edge(piece, edge).length

    def seam(self, code: str) -> Seam:
        """The seam of this code. Raises PaperError when there is none."""
        for s in self.seams:
            if s.code == code:
                return s
        raise PaperError(f"there is no seam {code} on the table")

    def seams_of(self, piece: str, edge: str) -> tuple[Seam, ...]:
        """Every seam in which an edge takes part."""
        return tuple(s for s in self.seams if (piece, edge) in s)

    def run_path(self, run: Run) -> Path:
        """The path of a run, in the direction of the walk."""
        path = self.edge(run.piece, run.edge).path
        return path.reversed() if run.backward else path

    def chain_length(self, chain: Iterable[Run]) -> float:
        """Length of a chain of edges, cm."""
        return sum([self.piece(r[0]).edge(r[1]).path.length for r in chain])

    def chain_at(self, chain: Iterable[Run], s: float) -> tuple[Run, Point, Vector]:
        """Run, point and unit direction of the walk a length `s` along a chain."""
        rest = s
        last: Run | None = None
        for run in chain:
            last = run
            length = self.length(run.piece, run.edge)
            if rest <= length + 1e-9:
                path = self.run_path(run)
                return run, path.at_length(rest), path.direction_at_length(rest)
            rest -= length
        if last is None:
            raise PaperError("a chain of no edges has no places")
        path = self.run_path(last)
        return last, path.end, path.end_direction

    # -- changing: always a new sheet ----------------------------------------------
    def put(self, *pieces: Piece) -> "Sheet":
        """The sheet with pieces added or put in place of those of the same code."""
        return self._with(pieces=more(self.pieces, {p.code: p for p in pieces}))

    def without(self, *codes: str) -> "Sheet":
        """The sheet with pieces taken off, and every seam that they were in."""
        seams = (s for s in self.seams if not any(r.piece in codes for r in s.runs()))
        return self._with(pieces=less(self.pieces, codes), seams=tuple(seams))

    def in_place_of(self, *codes: str, put: Iterable[Piece]) -> "Sheet":
        """The sheet with pieces taken off and others put; seams stay as stated."""
        new = {p.code: p for p in put}
        return self._with(pieces=more(less(self.pieces, codes), new))

    def sew(self, *seams: Seam) -> "Sheet":
        """The sheet with seams stated, each in place of one of the same code.

        Raises PaperError when a seam names an edge that is not there.
        """
        for s in seams:
            for piece, edge, _ in s.left + s.right:
                self.piece(piece).edge(edge)
        new = {s.code: s for s in seams}
        kept = tuple([new.pop(s.code, s) for s in self.seams])
        return self._with(seams=kept + tuple(new.values()))

    def unsew(self, *codes: str) -> "Sheet":
        """The sheet without these seams."""
        if not codes:
            return self
        return self._with(seams=tuple([s for s in self.seams if s.code not in codes]))

    def named(self, **points: Point) -> "Sheet":
        """The sheet with named points."""
        return self._with(points=more(self.points, points))

    def drawn(self, **lines: Path) -> "Sheet":
        """The sheet with named lines drawn on it."""
        return self._with(lines=more(self.lines, lines))

    def undrawn(self, begins: str) -> "Sheet":
        """The sheet without the named lines whose names begin so."""
        names = [k for k in self.lines if k.startswith(begins)]
        return self._with(lines=less(self.lines, names)) if names else self

    def with_runs(
        self, change: Callable[[Run], tuple[Run, ...]], *pieces: str
    ) -> "Sheet":
        """The sheet with every run of these pieces put through `change`, which gives
        the runs, in walking order, that stand in its place."""

        def chain(runs: tuple[Run, ...]) -> tuple[Run, ...]:
            if len(runs) == 1:
                return change(runs[0]) if runs[0][0] in pieces else runs
            out: list[Run] = []
            for r in runs:
                for new in change(r) if r[0] in pieces else (r,):
                    if new not in out:
                        out.append(new)
            return tuple(out)

        seams: list[Seam] = []
        for s in self.seams:
            apart = s.pieces.isdisjoint(pieces)
            seams.append(s if apart else s.over(chain(s.left), chain(s.right)))
        return self._with(seams=tuple(seams))

    def unwatched(self) -> "Sheet":
        """The sheet as it lies there, for eyes that are nobody's business."""
        if not isinstance(self.pieces, Watched):
            return self
        return Sheet(bare(self.pieces), self.seams, bare(self.points), bare(self.lines))

    def _with(
        self,
        pieces: Mapping[str, Piece] | None = None,
        seams: tuple[Seam, ...] | None = None,
        points: Mapping[str, Point] | None = None,
        lines: Mapping[str, Path] | None = None,
    ) -> "Sheet":
        return Sheet(
            self.pieces if pieces is None else pieces,
            self.seams if seams is None else seams,
            self.points if points is None else points,
            self.lines if lines is None else lines,
        )
