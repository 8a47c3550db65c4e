"""The pleats of half a front or back, from its centre, which lies in the middle of a
face, to its side (transformations §10)."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from clothwright.curves import Path, Point
from clothwright.features.skirts.folds import (
    ARROW_BELOW,
    Pleats,
    Strip,
    fold_lines,
    placement_line,
)
from clothwright.features.skirts.pleated_skirt_drawing import joined
from clothwright.paper import UNDER, Edge, EdgeKind, InnerLine, Piece

SIDE = f"{UNDER} side"
"""What is folded under at the side, up to the inner fold in which its seam lies."""

_SEEN = 0.01
"""What shows less is no edge, cm."""


@dataclass(frozen=True)
class HalfPleats(Pleats):
    """The pleats of a half, its centre at x = 0, its side at the right: `count` of them
    beside the half face at the centre. Knife pleats lie `away` from the centre, their
    folds towards the side, or towards it; the side seam lies in an inner fold. Of box
    pleats it lies where two of them meet."""

    away: bool

    @property
    def shown(self) -> float:
        """Faces seen of the half, with the half one at the centre."""
        return self.count + 0.5

    @property
    def width(self) -> float:
        """Cloth of the half at the hip."""
        beside = 2 * self.depth + self.gap / 2 if self.box else self.depth
        return self.face / 2 + self.count * self.unit + beside

    @property
    def waist(self) -> float:
        """What shows of the half at the waist."""
        return sum(p.length for s in self.strips() if (p := self.seen(s)) is not None)

    def strips(self) -> list[Strip]:
        """What shows, from the centre: the face there whole, half of it beyond x = 0;
        of box pleats, to where they meet at the side."""
        taken = self.taken if self.box else self.taken / 2
        out: list[Strip] = []
        for i in range(self.count + 1):
            x = i * self.unit - self.face / 2
            out.append(self._face(x, taken, first=i == 0))
            if self.box:
                y = x + self.face + 2 * self.depth
                out.append(Strip(y, y + self.gap, 0.0, (False, False)))
        return out

    def _face(self, x: float, taken: float, *, first: bool) -> Strip:
        if self.box:
            folds = (True, True)
        elif first:
            folds = (self.away, self.away)
        else:
            folds = (not self.away, self.away)
        return Strip(x, x + self.face, taken, folds)

    def beyond(self) -> Strip:
        """The first face of knife pleats on the other side of the side seam."""
        last = self.strips()[-1]
        folds = (not self.away, self.away)
        return replace(last, folds=folds).moved(self.unit)

    def seen(self, s: Strip) -> Path | None:
        """Upper edge of a strip, as far as it is of this half."""
        if s.right - s.left < _SEEN:
            return None
        top = self.top(s)
        if s.left < 0:
            return top.split_at_length(top.length / 2)[1]
        if s.right > self.width:  # the gap in whose middle the side seam lies
            return top.split_at_length(top.length / 2)[0]
        return top

    def width_at(self, y: float) -> float:
        """What the half measures at a level above the hip, its pleats laid, cm."""
        whole = super().width_at(y)
        ends = [s for s in self.strips() if s.left < 0 or s.right > self.width]
        return whole - sum(self.across(s, y) for s in ends) / 2


def half_pleats(k: HalfPleats, waist: float) -> HalfPleats:
    """The pleats taken in until the curved tops are `waist` long."""
    folds = 2 if k.box else 1
    for _ in range(4):
        k = replace(k, taken=k.taken + (k.waist - waist) / (folds * k.shown))
    return k


def opened_half(
    closed: Piece, k: HalfPleats, down: float, centre: Edge, head: float | None = None
) -> tuple[Piece, list[str]]:
    """A half laid open, its centre at the left, and the names of what shows of its
    waist, from the centre. Its side begins at the level `head` where that is given: at
    the other half's, which is of a hair wider or narrower faces."""
    strips = k.strips()
    top: list[Edge] = []
    names: list[str] = []
    for j, s in enumerate(strips, 1):
        shows = k.seen(s)
        if shows is not None:
            names.append(f"waist {len(names) + 1}")
            top.append(Edge(names[-1], shows))
        if j < len(strips):
            first, second = k.pair(s, strips[j])
            top += [Edge(f"{UNDER} {j}", first), Edge(f"{UNDER} {j} over", second)]
        elif not k.box:
            top.append(Edge(SIDE, k.pair(s, k.beyond())[0]))
    last = top[-1]
    if head is not None:
        end = Point(last.path.end.x, head)
        top[-1] = last.along(last.path.pinned(last.path.start, end))
    top = joined(top)
    start, end = top[0].path.start, top[-1].path.end
    hip, foot = Point(k.width, k.hip), Point(k.width, k.length)
    low = Point(0.0, k.length)
    edges = (
        *top,
        Edge("side", Path.line(end, hip) + Path.line(hip, foot)),
        Edge("hem", Path.line(foot, low), EdgeKind.FINISHED),
        Edge(centre.name, Path.line(low, start), centre.kind),
    )
    lines = [InnerLine("hip", Path.line(Point(0.0, k.hip), hip)), *_lines(k, strips)]
    if abs(down - k.hip) > 0.1:
        level = Path.line(Point(0.0, down), Point(k.width, down))
        lines.append(InnerLine("stitched down to here", level))
    return Piece(closed.code, closed.name, edges, lines=tuple(lines)), names


def _lines(k: HalfPleats, strips: list[Strip]) -> Iterable[InnerLine]:
    """Fold, placement line and arrow of every pleat; of the one at the side what this
    half has."""
    for j, (s, t) in enumerate(zip(strips, strips[1:], strict=False), 1):
        a, b = k.crease(s, right=True), k.crease(t, right=False)
        fold, placed = (a, b) if s.folds[1] else (b, a)
        yield from fold_lines(f"pleat {j}", fold, placed, k.hip + ARROW_BELOW)
    if k.box:
        return
    last = k.crease(strips[-1], right=True)
    if k.away:
        yield from fold_lines("pleat at the side", last, None, k.hip + ARROW_BELOW)
    else:
        yield placement_line("pleat at the side", last)
