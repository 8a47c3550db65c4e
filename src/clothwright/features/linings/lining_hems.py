"""A lining below the waist, and how far above the hem it ends (first garment 15,
transformations 6)."""

from dataclasses import replace

from clothwright.blocks.torso import PIECES
from clothwright.curves import Path, inset
from clothwright.features.linings.lining_pieces import (
    lay_traced,
    named_lining,
    with_shell_grain,
)
from clothwright.features.linings.lining_strips import beside_strip, stand_facing
from clothwright.features.linings.wrap_dress_lining import beside_hem
from clothwright.features.skirts.wrap_skirt_drawing import EDGE
from clothwright.paper import (
    Drafting,
    EdgeKind,
    PaperError,
    Piece,
    Sheet,
    Verb,
    redraw,
    straight,
)
from clothwright.rules import Numbers
from clothwright.truing.tolerances import DOUBLED


def shorter_by(n: Numbers) -> float:
    """What the lining is cut shorter at the hem, cm: less where it is sewn to the
    turned-up hem, and falls in a pleat over that seam."""
    return n.short - n.l_jump if "l_jump" in n else n.short


def _for_jump(n: Numbers) -> tuple[tuple[str, str], ...]:
    """How the hand is told of what a jump pleat takes."""
    return (("less what the jump pleat takes, {}", "l_jump"),) if "l_jump" in n else ()


def line_hanging(d: Drafting) -> None:
    """The peplum's lining: the same sectors, shorter at the hem."""
    shorter = shorter_by(d.n)
    for shell in ("PF", "PB", "PFC", "PFS", "PBC", "PBS"):
        if shell not in d.sheet.pieces:
            continue
        p, detail = d.sheet.piece(shell), ""
        strip = stand_facing(d.sheet, shell)
        if strip is not None:
            detail = f"beside the {strip.name.lower().removesuffix(', lower')}"
        lined = named_lining(p if strip is None else beside_strip(p, strip), p)
        if lined.has(EDGE):
            lined, detail = beside_hem(lined), "inside the hem of the front edge"
        table = d.sheet.put(lined)
        if lined.has("vent"):
            table, detail = _open_at_vent(table, lined.code), _OPEN_AT_VENT
        lined = _hem_higher(table, lined.code, shorter)
        hung = (("shorter at the hem", "short"), *_for_jump(d.n))
        lay_traced(d, p, with_shell_grain(lined, p), hung, detail)


def line_torso(d: Drafting) -> None:
    """The hems of a torso's lining, shorter than the shell's; beside a vent its centre
    back hangs open."""
    shorter = shorter_by(d.n)
    for shell in PIECES:
        code, detail = f"L.{shell}", ""
        if code not in d.sheet.pieces or not d.sheet.piece(code).has("hem"):
            continue
        table = d.sheet
        if table.piece(code).has("vent"):
            table, detail = _open_at_vent(table, code), _OPEN_AT_VENT
        p = _hem_higher(table, code, shorter)
        d.lay(
            Verb.REDRAW,
            d.sheet.put(with_shell_grain(p, d.sheet.piece(shell))),
            code,
            f"hem of the {p.name.lower()}",
            amounts=(("above the shell's", "short"), *_for_jump(d.n)),
            detail=detail,
        )


_OPEN_AT_VENT = "without the extension of the vent: beside it the centre hangs open"


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


def _hem_higher(table: Sheet, code: str, shorter: float) -> Piece:
    """A piece with its hem drawn so much higher, cm."""
    p = table.piece(code)
    if shorter <= 0:
        return p
    hem = p.edge("hem")
    path = _slid(p, inset(hem.path, shorter, shorter)).without_crumbs(DOUBLED)
    return redraw(table, code, ["hem"], [replace(hem, path=path)]).piece(code)


def _slid(piece: Piece, hem: Path) -> Path:
    """A hem set higher, cut off where it meets the piece's sides."""
    sides = (piece.before("hem").path, piece.after("hem").path)
    wide = hem.run_on(0.5)
    ends = [s for side in sides for s, _ in wide.meets(side)]
    if len(ends) < 2:
        raise PaperError(f"the lining of {piece.name.lower()} is shorter than nothing")
    return wide.between(min(ends), max(ends))
