"""Half pieces opened out, for machines that cut single cloth."""

from dataclasses import replace

from clothwright.curves import mirror_in
from clothwright.finishing.drawn import (
    DrawnLine,
    DrawnNotch,
    DrawnPiece,
    Meaning,
)
from clothwright.sheets.looks import without

ON_FOLD = 0.05
"""A mark within this of the fold is its own mirror image, cm."""


def opened(piece: DrawnPiece) -> DrawnPiece:
    """The whole piece: outline, lines and notches mirrored about the fold.

    Words and the grain line stay single, and the fold stays as an inner line. A piece
    without exactly one fold on its outline comes back as it is.
    """
    folds = [k for k in piece.lines if k.meaning is Meaning.FOLD]
    if len(folds) != 1:
        return piece
    fold = folds[0]
    kept = without(piece.cut_line, [fold.path])
    if len(kept) != 1 or kept[0].closed:
        return piece
    half = kept[0]
    over = mirror_in(fold.path.start, fold.path.end)
    other = half.moved(over).reversed().pinned(half.end, half.start)
    lines: list[DrawnLine] = []
    for line in piece.lines:
        if line.meaning is Meaning.FOLD:
            lines.append(DrawnLine(Meaning.INNER, line.path, line.note))
            continue
        lines.append(line)
        box = [fold.path.nearest(p)[1] for p in (line.path.start, line.path.end)]
        if line.meaning is not Meaning.GRAIN and max(box) > ON_FOLD:
            lines.append(replace(line, path=line.path.moved(over)))
    notches: list[DrawnNotch] = []
    for notch in piece.notches:
        notches.append(notch)
        if fold.path.nearest(notch.outer)[1] > ON_FOLD:
            twin = replace(notch, net=over(notch.net), outer=over(notch.outer))
            notches.append(twin)
    return replace(
        piece,
        cut_line=half + other,
        lines=tuple(lines),
        notches=tuple(notches),
        on_fold=False,
        area=2 * piece.area,
    )
