"""The bust dart led to a corner of the centre front: at its neck, or at its waist.

There it opens beside the fold of the cloth, so that the centre stays straight and the
front is cut in one: what lies beside the slash turns about the bust point, the strip
along the fold stays (transformations 1.1). At the waist the waist dart lies within what
turns; it is closed with the bust dart, and the corner opens by both. It is the last
thing that is done to the front: all that was traced from it lies on the fold.
"""

import math
from collections.abc import Mapping
from dataclasses import replace

from clothwright.curves import (
    Path,
    Point,
    Vector,
    cross,
    degrees_between,
    direction,
    distance,
    dot,
    turned,
)
from clothwright.features.bodice.bust_dart_rules import LEAST_LEAN
from clothwright.features.bodice.front_dart import OPENED, DartPlace
from clothwright.features.bodice.opened_dart import (
    Opened,
    dart_angle_of,
    dart_seam,
    mouth,
    to_end,
)
from clothwright.features.grain import longest_line
from clothwright.features.wholes import before_yoke, is_kept, keep_whole
from clothwright.paper import (
    JOINT,
    JOINT_RIGHT,
    Drafting,
    Edge,
    NotchPair,
    PaperError,
    Seam,
    Sheet,
    Verb,
    pivot,
    redraw,
    straight,
)

CORNERS = (DartPlace.CENTRE_NECK, DartPlace.CENTRE_WAIST)
"""Places at the ends of the centre front."""

_BOTH: dict[str, str] = {
    "front opening": "a bust dart at a corner of the centre front would open in the "
    "front edge; close it at the back or the side",
    "wrap": "the fronts of a wrap have no corner at the centre front; lead the bust "
    "dart elsewhere",
    "empire seam": "an empire seam takes the bust dart itself; lead it there",
}

AT_CORNER: Mapping[DartPlace, dict[str, str]] = {
    DartPlace.CENTRE_NECK: {
        **_BOTH,
        "neck placket": "a bust dart at the centre front of the neck opens where the "
        "placket is cut; lead the dart elsewhere",
        "winding neck": "a bust dart at the centre front of the neck would open in the "
        "point of a sweetheart, or where a keyhole is cut; lead the dart elsewhere",
    },
    DartPlace.CENTRE_WAIST: {
        **_BOTH,
        "torso": "a bust dart at the centre front of the waist wants a waist seam, "
        "which a torso has not; lead it elsewhere",
    },
}
"""What a dart at each corner does not allow."""

WAIST_DART = ("leg cf", "leg side")
_SIDE = ("dart low", "dart high")


def lead_to_corner(d: Drafting, place: DartPlace) -> None:
    """Slash from the corner to BP and turn what lies beside the slash until the side
    dart is closed. Raises PaperError where it would run along the neck."""
    o, f = OPENED[place], d.sheet.piece("F")
    whole = dart_angle_of(f, *_SIDE)
    if not is_kept(d.sheet, "F"):
        d.sheet = keep_whole(d.sheet, "F")
    edge = f.edge(o.edge)
    at = edge.path.start if o.last else edge.path.end
    if not o.last:
        _check_lean(edge.path, d["BP"])
    says = f"new place of the bust dart, the corner of {o.edge} and centre front"
    d.found(o.mark, at, says)
    legs = [straight(o.leg_first, at, d["BP"]), straight(o.leg_last, d["BP"], at)]
    new = [*legs, edge] if o.last else [edge, *legs]
    d.lay(
        Verb.CUT,
        redraw(d.sheet, "F", [o.edge], new),
        "F",
        f"front slashed from {o.mark} to BP, beside the fold",
        lines=(Path.line(at, d["BP"]),),
    )
    if o.last:
        _side_up(d, o, whole)
    else:
        sheet = pivot(d.sheet, "F", _SIDE[1], o.leg_first, -whole)
        _turned(d, sheet, o, "part above the slash turned about BP until the side dart")
    front = d.sheet.piece("F")
    grained = replace(front, grain=longest_line(front, Vector(0.0, -1.0)))
    d.sheet = d.sheet.put(grained).sew(dart_seam(o))


def _turned(d: Drafting, sheet: Sheet, o: Opened, says: str) -> None:
    d.lay(
        Verb.MOVE,
        sheet,
        "F",
        f"{says} is closed",
        amounts=(
            ("by {}", "theta_1"),
            ("it is open there by {}", distance(*mouth(sheet.piece("F"), o))),
        ),
        frm=("BP",),
    )


