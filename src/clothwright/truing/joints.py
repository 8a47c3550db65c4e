"""Joints: the angles of paper that come together where a seam is sewn. Degrees.

Terminology
    corner   the place where two edges of one piece meet, and its angle of paper.
    joint    the corners that lie side by side once the seams between them are sewn;
             their angles add up to 180 where a line runs on across the seam.
    fold     a joint of one corner that must be square.

Angles are read off the net lines at the corner itself. Bands: our trade notes,
truing 1 and 4, first garment 22.
"""

from dataclasses import dataclass, field
from enum import Enum
from typing import Final, NamedTuple

from clothwright.findings import Finding, Severity
from clothwright.paper import PaperError, Piece, Sheet
from clothwright.truing.tolerances import EACH_CORNER, FOLD_CORNER, WAIST_SUM, Band
from clothwright.truing.words import opening

JOINT_CODE = "angle"
"""Code of a finding about a joint."""


class End(Enum):
    """An end of an edge, in the direction of its piece's loop (clockwise)."""

    START = "start"
    """Where the edge begins."""

    END = "end"
    """Where the edge ends."""


class Corner(NamedTuple):
    """A corner of a piece: an end of one of its edges."""

    piece: str
    edge: str
    at: End = End.END

    def angle(self, sheet: Sheet) -> float:
        """Degrees of paper, 0 to 360. Raises PaperError for an unknown edge."""
        piece = sheet.piece(self.piece)
        i = piece.index(self.edge)
        return piece.angles[i if self.at is End.END else i - 1]


@dataclass(unsafe_hash=True)
class Joint:
    """Corners side by side in the sewn state, and what they should add up to."""

    name: Final[str]
    corners: Final[tuple[Corner, ...]]
    target: Final[float] = 180.0
    band: Final[Band] = WAIST_SUM
    each: Final[tuple[float, ...]] = ()
    """Own target of every corner; empty when only the sum matters."""

    each_band: Final[Band] = EACH_CORNER
    code: Final[str] = JOINT_CODE

    @classmethod
    def fold(cls, name: str, corner: Corner, band: Band = FOLD_CORNER) -> "Joint":
        """A corner at a fold or a hem: square by itself."""
        return cls(name, (corner,), 90.0, band)

    def __post_init__(self) -> None:
        if not self.corners:
            raise ValueError(f"the joint {self.name} needs at least one corner")
        if self.each and len(self.each) != len(self.corners):
            raise ValueError(f"the joint {self.name} needs one target for each corner")


@dataclass(unsafe_hash=True)
class Angles:
    """A joint measured, degrees."""

    joint: Final[Joint]
    parts: Final[tuple[float, ...]]
    findings: Final[tuple[Finding, ...]] = field(default=())

    @property
    def sum(self) -> float:
        """All angles together, degrees."""
        return sum(self.parts)

    @property
    def off(self) -> float:
        """What the sum is above its target; below 0 the line pokes out there, above
        0 it dips in. After blending this is the tangent break."""
        return self.sum - self.joint.target


def corner_angle(piece: Piece, edge_a: str, edge_b: str) -> float:
    """Degrees of paper (0 to 360) where two neighbouring edges meet.

    The order of the two does not matter, but for a piece of two edges, where it is
    the corner at the end of the first. Raises PaperError when they do not touch.
    """
    if piece.after(edge_a).name == edge_b:
        return piece.interior_angle(edge_a)
    if piece.after(edge_b).name == edge_a:
        return piece.interior_angle(edge_b)
    raise PaperError(f"{piece.code}: {edge_a} and {edge_b} do not meet in a corner")


def measure(sheet: Sheet, joint: Joint) -> Angles:
    """A joint's angles, with a finding for each that is not right.

    Raises PaperError when it names an edge that is not on the sheet.
    """
    parts = tuple([c.angle(sheet) for c in joint.corners])
    found: list[Finding] = []
    total = sum(parts)
    off = total - joint.target
    severity = joint.band.severity(off)
    if severity is not None:
        what = "the corner is" if len(parts) == 1 else "the paper adds up to"
        found.append(
            _finding(
                joint,
                severity,
                f"{what} {total:.1f}°; {_right(joint.target, joint.band)}",
                _cure(off, len(parts)),
                {"sum": total, "target": joint.target},
            )
        )
    for corner, angle, target in zip(joint.corners, parts, joint.each, strict=False):
        severity = joint.each_band.severity(angle - target)
        if severity is not None:
            found.append(
                _finding(
                    joint,
                    severity,
                    f"the corner of {corner.piece} is {angle:.1f}°; "
                    f"{_right(target, joint.each_band)}",
                    _cure(angle - target, 1),
                    {"angle": angle, "target": target},
                )
            )
    return Angles(joint, parts, tuple(found))


def _finding(
    joint: Joint,
    severity: Severity,
    says: str,
    to_do: str,
    data: dict[str, float],
) -> Finding:
    sentence = f"{opening(joint.name)}: {says}."
    return Finding(joint.code, severity, sentence, joint.name, to_do, data)


def _right(target: float, band: Band) -> str:
    return f"{target:g}°, give or take {band.accept:g}°, is right"


def _cure(off: float, corners: int) -> str:
    if corners == 1:
        return "Redraw the line so that it meets its neighbour as stated."
    if off > 0:
        return "The line dips there: add paper at the seam and blend it."
    return "The line pokes out there: trim at the seam and blend it."
