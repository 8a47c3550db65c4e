"""A torso in the cloth: its fish-eye darts and its hem (blocks D)."""

from collections.abc import Callable, Iterable

from clothwright.blocks import torso
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.paper import Sheet
from clothwright.rules import Numbers


def torso_operations(
    n: Numbers, sheet: Sheet, fmt: Callable[[float], str], *, hemmed: bool
) -> Iterable[Operation]:
    """Its darts, and its hem unless a skirt is sewn to its seam."""
    for code, half in (("F", "front"), ("B", "back")):
        if torso.fish_eye(sheet, code) is not None:
            yield Operation(
                Work.DART,
                f"Sew the {half} waist darts",
                (
                    "From the middle to either point, overlapping there; run off "
                    "the cloth and tie the ends. Clip the fold at the waist.",
                ),
                stitch=Stitch.LOCK,
                seam_type=SeamType.PLAIN,
                length=2 * torso.stitched(sheet, code),
                press="towards the centre",
                task=Task.DART,
                count=2.0,
            )
        if torso.fish_eye(sheet, f"L.{code}") is not None:
            yield Operation(
                Work.DART,
                f"Sew the waist darts of the {half} lining",
                ("As the shell's, pressed the other way.",),
                stitch=Stitch.LOCK,
                length=2 * torso.stitched(sheet, f"L.{code}"),
            )
    if not hemmed:
        return
    hems = finished_edges(sheet, (*torso.PIECES, "P"), "hem")
    if not hems:  # faced
        return
    yield Operation(
        Work.HEM,
        "Hem the lower edge",
        (
            f"Level it from the floor, {fmt(n.L)} below the waist; neaten it, turn "
            "it up and fell it by hand.",
        ),
        edges=hems,
        stitch=Stitch.HAND,
        seam_type=SeamType.HEM_ONCE,
        neatened=1,
        task=Task.HEM,
    )
