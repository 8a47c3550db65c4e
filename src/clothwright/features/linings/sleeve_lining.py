"""The lining of a top with set-in sleeves: its armholes and its sleeve (transformations
6)."""

from dataclasses import replace

from clothwright.curves import Line, Path, Point, Vector, inset
from clothwright.paper import Edge, Piece, Sheet, redraw
from clothwright.truing.tolerances import DOUBLED

RISE, OUT = 1.0, 0.3
"""At the underarm the bodice's lining is so much higher, 0.6 to 1.2, and wider, cm (6).
"""

SLEEVE_RISE = 2.0
"""The sleeve lining's underarm is raised 1.5 to 2.5 to pass over the armhole's
allowances, cm (6)."""

SHORTER = 1.5
"""The sleeve lining is so much shorter than the finished hem, 1.5 to 2, cm (6)."""

_NONE = Vector(0.0, 0.0)


def with_raised_underarm(sheet: Sheet, code: str) -> Sheet:
    """A lining's piece with its underarm higher and wider, when it has one."""
    p = sheet.piece(code)
    arm = next((e for e in ("armhole low", "armhole") if p.has(e)), "")
    if not arm:
        return sheet
    before, after = p.before(arm), p.after(arm)
    front = before.name.startswith("side")
    side = before if front else after
    if not side.name.startswith("side"):
        return sheet
    path = side.path if front else side.path.reversed()  # up to the underarm
    by = path.end_direction * RISE + Point(-OUT if front else OUT, 0.0)
    corner = path.end + by
    hole = p.edge(arm).path
    if front:
        new = [
            side.along(side.path.pinned(side.path.start, corner)),
            Edge(arm, sunk(hole, by, _NONE)),
        ]
        return redraw(sheet, code, [side.name, arm], new)
    new = [
        Edge(arm, sunk(hole, _NONE, by)),
        side.along(side.path.pinned(corner, side.path.end)),
    ]
    return redraw(sheet, code, [arm, side.name], new)


def sleeve_lining(sheet: Sheet, lined: Piece) -> Sheet:
    """The lining of the sleeve, `lined` a copy of it: its underarm raised along its own
    seam, its hem shorter."""
    front, back = lined.edge("underarm front").path, lined.edge("underarm back").path
    up_f = front.start_direction * -SLEEVE_RISE
    up_b = back.end_direction * SLEEVE_RISE
    caps = lined.edge("cap back"), lined.edge("cap front")
    new = [
        Edge("underarm back", back + Path((Line(back.end, back.end + up_b),))),
        caps[0].along(sunk(caps[0].path, up_b, _NONE)),
        caps[1].along(sunk(caps[1].path, _NONE, up_f)),
        Edge("underarm front", Path((Line(front.start + up_f, front.start),)) + front),
    ]
    sheet = redraw(sheet.put(lined), lined.code, [e.name for e in new], new)
    p = sheet.piece(lined.code)
    hem = p.edge("hem")
    path = inset(hem.path, SHORTER, SHORTER)
    a, b = path.start_direction, path.end_direction
    wide = (
        Path.line(path.start - a, path.start) + path + Path.line(path.end, path.end + b)
    )
    ends = [s for e in (p.before("hem"), p.after("hem")) for s, _ in wide.meets(e.path)]
    cut = wide.between(min(ends), max(ends)).without_crumbs(DOUBLED)
    short = replace(hem, path=cut)
    return redraw(sheet, lined.code, ["hem"], [short])


def sunk(path: Path, a: Vector, b: Vector) -> Path:
    """A line shifted by `a` at its start and by `b` at its end, evenly between."""
    start, whole = path.start, path.end - path.start
    span = whole.x * whole.x + whole.y * whole.y

    def at(p: Point) -> Point:
        t = ((p.x - start.x) * whole.x + (p.y - start.y) * whole.y) / span
        return p + a * (1 - t) + b * t

    return Path(tuple(type(s)(*(at(p) for p in s.points)) for s in path.segments))
