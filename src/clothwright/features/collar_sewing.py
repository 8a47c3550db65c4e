"""How a collar is made and set on (transformations 5; cutting and costing 5)."""

from collections.abc import Iterable

from clothwright.features.collar import COLLAR
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.paper import Sheet

_MAKE = ("S65", "S61", "S62", "S66", "S63", "S64")
"""Seams of the collar itself."""

_SET = ("S60",)
"""Seams at the neck."""


def collar_operations(sheet: Sheet, task: Task, *more: str) -> Iterable[Operation]:
    """Make the collar, then baste it to the neck, where the facing goes over it;
    `more` is said of the making."""
    known = {s.code for s in sheet.seams}
    says = []
    if "S65" in known:
        says.append("Close the centre back of the undercollar; press it open.")
    says += more
    if "S61" in known:
        says.append(
            "Collar and undercollar right sides together, raw edges matched, the "
            "collar eased at the corners: sew the outer edge."
        )
    says += (
        "Trim the allowances in layers, clip the curves, cut the corners off; turn.",
        "Press it with the seam rolled to the underside; over the hand, baste the neck "
        "edges together as they lie.",
    )
    yield Operation(
        Work.COLLAR,
        "Make the collar",
        tuple(says),
        seams=tuple(c for c in _MAKE if c in known),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="over a ham, from the underside",
        task=task,
        hazards=(Hazard.IRON,),
    )
    yield _set(
        known,
        "Set the collar on the neck",
        "The undercollar lies on the right side of the shell, the collar a little "
        "stretched",
    )


def single_operations(sheet: Sheet) -> Iterable[Operation]:
    """A collar of one layer: hemmed first, then basted to the neck under the facing."""
    known = {s.code for s in sheet.seams}
    edges = finished_edges(sheet, (COLLAR,))
    what = sheet.piece(COLLAR).name.lower()
    if "S67" in known:
        yield Operation(
            Work.COLLAR,
            f"Close the centre of the {what}",
            seams=("S67",),
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
    yield _set(known, f"Set the {what} on the neck", "Its wrong side lies on the shell")


def tie_operations(sheet: Sheet) -> Iterable[Operation]:
    """A tie: its ends bagged, then basted to the neck under the facing."""
    known = {s.code for s in sheet.seams}
    yield Operation(
        Work.COLLAR,
        "Make the tie",
        (
            "Fold it lengthwise, right side in; sew its ends and the long edges as far "
            "as the neck; clip there, trim the corners, turn.",
        ),
        seams=tuple(c for c in ("S68", "S69", "S64", "S62") if c in known),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="flat, the seam in the edge",
        task=Task.FLAT_COLLAR,
        hazards=(Hazard.IRON, Hazard.CORD),
    )
    yield _set(known, "Set the tie on the neck", "Both its edges lie on the shell")


def _set(known: Iterable[str], title: str, says: str) -> Operation:
    return Operation(
        Work.SET_COLLAR,
        title,
        (
            "Clip the neck to its stay-stitching. "
            f"{says}, centres and shoulder notches met. Baste it; the facing is laid "
            "over it and sewn in one with it.",
        ),
        seams=tuple(c for c in _SET if c in known),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
    )
