"""The front lining of a cowl: the front without its folds, which a lining cut as the
shell would fill and hold (common practice, no source).

What lies outside the bust point is turned back until the neck is as wide as before the
cowl; its dart opens at the waist. Its upper edge, hemmed, hangs free behind the facing
that is cut on.

Of a top without sleeves the outer half of the shoulder is faced in one with the
armhole: there the lining hangs from the lower part of that facing's edge.
"""

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import (
    Motion,
    Path,
    Point,
    Vector,
    cross,
    direction,
    distance,
    from_pair,
    midpoint,
    mix,
    turned,
)
from clothwright.features.bodice.waist_rules import waist_curve
from clothwright.features.linings.lining_strips import REACH
from clothwright.features.roles import FREE_ABOVE
from clothwright.paper import (
    Edge,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    cut,
    meetings,
    redraw,
    spot_on,
    straight,
)
from clothwright.rules import Numbers

_ABOVE_BP = 3.0
"""The upper edge of the lining stays so far above the bust point, cm (our own choice).
"""

_STEEPER, _LEAVES = 0.1, 10.0
"""The neck leaves the shoulder square, or steeper than straight to the centre by the
second, degrees, where square to it would not be so by the first, a sine."""

_FIRST, _LAST = 0.45, 0.6
"""Handles of the neck, shares of its depth and of its width."""

_BENT = 0.6
"""Handles of a neck that begins on a facing, shares of the way to where its ends would
meet (our own)."""

_LEAST_LEFT = 1.0
"""Of the shoulder the lining takes no less than this, cm (our own choice)."""

_WIDE = 60.0
"""Lines that are met run so far, cm."""

_GRAIN = 4.0
"""The grain line lies so far beside the centre front, cm."""


def without_cowl(sheet: Sheet, n: Numbers) -> Piece:
    """The front as it were without its cowl, its bust dart in the waist dart, or what
    the cowl left of it at the side."""
    f, bp = sheet.piece("F"), sheet.points["BP"]
    if not f.has("leg cf"):
        raise PaperError(
            "bust (B) and waist (W) are so near to each other that the front takes in "
            "nothing at the waist, and the dart of the cowl's lining has no place: "
            "leave the lining off"
        )
    was, back = sheet.points["Nf′"], _turned_back(sheet)
    names = [e.name for e in f.edges]
    start, end = names.index("leg side"), names.index("shoulder")
    turn = [*f.edges[start:], *f.edges[:start]][: (end - start) % len(names) + 1]
    outer = [e.along(e.path.moved(back)) for e in turn]
    top, foot = Point(n.X, was.y), Point(n.X, f.edge("cf").path.end.y)
    line, leg = f.edge("waist").path, f.edge("leg cf").path
    down = turned(line.end_direction, -90)
    waist = Path((waist_curve(foot, line.end, Vector(0.0, 1.0), down, 0.0, 0.0),))
    a, b = waist.end, outer[0].path.end
    point = bp + direction(bp, midpoint(a, b)) * distance(bp, leg.end)
    neck = outer[-1].path.end
    edges = (
        straight("leg cf", a, point),
        straight("leg side", point, b),
        *outer[1:],
        straight("neck", neck, top),
        straight("cf", top, foot, EdgeKind.FOLD),
        Edge("waist", waist),
    )
    x = n.X - _GRAIN
    return Piece("F", f.name, edges, grain=(Point(x, foot.y), Point(x, top.y)))


def _turned_back(sheet: Sheet) -> Motion:
    """What turns the paper outside the bust point back, as it was before the cowl."""
    bp, was = sheet.points["BP"], sheet.points["Nf′"]
    return from_pair(bp, sheet.piece("F").edge("shoulder").path.end, bp, was)


def below_cowl(sheet: Sheet, front: Piece, n: Numbers) -> Piece:
    """What of a front without its cowl is lined: from where the back's lining begins on
    the shoulder to a neck that the cowl hides where it hangs, half way down its facing.
    """
    if "FF" in sheet.pieces:
        return _beside_armhole(sheet, front, n)
    shoulder = front.edge("shoulder").path  # from the tip
    neck = front.edge("neck").path.start
    foot = _foot(neck, n)
    left = shoulder.length - _faced(sheet, shoulder.length)
    if left < _LEAST_LEFT:
        raise PaperError(
            f"the neck facing is {n.nf_tip:.1f} cm wide at the shoulder, which is "
            f"{shoulder.length:.1f} cm long behind the cowl: make it (nf shoulder) "
            f"{max(0.0, n.nf_tip + left - _LEAST_LEFT):.1f} cm or less, or leave the "
            "lining off"
        )
    kept = shoulder.split_at_length(left)[0]
    out, chord = turned(kept.end_direction, 90), direction(kept.end, foot)
    if cross(out, chord) > -_STEEPER:  # no wave in a deep neck
        out = turned(chord, _LEAVES)
    line = _neck(kept.end, out, foot)
    new = [
        Edge("shoulder", kept),
        Edge("neck", line, EdgeKind.FINISHED),
        straight("cf", foot, front.edge("cf").path.end, EdgeKind.FOLD),
    ]
    table = redraw(Sheet().put(front), "F", [e.name for e in new], new)
    return table.piece("F")


