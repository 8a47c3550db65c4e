"""Bias strips that bind an edge of woven cloth in place of a facing: what those of the
neck and of the armholes have in common (transformations 3; cutting and costing 5).

Terminology
    stretch   what the strip binds between two places that are marked across it.
    mitre     what of the strip is folded away over the point of a neck.

A strip is four times as wide as it is seen: its first quarter lies on the cloth, its
edge level with the edge that it binds; it is turned over that, and its last quarter is
turned in. It is cut shorter than the edge and stretched on, so that it draws it flat.
"""

from collections.abc import Iterator, Sequence
from enum import Enum
from typing import NamedTuple

from clothwright.curves import Path, Point, Vector, degrees_between
from clothwright.features.about import About
from clothwright.features.base import Number
from clothwright.features.bodice.about import PIECES
from clothwright.features.chains import Chains
from clothwright.features.linings.binding_corners import (
    MITRE,
    Corner,
    across,
    corners,
    mitred,
)
from clothwright.features.roles import Role
from clothwright.paper import (
    JOINT,
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    NotchPair,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Kind

SRC = "transformations 3"

_PRACTICE = "common practice, no source"

_PLIES = 4
"""A strip is so many times as wide as it is seen."""

ON = "run on"
"""Begins the name of an edge of a strip that no edge of the garment meets, at an end
that comes to the centre at a point; a mitre is the other such."""

_GIVES = 0.15
"""A strip on the bias may be stretched so much more or less than planned, cm."""

_SQUARE = 10.0
"""A neck that meets the centre nearer to square is not mitred there, degrees."""


def width_of(key: str, symbol: str, what: str) -> Number:
    """The number of a binding's finished width."""
    name = f"finished width of the {what} binding"
    return Number(key, symbol, name, _PRACTICE, 0.7, 0.25, 0.4, 2.0, (0.5, 1.2))


def short_of(key: str, symbol: str, what: str) -> Number:
    """The number of what a strip is cut shorter than its edge, per cent."""
    name = f"{what} binding shorter than its edge, per cent"
    return Number(key, symbol, name, SRC, 3.5, None, 0.0, 8.0, (3.0, 4.0), Kind.RATIO)


def cut_net(*names: str) -> tuple[About, ...]:
    """What is said of the shell's edges that a strip binds: they have no allowance."""
    codes = [*(a.code for a in PIECES if a.place is not None), "SLF", "SLB"]
    return tuple(About(c, edges=dict.fromkeys(names, Role.BOUND)) for c in codes)


class Ends(Enum):
    """What becomes of the ends of a strip: how its two short edges begin, and what they
    are."""

    JOINED = "end", EdgeKind.SEAM, Role.EDGE
    """Sewn to each other."""

    TAKEN_IN = "end", EdgeKind.FINISHED, Role.CENTRE_ZIP
    """Run to the raw edges of the centre back, and turned in with these."""

    TURNED_IN = "turned end", EdgeKind.FINISHED, Role.EDGE
    """Turned in, level with the edges of an opening that are faced."""

    IN_BAND = "end in the band", EdgeKind.FINISHED, Role.BAND
    """Caught in the seams of the bands that close an opening."""

    def __init__(self, begins: str, kind: EdgeKind, role: Role) -> None:
        self.kind, self.role = kind, role
        self.edges = f"{begins} back", f"{begins} front"

    @classmethod
    def of(cls, piece: Piece) -> "Ends":
        """Those that a strip has."""
        return next(e for e in cls if e._on(piece))

    def _on(self, piece: Piece) -> bool:
        back = self.edges[0]
        return piece.has(back) and piece.edge(back).kind is self.kind


def strip_edge(piece: Piece, edge: Edge) -> Role:
    """Its long edges are raw as what they bind, its ends as they are finished."""
    ends = Ends.of(piece)
    return ends.role if edge.name in ends.edges else Role.BOUND


class Bound(NamedTuple):
    """What of a garment's edge lies between two marks of its strip."""

    name: str
    chain: tuple[Run, ...]
    start: str
    end: str
    first: float = 90.0
    """Angle at which it leaves the centre where it begins there, degrees."""

    last: float = 90.0
    """The same where it ends at the centre."""


class Strip(NamedTuple):
    """A strip: its piece, and how it is told."""

    code: str
    edge: str
    """What is bound; the strip's edges along it are called so, and numbered."""

    seam: str
    """Code of its seams with the garment."""

    pair: bool
    """True for one on either side."""

    joint: str
    """Where its ends are joined to each other."""

    width: float
    """As it is seen, cm."""

    short: float
    """Per cent of the edge that it is cut shorter."""

    @property
    def what(self) -> str:
        """What is bound, in the number in which the garment has it."""
        return f"{self.edge}s" if self.pair else self.edge

    def on(self, length: float) -> float:
        """What of the strip is stretched on to so much of an edge, cm."""
        return length * (1 - self.short / 100)

    def seams(self, sheet: Sheet) -> tuple[Seam, ...]:
        """Its seams with the garment."""
        return tuple(s for s in sheet.seams if s.code.startswith(f"{self.seam}."))


def meets_centre(t: Chains, run: Run) -> float:
    """Angle off the centre line at which a run ends there, degrees: 90 is square, a
    point is less."""
    piece, way = t.sheet.piece(run.piece), t.sheet.run_path(run).end_direction
    if run.backward:
        return degrees_between(way, piece.before(run.edge).path.end_direction * -1.0)
    return degrees_between(way, piece.after(run.edge).path.start_direction)


def backwards(chain: Sequence[Run]) -> tuple[Run, ...]:
    """A chain walked from its other end."""
    return tuple(r._replace(backward=not r.backward) for r in reversed(chain))


def at_centre(angle: float) -> Corner | None:
    """The corner that a neck makes with its twin where it meets the centre at an angle
    (degrees); None when it goes on level."""
    return None if abs(angle - 90) < _SQUARE else Corner(0.0, 180.0 - 2 * angle)


def run_on(corner: Corner | None, w: float) -> float:
    """What a strip has more on either side of a hollow corner, cm."""
    return corner.half(w) if corner is not None and corner.turn > 0 else 0.0


def lay_strip(
    d: Drafting, strip: Strip, parts: Sequence[Bound], mark: str, ends: Ends
) -> None:
    """Draw the strip from its left end on: each stretch so much shorter than the edge
    that it binds; across it where the stretches end, and the mitres of the corners."""
    d.part = "band"
    top, lines = _upper_edge(Chains(d.sheet), strip, parts)
    deep = _PLIES * strip.width
    ring = ends is Ends.JOINED
    down = Vector(-deep if ring else 0.0, deep)
    at = Point(0.0, 0.0)
    long = top[-1].path.end.x
    a = d.start(mark, at, f"binding of the {strip.edge}, left end of its upper edge")
    b = d.point(f"{mark}e", mark, "right end of its upper edge", right=long)
    back, front = ends.edges
    piece = Piece(
        strip.code,
        f"{strip.edge.capitalize()} binding",
        (
            *top,
            straight(back, b, b + down, ends.kind),
            straight("inside", b + down, a + down, EdgeKind.FINISHED),
            straight(front, a + down, a, ends.kind),
        ),
        lines=(
            *lines,
            InnerLine("fold", Path.line(a + down * 0.5, b + down * 0.5)),
        ),
        grain=_on_bias(a, b, deep),
    )
    along = "its ends along the thread, " if ring else ""
    mitres = [k for k in lines if k.name == MITRE]
    drawn = "; the mitres of its corners drawn in" if mitres else ""
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        strip.code,
        f"strip that binds the {strip.edge}",
        amounts=(("wide, four times what is seen of it", deep), ("long", long)),
        detail=f"on the bias, {along}each stretch {strip.short:g} in 100 shorter than "
        f"the edge that it binds{drawn}",
    )


