"""A lining to the edge, bagged to the shell's neck, armholes and top edge (first
garment 15)."""

from collections.abc import Iterator
from dataclasses import replace

from clothwright.curves import (
    Motion,
    Path,
    Vector,
    direction,
    turned,
)
from clothwright.features.bodice.back_dart import NECK_LEGS
from clothwright.features.bodice.front_dart import led_elsewhere
from clothwright.features.chains import FRONT_LINE, TOP
from clothwright.features.linings.facing_pieces import lowered_edges
from clothwright.features.linings.lining_darts import closed_front
from clothwright.features.linings.lining_pieces import (
    WAISTS,
    lay_closed,
    lay_traced,
    named_lining,
    with_shell_grain,
)
from clothwright.features.linings.roll import Rolled, back_to_match, rolled_front
from clothwright.features.linings.sewn_halves import (
    OVER,
    SewnHalf,
    sewn_back,
    sewn_front,
)
from clothwright.features.linings.sleeve_lining import sunk
from clothwright.paper import (
    Drafting,
    Edge,
    MarkKind,
    PaperError,
    Piece,
    Sheet,
    Size,
    redraw,
)
from clothwright.truing.tolerances import DOUBLED

SLACK = 0.5
"""A lining to the edge hangs this much below the shell's waist, cm (15)."""


def to_edge(d: Drafting) -> None:
    """The bodice's pieces with their edges rolled, the shoulder moved in and eased as
    the shell's, and the waist lowered."""
    n, sheet = d.n, d.sheet
    rho = n.rho_l
    if FRONT_LINE in sheet.lines:
        _under_top(d, rho)
        return
    front, back = sewn_front(sheet), sewn_back(sheet)
    if led_elsewhere(sheet):
        closed = closed_front(sheet, front.centre)
        lay_closed(d, front.centre, closed)
        front = replace(front, centre=closed)
    upper_front = rolled_front(front, rho)
    upper = [(front, _loop(upper_front, front=True))]
    if back.cut_away:  # not rolled, as its facing
        upper.append((back, [("neck", back.neck)]))
    else:
        wide = upper_front.shoulder.length + n.se_left
        upper.append((back, _loop(back_to_match(back, rho, wide), front=False)))
    for half, loop in upper:
        for piece, runs in _on_pieces(half, loop):
            code = f"L.{piece.code}"
            table = d.sheet.put(named_lining(piece, piece))
            for run in runs:
                new = [Edge(name, path) for name, path in run]
                table = redraw(table, code, [name for name, _ in run], new)
            table = lowered_waist(table, code)
            lined = with_shell_grain(table.piece(code), piece)
            lined = _with_loops(lined, piece) if lined.has("slant") else lined
            _lay_rolled(d, half, piece, lined)


def _lay_rolled(d: Drafting, half: SewnHalf, shell: Piece, lined: Piece) -> None:
    """Keep a piece of the lining, and the step that drew it."""
    edges = [e for e in ("neck", "slant", "shoulder", "armhole") if lined.has(e)]
    rolled = [edge_word for e in edges if (edge_word := _ROLLED.get(e))]
    where = " and the ".join(rolled)
    amounts: list[tuple[str, Size]] = []
    detail = []
    if rolled and not half.cut_away:
        amounts.append((f"inside the {where} by {{}}", "rho_l"))
        detail.append(
            "of one width" if half.to_waist else f"beginning at nothing {_begins(half)}"
        )
    if lined.has("shoulder"):
        long = lined.edge("shoulder").length
        amounts.append(("long at the shoulder, the same off both its ends", long))
    if any(lined.has(w) for w in WAISTS):
        amounts.append(("longer at the waist", SLACK))
        if lined.has("slant"):
            detail.append("the waist running out to nothing at the slanted edge")
    lay_traced(d, shell, lined, amounts, "; ".join(detail))


_ROLLED = {"neck": "neck", "slant": "slanted edge", "armhole": "armhole"}


def _begins(half: SewnHalf) -> str:
    return f"at the centre {'front' if half.front else 'back'} and under the arm"


def _under_top(d: Drafting, rho: float) -> None:
    """Those of a strapless bodice, the top edge laid lower by the roll."""
    for piece in [p for p in d.sheet.pieces.values() if p.has(TOP)]:
        code, new = f"L.{piece.code}", lowered_edges(piece, rho)
        sheet = d.sheet.put(named_lining(piece, piece))
        sheet = lowered_waist(redraw(sheet, code, [e.name for e in new], new), code)
        lined = with_shell_grain(sheet.piece(code), piece)
        amounts: list[tuple[str, Size]] = [("lower at the top edge", "rho_l")]
        if any(lined.has(w) for w in WAISTS):
            amounts.append(("longer at the waist", SLACK))
        lay_traced(d, piece, lined, amounts)


