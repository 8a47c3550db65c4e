"""A front armhole that gapes, or that cuts in."""

from typing import ClassVar, Literal

from clothwright.blocks.bodice_curves import (
    front_pitch,
    inward_front,
    outwards_front,
)
from clothwright.curves import Point, Vector, rotate
from clothwright.features.fittings.base import SOURCE, Alteration, opened, turn_marks
from clothwright.features.fittings.lines import armhole_to
from clothwright.paper import CornerAfter, Drafting, On, Verb, redraw, spread
from clothwright.rules import Kind, RuleTable

CLOSED = RuleTable("front armhole closed")
SCOOPED = RuleTable("front armhole scooped")


def pitch(
    X: float,
    xfw: float,
    x_hf: float,
    y_hf: float,
    sigma_f: float,
    SH: float,
    xs: float,
    yB: float,
    x_BP: float,
    y_BP: float,
    theta: float,
) -> Point:
    """Pitch of the front armhole of the block (A3.9)."""
    tip = Point(x_hf, y_hf) + outwards_front(sigma_f) * SH
    under = rotate(Point(xs, yB), Point(x_BP, y_BP), theta)
    return front_pitch(tip, inward_front(sigma_f), X, xfw, under.y)


@CLOSED.rule(
    "φa",
    "turn that closes the front armhole",
    key="phi",
    kind=Kind.ANGLE,
    source="first garment 4.3",
    formula="2·asin(by/(2·|BP pf|))",
)
def _phi(
    X: float,
    xfw: float,
    x_hf: float,
    y_hf: float,
    sigma_f: float,
    SH: float,
    xs: float,
    yB: float,
    x_BP: float,
    y_BP: float,
    theta: float,
    by: float,
) -> float:
    at = pitch(X, xfw, x_hf, y_hf, sigma_f, SH, xs, yB, x_BP, y_BP, theta)
    return opened(at, Point(x_BP, y_BP), by)


@CLOSED.rule(
    "θ",
    "angle of the bust dart",
    key="theta",
    kind=Kind.ANGLE,
    source=SOURCE,
    formula="θ + φa",
)
def _theta(theta: float, phi: float) -> float:
    return theta + phi


class CloseFrontArmhole(Alteration):
    """Wedge closed from the front armhole to the bust point."""

    do: Literal["close front armhole"] = "close front armhole"
    title: ClassVar[str] = "front armhole closed"
    usual: ClassVar[tuple[float, float]] = (0.5, 1.5)
    page: ClassVar[RuleTable] = CLOSED
    moves: ClassVar[tuple[str, ...]] = ("F.armhole", "F.side high")
    follows: ClassVar[str] = (
        "the bust dart opens by as much; the armhole is drawn again, and a sleeve is "
        "drawn to it"
    )

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "front"
        before = d.sheet
        s = d.sheet.edge("F", "armhole").path.length_to_point(d["pf"])
        sheet = spread(
            d.sheet,
            "F",
            On("armhole", s),
            CornerAfter("dart low"),
            at_start=-d.n[at],
            at_end=0.0,
            moving="side high",
        )
        d.lay(
            Verb.SPREAD,
            sheet,
            "F",
            "front slashed from the armhole at the pitch to BP and overlapped",
            amounts=(("by {} at the armhole", at),),
            frm=("pf", "BP"),
            detail="to nothing at BP: the side turns up, and the bust dart opens",
        )
        turn_marks(d, before, "F", "side high", ("G", "U1"))


@SCOOPED.rule(
    "xfw",
    "half across front with ease",
    key="xfw",
    source=SOURCE,
    formula="xfw − by",
)
def _narrower(xfw: float, by: float) -> float:
    return xfw - by


class ScoopFrontArmhole(Alteration):
    """Lower front of the armhole hollowed."""

    do: Literal["scoop front armhole"] = "scoop front armhole"
    title: ClassVar[str] = "front armhole scooped"
    usual: ClassVar[tuple[float, float]] = (0.3, 0.6)
    most: ClassVar[float] = 1.5
    page: ClassVar[RuleTable] = SCOOPED
    moves: ClassVar[tuple[str, ...]] = ("F.armhole",)
    follows: ClassVar[str] = (
        "the armhole grows; its facing is traced again, a sleeve is drawn to it"
    )

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "front"
        d.point("pf", "pf", "front pitch point, scooped", right=at)
        edge = d.sheet.edge("F", "armhole")
        path = armhole_to(edge.path, Vector(d.n[at], 0.0))
        d.lay(
            Verb.REDRAW,
            redraw(d.sheet, "F", ["armhole"], [edge.along(path)]),
            "F.armhole",
            "front armhole, hollowed at the pitch and below",
            amounts=(("by {}", at),),
            lines=(path,),
        )
