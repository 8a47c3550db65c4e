"""Words on the piece: dimensions along the edges, a label where there is room.

No word may lie over a line. Boxes of words are judged by a generous width, since the
outputs use different faces.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from clothwright.curves import Path, Point, Vector, heading, mix
from clothwright.finishing.drawn import DrawnText, Meaning
from clothwright.paper import Piece

WIDTH = 0.80
"""Mean width of a character by the height of a capital. DejaVu Sans, the widest face
that the outputs use, measures 0.75 on labels."""

LEADING = 1.45
"""Line to line by the height of the letters."""

DIM_HEIGHT = 0.32
DIM_INSET = 0.55
"""Dimension figures: height, and distance of their middle from the stitch line, cm."""

HEIGHTS = (0.50, 0.40)
"""Heights of label words that are tried, cm; 4 mm is the least (truing 10)."""

ROOM, LEAST_ROOM = 0.35, 0.1
"""Free paper around a label, cm; on crowded pieces the least that still reads."""


@dataclass(frozen=True)
class Box:
    """A box of words: middle, half sizes, and the direction in which it reads."""

    at: Point
    half_w: float
    half_h: float
    along: Vector

    def corners(self, room: float = 0.0) -> list[Point]:
        """The four corners, grown by `room` cm."""
        u, v = self.along, Vector(-self.along[1], self.along[0])
        w, h = self.half_w + room, self.half_h + room
        return [
            self.at + u * (sx * w) + v * (sy * h)
            for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1))
        ]


def text_box(text: DrawnText) -> Box:
    """The box of one line of words."""
    a = math.radians(text.degrees)
    wide = WIDTH * (1.14 if text.bold else 1.0) * len(text.text) * text.height
    return Box(text.at, wide / 2, text.height * 0.62, Vector(math.cos(a), math.sin(a)))


class Obstacles:
    """Lines that words must keep off, as short straight stretches in a coarse grid."""

    def __init__(self, cell: float = 2.0) -> None:
        self._cell = cell
        self._grid: dict[tuple[int, int], list[tuple[Point, Point]]] = {}

    def add(self, points: Sequence[Point]) -> None:
        """Keep words off a line through points."""
        c = self._cell
        for a, b in zip(points, points[1:], strict=False):
            x0, x1 = sorted((a[0], b[0]))
            y0, y1 = sorted((a[1], b[1]))
            for i in range(math.floor(x0 / c), math.floor(x1 / c) + 1):
                for j in range(math.floor(y0 / c), math.floor(y1 / c) + 1):
                    self._grid.setdefault((i, j), []).append((a, b))

    def add_path(self, path: Path) -> None:
        """Keep words off a line."""
        self.add(path.flatten(0.05))

    def add_box(self, box: Box) -> None:
        """Keep words off other words."""
        pts = box.corners()
        self.add([*pts, pts[0]])
        self.add([pts[0], pts[2]])

    def hit(self, box: Box, room: float = 0.0) -> bool:
        """True when a line touches the box."""
        (ux, uy), (x, y) = box.along, box.at
        w, h = box.half_w + room, box.half_h + room
        # the box's extent along the page
        ex, ey = abs(ux) * w + abs(uy) * h, abs(uy) * w + abs(ux) * h
        c, grid = self._cell, self._grid
        for i in range(math.floor((x - ex) / c), math.floor((x + ex) / c) + 1):
            for j in range(math.floor((y - ey) / c), math.floor((y + ey) / c) + 1):
                for (ax, ay), (bx, by) in grid.get((i, j), ()):
                    ax, ay, bx, by = ax - x, ay - y, bx - x, by - y
                    if _crosses_box(
                        ax * ux + ay * uy,
                        ay * ux - ax * uy,
                        bx * ux + by * uy,
                        by * ux - bx * uy,
                        w,
                        h,
                    ):
                        return True
        return False


def _crosses_box(
    ax: float, ay: float, bx: float, by: float, w: float, h: float
) -> bool:
    """True when the stretch a–b touches the box of half sizes w, h about the origin
    (slab test)."""
    if (ax > w and bx > w) or (ax < -w and bx < -w):
        return False
    if (ay > h and by > h) or (ay < -h and by < -h):
        return False
    t0, t1 = 0.0, 1.0
    for p, q, s in ((ax, bx, w), (ay, by, h)):
        d = q - p
        if abs(d) < 1e-12:
            continue  # the quick tests above have seen to it
        lo, hi = (-s - p) / d, (s - p) / d
        if lo > hi:
            lo, hi = hi, lo
        t0, t1 = max(t0, lo), min(t1, hi)
        if t0 > t1:
            return False
    return True


def dimensions(
    piece: Piece,
    obstacles: Obstacles,
    fmt: Callable[[float], str],
    gathers: Mapping[str, float],
) -> list[DrawnText]:
    """The length of each edge, written along its inside where it is free; of an edge
    that is gathered, its gathered length too."""
    out = []
    for e in piece.edges:
        text = fmt(e.length)
        if e.name in gathers:
            text += f", gather to {fmt(gathers[e.name])}"
        words = DrawnText(Meaning.DIMENSION, text, e.path.start, DIM_HEIGHT)
        out += _along(piece, obstacles, e.path, words, (1,))
    return out


def line_names(piece: Piece, obstacles: Obstacles) -> list[DrawnText]:
    """The names of a piece's inner lines, beside them."""
    out = []
    for k in piece.lines:
        words = DrawnText(Meaning.LABEL, k.name, k.path.start, HEIGHTS[-1])
        out += _along(piece, obstacles, k.path, words, (-1, 1))
    return out


