"""What each step shows: what was there in pencil, what the step does in ink, what it
does away with dashed, and the guide lines of the marks as hairs.
"""

from collections.abc import Iterable, Iterator, Sequence
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
from clothwright.paper import Piece, Step, Verb

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
    paper = _latest(steps[:index], step.part, said)
    since = 0 if paper is None else steps.index(paper) + 1
    before = [s for s in steps[since:index] if s.part == step.part and s.after is None]
    marks = {s.makes: s.at for s in steps[:index] if s.at is not None}
    drawn = [(Hand.GUIDE, p) for s in before for p in _ruled(s, marks)]
    drawn += [(Hand.PENCIL, p) for s in before for p in s.lines]
    if paper is not None and paper.after is not None:
        drawn += [(Hand.PENCIL, p.outline) for p in _pieces(paper, said)]
    drawn += [(Hand.INK, p) for p in step.lines]
    drawn += _swung(step, marks)
    near = {s.makes for s in before} | set(step.frm)
    return Scene(
        tuple(drawn),
        tuple(_ruled(step, marks)),
        tuple((n, p) for n, p in marks.items() if n in near),
        ((step.makes, step.at),) if step.at is not None else (),
        frozenset({step.makes, *step.frm}),
    )


def _latest(steps: Sequence[Step], part: str, said: Said) -> Step | None:
    """The last step that left pieces of this part on the table."""
    for s in reversed(steps):
        if s.after is not None and s.part == part and _pieces(s, said):
            return s
    return None


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


def _pieces(step: Step, said: Said) -> list[Piece]:
    assert step.after is not None
    shown = said.shown(step.part)
    return [step.after.pieces[c] for c in shown if c in step.after.pieces]


def _paper(steps: Sequence[Step], index: int, said: Said) -> Scene:
    """Pieces side by side, with what is new on them, and what went, marked."""
    step = steps[index]
    assert step.after is not None
    pieces = _pieces(step, said)
    if step.makes in step.after.pieces and step.part in (
        "peplum",
        "skirt",
        "facing",
        "waist facing",
    ):
        pieces = [step.after.pieces[step.makes]]
    tables = (s.after for s in reversed(steps[:index]) if s.after is not None)
    table = next(tables, None)
    had = table.pieces if table else {}
    fresh = step.verb in (Verb.OUTLINE, Verb.TRACE)
    earlier = [had[c] for c in said.shown(step.part) if c in had and not fresh]
    drawn: list[Drawn] = []
    new: list[Point] = []
    for piece, m in zip(pieces, _apart(pieces), strict=True):
        was = had.get(piece.code)
        known = [was] if was else earlier
        drawn += [(hand, path.moved(m)) for hand, path in _changes(piece, was, known)]
        marks = {k.name for k in was.marks} if was else set[str]()
        new += [m(k.at) for k in piece.marks if k.name not in marks]
    return Scene(tuple(drawn), new=tuple(("", p) for p in new))


def _changes(
    piece: Piece, was: Piece | None, known: Sequence[Piece]
) -> Iterator[Drawn]:
    """The edges of a piece, new or not, and those of the old one that are gone. Where
    nothing has moved, edges that were drawn over in one line are the new ones."""
    old = [e.path for p in known for e in p.edges]
    now = [e.path for e in piece.edges]
    gone = [] if was is None else [e.path for e in was.edges if e.path not in now]
    gone = [p for p in gone if not _lies_on(p, now)]
    new = [p for p in now if not _lies_on(p, old)]
    if not new and not gone:
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


def _apart(pieces: list[Piece]) -> list[Motion]:
    """How pieces are moved side by side, so that none lies over another."""
    out, x = [], 0.0
    for p in pieces:
        left, _, right, _ = p.outline.bounds()
        out.append(shift((x - left, 0.0)))
        x += right - left + 3.0
    return out
