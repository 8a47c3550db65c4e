"""The top edge of a strapless bodice, drawn over the panels as they are sewn, and what
lies above it cut away (transformations 1.8)."""

import math
from dataclasses import dataclass, field

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import (
    IDENTITY,
    Cubic,
    Motion,
    Path,
    Point,
    Vector,
    from_pair,
    turn,
    unit,
)
from clothwright.features.bodice.panel_lines import rounded
from clothwright.features.bodice.strapless_rules import MOST_AT_SEAM
from clothwright.features.chains import BACK_LINE, FRONT_LINE, TOP
from clothwright.paper import (
    Drafting,
    Edge,
    PaperError,
    Piece,
    Sheet,
    Taped,
    Verb,
    redraw,
)
from clothwright.rules import Numbers
from clothwright.truing import Fillet, arc_like
from clothwright.truing.tolerances import DOUBLED

_OVER = 4.0, 8.0
"""What is taken in at a seam runs out to nothing at the level of the bust point, but no
less and no more than so far below the top edge, cm (common practice, no source)."""

_AT_BACK = 0.15
"""Most that each back panel is taken in at its seam, cm (our own choice: the edge lies
at the bust line there, and the bust keeps its girth)."""

_OUT = 1.5
"""The panel seam meets the top edge so far to the side of the bust point, cm (1.5.1: no
more than 2 cm)."""

_CLEAR = 0.4
"""Above the rounding over the bust the seam stays as it was for so far, cm."""

_NOTHING = 0.05
"""A seam is not taken in by less, cm."""

_LEVEL = Vector(1.0, 0.0)


@dataclass(frozen=True)
class _Half:
    """New edges of a half's pieces, by piece the run that they take the place of, and
    the top edge in the sewn state, clockwise."""

    line: Path
    side: Path
    """The side as it will be, from below up to the top edge."""

    new: dict[str, list[Edge]]
    marks: dict[str, Point] = field(default_factory=dict)

    @property
    def across(self) -> float:
        return self.line.end.x - self.line.start.x


def cut_top(d: Drafting) -> None:
    """Draw the top edge over front and back, cut off what lies above it, and take the
    seams in below it until it is as wide as it should be."""
    n = d.n
    over, by = _wider(d.sheet, n, 0.0), 0.0
    for _ in range(4):
        by = clip(by + over / 3, 0.0, MOST_AT_SEAM / 2)
        over = _wider(d.sheet, n, by)
    by = by if by > _NOTHING else 0.0
    for half, name, words in (
        (_front(d.sheet, n, by), FRONT_LINE, "front"),
        (_back(d.sheet, n, by), BACK_LINE, "back"),
    ):
        d.part = words
        _mark(d, half, words)
        d.draw(
            name,
            half.line,
            f"top edge of the {words}",
            frm=tuple(half.marks),
            detail=_HOW[words],
        )
        d.sheet = d.sheet.drawn(**{f"top side {words}": half.side})
        sheet = d.sheet
        for code, edges in half.new.items():
            sheet = redraw(sheet, code, _run(sheet.piece(code), edges), edges)
        d.lay(
            Verb.REDRAW,
            sheet,
            ", ".join(half.new),
            f"{words} cut away along its top edge",
            amounts=_taken_in(half, by),
            detail="at the top, to nothing below it" if by > _NOTHING else "",
            lines=tuple(e.path for new in half.new.values() for e in new),
        )


def _taken_in(half: _Half, by: float) -> tuple[tuple[str, Taped], ...]:
    """What the seams of a half are taken in by, told."""
    if by <= _NOTHING:
        return ()
    side = ("the side taken in by {}", Taped("t", by))
    if "BC" not in half.new:
        return (side,)
    panels = ("both panels at their seam by {}", Taped("tb", min(by, _AT_BACK)))
    return side, panels


_HOW = {
    "front": "the panels laid together above the bust point: level over the bust, then "
    "down to the centre front and in an even curve to the side",
    "back": "the panels laid together: square to the centre back, in an even curve to "
    "the side",
}


