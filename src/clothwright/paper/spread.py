"""Spread: open a piece along a line by an amount at each end."""

import math

from clothwright.curves import (
    Line,
    Motion,
    Path,
    Point,
    cross,
    distance,
    left_normal,
    shift,
    turn,
    wedge_angle,
)
from clothwright.paper.cut import CornerAfter, Spot, cut
from clothwright.paper.piece import Edge, PaperError, Piece
from clothwright.paper.sheet import Sheet


def spread(
    sheet: Sheet,
    piece: str,
    start: Spot,
    end: Spot,
    *,
    at_start: float,
    at_end: float,
    moving: str,
) -> Sheet:
    """Cut straight from `start` to `end` and open the cut by `at_start` and `at_end`
    cm (0 hinges there; below 0 overlaps). The part that holds the edge `moving` turns.

    An edge divided at the line stays one edge, with the opening drawn in straight; at
    a corner the opening becomes an edge of its own, "gap start" or "gap end". The
    lengths of all other edges are kept. Raises PaperError when the line is no cut.
    """
    p = sheet.piece(piece)
    a, b = _point(p, start), _point(p, end)
    parts = cut(
        Sheet().put(p),
        piece,
        Path((Line(a, b),)),
        start,
        end,
        edge=" cut",
        seam=" cut",
        seam_name="the slash",
        into=((" 1", ""), (" 2", "")),
    )
    one, two = parts.piece(" 1"), parts.piece(" 2")
    # the loop of `one` runs from the start to the end; of `two`, from end to start.
    holds_one = one.has(moving) and not (two.has(moving) and _bigger(two, one, moving))
    turning, resting = (one, two) if holds_one else (two, one)
    m = _opening(a, b, at_start, at_end, resting)
    turned = turning.moved(m)
    loop_t, loop_r = list(turned.edges[:-1]), list(resting.edges[:-1])
    first, second = (loop_t, loop_r) if holds_one else (loop_r, loop_t)
    joint_end = _bridge(first[-1], second[0], "gap end")
    joint_start = _bridge(second[-1], first[0], "gap start")
    edges = _close([*first, *joint_end, *second, *joint_start])
    marks = tuple(k.moved(m) if turning.contains(k.at) else k for k in p.marks)
    lines = tuple(
        k.moved(m) if turning.contains(k.path.at_length(k.path.length / 2)) else k
        for k in p.lines
    )
    grain = turned.grain if turning.grain else p.grain
    return sheet.put(Piece(p.code, p.name, tuple(edges), marks, lines, grain))


def _point(p: Piece, spot: Spot) -> Point:
    path = p.edge(spot.edge).path
    return path.end if isinstance(spot, CornerAfter) else path.at_length(spot.length)


def _bigger(a: Piece, b: Piece, edge: str) -> bool:
    return a.edge(edge).length > b.edge(edge).length


def _opening(
    a: Point, b: Point, at_start: float, at_end: float, resting: Piece
) -> Motion:
    """The motion that opens the line a–b by the two amounts, away from `resting`.

    Both openings are chords of one turn, about the point where the two cut edges
    produced would meet: the end with the smaller opening is carried square to the
    line that halves the wedge, which makes both amounts exact.
    """
    n = left_normal(b - a)
    mid = Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    if resting.contains(mid + n * 0.02):
        n = n * -1.0
    hinge, arm, least, most = a, b, at_start, at_end
    if abs(at_start) >= abs(at_end):
        hinge, arm, least, most = b, a, at_end, at_start
    if abs(most - least) > 2 * distance(hinge, arm):
        raise PaperError("a slash cannot be opened wider than twice its length")
    angle = wedge_angle(most - least, distance(hinge, arm))
    angle = math.copysign(angle, cross(arm - hinge, n) * (most - least))
    square = turn(hinge, angle / 2).direction(n)
    return shift(square * least) @ turn(hinge, angle)


def _bridge(last: Edge, first: Edge, name: str) -> list[Edge]:
    if distance(last.path.end, first.path.start) < 1e-9:
        return []
    return [Edge(name, Path((Line(last.path.end, first.path.start),)), last.kind)]


def _close(edges: list[Edge]) -> list[Edge]:
    """Parts of one edge joined again, through the opening between them."""
    out: list[Edge] = []
    for e in edges:
        out.append(e)
        while len(out) >= 2 and _one(out[-2], out[-1]):
            b, a = out.pop(), out.pop()
            out.append(a.along(a.path + b.path))
        if (
            len(out) >= 3
            and out[-2].name.startswith("gap ")
            and (out[-3].name == out[-1].name)
        ):
            c, g, a = out.pop(), out.pop(), out.pop()
            out.append(a.along(a.path + g.path + c.path))
    if len(out) > 1 and out[0].name == out[-1].name:
        last = out.pop()
        out[0] = out[0].along(last.path + out[0].path)
    elif (
        len(out) > 2 and out[-1].name.startswith("gap ") and out[0].name == out[-2].name
    ):
        g, last = out.pop(), out.pop()
        out[0] = out[0].along(last.path + g.path + out[0].path)
    return out


def _one(a: Edge, b: Edge) -> bool:
    return a.name == b.name and distance(a.path.end, b.path.start) < 1e-9
