"""What shapely says of a cut line: is it an outline, does it hold the net piece, and is
every allowance as wide as it says (truing 8: within 0.3 mm but near the ends)."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import shapely
from shapely.geometry import LineString, Polygon

from clothwright.curves import Path, Point, Vector, degrees_between, left_normal
from clothwright.finishing.corners import REACH
from clothwright.finishing.cutline import CutLine
from clothwright.paper import Edge, EdgeKind, Piece

MM = 0.1
FINE = 0.001


def faults(piece: Piece, line: CutLine) -> Iterator[str]:
    """What is wrong with a cut line that no finding has told."""
    if line.crossing is not None:
        return
    ring = line.outline.flatten(FINE)
    cut, border = Polygon(ring), LineString(ring)
    if not cut.is_valid:
        yield "it crosses itself"
        return
    net = Polygon(piece.outline.flatten(FINE)).buffer(0)
    if not line.narrow and (lost := net.difference(cut.buffer(0.1 * MM)).area) > 1e-3:
        yield f"{lost:.3f} cm² of the net piece lie outside"
    near = REACH * max(line.widths.values()) + 0.5
    for e in piece.edges:
        width = line.widths[e.name]
        if width == 0 or e.name in line.narrow:
            continue
        corners = _corners(e.path)
        first, last = line.tapered.get(e.name, (width, width))
        run_in, run_out = _onto_folds(piece, e, width)
        asked = [
            s
            for s in range(1, int(e.length))
            if min(abs(s - c) for c in corners) >= near
            and run_in <= s <= e.length - run_out
        ]
        widths = [first + (last - first) * s / e.length for s in asked]
        places = [(e.path.at_length(s), e.path.direction_at_length(s)) for s in asked]
        gaps = _gaps(places, widths, border)
        for s, (p, u), width, gap in zip(asked, places, widths, gaps, strict=True):
            if piece.fold is not None and _on_fold(piece.fold.path, p, u, gap):
                continue  # beside a slit, where the cloth itself is folded
            wider = gap > width + 0.3 * MM and e.name not in line.wide
            if wider or gap < width - 0.3 * MM:
                yield f"{e.name} has {gap:.2f} for {width:.2f} at {s}"
                break


def _gaps(
    places: Sequence[tuple[Point, Vector]], widths: Sequence[float], border: LineString
) -> list[float]:
    """How far from places, each with its way, a border lies square to it on the left;
    three widths where it lies no nearer."""
    if not places:
        return []
    rays = [
        (p, p + left_normal(u) * (3 * width))
        for (p, u), width in zip(places, widths, strict=True)
    ]
    hits = shapely.intersection(shapely.linestrings(rays), border)
    far = shapely.distance(shapely.points([p for p, _ in places]), hits)
    return [
        3 * width if math.isnan(gap) else float(gap)
        for gap, width in zip(far, widths, strict=True)
    ]


def _on_fold(fold: Path, p: Point, u: Vector, gap: float) -> bool:
    """True when what lies so far from a place, square to its way, lies on a fold."""
    way, out = fold.start_direction, left_normal(u)
    there = (p.x + gap * out.x - fold.start.x, p.y + gap * out.y - fold.start.y)
    return abs(way.x * there[1] - way.y * there[0]) < 0.1 * MM


def _corners(path: Path) -> list[float]:
    """Lengths at which an edge has its ends and its own corners."""
    found, at = [0.0, path.length], 0.0
    for a, b in pairwise(path.segments):
        at += a.length
        if degrees_between(a.end_direction, b.start_direction) > 0.5:
            found.append(at)
    return found


def _onto_folds(piece: Piece, e: Edge, width: float) -> tuple[float, float]:
    """How far from its ends an edge that leans over a fold, as a V neck does, has no
    room for its allowance, which ends on the fold's own line."""
    before, after = piece.before(e.name), piece.after(e.name)
    out = []
    for other, angle in (
        (before, piece.interior_angle(before.name)),
        (after, piece.interior_angle(e.name)),
    ):
        over = other.kind is EdgeKind.FOLD and 100 < angle < 179
        out.append(width / math.tan(math.radians(180 - angle)) + 0.5 if over else 0.0)
    return out[0], out[1]
