"""What is asked of a finished facing (first garment 14.8, 21): roll, place, loops.

The facing's edges are measured against the shell's, never against what they were
drawn from.
"""

from collections.abc import Iterable

from clothwright.curves import IDENTITY, Path
from clothwright.features.chains import TOP
from clothwright.features.linings.facing_edges import CLEAR_OF_BP
from clothwright.features.linings.roll import corner_finding, strap_finding
from clothwright.features.linings.sewn_halves import (
    SewnHalf,
    back_under,
    sewn_back,
    sewn_front,
)
from clothwright.features.openings.cut_on import INTERLINING
from clothwright.findings import Finding, Severity
from clothwright.paper import Piece, Sheet
from clothwright.rules import Numbers

ROLL = 0.05
"""A roll may differ by this much, cm (14.8); a sixth of one over 0.3."""

OUTSIDE = 0.15
"""Paper of two panels may differ by this much where a facing crosses their seam, cm
(14.2); so far, and no further, its edge may leave the shell."""

NARROWEST = 1.0
"""A facing is nowhere narrower than this, cm: less cannot be neatened and tacked down
(our own choice)."""

LOOP = 0.1
"""A loop's place on shell and facing may differ by this much, cm (21, S17)."""

WIDER = 0.5
"""At the back this share of the roll may be taken off besides at each end of the
shoulder: moved in, it may be wider than the front's."""


