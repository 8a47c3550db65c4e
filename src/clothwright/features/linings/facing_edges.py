"""The free edges of the facings (first garment 14.2, 14.3).

A free edge crosses a panel seam only where the paper of the two panels lies edge to
edge: in front 2.5 above the bust point, at the back not below the point of the waist
dart. Where a plain curve would pass lower it is led through that place.
"""

from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    ahead,
    direction,
    distance,
    turned,
)
from clothwright.features.linings.sewn_halves import SewnHalf, along_x, at_level
from clothwright.features.openings.open_back_findings import narrower_strip
from clothwright.paper import Edge, EdgeKind, PaperError
from clothwright.rules import Numbers

CLEAR_OF_BP = 2.5
"""The front's free edge passes this far above the bust point, cm (14.2)."""

_CLEAR_OF_PD = 0.8
"""The back's crosses the panel seam this far above the dart's point, cm: there the
rounding of the side back begins."""

_LEFT_OF_SIDE = 1.0
"""What a facing leaves of the side below it at least, cm (our own)."""

_FLAT = (0.40, 0.55, 0.70, 0.85)
"""How long the front's edge runs on square to the side, as a share of its width: the
first by which it clears the armhole, which is sharp over a full bust (our own)."""

_CLEAR_OF_ARMHOLE = 1.5
"""A facing is so wide beside the armhole at least, cm (our own)."""

_LEVEL = Vector(-1.0, 0.0)
"""Towards the centre back."""


def foot_of_side(half: SewnHalf, depth: float) -> Path:
    """The facing's side, from the underarm down. Raises PaperError."""
    long = half.side.length
    if depth > long - _LEFT_OF_SIDE:
        raise PaperError(
            f"the facing is {depth:.1f} cm deep at the side, which is {long:.1f} cm "
            "long: make it (facing at the side) less deep, or measure NWB and AS again"
        )
    return half.side.between(0.0, depth)


def front_free(half: SewnHalf, n: Numbers, side: Path) -> Path:
    """From the fold, level there, to the side, square there (14.2)."""
    c, f1 = half.neck.end, side.end
    foot = Point(c.x, c.y + n.ff_cf)
    arrive = turned(side.end_direction, -90)  # towards the centre front
    limit = _limit(half, Point(n.x_BP, n.y_BP - CLEAR_OF_BP))
    back, wide = arrive * -1.0, foot.x - f1.x
    for flat in _FLAT:
        free = plain_curve(foot, _LEVEL, 0.45, f1, back, flat, wide)
        if _passes_below(free, half, limit):
            inner = plain_curve(foot, _LEVEL, 0.45, limit, _LEVEL, 0.45)
            free = inner + plain_curve(limit, _LEVEL, 0.45, f1, back, flat)
        if _clears(free, half.armhole):
            break
    return free


def _clears(free: Path, armhole: Path) -> bool:
    """True for a free edge that keeps clear of the hollow of the armhole."""
    places = (armhole.length * i / 10 for i in range(2, 7))
    return free.keeps_off(armhole, _CLEAR_OF_ARMHOLE, places)


def closed_back_free(
    half: SewnHalf, n: Numbers, side: Path, foot: Point, pd: Point
) -> Path:
    """From the side, square there, to the centre back, level there."""
    f1, leave = side.end, turned(side.end_direction, 90)
    plain = plain_curve(f1, leave, 0.40, foot, _LEVEL, 0.45, f1.x - foot.x)
    limit = dart_point(half, pd)
    if not _passes_below(plain, half, limit):
        return plain
    way = direction(f1, foot)
    return Path(
        (
            *plain_curve(f1, leave, 0.40, limit, way, 0.40).segments,
            *plain_curve(limit, way, 0.40, foot, _LEVEL, 0.45).segments,
        )
    )


def open_back_free(
    half: SewnHalf, n: Numbers, side: Path, pd: Point
) -> tuple[tuple[Edge, ...], Path]:
    """From the side, square there, level over the panel seam and down beside the
    slanted edge to the waist; and the part of the waist from there to that edge.

    Where the strip would leave less than `n.strip_left` of the back beside it, the
    facing takes the whole back: its edge turns at the panel seam and runs down that
    (14.3), as an edge "panel" of its own.
    """
    slant, panel = half.slant, half.panel
    assert slant is not None
    assert panel is not None
    waist = half.centre.edge("waist").path  # panel to slant
    f1, leave = side.end, turned(side.end_direction, 90)
    over = dart_point(half, pd)
    upper = plain_curve(f1, leave, 0.42, over, _LEVEL, 0.42)
    below = panel.between(panel.length_to_point(over), panel.length)
    if _takes_whole_back(half, n, over, below):
        turned_down = Edge("panel", below.pinned(over, waist.start), EdgeKind.FINISHED)
        return (Edge("free", upper, EdgeKind.FINISHED), turned_down), waist
    strip = _strip(half, n.sw, over.y)
    reach = over.x - strip.end.x
    turn = strip.end + direction(strip.end, strip.start) * reach
    down = direction(turn, strip.start)
    corner = plain_curve(over, _LEVEL, 0.55, turn, down, 0.55, reach)
    free = upper + corner + Path((Line(turn, strip.start),))
    foot = waist.between(waist.length - n.sw, waist.length)
    foot = foot.pinned(strip.start, foot.end)
    return (Edge("free", free, EdgeKind.FINISHED),), foot


def _takes_whole_back(half: SewnHalf, n: Numbers, over: Point, below: Path) -> bool:
    """True when the strip of an open back's facing comes too near to the panel seam
    `below` the place where the facing's edge is `over` it."""
    waist = half.centre.edge("waist").path
    if waist.length - n.sw < n.strip_left:
        return True
    strip = _strip(half, n.sw, over.y)
    return narrower_strip(strip, below, n.strip_left) is not None


def _strip(half: SewnHalf, width: float, level: float) -> Path:
    """The strip's edge from the waist up to a level, beside the slanted edge."""
    slant, waist = half.slant, half.centre.edge("waist").path
    assert slant is not None
    foot = waist.at_length(waist.length - width)
    up = direction(slant.start, slant.end)
    return Path.line(foot, foot + up * ((foot.y - level) / -up.y))


def dart_point(half: SewnHalf, pd: Point) -> Point:
    """Where the back's edge may cross at the lowest: by the point of the waist dart."""
    panel = half.panel
    if panel is None:
        return Point(pd.x, pd.y - _CLEAR_OF_PD)
    return panel.at_length(panel.length_to_point(pd) - _CLEAR_OF_PD)


def _limit(half: SewnHalf, place: Point) -> Point:
    """That place, on the panel seam where there is one."""
    on = at_level(half.panel, place.y) if half.panel is not None else place
    return on or place


def _passes_below(free: Path, half: SewnHalf, limit: Point) -> bool:
    """True when a free edge crosses the panel seam, or the plumb line through the
    dart, below a place."""
    if half.panel is not None:
        return any(
            half.panel.at_length(s).y > limit.y for s, _ in half.panel.meets(free)
        )
    at = along_x(free, limit.x)
    return at is not None and at.y > limit.y


def plain_curve(
    a: Point,
    leave: Vector,
    out: float,
    b: Point,
    arrive: Vector,
    back: float,
    reach: float | None = None,
) -> Path:
    """A curve that leaves and arrives in given directions, its handles shares of
    `reach`, which is the distance when not given."""
    w = distance(a, b) if reach is None else reach
    return Path((Cubic(a, ahead(a, leave, out * w), ahead(b, arrive, -(back * w)), b),))
