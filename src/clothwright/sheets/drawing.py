"""A small figure for each step: earlier lines in pencil, the new one in ink."""

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from typing import NamedTuple

from clothwright.curves import Line, Motion, Path, Point, distance, shift
from clothwright.paper import Piece, Step, Verb

_PARTS: dict[str, tuple[str, ...]] = {
    "back": ("B", "B high", "BC", "BS"),
    "front": ("F", "strip", "FC", "FS"),
    "waist": ("FC", "FS", "F", "BS", "BC", "B"),
    "peplum": ("PF", "PB", "PFC", "PFS", "PBC", "PBS"),
    "sleeve": ("SL",),
    "facing": ("FF", "BF"),
    "panel behind": ("UP",),
}
WIDTH, HEIGHT = 62.0, 52.0
"""Size of a figure, mm."""

_PENCIL, _INK = "#8d8577", "#1d3a5f"


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


@dataclass(frozen=True)
class Scene:
    """What a step shows, cm on the cutter's page."""

    pencil: tuple[Path, ...] = ()
    """Lines that were there and stay."""

    gone: tuple[Path, ...] = ()
    """Lines that the step does away with."""

    ink: tuple[Path, ...] = ()
    """Lines that the step makes."""

    rulers: tuple[Path, ...] = ()
    """Where a ruler is laid to measure."""

    marks: tuple[tuple[str, Point], ...] = ()
    new: tuple[tuple[str, Point], ...] = ()
    named: frozenset[str] = frozenset()
    """Marks that the step speaks of."""


def scene(steps: Sequence[Step], index: int) -> Scene:
    """What step `index` shows; an empty scene when there is nothing to see."""
    step = steps[index]
    paper = _latest(steps[:index], step.part)
    if step.after is not None:
        return _paper(step, paper)
    since = 0 if paper is None else steps.index(paper) + 1
    before = [s for s in steps[since:index] if s.part == step.part and s.after is None]
    lines = [p for s in before for p in s.lines]
    if paper is not None and paper.after is not None:
        lines += [p.outline for p in _pieces(paper)]
    marks = {s.makes: s.at for s in steps[:index] if s.at is not None}
    near = {s.makes for s in before} | set(step.frm)
    return Scene(
        pencil=tuple(lines),
        ink=step.lines,
        rulers=tuple(_laid_off(step, marks)),
        marks=tuple((n, p) for n, p in marks.items() if n in near),
        new=((step.makes, step.at),) if step.at is not None else (),
        named=frozenset({step.makes, *step.frm}),
    )


def figure(steps: Sequence[Step], index: int) -> str:
    """The SVG of step `index`, or "" when it has nothing to show."""
    return _svg(scene(steps, index))


def _latest(steps: Sequence[Step], part: str) -> Step | None:
    """The last step that left pieces of this part on the table."""
    for s in reversed(steps):
        if s.after is not None and s.part == part and _pieces(s):
            return s
    return None


def _laid_off(step: Step, marks: dict[str, Point]) -> list[Path]:
    """The way that the ruler goes from the mark it starts at to the new one."""
    if step.at is None or not step.frm or step.frm[0] not in marks:
        return []
    a, b = marks[step.frm[0]], step.at
    if step.verb is Verb.MEASURE:
        bend = Point(b[0], a[1])
        return [
            Path((Line(p, q),))
            for p, q in ((a, bend), (bend, b))
            if distance(p, q) > 0.05
        ]
    if step.verb is Verb.ALONG and distance(a, b) > 0.05:
        return [Path((Line(a, b),))]
    return []


def _pieces(step: Step) -> list[Piece]:
    assert step.after is not None
    codes = _PARTS.get(step.part, ())
    return [step.after.pieces[c] for c in codes if c in step.after.pieces]


