"""A gaping front neck, closed by a wedge from the neck to the bust point.

The wedge is overlapped; the bust dart opens by as much (transformations 1.8, cutting
and costing 6).
"""

from typing import ClassVar, Literal

from clothwright.blocks.bodice_curves import outwards_front
from clothwright.curves import Point, midpoint, rotate
from clothwright.features.fittings.base import (
    SOURCE,
    Alteration,
    opened,
    slash_start,
    turn_marks,
)
from clothwright.paper import CornerAfter, Drafting, On, Verb, spread
from clothwright.rules import Kind, RuleTable

PAGE = RuleTable("front neck closed")
_rule = PAGE.rule


@_rule("x(Q)", "middle of the finished neck line, across", key="x_Q", source=SOURCE)
def _x(X: float, x_hf: float, sigma_f: float, dw: float) -> float:
    return midpoint(Point(x_hf, 0.0) + outwards_front(sigma_f) * dw, Point(X, 0.0)).x


@_rule("y(Q)", "level of the middle of the neck line", key="y_Q", source=SOURCE)
def _y(y_hf: float, sigma_f: float, dw: float, Df: float) -> float:
    return y_hf + (outwards_front(sigma_f).y * dw + Df) / 2


@_rule(
    "φn",
    "turn that closes the front neck",
    key="phi",
    kind=Kind.ANGLE,
    source="transformations 1.1, 1.8",
    formula="2·asin(by/(2·|BP Q|))",
)
def _phi(x_Q: float, y_Q: float, x_BP: float, y_BP: float, by: float) -> float:
    return opened(Point(x_Q, y_Q), Point(x_BP, y_BP), by)


@_rule(
    "θ",
    "angle of the bust dart",
    key="theta",
    kind=Kind.ANGLE,
    source=SOURCE,
    formula="θ + φn",
)
def _theta(theta: float, phi: float) -> float:
    return theta + phi


@_rule(
    "σf",
    "slope of the front shoulder",
    key="sigma_f",
    kind=Kind.ANGLE,
    source=SOURCE,
    formula="σf − φn",
)
def _slope(sigma_f: float, phi: float) -> float:
    return sigma_f - phi


def _turned(x_hf: float, y_hf: float, x_BP: float, y_BP: float, phi: float) -> Point:
    return rotate(Point(x_hf, y_hf), Point(x_BP, y_BP), phi)


@_rule("x(hf)", "front shoulder neck point, across", key="x_hf", source=SOURCE)
def _x_hf(x_hf: float, y_hf: float, x_BP: float, y_BP: float, phi: float) -> float:
    return _turned(x_hf, y_hf, x_BP, y_BP, phi).x


@_rule("y(hf)", "level of the front shoulder neck point", key="y_hf", source=SOURCE)
def _y_hf(x_hf: float, y_hf: float, x_BP: float, y_BP: float, phi: float) -> float:
    return _turned(x_hf, y_hf, x_BP, y_BP, phi).y


@_rule("fw", "front neck width", key="fw", source=SOURCE, formula="X − x(hf)")
def _fw(
    X: float, x_hf: float, y_hf: float, x_BP: float, y_BP: float, phi: float
) -> float:
    return X - _turned(x_hf, y_hf, x_BP, y_BP, phi).x


@_rule("dep", "front neck depth", key="dep", source=SOURCE, formula="to the same mark")
def _dep(
    dep: float, x_hf: float, y_hf: float, x_BP: float, y_BP: float, phi: float
) -> float:
    return y_hf + dep - _turned(x_hf, y_hf, x_BP, y_BP, phi).y


class CloseFrontNeck(Alteration):
    """Wedge closed from the front neck to the bust point."""

    do: Literal["close front neck"] = "close front neck"
    title: ClassVar[str] = "front neck closed"
    usual: ClassVar[tuple[float, float]] = (0.5, 1.5)
    page: ClassVar[RuleTable] = PAGE
    moves: ClassVar[tuple[str, ...]] = ("F.neck", "F.shoulder", "F.armhole")
    follows: ClassVar[str] = (
        "the bust dart opens by as much; neck and front armhole are drawn again, the "
        "facing is traced again"
    )

    def apply(self, d: Drafting, at: str) -> None:
        d.part = "front"
        n = d.n
        before, f, bp = d.sheet, d.sheet.piece("F"), d["BP"]
        edge, s = slash_start(f, bp, Point(n[f"{at}.x_Q"], n[f"{at}.y_Q"]))
        start = f.edge(edge).path.at_length(s)
        chord = rotate(start, bp, n[f"{at}.phi"])
        gap = ((chord.x - start.x) ** 2 + (chord.y - start.y) ** 2) ** 0.5
        sheet = spread(
            d.sheet,
            "F",
            On(edge, s),
            CornerAfter("dart low"),
            at_start=-gap,
            at_end=0.0,
            moving="side high",
        )
        d.lay(
            Verb.SPREAD,
            sheet,
            "F",
            f"front slashed from the {edge} to BP and overlapped",
            amounts=(("by {} at the new neck line", at), ("by {} at the edge", gap)),
            frm=("BP",),
            detail="to nothing at BP: shoulder and armhole turn towards the centre "
            "front, and the bust dart opens",
        )
        marks = ("hf", "tf", "pf", "G", "U1")
        turn_marks(d, before, "F", "side high", marks)
