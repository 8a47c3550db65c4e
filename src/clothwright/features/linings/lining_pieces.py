"""The pieces of a lining, drawn on the trued shell (first garment 15)."""

from collections.abc import Sequence
from dataclasses import replace

from clothwright.blocks.torso import FISH_EYE
from clothwright.curves import Path, direction, distance, dot
from clothwright.features.chains import ARM_STRIP
from clothwright.features.grain import longest_line
from clothwright.features.linings.cowl_lining import (
    below_cowl,
    facing_divided,
    without_cowl,
)
from clothwright.features.linings.lining_darts import closed_front
from clothwright.features.linings.lining_strips import (
    REACH,
)
from clothwright.features.linings.sewn_halves import back_under, sewn_front
from clothwright.features.linings.sleeve_lining import OUT, SHORTER, lined_arms
from clothwright.features.necks.cowl import drapes
from clothwright.features.skirts.slit_edges import without_facing
from clothwright.paper import (
    Drafting,
    PaperError,
    Piece,
    Sheet,
    Size,
    Verb,
    cut,
    spot_on,
)
from clothwright.truing.tolerances import DOUBLED

WAISTS = ("waist", "waist side")
_FACED = ("neck", "shoulder", "armhole", "slant")
NECK_FACED = ("neck", "neck side")
"""Edges faced by a neck facing alone."""

_STEP, _LEFT = 0.5, 0.6
"""A shell's grain line is cut back in steps of the first, cm, and so far inside, while
more than the second, a share, is left of it."""


_ABOVE_DART = 0.5
"""A facing ends so far above a side dart that the lining has too, cm (our own)."""

_TOUCHED = 0.1
"""A dart whose point comes so near to a facing's edge has no cloth above it, cm."""


# -- below the facing ----------------------------------------------------------------
def below_facing(d: Drafting) -> None:
    """What lies below the facings' free edges: shell less facing."""
    sheet = d.sheet
    bf = sheet.piece("BF")
    sleeve = sheet.pieces.get("SL")
    codes: list[str] = []
    halves = [(back_under(sheet, bf), bf)]
    if "F" in sheet.pieces and drapes(sheet.piece("F")):
        lay_below_cowl(d)
        codes.append("L.F")
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
            if closed is not piece:
                lay_closed(d, piece, closed)
            wide, reached = line.run_on(REACH), True
            alone = sleeve is not None or ARM_STRIP in sheet.pieces
            if not alone or _crossed(closed, wide):
                _clear_of_waist_dart(closed, wide, "nf" if alone else "ff_cf")
                closed = below_line(closed, wide, NECK_FACED if alone else _FACED)
            else:
                reached = False
            lined = with_shell_grain(named_lining(closed, piece), piece)
            lay_below(d, piece, lined, facing.name.lower() if reached else "")
            codes.append(lined.code)
    if sleeve is not None:
        line_arms(d, codes, with_shell_grain(named_lining(sleeve, sleeve), sleeve))


def _clear_of_waist_dart(piece: Piece, line: Path, width: str) -> None:
    """Raises PaperError where a facing's free edge comes down to the point of a waist
    dart; `width` is the number by which it does."""
    if not piece.has("leg cf"):
        return
    leg = piece.edge("leg cf").path
    ends = (leg.start, leg.end)
    if leg.meets(line) or min(line.nearest(p)[1] for p in ends) < _TOUCHED:
        told = {"nf": "(nf) narrower", "ff_cf": "less deep (facing at the centre)"}
        raise PaperError(
            "the facing comes down to the waist dart, so that the lining has no room "
            f"above it: make the facing {told[width]}"
        )


