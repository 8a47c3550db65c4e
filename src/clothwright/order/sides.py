"""The two sides of a body drafted apart, where they differ.

Both halves are drafted as right halves, each by its own side's measures; the left one
is then turned over. A piece that comes out the same on both is cut as ever; of a pair
that differs each is cut once; the halves of a piece on the fold are joined at the fold
(measurements §3.6: from 0.6 cm or 1.5° on, R28).
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from clothwright.body import Body
from clothwright.curves import Point, from_pair, mirror_in
from clothwright.features import Feature
from clothwright.features.chains import NECK_STRIP
from clothwright.findings import Finding
from clothwright.order.file import Order, OrderError
from clothwright.paper import (
    LEFT_HALF,
    LEFT_PIECE,
    Ease,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
)
from clothwright.rules import Numbers
from clothwright.units import Unit, pretty_length

SAME = 0.02
"""Edges and places that differ by less than this on the two sides are the same, cm."""

SAME_ANGLE = 0.1
"""The same for corners, degrees."""

CENTRE = 0.1
"""The two halves' centre lines agree within this, cm (truing 1)."""

APART = "R28"
"""Code of the finding that asks for two halves."""


def sides_of(order: Order) -> tuple[Order, Order]:
    """The order for the right side and for the left side of its body."""

    def one(side: str) -> Order:
        body: Body = order.body
        values = {**body.values, **getattr(body, side)}
        return replace(order, body=replace(body, values=values, left={}, right={}))

    return one("right"), one("left")


def alike(order: Order, n: Numbers) -> Order:
    """The left side's order with what lies at the centre as the right side, whose
    numbers are `n`, has it."""

    def one(feature: Feature) -> Feature:
        keys = {field: feature.numbers()[field].key for field in feature.at_centre}
        found = {field: n[key] for field, key in keys.items()}
        return feature.model_copy(update=found) if found else feature

    return replace(order, features=tuple(one(f) for f in order.features))


def level(order: Order, n: Numbers, left: Sheet, right: Sheet) -> Order:
    """The left side's order with its necks as deep as to end at the centre where the
    right side's do: a depth is measured from the shoulder, whose slope is another. `n`
    and the table `left` are what it came to before."""
    ends = [(f.kind, end) for f in order.features for end in f.neck_ends]
    for kind, (field, edge, codes) in ends:
        neck = order.feature(kind)
        there = [c for c in codes if c in left.pieces and c in right.pieces]
        there = [c for c in there if _long(left.piece(c), edge) is not None]
        if neck is None or not there:
            continue
        by = sum(
            (_long(left.piece(c), edge) or 0.0) - (_long(right.piece(c), edge) or 0.0)
            for c in there
        )
        if abs(by) > SAME / 4:
            depth = n[neck.numbers()[field].key] + by
            deeper = neck.model_copy(update={field: depth})
            features = tuple(deeper if f is neck else f for f in order.features)
            order = replace(order, features=features)
    return order


def _long(piece: Piece, name: str) -> float | None:
    """Length of an edge, or of the fold that an edge has become, cm."""
    if piece.has(name):
        return piece.edge(name).length
    return next((k.path.length for k in piece.lines if k.name == name), None)


_ROUND_BOTH = {NECK_STRIP}
"""Strips that run round both sides: one is cut, by the right side; the walk tells where
it does not go onto the left."""


def differing(right: Sheet, left: Sheet) -> frozenset[str]:
    """Codes of the pieces that are not the same on both sides, in shape or in their
    notches. Raises OrderError when the sides have not the same pieces and seams."""
    for codes, others, what in (
        (list(right.pieces), list(left.pieces), "pieces"),
        ([s.code for s in right.seams], [s.code for s in left.seams], "seams"),
    ):
        if codes != others:
            other = ", ".join(sorted(set(codes) ^ set(others)))
            raise OrderError(
                f"the two sides would not have the same {what} ({other} on one only): "
                "measure the sides again, or give both the same"
            )
    out = {c for c, p in right.pieces.items() if not _same(p, left.piece(c))}
    for a, b in zip(right.seams, left.seams, strict=True):
        mine, theirs = _notched(right, a), _notched(left, b)
        for piece in {*mine, *theirs}:
            here, there = mine.get(piece, []), theirs.get(piece, [])
            if len(here) != len(there) or any(
                abs(x - y) > SAME for x, y in zip(here, there, strict=True)
            ):
                out.add(piece)
    for s in right.seams:  # what is sewn to its twin in one seam is told in one way
        sewn = {r.piece for r in s.runs()}
        if s.kind is SeamKind.TWIN and sewn & out:
            out |= sewn
    return frozenset(out - _ROUND_BOTH)


def _notched(sheet: Sheet, seam: Seam) -> dict[str, list[float]]:
    """Where a seam is notched on each of its pieces: lengths along their edges."""
    out: dict[str, list[float]] = {}
    for chain, places in (
        (seam.left, [n.left for n in seam.notches]),
        (seam.right, [n.right for n in seam.notches]),
    ):
        for s in places:
            done = 0.0
            for run in chain:
                length = sheet.length(run.piece, run.edge)
                if s <= done + length + 1e-6:
                    out.setdefault(run.piece, []).append(s - done)
                    break
                done += length
    return out


