"""How each meaning looks on paper: line, dashes and little figures.

Strokes are what every paper output draws, so that a page, a picture and a test see
the same pattern. Positions are cm on the cutter's page; widths and dashes are mm,
as they stand on the paper at any scale. Dashes after truing 10 (net 6-3, fold
12-3-3-3, grain solid with arrowheads), notches after truing 6 (T, 10 mm apart in a
set); the rest is our own choice.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import groupby, pairwise

from clothwright.curves import (
    CLOSE,
    Cubic,
    Line,
    Motion,
    Path,
    Point,
    Segment,
    cross,
    direction,
    distance,
    mix,
    polyline,
    turned,
)
from clothwright.finishing.drawn import (
    DrawnLine,
    DrawnNotch,
    DrawnPiece,
    Meaning,
    Wording,
)
from clothwright.finishing.lettering import (
    EASE_IN,
    HEAD_LONG,
    alongside,
    bracket,
    lettered,
)


@dataclass(frozen=True, slots=True)
class Look:
    """Line width and dashes (line, gap, …) in mm; no dashes is a solid line.

    `grey` is 0 for black to 1 for white; `phase` is how far into its dashes a line
    begins, mm.
    """

    width: float
    dashes: tuple[float, ...] = ()
    grey: float = 0.0
    phase: float = 0.0


LOOKS = {
    Meaning.CUT: Look(0.4),
    Meaning.SEW: Look(0.35, (6, 3)),
    Meaning.FOLD: Look(0.35, (12, 3, 3, 3)),
    Meaning.BRACKET: Look(0.35),
    Meaning.GRAIN: Look(0.35),
    Meaning.NOTCH: Look(0.45),
    Meaning.DRILL: Look(0.3),
    Meaning.LOOP: Look(0.35),
    Meaning.DART: Look(0.35, (6, 3)),
    Meaning.INNER: Look(0.25),
    Meaning.PLACEMENT: Look(0.25, (4, 2)),
    Meaning.ARROW: Look(0.25),
    Meaning.TAPE: Look(0.3),
    Meaning.EASE: Look(0.35, (2, 2)),
    Meaning.LABEL: Look(0.25),
    Meaning.DIMENSION: Look(0.18),
}


FOLD_GAP = 0.01
"""An edge within this of a fold's line lies on it, cm."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line to draw, or a small solid figure when `solid`."""

    meaning: Meaning
    path: Path
    look: Look
    solid: bool = False
    note: str = ""


def strokes(piece: DrawnPiece, *, figure: float = 1.0) -> Iterator[Stroke]:
    """Everything drawn on a piece except its words.

    `figure` sizes arrowheads, bars and crosses: 1 at full scale.
    """
    look = LOOKS[Meaning.CUT]
    kept, folded = divided(piece)
    for part in kept:
        yield Stroke(Meaning.CUT, part, look, note="cut line")
    middle = _middle(piece.cut_line)
    nets = [k for k in piece.lines if k.meaning is Meaning.FOLD]

    def named(s: Segment) -> str:
        on = (k.note for k in nets if _within(s, k.path))
        return next(on, "fold in the allowance")

    for fold in folded:
        for note, run in groupby(fold.segments, named):
            yield Stroke(Meaning.FOLD, Path(tuple(run)), LOOKS[Meaning.FOLD], note=note)
    for line in piece.lines:
        if line.meaning is not Meaning.FOLD or not folded:
            yield from _line(line, piece, middle, figure)
    for notch in piece.notches:
        yield from _notch(notch, figure)


def divided(piece: DrawnPiece) -> tuple[list[Path], list[Path]]:
    """The outline's parts that are cut, and those that lie on the fold.

    Both in walking order. The fold of the outline may be longer than the fold line,
    which ends at the net edges. A piece off the fold is cut all round.
    """
    folds = [k.path for k in piece.lines if k.meaning is Meaning.FOLD]
    parts: list[tuple[bool, list[Segment]]] = []
    for s in piece.cut_line.segments:
        on = isinstance(s, Line) and any(_along(s, f) for f in folds)
        if parts and parts[-1][0] == on:
            parts[-1][1].append(s)
        else:
            parts.append((on, [s]))
    if len(parts) == 1:
        return [piece.cut_line], []
    if parts[0][0] == parts[-1][0]:
        parts[0] = parts[0][0], parts.pop()[1] + parts[0][1]
    kept = [Path(tuple(run)) for on, run in parts if not on]
    return kept, [Path(tuple(run)) for on, run in parts if on]


def _within(s: Segment, net: Path) -> bool:
    """True for a part of the outline between the ends of a net edge."""
    ends = (s.start, s.end)
    return all(
        distance(p, net.start) + distance(p, net.end) < net.length + FOLD_GAP
        for p in ends
    )


def _along(s: Line, fold: Path) -> bool:
    """True when a straight segment lies on the line of a fold."""
    u = direction(fold.start, fold.end)
    off = (abs(cross(u, p - fold.start)) for p in s.points)
    return max(off) < FOLD_GAP