def _foot(neck: Point, n: Numbers) -> Point:
    """Where the neck of the lining ends at the centre: half way down the facing as it
    hangs, and above the bust point."""
    low = clip(n.sag + n.fc / 2, n.Df, n.y_BP - neck.y - _ABOVE_BP)
    return Point(n.X, neck.y + low)


def _neck(start: Point, out: Vector, foot: Point) -> Path:
    """The neck of the lining, level at the centre."""
    wide, deep = foot - start
    level = Vector(_LAST * wide, 0.0)
    return Path.cubic(start, start + out * (_FIRST * deep), foot - level, foot)


# -- without sleeves -------------------------------------------------------------------
def _beside_armhole(sheet: Sheet, front: Piece, n: Numbers) -> Piece:
    """What is left beside and below the facing of the armhole, up to a neck that begins
    on its edge."""
    neck = front.edge("neck").path.start
    foot = _foot(neck, n)
    free = sheet.edge("FF", "free").path.moved(_turned_back(sheet))
    start = _begins(free, foot)
    # the shoulder of the paper turned back lies further off than any other edge
    wide = free.run_on(3 * REACH)
    hits = sorted((s, e.name) for e in front.edges for s, _ in wide.meets(e.path))
    (s0, e0), (s1, e1) = hits[0], hits[-1]
    parts = cut(
        Sheet().put(front),
        front.code,
        wide.between(s0, s1),
        spot_on(front, e0, wide.at_length(s0)),
        spot_on(front, e1, wide.at_length(s1)),
        edge="join",
        seam="join",
        seam_name="facing join",
        into=(("one", ""), ("two", "")),
    )
    below = next(q for q in parts.pieces.values() if q.has("waist"))
    join = below.edge("join").path  # from the side up to the shoulder
    join = join.between(0.0, join.length_to_point(start))
    new = [
        Edge("join", join),
        Edge("neck", _hollow(join.end, foot), EdgeKind.FINISHED),
        straight("cf", foot, below.edge("cf").path.end, EdgeKind.FOLD),
    ]
    run = ["join", "shoulder", "neck", "cf"]
    return redraw(Sheet().put(below), below.code, run, new).piece(below.code)


def _hollow(start: Point, foot: Point) -> Path:
    """A neck that leaves a little steeper than straight, and bends one way to level."""
    out = turned(direction(start, foot), _LEAVES)
    corner = start + out * ((foot.y - start.y) / out.y)
    return Path.cubic(start, mix(start, corner, _BENT), mix(foot, corner, _BENT), foot)


def _begins(free: Path, foot: Point) -> Point:
    """Where the neck of the lining begins on the edge of the facing: half way down from
    the shoulder to its own foot."""
    level = (free.start.y + foot.y) / 2
    across = Path.line(Point(foot.x - _WIDE, level), Point(foot.x, level))
    hits = meetings(
        free,
        across,
        "the facing of the armholes ends above the neck of the cowl's lining: make "
        "it (facing at the side) deeper, or leave the lining off",
    )
    return free.at_length(hits[0][0])


def facing_divided(sheet: Sheet, n: Numbers) -> Sheet:
    """The facing of the armhole with its free edge divided where the lining's neck
    begins: above that it stays loose."""
    facing = sheet.piece("FF")
    free, back = facing.edge("free").path, _turned_back(sheet)
    foot = _foot(sheet.points["Nf′"], n)
    at = back.inverse()(_begins(free.moved(back), foot))
    above, below = free.split_at_length(free.length_to_point(at))
    new = [
        Edge(FREE_ABOVE, above, EdgeKind.FINISHED),
        Edge("free", below, EdgeKind.FINISHED),
    ]
    return redraw(sheet, "FF", ["free"], new)


def _faced(sheet: Sheet, most: float) -> float:
    """How far along the shoulder from the neck the back's lining begins, cm; `most`
    where the facing runs into the armhole."""
    line = sheet.edge("BF", "free").path.run_on(REACH)
    back = sheet.piece("B" if "B" in sheet.pieces else "BC")
    hits = line.meets(back.edge("shoulder").path)
    return hits[0][1] if hits else most
