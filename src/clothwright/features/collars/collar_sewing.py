"""How a collar is made and set on (transformations 5; cutting and costing 5)."""

from collections.abc import Container, Iterable

from clothwright.features.collars.collar_pieces import COLLAR, STAND
from clothwright.features.openings.stand_band import BAND
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
from clothwright.paper import Sheet, own_piece

_MAKE = ("S85", "S81", "S82", "S86", "S83", "S84")
"""Seams of the collar itself."""


def collar_operations(sheet: Sheet, task: Task) -> Iterable[Operation]:
    """Make the collar, then baste it to the neck, where the facing goes over it."""
    yield Operation(
        Work.COLLAR,
        "Make the collar",
        tuple(_making({own_piece(s.code) for s in sheet.seams})),
        seams=both_sides(sheet, *_MAKE),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="over a ham, from the underside",
        task=task,
        hazards=(Hazard.IRON,),
    )
    says = "The undercollar lies on the right side of the shell, a little stretched"
    if STAND in sheet.pieces:
        says = "The stand lies on the right side of the shell"
    yield _set(sheet, "Set the collar on the neck", says)


def _making(known: Container[str]) -> Iterable[str]:
    """How the collar itself is sewn."""
    if "S85" in known:
        yield "Close the centre back of the undercollar; press it open."
    if "S81" in known:
        yield (
            "Collar and undercollar right sides together, raw edges matched, the "
            "collar eased at the corners: sew the outer edge. Trim in layers, clip the "
            "curves, cut the corners off; turn, and press with the seam rolled under."
        )
        yield "Over the hand, baste their other edges together as they lie."
    if "S86" in known:
        yield (
            "Lay it between the two stands, right sides together, from the centre back "
            "to the centre front; sew the upper edge and the ends in one. Trim, turn."
        )
    elif "S83" in known:
        yield (
            "The two stands right sides together: sew the upper edge and the ends. "
            "Trim in layers, clip the curve, turn; baste the neck edges together."
        )


def single_operations(sheet: Sheet) -> Iterable[Operation]:
    """A collar of one layer: hemmed first, then basted to the neck under the facing."""
    edges = finished_edges(sheet, (COLLAR,))
    what = sheet.piece(COLLAR).name.lower().removesuffix(", right")
    centre = both_sides(sheet, "S87")
    if centre:
        yield Operation(
            Work.COLLAR,
            f"Close the centre of the {what}",
            seams=centre,
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            neatened=2,
            press="open",
        )
    yield Operation(
        Work.COLLAR,
        f"Hem the {what}",
        ("Turned twice, narrow, round the outside and the ends.",),
        edges=edges,
        stitch=Stitch.LOCK,
        seam_type=SeamType.HEM_TWICE,
        task=Task.CIRCLE_HEM,
    )
    yield _set(sheet, f"Set the {what} on the neck", "Its wrong side lies on the shell")


def tie_operations(sheet: Sheet) -> Iterable[Operation]:
    """A tie: its ends bagged, then basted to the neck under the facing."""
    yield Operation(
        Work.COLLAR,
        "Make the tie",
        (
            "Fold it lengthwise, right side in; sew its ends and the long edges as far "
            "as the neck; clip there, trim the corners, turn.",
        ),
        seams=both_sides(sheet, "S88", "S89", "S84", "S82"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="flat, the seam in the edge",
        task=Task.FLAT_COLLAR,
        hazards=(Hazard.IRON, Hazard.CORD),
    )
    yield _set(sheet, "Set the tie on the neck", "Both its edges lie on the shell")


def _set(sheet: Sheet, title: str, says: str) -> Operation:
    banded = BAND in sheet.pieces  # its bands are sewn on first, over the waist seam
    return Operation(
        Work.CENTRE if banded else Work.SET_COLLAR,
        title,
        (
            "Clip the neck to its stay-stitching. "
            f"{says}, centres and shoulder notches met. Baste it; the facing is laid "
            "over it and sewn in one with it.",
        ),
        seams=both_sides(sheet, "S80", *(("S8", "S9") if banded else ())),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
    )
