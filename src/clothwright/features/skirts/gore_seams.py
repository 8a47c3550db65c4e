"""Seams and corners of a skirt in equal gores or panels (truing 4, 6)."""

from collections.abc import Iterator

from clothwright.features.chains import Chains, between, clear_of, on_table
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.contour_flared import above
from clothwright.features.skirts.pocket_drawing import PANEL_BAG, mouth_places
from clothwright.paper import UNDER, Ease, NotchPair, Seam, Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import NOTCH_ROOM, SKIRT_HEM, SKIRT_WAIST


def gore_seams(t: Chains, n: Numbers) -> list[Seam]:
    """Each gore to the next."""
    left = t.chain((GORE, "seam", False))
    right = t.chain((GORE, "other seam", True))
    whole = t.length(left)
    places = [t.upto(left, t.sheet.points["Hg"])]
    if "Zg" in t.sheet.points:
        end = n.z_S - above(n, t.sheet)
        places = [p for p in places if abs(end - p) > NOTCH_ROOM]
        places = sorted((*places, end))
    places = sorted(clear_of(places, mouth_places(t.sheet, n, PANEL_BAG)))
    places += between(places[-1], whole)
    if t.has(GORE, "gore slit"):
        places.append(whole)
    return [
        Seam(
            "S37",
            gore_seam(t.sheet),
            left,
            right,
            "waist",
            "hem",
            Ease.about(0.0, 0.05),
            notches=tuple(NotchPair(s, s) for s in places),
        )
    ]


def gore_seam(sheet: Sheet) -> str:
    """What the seam is called: of a gore, or of a pleated skirt's panel."""
    return f"{sheet.piece(GORE).name.lower()} seam"


def gore_joints(sheet: Sheet) -> Iterator[Joint]:
    """Waist and hem run on over the seam of a gore, or of a panel."""
    for name, band in (("waist", SKIRT_WAIST), ("hem", SKIRT_HEM)):
        if on_table(sheet, GORE, name):
            both = Corner(GORE, name, End.START), Corner(GORE, name, End.END)
            seam = gore_seam(sheet)
            yield Joint(f"{name} over the {seam}", both, 180.0, band)


def pleat_joints(sheet: Sheet) -> list[Joint]:
    """The waist runs on across each pleat as it lies: at its fold and at its placement
    line the paper is twice as wide as what shows."""
    if GORE not in sheet.pieces:
        return []
    piece = sheet.piece(GORE)
    names = [e.name for e in piece.edges if e.name.startswith(UNDER)]
    return [
        Joint(
            f"waist over {name.removeprefix('under ')}",
            (
                Corner(piece.code, name, End.START),
                Corner(piece.code, f"{name} over", End.END),
            ),
            360.0,
            SKIRT_WAIST,
        )
        for name in names
        if f"{name} over" in names
    ]
