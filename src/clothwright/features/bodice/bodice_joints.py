"""Corners of a bodice that flow when its seams are sewn (first garment 22)."""

from collections.abc import Collection, Iterator

from clothwright.features.chains import NAPE, on_table
from clothwright.features.necks.neck_shapes import V_BACK, V_FRONT
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.truing import Corner, End, Joint
from clothwright.truing.tolerances import (
    BLENDED,
    FOLD_CORNER,
    NECK_SUM,
    PANEL,
    TIP,
)

_START, _END = End.START, End.END


def bodice_joints(sheet: Sheet, n: Numbers, words: Collection[str]) -> Iterator[Joint]:
    """Neck, armhole and shoulder over the seams of the bodice, neck and waist at its
    centres."""
    yield from _over_shoulder(sheet, n)
    yield from _over_panels(sheet)
    yield from _underarm(sheet)
    yield from _centres(sheet, words)


def _first(sheet: Sheet, *codes: str, edge: str) -> str:
    """The first of these pieces that has this edge."""
    return next((c for c in codes if on_table(sheet, c, edge)), "")


def neck_pieces(sheet: Sheet) -> tuple[str, str]:
    """The pieces of front and back that have the neck, "" for none."""
    return (
        _first(sheet, "FC", "F", "FY", edge="neck"),
        _first(sheet, "BC", "B", "BY", edge="neck"),
    )


def _over_shoulder(sheet: Sheet, n: Numbers) -> Iterator[Joint]:
    """Neck and armhole square to the shoulder, front and back."""
    front, back = neck_pieces(sheet)
    ends = [
        "neck side" if on_table(sheet, c, "neck side") else "neck"
        for c in (front, back)
    ]
    if on_table(sheet, front, "neck", "shoulder") and on_table(
        sheet, back, ends[1], "shoulder"
    ):
        tilt = n.fn_tilt if "fn_tilt" in n else n.tau
        yield Joint(
            "neck over the shoulder",
            (Corner(front, ends[0], _START), Corner(back, ends[1], _END)),
            180.0,
            NECK_SUM,
            (90.0 - tilt, 90.0 + tilt),
            TIP,
        )
    front, back = (
        next((c for c in codes if on_table(sheet, c, "armhole", "shoulder")), "")
        for codes in (("FC", "F", "FS", "FY"), ("BC", "B", "BS", "BY"))
    )
    if front and back:
        lean = n.r_lean if "r_lean" in n else 0.0
        yield Joint(
            "armhole over the shoulder",
            (Corner(front, "armhole", _END), Corner(back, "armhole", _START)),
            180.0,
            NECK_SUM,
            (90.0 + lean, 90.0 - lean),
            TIP,
        )


def _over_panels(sheet: Sheet) -> Iterator[Joint]:
    """Shoulder and armhole run on over panel seams, the neck over a dart in it."""
    halves = (
        ("front", ("FC", _START), ("FS", _END)),
        ("back", ("BC", _END), ("BS", _START)),
    )
    if on_table(sheet, "FS", "shoulder") and on_table(sheet, "BS", "shoulder"):
        for half, a, b in halves:
            both = Corner(a[0], "shoulder", a[1]), Corner(b[0], "shoulder", b[1])
            yield Joint(f"shoulder over the {half} panel", both, 180.0, BLENDED)
    back = neck_pieces(sheet)[1]
    if on_table(sheet, back, "neck side"):
        both = Corner(back, "neck", _END), Corner(back, "neck side", _START)
        yield Joint("back neck over its dart", both, 180.0, PANEL)
    for half, a, b in halves:
        if on_table(sheet, a[0], "armhole") and on_table(sheet, b[0], "armhole"):
            both = Corner(a[0], "armhole", a[1]), Corner(b[0], "armhole", b[1])
            yield Joint(f"armhole over the {half} panel", both, 180.0, PANEL)


def _underarm(sheet: Sheet) -> Iterator[Joint]:
    """The armhole runs on under the arm."""
    front, back = (
        _first(sheet, *codes, edge="armhole") for codes in (("FS", "F"), ("BS", "B"))
    )
    if not (front and back):
        return
    low = [
        "armhole low" if on_table(sheet, c, "armhole low") else "armhole"
        for c in (front, back)
    ]
    both = Corner(front, low[0], _START), Corner(back, low[1], _END)
    yield Joint("underarm", both, 180.0, NECK_SUM)


def _centres(sheet: Sheet, words: Collection[str]) -> Iterator[Joint]:
    """Neck and waist square to the centre, but where the neck comes to a point."""
    front, back = neck_pieces(sheet)
    pointed = V_FRONT in words or on_table(sheet, front, "placket")
    if on_table(sheet, front, "cf") and not pointed:
        yield _at_centre(sheet, "neck at the centre front", front, "neck", _END)
    waist = _first(sheet, "FC", "F", edge="waist")
    if on_table(sheet, waist, "cf"):
        yield _at_centre(sheet, "waist at the centre front", waist, "waist", _START)
    cut = any(on_table(sheet, back, e) for e in ("slant", NAPE))
    if on_table(sheet, back, "cb") and not cut and V_BACK not in words:
        yield Joint.fold("neck at the centre back", Corner(back, "neck", _START))


def _at_centre(sheet: Sheet, name: str, code: str, edge: str, at: End) -> Joint:
    """An edge square to the centre front, over a dart that opens in their corner."""
    piece = sheet.piece(code)
    beside = piece.after(edge) if at is _END else piece.before(edge)
    own = Corner(code, edge, at)
    if not beside.name.startswith("dart"):
        return Joint.fold(name, own)
    both = own, Corner(code, "cf", _START if at is _END else _END)
    return Joint(name, both, 90.0, FOLD_CORNER)
