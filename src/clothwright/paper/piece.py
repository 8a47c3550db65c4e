"""Pieces of paper: closed loops of named edges."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import Enum
from itertools import pairwise
from typing import Final

from clothwright.curves import (
    CLOSE,
    Cubic,
    Line,
    Motion,
    Pair,
    Path,
    Point,
    distance,
    held,
)

LEFT_PIECE = "-L"
"""Ends the code of a piece of the left side, where the two sides differ."""

LEFT_HALF = " left"
"""Ends the name of an edge of a whole piece's left half."""

ON_STAND = " stand"
"""Ends the name of what an edge is on a button stand, beyond the centre line."""

MIRRORED = " mirrored"
"""Ends the name of an edge beyond the fold of a piece that was unfolded."""


UNDER = "under pleat"
"""Begins the name of an edge of the waist that is folded under."""


def own_name(name: str) -> str:
    """The name of an edge on its own half: "neck" of "neck left"."""
    return name.removesuffix(LEFT_HALF).removesuffix(MIRRORED)


def own_piece(code: str) -> str:
    """The code of a piece on its own half: "B" of "B-L"."""
    return code.removesuffix(LEFT_PIECE)


class EdgeKind(Enum):
    """What becomes of an edge in the cloth."""

    SEAM = "seam"
    """Sewn to a partner: every such edge must stand in a seam."""

    FOLD = "fold"
    """Laid on the fold of the cloth; straight; no allowance."""

    FINISHED = "finished edge"
    """Neatened, bound or hemmed by itself; no partner."""


class MarkKind(Enum):
    """What a mark inside a piece stands for."""

    DRILL = "drill mark"
    BUTTON = "button"
    LOOP = "loop"
    POINT = "point"


class PaperError(ValueError):
    """Paper that cannot be cut, laid or drawn so. `str()` is a plain sentence."""


@dataclass(init=False, unsafe_hash=True)
class Edge:
    """One named edge; its path runs clockwise (as seen) round the piece."""

    name: Final[str]
    path: Final[Path]
    kind: Final[EdgeKind]

    def __init__(self, name: str, path: Path, kind: EdgeKind = EdgeKind.SEAM) -> None:
        self.name, self.path, self.kind = name, path, kind

    @property
    def length(self) -> float:
        """True length in cm."""
        return self.path.length

    def along(self, path: Path) -> "Edge":
        """The edge on another line."""
        return self if path is self.path else Edge(self.name, path, self.kind)

    def moved(self, m: Motion) -> "Edge":
        """The edge after a motion. A mirrored edge runs the other way, so that its
        piece still runs clockwise."""
        path = self.path.moved(m)
        return self.along(path.reversed() if m.flips else path)


@dataclass(unsafe_hash=True)
class Mark:
    """A named point of a piece."""

    name: Final[str]
    at: Final[Point]
    kind: Final[MarkKind] = MarkKind.POINT

    def moved(self, m: Motion) -> "Mark":
        """The mark after a motion."""
        return Mark(self.name, m(self.at), self.kind)


class LineKind(Enum):
    """What a line inside a piece is for."""

    EYE = "line for the eye"
    """Bust line, lap line, button line, fold of a pleat."""

    PLACEMENT = "placement line"
    """Where a fold is laid to."""

    ARROW = "arrow of a pleat"
    """From a fold to where it is laid."""


@dataclass(unsafe_hash=True)
class InnerLine:
    """A named line inside a piece: bust line, lap line, button line."""

    name: Final[str]
    path: Final[Path]
    kind: Final[LineKind] = LineKind.EYE

    def along(self, path: Path) -> "InnerLine":
        """The line run another way."""
        return InnerLine(self.name, path, self.kind)

    def moved(self, m: Motion) -> "InnerLine":
        """The line after a motion."""
        return self.along(self.path.moved(m))


