"""Figures of steps as SVG: small for the drafting sheet, large for the lesson.

A figure shows what its step does and so much round it as lets it be seen; where that
is a corner of the draft, a small key beside it shows the whole, the corner framed.
"""

from collections.abc import Iterable, Sequence
from html import escape
from typing import NamedTuple

from clothwright.curves import Path, Point
from clothwright.features.said import Said
from clothwright.paper import Step
from clothwright.sheets.drawing import Drawn, Hand, Scene, scene
from clothwright.sheets.names import Box, Names
from clothwright.sheets.telling import mark_name


class Frame(NamedTuple):
    """Size of a figure, mm."""

    width: float
    height: float
    scale: float = 0.0
    """Millimetres for a centimetre of paper; 0 fills the frame."""

    letters: float = 3.0
    """Height of the names of marks."""


SMALL = Frame(62.0, 38.0)
"""The figure of a step on the drafting sheet."""

_ROUND, _LEAST = 0.45, 2.5
"""Round what its step does a figure shows so much: the first a share of that, the
second cm."""

_POINT = 0.2
"""A step that does no more than make one mark is shown with the whole, to find it by,
cm."""

_NEARER = 1.5
"""The whole is shown where that is not drawn so much smaller."""

KEY = 13.0
"""Width and height of the key, mm, at the most."""

_PENCIL, _INK = Hand.PENCIL.value[0], Hand.INK.value[0]


class _SvgPen:
    """A pen that writes path data in mm of the figure."""

    def __init__(self, at: Point, scale: float) -> None:
        self.at, self.scale, self.parts = at, scale, list[str]()

    def _p(self, pt: tuple[float, float]) -> str:
        x, y = (pt[0] - self.at[0]) * self.scale, (pt[1] - self.at[1]) * self.scale
        return f"{x:.2f} {y:.2f}"

    def moveTo(self, pt: tuple[float, float]) -> None:
        self.parts.append(f"M{self._p(pt)}")

    def lineTo(self, pt: tuple[float, float]) -> None:
        self.parts.append(f"L{self._p(pt)}")

    def curveTo(self, *points: tuple[float, float]) -> None:
        self.parts.append("C" + " ".join(self._p(p) for p in points))

    def closePath(self) -> None:
        self.parts.append("Z")

    def endPath(self) -> None:
        pass


def figure(steps: Sequence[Step], index: int, said: Said, frame: Frame = SMALL) -> str:
    """The SVG of step `index`, or "" when it has nothing to show."""
    return svg_of(scene(steps, index, said), frame)


class Views(NamedTuple):
    """Parts of a scene that a figure may show, cm."""

    whole: Box
    near: Box
    """What the step does, and what is round it."""


def views(seen: Scene) -> Views | None:
    """What a figure of a scene may show; None for an empty one."""
    drawn = _drawn(seen)
    marks = (*seen.marks, *seen.new)
    whole = _bounds((p for _, p in drawn), (p for _, p in marks))
    if whole is None:
        return None
    own = _bounds(
        (p for hand, p in drawn if hand in (Hand.INK, Hand.OLD)),
        (p for n, p in marks if n in seen.named or not n),
    )
    alone = own is None or max(own.right - own.left, own.bottom - own.top) < _POINT
    return Views(whole, whole if own is None or alone else _round(own, whole))


def _round(own: Box, whole: Box) -> Box:
    """What lies round a part of the whole."""
    more = max(_LEAST, _ROUND * max(own.right - own.left, own.bottom - own.top))
    return Box(
        max(own.left - more, whole.left),
        max(own.top - more, whole.top),
        min(own.right + more, whole.right),
        min(own.bottom + more, whole.bottom),
    )


def _drawn(seen: Scene) -> list[Drawn]:
    return [*seen.drawn, *((Hand.INK, p) for p in seen.rulers)]


def _bounds(paths: Iterable[Path], marks: Iterable[Point]) -> Box | None:
    """What lines and marks take up, cm; None for nothing."""
    boxes = [Box(*p.bounds()) for p in paths] + [Box(*p, *p) for p in marks]
    if not boxes:
        return None
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return Box(min(lefts), min(tops), max(rights), max(bottoms))


_SIDES, _ENDS = 14.0, 8.0
"""Of a frame, what is left beside and above the drawing for names, mm."""


def _fills(box: Box, frame: Frame) -> float:
    """Millimetres for a centimetre at which a part fills a frame."""
    w, h = max(box.right - box.left, 4.0), max(box.bottom - box.top, 4.0)
    return min((frame.width - _SIDES) / w, (frame.height - _ENDS) / h)


