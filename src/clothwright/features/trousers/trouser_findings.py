"""What trousers are asked before they are cut (blocks E, T1 to T9)."""

from collections.abc import Iterable, Iterator

from clothwright.blocks.trouser_rules import CROTCH_ROOM, THIGH_ROOM
from clothwright.blocks.trouser_waist import SIDE_SHAPING, front_widths
from clothwright.blocks.trousers import BACK, FRONT, WAIST, back_of, front_of
from clothwright.curves import Cubic, Path, Point
from clothwright.features.skirts.elastic_casing import fold_length
from clothwright.features.skirts.pocket_drawing import HIP_PIECE
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers
from clothwright.truing.outline import tightest, wrong_way
from clothwright.truing.tolerances import Band

CROTCH_HOLLOW = 3.0
"""Tightest hollow of a crotch curve, cm (truing 5)."""

_BENDS = Band(3.0, 8.0, "a crotch curve that wobbles, degrees (as neck and armhole)")

_LEVEL = 1.5
"""The hip of the draft lies within this of the hip measured, cm (E1)."""

_GIRTH = 0.1
"""Girths of the draft are the body's and the ease within this, cm."""

_CLOSE_KNEE = 3.0
"""Least room round the knee, cm (measures §8, close)."""

_BARREL = 4.0
"""A knee is wider by so much than a straight leg would be there, cm, before the leg is
called a barrel (our own choice)."""


def findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """Every check of the block on the finished draft."""
    yield from _girths(n, sheet)
    yield from _crotch(n, sheet)
    yield from _thigh(n)
    yield from _waist(n)
    yield from _levels(n)
    yield from _leg(n)


def across(sheet: Sheet, code: str, y: float) -> float:
    """Width of a piece at a level, cm; nought where it does not cross it."""
    level = Path.line(Point(-400.0, y), Point(400.0, y))
    hits = sorted(s for _, s in sheet.piece(code).outline.meets(level))
    return hits[-1] - hits[0] if len(hits) > 1 else 0.0


