"""Pocket set on, or into, the front or back of a skirt: a patch, a welt or jets
(transformations §9)."""

from collections.abc import Iterable, Mapping
from enum import Enum
from typing import ClassVar, Literal

from clothwright.curves import Vector
from clothwright.features.about import About
from clothwright.features.pockets.set_on import SetBelow, Shaped
from clothwright.features.pockets.set_on_drawing import HIP, Mouth, from_side
from clothwright.features.skirts.wrap_skirt_drawing import HOLDS, covered
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Piece, Sheet
from clothwright.rules import Numbers

FRONTS, BACKS = ("SF", "PF"), ("SB", "PB")
"""Pieces of a skirt, alone or of a dress, that a pocket is set on."""


class On(Enum):
    """What it is set on."""

    FRONT = "front"
    BACK = "back"


class Sides(Enum):
    """Where it is."""

    BOTH = "both sides"
    RIGHT = "right side"


_PIECES = {On.FRONT: FRONTS, On.BACK: BACKS}


class SetPocket(SetBelow, Shaped):
    """A pair of patch, welt or jetted pockets."""

    kind: Literal["set pocket"] = "set pocket"
    title: ClassVar[str] = "Patch, welt or jetted pocket of a skirt"
    sentence: ClassVar[str] = (
        "A {shape} [pocket] lies on the {on} at each side, {width} wide, {below} below "
        "the waist."
    )
    pieces: ClassVar[tuple[About, ...]] = HIP.abouts(("skirt front", "skirt back"))
    gives: ClassVar[frozenset[str]] = frozenset({"set pocket"})
    needs: ClassVar[dict[str, str]] = {
        "pocket side": "these pockets lie on a straight skirt, alone or of a dress"
    }

    on: On = On.FRONT
    sides: Sides = Sides.BOTH
    """A wrap's left front may lie under the right one where its pocket is."""

    def said(self) -> str:
        if self.many == 2:
            return self.sentence
        return (
            "A {shape} [pocket], {width} wide, lies on the {on}, on the {sides}, below "
            "the waist."
        )

    @property
    def many(self) -> int:
        return 2 if self.sides is Sides.BOTH else 1

    @property
    def _said(self) -> str:
        return "a pair" if self.many == 2 else "one, on the right"

    def forbids(self) -> Mapping[str, str]:
        """Bags of pockets at the sides hang behind the front alone."""
        if self.on is On.BACK:
            return self.clashes
        return {
            **self.clashes,
            "pockets": "a skirt front has one pair of pockets; leave the others off, "
            'or set on = "back"',
        }

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(next(c for c in _PIECES[self.on] if c in sheet.pieces))

    def _mouth(self, d: Drafting) -> Mouth:
        """Level, in from the side."""
        piece = self._on(d.sheet)
        front = self.on is On.FRONT
        d.part = "skirt front" if front else "skirt back"
        side = piece.edge("side").path
        down = side if side.start.y < side.end.y else side.reversed()
        s = d.found(
            "Pks",
            down.at_length(min(d.n.k_down, down.length)),
            "level of the pocket on the side",
            amounts=(("down", "k_down"),),
        )
        way = Vector(1.0 if front else -1.0, 0.0)
        centre = piece.edge("cf" if front else "cb").path
        return from_side(d, self.kit, piece.code, s, way, centre)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        if self.on is not On.FRONT or self.sides is not Sides.BOTH:
            return
        over = covered(sheet, sheet.points["Pkb"])
        if over > 0.05:
            yield Finding(
                "WX3",
                Severity.REFUSE,
                f"The right front of the wrap lies {over:.1f} cm over the pocket of "
                "the left one.",
                "ks",
                (
                    f"Let the fronts cross (wx S) {over:.1f} cm less, or set "
                    if n.wx_S - over >= HOLDS
                    else "Set "
                )
                + 'sides = "right side".',
                {"over": over},
            )
