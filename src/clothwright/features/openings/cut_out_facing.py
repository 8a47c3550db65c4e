"""A back facing led round a cut-out or a slit below the neck (transformations 2, deep
back).

Traced from the shell: its edge there is the shell's, its loose edge runs beside that at
one width, from the facing of the neck down to the centre below the opening.
"""

import math

from clothwright.curves import (
    Path,
    Point,
    Vector,
    degrees_between,
    inset,
    meet_lines,
    mix,
)
from clothwright.features.bodice.panel_lines import corner
from clothwright.features.chains import ABOVE, CUT_OUT, NAPE
from clothwright.features.linings.facing_pieces import beside_zip
from clothwright.paper import Edge, EdgeKind, PaperError, Piece, straight
from clothwright.truing import Fillet, arc_like

_TURN = 4.0
"""Radius of the turn from the neck's loose edge into that beside the cut-out, cm
(common practice, no source)."""

_CLEAR = 0.2
"""The turn keeps so far from a panel seam, cm: facing and panels are laid together
there."""

_REACH = 60.0
"""Lines that are met run so far, cm."""

_LEVEL = Vector(1.0, 0.0)
"""Away from the centre back."""


def faced_round(facing: Piece, shell: Piece, wide: float, fault: str) -> Piece:
    """The back facing with the cut-out or the slit of the shell in it and `wide` cm of
    paper round that; beside a zip below it ends short of that. Raises PaperError with
    `fault` where it is too wide for the neck's."""
    above = ABOVE if shell.has(ABOVE) else NAPE
    nape, centre = shell.edge(above), shell.edge("cb")
    opening = shell.edge(CUT_OUT) if shell.has(CUT_OUT) else nape
    plain = facing.edge("free").path
    panel = shell.edge("panel").path if shell.has("panel") else None
    beyond = max((s for s, _ in plain.meets(panel)), default=0.0) if panel else 0.0
    free = _free(plain, beyond, opening.path, nape.path, wide, fault)
    neck, edge = facing.edge("neck").path, opening.path
    if centre.kind is EdgeKind.SEAM:
        line = beside_zip(centre.path)
        free = free.between(0.0, _met(free, line)[0])
        s, t = _met(edge, line)
        edge = edge.between(s, edge.length)
        beside = line.between(line.length_to_point(free.end), t)
        beside = beside.pinned(free.end, edge.start)
        cb = Edge("cb", beside, EdgeKind.FINISHED)
        neck = Path.line(nape.path.end, neck.start) + neck
    else:
        cb = straight("cb", free.end, edge.start, EdgeKind.FOLD)
        neck = neck.between(_met(neck, nape.path.run_on(1.0))[0], neck.length)
    up = [Edge(above, edge.pinned(edge.start, neck.start))]
    if opening is not nape:
        top = nape.path.pinned(edge.end, neck.start)
        up = [Edge(CUT_OUT, edge), Edge(above, top)]
    loop: list[Edge] = []
    for e in facing.edges:
        if e.name == "cb":
            loop += [cb, *up]
        else:
            new = {"free": free, "neck": neck}.get(e.name, e.path)
            loop.append(e.along(new))
    return facing.with_edges(loop)


def _free(
    beside_neck: Path,
    beyond: float,
    opening: Path,
    nape: Path,
    wide: float,
    fault: str,
) -> Path:
    """The loose edge: the neck's until it comes to the line beside nape and cut-out,
    then that down to the centre; the neck's alone where that passes below. It stays as
    it is up to a length `beyond`, where it crosses a panel seam."""
    down = _beside(opening, nape, wide)
    hits = beside_neck.meets(down)
    if not hits:
        return beside_neck
    s, t = hits[0]
    if s < 0.5:
        raise PaperError(fault)
    upper = beside_neck.between(0.0, s)
    lower = down.between(t, down.length).pinned(upper.end, down.end)
    turn = corner(upper, lower)
    room = min(s - beyond - _CLEAR, 0.4 * upper.length, 0.4 * lower.length)
    radius = min(_TURN, room / math.tan(math.radians(turn) / 2))
    if radius < _CLEAR or turn < 1.0:
        return upper + lower
    return _turned(upper, lower, Fillet.of(turn, radius, _REACH))


def faced_alone(shell: Piece, wide: float, fault: str) -> Piece:
    """The back facing of a slit below a neck that is bound: `wide` cm round it, from
    the neck down. Raises PaperError with `fault` where it is wider than the neck."""
    slit, neck = shell.edge(NAPE).path, shell.edge("neck").path
    down = _beside(slit, slit, wide)
    down = Path.line(down.start - down.start_direction * _REACH, down.start) + down
    met = neck.meets(down)
    if not met:
        raise PaperError(fault)
    top = neck.between(0.0, met[0][0])
    free = down.between(met[0][1], down.length).pinned(top.end, down.end)
    return Piece(
        "BF",
        "Back facing",
        (
            Edge("neck", top),
            Edge("free", free, EdgeKind.FINISHED),
            straight("cb", free.end, slit.start, EdgeKind.FOLD),
            Edge(NAPE, slit.pinned(slit.start, top.start)),
        ),
    )


def _beside(opening: Path, nape: Path, wide: float) -> Path:
    """A line beside nape and opening, from above the neck down to the centre."""
    round_ = inset(opening, wide, wide)  # from the foot up
    foot = Point(opening.start.x, opening.start.y + wide)
    if foot.y - round_.start.y > 0.05:  # about the point in which the opening ends
        round_ = arc_like(foot, round_.start, round_.start_direction, _LEVEL) + round_
    down = round_.reversed()
    x = nape.end.x + wide
    plumb = Path.line(Point(x, nape.end.y - _REACH), Point(x, foot.y))
    met = plumb.meets(down)
    if met:
        s, t = met[0]
        down = plumb.between(0.0, s) + down.between(t, down.length).pinned(
            plumb.at_length(s), down.end
        )
    return down


def _turned(upper: Path, lower: Path, fillet: Fillet) -> Path:
    """Both lines joined over their corner. Either may bend where the turn begins, so
    that they turn by more than at the corner, and meet further from one end: each end's
    handle is as long as an arc's, by its own way to where they meet."""
    first = upper.between(0.0, upper.length - fillet.tangent)
    last = lower.between(fillet.tangent, lower.length)
    a, b = first.end, last.start
    u, v = first.end_direction, last.start_direction
    meet = meet_lines(a, u, b, v)
    turn = math.radians(degrees_between(u, v))
    share = 4 / 3 * math.tan(turn / 4) / math.tan(turn / 2)
    arc = Path.cubic(a, mix(a, meet, share), mix(b, meet, share), b)
    return first + arc + last


def _met(path: Path, line: Path) -> tuple[float, float]:
    """Where a line of the facing meets the one that it keeps to beside the zip."""
    met = path.meets(line)
    if not met:
        raise PaperError(
            "the facing of the cut-out does not reach the zip below it: end the "
            "cut-out (co foot) higher"
        )
    return met[0]