@dataclass(init=False, unsafe_hash=True)
class Piece:
    """A closed loop of edges, clockwise as seen, with what is marked on it.

    Raises PaperError when the edges do not close or a name stands twice.
    """

    code: Final[str]
    name: Final[str]
    edges: Final[tuple[Edge, ...]]
    marks: Final[tuple[Mark, ...]]
    lines: Final[tuple[InnerLine, ...]]
    grain: Final[tuple[Point, Point] | None]
    """Straight grain, from its foot to its head."""

    _places: dict[str, int] = field(init=False, compare=False, repr=False)
    _first: "Piece | None" = field(default=None, init=False, compare=False, repr=False)
    """The first piece with these very edges, unless it is this one."""

    def __init__(
        self,
        code: str,
        name: str,
        edges: tuple[Edge, ...],
        marks: tuple[Mark, ...] = (),
        lines: tuple[InnerLine, ...] = (),
        grain: tuple[Point, Point] | None = None,
        loop: "Piece | None" = None,
    ) -> None:
        self.code, self.name, self.edges = code, name, edges
        self.marks, self.lines, self.grain = marks, lines, grain
        if loop is not None and loop.edges is edges:
            self._first, self._places = loop, loop._places
            return
        before = edges[-1]
        for edge in edges:
            a, b = before.path.end, edge.path.start
            if a is not b and distance(a, b) > 10 * CLOSE:
                raise PaperError(
                    f"{code}: the edge {before.name} does not reach {edge.name}"
                )
            before = edge
        self._places = {e.name: i for i, e in enumerate(edges)}
        if len(self._places) != len(edges):
            raise PaperError(f"{code}: two edges have one name")

    # -- asking -----------------------------------------------------------------
    def index(self, name: str) -> int:
        """Place of an edge in the loop. Raises PaperError for an unknown name."""
        place = self._places.get(name)
        if place is not None:
            return place
        names = ", ".join(e.name for e in self.edges)
        raise PaperError(f"{self.code} has no edge {name}; it has {names}")

    def edge(self, name: str) -> Edge:
        """The edge of this name."""
        place = self._places.get(name)
        return self.edges[self.index(name) if place is None else place]

    def has(self, name: str) -> bool:
        """True when there is an edge of this name."""
        return name in self._places

    def before(self, name: str) -> Edge:
        """The edge that ends where this one begins."""
        return self.edges[self.index(name) - 1]

    def after(self, name: str) -> Edge:
        """The edge that begins where this one ends."""
        return self.edges[(self.index(name) + 1) % len(self.edges)]

    @property
    def loop(self) -> "Piece":
        """The first piece with these very edges: what follows from the edges alone is
        asked of it, and known to all (2 % of a redraw)."""
        return self if self._first is None else self._first

    @held
    def outline(self) -> Path:
        """The whole loop as one closed path."""
        if self._first is not None:
            return self._first.outline
        return Path(tuple([s for e in self.edges for s in e.path.segments]))

    @property
    def area(self) -> float:
        """Net area in cm², positive for a loop that runs clockwise as seen."""
        return self.outline.area

    @held
    def fold(self) -> Edge | None:
        """The edge laid on the fold, if there is one."""
        return next((e for e in self.edges if e.kind is EdgeKind.FOLD), None)

    def contains(self, p: Point) -> bool:
        """True when `p` lies inside the outline (even-odd rule, chords of 0.1 mm)."""
        inside = False
        x, y = p
        for s in self.outline.segments:
            left, top, right, bottom = s.box
            if y < top or y > bottom or x > right:
                continue
            (x0, y0), (x1, y1) = s.start, s.end
            # what lies wholly to the right is crossed as its two ends say, and so is
            # what lies wholly on one side of its own chord from here
            if isinstance(s, Cubic) and x >= left:
                least, most = s.strip
                if least <= (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) <= most:
                    inside ^= _crossed(s.fine, x, y)
                    continue
            if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
                inside = not inside
        return inside

    def interior_angle(self, name: str) -> float:
        """Degrees of paper at the corner where this edge ends, 0 to 360."""
        return self.angles[self.index(name)]

    @held
    def angles(self) -> list[float]:
        """Degrees of paper at the corners where the edges end, 0 to 360."""
        if self._first is not None:
            return self._first.angles
        out: list[float] = []
        ax, ay = self.edges[0].path.segments[-1].arriving()
        for edge in self.edges[1:] + self.edges[:1]:
            ends = edge.path.segments
            bx, by = ends[0].leaving()
            turn = math.atan2(ax * by - ay * bx, ax * bx + ay * by)
            out.append((180.0 - math.degrees(turn)) % 360.0)
            ax, ay = ends[-1].arriving()
        return out

    # -- changing: always a new piece ---------------------------------------------
    def moved(self, m: Motion) -> "Piece":
        """The piece after a motion; a mirrored piece still runs clockwise."""
        edges = [e.moved(m) for e in self.edges]
        if m.flips:
            edges.reverse()
        return Piece(
            self.code,
            self.name,
            tuple(edges),
            tuple([k.moved(m) for k in self.marks]),
            tuple([k.moved(m) for k in self.lines]),
            (m(self.grain[0]), m(self.grain[1])) if self.grain else None,
        )

    def holding(
        self,
        marks: tuple[Mark, ...],
        lines: tuple[InnerLine, ...],
        grain: tuple[Point, Point] | None,
    ) -> "Piece":
        """The same loop with other things in it."""
        return Piece(self.code, self.name, self.edges, marks, lines, grain, self.loop)

    def with_edges(self, edges: Iterable[Edge]) -> "Piece":
        """The piece with another loop."""
        return Piece(
            self.code, self.name, tuple(edges), self.marks, self.lines, self.grain
        )

    def with_edge(self, edge: Edge) -> "Piece":
        """The piece with one edge of the same name put in place of the old."""
        i = self.index(edge.name)
        return self.with_edges((*self.edges[:i], edge, *self.edges[i + 1 :]))

    def rolled_to(self, name: str) -> tuple[Edge, ...]:
        """The loop's edges in order, beginning with this one."""
        i = self.index(name)
        return self.edges[i:] + self.edges[:i]

    def with_marks(self, *marks: Mark) -> "Piece":
        """The piece with more marks; a mark of the same name is replaced."""
        names = {m.name for m in marks}
        kept = tuple(m for m in self.marks if m.name not in names)
        return self.holding(kept + marks, self.lines, self.grain)

    def with_lines(self, *lines: InnerLine) -> "Piece":
        """The piece with more inner lines; one of the same name is replaced."""
        names = {k.name for k in lines}
        kept = tuple(k for k in self.lines if k.name not in names)
        return self.holding(self.marks, kept + lines, self.grain)


def _crossed(chords: list[Pair], x: float, y: float) -> bool:
    """True when a ray to the right of a place crosses a run of chords an odd number of
    times."""
    odd = False
    for (x0, y0), (x1, y1) in pairwise(chords):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            odd = not odd
    return odd


def straight(name: str, a: Point, b: Point, kind: EdgeKind = EdgeKind.SEAM) -> Edge:
    """A straight edge."""
    return Edge(name, Path((Line(a, b),)), kind)
