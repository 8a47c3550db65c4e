"""What each step shows: what was there in pencil, what the step does in ink, what it
does away with dashed, and the guide lines of the marks as hairs.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum

from clothwright.curves import (
    Motion,
    Path,
    Point,
    distance,
    polyline,
    rotate,
    shift,
)
from clothwright.features.said import Said
from clothwright.paper import MarkKind, Piece, Sheet, Step, Verb

SAME = 0.02
"""An edge within this of another lies on it, cm."""


class Hand(Enum):
    """How a line is drawn: colour, width and dashes in mm."""

    PENCIL = "#8d8577", 0.25, ""
    """What was there."""

    INK = "#1d3a5f", 0.55, ""
    """What the step does."""

    OLD = "#8d8577", 0.2, "1.2 0.9"
    """What the step does away with."""

    GUIDE = "#b9b1a2", 0.12, ""
    """Where rulers lay."""


Drawn = tuple[Hand, Path]


@dataclass(frozen=True)
class Scene:
    """What a step shows, cm on the cutter's page."""

    drawn: tuple[Drawn, ...] = ()
    rulers: tuple[Path, ...] = ()
    """Where a ruler is laid in this step, from the mark it starts at."""

    marks: tuple[tuple[str, Point], ...] = ()
    new: tuple[tuple[str, Point], ...] = ()
    named: frozenset[str] = frozenset()
    """Marks that the step speaks of."""


def scene(steps: Sequence[Step], index: int, said: Said) -> Scene:
    """What step `index` shows, of the pieces that are `said` to belong to its part; an
    empty scene when there is nothing to see."""
    step = steps[index]
    if step.after is not None:
        return _paper(steps, index, said)
    since, pieces = _lying(steps, index, said)
    before = [s for s in steps[since:index] if s.part == step.part and s.after is None]
    marks = _marks(steps[:index])
    drawn = [(Hand.GUIDE, p) for s in before for p in _ruled(s, marks)]
    drawn += [(Hand.PENCIL, p) for s in before for p in s.lines]
    drawn += [(Hand.PENCIL, p.outline) for p in pieces]
    drawn += [(Hand.PENCIL, p) for p in step.over]
    drawn += [(Hand.INK, p) for p in step.lines]
    drawn += _swung(step, marks)
    spoken = _spoken(step, marks)
    near = {s.makes for s in before} | spoken
    return Scene(
        tuple(drawn),
        tuple(_ruled(step, marks)),
        tuple((n, p) for n, p in marks.items() if n in near),
        ((step.makes, step.at),) if step.at is not None else (),
        frozenset({step.makes, *spoken}),
    )


def _marks(steps: Sequence[Step]) -> dict[str, Point]:
    """The marks that steps have made, by name; of two names of one both."""
    out: dict[str, Point] = {}
    for s in steps:
        if s.at is not None:
            out[s.makes] = s.at
            out.update(dict.fromkeys(_TOO.findall(s.says), s.at))
    return out


_TOO = re.compile(r"\(it is (\S+) too\)")
_WORD = re.compile(r"[\w′]+")


def _spoken(step: Step, marks: Mapping[str, Point]) -> frozenset[str]:
    """The marks that a step speaks of."""
    words = " ".join((step.says, step.detail, *(a.how for a in step.amounts)))
    return frozenset(m for m in (*step.frm, *_WORD.findall(words)) if m in marks)


def _lying(steps: Sequence[Step], index: int, said: Said) -> tuple[int, list[Piece]]:
    """The pieces that lie on the table where a mark or a line is made, and the number
    of the first step since: those of its part, or none where its draft begins with a
    mark of its own."""
    part = steps[index].part
    for i in range(index, -1, -1):
        s = steps[i]
        if s.verb is Verb.START and s.part == part:
            return i, []
        if s.after is not None and i < index and (found := _shown(s.after, part, said)):
            since = next((k for k in range(i, -1, -1) if steps[k].part == part), i)
            return (i if s.part == part else since) + 1, found
    return 0, []


def _ruled(step: Step, marks: dict[str, Point]) -> list[Path]:
    """The way that the ruler goes from the mark it starts at to the new one."""
    if step.at is None or not step.frm or step.frm[0] not in marks:
        return []
    a, b = marks[step.frm[0]], step.at
    if step.verb is Verb.MEASURE:
        bend = Point(b[0], a[1])
        return [
            Path.line(p, q) for p, q in ((a, bend), (bend, b)) if distance(p, q) > 0.05
        ]
    if step.verb is Verb.ALONG and distance(a, b) > 0.05:
        return [Path.line(a, b)]
    return []


def _swung(step: Step, marks: dict[str, Point]) -> Iterator[Drawn]:
    """A mark that swings about another: its old place, its way and its new place."""
    if step.verb is not Verb.TURN or not set(step.frm) <= set(marks):
        return
    of, about = (marks[n] for n in step.frm)
    degrees = step.amounts[0].value
    way = polyline(rotate(of, about, degrees * k / 12) for k in range(13))
    yield Hand.OLD, Path.line(about, of)
    yield Hand.INK, way
    yield Hand.INK, Path.line(about, way.end)


def _shown(table: Sheet, part: str, said: Said) -> list[Piece]:
    return [table.pieces[c] for c in said.shown(part) if c in table.pieces]


