"""What is drawn on a piece besides its outline: edges, marks, notches, ease."""

from collections.abc import Iterable
from dataclasses import replace

from clothwright.curves import Cubic, Path, Point, direction, distance, mix, turned
from clothwright.finishing.cutline import CutLine
from clothwright.finishing.drawn import DrawnLine, DrawnNotch, Meaning, Zone
from clothwright.finishing.lettering import BRACKET
from clothwright.paper import (
    ON_STAND,
    EdgeKind,
    MarkKind,
    Piece,
    Seam,
    SeamKind,
    Sheet,
)

CROSS = 0.4
"""Half length of a drill cross or button cross, cm."""

RING = 0.35
"""Radius of the half ring that shows a loop, cm (our own mark)."""

PUNCH_SHORT = 1.2
"""A dart is punched this far short of its point, cm, so that the hole is sewn in
(common practice, no source)."""

REACHED = 0.05
"""A notch that ends so near to the cut line ends on it, cm."""

CLEAR = 0.3
"""Between a fold's bracket and the lines beside it, cm."""


def edge_lines(piece: Piece, taped: Iterable[tuple[str, str]]) -> list[DrawnLine]:
    """Every edge as stitch line or fold, with the fold's bracket and stay tape."""
    out = []
    for e in piece.edges:
        fold = e.kind is EdgeKind.FOLD
        meaning = Meaning.FOLD if fold else Meaning.SEW
        out.append(DrawnLine(meaning, e.path, f"{piece.code}.{e.name}"))
        if fold:
            run = _bracket_run(piece, e.path)
            out.append(DrawnLine(Meaning.BRACKET, run, "fold bracket"))
        if (piece.code, e.name) in taped:
            out.append(DrawnLine(Meaning.TAPE, e.path, "stay tape"))
    return out


def _bracket_run(piece: Piece, fold: Path) -> Path:
    """The middle of a fold, as much of it as leaves both arms of the bracket inside
    the stitch lines: at the point of a V neck it begins lower."""
    inward = turned(fold.start_direction, 90) * (BRACKET + CLEAR)

    def end(a: Point, b: Point) -> Point:
        tries = (mix(a, b, k / 100) for k in range(15, 46, 2))
        clear = (p for p in tries if piece.contains(p + inward))
        return next(clear, mix(a, b, 0.45))

    return Path.line(end(fold.start, fold.end), end(fold.end, fold.start))


def crosses(piece: Piece) -> list[DrawnLine]:
    """A cross for every button and drilled mark."""
    return [
        line
        for k in piece.marks
        if k.kind is not MarkKind.LOOP
        for line in cross_at(k.at, k.name)
    ]


def cross_at(p: Point, name: str) -> list[DrawnLine]:
    """A small cross."""
    c = CROSS
    return [
        DrawnLine(
            Meaning.DRILL,
            Path.line(Point(p.x - c, p.y - d * c), Point(p.x + c, p.y + d * c)),
            name,
        )
        for d in (1, -1)
    ]


def punch(first: Path, second: Path) -> Point:
    """Where the point of a dart is punched: inside the dart, short of its point."""
    mouth = mix(first.start, second.end, 0.5)
    return first.end + direction(first.end, mouth) * PUNCH_SHORT


def reaching(notch: DrawnNotch, outline: Path) -> DrawnNotch:
    """The notch as far as the cut line, which beside a corner may run further out, or
    nearer, than the allowance is wide."""
    off = outline.nearest(notch.outer)[1]
    if off < REACHED:
        return notch
    way = direction(notch.net, notch.outer)
    meets = Path.line(notch.net, notch.outer + way * (2 * off)).meets(outline)
    return notch if not meets else replace(notch, outer=notch.net + way * meets[0][0])


