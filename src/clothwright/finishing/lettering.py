"""Words on the piece: figures and names beside their lines, a label in free paper.

No word may lie over a line, nor over a join of two pages where the piece leaves any
other place. Boxes of words are judged by a generous width, since the outputs use
different faces.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import islice, product

from clothwright.curves import Path, Point, Vector, direction, heading, mix, turned
from clothwright.finishing.boxes import Chain, Obstacles, text_box
from clothwright.finishing.drawn import (
    Beside,
    DrawnPiece,
    DrawnText,
    Meaning,
)
from clothwright.finishing.label import GLUE, ROOMS, Labeller
from clothwright.finishing.room import Room

LABELS = (0.50, 0.40)
"""Heights of label words that are tried, cm; 4 mm is the least (truing 10)."""

LEAST_LABEL = 0.14
"""On pages of a smaller scale, words are never lower than this, cm."""

FIGURES, LEAST_FIGURES = 0.32, 0.15
"""Height of the figures along the edges, cm; the least at a smaller scale."""

LAST = 0.22
"""Height of label words that find no room in those of the figures, cm."""

INSET, CLOSE_IN = 1.7, 1.15
"""From a line to the middle of the words beside it, by their height; in the smallest
letters."""

BARELY = 0.05
"""Names and figures beside a line keep so far off every other, cm on the paper."""

BRACKET = 1.2
"""Depth of a fold's bracket, cm inside the edge."""

EASE_IN = 0.25
"""Ease is drawn this far inside its stitch line, cm, so that both are seen."""

HEAD_LONG = 0.9
"""Length of the arrowheads of the grain, cm."""

HEAD, TIP = 0.2, 0.13
"""Half width of the arrowheads of the grain, and of a bracket half as deep, cm."""

_SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.25, 0.75)
"""Where along its line a word may stand, the best first."""

SAME = 5.0
"""Reading directions nearer than this are one, degrees."""

_FLAT = 0.05
"""Chords of curves that words keep off, cm."""


def lettered(
    piece: DrawnPiece, joins: Sequence[Chain] = (), scale: float = 1.0
) -> DrawnPiece:
    """The piece with the places found for its wording.

    `joins` are lines that words keep off if they can: the joins of pages, in the
    piece's own coordinates. `scale` is paper length over true length: on a smaller
    paper words are larger against the piece, so that they can still be read. A label
    that stands clear already stays; a piece without wording keeps the texts that it
    has.
    """
    if not piece.wording.label and not piece.wording.beside:
        return piece
    w = _Writer(piece, joins, scale)
    label = w.standing() if joins and scale == 1.0 else []
    if label:
        texts = [*w.names(), *w.figures(), *label]
        if not any(w.at_joins.hit(text_box(t)) for t in texts):
            return replace(piece, texts=tuple(texts))
    for over in (False, True) if joins else (True,):
        w = _Writer(piece, joins, scale)
        texts = [*w.names(), *w.figures(), *w.label(apart=False, over=over)]
        if piece.wording.label and not w.labelled:
            # narrow: names keep to the ends, the label chooses before the figures
            w = _Writer(piece, joins, scale, _SHARES[::-1])
            texts = [*w.names(), *w.label(apart=True, over=over), *w.figures()]
        if w.labelled or not piece.wording.label:
            break
    whose = {t.replace(GLUE, " ") for g in piece.wording.label[1:2] for t in g}
    unsaid = tuple(t for t in w.unsaid if t not in whose)  # that is on every page
    return replace(piece, texts=tuple(texts), unsaid=unsaid)


