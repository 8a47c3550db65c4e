"""Front and back with their panels laid together as they are sewn (first garment 14.1).

Facings are traced from them, and the lining that hangs below a facing is cut by them.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from clothwright.curves import (
    IDENTITY,
    Motion,
    Path,
    Point,
    Vector,
    direction,
    distance,
    from_pair,
    lately,
    shift,
)
from clothwright.features.bodice.back_dart import BLADE_HIGH, BLADE_LOW, NECK_LEGS
from clothwright.features.bodice.front_dart import as_drafted
from clothwright.features.chains import BACK_LINE, FRONT_LINE, TOP
from clothwright.features.wholes import before_yoke
from clothwright.paper import Edge, Piece, Sheet, straight

OVER = "waist over"
"""The waist of the part of a wrap that lies over, or under, the other front."""

_TOGETHER = 0.005
"""Panels that differ by less than this lie edge to edge, cm."""

_BENT = 0.1
"""Where a facing's edge crosses panels that bend apart they lie no further apart than
this, cm; what is more goes to where their seam begins."""

_UPPER = 9.0
"""Panels that bend apart have done so after this much of their seam, cm."""

_FLAP = 8.0
"""How far down the side the paper below a side dart is laid up with it, cm."""


@dataclass(unsafe_hash=True)
class SewnHalf:
    """A half of the shell with its panels in their sewn state, net lines clockwise.

    Where the centre piece lies, the half lies; with a dart at the back neck, closed,
    that holds up to the dart.
    """

    centre: Final[Piece]
    flank: Final[Piece | None]
    """The side panel as drafted, None when the half is in one piece."""

    motion: Final[Motion]
    """What lays the side panel beside the centre panel."""

    neck: Final[Path]
    """With the loop, over a dart that is closed."""

    armhole: Final[Path]
    side: Final[Path]
    """From the underarm down, over side darts that are closed."""

    panel: Final[Path | None]
    """The panel seam from its start on the edge downwards, None without panels."""

    closed: Final[Motion] = IDENTITY
    """What closes a dart at the back neck: it moves what lies outward of it."""

    @property
    def front(self) -> bool:
        """True for the front."""
        return "F" in self.centre.code

    @property
    def slant(self) -> Path | None:
        """The slanted edge of an open back, waist up to the corner."""
        return self.centre.edge("slant").path if self.centre.has("slant") else None

    @property
    def cut_away(self) -> bool:
        """True for a back that has no armhole, as behind a halter: its neck is its
        upper edge."""
        return self.flank is None and not self.centre.has("armhole")

    @property
    def to_waist(self) -> bool:
        """True when its neck, or the edge below that, runs down to the waist: the roll
        is of one width then."""
        return self.slant is not None or self.centre.has(OVER)

    def of(self, centre: Piece, flank: Piece) -> "SewnHalf":
        """The same half, of pieces with these edges."""
        return SewnHalf(
            centre,
            flank,
            self.motion,
            self.neck,
            self.armhole,
            self.side,
            self.panel,
            self.closed,
        )

    def laid(self) -> tuple[Piece, ...]:
        """The paper of the half as it lies in the sewn state."""
        return tuple(p if m is IDENTITY else p.moved(m) for p, m in self.lay())

    def outlines(self) -> tuple[Path, ...]:
        """The net lines of that paper, to trace over."""
        return tuple(
            [p.outline if m is IDENTITY else p.outline.moved(m) for p, m in self.lay()]
        )

    def lay(self) -> list[tuple[Piece, Motion]]:
        """The paper of the half, and how each part of it is laid in the sewn state. (Of
        a back with a dart at the neck both lays, for what closing it opens below is of
        no matter.)"""
        lay = [(self.centre, IDENTITY)]
        if self.closed is not IDENTITY:
            lay.append((self.centre, self.closed))
        if self.flank is not None:
            lay.append((self.flank, self.motion))
            lay += [(p, self.motion) for p in _flaps(self.flank)]
        lay += [(p, IDENTITY) for p in _flaps(self.centre)]
        return lay


def sewn_front(sheet: Sheet) -> SewnHalf:
    """The front with the side front laid on along the panel seam (14.1)."""
    return front_half(sheet, "")


def sewn_back(sheet: Sheet) -> SewnHalf:
    """The back with the side back laid on along the panel seam, a dart at the neck
    closed."""
    return back_half(sheet, "")


def front_half(sheet: Sheet, before: str) -> SewnHalf:
    """The front of the pieces whose codes begin with `before`: "L." for a lining."""
    if FRONT_LINE in sheet.lines:
        return _under_top(sheet, before, front=True)
    if f"{before}F" in sheet.pieces:
        f = sheet.piece(f"{before}F") if before else as_drafted(sheet)
        arm = f.edge("armhole").path
        # of a cowl the neck is a fold, its facing is cut on
        neck = f.edge("neck").path if f.has("neck") else sheet.lines["neck front"]
        way = f.before("armhole").path.end_direction * -1.0
        down = arm.start + way * 20.0
        side = Path.line(arm.start, down)
        return SewnHalf(f, None, IDENTITY, neck, arm, side, None)
    fc, fs = (before_yoke(sheet, f"{before}{c}") for c in ("FC", "FS"))
    return _panelled_front(fc.loop, fs.loop).of(fc, fs)


@lately
def _panelled_front(fc: Piece, fs: Piece) -> SewnHalf:
    panel = fc.edge("panel").path.reversed()
    m = _lay_on(fs.edge("panel").path, panel)
    arm = fs.edge("armhole").path.moved(m)
    if fc.has("armhole"):
        head = fc.edge("armhole").path
        arm = arm.pinned(arm.start, head.start) + head
    side = _side_down(fs).moved(m)
    return SewnHalf(fc, fs, m, fc.edge("neck").path, arm, side, panel)


def _side_down(front: Piece) -> Path:
    """The side from the underarm, straight on over side darts."""
    if front.has("side"):
        return front.edge("side").path.reversed()
    high = front.edge("side high").path.reversed()
    return Path.line(high.start, high.start + high.start_direction * 20.0)


def back_under(sheet: Sheet, facing: Piece) -> SewnHalf:
    """The back as its facing lies on it: where the panel seam takes up a dart the
    panels bend apart below, and are laid together where the seam begins and where the
    facing's edge crosses it."""
    half = sewn_back(sheet)
    if half.panel is None or half.flank is None:
        return half
    mine, its = half.panel, half.flank.edge("panel").path.reversed()

    def apart(s: float) -> bool:
        gap = distance(half.motion(its.at_length(s)), mine.at_length(s))
        return gap > _TOGETHER

    hits = mine.meets(facing.edge("free").path) if apart(_UPPER) else []
    if not hits or not apart(hits[0][0]):
        return half
    s = hits[0][0]
    here = mine.at_length(s)
    mate = its.at_length(its.length - (mine.length - s))  # below it they are alike
    m = from_pair(its.start, mate, mine.start, here)
    there = m(mate)
    over = distance(there, here) - _BENT
    if over > 0:
        m = shift(direction(there, here) * over) @ m
    arm, side = (half.flank.edge(e).path.moved(m) for e in ("armhole", "side"))
    if half.centre.has("armhole"):
        head = half.centre.edge("armhole").path.moved(half.closed)
        arm = head + arm.pinned(head.end, arm.end)
    return replace(half, motion=m, armhole=arm, side=side)


