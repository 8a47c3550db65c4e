"""The fitted bodice block: the first feature of a top, with its ease."""

from collections.abc import Iterable, Mapping
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import bodice
from clothwright.blocks.back_shoulder_dart import BACK_SHOULDER_DART
from clothwright.blocks.back_waist_dart import BACK_WAIST_DART
from clothwright.blocks.bodice_rules import (
    BODICE,
    CUP_SHARE,
    MEASURED_ARCS,
    clip,
)
from clothwright.blocks.bust_line_rules import MEASURED_DEPTH, SCALE_DEPTH
from clothwright.blocks.full_cup import FULL_CUP, FULL_FROM, WIDE_DART
from clothwright.features.about import About
from clothwright.features.base import Feature, Number, Rank, Shown, Stage, Words
from clothwright.features.bodice.about import PIECES, SEAMS
from clothwright.features.bodice.back_shoulder import (
    PLAIN,
    WAYS,
    BackShoulder,
    shoulder_findings,
)
from clothwright.features.bodice.bodice_joints import bodice_joints
from clothwright.features.bodice.bodice_seams import bodice_seams
from clothwright.features.bodice.bust_findings import (
    bust_findings,
    bust_point_findings,
)
from clothwright.features.chains import Chains
from clothwright.findings import Finding, Severity
from clothwright.paper import Seam, Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.truing import Joint
from clothwright.units import Unit
from clothwright.units.fields import Length

_SRC = "first garment 2"

LEVEL_WAIST = RuleTable("waist darts as cut, without a waist seam")


@LEVEL_WAIST.rule("fd cut", "front waist dart as cut", source="blocks A4", formula="fd")
def fd_cut(fd: float) -> float:
    return fd


@LEVEL_WAIST.rule("bd cut", "back waist dart as cut", source="blocks A4", formula="bd")
def bd_cut(bd: float) -> float:
    return bd


NECK_RISE_TAKEN = RuleTable("rise of the back neck from the tape")


@NECK_RISE_TAKEN.rule(
    "nr",
    "rise of the back neck",
    source="blocks A1.6, corrections A1",
    formula="SBW − NWB, kept between 1 cm and 3.5 cm",
    low=0.8,
    high=4.0,
)
def nr(SBW: float, NWB: float) -> float:
    return clip(SBW - NWB, 1.0, 3.5)


class Depth(Enum):
    """How deep the armhole is drafted."""

    SCALE = "by the scale"
    """A sixth of the bust and a constant (inch workroom practice)."""

    MEASURED = "as measured"
    """From the measured or estimated armscye depth."""


