"""The first page's block: warnings, test squares, page map, key and notes.

It is measured before the pieces are laid, so that they keep clear of it. Lengths cm.
The squares are 10 cm and 4 in (10.16 cm), one inside the other from one corner.
"""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from clothwright.curves import Motion, Path, Point
from clothwright.finishing.drawn import DrawnPattern, Meaning
from clothwright.sheets.arrange import Arrangement
from clothwright.sheets.formats import Frame, Scale
from clothwright.sheets.ink import Ink
from clothwright.sheets.joints import THREAD
from clothwright.sheets.letters import width, wrapped
from clothwright.sheets.looks import LOOKS, Look
from clothwright.sheets.tiles import Tile

SQUARE_CM = 10.0
SQUARE_IN = 4 * 2.54
WIDEST = 30.0
"""The block is at most this wide, on large papers."""

AIR = 0.5
"""Between the parts of the block, and below it."""

FINE = Look(0.25)
HEAVY = Look(0.9)

PRINT_RIGHT = "Print at 100 %, do not fit to page."

ONE_SQUARE = "Only this page has them; print all pages alike."

JOINING = (
    "To join: pages are named by row and column, as on the map. Cut off the right and "
    "lower margins on the thin lines, lay each page on the thin lines of its "
    "neighbours so that the halves of every numbered button make a ring, and tape."
)

FAILURE_LETTERS = (0.26, 0.2, 0.16)
"""Heights of the failures' letters, the largest that fits."""

TITLE_LETTERS = (0.36, 0.32, 0.28)
"""Heights of the title, the largest that keeps it on one line."""

_ALARM = "Do not cut cloth: checks of this pattern failed"

_KEY = (
    (Meaning.CUT, "cut line"),
    (Meaning.SEW, "stitch line"),
    (Meaning.FOLD, "on the fold"),
    (Meaning.TAPE, "stay tape"),
    (Meaning.EASE, "ease in, or gather"),
    (Meaning.GRAIN, "straight grain"),
    (Meaning.NOTCH, "notch: one in front, two behind"),
    (Meaning.DRILL, "button, hook, eyelet, point of a dart"),
    (Meaning.LOOP, "loop: chalk its place"),
    (Meaning.INNER, "line for the eye, with its name"),
    (Meaning.PLACEMENT, "lay the fold of a pleat here"),
)


@dataclass(frozen=True, slots=True)
class Words:
    """A printed line."""

    text: str
    height: float
    bold: bool = False

    @property
    def step(self) -> float:
        """Foot line to foot line."""
        return self.height * 1.9


def scale_words(scale: Scale, unit: str) -> str:
    """The scale in words, with what a length on the paper stands for."""
    if scale is Scale.FULL:
        return "full scale"
    name = {Scale.HALF: "half scale", Scale.QUARTER: "quarter scale"}[scale]
    here = 4 if unit == "in" else 10
    there = f"{here / scale.value:g} {unit} of the garment"
    return f"{name}: {here} {unit} here are {there}"


def _scale_lines(scale: Scale, unit: str) -> Iterator[Words]:
    """What the block says of the scale; a smaller one loudly."""
    name, _, meant = scale_words(scale, unit).partition(": ")
    figures = f"Figures on the pieces: {_unit(unit)}"
    if not meant:
        yield Words(name.capitalize(), 0.24)
        yield Words(figures, 0.22)
        return
    yield Words(name.upper(), 0.4, bold=True)
    yield Words(meant, 0.24, bold=True)
    yield Words("The squares are 10 cm and 4 in on the paper.", 0.22)
    yield Words(f"{figures} of the full size", 0.22)


