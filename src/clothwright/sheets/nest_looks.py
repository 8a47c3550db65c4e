"""How each size of a nest looks: its own dashes, and its name in its line.

A cutter follows one line among many, so every size has dashes of its own, and its name
stands in the line again and again, where the other lines leave it room. Black only:
sizes are told apart without colours. Our own choice throughout; dashes in mm.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from typing import TYPE_CHECKING

from clothwright.curves import (
    CLOSE,
    Motion,
    Path,
    Point,
    degrees_between,
    distance,
    heading,
    mix,
)
from clothwright.finishing.boxes import Obstacles, line_width, text_box
from clothwright.finishing.drawn import DrawnPiece, DrawnText, Meaning
from clothwright.finishing.lettering import upright
from clothwright.sheets.formats import Scale
from clothwright.sheets.looks import Look, Stroke, divided, strokes
from clothwright.sheets.nest import FLAT, SHARED, NestedPiece, fold_phase

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

_DASHES: tuple[tuple[float, ...], ...] = (
    (),
    (3, 1.5),
    (9, 1.5, 0.6, 1.5),
    (10, 2.5),
    (1.2, 1.2),
    (9, 1.2, 0.6, 1.2, 0.6, 1.2),
    (14, 1.5, 3, 1.5),
    (5, 1.2, 0.6, 1.2, 0.6, 1.2, 0.6, 1.2),
)
_FEW, _MANY = (0.4,), (0.2, 0.4, 0.12)
"""Widths for up to eight sizes, and of the first eight, the next eight and the rest of
more, whose lines lie closer; mm."""

INSIDE = Look(0.2)
"""Drill marks and loops of a size; its darts and inner lines have its dashes too."""

CROSS = 0.45
"""Crosses of a nest by those of a single size: many stand close together."""

_DASHED = frozenset({Meaning.DART, Meaning.INNER, Meaning.PLACEMENT})

TICK = 0.45
"""Length of a notch inside its cut line, cm: no further than to the stitch line."""


def size_look(i: int, sizes: int) -> Look:
    """The cut line of the i-th size, from 0, of so many."""
    widths = _FEW if sizes <= len(_DASHES) else _MANY
    width = widths[min(i // len(_DASHES), len(widths) - 1)]
    return Look(width, _DASHES[i % len(_DASHES)])


class Part(Enum):
    """What of a size is switched on and off together."""

    LINES = "lines"
    """All but its stitch lines."""

    STITCH = "stitch lines"
    """Stitch lines, ease and stay tape."""


_STITCH = frozenset({Meaning.SEW, Meaning.EASE, Meaning.TAPE})


def size_strokes(
    piece: DrawnPiece, look: Look, *, figure: float = 1.0
) -> Iterator[tuple[Part, Stroke]]:
    """Everything drawn of one size, with the part it belongs to; what all sizes have in
    common is left out."""
    for stroke in strokes(piece, figure=figure):
        meaning = stroke.meaning
        if meaning in SHARED or meaning is Meaning.NOTCH:
            continue
        if meaning in _STITCH:
            yield Part.STITCH, stroke
        elif meaning is Meaning.CUT:
            yield Part.LINES, replace(stroke, look=look)
        elif meaning is Meaning.FOLD:
            yield Part.LINES, replace(stroke, look=_in_step(piece, stroke))
        elif meaning in _DASHED:
            yield Part.LINES, replace(stroke, look=replace(INSIDE, dashes=look.dashes))
        elif meaning is Meaning.DRILL:
            small = _shrunk(stroke.path)
            yield Part.LINES, replace(stroke, path=small, look=INSIDE)
        else:
            yield Part.LINES, replace(stroke, look=INSIDE)
    for n in piece.notches:
        deep = distance(n.outer, n.net)
        if deep < 1e-6:
            continue
        foot = n.outer + (n.net - n.outer) * min(1.0, TICK * figure / deep)
        tick = Path.line(n.outer, foot)
        yield Part.LINES, Stroke(Meaning.NOTCH, tick, Look(0.4), note=n.note)


def _shrunk(path: Path) -> Path:
    """A stroke of a cross, smaller about its middle."""
    c = mix(path.start, path.end, 0.5)
    return Path.line(mix(c, path.start, CROSS), mix(c, path.end, CROSS))


def _in_step(piece: DrawnPiece, stroke: Stroke) -> Look:
    """The look of a fold whose dashes lie on those of every other size."""
    look = stroke.look
    whole = math.fsum(look.dashes)
    return replace(look, phase=fold_phase(piece, stroke.path) * 10 % whole)


HEIGHTS = (0.28, 0.24, 0.2, 0.16)
"""Capitals of the names in the lines, cm: as large as the other lines allow."""

EVERY = 16.0
"""A name stands about as often along a line, cm."""

STEP = 0.4
"""Places that are tried lie so far apart, cm."""

CORNER = 20.0
"""A turn of more than so many degrees ends a run of names."""

AIR = 0.06
"""Between a name and another size's line, cm."""


@dataclass(frozen=True)
class _Place:
    """A place for a name: how far it is to the next line of another size."""

    at: Point
    degrees: float
    clear: float
    off: float
    """How far along the line it is from where it would stand best, cm."""


