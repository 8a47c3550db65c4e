"""The bust dart at work: slashed for, turned, set back, laid open, and led back.

A dart moves about the bust point. The front is slashed from the new place to it, and
what lies between the slash and the side dart turns about it: one closes by the angle
by which the other opens (transformations 1.1). The angle is kept, not the intake,
which is `2·|PQ|·sin(θ/2)` at a place `|PQ|` away.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum
from itertools import pairwise

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    degrees_between,
    direction,
    distance,
    midpoint,
    turned,
)
from clothwright.features.wholes import before_yoke
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Ease,
    Edge,
    On,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    pivot,
    redraw,
    spread,
    straight,
)
from clothwright.paper.drafting import Size


class DartPlace(Enum):
    """Where the bust dart opens."""

    SHOULDER = "shoulder"
    NECK = "neck"
    ARMHOLE = "armhole"
    WAIST = "waist"
    """It opens the waist dart wider."""

    YOKE = "yoke"
    """Below the seam of a front yoke."""


@dataclass(frozen=True)
class Opened:
    """A dart at a place of the front: names of its edges, clockwise round the loop."""

    edge: str
    """The edge that it divides."""

    outer: str
    leg_outer: str
    leg_cf: str
    inner: str
    dart: str
    """Code and name of the dart as a seam of the front with itself."""

    mark: str

    @property
    def run(self) -> list[str]:
        """Its four edges."""
        return [self.outer, self.leg_outer, self.leg_cf, self.inner]


OPENED: dict[DartPlace, Opened] = {
    DartPlace.SHOULDER: Opened(
        "shoulder",
        "shoulder",
        "dart shoulder tip",
        "dart shoulder cf",
        "shoulder neck",
        "bust dart at the shoulder",
        "Qs",
    ),
    DartPlace.NECK: Opened(
        "neck",
        "neck side",
        "dart neck tip",
        "dart neck cf",
        "neck",
        "bust dart at the neck",
        "Qn",
    ),
    DartPlace.ARMHOLE: Opened(
        "armhole",
        "armhole low",
        "dart armhole low",
        "dart armhole high",
        "armhole",
        "bust dart at the armhole",
        "Qa",
    ),
    DartPlace.YOKE: Opened(
        "yoke",
        "yoke side",
        "dart yoke side",
        "dart yoke cf",
        "yoke",
        "bust dart at the yoke",
        "Qy",
    ),
    DartPlace.WAIST: Opened(
        "waist", "waist", "leg cf", "leg side", "waist side", "front waist dart", ""
    ),
}

SIDE = "side dart"
_SLIT = ["side low", "dart low", "dart high", "side high"]


# -- turning ---------------------------------------------------------------------------
def dart_angle_of(front: Piece, low: str, high: str) -> float:
    """Degrees by which a dart is open, from its two legs that meet at its point."""
    at = front.edge(low).path.end
    a, b = front.edge(low).path.start, front.edge(high).path.end
    return degrees_between(a - at, b - at)


def lead(d: Drafting, place: DartPlace, at: Point, degrees: float, key: str) -> None:
    """Lead so much of the side dart, in degrees, to a place of the front's outline;
    `key` names the number that tells it."""
    o = OPENED[place]
    if place is DartPlace.WAIST:
        sheet = pivot(d.sheet, "F", "leg side", "dart low", degrees)
        says = "side of the front turned up about BP; the waist dart opens by as much"
    else:
        sheet = slashed(d.sheet, o, at, d["BP"])
        d.lay(
            Verb.CUT,
            sheet,
            "F",
            f"front slashed from {o.mark} to BP",
            lines=(Path.line(at, d["BP"]),),
        )
        sheet = pivot(sheet, "F", "dart high", o.leg_outer, -degrees)
        sheet = sheet.sew(dart_seam(o.dart, o.leg_cf, o.leg_outer, place.value))
        says = "part beside the slash turned about BP until the side dart is closed"
    opened = distance(*_mouth(sheet.piece("F"), o))
    d.lay(
        Verb.MOVE,
        sheet,
        "F",
        says,
        amounts=(("by {}", key), ("it is open there by {}", opened)),
        frm=("BP",),
    )


def slashed(sheet: Sheet, o: Opened, at: Point, apex: Point) -> Sheet:
    """The front with a slash, two legs that lie on each other, from `at` to `apex`."""
    path = sheet.edge("F", o.edge).path
    a, b = path.split_at_length(path.length_to_point(at))
    new = [
        Edge(o.outer, a),
        straight(o.leg_outer, a.end, apex),
        straight(o.leg_cf, apex, b.start),
        Edge(o.inner, b),
    ]

    def both(run: Run) -> tuple[Run, ...]:
        if run.edge != o.edge:
            return (run,)
        runs = tuple(Run("F", e, run.backward) for e in (o.outer, o.inner))
        return runs[::-1] if run.backward else runs

    return redraw(sheet, "F", [o.edge], new).with_runs(both, "F")


def dart_seam(name: str, left: str, right: str, start: str) -> Seam:
    """A dart of the front, `left` its second leg round the loop, `right` its first."""
    return Seam(
        name,
        name,
        (Run("F", left, True),),
        (Run("F", right),),
        start,
        "point",
        Ease.about(0.0, 0.1),
        kind=SeamKind.DART,
    )


def close_side(d: Drafting) -> None:
    """Rule the side through over the side dart, of which nothing is left."""
    f = d.sheet.piece("F")
    side = straight("side", f.edge("side low").path.start, f.edge("side high").path.end)
    sheet = redraw(d.sheet.unsew(SIDE), "F", _SLIT, [side])
    d.lay(Verb.REDRAW, sheet, "F.side", "side in one line, its dart closed")


def set_back(d: Drafting, low: str, high: str, mark: str, back: Size) -> None:
    """End a dart short of the bust point, half way between its legs."""
    f = d.sheet.piece("F")
    a, b = f.edge(low).path.start, f.edge(high).path.end
    bp = d["BP"]
    apex = d.found(
        mark,
        bp + direction(bp, midpoint(a, b)) * d.size(back),
        "stitched end of the dart",
        amounts=(("from BP", back),),
        detail="half way between the legs",
    )
    legs = [straight(low, a, apex), straight(high, apex, b)]
    sheet = redraw(d.sheet, "F", [low, high], legs)
    d.lay(Verb.REDRAW, sheet, "F", f"legs of the dart to {mark}")


def _mouth(front: Piece, o: Opened) -> tuple[Point, Point]:
    return front.edge(o.leg_outer).path.start, front.edge(o.leg_cf).path.end


# -- laid open -------------------------------------------------------------------------
def opened_places(front: Piece) -> Iterator[Opened]:
    """The places other than side and waist at which the front has a dart."""
    for o in OPENED.values():
        if o.edge != "waist" and front.has(o.leg_cf):
            yield o


def bridged(front: Piece, o: Opened, reach: float) -> Path:
    """The divided edge in one line over an open dart: its parts as they are, but for
    `reach` to both sides of the mouth, where it runs in a smooth curve that rises over
    the mouth (1.6)."""
    first, last = front.edge(o.outer).path, front.edge(o.inner).path
    a, b = min(reach, 0.8 * first.length), min(reach, 0.8 * last.length)
    head, _ = first.split_at_length(first.length - a)
    _, tail = last.split_at_length(b)
    p, q = head.end, tail.start
    u, v = head.end_direction, tail.start_direction
    handle = _ARC * distance(p, q)
    over = Cubic(p, p + u * handle, q - v * handle, q)
    return head + Path(one_way_each(over)) + tail


def one_way_each(curve: Cubic) -> tuple[Cubic, ...]:
    """A curve divided where it changes its bend, as over gathers it may: each part
    bends one way."""
    steps = [i / _STEPS for i in range(1, _STEPS)]
    for s, t in pairwise(steps):
        if curve.curvature(s) * curve.curvature(t) < 0:
            for _ in range(40):
                middle = (s + t) / 2
                same = curve.curvature(s) * curve.curvature(middle) > 0
                s, t = (middle, t) if same else (s, middle)
            first, rest = curve.divided(s)
            return (first, *one_way_each(rest))
    return (curve,)


_STEPS = 24
"""Places at which a curve is asked for its bend."""


_ARC = 0.35
"""Handle of a curve that is nearly an arc, share of its chord."""


def keep_open(sheet: Sheet, o: Opened) -> Sheet:
    """The sheet that remembers how a dart lay before it was gathered."""
    f = sheet.piece("F")
    return sheet.drawn(**{f"gathered {name}": f.edge(name).path for name in o.run})


# -- led back --------------------------------------------------------------------------
def as_drafted(sheet: Sheet) -> Piece:
    """The front in one piece with its bust dart at the side again, where facings and
    linings are traced; a dart led to the waist stays there."""
    f, bp = before_yoke(sheet, "F"), sheet.points["BP"]
    for o in OPENED.values():
        if f"gathered {o.leg_cf}" in sheet.lines and not f.has(o.leg_cf):
            if o.edge == "yoke":  # the front is remembered without it
                continue
            name = next(e for e in (o.edge, o.outer) if f.has(e))
            new = [Edge(e, sheet.lines[f"gathered {e}"]) for e in o.run]
            f = redraw(Sheet().put(f), "F", [name], new).piece("F")
    table = Sheet().put(f)
    for o in opened_places(f):
        a, b = _mouth(table.piece("F"), o)
        legs = [straight(o.leg_outer, a, bp), straight(o.leg_cf, bp, b)]
        table = redraw(table, "F", [o.leg_outer, o.leg_cf], legs)
        if table.piece("F").has("side"):
            table = _slit(table, sheet.points["U2"], bp)
        else:
            table = _to_point(table, bp)
        turn = dart_angle_of(table.piece("F"), o.leg_outer, o.leg_cf)
        table = pivot(table, "F", "dart high", o.leg_outer, turn)
        whole = table.edge("F", o.outer).path, table.edge("F", o.inner).path
        path = whole[0] + whole[1].pinned(whole[0].end, whole[1].end)
        table = redraw(table, "F", o.run, [Edge(o.edge, path)])
    return replace(table.piece("F"), grain=f.grain)


def led_elsewhere(sheet: Sheet) -> bool:
    """True for a front in one piece whose bust dart opens elsewhere than at the side
    and the waist, or did before it was gathered."""
    if "F" not in sheet.pieces:
        return False
    f = sheet.piece("F")
    gathered = (o.leg_cf for o in OPENED.values() if o.edge != "waist")
    return any(opened_places(f)) or any(
        f"gathered {e}" in sheet.lines for e in gathered
    )


def _slit(table: Sheet, u2: Point, bp: Point) -> Sheet:
    side = table.edge("F", "side").path
    at = side.at_length(side.length_to_point(u2))
    new = [
        straight("side low", side.start, at),
        straight("dart low", at, bp),
        straight("dart high", bp, at),
        straight("side high", at, side.end),
    ]
    return redraw(table, "F", ["side"], new)


def _to_point(table: Sheet, bp: Point) -> Sheet:
    """The side dart cut open to the bust point."""
    f = table.piece("F")
    a, b = f.edge("dart low").path.start, f.edge("dart high").path.end
    new = [straight("dart low", a, bp), straight("dart high", bp, b)]
    return redraw(table, "F", ["dart low", "dart high"], new)


# -- tightening ------------------------------------------------------------------------
def tighten_armhole(d: Drafting) -> None:
    """Close a wedge on the armhole at the pitch and open the side dart by it (first
    garment 8)."""
    n = d.n
    f = d.sheet.piece("F")
    armhole = f.edge("armhole").path  # underarm to tip
    at = armhole.length_to_point(d["pf"])
    sheet = spread(
        d.sheet,
        "F",
        On("armhole", at),
        CornerAfter("dart low"),
        at_start=-n.ta,
        at_end=0.0,
        moving="side high",
    )
    f = sheet.piece("F")
    g = f.edge("armhole").path.start
    square = turned(f.edge("side high").path.end_direction, 90)
    pf = d["pf"]
    lower = Cubic(
        g,
        g + square * (0.58 * (pf.x - g.x)),
        pf + Vector(0.0, 0.66 * (g.y - pf.y)),
        pf,
    )
    upper = armhole.split_at_length(at)[1]
    new = Edge("armhole", Path((lower, *upper.segments)))
    d.sheet = redraw(sheet, "F", ["armhole"], [new])
