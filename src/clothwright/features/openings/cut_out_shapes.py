"""The edge of a cut-out in the back: drop, oval or diamond (transformations 2)."""

import math
from enum import Enum

from clothwright.curves import Cubic, Path, Point, Vector, mirror_in
from clothwright.features.bodice.panel_lines import corner, rounded
from clothwright.features.necks.neck_shapes import drop
from clothwright.paper import PaperError, meetings
from clothwright.truing import Fillet

_WIDEST_DROP = 0.4
"""A drop is at most so wide to each side, a share of its length: wider it has no
straight sides (common practice, no source)."""

_ROUND = 4 / 3 * (math.sqrt(2) - 1)
"""Handle of a quarter of an ellipse, a share of its half axis."""

_CORNER = 1.0
"""Radius of a diamond's corner at the side, cm (truing 5: 0.6 at least)."""

SLASH = 0.5
"""So far from the centre stand the edges at the nape where the back is on the fold: it
is slashed there, and the cloth gives them no more to turn in, cm (common practice, no
source)."""

_ENDS = 0.05
"""A centre seam that bends in by less lies on the plumb line, cm."""

_REACH = 10.0
"""A line is run on so far to meet the neck, cm."""


class CutOutShape(Enum):
    """Shape of a cut-out in the back."""

    DROP = "drop"
    """Straight from a point at the top to a round foot, as a keyhole."""

    OVAL = "oval"
    DIAMOND = "diamond"
    """Straight sides, a point at the top and at the foot."""


HOW = {
    CutOutShape.DROP: "straight from the point to the circle that ends it",
    CutOutShape.OVAL: "square to the centre back at both ends, upright half way",
    CutOutShape.DIAMOND: "straight to half way and back, the corner a little rounded",
}


def half_edge(shape: CutOutShape, top: Point, foot: Point, half: float) -> Path:
    """Half the edge of a cut-out on a plumb centre line, from its foot up."""
    long = foot.y - top.y
    middle = Point(top.x + half, (top.y + foot.y) / 2)
    if shape is CutOutShape.DROP:
        if half > _WIDEST_DROP * long:
            raise PaperError(
                f"a drop {long:.1f} cm long is at most {_WIDEST_DROP * long:.1f} cm "
                "wide to each side: make it (co half) narrower or longer, or take an "
                "oval"
            )
        over = mirror_in(top, foot)
        return drop(top, long, half).moved(over).reversed()
    if shape is CutOutShape.DIAMOND:
        a, b = Path.line(foot, middle), Path.line(middle, top)
        return rounded(a, b, Fillet.of(corner(a, b), _CORNER, math.inf))
    across, up = Vector(_ROUND * half, 0.0), Vector(0.0, -_ROUND * long / 2)
    return Path(
        (
            Cubic(foot, foot + across, middle - up, middle),
            Cubic(middle, middle + up, top + across, top),
        )
    )


_NARROW = (
    "the slash above the cut-out runs beside it or beside the neck: make the cut-out "
    "(co half) or the neck wider"
)


def slashed(
    shape: CutOutShape, top: Point, foot: Point, half: float, neck: Path
) -> tuple[Path, Path, Path]:
    """The edge of a cut-out on the fold up to the slash above it, the slash up to the
    neck, and the neck from there."""
    plumb = Path.line(Point(SLASH, foot.y), Point(SLASH, neck.start.y - _REACH))
    apex = top
    for _ in range(8):  # the edge comes to the slash at the level of the top
        edge = half_edge(shape, apex, foot, half)
        s, t = meetings(edge, plumb, _NARROW)[-1]
        apex = Point(apex.x, apex.y + top.y - plumb.at_length(t).y)
    u, v = meetings(neck, plumb, _NARROW)[0]
    rest = neck.between(u, neck.length)
    slash = plumb.between(t, v)
    return edge.between(0.0, s).pinned(edge.start, slash.start), slash, rest


def on_centre(opening: Path, cb: Path) -> tuple[Path, float, float]:
    """The edge between its meetings with the centre back, which a seam may have shaped,
    and their lengths along that."""
    ends = 0.0, opening.length
    hits = [s for s, _ in opening.meets(cb)]
    if cb.nearest(opening.start)[1] > _ENDS or cb.nearest(opening.end)[1] > _ENDS:
        low = [s for s in hits if s < opening.length / 2]
        high = [s for s in hits if s > opening.length / 2]
        ends = max(low, default=ends[0]), min(high, default=ends[1])
    cut = opening.between(*ends)
    s0, s1 = cb.length_to_point(cut.start), cb.length_to_point(cut.end)
    return cut.pinned(cb.at_length(s0), cb.at_length(s1)), s0, s1
