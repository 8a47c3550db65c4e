"""The front lining of a cowl: the front without its folds, which a lining cut as the
shell would fill and hold (common practice, no source).

What lies outside the bust point is turned back until the neck is as wide as before the
cowl; its dart opens at the waist. Its upper edge, hemmed, hangs free behind the facing
that is cut on.
"""

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import (
    Path,
    Point,
    Vector,
    cross,
    direction,
    distance,
    from_pair,
    midpoint,
    turned,
)
from clothwright.features.bodice.waist_rules import waist_curve
from clothwright.features.linings.lining_strips import REACH
from clothwright.paper import Edge, EdgeKind, PaperError, Piece, Sheet, redraw, straight
from clothwright.rules import Numbers

_ABOVE_BP = 3.0
"""The upper edge of the lining stays so far above the bust point, cm (our own choice).
"""

_STEEPER, _LEAVES = 0.1, 10.0
"""The neck leaves the shoulder square, or steeper than straight to the centre by the
second, degrees, where square to it would not be so by the first, a sine."""

_FIRST, _LAST = 0.45, 0.6
"""Handles of the neck, shares of its depth and of its width."""

_LEAST_LEFT = 1.0
"""Of the shoulder the lining takes no less than this, cm (our own choice)."""

_GRAIN = 4.0
"""The grain line lies so far beside the centre front, cm."""


def without_cowl(sheet: Sheet, n: Numbers) -> Piece:
    """The front as it were without its cowl, its bust dart in the waist dart, or what
    the cowl left of it at the side."""
    f, bp = sheet.piece("F"), sheet.points["BP"]
    if not f.has("leg cf"):
        raise PaperError(
            "the front takes in nothing at the waist (fd), so the dart of the cowl's "
            "lining has no place: leave the lining off"
        )
    was, now = sheet.points["Nf′"], f.edge("shoulder").path.end
    back = from_pair(bp, now, bp, was)
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


def below_cowl(sheet: Sheet, front: Piece, n: Numbers) -> Piece:
    """What of a front without its cowl is lined: from where the back's lining begins on
    the shoulder to a neck that the cowl hides where it hangs, half way down its facing.
    """
    if "FF" in sheet.pieces:
        raise PaperError(
            "behind a cowl only a top with sleeves is lined: beside the facing of the "
            "armholes (facing at the side) nothing is left for its neck; take sleeves, "
            "or leave the lining off"
        )
    shoulder = front.edge("shoulder").path  # from the tip
    neck = front.edge("neck").path.start
    low = clip(n.sag + n.fc / 2, n.Df, n.y_BP - neck.y - _ABOVE_BP)
    foot = Point(n.X, neck.y + low)
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
    wide, deep = foot - kept.end
    level = Vector(_LAST * wide, 0.0)
    line = Path.cubic(kept.end, kept.end + out * (_FIRST * deep), foot - level, foot)
    new = [
        Edge("shoulder", kept),
        Edge("neck", line, EdgeKind.FINISHED),
        straight("cf", foot, front.edge("cf").path.end, EdgeKind.FOLD),
    ]
    table = redraw(Sheet().put(front), "F", [e.name for e in new], new)
    return table.piece("F")


def _faced(sheet: Sheet, most: float) -> float:
    """How far along the shoulder from the neck the back's lining begins, cm; `most`
    where the facing runs into the armhole."""
    line = sheet.edge("BF", "free").path.run_on(REACH)
    back = sheet.piece("B" if "B" in sheet.pieces else "BC")
    hits = line.meets(back.edge("shoulder").path)
    return hits[0][1] if hits else most
