"""Side dart and waist darts instead of panel lines (first garment 8)."""

from collections.abc import Iterable
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.bodice_rules import clip
from clothwright.curves import Cubic, Path, Vector, direction, midpoint, turned
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    CornerAfter,
    Drafting,
    Edge,
    On,
    Sheet,
    Verb,
    redraw,
    spread,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "first garment 8"

SIDE_DART = RuleTable("side dart")
_rule = SIDE_DART.rule


@_rule(
    "y(Pf)",
    "level of the point of the front waist dart",
    source="blocks A3.12",
    key="y_Pf",
    formula="yBP + 2.5 cm",
)
def _apex(y_BP: float) -> float:
    return y_BP + 2.5


@_rule(
    "set-back",
    "stitched end of the side dart from the bust point",
    key="set_back",
    source="blocks A3.8, corrections A4",
    formula="a third of BUB, kept between 1.5 cm and 3.5 cm",
    low=0.0,
    high=6.0,
)
def _set_back(BUB: float) -> float:
    return clip(0.33 * BUB, 1.5, 3.5)


@_rule("ep", "ease over the bust", source=_SRC, key="ep", formula="none: a dart")
def _no_ease() -> float:
    return 0.0


class SideDart(Feature):
    """Front in one piece with a side dart and a waist dart."""

    kind: Literal["side dart"] = "side dart"
    title: ClassVar[str] = "Side dart"
    sentence: ClassVar[str] = (
        "The front is in one piece, with a side dart that ends {set_back} from the "
        "bust point and a waist dart."
    )
    gives: ClassVar[frozenset[str]] = frozenset({"front panels"})
    clashes: ClassVar[dict[str, str]] = {
        "front panels": "the bust dart can go into one line only; leave one off"
    }

    set_back: Annotated[
        Length | None,
        Number(
            "set_back",
            "set-back",
            "stitched end of the side dart from the bust point",
            "blocks A3.8",
            low=0.0,
            high=6.0,
            usual=(1.5, 3.5),
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (SIDE_DART,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.FRONT_PANELS, "the darts of the front", self._apply),)

    def _apply(self, d: Drafting) -> None:
        n = d.n
        d.part = "front"
        sheet = d.sheet
        if n.ta > 0:
            sheet = _tighten(d, sheet)
        f = sheet.piece("F")
        low, high = f.edge("dart low").path, f.edge("dart high").path
        u2, u1, bp = low.start, high.end, low.end
        apex = d.found(
            "As",
            bp + direction(bp, midpoint(u1, u2)) * n.set_back,
            "stitched end of the side dart",
            amounts=(("from BP", "set_back"),),
            detail="half way between the legs",
        )
        sheet = redraw(
            sheet,
            "F",
            ["dart low", "dart high"],
            [straight("dart low", u2, apex), straight("dart high", apex, u1)],
        )
        pf = d.point("Pf", "BP", "point of the front waist dart", down=n.y_Pf - n.y_BP)
        legs = f.edge("leg cf").path.start, f.edge("leg side").path.end
        sheet = redraw(
            sheet,
            "F",
            ["leg cf", "leg side"],
            [straight("leg cf", legs[0], pf), straight("leg side", pf, legs[1])],
        )
        d.lay(Verb.REDRAW, sheet, "F", "side dart and waist dart of the front")

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        if n.fd > 6:
            yield Finding(
                "P2",
                Severity.WARN,
                "The front waist dart takes in more than 6 cm.",
                "fd",
                "Use two darts, or a princess line.",
                {"fd": n.fd},
            )
        if n.theta > 19:
            yield Finding(
                "P6",
                Severity.WARN,
                f"The side dart opens by {n.theta:.0f}°, wide for one dart.",
                "θ",
                "Use two darts, or a princess line.",
                {"θ": n.theta},
            )


def _tighten(d: Drafting, sheet: Sheet) -> Sheet:
    """Close a wedge on the armhole at the pitch and open the side dart by it."""
    n = d.n
    f = sheet.piece("F")
    armhole = f.edge("armhole").path  # underarm to tip
    at = armhole.length_to_point(d["pf"])
    sheet = spread(
        sheet,
        "F",
        On("armhole", at),
        CornerAfter("dart low"),
        at_start=-n.ta,
        at_end=0.0,
        moving="side high",
    )
    f = sheet.piece("F")
    g = f.edge("armhole").path.start
    side = f.edge("side high").path
    square = turned(side.end_direction, 90)
    pf = d["pf"]
    lower = Cubic(
        g,
        g + square * (0.58 * (pf.x - g.x)),
        pf + Vector(0.0, 0.66 * (g.y - pf.y)),
        pf,
    )
    upper = armhole.split_at_length(at)[1]
    return redraw(
        sheet, "F", ["armhole"], [Edge("armhole", Path((lower, *upper.segments)))]
    )


class BackWaistDart(Feature):
    """Back in one piece with its waist dart."""

    kind: Literal["back waist dart"] = "back waist dart"
    title: ClassVar[str] = "Back waist dart"
    sentence: ClassVar[str] = "The back is in one piece with a waist dart."
    gives: ClassVar[frozenset[str]] = frozenset({"back panels"})
    clashes: ClassVar[dict[str, str]] = {
        "back panels": "the back waist dart can go into one line only; leave one off"
    }

    def stages(self) -> tuple[Stage, ...]:
        return ()