def _paper(step: Step, paper: Step | None) -> Scene:
    """The pieces after a step: edges that are as before in pencil, others in ink, and
    what an edge was before."""
    assert step.after is not None
    pieces = _pieces(step)
    if step.makes in step.after.pieces and step.part in ("peplum", "facing"):
        pieces = [step.after.pieces[step.makes]]
    had = {p.code: p for p in _pieces(paper)} if paper is not None else {}
    old = {e.path for p in had.values() for e in p.edges}
    pencil: list[Path] = []
    ink: list[Path] = []
    gone: list[Path] = []
    for piece, way in zip(pieces, _apart(pieces), strict=True):
        for e in piece.edges:
            (pencil if e.path in old else ink).append(e.path.moved(way))
        now = {e.path for e in piece.edges}
        if piece.code in had:
            before = had[piece.code].edges
            gone += (e.path.moved(way) for e in before if e.path not in now)
    return Scene(pencil=tuple(pencil), gone=tuple(gone), ink=tuple(ink))


def _apart(pieces: list[Piece]) -> list[Motion]:
    """Motions that lay pieces side by side, so that none lies over another."""
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
    x: float, y: float, name: str, size: float, taken: Sequence[_Box]
) -> _Box | None:
    """A place for a name beside its mark that no other name has; None when all are
    taken or lie outside the figure."""
    wide, gap = 0.66 * size * len(name), 1.2
    for left, bottom in (
        (x + gap, y - 0.8),
        (x - gap - wide, y - 0.8),
        (x + gap, y + size),
        (x - gap - wide, y + size),
    ):
        box = _Box(left, bottom - 0.8 * size, left + wide, bottom)
        inside = box.left >= 0 and box.right <= WIDTH and 0 <= box.top < HEIGHT
        if inside and not any(_overlap(box, t) for t in taken):
            return box
    return None


def _overlap(a: _Box, b: _Box) -> bool:
    return (
        a.left < b.right and b.left < a.right and a.top < b.bottom and b.top < a.bottom
    )


def _svg(seen: Scene) -> str:
    xs, ys = [], []
    lines = (
        (seen.pencil, _PENCIL, 0.25, ""),
        (seen.gone, _PENCIL, 0.25, ' stroke-dasharray="1 1"'),
        (seen.rulers, _INK, 0.25, ""),
        (seen.ink, _INK, 0.5, ""),
    )
    for path in (p for paths, *_ in lines for p in paths):
        left, top, right, bottom = path.bounds()
        xs += [left, right]
        ys += [top, bottom]
    for _, p in (*seen.marks, *seen.new):
        xs.append(p[0])
        ys.append(p[1])
    if not xs:
        return ""
    w, h = max(max(xs) - min(xs), 4.0), max(max(ys) - min(ys), 4.0)
    scale = min((WIDTH - 14) / w, (HEIGHT - 10) / h)
    at = Point(
        (min(xs) + max(xs)) / 2 - WIDTH / 2 / scale,
        (min(ys) + max(ys)) / 2 - HEIGHT / 2 / scale,
    )
    out = []
    for paths, colour, width, dashes in lines:
        for path in paths:
            pen = _SvgPen(at, scale)
            path.draw(pen)
            out.append(
                f'<path d="{"".join(pen.parts)}" fill="none" stroke="{colour}" '
                f'stroke-width="{width}"{dashes}/>'
            )
    taken: list[_Box] = []
    shown = [(n, p, _INK, 0.7, 3.0) for n, p in seen.new]
    shown += [(n, p, _PENCIL, 0.35, 3.0) for n, p in seen.marks if n in seen.named]
    shown += [(n, p, _PENCIL, 0.35, 2.2) for n, p in seen.marks if n not in seen.named]
    for name, p, colour, r, size in shown:
        x, y = (p[0] - at[0]) * scale, (p[1] - at[1]) * scale
        out.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{r}" fill="{colour}"/>')
        box = _beside(x, y, name, size, taken)
        if box is not None:
            taken.append(box)
            out.append(
                f'<text x="{box.left:.2f}" y="{box.bottom:.2f}" font-size="{size}" '
                f'fill="{colour}" font-family="DejaVu Sans">{escape(name)}</text>'
            )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}mm" '
        f'height="{HEIGHT}mm" viewBox="0 0 {WIDTH} {HEIGHT}">{"".join(out)}</svg>'
    )
