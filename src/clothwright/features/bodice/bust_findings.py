"""What is asked of the bust of a finished bodice: its girth over the bust points (first
garment 5.5, blocks B1) and their level (B16)."""

from collections.abc import Iterable

from clothwright.curves import Path, Point, distance
from clothwright.features.chains import FRONT_LINE
from clothwright.findings import Finding, Severity
from clothwright.paper import Piece, Sheet
from clothwright.rules import Hand, Numbers

_LEAN_AND_SHAVED = 1.1
"""What the lean of the side and the paper shaved off the side front take of half the
girth, cm (`bust_findings`)."""

_TAPE = 0.3
"""Half a girth comes out so much smaller before it is smaller than the body, cm: no
tape tells less on it (our own choice)."""

_HELD = 1.0
"""The same of a strapless bust, which cloth and bones support (measurements 8)."""


def bust_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """The finished bust is body and ease (B1).

    Shaved paper and the lean of the side seam may take 1.1 (5.5, B1: 0.5 and the paper
    shaved, 0.3; the side of our standard bodies leans by up to 0.7), a shaped centre
    back what is drawn there. On a low bust point the waist darts take more, since they
    begin at the bust line: that is a doubt, and a fault when it comes out smaller than
    the body.
    """
    half = bust_girth(n, sheet)
    if half is None:
        return
    aim = (n.B + n.Eb) / 2
    small = half < n.B / 2 - (_HELD if FRONT_LINE in sheet.lines else _TAPE)
    if half >= aim - _LEAN_AND_SHAVED - _taken_at_centre(sheet) and not small:
        return
    severity = Severity.REFUSE if small else Severity.WARN
    yield Finding(
        "B1",
        severity,
        f"Over the bust points the finished bust is {2 * half:.1f} cm, "
        f"{2 * (aim - half):.1f} cm less than bust and ease.",
        "bust",
        f"The bust point lies {n.y_BP - n.yB:.1f} cm below the bust line, where sides "
        f"and back dart take in already: {_measure(n, 'NBP', 'NFW')}, or add ease at "
        "the bust (Eb).",
        {"half": half, "aim": aim},
    )


def bust_point_findings(n: Numbers) -> Iterable[Finding]:
    """The bust point lies where the block can shape it (B16)."""
    low = n.y_BP - n.yB
    if -0.5 <= low <= 6.0:
        return
    where = "below" if low > 0 else "above"
    yield Finding(
        "B16",
        Severity.WARN,
        f"The bust point lies {abs(low):.1f} cm {where} the bust line; up to 6 cm "
        "below is usual.",
        "yBP",
        f"Before cutting, {_measure(n, 'NBP', 'NFW', 'NWB')}.",
        {"low": low},
    )


def _measure(n: Numbers, *codes: str) -> str:
    """What to do about measures: take what is estimated, else take all again."""
    guessed = [c for c in codes if n.hand(c) is Hand.ESTIMATED]
    *most, last = guessed or codes
    words = f"{', '.join(most)} and {last}" if most else last
    if not guessed:
        return f"measure {words} again"
    return (
        f"measure {words}, which {'is' if len(guessed) == 1 else 'are'} only estimated"
    )


def bust_girth(n: Numbers, sheet: Sheet) -> float | None:
    """Half girth at the level of the bust point on the finished panels, cm, with the
    set-in of an open back at that level (9.6); None when front or back is in one
    piece, or the bust dart is sewn at the side."""
    whole = not all(c in sheet.pieces for c in ("FC", "FS", "BC", "BS"))
    if whole or "J" not in sheet.points:
        return None
    bp = sheet.points["BP"]
    front = n.X - bp.x  # the front panel runs through the bust point
    rounded = sheet.edge("FS", "panel").path
    shaved = 0.0 if "rest_f" in n else rounded.nearest(bp)[1]
    front += distance(sheet.points["J"], bp) - shaved
    bc = sheet.piece("BC")
    places = (
        _across(bp.y, sheet.edge("BS", "side").path),
        _across(bp.y, sheet.edge("BS", "panel").path),
        _across(bp.y, bc.edge("panel").path),
        _centre(bc, bp.y),
        _set_in(n, sheet, bp.y) if bc.has("slant") else 0.0,
    )
    if any(x is None for x in places):
        return None
    side, seam, panel, edge, set_in = (x or 0.0 for x in places)
    return front + (side - seam) + (panel - edge) + set_in


def _centre(bc: Piece, y: float) -> float | None:
    """Where the back begins at a level: an open one at its edge, a closed one at its
    centre, and beside a deep neck, which shows the body, where the centre would be."""
    edges = [bc.edge(e).path for e in ("neck", "slant", "cb") if bc.has(e)]
    if bc.has("slant"):
        return _across(y, *edges)
    if not bc.has("cb"):  # a stand runs on beyond the centre
        return 0.0
    cb = bc.edge("cb").path
    top = min(cb.start, cb.end, key=lambda p: p.y)
    return top.x if y < top.y else _across(y, cb)


def _set_in(n: Numbers, sheet: Sheet, y: float) -> float | None:
    """Set-in of an open back at a level, as it is worn: a tightened edge is drawn
    elsewhere than it was ordered, but lies on the panel's lap line."""
    edge = sheet.edge("BC", "slant").path  # waist up
    hits = edge.meets(_level(y))
    if hits:
        return n.e2 + (n.e1 - n.e2) * hits[0][0] / (n.slant - n.te)
    return _across(y, sheet.lines["neck back"])


def _level(y: float) -> Path:
    return Path.line(Point(-50.0, y), Point(150.0, y))


def _across(y: float, *lines: Path) -> float | None:
    """Where a level first meets a line, from the centre back; None where never."""
    level = _level(y)
    hits = [s for line in lines for _, s in line.meets(level)]
    return level.at_length(min(hits)).x if hits else None


def _taken_at_centre(sheet: Sheet) -> float:
    """What a shaped centre back takes in at the level of the bust point, cm."""
    bc = sheet.piece("BC")
    if not bc.has("cb"):
        return 0.0
    return _across(sheet.points["BP"].y, bc.edge("cb").path) or 0.0
