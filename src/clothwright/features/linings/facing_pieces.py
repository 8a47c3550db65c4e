"""The pieces of an all-in-one facing, traced from the shell (first garment 14)."""

from clothwright.curves import Path, Point, Vector, direction, inset, mix, shift, turned
from clothwright.features.chains import BACK_LINE, TOP
from clothwright.features.linings.facing_edges import (
    closed_back_free,
    dart_point,
    foot_of_side,
    front_free,
    open_back_free,
    plain_curve,
)
from clothwright.features.linings.roll import Rolled, back_to_match, rolled_front
from clothwright.features.linings.sewn_halves import (
    SewnHalf,
    at_level,
    back_under,
    sewn_back,
    sewn_front,
)
from clothwright.features.necks.cowl import drapes
from clothwright.features.necks.wrap_facing import wrap_facing, wraps
from clothwright.paper import (
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    meetings,
    straight,
)
from clothwright.rules import Numbers

SHORT_OF_ZIP = 0.5
"""A back facing ends this far beside the line of a zip, cm (16.4)."""

_CRUMB = 0.1
"""What is shorter is no line of its own, cm."""


def front_facing(sheet: Sheet, n: Numbers) -> Piece:
    """FF: on the fold, its free edge from the fold to the side."""
    half = sewn_front(sheet)
    if half.centre.has(TOP):
        return _front_below_top(half, n)
    if wraps(half.centre):
        return wrap_facing(half, n)
    if drapes(half.centre):
        return _beside_armhole(half, n)
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


def _front_below_top(half: SewnHalf, n: Numbers) -> Piece:
    """FF of a strapless front: below its top edge, by the roll lower than that, so that
    both are of one length."""
    fold = half.centre.edge("cf").path
    top = lowered(half.neck, n.rho, half.side.reversed(), fold)
    side = _below(half.side, top.start, _depth_of(half, n))
    free = front_free(half, n, side)
    over = top.length - half.neck.length  # where the side leans
    top = top.between(max(0.0, over), top.length)
    return Piece(
        "FF",
        "Front facing",
        (
            Edge(TOP, top),
            straight("cf", top.end, free.start, EdgeKind.FOLD),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("side", side.pinned(top.start, side.end).reversed()),
        ),
    )


def _depth_of(front: SewnHalf, n: Numbers) -> float:
    """Depth of both facings at the side."""
    return min(n.ff_side, _OF_SIDE * front.side.length, front.side.length - _LEFT)


def _below(side: Path, top: Point, depth: float) -> Path:
    """A side from its top so far down."""
    start = side.length_to_point(top)
    return side.between(start, start + depth).pinned(top, side.at_length(start + depth))


_OF_SIDE = 0.8
_LEFT = 1.6
"""A facing takes no more than the first share of the side above a side dart, and leaves
the second of it, cm (our own)."""


def lowered(top: Path, by: float, before: Path, after: Path) -> Path:
    """A top edge laid lower, from the line before it to the line after it."""
    wide = top.moved(shift(Vector(0.0, by))).run_on(1.0)
    starts, ends = wide.meets(before), wide.meets(after)
    if not starts or not ends:
        raise PaperError("the roll of the top edge misses its seams: make it smaller")
    (a, s), (b, t) = min(starts), max(ends)
    cut = wide.between(a, b).without_crumbs(_CRUMB)
    return cut.pinned(before.at_length(s), after.at_length(t))


def lowered_edges(piece: Piece, by: float) -> list[Edge]:
    """The top edge of a piece laid lower, no longer than before: a side that leans, and
    comes before it, moves in by what it would gain."""
    before, edge = piece.before(TOP), piece.edge(TOP)
    top = lowered(edge.path, by, before.path, piece.after(TOP).path)
    if "side" not in before.name:
        return [Edge(TOP, top)]
    top = top.between(max(0.0, top.length - edge.length), top.length)
    side = before.path.pinned(before.path.start, top.start)
    return [before.along(side), Edge(TOP, top)]


def _back_below_top(sheet: Sheet, n: Numbers) -> Piece:
    """BF of a strapless back, short of a zip; its edge crosses no lower than the point
    of the dart."""
    half, pd = sewn_back(sheet), sheet.points["Pd"]
    edge = half.centre.edge("cb")
    cb, kind = edge.path, EdgeKind.FOLD
    if edge.kind is EdgeKind.SEAM:
        cb, kind = beside_zip(cb), EdgeKind.FINISHED
    top = lowered(half.neck, n.rho, cb, half.side)
    depth = _depth_of(sewn_front(sheet), n)
    side = _below(half.side, top.end, depth)
    foot = at_level(cb, top.start.y + min(depth, pd.y - top.start.y))
    if foot is None:
        raise PaperError("the back facing reaches the waist: make it less deep")
    free = closed_back_free(half, n, side, foot, pd)
    up = cb.between(cb.length_to_point(foot), cb.length_to_point(top.start))
    up = up.pinned(foot, top.start).without_crumbs(_CRUMB)
    return Piece(
        "BF",
        "Back facing",
        (
            Edge(TOP, top),
            Edge("side", side),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("cb", up, kind),
        ),
    )


