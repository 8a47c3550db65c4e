"""Front princess line from the armhole over the bust point (first garment 5)."""

from collections.abc import Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import bodice_curves
from clothwright.curves import Point, distance, rotate, turned
from clothwright.features.base import Feature, Rank, Shown, Stage
from clothwright.features.bodice.front_beside import (
    divide_beside,
    findings_beside,
    open_rest,
    tightened,
    upper_beside,
)
from clothwright.features.bodice.front_beside_rules import (
    BESIDE,
    BESIDE_BP,
    BESIDE_ONLY,
)
from clothwright.features.bodice.front_panels import (
    EASE,
    FRONT_PANELS,
    panel_findings,
    split_panels,
)
from clothwright.features.bodice.panel_lines import (
    FRONT,
    UpperCurve,
    from_armhole,
    share_of_armhole,
    start_findings,
    start_on_armhole,
)
from clothwright.findings import Finding
from clothwright.paper import Drafting, PaperError, Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.units import Unit
from clothwright.units.fields import Length, Ratio

_SRC = "first garment 5"

_REACH = RuleTable("reach of the armhole panel line")


@_REACH.rule(
    "|BP Qf|",
    "bust point to the start of the front panel line",
    key="reach_Qf",
    source=f"{_SRC}.1",
)
def _reach(  # the pitch of A3.9 on the new tip
    X: float,
    xfw: float,
    x_hf: float,
    y_hf: float,
    S: float,
    sigma_f: float,
    sigma_f_new: float,
    xs: float,
    yB: float,
    x_BP: float,
    y_BP: float,
    theta: float,
) -> float:
    tip = Point(x_hf, y_hf) + bodice_curves.outwards_front(sigma_f) * S
    bp = Point(x_BP, y_BP)
    underarm = rotate(Point(xs, yB), bp, theta)
    inward = bodice_curves.inward_front(sigma_f_new)
    return distance(bp, bodice_curves.front_pitch(tip, inward, X, xfw, underarm.y))


_REACH_AT_SHARE = RuleTable("reach of a panel line from a share of the armhole")


@_REACH_AT_SHARE.rule(
    "|BP Qf|",
    "bust point to the start of the front panel line",
    key="reach_Qf",
    source=f"{_SRC}.1",
)
def _reach_at_share(  # along the armhole of A3.10 on the new tip
    X: float,
    xfw: float,
    x_hf: float,
    y_hf: float,
    S: float,
    sigma_f: float,
    sigma_f_new: float,
    xs: float,
    a: float,
    yB: float,
    yW: float,
    x_BP: float,
    y_BP: float,
    theta: float,
    share_f: float,
) -> float:
    bp, gc = Point(x_BP, y_BP), Point(xs, yB)
    tip = Point(x_hf, y_hf) + bodice_curves.outwards_front(sigma_f) * S
    g = rotate(gc, bp, theta)
    square = turned(bodice_curves.side_square_front(gc, Point(xs + a, yW)), theta)
    inward = bodice_curves.inward_front(sigma_f_new)
    armhole = bodice_curves.front_armhole(
        tip,
        inward,
        bodice_curves.front_pitch(tip, inward, X, xfw, g.y),
        g,
        square,
    ).reversed()
    return distance(bp, armhole.at_length(armhole.length * share_f))


class FrontArmholePrincess(Feature):
    """Front princess line from the armhole over the bust point to the waist."""

    kind: Literal["front armhole princess"] = "front armhole princess"
    title: ClassVar[str] = "Armhole princess, front"
    sentence: ClassVar[str] = (
        "[Princess lines] from the armhole in front, eased {ease} over the bust."
    )
    shows: ClassVar[Shown] = {
        "ep": ("FC.panel", "F.dart low"),
        "share f": ("FC.panel", "F.dart low"),
        "beside f": ("FC.panel",),
        "rest": ("FC.panel",),
        "front panel": ("FC.panel", "F.dart low"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"front panels", "front panel seam"})
    needs: ClassVar[dict[str, str]] = {"armhole": "say how the armhole is finished"}
    clashes: ClassVar[dict[str, str]] = {
        "front panels": "the bust dart can go into one line only; leave one off"
    }

    ease: Annotated[Length | None, EASE] = None
    share: Annotated[Ratio | None, share_of_armhole(FRONT)] = None
    beside: Annotated[Length | None, BESIDE_BP] = None
    """How far the line passes beside the bust point; over it when left out."""

    def said(self) -> str:
        if self.beside is None:
            return self.sentence
        return (
            "[Panel lines] from the armhole in front, {beside} beside the bust point."
        )

    def forbids(self) -> Mapping[str, str]:
        if self.beside is None:
            return self.clashes
        return {**self.clashes, **BESIDE_ONLY}

    def given(self, unit: Unit) -> Iterable[Given]:
        """Its numbers; what a line beside the bust point is eased by is no choice."""
        for it in super().given(unit):
            if self.beside is None or it.key != "ep" or self.ease is not None:
                yield it

    def tables(self) -> tuple[RuleTable, ...]:
        reach = _REACH if self.share is None else _REACH_AT_SHARE
        return (FRONT_PANELS if self.beside is None else BESIDE, reach)

    def stages(self) -> tuple[Stage, ...]:
        out = (Stage(Rank.FRONT_PANELS, "front princess line", self._apply),)
        if self.beside is None:
            return out
        return (*out, Stage(Rank.YOKE_DART, "the rest of the bust dart", open_rest))

    def _apply(self, d: Drafting) -> None:
        d.part = "front"
        if self.beside is not None:
            if self.ease is not None:
                raise PaperError(
                    "a panel line beside the bust point is eased by the rest of the "
                    "dart alone: leave its ease (ep) out"
                )
            tightened(d)
        armhole = d.sheet.edge("F", "armhole").path  # underarm to tip
        qf = start_on_armhole(d, FRONT, armhole, at_pitch=self.share is None)
        if self.beside is not None:
            divide_beside(d)
        else:
            split_panels(d, "armhole", _upper(d.sheet, qf))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if self.beside is not None:
            yield from findings_beside(n, sheet)
            turned_by = n.theta + n.phi_n + n.phi_a
            yield from start_findings(FRONT, upper_beside(sheet, turned_by))
            return
        yield from panel_findings(n, sheet)
        yield from start_findings(FRONT, _upper(sheet, sheet.points["Qf"]))


def _upper(sheet: Sheet, qf: Point) -> UpperCurve:
    return from_armhole(FRONT, qf, sheet.points["BP"], sheet.points["D1"])