class TitleBlock:
    """The block, with its lines broken for one paper.

    `rest` holds the lines for which the first page has no room.
    """

    def __init__(
        self,
        pattern: DrawnPattern,
        frame: Frame,
        scale: Scale,
        *,
        tiled: bool,
        sizes: Mapping[str, Look] | None = None,
    ) -> None:
        """`sizes` are the looks of a nest's sizes, for its legend."""
        self.width = min(frame.live_width, WIDEST)
        self.pattern, self.scale = pattern, scale
        self.sizes = sizes or {}
        self._column = list(broken_lines(self._about(), self._column_width))
        room = frame.live_height - self._middle - 0.8 - 2 * AIR
        self._failed, self.rest = _failed_lines(pattern, self.width - 0.8, room)
        self._below: list[Words] = []
        most = frame.live_height - self._middle_foot - AIR
        across = self.width - (THREAD + AIR / 2 if tiled else 0.0)  # clear of buttons
        for words in broken_lines(_note_lines(pattern, tiled), across):
            most -= words.step
            (self._below if most > 0 and not self.rest else self.rest).append(words)

    @property
    def height(self) -> float:
        """What the pieces keep clear of."""
        return self._middle_foot + sum(w.step for w in self._below) + AIR

    @property
    def _column_width(self) -> float:
        """Beside the squares, and clear of the line at which the page is trimmed."""
        return self.width - SQUARE_IN - 1.5 * AIR

    @property
    def _square_top(self) -> float:
        if not self._failed:
            return 0.1
        return 0.8 + sum(w.step for w in self._failed) + AIR

    @property
    def _middle(self) -> float:
        """Height of the squares and the column beside them."""
        keys = 0.5 * len(self._keys())
        column = sum(w.step for w in self._column) + self._legend_height + keys + 0.3
        return max(SQUARE_IN, column) + AIR / 2

    @property
    def _middle_foot(self) -> float:
        return self._square_top + self._middle

    def draw(self, ink: Ink, x: float, y: float, laid: Arrangement) -> None:
        """Draw with the block's upper left corner at x, y of the page."""
        if self._failed:
            box = self._square_top - AIR
            ink.box(x + 0.1, y + 0.1, self.width - 0.2, box - 0.1, HEAVY)
            _lines(ink, self._failed, x + 0.4, y + 0.35)
        top = y + self._square_top
        self._squares(ink, x, top)
        if len(laid.tiles) > 1:
            draw_map(ink, laid, x + 0.5, top + 0.5, 9.0, 7.6)
        right = x + SQUARE_IN + AIR
        foot = _lines(ink, self._column, right, top)
        self._draw_legend(ink, right, foot)
        self._draw_key(ink, right, foot + self._legend_height + 0.3)
        _lines(ink, self._below, x, y + self._middle_foot)

    def _squares(self, ink: Ink, x: float, top: float) -> None:
        ink.box(x, top, SQUARE_CM, SQUARE_CM, FINE)
        ink.box(x, top, SQUARE_IN, SQUARE_IN, Look(0.25, (2, 1)))
        x += 0.3
        ink.write("Solid square: 10 cm", x, top + 8.9, 0.24, bold=True)
        ink.write("Dashed square: 4 in.", x + 5, top + 8.9, 0.24, bold=True)
        said = f"{_measure_one(self.pattern.unit)} {ONE_SQUARE}"
        ink.write(said, x, top + 9.5, 0.18)

    def _keys(self) -> list[tuple[Meaning, str]]:
        """The lines to explain; those of a nest's sizes are told in words."""
        keys = _keys(self.pattern)
        if not self.sizes:
            return keys
        own = Meaning.CUT, Meaning.SEW, Meaning.NOTCH
        return [k for k in keys if k[0] not in own]

    @property
    def _legend_height(self) -> float:
        if not self.sizes:
            return 0.0
        return 0.5 * math.ceil(len(self.sizes) / 2) + 0.7

    def _draw_legend(self, ink: Ink, x: float, y: float) -> None:
        """Two columns of sizes, each with its line, read down."""
        if not self.sizes:
            return
        ink.write("Cut lines of the sizes", x, y + 0.45, 0.24, bold=True)
        rows = math.ceil(len(self.sizes) / 2)
        half = self._column_width / 2
        for i, (name, look) in enumerate(self.sizes.items()):
            left, foot = x + half * (i // rows), y + 0.95 + 0.5 * (i % rows)
            ink.line((left, foot - 0.1), (left + 2.4, foot - 0.1), look)
            ink.write(name, left + 2.6, foot, 0.22, bold=True)

    def _draw_key(self, ink: Ink, x: float, y: float) -> None:
        for meaning, words in self._keys():
            y += 0.5
            for path in _sample(meaning, x, y - 0.1):
                ink.draw(path, LOOKS[meaning])
            ink.write(words, x + 2.7, y, 0.2)

    def _is_line(self, text: str, height: float) -> bool:
        return width(text, height, bold=True) <= self._column_width

    def _about(self) -> Iterator[Words]:
        p = self.pattern
        fits = (h for h in TITLE_LETTERS if self._is_line(p.title, h))
        yield Words(p.title, next(fits, TITLE_LETTERS[-1]), bold=True)
        yield Words(f"for {p.whose}", 0.24)
        yield from _scale_lines(self.scale, p.unit)
        yield Words(PRINT_RIGHT, 0.24, bold=True)
        yield Words(p.allowance_note, 0.22)


def _measure_one(unit: str) -> str:
    near = "1/32 in" if unit == "in" else "0.5 mm"
    return f"Measure one: within {near}."


def _unit(unit: str) -> str:
    return {"in": "inches", "cm": "centimetres"}.get(unit, unit)


def _failed_lines(
    p: DrawnPattern, across: float, room: float
) -> tuple[list[Words], list[Words]]:
    """The warning's lines, smaller when they are many, and those that do not fit."""
    if not p.failures:
        return [], []
    head = list(broken_lines((Words(_ALARM, 0.4, bold=True),), across))
    room -= sum(w.step for w in head)
    lines: list[Words] = []
    for height in FAILURE_LETTERS:
        said = (Words("✗ " + f, height, bold=True) for f in p.failures)
        lines = list(broken_lines(said, across))
        if sum(w.step for w in lines) <= room:
            return head + lines, []
    n = int(room / lines[0].step) - 1
    more = Words("More on the page of notes.", lines[0].height, bold=True)
    return [*head, *lines[:n], more], lines[n:]


def _note_lines(p: DrawnPattern, tiled: bool) -> Iterator[Words]:
    if tiled:
        yield Words(JOINING, 0.22)
    for said in p.cautions:
        yield Words("! " + said, 0.24, bold=True)
    for said in p.notes:
        yield Words("– " + said, 0.22)


def _keys(p: DrawnPattern) -> list[tuple[Meaning, str]]:
    have = {k.meaning for piece in p.pieces for k in piece.lines} | {Meaning.CUT}
    if any(piece.notches for piece in p.pieces):
        have.add(Meaning.NOTCH)
    return [(m, words) for m, words in _KEY if m in have]


def broken_lines(lines: Iterable[Words], across: float) -> Iterator[Words]:
    """The lines broken where they are too long for their paper."""
    for w in lines:
        for text in wrapped(w.text, w.height, across, bold=w.bold):
            yield Words(text, w.height, w.bold)


def _lines(ink: Ink, lines: list[Words], x: float, y: float) -> float:
    """Print lines one below the other; returns the last foot line."""
    for w in lines:
        y += w.step
        ink.write(w.text, x, y - w.height * 0.45, w.height, bold=w.bold)
    return y


def draw_rest(ink: Ink, rest: list[Words], frame: Frame, most: float) -> list[Words]:
    """Print what still fits on a page of notes; returns what does not."""
    y = 0.0
    for i, w in enumerate(rest):
        if y + w.step > most:
            _lines(ink, rest[:i], frame.left, frame.top)
            return rest[i:]
        y += w.step
    _lines(ink, rest, frame.left, frame.top)
    return []


def _sample(meaning: Meaning, x: float, y: float) -> list[Path]:
    """What a meaning looks like, in a space 2.4 wide about the level y."""
    if meaning is Meaning.TAPE:
        return [_ripple(x, y)]
    middle = Point(x + 1.2, y)
    if meaning is Meaning.NOTCH:
        bar, foot = Point(0.15, 0.0), Point(0.0, 0.12)
        return [
            Path.line(middle - foot, middle + foot),
            Path.line(middle - foot - bar, middle - foot + bar),
        ]
    if meaning is Meaning.LOOP:
        a, b = middle - Point(0.3, -0.15), middle + Point(0.3, 0.15)
        up = Point(0, -0.4)
        return [
            Path.cubic(a, a + up, b + up, b),
            Path.line(Point(x + 0.6, y + 0.15), Point(x + 1.8, y + 0.15)),
        ]
    if meaning is Meaning.DRILL:
        a, b = Point(0.15, 0.15), Point(0.15, -0.15)
        return [Path.line(middle - a, middle + a), Path.line(middle - b, middle + b)]
    line = Path.line(Point(x, y), Point(x + 2.4, y))
    if meaning is Meaning.GRAIN:
        heads = [
            Path.line(tip, tip + Point(back, side))
            for tip, back in ((line.start, 0.2), (line.end, -0.2))
            for side in (0.1, -0.1)
        ]
        return [line, *heads]
    return [line]


def _ripple(x: float, y: float) -> Path:
    parts = []
    for i in range(6):
        a, b = Point(x + 0.4 * i, y), Point(x + 0.4 * (i + 1), y)
        rise = Point(0, 0.15 if i % 2 else -0.15)
        parts.append(Path.cubic(a, a + (0.14, 0.0) + rise, b - (0.14, 0.0) + rise, b))
    return Path.of(*parts)


def tile_name(tile: Tile) -> str:
    """Row letter and column number: A1, B3; after Z comes AA."""
    row, name = tile[0] + 1, ""
    while row:
        row, k = divmod(row - 1, 26)
        name = chr(ord("A") + k) + name
    return f"{name}{tile[1] + 1}"


def draw_map(
    ink: Ink, laid: Arrangement, x: float, y: float, width: float, height: float
) -> None:
    """All pages small, with the outlines on them, in a space of `width` × `height`."""
    f = laid.frame
    columns = 1 + max(c for _, c in laid.tiles)
    rows = 1 + max(r for r, _ in laid.tiles)
    k = min(
        width / columns / f.live_width,
        height / rows / f.live_height,
        4.0 / max(f.live_width, f.live_height),
    )
    w, h = f.live_width * k, f.live_height * k
    for row, column in laid.tiles:
        ink.box(x + column * w, y + row * h, w, h, Look(0.25))
    small = Motion(k, 0.0, 0.0, k, x, y)
    for piece in laid.pieces:
        ink.draw(piece.cut_line.moved(small), Look(0.12, grey=0.4))
    letters = min(0.24, h * 0.3, w * 0.28)
    for tile in laid.tiles:
        cx, cy = x + (tile[1] + 0.5) * w, y + (tile[0] + 0.5) * h + letters / 2
        ink.write(tile_name(tile), cx, cy, letters, bold=True, middle=True)
