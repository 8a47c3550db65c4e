"""A skirt in sunburst pleats, cut as panels of a ring and pleated by a pleater
(transformations §10; blocks G1 to G7)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks import circle
from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import (
    ONE_BLOCK,
    Cuts,
    Feature,
    Number,
    Rank,
    Stage,
    Words,
)
from clothwright.features.chains import Chains
from clothwright.features.notions import Notion
from clothwright.features.operations import Operation, Work
from clothwright.features.roles import skirt_hem
from clothwright.features.skirts import sunburst
from clothwright.features.skirts.about import GORE
from clothwright.features.skirts.circle_skirt import ROUND_WAIST, fits_cloth, over_hip
from clothwright.features.skirts.gore_seams import gore_joints, gore_seams
from clothwright.features.skirts.pleated_skirt_rules import COUNTED, Panels
from clothwright.features.skirts.straight_skirt import StraightSkirt, stride
from clothwright.findings import Finding
from clothwright.paper import Drafting, EdgeKind, Piece, Seam, Sheet, Verb
from clothwright.rules import Kind, Numbers, RuleError, RuleTable
from clothwright.truing import Joint
from clothwright.units.fields import Length, Ratio

_G = "blocks G"

SUNBURST = RuleTable("skirt in sunburst pleats")
_rule = SUNBURST.rule

WIDEST_PANEL = 180.0
"""A panel is no more than half a ring, degrees."""


@_rule(
    "w/n",
    "pleated waist of a panel",
    source=f"{_G}1",
    key="w_gore",
    formula="(W + Ew)/n",
)
def _waist(W: float, Ew: float, gores: float) -> float:
    return (W + Ew) / gores


@_rule(
    "r",
    "radius of the waist arc",
    source=f"{sunburst.SRC}, {_G}1",
    key="r_circle",
    formula="(W + Ew)/(2πf): the pleats run to its centre",
)
def _radius(W: float, Ew: float, f: float) -> float:
    return circle.radius(W + Ew, f)


@_rule("r + L", "radius of the hem arc", source=f"{_G}1", key="r_hem", formula="r + L")
def _r_hem(r_circle: float, L: float) -> float:
    return r_circle + L


@_rule(
    "hem S",
    "hem of the skirt as the pleats lie, all round",
    source=f"{_G}2",
    key="hem_S",
    formula="W + Ew + 2πf·L",
)
def _hem(W: float, Ew: float, f: float, L: float) -> float:
    return circle.hem(W + Ew, f, L)


@_rule(
    "φ",
    "angle of a panel in the cloth",
    kind=Kind.ANGLE,
    source=sunburst.SRC,
    key="phi_S",
    formula="360°·f·pr/n: the angle after pleating × the pleating ratio",
)
def _angle(f: float, pr: float, gores: float) -> float:
    angle = 360.0 * f * pr / gores
    if angle > WIDEST_PANEL:
        raise RuleError(
            f"a panel would fill {angle:.0f}° of a ring: cut the skirt in more panels, "
            "or choose a smaller share of a circle (f) or pleating ratio (pr)"
        )
    return angle


class SunburstSkirt(Feature):
    """Skirt in sunburst pleats."""

    kind: Literal["sunburst skirt"] = "sunburst skirt"
    title: ClassVar[str] = "Sunburst skirt"
    sentence: ClassVar[str] = (
        "A skirt in [sunburst pleats], {length} long from the waist, {fullness} of a "
        "full circle as they lie, {ratio} times that in the cloth; of {panels} panels."
    )
    page: ClassVar[int] = 0
    pieces: ClassVar[tuple[About, ...]] = (
        About(GORE, Place.PANEL, ("panel", "gore"), edges={"hem": skirt_hem}),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S37": "seam of the gores or panels of a skirt"
    }
    gives: ClassVar[frozenset[str]] = frozenset(
        {"block", "skirt block", "waist", "pleated waist", "pleated hem"}
    )
    clashes: ClassVar[dict[str, str]] = {
        **ONE_BLOCK,
        "hem finish": "the hem of a pleated skirt is pressed in with its pleats; leave "
        "the flounce or the godets off",
        "underlining": "two layers are not pleated as one; leave the underlining off",
    }
    makes_up: ClassVar[dict[str, str]] = StraightSkirt.makes_up

    length: Annotated[
        Length | None,
        Number(
            "L",
            "L",
            "length of the skirt from the waist",
            sunburst.SRC,
            60.0,
            24.0,
            30.0,
            125.0,
            (40.0, 100.0),
        ),
    ] = None
    fullness: Annotated[Ratio | None, sunburst.FULLNESS] = None
    ratio: Annotated[Ratio | None, sunburst.RATIO] = None
    waist_ease: Annotated[Length | None, StraightSkirt.numbers()["waist_ease"]] = None
    panels: Panels = Panels.FOUR

    def tables(self) -> tuple[RuleTable, ...]:
        return (ROUND_WAIST, SUNBURST, COUNTED[self.panels])

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.BLOCK, "the panel", draft_panel),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return gore_seams(t, n)

    def joints(self, sheet: Sheet, n: Numbers, words: Words) -> Iterable[Joint]:
        return gore_joints(sheet)

    def cuts(self, sheet: Sheet) -> Mapping[str, Cuts]:
        n = self.panels.count
        return {GORE: Cuts(f"{n}", n)}

    def notes(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[str]:
        yield sunburst.note(n.pr, fmt, n.W + n.Ew, n.hem_S)

    def notions(self, n: Numbers, sheet: Sheet) -> Iterable[Notion]:
        yield sunburst.pleating(f"the skirt of {self.panels.value} panels")

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        return sunburst.pleater_operations(
            sheet, (GORE,), n.pr, fmt(n.W + n.Ew), "the seam for the zip", Work.READY
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from over_hip(n, n.W + n.Ew + (n.hem_S - n.W - n.Ew) * n.WH / n.L, "f")
        yield from stride(n, n.pr * n.hem_S, opens=False)
        yield from fits_cloth(n, sheet)


def draft_panel(d: Drafting) -> None:
    """One panel (SG) as it is cut, its middle plumb; all are alike."""
    n = d.n
    d.part = "panel"
    d.start("Oc", Point(0.0, 0.0), "centre of the arcs, to which the pleats run")
    sector = circle.Sector.whole(n.r_circle, n.r_hem, n.phi_S)
    edges = sector.edges(
        ("waist", EdgeKind.SEAM),
        ("seam", EdgeKind.SEAM),
        ("hem", EdgeKind.FINISHED),
        ("other seam", EdgeKind.SEAM),
    )
    waist, seam = edges[0].path, edges[1].path
    d.lay(
        Verb.OUTLINE,
        d.sheet.put(Piece(GORE, "Panel", edges)),
        GORE,
        "panel",
        amounts=(
            ("with a waist arc of radius {}", "r_circle"),
            ("and a hem arc of radius {}", "r_hem"),
            ("over an angle of {}", "phi_S"),
        ),
        frm=("Oc",),
        detail="both arcs from Oc, joined by lines that run to Oc; its middle is plumb",
        over=tuple(Path.line(d["Oc"], p) for p in (waist.start, waist.end)),
    )
    d.found(
        "Hg",
        seam.at_length(min(n.WH, seam.length)),
        "seam at the hip",
        amounts=(("from the waist down the seam", "WH"),),
    )
