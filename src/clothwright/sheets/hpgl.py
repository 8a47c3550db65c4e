"""The pattern for a plotter: the part of HP-GL that every plotter knows.

Units of 0.025 mm, whole numbers, absolute, x along the roll and y up across it. Pen 1
draws cut lines, pen 2 everything else; dashes are drawn stroke by stroke. For old
plotters, whose numbers end at 32,767 (819 mm), the plot is divided into frames of at
most 800 mm with 10 mm in common, crosses to lay one on the next and "2 of 5".
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path as FilePath

from clothwright.curves import Point, mix, shift
from clothwright.finishing.drawn import DrawnPattern, DrawnPiece, DrawnText, Meaning
from clothwright.sheets.arrange import arrange
from clothwright.sheets.formats import (
    MARGIN,
    ROLL_WIDTH,
    Frame,
    PageFormat,
    Scale,
    frame_of,
)
from clothwright.sheets.looks import box_path, moved, scaled, strokes
from clothwright.sheets.plain import plain
from clothwright.sheets.write import SheetError, write_file

UNITS = 400
"""Plotter units in a centimetre."""

FLAT = 0.002
"""How far a chord strays from its curve, cm; under one unit."""

CHAIN = 900
"""Longest instruction, characters."""

FRAME, COMMON = 80.0, 1.0
"""Length of a frame and what it shares with the next, cm."""

REACH = 32767 / UNITS
"""How far an old plotter's numbers go, cm (81.9)."""

HEAD = 12.0
"""Paper kept for the title and the test square, cm."""

ETX = "\x03"

Chain = list[Point]


@dataclass(frozen=True)
class _Label:
    """Words: `at` is the middle, in plot cm; `degrees` anticlockwise from x."""

    text: str
    at: Point
    height: float
    degrees: float


def write_hpgl(
    pattern: DrawnPattern,
    target: FilePath,
    *,
    scale: Scale = Scale.FULL,
    roll_width: float = ROLL_WIDTH,
    frames: bool = False,
    dimensions: bool = True,
) -> None:
    """Write the pattern as one plot for a roll of a width (cm).

    `frames` divides it for old plotters. Raises SheetError when a piece is wider than
    the roll, the roll is out of reach or the file cannot be written.
    """
    text = hpgl_of(
        pattern,
        scale=scale,
        roll_width=roll_width,
        frames=frames,
        dimensions=dimensions,
    )
    write_file(target, text.encode("ascii"))


def roll_frame(roll_width: float, *, frames: bool) -> Frame:
    """The roll as a page. Raises SheetError when it is impossible, or wider than the
    numbers of an old plotter reach."""
    try:
        frame = frame_of(PageFormat.ROLL, roll_width)
    except ValueError as e:
        raise SheetError(str(e)) from e
    if frames and frame.live_width > REACH:
        most = math.floor((REACH + 2 * MARGIN) * 10) / 10
        raise SheetError(
            f"Roll width: {roll_width:g} cm is more than an old plotter reaches; "
            f"take a roll of at most {most:g} cm or plot without frames."
        )
    return frame


def hpgl_of(
    pattern: DrawnPattern,
    *,
    scale: Scale = Scale.FULL,
    roll_width: float = ROLL_WIDTH,
    frames: bool = False,
    dimensions: bool = True,
) -> str:
    """The plot as text."""
    frame = roll_frame(roll_width, frames=frames)
    laid = arrange(
        [scaled(p, scale.value) for p in pattern.pieces],
        frame,
        whole=True,
        keep_clear=(frame.live_width, HEAD),
    )
    if laid.joined:
        raise SheetError(
            f"{_too_large(pattern.pieces, scale, frame.live_width)} does not fit on a "
            f"roll of {roll_width:g} cm; take a wider roll."
        )
    cuts, others, labels = _square(), [], list(_title(pattern, scale))
    for piece in _closed_up(laid.pieces, frame.live_height):
        for stroke in strokes(piece, figure=scale.value):
            if stroke.meaning is Meaning.DIMENSION and not dimensions:
                continue
            chain = [Point(p.y, p.x) for p in stroke.path.flatten(FLAT)]
            if stroke.meaning is Meaning.CUT:
                cuts.append(chain)
            else:
                others.extend(_dashed(chain, [d / 10 for d in stroke.look.dashes]))
        labels.extend(
            _label(t)
            for t in piece.texts
            if dimensions or t.meaning is not Meaning.DIMENSION
        )
    out = ["IN;", "PA;", "LT;"]
    if frames:
        out.extend(_framed(cuts, others, labels, frame.live_width))
    else:
        out.extend(_plot(cuts, others, labels))
    out.append("PU;SP0;")
    return "\n".join(out) + "\n"


def _too_large(pieces: Iterable[DrawnPiece], scale: Scale, width: float) -> str:
    for piece in pieces:
        left, top, right, foot = piece.cut_line.bounds()
        if min(right - left, foot - top) * scale.value > width:
            return piece.name
    return "A piece"