def svg_of(seen: Scene, frame: Frame) -> str:
    """The SVG of a scene, or "" when it shows nothing."""
    found = views(seen)
    if found is None:
        return ""
    whole, box = found
    beside = frame._replace(width=frame.width - KEY)
    keyed = not frame.scale and _fills(box, beside) > _NEARER * _fills(whole, frame)
    if frame.scale:
        w, h = (frame.width / frame.scale, frame.height / frame.scale)
        fits = whole.right - whole.left < w and whole.bottom - whole.top < h
        box, keyed = (whole, False) if fits else (box, True)
    elif not keyed:
        box = whole
    scale = frame.scale or _fills(box, beside if keyed else frame)
    left = KEY if keyed else 0.0
    at = Point(
        (box.left + box.right) / 2 - (frame.width + left) / 2 / scale,
        (box.top + box.bottom) / 2 - frame.height / 2 / scale,
    )
    drawn = _drawn(seen)
    room = Box(left, 0.0, frame.width, frame.height)
    out = _paths(drawn, at, scale)
    out += _named(seen, drawn, at, scale, frame, room)
    if keyed:
        x, y, w, h = left, 0.0, frame.width - left, frame.height
        clip = f'<clipPath id="w"><rect x="{x}" y="{y}" width="{w}" height="{h}"/>'
        out = [f"{clip}</clipPath>", '<g clip-path="url(#w)">', *out, "</g>"]
        shown = Box(*(_back(room, at, scale)))
        out += _key(drawn, whole, shown, frame)
    return _sheet(out, frame.width, frame.height)


def _back(room: Box, at: Point, scale: float) -> Iterable[float]:
    """A part of the figure, mm, in cm of the paper."""
    for i, mm in enumerate(room):
        yield mm / scale + at[i % 2]


def _named(
    seen: Scene,
    drawn: Sequence[Drawn],
    at: Point,
    scale: float,
    frame: Frame,
    room: Box,
) -> list[str]:
    """The marks, and beside them their names."""
    out: list[str] = []
    names = Names(room)
    for hand, path in drawn:
        if hand is not Hand.GUIDE:
            names.lines(path, at, scale, ink=hand is Hand.INK)
    large, small = frame.letters, 0.73 * frame.letters
    shown = [(n, p, _INK, 0.7, large) for n, p in seen.new]
    shown += [(n, p, _PENCIL, 0.35, large) for n, p in seen.marks if n in seen.named]
    shown += [
        (n, p, _PENCIL, 0.35, small) for n, p in seen.marks if n not in seen.named
    ]
    for name, p, colour, r, size in shown:
        x, y = (p[0] - at[0]) * scale, (p[1] - at[1]) * scale
        if not (room.left <= x <= room.right and room.top <= y <= room.bottom):
            continue
        out.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{r}" fill="{colour}"/>')
        if not name:
            continue
        said = mark_name(name)
        found = names.place(Point(x, y), said, size, must=size == large)
        if found is None:
            continue
        box, led = found
        if led is not None:
            out.append(
                f'<path d="M{x:.2f} {y:.2f}L{led.x:.2f} {led.y:.2f}" fill="none" '
                f'stroke="{colour}" stroke-width="0.12"/>'
            )
        out.append(
            f'<text x="{box.left:.2f}" y="{box.bottom:.2f}" font-size="{size}" '
            f'fill="{colour}" font-family="DejaVu Sans">{escape(said)}</text>'
        )
    return out


def _key(drawn: Sequence[Drawn], whole: Box, shown: Box, frame: Frame) -> list[str]:
    """The whole, small, in the upper left corner, and a frame round what is shown."""
    w, h = max(whole.right - whole.left, 4.0), max(whole.bottom - whole.top, 4.0)
    scale = min((KEY - 3.0) / w, frame.height / 2 / h)
    at = Point(whole.left - 1.0 / scale, whole.top - 1.0 / scale)
    faint = [(Hand.GUIDE, path) for _, path in drawn]
    left = max(shown.left, whole.left)
    top = max(shown.top, whole.top)
    right = min(shown.right, whole.right)
    bottom = min(shown.bottom, whole.bottom)
    x, y = (left - at.x) * scale, (top - at.y) * scale
    return [
        *_paths(faint, at, scale),
        f'<rect x="{x:.2f}" y="{y:.2f}" width="{(right - left) * scale:.2f}" '
        f'height="{(bottom - top) * scale:.2f}" fill="none" stroke="{_PENCIL}" '
        'stroke-width="0.25"/>',
    ]


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
