"""Cuff of a knit sleeve: a band closed to a ring that the hand passes (truing 2)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Point
from clothwright.features.about import About
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.knits.about import knitted
from clothwright.features.knits.knit_band import BELOW, BandCloth, lay_band, stretch_of
from clothwright.features.knits.knit_findings import cuff_findings
from clothwright.features.knits.knit_seams import stretched_band
from clothwright.features.knits.knit_sewing import band_operations
from clothwright.features.knits.knit_sleeve import SLEEVE
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding
from clothwright.paper import Drafting, Edge, Seam, Sheet, redraw
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "truing 2"

CUFF = "KC"
"""Code of the piece."""

RING = RuleTable("knit cuff")


@RING.rule(
    "end",
    "width of what is sewn to the end of the sleeve",
    source=_SRC,
    key="end_depth",
    formula="width of the cuff",
)
def _depth(cuff_w: float) -> float:
    return cuff_w


@RING.rule(
    "cuff",
    "length of the cuff, round the arm",
    source=_SRC,
    key="band_cuff",
    formula="hem width·rc",
)
def _length(hem_sleeve: float, cuff_share: float) -> float:
    return hem_sleeve * cuff_share


STRETCH = stretch_of("s_cuff", "sc", "cuff")


class KnitCuff(Feature):
    """Cuff that a knit sleeve ends in."""

    kind: Literal["knit cuff"] = "knit cuff"
    title: ClassVar[str] = "Knit cuff"
    sentence: ClassVar[str] = (
        "The sleeves end in [cuffs] of {cloth}, {width} wide and cut {share} times as "
        "long as the end of the sleeve."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {"rc": ("KC.cuff", "KS.hem"), "HD": ("KC.cuff",)}
    pieces: ClassVar[tuple[About, ...]] = (knitted(CUFF, "band"),)
    seams: ClassVar[Mapping[str, str]] = {
        "S98": "cuff of a knit sleeve",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"knit sleeve end"})
    needs: ClassVar[dict[str, str]] = {
        "knit sleeve": 'it ends a knit sleeve; add a "knit sleeve", or take a "cuff" '
        'for a "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "knit sleeve end": "a sleeve ends in one thing"
    }

    cloth: BandCloth = BandCloth.SELF
    """What it is cut from."""

    width: Annotated[
        Length | None,
        Number(
            "cuff_w",
            "wc",
            "finished width of the cuff",
            _SRC,
            5.0,
            2.0,
            1.0,
            20.0,
            (2.0, 8.0),
        ),
    ] = None
    share: Annotated[
        Ratio | None,
        Number(
            "cuff_share",
            "rc",
            "length of the cuff, share of the sleeve's end",
            _SRC,
            0.88,
            None,
            0.6,
            1.0,
            (0.80, 0.92),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (RING, STRETCH[self.cloth])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_END, "the knit cuff", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        onto = t.chain((SLEEVE, "hem", False))
        plan = n.band_cuff - n.hem_sleeve
        return stretched_band(t, "S98", CUFF, "cuff", onto, plan)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return self.cloth.cuts(CUFF, "2 (1 pair)", 2)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return band_operations(sheet, fmt, "cuffs", "S98", Work.HEM, 2 * n.hem_sleeve)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return cuff_findings(n)


def _draft(d: Drafting) -> None:
    """Draw the cuff (KC); the hem of the sleeve is sewn to it."""
    n = d.n
    d.part = "band"
    hem = Edge("hem", d.sheet.edge(SLEEVE, "hem").path)
    d.sheet = redraw(d.sheet, SLEEVE, ["hem"], [hem])
    lay_band(
        d,
        CUFF,
        "Cuff",
        ("Ki", "Kj"),
        Point(-n.band_cuff / 2, n.under_arm + BELOW),
        "band_cuff",
        "cuff_w",
        "cuff",
        folded=False,
    )
