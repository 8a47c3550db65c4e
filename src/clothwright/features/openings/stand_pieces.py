"""Pieces with a button stand, and the facing that lies behind it (transformations 6
and 7).

Terminology
    stand         what a front or a back is cut wider beyond its centre line, so that
                  one half laps over the other.
    "stand"       the new edge; "neck stand", "waist stand" and so on are what runs on
                  from the neighbours of the centre line to it.

Everything is done as for a front, whose centre lies on the right; a back is turned
over for it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from clothwright.blocks.torso import FISH_EYE
from clothwright.curves import Path, Point, Vector, dot, mirror_in
from clothwright.features.bodice.dropped import runs_below
from clothwright.features.bodice.panel_lines import corner
from clothwright.paper import (
    ON_STAND,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Sheet,
    straight,
)
from clothwright.truing import Fillet

STAND = "stand"

FOLD = "fold of the facing"
"""Line that the edge of a stand becomes, where its facing is cut on."""

BANDED = "band"
"""Edge that takes the centre's place, where a band is sewn on."""

_STEEP = 0.3
"""A neck that goes less than this across for each cm of it meets no stand's edge."""

_TURN = 3.0
"""Radius of the turn of a facing's free edge from the neck's to the front's, cm (common
practice)."""

_REACH = 240.0
"""Lines that are met run so far, cm."""


@dataclass(frozen=True)
class Centre:
    """One of the two centre lines, and the pieces that end there."""

    edge: str
    words: str
    upper: tuple[str, ...]
    """Codes of the bodice's centre piece, the first that is on the table."""

    lower: tuple[str, ...]
    """Codes of what hangs on the waist there."""

    facing: str
    low_facing: str
    """Code of the facing below the waist seam."""

    def on(self, sheet: Sheet, codes: tuple[str, ...]) -> str:
        """The first of these pieces that is on the table, or nothing."""
        return next((c for c in codes if c in sheet.pieces), "")


FRONT = Centre("cf", "front", ("FC", "F", "FY"), ("PFC", "PF"), "FF", "FFP")
BACK = Centre("cb", "back", ("BC", "B", "BY"), ("PBC", "PB"), "BF", "BFP")

_OVER = mirror_in(Point(0.0, 0.0), Point(0.0, 1.0))
"""Lays a back as a front lies, and back again."""


def as_front(piece: Piece, centre: Centre) -> Piece:
    """A back turned over so that its centre lies on the right; a front as it is."""
    return piece.moved(_OVER) if centre is BACK else piece


# -- the stand -------------------------------------------------------------------------
def with_stand(
    piece: Piece, centre: Centre, wide: float, like: Piece | None = None
) -> Piece:
    """The piece set out by `wide` cm beyond its centre edge: both neighbours run on in
    their own direction to the new edge "stand". A facing takes the stand of the piece
    that it faces, `like`. Raises PaperError where the neck comes down too steeply."""
    old = piece.edge(centre.edge)
    before, after = piece.before(old.name), piece.after(old.name)
    if like is None:
        a = _run_on(piece, before.path.end, before.path.end_direction, old.path, wide)
        way = after.path.start_direction * -1.0
        b = _run_on(piece, after.path.start, way, old.path, wide)
    else:
        edge = like.edge(STAND).path
        a, b = edge.start, edge.end
    loop: list[Edge] = []
    for e in piece.edges:
        if e.name != old.name:
            loop.append(e)
            continue
        loop += [
            straight(before.name + ON_STAND, old.path.start, a, before.kind),
            straight(STAND, a, b),
            straight(after.name + ON_STAND, b, old.path.end, after.kind),
        ]
    line = InnerLine(f"centre {centre.words}", old.path)
    return piece.with_edges(loop).with_lines(line)


def _run_on(piece: Piece, at: Point, way: Vector, line: Path, wide: float) -> Point:
    """Where a neighbour of the centre line, run on from there, reaches the edge of the
    stand."""
    u = line.start_direction
    share = dot(way, Vector(u.y, -u.x))
    if share < _STEEP:
        raise PaperError(
            f"{piece.name.lower()}: the neck comes down too steeply at its centre to "
            "run on over a button stand: make it wider, or less deep"
        )
    return at + way * (wide / share)


