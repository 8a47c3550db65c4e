"""A drawstring alone that draws in the waist of trousers that are pulled on
(transformations 8)."""

from collections.abc import Iterable, Mapping
from typing import ClassVar, Literal

from clothwright.blocks.trousers import BACK, FRONT
from clothwright.features.about import About
from clothwright.features.base import Shown
from clothwright.features.skirts.cord import Corded
from clothwright.features.skirts.drawstring_waist import DrawnWaist
from clothwright.features.skirts.elastic_casing import cased
from clothwright.features.trousers.trouser_elastic import (
    PULLED_ON,
    STRAIGHT,
    WIDER,
    pulled_on,
)
from clothwright.findings import Finding
from clothwright.paper import Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.units import Unit


class TrouserDrawstring(DrawnWaist):
    """Waist of trousers drawn in by a cord, without darts, elastic, band or opening."""

    kind: Literal["trouser drawstring"] = "trouser drawstring"
    title: ClassVar[str] = "Drawstring waist of trousers"
    sentence: ClassVar[str] = (
        "They are pulled on: a [drawstring] {cord} wide draws the waist in, in a "
        "casing turned down from the top, and comes out through two {through}, {apart} "
        "apart in front."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {
        **Corded.shows,
        "casing": ("TF.waist",),
        "Eh": ("TF.side",),
    }
    pieces: ClassVar[tuple[About, ...]] = cased(FRONT, BACK)
    gives: ClassVar[frozenset[str]] = frozenset(
        {"waist finish", "trouser opening", "cased waist", "drawstring"}
    )
    needs: ClassVar[Mapping[str, str]] = {
        "trouser block": "this drawstring waist is of trousers; a gathered skirt has a "
        '"drawstring waist"'
    }
    clashes: ClassVar[dict[str, str]] = {
        **DrawnWaist.clashes,
        "trouser opening": "a drawstring waist is pulled on and needs no fly and no "
        "zip; leave them off",
        "pleats": "the drawstring takes up the whole front; leave the pleats off",
    }
    codes: ClassVar[tuple[str, ...]] = (FRONT, BACK)
    part: ClassVar[str] = "trouser front"
    wider: ClassVar[tuple[str, str]] = WIDER

    def tables(self) -> tuple[RuleTable, ...]:
        return (*super().tables(), PULLED_ON)

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        yield STRAIGHT.usually(unit)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from super().checks(n, sheet)
        yield from pulled_on(n)
