"""All-in-one facings of neck, armhole and slanted edge (first garment 14).

Traced from the shell with the panels in their sewn state, set inside by the roll, and
shortened at the shoulder by what the roll makes their edges longer.
"""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import (
    Cubic,
    Line,
    Path,
    Point,
    Vector,
    direction,
    distance,
    inset,
    turned,
)
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.sewn_halves import sewn_back, sewn_front
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    Piece,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length

_SRC = "first garment 14"

BELOW_C = 6.5, 2.5
"""Depth of the facing at the centre below the neck: cm, inches (14.2)."""

MOST_SHORT = 0.14
"""A facing's edge may be this much shorter than the shell's, cm (14.5 allows 0.15)."""


class Facing(Feature):
    """All-in-one facing of neck and armholes."""

    kind: Literal["facing"] = "facing"
    title: ClassVar[str] = "Facing"
    sentence: ClassVar[str] = (
        "Neck and armholes are [faced] in one, {side} deep below the arm, the edge "
        "rolled {roll} to the inside."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"inside finish"})
    needs: ClassVar[dict[str, str]] = {
        "sleeveless": "an all-in-one facing is for a sleeveless top; with sleeves "
        'take a "neck facing"'
    }
    clashes: ClassVar[dict[str, str]] = {
        "inside finish": "the edges are finished one way only"
    }

    roll: Annotated[
        Length | None,
        Number("rho", "ρ", "roll of the facing", f"{_SRC}.4", 0.3, 0.125, 0.0, 0.6),
    ] = None
    side: Annotated[
        Length | None,
        Number(
            "ff_side",
            "facing at the side",
            "facing below the underarm",
            f"{_SRC}.2",
            5.0,
            2.0,
            3.0,
            10.0,
        ),
    ] = None
    centre: Annotated[
        Length | None,
        Number(
            "ff_cf",
            "facing at the centre",
            "facing below the neck at the centre",
            f"{_SRC}.2",
            BELOW_C[0],
            BELOW_C[1],
            3.0,
            12.0,
        ),
    ] = None
    strip: Annotated[
        Length | None,
        Number(
            "sw",
            "sw",
            "strip of facing beside the slanted edge",
            f"{_SRC}.3",
            4.0,
            1.5,
            2.5,
            8.0,
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FACING, "the facings", draft_facings),)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        strap = sheet.length("FF", "shoulder")
        if strap < 2.5:
            yield Finding(
                "F1",
                Severity.REFUSE,
                f"The facing is only {strap:.1f} cm wide at the shoulder; 2.5 cm must "
                "stay.",
                "FF",
                "Leave more of the shoulder, or bind the edges.",
                {"strap": strap},
            )
        half = sewn_front(sheet)
        if half.panel is not None:
            free = sheet.edge("FF", "free").path
            for s, _ in half.panel.meets(free):
                if half.panel.at_length(s).y > n.y_BP - 2.5:
                    yield Finding(
                        "F2",
                        Severity.WARN,
                        "The front facing reaches nearly to the bust point.",
                        "FF",
                        "Make it less deep at the side.",
                        {},
                    )


def draft_facings(d: Drafting) -> None:
    """Trace front facing FF and back facing BF, their shoulders of one length."""
    d.part = "facing"
    _front(d)
    target = d.sheet.length("FF", "shoulder")
    more = d.n.se_left / 2  # the shoulder has no ease in the facing (14.6)
    more += (_back(d.sheet, d.n, more).edge("shoulder").length - target) / 2
    piece = _back(d.sheet, d.n, more)
    d.lay(
        Verb.TRACE,
        d.sheet.put(piece),
        "BF",
        "back facing",
        amounts=(
            ("inside the edge by {}", "rho"),
            ("below the underarm", "ff_side"),
            *((("beside the slanted edge", "sw"),) if piece.has("slant") else ()),
            ("long at the shoulder", target),
        ),
        detail="from the back with its panels laid together; the shoulder "
        "shortened to the front facing's length",
    )


def _shortened(
    neck: Path, arm: Path, shell_neck: float, shell_arm: float
) -> tuple[Path, Path]:
    """Rolled neck (ending at the shoulder) and rolled armhole (starting there), both
    cut back at the shoulder by the larger of their excesses (14.5)."""
    over_neck, over_arm = neck.length - shell_neck, arm.length - shell_arm
    x = max(over_neck, over_arm, 0.0)
    # an edge that the roll did not lengthen keeps within 0.15 of its shell
    x_neck = max(0.0, min(x, over_neck + MOST_SHORT))
    x_arm = max(0.0, min(x, over_arm + MOST_SHORT))
    if x_neck > 1e-6:
        neck = neck.split_at_length(neck.length - x_neck)[0]
    if x_arm > 1e-6:
        arm = arm.split_at_length(x_arm)[1]
    return neck, arm


