"""Strapless bodice: cut along a top edge from above the bust, under the arm, to the
back; it is held up by its fit, a waist stay and bones (transformations 1.8).

The block is drawn with no ease, wedges are folded out above and between the busts, and
when the panels or darts are drawn the top edge is cut over them.
"""

from collections.abc import Callable, Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.features.base import (
    Feature,
    NeckEnd,
    Number,
    Pin,
    Rank,
    Shown,
    Stage,
    Words,
)
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.features.bodice.strapless_cut import cut_top
from clothwright.features.bodice.strapless_fold import fold_out, no_shoulder_dart
from clothwright.features.bodice.strapless_joints import top_joints
from clothwright.features.bodice.strapless_rules import (
    SRC,
    STRAPLESS,
    strapless_findings,
)
from clothwright.features.bodice.strapless_sewing import (
    mounted,
    strapless_notions,
    strapless_operations,
)
from clothwright.features.chains import TOP, Chains
from clothwright.features.linings.facing_seams import top_seams
from clothwright.features.necks.neck_shapes import V_FRONT
from clothwright.features.notions import Notion
from clothwright.features.operations import Operation
from clothwright.findings import Finding
from clothwright.paper import Run, Seam, Sheet
from clothwright.rules import Given, Hand, Kind, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio


class TopShape(Enum):
    """Shape of the top edge in front."""

    STRAIGHT = "straight"
    """Level from bust to bust."""

    SWEETHEART = "sweetheart"
    """Over each bust, and down to a point between them."""

    DIPPED = "dipped"
    """Hollowed between the busts."""


_DIPS: Mapping[TopShape, tuple[float, float, float]] = {
    TopShape.STRAIGHT: (0.0, 0.0, 0.0),
    TopShape.SWEETHEART: (4.0, 1.0, 45.0),
    TopShape.DIPPED: (2.5, 0.5, 0.0),
}
"""Dip at the centre front, contour between the busts, cm, and the fall of the edge
there, degrees (dip and fall: our own choice; the contour: 1.8, with a sweetheart)."""

_FRONT_EDGE = "FC.top edge", "F.top edge"
_NO_SHOULDER = "a strapless bodice has no shoulder"


