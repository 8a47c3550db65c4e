"""Pockets set on, or into, the front of a top or dress in one, below its waist: patch,
welt or jetted (transformations §9)."""

from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, Vector
from clothwright.features.about import About
from clothwright.features.pockets.set_on import DEEP, SRC, SetBelow, Shaped
from clothwright.features.pockets.set_on_drawing import (
    HIP,
    OPENING,
    Mouth,
    from_side,
)
from clothwright.paper import Drafting, PaperError, Piece, Sheet
from clothwright.rules import RuleTable
from clothwright.units.fields import Length

FRONT = "F"
"""The front of a top, where no seam divides it."""

_HAND = 22.0
"""A mouth at the level of the hand lies so far below the waist, cm (§9: 22 to 28)."""

_DART_CLEAR = OPENING + 0.5
"""The mouth lies so far below the point of the front's dart, cm (our own)."""

ABOVE_HEM = 3.0
"""None comes nearer to the hem of a top, cm (our own)."""

_HEM_CLEAR = ABOVE_HEM + 1.5
"""By itself it ends so far above the level of the hem, which rises at the side, cm (our
own)."""

_LEAST = 8.0
"""No pocket is shallower by itself, cm (our own)."""

TOP_POCKET = RuleTable("pockets on the front of a top")


@TOP_POCKET.rule(
    "kd",
    "depth of the pocket, below its mouth",
    source=SRC,
    key="k_deep",
    formula="15/13 of its width, but clear of dart and hem",
    low=6.0,
    high=30.0,
)
def _deep(k_wide: float, L: float, lf_T: float) -> float:
    room = L - lf_T - _DART_CLEAR - _HEM_CLEAR
    return min(k_wide * DEEP, max(_LEAST, room))


@TOP_POCKET.rule(
    "kb",
    "mouth below the waist",
    source=SRC,
    key="k_down",
    formula="22 cm, the level of the hand, or so that it ends 4.5 cm above "
    "the hem, but below the dart",
    low=3.0,
    high=40.0,
)
def _down(L: float, k_deep: float, lf_T: float) -> float:
    return min(_HAND, max(L - _HEM_CLEAR - k_deep, lf_T + _DART_CLEAR))


_N = SetBelow.numbers()


class TopPocket(SetBelow, Shaped):
    """A pair of pockets on the front of a torso in one."""

    kind: Literal["top pocket"] = "top pocket"
    title: ClassVar[str] = "Pockets on the front of a top"
    sentence: ClassVar[str] = (
        "A {shape} [pocket] lies on the front at each side, {width} wide, {below} "
        "below the waist."
    )
    pieces: ClassVar[tuple[About, ...]] = HIP.abouts(("front", "waist"))
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    needs: ClassVar[dict[str, str]] = {
        "torso": "these pockets lie below the waist of a torso in one; a skirt has a "
        '"set pocket"'
    }
    clashes: ClassVar[dict[str, str]] = {
        **SetBelow.clashes,
        "front panel seam": "a panel seam runs where the pocket is; set a "
        '"panel pocket" over it, or lead the bust dart elsewhere',
        "torso seam": "a seam crosses the torso where the pocket is; set the pocket on "
        "the skirt, or leave the seam out",
    }

    above_hem: ClassVar[float] = ABOVE_HEM

    below: Annotated[
        Length | None,
        replace(
            _N["below"],
            name="mouth below the waist",
            cm=None,
            inch=None,
            usual=(6.0, 28.0),
        ),
    ] = None
    beside: Annotated[Length | None, replace(_N["beside"], cm=5.0, inch=2.0)] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TOP_POCKET,)

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(FRONT)

    def _mouth(self, d: Drafting) -> Mouth:
        """Level, in from the side. Raises PaperError."""
        d.part = "waist"
        front, n = d.sheet.piece(FRONT), d.n
        level = n.yW + n.k_down
        across = Path.line(Point(-60.0, level), Point(n.X, level))
        sides = (e.path for e in front.edges if e.name.startswith("side"))
        hits = [across.at_length(s) for p in sides for _, s in p.meets(across)]
        if not hits:
            raise PaperError(
                "the mouth of the pocket (kb) lies below the hem: set it higher"
            )
        s = d.found(
            "Pks",
            hits[0],
            "level of the pocket on the side",
            amounts=(("below the waist line", "k_down"),),
        )
        centre = Path.line(Point(n.X, -20.0), Point(n.X, n.yW + n.L))
        return from_side(d, self.kit, FRONT, s, Vector(1.0, 0.0), centre)
