"""The front of a pleated skirt of a dress sewn of three breadths, their seams in inner
folds of its pleats: so it goes on a cloth that is narrower than the whole of it
(transformations §10; where the seam lies is common practice)."""

from dataclasses import replace

from clothwright.curves import Path, Point
from clothwright.features.chains import spaced
from clothwright.features.grain import grained
from clothwright.features.skirts.half_pleats import HalfPleats
from clothwright.paper import (
    UNDER,
    Drafting,
    Ease,
    NotchPair,
    PaperError,
    Verb,
    cut,
    spot_on,
)

FRONT, SIDE_FRONT = "PF", "PFX"
"""The front, of which the centre breadth remains; the breadth beside it, a pair."""

BREADTH, SEAM_CODE = "breadth", "S135"
"""Edge of both along their seam, and its code."""


def inner_folds(k: HalfPleats) -> list[float]:
    """Where the inner folds of a half lie at the hip with the pleats open, from the
    centre, cm."""
    strips = k.strips()
    return [(s.right + t.left) / 2 for s, t in zip(strips, strips[1:], strict=False)]


def fold_for_seam(k: HalfPleats) -> int:
    """Number of the pleat whose inner fold the seam lies in: so that the centre
    breadth, which is on the fold, and both others are as alike as can be."""
    places = inner_folds(k)
    return min(range(len(places)), key=lambda i: abs(3 * places[i] - k.width)) + 1


def cut_in_breadths(d: Drafting, k: HalfPleats) -> None:
    """Cut the front, its pleats laid open, along the inner fold of a pleat. Raises
    PaperError."""
    places = inner_folds(k)
    if not places:
        raise PaperError(
            "the front has no pleat beside the face at its centre to hide a seam in: "
            "make the pleats (pv wanted) narrower"
        )
    j = fold_for_seam(k)
    front = d.sheet.piece(FRONT)
    centre = front.edge("cf").path.start.x
    x = centre - places[j - 1]
    top = front.edge(f"{UNDER} {j}").path.start
    hip, foot = Point(x, k.hip), Point(x, k.length)
    line = Path.line(top, hip) + Path.line(hip, foot)
    sheet = cut(
        d.sheet,
        FRONT,
        line,
        spot_on(front, f"{UNDER} {j}", top),
        spot_on(front, "hem", line.end),
        edge=BREADTH,
        seam=SEAM_CODE,
        seam_name="front breadth",
        into=((FRONT, "Centre front skirt"), (SIDE_FRONT, "Side front skirt")),
    )
    seam = sheet.seam(SEAM_CODE)
    notches = spaced((), line.length)
    seam = replace(
        seam,
        start="inner fold at the waist",
        end="hem",
        ease=Ease.about(0.0, 0.05),
        notches=tuple(NotchPair(s, s) for s in notches),
    )
    parts = (grained(sheet.piece(c)) for c in (FRONT, SIDE_FRONT))
    d.part = "skirt front"
    d.lay(
        Verb.CUT,
        sheet.put(*parts).sew(seam),
        f"{FRONT}.{BREADTH}",
        f"front, along the inner fold of pleat {j}",
        amounts=(("from the centre at the hip, the pleats open", centre - x),),
        detail="the centre breadth stays on the fold, the other is cut as a pair; "
        "pressed in, the seam lies behind the pleat",
        lines=(line,),
    )
