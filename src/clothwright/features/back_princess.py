"""Back princess line, from the armhole to the point of the back waist dart.

First garment 6: a cut from the armhole to the dart's point divides the back at once;
the side panel's corner at the point is rounded.
"""

import math
from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.curves import Path, direction
from clothwright.features.base import Feature, Rank, Stage
from clothwright.features.panel_lines import (
    BACK,
    corner,
    divide,
    rounded,
    share_of_armhole,
    start_on_armhole,
)
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    Edge,
    Sheet,
    Verb,
    redraw,
)
from clothwright.rules import Kind, Numbers, RuleTable
from clothwright.truing import Fillet, arc_like
from clothwright.units.fields import Ratio

_SRC = "first garment 6.2"

BACK_PANELS = RuleTable("back princess line")


@BACK_PANELS.rule(
    "ωb",
    "opening of the back waist dart at its point",
    kind=Kind.ANGLE,
    source=f"{_SRC}.2",
    formula="2·atan((bd/2)/(yW − yB))",
)
def omega_b(bd_cut: float, yW: float, yB: float) -> float:
    return math.degrees(2 * math.atan(bd_cut / 2 / (yW - yB)))


class BackArmholePrincess(Feature):
    """Back princess line from the armhole to the waist dart."""

    kind: Literal["back armhole princess"] = "back armhole princess"
    title: ClassVar[str] = "Armhole princess, back"
    sentence: ClassVar[str] = "Princess lines from the armhole behind."
    gives: ClassVar[frozenset[str]] = frozenset({"back panels", "back panel seam"})
    needs: ClassVar[dict[str, str]] = {"armhole": "say how the armhole is finished"}
    clashes: ClassVar[dict[str, str]] = {
        "back panels": "the back waist dart can go into one line only; leave one off"
    }

    share: Annotated[Ratio | None, share_of_armhole(BACK)] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (BACK_PANELS,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BACK_PANELS, "back princess line", self._apply),)

    def _apply(self, d: Drafting) -> None:
        d.part = "back"
        armhole = d.sheet.edge("B", "armhole").path.reversed()  # underarm to tip
        qb = start_on_armhole(d, BACK, armhole, at_pitch=self.share is None)
        upper = arc_like(qb, d["Pd"], direction(d["Pd"], d["D1b"]))
        split_back(d, "armhole", upper)

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from back_findings(n, sheet)


def split_back(d: Drafting, edge: str, upper: Path) -> None:
    """Divide the back along `upper`, from `edge` to the dart's point."""
    divide(d, BACK, edge, upper)
    sheet = d.sheet
    bc, bs = sheet.piece("BC"), sheet.piece("BS")
    lower = bs.edge("leg side").path.reversed()  # Pd to D2b
    up = bs.edge("cut").path.reversed()  # Qb to Pd
    fillet = Fillet.of(corner(up, lower))
    side_panel = rounded(up, lower, fillet)
    sheet = redraw(
        sheet, "BS", ["leg side", "cut"], [Edge("panel", side_panel.reversed())]
    )
    waist = Edge("waist", bs.edge("waist side").path)
    sheet = redraw(sheet, "BS", ["waist side"], [waist])
    panel = bc.edge("cut").path + bc.edge("leg cb").path
    sheet = redraw(sheet, "BC", ["cut", "leg cb"], [Edge("panel", panel)])
    d.lay(
        Verb.REDRAW,
        sheet,
        "BS.panel",
        "panel edge of the side back, rounded over Pd",
        amounts=(("above and below Pd", fillet.tangent),),
        lines=(side_panel,),
    )


def back_findings(n: Numbers, sheet: Sheet) -> Iterable[Finding]:
    """Checks of back panels (6.2)."""
    width = sheet.length("BC", "waist")
    if width < 2.5:
        yield Finding(
            "P4",
            Severity.REFUSE,
            f"The back panel is only {width:.1f} cm wide at the waist; "
            "2.5 cm must stay.",
            "BC",
            "Make the set-in at the waist smaller.",
            {"width": width},
        )
    elif width < 4.0:
        yield Finding(
            "P4",
            Severity.WARN,
            f"The back panel is only {width:.1f} cm wide at the waist.",
            "BC",
            "A smaller set-in would leave more.",
            {"width": width},
        )
    if "Qf" in sheet.points and "pf" in sheet.points:
        up_f = sheet.points["G"].y - sheet.points["Qf"].y
        up_b = sheet.points["ub"].y - sheet.points["Qb"].y
        if abs(up_f - up_b) > 3.5:
            yield Finding(
                "P5",
                Severity.NOTE,
                "Front and back panel lines leave the armhole at different heights.",
                "Qb",
                "",
                {"front": up_f, "back": up_b},
            )
