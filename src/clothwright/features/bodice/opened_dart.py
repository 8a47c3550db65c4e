"""A dart opened at a place of front or back: slashed for, set back, laid over.

A dart moves about its point. The piece is slashed from the new place to it, and what
lies between the slash and the old dart turns about it: one closes by the angle by which
the other opens (transformations 1.1). The angle is kept, not the intake, which is
`2·|PQ|·sin(θ/2)` at a place `|PQ|` away.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from clothwright.blocks.trial import by_trial
from clothwright.curves import (
    Cubic,
    Path,
    Point,
    Vector,
    cross,
    degrees_between,
    direction,
    distance,
    dot,
    midpoint,
    turned,
)
from clothwright.paper import (
    Drafting,
    Ease,
    Edge,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.paper.drafting import Size


@dataclass(frozen=True)
class Opened:
    """A dart at a place of a half: names of its edges, clockwise round the loop."""

    edge: str
    """The edge that it divides."""

    first: str
    leg_first: str
    leg_last: str
    last: str
    dart: str
    """Code and name of the dart as a seam of the piece with itself."""

    mark: str
    piece: str = "F"
    about: str = "BP"
    """Mark of the point about which it turns."""

    own: str = ""
    """End of the keys of its numbers."""

    called: str = ""
    """Its place in words, where the edge does not tell it."""

    @property
    def run(self) -> list[str]:
        """Its four edges; at a corner, three."""
        return [e for e in (self.first, *self.legs, self.last) if e]

    @property
    def corner(self) -> bool:
        """True for one at the centre front, where its edge ends: beyond it lies the
        fold, and `first` or `last` is none."""
        return not (self.first and self.last)

    @property
    def legs(self) -> tuple[str, str]:
        """Its two legs."""
        return self.leg_first, self.leg_last

    @property
    def where(self) -> str:
        """The edge in words."""
        return self.called or {"cf": "centre front"}.get(self.edge, self.edge)

    @property
    def half(self) -> str:
        """Front or back."""
        return "front" if self.piece == "F" else "back"

    def kept(self, name: str) -> str:
        """Name of the line that remembers an edge as it was before it was laid."""
        return f"gathered {name}" if self.piece == "F" else f"gathered back {name}"

    def laid_in(self, sheet: Sheet) -> bool:
        """True when its fullness was taken up and no dart is left of it."""
        return self.kept(self.leg_last) in sheet.lines


def dart_angle_of(front: Piece, low: str, high: str) -> float:
    """Degrees by which a dart is open, from its two legs that meet at its point."""
    at = front.edge(low).path.end
    a, b = front.edge(low).path.start, front.edge(high).path.end
    return degrees_between(a - at, b - at)


def slashed(sheet: Sheet, o: Opened, at: Point, apex: Point) -> Sheet:
    """The piece with a slash, two legs that lie on each other, from `at` to `apex`."""
    path = sheet.edge(o.piece, o.edge).path
    a, b = path.split_at_length(path.length_to_point(at))
    new = [
        Edge(o.first, a),
        straight(o.leg_first, a.end, apex),
        straight(o.leg_last, apex, b.start),
        Edge(o.last, b),
    ]

    def both(run: Run) -> tuple[Run, ...]:
        if run.edge != o.edge:
            return (run,)
        runs = tuple(Run(o.piece, e, run.backward) for e in (o.first, o.last))
        return runs[::-1] if run.backward else runs

    return redraw(sheet, o.piece, [o.edge], new).with_runs(both, o.piece)


def dart_seam(o: Opened) -> Seam:
    """The dart as a seam of its piece with itself: the second leg on the first."""
    return Seam(
        o.dart,
        o.dart,
        (Run(o.piece, o.leg_last, True),),
        (Run(o.piece, o.leg_first),),
        o.where,
        "point",
        Ease.about(0.0, 0.1),
        kind=SeamKind.DART,
    )


def set_back(
    d: Drafting,
    legs: tuple[str, str],
    mark: str,
    back: Size,
    piece: str = "F",
    about: str = "BP",
) -> None:
    """End a dart of a piece short of the point about which it turned, half way between
    its legs."""
    p, (low, high) = d.sheet.piece(piece), legs
    a, b = p.edge(low).path.start, p.edge(high).path.end
    point = d[about]
    apex = d.found(
        mark,
        point + direction(point, midpoint(a, b)) * d.size(back),
        "stitched end of the dart",
        amounts=((f"from {about}", back),),
        detail="half way between the legs",
    )
    new = [straight(low, a, apex), straight(high, apex, b)]
    sheet = redraw(d.sheet, piece, list(legs), new)
    d.lay(Verb.REDRAW, sheet, piece, f"legs of the dart to {mark}")


def mouth(piece: Piece, o: Opened) -> tuple[Point, Point]:
    """Where the legs of a dart meet the edge, clockwise round the loop."""
    return piece.edge(o.leg_first).path.start, piece.edge(o.leg_last).path.end


def bridged(piece: Piece, o: Opened, reach: float) -> Path:
    """The divided edge in one line over an open dart: its parts as they are, but for
    `reach` to both sides of the mouth, where it runs in a smooth curve that rises over
    the mouth (1.6); at a corner, square to the centre front."""
    if o.corner:
        return _to_centre(piece, o, reach)
    first, last = piece.edge(o.first).path, piece.edge(o.last).path
    a, b = min(reach, 0.8 * first.length), min(reach, 0.8 * last.length)
    head, _ = first.split_at_length(first.length - a)
    _, tail = last.split_at_length(b)
    p, q = head.end, tail.start
    u, v = head.end_direction, tail.start_direction
    handle = _ARC * distance(p, q)
    over = Cubic(p, p + u * handle, q - v * handle, q)
    return head + Path(one_way_each(over)) + tail


def corners_of(path: Path) -> Iterator[float]:
    """Lengths at which a path turns a corner, cm."""
    at = 0.0
    for a, b in pairwise(path.segments):
        at += a.length
        if degrees_between(a.end_direction, b.start_direction) > 20.0:
            yield at


def _to_centre(piece: Piece, o: Opened, reach: float) -> Path:
    """The edge run on over a mouth at its end, to the centre front and square to it."""
    if o.last:
        turned = piece.edge(o.last).path.reversed()
        at, fold = mouth(piece, o)[0], piece.before(o.leg_first).path.end_direction
    else:
        turned = piece.edge(o.first).path
        at = mouth(piece, o)[1]
        fold = piece.after(o.leg_last).path.start_direction * -1.0
    room = turned.length - max(corners_of(turned), default=0.0)
    head, _ = turned.split_at_length(turned.length - min(reach, 0.8 * room))
    p = head.end
    square = Vector(-fold.y, fold.x)
    if dot(square, at - p) < 0:
        square = square * -1.0
    handle = _ARC * distance(p, at)
    over = Cubic(p, p + head.end_direction * handle, at - square * handle, at)
    path = head + Path(one_way_each(over))
    return path.reversed() if o.last else path


def true_beside(d: Drafting, o: Opened, point: Point) -> None:
    """Draw the ends of the divided edge anew beside a dart that ends short of `point`,
    about which it turned: each meets its leg as before, so that the edge runs on over
    the dart when that is folded to its stitched end (truing 3)."""
    p = d.sheet.piece(o.piece)
    apex, (a, b) = p.edge(o.leg_first).path.end, mouth(p, o)
    first, last = p.edge(o.first).path, p.edge(o.last).path.reversed()
    new = []
    for path, at in ((first, a), (last, b)):
        u, v = direction(at, point), direction(at, apex)
        by = math.degrees(math.atan2(cross(u, v), dot(u, v)))
        new.append(to_end(path, turned(path.end_direction, by)))
    new[1] = new[1].reversed()
    sheet = redraw(d.sheet, o.piece, [o.first], [Edge(o.first, new[0])])
    sheet = redraw(sheet, o.piece, [o.last], [Edge(o.last, new[1])])
    d.lay(
        Verb.REDRAW,
        sheet,
        f"{o.piece}.{o.edge}",
        f"{o.where} trued over the closed dart",
        lines=tuple(new),
    )


def to_end(path: Path, way: Vector) -> Path:
    """The path with its last part drawn anew, so that it ends in a direction and is as
    long as before."""
    head, tail = path.split_at_length(path.length - min(_TRUED, path.length / 2))
    p, at = head.end, path.end

    def over(reach: float) -> Cubic:
        return Cubic(p, p + head.end_direction * reach, at - way * reach, at)

    third = tail.length / 3
    reach = by_trial(lambda r: over(r).length - tail.length, third / 2, 2 * third)
    return head + Path(one_way_each(over(third if reach is None else reach)))


_TRUED = 5.0
"""So much of the edge is drawn anew, cm (our own)."""


def one_way_each(curve: Cubic) -> tuple[Cubic, ...]:
    """A curve divided where it changes its bend, as over gathers it may: each part
    bends one way."""
    steps = [i / _STEPS for i in range(1, _STEPS)]
    for s, t in pairwise(steps):
        if curve.curvature(s) * curve.curvature(t) < 0:
            for _ in range(40):
                middle = (s + t) / 2
                same = curve.curvature(s) * curve.curvature(middle) > 0
                s, t = (middle, t) if same else (s, middle)
            first, rest = curve.before(s), curve.after(s)
            return (first, *one_way_each(rest))
    return (curve,)


_STEPS = 24
"""Places at which a curve is asked for its bend."""


_ARC = 0.35
"""Handle of a curve that is nearly an arc, share of its chord."""


def keep_open(sheet: Sheet, o: Opened) -> Sheet:
    """The sheet that remembers how a dart lay before it was gathered."""
    p = sheet.piece(o.piece)
    return sheet.drawn(**{o.kept(name): p.edge(name).path for name in o.run})
