"""Fullness let into a sleeve: its cap opened for gathers, its hem flared.

Transformations 4 of our notes on common flat-cutting practice: slash and spread, on
paper. Lengths in cm.
"""

import math
from dataclasses import replace
from itertools import accumulate, pairwise

from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    degrees_between,
    distance,
    turned,
)
from clothwright.features.chains import BACK_NOTCH, FRONT_NOTCH
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    InnerLine,
    On,
    Piece,
    Verb,
    meetings,
    redraw,
    spot_on,
    spread,
)

SLASHES, _WEDGES = 8, 24.0
"""A hem is flared by so many slashes, or by so many for each of so many cm that it is
opened by: wider wedges would kink the cap, which loses length when it is blended (our
own choice)."""

_LEVEL = 0.5
"""The biceps line is kept while its ends rise or fall by no more, cm."""

_BESIDE_NOTCH = 1.2
"""The cap is as it was to this far above its notches, cm; above it is redrawn."""

_ROUND = 0.55
"""Handles of the raised crown, share of its chord: rounder than the plain cap, as it
stands away from the arm."""

_KINK = 0.2
"""A joint that turns by more than this is blended, degrees."""

_UNSEEN = 0.02
"""A rounded kink may take so much of a line's length, cm."""

Size = str | float
"""A number's key, or a length in cm."""


def open_head(d: Drafting) -> None:
    """Slash from the top of the cap to both seams, at the elbow or at the hem; open the
    top by `puff`, half to each side; raise it by `rise` and redraw it from notch to
    notch. What lies below the slashes, and both seams, keep their lengths."""
    n = d.n
    d.part = "sleeve"
    before = d.sheet.piece("SL")
    k = before.edge("cap back").path.end
    at_elbow = n.under_arm > n.y_E + 1.0
    sheet = d.sheet
    for half, side in (("cap back", "underarm back"), ("cap front", "underarm front")):
        p = sheet.piece("SL")
        hinge = _at_level(p, side, n.y_E) if at_elbow else _foot(p, side)
        sheet = spread(
            sheet,
            "SL",
            CornerAfter("cap back"),
            hinge,
            at_start=n.puff / 2,
            at_end=0.0,
            moving=half,
        )
        run = (
            ["cap back", "gap start"]
            if side.endswith("back")
            else ["gap start", "cap front"]
        )
        p = sheet.piece("SL")
        whole = p.edge(run[0]).path + p.edge(run[1]).path
        sheet = redraw(sheet, "SL", run, [Edge(half, whole)])
    where = "the elbow" if at_elbow else "the hem"
    d.lay(
        Verb.SPREAD,
        sheet,
        "SL",
        f"slash from K to both ends of {where}, not through them, and swing the two "
        "halves of the cap apart",
        amounts=(("in all at the top", "puff"),),
        frm=("K",),
    )
    p = sheet.piece("SL")
    ends = p.edge("cap back").path.start, p.edge("cap front").path.end
    sheet = sheet.put(p.with_lines(InnerLine("biceps line", Path.line(*ends))))
    top = Point(k.x, k.y - n.rise)
    back, front = p.edge("cap back").path, p.edge("cap front").path
    low = back.between(0.0, BACK_NOTCH + 0.5 + _BESIDE_NOTCH)
    last = front.length - FRONT_NOTCH - _BESIDE_NOTCH
    high = front.between(last, front.length)
    level = Vector(1.0, 0.0)
    rising = _crown(low.end, low.end_direction, top, level)
    falling = _crown(
        high.start, high.start_direction * -1.0, top, level * -1.0
    ).reversed()
    new = [Edge("cap back", low + rising), Edge("cap front", falling + high)]
    sheet = redraw(sheet, "SL", ["cap back", "cap front"], new)
    d.lay(
        Verb.REDRAW,
        sheet,
        "SL",
        "the cap from notch to notch, level at the top",
        amounts=(("above K", "rise"),),
        lines=tuple(e.path for e in new),
    )
    if not at_elbow:
        redraw_hem(d)


