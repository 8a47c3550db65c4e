"""What a maker must know of one seam, in her unit: length, allowance, notches, ease."""

from collections.abc import Callable
from dataclasses import dataclass

from clothwright.features.operations import Work
from clothwright.finishing.wording import edge_words
from clothwright.making.garment import Garment
from clothwright.making.order import MakingOrder, beside
from clothwright.paper import JOINT, Run, Seam, SeamKind, Sheet
from clothwright.truing import Walk, walk
from clothwright.units import pretty_length

_SETS = {1: "single", 2: "double", 3: "triple"}

_LITTLE = 0.15
"""Less than this (cm) is eased in without being told."""

_Fmt = Callable[[float], str]


@dataclass(frozen=True)
class SeamLine:
    """A seam as the making order prints it."""

    code: str
    name: str
    ends: str
    """From where to where."""

    pieces: str
    length: str
    allowance: str
    notches: str
    """Places from the start, or nothing."""

    ease: str


def seam_line(making: MakingOrder, seam: Seam) -> SeamLine:
    """A seam told in the order's unit."""
    unit, garment = making.draft.order.unit, making.garment
    sheet, many = garment.sheet, garment.times(seam)

    def fmt(cm: float) -> str:
        return pretty_length(cm, unit)

    w = walk(sheet, seam)
    first = seam.left[0]
    allowance = garment.allowances.width(garment.role(first))
    start = end_of(sheet, seam.start, first, start=True)
    end = end_of(sheet, seam.end, seam.left[-1], start=False)
    return SeamLine(
        seam.code,
        seam.name,
        f"{start} to {end}",
        _pieces(garment, seam),
        (f"{many} × " if many > 1 else "") + fmt(w.left),
        fmt(allowance) if allowance > 0 else "",
        notch_words(seam, start, fmt),
        _ease(garment, w, start, fmt),
    )


def end_of(sheet: Sheet, said: str, run: Run, *, start: bool) -> str:
    """The end of a seam by its name, or by the edge that meets it there."""
    if said and said not in sheet.points and not _is_mark(said):
        return said
    out = run._replace(backward=not run.backward) if start else run
    return edge_words(beside(sheet, out)).split(",")[0]


def _is_mark(said: str) -> bool:
    """True for the name of a mark of the draft (Qf, E2), which is no word."""
    return len(said) <= 2


def _pieces(garment: Garment, seam: Seam) -> str:
    """The pieces of both sides, each once."""

    def named(chain: tuple[Run, ...]) -> str:
        codes = dict.fromkeys(r.piece for r in chain)
        return " and ".join(garment.sheet.piece(c).name.lower() for c in codes)

    if seam.kind is SeamKind.DART:
        return named(seam.left)
    if seam.kind is SeamKind.TWIN:
        if garment.work_alike(seam) is Work.BAG:
            return f"{named(seam.left)} to its lining"
        return f"both halves of {named(seam.left)}"
    left, right = named(seam.left), named(seam.right)
    return f"{left} to {'itself' if left == right else right}"


def notch_words(seam: Seam, start: str, fmt: _Fmt) -> str:
    """Each set of notches, its place measured from the start of the seam."""
    found = sorted({(p.left, p.ticks, p.note == JOINT) for p in seam.notches})
    out = []
    for at, ticks, joint in found:
        if not ticks:
            continue
        place = fmt(at) if at > _LITTLE else f"the {start}"
        met = ", on the seam" if joint and at > _LITTLE else ""
        out.append(f"{_SETS.get(ticks, f'{ticks}-fold')} at {place}{met}")
    return "; ".join(out)


def _ease(garment: Garment, w: Walk, start: str, fmt: _Fmt) -> str:
    """What is eased or gathered in, of which piece, and where."""
    seam = w.seam
    # a facing is rolled, not eased; but gathers may be taken in by it
    told = abs(w.ease) if seam.kind is SeamKind.PLAIN else w.ease
    if seam.kind in (SeamKind.LAPPED, SeamKind.TWIN) or told < _LITTLE:
        return ""
    if garment.work(seam) is Work.JOIN:
        over = "beyond" if w.ease < 0 else "short of"
        runs = "runs on" if w.ease < 0 else "ends"
        return f"the lining {runs} {fmt(abs(w.ease))} {over} the facing"
    if seam.stretched and w.ease < 0:
        short = garment.sheet.piece(seam.right[0].piece).name.lower()
        where = _where(w, start, fmt) if seam.zone else ", evenly between the notches"
        return f"stretch the {short} by {fmt(-w.ease)}{where}"
    chain = seam.right if w.ease > 0 else seam.left
    names = dict.fromkeys(garment.sheet.piece(r.piece).name.lower() for r in chain)
    how = "gather in" if seam.gathered else "ease in"
    if seam.tucked:
        how = "tucks take in"
    much = seam.ease.plan - seam.free if seam.free else abs(w.ease)
    return f"{how} {fmt(much)} of {' and '.join(names)}{_where(w, start, fmt)}"


def _where(w: Walk, start: str, fmt: _Fmt) -> str:
    """The stretch that takes the ease."""
    seam = w.seam
    if seam.tucked and not seam.drawn_up:  # stitched along their lines
        return ""
    if seam.zone is None:
        return "" if seam.gathered else ", spread evenly"
    if seam.drawn_up and seam.zone[0] > _LITTLE:  # among other notches, as a rule
        return " between the notches at {} and {}".format(*map(fmt, seam.zone))
    if seam.zone[0] > _LITTLE:
        return " between the notches"
    return f" between the {start} and the notch"
