"""Dart caps: the outline of a folded dart, so that its end is caught in the seam.

Terminology
    P        the dart's point; D1, D2 the ends of its legs on the seam.
    cap      the outline D1-M-D2 beyond the legs; M lies on the dart's centre line.
    towards  the side that the folded dart lies on.

Lengths are cm, angles degrees. Source: our trade notes, truing 3.3 (exact): folding
lays the half of the dart next to the leg on the piece beside it, so that half of the
cap is the seam's own line reflected in the leg, the other half its mirror image.
"""

import math
from dataclasses import dataclass
from enum import Enum

from clothwright.curves import (
    CLOSE,
    Line,
    Path,
    Point,
    degrees_between,
    direction,
    distance,
    dot,
    meet_lines,
    mirror_in,
    rotate,
    wedge_angle,
)
from clothwright.paper import PaperError, Piece


class Towards(Enum):
    """Which leg a folded dart lies on, in the direction of the loop (clockwise)."""

    FIRST = "first"
    """On the paper before the first leg."""

    SECOND = "second"
    """On the paper after the second leg."""

    @property
    def other(self) -> "Towards":
        """The other leg: that of the dart's mirror image."""
        return Towards.SECOND if self is Towards.FIRST else Towards.FIRST


def dart_angle(leg: float, intake: float) -> float:
    """Full angle of a dart with legs of one length, degrees.

    Raises ValueError unless 0 ≤ intake < 2 · leg.
    """
    if not 0 <= intake < 2 * leg:
        raise ValueError("a dart's intake must be less than twice its leg")
    return wedge_angle(intake, leg)


def cap_reach(leg: float, theta: float, gamma: float) -> float:
    """|PM|: from the dart's point to the peak of its cap, cm.

    `gamma` is the paper's angle between the leg and the trued seam on the side that
    the dart is folded towards: 90 when the seam is square to the leg.
    Raises ValueError when the seam would never reach the centre line.
    """
    g, half = math.radians(gamma), math.radians(theta) / 2
    if not (gamma > 0 and gamma + theta / 2 < 180):
        raise ValueError("the seam runs away from this dart's fold")
    return leg * math.sin(g) / math.sin(g + half)


def square_cap(leg: float, theta: float) -> float:
    """|PM| when the seam is square to the leg, as when trued across the dart."""
    return leg / math.cos(math.radians(theta) / 2)


def straight_cap(leg: float, theta: float) -> float:
    """|PM| when the seam is the straight line from leg to leg, produced."""
    return leg * math.cos(math.radians(theta) / 2) / math.cos(math.radians(theta))


def chord_reach(leg: float, theta: float) -> float:
    """From the dart's point to the middle of the line from leg to leg, cm."""
    return leg * math.cos(math.radians(theta) / 2)


@dataclass(frozen=True)
class Cap:
    """The cap of a dart: its line from D1 to D2 in the direction of the loop."""

    path: Path
    peak: Point
    """M, on the dart's centre line."""


def dart_cap(piece: Piece, first: str, second: str, towards: Towards) -> Cap:
    """The cap of the dart whose legs are the edges `first` and `second` of a piece,
    one after the other round its loop, the point between them.

    The seam beside the dart may be curved. Where it is too short to be folded on, it
    is produced straight. Raises PaperError when the legs do not follow each other or
    the dart is too wide to fold.
    """
    if piece.after(first).name != second:
        raise PaperError(f"{piece.code}: {first} and {second} are not a dart's legs")
    legs = piece.edge(first).path, piece.edge(second).path
    d1, d2 = legs[0].start, legs[1].end
    point = _runs_to(*legs)
    theta = degrees_between(d1 - point, d2 - point)
    seam, leg_end, sign = (
        (piece.before(first).path.reversed(), d1, -1.0)
        if towards is Towards.FIRST
        else (piece.after(second).path, d2, 1.0)
    )
    if dot(legs[0].start_direction, point - d1) < 0:  # it grows wider inwards
        sign = -sign
    beside = _fan(seam, point, leg_end, sign * theta / 2)
    if beside is None:
        raise PaperError(f"{piece.code}: the dart at {first} is too wide to fold")
    half = beside.moved(mirror_in(point, leg_end))  # from the leg's end to the peak
    peak = half.end
    twin = half.moved(mirror_in(point, peak))
    if towards is Towards.FIRST:
        path = half.pinned(d1, peak) + twin.reversed().pinned(peak, d2)
    else:
        path = twin.pinned(d1, peak) + half.reversed().pinned(peak, d2)
    return Cap(path, peak)


def _runs_to(first: Path, second: Path) -> Point:
    """Where the legs of a dart meet as they run at its mouth: its point, but for a dart
    that is widest inside the piece and cut through below that."""
    if first.straight and second.straight:
        return first.end
    a, b = first.start_direction, second.end_direction * -1.0
    if abs(a.x * b.y - a.y * b.x) < 1e-9:
        return first.end
    return meet_lines(first.start, a, second.end, b)


def _fan(seam: Path, point: Point, leg_end: Point, degrees: float) -> Path | None:
    """The seam from the leg's end to where the leg, turned about the dart's point by
    `degrees`, meets it."""
    leg = distance(point, leg_end)
    ray = direction(point, rotate(leg_end, point, degrees))
    far = Path((Line(point, point + ray * (2 * leg)),))
    hits = [s for s, _ in seam.meets(far) if s > CLOSE]
    if hits:
        return seam.between(0.0, hits[0])
    tip, along = seam.end, seam.end_direction
    more = Path((Line(tip, tip + along * (2 * leg)),))
    hits = [s for s, _ in more.meets(far)]
    return seam + more.between(0.0, hits[0]) if hits and hits[0] > CLOSE else None