class _Writer:
    """Writes on one piece."""

    def __init__(
        self,
        piece: DrawnPiece,
        joins: Sequence[Chain],
        scale: float,
        shares: Sequence[float] = _SHARES,
    ) -> None:
        self.piece, self.joins, self.shares = piece, joins, shares
        self.scale = scale
        self.labelled = False
        self.unsaid: list[str] = []
        least = max(LABELS[-1] * scale, LEAST_LABEL) / scale
        self.heights = tuple(h / LABELS[-1] * least for h in LABELS)
        self.figure = max(FIGURES * scale, LEAST_FIGURES) / scale
        self.last = max(LAST * scale, LEAST_LABEL) / scale
        self.loop = [
            k.path.flatten(_FLAT)
            for k in piece.lines
            if k.meaning in (Meaning.SEW, Meaning.FOLD)
        ]
        self.lines: list[Chain] = [*self.loop, *_in_the_way(piece)]
        self.at_lines, self.at_joins = Obstacles(), Obstacles()
        for chain in self.lines:
            self.at_lines.add(chain)
        for chain in joins:
            self.at_joins.add(chain)

    def _take(self, texts: Iterable[DrawnText]) -> None:
        """Keep later words off these."""
        for t in texts:
            over = text_box(t).hatched()
            self.lines.append(over)
            self.at_lines.add(over)

    def standing(self) -> list[DrawnText]:
        """The label as it stands on the piece, kept when it is clear of the joins."""
        beside = {t for b in self.piece.wording.beside for t in (b.text, b.short)}
        label = [t for t in self.piece.texts if t.text not in beside]
        if any(
            self.at_joins.hit(text_box(t), max(ROOMS[-1], 0.4 * t.height))
            for t in label
        ):
            return []
        self._take(label)
        return label

    def names(self) -> list[DrawnText]:
        """Names of lines beside them; smaller, or across the ends of narrow pieces,
        where they would else be left out."""
        out = []
        for b in self.piece.wording.beside:
            if b.meaning is not Meaning.DIMENSION:
                heights = (self.heights[-1], self.figure)
                out += self._beside(b, heights) or self._squeezed(b)
        return out

    def figures(self) -> list[DrawnText]:
        """Lengths along the edges."""
        out = []
        for b in self.piece.wording.beside:
            if b.meaning is Meaning.DIMENSION:
                out += self._beside(b, (self.figure,))
        return out

    def _beside(self, b: Beside, heights: Sequence[float]) -> list[DrawnText]:
        """The words beside their line, clear of joins if they can."""
        clear = bool(self.joins)
        wishes = [(text, clear) for text in (b.text, b.short) if text]
        if clear:
            wishes.append((b.short or b.text, False))
        return self._first_of(
            self._along(b, text, height, clear)
            for text, clear in wishes
            for height in heights
        )

    def _squeezed(self, b: Beside) -> list[DrawnText]:
        """A name that finds no room along its line: square to it, or close to it in
        the smallest letters."""
        return self._first_of(
            tried
            for clear in ((True, False) if self.joins else (False,))
            for height in (self.figure, self.last)
            for text in (b.text, b.short)
            if text
            for tried in (
                self._across(b, text, height, clear),
                self._along(b, text, self.last, clear),
            )
        )

    def _first_of(self, tries: Iterable[DrawnText | None]) -> list[DrawnText]:
        """The first that found a place, which is then taken."""
        found = list(islice(filter(None, tries), 1))
        self._take(found)
        return found

    def _along(
        self, b: Beside, text: str, height: float, clear: bool
    ) -> DrawnText | None:
        """The words beside their line where they are free; `clear` of joins too."""
        path = b.path
        words = DrawnText(b.meaning, text, path.start, height)
        wide = text_box(words).half_w * 2
        # a figure keeps within its edge; the name of a short line may be longer
        if wide > path.length * 0.9 and (b.right or b.meaning is Meaning.DIMENSION):
            return None
        off = (CLOSE_IN if height == self.last else INSET) * height
        return self._free(b, words, off, 0.0, clear)

    def _across(
        self, b: Beside, text: str, height: float, clear: bool
    ) -> DrawnText | None:
        """The words square to their line, from a little beside it."""
        words = DrawnText(b.meaning, text, b.path.start, height)
        off = text_box(words).half_w + CLOSE_IN * height / 2
        return self._free(b, words, off, 90.0, clear)

    def _free(
        self, b: Beside, words: DrawnText, off: float, turn: float, clear: bool
    ) -> DrawnText | None:
        """The words `off` from their line, turned against it, where no line is in the
        way; `clear` of joins too."""
        path = b.path
        # words on one side only may also stand beyond a fold's bracket
        for depth in (off, off + BRACKET) if b.right else (-off, off):
            for share in self.shares:
                s = path.length * share
                p, way = path.at_length(s), path.direction_at_length(s)
                at = p + Vector(-way[1], way[0]) * depth
                line = replace(words, at=at, degrees=upright(heading(way) + turn))
                box = text_box(line)
                if self.at_lines.hit(box, BARELY / self.scale):
                    continue
                if clear and self.at_joins.hit(box, ROOMS[-1]):
                    continue
                if self._inside(at):
                    return line
        return None

    def _inside(self, p: Point) -> bool:
        """True within the stitch lines (even-odd rule)."""
        inside = False
        x, y = p
        for chain in self.loop:
            for (x0, y0), (x1, y1) in zip(chain, chain[1:], strict=False):
                if (y0 > y) != (y1 > y):
                    inside ^= x < x0 + (y - y0) * (x1 - x0) / (y1 - y0)
        return inside

    def label(self, *, apart: bool, over: bool) -> list[DrawnText]:
        """The label; `over` lets it lie over joins, `apart` lets its first lines stand
        apart, and leaves what finds no room."""
        groups = self.piece.wording.label
        if not groups or not self.loop:
            return []
        found = self._labelled(groups, apart, over)
        if apart and over and not found:
            name, *rest = ((line,) for line in groups[0])
            parted = [name, *rest, *groups[1:]]
            found = self._labelled(parted, apart, over) or self._narrowly(parted)
        self.labelled = bool(found)
        if not found:
            self.unsaid = [line.replace(GLUE, " ") for g in groups for line in g]
        self._take(found)
        return found

    def _narrowly(self, parted: Sequence[tuple[str, ...]]) -> list[DrawnText]:
        """The label of a strip too narrow for words: in its seam allowances too, along
        them, off the joins where it can; its count in one line where there is room."""
        groups = self.piece.wording.label
        name, *rest = groups[0]
        line = [(name, " · ".join(rest)), *groups[1:]]
        tries = product((line, groups, parted), (False, True))
        found = (self._labelled(g, True, over, narrow=True) for g, over in tries)
        return next((texts for texts in found if texts), [])

    def _labelled(
        self,
        groups: Sequence[tuple[str, ...]],
        apart: bool,
        over: bool,
        *,
        narrow: bool = False,
    ) -> list[DrawnText]:
        lines = self.lines if over else [*self.lines, *self.joins]
        loop = [self.piece.cut_line.flatten(_FLAT)] if narrow else self.loop

        def free(degrees: float) -> Room:
            return Room(loop, lines, degrees)

        left, top, right, foot = self.piece.cut_line.bounds()
        x, y = (left + right) / 2, (top + foot) / 2
        spots = Point(x, y), Point(x, top), Point(x, foot)
        small = [min(self.figure, self.heights[-1])]
        if self.last < small[0]:
            small.append(self.last)
        labeller = Labeller(free, _turns(self.piece), spots, self.heights, small)
        found = labeller.place(groups, apart=apart, last=narrow)
        self.unsaid = labeller.unsaid
        return found


