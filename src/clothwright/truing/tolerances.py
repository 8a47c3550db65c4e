"""What is near enough: one band a kind of check, in one place, each with its reason.

A band is read as: aim at nothing off, accept up to `accept`, look again up to
`reject`, and cut nothing above it. Lengths are cm, angles degrees, as the name says.
Source: our trade notes on truing, section 1 (common practice); the reject limits are
a cutter's, the accept limits a good maker's. 1/16 in is 0.15875 cm.
"""

from dataclasses import dataclass

from clothwright.findings import Severity

SIXTEENTH = 2.54 / 16
"""1/16 in, cm: the finest mark on a dressmaker's inch ruler."""


@dataclass(frozen=True)
class Band:
    """How far off is right (`accept`) and how far off is refused (`reject`)."""

    accept: float
    reject: float
    reason: str

    def severity(self, off: float) -> Severity | None:
        """None when |off| is right, WARN up to `reject`, REFUSE above it."""
        if abs(off) <= self.accept + _ROUNDING:
            return None
        if abs(off) <= self.reject + _ROUNDING:
            return Severity.WARN
        return Severity.REFUSE


_ROUNDING = 1e-6
"""Sums of doubles on a 200 cm page; a value on the limit is inside it."""

LONG_SEAM = 30.0
"""Seams over this length (cm) are given the wider band."""

SEAM = Band(SIXTEENTH, 0.3, "what two hands ease away unseen in a short seam, cm")
SEAM_LONG = Band(2 * SIXTEENTH, 0.5, "the same over a seam longer than 30 cm")
DART_LEGS = Band(0.10, SIXTEENTH, "a dart's legs are short and meet at a point, cm")
FACING = Band(0.15, 0.30, "a half neckline against its facing or collar, cm")
CAP = Band(0.20, 0.40, "sleeve ease against the wanted, each half, cm")
NOTCH = Band(0.10, 0.20, "a notch against its mate along the seam, cm")

FOLD_CORNER = Band(1.0, 2.0, "a fold doubles the error: a peak or dip shows, degrees")
WAIST_SUM = Band(3.0, 8.0, "waist and hem run level across a seam, degrees")
NECK_SUM = Band(5.0, 8.0, "neck and armhole are rounded, a little peak hides, degrees")
BLENDED = Band(1.0, 3.0, "the break that is left in a curve after blending, degrees")
PANEL = Band(3.0, 8.0, "armhole and waist run on across a panel seam, degrees")
SIDE_HEM = Band(1.0, 2.0, "the hem of a peplum runs on across its side, degrees")
SLEEVE_HEM = Band(3.0, 8.0, "the hem of a sleeve runs on across its seam, degrees")
SKIRT_HEM = Band(1.0, 2.0, "the hem of a skirt runs on across its side, degrees")
SKIRT_WAIST = Band(
    3.0, 8.0, "the waist of a skirt runs on across a dart or a side, degrees"
)
TIP = Band(3.0, 8.0, "neck and armhole leave the shoulder square, degrees")
EACH_CORNER = Band(3.0, 8.0, "each half of a joint square by itself, degrees")
WRONG_WAY = Band(3.0, 8.0, "a neck or armhole curve that wobbles, degrees (C16)")
GRAIN = Band(0.25, 0.5, "cloth off grain hangs askew, degrees")

FOLD_STRAIGHT = 0.03
"""A fold edge may leave the straight by this much, cm: cloth folds straight."""

DOUBLED = 0.005
"""Two points of an outline nearer than this (0.05 mm) are one point drawn twice."""

NOTCH_ROOM = 1.2
"""No notch nearer to a corner or to another notch, cm: the slits would meet."""

NOTCH_SET = 1.0
"""Notches of one set stand this far apart, cm; such a pair is no clash."""

SHARP_CORNER = 20.0
"""A corner of less paper than this is blunted before cutting, degrees."""

SMALL_PIECE = 3.0
"""A piece smaller than this both ways can't be handled, cm (strips excepted)."""

OUTWARD_RADIUS = 0.69
"""Tightest outward curve, cm. The notes ask for 1, to be sewn and turned; a facing
rolled inside a corner of 1 keeps 0.7, so the doubt begins below that."""

HOLLOW_RADIUS = 2.0
"""Tightest hollow of an armhole, cm. The notes ask for 3; a facing rolled inside an
armhole of 3 keeps 2.7, so the doubt begins below that."""

NECK_HOLLOW = 0.9
"""Tightest hollow of a neckline, cm. The notes ask for 3, but their own boat neck bends
to 2.5 and their own back neck to 1.1 where they leave the shoulder square."""

GRAIN_INSIDE = 1.0
"""A grain line keeps this far inside the piece at both ends, cm."""

GRAIN_SHARE = 2 / 3
GRAIN_LENGTH = 15.0
"""A grain line is this share of the piece or at least this long, cm."""