def _front(d: Drafting) -> None:
    n, half = d.n, sewn_front(d.sheet)
    rho = n.rho
    neck = inset(half.neck, rho, 0.0)  # shoulder to CF
    arm = inset(half.armhole, 0.0, rho)  # underarm to tip
    neck_r, arm_r = _shortened(
        neck.reversed(), arm.reversed(), half.neck.length, half.armhole.length
    )
    neck, arm = neck_r.reversed(), arm_r.reversed()
    c = half.neck.end
    foot_cf = Point(c.x, c.y + n.ff_cf)
    side = half.side.between(0.0, n.ff_side)
    f1 = side.end
    square = turned(side.end_direction, -90)  # towards the centre front
    w = foot_cf.x - f1.x
    free = Path.cubic(
        foot_cf, foot_cf + Vector(-0.45 * w, 0.0), f1 + square * (0.40 * w), f1
    )
    neck = neck.pinned(neck.start, c)
    arm = arm.pinned(side.start, arm.end)
    piece = Piece(
        "FF",
        "Front facing",
        (
            Edge("neck", neck),
            straight("cf", c, foot_cf, EdgeKind.FOLD),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("side", side.reversed()),
            Edge("armhole", arm),
            straight("shoulder", arm.end, neck.start),
        ),
    )
    d.lay(
        Verb.TRACE,
        d.sheet.put(piece),
        "FF",
        "front facing",
        amounts=(
            ("inside the edge by {}", "rho"),
            ("below the underarm", "ff_side"),
            ("below the neck at the fold", "ff_cf"),
            ("long at the shoulder", distance(arm.end, neck.start)),
        ),
        detail="from the front with its panels laid together; what the roll adds to "
        "the edges is cut off at the shoulder",
    )


def _back(sheet: Sheet, n: Numbers, more: float) -> Piece:
    """The back facing, `more` further in at both ends of the shoulder."""
    half = sewn_back(sheet)
    back = sheet.piece("BC" if "BC" in sheet.pieces else "B")
    rho, rho_s = n.rho, n.rho + more
    side = half.side.between(0.0, n.ff_side)
    arm = inset(half.armhole, rho_s, 0.0)  # tip to underarm
    arm = arm.pinned(arm.start, side.start)
    f1 = side.end
    square = turned(side.end_direction, 90)  # towards the centre back
    edges: list[Edge]
    if back.has("slant"):
        slant = back.edge("slant").path  # waist up to E1
        rolled = inset(slant + half.neck, rho, rho)
        rolled = _run_out(rolled, slant.length, rho_s - rho)
        shell = slant.length + half.neck.length
        whole, arm = _shortened(rolled, arm, shell, half.armhole.length)
        cut_at = len(slant.segments)
        slant_r = Path(whole.segments[:cut_at])
        neck_r = Path(whole.segments[cut_at:])
        waist = back.edge("waist").path  # panel to E2
        panel = back.edge("panel").path if back.has("panel") else None
        width = waist.length
        strip_whole = panel is None or n.sw > width - 1.0
        sw = width if strip_whole else n.sw
        foot = waist.between(width - sw, width) if sw < width - 1e-6 else waist
        foot = foot.pinned(foot.start, slant_r.start)
        free = _strip_edge(
            f1, square, foot.start, slant, panel if strip_whole else None
        )
        edges = [
            Edge("neck", neck_r),
            straight("shoulder", neck_r.end, arm.start),
            Edge("armhole", arm),
            Edge("side", side),
            Edge("free", free, EdgeKind.FINISHED),
            Edge("foot", foot),
            Edge("slant", slant_r),
        ]
    else:
        end_gap = 0.5 if back.edge("cb").kind is EdgeKind.SEAM else 0.0
        neck = inset(half.neck, 0.0, rho_s)
        neck, arm = _shortened(neck, arm, half.neck.length, half.armhole.length)
        c = Point(half.neck.start.x, half.neck.start.y)
        if end_gap:
            neck = neck.split_at_length(end_gap)[1]
        top = neck.start
        foot_cb = Point(top.x, c.y + n.ff_cf)
        w = f1.x - foot_cb.x
        free = Path.cubic(
            f1, f1 + square * (0.40 * w), foot_cb + Vector(0.45 * w, 0.0), foot_cb
        )
        kind = EdgeKind.SEAM if end_gap else EdgeKind.FOLD
        edges = [
            Edge("neck", neck),
            straight("shoulder", neck.end, arm.start),
            Edge("armhole", arm),
            Edge("side", side),
            Edge("free", free, EdgeKind.FINISHED),
            straight(
                "cb", foot_cb, top, kind if kind is EdgeKind.FOLD else EdgeKind.FINISHED
            ),
        ]
    return Piece("BF", "Back facing", tuple(edges))


def _run_out(path: Path, from_length: float, more: float) -> Path:
    """The path with its last point moved `more` to the right, evenly from a length."""
    if more < 1e-9:
        return path
    segs = list(path.segments)
    done = 0.0
    split = 0
    while split < len(segs) and done < from_length - 0.5:
        done += segs[split].length
        split += 1
    head, tail = segs[:split], Path(tuple(segs[split:]))
    moved = inset(tail, 0.0, more)
    return Path((*head, *moved.segments))


def _strip_edge(
    f1: Point, square: Vector, foot: Point, slant: Path, panel: Path | None
) -> Path:
    """Free edge of the back facing: from the side in a curve to the strip, then down
    beside the slanted edge (or down the panel line) to the waist."""
    drop = foot.y - f1.y
    if panel is None:
        up = direction(slant.start, slant.end)
        turn_at = foot + up * (0.55 * drop)
        below: Path = Path((Line(turn_at, foot),))
        arrive = up * -1.0
    else:
        length = panel.length
        below = panel.between(length - 0.55 * drop, length).pinned(
            panel.at_length(length - 0.55 * drop), foot
        )
        turn_at = below.start
        arrive = below.start_direction
    w = distance(f1, turn_at)
    return Path(
        (
            Cubic(f1, f1 + square * (0.42 * w), turn_at - arrive * (0.42 * w), turn_at),
            *below.segments,
        )
    )