def back_half(sheet: Sheet, before: str) -> SewnHalf:
    """The back of the pieces whose codes begin with `before`."""
    if BACK_LINE in sheet.lines:
        return _under_top(sheet, before, front=False)
    one_piece = f"{before}B"
    if one_piece in sheet.pieces:
        back = sheet.piece(one_piece) if before else before_yoke(sheet, "B")
    else:
        back = before_yoke(sheet, f"{before}BC")
    if back.code == one_piece and not back.has("armhole"):  # as behind a halter
        top, side = (back.edge(e).path for e in ("neck", "side"))
        return SewnHalf(back, None, IDENTITY, top, top, side, None)
    if back.has(BLADE_LOW):
        return _blade_closed(back, back_neck(back)[0])
    if back.code == one_piece:
        neck, closed = back_neck(back)
        arm, side = (back.edge(e).path.moved(closed) for e in ("armhole", "side"))
        return SewnHalf(back, None, closed, neck, arm, side, None, closed)
    flank = before_yoke(sheet, f"{before}BS")
    return _panelled_back(back.loop, flank.loop).of(back, flank)


@lately
def _panelled_back(back: Piece, bs: Piece) -> SewnHalf:
    neck, closed = back_neck(back)
    panel = back.edge("panel").path.moved(closed)
    m = _lay_on(bs.edge("panel").path.reversed(), panel)
    arm = bs.edge("armhole").path.moved(m)
    if back.has("armhole"):
        head = back.edge("armhole").path.moved(closed)
        arm = head + arm.pinned(head.end, arm.end)
    side = bs.edge("side").path.moved(m)
    return SewnHalf(back, bs, m, neck, arm, side, panel, closed)


