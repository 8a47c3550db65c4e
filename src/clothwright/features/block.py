"""The fitted bodice block as the first feature of every order, with its ease."""

from collections.abc import Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import bodice
from clothwright.blocks.bodice_rules import (
    BODICE,
    CUP_SHARE,
    MEASURED_ARCS,
    MEASURED_DEPTH,
    SCALE_DEPTH,
    clip,
)
from clothwright.curves import Path, Point, distance
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Numbers, RuleTable
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
        "Drafted with {bust_ease} of ease at the bust and {waist_ease} at the waist, "
        "the armhole {depth}."
    )
    page: ClassVar[int] = 0
    gives: ClassVar[frozenset[str]] = frozenset({"bodice"})

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
    back_shoulder_ease: Annotated[
        Length | None,
        Number(
            "se",
            "se",
            "ease of the back shoulder",
            f"{_SRC}.3",
            0.5,
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
            0.0,
            0.0,
            0.0,
            2.0,
            (0.0, 1.6),
        ),
    ] = None
    measured_arcs: bool = False
    """Share front and back by the measured bust arcs BA and FA2."""

    neck_rise_taken: bool = False
    """Take the rise of the back neck from SBW − NWB instead of the neck's width."""

    def tables(self) -> tuple[RuleTable, ...]:
        return (
            BODICE,
            SCALE_DEPTH if self.depth is Depth.SCALE else MEASURED_DEPTH,
            MEASURED_ARCS if self.measured_arcs else CUP_SHARE,
            LEVEL_WAIST,
            *((NECK_RISE_TAKEN,) if self.neck_rise_taken else ()),
        )

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the block", bodice.draft),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        half = bust_girth(n, sheet)
        if half is None:
            return
        aim = (n.B + n.Eb) / 2
        # Shaved paper and the lean of the side seam may take 0.8 (5.5, B1). On a low
        # bust point the waist darts take more, since they begin at the bust line: that
        # is a doubt, and a fault when it comes out smaller than the body.
        if half >= aim - 0.5 - 0.3:
            return
        severity = Severity.REFUSE if half < n.B / 2 else Severity.WARN
        yield Finding(
            "B1",
            severity,
            f"Over the bust points the finished bust is {2 * half:.1f} cm, "
            f"{2 * (aim - half):.1f} cm less than bust and ease.",
            "bust",
            "The waist darts begin above the bust points: add ease at the bust, or "
            "look at NBP again.",
            {"half": half, "aim": aim},
        )


def bust_girth(n: Numbers, sheet: Sheet) -> float | None:
    """Half girth at the level of the bust point on the finished panels, the gap of an
    open back counted, cm; None when front or back is in one piece."""
    if not all(c in sheet.pieces for c in ("FC", "FS", "BC", "BS")):
        return None
    bp = sheet.points["BP"]
    front = n.X - bp.x  # the front panel runs through the bust point
    fs = sheet.piece("FS")
    hinge = sheet.points["J"]
    front += fs.edge("panel").path.nearest(bp)[1] + distance(hinge, bp)
    back = 0.0
    level = Path.line(Point(-5.0, bp.y), Point(n.X + 5.0, bp.y))
    for code, name in (("BS", "side"), ("BS", "panel"), ("BC", "panel")):
        hits = sheet.edge(code, name).path.meets(level)
        if not hits:
            return None
        x = sheet.edge(code, name).path.at_length(hits[0][0]).x
        back += -x if (code, name) == ("BS", "panel") else x
    return front + back
