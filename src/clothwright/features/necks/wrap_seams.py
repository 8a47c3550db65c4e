"""Seams and corners of a wrap at the waist, where its fronts lie on each other
(transformations 1.8, 2, 6)."""

import math
from collections.abc import Iterator

from clothwright.features.chains import Chains, on_table
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.skirts.hanging_seams import crosses
from clothwright.paper import Ease, Seam, SeamKind, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint


def wrap_seams(t: Chains, n: Numbers) -> Iterator[Seam]:
    """What lies beyond the centre, on the waist of the other front, unless a skirt that
    crosses takes it; the foot of the facing, caught in the waist."""
    waist = t.chain(("F", "waist", False), ("F", "waist side", False))
    over = t.chain(("F", OVER, True))
    if not crosses(t.sheet):
        yield Seam(
            "S61",
            "waist, one front on the other",
            waist,
            over,
            "centre front",
            "side",
            Ease.about(n.wx - t.length(waist), 0.1),
            kind=SeamKind.LAPPED,
        )
    foot = t.chain(("FF", "foot", False))
    if foot:
        over = t.chain(("F", OVER, False))
        yield Seam(
            "S62",
            "front facing foot, caught in the waist",
            over,
            foot,
            "edge of the wrap",
            "centre front",
            Ease.about(n.strip_w - _rolled(t, n.rho) - t.length(over), 0.1),
            kind=SeamKind.LAPPED,
        )


def _rolled(t: Chains, rho: float) -> float:
    """What the roll takes of the waist at the edge of a wrap."""
    corner = t.sheet.piece("F").interior_angle("neck")
    return rho / math.sin(math.radians(corner))


def wrap_joints(sheet: Sheet) -> Iterator[Joint]:
    """The waist runs on over the centre front."""
    if on_table(sheet, "F", OVER):
        corners = (Corner("F", OVER, End.END),)
        yield Joint("waist over the centre front", corners, 180.0)
