"""Patch pockets on a gathered skirt, or on one of its tiers (transformations §9)."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.skirt import FRONT
from clothwright.curves import Path, Point, Vector
from clothwright.features.about import About
from clothwright.features.pockets.set_on import DEEP, SRC, SetBelow, Shape
from clothwright.features.pockets.set_on_drawing import HIP, Mouth, from_side
from clothwright.features.skirts.gathered_skirt import TIERS, depths, tier_word
from clothwright.paper import Drafting, PaperError, Piece, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_CP = "common practice, no source"

_CLEAR = 3.0
"""A patch ends so far above the seam below its tier, cm (our own)."""

_LEAST = 8.0
"""No patch is shallower by itself, cm (our own)."""


class Tier(Enum):
    """What it lies on, from the waist."""

    FIRST = "first tier"
    """The skirt itself where it is in one piece."""

    SECOND = "second tier"
    THIRD = "third tier"
    FOURTH = "fourth tier"

    @property
    def count(self) -> int:
        return list(Tier).index(self) + 1


def _deep_on(tier: Tier) -> RuleTable:
    page = RuleTable(f"patch pockets on the {tier.value}")

    @page.rule(
        "kd",
        "depth of the pocket, below its mouth",
        source=SRC,
        key="k_deep",
        formula="15/13 of its width, but ending 3 cm above the seam below the tier",
        low=6.0,
        high=30.0,
    )
    def _deep(k_wide: float, k_down: float, L: float, tiers: float) -> float:
        deep = depths(L, max(tier.count, round(tiers)))[tier.count - 1]
        return min(k_wide * DEEP, max(_LEAST, deep - k_down - _CLEAR))

    return page


_DEEP = {tier: _deep_on(tier) for tier in Tier}

_N = SetBelow.numbers()


class TierPocket(SetBelow):
    """A pair of patch pockets on gathered cloth, stitched on before it is gathered."""

    kind: Literal["tier pocket"] = "tier pocket"
    title: ClassVar[str] = "Patch pockets on a gathered skirt"
    sentence: ClassVar[str] = (
        "A patch [pocket] lies on the {tier} at each side of the front, {width} wide, "
        "{below} below its gathers."
    )
    pieces: ClassVar[tuple[About, ...]] = HIP.abouts(("skirt front", "tiers"))
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    needs: ClassVar[dict[str, str]] = {
        "gathered waist": "these pockets lie on a gathered skirt; a straight one has a "
        '"set pocket"'
    }
    above_hem: ClassVar[float] = _CLEAR - 0.05

    tier: Tier = Tier.FIRST
    below: Annotated[
        Length | None,
        replace(
            _N["below"],
            name="mouth below the gathers of its tier",
            source=_CP,
            cm=6.0,
            inch=2.375,
            usual=(4.0, 20.0),
        ),
    ] = None
    beside: Annotated[
        Length | None,
        replace(
            _N["beside"],
            name="end of the mouth from the side, before gathering",
            source=_CP,
            cm=10.0,
            inch=4.0,
            high=60.0,
        ),
    ] = None

    @property
    def made(self) -> Shape:
        return Shape.PATCH

    @property
    def _said(self) -> str:
        return "a pair, on the front"

    def wants(self) -> Mapping[str, str]:
        word = tier_word(self.tier.count)
        return {
            **self.needs,
            word: f"the skirt has no {self.tier.value} for these pockets to lie on; "
            "set another tier, or tiers of the gathered skirt",
        }

    def tables(self) -> tuple[RuleTable, ...]:
        return (_DEEP[self.tier],)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield (
            f"Patch pockets: stitch them on the front of the {self.tier.value} while "
            "it lies flat; gather above them only when they are on."
        )

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(self._code)

    @property
    def _code(self) -> str:
        return (FRONT, *TIERS)[self.tier.count - 1]

    def _mouth(self, d: Drafting) -> Mouth:
        """Level, in from the side."""
        d.part = "skirt front" if self._code == FRONT else "tiers"
        piece = self._on(d.sheet)
        side = piece.edge("side").path.reversed()
        if d.n.k_down > side.length:
            raise PaperError(
                f"the mouth of the pocket (kb) lies below its tier, which is "
                f"{side.length:.1f} cm deep: set it higher"
            )
        s = d.found(
            "Pks",
            side.at_length(d.n.k_down),
            f"level of the pocket on the side of the {self.tier.value}",
            amounts=(("down from its gathers", "k_down"),),
        )
        x = piece.edge("cf").path.start.x
        centre = Path.line(Point(x, 0.0), Point(x, side.length))
        return from_side(d, self.kit, self._code, s, Vector(1.0, 0.0), centre)
