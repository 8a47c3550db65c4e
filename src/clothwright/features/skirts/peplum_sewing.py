"""The peplum in the cloth: its edges, its gathers, its hem (first garment 13)."""

from collections.abc import Callable, Iterable

from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
    finished_edges,
)
from clothwright.features.wholes import below_waist
from clothwright.paper import Sheet
from clothwright.rules import Numbers

_Fmt = Callable[[float], str]

_ROWS = 2
"""Rows of gathering stitches."""


def behind_opening(n: Numbers, fmt: _Fmt) -> str:
    """How a peplum that runs on behind the opening ends at the centre back (13.4)."""
    return (
        f"On the left half fold the {fmt(n.lap_P)} underlap under and sew the waist "
        "behind the opening to the panel; on the right half bind that waist and leave "
        "the underlap flat."
    )


def gathered_in(n: Numbers, fmt: _Fmt, called: str = "peplum") -> str:
    """How much is gathered into the waist."""
    return (
        f"Gather the {called}'s {fmt(n.w_below)} into {fmt(2 * (n.w_F + n.w_PB))} of "
        "waist."
    )


def peplum_operations(
    n: Numbers,
    sheet: Sheet,
    fmt: _Fmt,
    *,
    gathered: bool,
    underlapped: bool,
    hooks: int,
    called: str = "peplum",
) -> Iterable[Operation]:
    """Open edges before the waist, the hem when it has hung."""
    seam = "the seam" if below_waist(n) else "the waist"
    opened = finished_edges(sheet, ("P",), "open")
    if opened:
        yield Operation(
            Work.SKIRT,
            "Hem the open edges of the back peplum",
            ("Turned twice; both ends run out into the waist and the hem.",),
            edges=opened,
            stitch=Stitch.LOCK,
            seam_type=SeamType.HEM_TWICE,
            task=Task.NARROW_HEM,
        )
    if gathered:
        yield Operation(
            Work.READY,
            f"Gather the {called}",
            (
                gathered_in(n, fmt, called),
                "Two rows of long stitches, one to each side of the net line, drawn up "
                "evenly between the notches.",
            ),
            stitch=Stitch.LOCK,
            length=_ROWS * n.w_below,
            task=Task.GATHER,
        )
    if underlapped:
        yield Operation(
            Work.BEHIND,
            "Finish the peplum's waist behind the opening",
            (behind_opening(n, fmt),),
            seams=tuple(s.code for s in sheet.seams if s.code in ("S22", "LS22")),
            edges=finished_edges(sheet, ("P",), "waist lap"),
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )
    if hooks:
        some = "a hook and eye" if hooks == 1 else f"{hooks} hooks and eyes"
        yield Operation(
            Work.FASTEN,
            f"Sew {some} at the back of the peplum",
            ("On the crosses of the back peplum.",),
            stitch=Stitch.HAND,
            task=Task.HOOK,
            count=hooks,
            hazards=(Hazard.SMALL_PART,),
        )
    if not gathered:
        yield Operation(
            Work.HANG,
            f"Let the {called} hang a day or two, then level the hem",
            ("What lies on the bias drops; measure the hem from the floor again.",),
        )
    hems = finished_edges(sheet, ("P",), "hem")
    if not hems:  # faced
        return
    yield Operation(
        Work.HEM,
        f"Hem the {called}",
        (f"Turned twice, narrow; {fmt(n.L)} below {seam} when it is done.",),
        edges=hems,
        stitch=Stitch.LOCK,
        seam_type=SeamType.HEM_TWICE,
        task=Task.HEM if gathered else Task.CIRCLE_HEM,
    )
