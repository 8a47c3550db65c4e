"""Buttons bought for a stand, and how its edges are faced and its buttonholes worked
(transformations 7)."""

from collections.abc import Callable, Iterable

from clothwright.blocks.torso import in_one
from clothwright.features.chains import NECK_STRIP, TOP, has_armhole
from clothwright.features.notions import Article, Notion
from clothwright.features.openings.fastener_row import fastened
from clothwright.features.openings.stand_band import BAND, BAND_SEAMS, banded
from clothwright.features.openings.stand_button import on_stand
from clothwright.features.openings.stand_pieces import Centre
from clothwright.features.openings.stand_seams import EDGE_CODES
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.paper import EdgeKind, Run, Sheet
from clothwright.rules import Numbers

_ACROSS = ("lower", "hem stand")
"""How the edges of a facing and of a stand begin that lie on the hem's line."""

_AT_JOINT = " over the waist seam, its notch at the joint."

_INSIDE = 1
"""Buttons inside that hold the under edge of a double-breasted front (common
practice)."""


def button_notions(
    n: Numbers, sheet: Sheet, count: int, words: str, *, double: bool, hook: bool
) -> Iterable[Notion]:
    """Buttons with one to spare; a hook where a belt lies."""
    every = (2 * count + _INSIDE if double else count) + on_stand(sheet)
    if not fastened(n):
        yield Notion(
            Article.FLAT_BUTTON,
            every + 1,
            f"for the {words}{_and_stand(sheet)}",
            size=n.d_button,
            spare=1,
        )
    if hook:
        yield Notion(Article.HOOK, 1, f"behind the belt, at the waist{_seam(sheet)}")


def button_operations(
    n: Numbers,
    sheet: Sheet,
    fmt: Callable[[float], str],
    centre: Centre,
    count: int,
    *,
    double: bool,
    hook: bool,
) -> Iterable[Operation]:
    """The edges are faced when the waist is sewn; buttonholes and buttons come last."""
    which = centre.words
    more, too = on_stand(sheet), _and_stand(sheet)
    every = (2 * count + _INSIDE if double else count) + more
    holes = (count + _INSIDE if double else count) + more
    band = banded(sheet) is not None
    yield from _set_band(sheet, centre) if band else (face_edges(sheet, centre),)
    if not fastened(n):
        yield from _buttoned(n, which, too, fmt, every, holes, double=double, band=band)
    if hook:
        yield Operation(
            Work.FASTEN,
            f"Sew a hook and eye at the waist{_seam(sheet)}, under the belt",
            stitch=Stitch.HAND,
            task=Task.HOOK,
            hazards=(Hazard.SMALL_PART,),
        )


def _buttoned(
    n: Numbers,
    which: str,
    too: str,
    fmt: Callable[[float], str],
    every: int,
    holes: int,
    *,
    double: bool,
    band: bool,
) -> Iterable[Operation]:
    """So many buttonholes worked, and buttons sewn on."""
    through = "both layers of the band" if band else "cloth and facing"
    yield Operation(
        Work.FASTEN,
        f"Work {holes} buttonholes in the right {which}{too}",
        (
            f"Each {fmt(n.b_hole)} long, through {through}; try one "
            "on a scrap of both with the interlining.",
        ),
        stitch=Stitch.ZIGZAG,
        length=holes * 2 * n.b_hole,
        task=Task.BUTTONHOLE,
        count=float(holes),
        hazards=(Hazard.BLADE,),
    )
    yield Operation(
        Work.FASTEN,
        f"Sew {every} buttons on",
        (
            f"On the crosses of the left {which}{too}, under the buttonholes when "
            "it is lapped centre on centre.",
        )
        + (
            (
                f"Those of the right {which} are for show; one lies inside, at the "
                "waist.",
            )
            if double
            else ()
        ),
        stitch=Stitch.HAND,
        task=Task.BUTTON,
        count=float(every),
        hazards=(Hazard.SMALL_PART,),
    )


def _seam(sheet: Sheet) -> str:
    return "" if in_one(sheet) else " seam"


def _and_stand(sheet: Sheet) -> str:
    return " and the collar's stand" if on_stand(sheet) else ""


def face_edges(sheet: Sheet, centre: Centre) -> Operation:
    """The facing sewn to the edges, or, cut on, turned back along its fold."""
    which = centre.words
    over = "" if in_one(sheet) else ", over the waist seams"
    top = "neck" if has_armhole(sheet) else TOP
    seams = both_sides(sheet, *EDGE_CODES[centre][:2])
    if seams:
        title = f"Face the {which} edges"
        says = (
            f"From the {top} to the hem in one run{over}; at the hem stitch the "
            "facing across on the hem's line.",
            "Trim in layers, turn; understitch as far as the foot goes.",
        )
        press = "towards the facing, then to the inside"
    else:
        title = f"Turn the {which} facings back"
        says = (
            "Fold each out along its fold, right sides together; at the hem stitch it "
            "across on the hem's line.",
            "Trim, turn, and press the fold over its interlining.",
        )
        press = "the fold sharp"
    return Operation(
        Work.EDGE if in_one(sheet) else Work.CENTRE,
        title,
        says,
        seams=seams,
        edges=across_hem(sheet, centre),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press=press,
        task=Task.FACE,
        count=2.0,
    )


def across_hem(sheet: Sheet, centre: Centre) -> tuple[Run, ...]:
    """Edges of the facing and of the stand on the hem's line."""
    low, lower = centre.low_facing, centre.on(sheet, centre.lower)
    codes = (centre.facing, centre.on(sheet, centre.upper), low, lower)
    return tuple(
        Run(code, e.name)
        for code in codes
        if code in sheet.pieces
        for e in sheet.piece(code).edges
        if e.kind is EdgeKind.FINISHED and e.name.startswith(_ACROSS)
    )


def _set_band(sheet: Sheet, centre: Centre) -> Iterable[Operation]:
    """The bands sewn on over the waist seams; a collar closes their upper ends."""
    collared = bool(both_sides(sheet, "S80"))
    ends, codes = finished_edges(sheet, (centre.facing,), "end"), BAND_SEAMS[centre]
    if collared:
        upper = "leave its upper end open, the collar takes it"
        beside: tuple[str, ...] = ()
    else:
        upper = "stitch across its upper end, level with the neck"
        what = "binding" if NECK_STRIP in sheet.pieces else "facing"
        beside = (f"Catch the end of the neck {what} in its seam.",)
    yield Operation(
        Work.CENTRE,
        f"Sew the {centre.words} bands on",
        (
            "Right sides together, from the neck to the hem in one run"
            + (", notch on notch." if in_one(sheet) else _AT_JOINT),
            *beside,
            f"Fold it right sides together: {upper}; at the hem stitch it across on "
            "the hem's line. Turn, press its inner edge in and fell it to the seam.",
        ),
        seams=both_sides(sheet, *codes),
        edges=(*finished_edges(sheet, (BAND,), "inside"), *(() if collared else ends)),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="into the band",
        task=Task.PLACKETS,
        hazards=(Hazard.IRON,),
    )
    lining = both_sides(sheet, f"L{codes[0]}")
    if lining:
        yield Operation(
            Work.LINED,
            f"Fell the lining to the {centre.words} bands",
            ("Its edge turned in, over the seam of the band, down to its own hem.",),
            seams=lining,
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )
    if collared and ends:
        yield Operation(
            Work.LINED,
            "Fell the facing's ends to the bands",
            edges=ends,
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )
