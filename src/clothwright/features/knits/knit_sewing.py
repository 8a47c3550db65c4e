"""Knitted cloth at the machine: seams that stretch with it (cutting and costing 3, 5;
ISO 4915 classes 400, 500 and 600)."""

from collections.abc import Callable, Iterable

from clothwright.blocks.knit_rules import RECOVERS
from clothwright.body.ease import knit_class
from clothwright.features.operations import (
    Hazard,
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.paper import EdgeKind, Run, Sheet
from clothwright.rules import Numbers

_Fmt = Callable[[float], str]


def bodice_notes(n: Numbers, sheet: Sheet, fmt: _Fmt) -> Iterable[str]:
    """What the stretch and the recovery of the cloth made of the widths."""
    yield _cloth_note(n, fmt)
    yield (
        f"Bust of the garment {fmt(4 * n.q_bust + 2 * n.cup_wide)} for a body of "
        f"{fmt(n.B)}, waist {fmt(4 * n.q_waist)} for {fmt(n.W)}"
        + (f", hip {fmt(4 * n.q_hip)} for {fmt(n.H)}." if _to_hip(n) else ".")
    )
    yield _LIE
    if n.cup_long > 0 and {"KF", "KB"} <= set(sheet.pieces):
        yield (
            f"Ease {fmt(n.cup_long)} of the front's side onto the back's between the "
            "notches, over the bust."
        )
    if n.recovery < RECOVERS:
        yield (
            "A cloth that comes back so little is not cut smaller than the body: it "
            "would bag."
        )


def _cloth_note(n: Numbers, fmt: _Fmt) -> str:
    knit = knit_class(n.s_knit / 100)
    return (
        f"Drafted for a cloth that stretches {n.s_knit:g} per cent across ({knit.name})"
        f" and comes back by {n.recovery:g}: fold it, mark {fmt(10.0)} along the "
        f"courses, pull it firmly; it must reach {fmt(10 * (1 + n.s_knit / 100))}."
    )


_LIE = (
    "The greatest stretch goes round the body and along every band; lay all pieces "
    "one way, on cloth that has lain open for a day."
)


def _to_hip(n: Numbers) -> bool:
    return n.knit_below >= n.WH_knit - 1e-6


def bodice_operations(n: Numbers, sheet: Sheet, fmt: _Fmt) -> Iterable[Operation]:
    """Shoulders, sides and hems."""
    yield Operation(
        Work.SHOULDER,
        "Sew the shoulders over tape",
        (
            "A ball-point needle; the tape lies on the back and is caught in, so that "
            "the shoulder does not grow.",
        ),
        seams=("S90",),
        stitch=Stitch.FOUR_THREAD,
        seam_type=SeamType.PLAIN,
        press="to the back",
        task=Task.SEAMS,
    )
    sleeves = tuple(s.code for s in sheet.seams if s.code == "S95")
    eased = (
        (f"The front is eased in by {fmt(n.cup_long)} between the notches.",)
        if n.cup_long > 0
        else ()
    )
    yield Operation(
        Work.SIDE,
        "Sew the sides"
        + (" and the seams under the arm in one run" if sleeves else ""),
        ("Baste first and try it on.", *eased),
        seams=("S91", *sleeves),
        stitch=Stitch.FOUR_THREAD,
        seam_type=SeamType.PLAIN,
        press="to the back",
        task=Task.SEAMS,
        count=2.0 if sleeves else 1.0,
    )
    if sheet.edge("KF", "hem").kind is not EdgeKind.FINISHED:
        return
    yield _hem(Run("KF", "hem"), Run("KB", "hem"))


def _hem(*edges: Run) -> Operation:
    return Operation(
        Work.HEM,
        "Hem the lower edge",
        (
            "Turn it up once and cover its raw edge from the right side, two needles; "
            "do not pull.",
        ),
        edges=edges,
        stitch=Stitch.COVER,
        seam_type=SeamType.HEM_ONCE,
        press="steamed, the iron only set down",
        task=Task.HEM,
        hazards=(Hazard.IRON,),
    )


def skirt_notes(n: Numbers, fmt: _Fmt) -> Iterable[str]:
    """What the stretch of the cloth made of a skirt's widths."""
    yield _cloth_note(n, fmt)
    yield (
        f"Hip of the skirt {fmt(4 * n.q_hip)} for a body of {fmt(n.H)}; its waist of "
        f"{fmt(4 * n.q_waist)} stretches to {fmt(4 * n.q_waist * (1 + n.s_knit / 100))}"
        " and passes the hip."
    )
    yield _LIE


def skirt_operations(code: str, side: str) -> Iterable[Operation]:
    """Sides and hem of a skirt."""
    yield Operation(
        Work.SIDE,
        "Sew the sides of the skirt",
        ("A ball-point needle. Baste first and try it on.",),
        seams=(side,),
        stitch=Stitch.FOUR_THREAD,
        seam_type=SeamType.PLAIN,
        press="to the back",
        task=Task.SEAMS,
    )
    yield _hem(Run(code, "hem"))


def sleeve_operations(n: Numbers, sheet: Sheet, fmt: _Fmt) -> Iterable[Operation]:
    """The sleeve is set flat, before the sides."""
    yield Operation(
        Work.FLAT,
        "Set the sleeves flat, before the sides",
        (
            "The armhole open, the sleeve on top; the notches meet"
            + (f", {fmt(n.E_cap)} eased in over all." if n.E_cap > 0.05 else "."),
        ),
        seams=("S93", "S94"),
        stitch=Stitch.FOUR_THREAD,
        seam_type=SeamType.PLAIN,
        press="into the sleeve",
        task=Task.SEAMS,
        count=2.0,
    )
    if sheet.edge("KS", "hem").kind is EdgeKind.FINISHED:
        yield Operation(
            Work.HEM,
            "Hem the sleeves",
            ("As the lower edge.",),
            edges=(Run("KS", "hem"),),
            stitch=Stitch.COVER,
            seam_type=SeamType.HEM_ONCE,
            task=Task.HEM,
        )


def band_operations(
    sheet: Sheet, fmt: _Fmt, what: str, code: str, work: Work, edge: float
) -> Iterable[Operation]:
    """A band closed, folded, and stretched onto its edge; the seam then covered from
    the right side along `edge` cm. `code` is its seam with the garment."""
    seam = sheet.seam(code)
    net, band = sheet.chain_length(seam.left), sheet.chain_length(seam.right)
    yield Operation(
        work,
        f"Set the {what}",
        (
            "Close it to a ring, fold it in half along its length, quarter it and its "
            "edge.",
            f"Stretch {fmt(band)} of it onto {fmt(net)}, evenly from notch to notch, "
            "the edge itself lying slack.",
        ),
        seams=tuple(
            s.code for s in sheet.seams if s.code in (code, f"{code}a", f"{code}b")
        ),
        stitch=Stitch.FOUR_THREAD,
        seam_type=SeamType.PLAIN,
        press="away from the band",
        task=Task.FACE,
    )
    yield Operation(
        work,
        f"Cover the seam of the {what}",
        ("From the right side, one needle in the band, one beside it.",),
        stitch=Stitch.TOP_COVER,
        seam_type=SeamType.LAPPED,
        length=edge,
    )