def _crown(a: Point, way: Vector, top: Point, level: Vector) -> Path:
    """A round line from `a` to the top, which it reaches level."""
    h = _ROUND * distance(a, top)
    return _parted(Cubic(a, a + way * h, top - level * h, top))


def _foot(p: Piece, side: str) -> CornerAfter:
    """The corner of the hem at this seam."""
    back = side.endswith("back")
    return CornerAfter(p.before(side).name if back else side)


def _at_level(p: Piece, side: str, y: float) -> On | CornerAfter:
    """The place of a seam at a level; its end where it ends there."""
    path = p.edge(side).path
    low = path.start if side.endswith("back") else path.end
    if low.y <= y + 0.05:
        return _foot(p, side)
    level = Path.line(Point(-99.0, y), Point(99.0, y))
    fault = (
        "the elbow lies above the underarm of this sleeve: measure SE and AS again, or "
        "make the cap lower"
    )
    return On(side, meetings(path, level, fault)[0][0])


def flare(d: Drafting, drop: Size = 0.0) -> None:
    """Slash from the hem up to the cap, not through it, and open the hem by `hem_open`
    in wedges of one size; blend the cap, whose length is kept, and redraw the hem,
    square to the seams, with `drop` more length behind."""
    n = d.n
    d.part = "sleeve"
    sheet = d.sheet
    plain = sheet.piece("SL")
    hem = plain.edge("hem").path
    right, left = hem.start.x, hem.end.x
    count = SLASHES * max(1, math.ceil(n.hem_open / _WEDGES))
    places = [left + (right - left) * (i + 0.5) / count for i in range(count)]
    middle = (left + right) / 2
    whole = sum(_slash(plain, x).length for x in places)
    longest = max(_slash(plain, x).length for x in places)
    for x in sorted(places, key=lambda x: -abs(x - middle)):
        p = sheet.piece("SL")
        slash = _slash(p, x)
        sheet = spread(
            sheet,
            "SL",
            spot_on(p, "hem", slash.end),
            spot_on(p, _half(p, x), slash.start),
            at_start=n.hem_open * slash.length / whole,
            at_end=0.0,
            moving="underarm front" if x > middle else "underarm back",
        )
    p = sheet.piece("SL")
    back, front = p.edge("cap back").path, p.edge("cap front").path
    halves = blended(back + front).split_at_length(back.length)
    new = map(Edge, ("cap back", "cap front"), halves)
    sheet = redraw(sheet, "SL", ["cap back", "cap front"], list(new))
    p = sheet.piece("SL")
    ends = p.edge("cap back").path.start, p.edge("cap front").path.end
    if max(abs(end.y) for end in ends) > _LEVEL:  # no level line is left to tell
        sheet = sheet.put(replace(p, lines=()))
    d.lay(
        Verb.SPREAD,
        sheet,
        "SL",
        f"slash plumb from the hem to the cap, not through it, {count} times, and "
        "open every slash by the same wedge; blend the cap over the slashes",
        amounts=(
            ("in all at the hem", "hem_open"),
            ("at the longest slash", n.hem_open * longest / whole),
        ),
    )
    d.sheet = sheet
    redraw_hem(d, drop)


def _half(p: Piece, x: float) -> str:
    """The half of the cap that lies above `x`."""
    return "cap front" if x > p.edge("cap back").path.end.x else "cap back"


def _slash(p: Piece, x: float) -> Path:
    """A plumb line from the cap to the hem."""
    line = Path.line(Point(x, -99.0), Point(x, 199.0))
    cap, hem = p.edge(_half(p, x)).path, p.edge("hem").path
    fault = (
        "a slash from the hem would miss the cap, which is narrower than the hem: "
        "taper the sleeve (tp) more, or widen the hem by less"
    )
    top, foot = meetings(line, cap, fault)[0][0], meetings(line, hem, fault)[-1][0]
    return Path.line(line.at_length(top), line.at_length(foot))


