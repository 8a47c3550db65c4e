"""The knit bodice without darts as the first feature of a top or dress (blocks F)."""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import knit
from clothwright.blocks.knit import BACK, FRONT
from clothwright.blocks.knit_outline_rules import KNIT_OUTLINE
from clothwright.blocks.knit_rules import KNIT
from clothwright.features.about import About
from clothwright.features.base import (
    ONE_BLOCK,
    Feature,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
)
from clothwright.features.chains import Chains
from clothwright.features.knits.about import knitted
from clothwright.features.knits.knit_findings import findings
from clothwright.features.knits.knit_seams import knit_joints, knit_seams
from clothwright.features.knits.knit_sewing import bodice_notes, bodice_operations
from clothwright.features.notions import Article, Notion
from clothwright.features.operations import Operation
from clothwright.findings import Finding
from clothwright.paper import Seam, Sheet
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length, Ratio

_SRC = "blocks F"
_EASE = "measures 8.1"
_CP = "common practice, no source"


class Reach(Enum):
    """How far it reaches, where no length is given."""

    WAIST = "to the waist"
    """A hand's width below the waist."""

    HIP = "to the hip"
    """To the hip line."""

    KNEE = "to the knee"
    """A dress, just above the knee."""


BELOW: dict[Reach, RuleTable] = {
    r: RuleTable(f"length of a knit bodice {r.value}") for r in Reach
}
"""The rule of the length for each reach."""


@BELOW[Reach.WAIST].rule(
    "below",
    "length below the waist",
    source=_CP,
    key="knit_below",
    formula="8 cm, with what is sewn to the hem",
    low=0.0,
    high=125.0,
)
def _to_waist(hem_depth: float) -> float:
    return max(0.0, 8.0 - hem_depth)


@BELOW[Reach.HIP].rule(
    "below",
    "length below the waist",
    source=_CP,
    key="knit_below",
    formula="WHk, less what is sewn to the hem",
    low=0.0,
    high=125.0,
)
def _to_hip(WH_knit: float, hem_depth: float) -> float:
    return max(0.0, WH_knit - hem_depth)


@BELOW[Reach.KNEE].rule(
    "below",
    "length below the waist",
    source=_CP,
    key="knit_below",
    formula="0.354·HT − 4 cm, less what is sewn to the hem",
    low=0.0,
    high=125.0,
)
def _to_knee(HT: float, hem_depth: float) -> float:
    return 0.354 * HT - 4.0 - hem_depth


_WITHOUT = {
    "front panels": "a knit bodice has no darts and no panel lines, since its cloth "
    "stretches over the bust; leave this off",
    "back panels": "a knit bodice has no darts and no panel lines, its sides shape it; "
    "leave this off",
    "centre back zip": "a knit bodice is pulled over the head and has no seam for a "
    "zip; leave the zip off",
    "closure": "a knit bodice is pulled over the head; leave the fastening off",
    "waist seam": "a knit bodice is cut in one to its hem; set its reach or length "
    "below the waist in place of a waist seam",
    "skirt": "a knit bodice is cut in one to its hem; set its reach or length below "
    "the waist",
    "neckline": "the neck of a knit bodice is its own; set its front depth and its "
    "width",
    "back neck": "the neck of a knit bodice is its own; set its back depth and its "
    "width",
    "open back": "a knit bodice is drawn with a closed back",
    "tightened shoulder": "a knit bodice has no neck edge to tighten; its band draws "
    "it in",
    "armhole": 'a knit bodice has its own armhole; add a "knit sleeve" or an "armhole '
    'band"',
    "sleeve": 'a knit bodice takes a "knit sleeve", whose cap has hardly any ease',
    "inside finish": 'a knit edge must stretch and is not faced; take a "neck band"',
    "lining": "a lining that does not stretch would hold a knit bodice fast; leave it "
    "off",
    "front yoke": "a knit bodice is drawn in one piece; leave the yoke off",
    "back yoke": "a knit bodice is drawn in one piece; leave the yoke off",
    "empire seam": "a knit bodice is drawn in one piece; leave the empire seam off",
}
"""What a knit bodice cannot have, and why."""


