"""How a collar with a lapel is made and its edge faced (transformations 5; cutting and
costing 5)."""

from collections.abc import Iterable

from clothwright.features.collars.collar_sewing import collar_operations
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.sleeves.sleeve_ends import both_sides
from clothwright.paper import Sheet

_ROLLED = (
    "Trim in layers and turn. Above the break point understitch the front, below it "
    "the facing: the seam is out of sight on both.",
)


def notched_operations(sheet: Sheet) -> Iterable[Operation]:
    """The collar is made and set, then the lapels are faced."""
    yield from collar_operations(sheet, Task.SHAWL_COLLAR)
    yield Operation(
        Work.CENTRE,
        "Face the lapels",
        (
            "In one with the front edges, from the end of the collar: the facing, "
            "which is larger, is eased in at the point. Clip to the collar's end.",
            *_ROLLED,
        ),
        seams=both_sides(sheet, "S100"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="over the edge of the board, the roll line not at all",
        task=Task.FACE,
        hazards=(Hazard.IRON,),
    )


def shawl_operations(sheet: Sheet) -> Iterable[Operation]:
    """Undercollar to the shell, facing's collar to the back facing; then both together
    round the outside."""
    yield Operation(
        Work.COLLAR,
        "Close the undercollar at the centre back",
        seams=both_sides(sheet, "S103"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="open",
    )
    yield Operation(
        Work.SET_COLLAR,
        "Sew the undercollar to the neck",
        (
            "Clip the neck to its stay-stitching. Right sides together, from edge to "
            "edge, centres and shoulder notches met; pivot at the centre front.",
        ),
        seams=both_sides(sheet, "S80"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="open, over a ham",
        task=Task.SHAWL_COLLAR,
        hazards=(Hazard.IRON,),
    )
    yield Operation(
        Work.FACING,
        "Close the facing's collar and sew it to the back facing",
        (
            "The centre back first; clip the front facings into the corner at the "
            "shoulder, then round the neck.",
        ),
        seams=both_sides(sheet, "S102", "S101"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="open",
    )
    yield Operation(
        Work.CENTRE,
        "Face the collar and the lapels",
        (
            "In one with the front edges, from the centre back to either side: the "
            "facing, which is larger, is eased in.",
            *_ROLLED,
            "Roll the collar over the hand and baste the two neck seams together, "
            "allowance on allowance, as they lie.",
        ),
        seams=both_sides(sheet, "S100"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="over the edge of the board, the roll line not at all",
        task=Task.FACE,
        count=2.0,
        hazards=(Hazard.IRON,),
    )
