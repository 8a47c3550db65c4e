"""Shawl collar: collar and lapel in one edge, without a notch (transformations 5)."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import ClassVar, Literal

from clothwright.blocks.lapel import shawl_edge
from clothwright.curves import Path, Vector, distance, inset
from clothwright.features.base import Rank, Stage
from clothwright.features.collars.collar_neck import NECK_STAND
from clothwright.features.collars.collar_pieces import UNDER
from clothwright.features.collars.lapel import (
    FACED,
    LAPEL,
    Laid,
    LapelCollar,
    lay_collar_on,
    lay_front,
    roll_on,
    with_lapel,
)
from clothwright.features.collars.lapel_seams import (
    COLLAR_END,
    COLLAR_NECK,
    TAPERS_FROM,
)
from clothwright.features.collars.lapel_sewing import shawl_operations
from clothwright.features.grain import longest_line
from clothwright.features.operations import Operation
from clothwright.paper import (
    Drafting,
    Edge,
    InnerLine,
    Piece,
    Sheet,
    Verb,
    meetings,
    straight,
)
from clothwright.rules import Numbers

_BIAS = Vector(0.5**0.5, -(0.5**0.5))


class ShawlCollar(LapelCollar):
    """Shawl collar."""

    kind: Literal["shawl collar"] = "shawl collar"
    title: ClassVar[str] = "Shawl collar"
    sentence: ClassVar[str] = (
        "A shawl [collar] stands {stand} and falls {fall} behind and is {width} wide "
        "in front."
    )

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the shawl collar", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return shawl_operations(sheet)


def _draft(d: Drafting) -> None:
    """One outer edge from the centre back to the break point; the undercollar cut off
    along the gorge; the facing in one with the collar."""
    n = d.n
    laid = lay_collar_on(d)
    widest = d.found(
        TAPERS_FROM,
        laid.roll.beside(laid.gorge.end, n.c_lapel),
        "widest point of the shawl",
        frm=("Vk", "Vr"),
        amounts=(("square out from the roll line by {}", "c_lapel"),),
        detail="beside the centre of the neck",
    )
    outer = shawl_edge(laid.back, laid.roll, widest)
    ray = Path.line(laid.gorge.end, laid.gorge.end + laid.way * (n.c_lapel * 3))
    hits = meetings(
        ray,
        outer,
        "the line of the neck, run on, misses the edge of the shawl: make the "
        "shawl wider (collar lapel), or let it break lower (collar break)",
    )
    d.draw(
        "shawl",
        outer,
        "outer edge of collar and lapel, in one",
        frm=("Vz", TAPERS_FROM, "Vk"),
        detail="square to the centre back",
    )
    s = hits[0][1]
    upper, lower = outer.split_at_length(s)
    lower = lower.pinned(upper.end, d["Vk"])
    roll = roll_on(laid, n.c_roll)
    on = straight(NECK_STAND, laid.gorge.end, upper.end)
    lay_front(d, with_lapel(laid.shell, (on, Edge(LAPEL, lower)), d["Vk"], roll))
    _lay_under(d, laid, upper, roll)
    level = outer.length_to_point(widest)
    _lay_facing(d, laid, outer, level, roll)


def _lay_under(d: Drafting, laid: Laid, outer: Path, roll: Path) -> None:
    neck = laid.neck
    piece = Piece(
        UNDER,
        "Undercollar",
        (
            straight(NECK_STAND, outer.end, neck.end),
            Edge("neck", neck.reversed()),
            straight("cb", neck.start, outer.start),
            Edge(LAPEL, outer),
        ),
        lines=(InnerLine("roll line", roll),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(replace(piece, grain=longest_line(piece, _BIAS))),
        UNDER,
        "undercollar, cut off along the gorge, on the bias",
        amounts=(("wide behind", d.n.c_roll + d.n.c_fall),),
        frm=("Vz",),
        detail="its neck edge blended over the shoulder",
    )


def _lay_facing(d: Drafting, laid: Laid, outer: Path, level: float, roll: Path) -> None:
    """The facing in one with the collar, larger outside by a turn of cloth above the
    widest point, by nothing at the break point."""
    t = d.n.c_turn
    facing = d.sheet.piece(FACED)
    larger = inset(outer, -t, 0.0, level=level)
    larger = larger.pinned(larger.start, d["Vk"])
    at = facing.edge("neck").path.start
    neck = inset(laid.back.neck, -distance(at, laid.gorge.start), 0.0)
    neck = neck.pinned(at, neck.end)
    loop = [
        Edge(COLLAR_NECK, neck),
        straight(COLLAR_END, neck.end, larger.start),
        Edge(LAPEL, larger),
    ]
    d.lay(
        Verb.REDRAW,
        d.sheet.put(with_lapel(facing, loop, d["Vk"], roll, gone="neck")),
        FACED,
        "facing in one with the collar",
        amounts=(("outside the front's and the undercollar's by {}", "c_turn"),),
        detail="down to the widest point, and to nothing at the break point; its "
        "collar is sewn to the back facing",
    )
