"""Figures of steps as SVG: small for the drafting sheet, large for the lesson."""

from collections.abc import Iterable, Iterator, Sequence
from html import escape
from typing import NamedTuple

from clothwright.curves import Path, Point
from clothwright.features.said import Said
from clothwright.paper import Step
from clothwright.sheets.drawing import Drawn, Hand, Scene, scene
from clothwright.sheets.telling import mark_name


class Frame(NamedTuple):
    """Size of a figure, mm."""

    width: float
    height: float
    scale: float = 0.0
    """Millimetres for a centimetre of paper; 0 fills the frame."""

    letters: float = 3.0
    """Height of the names of marks."""


SMALL = Frame(62.0, 40.0)
"""The figure of a step on the drafting sheet."""

LONG, ROUND = 75.0, 8.0
"""Of a longer drawing a figure shows what its step does and so much round it, cm."""

_PENCIL, _INK = Hand.PENCIL.value[0], Hand.INK.value[0]


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


def figure(steps: Sequence[Step], index: int, said: Said, frame: Frame = SMALL) -> str:
    """The SVG of step `index`, or "" when it has nothing to show."""
    return _svg(scene(steps, index, said), frame)


def room_of(seen: Scene) -> tuple[float, float] | None:
    """Width and height that a scene takes up, cm; None for an empty one."""
    drawn = [*seen.drawn, *((Hand.INK, p) for p in seen.rulers)]
    box = _window(seen, drawn)
    return None if box is None else (box.right - box.left, box.bottom - box.top)


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
    frame: Frame,
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
        inside = box.left >= 0 and box.right <= frame.width
        inside = inside and 0 <= box.top < frame.height
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


def _whole(seen: Scene, drawn: Sequence[Drawn]) -> _Box | None:
    return _bounds((p for _, p in drawn), (p for _, p in (*seen.marks, *seen.new)))


def _window(seen: Scene, drawn: Sequence[Drawn]) -> _Box | None:
    """What of a scene its figure shows, cm: all; of a long piece what the step does and
    as much above and below as lets it be seen."""
    whole = _whole(seen, drawn)
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


def _svg(seen: Scene, frame: Frame) -> str:
    drawn = [*seen.drawn, *((Hand.INK, p) for p in seen.rulers)]
    window = _window(seen, drawn)
    if window is None:
        return ""
    w = max(window.right - window.left, 4.0)
    h = max(window.bottom - window.top, 4.0)
    scale = frame.scale or min((frame.width - 14) / w, (frame.height - 8) / h)
    at = Point(
        (window.left + window.right) / 2 - frame.width / 2 / scale,
        (window.top + window.bottom) / 2 - frame.height / 2 / scale,
    )
    out = _paths(drawn, at, scale)
    taken: list[_Box] = []
    ink = [
        box
        for hand, path in drawn
        if hand is Hand.INK
        for box in _inked(path, at, scale)
    ]
    large, small = frame.letters, 0.73 * frame.letters
    shown = [(n, p, _INK, 0.7, large) for n, p in seen.new]
    shown += [(n, p, _PENCIL, 0.35, large) for n, p in seen.marks if n in seen.named]
    shown += [
        (n, p, _PENCIL, 0.35, small) for n, p in seen.marks if n not in seen.named
    ]
    for name, p, colour, r, size in shown:
        x, y = (p[0] - at[0]) * scale, (p[1] - at[1]) * scale
        if not 0 <= y <= frame.height:
            continue
        out.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{r}" fill="{colour}"/>')
        said = mark_name(name)
        box = _beside(x, y, said, size, taken, ink, frame) if name else None
        if box is not None:
            taken.append(box)
            out.append(
                f'<text x="{box.left:.2f}" y="{box.bottom:.2f}" font-size="{size}" '
                f'fill="{colour}" font-family="DejaVu Sans">{escape(said)}</text>'
            )
    return _sheet(out, frame.width, frame.height)


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