def _mark(d: Drafting, half: _Half, words: str) -> None:
    says = {
        "Tc": "top edge at the centre front",
        "Kt": "top edge over the bust",
        "Cb": "top edge at the centre back",
    }
    beside = d["BP"].x - half.marks["Kt"].x if "Kt" in half.marks else 0.0
    out = (("to the side of it", beside),) if beside > _NOTHING else ()
    amounts: dict[str, tuple[tuple[str, str | float], ...]] = {
        "Tc": (("down from the level of Kt", "dip"),),
        "Kt": (("up from the level of BP", "ht"), *out),
        "Cb": (("below the bust line", "bt"),),
    }
    for name, at in half.marks.items():
        if name in says:
            level = name == "Tc" and abs(d.n.dip) < _NOTHING
            detail = "level with Kt" if level else ""
            d.found(name, at, says[name], amounts=amounts[name], detail=detail)
        else:
            d.found(
                name,
                at,
                f"top edge at the side of the {words}",
                amounts=(("up along the side from the underarm", "ur"),),
            )


def _wider(sheet: Sheet, n: Numbers, by: float) -> float:
    """What half the top edge is wider than it should be, laid level, cm."""
    return _front(sheet, n, by).across + _back(sheet, n, by).across - n.top_half


def _run(piece: Piece, new: list[Edge]) -> list[str]:
    """The edges of a piece that the new ones take the place of."""
    first, last = new[0].name, new[-1].name
    if first == TOP:
        first = piece.after("slant" if piece.has("slant") else "cb").name
    rolled = [e.name for e in piece.rolled_to(first)]
    if last == TOP:
        return rolled[: rolled.index("cf")]
    return rolled[: rolled.index(last) + 1]


def _front(sheet: Sheet, n: Numbers, by: float) -> _Half:
    flank = sheet.pieces.get("FS")
    piece = flank or sheet.piece("F")
    name = piece.before("armhole").name
    side = _taken(_longer(piece.edge(name).path, n.ur), by, _over(n), 1.0)
    bp = sheet.points["BP"]
    tc = Point(n.X, bp.y - n.ht + n.dip)
    m, panel_c, panel_s = IDENTITY, None, None
    k = Point(bp.x, bp.y - n.ht)
    if flank is not None:
        k = Point(bp.x - _OUT, k.y)
        m, panel_c, panel_s = _panel_anew(sheet, n, k)
    ts, square = m(side.end), m.direction(unit(_square(side)))
    outer, inner = k.x - ts.x, tc.x - k.x
    if outer < 2.0:
        raise PaperError(
            "the top edge has no room between bust and side: look at BPS and B again"
        )
    drop = max(0.0, ts.y - k.y)
    rise = Cubic(
        ts,
        ts + square * min(0.4 * outer, 0.6 * drop + 1.0),
        k - _LEVEL * (0.45 * outer),
        k,
    )
    arrive = _arrive(n)
    fall = Cubic(k, k + _LEVEL * (0.45 * inner), tc - arrive * (0.4 * inner), tc)
    line = Path((rise, fall))
    marks = {"Ts": ts, "Kt": k, "Tc": tc}
    if flank is None:
        return _Half(line, side, {"F": [Edge(name, side), Edge(TOP, line)]}, marks)
    assert panel_c is not None and panel_s is not None
    back = m.inverse()
    new = {
        "FS": [
            Edge(name, side),
            Edge(TOP, Path((rise,)).moved(back)),
            Edge("panel", panel_s.reversed()),
        ],
        "FC": [Edge("panel", panel_c), Edge(TOP, Path((fall,)))],
    }
    return _Half(line, side, new, marks)


def _arrive(n: Numbers) -> Vector:
    """How the top edge comes to the centre front: square to it, or, of a sweetheart,
    falling."""
    fall = math.radians(n.point)
    return Vector(math.cos(fall), math.sin(fall))


def _square(side: Path) -> Vector:
    """Square to the front's side at its top, into the piece."""
    u = side.end_direction
    return Vector(-u.y, u.x)


def _panel_anew(sheet: Sheet, n: Numbers, k: Point) -> tuple[Motion, Path, Path]:
    """What lays the side front on the centre front above the bust, and both panel
    edges, waist up, led from above the bust to `k` on the top edge."""
    bp = sheet.points["BP"]
    a = sheet.edge("FC", "panel").path
    b = sheet.edge("FS", "panel").path.reversed()
    s = a.length_to_point(bp) + n.T_bust + _CLEAR
    rest = a.length - s
    if rest < 1.0 or k.y > a.at_length(s).y - 1.0:
        raise PaperError(
            "the top edge lies too near the bust point for a panel seam: raise it (ht)"
        )
    there = b.length - rest
    m = from_pair(b.at_length(there), b.end, a.at_length(s), a.end)
    start, up = a.at_length(s), a.direction_at_length(s)
    new = arc_like(k, start, up * -1.0).reversed()
    low = b.between(0.0, there)
    return (
        m,
        a.between(0.0, s) + new,
        low + new.moved(m.inverse()).pinned(low.end, m.inverse()(k)),
    )


