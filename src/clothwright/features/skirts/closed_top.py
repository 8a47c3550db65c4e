"""The top of a skirt or of trousers with its darts closed: what facings and shaped
bands are traced from (transformations §6, §8)."""

from itertools import pairwise

from clothwright.blocks import trousers
from clothwright.blocks.skirt import BACK, FRONT
from clothwright.curves import (
    IDENTITY,
    Cubic,
    Motion,
    Path,
    Point,
    Vector,
    degrees_between,
    distance,
    dot,
    from_pair,
    inset,
    turned,
    unit,
)
from clothwright.features.skirts.about import GORE
from clothwright.paper import Edge, EdgeKind, PaperError, Piece, Sheet, meetings

_CRUMB = 0.1
"""What is shorter is no line of its own, cm."""

_HAIR = 0.01
"""What is shorter is a point drawn twice, cm."""

_REACH = 5.0
"""The lower edge is run on so far to meet the sides, cm."""


_BACK = 60.0
"""A line that turns by more in a point turns back, degrees."""

_SQUARE, _ANEW = 1.5, 4.0
"""An end off the square by more, degrees, is drawn anew over so much of the line, cm
(truing 4)."""


def shortest_dart(sheet: Sheet) -> float | None:
    """Length of the shortest leg of a dart at the waist, cm."""
    legs = [
        e.length
        for code in (FRONT, BACK, GORE, trousers.FRONT, trousers.BACK)
        if code in sheet.pieces
        for e in sheet.piece(code).edges
        if e.name.startswith(("dart", "pleat"))
    ]
    return min(legs, default=None)


def top_of(
    piece: Piece,
    depth: float,
    code: str,
    name: str,
    *,
    beside: float = 0.0,
    square: bool = False,
) -> Piece:
    """The upper part of a piece with its darts closed, `depth` cm deep, as a piece of
    its own; where the centre back is a seam it ends `beside` cm inside; `square` draws
    its lower line square to the seams, since another piece goes on below. Raises
    PaperError when the waist leaves no room for it."""
    waist, first, last = closed_waist(piece)
    names = [e.name for e in piece.edges if e.name.startswith("waist")]
    loop = _in_loop(piece, names)
    up, down = piece.before(loop[0]), piece.after(loop[-1])
    rising, falling = up.path.moved(first), down.path.moved(last)
    kinds = {e.name: e.kind for e in (up, down)}
    if kinds.get("cb") is EdgeKind.SEAM and beside > 0:
        line = inset(rising, beside, beside)
        rising = line + Path.line(line.end, line.end + line.end_direction * 2.0)
        fault = (
            f"{name.lower()}: the waist is too narrow for it to end {beside:g} cm "
            "beside the zip: give the waist more ease (Ew)"
        )
        waist = waist.split_at_length(meetings(waist, rising, fault)[0][0])[1]
        rising = rising.between(0.0, rising.length_to_point(waist.start))
        rising = rising.without_crumbs(_CRUMB)
        kinds["cb"] = EdgeKind.FINISHED
    low = below(waist, depth, rising, falling, square=square)
    if low is None:
        symbol = {"WC": "hc", "SY": "hy"}.get(code[:2], "wf")
        raise PaperError(
            f"{name.lower()} ({symbol}) is too deep for this waist: make it less deep"
        )
    low = low.without_crumbs(_HAIR)
    rising = rising.between(rising.length_to_point(low.start), rising.length)
    falling = falling.between(0.0, falling.length_to_point(low.end))
    return Piece(
        code,
        name,
        (
            Edge("waist", waist.pinned(rising.end, falling.start)),
            Edge(down.name, falling.pinned(falling.start, low.end), kinds[down.name]),
            Edge("free", low.reversed(), EdgeKind.FINISHED),
            Edge(up.name, rising.pinned(low.start, rising.end), kinds[up.name]),
        ),
    )


def below(
    waist: Path, depth: float, rising: Path, falling: Path, *, square: bool
) -> Path | None:
    """A line `depth` cm below a waist, from the neighbour that rises to it to the one
    that falls from it; None when it does not meet both, or the waist is hollowed
    tighter than that: the line would turn back on itself."""
    low = inset(waist, depth, depth)
    if any(
        degrees_between(a.end_direction, b.start_direction) > _BACK
        for a, b in pairwise(low.segments)
    ):
        return None
    a, b = low.start_direction * _REACH, low.end_direction * _REACH
    low = Path.line(low.start - a, low.start) + low + Path.line(low.end, low.end + b)
    left, right = low.meets(rising), low.meets(falling)
    if not (left and right) or left[0][0] >= right[-1][0]:
        return None
    low = low.between(left[0][0], right[-1][0])
    if not square:
        return low
    low = _squared(low, falling)
    return _squared(low.reversed(), rising).reversed()


def _squared(line: Path, seam: Path) -> Path:
    """The line with its end drawn anew so that it meets a seam at a right angle, where
    it is off by more than a joint may be: a hip curve turns below the waist."""
    n = _across(seam, line.end, line.end_direction)
    if degrees_between(n, line.end_direction) < _SQUARE or line.length < _ANEW + 0.5:
        return line
    head = line.between(0.0, line.length - _ANEW)
    p, u = head.end, head.end_direction
    end = line.end
    for _ in range(4):  # the chord bisects both directions, as in an arc
        ray = Path.line(p, p + unit(u + _across(seam, end, u)) * (2 * _ANEW))
        hits = ray.meets(seam)
        if not hits:
            return line
        end = seam.at_length(hits[0][1])
    third = distance(p, end) / 3
    v = _across(seam, end, u)
    return head + Path((Cubic(p, p + u * third, end - v * third, end),))


def _across(seam: Path, at: Point, way: Vector) -> Vector:
    """Unit direction square to a seam at a point, towards `way`."""
    u = seam.direction_at_length(seam.length_to_point(at))
    return next(n for n in (turned(u, 90), turned(u, -90)) if dot(n, way) > 0)


def _in_loop(piece: Piece, names: list[str]) -> list[str]:
    """Waist edges in the order of the loop, from the one that has none before it."""
    start = next(
        name
        for name in names
        if not piece.before(name).name.startswith(("waist", "dart", "pleat"))
    )
    return [e.name for e in piece.rolled_to(start) if e.name in names]


def closed_waist(piece: Piece) -> tuple[Path, Motion, Motion]:
    """The waist in one line with the darts closed, and the motions that lay the piece's
    neighbours to its first and last stretch. The stretch at the centre stays."""
    names = [e.name for e in piece.edges if e.name.startswith("waist")]
    motions: list[Motion] = []
    m = IDENTITY
    loop = _in_loop(piece, names)
    for i, name in enumerate(loop):
        motions.append(m)
        if i + 1 == len(loop):
            break
        leg = piece.after(name)  # down to the point, then up to the next stretch
        other = piece.after(leg.name)
        point, a, b = leg.path.end, leg.path.start, other.path.end
        m = m @ from_pair(point, b, point, a)
    if piece.code in (FRONT, trousers.FRONT):  # the centre is the last
        back = motions[-1].inverse()
        motions = [back @ k for k in motions]
    path: Path | None = None
    for name, k in zip(loop, motions, strict=True):
        part = piece.edge(name).path.moved(k)
        path = part if path is None else path + part.pinned(path.end, part.end)
    assert path is not None
    return path, motions[0], motions[-1]