def lay_below_cowl(d: Drafting) -> None:
    """The front's lining, behind a cowl: without its folds, and to below its neck."""
    n, cowl = d.n, d.sheet.piece("F")
    plain = without_cowl(d.sheet, n)
    if plain.has("dart low"):
        plain = closed_front(d.sheet, plain)
    lay_traced(
        d,
        cowl,
        named_lining(plain, plain),
        detail="without the folds of the cowl: slash the copy from BP to its waist "
        "dart, and turn what lies outside it about BP until Nf lies on Nf′; what "
        "opens at the waist is its dart",
    )
    below = below_cowl(d.sheet, plain, n)
    table = facing_divided(d.sheet, n) if "FF" in d.sheet.pieces else d.sheet
    neck = below.edge("neck").path
    foot = below.edge("cf").path.start
    amounts: list[tuple[str, Size]] = []
    if below.has("shoulder"):
        left = below.edge("shoulder").length
        amounts.append(("of the shoulder left, from the tip", left))
    amounts.append(("down from its beginning to the centre", foot.y - neck.start.y))
    d.lay(
        Verb.REDRAW,
        table.put(with_shell_grain(named_lining(below, plain), plain)),
        "L.F",
        "neck of the front lining, hollow, level at the centre front",
        amounts=amounts,
        detail=""
        if below.has("shoulder")
        else "from the edge of the armhole's facing, along which it is cut off",
    )


def lay_closed(d: Drafting, shell: Piece, closed: Piece) -> None:
    """Keep a traced front with its bust dart led into the waist dart."""
    lay_traced(
        d,
        shell,
        named_lining(closed, shell),
        detail="its bust dart taped shut from BP out, so that it opens in the waist "
        "dart, whose point stays as far below BP",
    )


def lay_below(d: Drafting, shell: Piece, lined: Piece, facing: str) -> None:
    """Keep a piece of the lining that hangs below a facing, or as deep as the shell
    where the facing does not reach it."""
    above = "its bust dart closed" if lined.code in d.sheet.pieces else ""
    if not facing:
        lay_traced(d, shell, lined, detail=above)
        return
    lay_traced(
        d,
        shell,
        lined,
        detail=f"cut off along the loose edge of the {facing}, which is laid on the "
        "shell as it will be sewn; both get an allowance there",
    )


def lay_traced(
    d: Drafting,
    shell: Piece,
    lined: Piece,
    amounts: Sequence[tuple[str, Size]] = (),
    detail: str = "",
) -> None:
    """Keep a piece of the lining traced over the shell's paper."""
    fresh = lined.code not in d.sheet.pieces
    d.lay(
        Verb.TRACE if fresh else Verb.REDRAW,
        d.sheet.put(lined),
        lined.code,
        f"{lined.name.lower()}, from the trued shell" if fresh else lined.name.lower(),
        amounts=amounts,
        detail=detail,
        over=(shell.outline,),
    )


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


def line_arms(d: Drafting, codes: Sequence[str], sleeve: Piece) -> None:
    """The underarms of the lining's pieces raised, and the sleeve's lining."""
    shell = d.sheet.piece("SL")
    made = lined_arms(d.sheet, codes, sleeve)
    arms = [c for c in codes if made.sheet.piece(c) is not d.sheet.piece(c)]
    d.lay(
        Verb.REDRAW,
        d.sheet.put(*(made.sheet.piece(c) for c in arms)),
        ", ".join(arms),
        "the lining under the arm, so that it passes over the allowances there",
        amounts=(("up along the side by {}", made.rise), ("and out by {}", OUT)),
        detail="side and armhole led there evenly",
    )
    lay_traced(
        d,
        shell,
        with_shell_grain(made.sheet.piece(sleeve.code), shell),
        (
            ("higher under the arm, along its own seam", made.sleeve_rise),
            ("shorter at the hem", SHORTER),
        ),
        "the cap led there evenly from the shoulder notch",
    )


def lay_again(
    d: Drafting,
    sheet: Sheet,
    codes: Sequence[str],
    says: str,
    amounts: Sequence[tuple[str, Size]],
    detail: str = "",
) -> None:
    """Keep pieces of the lining drawn anew, their grain lines within them."""
    new = (
        with_shell_grain(sheet.piece(c), d.sheet.piece(c.removeprefix("L.")))
        for c in codes
    )
    table = d.sheet.put(*new)
    d.lay(Verb.REDRAW, table, ", ".join(codes), says, amounts=amounts, detail=detail)


# -- copies ------------------------------------------------------------------------
def named_lining(piece: Piece, shell: Piece) -> Piece:
    """A piece of the lining of a piece of the shell, nothing marked on it but a
    fish-eye dart."""
    code, name = f"L.{shell.code}", f"{shell.name} lining"
    piece = without_facing(piece)
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
