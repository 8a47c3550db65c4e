"""Tucks level along a hem: on the end of a sleeve, or above the hem of a straight skirt
(transformations 10).

The paper is slashed level where a tuck is stitched, and what lies below is moved down
by twice its depth. Folded downwards, its ends lie on the edges below it, so that they
are cut as the folded paper shows. It is done when all else is drafted: a lining is that
of the plain piece.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from clothwright.curves import Point, Vector, turn
from clothwright.features.base import Number
from clothwright.features.grain import longest_line
from clothwright.features.hand.hand_places import NEAR
from clothwright.features.operations import Operation, SeamType, Stitch, Task, Work
from clothwright.features.tucked import (
    FOLD,
    STITCH,
    Cut,
    OverEnd,
    crossed,
    opened,
    tuck_lines,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Ease,
    NotchPair,
    PaperError,
    Piece,
    Run,
    Seam,
    SeamKind,
    Sheet,
    Verb,
)
from clothwright.rules import Kind, Numbers

_SRC = "transformations 10"

_ACROSS = turn(Point(0.0, 0.0), 90.0)
"""Turns the paper so that what lay below lies to the left, as `tucked` opens it."""

_BACK = _ACROSS.inverse()

_LEVEL = 2.0
"""A hem that bends more is not level, cm (our own)."""

_CLEAR = 3.0
"""So much of both edges beside a tuck lies above it at least, cm (our own)."""

_EVEN = 0.1
"""Both sides of a seam take in tucks alike within this, cm."""


class Tucks(NamedTuple):
    """The numbers of tucks along a hem, and how they are told."""

    key: str
    """End of the keys of their numbers."""

    symbol: str
    """End of their symbols."""

    of: str
    """Whose they are: "of the sleeve"."""

    def many(self, usual: float) -> Number:
        return Number(
            f"tucks_{self.key}",
            f"n tucks {self.symbol}",
            f"tucks {self.of}",
            _SRC,
            usual,
            low=1.0,
            high=12.0,
            kind=Kind.COUNT,
        )

    def deep(self, usual: tuple[float, float], bounds: tuple[float, float]) -> Number:
        """How deep each is: usual in cm and in inches, bounds in cm."""
        return self._length("tuck_deep", "deep", "depth of a tuck", usual, bounds)

    def gap(self, usual: tuple[float, float], bounds: tuple[float, float]) -> Number:
        """How far they lie apart, likewise."""
        name = "from the fold of a tuck to the next"
        return self._length("tuck_gap", "apart", name, usual, bounds)

    def lowest(self, usual: tuple[float, float], bounds: tuple[float, float]) -> Number:
        """How far the lowest lies above the hem, likewise."""
        name = "from the hem to the fold of the lowest tuck"
        return self._length("tuck_above", "above", name, usual, bounds)

    def _length(
        self,
        key: str,
        symbol: str,
        name: str,
        usual: tuple[float, float],
        bounds: tuple[float, float],
    ) -> Number:
        own, called = f"{key}_{self.key}", f"{symbol} {self.symbol}"
        return Number(own, called, f"{name} {self.of}", _SRC, *usual, *bounds)

    def called(self, symbol: str) -> str:
        """The symbol of one of them."""
        return f"{symbol} {self.symbol}"


def deep_of(n: Numbers, t: Tucks) -> float:
    """How deep they are, cm."""
    return n[f"tuck_deep_{t.key}"]


def count_of(n: Numbers, t: Tucks) -> int:
    """How many there are."""
    return round(n[f"tucks_{t.key}"])


def sewing(
    n: Numbers,
    t: Tucks,
    fmt: Callable[[float], str],
    title: str,
    meets: str,
    long: float,
) -> Operation:
    """How they are sewn; `meets` says where folds meet, all rows are `long`, cm."""
    return Operation(
        Work.DART,
        title,
        (
            f"Fold each level on its line and stitch {fmt(deep_of(n, t))} beside "
            "the fold, from edge to edge; begin with the lowest.",
            meets,
        ),
        stitch=Stitch.LOCK,
        seam_type=SeamType.PLAIN,
        length=long,
        task=Task.PLEAT,
        count=2.0 * count_of(n, t),
        press="down",
    )


def lay_tucks(
    d: Drafting, t: Tucks, hems: Mapping[str, str], ceilings: Mapping[str, float]
) -> None:
    """Open the tucks above the hems of these pieces, each the name of its hem; none
    rises above the level of a `ceiling`."""
    before, after = d.sheet, d.sheet
    laid: dict[str, Sequence[tuple[Cut, Cut]]] = {}
    told: list[tuple[Piece, Piece]] = []
    for code, hem in hems.items():
        plain = before.piece(code)
        levels = _levels(d.n, t, plain, hem)
        ceiling = ceilings.get(code, plain.outline.bounds()[1])
        if levels[-1] < ceiling + _CLEAR:
            raise PaperError(
                f"the tucks {t.of} reach up {ceiling + _CLEAR - levels[-1]:.1f} cm too "
                f"far: make them ({t.called('n tucks')}) fewer, or lay them nearer to "
                f"the hem ({t.called('above')})"
            )
        laid[code] = [_ends(plain, y, t) for y in levels]
        piece = _with_tucks(plain, levels, deep_of(d.n, t), t)
        after = after.put(piece)
        told.append((plain, piece))
    sheet = _sewn(before, after, laid, t)
    for plain, piece in told:
        step = deep_of(d.n, t) + d.n[f"tuck_gap_{t.key}"]
        d.lay(
            Verb.SPREAD,
            sheet,
            piece.code,
            f"{plain.name.lower()} slashed level at each tuck, and what lies below "
            "moved down",
            amounts=(
                (
                    "the lowest slash {} above the hem",
                    d.n[f"tuck_above_{t.key}"] + deep_of(d.n, t),
                ),
                ("each next {} from there", step),
                ("every slash opened by {}", 2 * deep_of(d.n, t)),
            ),
            detail="fold each tuck down and cut its ends as the edges below",
            lines=tuple(
                k.path for k in piece.lines if k.name.startswith((FOLD, STITCH))
            ),
        )


def _levels(n: Numbers, t: Tucks, piece: Piece, hem: str) -> list[float]:
    """Where they are stitched, the lowest first. Raises PaperError for a hem that is
    not level."""
    path = piece.edge(hem).path
    box = path.bounds()
    bend = box[3] - box[1]
    if bend > _LEVEL:
        raise PaperError(
            f"the hem of the {piece.name.lower()} bends by {bend:.1f} cm, and tucks "
            "lie level: cut it straight, or leave the tucks off"
        )
    lowest = path.start.y - n[f"tuck_above_{t.key}"] - deep_of(n, t)
    step = deep_of(n, t) + n[f"tuck_gap_{t.key}"]
    return [lowest - k * step for k in range(count_of(n, t))]


def _ends(plain: Piece, y: float, t: Tucks) -> tuple[Cut, Cut]:
    """The edges on both sides. Raises PaperError where a tuck meets another, or a
    pocket."""
    found = crossed(plain.moved(_ACROSS), -y)
    names = ("underarm", "side", "cf", "cb")
    clean = all(c.edge.name.startswith(names) for c in found)
    across = (
        k.name
        for k in plain.lines
        if not k.path.straight and k.path.bounds()[1] < y < k.path.bounds()[3]
    )
    if len(found) != 2 or not clean or any(across):
        raise PaperError(
            f"a tuck {t.of} would cross a pocket, an opening or the end of a seam: "
            f"make them ({t.called('n tucks')}) fewer, or lay them elsewhere "
            f"({t.called('above')})"
        )
    return found[0], found[1]


def _with_tucks(plain: Piece, levels: list[float], deep: float, t: Tucks) -> Piece:
    piece = plain.moved(_ACROSS)
    for y in levels:  # the lowest first: what lies above does not move
        try:
            piece = opened(piece, -y, deep, crossed(piece, -y))
        except OverEnd:
            raise PaperError(
                f"a tuck {t.of} would lie over the hem: lay them higher "
                f"({t.called('above')})"
            ) from None
    highest = len(levels) - 1
    lines = [
        line
        for k, y in enumerate(levels)
        for line in tuck_lines(piece, k + 1, -y - 2 * (highest - k) * deep, deep)
    ]
    piece = piece.with_lines(*lines).moved(_BACK)
    return replace(piece, grain=longest_line(piece, Vector(0.0, -1.0)))


def _sewn(
    before: Sheet,
    after: Sheet,
    laid: Mapping[str, Sequence[tuple[Cut, Cut]]],
    t: Tucks,
) -> Sheet:
    """The seams beside the tucks: both sides have grown alike, and notches below them
    move down with the paper. Raises PaperError where one side has not."""
    out = after
    for s in before.seams:
        at = [_along(before, chain, laid) for chain in (s.left, s.right)]
        if not any(at):
            continue
        grown = [
            after.chain_length(chain) - before.chain_length(chain)
            for chain in (s.left, s.right)
        ]
        if abs(grown[1] - grown[0]) > _EVEN or len(at[0]) != len(at[1]):
            raise PaperError(
                f"a tuck {t.of} would run across the {s.name}, whose other side has "
                f"none: make them ({t.called('n tucks')}) fewer, or lay them nearer "
                f"to the hem ({t.called('above')})"
            )
        out = out.sew(_moved(s, at, grown))
    return out


def _moved(s: Seam, at: list[list[float]], grown: list[float]) -> Seam:
    def shifted(side: int, length: float) -> float:
        each = grown[side] / len(at[side])
        return length + each * sum(a < length - NEAR for a in at[side])

    by = grown[1] - grown[0] if s.kind is not SeamKind.TWIN else 0.0
    return replace(
        s,
        ease=Ease(s.ease.plan + by, s.ease.low + by, s.ease.high + by),
        zone=None if s.zone is None else (shifted(0, s.zone[0]), shifted(0, s.zone[1])),
        notches=tuple(
            NotchPair(shifted(0, k.left), shifted(1, k.right), k.ticks, k.note)
            for k in s.notches
        ),
    )


def _along(
    sheet: Sheet,
    chain: tuple[Run, ...],
    laid: Mapping[str, Sequence[tuple[Cut, Cut]]],
) -> list[float]:
    """How far along a chain tucks lie, before they are opened, cm."""
    out, done = [], 0.0
    for run in chain:
        long = sheet.length(run.piece, run.edge)
        for cut in (c for ends in laid.get(run.piece, ()) for c in ends):
            if cut.edge.name == run.edge:
                out.append(done + (long - cut.at if run.backward else cut.at))
        done += long
    return out


def apart_findings(n: Numbers, t: Tucks, code: str) -> list[Finding]:
    """Spaced by their depth at least (transformations 10)."""
    deep, gap = deep_of(n, t), n[f"tuck_gap_{t.key}"]
    if count_of(n, t) < 2 or gap >= deep - 1e-6:
        return []
    return [
        Finding(
            code,
            Severity.REFUSE,
            f"The tucks {t.of} lie {gap:.1f} cm apart and are {deep:.1f} cm deep: they "
            "would lie on each other.",
            t.called("apart"),
            f"Lay them further apart, or make them less deep ({t.called('deep')}).",
            {"apart": gap, "deep": deep},
        )
    ]


def fold_length(piece: Piece) -> float:
    """Length of all folds on a piece of the paper, cm."""
    return sum(k.path.length for k in piece.lines if k.name.startswith(FOLD))