class Block(Feature):
    """Fitted bodice block: ease, depth of the armhole, ease of the back shoulder."""

    kind: Literal["bodice block"] = "bodice block"
    title: ClassVar[str] = "Bodice block"
    sentence: ClassVar[str] = (
        "[Drafted] with {bust_ease} of ease at the bust and {waist_ease} at the waist, "
        "the armhole {depth}."
    )
    page: ClassVar[int] = 0
    shows: ClassVar[Shown] = {
        "bust": ("FS.side", "F.side high"),
        "Eb": ("FS.side", "F.side high"),
        "Ew": ("FC.waist", "F.waist side", "F.waist"),
        "k": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
        "d": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
        "se": ("BC.shoulder", "B.shoulder"),
        "sd": ("BC.shoulder", "B.shoulder"),
        "fd": ("FC.panel", "F.dart low"),
        "θ": ("FC.panel", "F.dart low"),
        "yBP": ("FC.panel", "F.dart low"),
    }
    pieces: ClassVar[tuple[About, ...]] = PIECES
    seams: ClassVar[Mapping[str, str]] = SEAMS
    gives: ClassVar[frozenset[str]] = frozenset({"block", "bodice"})
    makes_up: ClassVar[Mapping[str, str]] = {
        "armhole": 'an armhole is missing; add a "sleeveless armhole", or a "sleeved '
        'armhole" with its sleeve',
        "neckline": 'a neckline is missing; add a feature kind = "neckline"',
        "back neck": 'a back neck is missing; add a "back neckline" or a "low open '
        'back"',
        "front panels": 'the bust dart has no place; add a "front armhole princess", a '
        '"shoulder princess" or a "side dart"',
        "back panels": 'the back dart has no place; add a "back armhole princess", a '
        '"shoulder princess" or a "back waist dart"',
        "waist line": 'a waist seam is missing; add a feature kind = "waist seam", or '
        '"torso" to cut it in one',
        "skirt": 'nothing hangs on the waist seam; add a feature kind = "peplum", '
        'or a skirt such as a "dress skirt" or a "straight dress skirt"',
        "inside finish": 'the edges are not finished; add a "facing", a "neck facing" '
        'or a "lining"',
    }

    bust_ease: Annotated[
        Length | None,
        Number(
            "Eb", "Eb", "ease at the bust", f"{_SRC}.1", 5.0, 2.0, 0.0, 14.0, (3.0, 8.0)
        ),
    ] = None
    waist_ease: Annotated[
        Length | None,
        Number(
            "Ew",
            "Ew",
            "ease at the waist",
            f"{_SRC}.1",
            2.5,
            1.0,
            -1.0,
            12.0,
            (1.5, 4.0),
        ),
    ] = None
    depth: Depth = Depth.SCALE
    depth_added: Annotated[
        Length | None,
        Number(
            "k",
            "k",
            "added to a sixth of the bust",
            f"{_SRC}.2",
            2.54,
            1.0,
            1.0,
            6.0,
            (2.0, 4.0),
        ),
    ] = None
    below_armpit: Annotated[
        Length | None,
        Number(
            "d",
            "d",
            "armhole below the armpit level",
            "blocks A1.5",
            0.0,
            0.0,
            -1.0,
            5.0,
            (-0.5, 2.0),
        ),
    ] = None
    back_shoulder: BackShoulder = BackShoulder.BY_STYLE

    back_shoulder_ease: Annotated[
        Length | None,
        Number(
            "se",
            "se",
            "ease of the back shoulder",
            f"{_SRC}.3, 6.1",
            None,
            0.25,
            0.0,
            1.2,
            (0.3, 0.9),
        ),
    ] = None
    back_shoulder_dart: Annotated[
        Length | None,
        Number(
            "sd",
            "sd",
            "back shoulder dart",
            f"{_SRC}.3, 6.1",
            None,
            None,
            0.0,
            2.0,
            (0.4, 1.6),
        ),
    ] = None
    measured_arcs: bool = False
    """Share front and back by the measured bust arcs BA and FA2."""

    neck_rise_taken: bool = False
    """Take the rise of the back neck from SBW − NWB instead of the neck's width."""

    full_cup_pinched: bool = False
    """Pinch the front armhole of a full cup out at the pitch, into the bust dart."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (
            BODICE,
            BACK_WAIST_DART,
            BACK_SHOULDER_DART,
            PLAIN,
            SCALE_DEPTH if self.depth is Depth.SCALE else MEASURED_DEPTH,
            MEASURED_ARCS if self.measured_arcs else CUP_SHARE,
            LEVEL_WAIST,
            *((NECK_RISE_TAKEN,) if self.neck_rise_taken else ()),
            *((FULL_CUP,) if self.full_cup_pinched else ()),
            *WAYS[self.back_shoulder].tables,
        )

    def given(self, unit: Unit) -> Iterable[Given]:
        yield from super().given(unit)
        way, numbers = WAYS[self.back_shoulder], self.numbers()
        for field, value in (
            ("back_shoulder_dart", way.dart),
            ("back_shoulder_ease", way.ease if unit is Unit.CM else None),
        ):
            if value is not None and getattr(self, field) is None:
                yield numbers[field].by_default(value)

    def provides(self) -> frozenset[str]:
        at_neck = self.back_shoulder is BackShoulder.NECK
        return self.gives | ({"back neck dart"} if at_neck else set())

    def wants(self) -> Mapping[str, str]:
        return WAYS[self.back_shoulder].wants

    def forbids(self) -> Mapping[str, str]:
        return WAYS[self.back_shoulder].forbids

    def stages(self) -> tuple[Stage, ...]:
        return (
            Stage(Rank.BLOCK, "the block", bodice.draft),
            *WAYS[self.back_shoulder].stages,
        )

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam | None]:
        return bodice_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return bodice_joints(sheet, n, words)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from bust_findings(n, sheet)
        yield from bust_point_findings(n)
        yield from shoulder_findings(n, sheet, self.back_shoulder)
        yield from self._bust_dart_findings(n, sheet)

    def _bust_dart_findings(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        """The bust dart neither flat nor too wide (B17, corrections C19)."""
        most = 30.0 if self.full_cup_pinched else 26.0
        if not 7.0 <= n.theta <= most:
            yield Finding(
                "B17",
                Severity.WARN,
                f"The bust dart opens by {n.theta:.0f}°; 7° to {most:.0f}° is usual.",
                "θ",
                "Look at the bust, the front length and the back length again.",
                {"θ": n.theta},
            )
        if not self.full_cup_pinched:
            return
        if n.pinched <= 0:
            yield Finding(
                "C19",
                Severity.NOTE,
                f"The cup is not over {FULL_FROM:g} cm, so nothing is pinched out of "
                "the front armhole.",
                "full_cup_pinched",
                "",
                {"c": n.c},
            )
        elif n.theta > WIDE_DART and "FC" in sheet.pieces:
            yield Finding(
                "C19",
                Severity.NOTE,
                f"The bust dart opens by {n.theta:.0f}°; over {WIDE_DART:.0f}° it is "
                "split in two, but a panel line takes it in one.",
                "θ",
                "Steam the seam over a ham; or choose a side dart, which is split.",
                {"θ": n.theta},
            )
