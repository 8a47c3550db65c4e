"""A bodice that blouses over its waist: lengthened, to hang over the seam (blocks D7).

The paper is cut level above the waist and moved apart; sides, centres and darts are
redrawn from end to end (transformations 1.9), so that every waist edge keeps its line.
"""

from collections.abc import Iterator

from clothwright.curves import (
    CLOSE,
    Path,
    Point,
    Vector,
    distance,
    midpoint,
    shift,
    unit,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Edge, Piece, Sheet, Verb

_HALVES = ("F", "B")
_LEGS = (("leg cf", "leg side"), ("leg side", "leg cb"))

ONLY_DARTS: dict[str, str] = {
    "front panel seam": "a bodice that blouses over hangs full; take darts in front, "
    "gathered at the waist, in place of the princess line",
    "back panel seam": "a bodice that blouses over hangs full; take a back waist dart, "
    "gathered there, in place of the princess line",
    "open back": "an open back is drawn to the waist and cannot blouse over it; close "
    "it, or leave blouse out",
    "wrap": "the fronts of a wrap are held at the waist and cannot blouse over it; "
    "leave blouse out",
}
"""What does not go with a bodice that blouses over."""


def lengthen(d: Drafting) -> None:
    """Move every waist edge down by the length of the blouse."""
    d.part = "waist"
    d.lay(
        Verb.MOVE,
        d.sheet.put(*(_longer(d.sheet.piece(c), d.n.blouse) for c in _HALVES)),
        "waist",
        "bodice cut level above the waist and moved apart, to blouse over",
        amounts=(("by {}", "blouse"),),
        detail="then sides, centres and darts are redrawn from end to end",
    )


def _longer(p: Piece, by: float) -> Piece:
    """The half with its waist moved down; what lies beyond the dart by as much as it
    leans, so that both legs stay of one length."""
    down = Vector(0.0, by)
    slid = {"waist": down, "waist side": _mirrored(p, down)}
    ends = [
        (q, slid[e.name])
        for e in p.edges
        if e.name in slid
        for q in (e.path.start, e.path.end)
    ]

    def at(q: Point) -> Point:
        return next((q + v for k, v in ends if distance(q, k) < CLOSE), q)

    def moved(e: Edge) -> Edge:
        if e.name in slid:
            return e.moved(shift(slid[e.name]))
        a, b = at(e.path.start), at(e.path.end)
        return e.along(Path.line(a, b) if e.path.straight else e.path.pinned(a, b))

    return p.with_edges(moved(e) for e in p.edges)


def _mirrored(p: Piece, way: Vector) -> Vector:
    """A way mirrored in the middle line of the waist dart; as it is where there is
    none."""
    legs = next((k for k in _LEGS if p.has(k[0]) and p.has(k[1])), None)
    if legs is None:
        return way
    first, last = (p.edge(e).path for e in legs)
    axis = unit(midpoint(first.start, last.end) - first.end)
    return axis * (2 * (way.x * axis.x + way.y * axis.y)) - way


def blouse_findings(sheet: Sheet) -> Iterator[Finding]:
    """What is longer and not fuller hangs in a fold and not in a blouse."""
    for half, kept in (("front", "gathered leg cf"), ("back", "gathered back leg cb")):
        if kept not in sheet.lines:
            yield Finding(
                "W2",
                Severity.NOTE,
                f"The {half} is longer, to blouse over the waist, and its waist dart "
                "is sewn: gathered there it would hang softer.",
                "blouse",
                "",
                {},
            )
