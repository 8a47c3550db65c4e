"""The bust dart at work: slashed for, turned, set back, laid open, and led back.

It moves about the bust point (transformations 1.1), as told in `opened_dart`.
"""

from collections.abc import Iterator
from dataclasses import replace
from enum import Enum

from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    distance,
    turned,
)
from clothwright.features.bodice.opened_dart import (
    Opened,
    dart_angle_of,
    dart_seam,
    mouth,
    slashed,
)
from clothwright.features.wholes import before_yoke
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    On,
    Piece,
    Sheet,
    Verb,
    pivot,
    redraw,
    spread,
    straight,
)


class DartPlace(Enum):
    """Where the bust dart opens."""

    SHOULDER = "shoulder"
    NECK = "neck"
    ARMHOLE = "armhole"
    WAIST = "waist"
    """It opens the waist dart wider."""

    YOKE = "yoke"
    """Below the seam of a front yoke."""

    CENTRE = "centre front"
    """In a seam down the centre, which the front is given for it."""

    CENTRE_NECK = "centre front of the neck"
    """From the corner of neck and centre front, which stays on the fold."""

    CENTRE_WAIST = "centre front of the waist"
    """From the corner of waist and centre front, which stays on the fold; it takes the
    waist dart along."""


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
    DartPlace.CENTRE: Opened(
        "cf",
        "cf",
        "dart cf high",
        "dart cf low",
        "cf low",
        "bust dart at the centre front",
        "Qc",
    ),
    DartPlace.CENTRE_NECK: Opened(
        "neck",
        "neck",
        "dart top side",
        "dart top cf",
        "",
        "bust dart at the centre front of the neck",
        "Qc",
        called=DartPlace.CENTRE_NECK.value,
    ),
    DartPlace.CENTRE_WAIST: Opened(
        "waist",
        "",
        "dart foot cf",
        "dart foot side",
        "waist",
        "bust dart at the centre front of the waist",
        "Qc",
        called=DartPlace.CENTRE_WAIST.value,
    ),
    DartPlace.WAIST: Opened(
        "waist", "waist", "leg cf", "leg side", "waist side", "front waist dart", ""
    ),
}

SIDE = "side dart"
_SLIT = ["side low", "dart low", "dart high", "side high"]


# -- turning ---------------------------------------------------------------------------
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
        sheet = pivot(sheet, "F", "dart high", o.leg_first, -degrees)
        sheet = sheet.sew(dart_seam(o))
        says = "part beside the slash turned about BP until the side dart is closed"
    opened = distance(*mouth(sheet.piece("F"), o))
    d.lay(
        Verb.MOVE,
        sheet,
        "F",
        says,
        amounts=(("by {}", key), ("it is open there by {}", opened)),
        frm=("BP",),
    )


def close_side(d: Drafting) -> None:
    """Rule the side through over the side dart, of which nothing is left."""
    f = d.sheet.piece("F")
    side = straight("side", f.edge("side low").path.start, f.edge("side high").path.end)
    sheet = redraw(d.sheet.unsew(SIDE), "F", _SLIT, [side])
    d.lay(Verb.REDRAW, sheet, "F.side", "side in one line, its dart closed")


# -- laid open -------------------------------------------------------------------------
def opened_places(front: Piece) -> Iterator[Opened]:
    """The places other than side and waist at which the front has a dart."""
    for o in OPENED.values():
        if o.edge != "waist" and front.has(o.leg_last):
            yield o


# -- led back --------------------------------------------------------------------------
def as_drafted(sheet: Sheet) -> Piece:
    """The front in one piece with its bust dart at the side again, where facings and
    linings are traced; a dart led to the waist stays there."""
    f, bp = before_yoke(sheet, "F"), sheet.points["BP"]
    for o in OPENED.values():
        if f"gathered {o.leg_last}" in sheet.lines and not f.has(o.leg_last):
            if o.corner or o.edge in ("yoke", "cf"):  # it is remembered without it
                continue
            name = next(e for e in (o.edge, o.first) if f.has(e))
            new = [Edge(e, sheet.lines[f"gathered {e}"]) for e in o.run]
            f = redraw(Sheet().put(f), "F", [name], new).piece("F")
    table = Sheet().put(f)
    for o in opened_places(f):
        a, b = mouth(table.piece("F"), o)
        legs = [straight(o.leg_first, a, bp), straight(o.leg_last, bp, b)]
        table = redraw(table, "F", [o.leg_first, o.leg_last], legs)
        if table.piece("F").has("side"):
            table = _slit(table, sheet.points["U2"], bp)
        else:
            table = _to_point(table, bp)
        turn = dart_angle_of(table.piece("F"), o.leg_first, o.leg_last)
        table = pivot(table, "F", "dart high", o.leg_first, turn)
        whole = table.edge("F", o.first).path, table.edge("F", o.last).path
        path = whole[0] + whole[1].pinned(whole[0].end, whole[1].end)
        table = redraw(table, "F", o.run, [Edge(o.edge, path)])
    return replace(table.piece("F"), grain=f.grain)


def led_elsewhere(sheet: Sheet) -> bool:
    """True for a front in one piece whose bust dart opens elsewhere than at the side
    and the waist, or did before it was gathered."""
    if "F" not in sheet.pieces:
        return False
    f = sheet.piece("F")
    gathered = (o.leg_last for o in OPENED.values() if o.edge != "waist")
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
