"""How tiles are joined: trim lines and buttons.

Where two pages meet, half of a button is printed on each: a ring about the trim line
with the joint's number in both halves and a thread on either side. Laid rightly, the
buttons are whole. Our own design. Lengths cm.
"""

from collections.abc import Iterator

from clothwright.sheets.arrange import Arrangement, Tile
from clothwright.sheets.ink import Ink
from clothwright.sheets.looks import Look

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