def _upper_edge(
    t: Chains, strip: Strip, parts: Sequence[Bound]
) -> tuple[list[Edge], list[InnerLine]]:
    """A strip's upper edge from its left end, at 0, and what is marked across it."""
    w = strip.width
    top: list[Edge] = []
    lines: list[InnerLine] = []

    def edge(name: str, long: float, kind: EdgeKind = EdgeKind.SEAM) -> None:
        start = top[-1].path.end if top else Point(0.0, 0.0)
        top.append(straight(name, start, start + Vector(long, 0.0), kind))

    def corner(name: str, found: Corner) -> None:
        """The mitre of a corner; in a hollow one the strip is longer by it."""
        end, half, more = top[-1].path.end, found.half(w), run_on(found, w)
        lines.append(mitred(end + Vector(more, 0.0), half, w, hollow=found.turn > 0))
        if more > 0:
            edge(name, 2 * more, EdgeKind.FINISHED)

    first, last = at_centre(parts[0].first), at_centre(parts[-1].last)
    if spare := run_on(first, w):
        edge(f"{ON} 1", spare, EdgeKind.FINISHED)
    for k, part in enumerate(parts, 1):
        there = at_centre(part.first) if k > 1 else None
        if there is not None:
            corner(f"{MITRE} {k}", there)
        elif k > 1:
            lines.append(across(top[-1].path.end, part.start, w))
        done, turns = 0.0, corners(t, part.chain)
        for i, found in enumerate(turns):
            edge(_stretch(strip, k, i), strip.on(found.at - done))
            corner(f"{MITRE} {k}{_after(i + 1)}", found)
            done = found.at
        rest = t.length(part.chain) - done
        edge(_stretch(strip, k, len(turns)), strip.on(rest))
    if spare := run_on(last, w):
        edge(f"{ON} end", spare, EdgeKind.FINISHED)
    return top, lines


def _stretch(strip: Strip, k: int, before: int) -> str:
    """A stretch is numbered, and numbered again beyond each corner in it."""
    return f"{strip.edge} {k}" + _after(before)


def _after(corner: int) -> str:
    return f"-{corner}" if corner else ""


def _on_bias(a: Point, b: Point, deep: float) -> tuple[Point, Point]:
    """The straight grain, at 45° to the strip, in its middle."""
    foot = a + (b - a) * 0.45 + Vector(-0.4 * deep, 0.9 * deep)
    return foot, foot + Vector(0.8 * deep, -0.8 * deep)


def strip_seams(t: Chains, strip: Strip, parts: Sequence[Bound]) -> Iterator[Seam]:
    """The strip stretched on, stretch by stretch, and its ends joined."""
    if strip.code not in t.sheet.pieces:
        return
    for k, part in enumerate(parts, 1):
        names = (_stretch(strip, k, i) for i in range(len(corners(t, part.chain)) + 1))
        right = t.chain(*((strip.code, name, False) for name in names))
        a, c = t.length(part.chain), t.length(right)
        yield Seam(
            f"{strip.seam}.{k}",
            f"{strip.edge} binding, {part.name}",
            part.chain,
            right,
            part.start,
            part.end,
            Ease.about(strip.on(a) - a, _GIVES),
            notches=() if k == len(parts) else (NotchPair(a, c, 1, JOINT),),
            stretched=True,
        )
    if Ends.of(t.sheet.piece(strip.code)) is Ends.JOINED:
        yield Seam(
            f"{strip.seam}a",
            f"ends of the {strip.edge} binding, at the {strip.joint}",
            t.chain((strip.code, "end back", False)),
            t.chain((strip.code, "end front", True)),
            "raw edge",
            "turned edge",
        )
