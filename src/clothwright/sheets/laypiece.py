"""A piece on a lay plan: its outline, its name where there is room for it, its grain.

All coordinates are cm on the page.
"""

from collections.abc import Sequence

from clothwright.curves import Point, polyline
from clothwright.sheets.ink import Ink
from clothwright.sheets.letters import width
from clothwright.sheets.looks import Look

OUTLINE = Look(0.3)
ARROW = Look(0.25)

NAMES = (0.24, 0.21, 0.18, 0.15, 0.13)
"""Heights of a piece's name, the largest that fits."""

ABOVE = 0.16
"""The grain stands so far above the name, cm."""


def draw_piece(
    ink: Ink,
    points: Sequence[Point],
    middle: Point,
    name: str,
    code: str,
    how: str,
    *,
    turned: bool,
    one_way: bool,
) -> bool:
    """An outline with its name, what is cut of it (`how`) and its grain near `middle`;
    the code alone, and False, where the name finds no room. With a nap (`one_way`) the
    grain has one head, to the right unless the piece is `turned`."""
    ink.draw(polyline([*points, points[0]]), OUTLINE)
    words, told = name.split(), [how] if how else []
    half = len(words) // 2
    broken = [t for t in (" ".join(words[:half]), " ".join(words[half:])) if t]
    for height in NAMES:
        for lines in ([name], broken):
            room = _room(points, middle, [*lines, *told], height)
            if room is not None:
                _write(ink, room, middle, lines, told, height)
                _grain(ink, room, middle, [*lines, *told], height, turned, one_way)
                return True
    room = middle.x - 0.4, middle.x + 0.4
    _write(ink, room, middle, [code], [], NAMES[-1])
    _grain(ink, room, middle, [code], NAMES[-1], turned, one_way)
    return False


def draw_arrow(ink: Ink, a: Point, b: Point, *, both: bool) -> None:
    """A level arrow from `a` to `b`, with a head at both ends or at `b`."""
    ink.line(a, b, ARROW)
    for start, tip in ((a, b), (b, a)) if both else ((a, b),):
        k = 0.22 if tip.x > start.x else -0.22
        low, high = Point(tip.x - k, tip.y - 0.06), Point(tip.x - k, tip.y + 0.06)
        ink.draw(polyline([tip, low, high, tip]), Look(0.1), solid=True)


def _top(middle: Point, count: int, height: float) -> float:
    """Upper edge of so many lines about a middle, their grain above them."""
    return middle.y - (height * 1.6 * (count - 1) - ABOVE) / 2


def _room(
    points: Sequence[Point], middle: Point, lines: Sequence[str], height: float
) -> tuple[float, float] | None:
    """From where to where the outline is open beside the lines; None when they are
    wider than that."""
    top = _top(middle, len(lines), height)
    levels = [top - ABOVE, top]
    levels += [top + i * height * 1.6 + height for i in range(len(lines))]
    chords = [_chord(points, middle.x, y) for y in levels]
    left, right = max(a for a, _ in chords), min(b for _, b in chords)
    widest = max(width(t, height, bold=True) for t in lines)
    return (left, right) if widest + 0.16 <= right - left else None


def _write(
    ink: Ink,
    room: tuple[float, float],
    middle: Point,
    lines: Sequence[str],
    told: Sequence[str],
    height: float,
) -> None:
    top = _top(middle, len(lines) + len(told), height)
    for i, text in enumerate((*lines, *told)):
        y = top + i * height * 1.6 + height
        bold = i < len(lines)
        ink.write(text, sum(room) / 2, y, height, bold=bold, middle=True)


def _grain(
    ink: Ink,
    room: tuple[float, float],
    middle: Point,
    lines: Sequence[str],
    height: float,
    turned: bool,
    one_way: bool,
) -> None:
    """The grain above the words, about as wide as they are."""
    x, y = sum(room) / 2, _top(middle, len(lines), height) - ABOVE
    widest = max(width(t, height, bold=True) for t in lines)
    half = min((room[1] - room[0]) / 2 - 0.08, max(widest / 2, 0.9))
    a, b = Point(x - half, y), Point(x + half, y)
    if turned:
        a, b = b, a
    draw_arrow(ink, a, b, both=not one_way)


def _chord(points: Sequence[Point], x: float, y: float) -> tuple[float, float]:
    """From where to where an outline is wide open round a place, on its level."""
    left, right = float("-inf"), float("inf")
    for a, b in zip(points, (*points[1:], points[0]), strict=True):
        if (a.y > y) == (b.y > y):
            continue
        at = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x)
        if at <= x:
            left = max(left, at)
        else:
            right = min(right, at)
    if left == float("-inf") or right == float("inf"):
        return x, x
    return left, right