def _under_top(sheet: Sheet, before: str, *, front: bool) -> SewnHalf:
    """A half of a strapless bodice, its panels laid together at the top edge: that is
    its neck and its armhole in one."""
    half = "F" if front else "B"
    whole = f"{before}{half}"
    one = whole in sheet.pieces
    centre = before_yoke(sheet, whole if one else f"{whole}C")
    flank = None if one else before_yoke(sheet, f"{whole}S")
    m, panel = IDENTITY, None
    line = centre.edge(TOP).path
    if flank is not None:
        panel, its = centre.edge("panel").path, flank.edge("panel").path
        panel, its = (panel.reversed(), its) if front else (panel, its.reversed())
        m = from_pair(
            its.start, its.at_length(_HEAD), panel.start, panel.at_length(_HEAD)
        )
        outer = flank.edge(TOP).path.moved(m)
        if front:
            line = outer.pinned(outer.start, line.start) + line
        else:
            line += outer.pinned(line.end, outer.end)
    outside = flank or centre
    side = outside.before(TOP).path.reversed() if front else outside.after(TOP).path
    return SewnHalf(centre, flank, m, line, line, side.moved(m), panel)


_HEAD = 3.0
"""Panels of a strapless bodice are laid together over so much of their seam, cm."""


def _blade_closed(back: Piece, neck: Path) -> SewnHalf:
    """A back whose shoulder dart opens at the armhole, in the seam of a yoke: what lies
    below is laid on the yoke there."""
    low, high = back.edge(BLADE_LOW).path, back.edge(BLADE_HIGH).path
    m = from_pair(low.start, low.end, high.end, high.start)
    head = back.edge("armhole high").path
    arm, side = (back.edge(e).path.moved(m) for e in ("armhole", "side"))
    arm = head + arm.pinned(head.end, arm.end)
    return SewnHalf(back, None, m, neck, arm, side, None, m)


def back_neck(back: Piece) -> tuple[Path, Motion]:
    """The neck from the centre to the shoulder with its dart closed, and how what lies
    outward of the dart moves for that."""
    neck = back.edge("neck").path
    if not back.has("neck side"):
        return neck, IDENTITY
    down, up = (back.edge(leg).path for leg in NECK_LEGS)
    closed = from_pair(up.start, up.end, down.end, down.start)
    side = back.edge("neck side").path.moved(closed)
    return neck + side.pinned(neck.end, side.end), closed


def _lay_on(path: Path, on: Path) -> Motion:
    """The motion that lays the start of one line on another's, same direction."""
    return from_pair(
        path.start,
        path.start + path.start_direction,
        on.start,
        on.start + on.start_direction,
    )


SIDE_DARTS = (("dart low", "dart high"), ("dart low 2", "dart high 2"))
"""Legs of the side darts of a front in one piece, the upper dart first."""


def _flaps(front: Piece) -> Iterator[Piece]:
    """The paper just below each side dart, turned up until the darts are closed."""
    up = IDENTITY
    for low_name, high_name in SIDE_DARTS:
        if not front.has(low_name):
            return
        low, high = front.edge(low_name).path, front.edge(high_name).path
        up = up @ from_pair(low.end, low.start, low.end, high.end)
        below = front.before(low_name).path  # towards the dart
        part = below.between(max(0.0, below.length - _FLAP), below.length)
        yield Piece(
            "flap",
            "flap",
            (
                Edge("side", part),
                Edge("dart", low),
                straight("cut", low.end, part.start),
            ),
        ).moved(up)


def at_level(path: Path, y: float) -> Point | None:
    """The first place where a path crosses a level; None when it does not."""
    left, _, right, _ = path.box
    level = Path.line(Point(left - 1.0, y), Point(right + 1.0, y))
    hits = path.meets(level)
    return path.at_length(hits[0][0]) if hits else None


def along_x(path: Path, x: float) -> Point | None:
    """The first place where a path crosses a plumb line; None when it does not."""
    _, top, _, bottom = path.box
    down = Vector(0.0, bottom - top + 2.0)
    start = Point(x, top - 1.0)
    hits = path.meets(Path.line(start, start + down))
    return path.at_length(hits[0][0]) if hits else None
