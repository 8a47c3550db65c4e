"""Front of a dress's skirt that crosses as the wrap front above it does: its edge goes
on from the bodice's (transformations 2; common practice, no source)."""

import math
from collections.abc import Callable, Iterable

from clothwright.blocks.circle import arc
from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import Cuts
from clothwright.features.chains import Chains
from clothwright.features.linings.sewn_halves import OVER
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import Role
from clothwright.features.skirts.skirt_sewing import ties_made
from clothwright.features.skirts.wrap_skirt_drawing import (
    EDGE,
    TIE_OVER,
    TIE_UNDER,
    lay_tie,
)
from clothwright.features.skirts.wrap_skirt_rules import SRC
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    NotchPair,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable

SKIRT = "PF"

PIECES = (
    About(SKIRT, edges={EDGE: Role.OPEN}),
    *(
        About(code, Place.CONTOUR, ("skirt",), others=Role.BAND)
        for code in (TIE_OVER, TIE_UNDER)
    ),
)

SEAMS = {"S124": "waist of a wrap beyond the centre, on a skirt that crosses too"}

FORBIDS = {
    "closure": "a dress whose fronts cross all the way down closes by them; leave the "
    "other closing off",
    "open back": "a wrap is held by its ties at the waist, an open back would gape; "
    "leave one of the two off",
}
"""What a skirt that crosses does not allow beside it."""

WANTS = {
    "wrap": 'a skirt whose front crosses goes on from fronts that cross; add a "wrap '
    'front"'
}

WRAP_DRESS = RuleTable("ties of a wrap dress")


@WRAP_DRESS.rule(
    "tie over", "tie at the edge that lies over", source=SRC, key="tie_over"
)
def _tie_over(bow: float) -> float:
    return bow


@WRAP_DRESS.rule(
    "tie under",
    "tie at the edge that lies under",
    source=SRC,
    key="tie_under",
    formula="from its edge through the side and round the back to the other edge: "
    "2·w½ − 2·wx; and what the bow takes",
)
def _tie_under(w_half: float, wx: float, bow: float) -> float:
    return max(0.0, 2 * w_half - 2 * wx) + bow


def cross_skirt(d: Drafting, *, gathered: bool) -> None:
    """The front run on beyond its centre by as much as the bodice's, and the ties."""
    n, pf = d.n, d.sheet.piece(SKIRT)
    waist, hem, centre = (pf.edge(e) for e in ("waist", "hem", "cf"))
    a, b = centre.path.start, centre.path.end
    if gathered:
        wide = Point(n.wx * n.g, 0.0)
        top, foot = Path.line(a, a + wide), Path.line(b + wide, b)
    else:
        cut = n.wx * n.wc / (2 * (n.w_F + n.w_PB))
        degrees = math.degrees(cut / n.r)
        o = Point(0.0, 0.0)
        top = arc(o, n.r, 90, 90 - degrees)
        foot = arc(o, n.r_hem, 90 - degrees, 90)
    whole = hem.along(foot.pinned(foot.start, hem.path.start) + hem.path)
    edge = straight(EDGE, top.end, foot.start, EdgeKind.FINISHED)
    over = Edge(OVER, top.pinned(waist.path.end, top.end))
    loop = (waist, over, edge, whole, pf.edge("side"))
    lines = (*pf.lines, InnerLine("centre front", centre.path))
    d.part = "skirt"
    d.lay(
        Verb.REDRAW,
        d.sheet.put(Piece(SKIRT, pf.name, loop, pf.marks, lines)),
        SKIRT,
        "front of the skirt run on beyond the centre, where the bodice's edge ends",
        amounts=(("on the waist of the bodice", "wx"),),
        detail="the edge goes down from there "
        + ("plumb" if gathered else "on a line from Op"),
        lines=(edge.path,),
    )
    lay_tie(d, TIE_OVER, "Short tie", "tie_over")
    lay_tie(d, TIE_UNDER, "Long tie", "tie_under")


def waist_over(t: Chains, n: Numbers, *, gathered: bool) -> Seam | None:
    """What of the bodice's wrap lies beyond the centre, on the skirt's."""
    left = t.chain(("F", OVER, True))
    right = t.chain((SKIRT, OVER, False))
    if not (left and right):
        return None
    if gathered:
        ease = Ease.about(n.wx * (n.g - 1), 0.15)
    else:
        yields = n.ew + (n.by / 2 if "by" in n else 0.0)
        ease = Ease.about(-yields * n.wx / (n.w_F + n.w_PB), 0.05)
    name, at = "waist, beyond the centre", (NotchPair(0.0, 0.0),)
    ends = "centre front", "edge"
    return Seam("S124", name, left, right, *ends, ease, None, at)


CUTS = {code: Cuts("1", 1) for code in (TIE_OVER, TIE_UNDER)}


def note(n: Numbers, fmt: Callable[[float], str]) -> str:
    """How the fronts are cut."""
    return (
        "Right over left. The fronts of bodice and skirt are no halves: cut each "
        f"twice, mirrored; they reach {fmt(n.wx)} beyond the centre at the waist."
    )


def wrap_operations(sheet: Sheet, fmt: Callable[[float], str]) -> Iterable[Operation]:
    """The edges before the waist, the ties, and how they hold it."""
    yield Operation(
        Work.SKIRT,
        "Hem the front edges of the skirt",
        ("Turned twice, narrow; they go on from the faced edges of the bodice.",),
        edges=finished_edges(sheet, (SKIRT,), EDGE),
        stitch=Stitch.LOCK,
        seam_type=SeamType.HEM_TWICE,
        task=Task.NARROW_HEM,
    )
    lined = finished_edges(sheet, ("L.PF",), EDGE)
    if lined:
        yield Operation(
            Work.LINED,
            "Fell the lining to the front edges of the skirt",
            ("Its edges turned in, on the narrow hems, from the waist to its hem.",),
            edges=lined,
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )
    yield ties_made(sheet, (TIE_OVER, TIE_UNDER))
    wide = fmt(sheet.length(TIE_OVER, "free end") / 2)
    yield Operation(
        Work.BEHIND,
        "Sew the ties to the front edges at the waist",
        (
            "The short one to the edge of the right front, the long one to that of the "
            "left, in the end of the waist seam.",
            f"The right side is left open for {wide} above the waist seam, its edges "
            "stitched down: the long tie goes out there and round the back."
            + (" The lining is left open there too." if lined else ""),
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLACED,
        length=4 * sheet.length(TIE_OVER, "free end"),
        task=Task.BY_HAND,
    )