def _turns(piece: DrawnPiece) -> list[float]:
    """Level, across the grain, along it, along the long edges, the longest last."""
    ways = []
    for k in piece.lines:
        if k.meaning is Meaning.GRAIN:
            along = heading(k.path.end - k.path.start)
            ways += [along + 90, along]
    edges = [k.path for k in piece.lines if k.meaning is Meaning.SEW]
    edges.sort(key=lambda p: p.length)
    for path in edges[-2:]:
        middle = path.at_length(path.length / 2)
        ways += [heading(b - a) for a, b in ((path.start, middle), (middle, path.end))]
        ways.append(heading(path.end - path.start))
    turns = [0.0]
    for way in map(upright, ways):
        if all(abs(way - t) > SAME for t in turns):
            turns.append(way)
    return turns


IN_THE_WAY = (
    Meaning.DART,
    Meaning.INNER,
    Meaning.PLACEMENT,
    Meaning.ARROW,
    Meaning.DRILL,
    Meaning.LOOP,
)
"""Lines inside a piece that words keep off."""


def _in_the_way(piece: DrawnPiece) -> Iterable[Chain]:
    """What words keep off besides the stitch lines, inside which they stand."""
    for k in piece.lines:
        if k.meaning in IN_THE_WAY:
            yield k.path.flatten(_FLAT)
            if k.meaning is Meaning.ARROW:
                yield _arrowhead(k.path.end, k.path.end_direction * -1.0)
        elif k.meaning is Meaning.EASE:
            yield from (alongside(k.path, by) for by in (EASE_IN, -EASE_IN))
        elif k.meaning is Meaning.GRAIN:
            a, b = k.path.start, k.path.end
            yield [a, b]
            yield from (_arrowhead(a, direction(a, b)), _arrowhead(b, direction(b, a)))
        elif k.meaning is Meaning.BRACKET:
            chain = bracket(k.path)
            yield chain
            side = direction(k.path.start, k.path.end) * TIP
            for a, b in (chain[:2], chain[:1:-1]):
                yield [a - side, a + side, mix(a, b, 0.5) + side, mix(a, b, 0.5) - side]
    for n in piece.notches:
        inward = n.net - (n.outer - n.net) * 0.4
        yield [n.outer, inward]


def _arrowhead(tip: Point, way: Vector) -> Chain:
    """A head with its tip on a point, `way` the unit direction back along its line."""
    foot, side = tip + way * HEAD_LONG, turned(way, 90) * HEAD
    return [tip, foot - side, foot + side, tip]


def bracket(run: Path, scale: float = 1.0) -> list[Point]:
    """The bracket beside a fold: out, along, back. The piece lies on the right."""
    a, b = run.start, run.end
    depth = turned(direction(a, b), 90) * (BRACKET * scale)
    return [a, a + depth, b + depth, b]


def alongside(path: Path, depth: float) -> list[Point]:
    """Points of a line along a path, `depth` to its right, below nought to its left."""
    n = max(2, math.ceil(path.length / 0.3))
    out = []
    for i in range(n + 1):
        s = path.length * i / n
        out.append(path.at_length(s) + turned(path.direction_at_length(s), 90) * depth)
    return out


def upright(degrees: float) -> float:
    """The direction, or its opposite, that reads from left to right or upwards."""
    d = (degrees + 180) % 360 - 180
    if d > 90 + 1e-6:
        d -= 180
    if d <= -90 + 1e-6:
        d += 180
    return -90.0 if abs(d - 90) < 1e-6 else d