def scaled(piece: DrawnPiece, k: float) -> DrawnPiece:
    """The piece drawn `k` times as large, its words found new places so that they
    can be read."""
    if k == 1.0:
        return piece
    return moved(lettered(piece, scale=k), Motion(k, 0.0, 0.0, k), letters=k)


def moved(piece: DrawnPiece, m: Motion, *, letters: float = 1.0) -> DrawnPiece:
    """The piece after a motion that does not turn it over; its wording is done."""
    turn = math.degrees(math.atan2(m.b, m.a))
    return replace(
        piece,
        cut_line=piece.cut_line.moved(m),
        lines=tuple(replace(k, path=k.path.moved(m)) for k in piece.lines),
        notches=tuple(
            replace(n, net=m(n.net), outer=m(n.outer)) for n in piece.notches
        ),
        texts=tuple(
            replace(t, at=m(t.at), height=t.height * letters, degrees=t.degrees + turn)
            for t in piece.texts
        ),
        wording=Wording(),
    )


def _line(
    line: DrawnLine, piece: DrawnPiece, middle: Point, figure: float
) -> Iterator[Stroke]:
    meaning, path = line.meaning, line.path
    look = LOOKS[meaning]
    if meaning is Meaning.EASE:
        path = _beside(path, middle, EASE_IN * figure)
    if meaning is Meaning.BRACKET:
        yield from _bracket(path, figure)
        return
    if meaning is Meaning.TAPE:
        yield Stroke(meaning, _wave(path, figure), look, note=line.note)
        return
    yield Stroke(meaning, path, look, note=line.note)
    if meaning is Meaning.ARROW:
        yield _head(meaning, path.end, path.end_direction, 0.6 * figure)
    if meaning is Meaning.GRAIN:
        yield _head(meaning, path.end, path.end_direction, HEAD_LONG * figure)
        if not piece.nap:
            back = path.start_direction * -1
            yield _head(meaning, path.start, back, HEAD_LONG * figure)


def _notch(notch: DrawnNotch, figure: float) -> Iterator[Stroke]:
    """A T: from the cut line to the net line with a bar on it."""
    look = LOOKS[Meaning.NOTCH]
    outer, net = notch.outer, notch.net
    if distance(outer, net) < CLOSE:
        return
    along = turned(direction(outer, net), 90) * (0.25 * figure)
    yield Stroke(Meaning.NOTCH, Path.line(outer, net), look, note=notch.note)
    bar = Path.line(net - along, net + along)
    yield Stroke(Meaning.NOTCH, bar, look, note=notch.note)


def _head(meaning: Meaning, tip: Point, towards: Point, size: float) -> Stroke:
    """A filled arrowhead with its tip on `tip`."""
    side = turned(towards, 90) * (size / 5)
    foot = tip - towards * size
    shape = polyline((tip, foot + side, foot - side, tip))
    return Stroke(meaning, shape, Look(0.1), solid=True)


def _bracket(run: Path, figure: float) -> Iterator[Stroke]:
    """A line beside the fold, its ends bent to arrows that touch the edge."""
    look = Look(0.35)
    shape = polyline(bracket(run, figure))
    yield Stroke(Meaning.BRACKET, shape, look, note="fold bracket")
    for tip, foot in (shape.segments[0].points, shape.segments[-1].points[::-1]):
        towards = direction(foot, tip)
        yield _head(Meaning.BRACKET, tip, towards, 0.6 * figure)


def _wave(path: Path, figure: float) -> Path:
    """A gentle wave along a path, whole half waves from end to end."""
    half, rise = 0.4 * figure, 0.12 * figure * 4 / 3
    n = max(2, round(path.length / half))
    out: list[Segment] = []
    points = [path.at_length(path.length * i / n) for i in range(n + 1)]
    for i, (p, q) in enumerate(pairwise(points)):
        side = turned(direction(p, q), 90) * (rise if i % 2 else -rise)
        out.append(Cubic(p, mix(p, q, 0.36) + side, mix(p, q, 0.64) + side, q))
    return Path(tuple(out))


def _beside(path: Path, middle: Point, depth: float) -> Path:
    """A line along a path, `depth` to the side on which the middle lies."""
    half = path.length / 2
    at, way = path.at_length(half), path.direction_at_length(half)
    inside = cross(way, middle - at) > 0
    return polyline(alongside(path, depth if inside else -depth))


def _middle(outline: Path) -> Point:
    pts = outline.flatten(0.05)[1:]
    return Point(
        math.fsum(p[0] for p in pts) / len(pts), math.fsum(p[1] for p in pts) / len(pts)
    )


def box_path(left: float, top: float, right: float, bottom: float) -> Path:
    """A closed rectangle, clockwise as seen."""
    p = (
        Point(left, top),
        Point(right, top),
        Point(right, bottom),
        Point(left, bottom),
    )
    return Path(tuple(Line(a, b) for a, b in zip(p, (*p[1:], p[0]), strict=True)))
