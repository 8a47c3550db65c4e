"""How a collar is made and set on (transformations 5; cutting and costing 5)."""

from collections.abc import Iterable

from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
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
    yield Operation(
        Work.SET_COLLAR,
        "Set the collar on the neck",
        (
            "Clip the neck to its stay-stitching. The undercollar lies on the right "
            "side of the shell; centres and shoulder notches meet, the collar a little "
            "stretched. Baste it; the facing is laid over it and sewn in one with it.",
        ),
        seams=tuple(c for c in _SET if c in known),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
    )