def _along(
    piece: Piece,
    obstacles: Obstacles,
    path: Path,
    words: DrawnText,
    sides: Sequence[int],
) -> list[DrawnText]:
    """The words beside a line, on its right (1) or left (-1), where they are free."""
    wide = text_box(words).half_w * 2
    if wide > path.length * 0.9:
        return []
    for side in sides:
        for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8):
            s = path.length * share
            p, way = path.at_length(s), path.direction_at_length(s)
            at = p + Vector(-way[1], way[0]) * (side * DIM_INSET)
            line = replace(words, at=at, degrees=upright(heading(way)))
            box = text_box(line)
            if not obstacles.hit(box, 0.05) and piece.contains(line.at):
                obstacles.add_box(box)
                return [line]
    return []


def upright(degrees: float) -> float:
    """The direction, or its opposite, that reads from left to right or upwards."""
    d = (degrees + 180) % 360 - 180
    if d > 90 + 1e-6:
        d -= 180
    if d <= -90 + 1e-6:
        d += 180
    return -90.0 if abs(d - 90) < 1e-6 else d


def label(
    piece: Piece, obstacles: Obstacles, blocks: Sequence[Sequence[str]]
) -> list[DrawnText]:
    """The first block of lines that fits, its first line bold, in the largest height
    that fits; level where it can be, else along the grain or across it. Blocks run
    from the fullest to the shortest; when none fits, the last is scattered."""
    turns = [0.0]
    if piece.grain:
        along = upright(heading(piece.grain[1] - piece.grain[0]))
        turns += [t for t in (along, upright(along + 90)) if abs(t) > 1e-6]
    spots = _spots(piece)
    for lines, room in (
        *((b, ROOM) for b in blocks),
        *((b, LEAST_ROOM) for b in blocks),
    ):
        for degrees in turns:
            found = _place(spots, obstacles, lines, HEIGHTS[-1], degrees, room)
            for height in HEIGHTS[:-1] if found else ():
                here = [mix(found[0].at, found[-1].at, 0.5)]
                larger = _place(here, obstacles, lines, height, degrees, room)
                if larger:
                    found = larger
                    break
            if found:
                for t in found:
                    obstacles.add_box(text_box(t))
                return found
    for lines in (blocks[-2:-1] or blocks)[0], blocks[-1]:
        scattered = _scattered(spots, obstacles, lines, turns)
        if len(scattered) == len(lines):
            break
    for t in scattered:
        obstacles.add_box(text_box(t))
    return scattered


def _scattered(
    spots: Sequence[Point],
    obstacles: Obstacles,
    lines: Sequence[str],
    turns: Sequence[float],
) -> list[DrawnText]:
    """Every line in a place of its own, on a piece too crowded for a block."""
    out: list[DrawnText] = []
    placed = Obstacles()
    height = HEIGHTS[-1]
    for i, line in enumerate(lines):
        for degrees in turns:
            word = text_box(
                DrawnText(Meaning.LABEL, line, spots[0], height, degrees, True)
            )
            free = [p for p in spots if not placed.hit(replace(word, at=p), LEAST_ROOM)]
            found = _place(free, obstacles, [line], height, degrees, LEAST_ROOM)
            if found:
                out.append(replace(found[0], bold=i == 0))
                placed.add_box(text_box(out[-1]))
                break
    return out


def _place(
    spots: Sequence[Point],
    obstacles: Obstacles,
    lines: Sequence[str],
    height: float,
    degrees: float,
    room: float,
) -> list[DrawnText]:
    """The first spot where a block of lines touches no line. A spot lies inside the
    piece, and its outline is an obstacle, so a block that hits nothing is inside."""
    a = math.radians(degrees)
    u = Vector(math.cos(a), math.sin(a))
    v = Vector(-u[1], u[0])
    wide = max(
        WIDTH * (1.14 if i == 0 else 1.0) * len(t) * height for i, t in enumerate(lines)
    )
    tall = height * (1.0 + LEADING * (len(lines) - 1))
    for at in spots:
        box = Box(at, wide / 2, tall / 2 + 0.1, u)
        if obstacles.hit(box, room):
            continue
        return [
            DrawnText(
                Meaning.LABEL,
                t,
                at + v * ((i - (len(lines) - 1) / 2) * height * LEADING),
                height,
                degrees,
                bold=i == 0,
            )
            for i, t in enumerate(lines)
        ]
    return []


def _spots(piece: Piece) -> list[Point]:
    """Places inside a piece, from its middle outwards."""
    left, top, right, bottom = piece.outline.bounds()
    cx, cy = (left + right) / 2, (top + bottom) / 2
    across, down = _steps(right - left), _steps(bottom - top)
    spots = [
        Point(left + (right - left) * i / across, top + (bottom - top) * j / down)
        for i in range(1, across)
        for j in range(1, down)
    ]
    spots = [p for p in spots if piece.contains(p)]
    spots.sort(key=lambda p: (round(math.hypot(p[0] - cx, p[1] - cy), 3), p))
    return spots


def _steps(size: float) -> int:
    """How many steps a piece is tried in: half a centimetre on narrow ones."""
    return max(12, min(20, math.ceil(size / 0.5)))