def _closed_up(pieces: tuple[DrawnPiece, ...], length: float) -> Iterator[DrawnPiece]:
    """Pieces laid on pages of a length, moved up so that no paper lies between."""
    pages: dict[int, list[DrawnPiece]] = {}
    for piece in pieces:
        pages.setdefault(int(piece.cut_line.bounds()[1] // length), []).append(piece)
    end = 0.0
    for number, here in sorted(pages.items()):
        up = end - number * length
        for piece in here:
            yield moved(piece, shift((0.0, up))) if number else piece
        end = 1.0 + up + max(p.cut_line.bounds()[3] for p in here)


def _square() -> list[Chain]:
    """The test square of 100 mm at the start of the roll."""
    return [[Point(p.y, p.x) for p in box_path(0, 0, 10, 10).flatten(FLAT)]]


def _title(pattern: DrawnPattern, scale: Scale) -> Iterator[_Label]:
    said = [f"CHECK FAILED: {f}" for f in pattern.failures]
    said += [
        pattern.title,
        pattern.whose,
        f"scale 1:{1 / scale.value:g}, the square is 100 mm",
        *pattern.cautions,
        *pattern.notes,
    ]
    for i, text in enumerate(said[:14]):
        words = plain(text)[:120]
        half = len(words) * 0.4 * 0.9 / 2
        yield _Label(words, Point(0.6 + 0.75 * i, 11 + half), 0.4, 90.0)


def _label(t: DrawnText) -> _Label:
    """Page (x, y down) to plot (y, x up): a quarter turn, never a mirror."""
    return _Label(plain(t.text), Point(t.at.y, t.at.x), t.height, 90.0 - t.degrees)


def _dashed(chain: Chain, dashes: list[float]) -> list[Chain]:
    """A chain broken into dashes; lengths cm."""
    if not dashes:
        return [chain]
    out: list[Chain] = []
    kind, left = 0, dashes[0]
    now: Chain = [chain[0]]
    for a, b in zip(chain, chain[1:], strict=False):
        whole = math.dist(a, b)
        done = 0.0
        while whole - done > left:
            done += left
            p = mix(a, b, done / whole)
            if kind % 2 == 0:
                out.append([*now, p])
            now = [p]
            kind = (kind + 1) % len(dashes)
            left = dashes[kind]
        left -= whole - done
        now.append(b)
    if kind % 2 == 0 and len(now) > 1:
        out.append(now)
    return out


def _plot(
    cuts: list[Chain], others: list[Chain], labels: list[_Label]
) -> Iterator[str]:
    """Pen 2 first, so that the paper is whole while it writes; then pen 1."""
    yield "SP2;"
    for chain in others:
        yield from _line(chain)
    for label in labels:
        yield from _words(label)
    yield "SP1;"
    for chain in cuts:
        yield from _line(chain)


def _line(chain: Chain) -> Iterator[str]:
    points = [(round(x * UNITS), round(y * UNITS)) for x, y in chain]
    said = f"PU{points[0][0]},{points[0][1]};PD"
    last = points[0]
    first = True
    for p in points[1:]:
        if p == last:
            continue
        word = f"{p[0]},{p[1]}" if first else f",{p[0]},{p[1]}"
        if len(said) + len(word) > CHAIN:
            yield said + ";"
            said, word = "PD", f"{p[0]},{p[1]}"
        said += word
        first, last = False, p
    if not first:
        yield said + ";"


def _words(label: _Label) -> Iterator[str]:
    """A label from its middle; plotters space letters by 1.5 times their width."""
    wide = label.height * 0.6
    a = math.radians(label.degrees)
    run = Point(math.cos(a), math.sin(a))
    rise = Point(-run.y, run.x)
    half = len(label.text) * wide * 1.5 / 2
    at = label.at - run * half - rise * (label.height / 2)
    x, y = max(0, round(at.x * UNITS)), max(0, round(at.y * UNITS))
    size = f"SI{wide:.3f},{label.height:.3f};DI{run.x:.4f},{run.y:.4f};"
    yield f"PU{x},{y};{size}LB{label.text}{ETX}"


def _framed(
    cuts: list[Chain], others: list[Chain], labels: list[_Label], width: float
) -> Iterator[str]:
    far = max((p.x for chain in (*cuts, *others) for p in chain), default=0.0)
    step = FRAME - COMMON
    count = max(1, math.ceil((far - COMMON) / step))
    for i in range(count):
        left = i * step
        if i:
            yield "PU;FR;"
        cut = [c for chain in cuts for c in _clipped(chain, left)]
        other = [c for chain in others for c in _clipped(chain, left)]
        for x in (0.5, FRAME - 0.5):
            other.extend(_cross(x, 0.5))
            other.extend(_cross(x, width - 0.5))
        here = [
            replace(t, at=t.at - (left, 0.0))
            for t in labels
            if left <= t.at.x < left + step
        ]
        here.append(_Label(f"{i + 1} of {count}", Point(2.5, 2.5), 0.4, 90.0))
        yield from _plot(cut, other, here)


def _cross(x: float, y: float) -> list[Chain]:
    return [
        [Point(x - 0.4, y), Point(x + 0.4, y)],
        [Point(x, y - 0.4), Point(x, y + 0.4)],
    ]


def _clipped(chain: Chain, left: float) -> Iterator[Chain]:
    """The parts of a chain between `left` and one frame on, from x = 0."""
    right = left + FRAME
    now: Chain = []
    for a, b in zip(chain, chain[1:], strict=False):
        t0, t1 = 0.0, 1.0
        dx = b.x - a.x
        for edge, inside in ((left, 1), (right, -1)):
            da, db = (a.x - edge) * inside, (b.x - edge) * inside
            if da < 0 and db < 0:
                t0 = 2.0
            elif da < 0:
                t0 = max(t0, (edge - a.x) / dx)
            elif db < 0:
                t1 = min(t1, (edge - a.x) / dx)
        if t0 > t1:
            if len(now) > 1:
                yield now
            now = []
            continue
        p, q = mix(a, b, t0) - (left, 0.0), mix(a, b, t1) - (left, 0.0)
        if not now or t0 > 0:
            if len(now) > 1:
                yield now
            now = [p]
        now.append(q)
    if len(now) > 1:
        yield now
