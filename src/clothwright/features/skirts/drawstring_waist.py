"""A drawstring alone that draws a waist in, in a casing cut in one with it and turned
down (transformations 8): what skirts and trousers have in common, and that of a
gathered skirt."""

from collections.abc import Callable, Iterable, Mapping
from typing import ClassVar, Literal

from clothwright.blocks.skirt import BACK, FRONT
from clothwright.features.about import About
from clothwright.features.base import Rank, Shown, Stage
from clothwright.features.operations import (
    Operation,
    SeamType,
    Stitch,
    Task,
    Work,
)
from clothwright.features.skirts.cord import DRAWSTRING, KEPT, Corded
from clothwright.features.skirts.elastic_casing import (
    HIP_ROOM,
    SRC,
    cased,
    casing_girth,
    folded_in,
    passes_hip,
    raise_top,
)
from clothwright.findings import Finding
from clothwright.paper import Drafting, Run, Sheet
from clothwright.rules import Numbers, RuleTable

_LEAST = 2.0
"""A casing for a cord is so deep at least, cm (common practice, no source)."""

CASED_CORD = RuleTable("casing of a drawstring")


@CASED_CORD.rule(
    "casing",
    "depth of the casing below the fold",
    source=f"{SRC}; common practice, no source",
    key="casing",
    formula="the opening for the cord and 0.5 cm above and below it, at least 2 cm",
)
def _casing(ds_hole: float) -> float:
    return max(_LEAST, ds_hole + 2 * (KEPT + 0.2))


class DrawnWaist(Corded):
    """Base of the waists that a drawstring alone draws in."""

    codes: ClassVar[tuple[str, ...]] = (FRONT, BACK)
    """Codes of front and back."""

    part: ClassVar[str] = "skirt front"
    """Part of the draft that its top is drawn in."""

    wider: ClassVar[tuple[str, str]]
    """The number that makes the casing wider, and what to do with it."""

    deeper: ClassVar[str] = "or the casing deeper"
    clashes: ClassVar[dict[str, str]] = {
        "waist finish": "the waist is finished one way only",
        "drawstring": "one drawstring runs in a casing; leave the other off",
    }

    def tables(self) -> tuple[RuleTable, ...]:
        return (DRAWSTRING, CASED_CORD)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the casing", self._raise), *super().stages())

    def _raise(self, d: Drafting) -> None:
        raise_top(d, self.codes, self.part)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield folded_in(n, fmt)
        yield from super().notes(n, sheet, fmt)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        yield Operation(
            Work.BAND,
            "Turn the casing down",
            (
                "Press the raw edge in, fold the top down along the waist line and "
                "stitch close to its lower edge all round: the cord goes in through "
                "its openings.",
            ),
            edges=tuple(Run(code, "waist") for code in self.codes),
            stitch=Stitch.LOCK,
            seam_type=SeamType.HEM_TWICE,
            task=Task.BAND,
        )
        yield from super().operations(n, sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        girth = casing_girth(sheet, self.codes)
        yield from passes_hip(n, girth, n.H + HIP_ROOM, self.wider)


class DrawstringWaist(DrawnWaist):
    """Waist of a gathered skirt drawn in by a cord, without elastic, band or zip."""

    kind: Literal["drawstring waist"] = "drawstring waist"
    title: ClassVar[str] = "Drawstring waist"
    sentence: ClassVar[str] = (
        "It is pulled on: a [drawstring] {cord} wide draws the waist in, in a casing "
        "turned down from the top, and comes out through two {through}, {apart} apart "
        "in front."
    )
    shows: ClassVar[Shown] = {
        **Corded.shows,
        "casing": ("SF.waist",),
        "g": ("SF.waist",),
    }
    pieces: ClassVar[tuple[About, ...]] = cased(FRONT, BACK)
    gives: ClassVar[frozenset[str]] = frozenset(
        {"waist finish", "skirt opening", "cased waist", "drawstring"}
    )
    needs: ClassVar[Mapping[str, str]] = {
        "gathered waist": "a drawstring waist must pass the hip unopened, without "
        'darts; take a "gathered skirt", or for trousers a "trouser drawstring"'
    }
    clashes: ClassVar[dict[str, str]] = {
        **DrawnWaist.clashes,
        "skirt opening": "a drawstring waist is pulled on and needs no zip; leave it "
        "off",
    }
    wider: ClassVar[tuple[str, str]] = ("g", "Make the skirt fuller (g).")
