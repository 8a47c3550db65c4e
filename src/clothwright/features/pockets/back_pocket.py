"""Pockets set on, or into, the back of trousers: patch, welt or jetted (transformations
§9)."""

from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.trousers import BACK
from clothwright.curves import direction
from clothwright.features.about import About
from clothwright.features.pockets.set_on import SET_ON, SetBelow, Shape, Shaped
from clothwright.features.pockets.set_on_drawing import HIP, OPENING, Mouth, from_side
from clothwright.paper import Drafting, Piece, Sheet
from clothwright.rules import RuleTable
from clothwright.units.fields import Length

_CLEAR = 1.0
"""The darts end so far above the upper stitching of the mouth, cm (our own)."""

_LONGEST = 13.0
"""Length of a back dart, cm (blocks E9)."""

BACK_POCKET = RuleTable("pockets on the back of trousers")


@BACK_POCKET.rule(
    "lb T",
    "length of the back dart, of two the inner",
    source="blocks E9; ending at a pocket is common practice, no source",
    key="lb_T",
    formula="13 cm, but ending 2 cm above the mouth of the pocket; a second is 11 cm "
    "at most",
    low=6.0,
    high=16.0,
)
def _dart(k_down: float) -> float:
    return min(_LONGEST, k_down - OPENING - _CLEAR)


_N = SetBelow.numbers()


class BackPocket(SetBelow, Shaped):
    """A pair of pockets on the back of trousers."""

    kind: Literal["back pocket"] = "back pocket"
    title: ClassVar[str] = "Pockets on the back of trousers"
    sentence: ClassVar[str] = (
        "A {shape} [pocket] lies on each back, {width} wide, {below} below the waist."
    )
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = HIP.abouts(("trouser back",))
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    needs: ClassVar[dict[str, str]] = {
        "trouser block": "these pockets lie on the back of trousers"
    }

    shape: Shape = Shape.JETTED
    below: Annotated[
        Length | None,
        replace(
            _N["below"],
            source="common practice, no source",
            cm=10.5,
            inch=4.25,
            low=8.0,
            high=20.0,
            usual=(9.0, 14.0),
        ),
    ] = None
    beside: Annotated[Length | None, replace(_N["beside"], cm=4.5, inch=1.75)] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SET_ON, BACK_POCKET)

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(BACK)

    def _mouth(self, d: Drafting) -> Mouth:
        """In from the side, as the waist slopes when it is ruled from side to centre
        back."""
        d.part = "trouser back"
        back = d.sheet.piece(BACK)
        side, seat = back.edge("side").path, back.edge("seat").path
        s = d.found(
            "Pks",
            side.at_length(min(d.n.k_down, side.length)),
            "level of the pocket on the side",
            amounts=(("down", "k_down"),),
        )
        way = direction(side.start, seat.end)
        centre = seat.reversed() + back.edge("crotch").path.reversed()
        return from_side(
            d,
            self.kit,
            BACK,
            s,
            way,
            centre,
            detail="as the waist slopes when it is ruled from side to centre back",
        )
