"""A button stand that is a band of its own, sewn on as a shirt's (transformations 7).

Front or back is cut back to the seam of the band, as far inside the centre as the band
laps beyond it, so that the centre runs down its middle. The band is cut double and goes
from the neck to the hem in one, over the waist seam. All is done as for a front; a back
is turned over for it.
"""

from dataclasses import dataclass

from clothwright.blocks.torso import in_one
from clothwright.curves import Path, Point
from clothwright.features.chains import Chains
from clothwright.features.openings.band_pieces import (
    INSIDE,
    beside,
    cut_back,
    doubled,
    met,
)
from clothwright.features.openings.stand_pieces import (
    BACK,
    BANDED,
    FRONT,
    STAND,
    Centre,
    as_front,
    with_stand,
)
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
    Sheet,
    Verb,
    straight,
)

BAND = "BD"
"""Code of the band."""

BAND_SEAMS = {FRONT: ("S118", "S119", "S120"), BACK: ("S69", "S79", "S99")}
"""Codes: the band on front or back, its upper end, its lower end."""

_WIDE = {
    BANDED: "the band is wider than {}: make the stand (b) narrower",
    STAND: "the gap of the lacing is wider than {}: make it (lg) narrower",
}


@dataclass(frozen=True)
class Parted:
    """A piece cut back to the seam of its band, and what the band takes its upper end
    from, all as of a front."""

    rest: Piece
    upper: tuple[Edge, Edge]
    """The end of the edge above, up to the centre line, and that run on beyond it."""

    centre: Path

    below: Path
    """What is cut off the edge below, from the centre line to the seam."""


def set_back(piece: Piece, by: float, centre: Centre, edge: str) -> Piece:
    """The piece without what lies less than `by` cm inside of its centre line, with
    `edge` where it is cut."""
    p = as_front(piece, centre)
    before, after = p.before(centre.edge), p.after(centre.edge)
    seam = beside(p.edge(centre.edge).path, by)
    above, below = (
        met(e.path, seam, _WIDE[edge].format(f"the {e.name} of the {p.name.lower()}"))
        for e in (before, after)
    )
    kept = before.path.between(0.0, above)
    rest = after.path.between(below, after.path.length)
    loop: list[Edge] = []
    for e in p.edges:
        if e.name == before.name:
            loop += [e.along(kept), straight(edge, kept.end, rest.start)]
        elif e.name == after.name:
            loop.append(e.along(rest))
        elif e.name != centre.edge:
            loop.append(e)
    return as_front(p.with_edges(loop), centre)


def parted(piece: Piece, wide: float, centre: Centre) -> Parted:
    """The piece without what lies less than `wide` cm inside of its centre line."""
    rest = as_front(set_back(piece, wide, centre, BANDED), centre)
    piece = as_front(piece, centre)
    whole, line = with_stand(piece, centre, wide), piece.edge(centre.edge).path
    before, after = piece.before(centre.edge), piece.after(centre.edge)
    lost = before.path.between(rest.edge(before.name).length, before.length)
    below = after.path.between(0.0, after.length - rest.edge(after.name).length)
    on = whole.edge(before.name + ON_STAND)
    return Parted(rest, (before.along(lost), on), line, below)


def band(parts: tuple[Parted, ...], words: str) -> Piece:
    """The band, its outer half where it lies on the piece; `parts` from the neck
    down."""
    first, start = parts[0], parts[0].upper[0].path.start
    foot = start.y + sum(p.rest.edge(BANDED).length for p in parts)
    piece = doubled(
        BAND, f"{words.capitalize()} band", first.upper, foot, EdgeKind.SEAM
    )
    top = first.centre.start
    return piece.with_lines(
        InnerLine(f"centre {words}", Path.line(top, Point(top.x, foot)))
    )


def lay_band(d: Drafting, centre: Centre) -> None:
    """Cut both halves and their facing back, and draw the band on the table."""
    n, words = d.n, centre.words
    both = (centre.on(d.sheet, c) for c in (centre.upper, centre.lower))
    codes = tuple(c for c in both if c)
    parts = tuple(parted(d.sheet.piece(c), n.b_stand, centre) for c in codes)
    rest = [as_front(p.rest, centre) for p in parts]
    d.part = words
    d.lay(
        Verb.REDRAW,
        d.sheet.put(*rest).drawn(**{f"{WAIST_IN_BAND}, {words}": parts[0].below}),
        ", ".join(codes),
        f"{words} cut back to the seam of its band",
        amounts=((f"inside the centre {words}", "b_stand"),),
        lines=tuple(p.edge(BANDED).path for p in rest),
    )
    if centre.facing in d.sheet.pieces:
        d.part = "facing"
        line, facing = beside(parts[0].centre, n.b_stand), d.sheet.piece(centre.facing)
        over, wide = as_front(facing, centre), _WIDE[BANDED].format("the neck")
        facing = as_front(cut_back(over, line, wide, centre.edge), centre)
        says = "facing cut back to the band"
        d.lay(Verb.REDRAW, d.sheet.put(facing), facing.code, says)
        d.part = words
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(as_front(band(parts, words), centre)),
        BAND,
        f"band of the {words}, a pair",
        amounts=(("on either side of its fold", 2 * n.b_stand),),
        detail=f"from the neck to the hem in one, the centre {words} down the middle; "
        "its upper end as the neck there, turned over at the fold",
    )


def banded(sheet: Sheet) -> Centre | None:
    """The centre line that a band closes, if one does."""
    for centre in (FRONT, BACK):
        upper = centre.on(sheet, centre.upper)
        if upper and sheet.piece(upper).has(BANDED):
            return centre
    return None


def band_seams(t: Chains) -> list[Seam]:
    """The band to front or back and skirt, and its ends to themselves."""
    centre = banded(t.sheet)
    if centre is None:
        return []
    up = centre is BACK  # whose loop runs the other way
    upper, lower = (centre.on(t.sheet, c) for c in (centre.upper, centre.lower))
    left = t.chain((upper, BANDED, up), (lower, BANDED, up))
    waist = t.length(left[:1])
    side = t.chain((BAND, "side", not up))
    at: tuple[NotchPair, ...] = ()
    if len(left) > 1:
        at = (NotchPair(waist, waist, 1, JOINT),)
    elif in_one(t.sheet):
        at = long_notches(t, left, side)
    even = Ease.about(0.0, 0.1)
    ends = ("neck", "neck" + ON_STAND)
    top = t.chain(*((BAND, e, up) for e in ends))
    over = t.chain(*((BAND, e + INSIDE, not up) for e in ends))
    foot = t.chain((BAND, "foot", not up)), t.chain((BAND, "foot" + INSIDE, up))
    words, codes = centre.words, BAND_SEAMS[centre]
    return [
        Seam(codes[0], f"{words} band", left, side, "neck", "hem", even, notches=at),
        Seam(codes[1], "upper end of the band", top, over, "side", "fold", even),
        Seam(codes[2], "lower end of the band", *foot, "side", "fold", even),
    ]