def facing_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Every check of the facings."""
    ff, bf = _facings(sheet)
    if ff.has(TOP):
        yield from _below_top(n, sheet, ff, bf)
        return
    whole = bf if bf.has("shoulder") else ff
    narrow = strap_finding(whole.edge("shoulder").length, "facing", "FF")
    if narrow:
        yield narrow
    front = sewn_front(sheet)
    yield from _over_bust(n, front, ff)
    found = [(front, ff, n.rho)]
    if bf.has("shoulder"):  # where the back is cut away its facing is not rolled
        at_back = n.rho * (1 + WIDER) + n.se_left / 2
        found.append((back_under(sheet, bf), bf, at_back))
    for half, facing, most in found:
        name = facing.name.lower()
        slant = facing.edge("slant").path if facing.has("slant") else None
        neck = facing.edge("neck").path if facing.has("neck") else None
        armhole = facing.edge("armhole").path
        rolled = (neck, armhole, slant)
        back = facing.has("end")  # to a band or a placket, beside the centre
        yield from roll_findings(
            n.rho, most, half, rolled, name, facing.code, cut_back=back
        )
        yield from _narrow(n, facing)
        to_do = "Make it less deep at the side, or its strip narrower."
        yield from on_shell(half, facing, to_do)
    if bf.has("slant"):
        yield from _loops(n, sheet, bf)
        tight = corner_finding(n.rc)
        if tight:
            yield tight
        if bf.has("panel"):
            yield Finding(
                "F5",
                Severity.NOTE,
                "The back facing takes the whole back: its strip would leave too "
                "little beside it.",
                "BF",
                "Clip into its corner at the panel seam.",
                {"strip": n.sw},
            )


def _facings(sheet: Sheet) -> tuple[Piece, Piece]:
    """Both facings; of one that is cut on to a button stand what has its shape, the
    pattern of its interlining."""
    front, back = (
        sheet.piece(code if code in sheet.pieces else INTERLINING[code])
        for code in ("FF", "BF")
    )
    return front, back


def _below_top(n: Numbers, sheet: Sheet, ff: Piece, bf: Piece) -> Iterable[Finding]:
    """Of a strapless bodice: the facings lie on the shell, clear of bust and edge."""
    front = sewn_front(sheet)
    yield from _over_bust(n, front, ff)
    for half, facing in ((front, ff), (sewn_back(sheet), bf)):
        name = facing.name.lower()
        free, top = facing.edge("free").path, facing.edge(TOP).path
        gap = min(
            free.nearest(top.at_length(top.length * i / 12))[1] for i in range(13)
        )
        if gap < NARROWEST or free.meets(top):
            yield Finding(
                "F6",
                Severity.REFUSE,
                f"The {name} comes within {NARROWEST:g} cm of its own top edge, or "
                "crosses it.",
                facing.code,
                "Raise the top edge (ht), make its dip less deep, or line the bodice "
                "to the edge.",
                {"gap": gap},
            )
        to_do = "Make it less deep at the side (facing at the side)."
        yield from on_shell(half, facing, to_do)


def _over_bust(n: Numbers, half: SewnHalf, facing: Piece) -> Iterable[Finding]:
    if half.panel is None:
        return
    for s, _ in half.panel.meets(facing.edge("free").path):
        above = n.y_BP - half.panel.at_length(s).y
        if above < CLEAR_OF_BP - ROLL:
            yield Finding(
                "F2",
                Severity.REFUSE,
                f"The front facing crosses the panel seam {above:.1f} cm above the "
                "bust point; 2.5 cm must stay.",
                "FF",
                "Make it less deep at the side or at the centre (facing at the side, "
                "facing at the centre).",
                {"above": above},
            )


def _narrow(n: Numbers, facing: Piece) -> Iterable[Finding]:
    """The loose edge keeps clear of the neck, which a deep one may reach, and of the
    hollow of the armhole."""
    free, name = facing.edge("free").path, facing.name.lower()
    if facing.has("neck") and _near(free, facing.edge("neck").path):
        depth = "Df" if facing.code == "FF" else "Db"
        yield Finding(
            "F6",
            Severity.REFUSE,
            f"The {name} comes within {NARROWEST:g} cm of its own neck edge, or "
            "crosses it.",
            facing.code,
            f"Make the neck ({depth}) less deep, or line the top to the edge.",
            {depth: n[depth]} if depth in n else {},
        )
    if facing.has("armhole") and _near(free, facing.edge("armhole").path):
        yield Finding(
            "F7",
            Severity.REFUSE,
            f"The {name} comes within {NARROWEST:g} cm of its own armhole, or crosses "
            "it.",
            facing.code,
            "Make it deeper at the side (facing at the side), line the top to the "
            "edge, or measure NWB and AS again.",
            {"ff_side": n.ff_side},
        )


def _near(free: Path, edge: Path) -> bool:
    """True where a facing would be too narrow beside an edge that it faces, or crosses
    it: then a place of that, of which one stands in each cm, is nearer than half."""
    steps = round(edge.length) + 1
    places = (edge.length * i / steps for i in range(steps + 1))
    return not free.keeps_off(edge, NARROWEST, places)


def roll_findings(
    rho: float,
    most: float,
    half: SewnHalf,
    rolled: tuple[Path | None, Path, Path | None],
    what: str,
    place: str,
    *,
    cut_back: bool = False,
) -> Iterable[Finding]:
    """The width of the roll, measured at three places of each edge (14.4, 14.8): of
    neck, armhole and slanted edge, as they lie in the sewn state.

    `rho` is the roll wanted, `most` what it may be at the ends of the shoulder;
    `cut_back` when the neck ends short of the centre, where the roll has begun.
    """
    neck, armhole, slant = rolled
    at_fold = rho if half.to_waist else 0.0
    for name, shell, mine, start, ahead in (
        ("armhole", half.armhole, armhole, 0.0, half.front),
        ("neck", half.neck, neck, at_fold, not half.front),
    ):
        if mine is None:  # a cowl's neck is a fold
            continue
        centre, end = (mine.start, mine.end) if ahead else (mine.end, mine.start)
        at, width = shell.nearest(end)  # at the shoulder
        if name == "neck" and cut_back:
            start = shell.nearest(centre)[1]
        run = shell.length_to(at) / shell.length
        slope = (width - start) / (run if ahead else 1 - run)
        off = [max(rho - width, width - most, 0.0)]
        for t in _PLACES:
            share = t if ahead else 1 - t
            off.append(_off(shell, mine, share, start + slope * t))
        yield from _rolled_wrong(max(off), rho, name, what, place)
    if half.slant is not None and slant is not None:
        off = [_off(half.slant, slant, t, rho) for t in _PLACES]
        yield from _rolled_wrong(max(off), rho, "slanted edge", what, place)


def _rolled_wrong(
    off: float, rho: float, name: str, what: str, place: str
) -> Iterable[Finding]:
    if off > max(ROLL, rho / 6):
        yield Finding(
            "F3",
            Severity.REFUSE,
            f"The {name} of the {what} lies {off * 10:.1f} mm off its roll (ρ).",
            place,
            "Make the roll smaller, or the curve that it follows flatter.",
            {"off": off},
        )


_PLACES = (0.2, 0.5, 0.8)
"""Shares of an edge at which its roll is measured, clear of the shoulder's end and of
corners."""


def _off(shell: Path, inner: Path, share: float, wanted: float) -> float:
    """How far an edge lies off the wanted distance inside the shell's, at a share of
    the shell's."""
    there = shell.place_at_length(shell.length * share)
    p, way = shell.at(there), shell.segments[there.segment].slope(there.t)
    place, gap = inner.nearest(p)
    q = inner.at(place)
    inside = (q.y - p.y) * way.x - (q.x - p.x) * way.y >= 0
    return abs((gap if inside else -gap) - wanted)


