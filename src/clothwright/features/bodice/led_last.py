"""The bust dart led whole to a place that is there when all else is drafted: to the
seam of a yoke, or to the centre front (transformations 1.1)."""

from clothwright.curves import Point
from clothwright.features.bodice.bust_dart_rules import TakenUp, check_place
from clothwright.features.bodice.centre_corner import (
    CORNERS,
    lead_to_corner,
    true_corner,
)
from clothwright.features.bodice.centre_front import lead_to_centre, level_with_bust
from clothwright.features.bodice.front_dart import (
    OPENED,
    DartPlace,
    close_side,
    lead,
)
from clothwright.features.bodice.laid_dart import LAID
from clothwright.features.bodice.opened_dart import dart_angle_of, set_back
from clothwright.features.hand.hand_seams import off_corners
from clothwright.paper import Drafting, PaperError

LATE = {DartPlace.YOKE, DartPlace.CENTRE, *CORNERS}
"""Places to which the dart is led last."""


def lead_last(d: Drafting, place: DartPlace, how: TakenUp, share: float | None) -> None:
    """Lead the whole dart from the side to such a place, `share` of the way along its
    edge or where it usually opens; close the side, and end the dart."""
    d.part = "front"
    if place in CORNERS:
        if how not in (TakenUp.DART, TakenUp.GATHERS):
            raise PaperError(
                f"at the {place.value} a fold would lie across the middle: have the "
                "bust dart taken up as a dart or as gathers"
            )
        lead_to_corner(d, place)
    elif place is DartPlace.CENTRE:
        along, yoke = level_with_bust(d, share), "FY" in d.sheet.pieces
        check_place(d.sheet.edge("F", "cf").path, place, along, d["BP"], yoke=yoke)
        lead_to_centre(d, start_of(d, place, along))
    else:
        f = d.sheet.piece("F")
        path, level = f.edge("yoke").path, Point(d["BP"].x, d["Ya"].y)
        along = path.length_to(path.nearest(level)[0])
        if share is not None:
            along = path.length * share
        whole = dart_angle_of(f, "dart low", "dart high")
        lead(d, place, start_of(d, place, along), whole, "theta_1")
    close_side(d)
    if how not in LAID:
        set_back(d, OPENED[place].legs, "A1", "set_back_1")
        if place in CORNERS:
            true_corner(d, place)
    d.sheet = off_corners(d.sheet, "F")


def start_of(d: Drafting, place: DartPlace, along: float) -> Point:
    """Mark where a dart opens, so far along its edge as that lies now."""
    path = d.sheet.edge("F", OPENED[place].edge).path
    amount, frm = along, _FROM.get(place, "the underarm")
    if place is DartPlace.CENTRE and "FY" in d.sheet.pieces:
        frm = "the seam of the yoke"
    if place is DartPlace.SHOULDER:
        amount, frm = path.length - along, "the neck"
    return d.found(
        OPENED[place].mark,
        path.at_length(along),
        f"new place of the bust dart on the {place.value}",
        amounts=((f"along the {place.value} from {frm}", amount),),
    )


_FROM = {
    DartPlace.NECK: "the shoulder",
    DartPlace.YOKE: "the armhole",
    DartPlace.CENTRE: "the neck",
}
