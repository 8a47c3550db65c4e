"""The knit skirt as the first feature of a skirt, drawn in by elastic (blocks F;
transformations 8)."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import knit_skirt
from clothwright.blocks.knit_rules import KNIT
from clothwright.blocks.knit_skirt import KNIT_SKIRT, SKIRT
from clothwright.features.about import About
from clothwright.features.base import (
    ONE_BLOCK,
    Cuts,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
    useless,
)
from clothwright.features.chains import Chains
from clothwright.features.knits.about import knitted
from clothwright.features.knits.knit_band import BandCloth
from clothwright.features.knits.knit_bodice import KnitBodice
from clothwright.features.knits.knit_findings import skirt_findings
from clothwright.features.knits.knit_sewing import (
    band_operations,
    skirt_notes,
    skirt_operations,
)
from clothwright.features.knits.knit_skirt_seams import (
    knit_skirt_joints,
    knit_skirt_seams,
)
from clothwright.features.knits.knit_waistband import (
    HEIGHT,
    SHARE,
    WAISTBAND,
    lay_waistband,
    tables_of,
    waistband_findings,
)
from clothwright.features.notions import Notion
from clothwright.features.operations import Operation, Stitch, Work
from clothwright.features.roles import Role
from clothwright.features.skirts.elastic_casing import (
    ElasticCasing,
    raise_top,
    top_of_casing,
)
from clothwright.findings import Finding
from clothwright.paper import Drafting, Edge, Piece, Seam, Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_KNIT = KnitBodice.numbers()


class Top(Enum):
    """What draws its waist in."""

    ELASTIC = "by an elastic in a casing"
    SELF = "by a band of the same cloth"
    RIB = "by a band of rib"

    @property
    def cloth(self) -> BandCloth | None:
        """What a band is cut from; None without one."""
        if self is Top.ELASTIC:
            return None
        return BandCloth.SELF if self is Top.SELF else BandCloth.RIB


def _waist(piece: Piece, edge: Edge) -> Role:
    return top_of_casing(piece, edge) or Role.KNIT


class KnitSkirt(ElasticCasing):
    """Skirt of knitted cloth without darts or opening, front and back alike."""

    kind: Literal["knit skirt"] = "knit skirt"
    title: ClassVar[str] = "Knit skirt"
    sentence: ClassVar[str] = (
        "A [knit skirt] {length} long, of a cloth that stretches {stretch} per cent, "
        "each side let out {flare} at the hem, is drawn in at the waist {top}."
    )
    page: ClassVar[int] = 0
    stitched: ClassVar[Stitch] = Stitch.ZIGZAG
    """Of knitted cloth it gives over the hip, where a lockstitch breaks (common
    practice)."""

    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", (SKIRT,), ("hem", "centre"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        "s": ("KQ.side",),
        "R": ("KQ.side",),
        "ph": ("KQ.side",),
        "casing": ("KQ.waist",),
        "flare": ("KQ.hem",),
        "rw": ("KV.waist", "KQ.waist"),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        replace(knitted(SKIRT, "knit skirt"), edges={"waist": _waist}),
        knitted(WAISTBAND, "band"),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S121": "side of a knit skirt",
        "S122": "waistband of a knit skirt",
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"block", "knit skirt", "knit front", "waist finish", "elastic waist"}
    )
    clashes: ClassVar[dict[str, str]] = {
        **ONE_BLOCK,
        **ElasticCasing.clashes,
        "skirt opening": "a knit skirt is pulled on and needs no zip; leave it off",
    }
    codes: ClassVar[tuple[str, ...]] = (SKIRT,)
    wider: ClassVar[tuple[str, str]] = (
        "s",
        "Take a cloth that stretches more (s), or cut the waist wider.",
    )

    top: Top = Top.ELASTIC
    """What draws its waist in."""

    band: Annotated[Length | None, HEIGHT] = None
    share: Annotated[Ratio | None, SHARE] = None
    stretch: Annotated[Ratio | None, _KNIT["stretch"]] = None
    recovery: Annotated[Ratio | None, _KNIT["recovery"]] = None
    hip: Annotated[Ratio | None, _KNIT["hip"]] = None
    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            "the order",
            60.0,
            24.0,
            20.0,
            125.0,
            (35.0, 110.0),
        ),
    ] = None
    flare: Annotated[Length | None, _KNIT["flare"]] = None

    @property
    def _idle(self) -> tuple[str, ...]:
        """Fields that its top has no use for."""
        return ("band", "share") if self.top.cloth is None else ("width", "shorter")

    def given(self, unit: Unit) -> Iterable[Given]:
        idle = {self.numbers()[field].key for field in self._idle}
        return (g for g in super().given(unit) if g.key not in idle)

    def tables(self) -> tuple[RuleTable, ...]:
        return (KNIT, KNIT_SKIRT, *tables_of(self.top.cloth))

    def stages(self) -> tuple[Stage, ...]:
        block = Stage(Rank.BLOCK, "the knit skirt", knit_skirt.draft)
        if self.top.cloth is None:
            return (block, Stage(Rank.FACING, "the elastic waist", _raise))
        return (block, Stage(Rank.FACING, "the waistband", lay_waistband))

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return knit_skirt_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return knit_skirt_joints(sheet)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        cloth = self.top.cloth
        band = {} if cloth is None else cloth.cuts(WAISTBAND, "2 on fold", 2)
        return {SKIRT: Cuts("2 on fold", 2), **band}

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        return super().notions(n, sheet) if self.top.cloth is None else ()

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield from skirt_notes(n, fmt)
        if self.top.cloth is None:
            yield from super().notes(n, sheet, fmt)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield from skirt_operations(SKIRT, "S121")
        if self.top.cloth is None:
            yield from super().operations(n, sheet, fmt)
        else:
            edge = 4 * sheet.length(SKIRT, "waist")
            yield from band_operations(sheet, fmt, "waistband", "S122", Work.BAND, edge)

    def least(self, n: Numbers) -> float:
        return knit_skirt.passes(n.H, n.s_knit)

    def girth(self, sheet: Sheet) -> float:
        """Its top, which is turned in and narrower than the fold."""
        return min(super().girth(sheet), 4 * sheet.length(SKIRT, "waist"))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        so = f"A skirt that is drawn in {self.top.value}"
        yield from useless(self, self._idle, so, "Leave it out, or choose another top.")
        if self.top.cloth is None:
            yield from super().checks(n, sheet)
        else:
            yield from waistband_findings(n)
        yield from skirt_findings(n)


def _raise(d: Drafting) -> None:
    raise_top(d, (SKIRT,), "knit skirt")
