"""Notched collar: collar and lapel, with a notch where they meet (transformations
5)."""

from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.lapel import lapel_edge, notch_end, outer_to
from clothwright.curves import Path, Point, distance, inset
from clothwright.features.base import Number, Rank, Stage
from clothwright.features.collars.collar_fall import lay_under
from clothwright.features.collars.collar_neck import NECK_STAND
from clothwright.features.collars.collar_pieces import COLLAR, grained
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
from clothwright.features.collars.lapel_sewing import notched_operations
from clothwright.features.operations import Operation
from clothwright.paper import (
    Drafting,
    Edge,
    EdgeKind,
    InnerLine,
    PaperError,
    Piece,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Kind, Numbers
from clothwright.units.fields import Angle, Length

LAPEL_TOP = "lapel top"
"""Edge of the lapel from the collar's end to its point."""

_LEAST = 0.3
"""The collar ends so far beyond the centre line, cm."""


class NotchedCollar(LapelCollar):
    """Notched collar."""

    kind: Literal["notched collar"] = "notched collar"
    title: ClassVar[str] = "Notched collar"
    sentence: ClassVar[str] = (
        "A notched [collar] stands {stand} and falls {fall} behind, with lapels "
        "{width} wide and a notch of {step}."
    )

    step: Annotated[
        Length | None,
        Number(
            "c_step",
            "collar step",
            "upper edge of the lapel, beyond the end of the collar",
            "common practice",
            3.5,
            1.375,
            1.0,
            8.0,
            (2.5, 5.0),
        ),
    ] = None
    point: Annotated[
        Length | None,
        Number(
            "c_point",
            "collar point",
            "length of the collar's end",
            "common practice",
            3.0,
            1.25,
            1.5,
            8.0,
            (2.5, 4.5),
        ),
    ] = None
    notch: Annotated[
        Angle | None,
        Number(
            "c_notch",
            "collar notch",
            "angle of the notch",
            "common practice",
            75.0,
            None,
            20.0,
            110.0,
            kind=Kind.ANGLE,
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the notched collar", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return notched_operations(sheet)


def _draft(d: Drafting) -> None:
    """The lapel, then the collar between its end, the gorge and the centre back."""
    n = d.n
    laid = lay_collar_on(d)
    tip = d.found(
        "Vp",
        laid.on_gorge(n.c_lapel),
        "point of the lapel",
        frm=("Vk",),
        amounts=(("square out from the roll line by {}", "c_lapel"),),
        detail="on the line of the neck, run on beyond the centre",
    )
    end = d.found(
        "Ve",
        tip - laid.way * n.c_step,
        "end of the collar, on the gorge",
        frm=("Vp",),
        amounts=(("back along the gorge by {}", "c_step"),),
    )
    most = distance(tip, laid.gorge.end) - _LEAST
    if n.c_step > most:
        raise PaperError(
            f"the notch leaves {n.c_step:.1f} cm of the lapel's upper edge, and the "
            f"collar must end beyond the centre line: leave {max(most, 0.0):.1f} cm or "
            "less (collar step), or make the lapel wider (collar lapel)"
        )
    roll = roll_on(laid, n.c_roll)
    edge = lapel_edge(tip, laid.roll)
    on = straight(NECK_STAND, laid.gorge.end, end)
    top = straight(LAPEL_TOP, end, tip)
    lay_front(d, with_lapel(laid.shell, (on, top, Edge(LAPEL, edge)), d["Vk"], roll))
    _lay_facing(d, top.path, edge, end, roll)
    _lay_collar(d, laid, end, roll)


def _lay_facing(d: Drafting, top: Path, edge: Path, end: Point, roll: Path) -> None:
    """The facing with its lapel, larger by a turn of cloth."""
    t = d.n.c_turn
    upper, lower = inset(top, 0.0, -t), inset(edge, -t, 0.0)
    corner = _corner(upper, lower)
    upper = upper.pinned(end, corner)
    lower = lower.pinned(corner, d["Vk"])
    facing = d.sheet.piece(FACED)
    on = straight(NECK_STAND, facing.edge("neck").path.end, end)
    more = (on, Edge(LAPEL_TOP, upper), Edge(LAPEL, lower))
    d.lay(
        Verb.REDRAW,
        d.sheet.put(with_lapel(facing, more, d["Vk"], roll)),
        FACED,
        "facing with its lapel",
        amounts=(("outside the front's by {}", "c_turn"),),
        detail="beginning at nothing at the break point and at the collar's end",
    )


def _corner(upper: Path, lower: Path) -> Point:
    on = upper.start + (upper.end - upper.start) * 1.5
    back = lower.start - lower.start_direction * 2.0
    hits = Path.line(upper.start, on).meets(Path.line(back, lower.start) + lower)
    return Path.line(upper.start, on).at_length(hits[0][0]) if hits else lower.start


def _lay_collar(d: Drafting, laid: Laid, end: Point, roll: Path) -> None:
    """The collar, larger by a turn of cloth, and its undercollar."""
    n = d.n
    neck = laid.neck
    point = d.found(
        "Vq",
        notch_end(end, laid.way, n.c_notch, n.c_point),
        "point of the collar",
        frm=("Ve",),
        amounts=(("at {} to the gorge", "c_notch"), ("long", "c_point")),
    )
    outer = outer_to(laid.back, point)
    whole = inset(outer + Path.line(point, end), -n.c_turn, -n.c_turn)
    last = len(whole.segments) - 1
    outer = Path(whole.segments[:last])
    top = outer.start
    upper = Piece(
        COLLAR,
        "Collar",
        (
            straight(NECK_STAND, end, neck.end),
            Edge("neck", neck.reversed()),
            straight("cb", neck.start, top, EdgeKind.FOLD),
            Edge("outer", outer),
            straight("end", outer.end, end),
        ),
        lines=(InnerLine("roll line", roll),),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(grained(upper)),
        COLLAR,
        "collar",
        amounts=(
            ("wide behind", n.c_roll + n.c_fall),
            ("and larger outside by {}", "c_turn"),
        ),
        frm=("Ve", "Vq", "Vz"),
        detail="its neck edge is the gorge, blended over the shoulder; its outer edge "
        "square to the centre back",
    )
    lay_under(d, d.sheet.piece(COLLAR))
