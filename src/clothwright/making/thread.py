"""Thread by stitch and length of seam (cutting and costing 3, standards 3)."""

import math
from collections.abc import Mapping

from clothwright.features.operations import Stitch
from clothwright.units import Unit

RATIO: Mapping[Stitch, float] = {
    Stitch.LOCK: 2.5,
    Stitch.ZIGZAG: 7.0,
    Stitch.COVER: 16.0,
    Stitch.OVEREDGE: 14.0,
    Stitch.FOUR_THREAD: 18.0,
    Stitch.TOP_COVER: 24.0,
    Stitch.HAND: 2.0,
}
"""Thread to one length of seam, needle and under thread together; by hand, and the
stitches of knits but for the three-thread overedge: common practice, no source."""

WASTE = 0.20
"""Ends, basting and unpicking, as a share of the thread in the seams."""

REEL = 100.0
"""Thread on a reel, m (common practice; the reels of shops differ)."""


def thread(stitched: Mapping[Stitch, float]) -> float:
    """Thread for these lengths of stitches (cm), waste included, in m."""
    net = sum(length * RATIO[stitch] for stitch, length in stitched.items())
    return net * (1 + WASTE) / 100


_YARD = 0.9144
"""A yard, m."""


def thread_told(metres: float, unit: Unit) -> str:
    """So much thread as a workroom says it: in metres, or in yards where it works in
    inches ("147 m", "161 yd"); tenths below ten."""
    amount, mark = (metres / _YARD, "yd") if unit is Unit.IN else (metres, "m")
    return f"{amount:.0f} {mark}" if amount >= 10 else f"{amount:.1f} {mark}"


def reels(metres: float, reel: float = REEL) -> int:
    """Whole reels that hold so much thread; one at least."""
    return max(1, math.ceil(metres / reel - 1e-9))
