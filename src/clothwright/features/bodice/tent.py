"""A front that flares from the bust, its bust dart led into the hem (transformations
1.7, bodice to tent).

The torso is run on below the waist with its side dart open. Then the front is slashed
plumb from the hem to the bust point and what lies beside is turned about that until the
side dart is closed: the hem opens by `2·|BP hem|·sin(θ/2)` and is filled with plain
paper. No waist dart is sewn, in front
alone or all round.
"""

import math
from collections.abc import Callable, Iterable
from enum import Enum
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.flare import hem_arc
from clothwright.blocks.torso import HIP_LINE, WAIST_LINE
from clothwright.curves import (
    Line,
    Path,
    Point,
    Vector,
    distance,
    rotate,
    turn,
)
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.back_waist_dart_rules import OPENED_BACK, BackPlace
from clothwright.features.bodice.front_dart import SIDE, tighten_armhole
from clothwright.features.bodice.opened_dart import (
    Opened,
    dart_angle_of,
    set_back,
    slashed,
)
from clothwright.features.bodice.side_dart import SIDE_DART, without_dart
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    Piece,
    Sheet,
    Taped,
    Verb,
    meetings,
    pivot,
    redraw,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.units.fields import Ratio

_SRC = "transformations 1.7"

_HEM = Opened(
    "hem",
    "hem",
    "dart hem cf",
    "dart hem side",
    "hem side",
    "bust dart at the hem",
    "Qh",
)

_DART = ("dart low", "dart high")

_MOST_FLARE = 6.0
"""Most flare of a side seam, cm (1.7: 5 to 7)."""

_OF_BELOW = 0.15
"""A side is flared by no more than this share of what is below the hip (our own: more
would be a corner)."""

_WHOLE = 0.999
"""A greater share leaves nothing to be sewn at the side."""

_LEAST_REST, _NO_DART = 1.5, 0.6
"""Narrowest side dart that is left, cm at the side (our own choice), and what is none:
so little is eased, not sewn (1.4), and its cap has no room for an allowance."""

TENT = RuleTable("flare from the bust")


@TENT.rule(
    "θh",
    "part of the bust dart that is led to the hem",
    kind=Kind.ANGLE,
    key="theta_h",
    source="transformations 1.1",
    formula="share h·(θ + φn)",
)
def _led(theta: float, phi_n: float, share_h: float) -> float:
    return (theta + phi_n) * share_h


@TENT.rule(
    "hem h",
    "what the hem of each half of the front gains, the armhole as drafted",
    key="hem_h",
    source=_SRC,
    formula="2·(yW + L − yBP)·sin(θh/2)",
)
def _gained(yW: float, L: float, y_BP: float, theta_h: float) -> float:
    return 2 * (yW + L - y_BP) * math.sin(math.radians(theta_h) / 2)


@TENT.rule(
    "fl",
    "out at the hem, each side",
    key="fl_T",
    source=_SRC,
    formula="half of hem h to balance it, at most 6 cm and 0.15 of what is below the "
    "hip",
    low=0.0,
    high=12.0,
)
def _balance(hem_h: float, L: float, WH: float) -> float:
    return max(0.0, min(hem_h / 2, _MOST_FLARE, _OF_BELOW * (L - WH)))


class Hangs(Enum):
    """What has no waist dart."""

    ALL = "front and back"
    FRONT = "the front alone"
    """The back is shaped as the order says."""


