"""Frill at the neck: a ring flounce, as long as the neck inside (blocks G13,
transformations 5)."""

import math
from collections.abc import Callable, Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.circle import Sector
from clothwright.features.base import Number, Rank, Stage
from clothwright.features.collars.collar import Collar
from clothwright.features.collars.collar_neck import closed_neck, opens_behind
from clothwright.features.collars.collar_pieces import COLLAR, grained
from clothwright.features.collars.collar_sewing import single_operations
from clothwright.features.operations import Operation
from clothwright.paper import Drafting, EdgeKind, Piece, Sheet, Verb
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.units.fields import Length, Ratio

_SRC = "blocks G13"

NECK_OFF, END_OFF = 1.3, 1.6
"""What the neck edge and each end of a frill carry beyond the net line at most, cm: in
the ring between the ends there must be paper for both."""

FRILL = RuleTable("neck frill")


@FRILL.rule(
    "r frill",
    "inner radius of the frill",
    source=_SRC,
    key="r_frill",
    formula="width/(fullness − 1)",
)
def _radius(c_wide: float, c_full: float) -> float:
    return c_wide / (c_full - 1)


@FRILL.rule(
    "r frill hem",
    "outer radius of the frill",
    source=_SRC,
    key="r_frill_hem",
    formula="r + width",
)
def _outer(r_frill: float, c_wide: float) -> float:
    return r_frill + c_wide


class NeckFrill(Collar):
    """Frill at the neck."""

    kind: Literal["neck frill"] = "neck frill"
    title: ClassVar[str] = "Neck frill"
    sentence: ClassVar[str] = (
        "Round the neck lies a [frill], {width} wide, its edge {fullness} times as "
        "long as the neck."
    )

    width: Annotated[
        Length | None,
        Number(
            "c_wide",
            "collar width",
            "width of the frill",
            _SRC,
            6.0,
            2.5,
            2.0,
            20.0,
            (3.0, 12.0),
        ),
    ] = None
    fullness: Annotated[
        Ratio | None,
        Number(
            "c_full",
            "frill fullness",
            "edge of the frill to the neck",
            _SRC,
            1.75,
            None,
            1.1,
            5.0,
            (1.3, 2.5),
            Kind.RATIO,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (FRILL,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.COLLAR, "the neck frill", _draft),)

    def operations(
        self,
        n: Numbers,
        sheet: Sheet,
        fmt: Callable[[float], str],
    ) -> Iterable[Operation]:
        return single_operations(sheet)


def room_of_end(radius: float) -> float:
    """Degrees of a ring of this inner radius, cm, that the allowance of an end takes up
    where it is cut narrowest: inside the neck edge by that one's."""
    inner = radius - NECK_OFF
    return math.degrees(math.asin(END_OFF / inner)) if inner > END_OFF else 90.0


def _draft(d: Drafting) -> None:
    """A ring's part whose inner arc is the trued half neck."""
    n = d.n
    d.part = "collar"
    neck = closed_neck(d.sheet, n.Lr)
    degrees = math.degrees(neck.length / n.r_frill)
    end = room_of_end(n.r_frill)
    if degrees > 360.0 - 2 * end:
        raise RuleError(
            f"half of the frill would fill {degrees:.0f}° of a ring: make it less full "
            "(frill fullness), or wider (collar width)"
        )
    behind = opens_behind(d.sheet)
    closed = EdgeKind.FOLD if degrees <= 180.0 - end else EdgeKind.SEAM
    seam, done = EdgeKind.SEAM, EdgeKind.FINISHED
    cf = ("cf", closed) if behind else ("end", done)
    cb = ("end back", done) if behind else ("cb", closed)
    sector = Sector.half(n.r_frill, n.r_frill_hem, degrees, at_right=behind)
    piece = Piece(
        COLLAR, "Neck frill", sector.edges(("neck", seam), cf, ("hem", done), cb)
    )
    piece = grained(piece)
    inner = piece.edge("neck").path
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(piece),
        COLLAR,
        "frill of the neck",
        amounts=(
            ("with an inner arc of radius {}", "r_frill"),
            ("as long as the half neck, {}", neck.length),
            ("and an outer arc of radius {}", "r_frill_hem"),
        ),
        detail="both arcs from one centre, joined by lines that run to it",
    )
    d.found(
        "Xs",
        inner.at_length(neck.back.length),
        "shoulder on the frill",
        amounts=(("along from the centre back by {}", neck.back.length),),
    )
