"""Stripes and checks that meet: which net points of which pieces share a phase.

Two net points that are sewn together lie at the same place of a stripe when
`(x_A - x_B) mod R = 0`, x along the cloth and R the repeat along it; likewise across
(cutting and costing §1.4). A piece can follow one neighbour, and its next follows it;
so seams that would close a ring are left to fall as they may, and are told. The
weightiest seams come first: left and right of a pair, centre, panels and sides,
sleeves, waist. Stripes are taken to be even: the same from either side.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from clothwright.lay.pieces import Copy, Placed, moved, turned
from clothwright.lay.spread import Spread

PAIR = "pair"
"""Code that the marks of a pair's own two halves begin with; they meet along only."""


class Link(NamedTuple):
    """Copy `child` follows copy `parent`: two net points share a stripe."""

    axis: int
    """0 along the cloth, 1 across."""

    parent: int
    there: tuple[float, float]
    """The point in the frame of the parent's shape."""

    child: int
    here: tuple[float, float]


def links_of(
    copies: Sequence[Copy], seams: Sequence[str], spread: Spread
) -> tuple[Link, ...]:
    """The links of all copies: forests, each parent before its children.

    `seams` are codes in order of weight; marks with the same code meet, on the same
    side of the body where there are a left and a right.
    """
    out: list[Link] = []
    for axis in (0, 1):
        if spread.repeat[axis] is not None:
            pairs = _pairs(copies, seams, axis)
            out += _rooted(len(copies), pairs, axis)
    return tuple(out)


_Place = tuple[float, float]
_Pair = tuple[int, _Place, int, _Place]


def loose(
    copies: Sequence[Copy],
    seams: Sequence[str],
    spread: Spread,
    placed: Sequence[Placed],
) -> tuple[str, ...]:
    """Codes of the seams at which stripes miss each other in a lay, for they would
    close a ring."""
    out: dict[str, None] = {}
    for axis in (0, 1):
        repeat = spread.repeat[axis]
        if repeat is None:
            continue
        for seam, i, a, j, b in _meeting(copies, seams, axis):
            if not _sewn(copies, seam, i, j):
                continue
            here, there = moved((a,), placed[i])[0], moved((b,), placed[j])[0]
            off = (here[axis] - there[axis] + repeat / 2) % repeat - repeat / 2
            if abs(off) > MISSES:
                out[seam] = None
    return tuple(out)


def _sewn(copies: Sequence[Copy], seam: str, i: int, j: int) -> bool:
    """False for two points of a seam that are not sewn to each other: the two sides of
    a whole piece, or of a sleeve the one edge and of the other sleeve the other."""
    shape = copies[i].shape
    if shape.code != copies[j].shape.code:
        return True
    both = sum(code == seam for code, _, _ in shape.marks) > 1
    return not shape.even and both == (i == j)


MISSES = 0.1
"""Stripes that are further apart than this at a seam are seen to miss, cm (common
practice, no source)."""


def _pairs(copies: Sequence[Copy], seams: Sequence[str], axis: int) -> list[_Pair]:
    """Points that meet, without rings."""
    group = list(range(len(copies)))

    def root(i: int) -> int:
        while group[i] != i:
            i = group[i]
        return i

    pairs: list[_Pair] = []
    for _, i, a, j, b in _meeting(copies, seams, axis):
        if root(i) != root(j):
            group[root(j)] = root(i)
            pairs.append((i, a, j, b))
    return pairs


def _meeting(
    copies: Sequence[Copy], seams: Sequence[str], axis: int
) -> Iterator[tuple[str, int, _Place, int, _Place]]:
    """Every two points that are sewn together, with their seam."""
    for seam in seams:
        if seam.startswith(PAIR) and axis == 1:
            continue
        ends = [
            (i, hand, (x, y))
            for i, c in enumerate(copies)
            for hand, code, x, y in _marks(c)
            if code == seam
        ]
        for n, (i, hand, a) in enumerate(ends):
            for j, other, b in ends[n + 1 :]:
                same = copies[i].shape.code == copies[j].shape.code
                if not same and hand and other and hand != other:
                    continue
                yield seam, i, a, j, b


def _rooted(n: int, pairs: Sequence[_Pair], axis: int) -> list[Link]:
    """Each tree from its first copy outwards."""
    out: list[Link] = []
    done: set[int] = set()
    for start in range(n):
        if start in done:
            continue
        ring = [start]
        done.add(start)
        while ring:
            i = ring.pop(0)
            for p, a, q, b in pairs:
                for here, at, there, to in ((p, a, q, b), (q, b, p, a)):
                    if here == i and there not in done:
                        out.append(Link(axis, i, at, there, to))
                        done.add(there)
                        ring.append(there)
    return out


def _marks(c: Copy) -> list[tuple[str, str, float, float]]:
    """Hand, seam and place of every mark; a whole piece has a right and a left."""
    if not c.shape.even:
        return [(c.hand, code, x, y) for code, x, y in c.shape.marks]
    return [
        (
            "" if y == 0 else "right" if (y > 0) != c.shape.flipped else "left",
            code,
            x,
            y,
        )
        for code, x, y in c.shape.marks
    ]


Phases = tuple[dict[int, tuple[int, float]], dict[int, tuple[int, float]]]
"""Along and across: for each linked copy its group and its origin's place in it."""


def phases(
    links: Sequence[Link], copies: Sequence[Copy], choice: Sequence[int]
) -> Phases:
    """Where the origins stand in the stripes of their groups, in these variants."""
    out: Phases = ({}, {})
    for axis, parent, there, child, here in links:
        group, at = out[axis].setdefault(parent, (parent, 0.0))
        v, w = (copies[k].variants[choice[k]] for k in (parent, child))
        (a,) = turned((there,), v.mirrored, v.turn)
        (b,) = turned((here,), w.mirrored, w.turn)
        out[axis][child] = group, at + a[axis] - b[axis]
    return out
