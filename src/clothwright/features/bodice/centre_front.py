"""The bust dart led to the centre front, which becomes a seam for it.

The centre is on the fold of the cloth while it is one straight line. A dart that opens
there bends it at the bust, so that both halves are cut apart and sewn down the middle
(transformations 1.1, 1.5). What lies above the dart stays where it was, with neck and
grain; what lies below turns about the bust point until the side dart is closed. It is
the last thing that is done to the front: all that was traced from it lies on the fold.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace

from clothwright.curves import Path, Point, Vector, distance
from clothwright.features.bodice.bust_dart_rules import TakenUp
from clothwright.features.bodice.front_dart import OPENED, DartPlace
from clothwright.features.bodice.opened_dart import (
    dart_angle_of,
    dart_seam,
    mouth,
    slashed,
)
from clothwright.features.grain import longest_line
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.wholes import is_kept, keep_whole
from clothwright.paper import (
    Drafting,
    Ease,
    NotchPair,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    pivot,
)
from clothwright.truing.tolerances import NOTCH_ROOM

CENTRE_SEAM = "S129"
"""Code of the seam down the centre front."""

AT_CENTRE: dict[str, str] = {
    "front opening": "a bust dart at the centre front lies in its seam, where no front "
    "edge can be; close it at the back or the side",
    "neck placket": "a bust dart at the centre front makes that a seam, where no "
    "placket is cut; lead the dart elsewhere",
    "wrap": "the fronts of a wrap have no seam down the middle; lead the bust dart "
    "elsewhere",
    "torso": "below a bust dart at the centre front the grain turns, too much for a "
    "skirt in one; take a waist seam, or lead the dart elsewhere",
    "empire seam": "an empire seam takes the bust dart itself; lead it there",
}
"""What a seam for the dart down the centre front does not allow."""

_O = OPENED[DartPlace.CENTRE]


def level_with_bust(d: Drafting, share: float | None) -> float:
    """How far down the centre front, from the neck, the dart opens: level with the bust
    point, or at a share of its length, cm."""
    path = d.sheet.edge("F", "cf").path
    if share is not None:
        return path.length * share
    return path.length_to_point(Point(path.start.x, d["BP"].y))


def lead_to_centre(d: Drafting, at: Point) -> None:
    """Slash from the centre front to BP and turn what lies below until the side dart is
    closed; state the centre front as a seam."""
    whole = dart_angle_of(d.sheet.piece("F"), "dart low", "dart high")
    sheet = d.sheet if is_kept(d.sheet, "F") else keep_whole(d.sheet, "F")
    sheet = slashed(sheet, _O, at, d["BP"])
    d.lay(
        Verb.CUT,
        sheet,
        "F",
        f"front slashed from {_O.mark} to BP; it is no longer on the fold",
        lines=(Path.line(at, d["BP"]),),
    )
    sheet = pivot(sheet, "F", _O.leg_last, "dart low", whole)
    chain = (Run("F", _O.first), Run("F", _O.last))
    seam = Seam(
        CENTRE_SEAM,
        "centre front",
        chain,
        chain,
        "neck",
        "waist",
        Ease.about(0.0, 0.05),
        kind=SeamKind.TWIN,
    )
    front = sheet.piece("F")
    grained = replace(front, grain=longest_line(front, Vector(0.0, -1.0)))
    sheet = sheet.put(grained).sew(dart_seam(_O), seam)
    d.lay(
        Verb.MOVE,
        sheet,
        "F",
        "part below the slash turned up about BP until the side dart is closed",
        amounts=(
            ("by {}", "theta_1"),
            ("it is open there by {}", distance(*mouth(sheet.piece("F"), _O))),
        ),
        frm=("BP",),
    )


def notched(sheet: Sheet, zone: float, *, gathered: bool) -> Sheet:
    """The seam with notches at both ends of the stretch that is gathered, or eased;
    `zone` is its length when it is, cm."""
    seam = sheet.seam(CENTRE_SEAM)
    upper, lower = (sheet.lines[_O.kept(e)].length for e in (_O.first, _O.last))
    whole = sheet.chain_length(seam.left)
    ends = max(NOTCH_ROOM, upper - zone / 2), whole - max(NOTCH_ROOM, lower - zone / 2)
    pairs = tuple(NotchPair(s, s) for s in ends)
    return sheet.sew(replace(seam, notches=pairs, zone=ends, drawn_up=gathered))


def centre_operations(
    sheet: Sheet, fmt: Callable[[float], str], how: TakenUp
) -> Iterator[Operation]:
    """Draw both edges up onto a tape where they are full, then sew them together."""
    gathered = how is TakenUp.GATHERS
    full = gathered or how is TakenUp.EASE
    if full:
        yield Operation(
            Work.DART,
            f"{'Gather' if gathered else 'Ease'} the centre front of both fronts",
            (
                f"Between the notches to {fmt(_drawn_up(sheet))}, onto a tape of that "
                "length, stitched on the net line.",
            ),
            stitch=Stitch.LOCK,
            seam_type=SeamType.SET_ON,
            length=4 * _drawn_up(sheet),
            task=Task.GATHER if gathered else Task.STAY,
            count=2.0,
        )
    yield Operation(
        Work.PANEL,
        "Sew the centre front seam",
        ("From the neck to the waist, notch on notch.",)
        if full
        else ("From the neck to the waist; the darts meet, folded downwards.",),
        seams=(CENTRE_SEAM,),
        stitch=Stitch.LOCK,
        neatened=2,
        press="open",
        task=Task.PANEL,
    )


def _drawn_up(sheet: Sheet) -> float:
    """Length of the gathered stretch when it is drawn up, cm."""
    seam = sheet.seam(CENTRE_SEAM)
    first, last = (k.left for k in seam.notches)
    upper, lower = (sheet.lines[_O.kept(e)].length for e in (_O.first, _O.last))
    return last - first - (sheet.chain_length(seam.left) - upper - lower)
