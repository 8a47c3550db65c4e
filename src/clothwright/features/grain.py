"""Grain lines and inner lines of the finished table (first garment 19)."""

from dataclasses import replace

from clothwright.curves import Point, Vector, direction, dot, turned
from clothwright.paper import InnerLine, Piece, Sheet, once


def with_grain(sheet: Sheet) -> Sheet:
    """Straight grain on every piece, inner lines cut to its outline."""
    return sheet.put(*(_grained(p) for p in sheet.pieces.values()))


@once
def _grained(p: Piece) -> Piece:
    """The piece with its grain: plumb as drafted, but square to the waist chord on
    side panels; the longest line of that direction that lies inside. A sleeve keeps
    its own, from the top of the cap."""
    if p.code == "SL":
        return replace(p, lines=_clipped(p))
    up = Vector(0.0, -1.0)
    if p.code in ("FS", "BS", "PFS", "PBS"):
        waist = p.edge("waist").path
        up = turned(direction(waist.start, waist.end), 90)
        if p.code.startswith("P"):
            up = up * -1.0
    return replace(p, grain=longest_line(p, up), lines=_clipped(p))


def _clipped(p: Piece) -> tuple[InnerLine, ...]:
    """Inner lines cut to what of them lies inside the piece."""
    out = []
    for line in p.lines:
        stops = [0.0, *(s for s, _ in line.path.meets(p.outline)), line.path.length]
        for a, b in zip(stops, stops[1:], strict=False):
            if b - a > 0.1 and p.contains(line.path.at_length((a + b) / 2)):
                out.append(replace(line, path=line.path.between(a, b)))
    return tuple(out)


def longest_line(p: Piece, up: Vector) -> tuple[Point, Point] | None:
    """The longest line along `up` that keeps 1 cm from the ends of the piece where
    it crosses it, tried at eleven places across the piece. None for a sliver."""
    points = p.outline.flatten(0.1)
    across = Vector(-up[1], up[0])
    reach = [dot(q, across) for q in points]
    left, right = min(reach), max(reach)
    # beside a fold the middle is left to the words
    liked = 6
    if p.fold is not None:
        liked = 3 if dot(p.fold.path.start, across) - left < (right - left) / 2 else 9
    best: tuple[float, float, float] | None = None
    for i in range(1, 12):
        at = left + (right - left) * i / 12
        stops = []
        for (a, b), (ra, rb) in zip(
            zip(points, points[1:], strict=False),
            zip(reach, reach[1:], strict=False),
            strict=False,
        ):
            if (ra > at) != (rb > at):
                t = (at - ra) / (rb - ra)
                stops.append(dot(a, up) + t * (dot(b, up) - dot(a, up)))
        stops.sort()
        for low, high in zip(stops[::2], stops[1::2], strict=False):
            length = high - low - abs(i - liked) * 0.02
            if best is None or length > best[0] + 1e-9:
                best = length, (low + high) / 2, at
    if best is None or best[0] < 1.0:
        return None
    half = max(0.3 * best[0], min(best[0] / 2 - 1.0, 0.4 * best[0]))
    middle = across * best[2] + up * best[1]
    return middle - up * half, middle + up * half
