"""Lines carried with the corners that an alteration moves, and level slashes."""

from collections.abc import Callable, Iterable

from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Segment,
    Vector,
    distance,
    from_pair,
)
from clothwright.paper import On, PaperError, Sheet, spread

Shift = Callable[[Point], Vector]
"""How far a corner goes."""

STAYS = Vector(0.0, 0.0)


def to_places(places: Iterable[tuple[Point, Point]]) -> Shift:
    """The shift that brings corners from their old places to new ones, and leaves the
    others."""
    pairs = tuple(places)

    def shift(p: Point) -> Vector:
        return next((b - a for a, b in pairs if distance(a, p) < 0.02), STAYS)

    return shift


def both(*shifts: Shift) -> Shift:
    """Shifts one after the other, each of other corners."""

    def shift(p: Point) -> Vector:
        return next((v for s in shifts if (v := s(p)) != STAYS), STAYS)

    return shift


def carried(path: Path, shift: Shift) -> Path:
    """A line whose corners are moved, the handles of its curves with them."""

    def one(s: Segment) -> Segment:
        a, z = shift(s.points[0]), shift(s.points[-1])
        if isinstance(s, Cubic):
            p, q, r, t = s.points
            return Cubic(p + a, q + a, r + z, t + z)
        return Line(s.points[0] + a, s.points[-1] + z)

    return Path(tuple(one(s) for s in path.segments))


def carry(sheet: Sheet, code: str, shift: Shift, marks: Iterable[str]) -> Sheet:
    """A piece carried with its corners, and its marks with them."""
    p = sheet.piece(code)
    edges = tuple(e.along(carried(e.path, shift)) for e in p.edges)
    there = {m: sheet.points[m] for m in marks if m in sheet.points}
    new = {m: at + shift(at) for m, at in there.items()}
    return sheet.put(p.with_edges(edges)).named(**new)


def level_slash(
    sheet: Sheet,
    code: str,
    y: float,
    at_inner: float,
    at_side: float,
    marks: Iterable[str],
    moving: str = "waist",
) -> Sheet:
    """A piece cut level right across and opened by an amount at its centre and at its
    side (below nought it is overlapped); the part with the edge `moving` goes, and its
    marks. Raises PaperError where the level crosses more than two edges."""
    p = sheet.piece(code)
    line = Path.line(Point(-400.0, y), Point(400.0, y))
    hits = list(
        {  # at a joint within an edge both its parts meet the line
            (e.name, round(s, 3)): On(e.name, s)
            for e in p.edges
            for s, _ in e.path.meets(line)
            if 0.01 < s < e.length - 0.01
        }.values()
    )
    if len(hits) != 2:
        raise PaperError(
            f"the slash across {code} would cut a dart: make the amount smaller, or "
            "shorten the dart"
        )
    side, inner = sorted(hits, key=lambda h: h.edge != "side")
    after = spread(
        sheet, code, inner, side, at_start=at_inner, at_end=at_side, moving=moving
    )
    old, new = sheet.edge(code, moving).path, after.edge(code, moving).path
    turned = from_pair(old.start, old.end, new.start, new.end)
    above = old.start.y < y
    there = {m: sheet.points[m] for m in marks if m in sheet.points}
    return after.named(**{m: turned(p) for m, p in there.items() if (p.y < y) == above})
