"""Seams as the hand walks them: the two partners side by side, what is sewn in ink,
every notch where it is clipped, and both lengths in words.
"""

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from clothwright.curves import Motion, Path, Point, Vector, turned
from clothwright.making.telling import end_of, notch_words
from clothwright.paper import Piece, Run, Seam, SeamKind, Sheet, Step, Verb
from clothwright.sheets.drawing import Drawn, Hand, Scene, apart
from clothwright.truing import Walk, walk
from clothwright.units import Unit, opening, pretty_length

_Fmt = Callable[[float], str]

_TICK = 0.7
"""A notch is drawn so far to both sides of the net line, cm."""

_SET = 0.8
"""Between the ticks of a double notch, cm."""


class Walked(NamedTuple):
    """One seam: what is done, and what the figure shows."""

    seam: Seam
    text: str
    scene: Scene


def walked(steps: Sequence[Step], index: int, unit: Unit) -> list[Walked]:
    """The seams that step `index` walks, in the order in which they are stated; none
    for a step that walks none."""
    step = steps[index]
    if step.verb is not Verb.SEW or step.after is None:
        return []
    before = next((s.after for s in reversed(steps[:index]) if s.after), None)
    known = {s.code: s for s in before.seams} if before else {}
    new = [s for s in step.after.seams if known.get(s.code) != s]
    return [Walked(s, _told(step.after, s, unit), _scene(step.after, s)) for s in new]


# -- in words --------------------------------------------------------------------------
def _told(sheet: Sheet, seam: Seam, unit: Unit) -> str:
    def fmt(cm: float) -> str:
        return pretty_length(cm, unit)

    w = walk(sheet, seam)
    start = end_of(sheet, seam.start, seam.left[0], start=True)
    end = end_of(sheet, seam.end, seam.left[-1], start=False)
    name = opening(seam.name)
    said = [f"{name}, from {start} to {end}: {_lengths(sheet, w, fmt(w.left), fmt)}"]
    if notches := notch_words(seam, start, fmt):
        said.append(f"Notch: {notches}")
    return ". ".join(said) + "."


def _lengths(sheet: Sheet, w: Walk, long: str, fmt: _Fmt) -> str:
    """Both lengths, and what becomes of the difference."""
    seam = w.seam
    if seam.kind is SeamKind.TWIN:
        return f"{long}, to its own other half"
    if seam.kind is SeamKind.DART:
        return f"both legs {long}"
    one, other = (_side(sheet, chain) for chain in (seam.left, seam.right))
    by = fmt(abs(w.ease))
    if by == fmt(0.0):
        return f"{long} on {one} and on {other}"
    return f"{long} on {one}, {fmt(w.right)} on {other}, {_taken(w, by)}"


def _taken(w: Walk, by: str) -> str:
    seam = w.seam
    if seam.tucked:
        return f"{by} laid in tucks"
    if seam.gathered:
        return f"{by} gathered in"
    if seam.runs_on or seam.kind in (SeamKind.FACED, SeamKind.LAPPED):
        return f"{by} {'longer' if w.ease > 0 else 'shorter'}"
    if w.ease > 0:
        return f"{by} eased in"
    return f"stretched by {by}" if seam.stretched else f"{by} shorter"


def _side(sheet: Sheet, chain: Sequence[Run]) -> str:
    """The pieces of a chain."""
    names = dict.fromkeys(sheet.piece(r.piece).name.lower() for r in chain)
    return "the " + " and ".join(names)


# -- as a figure -----------------------------------------------------------------------
def _scene(sheet: Sheet, seam: Seam) -> Scene:
    """Every piece of a seam beside the next, its edges of the seam in ink."""
    codes = list(dict.fromkeys(r.piece for r in seam.runs()))
    pieces = [sheet.piece(c) for c in codes]
    lay = dict(zip(codes, apart(pieces), strict=True))
    drawn: list[Drawn] = []
    for piece in pieces:
        drawn += _piece(piece, seam, lay[piece.code])
    chains = (seam.left,) if seam.kind is SeamKind.TWIN else (seam.left, seam.right)
    for i, chain in enumerate(chains):
        for pair in seam.notches:
            at = pair.right if i else pair.left
            run, p, way = sheet.chain_at(chain, at)
            drawn += _ticks(lay[run.piece], p, way, pair.ticks)
    return Scene(tuple(drawn))


def _piece(piece: Piece, seam: Seam, m: Motion) -> Iterator[Drawn]:
    mine = {r.edge for r in seam.runs() if r.piece == piece.code}
    for e in piece.edges:
        yield (Hand.INK if e.name in mine else Hand.PENCIL), e.path.moved(m)


def _ticks(m: Motion, p: Point, way: Vector, count: int) -> Iterator[Drawn]:
    """The ticks of a notch across its line."""
    out = turned(way, 90) * _TICK
    for k in range(count):
        at = p + way * (_SET * (k - (count - 1) / 2))
        yield Hand.INK, Path.line(at - out, at + out).moved(m)