def _side_up(d: Drafting, o: Opened, whole: float) -> None:
    """Turn the side up until its dart is closed, then what lies between slash and waist
    dart until that one is."""
    f = d.sheet.piece("F")
    if not f.has(WAIST_DART[0]):
        sheet = pivot(d.sheet, "F", o.leg_last, _SIDE[0], whole)
        _turned(d, sheet, o, "part below the slash turned up about BP until the dart")
        return
    first, last = (f.edge(leg).path for leg in WAIST_DART)
    bp = d["BP"]
    legs = [
        straight(WAIST_DART[0], first.start, bp),
        straight(WAIST_DART[1], bp, last.end),
    ]
    sheet = redraw(d.sheet, "F", list(WAIST_DART), legs)
    d.lay(Verb.REDRAW, sheet, "F", "legs of the waist dart run on to BP")
    sheet = pivot(d.sheet, "F", WAIST_DART[1], _SIDE[0], whole)
    d.lay(
        Verb.MOVE,
        sheet,
        "F",
        "side of the front turned up about BP until the side dart is closed",
        amounts=(("by {}", "theta_1"),),
        frm=("BP",),
    )
    by = dart_angle_of(sheet.piece("F"), *WAIST_DART)
    sheet = pivot(sheet, "F", o.leg_last, WAIST_DART[0], by)
    f = sheet.piece("F")
    inner, outer = (f.edge(e).path for e in ("waist", "waist side"))
    line = inner + outer.pinned(inner.end, outer.end)
    sheet = _marked(sheet).unsew("front waist dart")
    run = ["waist", *WAIST_DART, "waist side"]
    sheet = redraw(sheet, "F", run, [Edge("waist", line)])
    _turned(
        d,
        sheet,
        o,
        "part between the slash and the waist dart turned about BP until that",
    )


def _marked(sheet: Sheet) -> Sheet:
    """The sheet with a notch on the waist where its dart was, of which seams have a
    joint for a mark."""
    out = []
    for s in sheet.seams:
        for mine, own, other in (
            (s.left, JOINT, JOINT_RIGHT),
            (s.right, JOINT_RIGHT, JOINT),
        ):
            if any(r.piece == "F" and r.edge == "waist side" for r in mine):
                out.append(_renoted(s, own, other))
    return sheet.sew(*out)


def _renoted(s: Seam, own: str, other: str) -> Seam:
    def noted(k: NotchPair) -> NotchPair:
        if k.note != own:
            return k
        return k._replace(note="") if k.ticks else k._replace(note=other, ticks=1)

    return replace(s, notches=tuple(noted(k) for k in s.notches))


def true_corner(d: Drafting, place: DartPlace) -> None:
    """Draw the end of the edge anew, so that it meets the centre front as before when
    its dart is folded to the stitched end (as at any dart, truing 3)."""
    o, f = OPENED[place], d.sheet.piece("F")
    before = before_yoke(d.sheet, "F")
    bend = 180.0 - before.interior_angle("cf" if o.last else o.edge)
    a, b = (direction(f.edge(o.leg_first).path.end, p) for p in mouth(f, o))
    opened = cross(a, b), dot(a, b)
    by = math.degrees(math.atan2(*opened))  # clockwise, from the first leg on
    path = f.edge(o.edge).path
    if o.last:
        way = turned(f.before(o.leg_first).path.end_direction, bend + by)
        new = to_end(path.reversed(), way * -1.0).reversed()
    else:
        way = turned(f.after(o.leg_last).path.start_direction, -bend - by)
        new = to_end(path, way)
    d.lay(
        Verb.REDRAW,
        redraw(d.sheet, "F", [o.edge], [Edge(o.edge, new)]),
        f"F.{o.edge}",
        f"{o.edge} trued over the closed dart, up to the centre front",
        lines=(new,),
    )


def _check_lean(neck: Path, bp: Point) -> None:
    lean = degrees_between(neck.end_direction, direction(neck.end, bp))
    if min(lean, 180.0 - lean) < LEAST_LEAN:
        raise PaperError(
            "the bust dart would run along the neck at the centre front: make the neck "
            "(Df) less deep, or lead it elsewhere"
        )
