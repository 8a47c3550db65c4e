"""Sizes of one piece laid on each other: one grain, one fold, one stated point.

All sizes of a piece are turned to the grain of the middle size, since one cloth lies
under them, and moved so that one point of each lies on the same spot. On the fold, all
folds lie in one line. Lengths cm, y down.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from typing import TYPE_CHECKING

from clothwright.curves import (
    IDENTITY,
    Motion,
    Path,
    Point,
    Vector,
    cross,
    direction,
    distance,
    dot,
    heading,
    polyline,
    shift,
    turn,
)
from clothwright.finishing.drawn import (
    Beside,
    CutCount,
    DrawnLine,
    DrawnPattern,
    DrawnPiece,
    Meaning,
    Wording,
)
from clothwright.finishing.label import GLUE
from clothwright.finishing.lettering import IN_THE_WAY, lettered
from clothwright.sheets.looks import moved

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


class NestAt(Enum):
    """The point at which the sizes of a piece lie on each other."""

    WAIST = "waist"
    """Where the waist meets the centre, or the seam nearest to it; on a piece without a
    waist where its neck, foot or cap meets the centre."""

    GRAIN = "grain"
    """The foot of the grain line."""


CORNERS = (
    ("waist", "foot", "neck", "tail", "cap back"),
    (
        "cf",
        "cb",
        "open",
        "slant",
        "panel",
        "cap front",
    ),
)
"""Edges that meet at the point, and those they meet there; the first pair counts."""

MEET = 0.02
"""Ends of edges this near are one corner, cm."""

FLAT = 0.02
"""Flattening tolerance of outlines where areas are joined, cm."""

SHARED = frozenset({Meaning.GRAIN, Meaning.BRACKET})
"""What all sizes of a piece have in common, drawn once."""


@dataclass(frozen=True)
class NestedPiece:
    """All sizes of one piece."""

    common: DrawnPiece
    """What is drawn once: grain, bracket, label; its outline is that of all sizes
    together."""

    each: Mapping[str, DrawnPiece]
    """By size, laid on the others; in the order of the set."""


@dataclass(frozen=True)
class Nest:
    """All pieces of a size set."""

    sizes: tuple[str, ...]
    pieces: tuple[NestedPiece, ...]
    about: DrawnPattern
    """Title, cautions and notes of the set; its pieces are the common ones."""

    cut_lists: tuple[tuple[str, tuple[str, ...]], ...]
    """For which sizes, and what is cut of each."""

    notes: Mapping[str, tuple[str, ...]]
    """By size, what holds for it and not for all; first whose it is."""


def nest(patterns: Mapping[str, DrawnPattern], at: NestAt = NestAt.WAIST) -> Nest:
    """Lay the pieces of finished patterns on each other, by the names of their sizes.

    A piece that only some sizes have is nested for those, and sizes of which it is cut
    another way (whole, and not on the fold) lie apart, since one label serves all.
    """
    sizes = tuple(patterns)
    alike: dict[tuple[object, ...], dict[str, DrawnPiece]] = {}
    for size, drawn in patterns.items():
        for p in drawn.pieces:
            cut = p.code, p.name, p.on_fold, p.cuts
            alike.setdefault(cut, {})[size] = p
    pieces = [_nested(have, at) for have in alike.values()]
    first = next(iter(patterns.values()))
    about = replace(
        first,
        client=_sizes(sizes),
        taken=None,
        pieces=tuple(_with_fold(p) for p in pieces),
        failures=(),
        cautions=tuple(dict.fromkeys(c for d in patterns.values() for c in d.cautions)),
        notes=tuple(n for n in first.notes if _for_all(n, patterns)),
    )
    own = {
        s: (d.whose, *(n for n in d.notes if not _for_all(n, patterns)))
        for s, d in patterns.items()
    }
    return Nest(sizes, tuple(pieces), about, _cut_lists(patterns), own)


def _with_fold(nested: NestedPiece) -> DrawnPiece:
    """What a key explains: what is common, and a fold where there is one."""
    folds = [
        k for p in nested.each.values() for k in p.lines if k.meaning is Meaning.FOLD
    ]
    return replace(nested.common, lines=(*nested.common.lines, *folds[:1]))


def _for_all(note: str, patterns: Mapping[str, DrawnPattern]) -> bool:
    return all(note in d.notes for d in patterns.values())


def _sizes(sizes: Sequence[str]) -> str:
    """ "size 8", "sizes 8, 10 and 12"; of many the first and the last."""
    if len(sizes) == 1:
        return f"size {sizes[0]}"
    if len(sizes) > 6:
        return f"{len(sizes)} sizes, {sizes[0]} to {sizes[-1]}"
    return f"sizes {', '.join(sizes[:-1])} and {sizes[-1]}"


def _cut_lists(
    patterns: Mapping[str, DrawnPattern],
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What is cut of every size; sizes with the same list share it."""
    lists: dict[tuple[str, ...], list[str]] = {}
    for size, drawn in patterns.items():
        lines = tuple(f"{p.number}. {p.name}: {_counts(p.cuts)}" for p in drawn.pieces)
        lists.setdefault(lines, []).append(size)
    return tuple((_sizes(of), lines) for lines, of in lists.items())


