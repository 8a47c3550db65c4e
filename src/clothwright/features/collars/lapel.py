"""Collars cut on to the front with a lapel: what shawl and notched collar share
(transformations 5).

The front runs on over the button stand into the lapel, above the break point. The
undercollar is cut by itself, on the bias, along the gorge; what is seen is 0.3 larger:
the facing's lapel, and the collar, which a shawl has in one with it.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, ClassVar

from clothwright.blocks.collar import ClosedNeck
from clothwright.blocks.lapel import (
    AT_NECK,
    BackCollar,
    Roll,
    back_collar,
    neck_of_collar,
)
from clothwright.curves import Path, Point, Vector, cross, distance, dot, inset, mix
from clothwright.features.base import Number, Shown
from clothwright.features.chains import Chains
from clothwright.features.collars.collar import SRC, TURN, Collar
from clothwright.features.collars.collar_fall import fall_findings
from clothwright.features.collars.collar_neck import closed_neck
from clothwright.features.collars.lapel_seams import lapel_seams
from clothwright.features.linings.sewn_halves import sewn_front
from clothwright.features.openings.stand_pieces import STAND
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    InnerLine,
    PaperError,
    Piece,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

FACED = "FF"
"""The front facing, to which the lapel is sewn."""

LAPEL = "lapel"
"""Edge of the front, and of its facing, above the break point."""

LEAN = 15.0, 25.0
"""Usual lean of the collar behind, about, degrees (5)."""

_ABOUT = 2.0
"""What a lean may be beside that, degrees."""

_LEAST_ROLL = 6.0
"""A lapel is no shorter than this along the centre line, cm (common practice)."""

TABLE = RuleTable("lapel")
_rule = TABLE.rule


@_rule(
    "collar break",
    "break point below the neck end of the shoulder, level",
    source="common practice",
    key="c_break",
    formula="the first button then lies at the bust line",
    low=12.0,
    high=60.0,
)
def _break(y_BP: float, y_hf: float, b_first: float) -> float:
    return y_BP - y_hf - b_first


@_rule(
    "b down",
    "where the buttoned edge begins, below the neck on the centre line",
    source="transformations 5, 7",
    key="b_down",
    formula="at the break point",
)
def _down(c_break: float, Df: float) -> float:
    return c_break - Df


@_rule(
    "collar fall",
    "width of the fall behind",
    source=SRC,
    key="c_fall",
    formula="stand + 1.5 cm: the seam of the neck is hidden",
    low=2.0,
    high=12.0,
)
def _fall(c_roll: float) -> float:
    return c_roll + 1.5


class LapelCollar(Collar):
    """Base of the collars that are cut on."""

    page: ClassVar[int] = 2
    shows: ClassVar[Shown] = {
        "collar break": ("FC.lapel", "F.lapel"),
        "collar lapel": ("FC.lapel", "F.lapel"),
        "collar fall": ("CN.lapel", "CN.outer"),
        "collar stand": ("CN.neck",),
    }
    seams: ClassVar[Mapping[str, str]] = {
        **Collar.seams,
        "S100": "edge of a lapel, or of a whole shawl collar",
        "S101": "collar of a shawl's facing, to the back facing",
        "S102": "centre back of a shawl's facing",
        "S103": "centre back of the undercollar of a shawl",
    }
    needs: ClassVar[dict[str, str]] = {
        **Collar.needs,
        "round neck": "a collar with a lapel is drafted on a round neck; make its "
        'shape "round" or "standard"',
        "front opening": 'a lapel turns over above the buttons; add a "button stand" '
        "in front",
    }
    clashes: ClassVar[dict[str, str]] = {
        **Collar.clashes,
        "cut-on facing": "the facing of a lapel is larger than it and is cut by "
        "itself; let the button stand have a facing of its own",
        "band": "a lapel turns over above a facing; let the button stand have "
        "one of its own",
        "upper bust dart": "a bust dart above would lie under the lapel; leave it at "
        "the side or take a princess line",
        "open edges": "a lapel turns over above the buttons of a stand; take a button "
        "stand",
        "wrap": "a lapel is not yet drawn on crossing fronts; take a button stand",
    }

    stand: Annotated[
        Length | None,
        Number(
            "c_roll",
            "collar stand",
            "stand of the collar behind, where it rolls over",
            SRC,
            3.0,
            1.125,
            1.5,
            6.0,
            (2.5, 3.0),
        ),
    ] = None
    fall: Annotated[
        Length | None,
        Number(
            "c_fall", "collar fall", "width of the fall behind", SRC, low=2.0, high=12.0
        ),
    ] = None
    width: Annotated[
        Length | None,
        Number(
            "c_lapel",
            "collar lapel",
            "width of the lapel, square to the roll line",
            "common practice",
            8.0,
            3.125,
            4.0,
            16.0,
            (6.0, 11.0),
        ),
    ] = None
    break_point: Annotated[
        Length | None,
        Number(
            "c_break",
            "collar break",
            "break point below the neck end of the shoulder, level",
            SRC,
            low=12.0,
            high=60.0,
        ),
    ] = None
    turn: Annotated[Length | None, replace(TURN, cm=0.3)] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (TABLE,)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return (*super().sewn(t, n), *lapel_seams(t, n))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from fall_findings(n, "c_fall", "c_roll")
        yield from lapel_findings(n, sheet)


@dataclass(frozen=True)
class Laid:
    """The front with its collar laid on, before it is parted along the gorge."""

    shell: Piece
    gorge: Path
    """The front neck, from the shoulder to the centre."""

    roll: Roll
    back: BackCollar
    neck: Path
    """The neck edge of the collar, from the centre back to the centre front."""

    @property
    def way(self) -> Vector:
        """The gorge runs on so beyond the centre."""
        return self.gorge.end_direction

    def on_gorge(self, off: float) -> Point:
        """The point of the gorge's line, run on, so far outside of the roll line."""
        more = off - self.roll.off(self.gorge.end)
        return self.gorge.end + self.way * (more / dot(self.way, self.roll.out))


