"""Notches on both partners, read from the seams (truing 6, first garment 19)."""

from collections.abc import Iterable

from clothwright.curves import distance
from clothwright.finishing.drawn import DrawnNotch
from clothwright.paper import JOINT, JOINT_RIGHT, Run, Seam, SeamKind, Sheet

SET = 1.0
"""Ticks of one set stand this far apart, cm."""

NICK = 0.4
"""On an edge that is cut net a notch is a mark so far inwards, cm."""

ONE = 0.01
"""Notches as near as this are one, cm."""


def notches_of(
    sheet: Sheet, seams: Iterable[Seam], piece: str, widths: dict[str, float]
) -> list[DrawnNotch]:
    """Every notch that the seams ask of one piece. Where a notch meets a joint, the
    joint itself is the mark on its own side.

    The net point lies on the stitch line, the outer point square to it on the cut
    line. `widths` are the allowances of the piece's edges.
    """
    out: list[DrawnNotch] = []
    for seam in seams:
        for left, chain in ((True, seam.left), (False, seam.right)):
            if not left and seam.kind is SeamKind.TWIN:
                continue
            if all(run.piece != piece for run in chain):
                continue
            for pair in seam.notches:
                if pair.note == (JOINT if left else JOINT_RIGHT):
                    continue
                at = pair.left if left else pair.right
                for k in _set(sheet, seam, chain, at, pair.ticks, piece, widths):
                    # a pair that is sewn to both sides' own pieces is notched once
                    if all(distance(k.net, other.net) > ONE for other in out):
                        out.append(k)
    return out


def _set(
    sheet: Sheet,
    seam: Seam,
    chain: tuple[Run, ...],
    at: float,
    ticks: int,
    piece: str,
    widths: dict[str, float],
) -> list[DrawnNotch]:
    out = []
    for k in range(ticks):
        s = at + (k - (ticks - 1) / 2) * SET
        run, net, way = sheet.chain_at(chain, s)
        if run.piece != piece:
            continue
        # outside of a clockwise outline lies on the left of its own direction
        loop = way * -1.0 if run.backward else way
        out_ = type(net)(loop[1], -loop[0])
        outer = net + out_ * widths[run.edge]
        if widths[run.edge] == 0.0:
            net = net - out_ * NICK
        out.append(DrawnNotch(net, outer, ticks, f"{seam.code} {run}"))
    return out
