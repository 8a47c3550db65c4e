"""Skirt of a dress: a circle's segment or gathered, sewn to the bodice at the waist
(blocks G1 to G10).

It is drafted as a peplum is, its shares those of the bodice's waist, but longer.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.about import About
from clothwright.features.base import (
    Cuts,
    Feature,
    Number,
    Pin,
    Rank,
    Stage,
    Words,
    useless,
)
from clothwright.features.bodice.centre_back import CLOSED
from clothwright.features.chains import Chains
from clothwright.features.notions import Notion
from clothwright.features.operations import Operation, Work
from clothwright.features.skirts import sunburst, wrap_dress
from clothwright.features.skirts.about import HANGING, HANGING_SEAMS, ONE_HANGS
from clothwright.features.skirts.hanging_seams import hanging_joints, hanging_side
from clothwright.features.skirts.peplum import BOTH_GATHERED, Peplum, widest
from clothwright.features.skirts.peplum_pieces import (
    closed_end,
    draw_circle,
    draw_gathered,
)
from clothwright.features.skirts.peplum_rules import (
    AT_EDGE,
    FLARED,
    GATHERED,
    PEPLUM,
    SUNBURST,
    called,
    clearance,
)
from clothwright.features.skirts.peplum_sewing import gathered_in, peplum_operations
from clothwright.features.skirts.straight_skirt import stride
from clothwright.features.skirts.wrap_skirt_rules import BOW, SRC
from clothwright.findings import Finding, Severity
from clothwright.paper import Drafting, PaperError, Seam, Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "blocks G"

_OF_TIES = ("tie_w", "bow")
"""Keys of the numbers that only a front that crosses needs."""


class Cut(Enum):
    """How the skirt is cut."""

    CIRCLE = "flared"
    """A segment of a circle, front and back."""

    GATHERED = "gathered"
    """Straight, gathered into the waist."""

    SUNBURST = "in sunburst pleats"
    """A segment that a pleater pleats to the centre of its arcs."""


class Front(Enum):
    """How the front of the skirt is closed."""

    FOLD = "on the fold"
    """In one piece."""

    WRAPS = "crossing"
    """In two, which cross as the fronts of the bodice do."""


_PAGES = {
    cut: tuple(called(page, "skirt") for page in (PEPLUM, own, AT_EDGE))
    for cut, own in (
        (Cut.CIRCLE, FLARED),
        (Cut.GATHERED, GATHERED),
        (Cut.SUNBURST, SUNBURST),
    )
}


_USELESS = {
    Cut.CIRCLE: ("gathers", "pleating"),
    Cut.GATHERED: ("fullness", "bias_yield", "pleating"),
    Cut.SUNBURST: ("gathers", "bias_yield"),
}
"""Fields that a skirt cut so has no use for."""

_NOT_PLEATED = {
    **dict.fromkeys(
        ("front opening", "back opening"),
        "sunburst pleats do not go on into edges that open down to the hem; close the "
        'dress with a "concealed zip" or an "underarm zip"',
    ),
    "laid waist dart": BOTH_GATHERED["laid waist dart"],
    "laid back dart": BOTH_GATHERED["laid back dart"],
}
"""What a skirt in sunburst pleats does not allow beside it."""


class DressSkirt(Feature):
    """Skirt at the waist seam of a bodice."""

    kind: Literal["dress skirt"] = "dress skirt"
    title: ClassVar[str] = "Skirt of a dress"
    sentence: ClassVar[str] = (
        "From the seam hangs a [skirt], {cut}, {length} long and {fullness} of a "
        "full circle."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", ("PF",), ("hem", "cf"), (0.0, 1.0)),
    )
    pieces: ClassVar[tuple[About, ...]] = (*HANGING, *wrap_dress.PIECES)
    seams: ClassVar[Mapping[str, str]] = {**HANGING_SEAMS, **wrap_dress.SEAMS}
    gives: ClassVar[frozenset[str]] = frozenset({"skirt", "plain hem"})
    needs: ClassVar[dict[str, str]] = {
        "waist seam": 'the skirt of a dress needs a waist seam, or a "torso" with '
        'a seam and below = "sewn on"',
        "dress opening": "a dress is put on through its back or front; add a "
        '"concealed zip" or a "button stand", or wrap it (front = "crossing")',
    }
    clashes: ClassVar[dict[str, str]] = {"skirt": ONE_HANGS}

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            _SRC,
            62.0,
            24.0,
            30.0,
            125.0,
            (45.0, 110.0),
        ),
    ] = None
    fullness: Annotated[Ratio | None, Peplum.numbers()["fullness"]] = None
    bias_yield: Annotated[Length | None, Peplum.numbers()["bias_yield"]] = None
    gathers: Annotated[Ratio | None, Peplum.numbers()["gathers"]] = None
    pleating: Annotated[Ratio | None, sunburst.RATIO] = None
    cut: Cut = Cut.CIRCLE
    front: Front = Front.FOLD
    tie: Annotated[
        Length | None,
        Number(
            "tie_w", "tie w", "width of the ties, finished", SRC, 3.0, 1.25, 1.0, 6.0
        ),
    ] = None
    bow: Annotated[Length | None, BOW] = None

    @property
    def gathered(self) -> bool:
        """True when it is straight and gathered."""
        return self.cut is Cut.GATHERED

    @property
    def pleated(self) -> bool:
        """True when a pleater pleats it."""
        return self.cut is Cut.SUNBURST

    @property
    def crosses(self) -> bool:
        """True when its front crosses."""
        return self.front is Front.WRAPS

    def said(self) -> str:
        said = self.sentence
        if self.gathered:
            said = (
                "From the seam hangs a [skirt], {cut}, {length} long and {gathers} "
                "times its waist."
            )
        if self.pleated:
            said = (
                "From the seam hangs a [skirt] {cut}, {length} long, {fullness} of a "
                "full circle as they lie and {pleating} times that in the cloth."
            )
        if self.crosses:
            return (
                f"{said[:-1]}, its front {{front}}; ties {{tie}} wide hold it, with "
                "{bow} of each for the bow."
            )
        return said

    def provides(self) -> frozenset[str]:
        words = self.gives | ({"pleated hem"} if self.pleated else set())
        words |= {"level hem"} if self.gathered else set()
        if not self.crosses:
            return words
        return words | {"dress opening", "opening", "closure", "crossing skirt"}

    def wants(self) -> dict[str, str]:
        return {**self.needs, **(wrap_dress.WANTS if self.crosses else {})}

    def forbids(self) -> dict[str, str]:
        return {
            **self.clashes,
            **(BOTH_GATHERED if self.gathered else {}),
            **(_NOT_PLEATED if self.pleated else {}),
            **(wrap_dress.FORBIDS if self.crosses else {}),
        }

    def given(self, unit: Unit) -> Iterable[Given]:
        for g in super().given(unit):
            if g.key in _OF_TIES and not self.crosses:
                continue
            if g.key == "pr" and not self.pleated:
                continue
            if g.key == "f" and self.pleated and self.fullness is None:
                g = sunburst.FULLNESS.usually(unit)
            yield g

    def tables(self) -> tuple[RuleTable, ...]:
        crossed = (wrap_dress.WRAP_DRESS, CLOSED) if self.crosses else ()
        return (*_PAGES[self.cut], *crossed)

    def stages(self) -> tuple[Stage, ...]:
        drawn = Stage(Rank.SKIRT, "the skirt", self._draft)
        if not self.pleated:
            return (drawn,)
        plain = Stage(Rank.CUT_ON, "the lining of the skirt", sunburst.plain_lining)
        return (drawn, plain)

    def _draft(self, d: Drafting) -> None:
        d.part = "skirt"
        if self.pleated and self.crosses:
            raise PaperError(
                "fronts that cross are not pleated by a pleater: set front = "
                '"on the fold", or cut = "flared" or "gathered"'
            )
        draw = draw_gathered if self.gathered else draw_circle
        draw(d, closed_end(d.sheet), called="skirt")
        if self.crosses:
            wrap_dress.cross_skirt(d, gathered=self.gathered)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return wrap_dress.CUTS if self.crosses else {}

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        yield hanging_side(t, n)
        if self.crosses:
            yield wrap_dress.waist_over(t, n, gathered=self.gathered)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return hanging_joints(sheet)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        if self.crosses:
            yield wrap_dress.note(n, fmt)
        if self.gathered:
            yield gathered_in(n, fmt, "skirt")
            return
        if self.pleated:
            yield sunburst.note(n.pr, fmt, n.w_P, n.hem)
        code, wide = widest(sheet)
        yield (
            f"The skirt needs cloth of {fmt(wide)} between the selvedges "
            f"({sheet.piece(code).name.lower()})."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        if self.pleated:
            yield sunburst.pleating("the skirt of the dress")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        if self.crosses:
            yield from wrap_dress.wrap_operations(sheet, fmt)
        if self.pleated:
            seam = "the centre back" if Chains(sheet).zipped() else "the left side"
            yield from sunburst.pleater_operations(
                sheet, ("P",), n.pr, fmt(n.w_P), seam, Work.SKIRT
            )
            return
        yield from peplum_operations(
            n,
            sheet,
            fmt,
            gathered=self.gathered,
            underlapped=False,
            hooks=0,
            called="skirt",
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        fields = _USELESS[self.cut]
        to_do = "Leave it out, or cut the skirt the other way."
        yield from useless(self, fields, f"A skirt that is {self.cut.value}", to_do)
        if not self.crosses:
            so = "A skirt whose front is on the fold"
            yield from useless(self, ("tie", "bow"), so, "Leave it out.")
        yield from clearance(n, gathered=self.gathered, called="skirt")
        hem = n.hem * (n.pr if self.pleated else 1.0)
        yield from stride(n, hem, opens=self.crosses)
        code, wide = widest(sheet)
        if "Cw" in n and wide > n.Cw:
            yield Finding(
                "Q3",
                Severity.WARN,
                f"{sheet.piece(code).name} is {wide:.1f} cm wide with its allowances; "
                f"the cloth is {n.Cw:.1f} cm between its selvedges.",
                code,
                "Lay it across the cloth, or seam the cloth.",
                {"wide": wide, "cloth": n.Cw},
            )