def front_of(sheet: Sheet) -> Piece:
    """The front's centre piece."""
    return sheet.piece("FC" if "FC" in sheet.pieces else "F")


def lay_collar_on(d: Drafting) -> Laid:
    """Break point, roll line, and the collar behind, laid off from the neck end of the
    shoulder."""
    n = d.n
    d.part = "collar"
    shell = front_of(d.sheet)
    d.under = (shell.outline,)
    edge = shell.edge(STAND).path
    gorge = shell.edge("neck").path
    k = Point(edge.start.x, n.y_hf + n.c_break)
    top, low = gorge.end.y + _LEAST_ROLL, edge.end.y - 1.0
    if not top <= k.y <= low:
        raise PaperError(
            f"the lapel breaks {n.c_break:.1f} cm below the neck end of the shoulder: "
            f"set its break (collar break) between {top - n.y_hf:.1f} cm, below the "
            f"neck, and {low - n.y_hf:.1f} cm, above the waist"
        )
    k = edge.at_length(edge.length_to_point(k))
    d.found(
        "Vk",
        k,
        "break point, on the edge of the stand",
        amounts=(("down from the level of hf", "c_break"),),
    )
    hps = gorge.start
    way = shell.before("neck").path.end_direction
    d.found(
        "Vr",
        hps + way * (AT_NECK * n.c_roll),
        "roll line at the shoulder",
        amounts=(
            ("along the shoulder line, on beyond the neck, {}", AT_NECK * n.c_roll),
        ),
        detail="0.75 of the collar's stand",
    )
    d.draw(
        "roll line",
        Path.line(d["Vk"], d["Vr"]),
        "roll line of the lapel",
        frm=("Vk", "Vr"),
    )
    roll = Roll(d["Vk"], d["Vr"])
    if roll.off(gorge.end) < 0.5:
        raise PaperError(
            "the neck comes down inside the roll line of the lapel: make it less deep "
            "(Df), or let the lapel break lower (collar break)"
        )
    closed = closed_neck(d.sheet, n.Lr)
    wide = n.c_roll + n.c_fall
    nb, outer = closed.back.length, lies_along(closed, n).length
    back = back_collar(hps, roll.up, nb, outer, wide)
    neck = neck_of_collar(back.neck.reversed(), gorge)
    lost = nb + gorge.length - neck.length  # by blending it over the shoulder
    back = back_collar(hps, roll.up, nb + lost, outer + lost, wide)
    neck = neck_of_collar(back.neck.reversed(), gorge)
    run = back.neck.end - hps
    d.found(
        "Vz",
        back.neck.end,
        "centre back of the collar, at the neck",
        frm=("Vr",),
        amounts=(
            (
                "from the neck end of the shoulder, beside the line from Vk to Vr",
                dot(run, roll.up),
            ),
            ("square away from that line, to the back", abs(cross(run, roll.up))),
        ),
        detail="where the back neck's length ends when the collar is bent away by "
        f"{back.degrees:.0f}°, so that its outer edge is as long as where it lies",
    )
    d.draw(
        "gorge",
        neck,
        "neck edge of the collar and the gorge",
        frm=("Vz",),
        detail="from Vz, square to the centre back, in an even bend to the neck end of "
        "the shoulder, blended there into the neck of the front",
    )
    d.found(
        "Xs",
        neck.at_length(nb),
        "shoulder on the collar",
        frm=("Vz",),
        amounts=(("along by the back neck, {}", nb),),
        detail="the neck edges of front and collar blended there",
    )
    return Laid(shell, gorge, roll, back, neck)


