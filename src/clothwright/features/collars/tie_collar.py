"""Tie at the neck, knotted to a bow in front (transformations 5)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, Point, Vector
from clothwright.features.base import Cuts, Number, Rank, Stage
from clothwright.features.collars.collar import SRC, Collar
from clothwright.features.collars.collar_neck import closed_neck, opens_behind
from clothwright.features.collars.collar_pieces import COLLAR
from clothwright.features.collars.collar_sewing import tie_operations
from clothwright.features.operations import Operation
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Piece,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers
from clothwright.units.fields import Length


class TieCollar(Collar):
    """Tie collar, a strip folded lengthwise."""

    kind: Literal["tie collar"] = "tie collar"
    title: ClassVar[str] = "Tie collar"
    sentence: ClassVar[str] = (
        "Round the neck runs a [tie], {width} wide, with ends {ends} long; it stops "
        "{away} short of the centre front, for the knot."
    )

    width: Annotated[
        Length | None,
        Number(
            "c_wide",
            "collar width",
            "width of the tie, folded",
            SRC,
            6.0,
            2.5,
            2.0,
            14.0,
            (4.0, 10.0),
        ),
    ] = None
    ends: Annotated[
        Length | None,
        Number(
            "c_tie",
            "tie ends",
            "each end of the tie beyond the neck",
            SRC,
            60.0,
            24.0,
            20.0,
            120.0,
            (50.0, 80.0),
        ),
    ] = None
    away: Annotated[
        Length | None,
        Number(
            "c_away",
            "collar away",
            "tie short of the centre front, for the knot",
            SRC,
            3.0,
            1.25,
            1.2,
            6.0,
            (2.0, 4.0),
        ),
    ] = None

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the tie", _draft),)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        if opens_behind(sheet):
            return {COLLAR: Cuts("2 (1 pair)", 2)}
        return {COLLAR: Cuts("1 on fold", 1)}

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return tie_operations(sheet)


def _draft(d: Drafting) -> None:
    """A strip twice as wide as the tie: the neck up to where the knot lies, then the
    end."""
    n = d.n
    d.part = "collar"
    neck = closed_neck(d.sheet, n.Lr)
    whole = neck.length - n.c_away
    b = d.start("Xb", Point(0.0, 0.0), "centre back of the tie, at the neck")
    d.point("Xs", "Xb", "shoulder on the tie", right=neck.back.length)
    f = d.point("Xf", "Xb", "where the tie leaves the neck", right=whole)
    e = d.point("Xe", "Xf", "end of the tie", right="c_tie")
    fold, top = Vector(0.0, -n.c_wide), Vector(0.0, -2 * n.c_wide)
    loop = [
        straight("inside", b + top, f + top),
        straight("tie over", f + top, e + top),
        straight("end high", e + top, e + fold),
        straight("end low", e + fold, e),
        straight("tie under", e, f),
        straight("neck", f, b),
    ]
    if opens_behind(d.sheet):
        loop.append(straight("end back low", b, b + fold))
        loop.append(straight("end back high", b + fold, b + top))
    else:
        loop.append(straight("cb", b, b + top, EdgeKind.FOLD))
    piece = Piece(
        COLLAR,
        "Tie",
        tuple(loop),
        lines=(InnerLine("fold", Path.line(b + fold, e + fold)),),
        grain=(f + fold * 0.5, e + fold * 0.5 - Vector(5.0, 0.0)),
    )
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        COLLAR,
        "tie, double",
        amounts=(("wide on either side of its fold", "c_wide"),),
        frm=("Xb", "Xf", "Xe"),
    )