def _paper(steps: Sequence[Step], index: int, said: Said) -> Scene:
    """Pieces side by side, with what is new on them, and what went, marked."""
    step = steps[index]
    assert step.after is not None
    pieces = _shown(step.after, step.part, said)
    tables = (s.after for s in reversed(steps[:index]) if s.after is not None)
    table = next(tables, None)
    had = table.pieces if table else {}
    made = [c for c in step.makes.split(", ") if c in step.after.pieces]
    if not pieces:  # a piece of its own, or her own step on any
        made = [c for c, p in step.after.pieces.items() if _is_new(p, had.get(c))]
    seen = {p.code for p in pieces}
    alone = step.part in _BY_ITSELF or bool(step.over)
    if made and (alone or not seen.issuperset(made)):
        pieces = [step.after.pieces[c] for c in made]
    fresh = step.verb in (Verb.OUTLINE, Verb.TRACE)
    earlier = [had[c] for c in said.shown(step.part) if c in had and not fresh]
    known = {p.code: [had[p.code]] if p.code in had else earlier for p in pieces}
    again = not any(_moved(p, known[p.code]) for p in pieces)
    drawn: list[Drawn] = []
    new: list[Point] = []
    points = {**_marks(steps[:index]), **step.after.points}
    spoken, named = _spoken(step, points), dict[str, Point]()
    for piece, m in zip(pieces, apart(pieces), strict=True):
        was = had.get(piece.code)
        changes = _changes(piece, was, known[piece.code], again=again)
        drawn += [(hand, path.moved(m)) for hand, path in changes]
        marks = {k.name for k in was.marks} if was else set[str]()
        new += [
            m(k.at)
            for k in piece.marks
            if k.name not in marks or (step.verb is Verb.SEW and k.kind in _TOLD)
        ]
        inner = _inner(piece, known[piece.code])
        drawn += [(hand, path.moved(m)) for hand, path in inner]
        far = _AWAY if len(pieces) == 1 else _AT_EDGE
        near = {n for n in spoken if _lies_in(piece, points[n], far)}
        near |= set(step.frm) & points.keys() if step.over else set()
        named |= {n: m(points[n]) for n in near}
    if step.verb is Verb.SEW and not new:  # each seam has its own figure
        return Scene()
    for m in apart(pieces)[:1]:
        drawn += [(Hand.PENCIL, path.moved(m)) for path in step.over]
    return Scene(
        tuple(drawn),
        (),
        tuple(named.items()),
        tuple(("", p) for p in new),
        frozenset(named),
    )


_BY_ITSELF = (
    "peplum",
    "skirt",
    "facing",
    "waist facing",
    "lining",
    "skirt lining",
    "trouser lining",
    "band",
    "flounce",
)
"""Parts of which a figure shows the one piece that its step makes."""


_TOLD = (MarkKind.BUTTON, MarkKind.LOOP)
"""Marks that are told in a step of their own, when they are on the paper."""


def _is_new(piece: Piece, was: Piece | None) -> bool:
    """True for a piece that a step has made or altered."""
    if was is None:
        return True
    return [e.path for e in piece.edges] != [e.path for e in was.edges]


def _lies_in(piece: Piece, p: Point, far: float) -> bool:
    """True for a mark on a piece or so far beside its edge, cm."""
    return piece.contains(p) or piece.outline.nearest(p)[1] < far


_AT_EDGE, _AWAY = 1.5, 6.0
"""A mark so far outside an edge belongs to it; to a piece that lies alone, the second,
cm."""

_OVER = 0.5
"""A line inside a piece is drawn so far beyond it at the most, cm: what goes further is
a level of the whole draft."""


def _inner(piece: Piece, known: Sequence[Piece]) -> Iterator[Drawn]:
    """The lines inside a piece, new or not."""
    left, top, right, bottom = piece.outline.bounds()
    for line in piece.lines:
        a, b, c, d = line.path.bounds()
        if min(a - left, b - top, right - c, bottom - d) < -_OVER:
            continue
        old = any(line in p.lines for p in known)
        yield (Hand.PENCIL if old else Hand.INK), line.path


def _moved(piece: Piece, known: Sequence[Piece]) -> list[Path]:
    """The edges of a piece that lie on none of those known."""
    old = [e.path for p in known for e in p.edges]
    return [e.path for e in piece.edges if not _lies_on(e.path, old)]


def _changes(
    piece: Piece, was: Piece | None, known: Sequence[Piece], *, again: bool
) -> Iterator[Drawn]:
    """The edges of a piece, new or not, and those of the old one that are gone. Where
    nothing has moved on any piece, edges drawn over `again` in one line are the new
    ones."""
    now = [e.path for e in piece.edges]
    gone = [] if was is None else [e.path for e in was.edges if e.path not in now]
    gone = [p for p in gone if not _lies_on(p, now)]
    new = _moved(piece, known)
    if again:
        old = [e.path for p in known for e in p.edges]
        new = [p for p in now if p not in old]
    for path in now:
        yield (Hand.INK if path in new else Hand.PENCIL), path
    for path in gone:
        yield Hand.OLD, path


def _lies_on(path: Path, others: Iterable[Path]) -> bool:
    """True when a path is one of others, or runs along them."""
    others = list(others)
    if any(path == p for p in others):
        return True
    spots = (path.at_length(path.length * k) for k in (0.2, 0.5, 0.8))
    return all(any(p.nearest(s)[1] < SAME for p in others) for s in spots)


def apart(pieces: Sequence[Piece]) -> list[Motion]:
    """How pieces are moved side by side, so that none lies over another."""
    out, x = [], 0.0
    for p in pieces:
        left, _, right, _ = p.outline.bounds()
        out.append(shift((x - left, 0.0)))
        x += right - left + 3.0
    return out
