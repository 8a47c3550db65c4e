"""Random shapes for property tests: curves, paths and pieces that paper could be.

Pieces are star-shaped about their middle, clockwise as seen (y down), their edges
straight or gently curved, 5 to 60 cm across. All lengths cm.
"""

import math

from hypothesis import strategies as st

from clothwright.curves import (
    Cubic,
    Line,
    Motion,
    Path,
    Point,
    distance,
    mirror_in,
    mix,
    shift,
    turn,
)
from clothwright.paper import Edge, EdgeKind, Piece, Run, Seam, Sheet

MM = 0.1

coordinate = st.floats(-30, 30, allow_nan=False, width=32)
points = st.builds(Point, coordinate, coordinate)
shares = st.floats(0.05, 0.95)
"""A share of a length, clear of its ends."""

cubics = st.builds(Cubic, points, points, points, points).filter(
    lambda c: min(math.hypot(*c.slope(i / 64)) for i in range(65)) > 1.0
)
"""Any curve without a cusp."""

lines = st.builds(Line, points, points).filter(lambda k: k.length > 0.5)
segments = st.one_of(lines, cubics)
turns = st.builds(turn, points, st.floats(-360, 360))
shifts = st.builds(shift, points)
slides = st.builds(lambda a, b: a @ b, turns, shifts)
"""What a hand does to paper on the table."""

mirrors = st.builds(
    lambda p, a: mirror_in(p, p + Point(math.cos(a), math.sin(a))),
    points,
    st.floats(0, math.tau),
)
motions: st.SearchStrategy[Motion] = st.one_of(turns, shifts, slides, mirrors)


@st.composite
def gentle(draw: st.DrawFn, a: Point | None = None, b: Point | None = None) -> Cubic:
    """A curve that turns by less than a right angle, as seams do."""
    p = draw(points) if a is None else a
    q = draw(points.filter(lambda q: distance(p, q) > 3)) if b is None else b
    out = Point(-(q[1] - p[1]), q[0] - p[0])
    h, k = draw(st.floats(-0.2, 0.2)), draw(st.floats(-0.2, 0.2))
    return Cubic(p, mix(p, q, 1 / 3) + out * h, mix(p, q, 2 / 3) + out * k, q)


@st.composite
def paths(draw: st.DrawFn) -> Path:
    """Three segments at most, joined."""
    at = draw(points)
    parts: list[Line | Cubic] = []
    for _ in range(draw(st.integers(1, 3))):
        end = draw(points)
        if distance(at, end) < 3:
            end = at + Point(5, 2)
        parts.append(draw(st.one_of(st.just(Line(at, end)), gentle(at, end))))
        at = end
    return Path(tuple(parts))


@st.composite
def pieces(draw: st.DrawFn, code: str = "P", least: int = 4) -> Piece:
    """A piece of `least` to 7 edges named a, b, c …, all to be sewn."""
    n = draw(st.integers(least, 7))
    radii = [draw(st.floats(8, 25)) for _ in range(n)]
    tilt = draw(st.floats(0, 1))
    corners = [
        Point(r * math.cos(t), r * math.sin(t))
        for r, t in ((radii[i], (i + tilt) * math.tau / n) for i in range(n))
    ]
    edges: list[Edge] = []
    for i in range(n):
        p, q = corners[i], corners[(i + 1) % n]
        if draw(st.booleans()):
            path = Path((Line(p, q),))
        else:  # bowed either way, by at most a tenth of the chord
            out = Point(q[1] - p[1], -(q[0] - p[0]))
            h, k = draw(st.floats(-0.13, 0.13)), draw(st.floats(-0.13, 0.13))
            path = Path.cubic(
                p, mix(p, q, 1 / 3) + out * h, mix(p, q, 2 / 3) + out * k, q
            )
        edges.append(Edge("abcdefg"[i], path))
    foot = Point(0, 3)
    return Piece(code, code, tuple(edges), grain=(foot, Point(0, -3)))


def folded(piece: Piece) -> Piece:
    """The piece with its last corner's edge ruled straight and laid on the fold."""
    last = piece.edges[-1]
    path = Path.line(last.path.start, last.path.end)
    return piece.with_edge(Edge(last.name, path, EdgeKind.FOLD))


def sewn(piece: Piece) -> Sheet:
    """A sheet with the piece, a copy of it, and two seams between them that walk over
    two edges each: one with the loop, one against it."""
    mate = Piece("M", "mate", piece.edges)
    names = [e.name for e in piece.edges]
    a, b, c, d = names[0], names[1], names[2], names[3]
    return (
        Sheet()
        .put(piece, mate)
        .sew(
            Seam("S1", "with", _runs(piece.code, [a, b]), _runs("M", [a, b])),
            Seam(
                "S2",
                "against",
                _runs(piece.code, [d, c], backward=True),
                _runs("M", [d, c], backward=True),
            ),
        )
    )


def _runs(code: str, names: list[str], *, backward: bool = False) -> tuple[Run, ...]:
    return tuple(Run(code, n, backward) for n in names)


def walked(sheet: Sheet, seam: str, steps: int = 12) -> list[Point]:
    """Points at even lengths along the left chain of a seam."""
    chain = sheet.seam(seam).left
    length = sheet.chain_length(chain)
    return [sheet.chain_at(chain, length * (i + 0.5) / steps)[1] for i in range(steps)]


def worst_gap(a: list[Point], b: list[Point]) -> float:
    """Greatest distance between points of equal rank; the lists must be as long."""
    assert len(a) == len(b), f"{len(a)} points against {len(b)}"
    return max(distance(p, q) for p, q in zip(a, b, strict=True))
