"""Trousers in the cloth: what no seam of them tells (cutting and costing 5; the fly is
common practice, no source)."""

from collections.abc import Callable, Iterable

from clothwright.blocks.trousers import front_of
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

_Fmt = Callable[[float], str]


LITTLE = 0.15
"""What is stretched by less than this is not told, cm: no iron is taken for it."""


def stretched(n: Numbers) -> float:
    """What the back inseam is stretched onto the front's, cm: alike all along above the
    knee, so that short legs take their part of it."""
    if "sh_in" not in n:
        return n.st
    knee = front_of(n).leg.inseam().segments[0].length
    return n.st * min(1.0, n.sh_in / knee)


def by_how_much(n: Numbers, fmt: _Fmt) -> str:
    """What the back inseam is stretched by, and where: "0.4 cm above the knee, "."""
    more = stretched(n)
    return f"{fmt(more)} above the knee, " if more == n.st else f"{fmt(more)}, "


def leg_operations(n: Numbers, fmt: _Fmt) -> Iterable[Operation]:
    """Sides, inseams and the crotch."""
    yield _plain(
        Work.SKIRT,
        "Sew the sides",
        "S40",
        ("Baste first and try them on, the crotch basted too.",),
    )
    damp = (
        (f"The back is stretched by {by_how_much(n, fmt)}damp, with the iron.",)
        if stretched(n) >= LITTLE
        else ()
    )
    yield _plain(
        Work.SKIRT,
        "Sew the inseams",
        "S41",
        (*damp, "Lay side and inseam on each other and press the creases in."),
    )
    yield _plain(
        Work.READY,
        "Sew the crotch",
        "S42",
        (
            *(("On from the stitches below the fly.",) if "z_fly" in n else ()),
            "One leg in the other, right sides together; twice along the lower curve, "
            "which is not clipped.",
        ),
    )


def _plain(work: Work, title: str, code: str, says: tuple[str, ...]) -> Operation:
    return Operation(
        work,
        title,
        says,
        seams=(code,),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        neatened=2,
        press="open",
        task=Task.SEAMS,
    )


_BELOW_FLY = 4.0
"""The crotch is sewn so far below a fly before its zip is put in, cm (common practice,
no source)."""


def fly_operations(n: Numbers, sheet: Sheet, fmt: _Fmt) -> Iterable[Operation]:
    """The facing and the zip while the fronts lie flat, before sides and inseams
    (common practice, no source)."""
    yield Operation(
        Work.PANEL,
        "Face the fly of the right front",
        ("The right front only, down to the notch; trim, turn the facing in.",),
        seams=("S43",),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        length=sheet.length("TF", "fly"),
        press="towards the facing, then rolled to the inside",
    )
    yield Operation(
        Work.ON_EDGE,
        "Put in the zip with the shield",
        (
            "Sew the crotch of the fronts from the notch down for "
            f"{fmt(_BELOW_FLY)}, so that the fly lies flat.",
            "Fold the shield, lay the zip between it and the left front, and stitch "
            "all down to the notch.",
            "Close it, lay the right front over to the centre front and stitch the "
            f"free tape to the facing; topstitch {fmt(n.w_fly - 1.0)} from the edge, "
            "the shield held aside, and bar the end.",
        ),
        seams=("S44",),
        stitch=Stitch.LOCK,
        seam_type=SeamType.SET_ON,
        length=3 * sheet.length("TF", "fly"),
        task=Task.FLY,
    )
    if any(s.code == "S45" for s in sheet.seams) and "WB" not in sheet.pieces:
        yield Operation(
            Work.BAND,
            "Sew the underlap of the band to the shield",
            (),
            seams=("S45",),
            stitch=Stitch.LOCK,
            seam_type=SeamType.PLAIN,
            press="into the band",
        )


def pocket_operations(sheet: Sheet) -> Iterable[Operation]:
    """Bags made before the sides are sewn over them."""
    slant = "TK" in sheet.pieces
    edges = finished_edges(sheet, ("TK", "TP"))
    yield Operation(
        Work.PANEL,
        "Make the pockets",
        (
            (
                "Face the taped mouth with the bag, turn, topstitch; lay it on the "
                "pocket back from notch to notch and sew the bag round.",
                "Baste the bag along waist and side.",
            )
            if slant
            else (
                "A bag to each side allowance between the notches; sew the sides above "
                "and below the mouth, then the bag round, "
                + (
                    "and baste it to the waist."
                    if sheet.piece("TP").has("waist under")
                    else "and let it hang in front."
                ),
            )
        ),
        seams=tuple(s.code for s in sheet.seams if s.code in ("S46", "S47")),
        edges=edges,
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        press="flat",
        task=Task.SLANT_POCKET if slant else Task.SIDE_POCKET,
        count=2.0,
    )


def pleat_operations(sheet: Sheet) -> Iterable[Operation]:
    """Pleats laid, not sewn."""
    shell = (s.code for s in sheet.seams if not s.code.startswith("L."))
    codes = tuple(c for c in shell if "pleat" in c)
    yield Operation(
        Work.DART,
        "Lay the front pleats",
        ("Towards the centre front; baste across the waist, and press the first on.",),
        seams=codes,
        stitch=Stitch.HAND,
        length=20.0 * len(codes),
        task=Task.DART,
        count=2.0 * len(codes),
    )


def turn_up_operations(n: Numbers, sheet: Sheet, fmt: _Fmt) -> Iterable[Operation]:
    """Hem inside, then the turn-up."""
    yield Operation(
        Work.HEM,
        "Hem the legs inside and turn them up",
        (
            "Fold in along the upper edge of the turn-up and fell the hem; turn "
            f"{fmt(n.tu)} up along the lower edge and catch it at both seams.",
        ),
        edges=finished_edges(sheet, ("TF", "TB"), "hem in"),
        stitch=Stitch.HAND,
        seam_type=SeamType.HEM_ONCE,
        neatened=1,
        press="the creases through all of it",
        task=Task.HEM,
    )