# -- its facing ------------------------------------------------------------------------
def led_down(
    facing: Piece | None,
    shell: Piece,
    centre: Centre,
    inside: float,
    wide: str = "it (bf)",
) -> Piece:
    """A facing of the neck led down beside the centre line to the lower end of the
    shell, `inside` cm wide there; without one a strip from the neck to there. `shell`
    is the piece before its stand. Raises PaperError when the strip is wider than the
    piece; `wide` says what to make narrower then."""
    if facing is None:
        return _alone(shell, centre, inside, wide)
    f, s = as_front(facing, centre), as_front(shell, centre)
    line, lower = s.edge(centre.edge).path, s.after(centre.edge)
    u = line.start_direction
    foot = _foot(s, _inside(line, inside), line, lower, wide)
    free = f.edge("free").path
    up = Path.line(foot.end, foot.end - u * _REACH)
    met = sorted(free.meets(up))
    if not met:
        raise PaperError(
            f"{shell.name.lower()}: the facing beside the centre is wider than that "
            "of the neck: make it (bf) narrower, or the facing at the shoulder wider"
        )
    rest = free.between(met[0][0], free.length)
    up = Path.line(foot.end, rest.start)
    turn = corner(up, rest)
    radius = min(_TURN, 0.4 * min(up.length, rest.length))
    if turn > 1.0:
        fillet = Fillet.of(turn, radius, _REACH)
        if fillet.tangent < 0.9 * min(up.length, rest.length):
            up = up.between(0.0, up.length - fillet.tangent)
            rest = rest.between(fillet.tangent, rest.length)
            up += fillet.between(
                up.end, up.end_direction, rest.start, rest.start_direction
            )
    loop: list[Edge] = []
    for e in f.edges:
        if e.name == centre.edge:
            down = straight(e.name, e.path.start, line.end, EdgeKind.FOLD)
            end = "lower" if lower.kind is EdgeKind.FINISHED else "foot"
            loop += [down, Edge(end, foot, lower.kind)]
        else:
            loop.append(e.along(up + rest) if e.name == "free" else e)
    return as_front(f.with_edges(loop), centre)


def _alone(shell: Piece, centre: Centre, inside: float, wide: str) -> Piece:
    """A facing beside the centre line alone, of one width from the neck to the lower
    end of the shell, where a collar or a binding encloses the neck. Raises PaperError
    when it is wider than the neck, or than the piece."""
    s = as_front(shell, centre)
    line, lower = s.edge(centre.edge).path, s.after(centre.edge)
    neck, beside = s.before(centre.edge).path, _inside(line, inside)
    foot = _foot(s, beside, line, lower, wide)
    met = neck.meets(beside)
    if not met:
        raise PaperError(
            f"{shell.name.lower()}: the facing beside the centre is wider than the "
            "neck, which only a collar or a binding encloses: make it (bf) narrower, "
            "or let the neck have a facing"
        )
    top = neck.between(met[-1][0], neck.length)
    end = "lower" if lower.kind is EdgeKind.FINISHED else "foot"
    piece = Piece(
        centre.facing,
        f"{centre.words.capitalize()} facing",
        (
            Edge("neck", top),
            straight(centre.edge, top.end, line.end, EdgeKind.FOLD),
            Edge(end, foot, lower.kind),
            straight("free", foot.end, top.start, EdgeKind.FINISHED),
        ),
    )
    return as_front(piece, centre)


def _inside(line: Path, inside: float) -> Path:
    """A line beside the centre line, so far inside of it, through the whole piece."""
    u = line.start_direction
    inner = Point(-u.y, u.x) * inside
    return Path.line(line.end + inner + u * _REACH, line.end + inner - u * _REACH)


def _foot(shell: Piece, beside: Path, line: Path, lower: Edge, wide: str) -> Path:
    """The lower end of a facing beside the centre, from that to the line beside it."""
    hits = lower.path.meets(beside)
    if not hits:
        raise PaperError(
            f"{shell.name.lower()}: the facing beside the centre is wider at the "
            f"waist than the piece: make {wide} narrower"
        )
    for taken in _taken_in(shell):
        if taken.meets(beside):
            raise PaperError(
                f"{shell.name.lower()}: the facing beside the centre reaches over "
                "what is taken in at the waist: make it (bf) narrower"
            )
    foot = lower.path.between(0.0, hits[0][0])
    return foot.pinned(line.end, foot.end)


def _taken_in(shell: Piece) -> Iterator[Path]:
    """A torso's waist dart, and its panel seam: no facing in one lies over them."""
    if runs_below(shell):
        yield from (k.path for k in shell.lines if k.name == FISH_EYE)
        taken = ("leg cf", "leg cb", "panel")
        yield from (e.path for e in shell.edges if e.name in taken)


def below_waist(skirt: Piece, centre: Centre, long: float, name: str) -> Piece:
    """The facing below the waist seam: a strip of what hangs there, `long` cm along the
    waist, its free edge beside the centre line."""
    s = as_front(skirt, centre)
    waist, line = s.before(centre.edge).path, s.edge(centre.edge).path
    hem = s.after(centre.edge).path
    if waist.length < long + 0.5:
        raise PaperError(
            f"{skirt.name.lower()}: the facing beside the centre takes its whole "
            "waist: make the facing (bf) narrower"
        )
    top = waist.between(waist.length - long, waist.length)
    u = line.start_direction
    hits = hem.meets(Path.line(top.start, top.start + u * _REACH))
    if not hits:
        raise PaperError(
            f"{skirt.name.lower()}: the facing beside the centre does not reach the "
            "hem: make the facing narrower, or take less of a circle"
        )
    lower = hem.between(0.0, hits[0][0])
    piece = Piece(
        centre.low_facing,
        name,
        (
            Edge("waist", top),
            Edge(centre.edge, line, EdgeKind.FOLD),
            Edge("lower", lower, EdgeKind.FINISHED),
            straight("free", lower.end, top.start, EdgeKind.FINISHED),
        ),
    )
    return as_front(replace(piece, grain=None), centre)
