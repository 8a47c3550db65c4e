"""Grain lines and inner lines of the finished table (first garment 19)."""

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import replace

from clothwright.curves import (
    Path,
    Point,
    Vector,
    ahead,
    cross,
    direction,
    distance,
    dot,
    turned,
)
from clothwright.features.chains import ARM_STRIP, CUT_OUT_STRIP, NECK_STRIP, STRAP
from clothwright.paper import InnerLine, Piece, Sheet, once

OFF = 0.8
"""A grain line keeps so far off the marks of a piece, cm: their crosses stay clear."""

THROUGH = 20.0
"""A line through a dart counts as so much shorter, cm: it would be folded away."""

NEAR, STRETCH, LEAN = 0.5, 1.0, 0.1
"""A grain line keeps so far off edges that run along it, cm: off their chords of more
than so much, cm, that lean against it by less than this share."""

LEAST = 15.0
"""A grain line is so long where there is room, cm (truing 7)."""


def with_grain(sheet: Sheet) -> Sheet:
    """Straight grain on every piece, inner lines cut to its outline."""
    return sheet.put(*(grained(p) for p in sheet.pieces.values()))


OWN_GRAIN = (
    *("SL", "BA", "CU", "CO", "CN", "CS", "TF", "TB", "KJ", "XJ", "VJ"),
    *(STRAP, NECK_STRIP, ARM_STRIP, CUT_OUT_STRIP),
)
"""Pieces that keep the grain they were drafted with: from the top of the cap, down the
crease, along the strap and the jets of a pocket, across a bias strip."""

ON_BIAS = "fold of the cowl"
"""A line of this name says that its piece is cut on the bias, at 45° to the fold."""


def grained(p: Piece) -> Piece:
    """The piece with its grain: plumb as drafted, but square to the waist chord on
    side panels; the longest line of that direction that lies inside. A sleeve and its
    bands keep their own."""
    lines, grain = _inside(p)
    return p.holding(p.marks, lines, grain)


@once
def _inside(p: Piece) -> tuple[tuple[InnerLine, ...], tuple[Point, Point] | None]:
    """The inner lines and the grain of a piece with its grain. (The piece with them
    would not do: it knows the one that has its loop, and would keep that for ever.)"""
    if p.code in OWN_GRAIN:
        return _clipped(p), p.grain
    up = Vector(0.0, -1.0)
    if p.fold is not None and any(k.name == ON_BIAS for k in p.lines):
        fold = p.fold.path
        up = turned(direction(fold.end, fold.start), 45)
    if p.code in ("FS", "BS", "PFS", "PBS") and p.has("waist"):
        waist = p.edge("waist").path
        up = turned(direction(waist.start, waist.end), 90)
        if p.code.startswith("P"):
            up = up * -1.0
    return _clipped(p), longest_line(p, up)


def _clipped(p: Piece) -> tuple[InnerLine, ...]:
    """Inner lines cut to what of them lies inside the piece."""
    out = []
    for line in p.lines:
        stops = [0.0, *(s for s, _ in line.path.meets(p.outline)), line.path.length]
        for a, b in zip(stops, stops[1:], strict=False):
            if b - a > 0.1 and p.contains(line.path.at_length((a + b) / 2)):
                out.append(line.along(line.path.between(a, b)))
    return tuple(out)


def _clear(low: float, high: float, held: list[float]) -> Iterator[tuple[float, float]]:
    """The stretches of a line that keep off what marks hold."""
    start = low
    for at in sorted(h for h in held if low < h < high):
        yield start, at - OFF
        start = at + OFF
    yield start, high


def _runs(path: Path, up: Vector) -> bool:
    """True for a ruled line that runs along `up`."""
    return path.straight and abs(cross(path.start_direction, up)) < 1e-6


def _span(path: Path, across: Vector) -> tuple[float, float]:
    """How far a closed line reaches across a piece, cm."""
    reach = [dot(s.start, across) for s in path.segments]
    return min(reach), max(reach)


def grained_as(part: Piece, whole: Piece) -> Piece:
    """A part with the grain of the whole that it is cut from."""
    if whole.grain is None:
        return part
    return replace(part, grain=longest_line(part, direction(*whole.grain)))


