"""A button stand that is a band of its own, sewn on as a shirt's (transformations 7).

The front is cut back to the seam of the band, as far inside the centre as the band
laps beyond it, so that the centre runs down its middle. The band is cut double and goes
from the neck to the hem in one, over the waist seam.
"""

from dataclasses import dataclass

from clothwright.blocks.torso import in_one
from clothwright.curves import Path, Point
from clothwright.features.chains import Chains
from clothwright.features.openings.band_pieces import beside, cut_back, doubled, met
from clothwright.features.openings.stand_pieces import BANDED, FRONT, with_stand
from clothwright.features.openings.stand_seams import long_notches
from clothwright.features.wholes import WAIST_IN_BAND
from clothwright.paper import (
    JOINT,
    ON_STAND,
    Drafting,
    Ease,
    Edge,
    EdgeKind,
    InnerLine,
    NotchPair,
    Piece,
    Seam,
    Verb,
    straight,
)

BAND = "BD"
"""Code of the band."""

BAND_SEAMS = ("S118", "S119", "S120")
"""Codes: the band on the front, its upper end, its lower end."""

_WIDE = "the band is wider than {}: make the stand (b) narrower"


@dataclass(frozen=True)
class Parted:
    """A front cut back to the seam of its band, and what the band takes its upper end
    from."""

    rest: Piece
    upper: tuple[Edge, Edge]
    """The end of the edge above, up to the centre line, and that run on beyond it."""

    centre: Path

    below: Path
    """What is cut off the edge below, from the centre line to the seam."""


def parted(piece: Piece, wide: float) -> Parted:
    """The piece without what lies less than `wide` cm inside of its centre front."""
    whole, cf = with_stand(piece, FRONT, wide), piece.edge(FRONT.edge).path
    before, after = piece.before(FRONT.edge), piece.after(FRONT.edge)
    line = beside(cf, wide)
    above, below = (
        met(e.path, line, _WIDE.format(f"the {e.name} of the {piece.name.lower()}"))
        for e in (before, after)
    )
    kept, lost = before.path.split_at_length(above)
    lost_below, rest = after.path.split_at_length(below)
    loop: list[Edge] = []
    for e in piece.edges:
        if e.name == before.name:
            loop += [e.along(kept), straight(BANDED, kept.end, rest.start)]
        elif e.name == after.name:
            loop.append(e.along(rest))
        elif e.name != FRONT.edge:
            loop.append(e)
    on = whole.edge(before.name + ON_STAND)
    return Parted(piece.with_edges(loop), (before.along(lost), on), cf, lost_below)


def band(parts: tuple[Parted, ...]) -> Piece:
    """The band, its outer half where it lies on the front; `parts` from the neck
    down."""
    first, start = parts[0], parts[0].upper[0].path.start
    foot = start.y + sum(p.rest.edge(BANDED).length for p in parts)
    piece = doubled(BAND, "Front band", first.upper, foot, EdgeKind.SEAM)
    top = first.centre.start
    return piece.with_lines(
        InnerLine("centre front", Path.line(top, Point(top.x, foot)))
    )


def lay_band(d: Drafting, upper: str, lower: str) -> tuple[str, ...]:
    """Cut the fronts and their facing back, and draw the band on the table."""
    n = d.n
    codes = tuple(c for c in (upper, lower) if c)
    parts = tuple(parted(d.sheet.piece(c), n.b_stand) for c in codes)
    d.part = "front"
    cut = d.sheet.put(*(p.rest for p in parts))
    d.lay(
        Verb.REDRAW,
        cut.drawn(**{WAIST_IN_BAND: parts[0].below}),
        ", ".join(codes),
        "front cut back to the seam of its band",
        amounts=(("inside the centre front", "b_stand"),),
        lines=tuple(p.rest.edge(BANDED).path for p in parts),
    )
    if FRONT.facing in d.sheet.pieces:
        d.part = "facing"
        line = beside(parts[0].centre, n.b_stand)
        facing = cut_back(d.sheet.piece(FRONT.facing), line, _WIDE.format("the neck"))
        says = "facing cut back to the band"
        d.lay(Verb.REDRAW, d.sheet.put(facing), facing.code, says)
        d.part = "front"
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(band(parts)),
        BAND,
        "band of the front, a pair",
        amounts=(("on either side of its fold", 2 * n.b_stand),),
        detail="from the neck to the hem in one, the centre front down the middle; its "
        "upper end as the neck there, turned over at the fold",
    )
    return codes


def band_seams(t: Chains) -> list[Seam]:
    """The band to front and skirt, and its ends to themselves."""
    if BAND not in t.sheet.pieces:
        return []
    upper, lower = (FRONT.on(t.sheet, c) for c in (FRONT.upper, FRONT.lower))
    left = t.chain((upper, BANDED, False), (lower, BANDED, False))
    waist = t.length(left[:1])
    side = t.chain((BAND, "side", True))
    at: tuple[NotchPair, ...] = ()
    if len(left) > 1:
        at = (NotchPair(waist, waist, 1, JOINT),)
    elif in_one(t.sheet):
        at = long_notches(t, left, side)
    even = Ease.about(0.0, 0.1)
    top = t.chain((BAND, "neck", False), (BAND, "neck" + ON_STAND, False))
    over = t.chain((BAND, "neck inside", True), (BAND, f"neck{ON_STAND} inside", True))
    foot = t.chain((BAND, "foot", True)), t.chain((BAND, "foot inside", False))
    names = BAND_SEAMS
    return [
        Seam(names[0], "front band", left, side, "neck", "hem", even, notches=at),
        Seam(names[1], "upper end of the band", top, over, "side", "fold", even),
        Seam(names[2], "lower end of the band", *foot, "side", "fold", even),
    ]