def _beside_armhole(half: SewnHalf, n: Numbers) -> Piece:
    """FF of a front whose neck is a cowl, with its own facing cut on: beside the
    armhole alone, over the outer half of the shoulder."""
    rolled = rolled_front(half, n.rho)
    side = foot_of_side(half, n.ff_side)
    tip, end = rolled.shoulder.start, rolled.shoulder.end
    inner = mix(tip, end, 0.5)
    leave = turned(direction(tip, end), 90)  # into the piece
    arrive = turned(side.end_direction, 90)  # towards the side
    free = plain_curve(inner, leave, 0.45, side.end, arrive, 0.45)
    return Piece(
        "FF",
        "Front facing",
        (
            straight("shoulder", tip, inner),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("side", side.reversed()),
            Edge("armhole", rolled.armhole),
        ),
    )


def back_facing(sheet: Sheet, n: Numbers, shoulder: float) -> Piece:
    """BF, its shoulder of the length given: it carries no ease (14.6). In an open back
    it runs down beside the slanted edge to the waist, or takes the whole centre; in a
    closed one it ends at the centre back, short of a zip."""
    if BACK_LINE in sheet.lines:
        return _back_below_top(sheet, n)
    if not sheet.piece("B" if "B" in sheet.pieces else "BC").has("shoulder"):
        return _below_edge(sheet, n)
    half, pd = sewn_back(sheet), sheet.points["Pd"]
    facing = _back(half, n, shoulder, pd)
    for _ in range(2):
        again = back_under(sheet, facing)
        if again.motion == half.motion:
            break
        half, facing = again, _back(again, n, shoulder, pd)
    return facing


def _below_edge(sheet: Sheet, n: Numbers) -> Piece:
    """BF of a back that is cut away at the upper edge: as deep below that as at the
    side, above the point of the dart. It is not rolled: no curve would take it up."""
    half, pd = sewn_back(sheet), sheet.points["Pd"]
    back, top = half.centre, half.neck
    side = foot_of_side(half, n.ff_side)
    neck, cb, kind = top, back.edge("cb").path, EdgeKind.FOLD
    if back.edge("cb").kind is EdgeKind.SEAM:
        line, kind = beside_zip(cb), EdgeKind.FINISHED
        s, t = at_zip(neck, line)
        neck = neck.split_at_length(s)[1]
        cb = line.between(0.0, t).pinned(line.start, neck.start)
    foot = at_level(cb, neck.start.y + n.ff_side)
    if foot is None:
        raise PaperError("the back facing reaches the waist: make it less deep")
    free = closed_back_free(half, n, side, foot, pd)
    up = cb.between(cb.length_to_point(foot), cb.length).pinned(foot, neck.start)
    up = up.without_crumbs(_CRUMB)
    return Piece(
        "BF",
        "Back facing",
        (
            Edge("neck", neck),
            Edge("side", side),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("cb", up, kind),
        ),
    )


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
        s, t = at_zip(neck, line)
        neck = neck.split_at_length(s)[1]
        cb = line.between(0.0, t).pinned(line.start, neck.start)
    level = half.neck.start.y + n.ff_cf
    if "r_lean" in n:  # below the armholes of a racer, which come in over the blades
        level = max(level, dart_point(half, pd).y)
    foot = at_level(cb, level)
    if foot is None:
        raise PaperError("the back facing reaches the waist: make it less deep")
    free = closed_back_free(half, n, side, foot, pd)
    up = cb.between(cb.length_to_point(foot), cb.length).pinned(foot, neck.start)
    up = up.without_crumbs(_CRUMB)
    return neck, (Edge("free", free, EdgeKind.FINISHED), Edge("cb", up, kind))


def beside_zip(cb: Path) -> Path:
    """The line that a facing keeps to beside the line of a zip, waist up to the neck,
    and on beyond it."""
    line = inset(cb, SHORT_OF_ZIP, SHORT_OF_ZIP)
    return line + Path.line(line.end, line.end + line.end_direction * 2.0)


def at_zip(neck: Path, line: Path) -> tuple[float, float]:
    """Where a facing's neck meets the line that it keeps to beside a zip: lengths along
    both. Raises PaperError for a neck that runs along the zip."""
    met = meetings(
        neck,
        line,
        "the back neck runs so steeply beside the zip that its facing does not "
        "reach it: make the neck (Db) less deep",
    )
    return met[0]
