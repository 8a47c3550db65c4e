"""A button stand whose facing is cut on, and folded back along its edge
(transformations 1.10, 6 and 7: the mirror of its shape about the fold line).

The facing is drawn as one that is sewn on, and every seam stated; then it is turned
over and taped to the edge, which becomes its fold.
"""

from dataclasses import replace

from clothwright.curves import mirror_in
from clothwright.features.openings.stand_pieces import FOLD, STAND, Centre
from clothwright.features.openings.stand_seams import EDGE_CODES
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Run,
    Sheet,
    Verb,
    tape,
)

FACING = "facing "
"""Begins the name of an edge of the facing whose own name the shell has already."""

INTERLINING = {"FF": "IF", "FFP": "IFP", "BF": "IB", "BFP": "IBP"}
"""Codes of the interlining of a facing that is cut on, by that of the facing."""


def fold_on(d: Drafting, centre: Centre) -> None:
    """Turn each facing over and tape it to the edge of the stand; its interlining,
    which ends at the fold, keeps a pattern of its own."""
    codes = EDGE_CODES[centre][:2]
    sheet, shells = d.sheet, []
    for seam in (s for s in sheet.seams if s.code in codes):
        shell, facing = seam.left[0].piece, seam.right[0].piece
        sheet = sheet.put(_interlining(sheet.piece(facing)))
        sheet = _taped(sheet, seam.code, shell, facing)
        shells.append(shell)
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


def _taped(sheet: Sheet, seam: str, shell: str, facing: str) -> Sheet:
    edge = sheet.edge(shell, STAND).path
    over = mirror_in(edge.start, edge.end)
    taken = {e.name for e in sheet.piece(shell).edges}
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


def _interlining(facing: Piece) -> Piece:
    """The interlining of a facing: to its fold, sewn to nothing."""
    edges = tuple(Edge(e.name, e.path, EdgeKind.FINISHED) for e in facing.edges)
    name = f"Cut-on {facing.name.lower()}"
    return Piece(INTERLINING[facing.code], name, edges, grain=facing.grain)
