"""A small figure for each step: what was there in pencil, what the step does in ink,
what it does away with dashed, and the guide lines of the marks as hairs.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from html import escape
from typing import NamedTuple

from clothwright.curves import (
    Motion,
    Path,
    Point,
    distance,
    polyline,
    rotate,
    shift,
)
from clothwright.paper import Piece, Step, Verb
from clothwright.sheets.telling import mark_name

_PARTS: dict[str, tuple[str, ...]] = {
    "back": ("B", "B high", "BC", "BS"),
    "front": ("F", "strip", "FC", "FS"),
    "waist": ("FC", "FS", "F", "BS", "BC", "B"),
    "peplum": ("PF", "PB", "PFC", "PFS", "PBC", "PBS"),
    "skirt": ("PF", "PB"),
    "skirt back": ("SB",),
    "skirt front": ("SF",),
    "waistband": ("WB", "WCF", "WCB"),
    "trouser front": ("TF",),
    "trouser back": ("TB",),
    "pockets": ("TF", "TK", "TP"),
    "turn-ups": ("TF", "TB"),
    "fly": ("TF", "FY", "SH"),
    "waist facing": ("WFF", "WFB", "WFG"),
    "skirt lining": ("L.SF", "L.SB", "L.SBL", "L.SG"),
    "gore": ("SG",),
    "flounce": ("NF", "NB", "NG", "NT"),
    "godets": ("GO",),
    "tiers": ("T2", "T3", "T4"),
    "sleeve": ("SL", "SLF", "SLB", "ST", "SU", "strip F", "strip B"),
    "band": ("BA", "CU"),
    "facing": ("FF", "BF"),
    "panel behind": ("UP",),
}
WIDTH, HEIGHT = 62.0, 40.0
"""Size of a figure, mm."""

LONG, ROUND = 75.0, 8.0
"""Of a longer drawing a figure shows what its step does and so much round it, cm."""

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


_PENCIL, _INK = Hand.PENCIL.value[0], Hand.INK.value[0]

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


class _SvgPen:
    """A pen that writes path data in mm of the figure."""

    def __init__(self, at: Point, scale: float) -> None:
        self.at, self.scale, self.parts = at, scale, list[str]()

    def _p(self, pt: tuple[float, float]) -> str:
        x, y = (pt[0] - self.at[0]) * self.scale, (pt[1] - self.at[1]) * self.scale
        return f"{x:.2f} {y:.2f}"

    def moveTo(self, pt: tuple[float, float]) -> None:  # noqa: N802
        self.parts.append(f"M{self._p(pt)}")

    def lineTo(self, pt: tuple[float, float]) -> None:  # noqa: N802
        self.parts.append(f"L{self._p(pt)}")

    def curveTo(self, *points: tuple[float, float]) -> None:  # noqa: N802
        self.parts.append("C" + " ".join(self._p(p) for p in points))

    def closePath(self) -> None:  # noqa: N802
        self.parts.append("Z")

    def endPath(self) -> None:  # noqa: N802
        pass


def figure(steps: Sequence[Step], index: int) -> str:
    """The SVG of step `index`, or "" when it has nothing to show."""
    return _svg(scene(steps, index))


def scene(steps: Sequence[Step], index: int) -> Scene:
    """What step `index` shows; an empty scene when there is nothing to see."""
    step = steps[index]
    if step.after is not None:
        return _paper(steps, index)
    paper = _latest(steps[:index], step.part)
    since = 0 if paper is None else steps.index(paper) + 1
    before = [s for s in steps[since:index] if s.part == step.part and s.after is None]
    marks = {s.makes: s.at for s in steps[:index] if s.at is not None}
    drawn = [(Hand.GUIDE, p) for s in before for p in _ruled(s, marks)]
    drawn += [(Hand.PENCIL, p) for s in before for p in s.lines]
    if paper is not None and paper.after is not None:
        drawn += [(Hand.PENCIL, p.outline) for p in _pieces(paper)]
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


def _latest(steps: Sequence[Step], part: str) -> Step | None:
    """The last step that left pieces of this part on the table."""
    for s in reversed(steps):
        if s.after is not None and s.part == part and _pieces(s):
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


def _pieces(step: Step) -> list[Piece]:
    assert step.after is not None
    codes = _PARTS.get(step.part, ())
    return [step.after.pieces[c] for c in codes if c in step.after.pieces]


def _paper(steps: Sequence[Step], index: int) -> Scene:
    """Pieces side by side, with what is new on them, and what went, marked."""
    step = steps[index]
    assert step.after is not None
    pieces = _pieces(step)
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
    earlier = [had[c] for c in _PARTS.get(step.part, ()) if c in had and not fresh]
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


class _Box(NamedTuple):
    """Room that a name takes in a figure, mm."""

    left: float
    top: float
    right: float
    bottom: float


def _beside(
    x: float,
    y: float,
    name: str,
    size: float,
    taken: Sequence[_Box],
    ink: Sequence[_Box],
) -> _Box | None:
    """A place for a name beside its mark that no other name has, off the ink if there
    is one; None when all are taken or lie outside the figure."""
    wide, gap = 0.66 * size * len(name), 1.2
    found = []
    for left, bottom in (
        (x + gap, y - 0.8),
        (x - gap - wide, y - 0.8),
        (x + gap, y + size),
        (x - gap - wide, y + size),
    ):
        box = _Box(left, bottom - 0.8 * size, left + wide, bottom)
        inside = box.left >= 0 and box.right <= WIDTH and 0 <= box.top < HEIGHT
        if inside and not any(_overlap(box, t) for t in taken):
            found.append(box)
    clear = (b for b in found if not any(_overlap(b, k) for k in ink))
    return next(clear, found[0] if found else None)


def _inked(path: Path, at: Point, scale: float) -> Iterator[_Box]:
    """Small boxes along a line of the figure, mm."""
    n = max(2, round(path.length * scale))
    for i in range(n + 1):
        p = (path.at_length(path.length * i / n) - at) * scale
        yield _Box(p.x - 0.3, p.y - 0.3, p.x + 0.3, p.y + 0.3)


def _overlap(a: _Box, b: _Box) -> bool:
    return (
        a.left < b.right and b.left < a.right and a.top < b.bottom and b.top < a.bottom
    )


def _bounds(paths: Iterable[Path], marks: Iterable[Point]) -> _Box | None:
    """What lines and marks take up, cm; None for nothing."""
    boxes = [_Box(*p.bounds()) for p in paths] + [_Box(*p, *p) for p in marks]
    if not boxes:
        return None
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return _Box(min(lefts), min(tops), max(rights), max(bottoms))


def _window(seen: Scene, drawn: Sequence[Drawn]) -> _Box | None:
    """What of a scene its figure shows, cm: all; of a long piece what the step does and
    as much above and below as lets it be seen."""
    whole = _bounds((p for _, p in drawn), (p for _, p in (*seen.marks, *seen.new)))
    own = _bounds(
        (p for hand, p in drawn if hand is Hand.INK),
        (p for n, p in (*seen.marks, *seen.new) if n in seen.named or not n),
    )
    if whole is None or own is None or whole.bottom - whole.top < LONG:
        return whole
    high = max(own.bottom - own.top + 2 * ROUND, LONG / 3)
    middle = (own.top + own.bottom) / 2
    top = min(max(middle - high / 2, whole.top), max(whole.bottom - high, whole.top))
    return whole._replace(top=top, bottom=min(top + high, whole.bottom))


def _svg(seen: Scene) -> str:
    drawn = [*seen.drawn, *((Hand.INK, p) for p in seen.rulers)]
    window = _window(seen, drawn)
    if window is None:
        return ""
    w = max(window.right - window.left, 4.0)
    h = max(window.bottom - window.top, 4.0)
    scale = min((WIDTH - 14) / w, (HEIGHT - 8) / h)
    at = Point(
        (window.left + window.right) / 2 - WIDTH / 2 / scale,
        (window.top + window.bottom) / 2 - HEIGHT / 2 / scale,
    )
    out = _paths(drawn, at, scale)
    taken: list[_Box] = []
    ink = [
        box
        for hand, path in drawn
        if hand is Hand.INK
        for box in _inked(path, at, scale)
    ]
    shown = [(n, p, _INK, 0.7, 3.0) for n, p in seen.new]
    shown += [(n, p, _PENCIL, 0.35, 3.0) for n, p in seen.marks if n in seen.named]
    shown += [(n, p, _PENCIL, 0.35, 2.2) for n, p in seen.marks if n not in seen.named]
    for name, p, colour, r, size in shown:
        x, y = (p[0] - at[0]) * scale, (p[1] - at[1]) * scale
        if not 0 <= y <= HEIGHT:
            continue
        out.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{r}" fill="{colour}"/>')
        said = mark_name(name)
        box = _beside(x, y, said, size, taken, ink) if name else None
        if box is not None:
            taken.append(box)
            out.append(
                f'<text x="{box.left:.2f}" y="{box.bottom:.2f}" font-size="{size}" '
                f'fill="{colour}" font-family="DejaVu Sans">{escape(said)}</text>'
            )
    return _sheet(out, WIDTH, HEIGHT)


def svg_of_lines(drawn: Sequence[Drawn], width: float, height: float) -> str:
    """The SVG of lines alone, as large as fits in so many mm both ways."""
    boxes = [path.bounds() for _, path in drawn]
    left, top = min(b[0] for b in boxes), min(b[1] for b in boxes)
    w = max(4.0, max(b[2] for b in boxes) - left)
    h = max(4.0, max(b[3] for b in boxes) - top)
    scale = min((width - 2) / w, (height - 2) / h)
    at = Point(left - 1 / scale, top - 1 / scale)
    return _sheet(_paths(drawn, at, scale), w * scale + 2, h * scale + 2)


def _paths(drawn: Sequence[Drawn], at: Point, scale: float) -> list[str]:
    out = []
    order = (Hand.GUIDE, Hand.OLD, Hand.PENCIL, Hand.INK)
    for hand, path in sorted(drawn, key=lambda d: order.index(d[0])):
        pen = _SvgPen(at, scale)
        path.draw(pen)
        colour, width, dashes = hand.value
        dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
        out.append(
            f'<path d="{"".join(pen.parts)}" fill="none" stroke="{colour}" '
            f'stroke-width="{width}"{dashed}/>'
        )
    return out


def _sheet(parts: list[str], width: float, height: float) -> str:
    w, h = f"{width:.4g}", f"{height:.4g}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" '
        f'viewBox="0 0 {w} {h}">{"".join(parts)}</svg>'
    )
