"""A skirt in the cloth: what no seam of it tells (transformations §6 to §8)."""

from collections.abc import Callable, Iterable

from clothwright.features.openings.zips import (
    Setting,
    below_zip,
    how_set,
    strip_work,
    zip_task,
    zip_work,
)
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
from clothwright.rules import Numbers

_Fmt = Callable[[float], str]

_ROWS = 2
"""Rows of gathering stitches."""


def zip_operations(
    n: Numbers, sheet: Sheet, fmt: _Fmt, seam: str, setting: Setting
) -> Iterable[Operation]:
    """The zip, and the centre back below it."""
    concealed = setting is Setting.CONCEALED
    lies = ", face down on the net line of each half" if concealed else ""
    over = "front over back" if "side" in seam else "left over right"
    codes = tuple(s.code for s in sheet.seams if s.code in ("S35", "S36"))
    centre = "Zb" in sheet.points and bool(codes)
    put_in = Operation(
        zip_work(setting) if centre else Work.ZIP,
        f"Put in the {setting.value} zip",
        (
            f"From the waist down the {seam} to the notch {fmt(n.z_S)} below it{lies}.",
            *how_set(setting, fmt, over),
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.SET_ON,
        length=2 * n.z_S,
        task=zip_task(setting),
    )
    yield strip_work(fmt, seam)
    if not centre:
        yield put_in
        return
    closed = Operation(
        Work.CENTRE,
        "Close the centre back below the zip",
        below_zip(setting, vent="S36" in codes),
        seams=codes,
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        length=sum(sheet.chain_length(sheet.seam(c).left) for c in codes) - n.z_S,
        neatened=2,
        press="open",
    )
    yield from (put_in, closed) if concealed else (closed, put_in)


def band_operations(sheet: Sheet) -> Iterable[Operation]:
    """A straight band closed over the waist seam."""
    yield Operation(
        Work.BAND,
        "Close the waistband",
        (
            "Fold it right sides together, stitch both ends and the underlap, trim, "
            "turn; fell the inner edge to the waist seam.",
        ),
        edges=finished_edges(sheet, ("WB",)),
        stitch=Stitch.LOCK,
        seam_type=SeamType.SET_ON,
    )
    yield _hook("Sew the hook and eye to the waistband", "On the crosses of the band.")


def _hook(title: str, says: str) -> Operation:
    return Operation(
        Work.FASTEN,
        title,
        (says,),
        stitch=Stitch.HAND,
        task=Task.HOOK,
        hazards=(Hazard.SMALL_PART,),
    )


def ties_made(sheet: Sheet, ties: tuple[str, str]) -> Operation:
    """The two ties of a wrap, closed at one end each."""
    return Operation(
        Work.BAG,
        "Make the ties",
        (
            "Fold each lengthwise, right sides together, stitch the long edge and one "
            "end, trim, turn and press.",
        ),
        edges=finished_edges(sheet, ties),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        task=Task.BAG,
        count=2.0,
    )


def facing_operations(sheet: Sheet) -> Iterable[Operation]:
    """A waist faced when the sides are sewn and the zip is in."""
    yield Operation(
        Work.BAND,
        "Face the waist",
        (
            "Over the tape. Trim the allowances in layers, clip the curves, turn; "
            "stitch the allowances to the facing, and fell its ends to the zip's tape.",
        ),
        seams=tuple(s.code for s in sheet.seams if s.code.startswith("S38.")),
        stitch=Stitch.LOCK,
        press="towards the facing, then rolled to the inside",
        task=Task.FACE,
    )
    yield _hook("Sew a hook and eye above the zip", "Inside the top of the waist.")


def contour_operations(sheet: Sheet) -> Iterable[Operation]:
    """A shaped band sewn on piece by piece, and faced by itself."""
    codes = [s.code for s in sheet.seams if s.code.startswith("S39.")]
    yield Operation(
        Work.PANEL,
        "Sew each shaped band to its half",
        (),
        seams=tuple(c for c in codes if not c.endswith("t")),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="into the band",
        task=Task.ACROSS,
    )
    yield Operation(
        Work.BAND,
        "Face the shaped band with its second cut",
        (
            "The upper edges over the tape; turn, and fell the inner band to the seam "
            "below and to the zip's tape.",
        ),
        seams=tuple(c for c in codes if c.endswith("t")),
        stitch=Stitch.LOCK,
        press="towards the inside",
        task=Task.BAND,
    )
    yield _hook("Sew a hook and eye above the zip", "Inside the top of the band.")


def lining_operations(sheet: Sheet) -> Iterable[Operation]:
    """The lining beside the vent, and its hem."""
    vents = tuple(s.code for s in sheet.seams if s.code.endswith(".vent"))
    if vents:
        yield Operation(
            Work.LINED,
            "Fell the lining to the vent",
            (
                "The right back to the edge of the flat extension, the left back to "
                "the edge of the one folded in.",
            ),
            seams=vents,
            edges=finished_edges(sheet, ("L.",), "vent"),
            stitch=Stitch.HAND,
            seam_type=SeamType.PLACED,
            task=Task.BY_HAND,
        )
    yield Operation(
        Work.LINING_HEM,
        "Hem the lining",
        ("Turned twice, when the shell is hemmed.",),
        edges=finished_edges(sheet, ("L.",), "hem"),
        stitch=Stitch.LOCK,
        seam_type=SeamType.HEM_TWICE,
        task=Task.HEM,
    )


def gathers(says: str, length: float) -> Operation:
    """Two rows of long stitches round the waist."""
    return Operation(
        Work.READY,
        "Gather the skirt",
        (
            says,
            "Two rows of long stitches, one to each side of the net line, drawn up "
            "evenly between the marks of the band.",
        ),
        stitch=Stitch.LOCK,
        length=_ROWS * length,
        task=Task.GATHER,
    )


def hanging_operation() -> Operation:
    """What is cut on the bias hangs before it is hemmed."""
    return Operation(
        Work.HANG,
        "Let the skirt hang a day or two, then level the hem",
        ("What lies on the bias drops; measure the hem from the floor again.",),
    )
