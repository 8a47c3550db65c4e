"""What is sewn to what on a knit skirt, and how its corners meet (truing 2, 4)."""

from clothwright.blocks.knit_skirt import SKIRT
from clothwright.features.chains import Chains, clear_of, spaced
from clothwright.features.knits.knit_waistband import WAISTBAND
from clothwright.features.skirts.pocket_drawing import mouth_places
from clothwright.paper import Ease, NotchPair, Seam, SeamKind, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import Band

_SIDE = Band(3.0, 8.0, "waist and hem of a knit skirt run on across its side, degrees")


def knit_skirt_seams(t: Chains, n: Numbers) -> list[Seam]:
    """The side, front to back: one piece is both."""
    side = t.chain((SKIRT, "side", False))
    waist, band = t.chain((SKIRT, "waist", False)), t.chain((WAISTBAND, "waist", False))
    out = []
    if band:
        plan, half = (n.band_waist - n.knit_waist) / 4, t.length(waist) / 2
        end, inside = (
            t.chain((WAISTBAND, "end", False)),
            t.chain((WAISTBAND, "inside", True)),
        )
        out = [
            Seam(
                "S122",
                "waistband on its edge",
                waist,
                band,
                "centre",
                "side",
                Ease.about(plan, 0.1),
                notches=(NotchPair(half, t.length(band) / 2),),
                stretched=True,
            ),
            Seam(
                "S122a",
                "ends of the waistband",
                end,
                end,
                "upper edge",
                "inner edge",
                kind=SeamKind.TWIN,
            ),
            Seam("S122b", "waistband, folded in half", band, inside, "centre", "side"),
        ]
    whole = t.length(side)
    places = [n.casing]
    if n.WH_knit < n.L:
        hip = t.upto(side, t.sheet.points["Hq"])
        places.append(hip)
    places = clear_of(places, mouth_places(t.sheet, n))
    return [
        *out,
        Seam(
            "S121",
            "side of the skirt",
            side,
            side,
            "waist",
            "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(NotchPair(s, s) for s in spaced(places, whole)),
            kind=SeamKind.TWIN,
        ),
    ]


def knit_skirt_joints(sheet: Sheet) -> list[Joint]:
    """Waist and hem run on over the side and over the fold."""
    if SKIRT not in sheet.pieces:
        return []
    out = []
    for edge, at_side, at_fold in (
        ("waist", End.END, End.START),
        ("hem", End.START, End.END),
    ):
        both = Corner(SKIRT, edge, at_side), Corner(SKIRT, edge, at_side)
        out.append(Joint(f"{edge} over the side of the skirt", both, 180.0, _SIDE))
        where = f"{edge} of the skirt at the fold"
        out.append(Joint.fold(where, Corner(SKIRT, edge, at_fold)))
    return out
