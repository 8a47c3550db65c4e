"""Band at the hem of a knit bodice, in place of a turned hem (truing 2)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.knit import BACK, FRONT
from clothwright.features.about import About
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.knits.about import knitted
from clothwright.features.knits.knit_band import (
    BandCloth,
    below_hem,
    lay_band,
    stretch_of,
)
from clothwright.features.knits.knit_findings import hem_band_findings
from clothwright.features.knits.knit_seams import stretched_band
from clothwright.features.knits.knit_sewing import band_operations
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding
from clothwright.paper import Drafting, Edge, Seam, Sheet, redraw
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "truing 2"

HEM_BAND = "KH"
"""Code of the piece."""

HEM = RuleTable("hem band")
STRETCH = stretch_of("s_hem", "sh", "hem band")


@HEM.rule(
    "band below",
    "width of what is sewn to the hem",
    source=_SRC,
    key="hem_depth",
    formula="width of the hem band",
)
def _depth(hem_w: float) -> float:
    return hem_w


@HEM.rule(
    "hem band",
    "length of the hem band, all round",
    source=_SRC,
    key="band_hem",
    formula="the hem·rh",
)
def _length(knit_hem: float, hem_share: float) -> float:
    return knit_hem * hem_share


class HemBand(Feature):
    """Band that finishes the lower edge of a knit bodice."""

    kind: Literal["hem band"] = "hem band"
    title: ClassVar[str] = "Hem band"
    sentence: ClassVar[str] = (
        "The lower edge is finished by a [band] of {cloth}, {width} wide and cut "
        "{share} times as long as the edge."
    )
    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {"rh": ("KH.hem", "KF.hem")}
    pieces: ClassVar[tuple[About, ...]] = (knitted(HEM_BAND, "band"),)
    seams: ClassVar[Mapping[str, str]] = {
        "S97": "hem band of a knit",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"knit hem"})
    needs: ClassVar[dict[str, str]] = {
        "knit bodice": "a hem band is for a knit bodice; a woven hem is turned up"
    }
    clashes: ClassVar[dict[str, str]] = {"knit hem": "a hem is finished one way only"}

    cloth: BandCloth = BandCloth.SELF
    """What it is cut from."""

    width: Annotated[
        Length | None,
        Number(
            "hem_w",
            "wh",
            "finished width of the hem band",
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
            "hem_share",
            "rh",
            "length of the hem band, share of the edge",
            _SRC,
            0.9,
            None,
            0.6,
            1.0,
            (0.80, 0.95),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (HEM, STRETCH[self.cloth])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the hem band", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        onto = t.chain((FRONT, "hem", False), (BACK, "hem", False))
        plan = (n.band_hem - n.knit_hem) / 2
        return stretched_band(t, "S97", HEM_BAND, "hem", onto, plan)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return self.cloth.cuts(HEM_BAND, "1 on fold", 1)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return band_operations(sheet, fmt, "hem band", "S97", Work.HEM, n.knit_hem)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return hem_band_findings(n)


def _draft(d: Drafting) -> None:
    """Draw half of the hem band, its centre front on the fold (KH); the hem of front
    and back is sewn to it."""
    d.part = "band"
    for code in (FRONT, BACK):
        hem = Edge("hem", d.sheet.edge(code, "hem").path)
        d.sheet = redraw(d.sheet, code, ["hem"], [hem])
    lay_band(
        d,
        HEM_BAND,
        "Hem band",
        ("Ke", "Kg"),
        below_hem(d, 2),
        "band_hem",
        "hem_w",
        "hem",
        folded=True,
    )