def _back(sheet: Sheet, n: Numbers, by: float) -> _Half:
    flank = sheet.pieces.get("BS")
    piece = flank or sheet.piece("B")
    whole = piece.edge("side").path.reversed()  # waist up
    side = _taken(_longer(whole, n.ur), by, _over(n), -1.0)
    centre = sheet.pieces.get("BC") or piece
    loose = centre.edge("slant" if centre.has("slant") else "cb").path
    c = _on(loose, n.y_top)
    marks = {"Cb": c}
    if flank is None:
        line = _back_line(c, side.end, _back_square(side))
        new = [Edge(TOP, line), Edge("side", side.reversed())]
        return _Half(line, side, {"B": new}, {**marks, "Tsb": side.end})
    panel_c = centre.edge("panel").path.reversed()  # waist up
    panel_s = flank.edge("panel").path
    m, at, line = IDENTITY, panel_c.length - 6.0, Path.line(c, side.end)
    mine = its = panel_c
    s = 0.0
    for _ in range(6):
        mine = _taken(panel_c.between(0.0, at), min(by, _AT_BACK), _OVER[1], -1.0)
        its = _taken(panel_s.between(0.0, at), min(by, _AT_BACK), _OVER[1], 1.0)
        mine, its = (_longer(p, 3.0) for p in (mine, its))
        m = from_pair(
            its.at_length(at),
            its.at_length(at - 2.0),
            mine.at_length(at),
            mine.at_length(at - 2.0),
        )
        line = _back_line(c, m(side.end), m.direction(_back_square(side)))
        hits = line.meets(mine)
        if not hits:
            raise PaperError(
                "the top edge of the back does not cross its panel seam: raise it (bt)"
            )
        s, at = hits[0]
        at = min(at, panel_c.length, panel_s.length)
    inner, outer = line.split_at_length(s)
    outer = outer.moved(m.inverse())
    mine, its = (
        mine.between(0.0, mine.length_to_point(inner.end)),
        its.between(0.0, its.length_to_point(outer.start)),
    )
    mine, its = (p.without_crumbs(DOUBLED) for p in (mine, its))
    mine = mine.pinned(mine.start, inner.end)
    new_c = [Edge(TOP, inner), Edge("panel", mine.reversed())]
    new_s = [
        Edge("panel", its.pinned(its.start, outer.start)),
        Edge(TOP, outer),
        Edge("side", side.reversed()),
    ]
    marks["Tsb"] = line.end
    return _Half(line, side, {"BC": new_c, "BS": new_s}, marks)


def _back_line(c: Point, ts: Point, square: Vector) -> Path:
    wide = ts.x - c.x
    return Path(
        (Cubic(c, c + _LEVEL * (0.45 * wide), ts + square * (0.35 * wide), ts),)
    )


def _back_square(side: Path) -> Vector:
    """Square to the back's side at its top, into the piece."""
    u = side.end_direction
    return Vector(u.y, -u.x)


def _on(path: Path, y: float) -> Point:
    """Where a centre line crosses a level."""
    hits = path.meets(Path.line(Point(-50.0, y), Point(100.0, y)))
    if not hits:
        raise PaperError(
            "the top edge of the back does not reach its centre: raise it (bt)"
        )
    return path.at_length(hits[-1][0])


def _longer(path: Path, by: float) -> Path:
    """A path run on straight at its end, or cut back there."""
    if by > 1e-6:
        on = Path.line(path.end, path.end + path.end_direction * by)
        if path.straight:
            return Path.line(path.start, on.end)
        return path + on
    return path.between(0.0, path.length + by) if by < -1e-6 else path


def _over(n: Numbers) -> float:
    """How far below the top edge a side is taken in, cm."""
    return clip(n.y_BP - n.yB + n.ur, *_OVER)


def _taken(path: Path, by: float, over: float, way: float) -> Path:
    """A seam line, upwards, turned in at its top by so much, to nothing so far below or
    where it begins; `way` is 1 where the piece lies on its right, -1 on its left."""
    if by <= _NOTHING:
        return path
    if path.length < over + 2.0:
        angle = math.degrees(math.asin(by / path.length))
        return path.moved(turn(path.start, way * angle))
    low, up = path.split_at_length(path.length - over)
    angle = math.degrees(math.asin(by / over))
    bent = rounded(low, up.moved(turn(up.start, way * angle)), Fillet.of(angle))
    return bent.without_crumbs(DOUBLED)