def _same(a: Piece, b: Piece) -> bool:
    if [e.name for e in a.edges] != [e.name for e in b.edges]:
        return False
    return all(
        abs(x.length - y.length) < SAME
        and abs(a.interior_angle(x.name) - b.interior_angle(x.name)) < SAME_ANGLE
        for x, y in zip(a.edges, b.edges, strict=True)
    )


def together(right: Sheet, left: Sheet, apart: frozenset[str], unit: Unit) -> Sheet:
    """Both halves on one table: pieces that differ on the two sides once for each, or
    whole where they lie on a fold. Raises OrderError when the halves of one do not
    meet."""
    pieces: list[Piece] = []
    for code, both in right.pieces.items():
        if code not in apart:
            pieces.append(both)
            continue
        piece, other = _own(both, "left"), _own(left.piece(code), "right")
        if piece.fold is not None:
            pieces.append(_whole(piece, other, unit))
        else:
            pieces.append(replace(piece, name=f"{piece.name}, right"))
            pieces.append(_turned_over(other))
    return Sheet(
        {p.code: p for p in pieces},
        tuple(_seams(right, left, apart)),
        right.points,
        right.lines,
    )


def _own(piece: Piece, other: str) -> Piece:
    """A side's piece without the lines of what is on the other side alone."""
    lines = tuple(k for k in piece.lines if f", on the {other}" not in k.name)
    return replace(piece, lines=lines)


def _turned_over(piece: Piece) -> Piece:
    """A piece of the left side as it is cut: its right side up."""
    at = piece.edges[0].path.start
    over = piece.moved(mirror_in(at, Point(at.x, at.y + 1.0)))
    code, name = piece.code + LEFT_PIECE, f"{piece.name}, left"
    return replace(over, code=code, name=name)


def _whole(right: Piece, left: Piece, unit: Unit) -> Piece:
    """A piece that would lie on the fold, whole, its left half behind the fold."""
    a, b = right.fold, left.fold
    assert a is not None and b is not None
    if abs(a.length - b.length) > CENTRE:
        lengths = [pretty_length(e.length, unit) for e in (a, b)]
        raise OrderError(
            f"{right.name}: the centre is {lengths[0]} long on the right and "
            f"{lengths[1]} on the left; measure the sides again, or give both the "
            "same neck"
        )
    m = mirror_in(a.path.start, a.path.end) @ from_pair(
        b.path.start, b.path.end, a.path.start, a.path.end
    )
    over = left.moved(m)
    head = right.rolled_to(a.name)[1:]
    tail = [replace(e, name=e.name + LEFT_HALF) for e in over.rolled_to(b.name)[1:]]
    first, last = tail[0], tail[-1]
    tail[0] = first.along(first.path.pinned(a.path.start, first.path.end))
    last = tail[-1]
    tail[-1] = last.along(last.path.pinned(last.path.start, a.path.end))
    marks = tuple(replace(k, name=k.name + LEFT_HALF) for k in over.marks)
    lines = tuple(
        k if ", on the left" in k.name else replace(k, name=k.name + LEFT_HALF)
        for k in over.lines
    )
    return replace(
        right,
        edges=(*head, *tail),
        marks=right.marks + marks,
        lines=right.lines + lines,
    )


def _seams(right: Sheet, left: Sheet, apart: frozenset[str]) -> Iterator[Seam]:
    """Every seam of both sides; one between pieces that are the same is told once, and
    an edge that was sewn to its twin is sewn to the other side's."""

    def over(chain: tuple[Run, ...]) -> tuple[Run, ...]:
        out = []
        for r in chain:
            if r.piece not in apart:
                out.append(r)
            elif left.piece(r.piece).fold is not None:
                out.append(Run(r.piece, r.edge + LEFT_HALF, not r.backward))
            else:
                out.append(Run(r.piece + LEFT_PIECE, r.edge, not r.backward))
        return tuple(out)

    for mine, theirs in zip(right.seams, left.seams, strict=True):
        if not any(r.piece in apart for r in mine.runs()):
            yield mine
        elif mine.kind is SeamKind.TWIN and not _folded(right, mine):
            pairs = zip(mine.notches, theirs.notches, strict=True)
            yield replace(
                mine,
                right=over(theirs.left),
                ease=Ease.about(0.0, CENTRE),
                kind=SeamKind.PLAIN,
                notches=tuple(a._replace(right=b.left) for a, b in pairs),
            )
        else:
            yield mine
            yield replace(
                theirs,
                code=f"{theirs.code}{LEFT_PIECE}",
                name=f"{theirs.name}, left",
                left=over(theirs.left),
                right=over(theirs.right),
            )


def _folded(sheet: Sheet, seam: Seam) -> bool:
    """True for a seam of a piece on the fold with its own copy in another cloth."""
    return any(sheet.piece(r.piece).fold is not None for r in seam.left)


def of_both(right: Iterable[Finding], left: Iterable[Finding]) -> Iterator[Finding]:
    """What is found on the two sides: what is said of both is said once."""
    said = set()
    for f in right:
        said.add((f.code, f.place, str(f)))
        yield f
    for f in left:
        if (f.code, f.place, str(f)) not in said:
            yield replace(f, sentence=f"Left side: {f.sentence}")
