"""Buttons bought for a stand, and how its edges are faced and its buttonholes worked
(transformations 7)."""

from collections.abc import Callable, Iterable

from clothwright.features.notions import Article, Notion
from clothwright.features.openings.stand_pieces import Centre
from clothwright.features.openings.stand_seams import EDGE_CODES
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.paper import EdgeKind, Run, Sheet
from clothwright.rules import Numbers

_INSIDE = 1
"""Buttons inside that hold the under edge of a double-breasted front (common
practice)."""


def button_notions(
    n: Numbers, count: int, words: str, *, double: bool, hook: bool
) -> Iterable[Notion]:
    """Buttons with one to spare; a hook where a belt lies."""
    every = 2 * count + _INSIDE if double else count
    yield Notion(
        Article.FLAT_BUTTON,
        every + 1,
        f"for the {words}",
        size=n.d_button,
        spare=1,
    )
    if hook:
        yield Notion(Article.HOOK, 1, "behind the belt, at the waist seam")


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
    every = 2 * count + _INSIDE if double else count
    holes = count + _INSIDE if double else count
    low, lower = centre.low_facing, centre.on(sheet, centre.lower)
    across = tuple(
        Run(code, e.name)
        for code in (low, lower)
        if code in sheet.pieces
        for e in sheet.piece(code).edges
        if e.kind is EdgeKind.FINISHED and e.name.startswith(("lower", "hem stand"))
    )
    yield Operation(
        Work.CENTRE,
        f"Face the {which} edges",
        (
            "From the neck to the hem in one run, over the waist seams; at the hem "
            "stitch the facing across on the hem's line.",
            "Trim in layers, turn; understitch as far as the foot goes.",
        ),
        seams=tuple(s.code for s in sheet.seams if s.code in EDGE_CODES[centre][:2]),
        edges=across,
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="towards the facing, then to the inside",
        task=Task.FACE,
        count=2.0,
    )
    yield Operation(
        Work.FASTEN,
        f"Work {holes} buttonholes in the right {which}",
        (
            f"Each {fmt(n.b_hole)} long, through cloth and facing; try one "
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
            f"On the crosses of the left {which}, under the buttonholes when it is "
            "lapped centre on centre.",
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
    if hook:
        yield Operation(
            Work.FASTEN,
            "Sew a hook and eye at the waist seam, under the belt",
            stitch=Stitch.HAND,
            task=Task.HOOK,
            hazards=(Hazard.SMALL_PART,),
        )
