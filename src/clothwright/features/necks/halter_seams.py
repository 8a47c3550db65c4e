"""Seams and corners of a halter: its straps, their band, its back (transformations 1.8,
2)."""

from collections.abc import Iterator

from clothwright.features.chains import Chains, on_table
from clothwright.features.linings.facing_seams import strap_to_band
from clothwright.features.necks.halter_rules import HALTER_BAND
from clothwright.features.necks.strap_seams import bagged
from clothwright.paper import Seam, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NECK_SUM


def halter_seams(t: Chains, n: Numbers) -> Iterator[Seam]:
    """The band to the straps, and to itself, cut twice; the facing inside a strap."""
    end = t.chain((HALTER_BAND, "strap end", False))
    strap = t.chain(("F", "shoulder", True))
    yield Seam("S63", "strap to the band", strap, end, "neck", "armhole")
    yield bagged(t, "S64", "band, bagged", HALTER_BAND, "strap")
    if "FF" in t.sheet.pieces:
        yield from strap_to_band(t, "S65", "FF", n.rho)


def halter_joints(sheet: Sheet) -> Iterator[Joint]:
    """The armhole runs on in the upper edge of the back."""
    if not (on_table(sheet, "F", "armhole") and on_table(sheet, "B", "neck")):
        return
    corners = Corner("F", "armhole", End.START), Corner("B", "neck", End.END)
    yield Joint("edge over the side", corners, 180.0, NECK_SUM)
