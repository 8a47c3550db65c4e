"""What is asked of a button stand (transformations 6 and 7)."""

from collections.abc import Iterable

from clothwright.features.openings.button_rules import BEYOND_HOLE, LEAST_EDGE, SHANK
from clothwright.features.openings.fastener_row import fastened
from clothwright.features.openings.stand_band import BAND
from clothwright.features.openings.stand_pieces import (
    BACK,
    BANDED,
    FOLD,
    FRONT,
    STAND,
    Centre,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import MarkKind, Piece, Sheet
from clothwright.rules import Numbers

_GAPES = 10.5
"""Buttons further apart than this let a front gape over the bust, cm (7: 7 to 10)."""


CLEAR_OF_SEAM = 0.5
"""A buttonhole keeps so far from the seam of a band, cm (common practice)."""


def stand_findings(
    n: Numbers, sheet: Sheet, c: Centre, *, across: bool
) -> Iterable[Finding]:
    """Every check of the finished stand; `across` is how its buttonholes lie."""
    if fastened(n):
        yield from _hangs_free(n, sheet, c)
        return
    least = n.d_button / 2 + LEAST_EDGE
    if n.b_stand < least - 1e-9 or n.b_row < 0:
        yield Finding(
            "BT1",
            Severity.REFUSE,
            f"The button stand of {n.b_stand:.1f} cm is too narrow for a button of "
            f"{n.d_button:.1f} cm: {least:.1f} cm is the least.",
            "b",
            "Make the stand (b) wider, or take smaller buttons.",
            {"b": n.b_stand, "least": least},
        )
    inner = n.b_hole - SHANK - n.b_row if across else -n.b_row
    inner = max(inner, n.b_row and n.b_row + n.d_button / 2)
    banded = BAND in sheet.pieces
    if banded and n.b_stand < inner + CLEAR_OF_SEAM - 1e-9:
        yield Finding(
            "BT5",
            Severity.REFUSE,
            f"The buttonholes end {n.b_stand - inner:.1f} cm beside the seam of the "
            f"band; {CLEAR_OF_SEAM:.1f} cm is the least.",
            "b",
            "Lay the buttonholes along the line, or make the band (b) wider.",
            {"b": n.b_stand, "inner": inner},
        )
    if not banded and n.b_facing < inner + BEYOND_HOLE - 1e-9:
        yield Finding(
            "BT2",
            Severity.REFUSE,
            f"The facing ends {n.b_facing - inner:.1f} cm behind the inner end of "
            f"the buttonholes; {BEYOND_HOLE:.1f} cm is the least.",
            "bf",
            "Make the facing of the stand (bf) wider.",
            {"bf": n.b_facing, "inner": inner},
        )
    above = [sheet.piece(code) for code in c.upper if code in sheet.pieces]
    row = [sheet.piece(BAND)] if banded else above
    marks = sorted(y for piece in row for y in _levels(piece))
    if len(above) > 1 and not banded:
        yield from _beside_yoke(n, above[0], marks, across=across)
    wide = max((b - a for a, b in zip(marks, marks[1:], strict=False)), default=0.0)
    if wide > _GAPES:
        yield Finding(
            "BT3",
            Severity.WARN,
            f"The buttons stand up to {wide:.1f} cm apart: over the bust the front "
            "will gape.",
            "b spacing",
            "Set them closer, or sew a press stud between.",
            {"apart": wide},
        )
    yield from _hangs_free(n, sheet, c)


def _hangs_free(n: Numbers, sheet: Sheet, c: Centre) -> Iterable[Finding]:
    """Whether anything closes the edges below the waist seam."""
    lower = c.on(sheet, c.lower)
    if BAND in sheet.pieces:
        band = sheet.piece(BAND)
        above = [sheet.piece(code) for code in c.upper if code in sheet.pieces]
        top = band.edge("side").path.bounds()[1]
        waist = top + sum(p.edge(BANDED).length for p in above)
        below = max(_levels(band)) > waist
    else:
        below = not lower or bool(_levels(sheet.piece(lower)))
    if lower and not below:
        yield Finding(
            "BT4",
            Severity.NOTE,
            f"No {'fastener' if fastened(n) else 'button'} lies below the waist seam; "
            "the edges hang free there.",
            "b hem",
            f"Let the last {'one' if fastened(n) else 'button'} lie nearer to the hem, "
            "if it should close.",
        )


_ROUNDED = 0.05
"""A number that is written down to the mm is so much further off, cm."""


def _beside_yoke(
    n: Numbers, below: Piece, marks: list[float], *, across: bool
) -> Iterable[Finding]:
    """No buttonhole is worked through the seam of a yoke."""
    folded = (k.path for k in below.lines if k.name == FOLD)
    edge = below.edge(STAND).path if below.has(STAND) else next(folded)
    seam = edge.bounds()[1]
    at = min((y - seam for y in marks), key=abs)
    near, clear = abs(at), CLEAR_OF_SEAM + (0.0 if across else n.b_hole / 2)
    if near < clear - 1e-9:
        depth = "Yf" if below.code in ("F", "FC") else "Yb"
        more = clear - near + _ROUNDED
        other = n[depth] + (-more if at > 0 else more)
        yield Finding(
            "BT6",
            Severity.REFUSE,
            f"A button lies {near:.1f} cm from the seam of the yoke; {clear:.1f} cm is "
            "the least.",
            depth,
            f"Make the yoke ({depth}) {other:.1f} cm deep, or set the buttons (b "
            "spacing) otherwise.",
            {"near": near, "clear": clear},
        )


def _levels(piece: Piece) -> list[float]:
    """Levels of a piece's buttons, y in cm."""
    return [m.at.y for m in piece.marks if m.kind is MarkKind.BUTTON]


def buttons(sheet: Sheet) -> int:
    """Buttons of one row on the finished pieces."""
    return sum(
        k.name.startswith("buttonhole ") and k.name.split()[-1].isdigit()
        for codes in ((BAND,), *(k for c in (FRONT, BACK) for k in (c.upper, c.lower)))
        for code in codes
        if code in sheet.pieces
        for k in sheet.piece(code).lines
    )
