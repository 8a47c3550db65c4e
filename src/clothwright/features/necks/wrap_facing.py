"""Facings of a wrap front: beside the whole edge to the waist (transformations 6).

In one with the armholes, or beside the edge alone under sleeves. The foot is caught in
the waist seam.
"""

import math

from clothwright.curves import Line, Path, Point, Vector, direction, inset, turned
from clothwright.features.linings.facing_edges import (
    CLEAR_OF_BP,
    foot_of_side,
    plain_curve,
)
from clothwright.features.linings.roll import (
    at_foot,
    cut_back,
    onto_waist,
    rolled_front,
)
from clothwright.features.linings.sewn_halves import OVER, SewnHalf
from clothwright.paper import Edge, EdgeKind, PaperError, Piece, meetings, straight
from clothwright.rules import Numbers

_NAME = "FF", "Front facing"

_LEVEL = Vector(-1.0, 0.0)


def wraps(shell: Piece) -> bool:
    """True for a front that is unfolded and crosses the centre."""
    return shell.has(OVER)


def wrap_facing(half: SewnHalf, n: Numbers) -> Piece:
    """FF of neck and armhole in one: beside the edge as wide as `strip_w`, then above
    the bust point to the side."""
    rolled = rolled_front(half, n.rho)
    side = foot_of_side(half, n.ff_side)
    waist = half.centre.edge(OVER).path  # from the edge to the centre
    foot = _foot(waist, n.strip_w)
    up = direction(half.neck.end, half.neck.at_length(0.6 * half.neck.length))
    over = Point(n.x_BP, n.y_BP - CLEAR_OF_BP)
    turn = foot + up * ((foot.y - over.y) / -up.y)
    reach = turn.x - over.x
    if reach < 1.0:
        raise PaperError(
            f"the facing beside the edge of the wrap, {n.strip_w:.1f} cm wide, leaves "
            "no way past the bust point: make it (strip w) narrower"
        )
    low = turn + up * -reach
    arrive = turned(side.end_direction, -90)  # towards the centre front
    free = Path(
        (
            Line(foot, low),
            *plain_curve(low, up, 0.55, over, _LEVEL, 0.55, reach).segments,
            *plain_curve(over, _LEVEL, 0.45, side.end, arrive * -1.0, 0.40).segments,
        )
    )
    return Piece(
        *_NAME,
        (
            Edge("neck", rolled.neck),
            _foot_edge(waist, rolled.neck.end, foot),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("side", side.reversed()),
            Edge("armhole", rolled.armhole),
            Edge("shoulder", rolled.shoulder),
        ),
    )


def wrap_neck_facing(shell: Piece, n: Numbers) -> Piece:
    """FF beside the edge: `nf_tip` wide at the shoulder, `strip_w` at the waist."""
    neck, waist = shell.edge("neck").path, shell.edge(OVER).path
    out = shell.edge("shoulder").path.end_direction * -1.0
    rolled = onto_waist(inset(neck, n.rho, n.rho), waist)
    short = neck.length - at_foot(shell, n.rho)
    rolled = cut_back(rolled.reversed(), short).reversed()
    foot = _foot(waist, n.strip_w)
    deep = n.strip_w * math.sin(math.radians(shell.interior_angle("neck")))
    free = onto_waist(inset(neck, n.nf_tip, deep), waist)
    free = Path.line(free.start - free.start_direction * 3.0, free.start) + free
    hits = meetings(
        free,
        Path.line(rolled.start, rolled.start + out * 30.0),
        "the neck facing misses the shoulder: make it narrower there (nf shoulder)",
    )
    free = free.between(hits[0][0], free.length).without_crumbs(0.1)
    tip = free.start
    free = free.pinned(tip, foot)
    return Piece(
        *_NAME,
        (
            Edge("neck", rolled),
            _foot_edge(waist, rolled.end, foot),
            Edge("free", free.reversed(), EdgeKind.FINISHED),
            straight("shoulder", tip, rolled.start),
        ),
    )


def _foot(waist: Path, wide: float) -> Point:
    if wide > waist.length - 0.5:
        raise PaperError(
            f"the facing beside the edge of the wrap is {wide:.1f} cm wide at the "
            f"waist, where the fronts cross by {waist.length:.1f} cm: make it "
            "(strip w) narrower"
        )
    return waist.at_length(wide)


def _foot_edge(waist: Path, start: Point, end: Point) -> Edge:
    a, b = (waist.length_to_point(p) for p in (start, end))
    return Edge("foot", waist.between(a, b).without_crumbs(0.1).pinned(start, end))