def redraw_hem(d: Drafting, drop: Size = 0.0) -> None:
    """Draw the hem anew, square to both seams, with `drop` more length behind."""
    d.part = "sleeve"
    p = d.sheet.piece("SL")
    hem = Edge("hem", _hem(p, d["Hc"], d.size(drop)), p.edge("hem").kind)
    d.lay(
        Verb.REDRAW,
        redraw(d.sheet, "SL", ["hem"], [hem]),
        "SL",
        "the hem, square to both seams",
        amounts=(("lower in the middle of the back half", drop),)
        if d.size(drop)
        else (),
        lines=(hem.path,),
    )


def _hem(p: Piece, hc: Point, drop: float) -> Path:
    """The hem from front to back, level at the centre."""
    hf, hb = p.edge("hem").path.start, p.edge("hem").path.end
    front, back = p.edge("underarm front").path, p.after("hem").path
    square_f = turned(front.end_direction, 90)
    square_b = turned(back.start_direction, -90)
    half = _swung(hf, square_f, hc, Vector(-1.0, 0.0))
    if drop < 0.01:
        return half + _swung(hc, Vector(-1.0, 0.0), hb, square_b)
    plain = _swung(hc, Vector(-1.0, 0.0), hb, square_b)
    at = plain.at_length(plain.length / 2)
    way = plain.direction_at_length(plain.length / 2)
    low = at + turned(way, -90) * drop
    return (
        half + _swung(hc, Vector(-1.0, 0.0), low, way) + _swung(low, way, hb, square_b)
    )


def _swung(a: Point, leave: Vector, b: Point, arrive: Vector) -> Path:
    """A curve that leaves `a` and reaches `b` along two ways."""
    reach = 0.36 * distance(a, b)
    return Path.cubic(a, a + leave * reach, b - arrive * reach, b)


def blended(path: Path) -> Path:
    """The path with its kinks rounded, each from halfway to the kink before it to
    halfway to the next; the length stays, but for a trifle at a kink."""
    joints = zip(path.segments, path.segments[1:], strict=False)
    ends = accumulate(s.length for s in path.segments)
    kinks = [
        s
        for s, (a, b) in zip(ends, joints, strict=False)
        if degrees_between(a.end_direction, b.start_direction) >= _KINK
    ]
    if not kinks:
        return path
    all_ = (0.0, *kinks, path.length)
    halfway = [(a + b) / 2 for a, b in pairwise(all_)]
    whole = path.between(0.0, halfway[0])
    for kink, (a, b) in zip(kinks, pairwise(halfway), strict=True):
        whole += _rounded(path.between(a, kink), path.between(kink, b))
    whole += path.between(halfway[-1], path.length)
    return whole.pinned(path.start, path.end)


def _rounded(first: Path, last: Path) -> Path:
    """One curve in place of two that meet in a kink, as long as both; where both are so
    flat that none is, the plain one, which takes a trifle of their length."""
    a, b = first.start, last.end
    leave, arrive = first.start_direction, last.end_direction
    whole = first.length + last.length

    def of(h: float) -> Cubic:
        return Cubic(a, a + leave * h, b - arrive * h, b)

    def off(h: float) -> float:
        return of(h).length - whole

    reach = distance(a, b)
    h = by_trial(off, 0.15 * reach, 0.6 * reach)
    if h is None and abs(off(reach / 3)) < _UNSEEN:
        h = reach / 3
    if h is None:  # it bends more in its middle then
        h = by_trial(off, 0.6 * reach, 0.9 * reach)
    return _parted(of(reach / 3 if h is None else h))


def _parted(curve: Cubic) -> Path:
    """The curve, in two where it turns from hollow to round."""
    if curve.curvature(0.02) * curve.curvature(0.98) >= 0:
        return Path((curve,))
    t = by_trial(curve.curvature, 0.02, 0.98)
    return Path((curve,)) if t is None else Path((curve.before(t), curve.after(t)))
