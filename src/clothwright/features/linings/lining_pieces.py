"""The pieces of a lining, drawn on the trued shell (first garment 15)."""

from collections.abc import Iterator
from dataclasses import replace

from clothwright.blocks.torso import FISH_EYE, PIECES
from clothwright.curves import (
    Motion,
    Path,
    Vector,
    direction,
    distance,
    dot,
    inset,
    turned,
)
from clothwright.features.bodice.back_dart import NECK_LEGS
from clothwright.features.bodice.front_dart import led_elsewhere
from clothwright.features.chains import FRONT_LINE, TOP
from clothwright.features.grain import longest_line
from clothwright.features.linings.cowl_lining import (
    below_cowl,
    facing_divided,
    without_cowl,
)
from clothwright.features.linings.facing_pieces import lowered_edges
from clothwright.features.linings.lining_darts import closed_front
from clothwright.features.linings.lining_strips import (
    REACH,
    beside_strip,
    stand_facing,
)
from clothwright.features.linings.roll import Rolled, back_to_match, rolled_front
from clothwright.features.linings.sewn_halves import (
    OVER,
    SewnHalf,
    back_under,
    sewn_back,
    sewn_front,
)
from clothwright.features.linings.sleeve_lining import (
    lined_arms,
    sunk,
)
from clothwright.features.necks.cowl import drapes
from clothwright.paper import (
    Edge,
    EdgeKind,
    MarkKind,
    PaperError,
    Piece,
    Sheet,
    cut,
    redraw,
    spot_on,
    straight,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import DOUBLED

SLACK = 0.5
"""A lining to the edge hangs this much below the shell's waist, cm (15)."""

WAISTS = ("waist", "waist side")
_FACED = ("neck", "shoulder", "armhole", "slant")
NECK_FACED = ("neck", "neck side")
"""Edges faced by a neck facing alone."""

_STEP, _LEFT = 0.5, 0.6
"""A shell's grain line is cut back in steps of the first, cm, and so far inside, while
more than the second, a share, is left of it."""


_ABOVE_DART = 0.5
"""A facing ends so far above a side dart that the lining has too, cm (our own)."""


# -- to the edge ---------------------------------------------------------------------
def to_edge(sheet: Sheet, rho: float, ease: float) -> Sheet:
    """The bodice's pieces with their edges rolled, the shoulder moved in and eased by
    `ease` as the shell's, and the waist lowered."""
    if FRONT_LINE in sheet.lines:
        return _under_top(sheet, rho)
    front, back = sewn_front(sheet), sewn_back(sheet)
    if led_elsewhere(sheet):
        front = replace(front, centre=closed_front(sheet, front.centre))
    upper_front = rolled_front(front, rho)
    upper = [(front, _loop(upper_front, front=True))]
    if back.cut_away:  # not rolled, as its facing
        upper.append((back, [("neck", back.neck)]))
    else:
        wide = upper_front.shoulder.length + ease
        upper.append((back, _loop(back_to_match(back, rho, wide), front=False)))
    for half, loop in upper:
        for piece, runs in _on_pieces(half, loop):
            code = f"L.{piece.code}"
            sheet = sheet.put(named_lining(piece, piece))
            for run in runs:
                new = [Edge(name, path) for name, path in run]
                sheet = redraw(sheet, code, [name for name, _ in run], new)
            sheet = _lowered(sheet, code)
            lined = with_shell_grain(sheet.piece(code), piece)
            sheet = sheet.put(
                _with_loops(lined, piece) if lined.has("slant") else lined
            )
    return sheet


def _under_top(sheet: Sheet, rho: float) -> Sheet:
    """Those of a strapless bodice, the top edge laid lower by the roll."""
    for piece in [p for p in sheet.pieces.values() if p.has(TOP)]:
        code, new = f"L.{piece.code}", lowered_edges(piece, rho)
        sheet = sheet.put(named_lining(piece, piece))
        sheet = _lowered(redraw(sheet, code, [e.name for e in new], new), code)
        sheet = sheet.put(with_shell_grain(sheet.piece(code), piece))
    return sheet


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


def _lowered(sheet: Sheet, code: str) -> Sheet:
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


# -- below the facing ----------------------------------------------------------------
def below_facing(sheet: Sheet, n: Numbers) -> Sheet:
    """What lies below the facings' free edges: shell less facing."""
    bf = sheet.piece("BF")
    sleeve = sheet.pieces.get("SL")
    lined: list[Piece] = []
    halves = [(back_under(sheet, bf), bf)]
    if "F" in sheet.pieces and drapes(sheet.piece("F")):
        plain = without_cowl(sheet, n)
        if plain.has("dart low"):
            plain = closed_front(sheet, plain)
        below = below_cowl(sheet, plain, n)
        if "FF" in sheet.pieces:
            sheet = facing_divided(sheet, n)
        sheet = sheet.put(named_lining(below, plain))
        lined.append(plain)
    else:
        halves.insert(0, (sewn_front(sheet), sheet.piece("FF")))
    for half, facing in halves:
        free = facing.edge("free").path
        lower = [(half.centre, free)]
        if facing.has("panel"):  # the facing takes the whole centre
            lower = []
        if half.flank is not None:
            lower.append((half.flank, free.moved(half.motion.inverse())))
        for piece, line in lower:
            closed = piece
            if piece.has("dart low"):
                own = half.flank is not None  # a panel keeps its side dart
                closed = (
                    _clear_of_dart(piece, facing) if own else closed_front(sheet, piece)
                )
            wide = line.run_on(REACH)
            if sleeve is None or _crossed(closed, wide):
                closed = below_line(
                    closed, wide, _FACED if sleeve is None else NECK_FACED
                )
            sheet = sheet.put(named_lining(closed, piece))
            lined.append(piece)
    if sleeve is not None:
        codes = [f"L.{p.code}" for p in lined]
        sheet = lined_arms(sheet, codes, named_lining(sleeve, sleeve))
        lined.append(sleeve)
    return sheet.put(*(with_shell_grain(sheet.piece(f"L.{p.code}"), p) for p in lined))


def _clear_of_dart(panel: Piece, facing: Piece) -> Piece:
    """A side panel whose dart lies below the facing. Raises PaperError."""
    above = panel.edge("side high").length
    deep = facing.edge("side").length if facing.has("side") else 0.0
    if deep > above - _ABOVE_DART:
        raise PaperError(
            f"the facing is {deep:.1f} cm deep at the side, where the bust dart of the "
            f"side front begins {above:.1f} cm down: make it (facing at the side) "
            f"{max(0.0, above - _ABOVE_DART):.1f} cm deep or less, or line to the edge"
        )
    return panel


def _crossed(piece: Piece, wide: Path) -> bool:
    """True when a line divides a piece: a neck's facing does not reach every panel."""
    return sum(len(wide.meets(e.path)) for e in piece.edges) >= 2


def below_line(piece: Piece, wide: Path, faced: tuple[str, ...]) -> Piece:
    """The part of a piece that hangs from the waist, below a line across it; it has
    none of the edges that are faced."""
    hits = sorted((s, e.name) for e in piece.edges for s, _ in wide.meets(e.path))
    if len(hits) < 2 or hits[0][1] == hits[-1][1]:
        raise PaperError(
            f"the facing leaves nothing of {piece.name.lower()} to be lined: make it "
            "less deep (facing at the centre, or nf of a neck facing)"
        )
    (s0, e0), (s1, e1) = hits[0], hits[-1]
    parts = cut(
        Sheet().put(piece),
        piece.code,
        wide.between(s0, s1),
        spot_on(piece, e0, wide.at_length(s0)),
        spot_on(piece, e1, wide.at_length(s1)),
        edge="join",
        seam="join",
        seam_name="facing join",
        into=(("one", ""), ("two", "")),
    )
    below = next(
        q
        for q in parts.pieces.values()
        if any(q.has(w) for w in (*WAISTS, "hem")) and not any(q.has(e) for e in faced)
    )
    return below.with_edges(
        replace(e, path=e.path.without_crumbs(DOUBLED)) for e in below.edges
    )


# -- both ----------------------------------------------------------------------------
def peplum(sheet: Sheet, shorter: float) -> Sheet:
    """The peplum's lining: the same sectors, shorter at the hem."""
    for shell in ("PF", "PB", "PFC", "PFS", "PBC", "PBS"):
        if shell not in sheet.pieces:
            continue
        p = sheet.piece(shell)
        strip = stand_facing(sheet, shell)
        lined = named_lining(p if strip is None else beside_strip(p, strip), p)
        sheet = sheet.put(lined)
        if lined.has("vent"):
            sheet = _open_at_vent(sheet, lined.code)
            lined = sheet.piece(lined.code)
        hem = lined.edge("hem")
        if shorter > 0:
            path = _slid(lined, inset(hem.path, shorter, shorter))
            path = path.without_crumbs(DOUBLED)
            sheet = redraw(sheet, lined.code, ["hem"], [replace(hem, path=path)])
        sheet = sheet.put(with_shell_grain(sheet.piece(lined.code), p))
    return sheet


def torso(sheet: Sheet, shorter: float) -> Sheet:
    """The hems of a torso's lining, shorter than the shell's; beside a vent its centre
    back hangs open."""
    for shell in PIECES:
        code = f"L.{shell}"
        if code not in sheet.pieces or not sheet.piece(code).has("hem"):
            continue
        if sheet.piece(code).has("vent"):
            sheet = _open_at_vent(sheet, code)
        p = sheet.piece(code)
        hem = p.edge("hem")
        if shorter > 0:
            path = _slid(p, inset(hem.path, shorter, shorter))
            path = path.without_crumbs(DOUBLED)
            sheet = redraw(sheet, code, ["hem"], [replace(hem, path=path)])
        sheet = sheet.put(with_shell_grain(sheet.piece(code), sheet.piece(shell)))
    return sheet


def _open_at_vent(sheet: Sheet, code: str) -> Sheet:
    """The extension of a vent cut off along the centre back, which hangs open there."""
    p = sheet.piece(code)
    hem, top = p.edge("hem"), p.edge("vent top").path.end
    foot = sheet.points["Mb"]
    short = hem.path.between(0.0, hem.path.length_to_point(foot))
    new = [
        replace(hem, path=short.pinned(short.start, foot)),
        straight("open", foot, top, EdgeKind.FINISHED),
    ]
    return redraw(sheet, code, ["hem", "vent", "vent top"], new)


def _slid(piece: Piece, hem: Path) -> Path:
    """A hem set higher, cut off where it meets the piece's sides."""
    sides = (piece.before("hem").path, piece.after("hem").path)
    wide = hem.run_on(0.5)
    ends = [s for side in sides for s, _ in wide.meets(side)]
    if len(ends) < 2:
        raise PaperError(f"the lining of {piece.name.lower()} is shorter than nothing")
    return wide.between(min(ends), max(ends))


def named_lining(piece: Piece, shell: Piece) -> Piece:
    """A piece of the lining of a piece of the shell, nothing marked on it but a
    fish-eye dart."""
    code, name = f"L.{shell.code}", f"{shell.name} lining"
    lines = tuple(k for k in piece.lines if k.name == FISH_EYE)
    marks = tuple(k for k in piece.marks if k.name.startswith(FISH_EYE))
    return replace(piece, code=code, name=name, marks=marks, lines=lines)


def with_shell_grain(piece: Piece, shell: Piece) -> Piece:
    """The piece with the shell's grain line, shortened to its own shape; where little
    is left of that, with as long a line as it allows."""
    if shell.grain is None:
        return piece
    foot, head = shell.grain
    up, long = direction(foot, head), distance(foot, head)
    step = up * _STEP
    while not piece.contains(foot - step) and dot(head - foot, up) > 0:
        foot += step
    while not piece.contains(head + step) and dot(head - foot, up) > 0:
        head -= step
    if dot(head - foot, up) > _LEFT * long:
        return replace(piece, grain=(foot, head))
    return replace(piece, grain=longest_line(piece, up))