class Strapless(Feature):
    """Bodice without shoulders, cut along a top edge."""

    kind: Literal["strapless"] = "strapless"
    title: ClassVar[str] = "Strapless bodice"
    sentence: ClassVar[str] = (
        "[Strapless], its top edge {shape}, {above} above the bust points in front and "
        "{back} below the bust line at the back; it is held by a waist stay and bones."
    )
    pins: ClassVar[tuple[Pin, ...]] = (
        Pin("dip", ("FC", "F"), ("top edge", "cf"), (0.0, 1.0)),
        Pin("back", ("BC", "B"), ("top edge", "cb"), (0.0, 1.0)),
    )
    shows: ClassVar[Shown] = {
        **dict.fromkeys(("ht", "dip", "cn", "cm", "fm"), _FRONT_EDGE),
        "us": ("FS.top edge", "F.top edge"),
        "bt": ("BC.top edge", "B.top edge"),
    }
    neck_ends: ClassVar[tuple[NeckEnd, ...]] = (
        NeckEnd("dip", "cf", ("FC", "F")),
        NeckEnd("back", "cb", ("BC", "B")),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S110": "top edge of a strapless bodice in front, and its facing; a lining to "
        "the edge has LE7",
        "S111": "top edge of a strapless bodice behind, and its facing; a lining to "
        "the edge has LE8",
    }
    retells: ClassVar[Mapping[str, str]] = {"from the armhole": "from the top edge"}
    gives: ClassVar[frozenset[str]] = frozenset(
        {
            *("neckline", "back neck", "armhole", "sleeveless", "strapless"),
        }
    )
    needs: ClassVar[dict[str, str]] = {
        "bodice": "a strapless top is drawn on a bodice block; add one"
    }
    clashes: ClassVar[dict[str, str]] = {
        "armhole": f"{_NO_SHOULDER} and no armhole; leave the armhole off",
        "neckline": "a strapless bodice ends in its top edge; leave the neckline off",
        "back neck": "a strapless bodice ends in its top edge; leave the back's "
        "neckline off",
        "tightened shoulder": f"{_NO_SHOULDER} to tighten a neck at",
        "upper bust dart": "the dart would lie in what is cut away; leave it at the "
        "side or lead it to the waist",
        "front yoke": f"{_NO_SHOULDER} for a yoke",
        "back yoke": f"{_NO_SHOULDER} for a yoke",
        "empire seam": "an empire seam is not yet cut through a strapless bodice",
        "open back": "a low open back is not yet cut on a strapless bodice; close it "
        "with a zip",
        "button stand": "a button stand is not yet led up to a top edge; close the "
        "back with a zip",
        "side opening": "a zip under the arm is not yet led up to a top edge; close "
        "the back with a zip",
        "neck placket": "a strapless bodice has no neck for a placket",
    }

    shape: TopShape = TopShape.STRAIGHT
    above: Annotated[
        Length | None,
        Number(
            "ht",
            "ht",
            "top edge above the bust point",
            "transformations 3",
            low=4.0,
            high=14.0,
        ),
    ] = None
    dip: Annotated[
        Length | None,
        Number(
            "dip",
            "dip",
            "dip of the top edge at the centre front",
            SRC,
            low=0.0,
            high=9.0,
        ),
    ] = None
    side: Annotated[
        Length | None,
        Number(
            "us",
            "us",
            "top edge at the side above the level of the armpit",
            "blocks A1.5",
            0.5,
            0.25,
            -3.0,
            1.5,
            (0.0, 1.0),
        ),
    ] = None
    back: Annotated[
        Length | None,
        Number(
            "bt",
            "bt",
            "top edge at the centre back below the bust line",
            "transformations 2",
            2.0,
            0.75,
            -2.0,
            8.0,
            (0.0, 4.0),
        ),
    ] = None
    contour: Annotated[
        Length | None,
        Number(
            "cn",
            "cn",
            "contour above the bust, sent to the bust dart",
            SRC,
            low=0.0,
            high=2.0,
            usual=(0.6, 1.2),
        ),
    ] = None
    between: Annotated[
        Length | None,
        Number(
            "cm",
            "cm",
            "contour between the busts, sent to the bust dart",
            SRC,
            low=0.0,
            high=2.0,
        ),
    ] = None
    firm: Annotated[
        Ratio | None,
        Number(
            "fm",
            "fm",
            "top edge shorter than the body there, a share",
            SRC,
            0.01,
            low=0.0,
            high=0.04,
            usual=(0.0, 0.02),
            kind=Kind.RATIO,
        ),
    ] = None
    bone: Annotated[
        Length | None,
        Number(
            "bone",
            "bone",
            "width of the bones",
            "cutting and costing 3",
            0.7,
            0.25,
            0.6,
            1.2,
        ),
    ] = None

    def provides(self) -> frozenset[str]:
        pointed = self.shape is TopShape.SWEETHEART
        return self.gives | ({V_FRONT} if pointed else set())

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, STRAPLESS)

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its own numbers; no ease at bust and waist (ease level 0), and the shoulder,
        which is cut away, as the block has it."""
        yield from super().given(unit)
        length = Kind.LENGTH
        dip, between, fall = _DIPS[self.shape]
        for key, symbol, name, kind, value, source in (
            ("Eb", "Eb", "ease at the bust", length, 0.0, "measurements 8"),
            ("Ew", "Ew", "ease at the waist", length, 0.0, "measurements 8"),
            ("ti", "ti", "narrowing of the shoulder", length, 0.0, SRC),
            ("ta", "ta", "tightening of the front armhole", length, 0.0, SRC),
            ("dw", "dw", "width of the neck beyond the standard", length, 0.0, SRC),
            ("tau", "τ", "tilt of the neck at the shoulder", Kind.ANGLE, 0.0, SRC),
            ("sd", "sd", "back shoulder dart", length, 0.0, SRC),
            (
                "point",
                "fall",
                "fall of the top edge at the centre front",
                Kind.ANGLE,
                fall,
                SRC,
            ),
        ):
            yield Given(key, symbol, name, kind, value, Hand.DEFAULT, source)
        for field, value in (("dip", dip), ("between", between)):
            if getattr(self, field) is None:
                yield self.numbers()[field].by_default(value)

    def stages(self) -> tuple[Stage, ...]:
        return (
            SHOULDER_STAGE,
            Stage(Rank.ARMHOLE, "the back shoulder", no_shoulder_dart),
            Stage(Rank.CONTOUR, "the front drawn in above the bust", fold_out),
            Stage(Rank.TOP_EDGE, "the top edge", cut_top),
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return top_seams(t)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return top_joints(sheet, words)

    def cut_again(self, sheet: Sheet) -> Mapping[str, str]:
        return mounted(sheet)

    def taped(self, sheet: Sheet) -> Iterable[Run]:
        return tuple(Run(c, TOP) for c in mounted(sheet) if sheet.piece(c).has(TOP))

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        names = ", ".join(sheet.piece(c).name.lower() for c in mounted(sheet))
        yield (
            f"The underlining ({names}) is coutil or firm cotton net, cut by the "
            "shell's paper; its seams lie on the shell's and carry the bones, which "
            f"end {fmt(1.2)} short of top edge and waist."
        )

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        return strapless_notions(n, sheet)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return strapless_operations(n, sheet, fmt)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        return strapless_findings(n, sheet)
