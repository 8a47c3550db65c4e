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

from clothwright.blocks import bodice
from clothwright.curves import distance
from clothwright.features.base import Feature, Rank, Stage
from clothwright.features.fittings import AnyAlteration
from clothwright.features.fittings.numbers import amount_key, fitted
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Piece, Sheet, Verb
from clothwright.rules import Given, Hand, Kind, Numbers, Rule, RuleError
from clothwright.units import Unit


class Fitting(Feature):
    """Alterations of the block after a fitting."""

    kind: Literal["fitting"] = "fitting"
    title: ClassVar[str] = "Fitting"
    sentence: ClassVar[str] = "[At the fitting] the block is altered."
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a fitting alters a bodice block; add one"
    }

    alteration: tuple[AnyAlteration, ...] = ()

    def said(self) -> str:
        words = [a.title for a in self.alteration]
        if not words:
            return "[At the fitting] nothing was altered."
        *most, last = words
        told = f"{', '.join(most)} and {last}" if most else last
        return f"[At the fitting]: {told}."

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
        return fitted(rules, given, (a.page for a in self.alteration))

    def stages(self) -> tuple[Stage, ...]:
        if not self.alteration:
            return ()
        return (Stage(Rank.FITTING, "the fitting", self._apply),)

    def _apply(self, d: Drafting) -> None:
        block = d.sheet
        for i, a in enumerate(self.alteration, 1):
            try:
                a.apply(d, amount_key(i))
            except (PaperError, RuleError) as e:
                raise PaperError(f"alteration {i} ({a.do}): {e}") from e
        _true(d, block)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:  # noqa: ARG002
        for i, a in enumerate(self.alteration, 1):
            low, high = a.usual
            if not low - 0.05 <= a.by <= high + 0.05:
                yield Finding(
                    "usual",
                    Severity.NOTE,
                    f"At the fitting: {a.title} by {a.by:.1f} cm; usual is {low:.1f} "
                    f"cm to {high:.1f} cm.",
                    f"fit {i}",
                    "Look again on the next toile.",
                    {amount_key(i): a.by},
                )


MOVED = 0.005
"""A mark or the end of an edge that has moved less than this, cm, has stayed."""


def _true(d: Drafting, block: Sheet) -> None:
    """Draw the edges of the block again through the marks as they lie now."""
    fresh = Drafting(d.n)
    bodice.lay(fresh)
    new = fresh.sheet
    for code, half in (("B", "back"), ("F", "front")):
        d.part = half
        was, piece = block.piece(code), new.piece(code)
        edges = [e for e in piece.edges if not _same(was, piece, e.name)]
        if not edges:
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
    marks = {
        k: p
        for k, p in new.points.items()
        if k not in d.sheet.points or distance(d.sheet.points[k], p) > 0
    }
    lines = {k: p for k, p in new.lines.items() if d.sheet.lines.get(k) != p}
    d.sheet = d.sheet.named(**marks).drawn(**lines).sew(*new.seams)


def _same(was: Piece, new: Piece, edge: str) -> bool:
    if not was.has(edge):
        return False
    a, b = was.edge(edge).path, new.edge(edge).path
    return (
        distance(a.start, b.start) < MOVED
        and distance(a.end, b.end) < MOVED
        and abs(a.length - b.length) < MOVED
    )
