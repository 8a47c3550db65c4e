"""Pivot: turn a part of a piece about the point where it hangs on the rest."""

from clothwright.curves import CLOSE, distance, turn
from clothwright.paper.piece import PaperError, Piece
from clothwright.paper.sheet import Sheet


def pivot(sheet: Sheet, piece: str, first: str, last: str, degrees: float) -> Sheet:
    """Turn the run of edges from `first` to `last`, clockwise round the loop, about
    the point at which it begins and ends; positive degrees are clockwise as seen.

    Such a run lies between two darts, or slashes, to one point: one closes by as much
    as the other opens. All lengths and the area are kept, and every seam. Marks, lines
    and grain of the part go with it. Raises PaperError when the run does not begin and
    end at one point.
    """
    p = sheet.piece(piece)
    about = p.edge(first).path.start
    if distance(about, p.edge(last).path.end) > 10 * CLOSE:
        raise PaperError(
            f"{piece}: the part from {first} to {last} does not hang on one point"
        )
    loop = list(p.rolled_to(first))
    count = next(i for i, e in enumerate(loop) if e.name == last) + 1
    m = turn(about, degrees)
    turned = {e.name: e.moved(m) for e in loop[:count]}
    part = Piece(piece, p.name, tuple(loop[:count]))
    grain = p.grain
    if grain is not None and part.contains(grain[0]):
        grain = m(grain[0]), m(grain[1])
    return sheet.put(
        Piece(
            p.code,
            p.name,
            tuple(turned.get(e.name, e) for e in p.edges),
            tuple(k.moved(m) if part.contains(k.at) else k for k in p.marks),
            tuple(
                k.moved(m) if part.contains(k.path.at_length(k.path.length / 2)) else k
                for k in p.lines
            ),
            grain,
        )
    )
