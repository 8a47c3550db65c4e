"""How pockets are set on, or into, the cloth (common practice, no source)."""

from collections.abc import Callable

from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.pockets.set_on_drawing import OPENING, Kit
from clothwright.paper import Sheet
from clothwright.rules import Numbers

_Fmt = Callable[[float], str]

HEM = 2.5
"""Turned in at the mouth of a patch, cm (transformations §9)."""

_BEHIND = 2.0
"""The interlining behind a mouth reaches so far beyond its stitching, cm (common
practice, no source)."""


def pockets(kit: Kit, shape: str, many: int) -> str:
    """What they are called: "jetted pockets", "patch breast pocket"."""
    return f"{shape} {kit.what}pocket{'s' if many > 1 else ''}"


def interlining(kit: Kit, n: Numbers) -> tuple[float, float]:
    """Length and width of what is fused behind a mouth, cm."""
    return n[f"{kit.key}_wide"] + 2 * _BEHIND, OPENING + 2 * _BEHIND


def patch_sewn(kit: Kit, sheet: Sheet, many: int, fmt: _Fmt) -> Operation:
    """A patch is hemmed at its mouth and stitched on."""
    what = "each" if many > 1 else "it"
    return Operation(
        Work.PANEL,
        f"Stitch the {pockets(kit, 'patch', many)} on",
        (
            f"Turn {fmt(HEM)} in at the mouth and hem it; press the other edges in, "
            "over a card where they are round.",
            f"Lay {what} on its line, stitch round close to the edge, and secure both "
            "ends of the mouth.",
        ),
        edges=finished_edges(sheet, (kit.patch,)),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLACED,
        task=Task.PATCH_POCKET,
        count=float(many),
    )


def mouth_interlined(kit: Kit, n: Numbers, many: int, fmt: _Fmt) -> Operation:
    """A strip behind every mouth, before it is slashed."""
    length, width = (fmt(k) for k in interlining(kit, n))
    several = many > 1
    return Operation(
        Work.FUSE,
        f"Interline behind the {kit.what}pocket mouth{'s' if several else ''}",
        (
            f"A strip {length} by {width} on the wrong side"
            f"{' of each' if several else ''}.",
        ),
        hazards=(Hazard.IRON,),
    )


def welt_made(kit: Kit, n: Numbers, sheet: Sheet, many: int, fmt: _Fmt) -> Operation:
    """A welt stands up over its mouth."""
    high = fmt(n[f"{kit.key}_welt"])
    return _made(
        kit,
        n,
        sheet,
        many,
        "welt",
        kit.welt,
        f"Fold the welt to {high}, close its ends and baste it below the mouth, its "
        "fold down; the faced bag above.",
        "Stitch both lines, the upper a stitch shorter at each end; slash, turn the "
        "bags through, stand the welt up and catch its ends.",
        "Sew the bags round.",
    )


def jets_made(kit: Kit, n: Numbers, sheet: Sheet, many: int, fmt: _Fmt) -> Operation:
    """Two folds that meet in the mouth."""
    return _made(
        kit,
        n,
        sheet,
        many,
        "jetted",
        kit.jet,
        f"Fold each jet lengthwise and stitch it on, {fmt(OPENING / 2)} from its fold, "
        "along its line, the folds away from each other.",
        "Slash, turn the jets through so that their folds meet, and stitch the corners "
        "of the slash to their ends from inside.",
        "Sew a bag to the lower jet, the faced one to the upper, and the bags round.",
    )


def _made(
    kit: Kit, n: Numbers, sheet: Sheet, many: int, shape: str, mouth: str, *says: str
) -> Operation:
    wide, deep = n[f"{kit.key}_wide"], n[f"{kit.key}_deep"]
    return Operation(
        Work.PANEL,
        f"Make the {pockets(kit, shape, many)}",
        (
            "Stitch the facing on the bag that lies behind, along its free edge.",
            *says,
        ),
        edges=finished_edges(sheet, (mouth, kit.facing, kit.bag)),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        length=many * (4 * wide + 2 * deep),
        press="flat",
        task=Task.WELT_POCKET,
        count=float(many),
        hazards=(Hazard.BLADE,),
    )
