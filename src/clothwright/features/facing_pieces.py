"""The pieces of an all-in-one facing, traced from the shell (first garment 14)."""

from clothwright.curves import Path, Point, inset
from clothwright.features.facing_edges import (
    closed_back_free,
    foot_of_side,
    front_free,
    open_back_free,
)
from clothwright.features.roll import Rolled, back_to_match, rolled_front
from clothwright.features.sewn_halves import (
    SewnHalf,
    at_level,
    back_under,
    sewn_back,
    sewn_front,
)
from clothwright.features.wrap_facing import wrap_facing, wraps
from clothwright.paper import (
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    straight,
)
from clothwright.rules import Numbers

SHORT_OF_ZIP = 0.5
"""A back facing ends this far beside the line of a zip, cm (16.4)."""


def front_facing(sheet: Sheet, n: Numbers) -> Piece:
    """FF: on the fold, its free edge from the fold to the side."""
    half = sewn_front(sheet)
    if wraps(half.centre):
        return wrap_facing(half, n)
    rolled = rolled_front(half, n.rho)
    side = foot_of_side(half, n.ff_side)
    free = front_free(half, n, side)
    return Piece(
        "FF",
        "Front facing",
        (
            Edge("neck", rolled.neck),
            straight("cf", rolled.neck.end, free.start, EdgeKind.FOLD),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("side", side.reversed()),
            Edge("armhole", rolled.armhole),
            Edge("shoulder", rolled.shoulder),
        ),
    )


def back_facing(sheet: Sheet, n: Numbers, shoulder: float) -> Piece:
    """BF, its shoulder of the length given: it carries no ease (14.6). In an open back
    it runs down beside the slanted edge to the waist, or takes the whole centre; in a
    closed one it ends at the centre back, short of a zip."""
    half, pd = sewn_back(sheet), sheet.points["Pd"]
    facing = _back(half, n, shoulder, pd)
    for _ in range(2):
        again = back_under(sheet, facing)
        if again.motion == half.motion:
            break
        half, facing = again, _back(again, n, shoulder, pd)
    return facing


def _back(half: SewnHalf, n: Numbers, shoulder: float, pd: Point) -> Piece:
    rolled = back_to_match(half, n.rho, shoulder, n.se_left / 2)
    side = foot_of_side(half, n.ff_side)
    upper = (
        Edge("shoulder", rolled.shoulder),
        Edge("armhole", rolled.armhole),
        Edge("side", side),
    )
    rest = _to_waist if rolled.slant is not None else _to_centre_back
    neck, lower = rest(half, n, rolled, side, pd)
    return Piece("BF", "Back facing", (Edge("neck", neck), *upper, *lower))


def _to_waist(
    half: SewnHalf, n: Numbers, rolled: Rolled, side: Path, pd: Point
) -> tuple[Path, tuple[Edge, ...]]:
    """Neck of an open back's facing, and what is below its side."""
    slant = rolled.slant
    assert slant is not None
    free, waist = open_back_free(half, n, side, pd)
    foot = waist.between(0.0, waist.length_to_point(slant.start))
    foot = foot.pinned(waist.start, slant.start)
    return rolled.neck, (*free, Edge("foot", foot), Edge("slant", slant))


def _to_centre_back(
    half: SewnHalf, n: Numbers, rolled: Rolled, side: Path, pd: Point
) -> tuple[Path, tuple[Edge, ...]]:
    """Neck of a closed back's facing, and what is below its side."""
    edge = half.centre.edge("cb")
    neck, cb, kind = rolled.neck, edge.path, EdgeKind.FOLD
    if edge.kind is EdgeKind.SEAM:
        line, kind = beside_zip(cb), EdgeKind.FINISHED
        s, t = neck.meets(line)[0]
        neck = neck.split_at_length(s)[1]
        cb = line.between(0.0, t).pinned(line.start, neck.start)
    foot = at_level(cb, half.neck.start.y + n.ff_cf)
    if foot is None:
        raise PaperError("the back facing reaches the waist: make it less deep")
    free = closed_back_free(half, n, side, foot, pd)
    up = cb.between(cb.length_to_point(foot), cb.length).pinned(foot, neck.start)
    return neck, (Edge("free", free, EdgeKind.FINISHED), Edge("cb", up, kind))


def beside_zip(cb: Path) -> Path:
    """The line that a facing keeps to beside the line of a zip, waist up to the neck,
    and on beyond it."""
    line = inset(cb, SHORT_OF_ZIP, SHORT_OF_ZIP)
    return line + Path.line(line.end, line.end + line.end_direction * 2.0)
