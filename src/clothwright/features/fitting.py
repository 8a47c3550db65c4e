"""What was altered at a fitting: the block is changed in paper, the rest follows.

    [[feature]]
    kind = "fitting"

    [[feature.alteration]]
    do = "close front neck"
    by = "1/4 in"

Each alteration is made on the block, before necks, panels and facings are drawn, so
that all of them follow; then the block is trued: its edges are drawn again through the
marks that have moved. Source: cutting and costing 6.
"""

from collections.abc import Collection, Iterable, Mapping
from typing import ClassVar, Literal

from clothwright.curves import distance
from clothwright.features.base import Feature, Rank, Stage
from clothwright.features.fittings import AnyAlteration
from clothwright.features.fittings.ground import Ground
from clothwright.features.fittings.numbers import amount_key, fitted
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Piece, Seam, Sheet, Verb
from clothwright.rules import Given, Hand, Kind, Numbers, Rule, RuleError
from clothwright.units import Unit


class Fitting(Feature):
    """Alterations of the block after a fitting."""

    kind: Literal["fitting"] = "fitting"
    title: ClassVar[str] = "Fitting"
    sentence: ClassVar[str] = "[At the fitting] the block is altered."
    alteration: tuple[AnyAlteration, ...] = ()

    def said(self) -> str:
        words = [a.title for a in self.alteration]
        if not words:
            return "[At the fitting] nothing was altered."
        *most, last = words
        told = f"{', '.join(most)} and {last}" if most else last
        return f"[At the fitting]: {told}."

    def wants(self) -> Mapping[str, str]:
        return {
            k: f"{a.do}: {v}" for a in self.alteration for k, v in a.wants().items()
        }

    def forbids(self) -> Mapping[str, str]:
        return {k: v for a in self.alteration for k, v in a.clashes.items()}

    def given(self, unit: Unit) -> Iterable[Given]:
        """The amount of each alteration."""
        yield from super().given(unit)
        for i, a in enumerate(self.alteration, 1):
            key, hand = amount_key(i), Hand.CHOICE
            yield Given(key, f"fit {i}", a.title, Kind.LENGTH, a.by, hand, "the order")

    def rewritten(
        self, rules: Mapping[str, Rule], given: Collection[str]
    ) -> Mapping[str, Rule]:
        pages = ((a.rules, a.ground.numbers) for a in self.alteration)
        return fitted(rules, given, pages)

    def stages(self) -> tuple[Stage, ...]:
        grounds = dict.fromkeys(a.ground for a in self.alteration)
        return tuple(self._stage(ground) for ground in grounds)

    def _stage(self, ground: Ground) -> Stage:
        what = ground.pieces[-1][1] if ground.rank > Rank.FITTING else ""
        return Stage(
            ground.rank,
            "the fitting" + (f" of the {what}" if what else ""),
            lambda d: self._apply(d, ground),
        )

    def _apply(self, d: Drafting, ground: Ground) -> None:
        block = d.sheet
        for i, a in enumerate(self.alteration, 1):
            if a.ground is not ground:
                continue
            try:
                a.apply(d, amount_key(i))
            except (PaperError, RuleError) as e:
                raise PaperError(f"alteration {i} ({a.do}): {e}") from e
        _true(d, block, ground)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        for i, a in enumerate(self.alteration, 1):
            low, high = a.usual
            if not low - 0.05 <= a.by <= a.places * high + 0.05:
                yield Finding(
                    "usual",
                    Severity.NOTE,
                    f"At the fitting: {a.told(f'{a.by:.1f} cm')}; usual is {low:.1f} "
                    f"cm to {high:.1f} cm.",
                    f"fit {i}",
                    "Look again on the next toile.",
                    {amount_key(i): a.by},
                )


MOVED = 0.005
"""A mark or the end of an edge that has moved less than this, cm, has stayed."""


def _true(d: Drafting, block: Sheet, ground: Ground) -> None:
    """Draw the edges of the block again through the marks as they lie now."""
    fresh = Drafting(d.n)
    ground.lay(fresh)
    new, stays = fresh.sheet, False
    for code, half in ground.pieces:
        d.part = half
        was, piece = block.piece(code), new.piece(code)
        edges = [e for e in piece.edges if not _same(was, piece, e.name)]
        if not edges:  # what a guard of the draft would undo stays as it was cut
            stays = stays or _cut(was, d.sheet.piece(code))
            continue
        d.lay(
            Verb.REDRAW,
            d.sheet.put(piece),
            code,
            f"{half} of the block, trued",
            detail="ruled and curved again through the marks that have moved, square "
            "where they were square",
            lines=tuple(e.path for e in edges),
        )

    def rests(mark: str) -> bool:
        """True for a mark that the draft has where it was before the alteration."""
        before = block.points.get(mark)
        return before is not None and distance(before, new.points[mark]) < MOVED

    marks = {
        k: p
        for k, p in new.points.items()
        if k not in d.sheet.points
        or (distance(d.sheet.points[k], p) > 0 and not (stays and rests(k)))
    }
    lines = {k: p for k, p in new.lines.items() if d.sheet.lines.get(k) != p}
    gone = [s.code for s in block.seams if not _sewn_on(new, s)]
    d.sheet = d.sheet.unsew(*gone).named(**marks).drawn(**lines).sew(*new.seams)


def _sewn_on(new: Sheet, seam: Seam) -> bool:
    """False for a seam of the block that is none any more, as of a dart that went."""
    return all(
        new.piece(r.piece).has(r.edge) for r in seam.runs() if r.piece in new.pieces
    )


def _cut(was: Piece, now: Piece) -> bool:
    """True for a piece that an alteration has changed."""
    return not all(_same(was, now, e.name) for e in now.edges)


def _same(was: Piece, new: Piece, edge: str) -> bool:
    if not was.has(edge):
        return False
    a, b = was.edge(edge).path, new.edge(edge).path
    return (
        distance(a.start, b.start) < MOVED
        and distance(a.end, b.end) < MOVED
        and abs(a.length - b.length) < MOVED
    )