def dart_notches(
    first: Path, second: Path, line: CutLine, have: list[DrawnNotch]
) -> list[DrawnNotch]:
    """A notch where each leg of a dart, run on, meets the cut line."""
    out = []
    mouths = (
        (first.start, first.start_direction * -1.0),
        (second.end, second.end_direction),
    )
    for mouth, way in mouths:
        if any(distance(mouth, k.net) < 0.3 for k in have):
            continue
        hits = Path.line(mouth, mouth + way * 6.0).meets(line.outline)
        if hits:
            outer = mouth + way * min(s for s, _ in hits)
            out.append(DrawnNotch(mouth, outer, 1, "dart leg"))
    return out


def loops(piece: Piece, line: CutLine) -> tuple[list[DrawnLine], list[DrawnNotch]]:
    """Where loops are sewn in: half a ring outside the edge for each, to be chalked;
    the first is notched too."""
    rings: list[DrawnLine] = []
    notches: list[DrawnNotch] = []
    for k in piece.marks:
        if k.kind is not MarkKind.LOOP:
            continue
        for e in piece.edges:
            place, gap = e.path.nearest(k.at)
            if gap > 0.02:
                continue
            way = e.path.direction_at_length(e.path.length_to(place))
            out = turned(way, -90)
            rings.append(DrawnLine(Meaning.LOOP, _half_ring(k.at, way, out), k.name))
            if k.name == "loop 1":
                outer = k.at + out * line.widths[e.name]
                notches.append(DrawnNotch(k.at, outer, 1, k.name))
            break
    return rings, notches


def _half_ring(at: Point, way: Point, out: Point) -> Path:
    """Half a circle beside an edge, from below to above."""
    a, b = at - way * RING, at + way * RING
    reach = out * (RING * 4 / 3)
    return Path((Cubic(a, a + reach, b + reach, b),))


def ease_zones(zones: Iterable[Zone]) -> list[DrawnLine]:
    """The stretches that are eased in."""
    return [
        DrawnLine(Meaning.EASE, z.path, "gather" if z.drawn_up else "ease")
        for z in zones
    ]


def zones_of(sheet: Sheet, piece: Piece, seams: Iterable[Seam]) -> list[Zone]:
    """The stretches of a piece's edges that are eased or gathered in, on both sides of
    a seam where both are drawn up alike."""
    out = []
    for s in seams:
        full = s.ease.plan >= 0.05 or s.kind is SeamKind.TWIN
        if s.zone is None or not full or s.tucked:
            continue
        # a zone runs from notch to notch, or to an end: places known on both sides
        whole = sheet.chain_length(s.left), sheet.chain_length(s.right)
        known = [(0.0, 0.0), whole, *((k.left, k.right) for k in s.notches)]
        zone = [right for left, right in known if _at_end(left, s.zone)]
        if not zone:
            continue
        long = max(max(zone) - min(zone), 1e-6)
        ratio = (s.zone[1] - s.zone[0]) / long
        notched = s.zone[0] > 1e-6 and s.zone[1] < whole[0] - 1e-6
        done = 0.0
        for run in s.right:
            path = sheet.run_path(run)
            a, b = max(min(zone) - done, 0.0), min(max(zone) - done, path.length)
            if run.piece == piece.code and b - a > 0.1:
                stretch = path.between(a, b)
                if run.backward:  # the piece on its right, as along its edge
                    stretch = stretch.reversed()
                out.append(Zone(stretch, ratio * (b - a), s.drawn_up, notched))
            done += path.length
    return out


def _at_end(length: float, zone: tuple[float, float]) -> bool:
    return min(abs(length - end) for end in zone) < 1e-6


def gathers(sheet: Sheet, piece: Piece) -> dict[str, float]:
    """Edges of a piece that are gathered all along, and the length that each is
    gathered to."""
    out: dict[str, float] = {}
    for s in sheet.seams:
        if s.gathered and s.zone is None and not s.tucked:
            left, right = (
                [r for r in chain if not r.edge.endswith(ON_STAND)]
                for chain in (s.left, s.right)
            )
            ratio = sheet.chain_length(left) / sheet.chain_length(right)
            for r in right:
                if r.piece == piece.code:
                    out[r.edge] = ratio * sheet.length(r.piece, r.edge)
    return out
