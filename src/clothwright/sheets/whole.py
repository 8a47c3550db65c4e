"""Half pieces opened out, for machines that cut single cloth."""

from dataclasses import dataclass, replace

from clothwright.curves import Point, Vector, cross, direction, mirror_in
from clothwright.finishing.drawn import (
    DrawnLine,
    DrawnNotch,
    DrawnPiece,
    Meaning,
)
from clothwright.sheets.looks import divided

ON_FOLD = 0.05
"""A mark within this of the fold is its own mirror image, cm."""


@dataclass(frozen=True, slots=True)
class FoldLine:
    """The fold, run on beyond its ends."""

    at: Point
    way: Vector

    def holds(self, *points: Point) -> bool:
        """True when all points lie on it."""
        return all(abs(cross(self.way, p - self.at)) < ON_FOLD for p in points)


_FOLDED = ((" on fold", ""), (", on the fold", ""), ("on the fold", "fold line"))


def _unfolded(words: str) -> str:
    """The words on a piece that no longer lies on a fold."""
    for said, instead in _FOLDED:
        words = words.replace(said, instead)
    return words


def opened(piece: DrawnPiece) -> DrawnPiece:
    """The whole piece: outline, lines and notches mirrored about the fold.

    Words and the grain line stay single, the words without "on the fold", and the fold
    stays as an inner line. A piece
    without exactly one fold on its outline comes back as it is.
    """
    kept, folded = divided(piece)
    if len(kept) != 1 or len(folded) != 1:
        return piece
    half, fold = kept[0], folded[0]
    over = mirror_in(fold.start, fold.end)
    other = half.moved(over).reversed().pinned(half.end, half.start)
    on_fold = FoldLine(fold.start, direction(fold.start, fold.end))
    lines: list[DrawnLine] = []
    for line in piece.lines:
        if line.meaning is Meaning.FOLD:
            lines.append(DrawnLine(Meaning.INNER, line.path, line.note))
            continue
        if line.meaning is Meaning.BRACKET:
            continue
        lines.append(line)
        single = line.meaning is Meaning.GRAIN or on_fold.holds(
            line.path.start, line.path.end
        )
        if not single:
            lines.append(replace(line, path=line.path.moved(over)))
    notches: list[DrawnNotch] = []
    for notch in piece.notches:
        notches.append(notch)
        if not on_fold.holds(notch.outer):
            twin = replace(notch, net=over(notch.net), outer=over(notch.outer))
            notches.append(twin)
    return replace(
        piece,
        cuts=tuple(replace(c, how=_unfolded(c.how)) for c in piece.cuts),
        texts=tuple(replace(t, text=_unfolded(t.text)) for t in piece.texts),
        cut_line=half + other,
        lines=tuple(lines),
        notches=tuple(notches),
        on_fold=False,
        area=2 * piece.area,
    )