def with_names(nested: NestedPiece) -> NestedPiece:
    """The piece with every size's name in its cut line, as its only words."""
    from shapely import LineString, MultiLineString, prepare

    lines = {s: LineString(p.cut_line.flatten(FLAT)) for s, p in nested.each.items()}
    taken = Obstacles()
    for p in nested.each.values():
        for n in p.notches:
            taken.add([n.outer, n.outer + (n.net - n.outer) * 0.3])
    out = {}
    for i, (size, piece) in enumerate(nested.each.items()):
        others = MultiLineString([k for s, k in lines.items() if s != size])
        prepare(others)
        texts = []
        for run in _runs(piece):
            for text in _named(run, size, others, taken, i / len(lines)):
                texts.append(text)
                taken.add(text_box(text).hatched())
        out[size] = replace(piece, texts=tuple(texts))
    for size, names in _marks_named(nested, taken).items():
        out[size] = replace(out[size], texts=(*out[size].texts, *names))
    return replace(nested, each=out)


MARK_NAMES = 0.16
"""Capitals of the names at crosses and loops, cm."""

BESIDE = 0.34
"""From the middle of a cross to that of its name, cm."""

CROWDED = 0.25
"""Marks of two sizes nearer than this bear no name: it could be either's, cm."""


def _marks_named(nested: NestedPiece, taken: Obstacles) -> dict[str, list[DrawnText]]:
    """The size beside each of its crosses and in each of its loops, where there is
    room and no other size's mark is as near."""
    marks = {s: list(_marks(p, taken)) for s, p in nested.each.items()}
    every = [(s, middle) for s, own in marks.items() for middle, _ in own]
    out: dict[str, list[DrawnText]] = {s: [] for s in nested.each}
    for size, own in marks.items():
        for middle, places in own:
            if any(s != size and distance(middle, p) < CROWDED for s, p in every):
                continue
            for at in places:
                text = DrawnText(Meaning.LABEL, size, at, MARK_NAMES, bold=True)
                if not taken.hit(text_box(text)):
                    out[size].append(text)
                    taken.add(text_box(text).hatched())
                    break
    return out


def _marks(
    piece: DrawnPiece, taken: Obstacles
) -> Iterator[tuple[Point, Sequence[Point]]]:
    """The middle of every cross and loop, and where its name may stand."""
    seen: list[Point] = []
    for k in piece.lines:
        path = k.path
        middle = mix(path.start, path.end, 0.5)
        if k.meaning is Meaning.LOOP and not path.straight:
            taken.add(path.flatten(FLAT))
            yield middle, [mix(middle, path.at_length(path.length / 2), 0.45)]
        elif k.meaning is Meaning.DRILL:
            taken.add(_shrunk(path).flatten(FLAT))
            if all(distance(middle, p) > CLOSE for p in seen):
                seen.append(middle)
                r = BESIDE
                yield middle, [middle + w for w in ((r, 0), (-r, 0), (0, r), (0, -r))]


def _runs(piece: DrawnPiece) -> Iterator[Path]:
    """The cut line from corner to corner."""
    for part in divided(piece)[0]:
        segments = list(part.segments)
        start = 0
        for k in range(1, len(segments) + 1):
            if k == len(segments) or (
                degrees_between(
                    segments[k - 1].end_direction, segments[k].start_direction
                )
                > CORNER
            ):
                yield Path(tuple(segments[start:k]))
                start = k


def _named(
    run: Path, size: str, others: "BaseGeometry", taken: Obstacles, share: float
) -> Iterator[DrawnText]:
    """A size's name on one run of its line; `share` sets the sizes off from each other,
    so that their names go down like stairs."""
    from shapely import distance as apart
    from shapely import points

    half = line_width(size, HEIGHTS[-1], bold=True) / 2 + 0.3
    if run.length < 2 * half:
        return
    n = max(1, round(run.length / EVERY))
    count = max(1, int((run.length - 2 * half) / STEP))
    along = [half + (run.length - 2 * half) * k / count for k in range(count + 1)]
    spots = [run.at_length(s) for s in along]
    clears = [9.9] * len(spots) if others.is_empty else apart(points(spots), others)
    for k in range(n):
        low, high = run.length * k / n, run.length * (k + 1) / n
        best = low + (high - low) * (0.2 + 0.6 * share)
        places = [
            _Place(p, upright(heading(run.direction_at_length(s))), c, abs(s - best))
            for s, p, c in zip(along, spots, map(float, clears), strict=True)
            if low <= s <= high
        ]
        found = _best(places, size, taken, others)
        if found:
            yield found


def _best(
    places: Sequence[_Place], size: str, taken: Obstacles, others: "BaseGeometry"
) -> DrawnText | None:
    """The name as large as it can be, then as near as can be to its best place."""
    from shapely import Polygon

    for height in HEIGHTS:
        for p in sorted(places, key=lambda p: p.off):
            if p.clear < height * 0.62 + AIR:
                continue
            text = DrawnText(Meaning.LABEL, size, p.at, height, p.degrees, bold=True)
            box = text_box(text)
            if taken.hit(box, AIR) or others.intersects(Polygon(box.corners(AIR))):
                continue
            return text
    return None


def laid_on(motion: Motion, scale: Scale) -> Motion:
    """Where the sizes of a piece go that was scaled and then laid by a motion."""
    k = scale.value
    return motion @ Motion(k, 0.0, 0.0, k)


def samples(sizes: Sequence[str]) -> Mapping[str, Look]:
    """The look of every size of a set, for its legend."""
    return {s: size_look(i, len(sizes)) for i, s in enumerate(sizes)}
