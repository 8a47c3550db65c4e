"""Chains of edges that are on the table, for stating seams."""

import math
from collections.abc import Collection, Iterable

from clothwright.curves import Point
from clothwright.paper import EdgeKind, Run, Sheet, own_name
from clothwright.truing.tolerances import NOTCH_ROOM

FRONT_NOTCH, BACK_NOTCH = 7.5, 9.5
"""Notches of the armhole from the underarm, cm: front single, back the middle of a
double one at 9 and 10 (first garment 19)."""

BACK_STRAP = "BK"
"""Code of a strap across the back of a low neck."""
TOP = "top edge"
"""Name of the edge that a strapless bodice ends in above."""

FRONT_LINE, BACK_LINE = "top edge front", "top edge back"
"""The top edge of each half as its panels lie when they are sewn, clockwise."""

STRAP = "SR"
"""Code of a shoulder strap on such an edge."""

NECK_STRIP, ARM_STRIP, CUT_OUT_STRIP = "VN", "VA", "VC"
"""Codes of the bias strips that bind the neck, an armhole, half of a cut-out."""

CUT_OUT, NAPE, ABOVE = "cut-out", "cb nape", "cb above"
"""Names of the edge of a cut-out in the back, and of the centre above it: open up to
the nape, or sewn together."""

LAPPED_BEHIND = "waist lap", "waist stand", "band"
"""Edges of what hangs on the waist where it laps over at the centre back."""

LONG, FAR = 25.0, 40.0
"""A seam from here on is notched; no stretch of it without a notch is longer than the
second, cm (truing 6)."""


HANGING_PANELS = "PFC", "PFS", "PBS", "PBC"
"""Codes of what hangs on the waist in panels or gores, from the centre front."""

WAISTS = ("waist", "waist mid", "waist side")
"""Edges of a waist with darts in it, from the centre."""


def has_armhole(sheet: Sheet) -> bool:
    """False for a bodice that ends in a top edge."""
    edges = (own_name(e.name) for p in sheet.pieces.values() for e in p.edges)
    return any(name.startswith("armhole") for name in edges)


class Chains:
    """The table while seams are stated: chains of the edges that exist."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet

    def chain(self, *runs: tuple[str, str, bool]) -> tuple[Run, ...]:
        """The runs of this chain whose edges are on the table."""
        pieces = self.sheet.pieces
        out: list[Run] = []
        for run in runs:
            if run[0] in pieces and pieces[run[0]].has(run[1]):
                out.append(Run._make(run))
        return tuple(out)

    def length(self, chain: tuple[Run, ...]) -> float:
        return self.sheet.chain_length(chain)

    def upto(self, chain: tuple[Run, ...], p: Point) -> float:
        """Length along a chain of one piece to the place nearest to a point."""
        done, best = 0.0, (float("inf"), 0.0)
        for run in chain:
            path = self.sheet.run_path(run)
            place, gap = path.nearest(p)
            if gap < best[0] - 1e-9:
                best = gap, done + path.length_to(place)
            done += path.length
        return best[1]

    def has(self, piece: str, edge: str) -> bool:
        """True when this edge is on the table."""
        return on_table(self.sheet, piece, edge)

    def zipped(self) -> bool:
        """True when the centre back is a seam."""
        return any(
            self.has(c, "cb") and self.sheet.edge(c, "cb").kind is EdgeKind.SEAM
            for c in ("BC", "B")
        )


def on_table(sheet: Sheet, piece: str, *edges: str) -> bool:
    """True when a piece with these edges is on the table."""
    if piece not in sheet.pieces:
        return False
    p = sheet.pieces[piece]
    return p.has(edges[0]) if len(edges) == 1 else all(p.has(e) for e in edges)


def hanging(sheet: Sheet) -> str:
    """What hangs on the waist: a peplum or a skirt, as its pieces are named."""
    code = next((c for c in ("PF", "PFC") if c in sheet.pieces), "")
    return sheet.piece(code).name.split()[-1] if code else ""


def spaced(places: Iterable[float], whole: float) -> list[float]:
    """Notches at these places of a seam, and as many between that no stretch is longer
    than 40 cm, each nearer to the top than to the foot."""
    fixed: list[float] = []
    for s in sorted(places):
        if NOTCH_ROOM < s < whole - NOTCH_ROOM and (
            not fixed or s - fixed[-1] > NOTCH_ROOM
        ):
            fixed.append(s)
    out: list[float] = []
    for a, b in zip([0.0, *fixed], [*fixed, whole], strict=True):
        out += [*between(a, b), b]
    return out[:-1]


def clear_of(places: Iterable[float], these: Collection[float]) -> list[float]:
    """These places of a seam, and of the others those that leave room for their
    notches."""
    return [*(p for p in places if all(abs(p - q) > NOTCH_ROOM for q in these)), *these]


def shares(length: float) -> list[float]:
    """Where the notches of a long seam stand, as shares of its length: one for each 40
    cm, nearer to its beginning."""
    count = math.ceil(length / FAR)
    return [(i + 0.4) / count for i in range(count)]


def between(start: float, end: float) -> list[float]:
    """Notches between two places of a seam so that no stretch is longer than 40 cm,
    nearer to the first."""
    count = int((end - start) // FAR)
    return [start + (end - start) * (i + 0.9) / (count + 1) for i in range(count)]
