"""Pockets set on, or into, the cloth: patch, welt and jetted (transformations §9): what
those of skirts, trousers and tops have in common."""

from abc import abstractmethod
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar

from clothwright.features.base import Cuts, Feature, Number, Rank, Stage, useless
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation
from clothwright.features.pockets.set_on_drawing import (
    BESIDE,
    HIP,
    OPENING,
    Kit,
    Mouth,
    jetted,
    patch,
    welt,
)
from clothwright.features.pockets.set_on_hem import FOOT, hem_level
from clothwright.features.pockets.set_on_sewing import (
    interlining,
    jets_made,
    mouth_interlined,
    patch_sewn,
    pockets,
    welt_made,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, Piece, Sheet
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

SRC = "transformations §9"

FROM_SIDE = 3.0
"""A patch stays so far from the side, cm (§9)."""

HAND_AND = 4.0
"""A bag is half the hand's girth and so much wide, cm (§9)."""

_DARTS = ("dart", "pleat", "leg ")
"""Edges that are sewn to each other within a piece begin so."""

DEEP = 15 / 13
"""A patch is deeper than it is wide by so much (transformations 9: 13 by 15 cm)."""

SET_ON = RuleTable("pockets set on or in")


@SET_ON.rule(
    "kd",
    "depth of the pocket, below its mouth",
    source=SRC,
    key="k_deep",
    formula="15/13 of its width",
    low=6.0,
    high=30.0,
)
def _deep(k_wide: float) -> float:
    return k_wide * DEEP


class Shape(Enum):
    """How it is made."""

    PATCH = "patch"
    """Stitched on, its lower corners rounded."""

    WELT = "welt"
    """A slit with a stand, the bag behind it."""

    JETTED = "jetted"
    """A slit between two narrow folds, the bag behind it."""


_USELESS = {
    Shape.PATCH: ("welt",),
    Shape.WELT: ("corner",),
    Shape.JETTED: ("corner", "welt"),
}
"""Fields that mean nothing to a shape."""


class SetOn(Feature):
    """Base of the pockets that are set on, or into, the cloth."""

    kit: ClassVar[Kit] = HIP
    places: ClassVar[tuple[str, str]]
    """Symbols of the numbers that say how far from the side, or the centre, and how
    high it lies."""

    width: Annotated[
        Length | None,
        Number(
            "k_wide",
            "kw",
            "width of the mouth",
            SRC,
            13.0,
            5.0,
            8.0,
            22.0,
            (12.0, 15.0),
        ),
    ] = None
    depth: Annotated[
        Length | None,
        Number(
            "k_deep",
            "kd",
            "depth of the pocket, below its mouth",
            SRC,
            low=6.0,
            high=30.0,
            usual=(12.0, 18.0),
        ),
    ] = None
    corner: Annotated[
        Length | None,
        Number(
            "k_round",
            "kr",
            "radius of a patch's lower corners; 0 is mitred",
            SRC,
            2.0,
            0.75,
            0.0,
            6.0,
        ),
    ] = None

    @property
    @abstractmethod
    def made(self) -> Shape:
        """How it is made."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (SET_ON,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.CLOSURE, f"the {self.made.value} pocket", self._draw),)

    @abstractmethod
    def _mouth(self, d: Drafting) -> Mouth:
        """Where it opens. Raises PaperError."""

    @abstractmethod
    def _on(self, sheet: Sheet) -> Piece:
        """What it is set on, at last."""

    def _draw(self, d: Drafting) -> None:
        m = self._mouth(d)
        if self.made is Shape.PATCH:
            patch(d, self.kit, m, self._said)
        elif self.made is Shape.WELT:
            welt(d, self.kit, m, self._said)
        else:
            jetted(d, self.kit, m, self._said)

    @property
    def many(self) -> int:
        """How many of them the garment has."""
        return 2

    @property
    def _said(self) -> str:
        return "a pair" if self.many == 2 else "one, on the left"

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        pair = self.many == 2
        if self.made is Shape.PATCH:
            return {} if pair else {self.kit.patch: Cuts("1")}
        stiff, jets = ("shell", "interlining"), 2 * self.many
        bags = (
            Cuts("4 (2 pairs)", 4, ("lining",)) if pair else Cuts("2", 2, ("lining",))
        )
        out = {
            self.kit.bag: bags,
            self.kit.facing: Cuts("2", 2) if pair else Cuts("1"),
        }
        if self.made is Shape.JETTED:
            return {**out, self.kit.jet: Cuts(str(jets), jets, stiff)}
        welts = Cuts("2 (1 pair)", 2, stiff) if pair else Cuts("1", 1, stiff)
        return {**out, self.kit.welt: welts}

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        if self.made is not Shape.PATCH:
            what = pockets(self.kit, self.made.value, self.many).capitalize()
            yield (
                f"{what}: stitch along both lines, {fmt(OPENING)} apart, slash between "
                "them and into the corners."
            )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        if self.made is not Shape.PATCH:
            length, width = interlining(self.kit, n)
            yield Notion(
                Article.STRIP,
                self.many,
                f"behind the {self.kit.what}pocket mouth{'s' * (self.many - 1)}",
                length=length,
                size=width,
            )

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        if self.made is Shape.PATCH:
            made = patch_sewn(self.kit, sheet, self.many, fmt)
        else:
            yield mouth_interlined(self.kit, n, self.many, fmt)
            how = welt_made if self.made is Shape.WELT else jets_made
            made = how(self.kit, n, sheet, self.many, fmt)
        if self.many == 1:  # "one, on the left"
            made = replace(made, says=(f"Only {self._said}.", *made.says))
        yield made

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        key, shape = self.kit.key, self.made.value
        on, m = self._on(sheet), self._at(n, sheet)
        deep = n[f"{key}_deep"]
        what, known = pockets(self.kit, shape, 1), self.numbers()
        fields = [k for k in _USELESS[self.made] if k in known]
        yield from useless(self, fields, f"A {shape} pocket", "Leave it out.")
        beside = self._beside(n, sheet)
        if self.made is Shape.PATCH and beside < FROM_SIDE - 0.05:
            yield Finding(
                "KP1",
                Severity.WARN,
                f"The {what} lies {beside:.1f} cm from the side; {FROM_SIDE:g} cm "
                "keeps it clear of the seam.",
                self.places[0],
                f"Set it ({self.places[0]}) further in.",
                {self.places[0]: beside},
            )
        if self._over_edge(sheet, m, deep):
            yield Finding(
                "KP5",
                Severity.REFUSE,
                f"The {what} lies over a seam or an edge of the {on.name.lower()}.",
                self.places[0],
                f"Make it ({key}w, {key}d) smaller, or set it elsewhere "
                f"({', '.join(self.places)}).",
            )
        darts = [e.path for e in on.edges if e.name.startswith(_DARTS)]
        darts += [k.path for k in on.lines if "dart" in k.name]
        seen = m.around(deep) if self.made is Shape.PATCH else m.stitched()
        if any(e.meets(seen) for e in darts):
            yield self._over_dart(what)

    def _at(self, n: Numbers, sheet: Sheet) -> Mouth:
        """Where it opens, as it was drawn."""
        a, b = (sheet.points[k] for k in self.kit.ends())
        return Mouth(self._on(sheet).code, a, b)

    def _over_edge(self, sheet: Sheet, m: Mouth, deep: float) -> bool:
        """True for a pocket that a seam or an edge crosses, but the one that it is set
        over, or that is cut off."""
        around, on, but = m.around(deep), [sheet.piece(m.code)], list(_DARTS)
        if m.beyond is not None:
            on.append(sheet.piece(m.beyond.code).moved(m.beyond.onto))
            but.append(m.beyond.seam)
        edges = (
            e.path for p in on for e in p.edges if not e.name.startswith(tuple(but))
        )
        corners = [k.start for k in around.segments]
        if m.beyond is None:
            lies = any(on[0].contains(p) for p in corners)
        else:
            lies = all(any(k.contains(p) for k in on) for p in corners)
        return any(e.meets(around) for e in edges) or not lies

    @abstractmethod
    def _beside(self, n: Numbers, sheet: Sheet) -> float:
        """A pocket from the side, cm."""

    def _over_dart(self, what: str) -> Finding:
        if self.made is Shape.PATCH:
            return Finding(
                "KP3",
                Severity.NOTE,
                f"The {what} lies over a dart.",
                self.places[1],
                "Mark its place anew when the dart is sewn, or set it clear of it.",
            )
        return Finding(
            "KP3",
            Severity.WARN,
            f"The mouth of the {what} crosses a dart.",
            self.places[1],
            f"Set it ({self.places[1]}) clear of it, or make the darts shorter.",
        )


class Shaped(SetOn):
    """Base of those that may be a patch, or lie behind a welt or jets."""

    shape: Shape = Shape.PATCH
    welt: Annotated[
        Length | None,
        Number("k_welt", "kh", "height of a welt", SRC, 2.5, 1.0, 1.0, 5.0, (2.0, 4.0)),
    ] = None

    @property
    def made(self) -> Shape:
        return self.shape


class AboveHem(SetOn):
    """Base of those that lie below the waist, where a hand goes in."""

    above_hem: ClassVar[float] = 5.0
    """None comes nearer to the hem, cm (our own)."""

    clashes: ClassVar[dict[str, str]] = {
        "set pocket": "one pair of patch, welt or jetted pockets is set on",
    }

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        key, shape, on = self.kit.key, self.made.value, self._on(sheet)
        m = self._at(n, sheet)
        bag = n[f"{key}_wide"] + 2 * BESIDE
        hand = n.HD / 2 + HAND_AND if "HD" in n else 0.0
        if self.made is not Shape.PATCH and bag < hand - 0.05:
            yield Finding(
                "KP4",
                Severity.WARN,
                f"The bag of the {shape} pocket is {bag:.1f} cm wide; her hand wants "
                f"{hand:.1f} cm.",
                f"{key}w",
                f"Make the mouth ({key}w) wider.",
                {"bag": bag, "hand": hand},
            )
        low, hem = m.around(n[f"{key}_deep"]).bounds()[3], hem_level(on)
        if low > hem - self.above_hem:
            yield Finding(
                "KP2",
                Severity.REFUSE,
                f"The {shape} pocket ends {max(0.0, hem - low):.1f} cm above the "
                + ("seam below." if on.has(FOOT) else "hem."),
                f"{key}d",
                f"Make it ({key}d) less deep, or set it ({key}b) higher.",
                {"low": low, "hem": hem},
            )


class SetBelow(AboveHem):
    """Base of those that lie beside the side seams."""

    places: ClassVar[tuple[str, str]] = ("ks", "kb")

    below: Annotated[
        Length | None,
        Number(
            "k_down",
            "kb",
            "mouth below the waist, down the side",
            SRC,
            11.0,
            4.25,
            3.0,
            40.0,
        ),
    ] = None
    beside: Annotated[
        Length | None,
        Number(
            "k_side",
            "ks",
            "end of the mouth from the side",
            SRC,
            4.0,
            1.5,
            1.0,
            15.0,
        ),
    ] = None

    def _beside(self, n: Numbers, sheet: Sheet) -> float:
        return n[f"{self.kit.key}_side"]
