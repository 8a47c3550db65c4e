"""A closed band at the end of the sleeve (transformations 4)."""

from collections.abc import Callable, Iterable, Mapping
from typing import Annotated, ClassVar, Literal

from clothwright.blocks.sleeve_lower import arm_girth
from clothwright.curves import Path, Point
from clothwright.features.about import About, Place
from clothwright.features.base import Feature, Number, Rank, Stage
from clothwright.features.chains import Chains
from clothwright.features.operations import Hazard, Operation, Stitch, Task, Work
from clothwright.features.roles import Role
from clothwright.features.sleeves.set_in_sleeve import arm_at
from clothwright.features.sleeves.sleeve_ends import (
    BELOW,
    band_findings,
    both_sides,
    gather_hem,
    hem_is_sewn,
)
from clothwright.features.sleeves.sleeve_seams import band_seams
from clothwright.findings import Finding, Severity
from clothwright.paper import (
    Drafting,
    EdgeKind,
    InnerLine,
    Piece,
    Run,
    Seam,
    Sheet,
    Verb,
    straight,
)
from clothwright.rules import Numbers, RuleTable
from clothwright.units.fields import Length

_SRC = "transformations 4"

BAND = RuleTable("band of the sleeve")
_rule = BAND.rule


@_rule(
    "band",
    "band of the sleeve, round the arm",
    source=_SRC,
    key="band_net",
    formula="the arm and 2.5 cm down to the elbow, HD + 1 cm below",
    low=15.0,
    high=60.0,
)
def _net(under_arm: float, y_E: float, UA: float, EL: float, HD: float) -> float:
    if under_arm > y_E + 1.0:
        return HD + 1.0
    return arm_girth(under_arm, y_E, UA, EL) + 2.5


@_rule(
    "end",
    "width of what is sewn to the end of the sleeve",
    source=_SRC,
    key="end_depth",
    formula="width of the band",
)
def _end(band_w: float) -> float:
    return band_w


class SleeveBand(Feature):
    """Closed band, cut double, that the hem of the sleeve is gathered into."""

    kind: Literal["sleeve band"] = "sleeve band"
    title: ClassVar[str] = "Sleeve band"
    sentence: ClassVar[str] = "It ends in a [band] {width} wide and {girth} round."
    page: ClassVar[int] = 2
    pieces: ClassVar[tuple[About, ...]] = (
        About(
            "BA",
            Place.CUFF,
            ("band",),
            others=Role.BAND,
            cloths=("shell", "interlining"),
        ),
    )
    seams: ClassVar[Mapping[str, str]] = {
        "S26": "hem of a sleeve in a band or cuff",
        "S27": "ends of a sleeve's band",
    }
    gives: ClassVar[frozenset[str]] = frozenset({"sleeve end"})
    needs: ClassVar[dict[str, str]] = {
        "set-in sleeve": 'it ends a sleeve; add a "set-in sleeve"'
    }
    clashes: ClassVar[dict[str, str]] = {"sleeve end": "a sleeve ends in one thing"}

    width: Annotated[
        Length | None,
        Number(
            "band_w", "band width", "width of the band", _SRC, 2.5, 1, 1.5, 12, (2, 8)
        ),
    ] = None
    girth: Annotated[
        Length | None,
        Number(
            "band_net",
            "band",
            "band of the sleeve, round the arm",
            _SRC,
            low=15.0,
            high=60.0,
        ),
    ] = None

    def tables(self) -> tuple[RuleTable, ...]:
        return (BAND,)

    def stages(self) -> tuple[Stage, ...]:
        return (Stage(Rank.SLEEVE_END, "the band of the sleeve", _draft),)

    def sewn(self, t: Chains, n: Numbers) -> Iterable[Seam]:
        return band_seams(t)

    def operations(
        self, n: Numbers, sheet: Sheet, fmt: Callable[[float], str]
    ) -> Iterable[Operation]:
        yield from gather_hem(sheet, fmt)
        yield Operation(
            Work.CUFF,
            "Set the bands on the sleeves",
            (
                "Close each to a ring; its seam meets the seam of the sleeve.",
                "Sew its upper edge on, fold it in half, turn the inner edge in and "
                "fell it over the seam.",
            ),
            seams=both_sides(sheet, "S26", "S27"),
            edges=(Run("BA", "inside"),),
            stitch=Stitch.LOCK,
            press="into the band",
            task=Task.CUFFS,
            hazards=(Hazard.IRON,),
        )

    def checks(self, n: Numbers, sheet: Sheet) -> Iterable[Finding]:
        yield from band_findings(n, sheet, "band")
        what, arm, _ = arm_at(n)
        least = max(arm + 1.0, n.HD) if what == "arm" else arm
        if n.band_net < least - 1e-6:
            yield Finding(
                "SB2",
                Severity.REFUSE,
                f"The band is {n.band_net:.1f} cm round and cannot pass the hand and "
                f"the {what}: {least:.1f} cm is the least.",
                "band",
                "Make it longer (band), or take a cuff that opens.",
                {"band": n.band_net, "least": least},
            )


def _draft(d: Drafting) -> None:
    """Draw the band BA."""
    n = d.n
    d.part = "band"
    w = n.band_w
    y = n.lh - n.h_cap + BELOW
    a = d.start("Ba", Point(-n.band_net / 2, y), "back end of the band, upper edge")
    b = d.point("Bb", "Ba", "front end of the band", right="band_net")
    down, fold = Point(0.0, 2 * w), Point(0.0, w)
    piece = Piece(
        "BA",
        "Sleeve band",
        (
            straight("upper", a, b),
            straight("end front", b, b + down),
            straight("inside", b + down, a + down, EdgeKind.FINISHED),
            straight("end back", a + down, a),
        ),
        grain=(a + Point(3.0, 1.5 * w), b + Point(-3.0, 1.5 * w)),
        lines=(InnerLine("fold", Path.line(a + fold, b + fold)),),
    )
    d.lay(
        Verb.OUTLINE,
        hem_is_sewn(d.sheet).put(piece),
        "BA",
        "band of the sleeve, double",
        amounts=(("wide on either side of its fold", "band_w"),),
        frm=("Ba", "Bb"),
    )
