"""The armhole for a set-in sleeve: deeper and easier than a sleeveless one, its
shoulder left whole (first garment 17.1)."""

from collections.abc import Iterable
from typing import ClassVar, Literal

from clothwright.blocks import bodice_curves
from clothwright.curves import Point, rotate, turned
from clothwright.features.base import Feature, Number, Rank, Shown, Stage
from clothwright.features.bodice.armhole import outlines
from clothwright.features.bodice.shoulder import SHOULDER, SHOULDER_STAGE
from clothwright.findings import Finding, Severity
from clothwright.paper import Sheet
from clothwright.rules import Given, Numbers, RuleTable
from clothwright.units import Unit

_SRC = "first garment 17.1"

SLEEVED = RuleTable("armhole for a sleeve")
_rule = SLEEVED.rule

USUAL = (
    Number("Eb", "Eb", "ease at the bust", _SRC, 8.0, 3.0),
    Number("k", "k", "added to a sixth of the bust", _SRC, 3.81, 1.5),
    Number("d", "d", "armhole below the armpit level", "blocks A1.5", 1.0, 0.375),
)
"""What the block has by default under a sleeve."""


@_rule(
    "ti",
    "narrowing of the shoulder at the tip",
    source=_SRC,
    formula="none: the sleeve hangs from the whole shoulder",
    low=0.0,
    high=0.0,
)
def ti() -> float:
    return 0.0


@_rule(
    "ta",
    "tightening of the front armhole",
    source=_SRC,
    formula="none under a sleeve",
    low=0.0,
    high=0.0,
)
def ta() -> float:
    return 0.0


@_rule(
    "Af",
    "front armhole",
    source="blocks A3.10",
    key="A_f",
    formula="as drawn, from the finished tip over the pitch to the underarm",
)
def front_armhole(  # the curve that is drawn, on the finished tip
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
) -> float:
    tip = Point(x_hf, y_hf) + bodice_curves.outwards_front(sigma_f) * S
    closed = Point(xs, yB)
    g = rotate(closed, Point(x_BP, y_BP), theta)
    inward = bodice_curves.inward_front(sigma_f_new)
    return bodice_curves.front_armhole(
        tip,
        inward,
        bodice_curves.front_pitch(tip, inward, X, xfw, g.y),
        g,
        turned(bodice_curves.side_square_front(closed, Point(xs + a, yW)), theta),
    ).length


@_rule(
    "Ab",
    "back armhole",
    source="blocks A2.7",
    key="A_b",
    formula="as drawn, from the finished tip over the pitch to the underarm",
)
def back_armhole(  # the curve that is drawn, on the finished tip
    x_tip_b: float,
    y_tip_b: float,
    sigma_b_new: float,
    theta_s: float,
    xb: float,
    xs: float,
    a: float,
    yB: float,
    yW: float,
) -> float:
    tip = Point(x_tip_b, y_tip_b)
    under = Point(xs, yB)
    inward = bodice_curves.inward_back(sigma_b_new + theta_s)
    pitch = bodice_curves.back_pitch(tip, inward, xb, yB)
    return bodice_curves.back_armhole(
        tip,
        inward,
        pitch,
        under,
        bodice_curves.side_square_back(under, Point(xs - a, yW)),
        yB - pitch.y,
    ).length


class SleevedArmhole(Feature):
    """Armhole for a set-in sleeve: more depth and ease, the shoulder whole."""

    kind: Literal["sleeved armhole"] = "sleeved armhole"
    title: ClassVar[str] = "Sleeved armhole"
    sentence: ClassVar[str] = (
        "The [armhole] is cut for a set-in sleeve: deeper and easier, the shoulder "
        "whole."
    )
    shows: ClassVar[Shown] = {
        "AG": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
        "A": ("BS.armhole", "FS.armhole", "B.armhole", "F.armhole"),
    }
    gives: ClassVar[frozenset[str]] = frozenset({"armhole", "sleeved"})
    needs: ClassVar[dict[str, str]] = {
        "sleeve": 'the armhole is open: add a "set-in sleeve", or take a "sleeveless '
        'armhole"',
        "bodice": "an armhole is drawn on a bodice block; add one",
    }
    clashes: ClassVar[dict[str, str]] = {"armhole": "an order has one kind of armhole"}

    def tables(self) -> tuple[RuleTable, ...]:
        return (SHOULDER, SLEEVED)

    def given(self, unit: Unit) -> Iterable[Given]:
        return (number.usually(unit) for number in USUAL)

    def stages(self) -> tuple[Stage, ...]:
        return (SHOULDER_STAGE, Stage(Rank.ARMHOLE, "necks and armholes", outlines))

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.Eb < 4.0:
            yield Finding(
                "A1",
                Severity.WARN,
                "The bust ease is under 4 cm, close for a set-in sleeve.",
                "Eb",
                "Make a toile first.",
                {"Eb": n.Eb},
            )
        if n.Lr < 3.0:
            yield Finding(
                "A3",
                Severity.REFUSE,
                f"The neck leaves {n.Lr:.1f} cm of the shoulder; a sleeve needs 3 cm "
                "to hang from.",
                "dw",
                "Make the neck narrower.",
                {"Lr": n.Lr},
            )
        if n.A_hole < n.AG + 1.5:
            yield Finding(
                "A2",
                Severity.WARN,
                f"The armhole of {n.A_hole:.1f} cm gives the arm less than 1.5 cm of "
                "ease.",
                "AG",
                "Deepen the armhole, or measure AG again.",
                {"A": n.A_hole, "AG": n.AG},
            )
        if not 0.44 <= n.A_hole / n.Bf <= 0.53:
            yield Finding(
                "A4",
                Severity.WARN,
                f"The armhole of {n.A_hole:.1f} cm is unusual for this bust; "
                f"{0.44 * n.Bf:.1f} cm to {0.53 * n.Bf:.1f} cm is right.",
                "A",
                "Look at the depth of the armhole.",
                {"A": n.A_hole, "Bf": n.Bf},
            )
