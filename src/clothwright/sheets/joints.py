"""How tiles are joined: trim lines and buttons.

Where two pages meet, half of a button is printed on each: a ring about the trim line
with the joint's number in both halves and a thread on either side. Laid rightly, the
buttons are whole. Our own design. Lengths cm.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from clothwright.curves import Motion, Point
from clothwright.finishing.boxes import Obstacles, text_box
from clothwright.finishing.drawn import DrawnPiece
from clothwright.finishing.lettering import lettered
from clothwright.sheets.arrange import Arrangement
from clothwright.sheets.ink import Ink
from clothwright.sheets.looks import Look, moved
from clothwright.sheets.tiles import Tile

RADIUS = 0.55
THREAD = 1.0
"""How far the thread reaches from the trim line."""

LETTERS = 0.19
"""Height of a joint's number."""

_LINE = Look(0.2)


def joints(laid: Arrangement) -> list[tuple[Tile, Tile]]:
    """Pairs of pages that meet, in printing order: a joint's number is its place."""
    have = set(laid.tiles)
    return [
        (tile, other)
        for tile in laid.tiles
        for other in ((tile[0], tile[1] + 1), (tile[0] + 1, tile[1]))
        if other in have
    ]


def clear_of_joints(
    laid: Arrangement, drafted: Sequence[DrawnPiece], scale: float
) -> Arrangement:
    """The same pages, words moved off the trim lines and buttons where the piece
    leaves another place. `drafted` are the pieces as they were before `scale`."""
    chains = list(_chains(laid))
    there = Obstacles()
    for chain in chains:
        there.add(chain)
    out = []
    grown = Motion(scale, 0.0, 0.0, scale)
    for piece, draft, m in zip(laid.pieces, drafted, laid.motions, strict=True):
        if any(there.hit(text_box(t)) for t in piece.texts):
            motion = m @ grown
            back = motion.inverse()
            box = piece.cut_line.bounds()
            joins = [[back(p) for p in c] for c in chains if _near(c, box)]
            again = lettered(draft, joins, scale)
            piece = moved(again, motion, letters=scale)
        out.append(piece)
    return replace(laid, pieces=tuple(out))


def _near(chain: Sequence[Point], box: tuple[float, float, float, float]) -> bool:
    """True when a chain's own box meets another box."""
    xs, ys = [p.x for p in chain], [p.y for p in chain]
    left, top, right, foot = box
    return min(xs) < right and max(xs) > left and min(ys) < foot and max(ys) > top


def _chains(laid: Arrangement) -> Iterator[list[Point]]:
    """The trim lines at which pages meet and the rings and threads on them."""
    f = laid.frame
    for a, b in joints(laid):
        corner = laid.origin(b)
        upright = a[0] == b[0]
        run = Point(0, f.live_height) if upright else Point(f.live_width, 0)
        yield [corner, corner + run]
        middle = corner + run * 0.5
        out = Point(THREAD, 0) if upright else Point(0, THREAD)
        yield [middle - out, middle + out]
        r = RADIUS
        ring = [(-r, -r), (r, -r), (r, r), (-r, r), (-r, -r)]
        yield [middle + p for p in ring]


def draw_trim(ink: Ink, laid: Arrangement, tile: Tile) -> None:
    """Thin lines along the edges at which this page meets others."""
    f = laid.frame
    right, foot = f.left + f.live_width, f.top + f.live_height
    edges = {
        (0, 1): ((right, f.top), (right, foot)),
        (0, -1): ((f.left, f.top), (f.left, foot)),
        (1, 0): ((f.left, foot), (right, foot)),
        (-1, 0): ((f.left, f.top), (right, f.top)),
    }
    for (dr, dc), (a, b) in edges.items():
        if (tile[0] + dr, tile[1] + dc) in laid.tiles:
            ink.line(a, b, Look(0.12, grey=0.5))


def draw_joints(ink: Ink, laid: Arrangement, tile: Tile) -> None:
    """The halves of buttons that belong to this page, with what runs on."""
    for number, x, y, upright, side in _halves(laid, tile):
        ink.ring(x, y, RADIUS, _LINE)
        if upright:
            ink.line((x - THREAD, y), (x - RADIUS, y), _LINE)
            ink.line((x + RADIUS, y), (x + THREAD, y), _LINE)
            at = x + side * RADIUS / 2, y + LETTERS / 2
        else:
            ink.line((x, y - THREAD), (x, y - RADIUS), _LINE)
            ink.line((x, y + RADIUS), (x, y + THREAD), _LINE)
            at = x, y + side * RADIUS / 2 + LETTERS / 2
        ink.write(number, *at, LETTERS, middle=True)


def _halves(
    laid: Arrangement, tile: Tile
) -> Iterator[tuple[str, float, float, bool, int]]:
    """(number, x, y, upright trim line, side of it on which this page lies)."""
    f = laid.frame
    for i, (a, b) in enumerate(joints(laid), start=1):
        if tile not in (a, b):
            continue
        upright = a[0] == b[0]
        side = -1 if tile == a else 1
        if upright:
            x = f.left + (f.live_width if tile == a else 0)
            yield str(i), x, f.top + f.live_height / 2, True, side
        else:
            y = f.top + (f.live_height if tile == a else 0)
            yield str(i), f.left + f.live_width / 2, y, False, side
