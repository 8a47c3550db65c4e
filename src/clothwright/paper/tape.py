"""Tape: join along a seam whose sides match; the edges vanish."""

from dataclasses import replace

from clothwright.curves import (
    CLOSE,
    Motion,
    Path,
    Point,
    degrees_between,
    distance,
    from_pair,
    turn,
)
from clothwright.paper.piece import Edge, PaperError, Piece
from clothwright.paper.seam import Run
from clothwright.paper.sheet import Sheet

MATCH = 0.02
"""Sides that are taped may differ by this much, cm: a fifth of the finest mark."""


def tape(
    sheet: Sheet,
    seam: str,
    *,
    tolerance: float = MATCH,
    code: str = "",
    name: str = "",
    moving: str = "",
) -> Sheet:
    """Join the sides of a seam. Two pieces: the right is laid on the left. A dart:
    its piece must be cut through to the apex, and the part that holds the edge
    `moving` turns.

    Area is kept; both edges vanish; edges that were one before a dart divided them
    ("side a", "side b") stay apart until redrawn. Raises PaperError when the sides
    differ by more than `tolerance` in length or in shape.
    """
    s = sheet.seam(seam)
    if len(s.left) != 1 or len(s.right) != 1:
        raise PaperError(f"{s.name}: tape one edge to one edge")
    a, b = s.left[0], s.right[0]
    la, lb = sheet.length(a.piece, a.edge), sheet.length(b.piece, b.edge)
    if abs(la - lb) > tolerance:
        raise PaperError(
            f"{s.name}: {a} is {la:.2f} cm and {b} is {lb:.2f} cm; "
            "paper that is taped must be of one length"
        )
    if a.piece == b.piece:
        return _close_dart(sheet, seam, moving, tolerance)
    return _join(sheet, seam, code, name, tolerance)


def _congruent(a: Path, b: Path, tolerance: float) -> bool:
    n = 1 if a.straight and b.straight else 12
    return all(
        distance(a.at_length(a.length * i / n), b.at_length(b.length * i / n))
        <= tolerance
        for i in range(n + 1)
    )


def _join(sheet: Sheet, seam: str, code: str, name: str, tolerance: float) -> Sheet:
    s = sheet.seam(seam)
    a, b = s.left[0], s.right[0]
    keep, other = sheet.piece(a.piece), sheet.piece(b.piece)
    pa, pb = sheet.run_path(a), sheet.run_path(b)
    m = from_pair(pb.start, pb.end, pa.start, pa.end)
    if not _congruent(pa, pb.moved(m), tolerance):
        raise PaperError(f"{s.name}: {a} and {b} have not the same line")
    laid = other.moved(m)
    rest_a = keep.rolled_to(a.edge)[1:]
    rest_b = laid.rolled_to(b.edge)[1:]
    edges = _unique((*_pin(rest_a, rest_b), *_pin(rest_b, rest_a)))
    joined = Piece(
        code or keep.code,
        name or keep.name,
        tuple(edges),
        keep.marks + laid.marks,
        keep.lines + laid.lines,
        keep.grain or laid.grain,
    )
    renamed = dict(
        zip([(keep.code, e.name) for e in rest_a], edges[: len(rest_a)], strict=True)
    ) | dict(
        zip([(other.code, e.name) for e in rest_b], edges[len(rest_a) :], strict=True)
    )

    def where(run: Run) -> tuple[Run, ...]:
        edge = renamed.get((run.piece, run.edge))
        return (Run(joined.code, edge.name, run.backward),) if edge else (run,)

    out = sheet.unsew(seam).with_runs(where, keep.code, other.code)
    return out.in_place_of(keep.code, other.code, put=(joined,))


def _unique(edges: tuple[Edge, ...]) -> list[Edge]:
    out: list[Edge] = []
    names: set[str] = set()
    for e in edges:
        name, k = e.name, 2
        while name in names:
            name, k = f"{e.name} {k}", k + 1
        names.add(name)
        out.append(e if name == e.name else replace(e, name=name))
    return out


def _pin(run: tuple[Edge, ...], to: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """`run` with its last end laid exactly on the first start of `to`."""
    *head, last = run
    path = last.path.pinned(last.path.start, to[0].path.start)
    return (*head, last.along(path))


def _close_dart(sheet: Sheet, seam: str, moving: str, tolerance: float) -> Sheet:
    s = sheet.seam(seam)
    p = sheet.piece(s.left[0].piece)
    names = {s.left[0].edge, s.right[0].edge}
    first = next(
        e for e in p.edges if e.name in names and p.after(e.name).name in names
    )
    second = p.after(first.name)
    apex = first.path.end
    if not _congruent(
        first.path.reversed(),
        second.path.moved(_onto(second.path, first.path.reversed(), apex)),
        tolerance,
    ):
        raise PaperError(f"{s.name}: the legs of this dart have not the same line")
    loop = p.rolled_to(second.name)
    free = next(
        (
            i
            for i, e in enumerate(loop[:-1])
            if i > 0 and distance(e.path.start, apex) < 10 * CLOSE
        ),
        None,
    )
    if free is None:
        raise PaperError(
            f"{s.name}: cut the piece {p.code} through to the apex before closing it"
        )
    after, before = loop[:free], loop[free:]  # after: second leg on; before: first leg
    if moving in {e.name for e in after}:
        m = _onto(second.path, first.path.reversed(), apex)
        turning = {e.name for e in after}
    elif moving in {e.name for e in before}:
        m = _onto(first.path.reversed(), second.path, apex)
        turning = {e.name for e in before}
    else:
        raise PaperError(f"{p.code} has no edge {moving} to turn with the dart")
    edges = [e.moved(m) if e.name in turning else e for e in (*before, *after)]
    kept = [e for e in edges if e.name not in names]
    i = len(before) - 1  # the first leg was the last of `before`
    kept = [*_pin(tuple(kept[:i]), tuple(kept[i:])), *kept[i:]]
    moved_part = Piece(
        "part", "part", tuple(before if moving in {e.name for e in before} else after)
    )
    out = replace(
        p,
        edges=tuple(kept),
        marks=tuple(k.moved(m) if moved_part.contains(k.at) else k for k in p.marks),
        lines=tuple(
            k.moved(m)
            if moved_part.contains(k.path.at_length(k.path.length / 2))
            else k
            for k in p.lines
        ),
        grain=(m(p.grain[0]), m(p.grain[1]))
        if p.grain and moved_part.contains(p.grain[0])
        else p.grain,
    )
    return sheet.unsew(seam).put(out)


def _onto(path: Path, target: Path, apex: Point) -> Motion:
    """The turn about the apex that lays the far end of `path` on that of `target`."""

    def far(q: Path) -> Point:
        return q.end if distance(q.start, apex) < distance(q.end, apex) else q.start

    a, b = far(path) - apex, far(target) - apex
    angle = degrees_between(a, b)
    for sign in (1, -1):
        m = turn(apex, sign * angle)
        if distance(m(far(path)), far(target)) < max(0.05, 1e-6):
            return m
    return turn(apex, angle)
