"""Bands at the armholes of a sleeveless knit bodice (blocks F6; truing 2)."""

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
from clothwright.features.knits.knit_findings import armhole_band_findings
from clothwright.features.knits.knit_seams import stretched_band
from clothwright.features.knits.knit_sewing import band_operations
from clothwright.features.operations import Operation, Work
from clothwright.findings import Finding
from clothwright.paper import Drafting, Seam, Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "blocks F6, truing 2"

ARM_BAND = "KA"
"""Code of the piece."""

ARM = RuleTable("armhole band")
STRETCH = stretch_of("s_arm", "sa", "armhole band")


@ARM.rule(
    "armhole band",
    "length of the armhole band",
    source=_SRC,
    key="band_arm",
    formula="A·ra",
)
def _length(A_hole: float, arm_share: float) -> float:
    return A_hole * arm_share


class ArmholeBand(Feature):
    """Band that finishes the armhole of a sleeveless knit bodice."""

    kind: Literal["armhole band"] = "armhole band"
    title: ClassVar[str] = "Armhole band"
    sentence: ClassVar[str] = (
        "The armholes are finished by [bands] of {cloth}, {width} wide and cut {share} "
        "times as long as the armhole."
    )
    shows: ClassVar[Shown] = {"ra": ("KA.armhole", "KF.armhole")}
    pieces: ClassVar[tuple[About, ...]] = (knitted(ARM_BAND, "band"),)
    seams: ClassVar[Mapping[str, str]] = {
        "S96": "armhole band of a knit",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"knit armhole"})
    needs: ClassVar[dict[str, str]] = {
        "knit bodice": "an armhole band is for a knit bodice; a woven armhole takes a "
        '"facing"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "knit armhole": "an armhole takes a sleeve or a band, not both"
    }

    cloth: BandCloth = BandCloth.SELF
    """What it is cut from."""

    width: Annotated[
        Length | None,
        Number(
            "arm_w",
            "wa",
            "finished width of the armhole band",
            _SRC,
            1.5,
            0.625,
            0.8,
            8.0,
            (1.0, 3.0),
        ),
    ] = None
    share: Annotated[
        Ratio | None,
        Number(
            "arm_share",
            "ra",
            "length of the armhole band, share of the armhole",
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
        return (ARM, STRETCH[self.cloth])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the armhole band", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        onto = t.chain((FRONT, "armhole", False), (BACK, "armhole", False))
        plan = n.band_arm - n.A_hole
        return stretched_band(t, "S96", ARM_BAND, "armhole", onto, plan)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        return self.cloth.cuts(ARM_BAND, "2 (1 pair)", 2)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return band_operations(
            sheet, fmt, "armhole bands", "S96", Work.SLEEVE, 2 * n.A_hole
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return armhole_band_findings(n)


def _draft(d: Drafting) -> None:
    """Draw the whole armhole band, from underarm to underarm (KA)."""
    d.part = "band"
    lay_band(
        d,
        ARM_BAND,
        "Armhole band",
        ("Kc", "Kd"),
        below_hem(d, 1),
        "band_arm",
        "arm_w",
        "armhole",
        folded=False,
    )