_Run = list[tuple[str, Path]]
"""Edges that follow each other, by name."""


def _loop(r: Rolled, *, front: bool) -> _Run:
    """The rolled edges in the order of the loop."""
    if front:
        return [("armhole", r.armhole), ("shoulder", r.shoulder), ("neck", r.neck)]
    slant = [("slant", r.slant)] if r.slant is not None else []
    upper = [("neck", r.neck), ("shoulder", r.shoulder), ("armhole", r.armhole)]
    return [*slant, *upper]


def _on_pieces(half: SewnHalf, upper: _Run) -> Iterator[tuple[Piece, list[_Run]]]:
    """The edges of a half in the sewn state as runs of edges of its pieces, as these
    lie apart."""
    centre = upper
    if half.panel is not None and half.flank is not None:
        before, after = _parted(upper, half.panel, ("", ""))
        centre, flank = (after, before) if half.front else (before, after)
        yield half.flank, [_moved(flank, half.motion.inverse())]
    if not half.centre.has("neck side"):
        yield half.centre, [centre]
        return
    inner, outer = _parted(centre, half.centre.edge(NECK_LEGS[0]).path, ("", " side"))
    yield half.centre, [inner, _moved(outer, half.closed.inverse())]


def _moved(run: _Run, m: Motion) -> _Run:
    return [(name, path.moved(m)) for name, path in run]


def _parted(upper: _Run, line: Path, named: tuple[str, str]) -> tuple[_Run, _Run]:
    """The edges before and after a line that begins on the shell's; `named` is added
    to the name of the edge that it divides, on either side."""
    for i, (name, path) in enumerate(upper):
        met = [s for s, _ in path.meets(line)]
        place, gap = path.nearest(line.start)  # met there when nothing is rolled
        if gap < DOUBLED:
            met.append(path.length_to(place))
        if met and name == "slant":
            raise PaperError(
                "the slanted edge of the back runs into the panel seam, so that the "
                "lining has none: make the set-ins (e1, e2) smaller"
            )
        if met:
            a, b = path.split_at_length(met[0])
            a, b = a.without_crumbs(DOUBLED), b.without_crumbs(DOUBLED)
            first, second = (name + more for more in named)
            return [*upper[:i], (first, a)], [(second, b), *upper[i + 1 :]]
    raise PaperError("the lining's upper edge does not meet the panel seam or the dart")


def _with_loops(lining: Piece, back: Piece) -> Piece:
    """The lining with the loops of the back's slanted edge marked on its own, as far
    from the waist (10.4)."""
    edge, shell = lining.edge("slant").path, back.edge("slant").path
    marks = (
        replace(k, at=edge.at_length(shell.length_to_point(k.at)))
        for k in back.marks
        if k.kind is MarkKind.LOOP
    )
    return lining.with_marks(*marks)


def lowered_waist(sheet: Sheet, code: str) -> Sheet:
    """The piece with its waist laid lower, as it is, so that it keeps its length: plumb
    beside a centre, else square to itself, since the paper may have been turned;
    running out to nothing at a slanted edge, which is bagged to the shell's."""
    for name in WAISTS:
        p = sheet.piece(code)
        if not p.has(name):
            continue
        before, edge, after = p.before(name), p.edge(name), p.after(name)
        ends = direction(edge.path.start, edge.path.end)  # the piece lies on its right
        centre = {"cf", "cb", "slant"} & {before.name, after.name}
        down = Vector(0.0, SLACK) if centre else turned(ends, -90) * SLACK
        none = Vector(0.0, 0.0)
        a = none if before.name == "slant" else down
        b = none if after.name == "slant" else down
        low = sunk(edge.path, a, b)
        from_low = before.path.pinned(before.path.start, low.start)
        if before.name == OVER:  # bagged to the edge of the wrap, it runs out there
            from_low = sunk(before.path, none, a)
        sheet = redraw(
            sheet,
            code,
            [before.name, name, after.name],
            [
                replace(before, path=from_low),
                replace(edge, path=low),
                replace(after, path=after.path.pinned(low.end, after.path.end)),
            ],
        )
    return sheet
