"""What a cut-out in the back has to be checked for. Lengths cm."""

from collections.abc import Iterator

from clothwright.blocks.torso import FISH_EYE
from clothwright.curves import Path
from clothwright.features.chains import ABOVE, CUT_OUT, NAPE
from clothwright.findings import Finding, Severity
from clothwright.paper import Piece, Sheet
from clothwright.rules import Numbers

LEAST_LEFT, ENOUGH_LEFT = 2.5, 4.0
"""What must stay of the back beside an open edge, and what is doubted below, cm (first
garment 9.6)."""

_STEP = 0.5
"""Edges are measured from place to place so far apart, cm."""


def cut_out_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """Every check of a cut-out: where it ends, and what it leaves of the back."""
    if n.co_bra < 0:
        yield Finding(
            "CO1",
            Severity.WARN,
            f"The cut-out of the back ends {-n.co_bra:.1f} cm below the line of the "
            "brassiere.",
            "co foot",
            "End it (co foot) higher, or sew in a support.",
            {"below": -n.co_bra},
        )
    left = _left(sheet)
    if left < ENOUGH_LEFT:
        refused = left < LEAST_LEFT
        yield Finding(
            "CO2",
            Severity.REFUSE if refused else Severity.WARN,
            f"Only {left:.1f} cm of the back is left beside the cut-out, up to its "
            "next edge or dart" + ("; 2.5 cm must stay." if refused else "."),
            "co half",
            "Make it (co half) narrower, or end it (co foot) higher.",
            {"left": left},
        )


def facing_findings(n: Numbers, sheet: Sheet) -> Iterator[Finding]:
    """Whether the facing of a cut-out finds room beside it."""
    left = _left(sheet)
    if left < n.co_facing:
        yield Finding(
            "CO3",
            Severity.REFUSE,
            f"The facing of the cut-out is {n.co_facing:.1f} cm wide, and the back "
            f"beside that only {left:.1f} cm, up to its next edge or dart.",
            "co facing",
            "Make it (co facing) or the cut-out (co half) narrower, or end the cut-out "
            "(co foot) higher.",
            {"facing": n.co_facing, "left": left},
        )


def _left(sheet: Sheet) -> float:
    """What is left of the back beside the cut-out, cm."""
    back = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    opening = back.edge(CUT_OUT).path
    return min(gap(opening, path) for path in beside(back))


def beside(back: Piece) -> Iterator[Path]:
    """The edges of the back but centre and neck, and a dart within it."""
    own = ("cb", CUT_OUT, NAPE, ABOVE, "neck")
    yield from (e.path for e in back.edges if e.name not in own)
    yield from (k.path for k in back.lines if k.name == FISH_EYE)


def gap(a: Path, b: Path) -> float:
    """Least distance between two lines, cm."""
    steps = max(4, round(a.length / _STEP))
    places = (a.at_length(a.length * i / steps) for i in range(steps + 1))
    return min(b.nearest(p)[1] for p in places)