class Tent(Feature):
    """Front that flares from the bust to the hem."""

    kind: Literal["tent"] = "tent"
    title: ClassVar[str] = "Tent flare"
    sentence: ClassVar[str] = (
        "It hangs from the bust as a [tent], {hangs}: {share} of the bust dart is led "
        "into the hem of the front, and no waist dart is sewn."
    )
    page: ClassVar[int] = 3
    shows: ClassVar[Shown] = {
        "share h": ("F.hem",),
        "hem h": ("F.hem",),
        "θh": ("F.dart low", "F.side"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"front panels", "tent"})
    needs: ClassVar[dict[str, str]] = {
        "armhole": "say how the armhole is finished",
        "torso": "a tent flares to the hem of a front that is cut in one below the "
        'waist; add a "torso"',
    }
    clashes: ClassVar[dict[str, str]] = {
        "front panels": "the bust dart can go into one line only; leave one off",
        "torso seam": "a tent flares from the bust to its hem, which a seam below the "
        "waist would cut off; leave the torso's seam out",
    }

    hangs: Hangs = Hangs.ALL

    share: Annotated[
        Ratio | None,
        Number(
            "share_h",
            "share h",
            "share of the bust dart that goes into the hem",
            "transformations 1.1",
            1.0,
            None,
            0.2,
            1.0,
            (0.4, 1.0),
            Kind.RATIO,
        ),
    ] = None

    def said(self) -> str:
        if self.hangs is Hangs.ALL:
            return self.sentence
        return self.sentence.replace("waist dart is sewn", "waist dart is sewn there")

    def provides(self) -> frozenset[str]:
        return self.gives | ({"back panels"} if self.hangs is Hangs.ALL else set())

    def forbids(self) -> dict[str, str]:
        if self.hangs is Hangs.FRONT:
            return self.clashes
        why = (
            "the back of a tent hangs without a dart or a panel line; leave that off, "
            f'or set hangs = "{Hangs.FRONT.value}"'
        )
        return {**self.clashes, "back panels": why}

    def tables(self) -> tuple[RuleTable, ...]:
        return (SIDE_DART, TENT)

    def stages(self) -> tuple[Stage, ...]:
        out = [
            Stage(Rank.FRONT_PANELS, "the front without a waist dart", _undarted),
            Stage(Rank.BELOW_WAIST, "the bust dart in the hem", _lead),
        ]
        if self.hangs is Hangs.ALL:
            says = "the back without a waist dart"
            out.append(Stage(Rank.BACK_PANELS, says, _undarted_back))
        return tuple(out)

    def notes(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[str]:
        yield (
            "The front hangs from the bust: let it hang for a night, and level the hem "
            "before you turn it up."
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        front = sheet.piece("F")
        if not front.has(_DART[0]):
            return
        left = distance(front.edge(_DART[0]).path.start, front.edge(_DART[1]).path.end)
        if left < _LEAST_REST:
            none = left < _NO_DART
            yield Finding(
                "TN1",
                Severity.REFUSE if none else Severity.WARN,
                f"The side dart that is left takes in only {left:.1f} cm"
                + (f"; {_NO_DART:g} cm is the least." if none else "."),
                "share h",
                "Take all of the bust dart into the hem (share = 1), or less of it.",
                {"dart": left},
            )


def _undarted(d: Drafting) -> None:
    """Rule the waist of the front through: nothing is taken in there."""
    d.part = "front"
    if d.n.ta > 0:
        tighten_armhole(d)
    if d.sheet.piece("F").has("leg cf"):
        run = ["waist", "leg cf", "leg side", "waist side"]
        without_dart(d, "F", "front waist dart", run)


def _undarted_back(d: Drafting) -> None:
    """The same at the back."""
    d.part = "back"
    dart = OPENED_BACK[BackPlace.WAIST]
    if d.sheet.piece("B").has(dart.leg_first):
        without_dart(d, "B", "back waist dart", dart.run)


def _lead(d: Drafting) -> None:
    """Slash plumb from the hem to BP and close the side dart by what is led."""
    n, bp = d.n, d["BP"]
    d.part = "front"
    front = d.sheet.piece("F")
    hem = front.edge("hem").path
    plumb = Path.line(bp, bp + Vector(0.0, 300.0))
    hits = meetings(
        hem,
        plumb,
        "the bust point does not lie above the hem of the front: measure BPS and "
        "FA2 again, or take another line for the bust dart",
    )
    foot = hem.at_length(hits[0][0])
    d.found(
        "Qh",
        foot,
        "where the hem is slashed, plumb below BP",
        amounts=(("below BP", distance(bp, foot)),),
    )
    by = dart_angle_of(front, *_DART) * n.share_h
    sheet = slashed(d.sheet, _HEM, foot, bp)
    d.lay(Verb.CUT, sheet, "F", "front slashed from Qh to BP")
    sheet = pivot(sheet, "F", _HEM.leg_last, _DART[0], by)
    f = sheet.piece("F")
    a, b = f.edge(_HEM.first).path, f.edge(_HEM.last).path
    marks = {k: rotate(d[k], bp, by) for k in ("wf", "Hfs", "Mfs")}
    d.lay(
        Verb.MOVE,
        sheet.named(**marks),
        "F",
        "side of the front turned up about BP until the side dart is closed"
        if n.share_h > _WHOLE
        else "side of the front turned up about BP, and its dart closed by as much",
        amounts=(
            ("by {}", Taped("θh", by, angle=True)),
            ("the hem opens by {}", distance(a.end, b.start)),
        ),
        frm=("BP",),
    )
    over = hem_arc(a, b, by, distance(bp, foot))
    whole = a + over + b
    new = [Edge("hem", whole, EdgeKind.FINISHED)]
    sheet = redraw(d.sheet, "F", _HEM.run, new)
    sheet = sheet.put(_levels(sheet.piece("F"), n, bp, by))
    d.lay(
        Verb.REDRAW,
        sheet,
        "F.hem",
        "hem of the front over the opening, in an arc about BP",
        amounts=(("from BP", distance(bp, foot)),),
        lines=(over,),
    )
    if n.share_h > _WHOLE:
        _close_side(d)
    else:
        set_back(d, _DART, "As", "set_back")


def _levels(front: Piece, n: Numbers, bp: Point, degrees: float) -> Piece:
    """The front with waist and hip ruled across on both sides of the slash, and its
    grain beside the centre front."""
    m = turn(bp, degrees)
    lines: list[InnerLine] = []
    for name, y in ((WAIST_LINE, n.yW), (HIP_LINE, n.yW + n.WH)):
        at = Point(bp.x, y)
        lines.append(InnerLine(name, Path.line(at, Point(160.0, y))))
        turned = Path.line(Point(-60.0, y), at).moved(m)
        lines.append(InnerLine(f"{name}, turned", turned))
    cf = front.edge("cf").path
    x = (bp.x + cf.start.x) / 2
    top, foot = min(cf.start.y, cf.end.y), max(cf.start.y, cf.end.y)
    grain = Point(x, foot - 3.0), Point(x, top + 3.0)
    return front.with_lines(*lines).holding(
        front.marks, front.with_lines(*lines).lines, grain
    )


def _close_side(d: Drafting) -> None:
    """Join the side over the dart, of which nothing is left, in one line."""
    f = d.sheet.piece("F")
    low, high = f.edge("side low").path, f.edge("side high").path
    last = low.segments[-1]
    if isinstance(last, Line) and high.straight:
        ruled = Line(last.start, high.end)
        side = Path((*low.segments[:-1], ruled))
    else:
        side = low + high.pinned(low.end, high.end)
    run = ["side low", *_DART, "side high"]
    sheet = redraw(d.sheet.unsew(SIDE), "F", run, [Edge("side", side)])
    d.lay(Verb.REDRAW, sheet, "F.side", "side in one line, its dart closed")