def lies_along(neck: ClosedNeck, n: Numbers) -> Path:
    """The line of the back that the outer edge of the collar lies on: so far below the
    neck as the fall is wider than the stand."""
    off = max(n.c_fall - n.c_roll, 0.0)
    return inset(neck.back, off, off)


def roll_on(laid: Laid, stand: float) -> Path:
    """The roll line drawn on to the centre back of the collar, at its stand."""
    end = inset(laid.back.neck, stand, stand)
    top = mix(laid.roll.foot, laid.roll.top, 0.9)
    third = distance(top, end.end) / 3
    a, b = laid.roll.up * third, end.end_direction * third
    behind = Path.cubic(top, top + a, end.end - b, end.end)
    return Path.line(laid.roll.foot, top) + behind


def with_lapel(
    shell: Piece, upper: Iterable[Edge], k: Point, roll: Path, gone: str = ""
) -> Piece:
    """The piece with what lies above the break point of its stand in place of the
    neck's end there, and of the edge `gone`."""
    loop: list[Edge] = []
    for e in shell.edges:
        if e.name == gone:
            continue
        if e.name == "neck stand":
            loop += upper
        elif e.name == STAND:
            loop.append(straight(STAND, k, e.path.end, e.kind))
        else:
            loop.append(e)
    return shell.with_edges(loop).with_lines(InnerLine("roll line", roll))


def lay_front(d: Drafting, shell: Piece) -> None:
    """Put the front with its lapel on the table."""
    d.lay(
        Verb.REDRAW,
        d.sheet.put(shell),
        shell.code,
        "front with its lapel, cut on above the break point",
        frm=("Vk",),
        amounts=(("wide, square to the roll line", "c_lapel"),),
        detail="the gorge is the neck, run on to the lapel",
        lines=(shell.edge(LAPEL).path,),
    )


def lapel_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """What is asked of lapel and collar."""
    closed = closed_neck(sheet, n.Lr)
    spread = lies_along(closed, n).length - closed.back.length
    lean = math.degrees(spread / (n.c_roll + n.c_fall))
    low, high = LEAN
    if not low - _ABOUT <= lean <= high + _ABOUT:
        yield Finding(
            "KL1",
            Severity.WARN,
            f"The collar leans by {lean:.0f}° behind; usual is {low:.0f}° to "
            f"{high:.0f}°: it will lie {'close and stand up' if lean < low else 'flat'}"
            ".",
            "collar fall",
            "Make the fall wider." if lean < low else "Make the fall less wide.",
            {"lean": lean},
        )
    shell = front_of(sheet)
    roll = Roll(sheet.points["Vk"], sheet.points["Vr"])
    tip = shell.edge(LAPEL).path.start
    over = tip - roll.out * (2 * roll.off(tip))
    if not any(p.contains(over) for p in sewn_front(sheet).laid()):
        yield Finding(
            "KL2",
            Severity.WARN,
            "Turned over, the lapel reaches beyond the front.",
            "collar lapel",
            "Make it narrower.",
            {"lapel": n.c_lapel},
        )
