"""A button stand whose facing is cut on, and folded back along its edge
(transformations 1.10, 6 and 7: the mirror of its shape about the fold line).

The facing is drawn as one that is sewn on, and every seam stated; then it is turned
over and taped to the edge, which becomes its fold. Where a yoke has divided that edge,
the facing is divided on the same line, and its seam is one with the yoke's.
"""

from dataclasses import replace

from clothwright.curves import Path, mirror_in
from clothwright.features.openings.stand_pieces import FOLD, STAND, Centre
from clothwright.features.openings.stand_seams import EDGE_CODES
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    On,
    PaperError,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    cut,
    tape,
)

FACING = "facing "
"""Begins the name of an edge of the facing whose own name the shell has already."""

INTERLINING = {"FF": "IF", "FFP": "IFP", "BF": "IB", "BFP": "IBP"}
"""Codes of the interlining of a facing that is cut on, by that of the facing."""

_YOKE = "yoke"
"""Name of the edge along which a yoke was cut off."""

_UPPER = "Y"
"""Ends the code of what is divided off a facing on the line of a yoke."""


def fold_on(d: Drafting, centre: Centre) -> None:
    """Turn each facing over and tape it to the edge of the stand; its interlining,
    which ends at the fold, keeps a pattern of its own."""
    codes = EDGE_CODES[centre][:2]
    sheet, shells = d.sheet, []
    for seam in (s for s in sheet.seams if s.code in codes):
        sheet = sheet.put(_interlining(sheet, seam))
        over = len(seam.left) > 1
        parts: tuple[Seam, ...] = (seam,)
        if over:
            sheet, parts = _divided(sheet, seam)
        for part in parts:
            shell, facing = part.left[0].piece, part.right[0].piece
            sheet = _taped(sheet, part.code, shell, facing)
            shells.append(shell)
        if over:
            sheet = _one_seam(sheet, centre)
    d.part = centre.words
    d.lay(
        Verb.TAPE,
        sheet,
        ", ".join(shells),
        f"facing cut on along the {centre.words} edge",
        detail="turned over and joined along the edge, which is its fold; a copy, "
        "up to the fold, is cut of interlining",
        lines=tuple(d.sheet.edge(c, STAND).path for c in shells),
    )


def _across(sheet: Sheet, seam: Seam) -> Path:
    """The line of the yoke on the facing, from the edge of the stand to where it leaves
    the facing. Raises PaperError when it does not."""
    upper, lower = (sheet.piece(r.piece) for r in seam.left)
    facing = sheet.piece(seam.right[0].piece)
    at = sheet.run_path(seam.left[1]).start
    line = lower.edge(_YOKE).path if lower.has(_YOKE) else upper.edge(_YOKE).path
    if line.length_to_point(at) > line.length / 2:
        line = line.reversed()
    line = line.pinned(at, line.end)
    met = [s for s, _ in line.meets(facing.outline) if s > _HAIR]
    if not met:
        raise PaperError(
            "the facing cut on reaches beyond the seam of the yoke: make it (bf) "
            "narrower, or let the button stand have a facing of its own"
        )
    return line.between(0.0, met[0])


_HAIR = 0.05
"""A line that begins on an outline meets it within so much, cm."""


def _divided(sheet: Sheet, seam: Seam) -> tuple[Sheet, tuple[Seam, ...]]:
    """The facing cut in two on the line of the yoke, and the edge of the stand in two
    seams."""
    line = _across(sheet, seam)
    facing = sheet.piece(seam.right[0].piece)
    edge = next(e for e in facing.edges if e.path.nearest(line.end)[1] < _HAIR / 5)
    new = (f"{facing.code}{_UPPER}", facing.name), (facing.code, facing.name)
    upper_last = not seam.right[0].backward  # the loop runs down the edge of the stand
    sheet = cut(
        sheet,
        facing.code,
        line,
        On(STAND, facing.edge(STAND).path.length_to_point(line.start)),
        On(edge.name, edge.path.length_to_point(line.end)),
        edge=FACING + _YOKE,
        seam=FACING + _YOKE,
        seam_name=FACING + _YOKE,
        into=(new[1], new[0]) if upper_last else new,
    )
    whole = sheet.seam(seam.code)
    parts = tuple(
        Seam(f"{seam.code} {i}", seam.name, (a,), (b,))
        for i, (a, b) in enumerate(zip(whole.left, whole.right, strict=True), 1)
    )
    return sheet.unsew(seam.code).sew(*parts), parts


def _one_seam(sheet: Sheet, centre: Centre) -> Sheet:
    """The seam of the yoke run on over the facing that is cut on, whose ends meet at
    the fold."""
    mine = sheet.seam(FACING + _YOKE)
    its = sheet.seam(f"{centre.words} yoke")
    runs = {r.piece: r for r in (*mine.left, *mine.right)}
    first = centre.words == "back"  # whose seam begins at the centre
    more = sheet.chain_length(mine.left) if first else 0.0

    def on(chain: tuple[Run, ...]) -> tuple[Run, ...]:
        end = chain[0] if first else chain[-1]
        run = runs[end.piece]
        piece = sheet.piece(run.piece)
        towards = piece.edge(run.edge).path
        at = sheet.run_path(end).start if first else sheet.run_path(end).end
        near = towards.length_to_point(at) < towards.length / 2
        run = Run(run.piece, run.edge, near if first else not near)
        return (run, *chain) if first else (*chain, run)

    notches = tuple(
        k._replace(left=k.left + more, right=k.right + more) for k in its.notches
    )
    one = replace(its, left=on(its.left), right=on(its.right), notches=notches)
    return sheet.unsew(mine.code, its.code).sew(one)


def _taped(sheet: Sheet, seam: str, shell: str, facing: str) -> Sheet:
    edge = sheet.edge(shell, STAND).path
    over = mirror_in(edge.start, edge.end)
    # the shell has a "side" as soon as a dart in it is closed
    taken = {"side", *(e.name for e in sheet.piece(shell).edges)}
    names = {
        e.name: FACING + e.name if e.name in taken else e.name
        for e in sheet.piece(facing).edges
    }
    turned = sheet.piece(facing).moved(over)
    turned = replace(
        turned.with_edges(replace(e, name=names[e.name]) for e in turned.edges),
        lines=(),
        grain=None,
    )

    def where(run: Run) -> tuple[Run, ...]:
        return (Run(facing, names[run.edge], not run.backward),)

    out = tape(sheet.put(turned).with_runs(where, facing), seam)
    return out.put(out.piece(shell).with_lines(InnerLine(FOLD, edge)))


def _interlining(sheet: Sheet, seam: Seam) -> Piece:
    """The interlining of a facing: to its fold, sewn to nothing; cut apart on the line
    of a yoke."""
    facing = sheet.piece(seam.right[0].piece)
    edges = tuple(Edge(e.name, e.path, EdgeKind.FINISHED) for e in facing.edges)
    name = f"Cut-on {facing.name.lower()}"
    lines: tuple[InnerLine, ...] = ()
    if len(seam.left) > 1:
        lines = (InnerLine("cut apart", _across(sheet, seam)),)
    return Piece(INTERLINING[facing.code], name, edges, lines=lines, grain=facing.grain)