def _girths(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Hip (T1) and waist (T2) are body and ease."""
    hip = sum(across(sheet, c, -n.yh_T) for c in (FRONT, BACK))
    banded = "WCF" in sheet.pieces  # a shaped band is the top
    cased = sum(fold_length(sheet.piece(c)) for c in (FRONT, BACK))
    waist = cased or sum(
        e.length
        for c in (("WCF", "WCB") if banded else (FRONT, BACK, HIP_PIECE))
        if c in sheet.pieces
        for e in sheet.piece(c).edges
        if e.name in WAIST
    )
    for code, place, is_, aim, measure in (
        ("T1", "hip", hip, (n.H + n.Eh) / 2 + n.pl, "H"),
        ("T2", "waist", waist, n.w_SF + n.w_SB, "W"),
    ):
        if abs(is_ - aim) > _GIRTH:
            yield Finding(
                code,
                Severity.REFUSE,
                f"The {place} of the trousers measures {2 * is_:.1f} cm and should be "
                f"{2 * aim:.1f} cm.",
                place,
                f"Measure {measure} again, or give more ease.",
                {"is": is_, "aim": aim},
            )


def crotch_seam(n: Numbers) -> float:
    """The crotch seam, front and back, cm."""
    back = back_of(n)
    return back.crotch().length + back.front.crotch().length


def _crotch(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Length of the crotch seam (T5), and that its curves are fair (truing 5)."""
    room = crotch_seam(n) - n.CRL
    low, high = CROTCH_ROOM
    if not low - 1e-6 <= room <= high + 1e-6:
        says = "longer" if room > 0 else "shorter"
        more = room > high
        yield Finding(
            "T5",
            Severity.WARN,
            f"The crotch seam is {abs(room):.1f} cm {says} than the body's crotch "
            f"length (CRL); {low:g} cm to {high:g} cm longer is right.",
            "CRL",
            "Measure CRL and BR again, or give the rise "
            + ("less ease (Er)." if more else "more ease (Er)."),
            {"room": room},
        )
    for code in (FRONT, BACK):
        path = sheet.edge(code, "crotch").path  # of the back the curve alone
        _, hollow = tightest(path, 16)
        bends = max((wrong_way(c) for c in _curves(path)), default=0.0)
        half = "front" if code == FRONT else "back"
        if hollow < CROTCH_HOLLOW:
            yield Finding(
                "crotch",
                Severity.WARN,
                f"The crotch of the {half} is hollowed to a radius of {hollow:.1f} cm; "
                f"{CROTCH_HOLLOW:g} cm can be sewn.",
                "crotch",
                "Measure H and BR again, or give the rise more ease (Er).",
                {"radius": hollow},
            )
        severity = _BENDS.severity(bends)
        if severity is not None:
            yield Finding(
                "crotch",
                severity,
                f"The crotch of the {half} turns the wrong way by {bends:.1f}°.",
                "crotch",
                "Measure H, W and BR again, or tilt the seat less (tl).",
                {"bends": bends},
            )


def _curves(path: Path) -> Iterator[Cubic]:
    return (s for s in path.segments if isinstance(s, Cubic))


def thigh_width(n: Numbers) -> float:
    """Both halves at the crotch line, from the side to the fork (T6), cm."""
    return front_of(n).leg.width_at_crotch() + back_of(n).leg.width_at_crotch()


def _thigh(n: Numbers) -> Iterable[Finding]:
    room = thigh_width(n) - n.TH
    if room >= THIGH_ROOM - 0.05:
        return
    yield Finding(
        "T6",
        Severity.REFUSE if room < 0 else Severity.WARN,
        f"At the crotch line a leg leaves {room:.1f} cm of room over the thigh (TH); "
        f"{THIGH_ROOM:g} cm is wanted.",
        "TH",
        "Measure TH again, or give the hip more ease (Eh).",
        {"room": room},
    )


def _waist(n: Numbers) -> Iterable[Finding]:
    """The shaping of the front side, and no dart too wide to lie flat."""
    shaped = n.x_wF + n.half_F + n.pl
    if not 0.0 <= shaped <= SIDE_SHAPING + 0.6:
        if shaped < 0:
            says = f"runs outwards by {-shaped:.1f} cm from the hip to the waist"
        else:
            says = f"is taken in by {shaped:.1f} cm from the hip to the waist"
        yield Finding(
            "E3",
            Severity.WARN,
            f"The side of the front {says}; up to {SIDE_SHAPING:g} cm inwards is "
            "usual.",
            "xwF",
            "Measure W and H again, or give the waist more ease (Ew).",
            {"shaped": shaped},
        )
    wide = max((*front_widths(n.fd_T_cut, n.nf_T, n.fs_T), 0.0))
    if wide > 3.6 and not n.pleated:
        yield Finding(
            "E3",
            Severity.WARN,
            f"A front dart is {wide:.1f} cm wide.",
            "fd T",
            "Measure W and H again, or give the waist more ease (Ew).",
            {"dart": wide},
        )


def _levels(n: Numbers) -> Iterable[Finding]:
    """The hip of the draft lies where the body's does (E1)."""
    off = n.BRe - n.WH - n.yh_T
    if abs(off) > _LEVEL:
        yield Finding(
            "E1",
            Severity.NOTE,
            f"The hip measured (WH) lies {abs(off):.1f} cm "
            f"{'above' if off > 0 else 'below'} the hip line of the draft.",
            "WH",
            "Measure WH and BR again; look at the hip at the fitting.",
            {"off": off},
        )


def _leg(n: Numbers) -> Iterable[Finding]:
    """The knee bends in it, and the foot passes; short legs end above both."""
    if "sh_in" in n and n.sh_in < n.yk:
        return
    if n.KW < n.KN + _CLOSE_KNEE:
        yield Finding(
            "knee",
            Severity.WARN,
            f"The knee of the trousers is {n.KW:.1f} cm round on a knee (KN) of "
            f"{n.KN:.1f} cm: it binds when she sits.",
            "KW",
            f"Make the knee (KW) {n.KN + _CLOSE_KNEE:.1f} cm or more.",
            {"KW": n.KW, "KN": n.KN},
        )
    beside = n.HW + (thigh_width(n) - n.HW) * (1 - n.yk / n.leg)
    if beside + _BARREL < n.KW:
        yield Finding(
            "T11",
            Severity.WARN,
            f"The knee of the trousers is {n.KW:.1f} cm round, {n.KW - beside:.1f} cm "
            "more than the straight from the thigh to the hem has there: the leg is a "
            "barrel.",
            "KW",
            f"Make the knee (KW) {beside:.1f} cm or less, or the hem (HW) wider, or "
            "leave it where that is the style.",
            {"KW": n.KW, "beside": beside},
        )
    if "FT" in n and n.HW < n.FT + 1.0:
        yield Finding(
            "foot",
            Severity.REFUSE if n.HW < n.FT else Severity.WARN,
            f"The hem is {n.HW:.1f} cm round, and the foot (FT) {n.FT:.1f} cm: it does "
            "not pass.",
            "HW",
            f"Make the hem (HW) {n.FT + 1.0:.1f} cm or more.",
            {"HW": n.HW, "FT": n.FT},
        )
