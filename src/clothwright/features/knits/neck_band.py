"""Band at the neck of a knit bodice (blocks F6)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.knit import BACK, FRONT
from clothwright.features.about import About
from clothwright.features.base import Cuts, Feature, Number, Rank, Shown, Stage
from clothwright.features.chains import Chains
from clothwright.features.knits.about import knitted
from clothwright.features.knits.knit_band import (
    NECK,
    BandCloth,
    below_hem,
    lay_band,
    stretch_of,
)
from clothwright.features.knits.knit_findings import neck_findings
from clothwright.features.knits.knit_seams import stretched_band
from clothwright.features.knits.knit_sewing import band_operations
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "blocks F6"

NECK_BAND = "KN"
"""Code of the piece."""

LONG = RuleTable("length of the neck band")
STRETCH = stretch_of("s_band", "sn", "neck band")


@LONG.rule(
    "neck band",
    "length of the neck band, all round",
    source=_SRC,
    key="band_neck",
    formula="neck·r",
)
def _length(knit_neck: float, band_share: float) -> float:
    return knit_neck * band_share


class NeckBand(Feature):
    """Band that finishes the neck of a knit bodice."""

    kind: Literal["neck band"] = "neck band"
    title: ClassVar[str] = "Neck band"
    sentence: ClassVar[str] = (
        "The neck is finished by a [band] of {cloth}, {width} wide and cut {share} "
        "times as long as the neckline."
    )
    shows: ClassVar[Shown] = {
        "r": ("KN.neck", "KF.neck"),
        "sn": ("KN.neck", "KF.neck"),
        "HEAD": ("KF.neck",),
    }
    pieces: ClassVar[tuple[About, ...]] = (knitted(NECK_BAND, "band"),)
    seams: ClassVar[Mapping[str, str]] = {
        "S92": "neck band of a knit",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"knit neck finish"})
    needs: ClassVar[dict[str, str]] = {
        "knit bodice": "a neck band must stretch over the head and is for a knit "
        'bodice; a woven neck takes a "facing" or a "neck facing"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "knit neck finish": "a neck is finished one way only"
    }

    cloth: BandCloth = BandCloth.SELF
    """What it is cut from."""

    width: Annotated[
        Length | None,
        Number(
            "band_w",
            "wn",
            "finished width of the neck band",
            _SRC,
            2.0,
            0.75,
            0.8,
            12.0,
            (1.0, 4.0),
        ),
    ] = None
    share: Annotated[
        Ratio | None,
        Number(
            "band_share",
            "r",
            "length of the neck band, share of the neckline",
            _SRC,
            low=0.6,
            high=1.0,
            usual=(0.75, 0.92),
            kind=Kind.RATIO,
        ),
    ] = None
    stretch: Annotated[
        Ratio | None,
        Number(
            "s_band",
            "sn",
            "stretch of the neck band, per cent",
            _SRC,
            low=10.0,
            high=250.0,
            kind=Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (LONG, NECK[self.cloth], STRETCH[self.cloth])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the neck band", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        onto = t.chain((FRONT, "neck", True), (BACK, "neck", True))
        plan = (n.band_neck - n.knit_neck) / 2
        return stretched_band(t, "S92", NECK_BAND, "neck", onto, plan)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return self.cloth.cuts(NECK_BAND, "1 on fold", 1)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return band_operations(sheet, fmt, "neck band", "S92", Work.EDGE, n.knit_neck)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return neck_findings(n)


def _draft(d: Drafting) -> None:
    """Draw half of the neck band, its centre front on the fold (KN)."""
    d.part = "band"
    lay_band(
        d,
        NECK_BAND,
        "Neck band",
        ("Ka", "Kb"),
        below_hem(d, 0),
        "band_neck",
        "band_w",
        "neck",
        folded=True,
    )
