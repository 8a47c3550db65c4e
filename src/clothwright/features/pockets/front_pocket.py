"""Pockets set on, or into, the front of trousers: patch, welt or jetted
(transformations §9)."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import FRONT
from clothwright.curves import direction
from clothwright.features.about import About
from clothwright.features.pockets.set_on import (
    DEEP,
    SRC,
    SetBelow,
    Shaped,
)
from clothwright.features.pockets.set_on_drawing import OPENING, Kit, Mouth, from_side
from clothwright.features.pockets.set_on_sewing import pockets
from clothwright.features.skirts.pocket_drawing import BAG
from clothwright.features.wholes import before_yoke
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Piece, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

THIGH = Kit("m", "Pm", "VP", "VW", "VJ", "VZ", "VO", "front ")
"""On the front of trousers, which may have pockets behind too."""

_CP = "common practice, no source"

_CLEAR = OPENING + 0.5
"""The mouth lies so far below darts and pleats, cm (our own)."""

FRONT_POCKET = RuleTable("pockets on the front of trousers")
_rule = FRONT_POCKET.rule


@_rule(
    "md",
    "depth of the front pocket, below its mouth",
    source=SRC,
    key="m_deep",
    formula="15/13 of its width",
    low=6.0,
    high=30.0,
)
def _deep(m_wide: float) -> float:
    return m_wide * DEEP


@_rule(
    "mb",
    "mouth of the front pocket below the waist, down the side",
    source=_CP,
    key="m_down",
    formula="9 cm, but 1.5 cm below darts and pleats",
    low=3.0,
    high=60.0,
)
def _down(lf_T: float, nf_T: float) -> float:
    return max(9.0, lf_T + _CLEAR) if nf_T else 9.0


_N = {**SetBelow.numbers(), **Shaped.numbers()}


class FrontPocket(SetBelow, Shaped):
    """A pair of pockets on the front of trousers."""

    kit: ClassVar[Kit] = THIGH
    kind: Literal["front pocket"] = "front pocket"
    title: ClassVar[str] = "Pockets on the front of trousers"
    sentence: ClassVar[str] = (
        "A {shape} [pocket] lies on each front, {width} wide, {below} below the waist."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = THIGH.abouts(("trouser front",))
    places: ClassVar[tuple[str, str]] = ("ms", "mb")
    gives: ClassVar[frozenset[str]] = frozenset({"front pocket"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "these pockets lie on the front of trousers"
    }
    clashes: ClassVar[dict[str, str]] = {
        "front pocket": "trousers have one pair of pockets set on the front"
    }

    width: Annotated[
        Length | None,
        replace(
            _N["width"],
            key="m_wide",
            symbol="mw",
            name="width of the front pocket",
            cm=12.0,
            inch=4.75,
        ),
    ] = None
    depth: Annotated[
        Length | None,
        replace(
            _N["depth"],
            key="m_deep",
            symbol="md",
            name="depth of the front pocket, below its mouth",
        ),
    ] = None
    corner: Annotated[
        Length | None,
        replace(
            _N["corner"],
            key="m_round",
            symbol="mr",
            name="radius of the front pocket's lower corners; 0 is mitred",
        ),
    ] = None
    welt: Annotated[
        Length | None,
        replace(
            _N["welt"],
            key="m_welt",
            symbol="mh",
            name="height of the welt on the front",
        ),
    ] = None
    below: Annotated[
        Length | None,
        replace(
            _N["below"],
            key="m_down",
            symbol="mb",
            name="mouth of the front pocket below the waist, down the side",
            source=_CP,
            cm=None,
            inch=None,
            high=60.0,
        ),
    ] = None
    beside: Annotated[
        Length | None,
        replace(
            _N["beside"],
            key="m_side",
            symbol="ms",
            name="end of the front pocket's mouth from the side",
            cm=3.5,
            inch=1.375,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FRONT_POCKET,)

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(FRONT)

    def _mouth(self, d: Drafting) -> Mouth:
        """In from the side, as the waist slopes when it is ruled from side to centre
        front."""
        d.part = "trouser front"
        front = d.sheet.piece(FRONT)
        side = before_yoke(d.sheet, FRONT).edge("side").path
        s = d.found(
            "Pms",
            side.at_length(max(0.0, side.length - d.n.m_down)),
            "level of the front pocket on the side",
            amounts=(("down", "m_down"),),
        )
        waist = front.edge("waist").path.end
        centre = front.after("waist").path
        if front.has("fly"):
            centre = centre + front.edge("crotch").path
        return from_side(
            d,
            self.kit,
            FRONT,
            s,
            direction(side.end, waist),
            centre,
            detail="as the waist slopes when it is ruled from side to centre front",
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        yield from _over_bag(self, sheet, self._at(n, sheet), n.m_deep)


def _over_bag(
    pocket: FrontPocket, sheet: Sheet, m: Mouth, deep: float
) -> Iterable[Finding]:
    """Nothing is stitched through the bag of a pocket at the side (KP6)."""
    bag = sheet.pieces.get(BAG)
    if bag is None:
        return
    around = m.around(deep)
    inside = any(bag.contains(k.start) for k in around.segments)
    if inside or bag.outline.meets(around):
        yield Finding(
            "KP6",
            Severity.REFUSE,
            f"The {pockets(pocket.kit, pocket.made.value, 1)} would be stitched "
            "through the bag of the pocket at the side.",
            pocket.places[1],
            f"Set it ({pocket.places[1]}) below that bag, make the bag (pd) less deep, "
            "or leave one of the two off.",
        )
