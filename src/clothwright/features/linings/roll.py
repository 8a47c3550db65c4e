"""Neck, armhole and slanted edge set inside the shell's by the roll, and shortened at
the shoulder by what the roll adds to them (first garment 14.4, 14.5, 15).

Facings and a lining to the edge have the same upper edges. They are drawn on a half in
its sewn state; raw edges are matched when sewing, so the shell rolls inwards.
"""

import math
from dataclasses import dataclass

from clothwright.curves import Line, Path, Point, inset
from clothwright.features.linings.sewn_halves import OVER, SewnHalf
from clothwright.findings import Finding, Severity
from clothwright.paper import Piece, meetings
from clothwright.truing.tolerances import DOUBLED

LEAST_STRAP = 2.5
"""What must stay of the shoulder inside both rolls, cm (14.7)."""

_MOST_SHORT = 0.12
"""An edge is cut no shorter than this below the shell's, cm: 14.5 accepts 0.15, and
its stretches between notches differ a little."""


_ONE_LENGTH = 0.01
"""Shoulders that differ by less are of one length, cm: a tenth of what 14.6 allows."""


@dataclass(frozen=True)
class Rolled:
    """The upper edges of a half rolled to the inside, clockwise as in the shell."""

    neck: Path
    shoulder: Path
    armhole: Path
    slant: Path | None = None


def rolled_front(half: SewnHalf, rho: float) -> Rolled:
    """The front's edges: nothing at fold and underarm, `rho` at the shoulder, and down
    to the waist where the front wraps."""
    shell = half.neck.length
    if half.to_waist:
        neck = onto_waist(inset(half.neck, rho, rho), half.centre.edge(OVER).path)
        shell -= at_foot(half.centre, rho)
    else:
        neck = inset(half.neck, rho, 0.0)  # shoulder to CF
    arm = inset(half.armhole, 0.0, rho)  # underarm to tip
    n, arm = _shortened(neck.reversed(), arm, shell, half.armhole.length)
    neck = n.reversed().pinned(n.end, neck.end)
    arm = arm.pinned(half.armhole.start, arm.end)
    return Rolled(neck, _shoulder(half, arm.end, neck.start), arm)


def rolled_back(
    half: SewnHalf, rho: float, more: float = 0.0, slanted: Path | None = None
) -> Rolled:
    """The back's edges: nothing at the underarm, `rho` on a slanted edge and `more`
    than that at the shoulder, where the ease of the shell's shoulder is cut off. The
    slanted edge rolled may be given: it is one whatever the shoulder."""
    at_shoulder = rho + more
    arm = inset(half.armhole, at_shoulder, 0.0)  # tip to underarm
    arm = arm.pinned(arm.start, half.armhole.end)
    slant = half.slant
    if slant is None:
        neck = inset(half.neck, 0.0, at_shoulder)
        neck, arm = _shortened(
            neck, arm.reversed(), half.neck.length, half.armhole.length
        )
        return Rolled(neck, _shoulder(half, neck.end, arm.end), arm.reversed())
    whole = inset(slant + half.neck, rho, at_shoulder, level=slant.length)
    n = len(slant.segments)
    waist = half.centre.edge("waist").path
    slant = slanted or _onto(Path(whole.segments[:n]), waist)
    # the corner shortens the slanted edge, so that the neck may move in less
    shell = half.centre.edge("slant").length + half.neck.length - slant.length
    neck = Path(whole.segments[n:])
    neck, arm = _shortened(neck, arm.reversed(), shell, half.armhole.length)
    return Rolled(neck, Path.line(neck.end, arm.end), arm.reversed(), slant)


def back_to_match(
    half: SewnHalf, rho: float, shoulder: float, more: float = 0.0
) -> Rolled:
    """The back's edges with a shoulder of the length wanted: what is too long is taken
    off in equal parts at both its ends; `more` is a first guess at that."""
    rolled = rolled_back(half, rho, more)
    for _ in range(3):
        over = rolled.shoulder.length - shoulder
        if abs(over) < _ONE_LENGTH:
            break
        more += over / 2
        rolled = rolled_back(half, rho, more, rolled.slant)
    return rolled


