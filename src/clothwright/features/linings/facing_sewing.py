"""What is done to a facing beside its seams (first garment 14)."""

from collections.abc import Iterable

from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.roles import FREE_ABOVE
from clothwright.paper import Sheet


def facing_operations(sheet: Sheet) -> Iterable[Operation]:
    """Its loose edge is neatened, and tacked down; where a lining hangs from it, there
    is none."""
    loose = finished_edges(sheet, ("F", "B", "P"), "free", FREE_ABOVE, "panel")
    if not loose:
        return
    yield Operation(
        Work.FACING,
        "Neaten the facing's loose edge",
        edges=loose,
        stitch=Stitch.OVEREDGE,
        seam_type=SeamType.NEATENED,
    )
    yield Operation(
        Work.LINED,
        "Tack the facing down",
        ("To the allowances of the seams that it crosses, not to the shell.",),
        stitch=Stitch.HAND,
        task=Task.BY_HAND,
    )
