"""Pockets set on, or into, two panels over the seam between them: patch, welt or jetted
(transformations §9)."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Motion, Path, Point, distance
from clothwright.features.about import About
from clothwright.features.base import Number
from clothwright.features.operations import Operation
from clothwright.features.pockets.panels import (
    On,
    centre_front,
    laid_beside,
    panel_clashes,
    panel_words,
    seam_below,
)
from clothwright.features.pockets.set_on import (
    SET_ON,
    AboveHem,
    SetBelow,
    Shape,
    Shaped,
)
from clothwright.features.pockets.set_on_drawing import BESIDE, HIP, Beyond, Mouth
from clothwright.features.skirts.pocket_drawing import OFF_CENTRE
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Piece, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_CP = "common practice, no source"

_APART = 0.4
"""Panels that lie so far apart under a pocket, laid flat, make it stand off, cm (our
own)."""

OVER_SEAM = RuleTable("pockets over a panel seam")


@OVER_SEAM.rule(
    "ko",
    "part of the mouth that lies on the centre panel",
    source=_CP,
    key="k_over",
    formula="3/10 of its width",
    low=1.0,
    high=15.0,
)
def _over(k_wide: float) -> float:
    return k_wide * 0.3


_N = {**SetBelow.numbers(), **Shaped.numbers()}


class PanelPocket(AboveHem, Shaped):
    """A pair of pockets over the front panel seams."""

    kind: Literal["panel pocket"] = "panel pocket"
    title: ClassVar[str] = "Pockets over a panel seam"
    sentence: ClassVar[str] = (
        "A {shape} [pocket] lies over each front panel seam of the {on}, {width} wide, "
        "{below} below the waist."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = HIP.abouts(("front", "waist", "skirt front"))
    places: ClassVar[tuple[str, str]] = ("ko", "kb")
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    on: On = On.TORSO
    below: Annotated[
        Length | None,
        replace(
            _N["below"],
            name="mouth below the waist, down the panel seam",
            cm=14.0,
            inch=5.5,
            low=6.0,
        ),
    ] = None
    over: Annotated[
        Length | None,
        Number(
            "k_over",
            "ko",
            "part of the mouth that lies on the centre panel",
            _CP,
            low=1.0,
            high=15.0,
        ),
    ] = None

    def wants(self) -> Mapping[str, str]:
        return panel_words(self.on)

    def forbids(self) -> Mapping[str, str]:
        return {**self.clashes, **panel_clashes(self.on)}

    def tables(self) -> tuple[RuleTable, ...]:
        return (SET_ON, OVER_SEAM)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield from super().notes(n, sheet, fmt)
        yield (
            "Pockets over the panel seams: their place is marked on both panels; check "
            "it with the panel seam sewn and pressed open."
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        """As on a whole front, once the panel seam is sewn."""
        for op in super().operations(n, sheet, fmt):
            yield replace(op, after=(self.on.panels.seam,))

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(self.on.panels.centre)

    def _other(self, n: Numbers, sheet: Sheet) -> Beyond:
        centre, side = seam_below(sheet, n, self.on)
        onto = laid_beside(centre, side, n.k_down, n.k_deep)
        return Beyond(self.on.panels.side, onto)

    def _at(self, n: Numbers, sheet: Sheet) -> Mouth:
        return replace(super()._at(n, sheet), beyond=self._other(n, sheet))

    def _mouth(self, d: Drafting) -> Mouth:
        """Level, out from the panel seam both ways. Raises PaperError."""
        n = d.n
        d.part = "waist" if self.on is On.TORSO else "skirt front"
        centre, _ = seam_below(d.sheet, n, self.on)
        beyond = self._other(n, d.sheet)
        side = d.sheet.piece(beyond.code).moved(beyond.onto)
        d.under = (side.outline,)
        s = d.found(
            "Pks",
            centre.at_length(n.k_down),
            "level of the pocket on the panel seam",
            amounts=(("down the seam, from the waist", "k_down"),),
            detail="the side panel laid against the centre panel, seam on seam there "
            "and at the foot of the pocket",
        )
        b = d.found(
            "Pkb",
            Point(s.x + n.k_over, s.y),
            "inner end of the pocket's mouth",
            frm=("Pks",),
            amounts=(("level, on the centre panel", "k_over"),),
        )
        a = d.found(
            "Pka",
            Point(b.x - n.k_wide, s.y),
            "outer end of the pocket's mouth",
            frm=("Pkb",),
            amounts=(("level, on to the side panel", "k_wide"),),
        )
        d.under = ()
        free = centre_front(d.sheet, n, self.on) - b.x
        least = OFF_CENTRE + (0.0 if self.shape is Shape.PATCH else BESIDE)
        if free < least - 1e-6:
            raise PaperError(
                f"the pocket comes to {max(0.0, free):.1f} cm from the centre, where "
                f"{least:g} cm must stay: make what lies of it on the centre panel "
                f"(ko) {least - free:.1f} cm smaller"
            )
        return Mouth(self._on(d.sheet).code, a, b, beyond)

    def _beside(self, n: Numbers, sheet: Sheet) -> float:
        """From the side, laid beside."""
        beyond = self._other(n, sheet)
        side = sheet.piece(beyond.code).moved(beyond.onto).edge("side").path
        m = self._at(n, sheet)
        return min(side.nearest(p)[1] for p in (m.outer, m.below(n.k_deep).start))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        centre, side = seam_below(sheet, n, self.on)
        onto = self._other(n, sheet).onto
        low = n.k_down + n.k_deep
        apart = _gap(centre.between(n.k_down, low), side.between(n.k_down, low), onto)
        if apart > _APART:
            yield Finding(
                "KP7",
                Severity.WARN,
                f"The panels lie {apart:.1f} cm apart under the pocket, laid flat: it "
                "covers a seam that is shaped there and will stand off.",
                "kb",
                "Set it (kb) lower, where the seam is straight.",
                {"apart": apart},
            )


def _gap(centre: Path, side: Path, onto: Motion) -> float:
    """How far two lines part, the second laid on the first by its ends, cm."""
    laid, steps = side.moved(onto), range(1, 8)
    return max(
        distance(
            centre.at_length(centre.length * k / 8), laid.at_length(laid.length * k / 8)
        )
        for k in steps
    )