def _counts(cuts: Iterable[CutCount]) -> str:
    return "; ".join(f"{c.cloth}, cut {c.how}" for c in cuts)


def _nested(have: Mapping[str, DrawnPiece], at: NestAt) -> NestedPiece:
    """Lay the sizes of one piece on the middle one."""
    middle = tuple(have.values())[len(have) // 2]
    each = {s: moved(p, onto(p, middle, at)) for s, p in have.items()}
    return NestedPiece(_common(middle, each), each)


def onto(piece: DrawnPiece, middle: DrawnPiece, at: NestAt) -> Motion:
    """The motion that lays a size on another one."""
    a, b = _grain(piece), _grain(middle)
    level = IDENTITY
    if a is not None and b is not None:
        by = heading(b.end - b.start) - heading(a.end - a.start)
        level = turn(Point(0, 0), by) if abs(by) > 1e-9 else IDENTITY
    spot = anchor(middle, at)
    m = shift(spot - level(anchor(piece, at))) @ level
    folds = _fold(piece), _fold(middle)
    if folds[0] is None or folds[1] is None:
        return m
    way = direction(folds[1].start, folds[1].end)
    off = cross(way, folds[1].start - m(folds[0].start))
    return shift(Vector(-way[1], way[0]) * off) @ m


def anchor(piece: DrawnPiece, at: NestAt) -> Point:
    """The point of a piece that lies on the same spot in every size."""
    if at is NestAt.WAIST:
        edges = {
            k.note.rpartition(".")[2]: k.path
            for k in piece.lines
            if k.meaning in (Meaning.SEW, Meaning.FOLD)
        }
        for first in CORNERS[0]:
            for second in CORNERS[1]:
                if first in edges and second in edges:
                    found = _corner(edges[first], edges[second])
                    if found is not None:
                        return found
    grain = _grain(piece)
    if grain is not None:
        return grain.start
    left, _, _, foot = piece.cut_line.bounds()
    return Point(left, foot)


def _corner(a: Path, b: Path) -> Point | None:
    """Where two edges meet at their ends."""
    ends = ((p, q) for p in (a.start, a.end) for q in (b.start, b.end))
    return next((p for p, q in ends if distance(p, q) < MEET), None)


def _first(piece: DrawnPiece, meaning: Meaning) -> Path | None:
    return next((k.path for k in piece.lines if k.meaning is meaning), None)


def _grain(piece: DrawnPiece) -> Path | None:
    return _first(piece, Meaning.GRAIN)


def _fold(piece: DrawnPiece) -> Path | None:
    return _first(piece, Meaning.FOLD)


def fold_phase(piece: DrawnPiece, path: Path) -> float:
    """How far along the fold's line a path begins, cm: with its dashes counted from
    there, folds of several sizes are one line."""
    fold = _fold(piece)
    if fold is None:
        return 0.0
    way = direction(path.start, path.end)
    return dot(way, path.start - Point(0, 0))


def _common(middle: DrawnPiece, each: Mapping[str, DrawnPiece]) -> DrawnPiece:
    """Grain and bracket of the middle size, and a label that is clear of every size's
    lines."""
    from shapely import Polygon, intersection_all, union_all

    hulls = [Polygon(p.cut_line.flatten(FLAT)).buffer(0) for p in each.values()]
    nets = [Polygon(_net(p)).buffer(0) for p in each.values()]
    inside = intersection_all([n for n in nets if not n.is_empty])
    outline = polyline(_ring(union_all(hulls)))
    seen = [k for p in each.values() for k in p.lines if k.meaning in IN_THE_WAY]
    own = _grain_for_all(middle, each, inside)
    own += [k for k in middle.lines if k.meaning is Meaning.BRACKET]
    free = DrawnLine(Meaning.SEW, polyline(_ring(inside)), "free for words")
    bare = replace(
        middle,
        cut_line=outline,
        lines=(*own, *seen, free),
        notches=tuple(n for p in each.values() for n in p.notches),
        texts=(),
    )
    wording = _wording(middle.wording, each, None)
    written = lettered(replace(bare, wording=wording))
    if any(SLOT in t.text for t in written.texts):
        return written
    # a narrow piece: the sizes stand along its edge
    wording = _wording(middle.wording, each, free.path)
    return lettered(replace(bare, wording=wording))


def _grain_for_all(
    middle: DrawnPiece, each: Mapping[str, DrawnPiece], inside: "BaseGeometry"
) -> list[DrawnLine]:
    """A grain line that lies inside every size: the middle one's, or another's."""
    from shapely import LineString

    found = [
        k
        for p in (middle, *each.values())
        for k in p.lines
        if k.meaning is Meaning.GRAIN
    ]
    within = (k for k in found if inside.covers(LineString([k.path.start, k.path.end])))
    return [k for k in (next(within, None), *found[:1]) if k is not None][:1]


def _net(piece: DrawnPiece) -> list[Point]:
    """The stitch lines and the fold as one chain."""
    edges = [k.path for k in piece.lines if k.meaning in (Meaning.SEW, Meaning.FOLD)]
    return [p for e in edges for p in e.flatten(FLAT)]


def _ring(area: "BaseGeometry") -> list[Point]:
    """The outer ring of the largest part, clockwise as seen."""
    from shapely import MultiPolygon, Polygon
    from shapely.geometry.polygon import orient

    part = area
    if isinstance(area, MultiPolygon):
        part = max(area.geoms, key=lambda g: g.area)
    assert isinstance(part, Polygon)
    return [Point(x, y) for x, y in orient(part, 1.0).exterior.coords]


SLOT = "\u2002"
"""Stands in a label on either side of every size, each of which is written on its own
layer."""

ROW = 7
"""Sizes in one row of a label."""


def _wording(w: Wording, each: Mapping[str, DrawnPiece], edge: Path | None) -> Wording:
    """The label of the middle size, for the sizes that have the piece; the names of its
    lines, without the lengths of its edges. Every size has its place beside the name,
    or along an `edge`, so that one that is printed alone bears its name."""
    have = tuple(each)
    label = [list(group) for group in w.label]
    if label and len({(p.number, p.total) for p in each.values()}) > 1:
        label[0] = [t for t in label[0] if not t.startswith(f"piece{GLUE}")]
    beside = [b for b in w.beside if b.meaning is not Meaning.DIMENSION]
    if edge is not None:
        said = f"size{SLOT}{SLOT.join(have)}{SLOT}"
        beside.insert(0, Beside(Meaning.LABEL, said, edge, right=True))
    elif label:
        label[0][0] += f" size{_rows(have)}"
    if len(label) > 1 and len(label[1]) > 1:
        whose = _sizes(have)
        if len(have) > 3:
            whose = f"{len(have)} sizes, {have[0]} to {have[-1]}"
        label[1] = [label[1][0], whose.replace(" ", GLUE).replace(f",{GLUE}", ", ")]
    return Wording(tuple(map(tuple, label)), tuple(beside))


def _rows(sizes: Sequence[str]) -> str:
    """The sizes in rows that may be broken, every one between slots."""
    rows = (sizes[k : k + ROW] for k in range(0, len(sizes), ROW))
    return " ".join(SLOT + SLOT.join(row) + SLOT for row in rows)