def _shoulder(half: SewnHalf, start: Point, end: Point) -> Path:
    """The facing's shoulder with the loop: straight, or along the shell's where that is
    run on over the arm, or up a funnel."""
    split = half.flank is not None and half.flank.has("shoulder")
    one = not split and half.centre.has("shoulder")
    shell = half.centre.edge("shoulder").path if one else None
    if shell is None or len(shell.segments) == 1:
        return Path.line(start, end)
    a, b = shell.length_to_point(start), shell.length_to_point(end)
    return shell.between(a, b).without_crumbs(0.1).pinned(start, end)


def at_foot(front: Piece, rho: float) -> float:
    """What of the edge of a wrap lies beside the roll at the waist, cm: there the
    facing's is shorter."""
    return rho / math.tan(math.radians(front.interior_angle("neck")))


def onto_waist(beside: Path, waist: Path) -> Path:
    """A line beside the edge of a wrap cut off at the waist, or run on to it. Raises
    PaperError when it misses that."""
    on = beside + Path.line(beside.end, beside.end + beside.end_direction * 3.0)
    hits = meetings(
        on,
        waist,
        "the facing beside the edge of the wrap does not reach the waist: make it, "
        "or its roll, narrower",
    )
    s, t = hits[-1]
    cut = on.between(0.0, s)
    return cut.pinned(cut.start, waist.at_length(t))


def _onto(slant: Path, waist: Path) -> Path:
    """The rolled slant cut off at the waist, or run on to it."""
    u = slant.start_direction
    first = Line(slant.start - u * 1.0, slant.start)
    hits = meetings(
        Path((first, *slant.segments)),
        waist,
        "the slanted edge rolled to the inside does not reach the waist: make the "
        "roll smaller",
    )
    at = waist.at_length(hits[0][1])
    return Path((Line(at, slant.segments[0].end), *slant.segments[1:]))


def _shortened(
    neck: Path, arm: Path, shell_neck: float, shell_arm: float
) -> tuple[Path, Path]:
    """Rolled neck and rolled armhole, both ending at the shoulder, cut back there by
    the larger of their excesses (14.5).

    The shoulder seam so moves in parallel, unless that would leave one of the edges
    more than 0.15 shorter than its shell's: at that end it moves in less, or out.
    """
    over_neck, over_arm = neck.length - shell_neck, arm.length - shell_arm
    x = max(over_neck, over_arm, 0.0)
    neck = _moved_in(neck, min(x, over_neck + _MOST_SHORT))
    arm = _moved_in(arm, min(x, over_arm + _MOST_SHORT))
    return neck, arm


def cut_back(neck: Path, shell: float) -> Path:
    """A rolled neck alone, ending at the shoulder, cut back there by what it is longer
    than the shell's, or run on where it would be more than 0.15 shorter (14.5)."""
    over = neck.length - shell
    return _moved_in(neck, over if over > 0 else min(0.0, over + _MOST_SHORT))


def _moved_in(path: Path, by: float) -> Path:
    """A path that ends at the shoulder, cut back there, or run on by a little."""
    if by > DOUBLED:
        cut = path.before(path.place_at_length(path.length - by))
        return cut.without_crumbs(DOUBLED)
    if by < -DOUBLED:
        return path + Path.line(path.end, path.end - path.end_direction * by)
    return path


def corner_finding(radius: float) -> Finding | None:
    """What is said of a corner of the open back rounded too tightly (truing 5): inside
    the roll it bends tighter still."""
    if radius < DOUBLED or radius >= 1.0 - DOUBLED:
        return None
    return Finding(
        "F6",
        Severity.WARN,
        f"The corner of the open back is rounded to {radius:.1f} cm; less than 1 cm "
        "does not turn out well.",
        "rc",
        "Round it to 1 cm or more, or leave it a point.",
        {"rc": radius},
    )


def strap_finding(strap: float, what: str, place: str) -> Finding | None:
    """What is said of a strap that is too narrow inside both rolls (14.7)."""
    if strap >= LEAST_STRAP:
        return None
    return Finding(
        "F1",
        Severity.REFUSE,
        f"The {what} is only {strap:.1f} cm wide at the shoulder; 2.5 cm must stay.",
        place,
        "Leave more of the shoulder: make the neck (dw) narrower, or bind the edges.",
        {"strap": strap},
    )