def longest_line(
    p: Piece, up: Vector, rows: Sequence[float] = (), off: float = OFF
) -> tuple[Point, Point] | None:
    """The longest line along `up` that keeps 1 cm from the ends of the piece where
    it crosses it, tried at eleven places across the piece, beside a dart inside it
    sooner than through it, and clear of edges that run along it; of it, what is clear
    of marks. It lies clear of `rows`, places across the piece, as of the ruled lines in
    it: of marks that leave less than half of the line. By `off` cm, or by half a narrow
    piece's room beside its fold. None for a sliver."""
    points = p.outline.chords(0.1)
    (ux, uy), across = up, Vector(-up[1], up[0])
    if ux == 0.0 and uy == -1.0:  # plumb, as most are
        reach, height = [x for x, _ in points], [-y for _, y in points]
    else:
        reach = [y * ux - x * uy for x, y in points]
        height = [x * ux + y * uy for x, y in points]
    left = min(reach)
    wide = max(reach) - left
    # beside a fold the middle is left to the words
    liked, fold = 6, p.fold
    if fold is not None:
        liked = 3 if dot(fold.path.start, across) - left < wide / 2 else 9
    best = (0.0, 0.0, 0.0)
    ruled = [dot(k.path.start, across) for k in p.lines if _runs(k.path, up)]
    ruled += rows
    darts = [_span(k.path, across) for k in p.lines if k.path.closed]
    edges = [
        ((ra + rb) / 2, abs(hb - ha))
        for ha, hb, ra, rb in zip(height, height[1:], reach, reach[1:], strict=False)
        if abs(hb - ha) > STRETCH and abs(rb - ra) < LEAN * abs(hb - ha)
    ]
    places = [left + wide * i / 12 for i in range(12)]
    crossed: list[list[float]] = [[] for _ in places]
    fence = [-math.inf, *places, math.inf]
    ha, ra, i = height[0], reach[0], bisect_left(places, reach[0])
    low, high = fence[i], fence[i + 1]  # beyond the one, up to the other
    for hb, rb in zip(height, reach, strict=True):
        if not low < rb <= high:
            j = bisect_left(places, rb)
            slope = (hb - ha) / (rb - ra)
            for k in range(i, j) if i < j else range(j, i):
                crossed[k].append(ha + (places[k] - ra) * slope)
            i, low, high = j, fence[j], fence[j + 1]
        ha, ra = hb, rb
    longest = -math.inf
    for i in range(1, 12):
        at, stops = places[i], crossed[i]
        if ruled and min([abs(at - r) for r in ruled]) < off:
            continue  # an inner line lies there
        less = abs(i - liked) * 0.02
        if len(stops) == 2:
            a, b = stops
            length = (b - a if a < b else a - b) - less
            if length <= longest + 1e-9:
                continue
        stops.sort()
        if darts and any(low - OFF < at < high + OFF for low, high in darts):
            less += THROUGH
        less += sum([run for r, run in edges if abs(at - r) < NEAR])
        for k in range(1, len(stops), 2):
            length = stops[k] - stops[k - 1] - less
            if length > longest + 1e-9:
                longest, best = length, (stops[k - 1], stops[k], at)
    low, high, at = best
    if high - low < 1.0:
        narrow = ruled and off == OFF and wide < 4 * OFF
        return longest_line(p, up, rows, wide / 8) if narrow else None
    marks = [k.at for k in p.marks if abs(dot(k.at, across) - at) < OFF]
    if marks:
        held = [dot(m, up) for m in marks]
        a, b = max(_clear(low, high, held), key=lambda s: s[1] - s[0])
        if b - a < min(LEAST, (high - low) / 2):
            beside = longest_line(p, up, [*rows, *(dot(m, across) for m in marks)])
            if beside is not None and distance(*beside) > b - a:
                return beside
        low, high = a, b
    length = high - low
    half = max(0.3 * length, min(length / 2 - 1.0, max(0.4 * length, LEAST / 2)))
    middle = ahead(across * at, up, (low + high) / 2)
    return ahead(middle, up, -half), ahead(middle, up, half)
