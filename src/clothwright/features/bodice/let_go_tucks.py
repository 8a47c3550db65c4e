"""Tucks of a front that are stitched part of the way and let go: what becomes of the
edge at their foot (transformations 1.6).

They end on one level, measured on the first and squared across. Below, what they laid
in is fullness: it is gathered into the seam at the foot, or hangs free at a hem.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence

from clothwright.curves import Point, midpoint
from clothwright.features.hand.hand_places import NEAR
from clothwright.features.hand.hand_seams import off_corners, taken_in
from clothwright.features.operations import Operation, Task, Work
from clothwright.features.tucked import Cut, rounded_foot
from clothwright.paper import PaperError, Piece, Seam, SeamKind, Sheet

BESIDE = 1.5
"""A seam at the foot is gathered so far beyond its outermost tucks, cm (our own)."""

_CLEAR = 3.0
"""Fullness that is shorter between the end of the stitching and the foot is none, cm
(our own)."""

_SHORTEST = 1.0
"""Every tuck is stitched for so much at least, cm (our own)."""

Ends = tuple[Cut, Cut]
"""Where a slash crosses the upper edge, and the edge at the foot."""


def at(cut: Cut) -> Point:
    """The place where a slash crosses an edge."""
    return cut.edge.path.at_length(cut.at)


def end_level(tucks: Sequence[Ends], stitched: float) -> float:
    """The level to which all are stitched. Raises PaperError where one has no room."""
    level = at(tucks[0][0]).y + stitched
    lowest = min(at(foot).y for _, foot in tucks)
    if level > lowest - _CLEAR:
        most = stitched - (level - lowest) - _CLEAR
        raise PaperError(
            f"stitched for {stitched:.1f} cm the tucks of the front leave less than "
            f"{_CLEAR:.0f} cm to their foot: stitch them (sewn t) for {most:.1f} cm "
            "at most, or from edge to edge, and leave it blank"
        )
    deepest = max(at(top).y for top, _ in tucks)
    if level < deepest + _SHORTEST:
        least = stitched + deepest + _SHORTEST - level
        raise PaperError(
            f"stitched for {stitched:.1f} cm the first tuck of the front ends above "
            f"the upper end of another: stitch them (sewn t) for {least:.1f} cm at "
            "least, or make them fewer"
        )
    return level


def rounded_feet(
    piece: Piece, tucks: Sequence[Ends], places: Sequence[float], deep: float
) -> Piece:
    """The opened piece, every edge at the foot in one line over the openings; the inner
    stitch lines lie at `places`."""
    feet = [foot.edge.name for _, foot in tucks]
    for name in dict.fromkeys(feet):
        own = [x for x, f in zip(places, feet, strict=True) if f == name]
        piece = rounded_foot(piece, name, min(own) - 2 * deep, max(own))
    return piece


def feet_seams(sheet: Sheet, code: str, tucks: Sequence[Ends]) -> tuple[Seam, ...]:
    """The seams at the foot. Raises PaperError where what is sewn there can take no
    fullness in."""
    names = {foot.edge.name for _, foot in tucks}
    found = tuple(
        s
        for s in sheet.seams
        if s.kind is not SeamKind.TWIN
        and any(r.piece == code and r.edge in names for r in s.runs())
    )
    if found and all(s.kind is not SeamKind.PLAIN for s in found):
        raise PaperError(
            "the fullness of the tucks of the front would be turned in with its "
            "facing or lining at the foot: stitch them from edge to edge, their length "
            "(sewn t) left blank, or leave off what is sewn there"
        )
    return found


def gathered_in(
    before: Sheet, after: Sheet, piece: Piece, tucks: Sequence[Ends]
) -> Sheet:
    """The seams of a front's piece take in what has grown, gathered at the foot."""
    first, last = at(tucks[0][1]), at(tucks[-1][1])
    wide = abs(first.x - last.x)
    middle, reach = midpoint(first, last), wide / 2 + BESIDE
    sheet = taken_in(before, after, piece.code, [middle], "gathers", reach)
    return off_corners(sheet, piece.code)


def foot_operations(
    sheet: Sheet, code: str, fmt: Callable[[float], str]
) -> Iterator[Operation]:
    """The foot gathered before it is sewn on."""
    for s in sheet.seams:
        if s.zone is None or not s.drawn_up or s.tucked:
            continue
        edges: Iterable[str] = (r.edge for r in s.right if r.piece == code)
        if not any(e.startswith(("waist", "under", "hem")) for e in edges):
            continue
        a, b = s.zone
        if b - a > NEAR:
            yield Operation(
                Work.READY,
                "Gather the front below its tucks",
                (
                    "Two rows of long stitches between the notches; draw them up to "
                    f"{fmt(b - a)} a half.",
                ),
                task=Task.GATHER,
            )