def on_shell(half: SewnHalf, facing: Piece, to_do: str) -> Iterable[Finding]:
    """A facing lies on the shell."""
    out = outside(half, facing.edge("free").path)
    if out > OUTSIDE:
        yield Finding(
            "F4",
            Severity.REFUSE,
            f"The {facing.name.lower()} lies {out:.1f} cm outside the shell.",
            facing.code,
            to_do,
            {"outside": out},
        )


def outside(half: SewnHalf, path: Path) -> float:
    """How far a line leaves the paper of a half, cm; 0 when it lies on it."""
    # points are laid back on the pieces, which are many more points
    shell = [(p, None if m is IDENTITY else m.inverse()) for p, m in half.lay()]
    worst = 0.0
    steps = max(4, round(path.length / 2))
    for i in range(1, steps):
        p = path.at_length(path.length * i / steps)
        for k, (piece, back) in enumerate(shell):
            if piece.contains(back(p) if back else p):
                shell.insert(0, shell.pop(k))  # it will hold the next place too
                break
        else:
            gap = min(
                piece.outline.nearest(back(p) if back else p)[1]
                for piece, back in shell
            )
            worst = max(worst, gap)
    return worst


def _loops(n: Numbers, sheet: Sheet, facing: Piece) -> Iterable[Finding]:
    """S17: every loop lies between shell and facing at its place, `spacing` from the
    next."""
    shell = [m for m in sheet.piece("BC").marks if m.name.startswith("loop ")]
    if not shell:
        return
    mine = {m.name: m.at for m in facing.marks}
    on, inner = sheet.edge("BC", "slant").path, facing.edge("slant").path
    up = [on.length_to_point(m.at) for m in shell]
    at = [on.length - s for s in up]
    rank = [float(m.name.split()[1]) - 1 for m in shell]
    apart = n.spacing
    off = [s - at[0] - r * apart for s, r in zip(at, rank, strict=True)]
    for m, s in zip(shell, up, strict=True):
        q = mine.get(m.name)
        if q is None:
            off.append(LOOP * 9)
            continue
        place, gap = inner.nearest(q)
        off += (gap, inner.length_to(place) - s)
    worst = max(off, key=abs)
    if abs(worst) > LOOP:
        yield Finding(
            "S17",
            Severity.REFUSE,
            "The loops are not at one place on the back and on its facing.",
            "loops",
            "Mark both from the waist, the facing laid on the back.",
            {"off": worst},
        )
