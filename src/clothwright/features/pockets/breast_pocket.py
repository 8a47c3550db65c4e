"""Pocket set on, or into, the breast: patch, welt or jetted (transformations §9)."""

from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Point
from clothwright.features.about import About
from clothwright.features.base import Number
from clothwright.features.pockets.set_on import FROM_SIDE, SRC, Shaped
from clothwright.features.pockets.set_on_drawing import BESIDE, Kit, Mouth
from clothwright.features.pockets.top_pocket import FRONT
from clothwright.features.skirts.pocket_drawing import OFF_CENTRE
from clothwright.paper import Drafting, Piece, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

BREAST = Kit("x", "Px", "XP", "XW", "XJ", "XZ", "XO", "breast ")
"""On the breast."""

_CP = "common practice, no source"

BREAST_POCKET = RuleTable("breast pocket")


@BREAST_POCKET.rule(
    "xd",
    "depth of the breast pocket, below its mouth",
    source=SRC,
    key="x_deep",
    formula="11/10 of its width",
    low=6.0,
    high=18.0,
)
def _deep(x_wide: float) -> float:
    return x_wide * 1.1


class Sides(Enum):
    """Where it is."""

    LEFT = "left side"
    BOTH = "both sides"


_N = Shaped.numbers()


class BreastPocket(Shaped):
    """A pocket on the breast, left or on both sides."""

    kit: ClassVar[Kit] = BREAST
    kind: Literal["breast pocket"] = "breast pocket"
    title: ClassVar[str] = "Breast pocket"
    sentence: ClassVar[str] = (
        "A {shape} [breast pocket] lies on the {sides}, {width} wide, its mouth "
        "{above} above the bust point."
    )
    pieces: ClassVar[tuple[About, ...]] = BREAST.abouts(("front",))
    places: ClassVar[tuple[str, str]] = ("xi", "xu")
    gives: ClassVar[frozenset[str]] = frozenset({"breast pocket"})
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a breast pocket lies on a bodice; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "breast pocket": "one breast pocket is set on",
        "front panel seam": "a panel seam runs over the bust where the breast pocket "
        "is, and no pocket lies flat over it; lead the bust dart elsewhere, or set a "
        '"panel pocket" below the waist',
        "wrap": "a breast pocket would lie on one of the fronts that cross; leave it "
        "off",
        "cowl": "a cowl falls in folds where the breast pocket is; leave it off",
    }
    sides: Sides = Sides.LEFT
    width: Annotated[
        Length | None,
        replace(
            _N["width"],
            key="x_wide",
            symbol="xw",
            name="width of the breast pocket",
            cm=10.0,
            inch=4.0,
            low=7.0,
            high=14.0,
            usual=(9.0, 11.0),
        ),
    ] = None
    depth: Annotated[
        Length | None,
        replace(
            _N["depth"],
            key="x_deep",
            symbol="xd",
            name="depth of the breast pocket, below its mouth",
            low=6.0,
            high=18.0,
            usual=(10.0, 12.0),
        ),
    ] = None
    above: Annotated[
        Length | None,
        Number(
            "x_up",
            "xu",
            "mouth above the bust point",
            _CP,
            5.0,
            2.0,
            -2.0,
            14.0,
            (3, 9),
        ),
    ] = None
    inside: Annotated[
        Length | None,
        Number(
            "x_in",
            "xi",
            "inner end of the mouth from the centre front",
            _CP,
            4.5,
            1.75,
            OFF_CENTRE + BESIDE,
            12.0,
            (4.0, 7.0),
        ),
    ] = None
    corner: Annotated[
        Length | None,
        replace(
            _N["corner"],
            key="x_round",
            symbol="xr",
            name="radius of the breast pocket's lower corners; 0 is mitred",
            cm=1.0,
            inch=0.375,
            high=4.0,
        ),
    ] = None
    welt: Annotated[
        Length | None,
        replace(
            _N["welt"],
            key="x_welt",
            symbol="xh",
            name="height of the welt on the breast",
            cm=2.0,
            inch=0.75,
        ),
    ] = None

    @property
    def many(self) -> int:
        return 2 if self.sides is Sides.BOTH else 1

    def tables(self) -> tuple[RuleTable, ...]:
        return (BREAST_POCKET,)

    def _on(self, sheet: Sheet) -> Piece:
        return sheet.piece(FRONT)

    def _mouth(self, d: Drafting) -> Mouth:
        """Level, out from the centre front."""
        d.part, n = "front", d.n
        first, last = self.kit.ends()
        b = d.found(
            last,
            Point(n.X - n.x_in, n.y_BP - n.x_up),
            "inner end of the breast pocket's mouth",
            amounts=(
                ("in from the centre front", "x_in"),
                ("above the level of the bust point", "x_up"),
            ),
        )
        a = d.found(
            first,
            Point(b.x - n.x_wide, b.y),
            "outer end of the breast pocket's mouth",
            frm=(last,),
            amounts=(("on", "x_wide"),),
        )
        return Mouth(FRONT, a, b)

    def _beside(self, n: Numbers, sheet: Sheet) -> float:
        """From armhole or side, whichever is nearer."""
        m = self._at(n, sheet)
        outer = m.below(n.x_deep).start
        near = (
            e.path.nearest(p)[1]
            for e in self._on(sheet).edges
            if e.name.startswith(("armhole", "side"))
            for p in (m.line.start, outer)
        )
        return min(near, default=FROM_SIDE)