class KnitBodice(Feature):
    """Bodice of knitted cloth without darts: front and back alike but for the neck."""

    kind: Literal["knit bodice"] = "knit bodice"
    title: ClassVar[str] = "Knit bodice"
    sentence: ClassVar[str] = (
        "A [knit bodice] of a cloth that stretches {stretch} per cent and comes back "
        "by {recovery}, with {bust} per cent of ease at the bust; it reaches {length} "
        "below the waist."
    )
    page: ClassVar[int] = 0
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("length", (knit.FRONT,), ("hem", "cf"), (0.0, 1.0)),
        Pin("front_depth", (knit.FRONT,), ("neck", "cf")),
    )
    shows: ClassVar[Shown] = {
        "s": ("KF.side",),
        "R": ("KF.side",),
        "p": ("KF.side",),
        "pw": ("KF.side",),
        "ph": ("KF.side",),
        "pa": ("KS.underarm front", "KF.armhole"),
        "HEAD": ("KF.neck",),
        "AG": ("KF.armhole",),
        "below": ("KF.hem",),
        "side": ("KF.side",),
    }
    pieces: ClassVar[tuple[About, ...]] = (
        knitted(FRONT, "knit front"),
        knitted(BACK, "knit back"),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S90": "shoulder of a knit bodice",
        "S91": "side of a knit bodice",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"block", "knit bodice", "knit front"})
    clashes: ClassVar[dict[str, str]] = {**ONE_BLOCK, **_WITHOUT}
    makes_up: ClassVar[dict[str, str]] = {
        "knit neck finish": "the neck of the knit bodice is not finished; add a "
        'feature kind = "neck band"',
        "knit armhole": "the armholes of the knit bodice are open; add a feature kind "
        '= "knit sleeve" or kind = "armhole band"',
    }

    stretch: Annotated[
        Ratio | None,
        Number(
            "s_knit",
            "s",
            "stretch of the cloth across, per cent",
            _EASE,
            50.0,
            None,
            1.0,
            200.0,
            (19.0, 100.0),
            Kind.RATIO,
        ),
    ] = None
    recovery: Annotated[
        Ratio | None,
        Number(
            "recovery",
            "R",
            "what the cloth comes back of its stretch, per cent",
            _EASE,
            95.0,
            None,
            0.0,
            100.0,
            (90.0, 100.0),
            Kind.RATIO,
        ),
    ] = None
    bust: Annotated[
        Ratio | None,
        Number(
            "p_bust",
            "p",
            "ease at the bust, per cent",
            _EASE,
            low=-20.0,
            high=30.0,
            kind=Kind.RATIO,
        ),
    ] = None
    waist: Annotated[
        Ratio | None,
        Number(
            "p_waist",
            "pw",
            "ease at the waist, per cent",
            f"{_SRC}1",
            low=-20.0,
            high=40.0,
            kind=Kind.RATIO,
        ),
    ] = None
    hip: Annotated[
        Ratio | None,
        Number(
            "p_hip",
            "ph",
            "ease at the hip, per cent",
            f"{_SRC}1",
            low=-20.0,
            high=40.0,
            kind=Kind.RATIO,
        ),
    ] = None
    reach: Reach = Reach.HIP
    """How far it reaches, unless a length is given."""

    length: Annotated[
        Length | None,
        Number(
            "knit_below",
            "below",
            "length below the waist",
            _CP,
            low=0.0,
            high=125.0,
        ),
    ] = None
    flare: Annotated[
        Length | None,
        Number(
            "knit_out",
            "flare",
            "each side let out at the hem, below the hip",
            _CP,
            0.0,
            0.0,
            0.0,
            25.0,
        ),
    ] = None
    neck_out: Annotated[
        Length | None,
        Number(
            "knit_dw",
            "dw",
            "widening of the neck along the shoulder",
            f"{_SRC}2",
            0.0,
            0.0,
            0.0,
            10.0,
        ),
    ] = None
    front_depth: Annotated[
        Length | None,
        Number(
            "knit_fd",
            "front depth",
            "depth of the front neck below the neck point of the block",
            f"{_SRC}2",
            low=5.0,
            high=30.0,
        ),
    ] = None
    back_depth: Annotated[
        Length | None,
        Number(
            "knit_bd",
            "back depth",
            "depth of the back neck below the nape",
            f"{_SRC}2",
            low=0.0,
            high=12.0,
        ),
    ] = None
    narrowed: Annotated[
        Length | None,
        Number(
            "knit_ti",
            "ti",
            "narrowing of the shoulder at the tip",
            f"{_SRC}3",
            0.5,
            0.1875,
            0.0,
            5.0,
            (0.5, 1.5),
        ),
    ] = None
    armhole_depth: Annotated[
        Length | None,
        Number(
            "knit_depth",
            "d",
            "armhole below the armpit level; above it when negative",
            f"{_SRC}3",
            -0.5,
            -0.1875,
            -3.0,
            4.0,
            (-1.5, 0.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (KNIT, KNIT_OUTLINE, BELOW[self.reach])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the knit bodice", knit.draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return knit_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return knit_joints(sheet)

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        return bodice_notes(n, sheet, fmt)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield Notion(
            Article.TAPE,
            2,
            "sewn into the shoulder seams",
            length=sheet.length(knit.BACK, "shoulder"),
        )

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return bodice_operations(n, sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return findings(n)
